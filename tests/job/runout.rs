//! Run-out: the whole swing of the indicator, half of it off centre, and limits per radius.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::Work;
use halfcase::job::reading::What;
use halfcase::job::readings::{asked, finding_words, value};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::state::{Ask, Intent, Refused};

const FACE: What = What::Limit(ReadingId(1));
const RADIUS: What = What::Radius(ReadingId(1));

fn flywheel(more: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Flywheel","work":{{"check":{{"readings":[
            {{"id":1,"name":"face run-out","unit":"in","most":0.0005,"per":"inch"{more}}}]}}}}}}"#
    )))
}

/// 0.0005 in for each inch of radius: at 5 in that is 0.0025 in of the whole swing.
#[test]
fn limits_per_radius_are_asked_at_the_radius_that_was_read() {
    let mut hand = flywheel("");
    assert_eq!(hand.ask(1), Ask::Read(RADIUS));
    hand.read(1, RADIUS, 5.0, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Read(FACE));
    hand.read(1, FACE, 0.0025, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    hand.read(1, FACE, 0.0026, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(FACE));
    let step = hand.state.step(StepId(1)).unwrap();
    assert_eq!(
        finding_words(step, &hand.state.progress(StepId(1)), &FACE),
        "“face run-out” is outside its limits: 0.0026 in at a radius of 5 in"
    );
    // On a metric rule and a metric indicator it is the same.
    hand.read(1, RADIUS, 127.0, "mm").unwrap();
    hand.read(1, FACE, 0.0635, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    // The radius was smaller after all.
    hand.read(1, RADIUS, 4.0, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(FACE));
}

#[test]
fn a_planned_radius_is_not_asked_for() {
    let mut hand = flywheel(r#","radius":4"#);
    assert_eq!(asked(hand.state.step(StepId(1)).unwrap()), [FACE]);
    assert!(matches!(
        hand.read(1, RADIUS, 5.0, "in"),
        Err(Refused::NotAsked(_))
    ));
    hand.read(1, FACE, 0.0021, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(FACE));
    hand.read(1, FACE, 0.002, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    assert!(hand.read(1, FACE, 0.002, "kg").is_err());
}

#[test]
fn a_radius_of_nothing_is_refused() {
    let mut hand = flywheel("");
    for (value, unit) in [(0.0, "in"), (-3.0, "in"), (5.0, "°C")] {
        assert!(hand.read(1, RADIUS, value, unit).is_err(), "{value} {unit}");
    }
}

/// A reason given at one radius says nothing of another.
#[test]
fn an_acceptance_is_for_its_radius() {
    let mut hand = flywheel("");
    hand.read(1, RADIUS, 5.0, "in").unwrap();
    hand.read(1, FACE, 0.0030, "in").unwrap();
    let accepted = Intent::Accept {
        step: StepId(1),
        what: FACE,
        reason: "the clutch takes it".to_owned(),
        initials: "jb".to_owned(),
    };
    hand.send(accepted).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    hand.read(1, RADIUS, 3.0, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(FACE));
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
}

/// What is off centre is half of what the indicator swings.
#[test]
fn the_offset_is_half_the_run_out() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Shaft","work":{"check":{"readings":[
            {"id":1,"name":"run-out","unit":"mm"},
            {"id":2,"name":"off centre","unit":"mm","most":0.02,"worked":{"how":"offset","of":[1]}}]}}}"#,
    ));
    let offset = What::Limit(ReadingId(2));
    hand.read(1, FACE, 0.05, "mm").unwrap();
    let step = hand.state.step(StepId(1)).unwrap();
    assert_eq!(value(step, &hand.state.progress(StepId(1)), &offset), Some(0.025));
    assert_eq!(hand.ask(1), Ask::Finding(offset));
    hand.read(1, FACE, 0.04, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
}

#[test]
fn it_is_planned_by_touch_and_written_and_read_back() {
    let sheet = sheet(r#"{"id":1,"title":"Shaft","work":{"check":{"readings":[]}}}"#);
    let mut step = sheet.steps[0].clone();
    let mut put = |field: &str, value: &str| form::set(&sheet, &mut step, field, value);
    put("reading/add", "yes").unwrap();
    assert!(put("reading/1/radius", "80").is_err(), "not per radius");
    put("reading/1/per", "1").unwrap();
    put("reading/1/most", "0.001").unwrap();
    put("reading/1/radius", "80").unwrap();
    put("reading/add_worked", "yes").unwrap();
    let Work::Check(check) = &step.work else {
        panic!("no check")
    };
    assert_eq!(check.readings[0].words(), "at most 0.001 mm per mm of radius");
    assert_eq!(check.readings[1].name, "offset 1");
    let written = Sheet::new("Plan", vec![step]);
    assert_eq!(Sheet::from_json(&written.to_json()).unwrap(), written);
}

/// Worked out from others, it is held to the same limits: with a radius from the plan, as none can be read.
#[test]
fn a_mean_is_judged_per_radius_too() {
    let mean = |radius: &str| {
        format!(
            r#"{{"id":1,"title":"Flywheel","work":{{"check":{{"readings":[
                {{"id":1,"name":"at 12","unit":"in"}},{{"id":2,"name":"at 6","unit":"in"}},
                {{"id":3,"name":"mean","unit":"in","most":0.001,"per":"inch"{radius},"worked":{{"how":"mean","of":[1,2]}}}}]}}}}}}"#
        )
    };
    let mut hand = Hand::with(sheet(&mean(r#","radius":0.75"#)));
    for id in [1, 2] {
        hand.read(1, What::Limit(ReadingId(id)), 0.0009, "in").unwrap();
    }
    assert_eq!(hand.ask(1), Ask::Finding(What::Limit(ReadingId(3))));
    let why =
        Sheet::from_json(&format!(r#"{{"version":1,"title":"a","steps":[{}]}}"#, mean(""))).unwrap_err();
    assert!(why.to_string().contains("radius"), "{why}");
}
