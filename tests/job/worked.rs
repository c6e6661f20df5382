//! Readings worked out from others: never asked for, judged like any other, recorded with what they are of.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::journal::words;
use halfcase::job::kinds::check::How;
use halfcase::job::kinds::{Check, Work};
use halfcase::job::reading::What;
use halfcase::job::readings::{asked, value};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::state::{Ask, Intent};

const FIRST: What = What::Limit(ReadingId(1));
const SECOND: What = What::Limit(ReadingId(2));
const WORKED: What = What::Limit(ReadingId(3));

/// Two readings, and one worked out from them.
fn two(how: &str, unit: &str, limits: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Fit","work":{{"check":{{"readings":[
            {{"id":1,"name":"hole","unit":"{unit}"}},
            {{"id":2,"name":"shaft","unit":"{unit}"}},
            {{"id":3,"name":"worked","unit":"{unit}",{limits}"worked":{{"how":"{how}","of":[1,2]}}}}]}}}}}}"#
    )))
}

fn now(hand: &Hand) -> Option<f64> {
    let step = hand.state.step(StepId(1)).unwrap();
    value(step, &hand.state.progress(StepId(1)), &WORKED)
}

fn check(hand: &Hand) -> Check {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Check(check) => check.clone(),
        _ => panic!("no check"),
    }
}

/// The last lines of the record, oldest first.
fn lines(hand: &Hand, count: usize) -> Vec<String> {
    let job = hand.state.job();
    let entries = job.record.entries();
    let last = &entries[entries.len() - count..];
    last.iter().map(|entry| words(entry, &job.sheet)).collect()
}

#[test]
fn each_way_comes_to_what_it_says() {
    for (how, worked) in [
        ("mean", 10.01),
        ("greatest", 10.02),
        ("least", 10.0),
        ("spread", 0.02),
        ("difference", 0.02),
        ("fit", 0.02),
    ] {
        let mut hand = two(how, "mm", "");
        assert_eq!(asked(hand.state.step(StepId(1)).unwrap()), [FIRST, SECOND]);
        hand.read(1, FIRST, 10.02, "mm").unwrap();
        assert_eq!(hand.ask(1), Ask::Read(SECOND));
        assert_eq!(now(&hand), None, "{how}: one is still to be read");
        hand.read(1, SECOND, 10.0, "mm").unwrap();
        assert_eq!(now(&hand), Some(worked), "{how}");
        assert_eq!(hand.ask(1), Ask::Close);
        assert!(hand.read(1, WORKED, worked, "mm").is_err(), "it is not read");
    }
}

/// A mean of three that does not end is kept two digits behind the readings'.
#[test]
fn a_mean_of_more_than_two() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Float","work":{"check":{"readings":[
            {"id":1,"name":"a","unit":"mm"},{"id":2,"name":"b","unit":"mm"},{"id":4,"name":"c","unit":"in"},
            {"id":3,"name":"mean","unit":"mm","most":0.11,"worked":{"how":"mean","of":[1,2,4]}}]}}}"#,
    ));
    hand.read(1, FIRST, 0.10, "mm").unwrap();
    hand.read(1, SECOND, 0.11, "mm").unwrap();
    hand.read(1, What::Limit(ReadingId(4)), 5.0, "thou").unwrap();
    // 0.127 mm: (0.10 + 0.11 + 0.127) / 3 = 0.112333…
    assert_eq!(now(&hand), Some(0.11233));
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
}

#[test]
fn a_worked_out_value_outside_its_limits_holds_and_follows_its_readings() {
    let mut hand = two("fit", "in", r#""least":-0.0005,"most":0.0010,"#);
    hand.read(1, FIRST, 0.9990, "in").unwrap();
    hand.read(1, SECOND, 1.0000, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    assert!(hand.close(1).is_err());
    assert_eq!(
        lines(&hand, 2),
        ["shaft: 1 in: noted", "worked: 0.0010 in T: outside limits"]
    );
    // One of the two read again: within.
    hand.read(1, SECOND, 0.9988, "in").unwrap();
    assert_eq!(lines(&hand, 1), ["worked: 0.0002 in L: within limits"]);
    assert_eq!(hand.ask(1), Ask::Close);
    // Undone, the value before stands again, and what it says.
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    assert_eq!(now(&hand), Some(-0.001));
    assert_eq!(
        hand.state.progress(StepId(1)).reading(&WORKED).unwrap().value,
        -0.001
    );
    let step = hand.state.step(StepId(1)).unwrap();
    let found = halfcase::job::readings::finding_words(step, &hand.state.progress(StepId(1)), &WORKED);
    assert_eq!(found, "“worked” is outside its limits: 0.0010 in T");
}

/// Undone altogether, nothing of it stands.
#[test]
fn without_its_readings_there_is_nothing_worked_out() {
    let mut hand = two("difference", "mm", r#""most":0.5,"#);
    hand.read(1, FIRST, 2.0, "mm").unwrap();
    hand.read(1, SECOND, 1.0, "mm").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), [WORKED]);
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.state.findings(StepId(1)), []);
    assert_eq!(hand.state.progress(StepId(1)).reading(&WORKED), None);
    assert_eq!(hand.ask(1), Ask::Read(SECOND));
}

/// A reason is given for one value; a new reading, or a plan that works it out otherwise, asks again.
#[test]
fn an_accepted_value_is_that_value_alone() {
    let mut hand = two("difference", "mm", r#""most":0.5,"#);
    hand.read(1, FIRST, 2.0, "mm").unwrap();
    hand.read(1, SECOND, 1.0, "mm").unwrap();
    let accept = || Intent::Accept {
        step: StepId(1),
        what: WORKED,
        reason: "the shim takes it up".to_owned(),
        initials: "jb".to_owned(),
    };
    hand.send(accept()).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    hand.edit("reading/3/how", "1").unwrap();
    assert_eq!(now(&hand), Some(2.0), "the greatest");
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    // Accepted as it now is, that is what the record says.
    hand.send(accept()).unwrap();
    assert_eq!(lines(&hand, 2)[0], "worked: 2.0 mm: outside limits");
    assert_eq!(hand.ask(1), Ask::Close);
    hand.read(1, FIRST, 2.1, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
}

/// A plan changed after the readings: what it comes to at closing stands in the record.
#[test]
fn closing_records_what_a_changed_plan_comes_to() {
    let mut hand = two("difference", "mm", "");
    hand.read(1, FIRST, 2.0, "mm").unwrap();
    hand.read(1, SECOND, 1.0, "mm").unwrap();
    hand.edit("reading/3/how", "0").unwrap();
    hand.close(1).unwrap();
    assert_eq!(lines(&hand, 2), ["step done", "worked: 1.5 mm: noted"]);
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
}

#[test]
fn it_is_planned_by_touch() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Fit","work":{"check":{"readings":[]}}}"#,
    ));
    let none = hand.edit("reading/add_worked", "yes").unwrap_err().to_string();
    assert!(none.starts_with("Add the reading "), "{none}");
    for _ in 0..3 {
        hand.edit("reading/add", "yes").unwrap();
    }
    hand.edit("reading/add_worked", "yes").unwrap();
    let worked = |hand: &Hand| check(hand).readings[3].worked.clone().unwrap();
    assert_eq!((worked(&hand).how, worked(&hand).of.len()), (How::Mean, 3));
    hand.edit("reading/4/of/2", "no").unwrap();
    assert_eq!(worked(&hand).of, [ReadingId(1), ReadingId(3)]);
    assert!(hand.edit("reading/4/of/1", "no").is_err(), "one alone is no mean");
    hand.edit("reading/4/how", "5").unwrap();
    hand.edit("reading/4/place/1", "1").unwrap();
    assert_eq!(
        (worked(&hand).how, worked(&hand).of),
        (How::Fit, vec![ReadingId(3), ReadingId(1)])
    );
    // What it is of stays, and stays of its kind.
    assert!(hand.edit("reading/3/remove", "yes").is_err());
    assert!(hand.edit("reading/3/unit", "°C").is_err());
    hand.edit("reading/3/unit", "in").unwrap();
    hand.edit("reading/2/remove", "yes").unwrap();
    let sheet = &hand.state.job().sheet;
    assert_eq!(Sheet::from_json(&sheet.to_json()).as_ref(), Ok(sheet));
    // Every field it shows is one that can be set.
    let step = &sheet.steps[0];
    for field in form::fields(sheet, step)
        .iter()
        .filter(|field| field.id.contains("/place/"))
    {
        form::set(sheet, &mut step.clone(), &field.id, "1").unwrap();
    }
}

#[test]
fn what_nothing_can_be_worked_out_from_is_refused_in_a_file() {
    for worked in [
        r#"{"how":"mean","of":[1]}"#,
        r#"{"how":"mean","of":[1,1]}"#,
        r#"{"how":"fit","of":[1,2,4]}"#,
        r#"{"how":"mean","of":[1,3]}"#,
        r#"{"how":"mean","of":[1,9]}"#,
        r#"{"how":"mean","of":[1,5]}"#,
    ] {
        let text = format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":7,"title":"y","work":{{"check":{{"readings":[
                {{"id":1,"name":"a","unit":"mm"}},{{"id":2,"name":"b","unit":"mm"}},{{"id":4,"name":"c","unit":"mm"}},
                {{"id":5,"name":"warm","unit":"°C"}},
                {{"id":3,"name":"w","unit":"mm","worked":{worked}}}]}}}}}}]}}"#
        );
        let refused = Sheet::from_json(&text).unwrap_err().to_string();
        assert!(
            refused.starts_with("Step 7, “readings”: A worked-out reading"),
            "{worked}: {refused}"
        );
    }
}

/// The limits of a fit as manuals of bearings print them.
#[test]
fn a_fit_is_told_tight_or_loose() {
    let hand = two("fit", "in", r#""least":-0.0005,"most":0.0010,"#);
    assert_eq!(check(&hand).readings[2].words(), "0.0005 in T to 0.0010 in L");
    assert_eq!(check(&hand).readings[2].figure(0.0), "0.0000 in");
}
