//! The fields of a worked-out reading: how, and from which readings.

use super::data::Check;
use super::how::{How, Worked};
use super::limit::Limit;
use super::names::free_name;
use crate::job::field::{Entry, Form, Refused, Set, pick, refuse, yes};
use crate::job::id::ReadingId;
use crate::trade::quantity::convert;

/// Measured readings that turn into that unit.
fn measured<'a>(check: &'a Check, unit: &'a str) -> impl Iterator<Item = &'a Limit> {
    let all = check.readings.iter().filter(|of| of.worked.is_none());
    all.filter(move |of| convert(1.0, &of.unit, unit).is_some())
}

/// Adds how it is worked out, and from what.
pub fn show(form: &mut Form, check: &Check, limit: &Limit) {
    let Some(worked) = &limit.worked else { return };
    let under = format!("reading/{}", limit.id.0);
    let offered = How::ALL.iter().enumerate();
    let offered = offered.map(|(at, how)| (at.to_string(), how.words().to_owned()));
    form.add(
        format!("{under}/how"),
        "worked out as",
        worked.how.words(),
        Entry::Choice(offered.collect()),
    );
    if !worked.how.of_two() {
        for of in measured(check, &limit.unit) {
            let label = format!("of “{}”", of.name);
            form.flag(
                format!("{under}/of/{}", of.id.0),
                &label,
                worked.of.contains(&of.id),
            );
        }
        return;
    }
    let words = match worked.how {
        How::Fit => ["hole", "shaft"],
        _ => ["first", "second"],
    };
    for (place, label) in words.into_iter().enumerate() {
        let of = worked.of.get(place);
        let name = check.readings.iter().find(|own| Some(&own.id) == of);
        let offered = measured(check, &limit.unit).map(|of| (of.id.0.to_string(), of.name.clone()));
        form.add(
            format!("{under}/place/{place}"),
            label,
            name.map_or("", |own| own.name.as_str()),
            Entry::Choice(offered.collect()),
        );
    }
}

/// A reading worked out from those of the step that are of one kind: their mean, to begin with.
pub fn add(check: &mut Check) -> Set {
    let of_kind = |unit: &str| measured(check, unit).map(|of| of.id).collect::<Vec<ReadingId>>();
    let mut kinds = check.readings.iter().filter(|of| of.worked.is_none());
    let Some(unit) = kinds
        .find(|of| of_kind(&of.unit).len() > 1)
        .map(|of| of.unit.clone())
    else {
        return refuse("Add the readings it is worked out from first: two or more, in units of one kind.");
    };
    let of = of_kind(&unit);
    check.readings.push(Limit {
        name: free_name("mean", check.names()),
        worked: Some(Worked { how: How::Mean, of }),
        unit,
        ..Limit::default()
    });
    Ok(())
}

/// Changes how the reading at that place is worked out, or from what.
pub fn set(check: &mut Check, at: usize, field: &[&str], value: &str) -> Set {
    let limit = check.readings.get(at).ok_or(Refused::NoField)?;
    let mut worked = limit.worked.clone().ok_or(Refused::NoField)?;
    let by_number = |id: &str| {
        let found = measured(check, &limit.unit).find(|of| of.id.0.to_string() == id);
        found.map(|of| of.id)
    };
    match field {
        ["how"] => {
            worked.how = pick(&How::ALL, value)?;
            if worked.how.of_two() {
                worked.of.truncate(2);
            }
        }
        ["of", id] if !worked.how.of_two() => {
            let id = by_number(id).ok_or(Refused::NoField)?;
            worked.of.retain(|own| *own != id);
            if yes(value)? {
                worked.of.push(id);
            }
            if worked.of.len() < 2 {
                return refuse("It is worked out from two readings at least: add another one first.");
            }
        }
        ["place", place] if worked.how.of_two() => {
            let id =
                by_number(value).ok_or_else(|| Refused::Said("Choose one of those shown.".to_owned()))?;
            let at = ["0", "1"]
                .iter()
                .position(|own| own == place)
                .ok_or(Refused::NoField)?;
            // Chosen for the other place, the two change places.
            if let Some(other) = worked.of.iter().position(|own| *own == id) {
                worked.of.swap(at, other);
            }
            *worked.of.get_mut(at).ok_or(Refused::NoField)? = id;
        }
        _ => return Err(Refused::NoField),
    }
    check.readings[at].worked = Some(worked);
    Ok(())
}
