//! The plan changed at the bench: kept at once, undone, and never out from under its record.

use super::commands::{acknowledge, done_step, step, with_bench};
use halfcase::bench::{Intent, Refused};
use halfcase::job::kinds::{Work, blank, fasten};
use halfcase::job::parts::{self, PartPlace};
use halfcase::job::planning::PlanRefused;
use halfcase::job::progress::Status;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::MemoryStore;
use halfcase::trade::quantity::parse_torque;
use std::rc::Rc;

#[test]
fn a_step_is_added_changed_moved_and_taken_out_and_undone_to_the_beginning() {
    let store = Rc::new(MemoryStore::default());
    let planned = with_bench(&store, |bench| {
        let first = bench.sheet.get_untracked();
        let id = bench.add_step(
            Some(StepId(1)),
            Step::new(
                StepId(0),
                "Fasten M8",
                Work::Fasten(fasten::begin("M8", "20 N·m").unwrap()),
            ),
        );
        assert_eq!(bench.sheet.with_untracked(|sheet| sheet.place(id)), Some(1));
        bench.edit_step(id, "fasten/count", "6").unwrap();
        assert!(bench.edit_step(id, "fasten/count", "six").is_err());
        bench.move_step(id, true).unwrap();
        let copy = bench.copy_step(id).unwrap();
        bench.remove_step(copy).unwrap();
        bench.change_work(id, blank("Turn").unwrap()).unwrap();
        for _ in 0..6 {
            bench.undo().unwrap();
        }
        assert_eq!(bench.sheet.get_untracked(), first);
        bench.add_step(None, Step::new(StepId(0), "Turn", blank("Turn").unwrap()));
        bench.sheet.get_untracked()
    });
    with_bench(&store, |bench| assert_eq!(bench.sheet.get_untracked(), planned));
}

#[test]
fn a_step_the_record_speaks_of_stays_in_the_plan() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        done_step(bench, 1);
        assert_eq!(
            bench.remove_step(StepId(1)),
            Err(Refused::Plan(PlanRefused::InRecord))
        );
        assert_eq!(
            bench.change_work(StepId(1), blank("Turn").unwrap()),
            Err(Refused::Plan(PlanRefused::InRecord))
        );
        bench.edit_step(StepId(1), "title", "Wash both halves").unwrap();
    });
}

#[test]
fn leaving_out_asks_for_a_reason_and_can_be_opened_again() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let baffle = step(bench, 3);
        let skip = |reason: &str| {
            bench.send(Intent::Skip {
                step: baffle.id,
                reason: reason.to_owned(),
            })
        };
        assert_eq!(skip("  "), Err(Refused::NoReason));
        skip("no baffle on this one").unwrap();
        let status = || {
            bench
                .progress
                .with_untracked(|progress| progress.step(StepId(3)).status)
        };
        assert!(matches!(status(), Status::Skipped(_)));
        bench.reopen(StepId(3));
        assert_eq!(status(), Status::Open);
        // That is an action as any other.
        bench.undo().unwrap();
        assert!(matches!(status(), Status::Skipped(_)));
        bench.undo().unwrap();
        assert_eq!(status(), Status::Open);
        assert_eq!(bench.undo(), Err(Refused::NothingToUndo));
    });
}

#[test]
fn a_turn_step_is_done_once_it_is_said_how_it_turns() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let turn = step(bench, 13);
        acknowledge(bench, &turn);
        assert_eq!(bench.send(Intent::Close(turn.id)), Err(Refused::NotFelt));
        bench.feel(StepId(13), "at 4 o’clock");
        bench.feel(StepId(13), "");
        assert_eq!(
            bench.progress.with_untracked(|p| p.step(StepId(13)).felt.clone()),
            Some(String::new())
        );
        bench.undo().unwrap();
        assert_eq!(
            bench
                .progress
                .with_untracked(|p| p.step(StepId(13)).felt.clone())
                .as_deref(),
            Some("at 4 o’clock")
        );
        // A tight spot is settled first.
        assert!(matches!(
            bench.send(Intent::Close(turn.id)),
            Err(Refused::Finding(_))
        ));
        bench.feel(StepId(13), "");
        assert_eq!(bench.send(Intent::Close(turn.id)), Ok(()));
    });
}

#[test]
fn parts_are_ticked_where_they_lie_and_kept() {
    let store = Rc::new(MemoryStore::default());
    let listed = |bench: halfcase::bench::Bench| {
        bench.sheet.with_untracked(|sheet| {
            bench
                .progress
                .with_untracked(|progress| parts::list(sheet, progress))
        })
    };
    with_bench(&store, |bench| {
        let part = listed(bench)[0].clone();
        bench.place_part(&part, PartPlace::AtShop, 0);
        assert!(!listed(bench)[0].ticked());
        bench.tick_part(&listed(bench)[0]);
    });
    with_bench(&store, |bench| {
        let part = &listed(bench)[0];
        assert!(part.ticked() && part.sent, "{part:?}");
        assert_eq!(part.place, PartPlace::OnBench);
    });
}

/// The slip guard's key: 200 typed for 20, in the stage that asks for it too.
#[test]
fn a_corrected_torque_reaches_its_stages() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let begun = fasten::begin("M8", "200 N·m + 90°").unwrap();
        let id = bench.add_step(None, Step::new(StepId(0), "Rod", Work::Fasten(begun)));
        bench.correct_torque(id, parse_torque("20 N·m", None).unwrap());
        let words: Vec<String> = bench
            .sheet
            .with_untracked(|sheet| match &sheet.step(id).unwrap().work {
                Work::Fasten(fasten) => fasten.stages.iter().map(|stage| stage.text()).collect(),
                other => panic!("{other:?}"),
            });
        assert_eq!(words, ["to 20 N·m", "turn a further 90°"]);
    });
}
