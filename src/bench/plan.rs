//! Changing the plan of the job at hand, each change with its way back.

use super::{Bench, Inverse};
use crate::job::form;
use crate::job::kinds::Work;
use crate::job::planning::{self, PlanRefused};
use crate::job::sheet::{Sheet, Step, StepId};
use reactive_graph::prelude::*;

impl Bench {
    /// Says why a plan was not changed; nothing is lost.
    pub fn tell_plan<T>(self, outcome: Result<T, PlanRefused>) -> Option<T> {
        match outcome {
            Ok(value) => Some(value),
            Err(refused) => {
                self.say(refused.to_string(), false);
                None
            }
        }
    }

    /// Adds a step behind `after`, or at the end; tells its number.
    pub fn add_step(self, after: Option<StepId>, step: Step) -> StepId {
        let title = step.title.clone();
        let mut id = step.id;
        let added = self.plan(&format!("new step “{title}”"), |sheet| {
            id = planning::insert(sheet, after, step);
            Ok(())
        });
        added.map_or(id, |()| id)
    }

    /// Adds several steps at the end.
    pub fn add_steps(self, steps: Vec<Step>) {
        let words = format!("{} new steps", steps.len());
        self.plan(&words, |sheet| {
            for step in steps {
                planning::insert(sheet, None, step);
            }
            Ok(())
        })
        .ok();
    }

    /// Changes one field of a step.
    ///
    /// # Errors
    /// The field's sentence; nothing is changed.
    pub fn edit_step(self, id: StepId, field: &str, value: &str) -> Result<(), PlanRefused> {
        self.plan("change of the plan", |sheet| {
            let mut step = sheet.step(id).cloned().ok_or(PlanRefused::NoStep)?;
            form::set(sheet, &mut step, field, value)?;
            put(sheet, step)
        })
    }

    /// Gives a step another kind of work.
    ///
    /// # Errors
    /// [`PlanRefused::InRecord`] once something was done in it.
    pub fn change_work(self, id: StepId, work: crate::job::kinds::Work) -> Result<(), PlanRefused> {
        self.not_in_record(id)?;
        self.plan("kind of work", |sheet| {
            let step = sheet.step(id).cloned().ok_or(PlanRefused::NoStep)?;
            put(sheet, Step { work, ..step })
        })
    }

    /// Moves a step one place.
    ///
    /// # Errors
    /// [`PlanRefused::Order`].
    pub fn move_step(self, id: StepId, down: bool) -> Result<(), PlanRefused> {
        self.plan("move of a step", |sheet| planning::shift(sheet, id, down))
    }

    /// Copies a step; tells the copy's number.
    ///
    /// # Errors
    /// [`PlanRefused::NoStep`].
    pub fn copy_step(self, id: StepId) -> Result<StepId, PlanRefused> {
        let mut copy = id;
        self.plan("copy of a step", |sheet| {
            copy = planning::copy(sheet, id)?;
            Ok(())
        })?;
        Ok(copy)
    }

    /// Takes a step out of the plan.
    ///
    /// # Errors
    /// [`PlanRefused::InRecord`] where the record speaks of it, [`PlanRefused::WaitedFor`].
    pub fn remove_step(self, id: StepId) -> Result<(), PlanRefused> {
        self.not_in_record(id)?;
        self.plan("removal of a step", |sheet| planning::remove(sheet, id))
    }

    /// Names the machine.
    pub fn name_machine(self, words: &str) {
        let words = words.trim().to_owned();
        self.plan("name of the machine", |sheet| {
            sheet.machine = words;
            Ok(())
        })
        .ok();
    }

    fn not_in_record(self, id: StepId) -> Result<(), PlanRefused> {
        let spoken_of = self
            .record
            .with_untracked(|record| record.entries().iter().any(|entry| entry.step == Some(id)));
        if spoken_of {
            Err(PlanRefused::InRecord)
        } else {
            Ok(())
        }
    }

    /// Changes the work of a step of the sheet at hand; `words` name the change for undo.
    pub(super) fn change_step(self, words: &str, id: StepId, change: impl FnOnce(&mut Work)) {
        let mut sheet = self.sheet.get_untracked();
        if let Some(step) = sheet.steps.iter_mut().find(|step| step.id == id) {
            change(&mut step.work);
        }
        self.keep_changed(words, sheet);
    }

    fn keep_changed(self, words: &str, sheet: Sheet) {
        let job = self.job.get_untracked();
        let before = self.sheet.get_untracked();
        self.keep_sheet_of(job, sheet);
        self.leave(words.to_owned(), Inverse::Sheet(job, Box::new(before)));
    }

    /// Changes a copy of the sheet, checks it, and keeps it only when it is whole.
    fn plan(
        self,
        words: &str,
        change: impl FnOnce(&mut Sheet) -> Result<(), PlanRefused>,
    ) -> Result<(), PlanRefused> {
        let before = self.sheet.get_untracked();
        let mut sheet = before.clone();
        change(&mut sheet)?;
        if !sheet.steps.is_empty() {
            sheet.check().map_err(PlanRefused::Sheet)?;
        }
        if sheet != before {
            self.keep_changed(words, sheet);
        }
        Ok(())
    }
}

fn put(sheet: &mut Sheet, step: Step) -> Result<(), PlanRefused> {
    let at = sheet.place(step.id).ok_or(PlanRefused::NoStep)?;
    sheet.steps.splice(at..=at, [step]);
    Ok(())
}
