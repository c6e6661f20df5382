//! My wrenches and the Torque screen's things: checked, kept, and taken back by undo.

use super::commands::{step, with_bench};
use halfcase::bench::{Bench, Refused, typed_words};
use halfcase::job::kinds::Work;
use halfcase::job::sheet::StepId;
use halfcase::job::shelf::MemoryStore;
use halfcase::trade::quantity::{TorqueUnit, parse_torque};
use halfcase::trade::wrench::{Wrench, WrenchError, WrenchKind};
use std::rc::Rc;

fn names(bench: Bench) -> Vec<String> {
    bench
        .settings
        .with_untracked(|s| s.wrenches.iter().map(|w| w.name.clone()).collect())
}

fn in_hand(bench: Bench) -> String {
    bench
        .settings
        .with_untracked(|s| s.wrench().map(|w| w.name.clone()).unwrap_or_default())
}

fn beam() -> Wrench {
    Wrench {
        name: "Beam".to_owned(),
        unit: TorqueUnit::KilogramMetre,
        min: 1.0,
        max: 20.0,
        division: 0.5,
        kind: WrenchKind::Dial,
        accuracy: 0.04,
    }
}

#[test]
fn wrenches_are_added_changed_moved_and_removed_and_undone() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        assert_eq!(bench.add_wrench(beam()), Ok(()));
        assert_eq!((names(bench).len(), in_hand(bench).as_str()), (4, "Beam"));
        bench.move_wrench_up(3);
        assert_eq!(names(bench), ["Small", "Middle", "Beam", "Large"]);
        assert_eq!(in_hand(bench), "Beam", "what is in the hand stays in it");
        bench.move_wrench_up(3);
        assert_eq!(names(bench), ["Small", "Middle", "Large", "Beam"]);
        assert_eq!(in_hand(bench), "Beam");
        bench.move_wrench_up(0);
        bench.remove_wrench(0);
        assert_eq!(
            (names(bench).join(" "), in_hand(bench)),
            ("Middle Large Beam".into(), "Beam".into())
        );
        bench.remove_wrench(2);
        assert_eq!(in_hand(bench), "Large");
        bench.undo().unwrap();
        assert_eq!(in_hand(bench), "Beam");
        bench.remove_wrench(9);
        let longer = Wrench { max: 25.0, ..beam() };
        assert_eq!(bench.change_wrench(2, longer), Ok(()));
        assert_eq!(bench.settings.with_untracked(|s| s.wrenches[2].max), 25.0);
    });
    with_bench(&store, |bench| assert_eq!(in_hand(bench), "Beam"));
}

#[test]
fn a_wrench_that_makes_no_sense_is_refused_and_nothing_changes() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let reversed = Wrench { min: 30.0, ..beam() };
        assert_eq!(
            bench.add_wrench(reversed.clone()),
            Err(Refused::Wrench(WrenchError::NoRange))
        );
        assert_eq!(
            bench.change_wrench(0, reversed),
            Err(Refused::Wrench(WrenchError::NoRange))
        );
        assert_eq!(names(bench), ["Small", "Middle", "Large"]);
    });
}

#[test]
fn with_the_last_wrench_gone_none_is_in_the_hand() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        (0..3).for_each(|_| bench.remove_wrench(0));
        assert_eq!(in_hand(bench), "");
        bench.add_wrench(beam()).unwrap();
        assert_eq!(in_hand(bench), "Beam");
    });
}

#[test]
fn a_steps_value_and_bolt_are_carried_and_its_adapter_does_not_stay() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.carry(&step(bench, 6));
        let settings = bench.settings.get_untracked();
        assert_eq!(
            (settings.torque_typed.as_str(), settings.torque_unit),
            ("18 ± 2", TorqueUnit::NewtonMetre)
        );
        let bolt = settings.desk.bolt.unwrap();
        assert!(bolt.seal);
        assert_eq!(bolt.words(), "M10×1 5.8 plug in cast aluminium");
        assert_eq!(settings.desk.from, Some(StepId(6)));
        assert_eq!(settings.desk.recent, ["18 ± 2 N·m"]);
    });
}

#[test]
fn the_last_eight_values_are_remembered_once_each() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        for n in 1..=10 {
            let statement = parse_torque(&format!("{n} N·m"), None).unwrap();
            bench.note(|s| s.desk.remember(&statement));
        }
        let again = parse_torque("5 N·m", None).unwrap();
        bench.note(|s| s.desk.remember(&again));
        let recent = bench.settings.with_untracked(|s| s.desk.recent.clone());
        assert_eq!(recent.len(), 8);
        assert_eq!(recent[..3], ["5 N·m", "10 N·m", "9 N·m"]);
    });
}

#[test]
fn what_is_entered_is_typed_as_the_keypad_types_it() {
    for (words, typed) in [
        ("9–12 N·m", "9–12"),
        ("9 ± 1 ft·lb", "9 ± 1"),
        ("1.20 kgf·m", "1.20"),
    ] {
        assert_eq!(typed_words(&parse_torque(words, None).unwrap()), typed);
    }
}

#[test]
fn a_steps_torque_is_corrected_kept_and_taken_back() {
    let store = Rc::new(MemoryStore::default());
    let torque = |bench| match step(bench, 10).work {
        Work::Fasten(fasten) => fasten.torque.text(),
        _ => String::new(),
    };
    with_bench(&store, |bench| {
        bench.correct_torque(StepId(10), parse_torque("8 N·m", None).unwrap());
        assert_eq!(torque(bench), "8 N·m");
    });
    with_bench(&store, |bench| assert_eq!(torque(bench), "8 N·m"));
    with_bench(&store, |bench| {
        bench.correct_torque(StepId(10), parse_torque("7 N·m", None).unwrap());
        bench.undo().unwrap();
        assert_eq!(torque(bench), "8 N·m");
    });
}
