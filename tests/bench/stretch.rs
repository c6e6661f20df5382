//! Bolts whose length is read, free and tight: what holds the step, and what a loosened bolt forgets.

use super::commands::with_bench;
use halfcase::bench::{Bench, Intent, ReadWith, Refused};
use halfcase::job::journal::{Filter, journal, torque_table};
use halfcase::job::reading::{Verdict, What};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::shelf::MemoryStore;
use halfcase::job::state::Ask;
use reactive_graph::graph::untrack;
use std::rc::Rc;

const STEP: StepId = StepId(1);

/// The connecting rod's two bolts.
const SHEET: &str = r#"{"version":1,"title":"Rod","steps":[
    {"id":1,"title":"Rod bolts","work":{"fasten":{"thread":"M8x1","torque":"28 N·m",
        "layout":{"line":{"count":2}},"stretch_least_mm":0.13,"stretch_most_mm":0.15}}}]}"#;

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

fn read(bench: Bench, what: What, mm: f64) -> Result<(), Refused> {
    bench.measure(STEP, what, mm, "mm", &ReadWith::default())
}

fn tighten(bench: Bench) {
    read(bench, What::Free(0), 45.12).unwrap();
    read(bench, What::Free(1), 45.10).unwrap();
    bench.send(Intent::Tally(STEP)).unwrap();
    bench.send(Intent::Tally(STEP)).unwrap();
}

fn stretch(bench: Bench, at: u8) -> Option<(f64, Verdict)> {
    bench.progress.with_untracked(|progress| {
        let step = progress.step(STEP);
        step.reading(&What::Stretch(at))
            .map(|read| (read.value, read.verdict))
    })
}

/// A free length can't be read of a tight bolt: it comes first, and the tight one last.
#[test]
fn lengths_are_read_before_and_after_tightening() {
    on(|bench| {
        assert_eq!(ask(bench), Some(Ask::Read(What::Free(0))));
        assert_eq!(
            bench.send(Intent::Tally(STEP)),
            Err(Refused::ReadingMissing("bolt 1, free length".to_owned()))
        );
        tighten(bench);
        assert_eq!(ask(bench), Some(Ask::Read(What::Tight(0))));
        assert!(matches!(
            bench.send(Intent::Close(STEP)),
            Err(Refused::ReadingMissing(_))
        ));
        read(bench, What::Tight(0), 45.26).unwrap();
        read(bench, What::Tight(1), 45.23).unwrap();
        // 45.26 − 45.12 and 45.23 − 45.10 are 0.14 and 0.13, both within, though not so in binary.
        assert_eq!(stretch(bench, 0), Some((0.14, Verdict::Within)));
        assert_eq!(stretch(bench, 1), Some((0.13, Verdict::Within)));
        assert_eq!(ask(bench), Some(Ask::Close));
        bench.send(Intent::Close(STEP)).unwrap();
        let (lines, table) = bench.record.with_untracked(|record| {
            bench.sheet.with_untracked(|sheet| {
                let lines = journal(record, sheet, Filter::Reading, None, 9).lines;
                (lines, torque_table(record, sheet))
            })
        });
        assert!(
            lines
                .iter()
                .any(|line| line.what == "bolt 2, stretch: 0.13 mm: within limits")
        );
        assert_eq!(table[0].manual, "28 N·m, stretch 0.13 to 0.15 mm");
    });
}

/// One that gave way holds the step until it is accepted over initials, or loosened and done anew.
#[test]
fn a_bolt_that_stretched_too_far_is_a_finding() {
    on(|bench| {
        tighten(bench);
        read(bench, What::Tight(0), 45.26).unwrap();
        read(bench, What::Tight(1), 45.40).unwrap();
        assert_eq!(ask(bench), Some(Ask::Finding(What::Stretch(1))));
        assert!(
            matches!(bench.send(Intent::Close(STEP)), Err(Refused::Finding(words)) if words.contains("0.3 mm"))
        );
        // A free length typed wrong is put right, and the stretch follows.
        read(bench, What::Free(1), 45.26).unwrap();
        assert_eq!(stretch(bench, 1), Some((0.14, Verdict::Within)));
        assert_eq!(ask(bench), Some(Ask::Close));
        // One touch, one undo: the length and the stretch go together.
        bench.send(Intent::Undo).unwrap();
        assert_eq!(stretch(bench, 1), Some((0.3, Verdict::Outside)));
        bench
            .send(Intent::Accept {
                step: STEP,
                what: What::Stretch(1),
                reason: "the maker allows it once".to_owned(),
                initials: "jb".to_owned(),
            })
            .unwrap();
        assert_eq!(ask(bench), Some(Ask::Close));
        bench.send(Intent::Undo).unwrap();
        // Loose, it is as long as it is now: what was read before says nothing.
        bench.send(Intent::Loosen(STEP)).unwrap();
        assert_eq!(stretch(bench, 1), None);
        assert_eq!(ask(bench), Some(Ask::Read(What::Free(0))));
    });
}

#[test]
fn a_stretch_is_worked_out_and_a_length_makes_sense() {
    on(|bench| {
        for (what, mm) in [
            (What::Stretch(0), 0.14),
            (What::Free(0), 0.0),
            (What::Tight(0), 2_000.0),
        ] {
            assert!(matches!(read(bench, what, mm), Err(Refused::NoSense(_))));
        }
        assert_eq!(bench.part_for(STEP, &What::Stretch(0)), "M8×1");
    });
}
