//! Heat and cold as the manual states them, kept in its own words and units.

use crate::job::text_form;
use crate::trade::heat_plan::{ChillMeans, HeatMeans};
use crate::trade::quantity::{TemperatureUnit, ThermodynamicTemperature, Typed, Unit, print_temperature};
use serde::{Deserialize, Serialize};

/// A temperature in the unit it was stated in.
pub type Stated = Typed<TemperatureUnit>;

/// What the manual has heated and chilled; either, or both.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
pub struct Manual {
    /// The one with the hole: the case, or the gear or inner ring that goes onto a shaft.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heat: Option<ManualHeat>,
    /// The one that goes into the hole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chill: Option<ManualChill>,
}

/// Heat as the manual has it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
pub struct ManualHeat {
    /// With what.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub means: Option<HeatMeans>,
    /// To what.
    #[serde(
        default,
        with = "text_form::temperature",
        skip_serializing_if = "Option::is_none"
    )]
    pub to: Option<Stated>,
    /// Never over that.
    #[serde(
        default,
        with = "text_form::temperature",
        skip_serializing_if = "Option::is_none"
    )]
    pub never_over: Option<Stated>,
    /// The flash point of the bath's oil.
    #[serde(
        default,
        with = "text_form::temperature",
        skip_serializing_if = "Option::is_none"
    )]
    pub flash_point: Option<Stated>,
}

/// Cold as the manual has it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
pub struct ManualChill {
    /// With what.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub means: Option<ChillMeans>,
    /// To what.
    #[serde(
        default,
        with = "text_form::temperature",
        skip_serializing_if = "Option::is_none"
    )]
    pub to: Option<Stated>,
}

impl Manual {
    /// What it has the one with the hole heated to, where it says.
    pub fn heat_to(&self) -> Option<ThermodynamicTemperature> {
        Some(self.heat?.to?.temperature())
    }

    /// What it has the other chilled to: what it says, or what its means gets to.
    pub fn chill_to(&self) -> Option<ThermodynamicTemperature> {
        let chill = self.chill?;
        let said = chill.to.map(|to| to.temperature());
        said.or_else(|| chill.means.map(ChillMeans::temperature))
    }
}

/// "360 °F (182 °C)": as it is stated, and on the other scale.
pub fn both_scales(stated: &Stated) -> String {
    let other = match stated.unit {
        TemperatureUnit::Fahrenheit | TemperatureUnit::Kelvin => TemperatureUnit::Celsius,
        TemperatureUnit::Celsius => TemperatureUnit::Fahrenheit,
    };
    let there = print_temperature(stated.temperature(), other, 0);
    format!("{} ({} {})", stated.text(), there.number, other.symbol())
}
