//! What a fasten step holds.

use super::group::Group;
use super::lengths::Lengths;
use crate::job::text_form;
use crate::trade::application::Application;
use crate::trade::guard::{Fastener, Joint};
use crate::trade::order::{Layout, Pass};
use crate::trade::preload::Condition;
use crate::trade::quantity::{Length, TorqueStatement};
use crate::trade::stages::{Stage, Way};
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// Whether a fastener may be used again.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reuse {
    /// The old ones go back.
    #[default]
    Again,
    /// Must be new.
    New,
}

/// What keeps a fastener from coming loose once it is at its torque.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lock {
    /// Nothing, or what is on its thread.
    #[default]
    None,
    /// A cotter pin through a castle nut.
    Cotter,
    /// A tab or a lock plate, bent up.
    Tab,
    /// Lock wire.
    Wire,
    /// Staked.
    Stake,
}

impl Lock {
    /// Every lock, in the order they are offered.
    pub const ALL: [Self; 5] = [Self::None, Self::Cotter, Self::Tab, Self::Wire, Self::Stake];

    /// The lock in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Cotter => "cotter pin",
            Self::Tab => "tab or lock plate",
            Self::Wire => "lock wire",
            Self::Stake => "stake",
        }
    }

    /// What the hands do (common practice, no source).
    pub const fn how(self) -> &'static str {
        match self {
            Self::None => "",
            Self::Cotter => {
                "From the least torque tighten on to the next hole, never back; then a new pin, its legs bent."
            }
            Self::Tab => "Bend it up flat against the head; an old tab bent twice breaks.",
            Self::Wire => "So that it pulls each head tight, twisted, its end bent away.",
            Self::Stake => "Into the groove with a blunt punch; it must not crack.",
        }
    }
}

/// Where the part's front is in the pattern as it is drawn.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Front {
    /// Nobody said.
    #[default]
    NotSaid,
    /// At the top of the drawing.
    Top,
    /// At its right.
    Right,
    /// At its bottom.
    Bottom,
    /// At its left.
    Left,
}

impl Front {
    /// Every side, in the order they are offered.
    pub const ALL: [Self; 5] = [Self::NotSaid, Self::Top, Self::Right, Self::Bottom, Self::Left];

    /// The side in a word.
    pub const fn words(self) -> &'static str {
        match self {
            Self::NotSaid => "not said",
            Self::Top => "top",
            Self::Right => "right",
            Self::Bottom => "bottom",
            Self::Left => "left",
        }
    }
}

fn front_not_said(front: &Front) -> bool {
    *front == Front::NotSaid
}

fn is_none(lock: &Lock) -> bool {
    *lock == Lock::None
}

/// Fasteners brought to torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fasten {
    /// The thread; most manuals don't state it.
    #[serde(default, with = "text_form::thread", skip_serializing_if = "Option::is_none")]
    pub thread: Option<Thread>,
    /// How long the bolt is under its head, mm, when known: for finding it in its bag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm: Option<f64>,
    /// The bolt's class, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<Strength>,
    /// What it is screwed into, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub into: Option<FemaleMaterial>,
    /// How deep it is screwed in, mm, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub engagement_mm: Option<f64>,
    /// What the manual says.
    #[serde(with = "text_form::torque")]
    pub torque: TorqueStatement,
    /// How the fasteners lie.
    pub layout: Layout,
    /// The manual's own numbers of the places, where it has some: one for each.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub labels: Vec<String>,
    /// Fasteners with a torque of their own.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub groups: Vec<Group>,
    /// Passes by share of the torque; none means one pass to the full torque.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub passes: Vec<Pass>,
    /// Snug, torque and angle stages, where the manual has them.
    #[serde(default, with = "text_form::stages", skip_serializing_if = "Vec::is_empty")]
    pub stages: Vec<Stage>,
    /// Least stretch, mm, where the manual states one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_least_mm: Option<f64>,
    /// Most stretch, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stretch_most_mm: Option<f64>,
    /// Stretch and greatest length where plain millimetres don't say them: ask [`Fasten::stated_lengths`].
    #[serde(default, rename = "lengths", skip_serializing_if = "Option::is_none")]
    pub lengths_stated: Option<Lengths>,
    /// What the bolt clamps, from under its head to the nut or the hole's first thread, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_mm: Option<f64>,
    /// How much of the grip is plain shank, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plain_mm: Option<f64>,
    /// That shank's diameter, mm, where it is not the thread's: a waist.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shank_mm: Option<f64>,
    /// Tightened past its yield: torque to yield.
    #[serde(default, skip_serializing_if = "is_false")]
    pub to_yield: bool,
    /// They are tightened to the stretch: the torque is only where to begin.
    #[serde(default, skip_serializing_if = "is_false")]
    pub stretch_decides: bool,
    /// The state of the thread, where it was told: ask [`Fasten::thread_condition`].
    #[serde(default = "condition_unknown")]
    pub condition: Condition,
    /// What it is; an earlier form knew only plugs, by `seal`: ask [`Fasten::what_it_is`].
    #[serde(default, skip_serializing_if = "Fastener::is_not_told")]
    pub fastener: Fastener,
    /// It seals rather than clamps: a plug, a union, a sensor.
    #[serde(default, skip_serializing_if = "is_false")]
    pub seal: bool,
    /// A self-locking nut: its running torque is measured.
    #[serde(default, skip_serializing_if = "is_false")]
    pub self_locking: bool,
    /// The manual says that the running torque is not added.
    #[serde(default, skip_serializing_if = "is_false")]
    pub running_apart: bool,
    /// Where the part's front is in the drawn pattern.
    #[serde(default, skip_serializing_if = "front_not_said")]
    pub front: Front,
    /// What keeps them from coming loose, behind the torque.
    #[serde(default, skip_serializing_if = "is_none")]
    pub lock: Lock,
    /// The old ones come out first, set in high-strength threadlocker.
    #[serde(default, skip_serializing_if = "is_false")]
    pub old_locked: bool,
    /// New or again.
    #[serde(default)]
    pub reuse: Reuse,
    /// How many times one may be tightened in all, where old ones may come again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_uses: Option<u32>,
    /// How long one may be over its ends and come again, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub longest_mm: Option<f64>,
    /// What the thread's joint is, for choosing the compound; none: nothing goes on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub compound: Option<Application>,
}

fn condition_unknown() -> Condition {
    Condition::Unknown
}

fn is_false(it: &bool) -> bool {
    !it
}

impl Fasten {
    /// Bolts of that thread to that torque, of which nothing else is known.
    pub fn new(thread: Option<Thread>, torque: TorqueStatement, layout: Layout) -> Self {
        Self {
            thread,
            length_mm: None,
            strength: None,
            into: None,
            engagement_mm: None,
            torque,
            layout,
            labels: Vec::new(),
            groups: Vec::new(),
            passes: Vec::new(),
            stages: Vec::new(),
            stretch_least_mm: None,
            stretch_most_mm: None,
            lengths_stated: None,
            grip_mm: None,
            plain_mm: None,
            shank_mm: None,
            to_yield: false,
            stretch_decides: false,
            condition: Condition::Unknown,
            reuse: Reuse::Again,
            most_uses: None,
            longest_mm: None,
            compound: None,
            fastener: Fastener::NotTold,
            seal: false,
            self_locking: false,
            running_apart: false,
            front: Front::NotSaid,
            lock: Lock::None,
            old_locked: false,
        }
    }

    /// How many passes there are; where the manual has stages, one for each.
    pub fn pass_count(&self) -> usize {
        if self.stages.is_empty() {
            self.passes.len().max(1)
        } else {
            self.stages.len()
        }
    }

    /// That pass, from 0; without passes, and by stages, to the full torque.
    pub fn pass(&self, pass: usize) -> Pass {
        if !self.stages.is_empty() {
            return Pass {
                share: 1.0,
                round: false,
            };
        }
        self.passes.get(pass).copied().unwrap_or(Pass {
            share: 1.0,
            round: false,
        })
    }

    /// How many touches a pass takes: one for each fastener, or one for all.
    pub fn touches(&self, pass: usize) -> usize {
        if self.to_all(pass) { 1 } else { self.layout.count() }
    }

    /// How many touches all passes take.
    pub fn tally_count(&self) -> usize {
        (0..self.pass_count()).map(|pass| self.touches(pass)).sum()
    }

    /// The passes that are done before the next fastener's turn, that one and those which follow it on the
    /// same fastener: from the first to before the last.
    pub fn round(&self, first: usize) -> std::ops::Range<usize> {
        let with = |stage: &&Stage| stage.way == Way::SameFastener;
        let more = self.stages.iter().skip(first + 1).take_while(with).count();
        first..first + 1 + more
    }

    /// The first of the passes that are done on one fastener together with that one.
    pub fn round_of(&self, pass: usize) -> usize {
        let mut first = 0;
        while !self.round(first).contains(&pass) && first < pass {
            first = self.round(first).end;
        }
        first
    }

    /// Whether the manual leaves open which fastener of that pass comes first.
    pub fn any_order(&self, pass: usize) -> bool {
        let stage = self.stages.get(pass);
        stage.is_some_and(|stage| stage.way == Way::AnyOrder && !stage.act.to_all())
    }

    /// The places of a pass in the order they are done.
    pub fn places(&self, pass: usize) -> Vec<usize> {
        match self.stages.get(pass) {
            Some(stage) if stage.act.to_all() => vec![0],
            Some(stage) if stage.way == Way::AnyOrder => (0..self.layout.count()).collect(),
            _ => self.pass(pass).order(&self.layout),
        }
    }

    /// The joint as the slip guard sees it; none where the thread isn't stated.
    pub fn joint(&self) -> Option<Joint> {
        Some(Joint {
            thread: self.thread?,
            fastener: self.what_it_is(),
            strength: self.strength,
            material: self.into,
            engagement: self.engagement_mm.map(Length::new::<millimeter>),
            condition: self.thread_condition(),
        })
    }

    /// What it is, whichever form said so.
    pub fn what_it_is(&self) -> Fastener {
        sealing(self.fastener, self.seal)
    }

    /// Takes what it is; a plug is written as every form knows it.
    pub fn take_fastener(&mut self, fastener: Fastener) {
        self.seal = fastener == Fastener::Plug;
        self.fastener = if self.seal { Fastener::NotTold } else { fastener };
    }

    /// The thread by its name, or that it isn't stated.
    pub fn thread_name(&self) -> String {
        text_form::thread::words(self.thread)
    }
}

/// What it is, where an earlier form may have said no more than that it seals.
pub fn sealing(told: Fastener, seal: bool) -> Fastener {
    if seal && told.is_not_told() {
        Fastener::Plug
    } else {
        told
    }
}

/// A fastener's size as it stands on a bag: thread, length and class as far as known.
pub fn size_words(fasten: &Fasten) -> String {
    let length = fasten.length_mm.map_or(String::new(), |mm| format!(" × {mm} mm"));
    let class = fasten
        .strength
        .map_or(String::new(), |strength| format!(", {}", strength.name()));
    match fasten.thread {
        Some(thread) => format!("{}{length}{class}", thread.name()),
        None => format!("thread not stated{length}{class}"),
    }
}

/// The states of a thread, in the order they are offered.
pub const CONDITIONS: [Condition; 7] = [
    Condition::Unknown,
    Condition::Dry,
    Condition::Oiled,
    Condition::Plated,
    Condition::CompoundWet,
    Condition::StainlessDry,
    Condition::Paste,
];

/// A layout in a word, as the plan and the table of fasteners write it.
pub fn layout_words(layout: &Layout) -> &'static str {
    match layout {
        Layout::Single => "single",
        Layout::Line { .. } => "line",
        Layout::PairedRows { .. } => "two rows",
        Layout::Circle { .. } => "circle",
        Layout::Rectangle { .. } => "rectangle",
        Layout::Free { .. } => "as numbered",
    }
}

/// A layout of that word and count; "as numbered" where the word bears no such count.
pub fn layout(words: &str, count: usize) -> Layout {
    match words {
        _ if count == 1 => Layout::Single,
        "line" => Layout::Line { count },
        "two rows" if count.is_multiple_of(2) => Layout::PairedRows { pairs: count / 2 },
        "circle" => Layout::Circle { count },
        "rectangle" if count.is_multiple_of(2) && count > 3 => rectangle(count, count / 4 + 1),
        _ => Layout::Free { count },
    }
}

/// So many bolts round a rectangle with that many in its upper row; an even count of four or more, half of them
/// at most.
pub fn rectangle(count: usize, across: usize) -> Layout {
    let down = (count / 2).saturating_sub(across);
    Layout::Rectangle { across, down }
}
