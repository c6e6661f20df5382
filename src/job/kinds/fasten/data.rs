//! What a fasten step holds.

use crate::job::text_form;
use crate::trade::application::Application;
use crate::trade::guard::Joint;
use crate::trade::order::{Layout, Pass};
use crate::trade::preload::Condition;
use crate::trade::quantity::{Length, TorqueStatement};
use crate::trade::stages::Stage;
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// Whether a fastener may be used again.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reuse {
    /// The old ones go back.
    #[default]
    Again,
    /// Must be new.
    New,
}

/// Fasteners brought to torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fasten {
    /// The thread.
    #[serde(with = "text_form::thread")]
    pub thread: Thread,
    /// How long the bolt is under its head, mm, when known: for finding it in its bag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm: Option<f64>,
    /// The bolt's class, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<Strength>,
    /// What it is screwed into, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub into: Option<FemaleMaterial>,
    /// How deep it is screwed in, mm, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub engagement_mm: Option<f64>,
    /// What the manual says.
    #[serde(with = "text_form::torque")]
    pub torque: TorqueStatement,
    /// How the fasteners lie.
    pub layout: Layout,
    /// Passes by share of the torque; none means one pass to the full torque.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub passes: Vec<Pass>,
    /// Snug, torque and angle stages, where the manual has them.
    #[serde(default, with = "text_form::stages", skip_serializing_if = "Vec::is_empty")]
    pub stages: Vec<Stage>,
    /// Least stretch, mm, where the manual states one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_least_mm: Option<f64>,
    /// Most stretch, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_most_mm: Option<f64>,
    /// They are tightened to the stretch: the torque is only where to begin.
    #[serde(default, skip_serializing_if = "is_false")]
    pub stretch_decides: bool,
    /// The state of the thread.
    #[serde(default = "condition_unknown")]
    pub condition: Condition,
    /// It seals rather than clamps: a plug, a union, a sensor.
    #[serde(default, skip_serializing_if = "is_false")]
    pub seal: bool,
    /// A self-locking nut: its running torque is measured.
    #[serde(default, skip_serializing_if = "is_false")]
    pub self_locking: bool,
    /// The old ones come out first, set in high-strength threadlocker.
    #[serde(default, skip_serializing_if = "is_false")]
    pub old_locked: bool,
    /// New or again.
    #[serde(default)]
    pub reuse: Reuse,
    /// How many times one may be tightened in all, where old ones may come again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_uses: Option<u32>,
    /// How long one may be over its ends and come again, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longest_mm: Option<f64>,
    /// What the thread's joint is, for choosing the compound; none: nothing goes on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub compound: Option<Application>,
}

fn condition_unknown() -> Condition {
    Condition::Unknown
}

fn is_false(it: &bool) -> bool {
    !it
}

impl Fasten {
    /// Bolts of that thread to that torque, of which nothing else is known.
    pub fn new(thread: Thread, torque: TorqueStatement, layout: Layout) -> Self {
        Self {
            thread,
            length_mm: None,
            strength: None,
            into: None,
            engagement_mm: None,
            torque,
            layout,
            passes: Vec::new(),
            stages: Vec::new(),
            stretch_least_mm: None,
            stretch_most_mm: None,
            stretch_decides: false,
            condition: Condition::Unknown,
            reuse: Reuse::Again,
            most_uses: None,
            longest_mm: None,
            compound: None,
            seal: false,
            self_locking: false,
            old_locked: false,
        }
    }

    /// How many passes there are; where the manual has stages, one for each.
    pub fn pass_count(&self) -> usize {
        if self.stages.is_empty() {
            self.passes.len().max(1)
        } else {
            self.stages.len()
        }
    }

    /// That pass, from 0; without passes, and by stages, to the full torque.
    pub fn pass(&self, pass: usize) -> Pass {
        if !self.stages.is_empty() {
            return Pass {
                share: 1.0,
                round: false,
            };
        }
        self.passes.get(pass).copied().unwrap_or(Pass {
            share: 1.0,
            round: false,
        })
    }

    /// How many times a fastener is brought to torque in all.
    pub fn tally_count(&self) -> usize {
        self.layout.count() * self.pass_count()
    }

    /// The joint as the slip guard sees it.
    pub fn joint(&self) -> Joint {
        Joint {
            thread: self.thread,
            strength: self.strength,
            material: self.into,
            engagement: self.engagement_mm.map(Length::new::<millimeter>),
            condition: self.condition,
        }
    }
}

/// A fastener's size as it stands on a bag: thread, length and class as far as known.
pub fn size_words(fasten: &Fasten) -> String {
    let length = fasten.length_mm.map_or(String::new(), |mm| format!(" × {mm} mm"));
    let class = fasten
        .strength
        .map_or(String::new(), |strength| format!(", {}", strength.name()));
    format!("{}{length}{class}", fasten.thread.name())
}

/// The states of a thread, in the order they are offered.
pub const CONDITIONS: [Condition; 5] = [
    Condition::Unknown,
    Condition::Dry,
    Condition::Oiled,
    Condition::Plated,
    Condition::CompoundWet,
];

/// A layout in a word, as the plan and the table of fasteners write it.
pub fn layout_words(layout: &Layout) -> &'static str {
    match layout {
        Layout::Single => "single",
        Layout::Line { .. } => "line",
        Layout::PairedRows { .. } => "two rows",
        Layout::Circle { .. } => "circle",
        Layout::Free { .. } => "as numbered",
    }
}

/// A layout of that word and count; "as numbered" where the word bears no such count.
pub fn layout(words: &str, count: usize) -> Layout {
    match words {
        _ if count == 1 => Layout::Single,
        "line" => Layout::Line { count },
        "two rows" if count.is_multiple_of(2) => Layout::PairedRows { pairs: count / 2 },
        "circle" => Layout::Circle { count },
        _ => Layout::Free { count },
    }
}
