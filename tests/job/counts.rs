//! What is counted is counted in whole numbers, whatever its unit is called.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::Work;
use halfcase::job::reading::What;
use halfcase::job::sheet::Sheet;
use halfcase::job::state::{Ask, Refused};

const ONE: What = What::Limit(ReadingId(1));

#[test]
fn a_count_is_a_whole_number_from_nothing_up() {
    for unit in ["", "teeth"] {
        let mut hand = Hand::with(sheet(&format!(
            r#"{{"id":1,"title":"Gear","work":{{"check":{{"readings":[
                {{"name":"teeth","unit":"{unit}","whole":true,"least":18,"most":19}}]}}}}}}"#
        )));
        for no_count in [18.5, -1.0] {
            assert_eq!(
                hand.read(1, ONE, no_count, unit),
                Err(Refused::NoSense("It is a count: enter a whole number from 0."))
            );
        }
        hand.read(1, ONE, 17.0, unit).unwrap();
        assert_eq!(hand.ask(1), Ask::Finding(ONE));
        hand.read(1, ONE, 18.0, unit).unwrap();
        assert_eq!(hand.ask(1), Ask::Close);
    }
}

/// Without a unit, a number may still be broken: a ratio, a grade.
#[test]
fn an_empty_unit_is_no_count() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Gears","work":{"check":{"readings":[{"name":"ratio","unit":"","least":3.4,"most":3.6}]}}}"#,
    ));
    hand.read(1, ONE, 3.5, "").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
}

#[test]
fn it_is_planned_by_touch_and_keeps_whole_limits() {
    let sheet = sheet(r#"{"id":1,"title":"Gear","work":{"check":{"readings":[]}}}"#);
    let mut step = sheet.steps[0].clone();
    let mut put = |field: &str, value: &str| form::set(&sheet, &mut step, field, value);
    put("reading/add", "yes").unwrap();
    put("reading/1/unit", "").unwrap();
    put("reading/1/most", "2.5").unwrap();
    let refused = put("reading/1/whole", "yes").unwrap_err().to_string();
    assert_eq!(
        refused,
        "The limits of a count are whole numbers from 0: correct them."
    );
    put("reading/1/most", "2").unwrap();
    put("reading/1/whole", "yes").unwrap();
    assert!(put("reading/1/least", "0.5").is_err());
    let Work::Check(check) = &step.work else {
        panic!("no check")
    };
    assert_eq!(check.readings[0].words(), "at most 2");
    let written = Sheet::new("Plan", vec![step]);
    assert_eq!(Sheet::from_json(&written.to_json()).unwrap(), written);
}
