//! What becomes of a fit when both parts run hot: with two materials it is another fit.

use super::Interference;
use crate::trade::growth::{GrowthError, checked_celsius, strain_from_20};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::f64::TemperatureCoefficient;
use uom::si::temperature_coefficient::per_kelvin;

/// A fit at the temperature the machine runs at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunningFit {
    /// The temperature of both parts.
    pub at: ThermodynamicTemperature,
    /// With each material's usual expansion.
    pub usual: Interference,
    /// With the ends of both materials' ranges.
    pub widest: Interference,
}

/// What is left of the grip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grip {
    /// Every pair that the sizes allow is tight.
    Tight,
    /// Some pairs are loose.
    Doubtful,
    /// Every pair is loose.
    Loose,
}

impl Interference {
    /// What grip it is.
    pub fn grip(&self) -> Grip {
        let nothing = Length::default();
        if self.most <= nothing {
            Grip::Loose
        } else if self.least < nothing {
            Grip::Doubtful
        } else {
            Grip::Tight
        }
    }
}

/// The fit with both parts at `at`: δ = δ20 − d·(α_hole − α_part)·ΔT, −100 to 300 °C.
///
/// ```
/// use halfcase::trade::fit::{Interference, running};
/// use halfcase::trade::material::Material::{BearingSteel, CastAluminium};
/// use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
/// use uom::si::{length::{micrometer, millimeter}, thermodynamic_temperature::degree_celsius};
///
/// let micro = Length::new::<micrometer>;
/// let cold = Interference { least: micro(-4.0), most: micro(39.0) };
/// let diameter = Length::new::<millimeter>(62.0);
/// let hot = running(&cold, diameter, CastAluminium, BearingSteel,
///     ThermodynamicTemperature::new::<degree_celsius>(90.0))?;
/// assert_eq!(hot.usual.least.get::<micrometer>().round(), -50.0);
/// assert_eq!(hot.usual.most.get::<micrometer>().round(), -7.0);
/// # Ok::<(), halfcase::trade::growth::GrowthError>(())
/// ```
///
/// # Errors
/// [`GrowthError::Temperature`].
pub fn running(
    cold: &Interference,
    diameter: Length,
    hole: Material,
    part: Material,
    at: ThermodynamicTemperature,
) -> Result<RunningFit, GrowthError> {
    let celsius = checked_celsius(at)?;
    let strain = |alpha: TemperatureCoefficient| strain_from_20(alpha.get::<per_kelvin>(), celsius);
    let lost = |hole, part| diameter * (strain(hole) - strain(part));
    let usual = lost(hole.expansion(), part.expansion());
    let (hole_least, hole_most) = hole.expansion_range();
    let (part_least, part_most) = part.expansion_range();
    let ends = [lost(hole_least, part_most), lost(hole_most, part_least)];
    let less = |lost_least: Length, lost_most: Length| Interference {
        least: cold.least - lost_most,
        most: cold.most - lost_least,
    };
    Ok(RunningFit {
        at,
        usual: less(usual, usual),
        widest: less(ends[0].min(ends[1]), ends[0].max(ends[1])),
    })
}
