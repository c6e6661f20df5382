//! Seat and Lift as the bench keeps them: drafts, the countdown, the hoist's boom, readings in a step.

use super::commands::acknowledge;
use halfcase::bench::{Bench, Intent, Refused};
use halfcase::job::journal::words;
use halfcase::job::keep::Shelves;
use halfcase::job::kinds::seat::oven::OvenState;
use halfcase::job::kinds::seat::{self};
use halfcase::job::kinds::{LiftWay, SeatDepth, Work};
use halfcase::job::reading::What;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{MassUnit, Stated};
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use reactive_graph::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use uom::si::mass::kilogram;

const SEAT: Option<StepId> = Some(StepId(8));
const LIFT: Option<StepId> = Some(StepId(20));

thread_local! {
    /// 2026-06-01 08:00 UTC to begin with.
    static CLOCK: Cell<i64> = const { Cell::new(1_780_300_800_000) };
}

fn clock() -> Moment {
    Moment(CLOCK.get())
}

fn later(seconds: i64) {
    CLOCK.set(CLOCK.get() + seconds * 1_000);
}

/// A bench on `store`, inside a reactive owner that lives as long as the test's closure.
fn with_bench<T>(store: &Rc<MemoryStore>, then: impl FnOnce(Bench) -> T) -> T {
    super::commands::lay_out(store.clone());
    let owner = Owner::new();
    owner.with(|| then(Bench::open(Shelves::new(Shelf::new(store.clone()), None), clock)))
}

fn step(bench: Bench, id: u32) -> Step {
    bench
        .sheet
        .with_untracked(|sheet| sheet.step(StepId(id)).cloned())
        .unwrap()
}

#[test]
fn the_screens_own_numbers_are_there_after_a_reload_and_can_be_taken_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench
            .change_seat(None, "limit", |seat| seat.housing_limit_c = 60.0)
            .unwrap();
        bench.change_lift(None, "load", |lift| lift.mass_kg = 48.0);
        bench.set("unit of mass", |settings| settings.lift.unit = MassUnit::Pound);
        bench
            .send(Intent::ReadDepth {
                step: None,
                mm: Stated::plain(0.5),
            })
            .unwrap();
    });
    with_bench(&store, |bench| {
        let settings = bench.settings.get_untracked();
        assert_eq!(settings.seat.work.housing_limit_c, 60.0);
        assert_eq!(settings.seat.depth_mm, Some(0.5));
        assert_eq!(settings.lift.work.mass_kg, 48.0);
        assert_eq!(settings.lift.unit, MassUnit::Pound);
        bench
            .change_seat(None, "limit", |seat| seat.housing_limit_c = 90.0)
            .unwrap();
        assert_eq!(untrack(|| bench.undoable()), Some("limit".to_owned()));
        bench.undo().unwrap();
        assert_eq!(untrack(|| bench.seat(None)).unwrap().housing_limit_c, 60.0);
        // What changes nothing leaves no trace.
        bench
            .change_seat(None, "nothing", |seat| seat.housing_limit_c = 60.0)
            .unwrap();
        assert_eq!(untrack(|| bench.undoable()), None);
    });
}

#[test]
fn a_steps_numbers_are_changed_in_the_step_and_taken_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench
            .change_seat(SEAT, "limit", |seat| seat.housing_limit_c = 60.0)
            .unwrap();
        bench.change_lift(LIFT, "angle", |lift| {
            lift.way = LiftWay::Sling {
                legs: 2,
                angle_deg: 45.0,
            };
        });
        // A step of another kind has no such numbers.
        assert_eq!(untrack(|| bench.seat(LIFT)), None);
        bench
            .change_seat(LIFT, "limit", |seat| seat.housing_limit_c = 1.0)
            .unwrap();
        bench.undo().unwrap();
    });
    with_bench(&store, |bench| {
        assert_eq!(untrack(|| bench.seat(SEAT)).unwrap().housing_limit_c, 60.0);
        assert!(matches!(
            untrack(|| bench.lift(LIFT)).unwrap().way,
            LiftWay::Sling { angle_deg: 60.0, .. }
        ));
    });
}

#[test]
fn the_countdown_goes_on_through_a_reload() {
    let store = Rc::new(MemoryStore::default());
    let window = with_bench(&store, |bench| {
        let seat = untrack(|| bench.seat(SEAT)).unwrap();
        let window = seat::answer(&seat, None).unwrap().window.unwrap();
        bench.take_out(SEAT, window);
        window
    });
    later(30);
    with_bench(&store, |bench| {
        let run = bench.settings.with_untracked(|s| s.seat.oven).unwrap();
        assert_eq!(run.step, SEAT);
        let OvenState::Open(left) = run.state(bench.now.get_untracked()) else {
            panic!("half a minute is not too long");
        };
        let spent = (window.shortest - left).value;
        assert!((spent - 30.0).abs() < 1e-6, "{spent}");
        bench.put_countdown_away();
        // It is over, and its step knows that the part came home.
        assert_eq!(untrack(|| bench.countdown(SEAT)), None);
        assert!(bench.settings.with_untracked(|s| s.seat.oven).unwrap().home);
        bench.undo().unwrap();
        assert!(untrack(|| bench.countdown(SEAT)).is_some());
    });
}

#[test]
fn a_stated_depth_is_read_before_the_step_can_be_closed() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench
            .change_seat(SEAT, "depth", |seat| {
                seat.depth = Some(SeatDepth {
                    least_mm: 0.4,
                    most_mm: 0.6,
                    bore_mm: Some(17.5),
                    gap_mm: Some(0.8),
                });
            })
            .unwrap();
        let seat = step(bench, 8);
        acknowledge(bench, &seat);
        let close = || bench.send(Intent::Close(seat.id));
        let depth = What::Depth.name(None);
        assert_eq!(close(), Err(Refused::ReadingMissing(depth.clone())));
        let read = |mm| {
            let mm = Stated::plain(mm);
            bench.send(Intent::ReadDepth { step: SEAT, mm }).unwrap()
        };
        // Outside its limits it is read again, or accepted with a reason.
        read(0.7);
        assert_eq!(
            close(),
            Err(Refused::Finding(format!(
                "“{depth}” is outside its limits: 0.7 mm"
            )))
        );
        read(0.5);
        assert_eq!(untrack(|| bench.depth_read(SEAT)), (Some(0.5), Some(1.0)));
        assert_eq!(close(), Ok(()));
        let sheet = bench.sheet.get_untracked();
        let lines: Vec<String> = bench
            .record
            .with_untracked(|record| record.standing().map(|entry| words(entry, &sheet)).collect());
        assert!(
            lines.contains(&"oil gap behind: 1 mm: within limits".to_owned()),
            "{lines:?}"
        );
        assert!(
            lines
                .last()
                .unwrap()
                .starts_with("step done: warm the housing evenly to"),
            "{lines:?}"
        );
        // The depth and the gap that follows from it are one touch.
        bench.undo().unwrap();
        bench.undo().unwrap();
        assert_eq!(untrack(|| bench.depth_read(SEAT)), (Some(0.7), Some(0.8)));
    });
}

#[test]
fn the_boom_is_kept_in_order_and_decides_the_caution() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.add_boom(1_500.0, 45.0);
        bench.add_boom(900.0, 250.0);
        bench.add_boom(1_500.0, 40.0);
        let ratings: Vec<f64> = bench.settings.with_untracked(|s| {
            let boom = &s.lift.boom;
            boom.iter().map(|p| p.rating.get::<kilogram>().round()).collect()
        });
        assert_eq!(ratings, [250.0, 40.0]);
        bench.change_lift(LIFT, "boom", |lift| lift.boom_mm = Some(1_500.0));
        let ids = |bench: Bench| -> Vec<&str> {
            let lift = untrack(|| bench.lift(LIFT)).unwrap();
            let cautions = untrack(|| bench.cautions_of(&Work::Lift(lift), None));
            cautions.into_iter().map(|c| c.id).collect()
        };
        assert!(ids(bench).contains(&"hoist-over"));
        bench.change_lift(LIFT, "boom", |lift| lift.boom_mm = Some(900.0));
        assert!(!ids(bench).contains(&"hoist-over"));
        bench.remove_boom(0);
        assert!(ids(bench).contains(&"hoist-near") || ids(bench).contains(&"hoist-over"));
        bench.remove_boom(7);
    });
}

#[test]
fn heat_is_stopped_for_an_hour_after_a_wash_with_solvent() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let stopped = |bench: Bench| {
            let seat = step(bench, 8);
            let cautions = untrack(|| bench.cautions_of(&seat.work, None));
            cautions.iter().any(|c| c.id == "heat-solvent")
        };
        assert!(!stopped(bench));
        let wash = step(bench, 1);
        acknowledge(bench, &wash);
        bench.send(Intent::Close(wash.id)).unwrap();
        assert!(stopped(bench));
        later(3_700);
        bench.tick();
        assert!(!stopped(bench));
    });
}
