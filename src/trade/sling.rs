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
    /// The farther leg of a load off centre, in degrees: under 30° though the nearer one isn't.
    FartherTooFlat(f64),
    /// The angle is over 90°, or not a number.
    Angle,
    /// An eyebolt pulled flatter than 45° from the horizontal.
    Eyebolt,
    /// The distances of an off-centre load make no sense.
    Centre,
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
            Self::FartherTooFlat(degrees) => write!(
                f,
                "The farther leg stands at {:.0}° from the horizontal, too flat: longer legs, at least 30° at both.",
                degrees.floor()
            ),
            Self::Angle => f.write_str("Enter the legs' angle from the horizontal, from 30 to 90°."),
            Self::Eyebolt => f.write_str(
                "Eyebolts must not be pulled flatter than 45° from the horizontal: longer legs, or a spreader.",
            ),
            Self::Centre => f.write_str(
                "The centre of gravity lies between the two lifting points: measure both distances again.",
            ),
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

/// How a sling goes round the load.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hitch {
    /// Straight from hook to load.
    #[default]
    Straight,
    /// Through its own eye.
    Choker,
    /// Under the load and back to the hook.
    Basket,
}

impl Hitch {
    /// Every hitch, in the order the screens show them.
    pub const ALL: [Self; 3] = [Self::Straight, Self::Choker, Self::Basket];

    /// The hitch in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Straight => "straight",
            Self::Choker => "choker: through its own eye",
            Self::Basket => "basket: under the load and back",
        }
    }
}

/// What a choker keeps of the straight rating, least and most, its choke 120° or wider: 0.75 of wire rope
/// and web, 0.80 of chain and some web (ASME B30.9, from memory). A tighter choke keeps less.
pub const CHOKER_SHARE: (f64, f64) = (0.75, 0.80);

/// What a shoulder-type eyebolt keeps of its straight rating when pulled at 45°, least and most
/// (ASME B30.26, from memory). The least is used for any pull that isn't plumb.
pub const EYEBOLT_SHARE: (f64, f64) = (0.3, 0.5);

/// Flattest pull on an eyebolt, and what counts as plumb, degrees from the horizontal.
const EYEBOLT_FLATTEST: f64 = 45.0;
const PLUMB: f64 = 85.0;

/// The straight (vertical) rating that each sling must have for its hitch.
///
/// Straight: W/(n·sin β). Choker: that over [`CHOKER_SHARE`]'s least. Basket: each sling has two parts,
/// W/(n·2·sin β), so one at 90° carries twice its rating. Of more than two slings two carry.
///
/// # Errors
/// As [`rating_needed`].
pub fn sling_rating(
    load: Mass,
    legs: u8,
    angle_from_horizontal: Angle,
    hitch: Hitch,
) -> Result<Mass, SlingError> {
    let straight = rating_needed(load, legs, angle_from_horizontal)?;
    match hitch {
        Hitch::Straight => Ok(straight),
        Hitch::Choker => Ok(straight / CHOKER_SHARE.0),
        Hitch::Basket => {
            let parts = 2.0 * f64::from(legs.min(CARRYING_LEGS));
            Ok(load * angle_factor(angle_from_horizontal)? / parts)
        }
    }
}

/// The straight rating that a shoulder-type eyebolt must have for a leg of that tension: all of it when
/// plumb, else [`EYEBOLT_SHARE`]'s least. A plain eyebolt without a shoulder takes a plumb pull only.
///
/// # Errors
/// [`SlingError::Eyebolt`] under 45° from the horizontal.
pub fn eyebolt_rating(tension: Mass, angle_from_horizontal: Angle) -> Result<Mass, SlingError> {
    let degrees = (angle_from_horizontal.get::<degree>() * 1e6).round() / 1e6;
    if !(0.0..=90.0).contains(&degrees) {
        Err(SlingError::Angle)
    } else if degrees < EYEBOLT_FLATTEST {
        Err(SlingError::Eyebolt)
    } else if degrees >= PLUMB {
        Ok(tension)
    } else {
        Ok(tension / EYEBOLT_SHARE.0)
    }
}

/// The heavier of two shares, where two legs or two people hold a load at points `span` apart and its centre
/// of gravity lies `near` from one of them: the nearer one carries (span − near)/span.
///
/// # Errors
/// [`SlingError::Centre`] where the centre isn't between the two.
pub fn heavier_share(span: Length, near: Length) -> Result<Ratio, SlingError> {
    let (span_m, near_m) = (span.get::<meter>(), near.get::<meter>());
    if (1e-3..1e3).contains(&span_m) && near_m > 0.0 && near_m < span_m {
        let share = near_m / span_m;
        Ok(Ratio::new::<ratio>(share.max(1.0 - share)))
    } else {
        Err(SlingError::Centre)
    }
}

/// The angle of the farther of two legs, from that of the nearer one, both from the horizontal: the hook comes
/// to hang above the centre of gravity, `near` from the one and `span − near` from the other, so
/// tan β_far = tan β_near · near/(span − near) (statics).
///
/// # Errors
/// As [`heavier_share`]; [`SlingError::Angle`] outside 0 to 90°.
pub fn farther_angle(span: Length, near: Length, nearer_angle: Angle) -> Result<Angle, SlingError> {
    let share = heavier_share(span, near)?.get::<ratio>();
    let degrees = nearer_angle.get::<degree>();
    if !(0.0..=90.0).contains(&degrees) {
        return Err(SlingError::Angle);
    }
    let (sin, cos) = nearer_angle.get::<radian>().sin_cos();
    Ok(Angle::new::<radian>(
        (sin * (1.0 - share)).atan2(cos.max(0.0) * share),
    ))
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
