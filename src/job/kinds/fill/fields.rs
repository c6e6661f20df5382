//! The fields of a fill step.

use super::{Amount, Fill};
use crate::job::field::{self, Entry, Field, Form, Kept, Number, Refused, Seen, Set, pick_maybe, yes};
use crate::trade::quantity::{Unit, VolumeUnit, parse_volume};

/// Litres as a file has them; the plan shows them among the amounts.
static LITRES: [Number<Fill>; 1] = [Number::new(
    ("litres", "how much"),
    Kept::Litre,
    (0.01, 1_000.0),
    "work/fill/litres",
    |f| Some(f.litres),
    |f, litres| (f.litres, f.dry) = (litres, None),
)];

/// Every field, in the order of the plan.
static TABLE: [Field<Fill>; 9] = [
    Field::Words {
        id: "fluid",
        label: "fluid",
        get: |it| &it.fluid,
        set: |it, words| it.fluid = words,
    },
    Field::AtBench(&LITRES),
    Field::Typed {
        id: "dry",
        label: "dry fill, as in 1.1 L or 2 1/2 US qt",
        entry: Entry::Words,
        get: |it| text(it.dry()),
        set: |it, words| read(words).map(|amount| it.set_dry(amount)),
    },
    Field::Typed {
        id: "refill",
        label: "refill after draining",
        entry: Entry::Words,
        get: |it| text(it.refill),
        set: |it, words| read(words).map(|amount| it.refill = amount),
    },
    Field::Flag {
        id: "drained",
        label: "it was drained: the refill counts",
        get: |it| it.drained,
        set: |it, yes| it.drained = yes,
    },
    Field::Words {
        id: "level",
        label: "to which level",
        get: |it| &it.level,
        set: |it, words| it.level = words,
    },
    Field::Choice {
        id: "measured",
        label: "measured in",
        offered,
        get: |it| {
            it.measured_in
                .map_or("the manual’s unit", Unit::symbol)
                .to_owned()
        },
        set: |it, value| pick_maybe(&VolumeUnit::ALL, value).map(|unit| it.measured_in = unit),
    },
    Field::Flag {
        id: "hot",
        label: "it is hot when handled",
        get: |it| it.hot,
        set: |it, yes| it.hot = yes,
    },
    Field::Choice {
        id: "fuel",
        label: "it is fuel",
        offered: || {
            let words = [
                ("", "as its name says"),
                ("yes", "yes, whatever its name"),
                ("no", "no, whatever its name"),
            ];
            words
                .map(|(value, words)| (value.to_owned(), words.to_owned()))
                .to_vec()
        },
        get: |it| {
            let words = match (it.fuel, it.no_fuel) {
                (true, _) => "yes, whatever its name",
                (false, true) => "no, whatever its name",
                (false, false) => "as its name says",
            };
            words.to_owned()
        },
        set: |it, value| {
            let told = if value.is_empty() { None } else { Some(yes(value)?) };
            (it.fuel, it.no_fuel) = (told == Some(true), told == Some(false));
            Ok(())
        },
    },
];

fn text(amount: Option<Amount>) -> String {
    amount.map_or(String::new(), |amount| amount.text())
}

/// A stated volume; empty for none. A bare number is in litres.
fn read(words: &str) -> Result<Option<Amount>, Refused> {
    if words.trim().is_empty() {
        return Ok(None);
    }
    parse_volume(words, Some(VolumeUnit::Litre))
        .map(Some)
        .map_err(|error| Refused::Said(error.to_string()))
}

fn offered() -> Vec<(String, String)> {
    let units = VolumeUnit::ALL.iter().enumerate();
    let own = (String::new(), "the manual’s unit".to_owned());
    let units = units.map(|(at, unit)| (at.to_string(), unit.symbol().to_owned()));
    std::iter::once(own).chain(units).collect()
}

pub fn show(form: &mut Form, fill: &Fill) {
    field::show(form, "fill", &TABLE, fill);
}

pub fn set(fill: &mut Fill, path: &str, value: &str) -> Set {
    field::set(&TABLE, fill, "fill", path, value)
}

pub fn visit(fill: &Fill, see: &mut dyn FnMut(Seen)) {
    field::visit(&TABLE, fill, Some(&Fill::default()), see);
}
