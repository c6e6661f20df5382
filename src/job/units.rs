//! What the manual of a job measures in.

use crate::trade::quantity::{LengthUnit, TemperatureUnit};
use serde::{Deserialize, Serialize};

/// The units a job's readings begin in; each reading may have its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Units {
    /// Of lengths.
    pub length: LengthUnit,
    /// Of temperatures.
    pub temperature: TemperatureUnit,
}

impl Default for Units {
    fn default() -> Self {
        Self {
            length: LengthUnit::Millimetre,
            temperature: TemperatureUnit::Celsius,
        }
    }
}

impl Units {
    /// Lengths that are offered.
    pub const LENGTHS: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];
    /// Temperatures that are offered.
    pub const TEMPERATURES: [TemperatureUnit; 2] = [TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit];

    /// Whether nothing is said of it.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}
