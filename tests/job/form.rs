//! The form of a step: every field shown can be changed by its name, and nonsense changes nothing.

use halfcase::job::example;
use halfcase::job::form::{Kind, fields, set};
use halfcase::job::kinds::{LIST, Work, blank, fasten};
use halfcase::job::planning::{self, PlanRefused};
use halfcase::job::sheet::{Sheet, Step, StepId};

fn one(kind: &str) -> (Sheet, Step) {
    let work = blank(kind).unwrap_or_else(|| Work::Fasten(fasten::begin("M8", "20 ± 2 N·m").unwrap()));
    let step = Step::new(StepId(1), "New", work);
    (Sheet::new("Plan", vec![step.clone()]), step)
}

#[test]
fn every_kind_begins_empty_and_survives_its_file() {
    for kind in LIST.iter().map(|kind| kind.word) {
        let (sheet, step) = one(kind);
        assert_eq!(step.work.word(), kind);
        assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet, "{kind}");
    }
}

#[test]
fn no_torque_is_made_up() {
    assert!(blank("Fasten").is_none());
    assert!(fasten::begin("M8", "").is_err());
    assert!(fasten::begin("M8", "20").is_err(), "without a unit");
    assert!(fasten::begin("M99", "20 N·m").is_err());
}

/// Readings go into the record by name: two of one name would each count for the other.
#[test]
fn no_two_rows_of_a_step_get_one_name() {
    let (sheet, mut step) = one("Check");
    let mut enter = |id: &str, value: &str| set(&sheet, &mut step, id, value);
    for row in ["reading", "bore", "part"] {
        let add = format!("{row}/add");
        for (id, value) in [
            (add.as_str(), ""),
            (&add, ""),
            (&format!("{row}/0/remove"), ""),
            (&add, ""),
        ] {
            enter(id, value).unwrap();
        }
    }
    enter("bore/0/journal", "yes").unwrap();
    for (id, name) in [
        ("bore/1/name", "bore 2"),
        ("bore/1/name", "bore 2 journal"),
        ("bore/0/journal_name", "bore 1"),
    ] {
        assert!(enter(id, name).is_err(), "{id} = {name}");
    }
    enter("bore/1/name", "bore 1").unwrap();
    enter("bore/0/name", "main bore").unwrap();
    let Work::Check(check) = &step.work else {
        panic!("a check was planned");
    };
    let asked = check.asked();
    let names: std::collections::BTreeSet<&String> = asked.iter().collect();
    assert_eq!(names.len(), asked.len(), "{asked:?}");
    assert_ne!(step.parts[0].name, step.parts[1].name);
}

#[test]
fn a_mass_is_bounded_as_on_the_lift_screen_and_hot_oil_can_be_said() {
    let (sheet, mut step) = one("Lift");
    assert!(set(&sheet, &mut step, "lift/mass", "5001").is_err());
    set(&sheet, &mut step, "lift/mass", "5000").unwrap();
    let (sheet, mut step) = one("Fill");
    set(&sheet, &mut step, "fill/hot", "yes").unwrap();
    assert!(matches!(&step.work, Work::Fill(fill) if fill.hot && fill.litres == 0.0));
}

/// Presses and enters something in every field of every step of the example, and of every kind: each
/// is taken or refused with a sentence, and a refused one changes nothing.
#[test]
fn every_field_shown_is_known_and_a_refusal_changes_nothing() {
    let mut steps: Vec<Step> = LIST.iter().map(|kind| one(kind.word).1).collect();
    steps.extend(example::sheet().steps);
    for step in steps {
        let sheet = Sheet::new("Plan", vec![step.clone()]);
        for field in fields(&sheet, &step) {
            let values: Vec<String> = match &field.kind {
                Kind::Head => continue,
                Kind::Choice(offered) => offered.iter().map(|(value, _)| value.clone()).collect(),
                _ => [
                    "yes", "no", "12.5", "−1", "", "62 N7", "9 N·m", "1e999", "NaN", "x",
                ]
                .map(str::to_owned)
                .to_vec(),
            };
            for value in values {
                let mut changed = step.clone();
                match set(&sheet, &mut changed, &field.id, &value) {
                    Ok(()) => {
                        let again = Sheet::new("Plan", vec![changed]);
                        assert_eq!(
                            Sheet::from_json(&again.to_json()).as_ref(),
                            Ok(&again),
                            "{} = {value:?}",
                            field.id
                        );
                    }
                    Err(refused) => {
                        assert!(refused.to_string().ends_with('.'), "{refused}");
                        assert_eq!(changed, step, "{} = {value:?}", field.id);
                    }
                }
            }
        }
    }
}

#[test]
fn a_row_is_added_filled_and_taken_out() {
    let (sheet, mut step) = one("Check");
    let mut put = |id: &str, value: &str| set(&sheet, &mut step, id, value);
    put("reading/add", "yes").unwrap();
    put("reading/0/name", "end float").unwrap();
    put("reading/0/least", "0,05").unwrap();
    put("reading/0/most", "0.15").unwrap();
    assert_eq!(
        put("reading/0/least", "0.2").unwrap_err().to_string(),
        "The lower limit is above the upper one."
    );
    put("bore/add", "yes").unwrap();
    put("bore/0/journal", "yes").unwrap();
    put("bore/0/clear_most", "0.08").unwrap();
    put("part/add", "yes").unwrap();
    put("part/0/count", "4").unwrap();
    let Work::Check(check) = &step.work else { panic!() };
    assert_eq!(check.readings[0].least, Some(0.05));
    assert_eq!(
        check.bores[0].journal.as_ref().unwrap().clearance_most_mm,
        Some(0.08)
    );
    assert_eq!(step.parts[0].count, 4);
    set(&sheet, &mut step, "bore/0/remove", "yes").unwrap();
    set(&sheet, &mut step, "part/0/remove", "yes").unwrap();
    assert!(step.parts.is_empty());
}

fn plan(titles: &[&str]) -> Sheet {
    let mut sheet = Sheet::new("Plan", Vec::new());
    for title in titles {
        planning::insert(
            &mut sheet,
            None,
            Step::new(StepId(0), title, blank("Turn").unwrap()),
        );
    }
    sheet
}

fn titles(sheet: &Sheet) -> Vec<&str> {
    sheet.steps.iter().map(|step| step.title.as_str()).collect()
}

#[test]
fn steps_move_and_copy_and_keep_their_numbers_and_waits_hold() {
    let mut sheet = plan(&["a", "b", "c"]);
    planning::shift(&mut sheet, StepId(3), false).unwrap();
    assert_eq!(titles(&sheet), ["a", "c", "b"]);
    planning::shift(&mut sheet, StepId(1), false).unwrap();
    planning::shift(&mut sheet, StepId(2), true).unwrap();
    assert_eq!(titles(&sheet), ["a", "c", "b"], "at the ends nothing moves");
    let view = sheet.clone();
    set(&view, &mut sheet.steps[1], "wait/add", "1").unwrap();
    assert_eq!(
        planning::shift(&mut sheet, StepId(3), false),
        Err(PlanRefused::Order)
    );
    assert_eq!(
        planning::shift(&mut sheet, StepId(1), true),
        Err(PlanRefused::Order)
    );
    assert_eq!(
        planning::remove(&mut sheet, StepId(1)),
        Err(PlanRefused::WaitedFor("c".to_owned()))
    );
    assert_eq!(planning::copy(&mut sheet, StepId(3)), Ok(StepId(4)));
    assert_eq!(titles(&sheet), ["a", "c", "c", "b"]);
    let view = sheet.clone();
    assert_eq!(
        set(&view, &mut sheet.steps[0], "wait/add", "3"),
        Err(PlanRefused::Order)
    );
    set(&view, &mut sheet.steps[1], "wait/1/remove", "yes").unwrap();
    assert_eq!(sheet.check(), Ok(()));
}
