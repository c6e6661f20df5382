//! A player who touches anything: seeded, replayable, by the million.
//!
//! After every touch it is checked that
//! 1. what is shown equals what reading the store back gives;
//! 2. undo gives back the state before, but for the record's own lines;
//! 3. no step was closed with a reading missing, or with anything found that is not settled;
//! 4. no gate opened while anything it waits for is uncured, unstarted, undone, unread, outside its limits,
//!    tight or not fit, and no case was closed up on anything found;
//! 5. no STOP was passed by;
//! 6. keeping that is cut off after any single write reads back as before or as after, never between.
//!
//! ```sh
//! HALFCASE_PLAY=200000 cargo test --no-default-features --test player -- --nocapture
//! HALFCASE_SEED=17 HALFCASE_PLAY=5000 …     # the same play again
//! ```

mod chance;
mod hand;
mod promises;
mod stock;
mod store;

use chance::Chance;
use halfcase::job::journal::{Filter, journal};
use halfcase::job::keep::Shelves;
use halfcase::job::shelf::{Shelf, Store};
use halfcase::job::start;
use halfcase::job::state::{Now, State, Transaction};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{DecimalMark, choose};
use promises::Played;
use std::rc::Rc;
use store::Paper;

/// 2026-06-01 08:00 UTC.
const BEGIN: Moment = Moment(1_780_300_800_000);
/// A bench is played on for so many touches, then another begins.
const ON_ONE_BENCH: usize = 400;
/// In the usual run.
const USUAL: usize = 800;

fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name)
        .ok()
        .and_then(|words| words.parse().ok())
        .unwrap_or(usual)
}

#[test]
fn every_promise_holds_after_every_touch() {
    let touches = number("HALFCASE_PLAY", USUAL as u64) as usize;
    let seed = number("HALFCASE_SEED", 1);
    let mut played = Played::default();
    let mut bench = 0;
    while played.touches < touches {
        let left = touches - played.touches;
        play(seed.wrapping_add(bench), left.min(ON_ONE_BENCH), &mut played);
        bench += 1;
    }
    println!("{played}");
    // A play that reaches nothing proves nothing.
    if touches >= USUAL {
        assert!(
            played.taken * 3 > played.touches,
            "most touches were refused: {played}"
        );
        assert!(
            played.undone > 0 && played.closed > 0 && played.cuts > 0,
            "{played}"
        );
    }
}

/// Who chose the decimal comma has the same bench to the byte: the same touches are taken, and what is kept and what
/// a backup holds differ in nothing.
#[test]
fn what_is_kept_does_not_go_by_the_decimal_mark() {
    let seed = number("HALFCASE_SEED", 1);
    for bench in 0..2 {
        let [point, comma] = DecimalMark::ALL.map(|mark| touched(seed.wrapping_add(bench), mark));
        assert_eq!(point.taken, comma.taken);
        assert!(point.taken * 3 > ON_ONE_BENCH, "only {} were taken", point.taken);
        assert_eq!(point.stored, comma.stored);
        assert_eq!(point.backup, comma.backup);
        // What is heard, and the record, are told anew on the screen: nothing but the mark differs there.
        assert_eq!(point.told.len(), comma.told.len());
        for (point, comma) in point.told.iter().zip(&comma.told) {
            assert_eq!(point.replace('.', ","), comma.replace('.', ","));
        }
        assert_ne!(point.told, comma.told, "no line with a fraction was written");
    }
}

/// What a bench has come to.
struct Come {
    taken: usize,
    stored: Vec<(String, String)>,
    backup: Vec<(String, u32, String)>,
    told: Vec<String>,
}

/// Touches one bench at random, its numbers printed with that mark.
fn touched(seed: u64, mark: DecimalMark) -> Come {
    choose(mark);
    let mut chance = Chance::new(seed);
    let paper = Rc::new(Paper::default());
    let shelves = shelves(&paper);
    shelves
        .keep_everything(&start::example())
        .unwrap_or_else(|error| panic!("{error}"));
    let mut state = shelves.read().state;
    let mut now = BEGIN;
    let mut come = Come {
        taken: 0,
        stored: Vec::new(),
        backup: Vec::new(),
        told: Vec::new(),
    };
    for _ in 0..ON_ONE_BENCH {
        now = Moment(now.0 + hand::pause_ms(&mut chance));
        let at = Now::utc(now);
        let intent = hand::next(&mut chance, &state, at);
        let Ok(transaction) = state.apply(&intent, at) else {
            continue;
        };
        come.taken += 1;
        come.told.extend(state.heard(&transaction));
        state.take(transaction.clone());
        shelves
            .keep(&state, &transaction)
            .unwrap_or_else(|error| panic!("seed {seed}: {error}"));
    }
    come.backup = shelves.texts(&state);
    for job in state.files.values() {
        let lines = journal(&job.record, &job.sheet, Filter::All, None, usize::MAX).lines;
        come.told.extend(lines.into_iter().map(|line| line.what));
    }
    let keys = paper.keys();
    come.stored = keys
        .into_iter()
        .filter_map(|key| paper.get(&key).map(|text| (key, text)))
        .collect();
    choose(DecimalMark::Point);
    come
}

/// Plays on one bench.
fn play(seed: u64, touches: usize, played: &mut Played) {
    let mut chance = Chance::new(seed);
    let paper = Rc::new(Paper::default());
    let mut shelves = shelves(&paper);
    shelves
        .keep_everything(&start::example())
        .unwrap_or_else(|error| panic!("{error}"));
    let mut state = shelves.read().state;
    let mut now = BEGIN;
    for touch in 0..touches {
        now = Moment(now.0 + hand::pause_ms(&mut chance));
        let held = chance.one_in(10);
        let at = Now {
            ahead_ms: if held { chance.below(7_200_000) as i64 } else { 0 },
            ..Now::utc(now)
        };
        let intent = hand::next(&mut chance, &state, at);
        let told = format!("seed {seed}, touch {touch}: {intent:?}");
        played.touches += 1;
        let Ok(transaction) = state.apply(&intent, at) else {
            continue;
        };
        played.taken += 1;
        played.count(&intent, &state);
        promises::stop_is_read(&state, &intent, at, &told);
        let mut after = state.clone();
        after.take(transaction.clone());
        promises::closed_steps_are_whole(&state, &after, &transaction, at, &told);
        promises::gates_are_shut(&after, at, &told);
        promises::undo_is_whole(&state, &after, &transaction, at, &told);
        if chance.one_in(promises::CUT_EVERY) {
            played.cuts += cut_everywhere(&paper, &state, &after, &transaction, &told);
        }
        shelves
            .keep(&after, &transaction)
            .unwrap_or_else(|error| panic!("{told}: {error}"));
        if chance.one_in(promises::READ_EVERY) {
            // The phone is put down and opened again: the trail is gone, everything else is there.
            shelves = self::shelves(&paper);
            let read = shelves.read();
            assert_eq!(read.said, [], "{told}");
            promises::same(&after, &read.state, &told);
            played.reloads += 1;
            if chance.one_in(4) {
                after = read.state;
            }
        }
        state = after;
    }
}

fn shelves(paper: &Rc<Paper>) -> Shelves {
    let store: Rc<dyn Store> = paper.clone();
    Shelves::new(Shelf::new(store), None)
}

/// Keeps the transaction on copies of the paper, cut off after each single write, torn or clean.
fn cut_everywhere(paper: &Paper, before: &State, after: &State, done: &Transaction, told: &str) -> u64 {
    let mut cuts = 0;
    for torn in [false, true] {
        for writes in 0.. {
            let copy = Rc::new(paper.copy());
            let shelves = self::shelves(&copy);
            // What was read is what goes on: as after a reload.
            shelves.read();
            copy.cut_after(writes, torn);
            drop(shelves.keep(after, done));
            let finished = !copy.was_cut();
            copy.mend();
            let read = self::shelves(&copy).read().state;
            let told = format!("{told}, cut after {writes} writes, torn: {torn}");
            assert!(
                promises::alike(before, &read) || promises::alike(after, &read),
                "{told}: neither before nor after:\n{}",
                promises::differences(before, after, &read)
            );
            cuts += 1;
            if finished {
                assert!(promises::alike(after, &read), "{told}: kept, and not there");
                break;
            }
        }
    }
    cuts
}
