//! Cure clocks: recorded instants, from which every state is worked out. Nothing counts down.

use super::sheet::{JobId, StepId};
use crate::trade::cure::{CureSpec, DoneAt, Milestone, NoCure, ShopHistory};
use crate::trade::moment::Moment;
use serde::{Deserialize, Serialize};

/// A clock's own number on this bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ClockId(pub u32);

/// Where a clock belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bound {
    /// The job.
    pub job: JobId,
    /// The step whose joint cures.
    pub step: StepId,
}

/// Why a clock no longer counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ended {
    /// Its start was undone.
    Undone,
    /// The joint was opened again; a new clock takes over.
    Reopened,
    /// Seen finished and put away.
    PutAway,
}

/// One joint curing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CureClock {
    /// Unique on this bench.
    pub id: ClockId,
    /// The joint, in words.
    pub name: String,
    /// The compound, in words.
    pub compound: String,
    /// How it cures.
    pub spec: CureSpec,
    /// When it was put on.
    pub started: Moment,
    /// The job step it belongs to; none when free-standing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bound: Option<Bound>,
    /// Set when it no longer counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended: Option<Ended>,
}

impl CureClock {
    /// Whether it still stands for a joint.
    pub fn counts(&self) -> bool {
        !matches!(self.ended, Some(Ended::Undone | Ended::Reopened))
    }

    /// When that milestone is reached.
    ///
    /// # Errors
    /// [`NoCure`] when the shop is too cold for it, or the compound has no such milestone.
    pub fn reached_at(&self, milestone: Milestone, shop: &ShopHistory) -> Result<DoneAt, NoCure> {
        self.spec.reached_at(milestone, self.started, shop)
    }
}
