//! Thermal growth, and the size that a reading stands for at 20 °C.

use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::f64::TemperatureCoefficient;
use uom::si::length::meter;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Sizes hold at this temperature (ISO 1).
pub const REFERENCE_CELSIUS: f64 = 20.0;

/// Share by which the expansion of steel falls for each kelvin below 20 °C.
///
/// Fitted to the cubic of Kaw, Numerical Methods, the trunnion: its mean expansion from 20 to −78 °C
/// is 0.918 of that at 20 °C. Used for every material; it is cautious for aluminium, which falls less.
const COLD_LOSS_PER_KELVIN: f64 = 0.0017;

/// Coldest and hottest part the constants are used for.
pub(crate) const COLDEST_CELSIUS: f64 = -100.0;
pub(crate) const HOTTEST_CELSIUS: f64 = 300.0;

/// Why a size cannot be carried from one temperature to another.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GrowthError {
    /// The size is zero, negative or not a number.
    Size,
    /// A temperature outside −100 to 300 °C.
    Temperature,
    /// A coefficient of expansion that no material has.
    Coefficient,
}

impl fmt::Display for GrowthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Size => "Enter a size above zero.",
            Self::Temperature => "Enter a temperature between −100 and 300 °C.",
            Self::Coefficient => "Enter an expansion under 1000 millionths a kelvin.",
        })
    }
}

impl std::error::Error for GrowthError {}

/// Strain α·∫dT from 20 °C to `celsius`: linear above, with the cold loss below.
pub(crate) fn strain_from_20(alpha_per_k: f64, celsius: f64) -> f64 {
    let rise_k = celsius - REFERENCE_CELSIUS;
    let cold_k = rise_k.min(0.0);
    alpha_per_k * (rise_k + COLD_LOSS_PER_KELVIN / 2.0 * cold_k * cold_k)
}

/// The kelvins from 20 °C (negative) at which a cooled part has this strain (negative):
/// the inverse of [`strain_from_20`] on its cold side.
pub(crate) fn cold_rise_for_strain(alpha_per_k: f64, strain: f64) -> f64 {
    let under_root = 1.0 + 2.0 * COLD_LOSS_PER_KELVIN * strain / alpha_per_k;
    (under_root.max(0.0).sqrt() - 1.0) / COLD_LOSS_PER_KELVIN
}

/// °C, when the constants hold there.
pub(crate) fn checked_celsius(temperature: ThermodynamicTemperature) -> Result<f64, GrowthError> {
    let celsius = temperature.get::<degree_celsius>();
    if (COLDEST_CELSIUS..=HOTTEST_CELSIUS).contains(&celsius) {
        Ok(celsius)
    } else {
        Err(GrowthError::Temperature)
    }
}

fn checked_metres(size: Length) -> Result<f64, GrowthError> {
    let metres = size.get::<meter>();
    if metres > 0.0 && metres < 100.0 {
        Ok(metres)
    } else {
        Err(GrowthError::Size)
    }
}

/// 1/K, when some material or difference of two has it.
fn checked_alpha(alpha: TemperatureCoefficient) -> Result<f64, GrowthError> {
    let per_k = alpha.get::<per_kelvin>();
    if per_k.abs() < 1e-3 {
        Ok(per_k)
    } else {
        Err(GrowthError::Coefficient)
    }
}

/// The size at `to` of what measures `size` at `from`, with both ends of the material's α:
/// (least growth, most growth).
pub fn grown_range(
    size: Length,
    material: Material,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
) -> Result<(Length, Length), GrowthError> {
    let (least, most) = material.expansion_range();
    Ok((grown_by(size, least, from, to)?, grown_by(size, most, from, to)?))
}

/// The same for a stated α (that at 20 °C and above).
///
/// Δd = α·d·ΔT; below 20 °C α falls by 0.17 % a kelvin. Above, real parts grow slightly more than
/// this. Valid −100 to 300 °C.
pub fn grown_by(
    size: Length,
    alpha: TemperatureCoefficient,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
) -> Result<Length, GrowthError> {
    let metres = checked_metres(size)?;
    let alpha_per_k = checked_alpha(alpha)?;
    let strain_from = strain_from_20(alpha_per_k, checked_celsius(from)?);
    let strain_to = strain_from_20(alpha_per_k, checked_celsius(to)?);
    Ok(Length::new::<meter>(metres * (1.0 + strain_to - strain_from)))
}

/// The size at 20 °C of a part of `material` that reads `reading` at the temperature `at`, with a steel
/// micrometer or gauge that has lain beside it: both grow, and only the difference shows.
///
/// reading·(1 − α·(T − 20)), where α is the part's excess over steel's. First order: exact within
/// 0.001 % over 100 K.
pub fn size_at_20(
    reading: Length,
    material: Material,
    at: ThermodynamicTemperature,
) -> Result<Length, GrowthError> {
    size_at_20_by(reading, material.expansion() - Material::Steel.expansion(), at)
}

/// The same for a stated α (the part's, or its excess over the instrument's).
pub fn size_at_20_by(
    reading: Length,
    alpha: TemperatureCoefficient,
    at: ThermodynamicTemperature,
) -> Result<Length, GrowthError> {
    let metres = checked_metres(reading)?;
    let strain = strain_from_20(checked_alpha(alpha)?, checked_celsius(at)?);
    Ok(Length::new::<meter>(metres * (1.0 - strain)))
}
