//! A part of a step: what it is, where it is, what the record knows it by.

use super::field::{Field, Kept, Number};
use super::id::PartId;
use serde::{Deserialize, Serialize};

/// Where a part is.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PartPlace {
    /// Not said yet.
    #[default]
    NotSaid,
    /// In a bag of that number or name.
    Bag(String),
    /// Away at the machine shop.
    AtShop,
    /// Ordered, not here yet.
    OnOrder,
    /// On the bench, ready.
    OnBench,
    /// In the machine.
    Fitted,
}

impl PartPlace {
    /// Every place a tile offers; a bag's name is asked for.
    pub const TILES: [Self; 5] = [
        Self::Bag(String::new()),
        Self::OnBench,
        Self::AtShop,
        Self::OnOrder,
        Self::Fitted,
    ];

    /// The place in words.
    pub fn words(&self) -> String {
        match self {
            Self::NotSaid => "not said where".to_owned(),
            Self::Bag(name) if name.is_empty() => "in a bag".to_owned(),
            Self::Bag(name) => format!("in bag {name}"),
            Self::AtShop => "at the shop".to_owned(),
            Self::OnOrder => "on order".to_owned(),
            Self::OnBench => "on the bench".to_owned(),
            Self::Fitted => "fitted".to_owned(),
        }
    }

    /// Whether a part there can be taken into the hand.
    pub fn at_hand(&self) -> bool {
        matches!(self, Self::Bag(_) | Self::OnBench | Self::Fitted)
    }
}

/// What the record knows a part of a step by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PartKey {
    /// What the step's work itself names: its fasteners, its bearing.
    Own,
    /// One of the parts it needs beyond that.
    More(PartId),
}

/// A part a step needs beyond what its work names.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// Unique within the step.
    #[serde(default)]
    pub id: PartId,
    /// What it is.
    pub name: String,
    /// How many.
    #[serde(default = "one")]
    pub count: u32,
    /// It must be a new one.
    #[serde(default)]
    pub new_part: bool,
    /// Where it is as the job is planned.
    #[serde(default)]
    pub place: PartPlace,
    /// It is what the work itself names, and only tells where that is.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub own: bool,
}

impl Part {
    /// One part of that name, of which nothing else is said.
    pub fn named(name: &str) -> Self {
        Self {
            id: PartId::default(),
            name: name.to_owned(),
            count: 1,
            new_part: false,
            place: PartPlace::NotSaid,
            own: false,
        }
    }
}

static COUNT: [Number<Part>; 1] = [Number::<Part>::new(
    ("count", "how many"),
    Kept::Bare,
    (1.0, 9_999.0),
    "part/count",
    |part| Some(f64::from(part.count)),
    |part, count| part.count = count as u32,
)
.whole()];

/// Every field of a part, in the order of the plan.
pub static TABLE: [Field<Part>; 3] = [
    Field::Name {
        id: "name",
        label: "part",
        get: |part| &part.name,
        set: |part, name| part.name = name,
    },
    Field::Numbers(&COUNT),
    Field::Flag {
        id: "new",
        label: "must be new",
        get: |part| part.new_part,
        set: |part, yes| part.new_part = yes,
    },
];

fn one() -> u32 {
    1
}

/// Where the record last saw a part.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PartState {
    /// Where it is.
    pub place: PartPlace,
    /// How many were counted.
    pub here: u32,
    /// It was away at the shop at some time.
    pub sent: bool,
}
