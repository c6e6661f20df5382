//! A plan in words.

use super::{LimitOf, PlanKind, Rejection};
use crate::trade::quantity::fixed;
use std::fmt;

impl PlanKind {
    /// A short name for the screen.
    pub const fn words(self) -> &'static str {
        match self {
            Self::SlideCold => "by hand",
            Self::HeatHousing => "heat the housing",
            Self::HeatPart => "heat the part",
            Self::CoolPart => "cool the part",
            Self::CoolShaft => "cool the shaft",
            Self::HeatAndCool => "heat and cool",
            Self::PressCold => "press cold",
            Self::NoPlan => "no way within the limits",
        }
    }

    /// How it is done, in one or two sentences.
    pub const fn how(self) -> &'static str {
        match self {
            Self::SlideCold => "It goes in by hand, square and clean.",
            Self::HeatHousing => {
                "Heat the housing evenly: oven, hot plate or hot air, never a flame on one spot. \
                 Drop the part in, hold it home while it cools, then press it home again."
            }
            Self::HeatPart => {
                "Heat the part evenly: oven, hot plate or hot air, never a flame on one spot. \
                 Slide it on, hold it home while it cools, then press it home again."
            }
            Self::CoolPart => {
                "Cool the part in a dry bag until it is cold right through. \
                 Drop it in, hold it home while it warms, wipe and oil it against rust."
            }
            Self::CoolShaft => {
                "Cool the shaft in a dry bag until it is cold right through. \
                 Slide the part on, hold it home while the shaft warms, wipe and oil it against rust."
            }
            Self::HeatAndCool => {
                "Heat the one with the hole evenly and cool the other in a dry bag. \
                 Join them at once, hold until both are at room temperature, then press home again."
            }
            Self::PressCold => {
                "Oil both faces unless the manual says dry, start it square, and push on the ring that is being fitted, \
                 with the case supported behind the bore."
            }
            Self::NoPlan => "Change a limit, allow another way, or ask the machine shop.",
        }
    }
}

impl LimitOf {
    /// Whose limit, in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Housing => "the housing's limit",
            Self::Part => "the part's limit",
            Self::HousingMaterial => "the limit of the housing's material",
            Self::PartMaterial => "the limit of the part's material",
        }
    }
}

impl fmt::Display for Rejection {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAllowed => f.write_str("It is not allowed here."),
            Self::TooHot {
                needed_c,
                limit_c,
                whose,
            } => {
                write!(
                    f,
                    "It takes {needed_c:.0} °C; {} is {limit_c:.0} °C.",
                    whose.words()
                )
            }
            Self::TooLittle {
                clearance_mm,
                wanted_mm,
            } if *clearance_mm < 0.0 => {
                let left_mm = -clearance_mm;
                write!(
                    f,
                    "It leaves {} mm of interference; {} mm of clearance is wanted.",
                    fixed(left_mm, 3),
                    fixed(*wanted_mm, 3)
                )
            }
            Self::TooLittle {
                clearance_mm,
                wanted_mm,
            } => {
                write!(
                    f,
                    "It gives {} mm of clearance; {} mm is wanted.",
                    fixed(*clearance_mm, 3),
                    fixed(*wanted_mm, 3)
                )
            }
        }
    }
}
