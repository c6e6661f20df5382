//! A lift typed in pounds and inches, and a fluid said to be no fuel.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::field::Entry;
use halfcase::job::form;
use halfcase::job::journal::words;
use halfcase::job::kinds::{Fill, LiftWork, Work};
use halfcase::job::sheet::{StepId, Units};
use halfcase::job::state::Intent;
use halfcase::trade::quantity::{LengthUnit, MassUnit};

fn lift() -> Hand {
    Hand::with(sheet(
        r#"{"id":1,"title":"Gearbox onto the bench","work":{"lift":{"load":"gearbox","mass_kg":32,
            "way":{"hands":{"reach_cm":40,"from_cm":30,"to_cm":90}}}}}"#,
    ))
}

fn work(hand: &Hand) -> LiftWork {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Lift(lift) => lift.clone(),
        other => panic!("{other:?}"),
    }
}

/// The value and the unit of that field.
fn shown(hand: &Hand, path: &str) -> (String, &'static str) {
    let job = hand.state.job();
    let fields = form::fields(&job.sheet, &job.sheet.steps[0]);
    let field = fields.into_iter().find(|field| field.id == path).unwrap();
    match field.entry {
        Entry::Number { unit, .. } => (field.value, unit),
        _ => (field.value, ""),
    }
}

fn inches(hand: &mut Hand) {
    let length = LengthUnit::Inch;
    let units = Units {
        length,
        ..Units::default()
    };
    hand.send(Intent::SetUnits(units)).unwrap();
}

fn done(hand: &mut Hand) -> String {
    hand.read_stops(1);
    hand.close(1).unwrap();
    let job = hand.state.job();
    words(job.record.entries().last().unwrap(), &job.sheet)
}

/// By definition the pound is 0.453 592 37 kg and the inch 2.54 cm: 70.5 lb are 31.978 kg, 16 in 40.64 cm.
#[test]
fn a_lift_is_typed_in_pounds_and_inches_and_the_record_says_both() {
    let mut hand = lift();
    assert_eq!(shown(&hand, "lift/mass"), ("32".to_owned(), "kg"));
    hand.edit("lift/weighs_in", "1").unwrap();
    assert_eq!(shown(&hand, "lift/mass"), ("70.548".to_owned(), "lb"));
    hand.edit("lift/mass", "70.5").unwrap();
    hand.edit("lift/reach", "16").unwrap();
    assert_eq!(shown(&hand, "lift/mass"), ("70.5".to_owned(), "lb"));
    assert_eq!(shown(&hand, "lift/reach"), ("16".to_owned(), "in"));
    assert!((work(&hand).mass_kg - 31.978_262).abs() < 1e-6);
    let refused = hand.edit("lift/mass", "20000").unwrap_err();
    assert_eq!(refused.to_string(), "Enter a number from 0.22046 to 11023 lb.");
    let said = done(&mut hand);
    assert!(said.contains("load: gearbox, 70.5 lb (32.0 kg)"), "{said}");
    assert!(!said.contains("up to 9"), "its limits are in pounds: {said}");
}

#[test]
fn a_job_of_inches_tells_its_lifts_in_pounds_unless_they_say_otherwise() {
    let mut hand = lift();
    let before = hand.state.job().sheet.to_json();
    inches(&mut hand);
    assert_eq!(shown(&hand, "lift/mass"), ("70.548".to_owned(), "lb"));
    hand.edit("lift/mass", "70").unwrap();
    // The job says so: the step need not.
    assert_eq!(work(&hand).weighs_in, None);
    hand.edit("lift/weighs_in", "0").unwrap();
    assert_eq!(work(&hand).weighs_in, Some(MassUnit::Kilogram));
    hand.edit("lift/mass", "32").unwrap();
    hand.edit("lift/weighs_in", "1").unwrap();
    hand.send(Intent::SetUnits(Units::default())).unwrap();
    assert_eq!(hand.state.job().sheet.to_json(), before);
    inches(&mut hand);
    let said = done(&mut hand);
    assert!(said.contains("load: gearbox, 70.548 lb (32.0 kg)"), "{said}");
}

/// A job of mm says what it said.
#[test]
fn a_lift_in_kilograms_is_told_as_before() {
    let said = done(&mut lift());
    assert!(said.contains("load: gearbox, 32 kg;"), "{said}");
}

fn fill(fluid: &str, more: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Tank","work":{{"fill":{{"fluid":"{fluid}"{more}}}}}}}"#
    )))
}

fn fuel(hand: &Hand) -> bool {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Fill(fill) => Fill::fuel(fill).is_some(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_fluid_is_fuel_by_its_name_or_as_told_either_way() {
    assert!(fuel(&fill("petrol", "")));
    assert!(!fuel(&fill("coolant", "")));
    // A file that says false says nothing, as before; one that says both is handled as what lights.
    assert!(fuel(&fill("petrol", r#","fuel":false"#)));
    assert!(fuel(&fill("petrol", r#","fuel":true,"no_fuel":true"#)));
    let mut hand = fill("petrol stabiliser, water based", "");
    let before = hand.state.job().sheet.to_json();
    assert!(fuel(&hand));
    assert_eq!(shown(&hand, "fill/fuel").0, "as its name says");
    hand.edit("fill/fuel", "no").unwrap();
    assert!(!fuel(&hand));
    let said = hand.state.job().sheet.to_json();
    assert!(said.contains(r#""no_fuel": true"#), "{said}");
    hand.edit("fill/fuel", "yes").unwrap();
    assert!(fuel(&hand));
    hand.edit("fill/fuel", "").unwrap();
    assert_eq!(hand.state.job().sheet.to_json(), before);
}
