//! A reading worked out by a calculation of the Measure screen: what it is fed with, what it comes to, and what
//! keeps it from coming to anything.
//!
//! The reading's own limits are the calculation's: told once, they are fed to it, so that it says what it says on
//! the screen. What the calculation itself refuses is outside, whatever its number.

use super::how::{Fed, How, Worked};
use super::limit::{Limit, Pair};
use crate::job::id::ReadingId;
use crate::job::measuring::{
    Answer, AsReading, Calculation, FACE_OR_JOURNALS, Field, Given, Measure, MeasureBench, OTHER_SIDE,
    RUN_OUT, Takes, Trouble, as_reading_of, in_inches,
};
use crate::job::reading::Verdict;
use crate::job::text_form::thread;
use crate::trade::quantity::{Stated, trimmed};
use uom::si::length::millimeter;

/// What it comes to.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// A reading that feeds it is still to be taken.
    Waiting,
    /// It can't be worked out: why, and what to do.
    Cannot(String),
    /// It is worked out.
    Found(Found),
}

/// A value that was worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// It, in the reading's unit; the middle of a range.
    pub value: f64,
    /// What is to be said of it beside what the limits say of the value: outside where the calculation refuses, worn
    /// where it refuses by the limits of a new part alone; of a range, what the limits say of its ends.
    pub verdict: Verdict,
    /// Not all of it was read, by what the calculation knows of it: it can't be within yet.
    pub open: bool,
    /// Its words.
    pub answer: Answer,
}

impl Found {
    /// The verdict, where its limits say `own` of the value.
    pub fn judged(&self, own: Verdict) -> Verdict {
        match own.worse(self.verdict) {
            Verdict::Within if self.open => Verdict::Noted,
            verdict => verdict,
        }
    }
}

/// Why there is no value.
enum Why {
    /// By the plan, whatever is read.
    Planned(String),
    /// By what was read.
    Read(String),
}

/// What is read of the step's readings, each in its own unit.
type Read<'a> = &'a dyn Fn(ReadingId) -> Option<f64>;

/// Who works it out; none where no calculation does.
fn by(limit: &Limit) -> Option<&Worked> {
    limit
        .worked
        .as_ref()
        .filter(|worked| worked.how == How::Calculation)
}

/// What `limit` comes to; none where no calculation works it out.
pub fn outcome(readings: &[Limit], limit: &Limit, read: Read<'_>) -> Option<Outcome> {
    let worked = by(limit)?;
    let unread = |id: ReadingId| measured(readings, id).is_some() && read(id).is_none();
    if worked.fed.iter().any(|fed| fed.reading.is_some_and(unread)) {
        return Some(Outcome::Waiting);
    }
    Some(match reckon(readings, limit, worked, read) {
        Ok(found) => Outcome::Found(found),
        Err(Why::Planned(why) | Why::Read(why)) => Outcome::Cannot(why),
    })
}

/// Whether a reading of the step feeds it.
pub fn is_read(limit: &Limit) -> bool {
    by(limit).is_some_and(|worked| worked.fed.iter().any(|fed| fed.reading.is_some()))
}

/// What the plan still lacks to work it out; none where nothing, or where that shows only by what is read.
pub fn lacks(readings: &[Limit], limit: &Limit) -> Option<String> {
    let worked = by(limit)?;
    // As if each were read: what is missing then is missing in the plan.
    match reckon(readings, limit, worked, &|_| Some(1.0)) {
        Err(Why::Planned(why)) => Some(why),
        Ok(_) | Err(Why::Read(_)) => None,
    }
}

/// What is wrong with the plan of it, in a file or as it is changed; what another release knows is let be.
pub fn wrong(readings: &[Limit], limit: &Limit) -> Option<String> {
    let worked = by(limit)?;
    let calculation = as_reading_of(&worked.calculation)?;
    let measure = calculation.reading.as_ref()?.measure;
    if measure.kept(1.0, &limit.unit).is_none() {
        return Some(other_unit(limit, measure));
    }
    // Run-out alone is allowed by the radius; of others it would take "all of it is read" away with the limits.
    if limit.per.is_some() && calculation.id != RUN_OUT.id {
        return Some(format!(
            "“{}” is worked out as “{}”: give its limits as they are, not per radius.",
            limit.name, calculation.name
        ));
    }
    let wrong = |(at, fed): (usize, &Fed)| {
        let twice = worked.fed[..at].iter().any(|other| other.field == fed.field);
        let field = field(calculation, &fed.field).filter(|_| twice);
        let twice = field.map(|field| format!("“{}” is fed twice: take one out.", field.name));
        twice.or_else(|| fed_wrong(readings, limit, calculation, fed))
    };
    let on_centres = |fed: &Fed| calculation.id == RUN_OUT.id && OTHER_SIDE.contains(&fed.field.as_str());
    if limit.per.is_some() && worked.fed.iter().any(on_centres) {
        return Some(format!("“{}”: {FACE_OR_JOURNALS}", limit.name));
    }
    worked.fed.iter().enumerate().find_map(wrong)
}

/// What is wrong with what feeds one of its fields.
pub fn fed_wrong(readings: &[Limit], limit: &Limit, calculation: &Calculation, fed: &Fed) -> Option<String> {
    let field = field(calculation, &fed.field)?;
    given(readings, calculation, field, fed, limit, &|_| None).err()
}

fn other_unit(limit: &Limit, measure: Measure) -> String {
    format!(
        "“{}” comes out in {}: give it such a unit.",
        limit.name,
        measure.units()
    )
}

fn measured(readings: &[Limit], id: ReadingId) -> Option<&Limit> {
    let mut all = readings.iter();
    all.find(|of| of.id == id && id.0 > 0 && of.worked.is_none())
}

fn field(calculation: &Calculation, id: &str) -> Option<&'static Field> {
    calculation.fields.iter().find(|field| field.id == id)
}

fn reckon(readings: &[Limit], limit: &Limit, worked: &Worked, read: Read<'_>) -> Result<Found, Why> {
    let known = as_reading_of(&worked.calculation).and_then(|one| Some((one, one.reading.as_ref()?)));
    let (calculation, reading) = known.ok_or_else(|| {
        Why::Planned(format!(
            "This release has no calculation “{}” for a reading: update the app, or work it out another way.",
            worked.calculation
        ))
    })?;
    let mut fed = Vec::new();
    for one in &worked.fed {
        let field = field(calculation, &one.field).ok_or_else(|| {
            Why::Planned(format!(
                "This release knows no “{}” of “{}”: update the app.",
                one.field, calculation.name
            ))
        })?;
        let given = given(readings, calculation, field, one, limit, read);
        fed.push(given.map_err(if one.reading.is_some() {
            Why::Read
        } else {
            Why::Planned
        })?);
    }
    let inch = in_inches(&limit.unit);
    let answer = |limits: Pair| {
        let given = fed
            .iter()
            .cloned()
            .chain(own(calculation, reading, limit, limits));
        let bench = MeasureBench {
            inch,
            given: given.collect(),
            ..MeasureBench::default()
        };
        calculation.answer(&bench).map_err(in_plan)
    };
    // What a worn part may have refuses it, else it is no worse than worn.
    let usable = answer(limit.usable())?;
    let told = |kept: f64| {
        reading
            .measure
            .told(kept, &limit.unit)
            .filter(|told| told.is_finite())
    };
    let reckoned = usable
        .reckoned
        .filter(|reckoned| reckoned.measure == reading.measure);
    let value = reckoned.and_then(|reckoned| {
        let (low, high) = reckoned.ends;
        Some((told((low + high) / 2.0)?, [told(low)?, told(high)?]))
    });
    let (value, ends) = value.ok_or_else(|| Why::Planned(other_unit(limit, reading.measure)))?;
    let by_ends = match limit.per {
        None => ends.map(|end| limit.judge(end)),
        Some(_) => [Verdict::Noted; 2],
    };
    let refused = |refused: bool, verdict| if refused { verdict } else { Verdict::Noted };
    let as_new = match limit.usable() == limit.new_pair() {
        true => false,
        false => answer(limit.new_pair())?.refused,
    };
    let all = [
        refused(usable.refused, Verdict::Outside),
        refused(as_new, Verdict::Worn),
    ];
    let verdict = all
        .into_iter()
        .chain(by_ends)
        .fold(Verdict::Noted, Verdict::worse);
    Ok(Found {
        value,
        verdict,
        // Limits per radius are not told to it: it is open for want of them alone.
        open: usable.open && limit.per.is_none(),
        answer: usable,
    })
}

fn in_plan(why: Trouble) -> Why {
    match why {
        Trouble::Missing(name) => {
            Why::Planned(format!("The plan names nothing for “{name}”: enter it there."))
        }
        other => Why::Read(other.to_string()),
    }
}

/// The reading's own limits as the calculation's fields; none that are per radius, which mean something else.
fn own(
    calculation: &Calculation,
    reading: &AsReading,
    limit: &Limit,
    (least, most): Pair,
) -> impl Iterator<Item = Given> {
    let told = |(id, end): (&str, Option<f64>)| {
        let end = end.filter(|_| limit.per.is_none() && reading.own.contains(&id))?;
        Some(Given {
            calculation: calculation.id.to_owned(),
            field: id.to_owned(),
            number: Some(reading.measure.kept(end, &limit.unit)?),
            word: String::new(),
        })
    };
    [("least", least), ("most", most)].map(told).into_iter().flatten()
}

/// What a field is given; a reading that was not taken is given as none.
///
/// # Errors
/// A sentence: a reading that is none or of another kind, a number out of its range, a word that is not offered.
fn given(
    readings: &[Limit],
    calculation: &Calculation,
    field: &Field,
    fed: &Fed,
    limit: &Limit,
    read: Read<'_>,
) -> Result<Given, String> {
    let name = field.name;
    if !calculation.asked_as_reading().any(|asked| asked.id == field.id) {
        return Err(format!(
            "“{name}” goes by the limits of the reading itself: enter them there."
        ));
    }
    let mut given = Given {
        calculation: calculation.id.to_owned(),
        field: field.id.to_owned(),
        ..Given::default()
    };
    match (field.takes, fed.reading) {
        (Takes::Number(measure, _), Some(id)) => {
            let of = measured(readings, id)
                .ok_or_else(|| format!("“{name}” is fed by a reading measured in this step: name one."))?;
            fits(measure, 1.0, &of.unit, name)?;
            let read = read(id).map(|read| kept(field, measure, read, &of.unit, limit));
            given.number = read.transpose()?;
        }
        (Takes::Number(measure, _), None) => {
            let unit = unit(fed, measure);
            let number = fed
                .number
                .map(|number| kept(field, measure, number.value, unit, limit));
            given.number = number.transpose()?;
        }
        (_, Some(_)) => {
            return Err(format!(
                "“{name}” is told in the plan, not read: choose it there."
            ));
        }
        (Takes::Choice(offered), None) => {
            if !fed.word.is_empty() && !offered.contains(&fed.word.as_str()) {
                return Err(format!("“{name}”: choose one of {}.", offered.join(", ")));
            }
            given.word.clone_from(&fed.word);
        }
        (Takes::Thread, None) => {
            let thread = thread::read(&fed.word)?;
            given.word = thread.map_or(String::new(), |thread| thread.name());
        }
        (Takes::Words | Takes::Line(_), None) => given.word.clone_from(&fed.word),
    }
    Ok(given)
}

/// The unit a number of the plan is in.
fn unit(fed: &Fed, measure: Measure) -> &str {
    match fed.unit.as_str() {
        "" => measure.symbol(false),
        unit => unit,
    }
}

fn fits(measure: Measure, value: f64, unit: &str, name: &str) -> Result<f64, String> {
    measure.kept(value, unit).ok_or_else(|| {
        let unit = if unit.is_empty() { "a plain number" } else { unit };
        format!("“{name}” takes {}, not {unit}.", measure.units())
    })
}

/// A number of that unit as the calculation keeps it.
///
/// # Errors
/// A unit of another kind; one out of the field's range in the field's own sentence.
pub fn kept(field: &Field, measure: Measure, value: f64, unit: &str, limit: &Limit) -> Result<f64, String> {
    let inch = in_inches(&limit.unit);
    let kept = fits(measure, value, unit, field.name)?;
    let judged = field.judge(measure.out(kept, inch), inch);
    judged.map_err(|why| format!("“{}”: {why}", field.name))
}

/// What it was worked out with: what a reason given for its value was given for. Readings as they were read,
/// numbers of the plan, choices by their place, threads by their diameter.
pub fn fed_numbers(limit: &Limit, read: Read<'_>) -> Vec<Option<f64>> {
    let Some(worked) = by(limit) else {
        return Vec::new();
    };
    let number = |fed: &Fed| {
        let measure =
            as_reading_of(&worked.calculation).and_then(|one| match field(one, &fed.field)?.takes {
                Takes::Number(measure, _) => Some(measure),
                _ => None,
            });
        // The same digits in another unit are another number.
        let planned = fed.number.map(|number| {
            let kept = measure.and_then(|measure| measure.kept(number.value, &fed.unit));
            kept.unwrap_or(number.value)
        });
        let takes = as_reading_of(&worked.calculation).and_then(|one| Some(field(one, &fed.field)?.takes));
        match (fed.reading, takes) {
            (Some(id), _) => read(id),
            (None, Some(Takes::Choice(offered))) => {
                let at = offered.iter().position(|word| *word == fed.word);
                at.map(|at| at as f64)
            }
            (None, Some(Takes::Thread)) => {
                let thread = thread::read(&fed.word).ok().flatten();
                thread.map(|thread| thread.major().get::<millimeter>())
            }
            _ => planned,
        }
    };
    worked.fed.iter().map(number).collect()
}

/// How it comes about, line by line: what it was fed with, what came of that, and the rule.
pub fn how(readings: &[Limit], limit: &Limit, read: Read<'_>) -> Vec<String> {
    let (Some(worked), Some(outcome)) = (by(limit), outcome(readings, limit, read)) else {
        return Vec::new();
    };
    let calculation = as_reading_of(&worked.calculation);
    let fields = calculation.map_or(&[] as &[Field], |one| one.fields);
    let fed = |field: &Field| {
        Some(format!(
            "{}: {}.",
            field.name,
            fed_words(readings, field, worked.fed(field.id)?, read)?
        ))
    };
    let mut lines: Vec<String> = fields.iter().filter_map(fed).collect();
    match outcome {
        Outcome::Waiting => {}
        Outcome::Cannot(why) => lines.push(why),
        Outcome::Found(found) => {
            let answer = found.answer;
            // Limits per radius are judged here: the calculation knows of none.
            let verdict = Some(&answer.verdict).filter(|_| limit.per.is_none());
            lines.push(format!(
                "{}: {} {}. {}",
                answer.says,
                answer.number,
                answer.unit,
                verdict.map_or("", String::as_str)
            ));
            lines.extend(
                answer
                    .rows
                    .iter()
                    .map(|(name, words)| format!("{name}: {words}.")),
            );
        }
    }
    lines.extend(calculation.map(|one| format!("{}: {}.", one.name, one.model)));
    lines
}

/// "0.15 mm (“tooth 1”)", "0.03 mm", "through"; none where nothing feeds it, or it is not read yet.
fn fed_words(readings: &[Limit], field: &Field, fed: &Fed, read: Read<'_>) -> Option<String> {
    if let Some(id) = fed.reading {
        let of = measured(readings, id)?;
        let value = trimmed(read(id)?, 5);
        return Some(format!(
            "{} (“{}”)",
            format!("{value} {}", of.unit).trim_end(),
            of.name
        ));
    }
    match field.takes {
        Takes::Number(measure, _) => {
            let words = format!("{} {}", fed.number.map(Stated::text)?, unit(fed, measure));
            Some(words.trim_end().to_owned())
        }
        _ => Some(fed.word.clone()).filter(|word| !word.is_empty()),
    }
}
