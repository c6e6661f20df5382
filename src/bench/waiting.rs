//! A newer release that waits for the user's word.

use super::Bench;
use crate::device::release::Kept;
use reactive_graph::prelude::*;

impl Bench {
    /// Whether a newer release waits and may be told of now; followed.
    pub fn newer_waits(self) -> bool {
        self.kept.get() == Kept::NewerWaits && !self.look(|state, now| state.in_last_minutes(now.at))
    }
}
