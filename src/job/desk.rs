//! What lies on the Torque screen beside the typed value: the bolt, the adapter, a nut, a turn, the last values.

use super::adapter::Adapter;
use super::guarding::KnownBolt;
use super::sheet::StepId;
use crate::trade::quantity::{Length, TorqueStatement, TorqueUnit, printed_with_point};
use crate::trade::stretch::Shank;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// How many values are remembered.
pub const MOST_RECENT: usize = 8;

/// The Torque screen's things. Fields missing from an older form take their first values.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Desk {
    /// The step the value came from.
    pub from: Option<StepId>,
    /// What the manual also says, as typed.
    pub also_typed: String,
    /// The unit it is typed in.
    pub also_unit: TorqueUnit,
    /// The bolt, as far as it is known.
    pub bolt: Option<KnownBolt>,
    /// An adapter's sizes.
    pub adapter: Adapter,
    /// It is on the wrench.
    pub adapter_on: bool,
    /// The running torque of a self-locking nut, in the entry's unit.
    pub running: Option<f64>,
    /// A turn after the torque, °.
    pub turn_deg: Option<f64>,
    /// A bolt's stretch, mm: tight length less free length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stretch_mm: Option<f64>,
    /// Its grip, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grip_mm: Option<f64>,
    /// How much of the grip is plain shank, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plain_mm: Option<f64>,
    /// That shank's diameter, mm, where it is not the thread's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shank_mm: Option<f64>,
    /// The last values, the newest first, as a manual prints them.
    pub recent: Vec<String>,
}

impl Default for Desk {
    fn default() -> Self {
        Self {
            from: None,
            also_typed: String::new(),
            also_unit: TorqueUnit::PoundFoot,
            bolt: None,
            adapter: Adapter::default(),
            adapter_on: false,
            running: None,
            turn_deg: None,
            stretch_mm: None,
            grip_mm: None,
            plain_mm: None,
            shank_mm: None,
            recent: Vec::new(),
        }
    }
}

impl Desk {
    /// The bolt as a spring and its stretch, mm, where thread, grip and stretch are told.
    pub fn stretch(&self) -> Option<(Shank, f64)> {
        let joint = self.bolt?.joint;
        let shank = Shank {
            thread: joint.thread,
            strength: joint.strength,
            grip: Length::new::<millimeter>(self.grip_mm?),
            plain: Length::new::<millimeter>(self.plain_mm.unwrap_or(0.0)),
            diameter: self.shank_mm.map(Length::new::<millimeter>),
        };
        Some((shank, self.stretch_mm?))
    }

    /// The adapter, when it is on.
    pub fn adapter(&self) -> Option<&Adapter> {
        self.adapter_on.then_some(&self.adapter)
    }

    /// Remembers a value: once, the newest first.
    pub fn remember(&mut self, statement: &TorqueStatement) {
        let words = remembered(statement);
        self.recent.retain(|old| *old != words);
        self.recent.insert(0, words);
        self.recent.truncate(MOST_RECENT);
    }
}

/// A statement as it is remembered: with the point.
pub fn remembered(statement: &TorqueStatement) -> String {
    printed_with_point(|| statement.text())
}

/// A statement's numbers without the unit, as the keypad types them: "9–12"; with the point.
pub fn typed_words(statement: &TorqueStatement) -> String {
    let text = remembered(statement);
    text.strip_suffix(statement.unit.symbol())
        .unwrap_or(&text)
        .trim()
        .to_owned()
}
