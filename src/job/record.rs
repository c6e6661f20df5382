//! The record: what was done, entry by entry. It only grows; a correction is one more entry.

pub use super::id::EntryId;
use super::id::{ClockId, StepId};
use super::kinds::{Gauged, LiftWork, Piece, Seat};
use super::part::{PartKey, PartPlace};
use super::reading::{Fact, Verdict, What};
use crate::trade::compound::CompoundClass;
use crate::trade::hoist::BoomPosition;
use crate::trade::moment::Moment;
use crate::trade::quantity::TorqueUnit;
use crate::trade::stages::Deed;
use serde::{Deserialize, Serialize};

/// What a fastener was brought to.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SetTo {
    /// A torque on a wrench's scale, with as many decimals as the scale is read to.
    Torque {
        value: f64,
        unit: TorqueUnit,
        #[serde(default)]
        decimals: u8,
    },
    /// A turn, °.
    Turn(f64),
    /// Snug, by hand.
    Hand,
    /// Something done to all fasteners at once.
    All(Deed),
}

/// What fasteners are brought to a torque with that no wrench on the bench can be set to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Instead {
    /// Hands, snug: only before a pass to more.
    Hands,
    /// A wrench that is not on the bench's list.
    Borrowed,
    /// A torque multiplier on one that is.
    Multiplier,
    /// A spring scale at a measured length of bar.
    ScaleOnBar,
    /// Something else, in the user's words.
    Other(String),
}

impl Instead {
    /// What is offered by name, beside hands where more follows.
    pub const OFFERED: [Self; 3] = [Self::Borrowed, Self::Multiplier, Self::ScaleOnBar];

    /// It in words, behind "with".
    pub fn words(&self) -> &str {
        match self {
            Self::Hands => "hands, snug: more follows",
            Self::Borrowed => "a borrowed wrench",
            Self::Multiplier => "a torque multiplier",
            Self::ScaleOnBar => "a spring scale on a measured bar",
            Self::Other(words) => words,
        }
    }
}

/// What was set, and on what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Setting {
    /// The number.
    pub to: SetTo,
    /// The wrench, by the user's name for it; empty for a turn.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub tool: String,
    /// An adapter was on it.
    #[serde(default, skip_serializing_if = "is_false")]
    pub adapter: bool,
    /// No wrench on the bench could be set to it: what was used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub instead: Option<Instead>,
}

impl Setting {
    /// With what, behind its number: " with Small with an adapter", " with a borrowed wrench"; nothing where
    /// nothing was used.
    pub fn with_words(&self) -> String {
        let adapter = if self.adapter { " with an adapter" } else { "" };
        match (&self.instead, self.tool.as_str()) {
            (Some(instead), _) => format!(" with {}", instead.words()),
            (None, "") => String::new(),
            (None, tool) => format!(" with {tool}{adapter}"),
        }
    }
}

/// What a pass was to bring a fastener to, as the plan then said: a tally stands while the plan still
/// says so.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Goal {
    /// That share of the torque, N·m, and the thread's nominal diameter, mm, where it was stated.
    Torque {
        newton_metres: f64,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thread_mm: Option<f64>,
    },
    /// A turn, °, and the thread's nominal diameter, mm.
    Turn {
        degrees: f64,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thread_mm: Option<f64>,
    },
    /// The torque before once more, N·m: it did not move.
    Unmoved {
        newton_metres: f64,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thread_mm: Option<f64>,
    },
    /// Snug, by hand.
    Hand {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thread_mm: Option<f64>,
    },
    /// Something done to all at once.
    All(Deed),
}

/// What was worked out for a step when it was closed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Facts {
    /// The fit as it then stood in the plan, and the room, °C.
    Seat {
        seat: Box<Seat>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        room_c: Option<f64>,
    },
    /// The lift, and the hoist's rating, kg, with its boom's.
    Lift {
        lift: Box<LiftWork>,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rating_kg: Option<f64>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        boom: Vec<BoomPosition>,
    },
}

/// What went on a joint.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Compound {
    /// A class, out of no bottle in particular.
    Class(CompoundClass),
    /// One of the user's bottles, by its name then.
    Bottle { class: CompoundClass, name: String },
    /// As form 1 wrote it.
    Words(String),
}

/// What happened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Event {
    /// A stop-level caution was read and acknowledged.
    Acknowledged { caution: String },
    /// One fastener was brought to one pass's torque; no goal in lines of form 1.
    Tallied {
        pass: usize,
        place: usize,
        set: Setting,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        goal: Option<Goal>,
    },
    /// No wrench on the bench can be set to what a step asks: what is used, until its fasteners are loosened.
    WithoutWrench { instead: Instead },
    /// All fasteners were loosened, to be brought to torque again.
    Loosened,
    /// A compound went on; its clock was started.
    Applied { compound: Compound, clock: ClockId },
    /// A joint with a compound was opened again.
    JointOpened,
    /// A size, torque or temperature was read, in that unit.
    Measured {
        what: What,
        value: f64,
        unit: String,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        tool: String,
        verdict: Verdict,
        /// The temperature it was read at, °C, where it matters.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at_c: Option<f64>,
        /// Digits behind the point, where it was typed with more than its number needs.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        decimals: Option<u8>,
    },
    /// A reading outside its limits was accepted, under which limits, and why.
    Accepted {
        what: What,
        limits: Vec<Option<f64>>,
        reason: String,
    },
    /// Something was looked at and said: it holds or it does not, and what more was said of it.
    Said {
        fact: Fact,
        holds: bool,
        #[serde(default, skip_serializing_if = "String::is_empty")]
        words: String,
    },
    /// Something was turned by hand: free where `tight_at` is empty, else where it binds.
    Felt { tight_at: String },
    /// The codes were read by which a part is chosen.
    Coded { down: String, across: String },
    /// Shims, a washer or shells were chosen and put in, in sizes of that unit.
    Chosen {
        /// Which time, from 1.
        round: u32,
        pieces: Vec<Piece>,
        unit: String,
        /// What was wanted, where it was worked out.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        aim: Option<f64>,
        /// What it leaves of the gap, where one was measured.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        leaves: Option<f64>,
        verdict: Verdict,
    },
    /// A bearing is gauged, so far.
    Gauged(Gauged),
    /// A part was looked at: fit where `unfit` is empty, else what is wrong with it.
    Judged { part: PartKey, unfit: String },
    /// What it takes to settle a finding is on order.
    Ordered { what: What, part: PartKey },
    /// Of parts that must be new, new ones are on.
    NewOn { part: PartKey },
    /// A part was found, sent, ordered, or counted.
    Placed {
        part: PartKey,
        place: PartPlace,
        here: u32,
        of: u32,
    },
    /// The step was closed.
    Done {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        facts: Option<Facts>,
    },
    /// The step was skipped.
    Skipped { reason: String },
    /// A closed step was opened again.
    Reopened,
    /// A shut step was overridden.
    Overridden { reason: String },
    /// An earlier entry no longer holds (undo).
    TakenBack { entry: EntryId },
    /// A remark on an earlier entry, or on the step.
    Noted { about: Option<EntryId>, words: String },
    /// The phone's clock and ours.
    PhoneClock(PhoneClock),
    /// The whole job was closed.
    JobClosed,
}

/// What was seen of the phone's clock, or said of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhoneClock {
    /// It jumped; so many milliseconds ahead now.
    Jumped(i64),
    /// It is in step again by itself.
    InStep,
    /// The user said it is right.
    Right,
    /// The user said it is wrong.
    Wrong,
    /// So many milliseconds went by on it while the app was closed, in which a cure would have ripened.
    Closed(i64),
    /// It was so many milliseconds behind when compounds went on (negative: ahead), and is right now: their
    /// clocks were moved.
    WrongBefore(i64),
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
    /// It was done with the line before it, by one touch: undo takes both back.
    #[serde(default, skip_serializing_if = "is_false")]
    pub joined: bool,
    /// What form 1 said of it in words that no number holds.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub was: String,
    /// What happened.
    pub event: Event,
}

fn is_false(it: &bool) -> bool {
    !it
}

impl Entry {
    /// A line by itself.
    pub fn new(id: EntryId, at: Moment, step: Option<StepId>, who: &str, event: Event) -> Self {
        Self {
            id,
            at,
            step,
            who: who.to_owned(),
            joined: false,
            was: String::new(),
            event,
        }
    }

    /// Whether it is work at its step: where a part lies and what is remarked is not.
    pub fn works(&self) -> bool {
        !matches!(
            self.event,
            Event::Placed { .. } | Event::Noted { .. } | Event::TakenBack { .. } | Event::PhoneClock(_)
        )
    }

    /// Whether somebody did it: a line of the app's own about the phone's clock is nobody's action.
    pub fn by_hand(&self) -> bool {
        !matches!(self.event, Event::PhoneClock(_))
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

    /// Stretches of lines that are missing, each from its first number to its last; none ever should be.
    pub fn gaps(&self) -> Vec<(EntryId, EntryId)> {
        let mut gaps = Vec::new();
        let mut next = 0;
        for entry in &self.entries {
            if entry.id.0 > next {
                gaps.push((EntryId(next), EntryId(entry.id.0 - 1)));
            }
            next = entry.id.0.saturating_add(1);
        }
        gaps
    }

    /// The number the next line will have.
    pub fn next_id(&self) -> EntryId {
        EntryId(self.entries.last().map_or(0, |entry| entry.id.0 + 1))
    }

    /// Adds a line; one whose number is not the next is left out.
    pub fn push(&mut self, entry: Entry) {
        if entry.id == self.next_id() {
            self.entries.push(entry);
        }
    }

    /// Adds a line by itself and tells its number.
    pub fn add(&mut self, at: Moment, step: Option<StepId>, who: &str, event: Event) -> EntryId {
        let id = self.next_id();
        self.push(Entry::new(id, at, step, who, event));
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

    /// The last lines that still hold and that undo can take back: those of one touch, oldest first.
    ///
    /// Looks from the end, so that a long record's next tally costs no more than a short one's.
    pub fn last_touch(&self) -> Vec<&Entry> {
        let mut touch: Vec<&Entry> = Vec::new();
        for entry in self.standing_from_the_end().filter(|entry| entry.by_hand()) {
            let joined = entry.joined;
            touch.insert(0, entry);
            if !joined {
                break;
            }
        }
        touch
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
