//! What happens at the bench beyond torque and cure: readings with their tool, parts, leaving out, remarks.

use super::{Bench, Refused};
use crate::job::parts::{Listed, PartPlace};
use crate::job::record::{EntryId, Event};
use crate::job::sheet::{Step, StepId};
use crate::trade::moment::Moment;
use reactive_graph::prelude::*;

/// What a reading was taken with.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct ReadWith {
    /// The tool, in words.
    pub tool: String,
    /// The part's temperature, °C.
    pub at_c: Option<f64>,
}

impl Bench {
    /// Records a reading of a check step with what it was taken with.
    pub fn measure_with(
        self,
        step: StepId,
        name: &str,
        value: f64,
        unit: &str,
        verdict: &str,
        with: &ReadWith,
    ) {
        let event = Event::Measured {
            name: name.to_owned(),
            value,
            unit: unit.to_owned(),
            tool: with.tool.clone(),
            verdict: verdict.to_owned(),
            at_c: with.at_c,
        };
        self.add(Some(step), event, format!("reading of {name}"));
    }

    /// Records how something turned: freely where `tight_at` is empty.
    pub fn feel(self, step: StepId, what: &str, tight_at: &str) {
        let event = Event::Felt {
            what: what.to_owned(),
            tight_at: tight_at.trim().to_owned(),
        };
        self.add(Some(step), event, "how it turns".to_owned());
    }

    /// Records where a part is and how many are counted.
    pub fn place_part(self, part: &Listed, place: PartPlace, here: u32) {
        let event = Event::Placed {
            part: part.key.clone(),
            name: part.name.clone(),
            place,
            here,
            of: part.of,
        };
        self.add(Some(part.step), event, format!("where {} is", part.name));
    }

    /// Ticks a part off: all of it is here. One that was nowhere is on the bench now.
    pub fn tick_part(self, part: &Listed) {
        let place = if part.place.at_hand() {
            part.place.clone()
        } else {
            PartPlace::OnBench
        };
        self.place_part(part, place, part.of);
    }

    /// Leaves a step out.
    ///
    /// # Errors
    /// No reason given.
    pub fn skip(self, step: &Step, reason: &str) -> Result<(), Refused> {
        let reason = reason.trim();
        if reason.is_empty() {
            return Err(Refused::NoReason);
        }
        let event = Event::Skipped {
            reason: reason.to_owned(),
        };
        self.add(Some(step.id), event, format!("leaving out “{}”", step.title));
        Ok(())
    }

    /// Opens a closed step again: the line that closed it no longer holds.
    pub fn reopen(self, step: StepId) {
        let closing = self.record.with_untracked(|record| {
            let mut standing = record.standing_from_the_end();
            standing
                .find(|entry| {
                    entry.step == Some(step)
                        && matches!(entry.event, Event::Done { .. } | Event::Skipped { .. })
                })
                .map(|entry| entry.id)
        });
        if let Some(id) = closing {
            // Taken out of the trail too: it can't be undone a second time.
            let job = self.job.get_untracked();
            self.trail.update(|trail| {
                trail.retain(|action| action.inverse != super::Inverse::Entry(job, id));
            });
            self.take_back(id);
        }
    }

    /// Adds a remark beside a line of the record, or on the whole job.
    ///
    /// # Errors
    /// No words given.
    pub fn add_remark(self, about: Option<EntryId>, words: &str) -> Result<(), Refused> {
        let words = words.trim();
        if words.is_empty() {
            return Err(Refused::NoReason);
        }
        let step = about.and_then(|id| {
            self.record
                .with_untracked(|record| record.entry(id).and_then(|e| e.step))
        });
        let event = Event::Noted {
            about,
            words: words.to_owned(),
        };
        self.add(step, event, "remark".to_owned());
        Ok(())
    }

    /// The last actions that undo would take back one by one, newest first; at most twenty.
    pub fn history(self) -> Vec<(Moment, String)> {
        let mut actions: Vec<(Moment, String)> = Vec::new();
        let mut in_trail = Vec::new();
        self.trail.with(|trail| {
            for action in trail.iter().rev() {
                actions.push((action.at, action.words.clone()));
                if let super::Inverse::Entry(job, id) = action.inverse {
                    in_trail.push((job, id));
                }
            }
        });
        let job = self.job.get();
        self.record.with(|record| {
            let older = record
                .standing_from_the_end()
                .filter(|entry| entry.by_hand() && !in_trail.contains(&(job, entry.id)))
                .map(|entry| (entry.at, entry_words(&entry.event)));
            let room = super::trail::TRAIL_LENGTH.saturating_sub(actions.len());
            actions.extend(older.take(room));
        });
        actions
    }
}

/// An entry as undo names it.
pub fn entry_words(event: &Event) -> String {
    match event {
        Event::Acknowledged { .. } => "caution acknowledged".to_owned(),
        Event::Tallied { place, .. } => format!("bolt {}", place + 1),
        Event::Applied { compound, .. } => format!("clock of the {compound}"),
        Event::Measured { name, .. } => format!("reading of {name}"),
        Event::Felt { .. } => "how it turns".to_owned(),
        Event::Placed { name, .. } => format!("where {name} is"),
        Event::Done { .. } => "step done".to_owned(),
        Event::Skipped { .. } => "step left out".to_owned(),
        Event::Overridden { .. } => "opening by hand".to_owned(),
        Event::Noted { .. } => "remark".to_owned(),
        Event::JobClosed => "closing the job".to_owned(),
        Event::TakenBack { .. } => String::new(),
    }
}
