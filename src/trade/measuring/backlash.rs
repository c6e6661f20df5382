//! Backlash of a pair of gears, read at several places of the larger one.

use super::{MeasuringError, ends, mean, mm, reading_mm, readings_mm, size_mm};
use crate::trade::quantity::{Angle, Length};
use uom::si::angle::{degree, radian};

/// What readings of one pair say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lash {
    /// The mean.
    pub mean: Length,
    /// The least: what must not be under the manual's.
    pub least: Length,
    /// The most.
    pub most: Length,
    /// Most less least: where it is more than the manual's, the gear runs out.
    pub spread: Length,
}

/// The backlash of readings taken round the gear; four places are usual, two the least.
///
/// # Errors
/// Fewer than two readings, or one below zero or absurd.
pub fn lash(readings: &[Length]) -> Result<Lash, MeasuringError> {
    let all = readings_mm(readings, 2)?;
    let (least, most) = ends(&all);
    if least < 0.0 {
        return Err(MeasuringError::Reading);
    }
    Ok(Lash {
        mean: mm(mean(&all)),
        least: mm(least),
        most: mm(most),
        spread: mm(most - least),
    })
}

/// A backlash read on an arm or a flange, carried to the pitch radius: in proportion to the radius.
///
/// # Errors
/// A radius that is not above zero.
pub fn at_radius(reading: Length, read_at: Length, wanted_at: Length) -> Result<Length, MeasuringError> {
    let share = size_mm(wanted_at)? / size_mm(read_at)?;
    Ok(mm(reading_mm(reading)? * share))
}

/// How much the backlash grows when two spur gears move apart: Δj = 2·tan α·Δa, α the pressure angle, Δa the
/// change of the centre distance; small changes only (handbooks, from memory).
///
/// # Errors
/// A pressure angle outside 10° to 30°.
pub fn grown_by(apart: Length, pressure_angle: Angle) -> Result<Length, MeasuringError> {
    if !(10.0..=30.0).contains(&pressure_angle.get::<degree>()) {
        return Err(MeasuringError::PressureAngle);
    }
    Ok(mm(2.0
        * pressure_angle.get::<radian>().tan()
        * reading_mm(apart)?))
}
