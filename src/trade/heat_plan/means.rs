//! What a manual names to heat or chill with.

use crate::trade::quantity::ThermodynamicTemperature;
use serde::{Deserialize, Serialize};
use uom::si::thermodynamic_temperature::degree_celsius;

/// What a part is heated with. An open flame is none of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HeatMeans {
    /// An oven.
    Oven,
    /// A hot plate.
    HotPlate,
    /// A bath of oil, which must stay well under the oil's flash point.
    OilBath,
    /// An induction heater.
    Induction,
    /// Hot air.
    HotAir,
}

impl HeatMeans {
    /// Every one, in the order the screens show them.
    pub const ALL: [Self; 5] = [
        Self::Oven,
        Self::HotPlate,
        Self::OilBath,
        Self::Induction,
        Self::HotAir,
    ];

    /// "in an oven".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Oven => "in an oven",
            Self::HotPlate => "on a hot plate",
            Self::OilBath => "in an oil bath",
            Self::Induction => "by induction",
            Self::HotAir => "with hot air",
        }
    }
}

/// What a part is chilled with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ChillMeans {
    /// A household freezer.
    Freezer,
    /// Dry ice.
    DryIce,
    /// Liquid nitrogen.
    LiquidNitrogen,
}

impl ChillMeans {
    /// Every one, in the order the screens show them.
    pub const ALL: [Self; 3] = [Self::Freezer, Self::DryIce, Self::LiquidNitrogen];

    /// "in a freezer".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Freezer => "in a freezer",
            Self::DryIce => "in dry ice",
            Self::LiquidNitrogen => "in liquid nitrogen",
        }
    }

    /// What a part left in it gets to: −18, −78, −196 °C (nitrogen boils at −195.8 °C).
    pub fn temperature(self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(match self {
            Self::Freezer => super::CoolMeans::Freezer.celsius(),
            Self::DryIce => super::CoolMeans::DryIce.celsius(),
            Self::LiquidNitrogen => -196.0,
        })
    }
}
