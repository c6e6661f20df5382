//! Numbers of things: the greatest that can be read is never passed, at no door.

use super::MORNING;
use halfcase::job::id::{MOST, free, number};
use halfcase::job::json;
use halfcase::job::keep::Shelves;
use halfcase::job::kinds::{Work, blank};
use halfcase::job::record::{Entry, EntryId, Event, Record};
use halfcase::job::settings::Settings;
use halfcase::job::sheet::{JobId, Sheet, Step, StepId};
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::job::state::{Intent, Job, JobHead, Jobs, Now, Refused, State};
use std::rc::Rc;

const LAST: u32 = MOST as u32;

fn turn() -> Work {
    blank("Turn").unwrap()
}

#[test]
fn behind_the_greatest_number_comes_the_lowest_that_is_free() {
    assert_eq!(free([7, 3].into_iter()), 8);
    assert_eq!(free([LAST, 1, 3].into_iter()), 2);
    assert_eq!(free([u32::MAX].into_iter()), 1);
    let mut ids = [LAST, 0, 1, 0];
    number(ids.iter_mut());
    assert_eq!(ids, [LAST, 2, 1, 3]);
}

/// A step added to a plan with the greatest number there is can be read back.
#[test]
fn a_plan_with_the_greatest_number_takes_one_more_step() {
    let text = format!(
        r#"{{"version":1,"title":"Gearbox","steps":[{{"id":{MOST},"title":"Turn","work":{{"turn":{{}}}}}}]}}"#
    );
    let sheet = Sheet::from_json(&text).unwrap();
    let mut state = state(sheet, Record::default());
    let steps = vec![Step::new(StepId(0), "one more", turn())];
    send(&mut state, Intent::AddSteps { after: None, steps }).unwrap();
    let sheet = &state.job().sheet;
    assert_eq!(sheet.steps[1].id, StepId(1));
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), *sheet);
    let over = Sheet::from_json(&text.replace("1000000000", "1000000001"));
    assert!(
        over.unwrap_err()
            .to_string()
            .contains("its number is above 1 000 000 000")
    );
}

fn state(sheet: Sheet, record: Record) -> State {
    let jobs = Jobs {
        at_hand: JobId(LAST),
        heads: vec![JobHead::new(JobId(LAST), &sheet.title)],
    };
    let files = [(JobId(LAST), Job::new(sheet, record))];
    State::new(jobs, files.into_iter().collect(), Vec::new(), Settings::default())
}

fn send(state: &mut State, intent: Intent) -> Result<(), Refused> {
    let done = state.apply(&intent, Now::utc(MORNING))?;
    state.take(done);
    Ok(())
}

/// Behind the greatest job number begins one that can be listed.
#[test]
fn a_job_begun_beside_the_greatest_can_be_read_back() {
    let sheet = Sheet::new("Gearbox", vec![Step::new(StepId(1), "Turn", turn())]);
    let mut state = state(sheet.clone(), Record::default());
    send(&mut state, Intent::BeginJob(Box::new(sheet))).unwrap();
    let text = json::write(&state.jobs).unwrap();
    assert_eq!(json::read::<Jobs>(&text).unwrap(), state.jobs);
}

/// A record whose last line bears the greatest number takes no more, and says so.
#[test]
fn a_full_record_refuses_a_line_rather_than_write_one_nobody_reads() {
    let sheet = Sheet::new("Gearbox", vec![Step::new(StepId(1), "Turn", turn())]);
    let last = |id: u64| {
        let noted = Event::Noted {
            about: None,
            words: "a long job".to_owned(),
        };
        Record::from_entries(vec![Entry::new(EntryId(id), MORNING, None, "", noted)])
    };
    let skip = || Intent::Skip {
        step: StepId(1),
        reason: "no shaft in".to_owned(),
    };
    let mut room = state(sheet.clone(), last(MOST - 1));
    send(&mut room, skip()).unwrap();
    let line = room.job().record.entries().last().unwrap();
    assert_eq!(json::read::<Entry>(&json::write(line).unwrap()).unwrap(), *line);
    let mut full = state(sheet, last(MOST));
    assert_eq!(send(&mut full, skip()), Err(Refused::RecordFull));
    assert_eq!(send(&mut full, Intent::Undo), Err(Refused::RecordFull));
}

/// Whether a bench whose list of jobs is gone finds a sheet under that number.
fn found_under(number: u64) -> bool {
    let sheet = Sheet::new("Lost and found", vec![Step::new(StepId(1), "Turn", turn())]);
    let store: Rc<MemoryStore> = Rc::new(MemoryStore::default());
    let shelves = Shelves::new(Shelf::new(store.clone()), None);
    let mut state = shelves.read().state;
    let begun = state
        .apply(&Intent::BeginJob(Box::new(sheet)), Now::utc(MORNING))
        .unwrap();
    state.take(begun.clone());
    shelves.keep(&state, &begun).unwrap();
    let own = format!("job/{}", state.jobs.at_hand.0);
    for key in store.keys() {
        let text = store.get(&key).unwrap();
        if key.contains("jobs") || key.contains("job/") {
            store.remove(&key);
        }
        if key.contains(&own) {
            store
                .set(&key.replace(&own, &format!("job/{number}")), &text)
                .unwrap();
        }
    }
    let left = Shelves::new(Shelf::new(store), None).read().state;
    left.jobs.heads.iter().any(|head| head.title == "Lost and found")
}

/// One whose number could not be listed again is left alone.
#[test]
fn a_sheet_found_under_a_number_past_the_greatest_is_not_listed() {
    assert!(found_under(MOST));
    assert!(!found_under(MOST + 1));
}
