//! What a gauge step holds: a bearing's limits, and how its cap is tightened.

use crate::job::text_form::torque;
use crate::trade::gauging::Plastic;
use crate::trade::quantity::{LengthUnit, TorqueStatement};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A bearing's clearance, by gauging plastic.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Gauge {
    /// Which bearing.
    pub bearing: String,
    /// The unit of every clearance of the step.
    pub unit: LengthUnit,
    /// The least clearance allowed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
    /// The most, with new parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
    /// The most it may be used at, where the manual gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worn: Option<f64>,
    /// The most that the two ends may differ by.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub taper: Option<f64>,
    /// What the cap is tightened to.
    #[serde(
        skip_serializing_if = "Option::is_none",
        serialize_with = "write_torque",
        deserialize_with = "read_torque"
    )]
    pub torque: Option<TorqueStatement>,
}

impl Default for Gauge {
    fn default() -> Self {
        Self {
            bearing: String::new(),
            unit: LengthUnit::Millimetre,
            least: None,
            most: None,
            worn: None,
            taper: None,
            torque: None,
        }
    }
}

fn write_torque<S: Serializer>(value: &Option<TorqueStatement>, to: S) -> Result<S::Ok, S::Error> {
    match value {
        Some(value) => torque::serialize(value, to),
        None => to.serialize_none(),
    }
}

fn read_torque<'de, D: Deserializer<'de>>(from: D) -> Result<Option<TorqueStatement>, D::Error> {
    torque::deserialize(from).map(Some)
}

/// What was done of a gauging, in this order; the clearance is read between the last two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gauged {
    /// That plastic was laid along the journal, all else dry: it begins anew.
    Laid(Plastic),
    /// The cap is on, at its full torque.
    Tight,
    /// The cap is off.
    Off,
    /// All of it is wiped away.
    Wiped,
}
