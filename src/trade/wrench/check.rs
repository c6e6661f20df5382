//! Whether a wrench's own numbers make sense.

use super::{Wrench, WrenchKind};
use crate::trade::quantity::{LAST_BITS, TorqueUnit, Unit};
use std::fmt;

/// Why a wrench, or a torque for it, makes no sense.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WrenchError {
    /// The target is zero, negative, no number, or more than any fastener here takes.
    Target,
    /// A number of the wrench is zero, negative or no number.
    NotPositive {
        /// Which.
        what: &'static str,
    },
    /// The scale ends where it starts, or before.
    NoRange,
    /// The maximum is more than any fastener here takes.
    TooLarge,
    /// The division is wider than the scale, or finer than anyone can read.
    Division,
    /// The lines on the tube are not a whole number of divisions apart.
    MainDivision,
    /// The accuracy is not a fraction of 0.2 or less.
    Accuracy,
}

impl fmt::Display for WrenchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Target => write!(
                f,
                "The torque must be above zero and at most 20 000 N·m; type it again."
            ),
            Self::NotPositive { what } => write!(f, "The wrench's {what} must be a number above zero."),
            Self::NoRange => write!(
                f,
                "The wrench's highest mark must be above its lowest; swap them."
            ),
            Self::TooLarge => write!(
                f,
                "The wrench's highest mark is over 20 000 N·m; check its unit and the decimal point."
            ),
            Self::Division => write!(
                f,
                "The wrench's smallest division must fit into its scale, at most 100 000 times; read it off \
                 the scale."
            ),
            Self::MainDivision => write!(
                f,
                "From one line on the tube to the next must be a whole number of thimble divisions; count them."
            ),
            Self::Accuracy => {
                write!(
                    f,
                    "The wrench's accuracy must be between 0 and 20 %; most are 4 or 6 %."
                )
            }
        }
    }
}

impl std::error::Error for WrenchError {}

/// The widest accuracy taken for one: anything beyond is a percentage typed as a fraction.
const WIDEST_ACCURACY: f64 = 0.2;
/// More divisions on a scale than any wrench shows.
const MOST_DIVISIONS: f64 = 100_000.0;

impl Wrench {
    /// Whether the wrench's own numbers make sense.
    ///
    /// # Errors
    /// The first that doesn't.
    pub fn check(&self) -> Result<(), WrenchError> {
        let numbers = [
            ("lowest mark", self.min),
            ("highest mark", self.max),
            ("smallest division", self.division),
            ("accuracy", self.accuracy),
        ];
        for (what, value) in numbers {
            if !(value.is_finite() && value > 0.0) {
                return Err(WrenchError::NotPositive { what });
            }
        }
        let one_value = self.kind == WrenchKind::Preset && self.min == self.max;
        if self.min >= self.max && !one_value {
            return Err(WrenchError::NoRange);
        }
        if self.unit.base(self.max) > TorqueUnit::SUBJECT.most {
            return Err(WrenchError::TooLarge);
        }
        let room = if one_value { self.max } else { self.max - self.min };
        if self.division > room || self.max / self.division > MOST_DIVISIONS {
            return Err(WrenchError::Division);
        }
        if let WrenchKind::Thimble { main_division } = self.kind {
            let per_line = main_division / self.division;
            let whole = (per_line - per_line.round()).abs() < LAST_BITS && per_line.round() >= 1.0;
            if !whole || main_division > self.max {
                return Err(WrenchError::MainDivision);
            }
        }
        if self.accuracy > WIDEST_ACCURACY {
            return Err(WrenchError::Accuracy);
        }
        Ok(())
    }
}
