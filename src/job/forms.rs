//! The forms that things are kept in, and what an older release wrote brought up to today's.
//!
//! Form 1 knew parts and readings by their printed names and kept sentences; form 2 keeps numbers, ids
//! and enums, and the settings in pieces.

use super::json;
use super::kinds::Work;
use super::parts::{self, PartKey};
use super::reading::{Verdict, What};
use super::record::{Compound, Entry, Event, PhoneClock, SetTo, Setting};
use super::settings::{PIECES, Settings};
use super::sheet::{Sheet, Step};
use crate::trade::compound::CompoundClass;
use crate::trade::quantity::{TorqueUnit, decimal};
use serde_json::{Map, Value};

/// The form a thing of that name is written in today.
pub fn form_of(name: &str) -> u32 {
    let kind = name.split('/').next().unwrap_or_default();
    match kind {
        "bench" | "job" | "record" => 2,
        _ => 1,
    }
}

/// Reads a sheet; one without numbers for its readings and parts is given them.
pub fn sheet(text: &str) -> Option<Sheet> {
    let mut sheet: Sheet = json::read(text).ok()?;
    sheet.number();
    Some(sheet)
}

/// Reads a stretch of a record that stands on `sheet`.
pub fn entries(form: u32, text: &str, sheet: &Sheet) -> Option<Vec<Entry>> {
    if form > 1 {
        return json::read(text).ok();
    }
    entries_of(&json::read(text).ok()?, sheet)
}

/// A stretch of a record as form 1 wrote it.
pub fn entries_of(lines: &Value, sheet: &Sheet) -> Option<Vec<Entry>> {
    let lines = lines.as_array()?;
    let mut entries: Vec<Entry> = Vec::with_capacity(lines.len());
    for line in lines {
        let mut entry = from_form_1(line.clone(), sheet)?;
        // A restart wrote two lines for one touch.
        entry.joined = matches!(entry.event, Event::Applied { .. })
            && entries.last().is_some_and(|before| {
                before.event == Event::JointOpened && before.step == entry.step && before.at == entry.at
            });
        entries.push(entry);
    }
    Some(entries)
}

/// Puts one piece of the settings into the whole; form 1 kept all of them in "bench".
pub fn add_piece(whole: &mut Map<String, Value>, text: &str) -> Option<()> {
    let piece: Map<String, Value> = json::read(text).ok()?;
    whole.extend(piece);
    Some(())
}

/// The settings of all their pieces; a piece that is missing takes its first values.
pub fn settings(whole: Map<String, Value>) -> Option<Settings> {
    json::from_value(&Value::Object(whole)).ok()
}

/// Each piece of the settings as it is written: (name, text).
pub fn pieces(settings: &Settings) -> Vec<(&'static str, String)> {
    let text = json::write(settings).unwrap_or_default();
    let whole: Map<String, Value> = json::read(&text).unwrap_or_default();
    PIECES
        .iter()
        .map(|piece| {
            let fields = piece.fields.iter();
            let mut part = Map::new();
            for field in fields {
                if let Some(value) = whole.get(*field) {
                    part.insert((*field).to_owned(), value.clone());
                }
            }
            (piece.name, json::write(&part).unwrap_or_default())
        })
        .collect()
}

/// A line of form 1.
fn from_form_1(line: Value, sheet: &Sheet) -> Option<Entry> {
    let Value::Object(mut line) = line else {
        return None;
    };
    let step = line
        .get("step")
        .and_then(Value::as_u64)
        .and_then(|id| sheet.steps.iter().find(|step| u64::from(step.id.0) == id));
    let (event, was) = match line.remove("event")? {
        Value::Object(mut event) => {
            let kind = event.keys().next()?.clone();
            match event.remove(&kind)? {
                Value::Object(fields) => event_of(&kind, Fields(fields), step)?,
                _ => return None,
            }
        }
        Value::String(kind) if kind == "job_closed" => (Event::JobClosed, String::new()),
        _ => return None,
    };
    line.insert("event".to_owned(), Value::String("job_closed".to_owned()));
    let entry: Entry = json::from_value(&Value::Object(line)).ok()?;
    Some(Entry { event, was, ..entry })
}

struct Fields(Map<String, Value>);

impl Fields {
    fn words(&self, name: &str) -> String {
        let words = self.0.get(name).and_then(Value::as_str);
        words.unwrap_or_default().to_owned()
    }

    fn count(&self, name: &str) -> usize {
        self.0.get(name).and_then(Value::as_u64).unwrap_or(0) as usize
    }

    fn read<T: serde::de::DeserializeOwned>(&self, name: &str) -> Option<T> {
        json::from_value(self.0.get(name)?).ok()
    }
}

fn event_of(kind: &str, fields: Fields, step: Option<&Step>) -> Option<(Event, String)> {
    let mut was = String::new();
    let event = match kind {
        "acknowledged" => {
            was = fields.words("words");
            Event::Acknowledged {
                caution: fields.words("caution"),
            }
        }
        "tallied" => {
            let (value, unit) = (fields.words("value"), fields.words("unit"));
            let to = set_to(&value, &unit).unwrap_or_else(|| {
                was = format!("{value} {unit}");
                SetTo::Turn(0.0)
            });
            let tool = fields.words("tool");
            let adapter = tool.strip_suffix(" with an adapter");
            Event::Tallied {
                pass: fields.count("pass"),
                place: fields.count("place"),
                set: Setting {
                    instead: None,
                    to,
                    tool: adapter.unwrap_or(&tool).to_owned(),
                    adapter: adapter.is_some(),
                },
                goal: None,
            }
        }
        "applied" => {
            let words = fields.words("compound");
            let class = CompoundClass::ALL.into_iter().find(|class| class.name() == words);
            Event::Applied {
                compound: class.map_or(Compound::Words(words), Compound::Class),
                clock: fields.read("clock")?,
            }
        }
        "measured" => {
            let name = fields.words("name");
            let said = fields.words("verdict");
            let verdict = [Verdict::Noted, Verdict::Within, Verdict::Outside]
                .into_iter()
                .find(|verdict| verdict.words() == said);
            if verdict.is_none() {
                was = said;
            }
            Event::Measured {
                what: step
                    .and_then(|step| What::by_name(step, &name))
                    .unwrap_or(What::Named(name)),
                value: fields.read("value")?,
                unit: fields.words("unit"),
                tool: fields.words("tool"),
                verdict: verdict.unwrap_or_default(),
                at_c: fields.read("at_c"),
                decimals: None,
            }
        }
        "felt" => {
            let what = fields.words("what");
            let planned = step.and_then(|step| match &step.work {
                Work::Turn(turn) => Some(&turn.what),
                _ => None,
            });
            if planned != Some(&what) {
                was = what;
            }
            Event::Felt {
                tight_at: fields.words("tight_at"),
            }
        }
        "placed" => {
            let name = fields.words("name");
            // Known by "4:M6 × 20", the step's number and the name the part had then.
            let key = fields.words("part");
            let known = key.split_once(':').map_or("", |(_, name)| name);
            let part = step.and_then(|step| parts::by_name(step, known));
            if part.is_none() {
                was = name;
            }
            Event::Placed {
                part: part.unwrap_or(PartKey::More(super::id::PartId(0))),
                place: fields.read("place")?,
                here: fields.read("here")?,
                of: fields.read("of")?,
            }
        }
        "done" => {
            was = fields.words("summary");
            Event::Done { facts: None }
        }
        "skipped" => Event::Skipped {
            reason: fields.words("reason"),
        },
        "overridden" => Event::Overridden {
            reason: fields.words("reason"),
        },
        "taken_back" => Event::TakenBack {
            entry: fields.read("entry")?,
        },
        "noted" => {
            let (about, words) = (fields.read("about"), fields.words("words"));
            match about {
                None if step.is_none() => {
                    phone_clock(&words).map_or(Event::Noted { about, words }, Event::PhoneClock)
                }
                None if words == "The joint was opened again." => Event::JointOpened,
                about => Event::Noted { about, words },
            }
        }
        _ => return None,
    };
    Some((event, was))
}

/// "86" "in·lb", "60" "°".
fn set_to(value: &str, unit: &str) -> Option<SetTo> {
    let number = decimal(value)?;
    if unit == "°" {
        return Some(SetTo::Turn(number));
    }
    let unit = TorqueUnit::ALL.into_iter().find(|known| known.symbol() == unit)?;
    let decimals = value.split_once('.').map_or(0, |(_, behind)| behind.len() as u8);
    Some(SetTo::Torque {
        value: number,
        unit,
        decimals,
    })
}

/// What form 1 wrote of the phone's clock, in its own words.
fn phone_clock(words: &str) -> Option<PhoneClock> {
    let rest = words.strip_prefix("The phone’s clock ")?;
    if rest == "is in step again." {
        return Some(PhoneClock::InStep);
    }
    if rest == "was said to be right." {
        return Some(PhoneClock::Right);
    }
    if rest.starts_with("was said to be wrong") {
        return Some(PhoneClock::Wrong);
    }
    let (span, sign) = match (rest.strip_prefix("has gone "), rest.strip_prefix("is ")) {
        (Some(rest), _) => (rest.split_once(" ahead")?.0, 1),
        (None, Some(rest)) => (rest.split_once(" behind")?.0, -1),
        (None, None) => return None,
    };
    let mut minutes: i64 = 0;
    let mut last: i64 = 0;
    for word in span.split(' ') {
        match word {
            "h" => minutes += 60 * last,
            "min" => minutes += last,
            number => last = number.parse().ok()?,
        }
    }
    Some(PhoneClock::Jumped(sign * minutes * 60_000))
}
