//! The fields of a run step; the fasteners torqued again are chosen among the steps of its sheet.

use super::{Run, Warmth};
use crate::job::field::{self, Entry, Field, Form, Kept, Number, Refused, Seen, Set, refuse};
use crate::trade::quantity::{TemperatureUnit, parse_temperature};

static MINUTES: [Number<Run>; 1] = [Number::<Run>::new(
    ("minutes", "run for at least"),
    Kept::Minute,
    (0.5, 600.0),
    "run/minutes",
    |run| run.minutes,
    |run, minutes| run.minutes = Some(minutes),
)
.or_none(|run| run.minutes = None)];

/// Every field, in the order of the plan.
static TABLE: [Field<Run>; 6] = [
    Field::Words {
        id: "what",
        label: "what is started",
        get: |it| &it.what,
        set: |it, words| it.what = words,
    },
    Field::Typed {
        id: "until",
        label: "run until it reads, as in 80 °C or 180 °F",
        entry: Entry::Words,
        get: |it| text(it.until),
        set: |it, words| in_order(it, read(words)?, it.never_over),
    },
    Field::Typed {
        id: "never_over",
        label: "it must not read more than",
        entry: Entry::Words,
        get: |it| text(it.never_over),
        set: |it, words| in_order(it, it.until, read(words)?),
    },
    Field::Numbers(&MINUTES),
    Field::Flag {
        id: "cool",
        label: "let it cool before anything is touched again",
        get: |it| it.cool,
        set: |it, yes| it.cool = yes,
    },
    Field::Words {
        id: "level",
        label: "which level is looked at again",
        get: |it| &it.level,
        set: |it, words| it.level = words,
    },
];

fn text(stated: Option<Warmth>) -> String {
    stated.map_or(String::new(), |stated| stated.text())
}

/// A stated temperature; empty for none. A bare number is in °C.
fn read(words: &str) -> Result<Option<Warmth>, Refused> {
    if words.trim().is_empty() {
        return Ok(None);
    }
    parse_temperature(words, Some(TemperatureUnit::Celsius))
        .map(Some)
        .map_err(|error| Refused::Said(error.to_string()))
}

fn in_order(run: &mut Run, until: Option<Warmth>, never_over: Option<Warmth>) -> Set {
    if let (Some(until), Some(most)) = (until, never_over)
        && until.temperature() > most.temperature()
    {
        return refuse("It can’t be run warmer than it may get: read the manual again.");
    }
    (run.until, run.never_over) = (until, never_over);
    Ok(())
}

pub fn show(form: &mut Form, run: &Run) {
    field::show(form, "run", &TABLE, run);
}

pub fn set(run: &mut Run, path: &str, value: &str) -> Set {
    field::set(&TABLE, run, "run", path, value)
}

pub fn visit(run: &Run, see: &mut dyn FnMut(Seen)) {
    field::visit(&TABLE, run, None, see);
}
