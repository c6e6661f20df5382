//! A step as a form: its fields as plain data to lay out, and one way to change each by its name.
//!
//! A field's name is a path ("reading/0/least"); lists have a key to add and one to remove a row.

mod fields;
mod set;

pub use fields::fields;
pub use set::set;

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
