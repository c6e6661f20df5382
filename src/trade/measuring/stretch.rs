//! How far a bolt stretched, and the pull that goes with it.

use super::{MeasuringError, Standing, mm, size_mm, stands};
use crate::trade::quantity::{Force, Length, Pressure};
use crate::trade::thread::Thread;
use std::f64::consts::FRAC_PI_4;
use uom::si::f64::Area;
use uom::si::length::millimeter;
use uom::si::pressure::gigapascal;

/// Stretch: tight length less free length, both over the ends.
///
/// # Errors
/// A length that is not above zero, or a tight one under the free one.
pub fn stretch(free: Length, tight: Length) -> Result<Length, MeasuringError> {
    let (free_mm, tight_mm) = (size_mm(free)?, size_mm(tight)?);
    if tight_mm < free_mm {
        return Err(MeasuringError::Shrunk);
    }
    Ok(mm(tight_mm - free_mm))
}

/// What to do with a bolt by its stretch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Next {
    /// It holds.
    Keep,
    /// Too little: loosen it and tighten it anew.
    Again,
    /// Too much: it goes, with its like where the manual says so.
    Replace,
}

/// Too little is tightened anew, too much is replaced (US Army TM 55-1905-223-24-1).
///
/// # Errors
/// No limit, or the wrong way round.
pub fn next(stretch: Length, least: Option<Length>, most: Option<Length>) -> Result<Next, MeasuringError> {
    let mm = |length: Length| length.get::<millimeter>();
    Ok(match stands(mm(stretch), least.map(mm), most.map(mm))? {
        Standing::Within => Next::Keep,
        Standing::Below(_) => Next::Again,
        Standing::Above(_) => Next::Replace,
    })
}

/// A bolt in its joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InGrip {
    /// Its thread.
    pub thread: Thread,
    /// What it clamps, under the head to the nut or the thread of the part.
    pub grip: Length,
    /// How much of the grip is plain shank; the rest is thread.
    pub shank: Length,
    /// The shank's diameter.
    pub shank_diameter: Length,
    /// Young's modulus E: steel 200 to 210 GPa.
    pub young: Pressure,
}

/// Young's modulus of steel bolts (handbooks).
pub const STEEL_YOUNG_GPA: f64 = 205.0;

/// Head and nut give a little as well, each like so much more of the bolt in diameters: half of its shank, half
/// of its thread (after VDI 2230, from memory).
const ENDS_DIAMETERS: f64 = 0.5;

impl InGrip {
    /// The pull a stretch tells, low and high: F = δ·E / (l₁/A₁ + l₂/A_s), with the give of head and nut and
    /// without. Holds while the bolt is elastic; past its yield the stretch says nothing of the pull.
    ///
    /// # Errors
    /// A size or modulus that makes no sense; a shank longer than the grip; a pipe thread.
    pub fn pull(&self, stretch: Length) -> Result<(Force, Force), MeasuringError> {
        let (with_ends, without) = (self.give(ENDS_DIAMETERS)?, self.give(0.0)?);
        let pull = |per_mm: f64| {
            self.young * Area::new::<uom::si::area::square_millimeter>(stretch.get::<millimeter>() / per_mm)
        };
        if stretch < mm(0.0) {
            return Err(MeasuringError::Shrunk);
        }
        Ok((pull(with_ends), pull(without)))
    }

    /// The stretch that goes with a pull, least and most: [`InGrip::pull`] turned round.
    ///
    /// # Errors
    /// As [`InGrip::pull`].
    pub fn stretch_for(&self, pull: Force) -> Result<(Length, Length), MeasuringError> {
        let for_give =
            |per_mm: f64| mm((pull / self.young).get::<uom::si::area::square_millimeter>() * per_mm);
        Ok((for_give(self.give(0.0)?), for_give(self.give(ENDS_DIAMETERS)?)))
    }

    /// Σ l/A, 1/mm, with the ends counted as so many diameters each.
    fn give(&self, ends: f64) -> Result<f64, MeasuringError> {
        if self.thread.is_pipe() {
            return Err(MeasuringError::Pipe);
        }
        if !(1.0..=500.0).contains(&self.young.get::<gigapascal>()) {
            return Err(MeasuringError::Modulus);
        }
        let grip_mm = size_mm(self.grip)?;
        let shank_mm = self.shank.get::<millimeter>();
        let around_mm = size_mm(self.shank_diameter)?;
        if !(0.0..=grip_mm + 1e-9).contains(&shank_mm) {
            return Err(MeasuringError::Shank);
        }
        let more_mm = ends * self.thread.major().get::<millimeter>();
        let shank_mm2 = FRAC_PI_4 * around_mm * around_mm;
        let thread_mm2 = self
            .thread
            .stress_area()
            .get::<uom::si::area::square_millimeter>();
        let threaded_mm = (grip_mm - shank_mm).max(0.0);
        Ok((shank_mm + more_mm) / shank_mm2 + (threaded_mm + more_mm) / thread_mm2)
    }
}
