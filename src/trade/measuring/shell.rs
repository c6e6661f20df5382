//! A bearing shell between housing and journal.

use super::{MeasuringError, mm, size_mm};
use crate::trade::quantity::Length;

/// The clearance two shells leave: housing bore less both walls less the journal; negative is interference.
/// The housing is read with its cap at full torque. Shells bulge by their crush, so that plastic strip reads
/// somewhat less (common practice).
///
/// # Errors
/// A size that is not above zero.
pub fn clearance(housing: Length, walls: [Length; 2], journal: Length) -> Result<Length, MeasuringError> {
    let walls = size_mm(walls[0])? + size_mm(walls[1])?;
    Ok(mm(size_mm(housing)? - walls - size_mm(journal)?))
}

/// The wall of each of two like shells that leaves this clearance.
///
/// # Errors
/// A size that is not above zero; a clearance with no room for shells.
pub fn wall_for(housing: Length, journal: Length, clearance: Length) -> Result<Length, MeasuringError> {
    let wall = mm(size_mm(housing)? - size_mm(journal)?) - clearance;
    let wall = wall / 2.0;
    size_mm(wall).map(|_| wall)
}
