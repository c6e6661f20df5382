//! Faults that users met, each as they met it.

use super::commands::{acknowledge, apply, done_step, read, step, with_bench, without_wrenches};
use super::dying::Dying;
use halfcase::bench::{Bench, Intent, ReadWith, Refused};
use halfcase::job::id::ReadingId;
use halfcase::job::journal::torque_table;
use halfcase::job::keep::Shelves;
use halfcase::job::kinds::{Work, fasten};
use halfcase::job::parts::{self, Listed, PartKey, PartPlace};
use halfcase::job::reading::What;
use halfcase::job::record::Event;
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::shelf::{CUT_OFF, MemoryStore, Shelf};
use halfcase::job::state::{Ask, Now};
use halfcase::trade::caution::Level;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::parse_torque;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use std::rc::Rc;

fn store() -> Rc<MemoryStore> {
    Rc::new(MemoryStore::default())
}

fn send(bench: Bench, intent: Intent) {
    bench.send(intent).unwrap();
}

fn ask(bench: Bench, id: u32) -> Option<Ask> {
    untrack(|| bench.ask(StepId(id)))
}

/// Opened by hand before the cure, a step is held by its STOP, from whichever screen it is touched.
#[test]
fn a_step_opened_before_the_cure_is_held_by_its_stop_on_every_screen() {
    let store = store();
    with_bench(&store, |bench| {
        // The spigot's own compound waits for the case joint here, which is still wet.
        let id = StepId(15);
        apply(bench, &step(bench, 15)).unwrap();
        send(bench, Intent::Close(id));
        let mut late = step(bench, 7);
        late.waits_for = vec![id];
        let late = bench.add_step(Some(id), late);
        let reason = "the customer waits".to_owned();
        send(bench, Intent::Override { step: late, reason });
        let put_on = || {
            bench.send(Intent::PutOn {
                step: late,
                activator: false,
            })
        };
        assert_eq!(put_on(), Err(Refused::Unacknowledged));
        let found = bench
            .sheet
            .with_untracked(|sheet| sheet.step(late).cloned())
            .unwrap();
        let cautions = untrack(|| bench.cautions_of(&found.work, Some(late)));
        assert!(
            cautions
                .iter()
                .any(|c| c.level == Level::Stop && c.id.contains("cure")),
            "{cautions:?}"
        );
        acknowledge(bench, &found);
        assert_eq!(put_on(), Ok(()));
    });
}

fn part(bench: Bench, id: u32) -> Listed {
    bench.sheet.with_untracked(|sheet| {
        let all = bench
            .progress
            .with_untracked(|progress| parts::list(sheet, progress));
        all.into_iter().find(|part| part.step == StepId(id)).unwrap()
    })
}

/// Correcting what a bolt or a reading is called loses nothing that was said of it.
#[test]
fn a_corrected_bolt_keeps_its_bag_and_a_renamed_reading_its_number() {
    let store = store();
    with_bench(&store, |bench| {
        bench.place_part(&part(bench, 4), PartPlace::Bag("7".to_owned()), 3);
        read(bench, 61.975);
        bench.edit_step(StepId(4), "fasten/length", "20").unwrap();
        bench.edit_step(StepId(4), "fasten/class", "4").unwrap();
        bench
            .edit_step(StepId(2), "reading/1/name", "bore, clock side")
            .unwrap();
    });
    with_bench(&store, |bench| {
        let part = part(bench, 4);
        assert!(part.name.contains("20"), "{}", part.name);
        assert_eq!((part.place, part.here), (PartPlace::Bag("7".to_owned()), 3));
        let progress = bench.progress.with_untracked(|progress| progress.step(StepId(2)));
        let reading = progress.reading(&What::Limit(ReadingId(1))).unwrap();
        assert_eq!(reading.value, 61.975);
        assert_eq!(reading.what.name(Some(&step(bench, 2))), "bore, clock side");
    });
}

/// A joint opened again writes two lines; undo takes both back, before a reload and after.
#[test]
fn undo_of_a_joint_opened_again_leaves_no_remark() {
    for reload in [false, true] {
        let store = store();
        let undo = |bench: Bench| {
            bench.undo().unwrap();
            let standing: Vec<Event> = bench
                .record
                .with_untracked(|record| record.standing().map(|entry| entry.event.clone()).collect());
            assert!(!standing.contains(&Event::JointOpened), "{standing:?}");
            let running = bench
                .clocks
                .with_untracked(|clocks| clocks.iter().filter(|clock| clock.ended.is_none()).count());
            assert_eq!(running, 1, "the clock of before runs on");
        };
        with_bench(&store, |bench| {
            apply(bench, &step(bench, 7)).unwrap();
            let id = bench.clocks.with_untracked(|clocks| clocks[0].id);
            bench.restart(id);
            if !reload {
                undo(bench);
            }
        });
        if reload {
            with_bench(&store, undo);
        }
    }
}

/// A digit on the torque pad writes what is typed, and nothing else of the bench.
#[test]
fn a_digit_on_the_torque_pad_writes_no_wrenches() {
    let store = store();
    with_bench(&store, |bench| {
        bench.note_shop(20.0);
        bench.take_wrench(1);
        bench.note(|settings| settings.torque_typed = "7".to_owned());
        let before = store.texts.borrow().clone();
        bench.note(|settings| settings.torque_typed = "72".to_owned());
        let after = store.texts.borrow().clone();
        let changed: Vec<&str> = after
            .iter()
            .filter(|(key, text)| before.get(*key) != Some(text))
            .map(|(key, _)| key.rsplit_once('/').unwrap().0)
            .collect();
        assert_eq!(changed, ["halfcase/mark", "halfcase/typed"]);
    });
}

/// Undo names what it would take back the same before a reload and after.
#[test]
fn undo_names_an_action_the_same_before_a_reload_and_after() {
    type Touch = fn(Bench);
    let touches: [Touch; 11] = [
        |bench| done_step(bench, 1),
        |bench| read(bench, 61.97),
        |bench| apply(bench, &step(bench, 4)).unwrap(),
        |bench| {
            let (step, part) = (StepId(6), PartKey::Own);
            send(bench, Intent::NewOn { step, part });
            bench.take_wrench(1);
            send(bench, Intent::Tally(step));
        },
        |bench| {
            acknowledge(bench, &step(bench, 13));
            bench.feel(StepId(13), "at 4 o’clock");
        },
        |bench| bench.place_part(&part(bench, 4), PartPlace::AtShop, 0),
        |bench| bench.add_remark(None, "looked at twice").unwrap(),
        |bench| {
            let reason = "not on this one".to_owned();
            let step = StepId(3);
            send(bench, Intent::Skip { step, reason });
        },
        |bench| {
            done_step(bench, 1);
            bench.reopen(StepId(1));
        },
        |bench| {
            apply(bench, &step(bench, 7)).unwrap();
            send(bench, Intent::Close(StepId(7)));
            let mut late = step(bench, 3);
            late.waits_for = vec![StepId(7)];
            let step = bench.add_step(Some(StepId(7)), late);
            let reason = "flushing".to_owned();
            send(bench, Intent::Override { step, reason });
        },
        |bench| {
            apply(bench, &step(bench, 7)).unwrap();
            let id = bench.clocks.with_untracked(|clocks| clocks[0].id);
            bench.restart(id);
        },
    ];
    for touch in touches {
        let store = store();
        let name = |bench: Bench| {
            (
                untrack(|| bench.undoable()),
                untrack(|| bench.history()).remove(0).1,
            )
        };
        let before = with_bench(&store, |bench| {
            touch(bench);
            name(bench)
        });
        assert_eq!(with_bench(&store, name), before);
        assert!(!before.1.is_empty());
    }
}

/// Four bolts at 22 N·m in passes of 30 and 100 %, put in behind the first step.
fn four_bolts(bench: Bench) -> StepId {
    let bolts = fasten::begin("M8", "22 N·m").unwrap();
    let id = bench.add_step(
        Some(StepId(1)),
        Step::new(StepId(0), "Cover", Work::Fasten(bolts)),
    );
    bench.edit_step(id, "fasten/count", "4").unwrap();
    bench.edit_step(id, "fasten/passes", "30 100").unwrap();
    without_wrenches(bench);
    id
}

fn table(bench: Bench) -> String {
    let sheet = bench.sheet.get_untracked();
    let rows = bench.record.with_untracked(|record| torque_table(record, &sheet));
    rows.into_iter()
        .find(|row| row.step.ends_with("Cover"))
        .unwrap()
        .tallied
}

/// Bolts at 30 % of the torque are not at the torque because the passes were taken out of the plan.
#[test]
fn a_tally_holds_only_while_the_plan_wants_what_it_was_made_for() {
    let store = store();
    with_bench(&store, |bench| {
        let id = four_bolts(bench);
        for _ in 0..4 {
            send(bench, Intent::Tally(id));
        }
        bench.edit_step(id, "fasten/passes", "").unwrap();
        assert!(matches!(ask(bench, id.0), Some(Ask::Tally(next)) if next.done_in_pass == 0));
        assert_eq!(bench.send(Intent::Close(id)), Err(Refused::FastenersLeft(4)));
        assert_eq!(table(bench), "0 of 4");
        for _ in 0..4 {
            send(bench, Intent::Tally(id));
        }
        assert_eq!(
            (ask(bench, id.0), table(bench)),
            (Some(Ask::Close), "4 of 4".to_owned())
        );
        // Said in another unit it is the same torque.
        bench.correct_torque(id, parse_torque("16.2 ft·lb", None).unwrap());
        assert_eq!(ask(bench, id.0), Some(Ask::Close));
        // Too tight now: loosened, and begun again.
        bench.correct_torque(id, parse_torque("18 N·m", None).unwrap());
        assert_eq!(ask(bench, id.0), Some(Ask::Loosen(4)));
        assert_eq!(bench.send(Intent::Tally(id)), Err(Refused::TooTight(4)));
        send(bench, Intent::Loosen(id));
        assert!(matches!(ask(bench, id.0), Some(Ask::Tally(next)) if next.done_in_pass == 0));
        bench.undo().unwrap();
        assert_eq!(ask(bench, id.0), Some(Ask::Loosen(4)));
    });
}

/// A reading outside its limits is read again, or accepted with a reason; it never passes unseen.
#[test]
fn a_failed_reading_closes_no_step_without_a_word() {
    let store = store();
    with_bench(&store, |bench| {
        let along = |mm| {
            bench.measure(
                StepId(2),
                What::Limit(ReadingId(2)),
                mm,
                "mm",
                &ReadWith::default(),
            )
        };
        read(bench, 62.5);
        along(61.97).unwrap();
        let close = || bench.send(Intent::Close(StepId(2)));
        let found = |mm: f64| format!("“bore across” is outside its limits: {mm} mm");
        assert_eq!(close(), Err(Refused::Finding(found(62.5))));
        let accept = |reason: &str| {
            bench.send(Intent::Accept {
                step: StepId(2),
                what: What::Limit(ReadingId(1)),
                reason: reason.to_owned(),
                initials: "jb".to_owned(),
            })
        };
        assert_eq!(accept(" "), Err(Refused::NoReason));
        assert_eq!(accept("sleeve comes in"), Ok(()));
        // Read again, the reason no longer stands.
        read(bench, 62.4);
        assert_eq!(close(), Err(Refused::Finding(found(62.4))));
        read(bench, 61.98);
        assert_eq!(close(), Ok(()));
    });
}

/// The battery dies while a clock is begun anew: the old one runs, or the new one does.
#[test]
fn a_restart_cut_off_anywhere_loses_no_clock() {
    let mut told = 0;
    for writes in 0..10 {
        let store = Dying::new();
        super::commands::lay_out(store.clone());
        let open = || Shelves::new(Shelf::new(store.clone()), None);
        let shelves = open();
        let mut state = shelves.read().state;
        let now = Now::utc(Moment(1_780_300_800_000));
        let mut touch = |intent: Intent| {
            let done = state.apply(&intent, now).unwrap();
            state.take(done.clone());
            // What is not read back is refused; a phone that dies hears nothing of it.
            drop(shelves.keep(&state, &done));
        };
        touch(Intent::PutOn {
            step: StepId(7),
            activator: false,
        });
        store.left.set(writes);
        touch(Intent::Restart(halfcase::job::clock::ClockId(1)));
        store.left.set(usize::MAX);
        let read = open().read();
        let running = read
            .state
            .clocks
            .iter()
            .filter(|clock| clock.ended.is_none())
            .count();
        assert_eq!(running, 1, "after {writes} writes");
        // The first write that was cut off is said, but where nothing was written or all was.
        assert!(
            read.said.iter().all(|said| said.words == CUT_OFF),
            "after {writes} writes: {:?}",
            read.said
        );
        told += read.said.len();
    }
    assert!((1..9).contains(&told), "{told}");
}

/// A slip of the keys in a bore's grid closes nothing: it is far from the others, and nobody can tell.
#[test]
fn a_stray_reading_of_a_bore_is_outside_until_it_is_taken_again() {
    let store = store();
    with_bench(&store, |bench| {
        let sheet = halfcase::job::sheet::Sheet::from_json(
            r#"{"version":1,"title":"Bore","steps":[{"id":1,"title":"Liner","work":{"check":{"readings":[],
                "bores":[{"name":"liner","least_mm":40.0,"most_mm":40.02}]}}}]}"#,
        );
        bench.begin_job(sheet.unwrap());
        let grid: Vec<What> = What::grid(ReadingId(1), false).collect();
        let read = |at: usize, mm| {
            bench
                .measure(StepId(1), grid[at].clone(), mm, "mm", &ReadWith::default())
                .unwrap();
        };
        (0..5).for_each(|at| read(at, 40.01));
        read(5, 4.001);
        assert!(
            matches!(ask(bench, 1), Some(Ask::Finding(_))),
            "{:?}",
            ask(bench, 1)
        );
        read(5, 40.012);
        assert_eq!(ask(bench, 1), Some(Ask::Close));
    });
}

/// A number read in one unit is told in another or asked for again, and a reason given under one limit says
/// nothing of the next.
#[test]
fn a_reading_is_asked_for_again_when_its_unit_or_its_limits_change() {
    let store = store();
    with_bench(&store, |bench| {
        let along = What::Limit(ReadingId(2));
        bench
            .measure(StepId(2), along, 61.97, "mm", &ReadWith::default())
            .unwrap();
        read(bench, 62.5);
        send(
            bench,
            Intent::Accept {
                step: StepId(2),
                what: What::Limit(ReadingId(1)),
                reason: "a sleeve goes in".to_owned(),
                initials: "jb".to_owned(),
            },
        );
        assert_eq!(ask(bench, 2), Some(Ask::Close));
        bench.edit_step(StepId(2), "reading/1/most", "61.995").unwrap();
        assert_eq!(ask(bench, 2), Some(Ask::Finding(What::Limit(ReadingId(1)))));
        bench.undo().unwrap();
        assert_eq!(ask(bench, 2), Some(Ask::Close));
        bench.edit_step(StepId(2), "reading/1/unit", "in").unwrap();
        // 62.5 mm is no 61.97 in, and the reason was given under limits in mm.
        assert_eq!(ask(bench, 2), Some(Ask::Finding(What::Limit(ReadingId(1)))));
        bench.undo().unwrap();
        bench.edit_step(StepId(2), "reading/1/unit", "°C").unwrap();
        assert_eq!(ask(bench, 2), Some(Ask::Read(What::Limit(ReadingId(1)))));
    });
}

/// A turn on top of bolts that were set higher than the plan's torque goes too far.
#[test]
fn bolts_set_higher_than_a_staged_torque_are_loosened_first() {
    let store = store();
    with_bench(&store, |bench| {
        let id = four_bolts(bench);
        bench.edit_step(id, "fasten/passes", "").unwrap();
        for _ in 0..4 {
            send(bench, Intent::Tally(id));
        }
        let mut work = step(bench, id.0).work;
        if let Work::Fasten(fasten) = &mut work {
            fasten.stages = vec![
                halfcase::trade::stages::Stage::torque(parse_torque("11 N·m", None).unwrap()),
                halfcase::trade::stages::Stage::angle(90.0),
            ];
        }
        send(
            bench,
            Intent::SetWork {
                step: Some(id),
                what: "stages",
                work: Box::new(work),
            },
        );
        assert_eq!(ask(bench, id.0), Some(Ask::Loosen(4)));
    });
}

/// On a full phone a deleted job can be freed: that is the way out that is told.
#[test]
fn a_full_phone_is_freed_by_its_deleted_jobs() {
    let room = 60_000;
    let store = Rc::new(MemoryStore {
        room: Some(room),
        ..MemoryStore::default()
    });
    with_bench(&store, |bench| {
        bench.duplicate_job(halfcase::job::sheet::JobId(1)).unwrap();
        let full = || {
            bench
                .said
                .with_untracked(|said| said.iter().any(|said| said.words.contains("full")))
        };
        let mut n = 0;
        while !full() {
            read(bench, 61.97 + f64::from(n) * 1e-5);
            n += 1;
            assert!(n < 2_000);
        }
        bench.take_job(halfcase::job::sheet::JobId(1)).unwrap();
        bench.delete_job(halfcase::job::sheet::JobId(2)).unwrap();
        bench.said.set(Vec::new());
        bench.free_deleted();
        assert!(!full());
        done_step(bench, 1);
        assert!(!full());
    });
    with_bench(&store, |bench| {
        assert!(
            bench
                .progress
                .with_untracked(|progress| progress.closed(StepId(1)))
        );
        assert_eq!(bench.jobs.with_untracked(Vec::len), 1);
    });
}

/// A tab forgotten in the background writes down the time; that shuts nobody out.
#[test]
fn the_watch_of_a_forgotten_tab_lets_the_other_keep() {
    let store = store();
    with_bench(&store, |bench| {
        done_step(bench, 1);
        let mine = Shelves::new(Shelf::new(store.clone()), None);
        mine.read();
        mine.keep_watch(&halfcase::job::tamper::WatchKept::default())
            .unwrap();
        read(bench, 61.97);
        assert_eq!(bench.said.get_untracked(), []);
    });
    with_bench(&store, |bench| {
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 2);
    });
}
