//! A piston in its bore.

use super::{MeasuringError, size_mm};
use crate::trade::growth::{GrowthError, size_at_20};
use crate::trade::material::Material;
use crate::trade::measure::Clearance;
use crate::trade::quantity::{Length, ThermodynamicTemperature};

/// A diameter as it was read, and what it is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Read {
    /// The diameter, read with a steel instrument that lay beside it.
    pub size: Length,
    /// What the part is made of.
    pub material: Material,
}

/// The clearance at 20 °C of a piston, read at the manual's height, in a bore read at its narrowest and its
/// widest, all at one temperature `at`; negative is interference.
///
/// # Errors
/// A size not above zero, a bore the wrong way round, a temperature outside −100 to 300 °C.
pub fn clearance(
    narrowest: Read,
    widest: Length,
    piston: Read,
    at: ThermodynamicTemperature,
) -> Result<Clearance, MeasuringError> {
    if size_mm(widest)? < size_mm(narrowest.size)? {
        return Err(MeasuringError::Limits);
    }
    let least = at_20(narrowest.size, narrowest.material, at)?;
    let most = at_20(widest, narrowest.material, at)?;
    let piston = at_20(piston.size, piston.material, at)?;
    Ok(Clearance {
        least: least - piston,
        mean: (least + most) / 2.0 - piston,
        most: most - piston,
    })
}

fn at_20(size: Length, material: Material, at: ThermodynamicTemperature) -> Result<Length, MeasuringError> {
    size_mm(size)?;
    size_at_20(size, material, at).map_err(|why| match why {
        GrowthError::Temperature => MeasuringError::Temperature,
        GrowthError::Size | GrowthError::Coefficient => MeasuringError::Size,
    })
}
