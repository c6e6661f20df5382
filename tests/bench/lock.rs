//! What keeps fasteners from coming loose is said at the step, and what a castle nut came to is read.

use super::commands::{with_bench, without_wrenches};
use halfcase::bench::{Bench, Intent, ReadWith, Refused};
use halfcase::job::kinds::Work;
use halfcase::job::kinds::fasten::fastening::{Asked, PassAnswer};
use halfcase::job::reading::{Fact, What};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::shelf::MemoryStore;
use halfcase::job::state::Ask;
use reactive_graph::graph::untrack;
use std::rc::Rc;

const STEP: StepId = StepId(1);

fn on(fasten: &str, test: impl FnOnce(Bench)) {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let sheet = format!(
            r#"{{"version":1,"title":"Nut","steps":[{{"id":1,"title":"Shaft nut","work":{{"fasten":{{"layout":"single",{fasten}}}}}}}]}}"#
        );
        bench.begin_job(Sheet::from_json(&sheet).unwrap());
        without_wrenches(bench);
        test(bench);
    });
}

fn ask(bench: Bench) -> Option<Ask> {
    untrack(|| bench.ask(STEP))
}

fn say(bench: Bench, holds: bool) -> Result<(), Refused> {
    bench.send(Intent::Say {
        step: STEP,
        fact: Fact::Locked,
        holds,
        words: String::new(),
    })
}

fn read(bench: Bench, what: What, value: f64) {
    let unit = "ft·lb";
    bench
        .measure(STEP, what, value, unit, &ReadWith::default())
        .unwrap();
}

/// The aim is the low end; from there on to the next hole, and what it came to is in the record.
#[test]
fn a_cotter_pin_takes_the_low_end_and_what_the_hole_came_to() {
    on(r#""torque":"40–55 ft·lb","lock":"cotter""#, |bench| {
        let answer = bench.sheet.with_untracked(|sheet| {
            let step = sheet.step(STEP).unwrap();
            let Work::Fasten(fasten) = &step.work else {
                panic!("no fasteners")
            };
            let Asked::Torque(asked) = fasten.asked(0, None) else {
                panic!("no torque")
            };
            assert_eq!((asked.target, asked.text().as_str()), (40.0, "40–55 ft·lb"));
            untrack(|| bench.pass_answer(step, 0, 0))
        });
        assert!(matches!(answer, Some(PassAnswer::Torque(_))));
        // Nothing is locked that is not tight.
        assert_eq!(say(bench, true), Err(Refused::FastenersLeft(1)));
        bench.send(Intent::Tally(STEP)).unwrap();
        assert_eq!(ask(bench), Some(Ask::Read(What::Reached)));
        read(bench, What::Reached, 58.0);
        assert_eq!(ask(bench), Some(Ask::Read(What::Fact(Fact::Locked))));
        say(bench, true).unwrap();
        // Past the high end: another nut, or a washer, or a reason.
        assert_eq!(ask(bench), Some(Ask::Finding(What::Reached)));
        read(bench, What::Reached, 47.0);
        assert_eq!(ask(bench), Some(Ask::Close));
        // Loosened, all of it is asked again.
        bench.send(Intent::Loosen(STEP)).unwrap();
        bench.send(Intent::Tally(STEP)).unwrap();
        assert_eq!(ask(bench), Some(Ask::Read(What::Reached)));
    });
}

#[test]
fn a_tab_that_is_not_bent_holds_the_step() {
    on(
        r#""thread":"M20x1.5","torque":"60 ft·lb","lock":"tab""#,
        |bench| {
            bench.send(Intent::Tally(STEP)).unwrap();
            assert_eq!(ask(bench), Some(Ask::Read(What::Fact(Fact::Locked))));
            say(bench, false).unwrap();
            assert_eq!(ask(bench), Some(Ask::Finding(What::Fact(Fact::Locked))));
            say(bench, true).unwrap();
            assert_eq!(bench.send(Intent::Close(STEP)), Ok(()));
        },
    );
}

/// A self-locking nut's own drag is measured before it is tightened, and always added.
#[test]
fn the_running_torque_is_asked_for_before_the_nut_is_tightened() {
    on(r#""torque":"40 ft·lb","self_locking":true"#, |bench| {
        assert_eq!(ask(bench), Some(Ask::Read(What::Running)));
        assert_eq!(
            bench.send(Intent::Tally(STEP)),
            Err(Refused::ReadingMissing("running torque".to_owned()))
        );
        read(bench, What::Running, 6.0);
        assert!(matches!(ask(bench), Some(Ask::Tally(_))));
    });
}

/// A torque raised behind the lock is brought anew, and so is what was read and locked behind it.
#[test]
fn a_lock_does_not_outlive_a_torque_that_was_raised() {
    on(
        r#""torque":"40–55 ft·lb","lock":"cotter","passes":[{"share":0.9,"round":false},{"share":1.0,"round":false}]"#,
        |bench| {
            let targets = bench.sheet.with_untracked(|sheet| {
                let Work::Fasten(fasten) = &sheet.step(STEP).unwrap().work else {
                    panic!("no fasteners")
                };
                [0, 1].map(|pass| match fasten.asked(pass, None) {
                    Asked::Torque(asked) => asked.target,
                    _ => panic!("no torque"),
                })
            });
            // No pass is above the aim.
            assert_eq!(targets, [36.0, 40.0]);
            for _ in 0..2 {
                bench.send(Intent::Tally(STEP)).unwrap();
            }
            read(bench, What::Reached, 47.0);
            say(bench, true).unwrap();
            assert_eq!(ask(bench), Some(Ask::Close));
            bench.edit_step(STEP, "fasten/torque", "60–70 ft·lb").unwrap();
            for _ in 0..2 {
                bench.send(Intent::Tally(STEP)).unwrap();
            }
            assert_eq!(ask(bench), Some(Ask::Read(What::Reached)));
        },
    );
}
