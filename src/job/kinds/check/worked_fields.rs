//! The fields of a worked-out reading: how, and from which readings; of a calculation, what feeds each of its
//! fields.

use super::calculated;
use super::data::Check;
use super::how::{Fed, How, Worked};
use super::limit::Limit;
use super::names::free_name;
use crate::job::field::{Entry, Form, Refused, Set, pick, refuse, yes};
use crate::job::id::ReadingId;
use crate::job::measuring::{Field, Measure, Takes, as_reading_of, in_inches, offered_as_readings};
use crate::job::text_form::thread;
use crate::trade::quantity::{Stated, convert, known_unit, no_number};

/// Measured readings that turn into that unit.
fn measured<'a>(check: &'a Check, unit: &'a str) -> impl Iterator<Item = &'a Limit> {
    let all = check.readings.iter().filter(|of| of.worked.is_none());
    all.filter(move |of| convert(1.0, &of.unit, unit).is_some())
}

/// Adds how it is worked out, and from what.
pub fn show(form: &mut Form, check: &Check, limit: &Limit) {
    let Some(worked) = &limit.worked else { return };
    let under = format!("reading/{}", limit.id.0);
    let ways = How::ALL.iter().enumerate();
    let ways = ways.map(|(at, how)| (at.to_string(), how.words().to_owned()));
    let calculations = offered_as_readings().map(|one| (one.id.to_owned(), one.name.to_owned()));
    form.add(
        format!("{under}/how"),
        "worked out as",
        worked.words(),
        Entry::Choice(ways.chain(calculations).collect()),
    );
    if worked.how == How::Calculation {
        return fed_fields(form, &under, check, limit, worked);
    }
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
        How::Difference | How::Mean | How::Greatest | How::Least | How::Spread | How::Calculation => {
            ["first", "second"]
        }
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

/// What feeds each field of its calculation, and what it still lacks.
fn fed_fields(form: &mut Form, under: &str, check: &Check, limit: &Limit, worked: &Worked) {
    if let Some(why) = calculated::lacks(&check.readings, limit) {
        form.add("", &why, "", Entry::Said);
    }
    let Some(calculation) = as_reading_of(&worked.calculation) else {
        return;
    };
    for field in calculation.asked_as_reading() {
        let fed = worked.fed(field.id);
        let path = |what: &str| format!("{under}/fed/{}/{what}", field.id);
        let word = fed.map_or("", |fed| fed.word.as_str());
        match field.takes {
            Takes::Number(measure, _) => number_fields(form, &path, check, limit, (field, measure, fed)),
            Takes::Choice(offered) => {
                let words = offered.iter().enumerate();
                let words = words.map(|(at, word)| (at.to_string(), (*word).to_owned()));
                form.add(
                    path("word"),
                    field.name,
                    field.word(word),
                    Entry::Choice(words.collect()),
                );
            }
            Takes::Thread => {
                let none = thread::words(None);
                let word = if word.is_empty() { none.as_str() } else { word };
                form.add(path("word"), field.name, word, Entry::Thread);
            }
            Takes::Words | Takes::Line(_) => {}
        }
    }
}

/// Of a number: the reading that feeds it, else its figure.
fn number_fields(
    form: &mut Form,
    path: &dyn Fn(&str) -> String,
    check: &Check,
    limit: &Limit,
    (field, measure, fed): (&Field, Measure, Option<&Fed>),
) {
    let readings: Vec<&Limit> = feeding(check, measure).collect();
    let of = fed.and_then(|fed| readings.iter().find(|of| Some(of.id) == fed.reading));
    if !readings.is_empty() {
        let plan = (String::new(), THE_PLAN.to_owned());
        let readings = readings.iter().map(|of| (of.id.0.to_string(), of.name.clone()));
        let offered = std::iter::once(plan).chain(readings).collect();
        let name = of.map_or(THE_PLAN, |of| of.name.as_str());
        form.add(
            path("reading"),
            &format!("{}: told by", field.name),
            name,
            Entry::Choice(offered),
        );
    }
    if of.is_none() {
        let number = fed.and_then(|fed| fed.number).map_or(String::new(), Stated::text);
        let unit = figure_unit(fed, measure, limit);
        let optional = true;
        form.add(
            path("number"),
            field.name,
            &number,
            Entry::Number { unit, optional },
        );
    }
}

const THE_PLAN: &str = "the plan";

/// Measured readings that a field may be fed with.
fn feeding(check: &Check, measure: Measure) -> impl Iterator<Item = &Limit> {
    let all = check.readings.iter().filter(|of| of.worked.is_none());
    all.filter(move |of| measure.kept(1.0, &of.unit).is_some())
}

/// The unit a figure is told in: the one it was, else the one that goes with the reading's.
fn figure_unit(fed: Option<&Fed>, measure: Measure, limit: &Limit) -> &'static str {
    let told = fed
        .filter(|fed| fed.number.is_some())
        .and_then(|fed| match fed.unit.as_str() {
            "" => Some(measure.symbol(false)),
            unit => known_unit(unit),
        });
    told.unwrap_or(measure.symbol(in_inches(&limit.unit)))
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
        worked: Some(Worked::of(how, of)),
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
        ["how"] if as_reading_of(value).is_some() => return by_calculation(check, at, worked, value),
        ["how"] => return by_readings(check, at, worked, pick(&How::ALL, value)?),
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
        ["fed", field, what] if worked.how == How::Calculation => {
            let calculation = as_reading_of(&worked.calculation).ok_or(Refused::NoField)?;
            let mut asked = calculation.asked_as_reading();
            let field = asked.find(|own| own.id == *field).ok_or(Refused::NoField)?;
            let mut fed = worked.fed(field.id).cloned().unwrap_or_default();
            feed(check, limit, (field, &mut fed), what, value)?;
            fed.field.clear();
            let says_nothing = fed == Fed::default();
            field.id.clone_into(&mut fed.field);
            match worked.fed.iter_mut().find(|own| own.field == field.id) {
                Some(own) => *own = fed,
                None => worked.fed.push(fed),
            }
            worked.fed.retain(|own| own.field != field.id || !says_nothing);
        }
        _ => return Err(Refused::NoField),
    }
    check.readings[at].worked = Some(worked);
    Ok(())
}

/// Changes what feeds a field.
fn feed(check: &Check, limit: &Limit, (field, fed): (&Field, &mut Fed), what: &str, value: &str) -> Set {
    match (what, field.takes) {
        ("reading", Takes::Number(..)) if value.is_empty() => fed.reading = None,
        ("reading", Takes::Number(measure, _)) => {
            let of = feeding(check, measure).find(|of| of.id.0.to_string() == value);
            let of = of.ok_or_else(|| Refused::Said("Choose one of those shown.".to_owned()))?;
            fed.reading = Some(of.id);
        }
        ("number", Takes::Number(..)) if value.trim().is_empty() => {
            fed.number = None;
            fed.unit.clear();
        }
        ("number", Takes::Number(measure, _)) => {
            let number = Stated::typed(value).ok_or_else(|| Refused::Said(no_number(value)))?;
            let unit = figure_unit(Some(fed), measure, limit);
            calculated::kept(field, measure, number.value, unit, limit).map_err(Refused::Said)?;
            unit.clone_into(&mut fed.unit);
            fed.number = Some(number);
        }
        ("word", Takes::Choice(offered)) => pick(offered, value)?.clone_into(&mut fed.word),
        ("word", Takes::Thread) => {
            let thread = thread::read(value).map_err(Refused::Said)?;
            fed.word = thread.map_or(String::new(), |thread| thread.name());
        }
        _ => return Err(Refused::NoField),
    }
    Ok(())
}

/// Works the reading at that place out by a calculation; a unit of another kind gives way to one of its own.
fn by_calculation(check: &mut Check, at: usize, mut worked: Worked, id: &str) -> Set {
    let calculation = as_reading_of(id).ok_or(Refused::NoField)?;
    let measure = calculation.reading.as_ref().ok_or(Refused::NoField)?.measure;
    if worked.calculation != id {
        id.clone_into(&mut worked.calculation);
        worked.fed.clear();
    }
    worked.how = How::Calculation;
    let limit = &mut check.readings[at];
    if measure.kept(1.0, &limit.unit).is_none() {
        measure.symbol(in_inches(&limit.unit)).clone_into(&mut limit.unit);
    }
    limit.worked = Some(worked);
    // What fed it once may be gone since, or read in another kind of unit.
    let limit = check.readings[at].clone();
    let stands = |fed: &Fed| calculated::fed_wrong(&check.readings, &limit, calculation, fed).is_none();
    let fed = limit.worked.iter().flat_map(|worked| &worked.fed);
    let fed: Vec<Fed> = fed.filter(|fed| stands(fed)).cloned().collect();
    if let Some(worked) = &mut check.readings[at].worked {
        worked.fed = fed;
    }
    Ok(())
}

/// Works the reading at that place out from others of one kind, as many as it takes.
fn by_readings(check: &mut Check, at: usize, mut worked: Worked, how: How) -> Set {
    worked.how = how;
    let mut unit = check.readings[at].unit.clone();
    if measured(check, &unit).next().is_none() {
        // It was in the unit of a calculation that no reading is in.
        let other = check.readings.iter().find(|of| of.worked.is_none());
        unit = other.map_or(unit, |of| of.unit.clone());
    }
    let all: Vec<ReadingId> = measured(check, &unit).map(|of| of.id).collect();
    worked.of.retain(|id| all.contains(id));
    if let Some(just) = worked.how.of_just() {
        worked.of.truncate(just);
    }
    let more: Vec<ReadingId> = all.into_iter().filter(|id| !worked.of.contains(id)).collect();
    let mut more = more.into_iter();
    while !worked.how.takes(worked.of.len()) {
        match more.next() {
            Some(id) => worked.of.push(id),
            None => return refuse("It takes two readings of one kind: add another one first."),
        }
    }
    let limit = &mut check.readings[at];
    limit.unit = unit;
    limit.worked = Some(worked);
    Ok(())
}
