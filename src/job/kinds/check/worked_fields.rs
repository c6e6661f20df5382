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
    let Some(just) = worked.how.of_just() else {
        for of in measured(check, &limit.unit) {
            let label = format!("of “{}”", of.name);
            form.flag(
                format!("{under}/of/{}", of.id.0),
                &label,
                worked.of.contains(&of.id),
            );
        }
        return;
    };
    let words = match worked.how {
        How::Fit => ["hole", "shaft"],
        How::Offset => ["run-out", ""],
        How::Difference | How::Mean | How::Greatest | How::Least | How::Spread => ["first", "second"],
    };
    for (place, label) in words.into_iter().enumerate().take(just) {
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
    let several = kinds.find(|of| of_kind(&of.unit).len() > 1);
    let only = check.readings.iter().find(|of| of.worked.is_none());
    let Some(unit) = several.or(only).map(|of| of.unit.clone()) else {
        return refuse("Add the reading it is worked out from first.");
    };
    let of = of_kind(&unit);
    let (how, kind) = match of.len() {
        1 => (How::Offset, "offset"),
        _ => (How::Mean, "mean"),
    };
    check.readings.push(Limit {
        name: free_name(kind, check.names()),
        worked: Some(Worked { how, of }),
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
            if let Some(just) = worked.how.of_just() {
                worked.of.truncate(just);
            }
            let more = measured(check, &limit.unit).map(|of| of.id);
            let mut more = more
                .filter(|id| !worked.of.contains(id))
                .collect::<Vec<_>>()
                .into_iter();
            while !worked.how.takes(worked.of.len()) {
                match more.next() {
                    Some(id) => worked.of.push(id),
                    None => return refuse("It takes two readings of one kind: add another one first."),
                }
            }
        }
        ["of", id] if worked.how.of_just().is_none() => {
            let id = by_number(id).ok_or(Refused::NoField)?;
            worked.of.retain(|own| *own != id);
            if yes(value)? {
                worked.of.push(id);
            }
            if worked.of.len() < 2 {
                return refuse("It is worked out from two readings at least: add another one first.");
            }
        }
        ["place", place] if worked.how.of_just().is_some() => {
            let id =
                by_number(value).ok_or_else(|| Refused::Said("Choose one of those shown.".to_owned()))?;
            let at = ["0", "1"]
                .iter()
                .position(|own| own == place)
                .ok_or(Refused::NoField)?;
            // Chosen for the other place, the two change places.
            let there = worked.of.get(at).copied().ok_or(Refused::NoField)?;
            let other = worked.of.iter_mut().find(|own| **own == id);
            other.into_iter().for_each(|other| *other = there);
            worked.of[at] = id;
        }
        _ => return Err(Refused::NoField),
    }
    check.readings[at].worked = Some(worked);
    Ok(())
}
