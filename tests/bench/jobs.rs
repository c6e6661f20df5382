//! Several jobs, one at hand: begun, taken, renamed, archived, copied, deleted, and every one undone.

use super::commands::{done_step, step, with_bench};
use halfcase::bench::{JobRefused, ReadWith, Refused};
use halfcase::job::job_line::JobLine;
use halfcase::job::reading::What;
use halfcase::job::record::Event;
use halfcase::job::search::{Opens, Query, found};
use halfcase::job::sheet::{JobId, StepId};
use halfcase::job::shelf::{MemoryStore, Store};
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use std::rc::Rc;

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

#[test]
fn a_job_begun_from_nothing_is_at_hand_and_the_example_is_still_there() {
    let store = store();
    let example = with_bench(&store, |bench| {
        done_step(bench, 1);
        let example = bench.sheet.get_untracked();
        assert_eq!(bench.begin_empty("  "), Err(Refused::Job(JobRefused::NoTitle)));
        let id = bench.begin_empty("Side cover").unwrap();
        assert_eq!(bench.job.get_untracked(), id);
        assert!(bench.record.with_untracked(|record| record.entries().is_empty()));
        example
    });
    with_bench(&store, |bench| {
        assert_eq!(
            bench.sheet.with_untracked(|sheet| sheet.title.clone()),
            "Side cover"
        );
        bench.take_job(JobId(1)).unwrap();
        assert_eq!(bench.sheet.get_untracked(), example);
        assert!(
            bench
                .progress
                .with_untracked(|progress| progress.closed(StepId(1)))
        );
    });
    with_bench(&store, |bench| assert_eq!(bench.job.get_untracked(), JobId(1)));
}

#[test]
fn the_examples_sheet_is_kept_with_its_first_line_of_record() {
    let store = store();
    with_bench(&store, |bench| done_step(bench, 1));
    assert!(store.keys().iter().any(|key| key.starts_with("halfcase/job/1/")));
}

#[test]
fn an_example_never_touched_is_not_lost_when_another_job_begins() {
    let store = store();
    with_bench(&store, |bench| {
        bench.begin_empty("Side cover").unwrap();
    });
    with_bench(&store, |bench| {
        bench.take_job(JobId(1)).unwrap();
        assert!(bench.sheet.with_untracked(|sheet| sheet.steps.len()) >= 20);
    });
}

#[test]
fn a_copy_is_a_fresh_sheet_with_an_empty_record() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        let copy = bench.duplicate_job(JobId(1)).unwrap();
        assert_eq!(bench.job.get_untracked(), copy);
        assert!(bench.record.with_untracked(|record| record.entries().is_empty()));
        assert!(
            bench
                .sheet
                .with_untracked(|sheet| sheet.title.ends_with(", afresh"))
        );
        assert!(bench.sheet_of(JobId(1)).is_some());
    });
}

#[test]
fn a_deleted_job_is_one_undo_away_and_kept_after_a_reload() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        assert_eq!(bench.delete_job(JobId(1)), Err(Refused::Job(JobRefused::LastOne)));
        bench.begin_empty("Side cover").unwrap();
        bench.take_job(JobId(1)).unwrap();
        bench.delete_job(JobId(1)).unwrap();
        assert_eq!(bench.job.get_untracked(), JobId(2));
        bench.undo().unwrap();
        assert_eq!(bench.job.get_untracked(), JobId(1));
        assert!(
            bench
                .jobs
                .with_untracked(|jobs| jobs.iter().all(|job| !job.deleted))
        );
        bench.delete_job(JobId(1)).unwrap();
    });
    with_bench(&store, |bench| {
        assert!(bench.jobs.with_untracked(|jobs| jobs[0].deleted));
        bench.bring_back_job(JobId(1));
        bench.take_job(JobId(1)).unwrap();
        assert!(
            bench
                .progress
                .with_untracked(|progress| progress.closed(StepId(1)))
        );
    });
}

#[test]
fn freed_jobs_leave_the_store_and_undo_brings_even_them_back() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        let record = bench.record.get_untracked();
        bench.begin_empty("Side cover").unwrap();
        bench.delete_job(JobId(1)).unwrap();
        bench.free_deleted();
        assert!(
            !store
                .keys()
                .iter()
                .any(|key| key.contains("/job/1/") || key.contains("/record/1/"))
        );
        bench.undo().unwrap();
        bench.bring_back_job(JobId(1));
        bench.take_job(JobId(1)).unwrap();
        assert_eq!(bench.record.get_untracked(), record);
    });
}

#[test]
fn a_new_name_stands_in_the_list_and_in_the_sheet_and_is_undone_in_both() {
    let store = store();
    with_bench(&store, |bench| {
        let old = bench.sheet.with_untracked(|sheet| sheet.title.clone());
        bench.begin_empty("Side cover").unwrap();
        bench.rename_job(JobId(1), "Gearbox, spring").unwrap();
        assert_eq!(
            bench.jobs.with_untracked(|jobs| jobs[0].title.clone()),
            "Gearbox, spring"
        );
        bench.archive_job(JobId(1), true);
        bench.undo().unwrap();
        bench.undo().unwrap();
        assert_eq!(
            bench
                .jobs
                .with_untracked(|jobs| (jobs[0].title.clone(), jobs[0].archived)),
            (old, false)
        );
    });
}

#[test]
fn undo_of_another_jobs_name_leaves_the_one_at_hand() {
    let store = store();
    with_bench(&store, |bench| {
        let two = bench.begin_empty("Side cover").unwrap();
        bench.rename_job(JobId(1), "Gearbox, spring").unwrap();
        bench.undo().unwrap();
        assert_eq!(bench.job.get_untracked(), two);
        assert_eq!(
            bench.sheet.with_untracked(|sheet| sheet.title.clone()),
            "Side cover"
        );
        assert_ne!(bench.sheet_of(JobId(1)).unwrap().title, "Gearbox, spring");
    });
}

#[test]
fn a_steps_adapter_stays_with_its_job() {
    let store = store();
    with_bench(&store, |bench| {
        bench.carry(&step(bench, 4));
        bench.on_desk("adapter", |desk| desk.adapter_on = true);
        let two = bench.begin_example();
        let on = |desk: &halfcase::bench::Desk| desk.from.is_some() || desk.adapter_on;
        assert!(!bench.settings.with_untracked(|settings| on(&settings.desk)));
        // One on the wrench for no step in particular stays where it is.
        bench.on_desk("adapter", |desk| desk.adapter_on = true);
        bench.take_job(JobId(1)).unwrap();
        bench.take_job(two).unwrap();
        assert!(bench.settings.with_untracked(|settings| on(&settings.desk)));
    });
}

#[test]
fn undo_takes_back_in_the_job_it_was_done_in() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        let two = bench.begin_example();
        done_step(bench, 1);
        // Back through: the step of the second, its beginning, the step of the first.
        bench.undo().unwrap();
        assert_eq!(bench.job.get_untracked(), two);
        bench.undo().unwrap();
        assert_eq!(bench.job.get_untracked(), JobId(1));
        assert!(
            bench
                .jobs
                .with_untracked(|jobs| jobs.iter().all(|job| job.id != two))
        );
        bench.undo().unwrap();
        let last = bench
            .record
            .with_untracked(|record| record.entries().last().cloned())
            .unwrap();
        assert!(matches!(last.event, Event::TakenBack { .. }));
        assert!(
            !bench
                .progress
                .with_untracked(|progress| progress.closed(StepId(1)))
        );
    });
}

#[test]
fn the_last_twenty_actions_are_seen_newest_first_even_after_a_reload() {
    let store = store();
    with_bench(&store, |bench| {
        for n in 0..30 {
            let what = What::Named(format!("reading {n}"));
            bench
                .measure(StepId(2), what, 1.0, "mm", &ReadWith::default())
                .unwrap();
        }
        let seen = bench.history();
        assert_eq!(seen.len(), 20);
        assert_eq!(seen[0].1, "reading of reading 29");
        assert_eq!(seen[19].1, "reading of reading 10");
        bench.undo().unwrap();
        assert_eq!(bench.history()[0].1, "reading of reading 28");
    });
    with_bench(&store, |bench| {
        let seen = bench.history();
        assert_eq!((seen.len(), seen[0].1.as_str()), (20, "reading of reading 28"));
    });
}

#[test]
fn what_is_found_in_another_job_brings_that_job_to_hand() {
    let store = store();
    with_bench(&store, |bench| {
        let example = bench.job.get_untracked();
        bench.begin_empty("Side cover").unwrap();
        bench.archive_job(example, true);
        let all = bench.gathered();
        let query = Query::read("baffle screws m6", 0);
        let hit = found(&all, &query).next().cloned().unwrap();
        assert_eq!((hit.job, hit.opens), (Some(example), Opens::Step(StepId(4))));
        bench.take_job_of(hit.job).unwrap();
        assert_eq!(bench.job.get_untracked(), example);
        // Taken already, it is no action to undo.
        let before = bench.history().len();
        bench.take_job_of(hit.job).unwrap();
        assert_eq!(bench.history().len(), before);
    });
}

#[test]
fn the_list_tells_each_job_by_its_machine_how_far_it_is_and_when() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        bench.begin_empty("Side cover").unwrap();
        bench.name_machine("Brackmoor T5");
        let lines = untrack(|| bench.job_lines());
        let of = |line: &JobLine| (line.machine.clone(), line.done_words(), line.last, line.at_hand);
        let example = bench.sheet_of(JobId(1)).unwrap();
        assert_eq!(
            of(&lines[0]),
            (
                example.machine,
                format!("1 of {} done", example.steps.len()),
                Some(bench.now.get_untracked()),
                false
            )
        );
        assert_eq!(
            of(&lines[1]),
            ("Brackmoor T5".to_owned(), "no steps yet".to_owned(), None, true)
        );
    });
}
