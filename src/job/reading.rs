//! What a reading is of: by number, so that a new name loses nothing; and what its limits said.

use super::id::{ClockId, ReadingId};
use super::part::PartKey;
use crate::trade::measure::{DEPTHS, DIRECTIONS};
use crate::trade::quantity::{MOST_DIGITS, Stated, fixed, shortest};
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
    /// The radius at which that reading of a check step is taken.
    Radius(ReadingId),
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
    /// The torque a castle nut was brought on to, for its cotter pin.
    Reached,
    /// The same of one of several castle nuts, from 0.
    ReachedAt(u8),
    /// How many times the step's fasteners were tightened before.
    Uses,
    /// How long a fastener is over its ends before it is tightened; which one, from 0.
    Free(u8),
    /// How long it is once tightened.
    Tight(u8),
    /// By how much the two differ: worked out, never typed.
    Stretch(u8),
    /// A place of a select step.
    At(ReadingId),
    /// What was put in by a select step, as a whole.
    Pack,
    /// End float or turning torque with it in, this round.
    Trial,
    /// The same tightened, where the loose one is taken off.
    TurnTight,
    /// The same loose.
    TurnLoose,
    /// A bearing's clearance where gauging plastic is squeezed widest.
    Widest,
    /// The same at its narrow end.
    Narrow,
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
    /// What keeps the fasteners from coming loose is on.
    Locked,
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
    /// Past what a new part has, within what a worn one may.
    Worn,
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

    /// The one of two that is further from passing.
    pub fn worse(self, other: Self) -> Self {
        let how_far = |verdict| match verdict {
            Self::Noted => 0,
            Self::Within => 1,
            Self::Worn => 2,
            Self::Outside => 3,
        };
        if how_far(other) > how_far(self) {
            other
        } else {
            self
        }
    }

    /// The verdict in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Noted => "noted",
            Self::Within => "within limits",
            Self::Worn => "worn but usable",
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

    /// Whether it is read as a number, rather than looked at and said.
    pub fn is_number(&self) -> bool {
        !matches!(
            self,
            Self::Fact(_) | Self::Turning | Self::Part(_) | Self::Skin(_) | Self::Pack
        )
    }

    /// Whether it is read, and settled, before anything is tightened.
    pub fn before_work(&self) -> bool {
        matches!(self, Self::Uses | Self::Running | Self::Free(_) | Self::Part(_))
    }

    /// Whether it holds only until the fastener is loosened.
    pub fn of_length(&self) -> bool {
        matches!(
            self,
            Self::Free(_) | Self::Tight(_) | Self::Stretch(_) | Self::Reached | Self::ReachedAt(_)
        )
    }

    /// Whether it is read once the fasteners are tight.
    pub fn when_tight(&self) -> bool {
        matches!(self, Self::Tight(_) | Self::Reached | Self::ReachedAt(_))
    }

    /// Whether it counts only since the last thing was put in, or laid.
    pub fn of_round(&self) -> bool {
        let gauged = matches!(self, Self::Widest | Self::Narrow);
        gauged || matches!(self, Self::Trial | Self::TurnTight | Self::TurnLoose)
    }

    /// What is judged where this was read: the bore for a place of its grid, the pack for its gap,
    /// else itself.
    pub fn whole(&self) -> Self {
        match self {
            Self::Place { bore, .. } => whole_bore(*bore),
            Self::Radius(id) => Self::Limit(*id),
            Self::At(_) => Self::Pack,
            Self::TurnTight | Self::TurnLoose => Self::Trial,
            // The ends are judged against each other.
            Self::Widest => Self::Narrow,
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

/// A number that was read, with its digits where more were read than it needs.
pub fn figure(value: f64, decimals: Option<u8>) -> String {
    decimals.map_or_else(|| shortest(value), |decimals| fixed(value, decimals))
}

/// The digits worth keeping of a number that was typed with so many behind its point.
pub fn kept_digits(value: f64, typed: Option<u8>) -> Option<u8> {
    let needs = Stated::plain(value).decimals;
    typed
        .filter(|typed| *typed > needs)
        .map(|typed| typed.min(MOST_DIGITS))
}

/// By how much a fastener stretched, in the unit of both lengths: to a tenth of a micrometre or finer, so
/// that subtracting adds no digits.
pub fn stretched(free: f64, tight: f64, unit: &str) -> f64 {
    let steps = match unit {
        "in" => 1e6,
        "thou" => 1e3,
        _ => 1e4,
    };
    ((tight - free) * steps).round() / steps
}
