//! An answer in words and figures, and what a calculation reads of what was typed.

use super::Calculation;
use super::field::{Measure, Takes};
use super::kept::MeasureBench;
use crate::trade::measure::{Allowed, MeasureVerdict};
use crate::trade::measuring::{MeasuringError, Standing, stands};
use crate::trade::quantity::{Force, Length, LengthUnit, Torque, TorqueUnit, fixed};
use crate::trade::stretch::StretchError;
use crate::trade::thread::Thread;
use std::fmt;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

/// A number that was reckoned, for who reckons on with it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reckoned {
    /// What it measures.
    pub measure: Measure,
    /// It in the kept unit; the two ends of a range, else twice the same.
    pub ends: (f64, f64),
}

impl Reckoned {
    /// One number.
    pub fn one(measure: Measure, kept: f64) -> Option<Self> {
        let ends = (kept, kept);
        Some(Self { measure, ends })
    }
}

/// A number in figures, with its unit and its worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Its digits.
    pub text: String,
    /// Its unit.
    pub unit: &'static str,
    /// Its worth.
    pub reckoned: Option<Reckoned>,
}

impl Figure {
    /// "0.30 N·m".
    pub fn words(&self) -> String {
        format!("{} {}", self.text, self.unit)
    }
}

/// What a calculation says.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// What the number is.
    pub says: &'static str,
    /// Its digits; two of a range.
    pub number: String,
    /// Its unit.
    pub unit: &'static str,
    /// Its worth; none where it is no reading's number: a class, a range to choose from.
    pub reckoned: Option<Reckoned>,
    /// What it comes to.
    pub verdict: String,
    /// It is outside what is allowed.
    pub refused: bool,
    /// It has not passed either: there are no limits to go by, or not all of it is read.
    pub open: bool,
    /// What else was found.
    pub rows: Vec<(&'static str, String)>,
}

impl Answer {
    /// That number with its unit, judged, and what else was found.
    pub fn of(says: &'static str, figure: Figure, judged: Judged, rows: Vec<(&'static str, String)>) -> Self {
        Self {
            says,
            number: figure.text,
            unit: figure.unit,
            reckoned: figure.reckoned,
            verdict: judged.words,
            refused: judged.refused,
            open: judged.open,
            rows,
        }
    }
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Trouble {
    /// That field is still to be filled: an invitation, not a mistake.
    Missing(&'static str),
    /// That line of a table is still to be filled: an invitation too.
    Line(String),
    /// What was entered in words makes no sense: the sentence says why.
    Said(String),
    /// What was entered makes no sense.
    Wrong(MeasuringError),
    /// The same, of a bolt as a spring.
    Bolt(StretchError),
}

impl From<StretchError> for Trouble {
    fn from(why: StretchError) -> Self {
        Self::Bolt(why)
    }
}

impl From<MeasuringError> for Trouble {
    fn from(why: MeasuringError) -> Self {
        Self::Wrong(why)
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing(name) => write!(f, "Enter: {name}."),
            Self::Line(name) => write!(f, "Enter: {name}."),
            Self::Said(why) => f.write_str(why),
            Self::Wrong(why) => write!(f, "{why}"),
            Self::Bolt(why) => write!(f, "{why}"),
        }
    }
}

/// A calculation with what was typed for it.
pub struct Asked<'a> {
    /// Which.
    pub calculation: &'a Calculation,
    /// What was typed.
    pub bench: &'a MeasureBench,
}

impl Asked<'_> {
    /// The number of a field in its kept unit.
    pub fn number(&self, id: &str) -> Option<f64> {
        self.bench.given(self.calculation.id, id)?.number
    }

    /// The same, which it can't do without.
    pub fn need(&self, id: &str) -> Result<f64, Trouble> {
        self.number(id).ok_or_else(|| self.missing(id))
    }

    /// That field is missing.
    pub fn missing(&self, id: &str) -> Trouble {
        let field = self.calculation.fields.iter().find(|field| field.id == id);
        Trouble::Missing(field.map_or("a number", |field| field.name))
    }

    /// A length.
    pub fn length(&self, id: &str) -> Option<Length> {
        self.number(id).map(|mm| LengthUnit::Millimetre.length(mm))
    }

    /// A length it can't do without.
    pub fn need_length(&self, id: &str) -> Result<Length, Trouble> {
        self.need(id).map(|mm| LengthUnit::Millimetre.length(mm))
    }

    /// A torque.
    pub fn torque(&self, id: &str) -> Option<Torque> {
        self.number(id).map(|nm| TorqueUnit::NewtonMetre.torque(nm))
    }

    /// A force.
    pub fn force(&self, id: &str) -> Option<Force> {
        self.number(id).map(Force::new::<newton>)
    }

    /// The lengths of those fields that were filled; the first is missed where none was.
    pub fn lengths(&self, ids: &[&str]) -> Result<Vec<Length>, Trouble> {
        let all: Vec<Length> = ids.iter().filter_map(|id| self.length(id)).collect();
        if all.is_empty() {
            return Err(self.missing(ids.first().copied().unwrap_or_default()));
        }
        Ok(all)
    }

    /// The lengths of a row of places at equal steps: none may be left out before a later one.
    pub fn row(&self, ids: &[&str]) -> Result<Vec<Length>, Trouble> {
        let filled = ids.iter().rposition(|id| self.number(id).is_some());
        let last = filled.map_or(1, |last| last + 1);
        ids.iter().take(last).map(|id| self.need_length(id)).collect()
    }

    /// Which of its choices a field holds.
    pub fn choice(&self, id: &str) -> usize {
        let field = self.calculation.fields.iter().find(|field| field.id == id);
        let Some((field, Takes::Choice(offered))) = field.map(|field| (field, field.takes)) else {
            return 0;
        };
        let given = self.bench.given(self.calculation.id, id);
        let word = field.word(given.map_or("", |one| one.word.as_str()));
        offered.iter().position(|one| *one == word).unwrap_or(0)
    }

    /// What a field holds in words; empty where nothing was entered.
    pub fn word(&self, id: &str) -> &str {
        let given = self.bench.given(self.calculation.id, id);
        given.map_or("", |one| one.word.trim())
    }

    /// A thread.
    pub fn thread(&self, id: &str) -> Option<Thread> {
        let given = self.bench.given(self.calculation.id, id)?;
        Thread::parse(&given.word).ok()
    }

    /// A thread it can't do without.
    pub fn need_thread(&self, id: &str) -> Result<Thread, Trouble> {
        self.thread(id).ok_or_else(|| self.missing(id))
    }

    fn inch(&self) -> bool {
        self.bench.inch
    }

    /// A small length in figures: µm, or a tenth of a thou.
    pub fn fine(&self, length: Length) -> String {
        if self.inch() {
            fixed(LengthUnit::Inch.value_of(length), 4)
        } else {
            fixed(length.get::<millimeter>(), 3)
        }
    }

    /// A larger one: hundredths of a mm, or thousandths of an inch.
    pub fn rough(&self, length: Length) -> String {
        if self.inch() {
            fixed(LengthUnit::Inch.value_of(length), 3)
        } else {
            fixed(length.get::<millimeter>(), 2)
        }
    }

    /// The unit lengths are shown in.
    pub fn length_unit(&self) -> &'static str {
        Measure::Length.symbol(self.inch())
    }

    fn length_figure(&self, length: Length, text: String) -> Figure {
        Figure {
            text,
            unit: self.length_unit(),
            reckoned: Reckoned::one(Measure::Length, length.get::<millimeter>()),
        }
    }

    /// [`Asked::fine`] and its unit.
    pub fn fine_figure(&self, length: Length) -> Figure {
        self.length_figure(length, self.fine(length))
    }

    /// [`Asked::rough`] and its unit.
    pub fn rough_figure(&self, length: Length) -> Figure {
        self.length_figure(length, self.rough(length))
    }

    /// [`Asked::fine`] with its unit.
    pub fn fine_words(&self, length: Length) -> String {
        self.fine_figure(length).words()
    }

    /// [`Asked::rough`] with its unit.
    pub fn rough_words(&self, length: Length) -> String {
        self.rough_figure(length).words()
    }

    /// A torque in figures and its unit.
    pub fn torque_figure(&self, torque: Torque) -> Figure {
        let (unit, decimals) = match self.inch() {
            true => (TorqueUnit::PoundInch, 1),
            false => (TorqueUnit::NewtonMetre, 2),
        };
        Figure {
            text: fixed(unit.value_of(torque), decimals),
            unit: unit.symbol(),
            reckoned: Reckoned::one(Measure::Torque, torque.get::<newton_meter>()),
        }
    }

    /// A load in figures and its unit: kN from 10 kN on.
    pub fn force_figure(&self, force: Force) -> Figure {
        let newtons = force.get::<newton>();
        let shown = Measure::Force.out(newtons, self.inch());
        let (text, unit) = match self.inch() {
            true if shown.abs() < 100.0 => (fixed(shown, 1), "lb"),
            true => (fixed(shown, 0), "lb"),
            false if newtons.abs() < 1e4 => (fixed(newtons, 0), "N"),
            false => (fixed(newtons / 1000.0, 1), "kN"),
        };
        Figure {
            text,
            unit,
            reckoned: Reckoned::one(Measure::Force, newtons),
        }
    }

    /// [`Asked::force_figure`] as words.
    pub fn force_words(&self, force: Force) -> String {
        self.force_figure(force).words()
    }

    /// A length against the limits of two fields.
    pub fn judge(
        &self,
        value: Length,
        least: Option<Length>,
        most: Option<Length>,
    ) -> Result<Judged, Trouble> {
        if least.is_none() && most.is_none() {
            return Ok(Judged::open());
        }
        let verdict = Allowed { least, most }
            .judge(value)
            .map_err(|_| MeasuringError::Limits)?;
        Ok(match verdict {
            MeasureVerdict::Within => Judged::within(),
            MeasureVerdict::Below { by } => Judged::out(format!("{} under the least.", self.fine_words(by))),
            MeasureVerdict::Above { by } => Judged::out(format!("{} over the most.", self.fine_words(by))),
        })
    }

    /// A lowest and a highest value against limits: each by the limit on its side.
    pub fn judge_span(
        &self,
        (low, high): (Length, Length),
        least: Option<Length>,
        most: Option<Length>,
    ) -> Result<Judged, Trouble> {
        if least > most && most.is_some() {
            return Err(MeasuringError::Limits.into());
        }
        let low = self.judge(low, least, None)?;
        Ok(low.and(self.judge(high, None, most)?))
    }

    /// A torque against the limits of two fields.
    pub fn judge_torque(&self, value: Torque, least: &str, most: &str) -> Result<Judged, Trouble> {
        let words = |nm: f64| self.torque_figure(TorqueUnit::NewtonMetre.torque(nm)).words();
        self.judge_number(value.get::<newton_meter>(), least, most, &words)
    }

    /// A load against the limits of two fields.
    pub fn judge_force(&self, value: Force, least: &str, most: &str) -> Result<Judged, Trouble> {
        let words = |newtons: f64| self.force_words(Force::new::<newton>(newtons));
        self.judge_number(value.get::<newton>(), least, most, &words)
    }

    fn judge_number(
        &self,
        value: f64,
        least: &str,
        most: &str,
        words: &dyn Fn(f64) -> String,
    ) -> Result<Judged, Trouble> {
        let (least, most) = (self.number(least), self.number(most));
        if least.is_none() && most.is_none() {
            return Ok(Judged::open());
        }
        Ok(match stands(value, least, most)? {
            Standing::Within => Judged::within(),
            Standing::Below(by) => Judged::out(format!("{} under the least.", words(by))),
            Standing::Above(by) => Judged::out(format!("{} over the most.", words(by))),
        })
    }
}

/// A verdict in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// The words.
    pub words: String,
    /// It is outside its limits.
    pub refused: bool,
    /// It is not judged: there are no limits, or not all of it is read.
    pub open: bool,
}

impl Judged {
    /// Nothing to judge by.
    pub fn open() -> Self {
        Self {
            words: "No limit entered: compare it with the manual’s.".to_owned(),
            refused: false,
            open: true,
        }
    }

    /// On or between its limits.
    pub fn within() -> Self {
        Self {
            words: "Within its limits.".to_owned(),
            refused: false,
            open: false,
        }
    }

    /// Outside.
    pub fn out(words: String) -> Self {
        Self {
            words,
            refused: true,
            open: false,
        }
    }

    /// With so many of its places still to read it has not passed; one that failed has failed.
    pub fn so_far(self, left: usize, place: &str) -> Self {
        if left == 0 || self.refused || self.open {
            return self;
        }
        let many = if left == 1 { "" } else { "s" };
        Self {
            words: format!("So far within; {left} {place}{many} to read."),
            open: true,
            ..self
        }
    }

    /// Both: the worse one speaks; one with no limit says nothing beside one with.
    pub fn and(self, other: Self) -> Self {
        match (self.refused, other.refused) {
            (true, true) => Self::out(format!("{} {}", self.words, other.words)),
            (false, true) => other,
            (true, false) => self,
            (false, false) if self.open => other,
            (false, false) => self,
        }
    }
}
