//! Masses and their text.

use super::Mass;
use super::print::{Printed, significant};
use serde::{Deserialize, Serialize};
use uom::si::mass::kilogram;

// Exact by definition: the international pound.
const POUND_KILOGRAMS: f64 = 0.453_592_37;

/// A unit of mass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MassUnit {
    /// Kilogram, kg.
    Kilogram,
    /// Pound, lb.
    Pound,
}

use MassUnit::{Kilogram, Pound};

impl MassUnit {
    /// Kilograms in one of this unit.
    pub const fn kilograms(self) -> f64 {
        match self {
            Kilogram => 1.0,
            Pound => POUND_KILOGRAMS,
        }
    }

    /// The symbol shown on screen.
    pub const fn symbol(self) -> &'static str {
        match self {
            Kilogram => "kg",
            Pound => "lb",
        }
    }

    /// How many of this unit `mass` is.
    pub fn value_of(self, mass: Mass) -> f64 {
        mass.get::<kilogram>() / self.kilograms()
    }
}

/// `mass` in `unit` with `figures` significant figures.
pub fn print_mass(mass: Mass, unit: MassUnit, figures: u32) -> Printed {
    Printed {
        number: significant(unit.value_of(mass), figures),
        unit: unit.symbol(),
    }
}
