//! The whole browser killed: local storage is behind, the journal puts back what it lacks.

use super::commands::{done_step, lay_out, read, with_bench};
use halfcase::bench::{Bench, Incoming};
use halfcase::job::carbon::{Back, Copied, Turn, put_back};
use halfcase::job::keep::Shelves;
use halfcase::job::sheet::StepId;
use halfcase::job::shelf::{CUT_OFF, MemoryStore, Shelf, StorageError, Store, mark_in};
use halfcase::trade::moment::Moment;
use reactive_graph::owner::Owner;
use reactive_graph::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;

type Write = (String, Option<String>);

/// A store that remembers its writes in order, as a browser that brings them to the disk later.
#[derive(Default)]
struct Late {
    store: MemoryStore,
    writes: RefCell<Vec<Write>>,
}

impl Late {
    /// What is on the disk after so many writes.
    fn disk(&self, writes: usize) -> Rc<MemoryStore> {
        let store = Rc::new(MemoryStore::default());
        for (key, text) in &self.writes.borrow()[..writes] {
            match text {
                Some(text) => store.set(key, text).unwrap(),
                None => store.remove(key),
            }
        }
        store
    }
}

impl Store for Late {
    fn get(&self, key: &str) -> Option<String> {
        self.store.get(key)
    }
    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        self.writes
            .borrow_mut()
            .push((key.to_owned(), Some(text.to_owned())));
        self.store.set(key, text)
    }
    fn remove(&self, key: &str) {
        self.writes.borrow_mut().push((key.to_owned(), None));
        self.store.remove(key);
    }
    fn keys(&self) -> Vec<String> {
        self.store.keys()
    }
}

/// So many, or as many as `HALFCASE_FAULTS` says.
fn long(short: u32) -> u32 {
    let told = std::env::var("HALFCASE_FAULTS").ok();
    told.and_then(|told| told.parse().ok()).unwrap_or(short)
}

const NOW: Moment = Moment(1_780_300_800_000);

/// A bench's whole state in words, to compare.
fn told(store: Rc<dyn Store>) -> (usize, Vec<(String, u32, String)>) {
    let shelves = Shelves::new(Shelf::new(store), None);
    let left = shelves.read();
    // What was cut off had not counted as kept.
    assert!(
        left.said.iter().all(|said| said.words == CUT_OFF),
        "{:?}",
        left.said
    );
    (
        left.state.job().record.entries().len(),
        shelves.texts(&left.state),
    )
}

/// What was written, and each turn with the writes that were made by its end and the state then.
struct Played {
    late: Rc<Late>,
    turns: Vec<Turn>,
    ends: Vec<(usize, Lines)>,
}

/// Lines of a record, as they are told.
type Lines = Vec<(String, u32, String)>;

/// Touches of every sort: readings, steps closed, a job copied, put away and deleted, undo, settings.
fn play() -> Played {
    let late = Rc::new(Late::default());
    let copied = Rc::new(Copied::new(late.clone(), Box::new(|| {})));
    let (mut turns, mut ends) = (Vec::new(), Vec::new());
    let mut ended = || {
        // A turn that wrote nothing is none.
        if let Some(turn) = copied.take() {
            turns.push(turn);
            let (_, state) = told(late.disk(late.writes.borrow().len()));
            ends.push((late.writes.borrow().len(), state));
        }
    };
    // The example is kept first, as a touch would keep it.
    lay_out(copied.clone());
    ended();
    Owner::new().with(|| {
        let bench = Bench::open(Shelves::new(Shelf::new(copied.clone()), None), || NOW);
        let mut touch = |act: &dyn Fn(Bench)| {
            act(bench);
            ended();
        };
        touch(&|bench| done_step(bench, 1));
        for n in 0..long(20) {
            touch(&|bench| read(bench, 61.97 + f64::from(n % 7) / 1000.0));
        }
        touch(&|bench| bench.take_wrench(1));
        touch(&|bench| assert!(bench.copy_step(StepId(4)).is_ok()));
        touch(&|bench| bench.undo().unwrap());
        touch(&|bench| assert!(bench.duplicate_job(bench.job.get_untracked()).is_ok()));
        let other = bench.job.get_untracked();
        touch(&|bench| read(bench, 61.98));
        touch(&|bench| bench.take_job(halfcase::job::sheet::JobId(1)).unwrap());
        touch(&|bench| bench.delete_job(other).unwrap());
        touch(&|bench| bench.free_deleted());
        touch(&|bench| bench.undo().unwrap());
    });
    Played { late, turns, ends }
}

/// Killed after any write, with any turn the last that the journal answered for: that turn, or what the disk
/// holds where that is more, is there whole.
#[test]
fn a_browser_killed_anywhere_loses_nothing_the_journal_answered_for() {
    let played = play();
    let turns = played.turns.len();
    let mut tried = 0;
    for (at, (end, _)) in played.ends.iter().enumerate() {
        // The disk anywhere within a turn, and the journal as far, or so many turns further.
        let begun = at.checked_sub(1).map_or(0, |before| played.ends[before].0);
        for writes in begun..=*end {
            for answered in [at, at + 1, at + 9, at + 200] {
                let answered = answered.min(turns);
                let disk = played.late.disk(writes);
                let on_disk = if writes == *end { at + 1 } else { at };
                let back = put_back(&*disk, &played.turns[..answered]);
                assert!(!back.apart, "{writes} writes, {answered} turns: {back:?}");
                let stands = answered.max(on_disk);
                // Within a turn what follows its mark changes no more than room.
                if stands > 0 {
                    let (_, state) = told(disk);
                    let may = [stands - 1, (stands).min(turns - 1)];
                    let right = state == played.ends[may[0]].1
                        || (answered <= at && writes < *end && state == played.ends[may[1]].1);
                    assert!(
                        right,
                        "{writes} writes, {answered} turns answered, {on_disk} on the disk"
                    );
                }
                tried += 1;
            }
        }
    }
    println!("{tried} kills of the whole browser, none lost");
    assert!(tried > 400, "{tried}");
}

#[test]
fn what_is_put_back_is_said_and_put_back_once() {
    let played = play();
    let disk = played.late.disk(played.ends[2].0);
    let back = put_back(&*disk, &played.turns[..5]);
    assert_eq!(back, Back { put: 2, apart: false });
    assert_eq!(
        back.to_string(),
        "The browser was stopped before it had written your last 2 changes: they are put back."
    );
    assert_eq!(put_back(&*disk, &played.turns[..5]), Back::default());
    with_bench(&disk, |bench| {
        bench.say_put_back(back);
        assert_eq!(bench.said.with_untracked(Vec::len), 1);
        bench.say_put_back(Back::default());
        assert_eq!(bench.said.with_untracked(Vec::len), 1);
    });
}

/// The store went on without the journal: what that has is another story, and overwrites nothing.
#[test]
fn a_store_that_went_another_way_is_left_alone() {
    let played = play();
    // By the same thing written otherwise, and by another thing in its place.
    let ways: [fn(Bench); 2] = [
        |bench| read(bench, 61.5),
        |bench| bench.note(|settings| settings.torque_typed.push('7')),
    ];
    for way in ways {
        let disk = played.late.disk(played.ends[2].0);
        with_bench(&disk, way);
        let before = disk.texts.borrow().clone();
        let back = put_back(&*disk, &played.turns[..6]);
        assert_eq!(back, Back { put: 0, apart: true });
        assert_eq!(*disk.texts.borrow(), before);
        assert!(back.to_string().contains("check the last things you did"));
    }
}

/// Marks that are there and can't be read: nothing is put over what may be newer.
#[test]
fn a_store_that_cannot_be_read_is_left_alone() {
    let played = play();
    let disk = played.late.disk(played.ends[4].0);
    for slot in ["a", "b"] {
        disk.set(&format!("halfcase/mark/{slot}"), "torn").unwrap();
    }
    let before = disk.texts.borrow().clone();
    assert_eq!(put_back(&*disk, &played.turns[..3]), Back::default());
    assert_eq!(*disk.texts.borrow(), before);
}

#[test]
fn a_journal_with_a_gap_is_followed_as_far_as_it_goes() {
    let played = play();
    let mut turns = played.turns[..9].to_vec();
    turns.remove(6);
    let disk = played.late.disk(played.ends[2].0);
    let back = put_back(&*disk, &turns);
    assert_eq!(back, Back { put: 3, apart: true });
    assert_eq!(mark_in(&*disk), turns[5].after);
    assert_eq!(told(disk).1, played.ends[5].1);
}

/// The newest mark spoilt and no room at all: what can't be put back costs nothing of what stands.
#[test]
fn a_turn_that_cannot_be_written_takes_nothing_away() {
    let played = play();
    let whole = played.late.disk(played.ends[4].0);
    let mark = played.turns[4]
        .writes
        .iter()
        .rfind(|(key, _)| key.contains("/mark/"));
    let disk = MemoryStore {
        room: Some(1),
        ..MemoryStore::default()
    };
    *disk.texts.borrow_mut() = whole.texts.borrow().clone();
    drop(
        disk.texts
            .borrow_mut()
            .insert(mark.unwrap().0.clone(), "torn".to_owned()),
    );
    let before = disk.texts.borrow().clone();
    put_back(&disk, &played.turns[..5]);
    assert_eq!(*disk.texts.borrow(), before);
}

/// What the page saves when the app doesn't start: every slot under its key, and the journal's last turns.
fn saved_without_the_app(disk: &MemoryStore, turns: &[Turn]) -> serde_json::Value {
    let turn = |turn: &Turn| {
        let mut all = vec![turn.before.into(), turn.after.into()];
        for (key, text) in &turn.writes {
            all.push(key.as_str().into());
            all.push(text.as_deref().map_or(serde_json::Value::Null, Into::into));
        }
        serde_json::Value::Array(all)
    };
    let turns: Vec<_> = turns.iter().map(turn).collect();
    serde_json::json!({ "form": "halfcase kept", "version": 1, "made": NOW.0, "kept": *disk.texts.borrow(), "turns": turns })
}

/// The browser was killed, and the app doesn't start either: the file has what only the journal held.
#[test]
fn what_only_the_journal_held_is_saved_without_the_app() {
    let played = play();
    let record = |store: Rc<MemoryStore>| {
        let left = Shelves::new(Shelf::new(store), None).read();
        left.state.job().record.entries().to_vec()
    };
    let stood = record(played.late.disk(played.ends[4].0));
    // Local storage behind by two changes, and with nothing at all.
    for (disk, from) in [(played.late.disk(played.ends[2].0), 2), (Rc::default(), 0)] {
        let file = saved_without_the_app(&disk, &played.turns[from..5]);
        assert_ne!(record(disk), stood);
        with_bench(&Rc::new(MemoryStore::default()), |bench| {
            let Ok(Incoming::Backup(restore)) = bench.read_file(&file.to_string()) else {
                panic!("no backup")
            };
            // Before it is taken in nothing is put back.
            let said = bench.said.with_untracked(|said| said[0].words.clone());
            assert!(!said.contains("put back"), "{said}");
            assert!(
                said.ends_with("changes: they are in this file, and here once you take it in."),
                "{said}"
            );
            bench.restore(&restore).unwrap();
            assert_eq!(
                bench.record.with_untracked(|record| record.entries().to_vec()),
                stood
            );
        });
    }
}

/// What doesn't follow, or is no turn, costs nothing of the rest.
#[test]
fn turns_of_a_file_that_make_no_sense_are_left_out() {
    let played = play();
    let disk = played.late.disk(played.ends[2].0);
    let whole = saved_without_the_app(&disk, &played.turns[5..7]);
    let mut spoilt = whole.clone();
    spoilt["turns"] = serde_json::json!([1, [], [1], ["a", 2], [1.5, -2], [8, 9, "key"], [8, 9, 3, "text"]]);
    let mut none = whole.clone();
    none.as_object_mut().unwrap().remove("turns");
    for (file, apart) in [(whole, true), (spoilt, false), (none, false)] {
        with_bench(&Rc::new(MemoryStore::default()), |bench| {
            let Ok(Incoming::Backup(restore)) = bench.read_file(&file.to_string()) else {
                panic!("no backup")
            };
            assert_eq!(restore.jobs.len(), 1);
            let said = bench.said.get_untracked();
            assert_eq!(said.iter().any(|said| said.words.contains("don’t fit")), apart);
        });
    }
}

/// Where there is no room for it, nothing of a turn stands.
#[test]
fn a_turn_that_does_not_fit_is_left_out_whole() {
    let played = play();
    let whole = played.late.disk(played.ends[2].0);
    let used: usize = whole
        .texts
        .borrow()
        .iter()
        .map(|(key, text)| key.len() + text.len())
        .sum();
    let disk = MemoryStore {
        room: Some(used + 40),
        ..MemoryStore::default()
    };
    *disk.texts.borrow_mut() = whole.texts.borrow().clone();
    let back = put_back(&disk, &played.turns);
    assert!(back.apart, "{back:?}");
    let at = played
        .turns
        .iter()
        .position(|turn| turn.after == mark_in(&disk))
        .unwrap();
    assert_eq!(told(Rc::new(disk)).1, played.ends[at].1);
}
