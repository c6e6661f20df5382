//! What a touch can do: each command checks, changes, keeps, and leaves a way back.

use super::{Action, Bench, Inverse, Settings};
use crate::bench::trail::TRAIL_LENGTH;
use crate::device::storage::StorageError;
use crate::device::wake_lock::{self, Awake};
use crate::job::clock::Bound;
use crate::job::kinds::Work;
use crate::job::kinds::seat::depth;
use crate::job::progress::{Progress, next_fastener};
use crate::job::record::{EntryId, Event};
use crate::job::sheet::{Step, StepId};
use crate::trade::caution::{Caution, Level};
use crate::trade::compound::{CompoundClass, Recommendation};
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use std::fmt;

/// Why a command did nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refused {
    /// A stop-level caution is not acknowledged.
    Unacknowledged,
    /// The gate is shut.
    Shut,
    /// Fasteners are left in this step.
    FastenersLeft(usize),
    /// The compound's clock was not started.
    ClockNotStarted,
    /// A reading is missing.
    ReadingMissing(String),
    /// A reason is asked for.
    NoReason,
    /// Steps are still open.
    StepsOpen(usize),
    /// It must be said how it turns.
    NotFelt,
    /// Nothing to take back.
    NothingToUndo,
    /// The bottle taken may not be used, and why.
    Bottle(String),
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unacknowledged => f.write_str("Read the STOP caution and acknowledge it first."),
            Self::Shut => f.write_str("This step is shut: see what it waits for."),
            Self::FastenersLeft(1) => f.write_str("One fastener is not tallied yet."),
            Self::FastenersLeft(n) => write!(f, "{n} fasteners are not tallied yet."),
            Self::ClockNotStarted => f.write_str("Put the compound on and start its clock first."),
            Self::ReadingMissing(name) => write!(f, "Enter the reading of “{name}” first."),
            Self::NoReason => f.write_str("Write the reason first: it goes into the record."),
            Self::StepsOpen(1) => f.write_str("One step is still open."),
            Self::StepsOpen(n) => write!(f, "{n} steps are still open."),
            Self::NotFelt => f.write_str("Say first how it turns: freely, or where it binds."),
            Self::NothingToUndo => f.write_str("Nothing to take back."),
            Self::Bottle(why) => write!(f, "{why} Take another on Bond, or typical figures."),
        }
    }
}

impl Bench {
    /// Runs a command's outcome: a refusal is said, never lost.
    pub fn tell(self, outcome: Result<(), Refused>) {
        if let Err(refused) = outcome {
            self.say(refused.to_string(), false);
        }
    }

    /// Acknowledges a caution of `step`.
    pub fn acknowledge(self, step: StepId, caution: &Caution) {
        let event = Event::Acknowledged {
            caution: caution.id.to_owned(),
            words: format!("{} {}", caution.danger, caution.act),
        };
        self.add(Some(step), event, "caution acknowledged".to_owned());
    }

    /// Tallies the next fastener of `step` with the value set on the wrench.
    ///
    /// # Errors
    /// A stop-level caution is open, or the step is shut.
    pub fn tally(self, step: &Step, cautions: &[Caution], set: &WrenchSet) -> Result<(), Refused> {
        self.ready(step, cautions)?;
        let progress = self.progress.with_untracked(|progress| progress.step(step.id));
        let Some(next) = next_fastener(step, &progress) else {
            return Ok(());
        };
        let event = Event::Tallied {
            pass: next.pass,
            place: next.place,
            value: set.value.clone(),
            unit: set.unit.clone(),
            tool: set.tool.clone(),
        };
        self.add(Some(step.id), event, format!("bolt {}", next.place + 1));
        Ok(())
    }

    /// Notes that the compound is on and starts its clock.
    ///
    /// # Errors
    /// A stop-level caution is open, or the step is shut.
    pub fn apply(
        self,
        step: &Step,
        cautions: &[Caution],
        class: CompoundClass,
        recommendation: &Recommendation,
    ) -> Result<(), Refused> {
        self.ready(step, cautions)?;
        let Some(spec) = recommendation.cure.clone() else {
            return Ok(());
        };
        let bound = Bound {
            job: self.job.get_untracked(),
            step: step.id,
        };
        let id = self.begin_clock(&step.title, class.name().to_owned(), spec, Some(bound));
        let event = Event::Applied {
            compound: class.name().to_owned(),
            clock: id,
        };
        self.add(Some(step.id), event, format!("clock of “{}”", step.title));
        Ok(())
    }

    /// Records a reading of a check step.
    pub fn measure(self, step: StepId, name: &str, value: f64, unit: &str, verdict: &str) {
        self.measure_with(step, name, value, unit, verdict, &super::ReadWith::default());
    }

    /// Closes `step`.
    ///
    /// # Errors
    /// Whatever its kind still asks for.
    pub fn done(self, step: &Step, cautions: &[Caution], summary: String) -> Result<(), Refused> {
        self.ready(step, cautions)?;
        let progress = self.progress.with_untracked(|progress| progress.step(step.id));
        match &step.work {
            Work::Fasten(fasten) => {
                let left = fasten.tally_count().saturating_sub(progress.tallied.len());
                if left > 0 {
                    return Err(Refused::FastenersLeft(left));
                }
            }
            Work::Check(check) => {
                let mut asked = check.asked().into_iter();
                if let Some(missing) = asked.find(|name| progress.reading(name).is_none()) {
                    return Err(Refused::ReadingMissing(missing));
                }
            }
            Work::Seat(seat) => {
                if let Some(missing) = depth::missing(seat, &progress) {
                    return Err(Refused::ReadingMissing(missing.to_owned()));
                }
            }
            Work::Turn(_) if progress.felt.is_none() => return Err(Refused::NotFelt),
            _ => {}
        }
        if step.work.cures() && progress.clocks.is_empty() {
            return Err(Refused::ClockNotStarted);
        }
        self.add(
            Some(step.id),
            Event::Done { summary },
            format!("step “{}”", step.title),
        );
        Ok(())
    }

    /// Opens a shut step by hand, with a reason.
    ///
    /// # Errors
    /// No reason given.
    pub fn override_gate(self, step: &Step, reason: &str) -> Result<(), Refused> {
        let reason = reason.trim();
        if reason.is_empty() {
            return Err(Refused::NoReason);
        }
        self.add(
            Some(step.id),
            Event::Overridden {
                reason: reason.to_owned(),
            },
            "opening by hand".to_owned(),
        );
        Ok(())
    }

    /// Closes the whole job.
    ///
    /// # Errors
    /// Steps are still open.
    pub fn close_job(self) -> Result<(), Refused> {
        let open = self.sheet.with_untracked(|sheet| {
            sheet.steps.len() - self.progress.with_untracked(|p| p.closed_count(sheet))
        });
        if open > 0 {
            return Err(Refused::StepsOpen(open));
        }
        self.add(None, Event::JobClosed, "closing the job".to_owned());
        Ok(())
    }

    /// Changes the settings; `words` name the change for undo.
    pub fn set(self, words: &str, change: impl FnOnce(&mut Settings)) {
        let mut after = self.settings.get_untracked();
        change(&mut after);
        self.settle(words, after);
    }

    // Apart from `set`, so that it is compiled once and not for every change there is.
    fn settle(self, words: &str, after: Settings) {
        let before = self.settings.get_untracked();
        let entry = before.entry() != after.entry();
        self.settings.set(after);
        self.keep_settings();
        let before = Box::new(before);
        self.leave(words.to_owned(), Inverse::Settings { before, entry });
    }

    /// Takes another wrench in the hand.
    pub fn take_wrench(self, at: usize) {
        if self.settings.with_untracked(|settings| settings.in_hand != at) {
            self.set("choice of wrench", |settings| settings.in_hand = at);
        }
    }

    /// Notes the shop's temperature as of now, °C.
    pub fn note_temperature(self, celsius: f64) {
        let now = self.time();
        self.set("shop temperature", |settings| {
            settings.note_temperature(now, celsius)
        });
    }

    /// Changes the settings without a way back: for what only remembers what was typed.
    pub fn note(self, change: impl FnOnce(&mut Settings)) {
        let mut after = self.settings.get_untracked();
        change(&mut after);
        self.settings.set(after);
        self.keep_settings();
    }

    /// What undo would take back, in words.
    pub fn undoable(self) -> Option<String> {
        let left = self
            .trail
            .with(|trail| trail.last().map(|action| action.words.clone()));
        left.or_else(|| {
            self.record.with(|record| {
                record
                    .last_standing()
                    .map(|entry| super::entry_words(&entry.event))
            })
        })
    }

    /// Takes the last action back. After a reload the record itself is the trail.
    ///
    /// # Errors
    /// Nothing is left to take back.
    pub fn undo(self) -> Result<(), Refused> {
        let last = self.trail.try_update(|trail| trail.pop()).flatten();
        let inverse = match last {
            Some(action) => action.inverse,
            None => {
                let entry = self
                    .record
                    .with_untracked(|record| record.last_standing().map(|entry| entry.id));
                Inverse::Entry(self.job.get_untracked(), entry.ok_or(Refused::NothingToUndo)?)
            }
        };
        match inverse {
            Inverse::Entry(job, entry) => {
                // Another job's line of that number must not be taken back in its place.
                if self.bring_to_hand(job) {
                    self.take_back(entry);
                }
            }
            Inverse::Settings { mut before, entry } => {
                if !entry {
                    self.settings.with_untracked(|now| before.take_entry(now));
                }
                self.settings.set(*before);
                self.keep_settings();
            }
            Inverse::Clocks(before) => {
                self.clocks.set(before);
                self.keep_clocks();
            }
            Inverse::Sheet(job, before) => self.keep_sheet_of(job, *before),
            Inverse::Jobs(at_hand, heads) => self.put_jobs(at_hand, heads),
            Inverse::Everything(before) => self.put_everything(&before),
        }
        Ok(())
    }

    pub(super) fn take_back(self, id: EntryId) {
        let entry = self.record.with_untracked(|record| record.entry(id).cloned());
        let Some(entry) = entry else { return };
        if let Event::Applied { clock, .. } = entry.event {
            self.undo_start(clock);
        }
        self.write(entry.step, Event::TakenBack { entry: id });
        self.progress.set(self.record.with_untracked(Progress::of));
    }

    /// A step can be worked on: nothing shuts it and no stop-level caution is open.
    pub(super) fn ready(self, step: &Step, cautions: &[Caution]) -> Result<(), Refused> {
        if !untrack(|| self.waits(step)).is_empty() {
            return Err(Refused::Shut);
        }
        let progress = self.progress.with_untracked(|progress| progress.step(step.id));
        let open = cautions
            .iter()
            .any(|c| c.level == Level::Stop && !progress.acknowledged.contains(c.id));
        if open {
            Err(Refused::Unacknowledged)
        } else {
            Ok(())
        }
    }

    /// Asks for the display to stay on while a step or a clock is open.
    pub fn stay_awake(self) {
        let wanted = untrack(|| {
            self.progress.with(|progress| progress.job_closed.is_none())
                || self
                    .clocks
                    .with(|clocks| clocks.iter().any(|clock| clock.ended.is_none()))
        });
        if wanted {
            wake_lock::hold(move |awake| {
                self.awake.try_set(awake);
            });
        } else {
            wake_lock::release();
            self.awake.set(Awake::NotAsked);
        }
    }

    pub(super) fn add(self, step: Option<StepId>, event: Event, words: String) {
        let id = self.write(step, event);
        self.progress.update(|progress| {
            self.record.with_untracked(|record| {
                record
                    .entry(id)
                    .into_iter()
                    .for_each(|entry| progress.take(entry))
            });
        });
        self.leave(words, Inverse::Entry(self.job.get_untracked(), id));
    }

    pub(super) fn write(self, step: Option<StepId>, event: Event) -> EntryId {
        let who = self.settings.with_untracked(|settings| settings.initials.clone());
        let at = self.time();
        let mut id = EntryId(0);
        self.record
            .update(|record| id = record.add(at, step, &who, event));
        let job = self.job.get_untracked();
        let kept = self.record.with_untracked(|record| {
            self.shelves.with_value(|shelves| {
                shelves.keep_record_end(job, record)?;
                // A record stands on its sheet: another release's example may be another one.
                if record.entries().len() == 1 {
                    self.sheet
                        .with_untracked(|sheet| shelves.keep_first_sheet(job, sheet))?;
                }
                Ok(())
            })
        });
        self.kept_or_said(kept);
        self.tick();
        id
    }

    pub(super) fn leave(self, words: String, inverse: Inverse) {
        let action = Action {
            at: self.time(),
            words,
            inverse,
        };
        self.trail.update(|trail| {
            trail.push(action);
            let over = trail.len().saturating_sub(TRAIL_LENGTH);
            trail.drain(..over);
        });
    }

    pub(super) fn keep_clocks(self) {
        let kept = self
            .clocks
            .with_untracked(|clocks| self.shelves.with_value(|shelves| shelves.keep_clocks(clocks)));
        self.kept_or_said(kept);
    }

    pub(super) fn keep_settings(self) {
        let kept = self
            .settings
            .with_untracked(|s| self.shelves.with_value(|shelves| shelves.keep_settings(s)));
        self.kept_or_said(kept);
    }

    pub(super) fn kept_or_said(self, kept: Result<(), StorageError>) {
        if let Err(error) = kept {
            self.say(error.to_string(), true);
        }
    }
}

/// What was set on which wrench, for the record.
#[derive(Debug, Clone, PartialEq)]
pub struct WrenchSet {
    /// The number, as shown.
    pub value: String,
    /// Its unit: a torque's symbol, or ° for a turn.
    pub unit: String,
    /// The wrench's name; empty for a turn.
    pub tool: String,
}
