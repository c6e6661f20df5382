//! What a touch does, as the bench keeps it: always the same after a reload.

use halfcase::bench::{Bench, Refused, Shelves, WrenchSet};
use halfcase::device::storage::{MemoryStore, Shelf, Store};
use halfcase::job::progress::Status;
use halfcase::job::record::Event;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::situation;
use halfcase::trade::caution::{Caution, Level};
use halfcase::trade::compound::recommend;
use halfcase::trade::moment::Moment;
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
pub fn with_bench<T>(store: &Rc<MemoryStore>, then: impl FnOnce(Bench) -> T) -> T {
    let owner = Owner::new();
    owner.with(|| then(Bench::open(Shelves::new(Shelf::new(store.clone()), None), clock)))
}

pub fn step(bench: Bench, id: u32) -> Step {
    bench
        .sheet
        .with_untracked(|sheet| sheet.step(StepId(id)).cloned())
        .unwrap()
}

fn cautions(step: &Step) -> Vec<Caution> {
    situation::cautions(step, None, None)
}

/// Closes a step that asks for nothing.
pub fn done_step(bench: Bench, id: u32) {
    let step = step(bench, id);
    bench.done(&step, &cautions(&step), String::new()).unwrap();
}

pub fn set() -> WrenchSet {
    WrenchSet {
        value: "86".into(),
        unit: "in·lb".into(),
        tool: "Small".into(),
    }
}

pub fn apply(bench: Bench, step: &Step) -> Result<(), Refused> {
    let recommendation = recommend(step.work.application().unwrap());
    bench.apply(
        step,
        &cautions(step),
        recommendation.class.unwrap(),
        &recommendation,
    )
}

#[test]
fn a_first_visit_opens_the_example_at_its_first_step() {
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
        bench.tally(&baffle, &cautions(&baffle), &set()).unwrap();
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
        assert_eq!(
            bench.progress.with_untracked(|p| p.step(StepId(4)).tallied.len()),
            1
        );
    });
}

#[test]
fn a_step_is_not_done_before_its_fasteners_and_its_clock() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        let none: &[Caution] = &cautions(&baffle);
        assert_eq!(
            bench.done(&baffle, none, String::new()),
            Err(Refused::FastenersLeft(4))
        );
        for _ in 0..4 {
            bench.tally(&baffle, none, &set()).unwrap();
        }
        assert_eq!(
            bench.done(&baffle, none, String::new()),
            Err(Refused::ClockNotStarted)
        );
        apply(bench, &baffle).unwrap();
        assert_eq!(bench.done(&baffle, none, String::new()), Ok(()));
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
        let cautions = cautions(&lift);
        let stops: Vec<&Caution> = cautions.iter().filter(|c| c.level == Level::Stop).collect();
        assert!(!stops.is_empty(), "{cautions:?}");
        assert_eq!(
            bench.done(&lift, &cautions, String::new()),
            Err(Refused::Unacknowledged)
        );
        stops.iter().for_each(|stop| bench.acknowledge(lift.id, stop));
        assert_eq!(bench.done(&lift, &cautions, String::new()), Ok(()));
    });
}

#[test]
fn undo_takes_back_the_last_thing_even_after_a_reload_and_the_record_only_grows() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        apply(bench, &baffle).unwrap();
        bench.tally(&baffle, &cautions(&baffle), &set()).unwrap();
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.undo(), Ok(()));
        assert_eq!(
            bench.progress.with_untracked(|p| p.step(StepId(4)).tallied.len()),
            0
        );
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
        bench.note_temperature(12.0);
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
        assert_eq!(bench.done(&fill, &[], String::new()), Err(Refused::Shut));
        assert_eq!(bench.override_gate(&fill, "  "), Err(Refused::NoReason));
        assert_eq!(bench.override_gate(&fill, "flushing with paraffin"), Ok(()));
        let cautions = cautions(&fill);
        assert_eq!(bench.done(&fill, &cautions, String::new()), Ok(()));
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
            bench.measure(
                StepId(2),
                "bore across",
                61.97 + f64::from(n) * 1e-5,
                "mm",
                "within limits",
            );
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
    let store = Rc::new(MemoryStore {
        room: Some(50),
        ..MemoryStore::default()
    });
    with_bench(&store, |bench| {
        bench.measure(StepId(2), "bore across", 61.97, "mm", "within limits");
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
        bench.measure(StepId(2), "bore across", f64::from(n), "mm", "noted");
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
        bench.note_temperature(12.0);
        bench.carry(&step(bench, 4));
        bench.note(|settings| settings.torque_typed = "7.2".to_owned());
        let typed = bench.settings.get_untracked();
        bench.undo().unwrap();
        let after = bench.settings.get_untracked();
        assert_eq!(after.entry(), typed.entry());
        assert_eq!(after.temperature_at(clock()), None);
        // What changed the entry itself is taken back in it.
        bench.on_desk("adapter", |desk| desk.adapter_on = true);
        bench.undo().unwrap();
        assert!(!bench.settings.with_untracked(|settings| settings.desk.adapter_on));
    });
}
