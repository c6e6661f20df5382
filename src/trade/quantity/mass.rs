//! Masses out of text and into it.

use super::Mass;
use super::print::{Printed, significant};
use super::text_error::TextError;
use super::typed::{Sign, Subject, Typed, Unit, read_single};
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
    /// Gram, g.
    Gram,
}

use MassUnit::{Gram, Kilogram, Pound};

impl MassUnit {
    /// Every unit, in the order the screens show them.
    pub const ALL: [Self; 3] = [Kilogram, Pound, Gram];

    /// Kilograms in one of this unit.
    pub const fn kilograms(self) -> f64 {
        match self {
            Kilogram => 1.0,
            Pound => POUND_KILOGRAMS,
            Gram => 1e-3,
        }
    }

    /// `value` of this unit as a quantity.
    pub fn mass(self, value: f64) -> Mass {
        Mass::new::<kilogram>(value * self.kilograms())
    }

    /// How many of this unit `mass` is.
    pub fn value_of(self, mass: Mass) -> f64 {
        mass.get::<kilogram>() / self.kilograms()
    }
}

impl Unit for MassUnit {
    const SUBJECT: Subject = Subject {
        what: "a mass",
        example: "23 kg",
        units: "kg, lb or g",
        least: 0.0,
        least_limit: "zero",
        least_why: "a mass is not negative",
        most: 5000.0,
        limit: "5 000 kg",
        why: "no workshop crane lifts that",
    };

    fn spelled(key: &str) -> Option<Self> {
        SPELLINGS.iter().find(|row| row.0 == key).map(|row| row.1)
    }

    fn symbol(self) -> &'static str {
        match self {
            Kilogram => "kg",
            Pound => "lb",
            Gram => "g",
        }
    }

    fn base(self, value: f64) -> f64 {
        value * self.kilograms()
    }
}

const SPELLINGS: &[(&str, MassUnit)] = &[
    ("kg", Kilogram),
    ("kgs", Kilogram),
    ("kilo", Kilogram),
    ("kilos", Kilogram),
    ("kilogram", Kilogram),
    ("kilograms", Kilogram),
    ("lb", Pound),
    ("lbs", Pound),
    ("pound", Pound),
    ("pounds", Pound),
    ("g", Gram),
    ("gram", Gram),
    ("grams", Gram),
];

impl Typed<MassUnit> {
    /// The mass that was typed.
    pub fn mass(&self) -> Mass {
        self.unit.mass(self.value)
    }
}

/// Reads a mass above zero; `fallback` is the unit where none is written.
///
/// # Errors
/// The place and what was expected there; zero, negative and more than 5 000 kg are refused.
pub fn parse_mass(text: &str, fallback: Option<MassUnit>) -> Result<Typed<MassUnit>, TextError> {
    read_single(text, fallback, Sign::Positive)
}

/// `mass` in `unit` with `figures` significant figures.
pub fn print_mass(mass: Mass, unit: MassUnit, figures: u32) -> Printed {
    Printed {
        number: significant(unit.value_of(mass), figures),
        unit: unit.symbol(),
    }
}
