//! Stretch and greatest length as the manual states them, in its own unit and digits.

use super::data::Fasten;
use crate::job::field::{Refused, Set};
use crate::job::kinds::check::bore::stated_words;
use crate::trade::quantity::{LengthUnit, Stated, Unit, convert};
use serde::{Deserialize, Serialize};

/// What is stated of lengths over the ends, all in one unit.
///
/// In a file plain millimetres stand as `stretch_least_mm`, `stretch_most_mm` and `longest_mm`; anything
/// else stands together under `lengths`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Lengths {
    /// The unit of all of them.
    pub unit: LengthUnit,
    /// Least stretch.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_least: Option<Stated>,
    /// Most stretch.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_most: Option<Stated>,
    /// How long one may be and come again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longest: Option<Stated>,
}

/// What arithmetic may leave behind, as a share: a value on a limit is within it.
const LAST_BITS: f64 = 1e-9;

impl Lengths {
    /// Nothing stated, in that unit.
    pub fn of(unit: LengthUnit) -> Self {
        Self {
            unit,
            stretch_least: None,
            stretch_most: None,
            longest: None,
        }
    }

    fn all(&self) -> [Option<Stated>; 3] {
        [self.stretch_least, self.stretch_most, self.longest]
    }

    /// Whether any is stated.
    pub fn said(&self) -> bool {
        self.all().iter().any(Option::is_some)
    }

    /// Whether a value in its unit lies within those limits, both ends included.
    pub fn hold(value: f64, least: Option<Stated>, most: Option<Stated>) -> bool {
        let slack = |limit: Stated| LAST_BITS * limit.value.abs();
        least.is_none_or(|least| value >= least.value - slack(least))
            && most.is_none_or(|most| value <= most.value + slack(most))
    }

    /// One of them in mm, for its range.
    pub fn millimetres(&self, stated: Option<Stated>) -> Option<f64> {
        convert(stated?.value, self.unit.symbol(), LengthUnit::Millimetre.symbol())
    }

    /// "0.0050 to 0.0060 in", a stretch.
    pub fn stretch_words(&self) -> String {
        stated_words(self.stretch_least, self.stretch_most, self.unit.symbol())
    }
}

impl Fasten {
    /// What is stated of lengths over the ends.
    pub fn stated_lengths(&self) -> Lengths {
        self.lengths_stated.unwrap_or_else(|| Lengths {
            unit: LengthUnit::Millimetre,
            stretch_least: self.stretch_least_mm.map(Stated::plain),
            stretch_most: self.stretch_most_mm.map(Stated::plain),
            longest: self.longest_mm.map(Stated::plain),
        })
    }

    /// Takes what is stated, and writes it as every release knows it where that says all of it.
    pub fn state_lengths(&mut self, lengths: Lengths) {
        let plain = |stated: &Stated| *stated == Stated::plain(stated.value);
        let usual = lengths.unit == LengthUnit::Millimetre && lengths.all().iter().flatten().all(plain);
        let usual = usual && lengths.said();
        let mm = |stated: Option<Stated>| stated.filter(|_| usual).map(|stated| stated.value);
        self.stretch_least_mm = mm(lengths.stretch_least);
        self.stretch_most_mm = mm(lengths.stretch_most);
        self.longest_mm = mm(lengths.longest);
        self.lengths_stated = (!usual).then_some(lengths);
    }

    /// Begins in the job's unit where nothing is stated yet.
    pub fn begin_lengths(&mut self, unit: LengthUnit) {
        if self.lengths_stated.is_none() && !self.stated_lengths().said() {
            self.lengths_stated = Some(Lengths::of(unit));
        }
    }

    /// Leaves the job's unit unsaid where nothing is stated in it.
    pub fn end_lengths(&mut self, unit: LengthUnit) {
        let usual = |lengths: &Lengths| lengths.unit == unit && !lengths.said();
        if self.lengths_stated.as_ref().is_some_and(usual) {
            self.lengths_stated = None;
        }
    }

    /// The unit lengths are asked for in.
    pub fn length_unit(&self) -> LengthUnit {
        self.stated_lengths().unit
    }

    /// Takes another unit for the same figures, as a manual was misread rather than another bolt meant.
    ///
    /// # Errors
    /// Figures that make no sense in it, by `makes_sense`, which is asked in mm.
    pub(super) fn take_length_unit(
        &mut self,
        unit: LengthUnit,
        makes_sense: impl Fn(&Lengths) -> bool,
    ) -> Set {
        let lengths = Lengths {
            unit,
            ..self.stated_lengths()
        };
        if !makes_sense(&lengths) {
            return Err(Refused::Said(format!(
                "In {} the stretch or length entered makes no sense: clear it first, then enter it anew.",
                unit.symbol()
            )));
        }
        if lengths.said() {
            self.state_lengths(lengths);
        } else {
            self.lengths_stated = Some(lengths);
        }
        Ok(())
    }
}
