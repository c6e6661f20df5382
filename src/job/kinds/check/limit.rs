//! One reading, with what the manual allows: new, and worn.

use super::how::{How, Worked, fit_words};
use crate::job::id::ReadingId;
use crate::job::reading::Verdict;
use crate::trade::quantity::{LengthUnit, Stated, Unit, fixed};
use serde::{Deserialize, Serialize};

/// One measured thing and its limits.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Limit {
    /// Unique among the readings and bores of the step.
    #[serde(default)]
    pub id: ReadingId,
    /// What it is.
    pub name: String,
    /// The unit the limits are in; empty where there is none.
    pub unit: String,
    /// New, not less than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<Stated>,
    /// New, not more than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<Stated>,
    /// Worn, not less than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worn_least: Option<Stated>,
    /// Worn, not more than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worn_most: Option<Stated>,
    /// The limits are per inch, or per mm, of the radius it is read at: run-out on a flange's face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub per: Option<LengthUnit>,
    /// That radius, in that unit, where the plan names it; else it is read first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius: Option<f64>,
    /// It is counted: teeth, balls, drips. Only whole numbers are.
    #[serde(default, skip_serializing_if = "is_false")]
    pub whole: bool,
    /// It is worked out from others, and never asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worked: Option<Worked>,
}

fn is_false(it: &bool) -> bool {
    !it
}

/// What arithmetic may leave behind, as a share: a value on a limit is within it.
const LAST_BITS: f64 = 1e-9;

impl Limit {
    /// All four, in a fixed order.
    pub fn all(&self) -> [Option<f64>; 4] {
        self.stated().map(|limit| limit.map(|stated| stated.value))
    }

    fn stated(&self) -> [Option<Stated>; 4] {
        [self.least, self.most, self.worn_least, self.worn_most]
    }

    /// What a new one may have.
    pub fn new_pair(&self) -> Pair {
        let [least, most, ..] = self.all();
        (least, most)
    }

    fn worn_pair(&self) -> Pair {
        let [.., least, most] = self.all();
        (least, most)
    }

    /// How far a part may be used: where nothing is said of worn ones, as far as a new one goes.
    pub fn usable(&self) -> Pair {
        let [least, most, worn_least, worn_most] = self.all();
        (worn_least.or(least), worn_most.or(most))
    }

    /// What the limits say of a value, both ends included.
    pub fn judge(&self, value: f64) -> Verdict {
        if self.all() == [None; 4] {
            Verdict::Noted
        } else if !holds(self.usable(), value) {
            Verdict::Outside
        } else if holds(self.new_pair(), value) {
            Verdict::Within
        } else {
            Verdict::Worn
        }
    }

    /// What is wrong with the limits themselves: nobody could keep them.
    pub fn wrong(&self) -> Option<&'static str> {
        let counts = |limit: &f64| limit.fract() == 0.0 && *limit >= 0.0;
        let uncounted = self.whole && !self.all().iter().flatten().all(counts);
        pairs_wrong(self.new_pair(), self.worn_pair())
            .or_else(|| uncounted.then_some("The limits of a count are whole numbers from 0: correct them."))
            .or_else(|| {
                let nowhere = self.worked.is_some() && self.per.is_some() && self.radius.is_none();
                nowhere.then_some("Limits per radius of what is worked out need the radius: enter it.")
            })
    }

    /// The unit of its limits: "in", or "in per in of radius".
    fn limit_unit(&self) -> String {
        match self.per {
            None => self.unit.clone(),
            Some(per) => format!("{} per {} of radius", self.unit, per.symbol()),
        }
    }

    /// Whether the radius it is read at must be read too.
    pub fn asks_radius(&self) -> bool {
        self.per.is_some() && self.radius.is_none()
    }

    /// How tight one measured size sits in another.
    pub fn is_fit(&self) -> bool {
        self.worked.as_ref().is_some_and(|worked| worked.how == How::Fit)
    }

    /// A value of it as the manual would print it: "0.0312 mm", "0.0005 in T".
    pub fn figure(&self, value: f64) -> String {
        let own = Some(Stated::plain(value));
        let decimals = decimals(self.stated().into_iter().chain([own]), &self.unit);
        match self.is_fit() {
            true => fit_words(value, decimals, &self.unit),
            false => format!("{} {}", fixed(value, decimals), self.unit)
                .trim_end()
                .to_owned(),
        }
    }

    /// The limits in words: "0.05 to 0.15 mm, worn at most 0.3 mm".
    pub fn words(&self) -> String {
        let unit = self.limit_unit();
        let words = |least: Option<Stated>, most: Option<Stated>| {
            let decimals = decimals([least, most].into_iter(), &self.unit);
            let pair = (least.map(|limit| limit.value), most.map(|limit| limit.value));
            match self.is_fit() {
                true => fit_limits(pair, decimals, &self.unit),
                false => in_words(pair, decimals, &unit),
            }
        };
        pairs_words((self.least, self.most), (self.worn_least, self.worn_most), words)
    }
}

/// A lower and an upper limit.
pub type Pair = (Option<f64>, Option<f64>);

/// What is wrong with two pairs of limits, new and worn.
pub fn pairs_wrong(new: Pair, worn: Pair) -> Option<&'static str> {
    let over =
        |low: Option<f64>, high: Option<f64>| matches!((low, high), (Some(low), Some(high)) if low > high);
    let usable = (worn.0.or(new.0), worn.1.or(new.1));
    if over(new.0, new.1) || over(worn.0, worn.1) {
        Some("The lower limit is above the upper one.")
    } else if over(worn.0, new.0) || over(new.1, worn.1) || over(usable.0, usable.1) {
        Some("A worn part may not be held closer than a new one: correct the worn limit.")
    } else {
        None
    }
}

/// Two pairs of limits in words: "0.05 to 0.15 mm, worn at most 0.3 mm".
pub fn pairs_words<T: Copy>(
    new: (Option<T>, Option<T>),
    worn: (Option<T>, Option<T>),
    words: impl Fn(Option<T>, Option<T>) -> String,
) -> String {
    match (new, worn) {
        (_, (None, None)) => words(new.0, new.1),
        ((None, None), _) => format!("worn {}", words(worn.0, worn.1)),
        _ => format!("{}, worn {}", words(new.0, new.1), words(worn.0, worn.1)),
    }
}

fn holds((least, most): (Option<f64>, Option<f64>), value: f64) -> bool {
    let slack = |limit: f64| LAST_BITS * limit.abs();
    least.is_none_or(|least| value >= least - slack(least))
        && most.is_none_or(|most| value <= most + slack(most))
}

/// Limits in inch are read to thousandths.
const INCH: [&str; 3] = ["in", "inch", "″"];

/// How many decimals limits are written with: as many as the longest of them is stated with, and in inch
/// thousandths at least, as manuals do.
fn decimals(limits: impl Iterator<Item = Option<Stated>>, unit: &str) -> u8 {
    let longest = limits.flatten().map(|limit| limit.decimals).max().unwrap_or(0);
    longest.max(if INCH.contains(&unit) { 3 } else { 0 })
}

/// The limits of a fit in words: "0.0005 in T to 0.0010 in L".
fn fit_limits((least, most): Pair, decimals: u8, unit: &str) -> String {
    let figure = |limit: f64| fit_words(limit, decimals, unit);
    match (least, most) {
        (Some(least), Some(most)) => format!("{} to {}", figure(least), figure(most)),
        (Some(least), None) => format!("no tighter than {}", figure(least)),
        (None, Some(most)) => format!("no looser than {}", figure(most)),
        (None, None) => "no limit given".to_owned(),
    }
}

/// A limit in words: "61.961 to 61.991 mm".
pub fn limit_words(least: Option<f64>, most: Option<f64>, unit: &str) -> String {
    let plain = [least, most].map(|limit| limit.map(Stated::plain));
    in_words((least, most), decimals(plain.into_iter(), unit), unit)
}

/// The same of limits that keep their digits: "0.0050 to 0.0060 in".
pub fn stated_words(least: Option<Stated>, most: Option<Stated>, unit: &str) -> String {
    let pair = (least.map(|limit| limit.value), most.map(|limit| limit.value));
    in_words(pair, decimals([least, most].into_iter(), unit), unit)
}

fn in_words((least, most): Pair, decimals: u8, unit: &str) -> String {
    let figure = |limit: f64| fixed(limit, decimals);
    let words = match (least, most) {
        (Some(least), Some(most)) => format!("{} to {} {unit}", figure(least), figure(most)),
        (Some(least), None) => format!("at least {} {unit}", figure(least)),
        (None, Some(most)) => format!("at most {} {unit}", figure(most)),
        (None, None) => "no limit given".to_owned(),
    };
    words.trim_end().to_owned()
}
