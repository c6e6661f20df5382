//! Materials of housings, shafts and rings, with the figures that fits, heat and cooling need.

use crate::trade::quantity::{Pressure, Ratio, ThermodynamicTemperature};
use serde::{Deserialize, Serialize};
use uom::si::f64::{MassDensity, SpecificHeatCapacity, TemperatureCoefficient};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

/// What a part is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Material {
    /// Aluminium casting alloys of cases and covers.
    CastAluminium,
    /// Magnesium casting alloys.
    Magnesium,
    /// Plain and low-alloy steel: shafts, spigots, sleeves.
    Steel,
    /// Austenitic stainless steel.
    StainlessSteel,
    /// Through-hardened chromium steel of rolling bearings.
    BearingSteel,
    /// Grey cast iron.
    CastIron,
    /// Tin bronze of bushes.
    Bronze,
}

/// One row: handbook figures at room temperature, each the number in the unit named.
struct Row {
    name: &'static str,
    young_gpa: f64,
    poisson: f64,
    /// Mean linear expansion from 20 to about 100 °C, in 10⁻⁶/K: least, usual, most.
    expansion: [f64; 3],
    /// 0.2 % proof stress, least and most of the common grades; for grey iron the tensile strength.
    strength_mpa: [f64; 2],
    density_kg_m3: f64,
    specific_heat_j_kg_k: f64,
    /// Hottest that fitting work should make it.
    heat_limit_c: f64,
}

#[rustfmt::skip]
const TABLE: [Row; 7] = [
    // Age-hardened castings soften above about 150 °C, and die castings blister.
    Row { name: "cast aluminium", young_gpa: 71.0, poisson: 0.33,
        expansion: [21.0, 22.0, 23.5], strength_mpa: [90.0, 160.0],
        density_kg_m3: 2700.0, specific_heat_j_kg_k: 920.0, heat_limit_c: 150.0 },
    // Creeps early: the alloys of older cases hold to about 120 °C.
    Row { name: "magnesium", young_gpa: 45.0, poisson: 0.35,
        expansion: [25.0, 26.0, 27.0], strength_mpa: [85.0, 150.0],
        density_kg_m3: 1800.0, specific_heat_j_kg_k: 1020.0, heat_limit_c: 120.0 },
    // Below the tempering of case-hardened shafts.
    Row { name: "steel", young_gpa: 207.0, poisson: 0.30,
        expansion: [11.0, 11.5, 12.5], strength_mpa: [250.0, 650.0],
        density_kg_m3: 7850.0, specific_heat_j_kg_k: 470.0, heat_limit_c: 150.0 },
    Row { name: "stainless steel", young_gpa: 195.0, poisson: 0.30,
        expansion: [16.0, 16.5, 17.3], strength_mpa: [200.0, 450.0],
        density_kg_m3: 7900.0, specific_heat_j_kg_k: 500.0, heat_limit_c: 150.0 },
    // Its heat treatment holds size only to about 120 °C.
    Row { name: "bearing steel", young_gpa: 208.0, poisson: 0.30,
        expansion: [11.0, 11.5, 12.5], strength_mpa: [1500.0, 2000.0],
        density_kg_m3: 7810.0, specific_heat_j_kg_k: 475.0, heat_limit_c: 120.0 },
    // Cracks rather than yields, so the tensile strength stands in for the proof stress.
    Row { name: "cast iron", young_gpa: 110.0, poisson: 0.26,
        expansion: [10.0, 10.5, 11.0], strength_mpa: [200.0, 300.0],
        density_kg_m3: 7200.0, specific_heat_j_kg_k: 500.0, heat_limit_c: 150.0 },
    Row { name: "bronze", young_gpa: 105.0, poisson: 0.34,
        expansion: [17.0, 18.0, 18.5], strength_mpa: [130.0, 180.0],
        density_kg_m3: 8800.0, specific_heat_j_kg_k: 377.0, heat_limit_c: 150.0 },
];

impl Material {
    /// Every material, in the order the screens show them.
    pub const ALL: [Self; 7] = [
        Self::CastAluminium,
        Self::Magnesium,
        Self::Steel,
        Self::StainlessSteel,
        Self::BearingSteel,
        Self::CastIron,
        Self::Bronze,
    ];

    const fn row(self) -> &'static Row {
        // A test holds each row in its variant's place.
        &TABLE[self as usize]
    }

    /// The name shown on screen.
    pub const fn words(self) -> &'static str {
        self.row().name
    }

    /// Young's modulus E, typical.
    pub fn young(self) -> Pressure {
        Pressure::new::<gigapascal>(self.row().young_gpa)
    }

    /// Poisson's ratio ν, typical.
    pub fn poisson(self) -> Ratio {
        Ratio::new::<ratio>(self.row().poisson)
    }

    /// Linear expansion α, typical, from 20 to about 100 °C.
    pub fn expansion(self) -> TemperatureCoefficient {
        let [_, usual, _] = self.row().expansion;
        TemperatureCoefficient::new::<per_kelvin>(usual * 1e-6)
    }

    /// The range of α over the common alloys: (least, most).
    pub fn expansion_range(self) -> (TemperatureCoefficient, TemperatureCoefficient) {
        let [least, _, most] = self.row().expansion;
        let micro = |a: f64| TemperatureCoefficient::new::<per_kelvin>(a * 1e-6);
        (micro(least), micro(most))
    }

    /// The 0.2 % proof stress over the common grades: (least, most).
    /// For a [brittle](Self::is_brittle) material it is the tensile strength.
    pub fn strength_range(self) -> (Pressure, Pressure) {
        let [least, most] = self.row().strength_mpa;
        (
            Pressure::new::<megapascal>(least),
            Pressure::new::<megapascal>(most),
        )
    }

    /// Whether it cracks before it yields.
    pub const fn is_brittle(self) -> bool {
        matches!(self, Self::CastIron)
    }

    /// Density ρ, typical.
    pub fn density(self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.row().density_kg_m3)
    }

    /// Specific heat capacity c at room temperature, typical.
    pub fn specific_heat(self) -> SpecificHeatCapacity {
        SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(self.row().specific_heat_j_kg_k)
    }

    /// The hottest that fitting work should make a part of it, whatever else is allowed
    /// (common practice; a part's own papers come first where they say less).
    pub fn heat_limit(self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(self.row().heat_limit_c)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_row_stands_in_its_materials_place() {
        for (place, material) in Material::ALL.into_iter().enumerate() {
            assert_eq!(material as usize, place);
            let name = material.words().replace(' ', "");
            assert_eq!(format!("{material:?}").to_lowercase(), name);
            let [least, usual, most] = material.row().expansion;
            assert!(least <= usual && usual <= most);
            assert!(material.row().strength_mpa[0] < material.row().strength_mpa[1]);
        }
    }
}
