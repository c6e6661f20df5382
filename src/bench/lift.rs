//! Lift: the numbers of a step or of the screen itself, my hoist's boom, kg or lb.

use super::Bench;
use crate::job::kinds::{LiftWork, Work};
use crate::job::sheet::StepId;
use crate::trade::hoist::BoomPosition;
use crate::trade::quantity::{Length, Mass, MassUnit};
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

/// What the Lift screen keeps on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct LiftBench {
    /// Its own numbers, apart from any step.
    pub work: LiftWork,
    /// The holes of my hoist's boom, each with its rating, from the post outwards.
    pub boom: Vec<BoomPosition>,
    /// What weights are typed and shown in.
    pub unit: MassUnit,
}

impl Default for LiftBench {
    fn default() -> Self {
        Self {
            work: LiftWork::default(),
            boom: Vec::new(),
            unit: MassUnit::Kilogram,
        }
    }
}

impl Bench {
    /// The lift at hand: that of a step, or the screen's own. None where the step is no lift step.
    pub fn lift(self, step: Option<StepId>) -> Option<LiftWork> {
        match step {
            None => Some(self.settings.with(|s| s.lift.work.clone())),
            Some(id) => self.sheet.with(|sheet| match &sheet.step(id)?.work {
                Work::Lift(lift) => Some(lift.clone()),
                _ => None,
            }),
        }
    }

    /// Changes the lift at hand; `words` name the change for undo.
    pub fn change_lift(self, step: Option<StepId>, words: &str, change: impl FnOnce(&mut LiftWork)) {
        let Some(mut lift) = untrack(|| self.lift(step)) else {
            return;
        };
        let before = lift.clone();
        change(&mut lift);
        if lift != before {
            self.keep_work(step, words, Work::Lift(lift));
        }
    }

    /// Adds a hole of my hoist's boom, or corrects the one at that reach.
    pub fn add_boom(self, reach_mm: f64, rating_kg: f64) {
        let position = BoomPosition {
            reach: Length::new::<millimeter>(reach_mm),
            rating: Mass::new::<kilogram>(rating_kg),
        };
        self.set("boom position", |settings| {
            let boom = &mut settings.lift.boom;
            boom.retain(|other| (other.reach - position.reach).get::<millimeter>().abs() >= 1.0);
            boom.push(position);
            boom.sort_by(|a, b| a.reach.value.total_cmp(&b.reach.value));
        });
    }

    /// Takes a hole of my hoist's boom out.
    pub fn remove_boom(self, at: usize) {
        self.set("boom position", |settings| {
            if at < settings.lift.boom.len() {
                settings.lift.boom.remove(at);
            }
        });
    }
}
