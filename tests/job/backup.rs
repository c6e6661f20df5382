//! What a job of a backup would change, and the merging.

use super::{MORNING, done, hours, sheet};
use halfcase::job::backup::{Fate, Held, compare, merge_clocks, renumber_clocks};
use halfcase::job::clock::{Bound, ClockId, CureClock};
use halfcase::job::record::{Compound, Event, Record};
use halfcase::job::sheet::{JobId, StepId};
use halfcase::trade::compound::recommend;
use std::collections::BTreeMap;

fn held(id: u32, entries: u32) -> Held {
    let mut record = Record::default();
    for step in 0..entries {
        done(&mut record, step + 1);
    }
    Held {
        id: JobId(id),
        archived: false,
        sheet: sheet(r#"{"id":1,"title":"a","work":{"turn":{}}}"#),
        record,
    }
}

fn fate(here: &[Held], file: Held) -> (Fate, JobId, bool) {
    let change = compare(here, &[file]).remove(0);
    (change.fate, change.to, change.take)
}

#[test]
fn each_fate_is_told_apart() {
    let here = [held(1, 3)];
    assert_eq!(fate(&here, held(1, 3)), (Fate::Same, JobId(1), false));
    assert_eq!(
        fate(&here, held(1, 5)),
        (Fate::Longer { more: 2 }, JobId(1), true)
    );
    assert_eq!(fate(&here, held(1, 2)), (Fate::Older, JobId(1), false));
    assert_eq!(fate(&[], held(4, 5)), (Fate::New, JobId(4), true));
    let mut planned = held(1, 3);
    planned.sheet.steps[0].title = "other".into();
    assert_eq!(fate(&here, planned.clone()), (Fate::OtherPlan, JobId(1), false));
    // Nothing done here yet: the file's plan is taken.
    planned.record = Record::default();
    assert_eq!(fate(&[held(1, 0)], planned), (Fate::OtherPlan, JobId(1), true));
}

/// A fresh job of the same sheet here, two runs of it in the file: both come in, each under its own number.
#[test]
fn two_jobs_of_the_file_never_go_into_one() {
    let here = [held(1, 0)];
    let mut second = held(4, 0);
    second
        .record
        .add(hours(5.0), Some(StepId(1)), "", Event::JobClosed);
    let changes = compare(&here, &[held(3, 5), second.clone()]);
    assert_eq!(changes[0].to, JobId(1));
    assert_eq!((changes[1].fate, changes[1].to), (Fate::New, JobId(4)));
    // The one that has the number goes first, wherever it stands.
    let changes = compare(&here, &[second, held(1, 5)]);
    assert_eq!(changes[1].to, JobId(1));
    assert_eq!(changes[0].to, JobId(4));
}

#[test]
fn a_stranger_of_the_same_number_comes_in_beside() {
    let here = [held(1, 3), held(2, 1)];
    let mut stranger = held(1, 0);
    stranger
        .record
        .add(hours(5.0), Some(StepId(1)), "", Event::JobClosed);
    assert_eq!(fate(&here, stranger), (Fate::Beside, JobId(3), true));
}

#[test]
fn one_job_is_known_again_under_another_number() {
    let here = [held(7, 3)];
    assert_eq!(
        fate(&here, held(1, 4)),
        (Fate::Longer { more: 1 }, JobId(7), true)
    );
}

fn clock(id: u32, job: u32, at: f64) -> CureClock {
    let example = halfcase::job::example::sheet();
    let joint = example
        .step(StepId(15))
        .and_then(|step| step.work.application())
        .expect("the case joint");
    CureClock {
        id: ClockId(id),
        name: format!("joint {at}"),
        compound: "sealant".into(),
        spec: recommend(joint).cure.expect("case halves are sealed"),
        started: hours(at),
        held_ms: 0,
        bound: Some(Bound {
            job: JobId(job),
            step: StepId(1),
        }),
        ended: None,
    }
}

#[test]
fn clocks_come_with_their_jobs_and_no_two_share_a_number() {
    let here = [clock(1, 1, 0.0)];
    let file = [clock(1, 1, 9.0), clock(2, 1, 10.0), clock(3, 5, 11.0)];
    let jobs = BTreeMap::from([(JobId(1), JobId(4))]);
    let (merged, numbers) = merge_clocks(&here, &file, &jobs);
    let seen: Vec<(u32, u32)> = merged.iter().map(|c| (c.id.0, c.bound.unwrap().job.0)).collect();
    assert_eq!(
        seen,
        [(1, 1), (4, 4), (2, 4)],
        "the clock of a job that isn't taken stays out"
    );
    let mut record = Record::default();
    let applied = |clock| Event::Applied {
        compound: Compound::Words("sealant".into()),
        clock: ClockId(clock),
    };
    record.add(MORNING, Some(StepId(1)), "", applied(1));
    record.add(MORNING, Some(StepId(1)), "", applied(2));
    let renumbered = renumber_clocks(&record, &numbers);
    assert_eq!(renumbered.entries()[0].event, applied(4));
    assert_eq!(renumbered.entries()[1].event, applied(2));
    // Taken in once more, nothing doubles.
    let (again, same) = merge_clocks(&merged, &file, &jobs);
    assert_eq!(again, merged);
    assert_eq!(same, numbers);
}
