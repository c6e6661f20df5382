//! The first minutes: nothing stored, the example that leaves nothing behind, the first own job.

use super::commands::{done_step, lay_out};
use halfcase::bench::Bench;
use halfcase::job::keep::Shelves;
use halfcase::job::sheet::{JobId, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use std::rc::Rc;

const NOW: Moment = Moment(1_780_300_800_000);

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

fn open<T>(store: &Rc<MemoryStore>, then: impl FnOnce(Bench) -> T) -> T {
    let owner = Owner::new();
    owner.with(|| then(Bench::open(Shelves::new(Shelf::new(store.clone()), None), || NOW)))
}

fn has_job(bench: Bench) -> bool {
    untrack(|| bench.has_job())
}

#[test]
fn nothing_stored_is_nothing_shown() {
    let store = store();
    open(&store, |bench| {
        assert!(!has_job(bench) && !bench.is_example());
        assert!(bench.asks_wrench());
        bench.settings.with_untracked(|settings| {
            assert!(settings.wrenches.is_empty() && settings.bottles.is_empty());
        });
        assert_eq!(untrack(|| bench.job_lines()), []);
        assert_eq!(untrack(|| bench.undoable()), None);
        assert_eq!(bench.gathered(), []);
    });
    assert_eq!(store.keys(), Vec::<String>::new());
}

#[test]
fn the_example_is_whole_and_leaves_nothing_behind() {
    let store = store();
    open(&store, |bench| {
        bench.look_at_example();
        assert!(bench.is_example() && has_job(bench));
        assert_eq!(bench.settings.with_untracked(|s| s.wrenches.len()), 3);
        done_step(bench, 1);
        bench
            .send(halfcase::bench::Intent::PutOn {
                step: StepId(7),
                activator: false,
            })
            .unwrap();
        bench.begin_empty("A second one, in the example").unwrap();
        assert_eq!(store.keys(), Vec::<String>::new());
        bench.close_example();
        assert!(!bench.is_example() && !has_job(bench));
        assert_eq!(bench.clocks.with_untracked(Vec::len), 0);
        assert!(bench.asks_wrench());
        assert_eq!(untrack(|| bench.undoable()), None);
        // And it is the own bench that is kept again.
        bench.begin_empty("Side cover").unwrap();
        bench.close_example();
        assert!(has_job(bench));
    });
    open(&store, |bench| {
        assert_eq!(
            bench.sheet.with_untracked(|sheet| sheet.title.clone()),
            "Side cover"
        );
    });
}

#[test]
fn what_stood_on_the_bench_is_there_again_after_the_example() {
    let store = store();
    open(&store, |bench| {
        bench.any_wrench();
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(500.0));
        let before = store.texts.borrow().clone();
        bench.look_at_example();
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(80.0));
        bench.close_example();
        assert_eq!(*store.texts.borrow(), before);
        assert_eq!(bench.settings.with_untracked(|s| s.hoist_kg), Some(500.0));
        assert!(!bench.asks_wrench() && !has_job(bench));
    });
    open(&store, |bench| assert!(!bench.asks_wrench() && !has_job(bench)));
}

#[test]
fn the_first_job_comes_in_the_place_of_none_and_undo_puts_none_back() {
    let store = store();
    open(&store, |bench| {
        bench.begin_empty("Side cover").unwrap();
        assert!(has_job(bench));
        assert_eq!(bench.jobs.with_untracked(Vec::len), 1);
        bench.undo().unwrap();
        assert!(!has_job(bench));
        bench.begin_example();
        assert_eq!(untrack(|| bench.job_lines()).len(), 1);
    });
    open(&store, |bench| {
        assert!(has_job(bench));
        assert_eq!(bench.jobs.with_untracked(Vec::len), 1);
    });
}

#[test]
fn a_backup_comes_in_on_a_bench_without_a_job_and_takes_its_place() {
    let full = store();
    lay_out(full.clone());
    let text = open(&full, |bench| {
        done_step(bench, 1);
        bench.backup_text()
    });
    open(&store(), |bench| {
        let halfcase::bench::Incoming::Backup(restore) = bench.read_file(&text).unwrap() else {
            panic!("not a backup")
        };
        assert!(restore.take_settings);
        assert_eq!(bench.restore(&restore), Some(1));
        assert!(has_job(bench));
        assert_eq!(untrack(|| bench.job_lines()).len(), 1);
        assert_eq!(bench.job.get_untracked(), JobId(1));
        assert!(
            bench
                .progress
                .with_untracked(|progress| progress.closed(StepId(1)))
        );
    });
    // What no one began is no job of a backup.
    let empty = open(&store(), |bench| {
        bench.any_wrench();
        bench.backup_text()
    });
    open(&full, |bench| {
        let halfcase::bench::Incoming::Backup(restore) = bench.read_file(&empty).unwrap() else {
            panic!("not a backup")
        };
        assert_eq!((restore.jobs.len(), restore.changes.len()), (0, 0));
    });
}

/// Whatever an earlier release stored has a title or steps: it is never taken for nothing.
#[test]
fn a_stored_bench_is_never_a_first_one() {
    let store = MemoryStore::default();
    let fixture = include_str!("../fixtures/form-1/store.json");
    *store.texts.borrow_mut() = serde_json::from_str(fixture).unwrap();
    open(&Rc::new(store), |bench| {
        assert!(has_job(bench));
        assert!(!bench.settings.with_untracked(|s| s.wrenches.is_empty()));
    });
}
