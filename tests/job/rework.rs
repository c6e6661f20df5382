//! A fastening that is loosened and done again: both rounds are in the record, and undo takes it back.

use super::{MORNING, sheet};
use halfcase::job::gate::depending;
use halfcase::job::journal::{Filter, journal, torque_table};
use halfcase::job::keep::Shelves;
use halfcase::job::progress::Status;
use halfcase::job::record::Event;
use halfcase::job::sheet::StepId;
use halfcase::job::shelf::{MemoryStore, Shelf};
use halfcase::job::start;
use halfcase::job::state::{Ask, Intent, Now, Refused, State};
use halfcase::trade::moment::Moment;
use std::rc::Rc;

const COVER: StepId = StepId(1);

/// The walking tractor's gearbox cover on four bolts, then its plug, which waits for it, and the oil.
/// `joint` is what goes on the bolts.
fn begun(joint: &str) -> (State, Rc<MemoryStore>) {
    let store = Rc::new(MemoryStore::default());
    let sheet = sheet(&format!(
        r#"{{"id":1,"title":"Cover","work":{{"fasten":{{"thread":"M8","torque":"22 N·m",
            "layout":{{"circle":{{"count":4}}}}{joint}}}}}}},
          {{"id":2,"title":"Guard","work":{{"fit":{{}}}},"waits_for":[1]}},
          {{"id":3,"title":"Label","work":{{"fit":{{}}}}}},
          {{"id":4,"title":"Oil","work":{{"fill":{{}}}}}}"#
    ));
    shelves(&store).keep_everything(&start::example()).unwrap();
    let mut state = open(&store);
    send(&mut state, &store, Intent::BeginJob(Box::new(sheet)), 0).unwrap();
    send(&mut state, &store, Intent::TakeWrench(1), 0).unwrap();
    (state, store)
}

fn shelves(store: &Rc<MemoryStore>) -> Shelves {
    Shelves::new(Shelf::new(store.clone()), None)
}

fn open(store: &Rc<MemoryStore>) -> State {
    shelves(store).read().state
}

fn now(minute: i64) -> Now {
    Now::utc(Moment(MORNING.0 + minute * 60_000))
}

fn send(state: &mut State, store: &Rc<MemoryStore>, intent: Intent, minute: i64) -> Result<(), Refused> {
    let transaction = state.apply(&intent, now(minute))?;
    state.take(transaction.clone());
    let shelves = shelves(store);
    shelves.read();
    shelves.keep(state, &transaction).unwrap();
    Ok(())
}

/// Does what the step asks for until it is closed.
fn work(state: &mut State, store: &Rc<MemoryStore>, step: StepId) {
    for _ in 0..20 {
        let intent = match state.ask(step, now(1).at) {
            Some(Ask::Tally(_)) => Intent::Tally(step),
            Some(Ask::PutOn) => Intent::PutOn {
                step,
                activator: false,
            },
            Some(Ask::Acknowledge(caution)) => Intent::Acknowledge {
                step,
                caution: caution.to_owned(),
            },
            Some(Ask::Close) => Intent::Close(step),
            Some(Ask::GoOn) => return,
            other => panic!("{other:?}"),
        };
        send(state, store, intent, 1).unwrap();
    }
    panic!("{step:?} is not done in twenty touches");
}

fn set_words(state: &State) -> Vec<String> {
    let job = state.job();
    let lines = journal(&job.record, &job.sheet, Filter::Torque, Some(COVER), 99).lines;
    lines.into_iter().rev().map(|line| line.what).collect()
}

#[test]
fn a_closed_fastening_is_loosened_and_done_again() {
    let (mut state, store) = begun("");
    assert_eq!(
        send(&mut state, &store, Intent::Loosen(COVER), 1),
        Err(Refused::NothingToUndo)
    );
    work(&mut state, &store, COVER);
    send(&mut state, &store, Intent::Close(StepId(2)), 2).unwrap();
    send(&mut state, &store, Intent::Close(StepId(3)), 2).unwrap();
    send(&mut state, &store, Intent::Loosen(COVER), 3).unwrap();
    // One touch: open, nothing tight; the guard that waited for it is named, and stays as it is.
    assert_eq!(state.progress(COVER).status, Status::Open);
    assert!(matches!(state.ask(COVER, now(3).at), Some(Ask::Tally(next)) if next.done_in_pass == 0));
    let job = state.job();
    let names: Vec<&str> = depending(&job.sheet, &job.progress, COVER)
        .iter()
        .map(|step| step.title.as_str())
        .collect();
    assert_eq!(names, ["Guard"]);
    assert!(job.progress.closed(StepId(2)));
    assert!(matches!(state.ask(StepId(4), now(3).at), Some(Ask::Wait(_))));
    work(&mut state, &store, COVER);

    let words = set_words(&state);
    assert_eq!(words.len(), 9);
    assert!(
        words[..4]
            .iter()
            .all(|words| words.contains("22") && !words.contains("time"))
    );
    assert_eq!(words[4], "all loosened, to be torqued again");
    assert!(
        words[5..].iter().all(|words| words.ends_with(", second time")),
        "{words:?}"
    );
    let job = state.job();
    let rows: Vec<(String, String)> = torque_table(&job.record, &job.sheet)
        .into_iter()
        .map(|row| (row.step, row.tallied))
        .collect();
    let row = |step: &str, tallied: &str| (step.to_owned(), tallied.to_owned());
    assert_eq!(
        rows,
        [
            row("1 Cover, first time", "4 of 4, then loosened"),
            row("1 Cover, second time", "4 of 4")
        ]
    );
    // The same after a reload.
    assert_eq!(set_words(&open(&store)), words);
}

#[test]
fn a_half_done_fastening_is_begun_again() {
    let (mut state, store) = begun("");
    send(&mut state, &store, Intent::Tally(COVER), 1).unwrap();
    send(&mut state, &store, Intent::Loosen(COVER), 2).unwrap();
    let events: Vec<&Event> = state.job().record.standing().map(|entry| &entry.event).collect();
    assert!(!events.contains(&&Event::Reopened), "{events:?}");
    assert!(matches!(state.ask(COVER, now(3).at), Some(Ask::Tally(next)) if next.done_in_pass == 0));
}

#[test]
fn undo_takes_the_whole_of_it_back_before_a_reload_and_after() {
    let joint = r#","compound":{"kind":"fastener","face":"steel_iron","manual":"lock_medium"}"#;
    for reload in [false, true] {
        let (mut state, store) = begun(joint);
        work(&mut state, &store, COVER);
        let before = (state.progress(COVER), state.clocks.clone());
        assert_eq!(before.1.iter().filter(|clock| clock.counts()).count(), 1);
        send(&mut state, &store, Intent::Loosen(COVER), 3).unwrap();
        // What was on the threads was drawn apart: its clock no longer counts, it goes on anew.
        assert_eq!(state.ask(COVER, now(3).at), Some(Ask::PutOn));
        assert_eq!(state.clocks.iter().filter(|clock| clock.counts()).count(), 0);
        if reload {
            state = open(&store);
            assert_eq!(state.ask(COVER, now(3).at), Some(Ask::PutOn));
        }
        send(&mut state, &store, Intent::Undo, 4).unwrap();
        assert_eq!(
            (state.progress(COVER), state.clocks.clone()),
            before,
            "after a reload: {reload}"
        );
        // And done again instead: the oil waits for the second clock.
        send(&mut state, &store, Intent::Loosen(COVER), 5).unwrap();
        work(&mut state, &store, COVER);
        assert_eq!(state.clocks.iter().filter(|clock| clock.counts()).count(), 1);
        assert!(matches!(state.ask(StepId(4), now(6).at), Some(Ask::Wait(_))));
    }
}
