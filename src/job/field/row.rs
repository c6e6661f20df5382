//! A row of the table of fields: words, numbers, a flag, a choice, something with a reader of its own.

use super::form::{Entry, Form};
use super::number::{Number, Seen};
use super::read::{Refused, Set, named, pick, yes};
use crate::trade::material::Material;
use crate::trade::quantity::in_mark;

/// A field of a `T`, or a run of numbers that a screen of the bench shows together.
pub enum Field<T: 'static> {
    /// Numbers, on the plan and at the bench.
    Numbers(&'static [Number<T>]),
    /// Numbers that only a screen of the bench asks for.
    AtBench(&'static [Number<T>]),
    /// Words.
    Words {
        id: &'static str,
        label: &'static str,
        get: fn(&T) -> &str,
        set: fn(&mut T, String),
    },
    /// A name: words that may not be empty.
    Name {
        id: &'static str,
        label: &'static str,
        get: fn(&T) -> &str,
        set: fn(&mut T, String),
    },
    /// Yes or no.
    Flag {
        id: &'static str,
        label: &'static str,
        get: fn(&T) -> bool,
        set: fn(&mut T, bool),
    },
    /// A material.
    Material {
        id: &'static str,
        label: &'static str,
        get: fn(&T) -> Material,
        set: fn(&mut T, Material),
    },
    /// What is typed and read by a reader of its own.
    Typed {
        id: &'static str,
        label: &'static str,
        entry: Entry,
        get: fn(&T) -> String,
        set: fn(&mut T, &str) -> Set,
    },
    /// One of several, (value, words) each.
    Choice {
        id: &'static str,
        label: &'static str,
        offered: fn() -> Vec<(String, String)>,
        get: fn(&T) -> String,
        set: fn(&mut T, &str) -> Set,
    },
}

impl<T> Field<T> {
    /// Adds it to a form, where it says something of that work; its path begins with `under`.
    fn show(&self, form: &mut Form, under: &str, it: &T) {
        let path = |id: &str| format!("{under}/{id}");
        match self {
            Self::Numbers(numbers) => {
                for number in numbers.iter().filter(|number| number.applies(it)) {
                    let unit = number.unit(it).0;
                    let value = number.shown(it);
                    let optional = number.clear.is_some();
                    form.add(
                        path(number.id),
                        number.name,
                        &value,
                        Entry::Number { unit, optional },
                    );
                }
            }
            Self::AtBench(_) => {}
            Self::Words { id, label, get, .. } | Self::Name { id, label, get, .. } => {
                form.add(path(id), label, get(it), Entry::Words);
            }
            Self::Flag { id, label, get, .. } => form.flag(path(id), label, get(it)),
            Self::Material { id, label, get, .. } => {
                let offered = Material::ALL.iter().enumerate();
                let offered = offered.map(|(at, one)| (at.to_string(), one.words().to_owned()));
                form.add(path(id), label, get(it).words(), Entry::Choice(offered.collect()));
            }
            Self::Typed {
                id,
                label,
                entry,
                get,
                ..
            } => form.add(path(id), &in_mark(label), &get(it), entry.clone()),
            Self::Choice {
                id,
                label,
                offered,
                get,
                ..
            } => {
                form.add(path(id), label, &get(it), Entry::Choice(offered()));
            }
        }
    }

    /// Changes it where `field` is its id; none where it isn't.
    fn try_set(&self, it: &mut T, field: &str, value: &str) -> Option<Set> {
        match self {
            Self::Numbers(numbers) | Self::AtBench(numbers) => {
                let number = numbers.iter().find(|number| number.id == field)?;
                Some(number.take(it, value))
            }
            Self::Words { id, set, .. } if *id == field => {
                set(it, value.trim().to_owned());
                Some(Ok(()))
            }
            Self::Name { id, set, .. } if *id == field => Some(named(value).map(|name| set(it, name))),
            Self::Flag { id, set, .. } if *id == field => Some(yes(value).map(|yes| set(it, yes))),
            Self::Material { id, set, .. } if *id == field => {
                Some(pick(&Material::ALL, value).map(|material| set(it, material)))
            }
            Self::Typed { id, set, .. } | Self::Choice { id, set, .. } if *id == field => {
                Some(set(it, value))
            }
            Self::Words { .. }
            | Self::Name { .. }
            | Self::Flag { .. }
            | Self::Material { .. }
            | Self::Typed { .. }
            | Self::Choice { .. } => None,
        }
    }
}

/// Adds the rows of a table that say something of `it` to a form; their paths begin with `under`.
pub fn show<T>(form: &mut Form, under: &str, table: &[Field<T>], it: &T) {
    table.iter().for_each(|row| row.show(form, under, it));
}

/// Changes the field of that path, `under` and an id; where it is refused nothing is changed.
///
/// # Errors
/// [`Refused::NoField`] for a path that no row has, else the row's sentence.
pub fn set<T>(table: &[Field<T>], it: &mut T, under: &str, path: &str, value: &str) -> Set {
    let field = path.strip_prefix(under).and_then(|rest| rest.strip_prefix('/'));
    let field = field.ok_or(Refused::NoField)?;
    table
        .iter()
        .find_map(|row| row.try_set(it, field, value))
        .unwrap_or(Err(Refused::NoField))
}

/// Shows every number of a table to `see`; `blank` is empty work of the same kind.
pub fn visit<T>(table: &[Field<T>], it: &T, blank: Option<&T>, see: &mut dyn FnMut(Seen)) {
    for row in table {
        if let Field::Numbers(numbers) | Field::AtBench(numbers) = row {
            numbers.iter().for_each(|number| see(number.seen(it, blank)));
        }
    }
}
