//! A number of a kind of work: its unit, its one range, where it is kept.

use super::Kept;
use super::read::{Refused, Set};
use crate::job::figures::Figures;
use crate::trade::quantity::{Stated, decimal, no_number, shortest, trimmed};

/// One number of a `T`.
pub struct Number<T> {
    /// What its path ends in.
    pub id: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// What it is kept in.
    pub kept: Kept,
    /// Least and most that make sense, in the kept unit.
    pub range: (f64, f64),
    /// Only a whole number makes sense.
    pub whole: bool,
    /// Where the schema of the job form has it: "seat/wall_mm" below `$defs`.
    pub stored: &'static str,
    /// Reads it; none where it isn't stated or does not apply.
    pub get: fn(&T) -> Option<f64>,
    /// Keeps it.
    pub set: fn(&mut T, f64),
    /// Whether it goes with the rest of that work, where its range alone doesn't tell.
    pub fits: Option<Fits<T>>,
    /// Takes it back, where it may be left unsaid.
    pub clear: Option<fn(&mut T)>,
    /// Reads and keeps it with the digits it was stated in, where these are kept.
    pub stated: Option<AsStated<T>>,
    /// The unit it is typed and shown in, where the work names one.
    pub in_unit: Option<InUnit<T>>,
}

/// How a number is read and kept with its digits.
pub type AsStated<T> = (fn(&T) -> Option<Stated>, fn(&mut T, Stated));

/// Whether a kept number goes with the rest of that work; else the sentence that says what to do.
pub type Fits<T> = fn(&T, f64) -> Result<(), String>;

/// A unit's symbol, and how many kept units one of it is.
pub type InUnit<T> = fn(&T) -> (&'static str, f64);

/// A number as a check sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// What it is called.
    pub name: &'static str,
    /// Where the schema of the job form has it.
    pub stored: &'static str,
    /// Least and most.
    pub range: (f64, f64),
    /// What it is now; none where it isn't stated or does not apply.
    pub value: Option<f64>,
    /// It stands as empty work has it: not said yet.
    pub unsaid: bool,
    kept: Kept,
    whole: bool,
}

impl Seen {
    /// The sentence for a number out of its range; none for one within it, or not said yet.
    pub fn wrong(&self) -> Option<String> {
        let (least, most) = self.range;
        let value = self.value.filter(|_| !self.unsaid)?;
        let good = (least..=most).contains(&value) && (!self.whole || value.fract() == 0.0);
        let plain = Figures::default();
        let figure = |number| self.kept.text(number, plain);
        (!good).then(|| enter(self.kept, self.range, self.whole, self.kept.symbol(plain), figure))
    }
}

impl<T> Number<T> {
    /// A row of the table.
    pub const fn new(
        (id, name): (&'static str, &'static str),
        kept: Kept,
        range: (f64, f64),
        stored: &'static str,
        get: fn(&T) -> Option<f64>,
        set: fn(&mut T, f64),
    ) -> Self {
        Self {
            id,
            name,
            kept,
            range,
            whole: false,
            stored,
            get,
            set,
            fits: None,
            clear: None,
            stated: None,
            in_unit: None,
        }
    }

    /// The same, of whole numbers.
    pub const fn whole(self) -> Self {
        Self { whole: true, ..self }
    }

    /// The same, which may be left unsaid.
    pub const fn or_none(self, clear: fn(&mut T)) -> Self {
        Self {
            clear: Some(clear),
            ..self
        }
    }

    /// The same, judged beside the rest of the work too.
    pub const fn fits(self, fits: Fits<T>) -> Self {
        Self {
            fits: Some(fits),
            ..self
        }
    }

    /// The same, kept with the digits it was stated in.
    pub const fn stated(self, get: fn(&T) -> Option<Stated>, set: fn(&mut T, Stated)) -> Self {
        Self {
            stated: Some((get, set)),
            ..self
        }
    }

    /// The same, typed and shown in a unit that the work names; its digits are those of that unit.
    pub const fn in_unit(self, unit: InUnit<T>) -> Self {
        Self {
            in_unit: Some(unit),
            ..self
        }
    }

    /// The unit it is typed and shown in, and how many kept units one is.
    pub(super) fn unit(&self, it: &T) -> (&'static str, f64) {
        match self.in_unit {
            Some(unit) => unit(it),
            None => (self.kept.symbol(Figures::default()), 1.0),
        }
    }

    /// It as a form shows it; empty where it isn't stated.
    pub(super) fn shown(&self, it: &T) -> String {
        match self.stated {
            Some((get, _)) => get(it).map_or(String::new(), Stated::text),
            None => (self.get)(it).map_or(String::new(), |value| match self.unit(it).1 {
                1.0 => shortest(value).replace('-', "−"),
                factor => trimmed(value / factor, 5),
            }),
        }
    }

    /// The kept number for a typed one.
    ///
    /// # Errors
    /// The sentence that says what makes sense.
    pub fn judge(&self, typed: f64, figures: impl Into<Figures>) -> Result<f64, String> {
        let figures = figures.into();
        let kept = self.kept.to_kept(typed, figures);
        self.hold(kept, self.kept.symbol(figures), |number| {
            self.kept.text(number, figures)
        })
    }

    /// A kept number that makes sense; else the sentence, with its figures in that unit.
    fn hold(&self, kept: f64, unit: &str, figure: impl Fn(f64) -> String) -> Result<f64, String> {
        let (least, most) = self.range;
        if kept >= least && kept <= most && (!self.whole || kept.fract() == 0.0) {
            Ok(kept)
        } else {
            Err(enter(self.kept, self.range, self.whole, unit, figure))
        }
    }

    /// Whether a minus sign makes sense.
    pub fn signed(&self) -> bool {
        self.range.0 < 0.0
    }

    /// Whether it says something of that work.
    pub(super) fn applies(&self, it: &T) -> bool {
        self.clear.is_some() || (self.get)(it).is_some()
    }

    /// Takes what was typed in the kept unit.
    pub(super) fn take(&self, it: &mut T, typed: &str) -> Set {
        if !self.applies(it) {
            return Err(Refused::NoField);
        }
        if let (Some(clear), true) = (self.clear, typed.trim().is_empty()) {
            clear(it);
            return Ok(());
        }
        let number = decimal(typed).ok_or_else(|| Refused::Said(no_number(typed)))?;
        let (unit, factor) = self.unit(it);
        let kept = self
            .hold(number * factor, unit, |number| trimmed(number / factor, 5))
            .map_err(Refused::Said)?;
        if let Some(fits) = self.fits {
            fits(it, kept).map_err(Refused::Said)?;
        }
        match (self.stated, Stated::typed(typed)) {
            (Some((_, set)), Some(stated)) => set(it, stated),
            _ => (self.set)(it, kept),
        }
        Ok(())
    }

    /// It, as a check sees it; `blank` is empty work of the same kind.
    pub(super) fn seen(&self, it: &T, blank: Option<&T>) -> Seen {
        let value = (self.get)(it);
        Seen {
            name: self.name,
            stored: self.stored,
            range: self.range,
            value,
            unsaid: value.is_some() && blank.is_some_and(|blank| (self.get)(blank) == value),
            kept: self.kept,
            whole: self.whole,
        }
    }
}

/// What to enter: "Enter a number from 0.1 to 200 mm."
fn enter(
    kept: Kept,
    (least, most): (f64, f64),
    whole: bool,
    unit: &str,
    figure: impl Fn(f64) -> String,
) -> String {
    let what = if whole { "a whole number" } else { "a number" };
    let unit = match kept {
        Kept::Bare | Kept::Degree => unit.to_owned(),
        _ => format!(" {unit}"),
    };
    let figure = |number: f64| figure(number).replace('-', "−");
    format!("Enter {what} from {} to {}{unit}.", figure(least), figure(most))
}
