//! What the joint is, as answers: the questions that matter for it, and what "don't know" is taken as.

mod answers;
mod choice;
mod field;
mod known;
mod pointless;
mod questions;
mod rows;
pub mod sizes;
mod tiles;

pub use answers::{Apart, Face, Fluid, Held, Hole, JointKind, ManualWord, Outside, Partner, PlugSeal};
pub use choice::{Choice, DONT_KNOW};
pub(crate) use known::Known;
pub use known::{Assumed, assumed};
pub use questions::{AnswerError, Question, answer, every_question, questions};

use super::quantity::{Length, ThermodynamicTemperature};
use super::stored;
use serde::{Deserialize, Serialize};

/// A joint and what is known of it. `None` means "don't know": the cautious way is taken, and said.
///
/// Answers that the kind of joint doesn't ask for, or that another answer has made pointless, never
/// count, so changing the kind needs no clearing. Numbers that are negative or not finite count as
/// "don't know".
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Application {
    /// What is joined.
    pub kind: JointKind,
    /// What the service manual names for this joint.
    #[serde(default)]
    pub manual: Option<ManualWord>,
    /// The thread carries a dry coating from the factory.
    #[serde(default)]
    pub precoated: Option<bool>,
    /// A lock plate, lock wire, split pin or self-locking nut holds it.
    #[serde(default)]
    pub locked: Option<bool>,
    /// What the faces are made of; the more awkward one where they differ.
    #[serde(default)]
    pub face: Option<Face>,
    /// The joint is together and stays together.
    #[serde(default)]
    pub assembled: Option<bool>,
    /// Nominal thread diameter.
    #[serde(default, rename = "thread_mm", with = "stored::millimetres::maybe")]
    pub thread: Option<Length>,
    /// Where the hole ends.
    #[serde(default)]
    pub hole: Option<Hole>,
    /// How often it has to come apart.
    #[serde(default)]
    pub apart: Option<Apart>,
    /// It shakes, or the load on it changes.
    #[serde(default)]
    pub vibration: Option<bool>,
    /// What makes a plug or fitting tight.
    #[serde(default)]
    pub seal: Option<PlugSeal>,
    /// Both faces are stiff, machined and flat.
    #[serde(default)]
    pub rigid: Option<bool>,
    /// The widest gap between the faces; for parts that slide together, on the diameter; 0 for a press fit.
    #[serde(default, rename = "gap_mm", with = "stored::millimetres::maybe")]
    pub gap: Option<Length>,
    /// What wets the joint.
    #[serde(default)]
    pub fluid: Option<Fluid>,
    /// The hottest the joint gets in service.
    #[serde(default, rename = "temperature_c", with = "stored::celsius::maybe")]
    pub temperature: Option<ThermodynamicTemperature>,
    /// An exhaust oxygen sensor breathes what the engine breathes out.
    #[serde(default)]
    pub oxygen_sensor: Option<bool>,
    /// Oil ways, jets or bearings lie within reach of squeezed-out compound.
    #[serde(default)]
    pub oil_ways: Option<bool>,
    /// What is filled in reaches it; `None` is taken as that it does. It chooses no compound: a fill does not
    /// wait for a joint that stays dry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wetted: Option<bool>,
    /// What a stainless or plated thread runs in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub partner: Option<Partner>,
    /// A plastic part is clamped by the metal thread, or touches it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plastic_part: Option<bool>,
    /// What slides in or on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held: Option<Held>,
    /// What the outside of a shaft seal is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outside: Option<Outside>,
}

impl Application {
    /// Makes it another kind: what is known beyond the kind stays, but for what fluid reaches it, which no
    /// question of the new kind would show.
    pub fn become_of(&mut self, kind: JointKind) {
        if kind != self.kind {
            self.kind = kind;
            self.wetted = None;
        }
    }

    /// A joint of this kind of which nothing else is known.
    pub fn new(kind: JointKind) -> Self {
        Self {
            kind,
            manual: None,
            precoated: None,
            locked: None,
            face: None,
            assembled: None,
            thread: None,
            hole: None,
            apart: None,
            vibration: None,
            seal: None,
            rigid: None,
            gap: None,
            fluid: None,
            temperature: None,
            oxygen_sensor: None,
            oil_ways: None,
            wetted: None,
            partner: None,
            plastic_part: None,
            held: None,
            outside: None,
        }
    }
}

impl Default for Application {
    fn default() -> Self {
        Self::new(JointKind::ThreadedFastener)
    }
}
