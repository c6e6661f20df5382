//! The way back: one action, whole. After a reload the record itself is the trail.

use super::draft::Draft;
use super::transaction::pieces_back;
use super::{Name, Refused, State, Transaction, Way};
use crate::job::record::{Entry, Event};
use crate::job::sheet::JobId;

impl State {
    pub(super) fn undo(&self, mut draft: Draft<'_>) -> Result<Transaction, Refused> {
        let lines: Vec<(JobId, Entry)> = if let Some(last) = self.trail.last() {
            let before = &last.before;
            draft.after.jobs.clone_from(&before.jobs);
            draft.after.sheets.clone_from(&before.sheets);
            draft.after.files.clone_from(&before.files);
            draft.after.clocks.clone_from(&before.clocks);
            // A start that was moved since, as the phone had been wrong, stays moved.
            for clock in draft.after.clocks.iter_mut().flatten() {
                if let Some(own) = self.clocks.iter().find(|own| own.id == clock.id) {
                    (clock.started, clock.held_ms) = (own.started, own.held_ms);
                }
            }
            if let (Some(before), Some(after)) = (&before.settings, &last.after.settings) {
                draft.after.settings = Some(Box::new(pieces_back(&self.settings, before, after)));
            }
            last.lines.clone()
        } else {
            let touch = self.job().record.last_touch();
            let at_hand = self.jobs.at_hand;
            touch.into_iter().map(|entry| (at_hand, entry.clone())).collect()
        };
        if lines.is_empty() && self.trail.is_empty() {
            return Err(Refused::NothingToUndo);
        }
        let started = lines.iter().find_map(|(_, entry)| match entry.event {
            Event::Applied { clock, .. } => Some(clock),
            _ => None,
        });
        if let Some(clock) = started {
            // Kept as undone: the record still speaks of it.
            draft.after.clocks = None;
            let opened = lines.iter().any(|(_, entry)| entry.event == Event::JointOpened);
            draft.undo_start(clock, opened);
        }
        // After a reload no clocks of before are at hand: the record tells which joint is closed again.
        if started.is_none() && self.trail.is_empty() {
            for (job, entry) in &lines {
                if let (Event::JointOpened, Some(step)) = (&entry.event, entry.step) {
                    draft.undo_opening(*job, step);
                }
            }
        }
        for (job, entry) in lines.iter().rev() {
            draft.line_in(*job, entry.step, Event::TakenBack { entry: entry.id });
        }
        Ok(draft.finish(Name::Undo, Way::Back))
    }
}
