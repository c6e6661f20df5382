//! Clocks and bottles as the bench keeps them, and the phone's clock under watch.

use super::commands::acknowledge;
use halfcase::bench::{Bench, Intent, Judged, Refused};
use halfcase::job::bottle::{Bottle, BottleId};
use halfcase::job::clock::Ended;
use halfcase::job::journal::words;
use halfcase::job::keep::Shelves;
use halfcase::job::kinds::seat::oven::OvenState;
use halfcase::job::night::Night;
use halfcase::job::record::Event;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf};
use halfcase::trade::application::{Application, Face, JointKind};
use halfcase::trade::compound::CompoundClass;
use halfcase::trade::cooling::TimeRange;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::Time;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use reactive_graph::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use uom::si::time::second;

/// 2026-06-01 08:00 UTC.
pub const MORNING_MS: i64 = 1_780_300_800_000;
pub const HOUR_MS: i64 = 3_600_000;

thread_local! {
    static WALL: Cell<i64> = const { Cell::new(MORNING_MS) };
    static OWN: Cell<f64> = const { Cell::new(0.0) };
}

fn wall() -> Moment {
    Moment(WALL.get())
}

fn own() -> f64 {
    OWN.get()
}

/// Time passes by both clocks.
pub fn later(bench: Bench, hours: i64) {
    OWN.set(OWN.get() + (hours * HOUR_MS) as f64);
    set_phone(bench, hours);
}

/// Time passes with the app closed.
pub fn away(hours: i64) {
    WALL.set(WALL.get() + hours * HOUR_MS);
    OWN.set(0.0);
}

/// Minutes pass by both clocks.
pub fn later_min(bench: Bench, minutes: i64) {
    OWN.set(OWN.get() + (minutes * 60_000) as f64);
    WALL.set(WALL.get() + minutes * 60_000);
    bench.tick();
}

/// The phone's clock goes on by so many minutes with the app closed.
pub fn away_min(minutes: i64) {
    WALL.set(WALL.get() + minutes * 60_000);
    OWN.set(0.0);
}

/// Someone sets the phone's clock.
pub fn set_phone(bench: Bench, hours: i64) {
    WALL.set(WALL.get() + hours * HOUR_MS);
    bench.tick();
}

pub fn with_bench<T>(store: &Rc<MemoryStore>, then: impl FnOnce(Bench) -> T) -> T {
    super::commands::lay_out(store.clone());
    let owner = Owner::new();
    owner.with(|| {
        let bench = Bench::open(Shelves::new(Shelf::new(store.clone()), None), wall);
        bench.watch_clock(own);
        then(bench)
    })
}

/// A stud in steel: half an hour to hold, 6 h until oil may touch it, a day to full cure at 22 °C.
fn stud() -> Application {
    let mut joint = Application::new(JointKind::Stud);
    joint.face = Some(Face::SteelOrIron);
    joint
}

pub fn start_free(bench: Bench) {
    bench
        .send(Intent::PutOnFree {
            name: "Stud".to_owned(),
            joint: Box::new(stud()),
            activator: false,
        })
        .unwrap();
}

pub fn step(bench: Bench, id: u32) -> Step {
    bench
        .sheet
        .with_untracked(|sheet| sheet.step(StepId(id)).cloned())
        .unwrap()
}

pub fn put_on(bench: Bench, step: &Step) -> Result<(), Refused> {
    acknowledge(bench, step);
    bench.send(Intent::PutOn {
        step: step.id,
        activator: false,
    })
}

/// How far the phone's clock is ahead, while the user has not said which is right.
pub fn ahead(bench: Bench) -> Option<i64> {
    bench.doubt.get_untracked().map(|doubt| doubt.ahead_ms)
}

fn ringing(bench: Bench) -> Vec<String> {
    bench
        .ringing
        .with_untracked(|all| all.iter().map(|ring| ring.words.clone()).collect())
}

/// What the record says of the phone's clock.
pub fn remarks(bench: Bench) -> Vec<String> {
    let sheet = bench.sheet.get_untracked();
    bench.record.with_untracked(|record| {
        let entries = record.entries().iter();
        let about = entries.filter(|entry| matches!(entry.event, Event::PhoneClock(_)));
        about.map(|entry| words(entry, &sheet)).collect()
    })
}

#[test]
fn each_mark_rings_once_and_not_again_after_a_reload() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        assert_eq!(ringing(bench), Vec::<String>::new());
        later(bench, 1);
        assert_eq!(ringing(bench), ["holds its place"]);
        bench.silence_all();
        bench.tick();
        assert_eq!(ringing(bench), Vec::<String>::new());
    });
    with_bench(&store, |bench| {
        assert_eq!(ringing(bench), Vec::<String>::new());
        // Three hours late: it rings on return, and says since when.
        later(bench, 26);
        assert_eq!(ringing(bench), ["full cure"]);
        let since = bench.ringing.with_untracked(|all| all[0].at);
        assert!((since.0 - (MORNING_MS + 24 * HOUR_MS)).abs() < 5_000);
    });
}

#[test]
fn a_colder_shop_takes_a_mark_back_and_rings_when_it_is_reached() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 25);
        bench.silence_all();
        // The shop was in truth 12 °C from the beginning, told too late to matter for what has passed;
        // told as of now, nothing already reached is taken back by the model.
        bench.note_shop(12.0);
        bench.tick();
        assert_eq!(ringing(bench), Vec::<String>::new());
    });
}

#[test]
fn a_clock_set_forward_shortens_nothing_and_is_recorded() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 1);
        set_phone(bench, 30);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + HOUR_MS));
        assert_eq!(ahead(bench), Some(30 * HOUR_MS));
        assert_eq!(ringing(bench), ["holds its place"]);
        assert!(remarks(bench)[0].contains("30 h ahead"), "{:?}", remarks(bench));
    });
    // The doubt outlives a reload, and so does the hold.
    with_bench(&store, |bench| {
        assert_eq!(ahead(bench), Some(30 * HOUR_MS));
        assert!(bench.now.get_untracked().0 < MORNING_MS + 2 * HOUR_MS);
        bench.judge_clock(Judged::Right);
        assert_eq!(bench.doubt.get_untracked(), None);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 31 * HOUR_MS));
        assert_eq!(ringing(bench), ["full cure"]);
        assert!(remarks(bench).last().unwrap().contains("said to be right"));
    });
}

/// By the harsher of two clocks a bead is too late; said to be wrong, that clock no longer counts.
#[test]
fn a_deadline_taken_back_rings_no_more() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 4);
        put_on(bench, &baffle).unwrap();
        set_phone(bench, 30);
        later_min(bench, 1);
        assert_eq!(ringing(bench), ["too late to close it"]);
        bench.judge_clock(Judged::Wrong);
        later_min(bench, 1);
        assert_eq!(ringing(bench), Vec::<String>::new());
    });
}

#[test]
fn a_phone_said_to_be_wrong_is_held_until_it_is_set_right() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        set_phone(bench, 8);
        bench.judge_clock(Judged::Wrong);
        later(bench, 2);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 2 * HOUR_MS));
        set_phone(bench, -8);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 2 * HOUR_MS));
        assert_eq!(bench.phone_ahead_ms(), 0);
        assert!(remarks(bench).last().unwrap().contains("in step again"));
    });
}

#[test]
fn where_nothing_cures_a_sleep_is_not_asked_about() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        set_phone(bench, 8);
        assert_eq!(bench.doubt.get_untracked(), None);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 8 * HOUR_MS));
        // Set back, it is: what was recorded would be still to come.
        set_phone(bench, -8);
        assert_eq!(ahead(bench), Some(-8 * HOUR_MS));
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 8 * HOUR_MS));
    });
}

#[test]
fn a_clock_set_back_while_the_app_was_closed_is_noticed() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 5);
    });
    WALL.set(WALL.get() - 4 * HOUR_MS);
    with_bench(&store, |bench| {
        assert_eq!(ahead(bench), Some(-4 * HOUR_MS));
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 5 * HOUR_MS));
        bench.judge_clock(Judged::Right);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + HOUR_MS));
    });
    // Once judged, it is not asked about again.
    with_bench(&store, |bench| {
        assert_eq!(bench.doubt.get_untracked(), None);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + HOUR_MS));
    });
}

#[test]
fn a_joint_opened_again_begins_anew_and_undo_brings_the_old_clock_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let spigot = step(bench, 7);
        put_on(bench, &spigot).unwrap();
        let first = bench.clocks.with_untracked(|clocks| clocks[0].id);
        later(bench, 10);
        bench.restart(first);
        bench.clocks.with_untracked(|clocks| {
            assert_eq!(clocks[0].ended, Some(Ended::Reopened));
            assert_eq!(clocks[1].started, Moment(MORNING_MS + 10 * HOUR_MS));
            assert_eq!(clocks[1].bound, clocks[0].bound);
            assert_eq!(clocks[1].spec, clocks[0].spec);
        });
        assert_eq!(
            bench.progress.with_untracked(|p| p.step(StepId(7)).clocks.len()),
            2
        );
        bench.undo().unwrap();
        bench.clocks.with_untracked(|clocks| {
            assert_eq!(clocks[0].ended, None);
            assert_eq!(clocks[1].ended, Some(Ended::Undone));
        });
    });
}

#[test]
fn a_finished_clock_is_put_away_and_comes_back_by_undo() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 30);
        let id = bench.clocks.with_untracked(|clocks| clocks[0].id);
        bench.put_away(id);
        assert_eq!(ringing(bench), Vec::<String>::new());
        assert!(
            bench
                .clocks
                .with_untracked(|clocks| clocks[0].ended == Some(Ended::PutAway) && clocks[0].counts())
        );
        bench.undo().unwrap();
        assert!(bench.clocks.with_untracked(|clocks| clocks[0].ended.is_none()));
    });
}

#[test]
fn a_spoiled_bottle_starts_no_clock() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let spigot = step(bench, 7);
        bench.shelve(Bottle {
            name: "Old tube".into(),
            expires_year: Some(2025),
            ..Bottle::new(BottleId(1), CompoundClass::RetainingCompound)
        });
        let refused = put_on(bench, &spigot).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "“Old tube”: Expired: good until 2025-12-31. Take another on Bond, or typical figures."
        );
        assert!(bench.clocks.with_untracked(Vec::is_empty));
        bench.take_typical(|bottle| bottle.class == CompoundClass::RetainingCompound);
        put_on(bench, &spigot).unwrap();
        assert_eq!(
            bench.clocks.with_untracked(|clocks| clocks[0].compound.clone()),
            "retaining compound"
        );
    });
    // The shelf is there after a reload.
    with_bench(&store, |bench| {
        assert_eq!(bench.settings.with_untracked(|s| s.bottles.len()), 1);
        assert_eq!(bench.next_bottle(), BottleId(2));
    });
}

#[test]
fn one_bottle_of_a_class_is_in_use() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        for (id, class) in [
            (1, CompoundClass::RetainingCompound),
            (2, CompoundClass::RetainingCompound),
            (3, CompoundClass::ThreadlockLow),
        ] {
            bench.shelve(Bottle::new(BottleId(id), class));
        }
        let used = || {
            bench
                .settings
                .with_untracked(|s| s.bottles.iter().map(|b| b.in_use).collect::<Vec<_>>())
        };
        assert_eq!(used(), [false, true, true]);
        bench.take_bottle(BottleId(1));
        assert_eq!(used(), [true, false, true]);
        bench.undo().unwrap();
        assert_eq!(used(), [false, true, true]);
    });
}

#[test]
fn an_answer_changed_for_a_step_is_kept_in_its_sheet() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let mut joint = step(bench, 15).work.application().unwrap().clone();
        joint.oil_ways = Some(false);
        bench.answer_for(StepId(15), joint.clone());
        assert_eq!(step(bench, 15).work.application(), Some(&joint));
    });
    with_bench(&store, |bench| {
        assert_eq!(step(bench, 15).work.application().unwrap().oil_ways, Some(false));
    });
}

#[test]
fn a_planned_night_is_kept_and_a_refused_one_leaves_nothing_to_undo() {
    let store = Rc::new(MemoryStore::default());
    let night = Night {
        celsius: 10.0,
        from_hour: 20,
        to_hour: 7,
        day_celsius: 0.0,
    };
    with_bench(&store, |bench| {
        assert!(bench.plan_night(night).is_err());
        assert_eq!(bench.undo(), Err(Refused::NothingToUndo));
        bench.note_shop(22.0);
        bench.plan_night(night).unwrap();
    });
    with_bench(&store, |bench| {
        assert_eq!(
            bench
                .settings
                .with_untracked(|s| s.night.map(|night| night.day_celsius)),
            Some(22.0)
        );
        bench.unplan_night();
        assert_eq!(bench.settings.with_untracked(|s| s.night), None);
    });
}

#[test]
fn the_calendar_goes_by_the_phones_own_clock_even_when_it_is_held_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        start_free(bench);
        assert!(
            bench.calendar(None).contains("DTSTART:20260602T080000Z"),
            "{}",
            bench.calendar(None)
        );
        set_phone(bench, 8);
        assert!(
            bench.calendar(None).contains("DTSTART:20260602T160000Z"),
            "{}",
            bench.calendar(None)
        );
    });
}

#[test]
fn a_part_from_the_oven_cools_while_the_phone_sleeps_and_no_slower_for_a_clock_set_back() {
    let window = TimeRange {
        shortest: Time::new::<second>(3_000.0),
        longest: Time::new::<second>(6_000.0),
    };
    for hours in [2, -2] {
        let store = Rc::new(MemoryStore::default());
        with_bench(&store, |bench| {
            start_free(bench);
            let step = Some(StepId(8));
            bench.take_out(step, window);
            assert!(matches!(
                untrack(|| bench.countdown(step)),
                Some(OvenState::Open(_))
            ));
            if hours > 0 {
                // The page's own clock stands still in a sleep: cures are held, the part is cold.
                set_phone(bench, hours);
                assert!(bench.doubt.get_untracked().is_some());
            } else {
                set_phone(bench, hours);
                later(bench, 2);
            }
            assert!(matches!(
                untrack(|| bench.countdown(step)),
                Some(OvenState::Shut(_))
            ));
            // It is no other job's.
            bench.begin_example();
            assert_eq!(untrack(|| bench.countdown(step)), None);
            assert!(untrack(|| bench.on_its_way()).is_some());
        });
    }
}

/// The phone was a day slow when the compound went on, and is put right ten minutes later: an honest "the
/// phone is right" would count a day that never passed.
#[test]
fn what_was_put_on_by_a_wrong_clock_is_moved_with_it() {
    for (hours, mend) in [(24, 24), (3, 3)] {
        let store = Rc::new(MemoryStore::default());
        WALL.set(MORNING_MS);
        OWN.set(0.0);
        with_bench(&store, |bench| {
            start_free(bench);
            set_phone(bench, hours);
            assert_eq!(ahead(bench), Some(mend * HOUR_MS));
            bench.judge_clock(Judged::RightNow);
            assert_eq!(
                (ahead(bench), bench.now.get_untracked()),
                (None, Moment(MORNING_MS + mend * HOUR_MS))
            );
            let started = bench.clocks.with_untracked(|clocks| clocks[0].started);
            assert_eq!(started, Moment(MORNING_MS + mend * HOUR_MS));
            assert_eq!(ringing(bench), Vec::<String>::new());
            let said = remarks(bench).last().unwrap().clone();
            assert!(said.contains(&format!("{mend} h slow before")), "{said}");
            // It cures from its true start on.
            later(bench, 1);
            assert_eq!(ringing(bench), ["holds its place"]);
        });
    }
    // A day fast: what then lies in the future began by the right clock.
    let store = Rc::new(MemoryStore::default());
    WALL.set(MORNING_MS + 24 * HOUR_MS);
    with_bench(&store, |bench| {
        start_free(bench);
        set_phone(bench, -24);
        bench.judge_clock(Judged::RightNow);
        let started = bench.clocks.with_untracked(|clocks| clocks[0].started);
        assert_eq!(started, Moment(MORNING_MS));
        bench.undo().unwrap();
    });
}

#[test]
fn undo_of_what_came_before_leaves_a_moved_start_moved() {
    let store = Rc::new(MemoryStore::default());
    WALL.set(MORNING_MS);
    OWN.set(0.0);
    with_bench(&store, |bench| {
        start_free(bench);
        start_free(bench);
        let away = bench.clocks.with_untracked(|clocks| clocks[1].id);
        bench.send(Intent::PutAway(away)).unwrap();
        set_phone(bench, 10);
        bench.judge_clock(Judged::RightNow);
        bench.undo().unwrap();
        let started = bench.clocks.with_untracked(|clocks| clocks[0].started);
        assert_eq!(started, Moment(MORNING_MS + 10 * HOUR_MS));
    });
}

#[test]
fn a_night_away_that_cures_a_joint_is_asked_about_once() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, start_free);
    WALL.set(WALL.get() + 30 * HOUR_MS);
    with_bench(&store, |bench| {
        assert!(bench.doubt.get_untracked().is_some_and(|doubt| doubt.closed));
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS));
        assert!(
            remarks(bench)[0].contains("30 h went by while Halfcase was closed"),
            "{:?}",
            remarks(bench)
        );
        bench.judge_clock(Judged::Right);
        assert_eq!(bench.now.get_untracked(), Moment(MORNING_MS + 30 * HOUR_MS));
    });
    with_bench(&store, |bench| assert_eq!(bench.doubt.get_untracked(), None));
}
