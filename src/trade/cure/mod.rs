//! When a compound has cured: the label's times, stretched by cold, dry air, slow metal, gap and depth.
//!
//! The label's time at the label's temperature is the floor: nothing here ever ends earlier. The model
//! says how much later, as a range; a gate goes by the late end.

mod label;
mod pace;
mod reach;
mod shop;

pub use label::{LabelError, LabelTimes};
pub use shop::{ShopHistory, ShopReading};

use super::moment::Moment;
use super::quantity::{Length, in_mark};
use super::stored;
use serde::{Deserialize, Serialize};
use std::fmt;

/// A mark on the way to full cure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Milestone {
    /// Parts must be joined and in place by now: a deadline, not a wait.
    AssemblyLimit,
    /// Parts stay where they are.
    Fixture,
    /// Parts can be moved and turned gently.
    Handling,
    /// Oil may touch it.
    FitForOil,
    /// Pressure may act on it.
    FitForPressure,
    /// Cured.
    FullCure,
}

impl Milestone {
    /// All of them, in order.
    pub const ALL: [Self; 6] = [
        Self::AssemblyLimit,
        Self::Fixture,
        Self::Handling,
        Self::FitForOil,
        Self::FitForPressure,
        Self::FullCure,
    ];

    /// Its name on the clock, before a time.
    pub fn words(self) -> &'static str {
        match self {
            Self::AssemblyLimit => "close it by",
            Self::Fixture => "holds after",
            Self::Handling => "handle after",
            Self::FitForOil => "oil after",
            Self::FitForPressure => "pressure after",
            Self::FullCure => "full cure",
        }
    }

    /// Its name on the clock, before a time and once it is reached, where it means less of what cures from outside
    /// inwards: cured is the edge, the seal.
    pub fn words_from_outside(self) -> Option<&'static str> {
        (self == Self::FullCure).then_some("edge cured")
    }

    /// What is said once it is reached.
    pub fn reached_words(self) -> &'static str {
        match self {
            Self::AssemblyLimit => "too late to close it",
            Self::Fixture => "holds its place",
            Self::Handling => "can be handled",
            Self::FitForOil => "fit for oil",
            Self::FitForPressure => "fit for pressure",
            Self::FullCure => "full cure",
        }
    }

    /// Whether it's a deadline: then the early end of the range is the one to go by.
    pub fn is_deadline(self) -> bool {
        self == Self::AssemblyLimit
    }
}

/// What an anaerobic compound cures against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Substrate {
    /// Brass, bronze, copper: the quickest.
    BrassOrCopper,
    /// Bare steel or iron: what labels are written for.
    SteelOrIron,
    /// Aluminium or magnesium: slow.
    Aluminium,
    /// Stainless steel or titanium: slow.
    Stainless,
    /// Plated, anodised or painted: slow.
    Plated,
    /// Not known: as slow as any.
    Unknown,
}

/// How it cures, and what this joint does to that.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Chemistry {
    /// Shut off from air, on metal.
    Anaerobic {
        /// The slower of the two faces.
        substrate: Substrate,
        /// The gap it fills, 0 to 0.75 mm.
        #[serde(rename = "gap_mm", with = "stored::millimetres")]
        gap: Length,
        /// An activator was put on.
        activator: bool,
    },
    /// By the air's moisture, from outside inwards.
    MoistureSilicone {
        /// How far the moisture has to come: a bead's depth. Between two metal faces it comes in from the joint's
        /// edges, at any gap: then the depth of edge that must have cured, the deeper the wider the gap (common
        /// practice, no source). Every milestone goes by it, full cure too: the middle of a land wider than twice
        /// this follows later, and no joint knows how wide its land is.
        #[serde(rename = "depth_mm", with = "stored::millimetres")]
        depth: Length,
    },
    /// By losing its solvent.
    SolventDrying,
}

/// A compound in a joint: how it cures, and the label's times.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CureSpec {
    /// How it cures.
    pub chemistry: Chemistry,
    /// The label's times, or typical ones.
    pub label: LabelTimes,
}

impl CureSpec {
    /// Whether the humidity of the air has a say.
    pub fn goes_by_humidity(&self) -> bool {
        self.from_outside()
    }

    /// It cures from outside inwards, by a depth: what lies deeper follows later.
    pub fn from_outside(&self) -> bool {
        matches!(self.chemistry, Chemistry::MoistureSilicone { .. })
    }
}

/// When a milestone is reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct DoneAt {
    /// By the kindest figures; never before the label's time, except for a deadline.
    pub earliest: Moment,
    /// By the middle ones.
    pub likely: Moment,
    /// By the harshest ones. A gate opens at this one.
    pub latest: Moment,
    /// No shop reading was given: the label's temperature was taken, and for silicone its humidity.
    pub shop_unknown: bool,
}

impl DoneAt {
    /// The end of the range to go by: the early one of a deadline, the late one of anything else.
    pub fn binding(&self, milestone: Milestone) -> Moment {
        if milestone.is_deadline() {
            self.earliest
        } else {
            self.latest
        }
    }
}

/// Why a milestone has no time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NoCure {
    /// The shop is, and by the readings stays, below 5 °C.
    TooCold,
    /// The air is, and by the readings stays, too dry for a moisture cure.
    TooDry,
    /// The gap is wider than an anaerobic compound cures across.
    GapTooWide,
    /// The depth of the bead makes no sense.
    DepthUnusable,
    /// The label names no time for this, and none can be put in its place.
    NoFigure,
    /// The label's figures make no sense.
    Label(LabelError),
}

impl fmt::Display for NoCure {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&in_mark(match self {
            Self::TooCold => {
                "Below 5 °C it hardly cures: warm the shop or the part and enter the temperature."
            }
            Self::TooDry => "The air is too dry for it to cure: add moisture and enter the humidity.",
            Self::GapTooWide => "It does not cure across a gap of 0.75 mm or more: choose another compound.",
            Self::DepthUnusable => "Enter the depth of the bead, 0 to 50 mm.",
            Self::NoFigure => "The label gives no time for this: enter it from the label.",
            Self::Label(error) => return error.fmt(out),
        }))
    }
}

impl std::error::Error for NoCure {}
