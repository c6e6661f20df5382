//! What a touch does, as the bench keeps it: always the same after a reload.

use halfcase::bench::{Bench, Intent, ReadWith, Refused};
use halfcase::job::id::ReadingId;
use halfcase::job::keep::Shelves;
use halfcase::job::progress::Status;
use halfcase::job::reading::What;
use halfcase::job::record::Event;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::job::start;
use halfcase::trade::caution::Level;
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use reactive_graph::prelude::*;
use std::cell::Cell;
use std::rc::Rc;

thread_local! {
    /// 2026-06-01 08:00 UTC to begin with.
    static CLOCK: Cell<i64> = const { Cell::new(1_780_300_800_000) };
}

fn clock() -> Moment {
    Moment(CLOCK.get())
}

fn later(hours: i64) {
    CLOCK.set(CLOCK.get() + hours * 3_600_000);
}

/// A bench on `store`, inside a reactive owner that lives as long as the test's closure.
/// An empty one begins with the example, kept.
pub fn with_bench<T>(store: &Rc<MemoryStore>, then: impl FnOnce(Bench) -> T) -> T {
    lay_out(store.clone());
    let owner = Owner::new();
    owner.with(|| then(Bench::open(Shelves::new(Shelf::new(store.clone()), None), clock)))
}

/// Keeps the example in a store that is empty, as on a bench that was begun with it.
pub fn lay_out(store: Rc<dyn Store>) {
    if store.keys().is_empty() {
        let shelves = Shelves::new(Shelf::new(store), None);
        shelves.keep_everything(&start::example()).unwrap_or_default();
    }
}

pub fn step(bench: Bench, id: u32) -> Step {
    bench
        .sheet
        .with_untracked(|sheet| sheet.step(StepId(id)).cloned())
        .unwrap()
}

/// Takes every wrench off the bench: for who asks after other things than wrenches.
pub fn without_wrenches(bench: Bench) {
    let mut settings = bench.settings.get_untracked();
    settings.wrenches.clear();
    bench.send(Intent::Remember(Box::new(settings))).unwrap();
}

/// Reads every STOP of a step.
pub fn acknowledge(bench: Bench, step: &Step) {
    let cautions = untrack(|| bench.cautions_of(&step.work, Some(step.id)));
    let stops = cautions.iter().filter(|caution| caution.level == Level::Stop);
    stops.for_each(|stop| bench.acknowledge(step.id, stop));
}

/// Closes a step that asks for nothing.
pub fn done_step(bench: Bench, id: u32) {
    let step = step(bench, id);
    acknowledge(bench, &step);
    bench.send(Intent::Close(step.id)).unwrap();
}

pub fn apply(bench: Bench, step: &Step) -> Result<(), Refused> {
    bench.send(Intent::PutOn {
        step: step.id,
        activator: false,
    })
}

/// A reading of the example's second step.
pub fn read(bench: Bench, mm: f64) {
    let what = What::Limit(ReadingId(1));
    bench
        .measure(StepId(2), what, mm, "mm", &ReadWith::default())
        .unwrap();
}

fn tallied(bench: Bench) -> usize {
    bench.progress.with_untracked(|p| p.step(StepId(4)).tallies.len())
}

#[test]
fn a_bench_begun_with_the_example_opens_at_its_first_step() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let next = bench
            .sheet
            .with_untracked(|s| bench.progress.with_untracked(|p| p.next_open(s).map(|s| s.id)));
        assert_eq!(next, Some(StepId(1)));
        assert_eq!(bench.said.get_untracked(), []);
    });
}

#[test]
fn everything_done_is_there_after_a_reload() {
    let store = Rc::new(MemoryStore::default());
    let (record, clocks, settings) = with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        apply(bench, &baffle).unwrap();
        bench.send(Intent::Tally(baffle.id)).unwrap();
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(500.0));
        (
            bench.record.get_untracked(),
            bench.clocks.get_untracked(),
            bench.settings.get_untracked(),
        )
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.record.get_untracked(), record);
        assert_eq!(bench.clocks.get_untracked(), clocks);
        assert_eq!(bench.settings.get_untracked(), settings);
        assert_eq!(tallied(bench), 1);
    });
}

#[test]
fn a_step_is_not_done_before_its_fasteners_and_its_clock() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        let close = || bench.send(Intent::Close(baffle.id));
        assert_eq!(close(), Err(Refused::ClockNotStarted));
        apply(bench, &baffle).unwrap();
        assert_eq!(close(), Err(Refused::FastenersLeft(4)));
        for _ in 0..4 {
            bench.send(Intent::Tally(baffle.id)).unwrap();
        }
        assert_eq!(close(), Ok(()));
        // Closed is closed.
        assert_eq!(close(), Err(Refused::Closed));
        assert_eq!(bench.send(Intent::Tally(baffle.id)), Err(Refused::Closed));
        assert!(matches!(
            bench.progress.with_untracked(|p| p.step(StepId(4)).status),
            Status::Done(_)
        ));
    });
}

#[test]
fn a_stop_caution_holds_the_step_until_it_is_acknowledged() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        // The crankshaft by hand, 32 kg at 45 cm: more than three times the limit.
        let lift = step(bench, 14);
        let cautions = untrack(|| bench.cautions_of(&lift.work, Some(lift.id)));
        assert!(cautions.iter().any(|c| c.level == Level::Stop), "{cautions:?}");
        assert_eq!(bench.send(Intent::Close(lift.id)), Err(Refused::Unacknowledged));
        acknowledge(bench, &lift);
        assert_eq!(bench.send(Intent::Close(lift.id)), Ok(()));
    });
}

#[test]
fn undo_takes_back_the_last_thing_even_after_a_reload_and_the_record_only_grows() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        apply(bench, &baffle).unwrap();
        bench.send(Intent::Tally(baffle.id)).unwrap();
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.undo(), Ok(()));
        assert_eq!(tallied(bench), 0);
        assert_eq!(bench.undo(), Ok(()));
        assert!(
            bench
                .clocks
                .with_untracked(|clocks| clocks.iter().all(|clock| !clock.counts()))
        );
        assert_eq!(bench.undo(), Err(Refused::NothingToUndo));
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 4);
    });
}

#[test]
fn undo_of_a_setting_brings_the_old_one_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.take_wrench(2);
        bench.note_shop(12.0);
        bench.undo().unwrap();
        assert!(bench.settings.with_untracked(|s| s.shop.is_empty()));
        bench.undo().unwrap();
        assert_eq!(bench.settings.with_untracked(|s| s.in_hand), 0);
    });
}

#[test]
fn the_oil_waits_for_everything_and_can_be_opened_by_hand_with_a_reason_only() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let fill = step(bench, 21);
        assert_eq!(bench.send(Intent::Close(fill.id)), Err(Refused::Shut));
        let open = |reason: &str| {
            bench.send(Intent::Override {
                step: fill.id,
                reason: reason.to_owned(),
            })
        };
        // What is undone is done, or skipped with a reason: only a cure is overridden.
        assert_eq!(open("flushing with paraffin"), Err(Refused::NotByHand));
        let before: Vec<StepId> = bench
            .sheet
            .with_untracked(|sheet| sheet.before(fill.id).iter().map(|step| step.id).collect());
        for step in before.into_iter().filter(|step| *step != StepId(7)) {
            let reason = "done at the shop".to_owned();
            bench.send(Intent::Skip { step, reason }).unwrap();
        }
        apply(bench, &step(bench, 7)).unwrap();
        bench.send(Intent::Close(StepId(7))).unwrap();
        assert_eq!(open("  "), Err(Refused::NoReason));
        assert_eq!(bench.send(Intent::Close(fill.id)), Err(Refused::Shut));
        assert_eq!(open("flushing with paraffin"), Ok(()));
        acknowledge(bench, &fill);
        let with = ReadWith::default();
        bench.measure(fill.id, What::PutIn, 1.1, "L", &with).unwrap();
        assert_eq!(bench.send(Intent::Close(fill.id)), Ok(()));
        let reasons = bench.record.with_untracked(|record| {
            record
                .entries()
                .iter()
                .filter(|e| matches!(e.event, Event::Overridden { .. }))
                .count()
        });
        assert_eq!(reasons, 1);
    });
}

#[test]
fn a_long_record_is_kept_in_segments_and_read_back_whole() {
    let store = Rc::new(MemoryStore::default());
    let entries = with_bench(&store, |bench| {
        for n in 0..450 {
            read(bench, 61.97 + f64::from(n) * 1e-5);
        }
        later(1);
        bench.record.get_untracked()
    });
    let segments = store.keys().iter().filter(|key| key.contains("/record/")).count();
    assert!(segments >= 3, "{segments}");
    with_bench(&store, |bench| {
        assert!(
            bench.record.get_untracked() == entries,
            "the record came back changed"
        )
    });
}

#[test]
fn a_full_store_is_said_and_the_page_goes_on() {
    // The example stands, and there is no room for a line more.
    let laid = Rc::new(MemoryStore::default());
    lay_out(laid.clone());
    let store = Rc::new(MemoryStore {
        room: Some(50),
        texts: laid.texts.clone(),
    });
    with_bench(&store, |bench| {
        read(bench, 61.97);
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 1);
        assert!(
            bench
                .said
                .with_untracked(|said| said.iter().any(|s| s.trouble && s.words.contains("full")))
        );
    });
}

#[test]
fn a_damaged_entry_is_said_and_the_rest_is_there() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(300.0));
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(500.0));
    });
    let newest = store
        .keys()
        .into_iter()
        .find(|key| store.get(key).unwrap().contains("500"))
        .unwrap();
    store.set(&newest, "torn").unwrap();
    with_bench(&store, |bench| {
        assert_eq!(bench.settings.with_untracked(|s| s.hoist_kg), Some(300.0));
        let said = bench.said.get_untracked();
        assert_eq!(said.len(), 1);
        assert!(
            said[0]
                .words
                .starts_with("A stored copy of the bench settings was damaged"),
            "{said:?}"
        );
    });
}

/// A line well within a segment, by the value it was read with.
fn read_many(bench: Bench, from: u32, to: u32) {
    for n in from..to {
        read(bench, f64::from(n));
    }
}

#[test]
fn a_lost_segment_of_the_record_costs_no_other_one() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| read_many(bench, 0, 450));
    for key in store.keys().iter().filter(|key| key.contains("record/1/0000")) {
        store.set(key, "nonsense").unwrap();
    }
    with_bench(&store, |bench| read_many(bench, 450, 453));
    with_bench(&store, |bench| {
        let ids: Vec<u64> = bench
            .record
            .with_untracked(|record| record.entries().iter().map(|entry| entry.id.0).collect());
        assert_eq!(ids, (200..453).collect::<Vec<u64>>());
    });
}

#[test]
fn undo_of_a_setting_leaves_what_was_typed_since() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.note_shop(12.0);
        bench.carry(&step(bench, 4));
        bench.note(|settings| settings.torque_typed = "7.2".to_owned());
        let typed = bench.settings.get_untracked();
        bench.undo().unwrap();
        let after = bench.settings.get_untracked();
        assert_eq!(
            (&after.torque_typed, &after.desk),
            (&typed.torque_typed, &typed.desk)
        );
        assert_eq!(after.temperature_at(clock()), None);
        // What changed the entry itself is taken back in it.
        bench.on_desk("adapter", |desk| desk.adapter_on = true);
        bench.undo().unwrap();
        assert!(!bench.settings.with_untracked(|settings| settings.desk.adapter_on));
    });
}
