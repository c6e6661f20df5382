//! The record as it is read: one line an entry, remarks beside the line they are about.

use super::clock::CureClock;
use super::date::span_words;
use super::kinds::gauge;
use super::kinds::lift::{self, Hoist};
use super::kinds::seat;
use super::kinds::select;
use super::kinds::{Fasten, Work};
use super::progress::Progress;
use super::reading::{What, figure};
use super::readings;
use super::record::{Compound, Entry, EntryId, Event, Facts, Goal, PhoneClock, Record, SetTo, Setting};
use super::sheet::{Sheet, Step, StepId};
use super::tamper::{closed_words, jump_words};
use crate::trade::caution;
use crate::trade::moment::Moment;
use crate::trade::quantity::{Mass, ThermodynamicTemperature, fixed, shortest};
use std::collections::{BTreeMap, BTreeSet};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

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
    /// Steps closed, skipped, overridden; cautions.
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
            Event::Tallied { .. } | Event::WithoutWrench { .. } | Event::Loosened => Self::Torque,
            Event::Applied { .. } | Event::JointOpened => Self::Compound,
            Event::Measured { .. }
            | Event::Accepted { .. }
            | Event::Said { .. }
            | Event::Felt { .. }
            | Event::Coded { .. }
            | Event::Gauged(_)
            | Event::Chosen { .. } => Self::Reading,
            Event::Placed { .. } | Event::Judged { .. } | Event::Ordered { .. } | Event::NewOn { .. } => {
                Self::Parts
            }
            Event::Noted { .. } | Event::TakenBack { .. } | Event::PhoneClock(_) => Self::Remarks,
            Event::Acknowledged { .. }
            | Event::Done { .. }
            | Event::Skipped { .. }
            | Event::Reopened
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
    let mut rounds = rounds(record);
    let mut gaps = record.gaps();
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
        if entry.event == Event::Loosened && !back.contains(&entry.id) {
            let round = rounds.iter_mut().find(|(id, _)| Some(*id) == entry.step);
            round.into_iter().for_each(|(_, round)| *round -= 1);
        }
        let shown = filter.takes(&entry.event) && step.is_none_or(|step| entry.step == Some(step));
        let room = journal.lines.len() < most;
        if shown && !room {
            journal.earlier += 1;
        } else if shown {
            journal.lines.push(Line {
                id: entry.id,
                at: entry.at,
                who: entry.who.clone(),
                step: entry.step.map_or(String::new(), |id| match titles.get(&id) {
                    Some((number, title)) => format!("{number} {title}"),
                    None => "a step no longer in the plan".to_owned(),
                }),
                what: match &entry.event {
                    Event::Tallied { .. } => {
                        let round = rounds.iter().find(|(id, _)| Some(*id) == entry.step);
                        let time = time_words(round.map_or(1, |(_, round)| *round));
                        format!("{}{time}", words(entry, sheet))
                    }
                    _ => words(entry, sheet),
                },
                taken_back: back.contains(&entry.id),
                remarks: remarks.get(&entry.id).cloned().unwrap_or_default(),
            });
        }
        // Lines that are missing belong to no kind and no step: they are told in every list.
        let gap = gaps.pop_if(|(_, last)| last.0 + 1 == entry.id.0);
        journal.lines.extend(gap.filter(|_| room).map(|gap| Line {
            id: gap.1,
            at: entry.at,
            who: String::new(),
            step: String::new(),
            what: gap_words(gap),
            taken_back: false,
            remarks: remarks.get(&gap.1).cloned().unwrap_or_default(),
        }));
    }
    journal
}

/// What is said of lines that are missing; they are numbered from 1.
pub fn gap_words((first, last): (EntryId, EntryId)) -> String {
    let which = match last.0 - first.0 {
        0 => format!("Line {} is", first.0 + 1),
        _ => format!("Lines {} to {} are", first.0 + 1, last.0 + 1),
    };
    format!("{which} missing from the record: what was done there doesn’t count, look at it again.")
}

/// The round each fasten step that was loosened is in now, from 1.
fn rounds(record: &Record) -> Vec<(StepId, usize)> {
    let mut rounds: Vec<(StepId, usize)> = Vec::new();
    let loosened = record.standing().filter(|entry| entry.event == Event::Loosened);
    for id in loosened.filter_map(|entry| entry.step) {
        match rounds.iter_mut().find(|(own, _)| *own == id) {
            Some((_, round)) => *round += 1,
            None => rounds.push((id, 2)),
        }
    }
    rounds
}

/// ", second time"; nothing the first time.
pub fn time_words(round: usize) -> String {
    match round {
        0 | 1 => String::new(),
        2 => ", second time".to_owned(),
        3 => ", third time".to_owned(),
        more => format!(", {more}th time"),
    }
}

fn signed(words: &str, who: &str) -> String {
    if who.is_empty() {
        words.to_owned()
    } else {
        format!("{words} ({who})")
    }
}

/// A setting in figures: "86 in·lb", "60 °".
pub fn setting_words(to: SetTo) -> String {
    match to {
        SetTo::Torque {
            value,
            unit,
            decimals,
        } => format!("{} {}", fixed(value, decimals), unit.symbol()),
        SetTo::Turn(degrees) => format!("{} °", shortest(degrees)),
        SetTo::Hand => "snug by hand".to_owned(),
        SetTo::All(deed) => deed.done().to_owned(),
    }
}

/// A setting with its tool: "86 in·lb with Small".
pub fn set_words(set: &Setting) -> String {
    format!("{}{}", setting_words(set.to), set.with_words())
}

/// What went on, in words: "medium-strength threadlocker “shelf 2”".
pub fn compound_words(compound: &Compound) -> String {
    match compound {
        Compound::Class(class) => class.name().to_owned(),
        Compound::Bottle { class, name } => format!("{} “{name}”", class.name()),
        Compound::Words(words) => words.clone(),
    }
}

/// What was worked out when a step was closed, in words.
fn facts_words(facts: &Facts) -> String {
    match facts {
        Facts::Seat { seat, room_c } => {
            let room = room_c.map(ThermodynamicTemperature::new::<degree_celsius>);
            seat::recorded(seat, seat::answer(seat, room).ok().as_ref())
        }
        Facts::Lift {
            lift,
            rating_kg,
            boom,
        } => {
            let hoist = Hoist {
                boom,
                rating: rating_kg.map(Mass::new::<kilogram>),
            };
            lift::words::summary(lift, &lift::answer(lift, hoist), lift.told_in())
        }
    }
}

/// What a caution of that id says; its id where there is no such rule any more.
fn caution_words(id: &str) -> String {
    match caution::by_id(id) {
        Some(rule) => format!("{} {}", rule.danger, rule.act),
        None => id.to_owned(),
    }
}

/// What the fastener at that place of a step is called in the plan as it is now.
pub fn bolt_name(step: Option<&Step>, place: usize) -> String {
    match step.map(|step| &step.work) {
        Some(Work::Fasten(fasten)) => fasten.name(place),
        _ => (place + 1).to_string(),
    }
}

/// An entry in words, by its sheet as planned now.
pub fn words(entry: &Entry, sheet: &Sheet) -> String {
    let step = entry.step.and_then(|id| sheet.step(id));
    let also = |words: String| match entry.was.as_str() {
        "" => words,
        was => format!("{words}: {was}"),
    };
    match &entry.event {
        Event::Acknowledged { .. } if !entry.was.is_empty() => format!("caution acknowledged: {}", entry.was),
        Event::Acknowledged { caution } => format!("caution acknowledged: {}", caution_words(caution)),
        Event::Tallied {
            pass,
            place,
            set,
            goal,
        } => match set.to {
            SetTo::All(_) => format!("pass {}: {}", pass + 1, set_words(set)),
            SetTo::Torque { .. } | SetTo::Turn(_) | SetTo::Hand => {
                let still = match goal {
                    Some(Goal::Unmoved { .. }) => ", did not move",
                    _ => "",
                };
                format!(
                    "bolt {}, pass {}: {}{still}",
                    bolt_name(step, *place),
                    pass + 1,
                    set_words(set)
                )
            }
        },
        Event::WithoutWrench { instead } => {
            format!(
                "no wrench on the bench reaches it: tightened with {}",
                instead.words()
            )
        }
        Event::Loosened => "all loosened, to be torqued again".to_owned(),
        Event::Applied { compound, .. } => format!("{} put on, clock started", compound_words(compound)),
        Event::JointOpened => "The joint was opened again.".to_owned(),
        Event::Measured {
            what,
            value,
            unit,
            tool,
            verdict,
            at_c,
            decimals,
        } => {
            let with = if tool.is_empty() {
                String::new()
            } else {
                format!(", {tool}")
            };
            let at = at_c.map_or(String::new(), |at| format!(", at {} °C", shortest(at)));
            let worked = step.and_then(|step| readings::worked(step, what));
            let value = match worked.filter(|(_, limit)| limit.unit == *unit) {
                Some((_, limit)) => limit.figure(*value),
                None => format!("{} {unit}", figure(*value, *decimals)),
            };
            let read = format!("{}: {}{with}{at}", what.name(step), value.trim_end());
            let verdict = if entry.was.is_empty() {
                verdict.words()
            } else {
                entry.was.as_str()
            };
            format!("{read}: {verdict}")
        }
        Event::Accepted { what, reason, .. } => {
            let name = step.map_or_else(|| what.name(None), |step| what.judged_name(step));
            let found = match what {
                What::Turning => "tight spot",
                What::Part(_) => "not fit",
                What::Fact(fact) => fact.answers().1,
                What::Skin(_) => "skinned before this was done",
                What::Limit(_)
                | What::Radius(_)
                | What::Place { .. }
                | What::Depth
                | What::Gap
                | What::Running
                | What::Reached
                | What::ReachedAt(_)
                | What::Uses
                | What::Free(_)
                | What::Tight(_)
                | What::Stretch(_)
                | What::At(_)
                | What::Pack
                | What::Trial
                | What::TurnTight
                | What::TurnLoose
                | What::Widest
                | What::Narrow
                | What::PutIn
                | What::RanAt
                | What::RanFor
                | What::Named(_) => "outside limits",
            };
            format!("{name}: {found}, accepted: {reason}")
        }
        Event::Judged { part, unfit } => match (What::Part(*part).name(step), unfit.as_str()) {
            (name, "") => format!("{name}: a good one is in"),
            (name, unfit) => format!("{name}: not fit: {unfit}"),
        },
        Event::Ordered { what, part } => {
            let found = step.map_or_else(|| what.name(None), |step| what.judged_name(step));
            match (what, What::Part(*part).name(step)) {
                (What::Part(_), name) => format!("{name}: ordered"),
                (_, name) => format!("{name}: ordered for {found}"),
            }
        }
        Event::NewOn { part } => format!("{}: new ones are on", What::Part(*part).name(step)),
        Event::Said { fact, holds, words } => fact.words(step, *holds, words),
        Event::Felt { tight_at } => {
            let what = match step.map(|step| &step.work) {
                _ if !entry.was.is_empty() => entry.was.clone(),
                Some(Work::Turn(turn)) => turn.what.clone(),
                _ => String::new(),
            };
            if tight_at.is_empty() {
                format!("{what}: spins freely")
            } else {
                format!("{what}: tight {tight_at}")
            }
        }
        Event::Gauged(done) => gauge::words::done_words(*done),
        Event::Coded { down, across } => {
            let codes = match step.map(|step| &step.work) {
                Some(Work::Select(select)) => select.codes.as_ref(),
                _ => None,
            };
            select::words::code_words(codes, down, across)
        }
        Event::Chosen {
            round,
            pieces,
            unit,
            aim,
            leaves,
            verdict,
        } => select::words::chosen_words(*round, pieces, unit, (*aim, *leaves), *verdict),
        Event::Placed {
            part,
            place,
            here,
            of,
        } => {
            let name = match step.and_then(|step| super::parts::name(step, *part)) {
                Some(name) => name,
                None if entry.was.is_empty() => "a part no longer in the plan".to_owned(),
                None => entry.was.clone(),
            };
            format!("{name}: {}, {here} of {of} counted", place.words())
        }
        Event::Done { facts } => match facts.as_ref().map(facts_words).filter(|words| !words.is_empty()) {
            Some(facts) => format!("step done: {facts}"),
            None => also("step done".to_owned()),
        },
        Event::Skipped { reason } => format!("step skipped: {reason}"),
        Event::Reopened => "step opened again".to_owned(),
        Event::Overridden { reason } => format!("overridden: {reason}"),
        Event::TakenBack { entry } => format!("entry {} taken back", entry.0 + 1),
        Event::Noted {
            about: Some(about),
            words,
        } => format!("on entry {}: {words}", about.0 + 1),
        Event::Noted { about: None, words } => words.clone(),
        Event::PhoneClock(PhoneClock::Jumped(ahead_ms)) => {
            format!("{} Cures are held.", jump_words(*ahead_ms))
        }
        Event::PhoneClock(PhoneClock::Closed(ahead_ms)) => {
            format!("{} Cures are held.", closed_words(*ahead_ms))
        }
        Event::PhoneClock(PhoneClock::WrongBefore(ahead_ms)) => format!(
            "The phone’s clock was said to have been {} {} before: the clocks of what cures are moved.",
            span_words(*ahead_ms),
            if *ahead_ms >= 0 { "slow" } else { "fast" }
        ),
        Event::PhoneClock(PhoneClock::InStep) => "The phone’s clock is in step again.".to_owned(),
        Event::PhoneClock(PhoneClock::Right) => "The phone’s clock was said to be right.".to_owned(),
        Event::PhoneClock(PhoneClock::Wrong) => {
            "The phone’s clock was said to be wrong: cures go on by the time held here.".to_owned()
        }
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
    /// Where the manual has stages, each with what was set in it: "snug to 10 N·m: 89 in·lb Small".
    pub stages: Vec<String>,
    /// "24 of 24".
    pub tallied: String,
    /// When the last one was done.
    pub at: Option<Moment>,
    /// Who did them.
    pub who: String,
}

/// The torque table of the printed sheet, every fasten step once.
pub fn torque_table(record: &Record, sheet: &Sheet) -> Vec<TorqueRow> {
    // Round by round: what was done before they were last loosened holds no more, and stands beside it.
    let mut rounds: BTreeMap<StepId, Vec<Vec<&Entry>>> = BTreeMap::new();
    for entry in record.standing() {
        let Some(step) = entry.step else { continue };
        match &entry.event {
            Event::Tallied { .. } => {
                let of_step = rounds.entry(step).or_insert_with(|| vec![Vec::new()]);
                of_step.last_mut().into_iter().for_each(|round| round.push(entry));
            }
            Event::Loosened => rounds
                .entry(step)
                .or_insert_with(|| vec![Vec::new()])
                .push(Vec::new()),
            _ => {}
        }
    }
    let progress = Progress::of(record);
    let fasten_steps = sheet
        .steps
        .iter()
        .zip(1..)
        .filter_map(|(step, number)| match &step.work {
            Work::Fasten(fasten) => Some((step, number, fasten)),
            _ => None,
        });
    fasten_steps
        .flat_map(|(step, number, fasten)| {
            let stands = progress.step(step.id).tallied(fasten);
            let all = rounds.remove(&step.id).unwrap_or_default();
            let (last, before) = all
                .split_last()
                .map_or((Vec::new(), [].as_slice()), |(last, before)| {
                    (last.clone(), before)
                });
            let rows = before.iter().zip(1..).filter(|(done, _)| !done.is_empty());
            let mut rows: Vec<TorqueRow> = rows
                .map(|(done, round)| {
                    let time = time_words(round);
                    let time = if time.is_empty() {
                        ", first time"
                    } else {
                        time.as_str()
                    };
                    TorqueRow {
                        step: format!("{number} {}{time}", step.title),
                        tallied: format!("{} of {}, then loosened", done.len(), fasten.tally_count()),
                        ..torque_row(fasten, done)
                    }
                })
                .collect();
            let holds = |entry: &&&Entry| match entry.event {
                Event::Tallied { pass, place, .. } => stands.contains(&(pass, place)),
                _ => false,
            };
            let held: Vec<&Entry> = last.iter().filter(holds).copied().collect();
            rows.push(TorqueRow {
                step: format!("{number} {}{}", step.title, time_words(before.len() + 1)),
                tallied: format!("{} of {}", stands.len(), fasten.tally_count()),
                at: last.last().map(|entry| entry.at),
                who: each_once(last.iter().map(|entry| entry.who.clone())),
                ..torque_row(fasten, &held)
            });
            rows
        })
        .collect()
}

/// What was done in one round: every different setting of the last pass once, and of each stage.
fn torque_row(fasten: &Fasten, done: &[&Entry]) -> TorqueRow {
    let stages = fasten.stages.iter().enumerate();
    TorqueRow {
        step: String::new(),
        fastener: format!(
            "{} × {}",
            fasten.layout.count(),
            super::kinds::fasten::size_words(fasten)
        ),
        manual: fasten.manual_words(),
        set: settings(done, fasten.pass_count().saturating_sub(1)),
        stages: stages
            .map(|(pass, stage)| match settings(done, pass).as_str() {
                "" => format!("{}: open", stage.text()),
                set => format!("{}: {set}", stage.text()),
            })
            .collect(),
        tallied: String::new(),
        at: done.last().map(|entry| entry.at),
        who: each_once(done.iter().map(|entry| entry.who.clone())),
    }
}

/// Every different setting of that pass once.
fn settings(done: &[&Entry], wanted: usize) -> String {
    each_once(done.iter().filter_map(|entry| match &entry.event {
        Event::Tallied { pass, set, .. } if *pass == wanted => {
            let adapter = if set.adapter { " with an adapter" } else { "" };
            let tool = match &set.instead {
                Some(instead) => instead.words(),
                None => set.tool.as_str(),
            };
            Some(
                format!("{} {tool}{adapter}", setting_words(set.to))
                    .trim_end()
                    .to_owned(),
            )
        }
        _ => None,
    }))
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
                Some((joint.to_owned(), compound_words(compound), entry.at))
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
