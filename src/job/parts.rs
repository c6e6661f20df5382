//! The parts of all steps in one list: what each is, where it is, whether it must be new.

use super::field::{Field, Kept, Number};
use super::id::PartId;
use super::progress::Progress;
use super::sheet::{Sheet, Step, StepId};
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

/// One line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    /// The step that needs it.
    pub step: StepId,
    /// What the record knows it by.
    pub key: PartKey,
    /// What it is.
    pub name: String,
    /// How many are needed.
    pub of: u32,
    /// It must be new.
    pub new_part: bool,
    /// It is a fastener.
    pub fastener: bool,
    /// Where it is.
    pub place: PartPlace,
    /// How many were counted here.
    pub here: u32,
    /// It went to the shop.
    pub sent: bool,
}

impl Listed {
    /// Counted whole and within reach.
    pub fn ticked(&self) -> bool {
        self.here >= self.of && self.place.at_hand()
    }

    /// "2 of 4 here, in bag 7".
    pub fn words(&self) -> String {
        if self.place == PartPlace::Fitted {
            return self.place.words();
        }
        let place = self.place.words();
        match self.here {
            0 => place,
            here if here >= self.of => format!("all {} here, {place}", self.of),
            here => format!("{here} of {} here, {place}", self.of),
        }
    }
}

/// What the whole list comes to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct PartsTally {
    /// Lines.
    pub all: usize,
    /// Lines counted whole.
    pub ticked: usize,
    /// Lines that went to the shop.
    pub sent: usize,
    /// Those of them that are back and counted whole.
    pub back: usize,
    /// Lines on order.
    pub on_order: usize,
}

impl PartsTally {
    /// Counts the list.
    pub fn of(list: &[Listed]) -> Self {
        let count = |which: fn(&Listed) -> bool| list.iter().filter(|part| which(part)).count();
        Self {
            all: list.len(),
            ticked: count(Listed::ticked),
            sent: count(|part| part.sent),
            back: count(|part| part.sent && part.ticked()),
            on_order: count(|part| part.place == PartPlace::OnOrder),
        }
    }

    /// Sentences for the head of the list.
    pub fn words(&self) -> Vec<String> {
        let mut words = vec![format!("{} of {} counted and at hand.", self.ticked, self.all)];
        if self.sent > 0 {
            words.push(match self.sent - self.back {
                0 => format!(
                    "Everything sent to the shop is back: {} of {}.",
                    self.back, self.sent
                ),
                left => format!("Sent to the shop: {}. Not back or not whole: {left}.", self.sent),
            });
        }
        if self.on_order > 0 {
            words.push(format!("On order: {}.", self.on_order));
        }
        words
    }
}

/// The parts of every step, in the order of the steps.
pub fn list(sheet: &Sheet, progress: &Progress) -> Vec<Listed> {
    sheet
        .steps
        .iter()
        .flat_map(|step| {
            let done = progress
                .touched(step.id)
                .is_some_and(|step| matches!(step.status, super::progress::Status::Done(_)));
            of_step(step)
                .into_iter()
                .map(move |part| seen(part, progress, done))
        })
        .collect()
}

/// A part as planned, brought up to what the record says; one whose step is done is in the machine.
fn seen(mut part: Listed, progress: &Progress, step_done: bool) -> Listed {
    if let Some(state) = progress.parts.get(&(part.step, part.key)) {
        part.sent |= state.sent;
        part.place = state.place.clone();
        part.here = state.here;
    }
    if step_done {
        part.place = PartPlace::Fitted;
        part.here = part.of;
    }
    part
}

/// What one step needs, as planned.
fn of_step(step: &Step) -> Vec<Listed> {
    let line = |key: PartKey, name: &str, of: u32, new_part: bool, place: PartPlace| Listed {
        key,
        step: step.id,
        name: name.to_owned(),
        of: of.max(1),
        new_part,
        fastener: false,
        sent: place == PartPlace::AtShop,
        place,
        here: 0,
    };
    let own = step.work.kind().part().map(|own| Listed {
        fastener: own.fastener,
        ..line(
            PartKey::Own,
            &own.name,
            own.count,
            own.new_part,
            PartPlace::NotSaid,
        )
    });
    let mut lines: Vec<Listed> = own.into_iter().collect();
    for part in &step.parts {
        match lines.first_mut() {
            Some(own) if part.own && own.key == PartKey::Own => {
                own.new_part |= part.new_part;
                own.sent |= part.place == PartPlace::AtShop;
                own.place = part.place.clone();
            }
            _ => lines.push(line(
                PartKey::More(part.id),
                &part.name,
                part.count,
                part.new_part,
                part.place.clone(),
            )),
        }
    }
    lines
}

/// What a part of a step is called, as planned now.
pub fn name(step: &Step, key: PartKey) -> Option<String> {
    let part = of_step(step).into_iter().find(|line| line.key == key)?;
    Some(part.name)
}

/// The part of a step that form 1 knew by that name.
pub fn by_name(step: &Step, name: &str) -> Option<PartKey> {
    let own = of_step(step).into_iter().find(|line| line.name == name);
    own.map(|line| line.key)
}
