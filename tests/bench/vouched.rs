//! Time that nobody vouched for makes nothing ripe, whenever it would come to matter.

use super::clocks::{
    HOUR_MS, MORNING_MS, ahead, away, away_min, later, later_min, put_on, remarks, set_phone, start_free,
    step, with_bench,
};
use halfcase::bench::{Ask, Bench, Intent, Judged};
use halfcase::job::clock::{ClockId, CureClock};
use halfcase::job::kinds::{Work, fasten};
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::{MemoryStore, Store};
use halfcase::trade::cure::Milestone;
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use std::rc::Rc;

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

fn clock(bench: Bench, id: u32) -> CureClock {
    let clocks = bench.clocks.get_untracked();
    clocks.into_iter().find(|clock| clock.id == ClockId(id)).unwrap()
}

/// Whether oil may touch it by our time.
fn fit_for_oil(bench: Bench, id: u32) -> bool {
    let shop = bench.settings.with_untracked(|settings| settings.shop.clone());
    let done = clock(bench, id).reached_at(Milestone::FitForOil, &shop);
    done.unwrap().latest <= bench.now.get_untracked()
}

fn hours(hours: i64) -> Moment {
    Moment(MORNING_MS + hours * HOUR_MS)
}

/// An hour after the compound went on, somebody sets the clock four hours ahead while the app is closed: no
/// mark lies between, and still the oil is not let in four hours early.
#[test]
fn time_away_that_ripens_nothing_yet_is_asked_about_when_it_would() {
    let store = store();
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 1);
    });
    away(4);
    with_bench(&store, |bench| {
        assert_eq!(ahead(bench), None, "it is no matter yet");
        later(bench, 2);
        assert!(!fit_for_oil(bench, 1));
        assert_eq!(
            (ahead(bench), bench.now.get_untracked()),
            (Some(4 * HOUR_MS), hours(3))
        );
        let said = remarks(bench).remove(0);
        assert!(said.contains("4 h went by while Halfcase was closed"), "{said}");
        bench.judge_clock(Judged::Right);
        assert!(fit_for_oil(bench, 1));
        // Once is enough.
        later(bench, 20);
        assert_eq!(ahead(bench), None);
    });
}

/// Closed for a minute, the clock set 28 min ahead meanwhile: a wait of a few hours isn't shortened by that.
/// A twentieth of the wait is let pass, half an hour at most.
#[test]
fn a_short_time_away_is_let_pass_by_how_long_the_wait_is() {
    for milestone in [Milestone::Fixture, Milestone::FitForOil, Milestone::FullCure] {
        for asked in [false, true] {
            let store = store();
            let (wait, gap) = with_bench(&store, |bench| {
                start_free(bench);
                let shop = bench.settings.with_untracked(|settings| settings.shop.clone());
                let (clock, at) = (clock(bench, 1), bench.now.get_untracked());
                let wait = (clock.reached_at(milestone, &shop).unwrap().latest.0 - at.0) / 60_000;
                later_min(bench, wait / 2);
                (wait, (wait / 20).min(30) + if asked { 1 } else { -1 })
            });
            away_min(gap);
            with_bench(&store, |bench| {
                later_min(bench, wait - wait / 2 - gap - 1);
                assert_eq!(ahead(bench), None, "{milestone:?}, not yet");
                later_min(bench, 1);
                let held = asked.then_some(gap * 60_000);
                assert_eq!(ahead(bench), held, "{milestone:?}, {gap} min of {wait}");
            });
        }
    }
}

#[test]
fn many_short_times_away_are_one_long_one() {
    let store = store();
    with_bench(&store, start_free);
    for _ in 0..6 {
        away(1);
        with_bench(&store, |bench| {
            later(bench, 0);
            assert!(!fit_for_oil(bench, 1));
        });
    }
    with_bench(&store, |bench| {
        assert_eq!(ahead(bench), Some(6 * HOUR_MS));
    });
}

/// What was put on in this session knows nothing of the time away before it.
#[test]
fn what_went_on_after_the_time_away_is_not_held_back() {
    let store = store();
    with_bench(&store, |bench| later(bench, 1));
    away(50);
    with_bench(&store, |bench| {
        start_free(bench);
        later(bench, 30);
        assert_eq!(ahead(bench), None);
    });
    away(1);
    with_bench(&store, |bench| assert_eq!(ahead(bench), None));
}

/// Asked, not answered, and closed again: the question stands, and nothing was counted.
#[test]
fn a_question_left_open_over_a_reload_counts_nothing() {
    let store = store();
    with_bench(&store, start_free);
    away(30);
    for _ in 0..3 {
        with_bench(&store, |bench| {
            assert_eq!(
                (ahead(bench), bench.now.get_untracked()),
                (Some(30 * HOUR_MS), hours(0))
            );
            assert!(!fit_for_oil(bench, 1));
        });
    }
    with_bench(&store, |bench| bench.judge_clock(Judged::Wrong));
    with_bench(&store, |bench| assert!(!fit_for_oil(bench, 1)));
}

/// The phone slept for 8 h, and before anybody answers another joint is closed: it has not cured for 8 h.
#[test]
fn what_goes_on_before_the_answer_begins_at_its_own_time() {
    for reloads in [false, true] {
        let store = store();
        let answer = |bench: Bench| {
            bench.judge_clock(Judged::Right);
            let [first, second] = [1, 2].map(|id| clock(bench, id));
            assert_eq!((first.started, second.started), (hours(0), hours(8)));
            assert!(fit_for_oil(bench, 1) && !fit_for_oil(bench, 2));
        };
        with_bench(&store, |bench| {
            let begun = bench.now.get_untracked().0 - MORNING_MS;
            assert_eq!(begun, 0);
            start_free(bench);
            set_phone(bench, 8);
            start_free(bench);
            if !reloads {
                answer(bench);
            }
        });
        if reloads {
            with_bench(&store, answer);
        }
        away(-8);
    }
}

/// The phone was said to be wrong and is set right: our time was true all along, and so are the starts.
#[test]
fn what_goes_on_while_the_phone_is_wrong_keeps_its_start() {
    let store = store();
    with_bench(&store, |bench| {
        start_free(bench);
        set_phone(bench, 8);
        bench.judge_clock(Judged::Wrong);
        start_free(bench);
        set_phone(bench, -8);
        assert_eq!((clock(bench, 2).started, clock(bench, 2).held_ms), (hours(0), 0));
    });
}

/// The joint is opened again, the wrong clock is put right, and the opening is undone: the start that comes
/// back was made by the wrong clock too.
#[test]
fn a_start_that_undo_brings_back_was_moved_too() {
    let store = store();
    with_bench(&store, |bench| {
        put_on(bench, &step(bench, 7)).unwrap();
        bench.restart(ClockId(1));
        set_phone(bench, 10);
        bench.judge_clock(Judged::RightNow);
        bench.undo().unwrap();
        let back = clock(bench, 1);
        assert_eq!((back.ended, back.started), (None, hours(10)));
    });
}

/// Nothing runs, as the joint is open; the clock is set ahead, and the opening undone.
#[test]
fn a_joint_that_undo_closes_again_has_not_cured_by_a_clock_set_ahead() {
    let store = store();
    with_bench(&store, |bench| {
        let seven = step(bench, 7);
        put_on(bench, &seven).unwrap();
        bench.send(Intent::Close(seven.id)).unwrap();
        bench.send(Intent::Reopen(StepId(7))).unwrap();
        set_phone(bench, 48);
        bench.undo().unwrap();
        assert_eq!(clock(bench, 1).ended, None);
        assert!(!fit_for_oil(bench, 1));
    });
}

/// The phone sleeps an hour over a wet bead: it has skinned, unless somebody says that the phone is wrong.
#[test]
fn a_bead_has_no_more_time_while_the_clock_is_in_doubt() {
    let store = store();
    with_bench(&store, |bench| {
        let bead = step(bench, 7);
        let bolts = fasten::begin("M8", "22 N·m").unwrap();
        let mut bolts = Step::new(StepId(0), "Cover", Work::Fasten(bolts));
        bolts.before_skin = vec![bead.id];
        let bolts = bench.add_step(Some(bead.id), bolts);
        let late = || {
            let deadline = untrack(|| bench.deadlines(Some(bolts)))[0];
            assert!(deadline.until.is_ok(), "{deadline:?}");
            let asked = untrack(|| bench.ask(bolts));
            assert_eq!(
                matches!(asked, Some(Ask::Skinned(_))),
                deadline.over(bench.now.get_untracked())
            );
            matches!(asked, Some(Ask::Skinned(_)))
        };
        put_on(bench, &bead).unwrap();
        assert!(!late());
        set_phone(bench, 1);
        assert!(late());
        // What goes on now has its whole time.
        bench.restart(ClockId(1));
        assert!(!late());
        bench.undo().unwrap();
        assert!(late());
        bench.judge_clock(Judged::Wrong);
        assert!(!late());
    });
}

/// Both copies of the watch lost or damaged while the phone is known to be wrong.
#[test]
fn a_lost_watch_makes_nothing_ripe() {
    for torn in [false, true] {
        let store = store();
        let lose = || {
            for key in ["halfcase/watch/a", "halfcase/watch/b"] {
                match torn {
                    true => store.set(key, "torn").unwrap(),
                    false => store.remove(key),
                }
            }
        };
        with_bench(&store, |bench| {
            start_free(bench);
            later(bench, 1);
            set_phone(bench, 8);
            bench.judge_clock(Judged::Wrong);
        });
        lose();
        with_bench(&store, |bench| {
            assert!(ahead(bench).is_some() && !fit_for_oil(bench, 1));
            bench.judge_clock(Judged::Wrong);
            later(bench, 1);
            assert!(!fit_for_oil(bench, 1));
        });
        // Our time went back when the wrong clock was set right: the lines before it lie ahead.
        away(-8);
        with_bench(&store, |bench| {
            bench.judge_clock(Judged::RightNow);
            start_free(bench);
        });
        lose();
        with_bench(&store, |bench| assert!(!fit_for_oil(bench, 2)));
        away(-2);
    }
}

/// One copy lost: the other was kept before the answer, and what the answer moved must not ripen by it.
#[test]
fn the_older_copy_of_the_watch_makes_nothing_ripe() {
    for lost in ["halfcase/watch/a", "halfcase/watch/b"] {
        let store = store();
        with_bench(&store, |bench| {
            set_phone(bench, 24);
            start_free(bench);
            set_phone(bench, -24);
            bench.judge_clock(Judged::RightNow);
            assert_eq!(clock(bench, 1).started, hours(0));
        });
        store.remove(lost);
        with_bench(&store, |bench| assert!(!fit_for_oil(bench, 1), "{lost}"));
    }
}
