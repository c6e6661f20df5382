//! Temperatures out of text and into it.

use super::ThermodynamicTemperature;
use super::print::Printed;
use super::text_error::TextError;
use super::typed::{Sign, Subject, Typed, Unit, read_single};
use serde::{Deserialize, Serialize};
use uom::si::thermodynamic_temperature::kelvin;

/// A unit of temperature of labels and thermometers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TemperatureUnit {
    /// Degree Celsius, °C.
    Celsius,
    /// Degree Fahrenheit, °F.
    Fahrenheit,
    /// Kelvin, K.
    Kelvin,
}

use TemperatureUnit::{Celsius, Fahrenheit, Kelvin};

// Exact by definition: the ice point in kelvin, and the Fahrenheit scale's zero in its own degrees.
const ICE_POINT_KELVIN: f64 = 273.15;
const FAHRENHEIT_ZERO_RANKINE: f64 = 459.67;
const RANKINE_PER_KELVIN: f64 = 1.8;

impl TemperatureUnit {
    /// Every unit, in the order the screens show them.
    pub const ALL: [Self; 3] = [Celsius, Fahrenheit, Kelvin];

    /// `value` on this scale as a quantity.
    pub fn temperature(self, value: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<kelvin>(self.base(value))
    }

    /// What this scale reads at `temperature`.
    pub fn value_of(self, temperature: ThermodynamicTemperature) -> f64 {
        let absolute = temperature.get::<kelvin>();
        match self {
            Celsius => absolute - ICE_POINT_KELVIN,
            Fahrenheit => absolute * RANKINE_PER_KELVIN - FAHRENHEIT_ZERO_RANKINE,
            Kelvin => absolute,
        }
    }
}

impl Unit for TemperatureUnit {
    const SUBJECT: Subject = Subject {
        what: "a temperature",
        example: "20 °C",
        units: "°C, °F or K",
        least: 0.0,
        least_limit: "−273.15 °C",
        least_why: "nothing is colder",
        most: 1000.0 + ICE_POINT_KELVIN,
        limit: "1 000 °C",
        why: "steel glows long before",
    };

    fn spelled(key: &str) -> Option<Self> {
        SPELLINGS.iter().find(|row| row.0 == key).map(|row| row.1)
    }

    fn symbol(self) -> &'static str {
        match self {
            Celsius => "°C",
            Fahrenheit => "°F",
            Kelvin => "K",
        }
    }

    fn base(self, value: f64) -> f64 {
        match self {
            Celsius => value + ICE_POINT_KELVIN,
            Fahrenheit => (value + FAHRENHEIT_ZERO_RANKINE) / RANKINE_PER_KELVIN,
            Kelvin => value,
        }
    }
}

/// The degree sign is often typed as the ordinal sign beside it on the keyboard.
const SPELLINGS: &[(&str, TemperatureUnit)] = &[
    ("°c", Celsius),
    ("ºc", Celsius),
    ("℃", Celsius),
    ("c", Celsius),
    ("degc", Celsius),
    ("degreesc", Celsius),
    ("celsius", Celsius),
    ("°f", Fahrenheit),
    ("ºf", Fahrenheit),
    ("℉", Fahrenheit),
    ("f", Fahrenheit),
    ("degf", Fahrenheit),
    ("degreesf", Fahrenheit),
    ("fahrenheit", Fahrenheit),
    ("k", Kelvin),
    ("kelvin", Kelvin),
];

impl Typed<TemperatureUnit> {
    /// The temperature that was typed.
    pub fn temperature(&self) -> ThermodynamicTemperature {
        self.unit.temperature(self.value)
    }
}

/// Reads a temperature; `fallback` is the unit where none is written.
///
/// ```
/// use halfcase::trade::quantity::{TemperatureUnit, parse_temperature};
/// let freezer = parse_temperature("-18", Some(TemperatureUnit::Celsius))?;
/// assert_eq!(freezer.text(), "−18 °C");
/// # Ok::<(), halfcase::trade::quantity::TextError>(())
/// ```
///
/// # Errors
/// The place and what was expected there; below absolute zero and above 1 000 °C are refused.
pub fn parse_temperature(
    text: &str,
    fallback: Option<TemperatureUnit>,
) -> Result<Typed<TemperatureUnit>, TextError> {
    read_single(text, fallback, Sign::Any)
}

/// `temperature` in `unit` with `decimals` digits after the point: figures mean little on a scale
/// whose zero is arbitrary.
pub fn print_temperature(
    temperature: ThermodynamicTemperature,
    unit: TemperatureUnit,
    decimals: u8,
) -> Printed {
    Printed {
        number: super::fixed(unit.value_of(temperature), decimals),
        unit: unit.symbol(),
    }
}
