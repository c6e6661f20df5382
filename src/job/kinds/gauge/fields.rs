//! The fields of a gauge step.

use super::data::Gauge;
use crate::job::field::{self, Entry, Field, Form, Kept, Number, Refused, Seen, Set, pick, refuse};
use crate::job::text_form::said;
use crate::trade::quantity::{LengthUnit, Unit, parse_torque};

/// A clearance, in mm, inches or thousandths of one.
const CLEARANCE: (f64, f64) = (0.0, 100.0);
/// The units a step may be in.
const UNITS: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];

const fn limit(
    id: (&'static str, &'static str),
    stored: &'static str,
    get: fn(&Gauge) -> Option<f64>,
    set: fn(&mut Gauge, f64),
    clear: fn(&mut Gauge),
) -> Number<Gauge> {
    Number::new(id, Kept::Bare, CLEARANCE, stored, get, set).or_none(clear)
}

static LIMITS: [Number<Gauge>; 4] = [
    limit(
        ("least", "clearance at least"),
        "gauge/least",
        |g| g.least,
        |g, value| g.least = Some(value),
        |g| g.least = None,
    ),
    limit(
        ("most", "at most, with new parts"),
        "gauge/most",
        |g| g.most,
        |g, value| g.most = Some(value),
        |g| g.most = None,
    ),
    limit(
        ("worn_most", "may be used up to"),
        "gauge/worn",
        |g| g.worn,
        |g, value| g.worn = Some(value),
        |g| g.worn = None,
    ),
    limit(
        ("taper", "ends may differ by"),
        "gauge/taper",
        |g| g.taper,
        |g, value| g.taper = Some(value),
        |g| g.taper = None,
    ),
];

static TABLE: [Field<Gauge>; 4] = [
    Field::Words {
        id: "bearing",
        label: "which bearing",
        get: |g| &g.bearing,
        set: |g, words| g.bearing = words,
    },
    Field::Choice {
        id: "unit",
        label: "clearances in",
        offered: || {
            let units = UNITS.iter().enumerate();
            units
                .map(|(at, unit)| (at.to_string(), unit.symbol().to_owned()))
                .collect()
        },
        get: |g| g.unit.symbol().to_owned(),
        set: |g, value| pick(&UNITS, value).map(|unit| g.unit = unit),
    },
    Field::Numbers(&LIMITS),
    Field::Typed {
        id: "torque",
        label: "the cap is tightened to",
        entry: Entry::Torque,
        get: |g| g.torque.as_ref().map_or(String::new(), |torque| torque.text()),
        set: |g, typed| {
            if typed.trim().is_empty() {
                g.torque = None;
                return Ok(());
            }
            let torque = parse_torque(typed, None).map_err(|why| Refused::Said(why.to_string()))?;
            said::no_angle(&torque).map_err(Refused::Said)?;
            g.torque = Some(torque);
            Ok(())
        },
    },
];

/// Adds the fields of a gauge step.
pub fn show(form: &mut Form, gauge: &Gauge) {
    field::show(form, "gauge", &TABLE, gauge);
}

/// Changes the field of that path; where it is refused nothing is changed.
///
/// # Errors
/// As [`field::set`], and limits the wrong way round.
pub fn set(gauge: &mut Gauge, path: &str, value: &str) -> Set {
    let mut changed = gauge.clone();
    field::set(&TABLE, &mut changed, "gauge", path, value)?;
    let limits = [changed.least, changed.most, changed.worn];
    if !limits.into_iter().flatten().is_sorted() {
        return refuse("The limits are the wrong way round: the least, with new parts, worn.");
    }
    *gauge = changed;
    Ok(())
}

/// Shows every number of a gauge step.
pub fn visit(gauge: &Gauge, see: &mut dyn FnMut(Seen)) {
    field::visit(&TABLE, gauge, None, see);
}
