//! My wrenches: add, change, move, remove; each with undo.

use super::Bench;
use crate::trade::wrench::{Wrench, WrenchError};
use reactive_graph::prelude::*;

impl Bench {
    /// Puts a new wrench last, and into the hand.
    ///
    /// # Errors
    /// Its numbers make no sense.
    pub fn add_wrench(self, wrench: Wrench) -> Result<(), WrenchError> {
        wrench.check()?;
        self.set("new wrench", |settings| {
            settings.wrenches.push(wrench);
            settings.in_hand = settings.wrenches.len() - 1;
        });
        Ok(())
    }

    /// Puts `wrench` in the place of the one at `at`.
    ///
    /// # Errors
    /// Its numbers make no sense; the old one stays.
    pub fn change_wrench(self, at: usize, wrench: Wrench) -> Result<(), WrenchError> {
        wrench.check()?;
        self.set("change of a wrench", |settings| {
            if let Some(old) = settings.wrenches.get_mut(at) {
                *old = wrench;
            }
        });
        Ok(())
    }

    /// Moves the wrench at `at` one place towards the front; the one in the hand stays in it.
    pub fn move_wrench_up(self, at: usize) {
        if at == 0 || self.settings.with_untracked(|s| at >= s.wrenches.len()) {
            return;
        }
        self.set("order of the wrenches", |settings| {
            settings.wrenches.swap(at - 1, at);
            settings.in_hand = match settings.in_hand {
                held if held == at => at - 1,
                held if held + 1 == at => at,
                held => held,
            };
        });
    }

    /// Takes the wrench at `at` off the bench; if it was in the hand, its neighbour is taken.
    pub fn remove_wrench(self, at: usize) {
        if self.settings.with_untracked(|s| at >= s.wrenches.len()) {
            return;
        }
        self.set("removed wrench", |settings| {
            settings.wrenches.remove(at);
            let last = settings.wrenches.len().saturating_sub(1);
            settings.in_hand = match settings.in_hand {
                held if held > at => held - 1,
                held => held.min(last),
            };
        });
    }
}
