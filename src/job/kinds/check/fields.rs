//! The fields of a check step: its readings and bores, each under its own number.

use super::data::{Bore, Check, Journal};
use super::limit::Limit;
use super::names::free_name;
use super::{worked, worked_fields};
use crate::job::field::{self, Field, Form, Kept, Number, Refused, Seen, Set, pick_maybe, refuse, yes};
use crate::job::id::ReadingId;
use crate::trade::material::Material;
use crate::trade::quantity::{LengthUnit, READ_UNITS, Stated, Unit, unit_symbol};

/// What can be read, in whatever unit: pressures in pascals, counts, lengths.
const READ: (f64, f64) = (-1e6, 1e6);
/// A radius, in mm or inches.
const RADIUS: (f64, f64) = (0.01, 10_000.0);
/// What limits may be per.
const PER: [LengthUnit; 2] = [LengthUnit::Inch, LengthUnit::Millimetre];
/// A bore's sizes, mm.
const BORE: (f64, f64) = (0.0, 1_000.0);
/// A clearance, mm; negative where it must be tight.
const CLEARANCE: (f64, f64) = (-10.0, 10.0);

/// What is said of the whole step.
static TABLE: [Field<Check>; 1] = [Field::Flag {
    id: "running",
    label: "the engine runs meanwhile",
    get: |c| c.running,
    set: |c, yes| c.running = yes,
}];

macro_rules! limit {
    ($id:literal, $name:literal, $field:ident) => {
        Number::<Limit>::new(
            ($id, $name),
            Kept::Bare,
            READ,
            concat!("check/readings/", $id),
            |l| l.$field.map(|stated| stated.value),
            |l, value| l.$field = Some(Stated::plain(value)),
        )
        .or_none(|l| l.$field = None)
        .stated(|l| l.$field, |l, stated| l.$field = Some(stated))
    };
}

static LIMITS: [Number<Limit>; 4] = [
    limit!("least", "not less than", least),
    limit!("most", "not more than", most),
    limit!("worn_least", "worn, not less than", worn_least),
    limit!("worn_most", "worn, not more than", worn_most),
];

static READING: [Field<Limit>; 6] = [
    Field::Name {
        id: "name",
        label: "what is measured",
        get: |l| &l.name,
        set: |l, name| l.name = name,
    },
    Field::Choice {
        id: "unit",
        label: "unit",
        offered: || {
            let units = READ_UNITS
                .iter()
                .map(|unit| ((*unit).to_owned(), (*unit).to_owned()));
            units.chain([(String::new(), "none".to_owned())]).collect()
        },
        get: |l| {
            if l.unit.is_empty() {
                "none".to_owned()
            } else {
                l.unit.clone()
            }
        },
        set: |l, unit| {
            l.unit = unit_symbol(unit);
            Ok(())
        },
    },
    Field::Words {
        id: "other_unit",
        label: "a unit that is not among them",
        get: |l| {
            if READ_UNITS.contains(&l.unit.as_str()) {
                ""
            } else {
                &l.unit
            }
        },
        set: |l, unit| l.unit = unit_symbol(&unit),
    },
    Field::Numbers(&LIMITS),
    Field::Flag {
        id: "whole",
        label: "a count: whole numbers only",
        get: |l| l.whole,
        set: |l, yes| l.whole = yes,
    },
    Field::Choice {
        id: "per",
        label: "limits per inch or mm of radius",
        offered: || {
            let none = (String::new(), "no".to_owned());
            let per = PER.iter().enumerate();
            let per = per.map(|(at, unit)| (at.to_string(), unit.symbol().to_owned()));
            std::iter::once(none).chain(per).collect()
        },
        get: |l| l.per.map_or("no", Unit::symbol).to_owned(),
        set: |l, value| pick_maybe(&PER, value).map(|per| l.per = per),
    },
];

static RADII: [Number<Limit>; 1] = [Number::<Limit>::new(
    ("radius", "at a radius of, where it is known"),
    Kept::Bare,
    RADIUS,
    "check/readings/radius",
    |l| l.radius,
    |l, radius| l.radius = Some(radius),
)
.or_none(|l| l.radius = None)];

/// Only of a reading whose limits are per radius.
static PER_RADIUS: [Field<Limit>; 1] = [Field::Numbers(&RADII)];

const fn size(
    id: (&'static str, &'static str),
    stored: &'static str,
    get: fn(&Bore) -> Option<f64>,
    set: fn(&mut Bore, f64),
    clear: fn(&mut Bore),
) -> Number<Bore> {
    Number::new(id, Kept::Millimetre, BORE, stored, get, set).or_none(clear)
}

static SIZES: [Number<Bore>; 6] = [
    size(
        ("least", "not under"),
        "bore/least_mm",
        |b| b.least_mm,
        |b, mm| b.least_mm = Some(mm),
        |b| b.least_mm = None,
    ),
    size(
        ("most", "not over"),
        "bore/most_mm",
        |b| b.most_mm,
        |b, mm| b.most_mm = Some(mm),
        |b| b.most_mm = None,
    ),
    size(
        ("worn_least", "worn, not under"),
        "bore/worn_least_mm",
        |b| b.worn_least_mm,
        |b, mm| b.worn_least_mm = Some(mm),
        |b| b.worn_least_mm = None,
    ),
    size(
        ("worn_most", "worn, not over"),
        "bore/worn_most_mm",
        |b| b.worn_most_mm,
        |b, mm| b.worn_most_mm = Some(mm),
        |b| b.worn_most_mm = None,
    ),
    size(
        ("round", "out-of-round up to"),
        "bore/out_of_round_mm",
        |b| b.out_of_round_mm,
        |b, mm| b.out_of_round_mm = Some(mm),
        |b| b.out_of_round_mm = None,
    ),
    size(
        ("taper", "taper up to"),
        "bore/taper_mm",
        |b| b.taper_mm,
        |b, mm| b.taper_mm = Some(mm),
        |b| b.taper_mm = None,
    ),
];

static BORES: [Field<Bore>; 5] = [
    Field::Name {
        id: "name",
        label: "bore or journal",
        get: |b| &b.name,
        set: |b, name| b.name = name,
    },
    Field::Material {
        id: "material",
        label: "made of",
        get: |b| b.material,
        set: |b, material| b.material = material,
    },
    Field::Numbers(&SIZES),
    Field::Flag {
        id: "journal",
        label: "a journal runs in it",
        get: |b| b.journal.is_some(),
        set: |b, yes| {
            b.journal = yes.then(|| Journal {
                name: format!("{} journal", b.name),
                material: Material::Steel,
                clearance_least_mm: None,
                clearance_most_mm: None,
                clearance_worn_mm: None,
            });
            b.shaft &= !yes;
        },
    },
    Field::Flag {
        id: "shaft",
        label: "it is a shaft or journal by itself, measured over the outside",
        get: |b| b.shaft,
        set: |b, yes| {
            b.shaft = yes;
            if yes {
                b.journal = None;
            }
        },
    },
];

static CLEARANCES: [Number<Journal>; 3] = [
    Number::<Journal>::new(
        ("least", "clearance at least"),
        Kept::Millimetre,
        CLEARANCE,
        "bore/journal/clearance_least_mm",
        |j| j.clearance_least_mm,
        |j, mm| j.clearance_least_mm = Some(mm),
    )
    .or_none(|j| j.clearance_least_mm = None),
    Number::<Journal>::new(
        ("most", "clearance at most"),
        Kept::Millimetre,
        CLEARANCE,
        "bore/journal/clearance_most_mm",
        |j| j.clearance_most_mm,
        |j, mm| j.clearance_most_mm = Some(mm),
    )
    .or_none(|j| j.clearance_most_mm = None),
    Number::<Journal>::new(
        ("worn_most", "worn, clearance at most"),
        Kept::Millimetre,
        CLEARANCE,
        "bore/journal/clearance_worn_mm",
        |j| j.clearance_worn_mm,
        |j, mm| j.clearance_worn_mm = Some(mm),
    )
    .or_none(|j| j.clearance_worn_mm = None),
];

static JOURNAL: [Field<Journal>; 3] = [
    Field::Name {
        id: "name",
        label: "journal",
        get: |j| &j.name,
        set: |j, name| j.name = name,
    },
    Field::Material {
        id: "material",
        label: "journal made of",
        get: |j| j.material,
        set: |j, material| j.material = material,
    },
    Field::Numbers(&CLEARANCES),
];

/// Adds the fields of a check step.
pub fn show(form: &mut Form, check: &Check) {
    for limit in &check.readings {
        let under = format!("reading/{}", limit.id.0);
        form.head(&format!("{}: {}", limit.name, limit.words()));
        worked_fields::show(form, check, limit);
        field::show(form, &under, &READING, limit);
        if limit.per.is_some() {
            field::show(form, &under, &PER_RADIUS, limit);
        }
        form.press(format!("{under}/remove"), &format!("delete “{}”", limit.name));
    }
    form.press("reading/add", "add a reading");
    form.press("reading/add_worked", "add one worked out from these");
    for bore in &check.bores {
        let under = format!("bore/{}", bore.id.0);
        form.head(&format!("{}, six places", bore.name));
        field::show(form, &under, &BORES, bore);
        if let Some(journal) = &bore.journal {
            field::show(form, &format!("{under}/journal"), &JOURNAL, journal);
        }
        form.press(format!("{under}/remove"), &format!("delete “{}”", bore.name));
    }
    form.press("bore/add", "add a bore, read at six places");
    form.press("bore/add_shaft", "add a journal or shaft, read at six places");
    field::show(form, "check", &TABLE, check);
}

/// Changes the field of that path; where it is refused nothing is changed.
///
/// # Errors
/// As [`field::set`], and limits the wrong way round, and a name that another has.
pub fn set(check: &mut Check, path: &str, value: &str) -> Set {
    match path.split('/').collect::<Vec<_>>().as_slice() {
        ["reading", "add"] => check.readings.push(Limit {
            name: free_name("reading", check.readings.iter().map(|limit| limit.name.as_str())),
            unit: "mm".to_owned(),
            ..Limit::default()
        }),
        ["reading", "add_worked"] => worked_fields::add(check)?,
        ["bore", "add"] => {
            let name = free_name("bore", check.bores.iter().flat_map(Bore::names));
            check.bores.push(Bore::named(name, false));
        }
        ["bore", "add_shaft"] => {
            let name = free_name("journal", check.bores.iter().flat_map(Bore::names));
            check.bores.push(Bore::named(name, true));
        }
        ["reading", id, "remove"] => {
            let at = place(check.readings.iter().map(|limit| limit.id), id)?;
            let mut without = check.clone();
            without.readings.remove(at);
            if worked::wrong(&without.readings).is_some() && worked::wrong(&check.readings).is_none() {
                return refuse("Another reading is worked out from it: take that one out first.");
            }
            *check = without;
        }
        ["bore", id, "remove"] => {
            let at = place(check.bores.iter().map(|bore| bore.id), id)?;
            check.bores.remove(at);
        }
        ["reading", id, field @ ..] => return set_reading(check, id, field, value),
        ["bore", id, field @ ..] => return set_bore(check, id, field, value),
        _ => return field::set(&TABLE, check, "check", path, value),
    }
    Ok(())
}

/// Shows every number of a check step.
pub fn visit(check: &Check, see: &mut dyn FnMut(Seen)) {
    for limit in &check.readings {
        field::visit(&READING, limit, None, see);
        field::visit(&PER_RADIUS, limit, None, see);
    }
    for bore in &check.bores {
        field::visit(&BORES, bore, None, see);
        if let Some(journal) = &bore.journal {
            field::visit(&JOURNAL, journal, None, see);
        }
    }
}

fn set_reading(check: &mut Check, id: &str, field: &[&str], value: &str) -> Set {
    let at = place(check.readings.iter().map(|limit| limit.id), id)?;
    let named = check.names().any(|name| name == value.trim());
    let mut after = check.clone();
    let changed = after.readings.get_mut(at).ok_or(Refused::NoField)?;
    if *field == ["name"] && changed.name != value.trim() && named {
        return refuse("Another reading of this step has that name.");
    }
    match field {
        ["how"] | ["of" | "place", _] | ["fed", ..] => worked_fields::set(&mut after, at, field, value)?,
        ["radius"] if changed.per.is_some() => {
            field::set(&PER_RADIUS, changed, "reading", "reading/radius", value)?;
        }
        [field] => field::set(&READING, changed, "reading", &format!("reading/{field}"), value)?,
        _ => return Err(Refused::NoField),
    }
    let changed = after.readings.get(at).and_then(Limit::wrong).map(str::to_owned);
    let worked = worked::wrong(&after.readings).filter(|_| worked::wrong(&check.readings).is_none());
    match changed.or(worked) {
        Some(words) => return refuse(words),
        None => *check = after,
    }
    Ok(())
}

fn set_bore(check: &mut Check, id: &str, field: &[&str], value: &str) -> Set {
    let at = place(check.bores.iter().map(|bore| bore.id), id)?;
    let taken = |name: &str| {
        check
            .bores
            .iter()
            .flat_map(Bore::names)
            .any(|other| other == name)
    };
    let another = taken(value.trim());
    let bore = check.bores.get_mut(at).ok_or(Refused::NoField)?;
    let own = match (field, &bore.journal) {
        (["name"], _) => bore.name == value.trim(),
        (["journal", "name"], Some(journal)) => journal.name == value.trim(),
        _ => true,
    };
    if another && !own {
        return refuse("Another bore or journal of this step has that name.");
    }
    let mut changed = bore.clone();
    match field {
        // Said again, it keeps the journal there is.
        ["journal"] if yes(value)? && changed.journal.is_some() => {}
        [field] => field::set(&BORES, &mut changed, "bore", &format!("bore/{field}"), value)?,
        ["journal", field] => {
            let journal = changed.journal.as_mut().ok_or(Refused::NoField)?;
            field::set(&JOURNAL, journal, "journal", &format!("journal/{field}"), value)?;
        }
        _ => return Err(Refused::NoField),
    }
    match changed.wrong() {
        Some(words) => refuse(words),
        None => {
            *bore = changed;
            Ok(())
        }
    }
}

/// Where the one of that number stands.
fn place(mut ids: impl Iterator<Item = ReadingId>, id: &str) -> Result<usize, Refused> {
    ids.position(|own| own.0.to_string() == id)
        .ok_or(Refused::NoField)
}
