//! What lies on the Torque screen beside the typed value: the bolt, the adapter, a nut, a turn, the last values.

use super::Bench;
use crate::job::adapter::Adapter;
use crate::job::guarding::KnownBolt;
use crate::job::kinds::Work;
use crate::job::sheet::{Step, StepId};
use crate::trade::quantity::{TorqueStatement, TorqueUnit};
use serde::{Deserialize, Serialize};

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
            recent: Vec::new(),
        }
    }
}

impl Desk {
    /// The adapter, when it is on.
    pub fn adapter(&self) -> Option<&Adapter> {
        self.adapter_on.then_some(&self.adapter)
    }

    /// Remembers a value: once, the newest first.
    pub fn remember(&mut self, statement: &TorqueStatement) {
        let words = statement.text();
        self.recent.retain(|old| *old != words);
        self.recent.insert(0, words);
        self.recent.truncate(MOST_RECENT);
    }
}

/// A statement's numbers without the unit, as the keypad types them: "9–12".
pub fn typed_words(statement: &TorqueStatement) -> String {
    let text = statement.text();
    text.strip_suffix(statement.unit.symbol())
        .unwrap_or(&text)
        .trim()
        .to_owned()
}

impl Bench {
    /// Puts a value into the entry; the way back is undo.
    pub fn enter(self, statement: &TorqueStatement, words: &str) {
        self.set(words, |settings| {
            settings.torque_typed = typed_words(statement);
            settings.torque_unit = statement.unit;
        });
    }

    /// Puts what the manual says in other words beside it; none takes it away.
    pub fn enter_also(self, statement: Option<&TorqueStatement>) {
        self.set("second value", |settings| {
            settings.desk.also_typed = statement.map_or(String::new(), typed_words);
            if let Some(statement) = statement {
                settings.desk.also_unit = statement.unit;
            }
        });
    }

    /// Changes what lies on the Torque screen; the way back is undo.
    pub fn on_desk(self, words: &str, change: impl FnOnce(&mut Desk)) {
        self.set(words, |settings| change(&mut settings.desk));
    }

    /// Carries a fasten step's value and bolt to the Torque screen.
    pub fn carry(self, step: &Step) {
        let Work::Fasten(fasten) = &step.work else {
            return;
        };
        self.note(|settings| {
            settings.torque_typed = typed_words(&fasten.torque);
            settings.torque_unit = fasten.torque.unit;
            let desk = &mut settings.desk;
            desk.from = Some(step.id);
            desk.also_typed = String::new();
            desk.bolt = Some(KnownBolt::of(fasten));
            desk.running = None;
            desk.turn_deg = None;
            desk.remember(&fasten.torque);
        });
    }

    /// Corrects the torque of a fasten step on its sheet; the way back is undo.
    pub fn correct_torque(self, step: StepId, statement: TorqueStatement) {
        self.change_step("correction of the torque", step, |work| {
            if let Work::Fasten(fasten) = work {
                fasten.torque = statement;
            }
        });
    }
}
