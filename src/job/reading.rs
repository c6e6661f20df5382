//! What a reading is of: by number, so that a new name loses nothing; and what its limits said.

use super::id::{ClockId, ReadingId};
use super::part::PartKey;
use crate::trade::measure::{DEPTHS, DIRECTIONS};
use serde::{Deserialize, Serialize};

/// What a depth is called.
pub const DEPTH: &str = "depth below the face";
/// What a gap is called.
pub const GAP: &str = "oil gap behind";

/// What was read.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// A reading of a check step.
    Limit(ReadingId),
    /// A place of a bore's grid, or of the journal's that runs in it; depth and direction from 0.
    Place {
        bore: ReadingId,
        #[serde(default)]
        journal: bool,
        depth: u8,
        way: u8,
    },
    /// How deep a part sits, mm below the face.
    Depth,
    /// The gap behind a part, mm.
    Gap,
    /// A self-locking nut's running torque.
    Running,
    /// How something turns by hand: a finding where it binds.
    Turning,
    /// A part of the step: a finding where it is not fit.
    Part(PartKey),
    /// How much of a fluid was put in.
    PutIn,
    /// What the engine reads when it has been run warm.
    RanAt,
    /// How long it was run, minutes.
    RanFor,
    /// A bead that skinned before the step was done, by its clock.
    Skin(ClockId),
    /// Something looked at and said, not measured: a finding where it does not hold.
    Fact(Fact),
    /// A reading of form 1 whose name stands in no plan any more.
    Named(String),
}

/// Something that is looked at and said in so many words, rather than read as a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fact {
    /// The fluid stands at its level.
    Level,
    /// It starts and runs.
    Runs,
    /// Nothing leaks; where it does not hold, where it leaks is said.
    NoLeaks,
    /// It has cooled.
    Cooled,
    /// Its fasteners were brought to torque again.
    TorquedAgain,
}

/// What the limits said of a reading when it was taken.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// There was no limit.
    #[default]
    Noted,
    /// Within.
    Within,
    /// Outside.
    Outside,
}

impl Verdict {
    /// Whether limits hold it; none where there are none.
    pub fn of(holds: Option<bool>) -> Self {
        match holds {
            None => Self::Noted,
            Some(true) => Self::Within,
            Some(false) => Self::Outside,
        }
    }

    /// The verdict in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Noted => "noted",
            Self::Within => "within limits",
            Self::Outside => "outside limits",
        }
    }
}

impl What {
    /// Every place of a bore's grid, by depth then direction.
    pub fn grid(bore: ReadingId, journal: bool) -> impl Iterator<Item = Self> {
        (0..DEPTHS as u8).flat_map(move |depth| {
            (0..DIRECTIONS as u8).map(move |way| Self::Place {
                bore,
                journal,
                depth,
                way,
            })
        })
    }

    /// What is judged where this was read: the bore for a place of its grid, else itself.
    pub fn whole(&self) -> Self {
        match self {
            Self::Place { bore, .. } => whole_bore(*bore),
            other => other.clone(),
        }
    }
}

/// What stands for a bore as a whole.
pub fn whole_bore(bore: ReadingId) -> What {
    What::Place {
        bore,
        journal: false,
        depth: 0,
        way: 0,
    }
}
