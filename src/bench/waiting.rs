//! A newer release that waits for the user's word.

use super::Bench;
use crate::device::release::Kept;
use reactive_graph::prelude::*;

impl Bench {
    /// Whether a newer release waits and may be told of now; followed.
    pub fn newer_waits(self) -> bool {
        self.kept.get() == Kept::NewerWaits && !self.look(|state, now| state.in_last_minutes(now.at))
    }

    /// Whether that release may be taken at once, by a touch where it is told of: since the app was opened
    /// nothing was done that undo would take back and a reload forgets, nothing is shown that is not kept, and
    /// nothing is asked; followed.
    pub fn newer_costs_nothing(self) -> bool {
        let asked = self.example.get() || self.not_kept.get() || self.doubt.get().is_some();
        self.newer_waits() && !asked && self.trail.with(|state| state.trail.is_empty())
    }
}
