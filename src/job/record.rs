//! The record: what was done, entry by entry. It only grows; a correction is one more entry.

use super::clock::ClockId;
use super::parts::PartPlace;
use super::sheet::StepId;
use crate::trade::moment::Moment;
use serde::{Deserialize, Serialize};

/// An entry's number within its record, from 0, without gaps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EntryId(pub u64);

/// What happened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Event {
    /// A stop-level caution was read and acknowledged.
    Acknowledged { caution: String, words: String },
    /// One fastener was brought to one pass's torque.
    Tallied {
        pass: usize,
        place: usize,
        value: String,
        unit: String,
        tool: String,
    },
    /// A compound went on; its clock was started.
    Applied { compound: String, clock: ClockId },
    /// A size, torque or temperature was read.
    Measured {
        name: String,
        value: f64,
        unit: String,
        tool: String,
        verdict: String,
        /// The temperature it was read at, °C, where it matters.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at_c: Option<f64>,
    },
    /// Something was turned by hand: free where `tight_at` is empty, else where it binds.
    Felt { what: String, tight_at: String },
    /// A part was found, sent, ordered, or counted.
    Placed {
        part: String,
        name: String,
        place: PartPlace,
        here: u32,
        of: u32,
    },
    /// The step was closed.
    Done { summary: String },
    /// The step was left out.
    Skipped { reason: String },
    /// A shut step was opened by hand.
    Overridden { reason: String },
    /// An earlier entry no longer holds (undo).
    TakenBack { entry: EntryId },
    /// A remark on an earlier entry, or on the step.
    Noted { about: Option<EntryId>, words: String },
    /// The whole job was closed.
    JobClosed,
}

/// One line of the record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Its number: entries are stored in this order.
    pub id: EntryId,
    /// When, by the phone's clock.
    pub at: Moment,
    /// The step it belongs to; none for the whole job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<StepId>,
    /// Initials of whoever did it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub who: String,
    /// What happened.
    pub event: Event,
}

impl Entry {
    /// Whether somebody did it: a line of the app's own about the phone's clock is nobody's action.
    pub fn by_hand(&self) -> bool {
        self.step.is_some() || !matches!(self.event, Event::Noted { .. })
    }
}

/// A job's record. There is no way to take an entry out.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Record {
    entries: Vec<Entry>,
}

impl Record {
    /// A record of entries read back from storage, put in the order of their numbers.
    pub fn from_entries(mut entries: Vec<Entry>) -> Self {
        entries.sort_by_key(|entry| entry.id);
        entries.dedup_by_key(|entry| entry.id);
        Self { entries }
    }

    /// Adds a line and tells its number.
    pub fn add(&mut self, at: Moment, step: Option<StepId>, who: &str, event: Event) -> EntryId {
        let id = EntryId(self.entries.last().map_or(0, |entry| entry.id.0 + 1));
        self.entries.push(Entry {
            id,
            at,
            step,
            who: who.to_owned(),
            event,
        });
        id
    }

    /// Every line, oldest first.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The line of that number.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries
            .binary_search_by_key(&id, |entry| entry.id)
            .ok()
            .and_then(|at| self.entries.get(at))
    }

    /// The lines that still hold: neither taken back nor a taking-back itself.
    pub fn standing(&self) -> impl Iterator<Item = &Entry> {
        let back: std::collections::HashSet<EntryId> = self
            .entries
            .iter()
            .filter_map(|entry| match entry.event {
                Event::TakenBack { entry } => Some(entry),
                _ => None,
            })
            .collect();
        self.entries
            .iter()
            .filter(move |entry| !back.contains(&entry.id) && !matches!(entry.event, Event::TakenBack { .. }))
    }

    /// The last line that still holds and that undo can take back.
    ///
    /// Looks from the end, so that a long record's next tally costs no more than a short one's.
    pub fn last_standing(&self) -> Option<&Entry> {
        self.standing_from_the_end().find(|entry| entry.by_hand())
    }

    /// The lines that still hold, newest first; looks no further than it is asked.
    pub fn standing_from_the_end(&self) -> impl Iterator<Item = &Entry> {
        // What takes an entry back always comes after it.
        let mut back = std::collections::BTreeSet::new();
        self.entries.iter().rev().filter(move |entry| match entry.event {
            Event::TakenBack { entry } => {
                back.insert(entry);
                false
            }
            _ => !back.contains(&entry.id),
        })
    }
}
