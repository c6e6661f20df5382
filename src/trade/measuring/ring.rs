//! Piston rings: end gap and side gap.

use super::{MeasuringError, mm, reading_mm, size_mm};
use crate::trade::quantity::{Length, Ratio};
use std::f64::consts::PI;
use uom::si::ratio::ratio;

/// The end gap a bore wants by the manual's share of it (0.004 for "0.004 in an inch"); up to 0.05.
///
/// # Errors
/// A bore or a share that makes no sense.
pub fn gap_for(bore: Length, per_bore: Ratio) -> Result<Length, MeasuringError> {
    let share = per_bore.get::<ratio>();
    if !(share > 0.0 && share <= 0.05) {
        return Err(MeasuringError::Base);
    }
    Ok(mm(size_mm(bore)? * share))
}

/// The end gap in another bore: it grows by π for each unit of diameter, as the ring's ends part along the
/// wall (geometry). A ring tried low in a worn bore gaps wider at the top.
///
/// # Errors
/// A size that is not above zero, or a ring whose ends would meet.
pub fn gap_in(gap: Length, bore: Length, other_bore: Length) -> Result<Length, MeasuringError> {
    let wider = size_mm(other_bore)? - size_mm(bore)?;
    let gap = reading_mm(gap)? + PI * wider;
    if gap > 0.0 {
        Ok(mm(gap))
    } else {
        Err(MeasuringError::Size)
    }
}

/// What to file off the ends together for a least gap; nothing where the gap is wide enough.
pub fn to_file(gap: Length, least: Length) -> Length {
    let short = least - gap;
    if short > mm(0.0) { short } else { mm(0.0) }
}

/// The side gap: groove width less ring height; negative where the ring does not go in.
///
/// # Errors
/// A size that is not above zero.
pub fn side_gap(groove: Length, ring: Length) -> Result<Length, MeasuringError> {
    Ok(mm(size_mm(groove)? - size_mm(ring)?))
}
