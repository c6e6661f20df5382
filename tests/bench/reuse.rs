//! Bolts that come again: so many times, or up to a length; then new ones.

use super::commands::with_bench;
use halfcase::bench::{Bench, Intent, ReadWith, Refused};
use halfcase::job::journal::{Filter, journal};
use halfcase::job::parts::PartKey;
use halfcase::job::reading::What;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::shelf::MemoryStore;
use halfcase::job::state::Ask;
use reactive_graph::graph::untrack;
use std::rc::Rc;

const STEP: StepId = StepId(1);

/// The cylinder head's two bolts, tightened three times at most and no longer than 88.5 mm.
const SHEET: &str = r#"{"version":1,"title":"Head","steps":[
    {"id":1,"title":"Head bolts","work":{"fasten":{"thread":"M8","torque":"22 N·m",
        "layout":{"line":{"count":2}},"most_uses":3,"longest_mm":88.5}}}]}"#;

fn on(test: impl FnOnce(Bench)) {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.begin_job(Sheet::from_json(SHEET).unwrap());
        bench.take_wrench(1);
        test(bench);
    });
}

fn ask(bench: Bench) -> Option<Ask> {
    untrack(|| bench.ask(STEP))
}

fn used(bench: Bench, times: f64) -> Result<(), Refused> {
    bench.measure(STEP, What::Uses, times, "", &ReadWith::default())
}

fn long(bench: Bench, at: u8, mm: f64) {
    bench
        .measure(STEP, What::Free(at), mm, "mm", &ReadWith::default())
        .unwrap();
}

fn tighten(bench: Bench) {
    long(bench, 0, 88.1);
    long(bench, 1, 88.2);
    bench.send(Intent::Tally(STEP)).unwrap();
    bench.send(Intent::Tally(STEP)).unwrap();
}

fn new_on(bench: Bench) -> Result<(), Refused> {
    let part = PartKey::Own;
    bench.send(Intent::NewOn { step: STEP, part })
}

#[test]
fn how_often_they_were_tightened_is_asked_first() {
    on(|bench| {
        assert_eq!(ask(bench), Some(Ask::Read(What::Uses)));
        assert!(matches!(
            bench.send(Intent::Tally(STEP)),
            Err(Refused::ReadingMissing(_))
        ));
        for nonsense in [-1.0, 1.5, 100.0] {
            assert!(matches!(used(bench, nonsense), Err(Refused::NoSense(_))));
        }
        used(bench, 1.0).unwrap();
        assert_eq!(ask(bench), Some(Ask::Read(What::Free(0))));
        tighten(bench);
        assert_eq!(ask(bench), Some(Ask::Close));
        bench.send(Intent::Close(STEP)).unwrap();
        let lines = bench.record.with_untracked(|record| {
            bench
                .sheet
                .with_untracked(|sheet| journal(record, sheet, Filter::Reading, None, 9).lines)
        });
        let said = "tightened before, times: 1: within limits";
        assert!(lines.iter().any(|line| line.what == said));
    });
}

/// Twice before and once here is three times: loosened, they have had their share.
#[test]
fn used_as_often_as_they_may_be_new_ones_are_asked_for() {
    on(|bench| {
        used(bench, 2.0).unwrap();
        tighten(bench);
        bench.send(Intent::Loosen(STEP)).unwrap();
        assert_eq!(ask(bench), Some(Ask::NewOn(PartKey::Own)));
        assert!(matches!(
            bench.send(Intent::Tally(STEP)),
            Err(Refused::NewWanted(_))
        ));
        let listed = untrack(|| bench.parts_of(STEP));
        assert!(listed[0].new_wanted && listed[0].new_part);
        new_on(bench).unwrap();
        // New ones were never tightened, and are as long as they are.
        assert_eq!(ask(bench), Some(Ask::Read(What::Free(0))));
        tighten(bench);
        assert_eq!(ask(bench), Some(Ask::Close));
        // Once more is allowed, and again, and then no more.
        for _ in 0..2 {
            bench.send(Intent::Loosen(STEP)).unwrap();
            tighten(bench);
        }
        bench.send(Intent::Loosen(STEP)).unwrap();
        assert_eq!(ask(bench), Some(Ask::NewOn(PartKey::Own)));
        // Loosening that was a slip uses nothing up.
        bench.send(Intent::Undo).unwrap();
        assert_eq!(ask(bench), Some(Ask::Close));
    });
}

/// Said too late: the old ones are tight. New ones in their place are not.
#[test]
fn new_ones_in_the_place_of_tight_ones_are_tightened() {
    on(|bench| {
        used(bench, 0.0).unwrap();
        tighten(bench);
        used(bench, 3.0).unwrap();
        assert_eq!(ask(bench), Some(Ask::NewOn(PartKey::Own)));
        new_on(bench).unwrap();
        tighten(bench);
        assert_eq!(ask(bench), Some(Ask::Close));
    });
}

#[test]
fn one_that_is_too_long_is_found_before_it_is_tightened() {
    on(|bench| {
        used(bench, 0.0).unwrap();
        long(bench, 0, 88.6);
        assert_eq!(ask(bench), Some(Ask::Finding(What::Free(0))));
        assert!(matches!(
            bench.send(Intent::Tally(STEP)),
            Err(Refused::Finding(words)) if words.contains("bolt 1, free length") && words.contains("88.6 mm")
        ));
        // Another in its place.
        long(bench, 0, 88.5);
        assert_eq!(ask(bench), Some(Ask::Read(What::Free(1))));
    });
}
