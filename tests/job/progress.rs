//! Progress is whatever the record says, and undo is one more line of it.

use super::{MORNING, done, set_to, sheet};
use halfcase::job::progress::{Progress, Status, next_fastener};
use halfcase::job::record::{EntryId, Event, Record};
use halfcase::job::sheet::{Sheet, StepId};

const STEP: StepId = StepId(1);

/// Four bolts in two rows, two passes and a round.
fn case() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Case","work":{"fasten":{"thread":"M8","torque":"20 N·m",
            "layout":{"paired_rows":{"pairs":2}},
            "passes":[{"share":0.5,"round":false},{"share":1.0,"round":true}]}}}"#,
    )
}

fn tally(record: &mut Record, pass: usize, place: usize) -> EntryId {
    let event = Event::Tallied {
        pass,
        place,
        set: set_to(20.0, "Middle"),
        goal: None,
    };
    record.add(MORNING, Some(STEP), "", event)
}

/// Tallies to the end and tells in which order the bolts came.
fn order_of_tallies(sheet: &Sheet) -> Vec<(usize, usize)> {
    let mut record = Record::default();
    let mut seen = Vec::new();
    while let Some(next) = next_fastener(&sheet.steps[0], &Progress::of(&record).step(STEP)) {
        seen.push((next.pass, next.place));
        tally(&mut record, next.pass, next.place);
        assert!(seen.len() <= 8, "the tally must end");
    }
    seen
}

#[test]
fn bolts_come_pass_by_pass_each_once_and_the_last_round_in_turn() {
    let seen = order_of_tallies(&case());
    assert_eq!(seen.len(), 8);
    assert!(seen[..4].iter().all(|(pass, _)| *pass == 0) && seen[4..].iter().all(|(pass, _)| *pass == 1));
    // Upper row left to right is 0, 1, the lower 2, 3: once round is along the top and back.
    assert_eq!(
        seen[4..].iter().map(|(_, place)| *place).collect::<Vec<_>>(),
        [0, 1, 3, 2]
    );
    let mut first: Vec<usize> = seen[..4].iter().map(|(_, place)| *place).collect();
    first.sort_unstable();
    assert_eq!(first, [0, 1, 2, 3]);
}

#[test]
fn a_tally_taken_back_comes_again() {
    let sheet = case();
    let mut record = Record::default();
    let first = next_fastener(&sheet.steps[0], &Progress::of(&record).step(STEP)).unwrap();
    let entry = tally(&mut record, first.pass, first.place);
    record.add(MORNING, None, "", Event::TakenBack { entry });
    assert_eq!(
        next_fastener(&sheet.steps[0], &Progress::of(&record).step(STEP)),
        Some(first)
    );
    assert_eq!(record.entries().len(), 2, "nothing leaves the record");
    assert!(record.last_touch().is_empty());
}

#[test]
fn a_step_taken_back_is_open_again() {
    let mut record = Record::default();
    let entry = done(&mut record, 1);
    assert_eq!(Progress::of(&record).step(STEP).status, Status::Done(MORNING));
    record.add(MORNING, Some(STEP), "", Event::TakenBack { entry });
    assert_eq!(Progress::of(&record).step(STEP).status, Status::Open);
}

#[test]
fn adding_to_the_progress_gives_what_the_whole_record_gives() {
    let sheet = case();
    let mut record = Record::default();
    let mut progress = Progress::default();
    while let Some(next) = next_fastener(&sheet.steps[0], &progress.step(STEP)) {
        let id = tally(&mut record, next.pass, next.place);
        progress.take(record.entry(id).unwrap());
    }
    done(&mut record, 1);
    progress.take(record.entries().last().unwrap());
    assert_eq!(progress, Progress::of(&record));
}

#[test]
fn the_next_open_step_is_the_first_one_not_closed() {
    let sheet = sheet(
        r#"{"id":5,"title":"a","work":{"turn":{}}},{"id":2,"title":"b","work":{"turn":{}}},
           {"id":9,"title":"c","work":{"turn":{}}}"#,
    );
    let mut record = Record::default();
    done(&mut record, 5);
    record.add(
        MORNING,
        Some(StepId(2)),
        "",
        Event::Skipped {
            reason: "not on this machine".into(),
        },
    );
    let progress = Progress::of(&record);
    assert_eq!(progress.next_open(&sheet).map(|step| step.id), Some(StepId(9)));
    assert_eq!(progress.closed_count(&sheet), 2);
}
