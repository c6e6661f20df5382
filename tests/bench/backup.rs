//! The whole bench out as one file and in again, on a fresh phone or beside what is there.

use super::commands::{apply, done_step, read, step, with_bench};
use halfcase::bench::{Incoming, Intent, Judged, Restore};
use halfcase::job::backup::Fate;
use halfcase::job::keep::Shelves;
use halfcase::job::sheet::{JobId, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, Store, Write};
use reactive_graph::prelude::*;
use std::collections::BTreeMap;
use std::rc::Rc;

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

/// Every stored record segment without its head line, by name: the bytes that matter.
fn records(store: &MemoryStore) -> BTreeMap<String, String> {
    let mut newest: BTreeMap<String, (u64, String)> = BTreeMap::new();
    for key in store.keys().into_iter().filter(|key| key.contains("/record/")) {
        let text = store.get(&key).unwrap();
        let (head, data) = text.split_once('\n').unwrap();
        let sequence = head.split(' ').nth(1).unwrap().parse().unwrap();
        let name = key.rsplit_once('/').unwrap().0.to_owned();
        if newest.get(&name).is_none_or(|(old, _)| *old < sequence) {
            newest.insert(name, (sequence, data.to_owned()));
        }
    }
    newest.into_iter().map(|(name, (_, data))| (name, data)).collect()
}

fn restore_of(bench: halfcase::bench::Bench, text: &str) -> Restore {
    match bench.read_file(text) {
        Ok(Incoming::Backup(restore)) => *restore,
        Ok(_) => panic!("not a backup"),
        Err(words) => panic!("{words}"),
    }
}

/// Something put into the store past the bench.
fn put(store: &Rc<MemoryStore>, name: &str, text: &str) {
    let write = Write {
        name: name.to_owned(),
        version: 1,
        text: Some(text.to_owned()),
    };
    Shelf::new(store.clone()).keep(&[write]).unwrap();
}

/// Two jobs, one with a record over a segment's length, a clock, a changed setting.
fn full(store: &Rc<MemoryStore>) -> String {
    with_bench(store, |bench| {
        done_step(bench, 1);
        let baffle = step(bench, 4);
        apply(bench, &baffle).unwrap();
        bench.send(Intent::Tally(baffle.id)).unwrap();
        for n in 0..210 {
            read(bench, 61.96 + f64::from(n) / 1000.0);
        }
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(500.0));
        bench.begin_empty("Side cover").unwrap();
        bench.take_job(JobId(1)).unwrap();
        bench.backup_text()
    })
}

#[test]
fn on_a_fresh_phone_the_record_is_equal_to_the_byte() {
    let (old, new) = (store(), store());
    let text = full(&old);
    let sheet_and_clocks =
        |bench: halfcase::bench::Bench| (bench.sheet.get_untracked(), bench.clocks.get_untracked());
    let was = with_bench(&old, sheet_and_clocks);
    with_bench(&new, |bench| {
        let restore = restore_of(bench, &text);
        assert!(restore.take_settings);
        let fates: Vec<Fate> = restore.changes.iter().map(|change| change.fate).collect();
        assert_eq!(fates, [Fate::Longer { more: 213 }, Fate::New]);
        assert_eq!(bench.restore(&restore), Some(2));
        assert_eq!(sheet_and_clocks(bench), was);
        assert_eq!(bench.settings.with_untracked(|s| s.hoist_kg), Some(500.0));
    });
    assert_eq!(records(&new), records(&old));
    assert!(records(&new).len() >= 2);
    // And the next entry goes on from there.
    with_bench(&new, |bench| {
        read(bench, 61.97);
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 214);
    });
}

#[test]
fn a_preview_changes_nothing_and_undo_puts_everything_back() {
    let (old, new) = (store(), store());
    let text = full(&old);
    with_bench(&new, |bench| {
        bench.note_shop(12.0);
        done_step(bench, 3);
        let before = (
            bench.sheet.get_untracked(),
            bench.record.get_untracked(),
            bench.settings.get_untracked(),
        );
        let kept = new.texts.borrow().clone();
        let restore = restore_of(bench, &text);
        assert_eq!(*new.texts.borrow(), kept, "a preview keeps nothing");
        assert!(
            !restore.take_settings,
            "settings of one's own stay unless the user says otherwise"
        );
        // Both benches have a job 1 with a record of its own.
        assert_eq!(restore.changes[0].fate, Fate::Beside);
        bench.restore(&restore);
        assert_eq!(bench.jobs.with_untracked(Vec::len), 3);
        bench.undo().unwrap();
        let after = (
            bench.sheet.get_untracked(),
            bench.record.get_untracked(),
            bench.settings.get_untracked(),
        );
        assert_eq!(after, before);
        assert_eq!(bench.jobs.with_untracked(Vec::len), 1);
    });
}

#[test]
fn taken_in_twice_nothing_doubles() {
    let (old, new) = (store(), store());
    let text = full(&old);
    with_bench(&new, |bench| {
        bench.restore(&restore_of(bench, &text));
        let again = restore_of(bench, &text);
        assert!(
            again.changes.iter().all(|change| change.fate == Fate::Same),
            "{:?}",
            again.changes
        );
        assert_eq!(bench.restore(&again), Some(0));
        assert_eq!(bench.jobs.with_untracked(Vec::len), 2);
        assert_eq!(bench.clocks.with_untracked(Vec::len), 1);
    });
}

#[test]
fn a_full_phone_keeps_what_it_had() {
    let old = store();
    let text = full(&old);
    let new = Rc::new(MemoryStore {
        room: Some(30_000),
        ..MemoryStore::default()
    });
    with_bench(&new, |bench| {
        done_step(bench, 1);
        let record = bench.record.get_untracked();
        let restore = restore_of(bench, &text);
        assert_eq!(bench.restore(&restore), None);
        assert_eq!(bench.record.get_untracked(), record);
        assert!(
            bench
                .said
                .with_untracked(|said| said.iter().any(|said| said.trouble))
        );
    });
    with_bench(&new, |bench| {
        assert!(bench.progress.with_untracked(|p| p.closed(StepId(1))))
    });
}

#[test]
fn a_wrong_file_says_which_line_and_what_and_changes_nothing() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        let kept = store.texts.borrow().clone();
        let refusal = |text: &str| bench.read_file(text).err().unwrap();
        assert_eq!(
            refusal("{\n\"version\": 1,\n]"),
            "Line 3 is not a job sheet: key must be a string."
        );
        assert!(
            refusal("{\"form\":\"halfcase backup\"}").starts_with("Line 1 is not a backup: missing field")
        );
        assert_eq!(
            refusal(r#"{"form":"halfcase backup","version":9,"made_ms":0,"things":{}}"#),
            "A newer release made this backup: update the app first. Nothing was changed."
        );
        assert_eq!(
            refusal(r#"{"form":"halfcase backup","version":1,"made_ms":0,"things":{}}"#),
            "The backup holds no jobs. Nothing was changed."
        );
        let torn = r#"{"form":"halfcase backup","version":1,"made_ms":0,"things":{
            "jobs":{"version":1,"data":{"at_hand":1,"heads":[{"id":1,"title":"x"}]}},
            "job/1":{"version":1,"data":{"title":"x"}}}}"#;
        assert!(refusal(torn).starts_with("In the backup, “job/1” can’t be read: missing field"));
        let nested = torn.replace(
            r#""data":{"title":"x"}"#,
            r#""data":{"version":1,"title":"x","steps":[{"id":1,"title":"y","work":{"lift":{"mass_kg":"heavy"}}}]}"#,
        );
        assert_eq!(
            refusal(&nested),
            "In the backup, “job/1” can’t be read: steps, 1st, work, lift, mass_kg: a number is needed here, \
             not \"heavy\". Nothing was changed."
        );
        assert!(refusal("thread,torque\nM6,nine").starts_with("Line 2, torque: "));
        assert_eq!(*store.texts.borrow(), kept);
    });
}

#[test]
fn what_other_parts_of_the_app_keep_comes_along() {
    let (old, new) = (store(), store());
    full(&old);
    put(&old, "pictures", r#"["case, from above"]"#);
    let text = with_bench(&old, |bench| bench.backup_text());
    with_bench(&new, |bench| {
        bench.restore(&restore_of(bench, &text));
    });
    let there = Shelf::new(new).text("pictures").unwrap();
    assert_eq!(there, (1, r#"["case, from above"]"#.to_owned()));
}

#[test]
fn a_job_taken_in_leaves_nothing_of_what_had_its_number() {
    let (old, new) = (store(), store());
    let text = full(&old);
    // A record whose job nobody knows any more, longer than the one that comes.
    let stray = || {
        put(
            &new,
            "record/1/0004",
            r#"[{"id":900,"at":0,"event":"job_closed"}]"#,
        )
    };
    stray();
    with_bench(&new, |bench| bench.begin_empty("Other").map(drop)).unwrap();
    with_bench(&new, |bench| {
        bench.begin_empty("Another").unwrap();
        bench.delete_job(JobId(1)).unwrap();
        bench.free_deleted();
    });
    stray();
    with_bench(&new, |bench| {
        bench.restore(&restore_of(bench, &text)).unwrap();
        let closed = bench.sheet_of(JobId(1)).is_some()
            && bench.take_job(JobId(1)).is_ok()
            && bench
                .progress
                .with_untracked(|progress| progress.job_closed.is_some());
        assert!(!closed, "another job's last line has come along");
    });
}

#[test]
fn undo_of_a_backup_keeps_the_watch_over_the_phones_clock() {
    let (old, new) = (store(), store());
    let text = full(&old);
    let watched = || new.keys().iter().any(|key| key.starts_with("halfcase/watch/"));
    with_bench(&new, |bench| {
        bench.watch_clock(|| 0.0);
        bench.tick();
        done_step(bench, 1);
        bench.silence_all();
        bench.judge_clock(Judged::Right);
        assert!(watched());
        bench.restore(&restore_of(bench, &text));
        bench.undo().unwrap();
        assert!(watched());
    });
}

#[test]
fn a_lost_sheet_is_no_example_and_its_backup_costs_no_later_line_of_the_record() {
    let store = store();
    let (two, text) = with_bench(&store, |bench| {
        let two = bench.duplicate_job(JobId(1)).unwrap();
        done_step(bench, 1);
        let text = bench.backup_text();
        read(bench, 61.98);
        (two, text)
    });
    let damage = || {
        let name = format!("halfcase/job/{}/", two.0);
        for key in store.keys().iter().filter(|key| key.starts_with(&name)) {
            store.set(key, "nonsense").unwrap();
        }
    };
    damage();
    with_bench(&store, |bench| {
        let sheet = bench.sheet.get_untracked();
        assert!(sheet.title.ends_with("afresh") && sheet.steps.is_empty());
        // What is left of it can be had.
        assert!(bench.rescued_text().unwrap().contains("nonsense"));
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 2);
        bench.take_job(JobId(1)).unwrap();
    });
    damage();
    with_bench(&store, |bench| {
        assert!(
            bench.take_job(two).is_err(),
            "a sheet that is lost is not taken to hand"
        );
        bench.restore(&restore_of(bench, &text)).unwrap();
        bench.take_job(two).unwrap();
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 2);
        assert!(!bench.sheet.with_untracked(|sheet| sheet.steps.is_empty()));
    });
}

#[test]
fn a_backup_of_form_1_brings_everything_it_held() {
    let text = include_str!("../fixtures/form-1/backup.json");
    let kept = include_str!("../fixtures/form-1/store.json");
    let (old, new) = (store(), store());
    *old.texts.borrow_mut() = serde_json::from_str(kept).unwrap();
    let was = Shelves::new(Shelf::new(old), None).read().state;
    with_bench(&new, |bench| {
        let restore = restore_of(bench, text);
        assert!(restore.take_settings);
        assert_eq!(bench.restore(&restore), Some(3));
    });
    let is = Shelves::new(Shelf::new(new), None).read().state;
    for id in [JobId(1), JobId(2), JobId(3)] {
        assert!(was.files[&id] == is.files[&id], "job {} is another", id.0);
    }
    assert_eq!(was.settings, is.settings);
    assert_eq!(was.clocks, is.clocks);
}

/// With less and less room: refused or taken, nothing that was there is gone.
#[test]
fn a_backup_refused_for_lack_of_room_erases_nothing() {
    let text = full(&store());
    let mut refused = 0;
    for room in (36_000..140_000).step_by(4_000) {
        let new = Rc::new(MemoryStore {
            room: Some(room),
            ..MemoryStore::default()
        });
        let before = with_bench(&new, |bench| {
            done_step(bench, 1);
            bench.set("hoist rating", |settings| settings.hoist_kg = Some(80.0));
            (bench.record.get_untracked(), new.texts.borrow().clone())
        });
        with_bench(&new, |bench| {
            let restore = restore_of(bench, &text);
            if bench.restore(&restore).is_none() {
                refused += 1;
                assert_eq!(bench.record.get_untracked(), before.0, "room {room}");
                assert_eq!(*new.texts.borrow(), before.1, "room {room}");
            }
        });
        with_bench(&new, |bench| {
            assert!(
                bench.progress.with_untracked(|p| p.closed(StepId(1))),
                "room {room}"
            );
            assert_eq!(bench.settings.with_untracked(|s| s.hoist_kg), Some(80.0));
        });
    }
    assert!(refused > 2, "{refused}");
}

/// What the page saves when the app doesn't start: every slot under its key.
fn saved_without_the_app(store: &MemoryStore) -> String {
    let texts = store.texts.borrow();
    serde_json::json!({ "form": "halfcase kept", "version": 1, "made": 1_780_300_800_000_i64, "kept": *texts })
        .to_string()
}

#[test]
fn what_was_saved_without_the_app_is_taken_in_like_a_backup() {
    let store = Rc::new(MemoryStore::default());
    let there = with_bench(&store, |bench| {
        done_step(bench, 1);
        bench
            .send(Intent::NameMachine("walking tractor 7".to_owned()))
            .unwrap();
        (bench.sheet.get_untracked(), bench.record.get_untracked())
    });
    let file = saved_without_the_app(&store);
    // One slot of the sheet is damaged: the other serves, as it would have here.
    let damaged = {
        let mut texts = store.texts.borrow().clone();
        let key = texts
            .keys()
            .find(|key| key.starts_with("halfcase/job/1/"))
            .unwrap()
            .clone();
        texts.insert(key, "torn".to_owned());
        let store = MemoryStore {
            texts: texts.into(),
            room: None,
        };
        saved_without_the_app(&store)
    };
    for file in [file, damaged] {
        let elsewhere = Rc::new(MemoryStore::default());
        with_bench(&elsewhere, |bench| {
            let Ok(Incoming::Backup(restore)) = bench.read_file(&file) else {
                panic!("no backup")
            };
            bench.restore(&restore).unwrap();
            assert_eq!(bench.record.get_untracked(), there.1);
            assert_eq!(bench.sheet.get_untracked().title, there.0.title);
        });
    }
    let nothing = saved_without_the_app(&MemoryStore::default());
    with_bench(&Rc::new(MemoryStore::default()), |bench| {
        let Err(why) = bench.read_file(&nothing) else {
            panic!("something")
        };
        assert!(why.contains("no jobs"), "{why}");
    });
}

#[test]
fn a_backup_is_checked_as_an_imported_sheet_is_and_no_name_breaks_the_next() {
    let store = store();
    let file = full(&store);
    // Two steps of one number would be closed by one touch.
    let twice = file.replacen("{\"id\":2,\"title\":\"M", "{\"id\":1,\"title\":\"M", 1);
    assert_ne!(twice, file);
    with_bench(&Rc::new(MemoryStore::default()), |bench| {
        let Err(why) = bench.read_file(&twice) else {
            panic!("taken")
        };
        assert!(why.contains("job/") && why.contains('1'), "{why}");
        // A thing whose name would end the string it stands in, and one of five megabytes.
        let strange = file.replacen(
            "\"things\":{",
            &format!("\"things\":{{\"x\\\"y\":{{\"version\":1,\"data\":1}},\"big\":{{\"version\":1,\"data\":\"{}\"}},", "x".repeat(5_000_000)),
            1,
        );
        let restore = restore_of(bench, &strange);
        assert_eq!(restore.others, []);
        assert_eq!(restore.left_out, 2);
        bench.restore(&restore).unwrap();
        let again = bench.backup_text();
        restore_of(bench, &again);
        let Err(why) = bench.read_file(&"x".repeat(10_000_001)) else {
            panic!("taken")
        };
        assert!(why.contains("10 MB"), "{why}");
    });
}

/// Each of them small enough, together they would fill the phone and every backup after.
#[test]
fn unknown_things_of_a_file_are_bounded_in_sum() {
    let file = full(&store());
    let with_things = |count: usize, bytes: usize, prefix: &str| {
        let things: String = (0..count)
            .map(|at| {
                let data = "x".repeat(bytes);
                format!("\"{prefix}{at}\":{{\"version\":1,\"data\":\"{data}\"}},")
            })
            .collect();
        file.replacen("\"things\":{", &format!("\"things\":{{{things}"), 1)
    };
    let new = store();
    with_bench(&new, |bench| {
        assert_eq!(restore_of(bench, &file).left_out_words(), None);
        let restore = restore_of(bench, &with_things(5, 99_000, "big"));
        assert_eq!((restore.others.len(), restore.left_out), (2, 3));
        let words = restore.left_out_words().unwrap();
        assert!(words.starts_with("3 things"), "{words}");
        let restore = restore_of(bench, &with_things(21, 10, "small"));
        assert_eq!((restore.others.len(), restore.left_out), (20, 1));
        let words = restore.left_out_words().unwrap();
        assert!(words.starts_with("1 thing "), "{words}");
        bench.restore(&restore).unwrap();
        // A second file adds nothing to what is here already.
        let again = restore_of(bench, &with_things(9, 10, "small"));
        assert_eq!((again.others.len(), again.left_out), (0, 0));
        let other = restore_of(bench, &with_things(5, 10, "other"));
        assert_eq!((other.others.len(), other.left_out), (0, 5));
    });
    let beside = Shelf::new(new).names("small");
    assert_eq!(beside.len(), 20);
}

/// Another page of the host empties the store while the app is open.
#[test]
fn a_store_cleared_under_the_app_is_written_again_from_memory() {
    for told in [true, false] {
        let store = store();
        full(&store);
        let before = with_bench(&store, |bench| {
            store.texts.borrow_mut().clear();
            if told {
                // The browser says so: at once.
                bench.store_cleared();
                let words = bench.said.get_untracked().last().unwrap().words.clone();
                assert!(words.contains("written again"), "{words}");
            } else {
                // It does not: with the next act.
                bench
                    .send(Intent::NameMachine("walking tractor 7".to_owned()))
                    .unwrap();
            }
            bench.backup_text()
        });
        with_bench(&store, |bench| {
            let things = |text: &str| text.split_once("things").unwrap().1.to_owned();
            assert_eq!(things(&bench.backup_text()), things(&before), "told: {told}");
        });
    }
}

#[test]
fn a_backup_says_what_is_in_it_and_holds_the_damaged_copies() {
    let store = store();
    full(&store);
    with_bench(&store, |bench| {
        let lines: usize = bench
            .backup_words()
            .split([' ', ','])
            .filter_map(|word| word.parse().ok())
            .nth(1)
            .unwrap();
        assert!(
            bench.backup_words().starts_with("In it: 2 jobs, ") && lines > 200,
            "{}",
            bench.backup_words()
        );
    });
    // Both copies of a job's sheet are damaged.
    for slot in ["a", "b"] {
        let key = format!("halfcase/job/1/{slot}");
        if store.get(&key).is_some() {
            store.set(&key, "torn\u{0}\"").unwrap();
        }
    }
    with_bench(&store, |bench| {
        let words = bench.backup_words();
        assert!(
            words.starts_with("In it: 1 job, ") && words.contains("1 more job can’t be read"),
            "{words}"
        );
        let text = bench.backup_text();
        let file: serde_json::Value = serde_json::from_str(&text).unwrap();
        let damaged = file["damaged"].as_object().unwrap();
        assert!(damaged.values().all(|text| text == "torn\u{0}\""), "{damaged:?}");
        assert!(!damaged.is_empty());
        assert!(matches!(bench.read_file(&text), Ok(Incoming::Backup(_))));
    });
}
