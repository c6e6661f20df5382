//! How far a bolt stretched, and what to do with it; the pull that goes with it is [`crate::trade::stretch`]'s.

use super::{MeasuringError, Standing, mm, size_mm, stands};
use crate::trade::quantity::Length;
use uom::si::length::millimeter;

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
