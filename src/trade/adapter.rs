//! An adapter on the wrench's drive (crow's foot, extension spanner) changes the lever: what to set then.

use super::quantity::{Angle, LAST_BITS, Length, Torque};
use std::fmt;
use uom::si::angle::degree;
use uom::si::length::meter;
use uom::si::torque::newton_meter;

/// Why a setting for an adapter can't be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AdapterError {
    /// The torque is zero, negative or no number.
    Torque,
    /// The wrench's length is zero, negative or no number.
    WrenchLength,
    /// The adapter's length is negative or no number.
    AdapterLength,
    /// The adapter is longer than the wrench.
    LongerThanWrench,
    /// The angle is beyond 180° either way, or no number.
    Angle,
    /// The adapter reaches back so far that little lever is left.
    ReachesBack,
}

impl fmt::Display for AdapterError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Torque => "The torque must be a number above zero; type it again.",
            Self::WrenchLength => {
                "The wrench's length must be above zero; measure from the middle of the grip to the middle of \
                 the drive."
            }
            Self::AdapterLength => {
                "The adapter's length must not be negative; measure from the middle of the drive to the middle \
                 of the bolt."
            }
            Self::LongerThanWrench => {
                "The adapter is longer than the wrench, so the hand's place on the grip decides the torque; \
                 take a shorter adapter."
            }
            Self::Angle => "The angle must lie between 0° (straight on) and 180° (straight back).",
            Self::ReachesBack => {
                "The adapter points back along the wrench and leaves too little lever; turn it to 90°, where \
                 the setting does not change."
            }
        })
    }
}

impl std::error::Error for AdapterError {}

/// Least share of the wrench's length that must remain as lever (common practice, no source).
const LEAST_LEVER: f64 = 0.25;

/// What to set on the wrench for `target` at the bolt: target · L / (L + E·cos θ).
///
/// L is `wrench_length`, middle of the grip to middle of the drive; E is `adapter_length`, middle of
/// the drive to middle of the bolt; θ is `angle` between them: 0 straight on, 90° no change, more
/// than 90° points back and raises the setting. Holds while the hand pulls at the middle of the
/// grip, square to the wrench. Formula for θ = 0: US Army TM 1-1500-204-23-9; the projection by
/// cos θ is statics.
///
/// # Errors
/// Lengths or angles out of range; an adapter longer than the wrench, or one that leaves less than
/// a quarter of its lever.
pub fn corrected_setting(
    target: Torque,
    wrench_length: Length,
    adapter_length: Length,
    angle: Angle,
) -> Result<Torque, AdapterError> {
    sound(target)?;
    sound(target / lever_ratio(wrench_length, adapter_length, angle)?)
}

fn sound(torque: Torque) -> Result<Torque, AdapterError> {
    let newton_metres = torque.get::<newton_meter>();
    if newton_metres > 0.0 && newton_metres.is_finite() {
        Ok(torque)
    } else {
        Err(AdapterError::Torque)
    }
}

/// (L + E·cos θ) / L.
fn lever_ratio(wrench: Length, adapter: Length, angle: Angle) -> Result<f64, AdapterError> {
    let (l_m, e_m, theta_deg) = (
        wrench.get::<meter>(),
        adapter.get::<meter>(),
        angle.get::<degree>(),
    );
    if !(l_m.is_finite() && l_m > 0.0) {
        return Err(AdapterError::WrenchLength);
    }
    if !(e_m.is_finite() && e_m >= 0.0) {
        return Err(AdapterError::AdapterLength);
    }
    if e_m > l_m {
        return Err(AdapterError::LongerThanWrench);
    }
    // A typed 180° is 180.00000000000003 after a trip through radians.
    if !(theta_deg.is_finite() && theta_deg.abs() <= 180.0 * (1.0 + LAST_BITS)) {
        return Err(AdapterError::Angle);
    }
    let ratio = 1.0 + e_m / l_m * theta_deg.to_radians().cos();
    if ratio < LEAST_LEVER {
        Err(AdapterError::ReachesBack)
    } else {
        Ok(ratio)
    }
}
