//! Measurements of a bottom end and of what goes with it: float, shells, rings, pistons, preload, backlash,
//! run-out, flatness, springs, threads. Values in, a value out; limits are judged by
//! [`Allowed`](super::measure::Allowed) and [`stands`].
//!
//! Packs, tables by ranges and codes, and the change after a trial are in [`selection`](super::selection),
//! plastic strip in [`gauging`](super::gauging), bores and journals in [`measure`](super::measure).

pub mod backlash;
pub mod engagement;
pub mod flatness;
pub mod float;
pub mod insert;
pub mod piston;
pub mod ring;
pub mod runout;
pub mod shell;
pub mod spring;
pub mod stretch;
pub mod turning;

use super::quantity::Length;
use std::fmt;
use uom::si::length::millimeter;

/// Why nothing can be worked out; the sentence says what to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeasuringError {
    /// A size is not above zero, or over 10 m.
    Size,
    /// A reading is no number, or over 1 m either way.
    Reading,
    /// Fewer readings than it takes.
    Few(usize),
    /// Limits the wrong way round, below zero where they can't be, or none.
    Limits,
    /// The gap is smaller than the float wanted.
    NoRoom,
    /// A radius, a length to go by, or a share is not above zero.
    Base,
    /// A force or a torque is below zero or absurd.
    Load,
    /// A seal drags more than the whole was read at.
    Drag,
    /// The manual's change of pack for a change of torque is missing.
    Figure,
    /// An angle that no gear has.
    PressureAngle,
    /// Coils that work: none, or over 200.
    Coils,
    /// The coil's mean diameter is not larger than its wire.
    Coil,
    /// A shear or Young's modulus that no metal has.
    Modulus,
    /// The height is not under the free length.
    Height,
    /// Two heights at which a spring was read are the same.
    Heights,
    /// The load does not rise as the spring gets shorter.
    Loads,
    /// The tight length is under the free one.
    Shrunk,
    /// The bolt does not reach through what it clamps.
    Stack,
    /// A pipe thread.
    Pipe,
    /// A temperature outside −100 to 300 °C.
    Temperature,
}

impl fmt::Display for MeasuringError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Size => "Enter each size above zero and under 10 m.",
            Self::Reading => "Enter each reading as a number, up to 1 m either way.",
            Self::Few(least) => return write!(f, "Take at least {least} readings."),
            Self::Limits => "Enter the limits with the lower one first.",
            Self::NoRoom => {
                "The gap is smaller than the float wanted: no shim makes it larger. Measure it again without shims."
            }
            Self::Base => "Enter the length it is measured over, above zero.",
            Self::Load => "Enter each load, from zero up.",
            Self::Drag => "The seal alone can’t drag more than all of it: read both again.",
            Self::Figure => "Enter how much pack the manual gives for how much torque, both above zero.",
            Self::PressureAngle => "Enter the gears’ pressure angle, from 10° to 30°.",
            Self::Coils => "Enter the coils that work, above zero and up to 200.",
            Self::Coil => "The coil’s mean diameter must be larger than its wire: measure both again.",
            Self::Modulus => "Enter the modulus of the metal, from 1 to 500 GPa.",
            Self::Height => "The height must be under the free length: measure both again.",
            Self::Heights => "Read the spring at two different heights.",
            Self::Loads => "A spring bears more when it is shorter: read both loads again.",
            Self::Shrunk => "The tight length is under the free one: measure both again.",
            Self::Stack => {
                "The bolt does not reach the thread: its length under the head must be more than what it clamps."
            }
            Self::Pipe => "Choose a bolt’s thread: nothing is reckoned of a pipe thread.",
            Self::Temperature => "Enter a temperature between −100 and 300 °C.",
        })
    }
}

impl std::error::Error for MeasuringError {}

/// Where a number lies against its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Standing {
    /// On or between them.
    Within,
    /// Under the least by so much.
    Below(f64),
    /// Over the most by so much.
    Above(f64),
}

/// Judges a torque, a load or another number against limits in the same unit; either may be open, one on a
/// limit is within. A ten-thousandth of the unit is let pass: less than any manual's last figure.
///
/// # Errors
/// No limit, none that is a number, or the wrong way round.
pub fn stands(value: f64, least: Option<f64>, most: Option<f64>) -> Result<Standing, MeasuringError> {
    let ends = [least, most];
    let (low, high) = (least.unwrap_or(-1e12), most.unwrap_or(1e12));
    let sane = ends.iter().flatten().all(|end| end.abs() <= 1e12);
    if ends == [None, None] || !sane || low > high {
        return Err(MeasuringError::Limits);
    }
    if value.is_nan() {
        return Err(MeasuringError::Reading);
    }
    Ok(if value < low - HAIR {
        Standing::Below(low - value)
    } else if value > high + HAIR {
        Standing::Above(value - high)
    } else {
        Standing::Within
    })
}

const HAIR: f64 = 1e-4;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

/// A size in mm: above zero, under 10 m.
fn size_mm(size: Length) -> Result<f64, MeasuringError> {
    let mm = size.get::<millimeter>();
    if mm > 0.0 && mm < 10_000.0 {
        Ok(mm)
    } else {
        Err(MeasuringError::Size)
    }
}

/// A reading in mm: up to 1 m either way.
fn reading_mm(reading: Length) -> Result<f64, MeasuringError> {
    let mm = reading.get::<millimeter>();
    if mm.abs() <= 1000.0 {
        Ok(mm)
    } else {
        Err(MeasuringError::Reading)
    }
}

/// Readings in mm, at least so many.
fn readings_mm(readings: &[Length], least: usize) -> Result<Vec<f64>, MeasuringError> {
    if readings.len() < least {
        return Err(MeasuringError::Few(least));
    }
    readings.iter().map(|reading| reading_mm(*reading)).collect()
}

/// Least and most of some numbers.
fn ends(values: &[f64]) -> (f64, f64) {
    values
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| {
            (low.min(*one), high.max(*one))
        })
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}
