//! Angles out of text: degrees, and turns as manuals have them.

use super::Angle;
use super::text_error::TextError;
use super::typed::{Sign, Subject, Typed, Unit, read_single};
use serde::{Deserialize, Serialize};
use uom::si::angle::degree;

/// A unit of angle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum AngleUnit {
    /// Degree, °.
    Degree,
    /// Full turn of 360°; read in fractions too: "1/4 turn".
    Turn,
}

impl AngleUnit {
    /// `value` of this unit as a quantity.
    pub fn angle(self, value: f64) -> Angle {
        Angle::new::<degree>(self.base(value))
    }
}

impl Unit for AngleUnit {
    const SUBJECT: Subject = Subject {
        what: "an angle",
        example: "90°",
        units: "° or turn",
        least: 0.0,
        least_limit: "zero",
        least_why: "an angle is not negative here",
        most: 360.0,
        limit: "360°",
        why: "no stage goes past a full turn",
    };
    const FRACTIONS: &'static str = "halves, thirds, quarters, sixths, eighths and twelfths of a turn are, \
                                     such as 1/4 turn";

    fn spelled(key: &str) -> Option<Self> {
        match key {
            "°" | "º" | "deg" | "degs" | "degree" | "degrees" => Some(Self::Degree),
            "turn" | "turns" | "rev" | "revs" => Some(Self::Turn),
            _ => None,
        }
    }

    fn symbol(self) -> &'static str {
        match self {
            Self::Degree => "°",
            Self::Turn => "turn",
        }
    }

    fn base(self, value: f64) -> f64 {
        match self {
            Self::Degree => value,
            Self::Turn => value * 360.0,
        }
    }

    fn takes_fraction(self, denominator: u32) -> bool {
        self == Self::Turn && matches!(denominator, 2 | 3 | 4 | 6 | 8 | 12)
    }
}

impl Typed<AngleUnit> {
    /// The angle that was typed.
    pub fn angle(&self) -> Angle {
        self.unit.angle(self.value)
    }
}

/// Reads an angle from zero to a full turn; degrees where no unit is written.
///
/// ```
/// use halfcase::trade::quantity::parse_angle;
/// use uom::si::angle::degree;
/// let quarter = parse_angle("1/4 turn")?;
/// assert_eq!(quarter.angle().get::<degree>().round(), 90.0);
/// # Ok::<(), halfcase::trade::quantity::TextError>(())
/// ```
///
/// # Errors
/// The place and what was expected there; negative and more than 360° are refused.
pub fn parse_angle(text: &str) -> Result<Typed<AngleUnit>, TextError> {
    read_single(text, Some(AngleUnit::Degree), Sign::NotNegative)
}
