//! My bottles and tubes, the walk on the Bond screen, and the shop they cure in.

use super::Bench;
use crate::job::bonding::Walk;
use crate::job::bottle::{Bottle, BottleId};
use crate::job::kinds::Work;
use crate::job::night::{self, Night, NightError};
use crate::job::sheet::StepId;
use crate::trade::application::Application;
use reactive_graph::prelude::*;

impl Bench {
    /// A number for a new bottle.
    pub fn next_bottle(self) -> BottleId {
        self.settings.with_untracked(|settings| {
            let taken = settings.bottles.iter().map(|bottle| bottle.id.0 + 1).max();
            BottleId(taken.unwrap_or(1))
        })
    }

    /// Puts a bottle on the shelf, or its changed label in place of the old one.
    pub fn shelve(self, bottle: Bottle) {
        self.set("bottle", |settings| {
            let in_use = bottle.in_use;
            let (id, class) = (bottle.id, bottle.class);
            match settings.bottles.iter_mut().find(|old| old.id == id) {
                Some(old) => *old = bottle,
                None => settings.bottles.push(bottle),
            }
            if in_use {
                take(&mut settings.bottles, id, class);
            }
        });
    }

    /// Takes a bottle off the shelf for good.
    pub fn throw_away(self, id: BottleId) {
        self.set("throwing a bottle away", |settings| {
            settings.bottles.retain(|bottle| bottle.id != id);
        });
    }

    /// Takes that bottle for its class from now on.
    pub fn take_bottle(self, id: BottleId) {
        self.set("choice of bottle", |settings| {
            let class = settings.bottles.iter().find(|b| b.id == id).map(|b| b.class);
            if let Some(class) = class {
                take(&mut settings.bottles, id, class);
            }
        });
    }

    /// Takes no bottle: typical figures for what `fits` serves.
    pub fn take_typical(self, fits: impl Fn(&Bottle) -> bool) {
        self.set("choice of bottle", |settings| {
            let bottles = settings.bottles.iter_mut();
            bottles
                .filter(|bottle| fits(bottle))
                .for_each(|bottle| bottle.in_use = false);
        });
    }

    /// Changes the walk on the Bond screen.
    pub fn walk(self, words: &str, change: impl FnOnce(&mut Walk)) {
        self.set(words, |settings| change(&mut settings.walk));
    }

    /// Changes what is known of a step's joint; it is kept in the sheet.
    pub fn answer_for(self, step: StepId, joint: Application) {
        self.change_step("answer", step, |work| match work {
            Work::Bond(bond) => bond.application = joint,
            Work::Fasten(fasten) => fasten.compound = Some(joint),
            _ => {}
        });
    }

    /// Notes the shop's temperature as of now, °C; `minute` is the minute of the day by the phone's zone.
    pub fn note_shop(self, celsius: f64, minute: i64) {
        let now = self.time();
        self.set("shop temperature", |settings| {
            night::note(&mut settings.shop, settings.night.as_mut(), celsius, now, minute);
        });
    }

    /// Plans the nights ahead.
    ///
    /// # Errors
    /// The plan makes no sense, or the day's temperature isn't known.
    pub fn plan_night(self, plan: Night, minute: i64) -> Result<(), NightError> {
        let now = self.time();
        // Judged on a copy first, so that a refused plan leaves nothing to undo.
        let (mut shop, before) = self.settings.with_untracked(|s| (s.shop.clone(), s.night));
        let night = night::plan(&mut shop, before, plan, now, minute)?;
        self.set("plan of the night", |settings| {
            (settings.shop, settings.night) = (shop, Some(night));
        });
        Ok(())
    }

    /// Plans no nights any more.
    pub fn unplan_night(self, minute: i64) {
        let now = self.time();
        self.set("plan of the night", |settings| {
            if let Some(before) = settings.night.take() {
                night::unplan(&mut settings.shop, before, now, minute);
            }
        });
    }
}

/// One bottle of a class is in use at a time.
fn take(bottles: &mut [Bottle], id: BottleId, class: crate::trade::compound::CompoundClass) {
    bottles
        .iter_mut()
        .filter(|bottle| bottle.class == class)
        .for_each(|bottle| bottle.in_use = bottle.id == id);
}
