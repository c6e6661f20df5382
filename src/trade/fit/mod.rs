//! Limits and fits (ISO 286): tolerance classes, their limits, and the interference of two parts.

mod class;
mod interference;
mod limits;
mod running;
mod table;

pub use class::{Feature, FitCode, Position, ToleranceClass};
pub use interference::{Interference, SizeSource, interference, size_range};
pub(crate) use limits::checked_nominal;
pub use limits::{Limits, limits};
pub use running::{Grip, RunningFit, running};

use crate::trade::growth::GrowthError;
use crate::trade::quantity::{fixed, shortest};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Why a fit has no answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FitError {
    /// The text is no tolerance class; what was read.
    NotAClass(String),
    /// The text is no fit; what was read.
    NotAFit(String),
    /// The nominal size, in mm, lies outside 1 to 630 mm.
    Size(f64),
    /// A grade outside IT5 to IT11.
    Grade(u8),
    /// The standard defines no such class at this size.
    NotDefined(ToleranceClass),
    /// A shaft's class or a ring's outside stands where the hole belongs.
    NotAHole,
    /// A hole's class or a ring's bore stands where the part that goes in belongs.
    NotAShaft,
    /// The two sizes, in mm (hole, part), are too far apart to be meant for each other.
    Mismatch(f64, f64),
    /// The least size, in mm, is above the most, or either is no size.
    Between(f64, f64),
    /// A measured size can't be carried to 20 °C.
    Measured(GrowthError),
}

impl fmt::Display for FitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAClass(text) => {
                write!(
                    f,
                    "“{text}” is no tolerance class: write a letter and a grade, as in N7 or k6."
                )
            }
            Self::NotAFit(text) => {
                write!(f, "“{text}” is no fit: write it as 62 N7, 25 k6 or 52 H7/p6.")
            }
            Self::Size(mm) if mm.is_finite() => {
                write!(
                    f,
                    "{} mm is outside the tables: enter a nominal size from 1 to 630 mm.",
                    shortest(*mm)
                )
            }
            Self::Size(_) => f.write_str("Enter a nominal size from 1 to 630 mm."),
            Self::Grade(grade) => {
                write!(
                    f,
                    "Grade {grade} is outside the tables: use a grade from 5 to 11."
                )
            }
            Self::NotDefined(class) => {
                write!(
                    f,
                    "{class} is not defined at this size: check the drawing, or enter measured sizes."
                )
            }
            Self::NotAHole => {
                f.write_str("The outer part needs a hole: a capital letter, or a bearing's bore.")
            }
            Self::NotAShaft => {
                f.write_str("The inner part needs a shaft: a small letter, or a bearing's outside.")
            }
            Self::Mismatch(hole, part) => {
                write!(
                    f,
                    "A {} mm part does not belong in a {} mm hole: check both sizes.",
                    fixed(*part, 3),
                    fixed(*hole, 3)
                )
            }
            Self::Between(least, most) => {
                write!(
                    f,
                    "{} to {} mm is no size: enter the least first, above zero.",
                    fixed(*least, 3),
                    fixed(*most, 3)
                )
            }
            Self::Measured(why) => why.fmt(f),
        }
    }
}

impl std::error::Error for FitError {}

impl From<GrowthError> for FitError {
    fn from(why: GrowthError) -> Self {
        Self::Measured(why)
    }
}
