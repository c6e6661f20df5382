//! Strings that no one means, through every field, file and address, and out again: nothing stops, what is
//! refused is said in a sentence and changes nothing, what is taken comes back as it was.
//!
//! `HALFCASE_FAULTS=3000 cargo test --test bench strings` tries more of them; `HALFCASE_SEED=n` others.

use super::chance::{Chance, told};
use halfcase::job::example;
use halfcase::job::field::{Entry, Shown};
use halfcase::job::form;
use halfcase::job::kinds::{LIST, Work, blank, fasten};
use halfcase::job::sheet::{Sheet, Step, StepId};
use serde_json::Value;
use std::collections::BTreeMap;

const PIECES: [&str; 52] = [
    "\0",
    "\u{1}\u{7}\u{8}",
    "\u{b}\u{c}\u{1b}[31m",
    "\u{7f}\u{85}\u{9f}",
    "\r",
    "\n",
    "\r\n\r\n",
    "\t",
    "\u{2028}\u{2029}",
    "\u{feff}",
    "\u{200b}\u{200d}\u{2060}",
    "\u{202e}txt.exe",
    "\u{2066}\u{2067}\u{2069}",
    "\u{61c}\u{200f}",
    "שלום עולם",
    "مرحبا",
    "👩\u{200d}🔧👨🏽\u{200d}🔧",
    "🏳\u{fe0f}\u{200d}🌈",
    "e\u{301}\u{302}\u{303}\u{304}",
    "Z̸̢͎a̶l̵g̷o̴",
    "İıßſΩK",
    "\u{fffd}\u{fffe}\u{10ffff}",
    "=1+1",
    "+1",
    "-1+1",
    "@SUM(A1)",
    "=HYPERLINK(\"http://x\";\"y\")",
    "＝1",
    "'=1",
    "''",
    "\"",
    "\"\"\"",
    "\\",
    "\\u0000",
    "\\ud800",
    ",;\t:",
    "</script><script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "--><!--",
    "${7*7}{{7*7}}%s%n",
    "../../etc/passwd",
    "%00%ff%2e",
    "1e999",
    "NaN",
    "-0",
    "inf",
    "4294967296",
    "18446744073709551616",
    "0x10",
    "1_000",
    "END:VEVENT\r\nBEGIN:VEVENT\r\nSUMMARY:x",
    "null",
];

/// A string that no one means.
fn string(chance: &mut Chance) -> String {
    let piece = |chance: &mut Chance| PIECES[chance.below(PIECES.len())].to_owned();
    match chance.below(10) {
        0 => " ".repeat(chance.below(4)),
        1 => piece(chance).repeat(1 + 10_000 / 5 / (1 + chance.below(9))),
        2 => (0..chance.below(40))
            .map(|_| char::from_u32(chance.below(0x11_0000) as u32).unwrap_or('x'))
            .collect(),
        3 => format!("M8 {} 20 N·m", piece(chance)),
        4 | 5 => piece(chance),
        _ => (0..=chance.below(4)).map(|_| piece(chance)).collect(),
    }
}

pub fn strings(otherwise: u64) -> Vec<String> {
    let mut chance = Chance::new(told("HALFCASE_SEED", 20_261_128));
    let mut all: Vec<String> = PIECES.iter().map(|piece| (*piece).to_owned()).collect();
    let more = told("HALFCASE_FAULTS", otherwise).saturating_sub(all.len() as u64);
    all.extend((0..more).map(|_| string(&mut chance)));
    all
}

pub fn short(string: &str) -> String {
    string.chars().take(60).collect()
}

/// A refusal that says what to do, and doesn't give a whole string back.
pub fn sentence(why: &str, string: &str) {
    let given = short(string);
    assert!(why.ends_with(['.', '!', '”']), "{given:?}: {why}");
    assert!(why.chars().count() < 900, "{given:?}: {} characters", why.len());
    let turned = |c: char| matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    let hidden = why.chars().find(|c| c.is_control() || turned(*c));
    assert_eq!(hidden, None, "{given:?}: {why:?}");
}

/// A step of every kind with lists, a joint, parts.
pub fn full() -> Vec<Step> {
    let one = |kind: &str| {
        let work = blank(kind).unwrap_or_else(|| Work::Fasten(fasten::begin("M8", "20 ± 2 N·m").unwrap()));
        Step::new(StepId(1), "New", work)
    };
    let mut steps: Vec<Step> = LIST.iter().map(|kind| one(kind.word)).collect();
    let examples = [example::sheet(), example::inch()];
    steps.extend(examples.into_iter().flat_map(|sheet| sheet.steps));
    let more = [
        ("Select", ["shim/add", "row/add", "select/trial"]),
        ("Check", ["reading/add", "bore/add", "bore/2/journal"]),
        ("Fasten", ["fasten/compound", "part/add", "part/add"]),
        ("Lift", ["lift/sling", "lift/under", "part/add"]),
    ];
    for (kind, presses) in more {
        let mut step = one(kind);
        let sheet = Sheet::new("Plan", vec![step.clone()]);
        presses
            .iter()
            .for_each(|path| form::set(&sheet, &mut step, path, "yes").unwrap());
        steps.push(step);
    }
    for step in &mut steps {
        step.waits_for.clear();
        step.before_skin.clear();
        if let Work::Run(run) = &mut step.work {
            run.torque_again = None;
        }
    }
    steps
}

/// What was taken is shown, and typed again as it is shown it is the same; no other words or numbers are.
fn nothing_else(sheet: &Sheet, before: &Step, after: &Step, field: &Shown, told: &str) {
    let typed = |entry: &Entry| matches!(entry, Entry::Words | Entry::Number { .. } | Entry::Torque);
    if !typed(&field.entry) {
        return;
    }
    // The line of stages and the stages one by one, and the torque they end at, say the same thing.
    let staged = |id: &str| id.starts_with("stage/") || ["fasten/stages", "fasten/torque"].contains(&id);
    let (was, is) = (form::fields(sheet, before), form::fields(sheet, after));
    for own in is.iter().filter(|own| typed(&own.entry)) {
        // A unit that is read here stands in the list of them.
        if own.id == field.id && own.id.ends_with("/other_unit") && own.value.is_empty() {
            continue;
        }
        if own.id == field.id {
            let mut again = after.clone();
            let outcome = form::set(sheet, &mut again, &own.id, &own.value);
            assert_eq!(outcome, Ok(()), "{told}, shown as {:?}", short(&own.value));
            assert_eq!(&again, after, "{told}, shown as {:?}", short(&own.value));
        } else if staged(&own.id) && staged(&field.id) {
            continue;
        } else if let Some(old) = was.iter().find(|old| old.id == own.id) {
            assert_eq!(old.value, own.value, "{told} changed {}", own.id);
        }
    }
}

/// Every field of the plan's table, by its path.
#[test]
fn every_field_takes_it_or_says_why() {
    let strings = strings(60);
    let (mut taken, mut refused) = (0, 0);
    let mut seen = BTreeMap::new();
    for step in full() {
        let sheet = Sheet::new("Plan", vec![step.clone()]);
        for field in form::fields(&sheet, &step) {
            // Each field once for each kind of work it comes up in.
            let name = (step.work.word(), field.id.clone());
            if field.entry == Entry::Head || seen.insert(name, ()).is_some() {
                continue;
            }
            for string in &strings {
                let mut changed = step.clone();
                let told = format!("{} of {} = {:?}", field.id, step.work.word(), short(string));
                match form::set(&sheet, &mut changed, &field.id, string) {
                    Ok(()) => {
                        taken += 1;
                        nothing_else(&sheet, &step, &changed, &field, &told);
                        let again = Sheet::new("Plan", vec![changed]);
                        if again.check_size().is_ok() {
                            let file = Sheet::from_json(&again.to_json());
                            assert_eq!(file.as_ref(), Ok(&again), "{told}");
                        }
                    }
                    Err(why) => {
                        refused += 1;
                        sentence(&why.to_string(), string);
                        assert_eq!(changed, step, "{told}");
                    }
                }
            }
        }
    }
    println!("{} fields: {taken} taken, {refused} refused", seen.len());
    assert!(taken > 1_000 && refused > 1_000);
}

pub type Fit = fn(&Value) -> bool;

/// Every place of a JSON value that fits, in order.
pub fn leaves<'a>(value: &'a mut Value, fit: Fit, all: &mut Vec<&'a mut Value>) {
    if fit(value) {
        all.push(value);
        return;
    }
    match value {
        Value::Array(list) => list.iter_mut().for_each(|value| leaves(value, fit, all)),
        Value::Object(map) => map.values_mut().for_each(|value| leaves(value, fit, all)),
        _ => {}
    }
}

fn files() -> [String; 2] {
    [example::sheet(), example::inch()].map(|sheet| sheet.to_json())
}

fn sheet_reads(text: &str, string: &str) -> bool {
    match Sheet::from_json(text) {
        Ok(sheet) => {
            let again = Sheet::from_json(&sheet.to_json());
            assert_eq!(again.as_ref(), Ok(&sheet), "{:?}", short(string));
            true
        }
        Err(why) => {
            sentence(&why.to_string(), string);
            false
        }
    }
}

/// In the place of any words of a job form.
#[test]
fn a_job_form_of_them_comes_back_or_is_refused() {
    let mut chance = Chance::new(2);
    let (mut taken, mut refused) = (0, 0);
    for string in strings(90) {
        for file in files() {
            for _ in 0..3 {
                let mut value: Value = serde_json::from_str(&file).unwrap();
                let mut all = Vec::new();
                leaves(&mut value, Value::is_string, &mut all);
                let at = chance.below(all.len());
                *all[at] = Value::from(string.as_str());
                match sheet_reads(&value.to_string(), &string) {
                    true => taken += 1,
                    false => refused += 1,
                }
            }
        }
    }
    println!("{taken} job forms taken, {refused} refused");
    assert!(taken > 100 && refused > 100);
}

/// In the place of any number, as a number; and escapes that are no character, in the place of any words.
#[test]
fn numbers_and_escapes_that_are_none_are_refused_or_come_back() {
    let numbers = [
        "1e999",
        "-1e999",
        "NaN",
        "-0",
        "-0.0",
        "4294967296",
        "18446744073709551616",
        "1e-400",
        "0.1e1",
        "9007199254740993",
        "-1",
        "00",
        "1.",
        "Infinity",
        "null",
        "\"1\"",
        "[]",
        "{}",
        "true",
    ];
    let escapes = [
        r#""\ud800""#,
        r#""\udfff\ud800""#,
        r#""\ud83d""#,
        r#""\ud83d\u0041""#,
        r#""\u0000""#,
        r#""\u12""#,
        r#""\x41""#,
        "\"\u{1}\"",
        r#""\ud83d\udd27""#,
    ];
    let (mut taken, mut refused) = (0, 0);
    let mut tried = |text: &str, what: &str| match sheet_reads(text, what) {
        true => taken += 1,
        false => refused += 1,
    };
    for file in files() {
        let kinds: [(Fit, &[&str]); 2] = [(Value::is_number, &numbers), (Value::is_string, &escapes)];
        for (fit, all) in kinds {
            let mut value: Value = serde_json::from_str(&file).unwrap();
            let mut places = Vec::new();
            leaves(&mut value, fit, &mut places);
            let count = places.len();
            for place in (0..count).step_by(3) {
                let mut value = value.clone();
                let mut places = Vec::new();
                leaves(&mut value, fit, &mut places);
                *places[place] = Value::from("HERE");
                let text = value.to_string();
                all.iter()
                    .for_each(|what| tried(&text.replacen("\"HERE\"", what, 1), what));
            }
        }
    }
    println!("{taken} with odd numbers and escapes taken, {refused} refused");
    assert!(taken > 20 && refused > 1_000);
}
