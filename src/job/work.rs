//! The kinds of work a step can be, with the numbers each needs.
//!
//! Numbers are kept as the manual or the mechanic states them, in the unit the field names;
//! `trade` gets quantities.

use super::id::ReadingId;
use super::text_form;
use crate::trade::application::Application;
use crate::trade::fit::{Feature, Position, SizeSource, ToleranceClass};
use crate::trade::guard::Joint;
use crate::trade::heat_plan::{CoolMeans, HoleIn};
use crate::trade::lift::Grip;
use crate::trade::material::Material;
use crate::trade::measure::{DEPTHS, DIRECTIONS};
use crate::trade::order::{Layout, Pass};
use crate::trade::preload::Condition;
use crate::trade::quantity::{Length, TorqueStatement};
use crate::trade::stages::Stage;
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// One kind of work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Work {
    /// Wash, blow out, wipe.
    Clean(Clean),
    /// Measure against limits.
    Check(Check),
    /// Put a part in place.
    Fit(Fit),
    /// Bring fasteners to torque.
    Fasten(Fasten),
    /// Put a compound on a joint and let it cure.
    Bond(Bond),
    /// Press or shrink a part into its bore.
    Seat(Seat),
    /// Lift by hand or by hoist.
    Lift(LiftWork),
    /// Turn by hand and feel.
    Turn(Turn),
    /// Fill with a fluid.
    Fill(Fill),
}

/// Cleaning, and what it is done with.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Clean {
    /// A solvent is used.
    pub solvent: bool,
    /// Oil ways are blown out.
    pub compressed_air: bool,
}

/// Readings to take.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Check {
    /// What is measured, each with its limits.
    pub readings: Vec<Limit>,
    /// Bores read in two directions at three depths.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub bores: Vec<Bore>,
}

impl Check {
    /// The names of every reading the step asks for, in order.
    pub fn asked(&self) -> Vec<String> {
        let limits = self.readings.iter().map(|limit| limit.name.clone());
        limits.chain(self.bores.iter().flat_map(Bore::asked)).collect()
    }
}

/// The depths of a grid, in the order of its rows.
pub const DEPTH_WORDS: [&str; DEPTHS] = ["top", "middle", "bottom"];
/// The directions of a grid, in the order of its columns.
pub const DIRECTION_WORDS: [&str; DIRECTIONS] = ["along", "across"];

/// A bore read as a grid, with the journal that runs in it where there is one. Limits in mm at 20 °C.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bore {
    /// Unique among the readings and bores of the step.
    #[serde(default)]
    pub id: ReadingId,
    /// What it is.
    pub name: String,
    /// What it is made of.
    #[serde(default = "cast_aluminium")]
    pub material: Material,
    /// The smallest diameter allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_mm: Option<f64>,
    /// The largest diameter allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_mm: Option<f64>,
    /// The most the two directions may differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub out_of_round_mm: Option<f64>,
    /// The most the depths may differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taper_mm: Option<f64>,
    /// The journal or shaft that runs in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub journal: Option<Journal>,
}

/// What runs in a bore, read as a grid too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Journal {
    /// What it is.
    pub name: String,
    /// What it is made of.
    #[serde(default = "steel")]
    pub material: Material,
    /// The least clearance allowed, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance_least_mm: Option<f64>,
    /// The most clearance allowed, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance_most_mm: Option<f64>,
}

fn cast_aluminium() -> Material {
    Material::CastAluminium
}

fn steel() -> Material {
    Material::Steel
}

impl Bore {
    /// Its name, and its journal's: what its readings go by in the record.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let journal = self.journal.iter().map(|journal| journal.name.as_str());
        std::iter::once(self.name.as_str()).chain(journal)
    }

    /// The names of the grid's readings, and of the journal's.
    pub fn asked(&self) -> Vec<String> {
        self.names()
            .flat_map(|name| {
                DEPTH_WORDS
                    .iter()
                    .flat_map(move |depth| DIRECTION_WORDS.iter().map(move |way| grid_name(name, depth, way)))
            })
            .collect()
    }
}

/// What one reading of a grid is called in the record.
pub fn grid_name(name: &str, depth: &str, direction: &str) -> String {
    format!("{name}, {depth}, {direction}")
}

/// One measured thing and its limits.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Limit {
    /// Unique among the readings and bores of the step.
    #[serde(default)]
    pub id: ReadingId,
    /// What it is.
    pub name: String,
    /// The unit the limits are in: a length in mm, or a count.
    pub unit: String,
    /// Not less than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
    /// Not more than this.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
}

impl Limit {
    /// Whether `value` lies within the limits, both ends included.
    pub fn holds(&self, value: f64) -> bool {
        self.least.is_none_or(|least| value >= least) && self.most.is_none_or(|most| value <= most)
    }
}

/// A part put in place.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fit {
    /// The part.
    pub part: String,
    /// Which way round it goes.
    pub orientation: String,
    /// It must be a new one.
    pub new_part: bool,
    /// A spring is held back while fitting.
    pub spring: bool,
}

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

/// Fasteners brought to torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fasten {
    /// The thread.
    #[serde(with = "text_form::thread")]
    pub thread: Thread,
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
    /// Passes by share of the torque; none means one pass to the full torque.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub passes: Vec<Pass>,
    /// Snug, torque and angle stages, where the manual has them.
    #[serde(default, with = "text_form::stages", skip_serializing_if = "Vec::is_empty")]
    pub stages: Vec<Stage>,
    /// The state of the thread.
    #[serde(default = "condition_unknown")]
    pub condition: Condition,
    /// It seals rather than clamps: a plug, a union, a sensor.
    #[serde(default, skip_serializing_if = "is_false")]
    pub seal: bool,
    /// A self-locking nut: its running torque is measured.
    #[serde(default, skip_serializing_if = "is_false")]
    pub self_locking: bool,
    /// New or again.
    #[serde(default)]
    pub reuse: Reuse,
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
    pub fn new(thread: Thread, torque: TorqueStatement, layout: Layout) -> Self {
        Self {
            thread,
            length_mm: None,
            strength: None,
            into: None,
            engagement_mm: None,
            torque,
            layout,
            passes: Vec::new(),
            stages: Vec::new(),
            condition: Condition::Unknown,
            reuse: Reuse::Again,
            compound: None,
            seal: false,
            self_locking: false,
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

    /// How many times a fastener is brought to torque in all.
    pub fn tally_count(&self) -> usize {
        self.layout.count() * self.pass_count()
    }

    /// The joint as the slip guard sees it.
    pub fn joint(&self) -> Joint {
        Joint {
            thread: self.thread,
            strength: self.strength,
            material: self.into,
            engagement: self.engagement_mm.map(Length::new::<millimeter>),
            condition: self.condition,
        }
    }
}

/// A joint sealed, locked or retained by a compound.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bond {
    /// The joint, in words.
    pub joint: String,
    /// What the joint is, for choosing the compound.
    pub application: Application,
}

/// A part pressed or shrunk into its bore, or onto its shaft. The housing is what stays (the shaft,
/// where the part carries the hole).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Seat {
    /// The part.
    pub part: String,
    /// Which of the two carries the hole.
    #[serde(default)]
    pub hole_in: HoleIn,
    /// The hole.
    pub hole: SizeSource,
    /// What goes into it.
    pub shaft: SizeSource,
    /// What the housing is made of.
    pub housing: Material,
    /// What the part is made of.
    pub part_material: Material,
    /// How long the fit is, mm.
    pub length_mm: f64,
    /// Inside diameter of the one that goes in, mm; 0 when it is solid.
    #[serde(default)]
    pub part_inside_mm: f64,
    /// The outside diameter of the boss around the hole, mm.
    pub boss_outside_mm: f64,
    /// The wall that must hold its heat, mm.
    pub wall_mm: f64,
    /// The face that is pushed, mm: the inside of the ring that goes in, the outside of the one that goes on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face_mm: Option<f64>,
    /// The opening that a shoulder behind the bore leaves, mm; none when the bore goes through.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shoulder_mm: Option<f64>,
    /// The housing may not be hotter than this, °C.
    pub housing_limit_c: f64,
    /// The part may not be hotter than this, °C.
    pub part_limit_c: f64,
    /// It holds seals, O-rings or cured compound.
    #[serde(default)]
    pub holds_seals: bool,
    /// How it is to be done.
    #[serde(default)]
    pub way: SeatWay,
    /// What the one that goes in may be cooled with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cool: Option<CoolMeans>,
    /// It must not be pressed cold.
    #[serde(default)]
    pub no_press: bool,
    /// How deep it must sit, where that is stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<SeatDepth>,
}

/// How deep a part must sit, and what must stay open behind it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct SeatDepth {
    /// Least depth below the face, mm; negative where it stands proud.
    pub least_mm: f64,
    /// Most depth below the face, mm.
    pub most_mm: f64,
    /// From the face to the shoulder or the end of the bore, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_mm: Option<f64>,
    /// The gap that must stay open behind it where oil passes, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_mm: Option<f64>,
}

impl Default for Seat {
    /// A ball bearing into an aluminium case: numbers to put one's own in place of.
    fn default() -> Self {
        let nominal = Length::new::<millimeter>(62.0);
        Self {
            part: String::new(),
            hole_in: HoleIn::Housing,
            hole: SizeSource::Class {
                nominal,
                class: ToleranceClass {
                    feature: Feature::Hole,
                    position: Position::N,
                    grade: 7,
                },
            },
            shaft: SizeSource::BearingOuter { nominal },
            housing: Material::CastAluminium,
            part_material: Material::BearingSteel,
            length_mm: 16.0,
            part_inside_mm: 54.0,
            boss_outside_mm: 84.0,
            wall_mm: 8.0,
            face_mm: None,
            shoulder_mm: None,
            housing_limit_c: 120.0,
            part_limit_c: 120.0,
            holds_seals: false,
            way: SeatWay::Heat,
            cool: None,
            no_press: false,
            depth: None,
        }
    }
}

/// How a part is seated.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SeatWay {
    /// Housing warmed, part dropped in.
    #[default]
    Heat,
    /// Pressed in cold.
    Press,
}

/// Something heavy moved.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LiftWork {
    /// What is lifted.
    pub load: String,
    /// How heavy it is, kg.
    pub mass_kg: f64,
    /// By hand or by sling.
    pub way: LiftWay,
    /// Where the hoist's boom stands: from the post to the hook, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boom_mm: Option<f64>,
    /// Someone has to be or reach under it.
    #[serde(default)]
    pub under_load: bool,
}

impl Default for LiftWork {
    /// Twenty kilograms from the floor to the bench: numbers to put one's own in place of.
    fn default() -> Self {
        Self {
            load: String::new(),
            mass_kg: 20.0,
            way: LiftWay::hands(),
            boom_mm: None,
            under_load: false,
        }
    }
}

/// How it is lifted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftWay {
    /// By hand: how far the hands are from the ankles, from which to which height, how far the body
    /// turns, how it is held.
    Hands {
        reach_cm: f64,
        from_cm: f64,
        to_cm: f64,
        #[serde(default)]
        turn_deg: f64,
        #[serde(default = "fair_grip")]
        grip: Grip,
    },
    /// By hoist: sling legs and their angle from the horizontal.
    Sling { legs: u8, angle_deg: f64 },
}

fn fair_grip() -> Grip {
    Grip::Fair
}

impl LiftWay {
    /// An ordinary lift by hand to begin with.
    pub fn hands() -> Self {
        Self::Hands {
            reach_cm: 40.0,
            from_cm: 30.0,
            to_cm: 90.0,
            turn_deg: 0.0,
            grip: fair_grip(),
        }
    }

    /// An ordinary sling to begin with.
    pub fn sling() -> Self {
        Self::Sling {
            legs: 2,
            angle_deg: 60.0,
        }
    }
}

/// Turned by hand.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Turn {
    /// What is turned.
    pub what: String,
    /// What it must feel like.
    pub expect: String,
}

/// Filled with a fluid.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fill {
    /// The fluid.
    pub fluid: String,
    /// How much, litres.
    pub litres: f64,
    /// It is hot when it is handled.
    pub hot: bool,
}

impl Work {
    /// The kind in one word, as the screen shows it.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Clean(_) => "Clean",
            Self::Check(_) => "Check",
            Self::Fit(_) => "Fit",
            Self::Fasten(_) => "Fasten",
            Self::Bond(_) => "Bond",
            Self::Seat(_) => "Seat",
            Self::Lift(_) => "Lift",
            Self::Turn(_) => "Turn",
            Self::Fill(_) => "Fill",
        }
    }

    /// What the step's joint is, where a compound may go on.
    pub fn application(&self) -> Option<&Application> {
        match self {
            Self::Fasten(fasten) => fasten.compound.as_ref(),
            Self::Bond(bond) => Some(&bond.application),
            _ => None,
        }
    }

    /// Whether a compound that cures goes on in this step.
    pub fn cures(&self) -> bool {
        self.application()
            .is_some_and(|application| crate::trade::compound::recommend(application).cure.is_some())
    }
}
