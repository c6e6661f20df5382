//! Stretch and greatest length as the manual states them, in its own unit and digits.

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

    /// All of them, in a fixed order.
    pub fn all(&self) -> [Option<Stated>; 3] {
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
}
