//! The strings of `strings.rs` through tables, the calendar, the store, a backup and addresses.

use super::chance::Chance;
use super::commands::with_bench;
use super::strings::{full, leaves, sentence, short, strings};
use halfcase::bench::{Bench, Incoming, Intent};
use halfcase::job::example;
use halfcase::job::fasteners;
use halfcase::job::field::Entry;
use halfcase::job::form;
use halfcase::job::journal::words;
use halfcase::job::keep::Shelves;
use halfcase::job::parts::{self, PartPlace};
use halfcase::job::search::{Query, found, gather};
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::job::state::Now;
use halfcase::job::{csv, json};
use halfcase::screens::route::Route;
use halfcase::trade::application::{Application, Face, JointKind};
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use serde_json::Value;
use std::collections::BTreeMap;
use std::rc::Rc;

/// A reader of its own for what is written: commas, quotes, doubled quotes.
fn cells(text: &str) -> Vec<String> {
    let (mut all, mut cell, mut quoted) = (Vec::new(), String::new(), false);
    let mut left = text.chars().peekable();
    while let Some(c) = left.next() {
        match c {
            '"' if quoted && left.peek() == Some(&'"') => cell.extend(left.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => all.push(std::mem::take(&mut cell)),
            '\r' if !quoted && left.peek() == Some(&'\n') => {
                left.next();
                all.push(std::mem::take(&mut cell));
            }
            c => cell.push(c),
        }
    }
    assert!(!quoted && cell.is_empty());
    all
}

/// Cells that begin like this are formulas, in some languages in full width too (OWASP, "CSV Injection").
fn is_formula(cell: &str) -> bool {
    cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])
        && cell.parse::<f64>().is_err()
}

/// The words of a fastener as a table and back, and no cell of it a formula.
#[test]
fn a_table_of_them_comes_back_and_has_no_formula() {
    let fastened = || full().into_iter().filter(Step::fastens);
    let mut handed_out = 0;
    for string in strings(90) {
        for mut step in fastened().step_by(5) {
            let sheet = Sheet::new("Plan", vec![step.clone()]);
            let paths: Vec<String> = form::fields(&sheet, &step)
                .into_iter()
                .filter(|field| field.entry == Entry::Words)
                .map(|field| field.id)
                .collect();
            for path in paths {
                drop(form::set(&sheet, &mut step, &path, &string));
            }
            let sheet = Sheet::new("Plan", vec![step]);
            let text = fasteners::write(&sheet);
            let formula = cells(&text).into_iter().find(|cell| is_formula(cell));
            assert_eq!(formula, None, "{:?}", short(&string));
            let read = fasteners::read(&text, StepId(1));
            let read = read.unwrap_or_else(|why| panic!("{:?}: {why}\n{text}", short(&string)));
            let again = Sheet::new("Plan", read);
            assert_eq!(fasteners::write(&again), text, "{:?}", short(&string));
            assert_eq!(again.steps[0].title, sheet.steps[0].title);
            assert_eq!(again.steps[0].notes, sheet.steps[0].notes);
            handed_out += 1;
        }
    }
    println!("{handed_out} tables handed out and read again");
}

/// In the place of any cell of a table that comes in, and as the whole of it.
#[test]
fn a_table_that_comes_in_is_read_or_refused_by_its_line() {
    let table = csv::read(&fasteners::write(&example::sheet())).unwrap();
    let table: Vec<Vec<String>> = table.into_iter().map(|row| row.cells).collect();
    let mut chance = Chance::new(3);
    let (mut taken, mut refused) = (0, 0);
    for string in strings(90) {
        for _ in 0..6 {
            let mut table = table.clone();
            let row = chance.below(table.len());
            let cell = chance.below(table[row].len());
            table[row][cell].clone_from(&string);
            let raw = table.iter().map(|row| row.join("\t") + "\n").collect::<String>();
            for text in [csv::write(&table), raw, string.clone()] {
                match fasteners::read(&text, StepId(1)) {
                    Ok(steps) => {
                        taken += 1;
                        let sheet = Sheet::new("Plan", steps);
                        let again = fasteners::read(&fasteners::write(&sheet), StepId(1));
                        assert_eq!(again.as_ref(), Ok(&sheet.steps), "{:?}", short(&string));
                    }
                    Err(why) => {
                        refused += 1;
                        sentence(&why.to_string(), &string);
                    }
                }
            }
        }
    }
    println!("{taken} tables taken, {refused} refused");
    assert!(taken > 100 && refused > 100);
}

/// Everything that has words on a bench, all of them that one.
fn fill(bench: Bench, string: &str) {
    let words = || string.to_owned();
    let told = |outcome: Result<(), halfcase::bench::Refused>| {
        if let Err(why) = outcome {
            sentence(&why.to_string(), string);
        }
    };
    bench.name_machine(string);
    told(bench.rename_job(bench.job.get_untracked(), string));
    told(bench.edit_step(StepId(1), "title", string));
    told(bench.edit_step(StepId(1), "notes", string));
    told(bench.edit_step(StepId(2), "reading/1/name", string));
    told(bench.add_remark(None, string));
    let step = StepId(3);
    told(bench.send(Intent::Skip {
        step,
        reason: words(),
    }));
    let step = StepId(21);
    told(bench.send(Intent::Override {
        step,
        reason: words(),
    }));
    bench.feel(StepId(13), string);
    let mut joint = Application::new(JointKind::Stud);
    joint.face = Some(Face::SteelOrIron);
    told(bench.send(Intent::PutOnFree {
        name: words(),
        joint: Box::new(joint),
        activator: false,
    }));
    bench.set("words", |settings| {
        settings.initials = words();
        settings.torque_typed = words();
        if let Some(wrench) = settings.wrenches.first_mut() {
            wrench.name = words();
        }
    });
    let part = untrack(|| {
        bench
            .sheet
            .with(|sheet| bench.progress.with(|all| parts::list(sheet, all)))
    });
    if let Some(part) = part.first() {
        bench.place_part(part, PartPlace::Bag(words()), 1);
    }
    drop(bench.begin_empty(string));
}

fn whole(bench: Bench) -> (Vec<(String, u32, String)>, Vec<String>) {
    let texts = bench.backup_text();
    let file: Value = serde_json::from_str(&texts).unwrap();
    let things = file["things"].as_object().unwrap();
    let texts = things
        .iter()
        .filter(|(name, _)| *name != "watch")
        .map(|(name, thing)| (name.clone(), 1, thing["data"].to_string()))
        .collect();
    let said = bench
        .said
        .get_untracked()
        .into_iter()
        .map(|said| said.words)
        .collect();
    (texts, said)
}

/// Through the bench, its record and calendar, its store and its backup, and back onto a fresh one.
#[test]
fn a_bench_of_them_is_kept_backed_up_and_taken_in_whole() {
    for string in strings(60) {
        let given = short(&string);
        let (old, new) = (Rc::new(MemoryStore::default()), Rc::new(MemoryStore::default()));
        let (text, was) = with_bench(&old, |bench| {
            fill(bench, &string);
            for said in bench.said.get_untracked() {
                sentence(&said.words, &string);
            }
            let sheet = bench.sheet.get_untracked();
            bench.record.with_untracked(|record| {
                record
                    .entries()
                    .iter()
                    .for_each(|entry| drop(words(entry, &sheet)))
            });
            check_calendar(&bench.calendar(None), &string);
            (bench.backup_text(), whole(bench).0)
        });
        // As the app finds it at the next start.
        let left = Shelves::new(Shelf::new(old.clone()), None).read();
        assert_eq!(left.said, [], "{given:?}");
        let now = Now::utc(Moment(1_780_300_800_000));
        let query = Query::read(&string, now.day);
        let hits = gather(&left.state, |at| Now::utc(at).day);
        found(&hits, &query).for_each(|hit| drop(hit.key()));
        with_bench(&old, |bench| assert_eq!(whole(bench).0, was, "{given:?}"));
        new.set("halfcase/none", "").unwrap();
        with_bench(&new, |bench| {
            let Ok(Incoming::Backup(mut restore)) = bench.read_file(&text) else {
                panic!("{given:?}: its own backup is refused");
            };
            restore.take_settings = true;
            assert!(bench.restore(&restore).is_some(), "{given:?}");
            let is: BTreeMap<_, _> = whole(bench)
                .0
                .into_iter()
                .map(|thing| (thing.0, thing.2))
                .collect();
            for (name, _, text) in was {
                if name != "jobs" {
                    assert_eq!(is.get(&name), Some(&text), "{given:?}: {name}");
                }
            }
        });
    }
}

/// Read by a stranger: as many events as there are alarms, each with its own name and nothing beside it.
fn check_calendar(file: &str, string: &str) {
    let given = short(string);
    assert!(
        file.split("\r\n")
            .all(|line| line.len() <= 75 && !line.contains(['\r', '\n'])),
        "{given:?}"
    );
    let calendar: icalendar::Calendar = file.parse().unwrap_or_else(|why| panic!("{given:?}: {why}"));
    let begun = file.split("\r\n").filter(|line| *line == "BEGIN:VEVENT").count();
    assert_eq!(calendar.events().count(), begun, "{given:?}");
    assert!((1..=6).contains(&begun), "{given:?}: {begun}");
}

/// In the place of any words of a backup, and damaged anywhere: read, or refused and nothing changed.
#[test]
fn a_backup_of_them_is_read_or_refused_and_changes_nothing() {
    let store = Rc::new(MemoryStore::default());
    let mut chance = Chance::new(4);
    let (mut taken, mut refused) = (0, 0);
    with_bench(&store, |bench| {
        fill(bench, "usual");
        let text = bench.backup_text();
        let kept = store.texts.borrow().clone();
        for string in strings(90) {
            let mut value: Value = serde_json::from_str(&text).unwrap();
            let mut all = Vec::new();
            leaves(
                &mut value,
                |value| value.is_string() || value.is_number(),
                &mut all,
            );
            let at = chance.below(all.len());
            *all[at] = Value::from(string.as_str());
            let in_place = value.to_string();
            let quoted = json::write(string.as_str()).unwrap();
            let cut = in_place
                .chars()
                .take(chance.below(text.len()))
                .collect::<String>();
            let named = text.replacen("\"clocks\"", &quoted, 1);
            for text in [in_place, cut, named, string.clone()] {
                match bench.read_file(&text) {
                    Ok(_) => taken += 1,
                    Err(why) => {
                        refused += 1;
                        sentence(&why, &string);
                    }
                }
            }
        }
        assert_eq!(*store.texts.borrow(), kept);
    });
    println!("{taken} backups read, {refused} refused");
    assert!(taken > 50 && refused > 50);
}

/// An address leads somewhere, and that place's own address leads there again.
#[test]
fn every_address_leads_somewhere() {
    let places = [
        "", "step/", "plan/", "torque/", "bond/", "seat/", "lift/", "job/", "/",
    ];
    for string in strings(90) {
        for place in places {
            let route = Route::read(&format!("{place}{string}"));
            assert_eq!(Route::read(&route.address()), route, "{:?}", short(&string));
            assert!(!route.title().is_empty() && !route.screen().is_empty());
        }
    }
}
