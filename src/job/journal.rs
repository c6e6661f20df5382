//! The record as it is read: one line an entry, remarks beside the line they are about.

use super::clock::CureClock;
use super::record::{Entry, EntryId, Event, Record};
use super::sheet::{Sheet, StepId};
use crate::trade::moment::Moment;
use std::collections::{BTreeMap, BTreeSet};

/// What of the record is shown.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Filter {
    /// All of it.
    #[default]
    All,
    /// Fasteners brought to torque.
    Torque,
    /// Compounds and their clocks.
    Compound,
    /// Readings, and how things turn.
    Reading,
    /// Parts.
    Parts,
    /// Steps closed, left out, opened by hand; cautions.
    Steps,
    /// Remarks and corrections.
    Remarks,
}

impl Filter {
    /// Every filter with its words, in the order of the tiles.
    pub const ALL: [(Self, &'static str); 7] = [
        (Self::All, "all"),
        (Self::Torque, "torque"),
        (Self::Compound, "compound"),
        (Self::Reading, "readings"),
        (Self::Parts, "parts"),
        (Self::Steps, "steps"),
        (Self::Remarks, "remarks"),
    ];

    fn takes(self, event: &Event) -> bool {
        let kind = match event {
            Event::Tallied { .. } => Self::Torque,
            Event::Applied { .. } => Self::Compound,
            Event::Measured { .. } | Event::Felt { .. } => Self::Reading,
            Event::Placed { .. } => Self::Parts,
            Event::Noted { .. } | Event::TakenBack { .. } => Self::Remarks,
            Event::Acknowledged { .. }
            | Event::Done { .. }
            | Event::Skipped { .. }
            | Event::Overridden { .. }
            | Event::JobClosed => Self::Steps,
        };
        self == Self::All || self == kind
    }
}

/// One line as it is read.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The entry.
    pub id: EntryId,
    /// When.
    pub at: Moment,
    /// Who.
    pub who: String,
    /// The step's number and title; empty for the whole job.
    pub step: String,
    /// What happened, with value, unit and tool.
    pub what: String,
    /// It was taken back later.
    pub taken_back: bool,
    /// Remarks on it, oldest first.
    pub remarks: Vec<String>,
}

/// A stretch of the record, newest first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Journal {
    /// The lines.
    pub lines: Vec<Line>,
    /// How many more there are before them.
    pub earlier: usize,
}

/// The newest `most` lines that `filter` and `step` let through, newest first.
pub fn journal(record: &Record, sheet: &Sheet, filter: Filter, step: Option<StepId>, most: usize) -> Journal {
    let mut back = BTreeSet::new();
    let mut remarks: BTreeMap<EntryId, Vec<String>> = BTreeMap::new();
    let mut journal = Journal::default();
    let titles: BTreeMap<StepId, (usize, &str)> = sheet
        .steps
        .iter()
        .zip(1..)
        .map(|(step, number)| (step.id, (number, step.title.as_str())))
        .collect();
    // From the end: what is said about a line always comes after it.
    for entry in record.entries().iter().rev() {
        match &entry.event {
            Event::TakenBack { entry } => drop(back.insert(*entry)),
            Event::Noted {
                about: Some(about),
                words,
            } => {
                remarks
                    .entry(*about)
                    .or_default()
                    .insert(0, signed(words, &entry.who));
            }
            _ => {}
        }
        if !filter.takes(&entry.event) || step.is_some_and(|step| entry.step != Some(step)) {
            continue;
        }
        if journal.lines.len() >= most {
            journal.earlier += 1;
            continue;
        }
        journal.lines.push(Line {
            id: entry.id,
            at: entry.at,
            who: entry.who.clone(),
            step: entry.step.map_or(String::new(), |id| match titles.get(&id) {
                Some((number, title)) => format!("{number} {title}"),
                None => "a step no longer in the plan".to_owned(),
            }),
            what: words(entry),
            taken_back: back.contains(&entry.id),
            remarks: remarks.get(&entry.id).cloned().unwrap_or_default(),
        });
    }
    journal
}

fn signed(words: &str, who: &str) -> String {
    if who.is_empty() {
        words.to_owned()
    } else {
        format!("{words} ({who})")
    }
}

/// An entry in words.
pub fn words(entry: &Entry) -> String {
    match &entry.event {
        Event::Acknowledged { words, .. } => format!("caution acknowledged: {words}"),
        Event::Tallied {
            pass,
            place,
            value,
            unit,
            tool,
        } => {
            let with = if tool.is_empty() {
                String::new()
            } else {
                format!(" with {tool}")
            };
            format!("bolt {}, pass {}: {value} {unit}{with}", place + 1, pass + 1)
        }
        Event::Applied { compound, .. } => format!("{compound} put on, clock started"),
        Event::Measured {
            name,
            value,
            unit,
            tool,
            verdict,
            at_c,
        } => {
            let with = if tool.is_empty() {
                String::new()
            } else {
                format!(", {tool}")
            };
            let at = at_c.map_or(String::new(), |at| format!(", at {at} °C"));
            let value = format!("{value} {unit}");
            format!("{name}: {}{with}{at}: {verdict}", value.trim_end())
        }
        Event::Felt { what, tight_at } if tight_at.is_empty() => format!("{what}: spins freely"),
        Event::Felt { what, tight_at } => format!("{what}: tight {tight_at}"),
        Event::Placed {
            name,
            place,
            here,
            of,
            ..
        } => format!("{name}: {}, {here} of {of} counted", place.words()),
        Event::Done { summary } if summary.is_empty() => "step done".to_owned(),
        Event::Done { summary } => format!("step done: {summary}"),
        Event::Skipped { reason } => format!("step left out: {reason}"),
        Event::Overridden { reason } => format!("opened by hand: {reason}"),
        Event::TakenBack { entry } => format!("entry {} taken back", entry.0 + 1),
        Event::Noted {
            about: Some(about),
            words,
        } => format!("on entry {}: {words}", about.0 + 1),
        Event::Noted { about: None, words } => words.clone(),
        Event::JobClosed => "job closed".to_owned(),
    }
}

/// A line of the printed torque table.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueRow {
    /// The step's number and title.
    pub step: String,
    /// "8 × M8, 8.8".
    pub fastener: String,
    /// What the manual says.
    pub manual: String,
    /// What was set, with its tool: every different setting of the last pass once.
    pub set: String,
    /// "24 of 24".
    pub tallied: String,
    /// When the last one was done.
    pub at: Option<Moment>,
    /// Who did them.
    pub who: String,
}

/// The torque table of the printed sheet, every fasten step once.
pub fn torque_table(record: &Record, sheet: &Sheet) -> Vec<TorqueRow> {
    let mut tallies: BTreeMap<StepId, Vec<&Entry>> = BTreeMap::new();
    for entry in record.standing() {
        if let (Some(step), Event::Tallied { .. }) = (entry.step, &entry.event) {
            tallies.entry(step).or_default().push(entry);
        }
    }
    let fasten_steps = sheet
        .steps
        .iter()
        .zip(1..)
        .filter_map(|(step, number)| match &step.work {
            super::kinds::Work::Fasten(fasten) => Some((step, number, fasten)),
            _ => None,
        });
    fasten_steps
        .map(|(step, number, fasten)| {
            let done = tallies.get(&step.id).map(Vec::as_slice).unwrap_or_default();
            let last_pass = fasten.pass_count().saturating_sub(1);
            let set = done.iter().filter_map(|entry| match &entry.event {
                Event::Tallied {
                    pass,
                    value,
                    unit,
                    tool,
                    ..
                } if *pass == last_pass => Some(format!("{value} {unit} {tool}").trim_end().to_owned()),
                _ => None,
            });
            TorqueRow {
                step: format!("{number} {}", step.title),
                fastener: format!(
                    "{} × {}",
                    fasten.layout.count(),
                    super::kinds::fasten::size_words(fasten)
                ),
                manual: fasten.torque.text(),
                set: each_once(set),
                tallied: format!("{} of {}", done.len(), fasten.tally_count()),
                at: done.last().map(|entry| entry.at),
                who: each_once(done.iter().map(|entry| entry.who.clone())),
            }
        })
        .collect()
}

/// Compounds of the printed sheet: what went on where, and when.
pub fn compounds<'a>(record: &'a Record, clocks: &'a [CureClock]) -> Vec<(String, String, Moment)> {
    record
        .standing()
        .filter_map(|entry| match &entry.event {
            Event::Applied { compound, clock } => {
                let joint = clocks
                    .iter()
                    .find(|own| own.id == *clock)
                    .map_or("", |own| own.name.as_str());
                Some((joint.to_owned(), compound.clone(), entry.at))
            }
            _ => None,
        })
        .collect()
}

fn each_once(words: impl Iterator<Item = String>) -> String {
    let mut seen: Vec<String> = Vec::new();
    for word in words.filter(|word| !word.is_empty()) {
        if !seen.contains(&word) {
            seen.push(word);
        }
    }
    seen.join(", ")
}
