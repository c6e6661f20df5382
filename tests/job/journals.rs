//! A journal measured by itself, and bores with a worn limit beside the new one.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::check::bore::{answer, size_words};
use halfcase::job::reading::{What, whole_bore};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::state::{Ask, Intent};

const ONE: ReadingId = ReadingId(1);

fn crank() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Crankpin","work":{"check":{"readings":[],"bores":[
            {"id":1,"name":"crankpin","shaft":true,"material":"steel","least_mm":34.98,"most_mm":35.0,
             "worn_least_mm":34.95,"out_of_round_mm":0.005,"taper_mm":0.01}]}}}"#,
    )
}

fn read(hand: &mut Hand, sizes: [f64; 6]) {
    for (what, mm) in What::grid(ONE, false).zip(sizes) {
        hand.read(1, what, mm, "mm").unwrap();
    }
}

/// What each size is said to be: "smallest 34.980 mm within".
fn said(hand: &Hand) -> Vec<String> {
    let step = hand.state.step(StepId(1)).unwrap();
    let Work::Check(check) = &step.work else {
        panic!("no check")
    };
    let answer = answer(&check.bores[0], &hand.state.progress(StepId(1)));
    let line = |line: &halfcase::job::kinds::check::bore::Judged| {
        format!("{} {} {}", line.name, line.value, line.verdict)
            .trim_end()
            .to_owned()
    };
    answer.judged.iter().map(line).collect()
}

/// By hand: out-of-round is the most two directions differ at one place, taper the most two places differ
/// in one direction.
#[test]
fn a_journal_by_itself_is_judged_for_size_round_and_taper() {
    let mut hand = Hand::with(crank());
    assert_eq!(hand.ask(1), Ask::Read(whole_bore(ONE)));
    read(&mut hand, [34.990, 34.988, 34.986, 34.985, 34.984, 34.984]);
    assert_eq!(
        said(&hand),
        [
            "smallest 34.984 mm within",
            "largest 34.990 mm within",
            "out-of-round 0.002 mm within",
            "taper 0.006 mm within"
        ]
    );
    assert_eq!(hand.ask(1), Ask::Close);
    read(&mut hand, [34.990, 34.984, 34.986, 34.985, 34.984, 34.984]);
    assert_eq!(said(&hand)[2], "out-of-round 0.006 mm too large");
    assert_eq!(hand.ask(1), Ask::Finding(whole_bore(ONE)));
}

#[test]
fn worn_is_told_from_new_and_from_outside() {
    for (mm, smallest, asked) in [
        (34.981, "within", Ask::Close),
        (34.960, "worn but usable", Ask::Close),
        (34.949, "too small", Ask::Finding(whole_bore(ONE))),
    ] {
        let mut hand = Hand::with(crank());
        read(&mut hand, [mm; 6]);
        assert!(said(&hand)[0].ends_with(smallest), "{:?}", said(&hand));
        assert_eq!(hand.ask(1), asked, "{mm}");
    }
    let sheet = crank();
    let Work::Check(check) = &sheet.steps[0].work else {
        panic!("no check")
    };
    assert_eq!(
        size_words(&check.bores[0]),
        "34.98 to 35.00 mm, worn at least 34.95 mm"
    );
}

#[test]
fn a_clearance_may_wear_as_far_as_the_manual_says() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Bush","work":{"check":{"readings":[],"bores":[
            {"id":1,"name":"bush","material":"steel","journal":{"name":"shaft","clearance_least_mm":0.02,"clearance_most_mm":0.05,
             "clearance_worn_mm":0.1}}]}}}"#,
    ));
    for (bore, asked) in [
        (20.04, Ask::Close),
        (20.09, Ask::Close),
        (20.11, Ask::Finding(whole_bore(ONE))),
    ] {
        for what in What::grid(ONE, false) {
            hand.read(1, what, bore, "mm").unwrap();
        }
        for what in What::grid(ONE, true) {
            hand.read(1, what, 20.0, "mm").unwrap();
        }
        assert_eq!(hand.ask(1), asked, "{bore}");
    }
}

/// A reason given before the worn limit stood in the plan was given for other limits.
#[test]
fn an_accepted_journal_asks_again_where_its_worn_limit_changes() {
    let mut hand = Hand::with(crank());
    read(&mut hand, [34.94; 6]);
    let accepted = Intent::Accept {
        step: StepId(1),
        what: whole_bore(ONE),
        reason: "it is ground next week".to_owned(),
        initials: "jb".to_owned(),
    };
    hand.send(accepted).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    hand.edit("bore/1/worn_least", "34.945").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(whole_bore(ONE)));
}

#[test]
fn it_is_planned_by_touch_and_written_and_read_back() {
    let sheet = sheet(r#"{"id":1,"title":"Crank","work":{"check":{"readings":[]}}}"#);
    let mut step = sheet.steps[0].clone();
    let mut put = |field: &str, value: &str| form::set(&sheet, &mut step, field, value);
    put("bore/add_shaft", "yes").unwrap();
    put("bore/1/least", "34.98").unwrap();
    put("bore/1/worn_least", "34.95").unwrap();
    assert!(
        put("bore/1/worn_least", "34.99").is_err(),
        "closer than a new one"
    );
    // What runs in it makes it a bore; and a shaft again has nothing in it.
    put("bore/1/journal", "yes").unwrap();
    put("bore/1/journal/worn_most", "0.1").unwrap();
    assert!(put("bore/1/journal/most", "0.2").is_err(), "past the worn one");
    let Work::Check(check) = &step.work else {
        panic!("no check")
    };
    assert!(!check.bores[0].shaft);
    form::set(&sheet, &mut step, "bore/1/shaft", "yes").unwrap();
    let Work::Check(check) = &step.work else {
        panic!("no check")
    };
    assert!(check.bores[0].shaft && check.bores[0].journal.is_none());
    let written = Sheet::new("Plan", vec![step]);
    assert_eq!(Sheet::from_json(&written.to_json()).unwrap(), written);
}

#[test]
fn a_shaft_with_a_journal_in_it_is_refused_in_a_file() {
    let text = r#"{"version":1,"title":"x","steps":[{"id":4,"title":"y","work":{"check":{"readings":[],"bores":[
        {"name":"pin","shaft":true,"journal":{"name":"other"}}]}}}]}"#;
    let refused = Sheet::from_json(text).unwrap_err().to_string();
    assert!(refused.contains("No journal runs in a shaft"), "{refused}");
}
