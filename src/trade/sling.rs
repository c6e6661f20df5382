//! What each leg of a sling carries.

use crate::trade::quantity::{Angle, Force, Length, Mass, Ratio};
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::angle::{degree, radian};
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

/// Standard gravity, m/s² (exact by definition).
pub const GRAVITY_M_S2: f64 = 9.806_65;

/// Flattest leg allowed, degrees from the horizontal (ASME B30.9).
pub const FLATTEST_DEGREES: f64 = 30.0;

/// More legs than this never share alike under a rigid load (common practice).
const CARRYING_LEGS: u8 = 2;

/// Why a sling has no answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SlingError {
    /// The load is not above zero, or absurd.
    Load,
    /// No legs, or more than eight.
    Legs,
    /// The angle, in degrees, is under 30° from the horizontal.
    TooFlat(f64),
    /// The angle is over 90°, or not a number.
    Angle,
    /// The leg is too short for the spread of its ends, or a length is missing.
    Lengths,
}

impl fmt::Display for SlingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Load => f.write_str("Enter the load, above zero and under 100 000 kg."),
            Self::Legs => f.write_str("Enter one to eight legs."),
            Self::TooFlat(degrees) => write!(
                f,
                "{:.0}° from the horizontal is too flat: use longer legs, at least 30° and best 60°.",
                // Down, so that 29.6° is not told as the 30° that is allowed.
                degrees.floor()
            ),
            Self::Angle => f.write_str("Enter the legs' angle from the horizontal, from 30 to 90°."),
            Self::Lengths => {
                f.write_str("The leg must be longer than half the spread of its ends: check both lengths.")
            }
        }
    }
}

impl std::error::Error for SlingError {}

/// How much more a leg carries than its plumb share: 1/sin β, β from the horizontal (not from the
/// vertical, which published sheets mix up). Refuses under 30°.
pub fn angle_factor(angle_from_horizontal: Angle) -> Result<Ratio, SlingError> {
    // A microdegree of slack, so that 30° that came through radians is 30°.
    let degrees = (angle_from_horizontal.get::<degree>() * 1e6).round() / 1e6;
    if !(0.0..=90.0).contains(&degrees) {
        Err(SlingError::Angle)
    } else if degrees < FLATTEST_DEGREES {
        Err(SlingError::TooFlat(degrees))
    } else {
        Ok(Ratio::new::<ratio>(
            1.0 / angle_from_horizontal.get::<radian>().sin(),
        ))
    }
}

/// The tension in each leg that carries: W/(n·sin β) (ASME B30.9).
///
/// One leg hangs plumb, whatever the angle given. Of three and more, two are taken to carry all, as a
/// rigid load rests on two. The load includes the rigging.
///
/// ```
/// use halfcase::trade::quantity::{Angle, Mass};
/// use halfcase::trade::sling::leg_tension;
/// use uom::si::{angle::degree, force::newton, mass::kilogram};
///
/// let load = Mass::new::<kilogram>(48.0);
/// let tension = leg_tension(load, 2, Angle::new::<degree>(60.0))?;
/// assert_eq!(tension.get::<newton>().round(), 272.0);
/// assert!(leg_tension(load, 2, Angle::new::<degree>(25.0)).is_err());
/// # Ok::<(), halfcase::trade::sling::SlingError>(())
/// ```
pub fn leg_tension(load: Mass, legs: u8, angle_from_horizontal: Angle) -> Result<Force, SlingError> {
    let rating = rating_needed(load, legs, angle_from_horizontal)?;
    Ok(Force::new::<newton>(rating.get::<kilogram>() * GRAVITY_M_S2))
}

/// The working load limit each leg must have, for that tension, as slings are marked: a mass.
pub fn rating_needed(load: Mass, legs: u8, angle_from_horizontal: Angle) -> Result<Mass, SlingError> {
    if !(f64::MIN_POSITIVE..1e5).contains(&load.get::<kilogram>()) {
        return Err(SlingError::Load);
    }
    match legs {
        0 | 9.. => Err(SlingError::Legs),
        1 => Ok(load),
        _ => Ok(load * angle_factor(angle_from_horizontal)? / f64::from(legs.min(CARRYING_LEGS))),
    }
}

/// The angle from the horizontal of a leg of that length when its two lower ends are `spread` apart and
/// it hangs from the middle: cos β = spread/2/leg.
pub fn angle_from_spread(leg: Length, spread: Length) -> Result<Angle, SlingError> {
    let (leg_m, half_m) = (leg.get::<meter>(), spread.get::<meter>() / 2.0);
    if (1e-3..1e3).contains(&leg_m) && (0.0..leg_m).contains(&half_m) {
        Ok(Angle::new::<radian>((half_m / leg_m).acos()))
    } else {
        Err(SlingError::Lengths)
    }
}
