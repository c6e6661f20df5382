//! Bolts by the manual's numbers, and different torques on one flange.

use super::sheet;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::fasten::Fasten;
use halfcase::job::progress::{Progress, next_fastener};
use halfcase::job::record::{Event, Goal, Record};
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::{fasteners, form, guarding, journal};

/// The walking tractor's oil pump flange: six bolts, two of them short ones.
fn pump(more: &str) -> Sheet {
    sheet(&format!(
        r#"{{"id":1,"title":"Pump","work":{{"fasten":{{"thread":"M8","torque":"22 N·m",
            "layout":{{"line":{{"count":6}}}}{more}}}}}}}"#
    ))
}

fn of(step: &Step) -> &Fasten {
    match &step.work {
        Work::Fasten(fasten) => fasten,
        other => panic!("{other:?}"),
    }
}

fn newton_metres(goal: Goal) -> f64 {
    match goal {
        Goal::Torque { newton_metres, .. } => newton_metres,
        other => panic!("{other:?}"),
    }
}

#[test]
fn each_bolt_is_asked_for_its_groups_torque() {
    let plan = pump(r#","groups":["5, 6: 12 N·m"],"stages":["snug 5 N·m","22 N·m"]"#);
    let fasten = of(&plan.steps[0]);
    let asked: Vec<f64> = (0..6)
        .map(|place| newton_metres(fasten.at(place).goal(1)))
        .collect();
    assert_eq!(asked, [22.0, 22.0, 22.0, 22.0, 12.0, 12.0]);
    // A stage that asks for a torque of its own asks it of all.
    assert!((0..6).all(|place| newton_metres(fasten.at(place).goal(0)) == 5.0));
    assert_eq!(fasten.torque_words(), "22 N·m; 5, 6: 12 N·m");
    assert_eq!(Sheet::from_json(&plan.to_json()).unwrap(), plan);
    let handed = fasteners::read(&fasteners::write(&plan), StepId(1)).unwrap();
    assert_eq!(of(&handed[0]), fasten);
    // Tallied by what its own group asks: the step ends, and nothing is too tight.
    let step = &plan.steps[0];
    let mut record = Record::default();
    let progress = |record: &Record| Progress::of(record).step(step.id);
    let mut touches = 0;
    while let Some(next) = next_fastener(step, &progress(&record)) {
        let event = Event::Tallied {
            pass: next.pass,
            place: next.place,
            set: super::set_to(0.0, ""),
            goal: Some(fasten.at(next.place).goal(next.pass)),
        };
        record.add(super::MORNING, Some(step.id), "", event);
        touches += 1;
        assert!(touches <= 12, "the tally must end");
    }
    assert_eq!((touches, progress(&record).too_tight(fasten)), (12, 0));
    // A bolt that was brought to 22 N·m before it was put in the group is too tight now.
    let mut changed = step.clone();
    form::set(&plan, &mut changed, "group/1/which", "4-6").unwrap();
    assert_eq!(progress(&record).too_tight(of(&changed)), 1);
}

#[test]
fn a_groups_torque_and_a_stages_are_guarded_too() {
    let plan = |torque: &str| pump(&format!(r#","strength":"8.8",{torque}"#));
    let said = |torque: &str| guarding::guard_others(of(&plan(torque).steps[0]));
    assert_eq!(said(r#""groups":["5, 6: 20 N·m"]"#), Vec::<String>::new());
    let group = said(r#""groups":["5, 6: 220 N·m"]"#);
    assert!(group.len() == 1 && group[0].starts_with("bolt 5: "), "{group:?}");
    let stage = said(r#""stages":["22 N·m","220 N·m"]"#);
    assert!(stage.len() == 1 && stage[0].starts_with("stage 2: "), "{stage:?}");
    assert_eq!(said(r#""stages":["snug 5 N·m","22 N·m"]"#), Vec::<String>::new());
}

#[test]
fn groups_are_planned_by_touch_and_by_table() {
    let plan = pump("");
    let mut step = plan.steps[0].clone();
    let mut set = |path: &str, value: &str| {
        form::set(&plan, &mut step, path, value)
            .map_err(|error| error.to_string())
            .map(|()| of(&step).group_words())
    };
    assert_eq!(set("group/add", "yes").unwrap(), "6: 22 N·m");
    assert_eq!(set("group/1/which", "5–6").unwrap(), "5, 6: 22 N·m");
    assert_eq!(set("group/1/torque", "12 N·m").unwrap(), "5, 6: 12 N·m");
    set("group/add", "yes").unwrap();
    assert!(set("group/2/which", "5").unwrap_err().contains("two groups"));
    assert!(set("group/2/which", "7").unwrap_err().contains("no bolt “7”"));
    assert!(set("group/2/which", "3-1").is_err());
    assert!(set("group/2/torque", "12 N·m + 90°").is_err());
    assert_eq!(set("group/2/remove", "yes").unwrap(), "5, 6: 12 N·m");
    let table = "thread;torque;count;layout;groups\nM8;22 N·m;6;line;\"1–4: 22 N·m; 5, 6: 12 N·m\"\n";
    let read = fasteners::read(table, StepId(1)).unwrap();
    assert_eq!(of(&read[0]).group_words(), "1, 2, 3, 4: 22 N·m; 5, 6: 12 N·m");
    let wrong = fasteners::read(&table.replace("5, 6", "7"), StepId(1))
        .unwrap_err()
        .to_string();
    assert!(wrong.starts_with("Line 2, groups: "), "{wrong}");
}

#[test]
fn the_manuals_numbers_are_in_the_record_and_in_the_groups() {
    let plan = pump("");
    let mut step = plan.steps[0].clone();
    let mut set =
        |path: &str, value: &str| form::set(&plan, &mut step, path, value).map_err(|error| error.to_string());
    assert!(set("fasten/labels", "7 3").unwrap_err().contains("each of the 6"));
    assert!(
        set("fasten/labels", "7 3 1 1 2 4")
            .unwrap_err()
            .contains("number 1")
    );
    assert!(set("fasten/labels", "7 3 1 5 2 A:1").is_err());
    set("fasten/labels", "7, 3, 1, 5, 2, A1").unwrap();
    set("group/add", "yes").unwrap();
    set("group/1/which", "7 A1").unwrap();
    let fasten = of(&step);
    assert_eq!(fasten.groups[0].places, [0, 5]);
    assert_eq!(fasten.group_words(), "7, A1: 22 N·m");
    let plan = Sheet::new("Pump", vec![step.clone()]);
    assert_eq!(Sheet::from_json(&plan.to_json()).unwrap(), plan);
    let handed = fasteners::read(&fasteners::write(&plan), StepId(1)).unwrap();
    assert_eq!(of(&handed[0]), fasten);
    let mut record = Record::default();
    let event = Event::Tallied {
        pass: 0,
        place: 0,
        set: super::set_to(22.0, "Middle"),
        goal: None,
    };
    record.add(super::MORNING, Some(StepId(1)), "", event);
    let words = journal::words(&record.entries()[0], &plan);
    assert_eq!(words, "bolt 7, pass 1: 22 N·m with Middle");
    // Another count: they no longer fit, and the places count again.
    let mut fewer = step.clone();
    form::set(&plan, &mut fewer, "count/count", "4").ok();
    form::set(&plan, &mut fewer, "fasten/count", "4").ok();
    assert_eq!(of(&fewer).layout.count(), 4);
    assert_eq!(of(&fewer).name(0), "1");
}
