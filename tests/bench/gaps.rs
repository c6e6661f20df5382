//! What a cut, a refusal and a damaged mark leave, and every line of the record by name.

use super::commands::{acknowledge, apply, read, step, with_bench};
use super::copies::copies;
use super::dying::Dying;
use halfcase::bench::{Bench, Incoming, Intent, ReadWith, Refused, Restore};
use halfcase::job::clock::ClockId;
use halfcase::job::id::ReadingId;
use halfcase::job::json;
use halfcase::job::keep::Shelves;
use halfcase::job::kinds::{Work, fasten};
use halfcase::job::parts::PartKey;
use halfcase::job::reading::What;
use halfcase::job::record::Event;
use halfcase::job::sheet::{JobId, Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, StorageError, Store, Write};
use halfcase::job::state::{Now, State};
use halfcase::trade::caution::Level;
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use std::collections::BTreeSet;
use std::rc::Rc;

const NOW: Moment = Moment(1_780_300_800_000);

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

fn write(name: &str, value: &str) -> Write {
    Write {
        name: name.to_owned(),
        version: 1,
        text: Some(json::write(value).unwrap()),
    }
}

fn value(shelf: &Shelf, name: &str) -> Option<String> {
    let loaded = shelf.load(name, 1, |_, text| json::read::<String>(text).ok());
    loaded.unwrap().value.map(|(_, value)| value)
}

fn newest_mark(store: &MemoryStore) -> String {
    let [newest, _] = copies("mark", |key| store.get(key));
    newest
}

// ---- the shelf ----

#[test]
fn what_is_forgotten_with_a_change_is_gone_with_it_or_neither() {
    for writes in 0..12 {
        let store = Dying::new();
        let shelf = Shelf::new(store.clone());
        for _ in 0..2 {
            shelf.keep(&[write("one", "old"), write("three", "old")]).unwrap();
        }
        store.left.set(writes);
        let gone = Write {
            text: None,
            ..write("three", "")
        };
        drop(shelf.keep(&[write("one", "new"), gone]));
        store.left.set(usize::MAX);
        let again = Shelf::new(store.clone());
        let is = (value(&again, "one").unwrap(), value(&again, "three").is_some());
        assert!(
            is == ("old".to_owned(), true) || is == ("new".to_owned(), false),
            "after {writes} writes: {is:?}"
        );
    }
}

#[test]
fn a_refused_transaction_leaves_both_copies_of_everything() {
    let store = Rc::new(MemoryStore {
        room: Some(600),
        ..MemoryStore::default()
    });
    let shelf = Shelf::new(store.clone());
    for word in ["older", "newer"] {
        shelf.keep(&[write("one", word), write("two", word)]).unwrap();
    }
    let before = store.texts.borrow().clone();
    let refused = shelf.keep(&[write("one", "x"), write("two", &"x".repeat(900))]);
    assert_eq!(refused, Err(StorageError::Full));
    assert_eq!(*store.texts.borrow(), before);
}

#[test]
fn a_damaged_mark_drops_nothing_without_a_word() {
    let store = store();
    let shelf = Shelf::new(store.clone());
    for word in ["older", "newer"] {
        shelf.keep(&[write("thing", word)]).unwrap();
    }
    store.set(&newest_mark(&store), "torn").unwrap();
    let again = Shelf::new(store.clone());
    let is = value(&again, "thing");
    assert!(
        is.as_deref() == Some("newer") || !again.rescued().is_empty(),
        "{is:?}, and nothing is set aside: {:?}",
        store.keys()
    );
}

#[test]
fn a_damaged_mark_costs_no_settled_thing() {
    let store = store();
    let shelf = Shelf::new(store.clone());
    for word in ["older", "newer"] {
        shelf.keep(&[write("thing", word)]).unwrap();
    }
    shelf.settle("thing");
    store.set(&newest_mark(&store), "torn").unwrap();
    assert!(value(&Shelf::new(store), "thing").is_some(), "no copy is left");
}

#[test]
fn another_tabs_mark_refuses_even_what_it_did_not_touch() {
    let store = store();
    let mine = Shelf::new(store.clone());
    mine.keep(&[write("mine", "1")]).unwrap();
    let theirs = Shelf::new(store.clone());
    theirs.keep(&[write("theirs", "1")]).unwrap();
    let before = store.texts.borrow().clone();
    assert_eq!(mine.keep(&[write("mine", "2")]), Err(StorageError::OtherTab));
    assert_eq!(*store.texts.borrow(), before);
}

#[test]
fn a_settled_thing_keeps_its_newest_copy_alone_and_only_a_sound_one() {
    let store = store();
    let shelf = Shelf::new(store.clone());
    let keys = || -> Vec<String> {
        store
            .keys()
            .into_iter()
            .filter(|key| key.contains("/thing/"))
            .collect()
    };
    for word in ["older", "newer"] {
        shelf.keep(&[write("thing", word)]).unwrap();
    }
    shelf.settle("thing");
    assert_eq!(
        (keys().len(), value(&shelf, "thing").as_deref()),
        (1, Some("newer"))
    );
    shelf.settle("thing");
    assert_eq!(keys().len(), 1, "its only copy stays");
    shelf.keep(&[write("thing", "newest")]).unwrap();
    let newest = keys()
        .into_iter()
        .find(|key| store.get(key).unwrap().contains("newest"))
        .unwrap();
    store.set(&newest, "torn").unwrap();
    shelf.settle("thing");
    assert_eq!(
        value(&Shelf::new(store.clone()), "thing").as_deref(),
        Some("newer")
    );
}

// ---- the bench ----

fn restore_of(bench: Bench, text: &str) -> Restore {
    match bench.read_file(text) {
        Ok(Incoming::Backup(restore)) => *restore,
        _ => panic!("not a backup"),
    }
}

fn on<T>(store: Rc<dyn Store>, then: impl FnOnce(Bench) -> T) -> T {
    super::commands::lay_out(store.clone());
    Owner::new().with(|| then(Bench::open(Shelves::new(Shelf::new(store), None), || NOW)))
}

/// A bench of three lines, and the backup of the same bench 210 lines later.
fn short_and_longer() -> (std::collections::BTreeMap<String, String>, String) {
    let store = store();
    with_bench(&store, |bench| {
        for n in 0..3 {
            read(bench, 61.97 + f64::from(n) / 1000.0);
        }
    });
    let short = store.texts.borrow().clone();
    let text = with_bench(&store, |bench| {
        for n in 0..210 {
            read(bench, 61.96 + f64::from(n) / 1000.0);
        }
        bench.backup_text()
    });
    (short, text)
}

fn lines(store: Rc<dyn Store>) -> Vec<u64> {
    let state = Shelves::new(Shelf::new(store), None).read().state;
    state
        .job()
        .record
        .entries()
        .iter()
        .map(|entry| entry.id.0)
        .collect()
}

#[test]
fn undo_of_a_backup_cut_off_anywhere_mixes_no_two_records() {
    let (short, text) = short_and_longer();
    let mut seen = BTreeSet::new();
    let mut mixed = Vec::new();
    for writes in 0..16 {
        let store = Dying::new();
        *store.store.texts.borrow_mut() = short.clone();
        on(store.clone(), |bench| {
            assert_eq!(bench.restore(&restore_of(bench, &text)), Some(1));
            store.left.set(writes);
            // Refused where it can't be read back; a phone that dies hears nothing of it.
            drop(bench.undo());
            store.left.set(usize::MAX);
        });
        let is = lines(store);
        let whole = [3, 213].contains(&is.len()) && is.iter().copied().eq(0..is.len() as u64);
        if !whole {
            mixed.push((writes, is.len(), is[..4].to_vec()));
        }
        seen.insert(is.len());
    }
    assert!(mixed.is_empty(), "(writes, lines, the first of them): {mixed:?}");
    assert_eq!(seen.len(), 2, "{seen:?}");
}

#[test]
fn a_backup_taken_in_and_then_a_damaged_mark_costs_no_record() {
    let (short, text) = short_and_longer();
    let store = store();
    *store.texts.borrow_mut() = short;
    on(store.clone(), |bench| {
        assert_eq!(bench.restore(&restore_of(bench, &text)), Some(1));
    });
    store.set(&newest_mark(&store), "torn").unwrap();
    let said = Shelves::new(Shelf::new(store.clone()), None).read().said;
    let is = lines(store);
    assert!(
        is.iter().copied().take(3).eq(0..3),
        "{is:?}, and said is {said:?}"
    );
}

#[test]
fn a_refused_backup_leaves_the_store_and_all_that_is_shown() {
    let (_, text) = short_and_longer();
    let mut refused = 0;
    for room in (20_000..90_000).step_by(2_500) {
        let store = Rc::new(MemoryStore {
            room: Some(room),
            ..MemoryStore::default()
        });
        with_bench(&store, |bench| {
            for n in 0..2 {
                bench.set("hoist rating", |settings| {
                    settings.hoist_kg = Some(80.0 + f64::from(n))
                });
                bench.rename_job(JobId(1), &format!("Mine {n}")).unwrap();
                if n == 0 {
                    apply(bench, &step(bench, 7)).unwrap();
                }
                read(bench, 61.5);
            }
            let shown = || {
                (
                    bench.jobs.get_untracked(),
                    bench.sheet.get_untracked(),
                    bench.record.get_untracked(),
                    bench.clocks.get_untracked(),
                    bench.settings.get_untracked(),
                    untrack(|| bench.history()),
                )
            };
            let before = (shown(), store.texts.borrow().clone());
            let mut restore = restore_of(bench, &text);
            restore.take_settings = true;
            if bench.restore(&restore).is_none() {
                refused += 1;
                assert!(shown() == before.0, "room {room}: shown otherwise");
                let now = store.texts.borrow().clone();
                let lost: Vec<_> = before.1.keys().filter(|key| !now.contains_key(*key)).collect();
                assert!(now == before.1, "room {room}: gone {lost:?}");
            }
        });
    }
    assert!(refused > 2, "{refused}");
}

#[test]
fn a_restart_cut_off_reads_back_before_or_after_and_the_record_agrees() {
    let mut seen = BTreeSet::new();
    for writes in 0..10 {
        let store = Dying::new();
        super::commands::lay_out(store.clone());
        let open = || Shelves::new(Shelf::new(store.clone()), None);
        let shelves = open();
        let mut state: State = shelves.read().state;
        let mut touch = |intent: Intent| {
            let done = state.apply(&intent, Now::utc(NOW)).unwrap();
            state.take(done.clone());
            drop(shelves.keep(&state, &done));
        };
        touch(Intent::PutOn {
            step: StepId(7),
            activator: false,
        });
        store.left.set(writes);
        touch(Intent::Restart(ClockId(1)));
        store.left.set(usize::MAX);
        let state = open().read().state;
        let running: Vec<u32> = state
            .clocks
            .iter()
            .filter(|c| c.ended.is_none())
            .map(|c| c.id.0)
            .collect();
        let opened = state
            .job()
            .record
            .standing()
            .any(|e| e.event == Event::JointOpened);
        assert_eq!(running, [if opened { 2 } else { 1 }], "after {writes} writes");
        seen.insert(opened);
    }
    assert_eq!(seen.len(), 2);
}

#[test]
fn undo_revives_only_the_clock_that_was_taken_over_from() {
    let store = store();
    with_bench(&store, |bench| {
        let running = || -> Vec<u32> {
            let clocks = bench.clocks.get_untracked();
            clocks
                .iter()
                .filter(|c| c.ended.is_none())
                .map(|c| c.id.0)
                .collect()
        };
        let seven = step(bench, 7);
        apply(bench, &seven).unwrap();
        bench.restart(ClockId(1));
        let before = running();
        if apply(bench, &seven).is_ok() {
            bench.undo().unwrap();
        }
        assert_eq!(running(), before);
    });
}

#[test]
fn only_the_stop_of_the_cure_itself_frees_a_step_opened_before_it() {
    let store = store();
    with_bench(&store, |bench| {
        let id = StepId(15);
        apply(bench, &step(bench, 15)).unwrap();
        bench.send(Intent::Close(id)).unwrap();
        let mut late = step(bench, 7);
        late.waits_for = vec![id];
        let late = bench.add_step(Some(id), late);
        let put_on = || {
            bench.send(Intent::PutOn {
                step: late,
                activator: false,
            })
        };
        assert_eq!(put_on(), Err(Refused::Shut));
        let reason = "the customer waits".to_owned();
        bench.send(Intent::Override { step: late, reason }).unwrap();
        let work = step(bench, late.0).work;
        let (cure, others): (Vec<_>, Vec<_>) = untrack(|| bench.cautions_of(&work, Some(late)))
            .into_iter()
            .filter(|c| c.level == Level::Stop)
            .partition(|c| c.id.contains("before-cure") || c.id.contains("before_cure"));
        assert_eq!(cure.len(), 1, "{others:?}");
        others.iter().for_each(|caution| bench.acknowledge(late, caution));
        assert_eq!(put_on(), Err(Refused::Unacknowledged));
        bench.acknowledge(late, &cure[0]);
        assert_eq!(put_on(), Ok(()));
    });
}

#[test]
fn the_other_lines_of_the_record_are_named_the_same_after_a_reload() {
    type Touch = fn(Bench);
    let touches: [(&str, Touch); 5] = [
        ("acknowledged", |bench| {
            let lift = step(bench, 14);
            let cautions = untrack(|| bench.cautions_of(&lift.work, Some(lift.id)));
            let stop = cautions.iter().find(|c| c.level == Level::Stop).unwrap();
            bench.acknowledge(lift.id, stop);
        }),
        ("accepted", |bench| {
            read(bench, 62.5);
            let (step, what) = (StepId(2), What::Limit(ReadingId(1)));
            let reason = "sleeve comes in".to_owned();
            let initials = "jb".to_owned();
            bench
                .send(Intent::Accept {
                    step,
                    what,
                    reason,
                    initials,
                })
                .unwrap();
        }),
        ("loosened", |bench| {
            let (step, part) = (StepId(6), PartKey::Own);
            bench.send(Intent::NewOn { step, part }).unwrap();
            bench.take_wrench(1);
            bench.send(Intent::Tally(StepId(6))).unwrap();
            bench.send(Intent::Loosen(StepId(6))).unwrap();
        }),
        ("job closed", |bench| {
            let steps: Vec<StepId> = bench
                .sheet
                .with_untracked(|sheet| sheet.steps.iter().map(|s| s.id).collect());
            for step in steps {
                let reason = "not on this one".to_owned();
                bench.send(Intent::Skip { step, reason }).unwrap();
            }
            bench.send(Intent::CloseJob).unwrap();
        }),
        ("remark on a line", |bench| {
            read(bench, 61.97);
            let first = bench.record.with_untracked(|record| record.entries()[0].id);
            bench.add_remark(Some(first), "looked at twice").unwrap();
        }),
    ];
    for (what, touch) in touches {
        let store = store();
        let name = |bench: Bench| {
            (
                untrack(|| bench.undoable()),
                untrack(|| bench.history()).remove(0).1,
            )
        };
        let before = with_bench(&store, |bench| {
            touch(bench);
            name(bench)
        });
        assert_eq!(with_bench(&store, name), before, "{what}");
        assert!(!before.1.is_empty(), "{what}");
        // And after the undo the same line is next again.
        let undone = |bench: Bench| {
            bench.undo().unwrap();
            untrack(|| bench.undoable())
        };
        let after = with_bench(&store, undone);
        assert_eq!(
            with_bench(&store, |bench| untrack(|| bench.undoable())),
            after,
            "{what}"
        );
    }
}

#[test]
fn a_torque_lowered_while_the_app_was_closed_still_asks_to_loosen_first() {
    let store = store();
    let id = with_bench(&store, |bench| {
        let bolts = fasten::begin("M8", "22 N·m").unwrap();
        let id = bench.add_step(
            Some(StepId(1)),
            Step::new(StepId(0), "Cover", Work::Fasten(bolts)),
        );
        bench.edit_step(id, "fasten/count", "4").unwrap();
        bench.take_wrench(1);
        for _ in 0..4 {
            bench.send(Intent::Tally(id)).unwrap();
        }
        bench.edit_step(id, "fasten/torque", "18 N·m").unwrap();
        id
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.send(Intent::Close(id)), Err(Refused::TooTight(4)));
        assert_eq!(bench.send(Intent::Tally(id)), Err(Refused::TooTight(4)));
        bench.send(Intent::Loosen(id)).unwrap();
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.send(Intent::Close(id)), Err(Refused::FastenersLeft(4)));
    });
}

#[test]
fn a_closed_step_takes_no_reading() {
    let store = store();
    with_bench(&store, |bench| {
        acknowledge(bench, &step(bench, 2));
        for (reading, mm) in [(1, 61.98), (2, 61.97)] {
            let what = What::Limit(ReadingId(reading));
            bench
                .measure(StepId(2), what, mm, "mm", &ReadWith::default())
                .unwrap();
        }
        bench.send(Intent::Close(StepId(2))).unwrap();
        let what = What::Limit(ReadingId(1));
        let late = bench.measure(StepId(2), what, 60.0, "mm", &ReadWith::default());
        assert_eq!(late, Err(Refused::Closed));
    });
}

/// What a refused backup costs: the copy to fall back on.
#[test]
fn after_a_refused_backup_a_damaged_copy_still_falls_back() {
    let (_, text) = short_and_longer();
    let store = Rc::new(MemoryStore {
        room: Some(20_000),
        ..MemoryStore::default()
    });
    with_bench(&store, |bench| {
        for kg in [80.0, 81.0] {
            bench.set("hoist rating", |settings| settings.hoist_kg = Some(kg));
        }
        let mut restore = restore_of(bench, &text);
        restore.take_settings = true;
        assert_eq!(bench.restore(&restore), None);
    });
    let newest = store
        .keys()
        .into_iter()
        .find(|key| store.get(key).unwrap().contains("\"hoist_kg\":81"))
        .unwrap();
    store.set(&newest, "torn").unwrap();
    with_bench(&store, |bench| {
        assert_eq!(bench.settings.with_untracked(|s| s.hoist_kg), Some(80.0));
    });
}
