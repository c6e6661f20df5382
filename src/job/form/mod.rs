//! A step as a form: its fields as plain data to lay out, and one way to change each by its name.
//!
//! A field's name is a path ("reading/0/least"); lists have a key to add and one to remove a row.

mod fields;
mod set;

pub use fields::fields;
pub use set::{fasten, set};

use super::json;
use super::work::{Bond, Check, Clean, Fill, Fit, LiftWork, Turn, Work};
use crate::trade::application::{Application, JointKind};
use crate::trade::preload::Condition;

/// How a field is entered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    /// A heading over what follows.
    Head,
    /// Words.
    Words,
    /// A number in that unit; it may be cleared when `optional`.
    Number { unit: &'static str, optional: bool },
    /// A torque in the manual's words.
    Torque,
    /// One of several: (value, words).
    Choice(Vec<(String, String)>),
    /// Yes or no: the value is "yes" or "no".
    Flag,
    /// A key that does something at once.
    Press,
}

/// One field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// Its path, to change it by.
    pub id: String,
    /// Its label.
    pub label: String,
    /// What it holds now, as shown.
    pub value: String,
    /// How it is entered.
    pub kind: Kind,
}

const CONDITIONS: [Condition; 5] = [
    Condition::Unknown,
    Condition::Dry,
    Condition::Oiled,
    Condition::Plated,
    Condition::CompoundWet,
];

/// The kinds of work a new step may be; fasteners need their thread and torque first, see [`fasten`].
pub const KINDS: [&str; 9] = [
    "Clean", "Check", "Fit", "Fasten", "Bond", "Seat", "Lift", "Turn", "Fill",
];

/// A press fit of which no size is known, in the job form, so that every other field begins as a file's would.
const UNSIZED_SEAT: &str = r#"{"seat":{"part":"",
    "hole":{"measured":{"size_mm":0,"at_c":20,"material":"cast_aluminium"}},
    "shaft":{"measured":{"size_mm":0,"at_c":20,"material":"bearing_steel"}},
    "housing":"cast_aluminium","part_material":"bearing_steel","length_mm":0,"boss_outside_mm":0,
    "wall_mm":0,"housing_limit_c":120,"part_limit_c":120}}"#;

/// Empty work of that kind. Sizes and masses begin at zero, which no sum takes: nothing is made up.
pub fn blank(kind: &str) -> Option<Work> {
    Some(match kind {
        "Clean" => Work::Clean(Clean::default()),
        "Check" => Work::Check(Check::default()),
        "Fit" => Work::Fit(Fit::default()),
        "Bond" => Work::Bond(Bond {
            joint: String::new(),
            application: Application::new(JointKind::CaseHalves),
        }),
        "Seat" => return json::read(UNSIZED_SEAT).ok(),
        "Lift" => Work::Lift(LiftWork {
            mass_kg: 0.0,
            ..LiftWork::default()
        }),
        "Turn" => Work::Turn(Turn::default()),
        "Fill" => Work::Fill(Fill::default()),
        _ => return None,
    })
}
