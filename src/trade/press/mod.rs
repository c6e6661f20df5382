//! A press fit: pressure, force to press it cold, stress in the two parts, and what to push it with.

mod tools;

pub use tools::{Push, ToolError, Tools, tools};

use crate::trade::fit::Interference;
use crate::trade::material::Material;
use crate::trade::quantity::{Force, Length, Pressure, Ratio, fixed};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;
use std::fmt;
use uom::si::force::newton;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

/// Sliding friction of a press fit, metal on metal, least (oiled) and most (dry): common practice.
pub const FRICTION: (f64, f64) = (0.10, 0.20);

/// Interference beyond this share of the diameter is a slip in a size, not a fit.
const INTERFERENCE_SHARE: f64 = 0.01;

/// Why a press fit can't be reckoned.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PressError {
    /// The fit's diameter is not above zero, or absurd.
    Diameter,
    /// The length in contact is not above zero, or absurd.
    Length,
    /// The part's bore leaves no wall inside the fit.
    PartInside,
    /// The housing's outside leaves no wall around the fit.
    HousingOutside,
    /// The interference, in mm, is too large to be one.
    Interference(f64),
}

impl fmt::Display for PressError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Diameter => f.write_str("Enter the diameter of the fit, above zero and under 10 m."),
            Self::Length => f.write_str("Enter the length in contact, above zero and under 10 m."),
            Self::PartInside => {
                f.write_str("The part's bore must be smaller than the fit; enter 0 for a solid one.")
            }
            Self::HousingOutside => f.write_str("The outside around the bore must be larger than the fit."),
            Self::Interference(mm) => {
                write!(
                    f,
                    "An interference of {} mm is no press fit at this size: check both sizes.",
                    fixed(*mm, 3)
                )
            }
        }
    }
}

impl std::error::Error for PressError {}

/// Two rings, one pressed into the other (plane stress, both elastic, as long as each other).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PressFit {
    /// The diameter they share.
    #[serde(rename = "diameter_mm", with = "stored::millimetres")]
    pub diameter: Length,
    /// The length in contact.
    #[serde(rename = "length_mm", with = "stored::millimetres")]
    pub length: Length,
    /// The inner part's bore; zero when it is solid.
    #[serde(rename = "part_inside_mm", with = "stored::millimetres")]
    pub part_inside: Length,
    /// The outside diameter of the wall around the bore: the boss, not the whole case.
    #[serde(rename = "housing_outside_mm", with = "stored::millimetres")]
    pub housing_outside: Length,
    /// The inner part's material.
    pub part: Material,
    /// The outer part's material.
    pub housing: Material,
}

/// The force to press the part home cold, as a range.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ForceRange {
    /// Least interference, least friction.
    #[serde(rename = "least_n", with = "stored::newtons")]
    pub least: Force,
    /// Most interference, most friction: what the press must be able to give.
    #[serde(rename = "most_n", with = "stored::newtons")]
    pub most: Force,
}

/// Stress at the most interference, against the weakest of the material's common grades.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stress {
    /// Pull around the housing's bore.
    #[serde(rename = "housing_hoop_mpa", with = "stored::megapascals")]
    pub housing_hoop: Pressure,
    /// What counts against the housing's strength: von Mises' equivalent at its bore, or the hoop
    /// stress alone where the material is brittle.
    #[serde(rename = "housing_equivalent_mpa", with = "stored::megapascals")]
    pub housing_equivalent: Pressure,
    /// Share of the housing's strength; above 1 the bore stretches for good or cracks.
    #[serde(with = "stored::fraction")]
    pub housing_share: Ratio,
    /// Squeeze around the part's bore, or in a solid part; given as a positive number.
    #[serde(rename = "part_hoop_mpa", with = "stored::megapascals")]
    pub part_hoop: Pressure,
    /// Share of the part's strength.
    #[serde(with = "stored::fraction")]
    pub part_share: Ratio,
}

/// Lengths in metres, found sane.
struct Sizes {
    fit: f64,
    length: f64,
    inside: f64,
    outside: f64,
}

impl PressFit {
    fn sizes(&self) -> Result<Sizes, PressError> {
        let fit = self.diameter.get::<meter>();
        let length = self.length.get::<meter>();
        let inside = self.part_inside.get::<meter>();
        let outside = self.housing_outside.get::<meter>();
        let sane = |m: f64| m > 1e-6 && m < 10.0;
        if !sane(fit) {
            Err(PressError::Diameter)
        } else if !sane(length) {
            Err(PressError::Length)
        } else if !(0.0..fit * 0.999).contains(&inside) {
            Err(PressError::PartInside)
        } else if !(fit * 1.001..1e3).contains(&outside) {
            Err(PressError::HousingOutside)
        } else {
            Ok(Sizes {
                fit,
                length,
                inside,
                outside,
            })
        }
    }

    /// The pressure between the two at an interference δ on the diameter d; none where there is clearance.
    ///
    /// p = δ / { d·[ ((D²+d²)/(D²−d²) + ν_o)/E_o + ((d²+i²)/(d²−i²) − ν_i)/E_i ] }, D the housing's
    /// outside, i the part's inside. Lamé's thick-wall solution, as in Marks' Calculations for Machine
    /// Design (2005), ch. 3. Smoothing of rough faces, which takes some µm of δ, is not counted.
    pub fn pressure(&self, interference: Length) -> Result<Pressure, PressError> {
        let Sizes {
            fit, inside, outside, ..
        } = self.sizes()?;
        let delta = interference.get::<meter>();
        if !(0.0..=fit * INTERFERENCE_SHARE).contains(&delta.abs()) {
            return Err(PressError::Interference(interference.get::<millimeter>()));
        }
        let housing = wall(outside, fit) + self.housing.poisson().get::<ratio>();
        let part = wall(fit, inside) - self.part.poisson().get::<ratio>();
        let give_per_pa =
            housing / self.housing.young().get::<pascal>() + part / self.part.young().get::<pascal>();
        Ok(Pressure::new::<pascal>(delta.max(0.0) / (fit * give_per_pa)))
    }

    /// The force to press the part home cold: F = μ·π·d·L·p, μ 0.10 to 0.20.
    pub fn force(&self, interference: &Interference) -> Result<ForceRange, PressError> {
        let (least_mu, most_mu) = FRICTION;
        Ok(ForceRange {
            least: self.force_at(self.pressure(interference.least)?, least_mu)?,
            most: self.force_at(self.pressure(interference.most)?, most_mu)?,
        })
    }

    /// The force at one pressure and one coefficient of friction.
    pub fn force_at(&self, pressure: Pressure, friction: f64) -> Result<Force, PressError> {
        let Sizes { fit, length, .. } = self.sizes()?;
        Ok(Force::new::<newton>(
            friction * PI * fit * length * pressure.get::<pascal>(),
        ))
    }

    /// The stress in both parts at the most interference.
    ///
    /// Housing at its bore: σ = p·(D²+d²)/(D²−d²) around, −p across. Part: 2·p·d²/(d²−i²) at its bore,
    /// p when solid.
    pub fn stress(&self, interference: &Interference) -> Result<Stress, PressError> {
        let Sizes {
            fit, inside, outside, ..
        } = self.sizes()?;
        let pressure = self.pressure(interference.most)?;
        let housing_hoop = pressure * wall(outside, fit);
        let (hoop_pa, pressure_pa) = (housing_hoop.get::<pascal>(), pressure.get::<pascal>());
        let housing_equivalent = if self.housing.is_brittle() {
            housing_hoop
        } else {
            let squared = hoop_pa * hoop_pa + hoop_pa * pressure_pa + pressure_pa * pressure_pa;
            Pressure::new::<pascal>(squared.sqrt())
        };
        let part_hoop = if inside > 0.0 {
            pressure * (wall(fit, inside) + 1.0)
        } else {
            pressure
        };
        let (housing_strength, _) = self.housing.strength_range();
        let (part_strength, _) = self.part.strength_range();
        Ok(Stress {
            housing_hoop,
            housing_equivalent,
            housing_share: housing_equivalent / housing_strength,
            part_hoop,
            part_share: part_hoop / part_strength,
        })
    }
}

/// (a² + b²)/(a² − b²) of a ring with outside a and inside b.
fn wall(outside: f64, inside: f64) -> f64 {
    let (a, b) = (outside * outside, inside * inside);
    (a + b) / (a - b)
}

/// The share of a press's rating that the harder end of the range takes; `None` without a usable rating.
pub fn share_of_rating(force: &ForceRange, rating: Force) -> Option<Ratio> {
    let share = force.most / rating;
    (rating.get::<newton>() > 0.0 && share.get::<ratio>().is_finite()).then_some(share)
}
