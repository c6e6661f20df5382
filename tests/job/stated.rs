//! A manual's digits: ".0300" stays 0.0300 wherever it goes, and what was stored before is written as it was.

use super::sheet;
use halfcase::job::form::{fields, set};
use halfcase::job::json;
use halfcase::job::kinds::Work;
use halfcase::job::sheet::{Sheet, Step};
use halfcase::trade::quantity::Stated;
use proptest::prelude::*;

fn limits(step: &Step) -> String {
    match &step.work {
        Work::Check(check) => check.readings[0].words(),
        _ => panic!("no check"),
    }
}

#[test]
fn typed_digits_stay_in_the_plan_on_screen_and_in_the_file() {
    let sheet =
        sheet(r#"{"id":1,"title":"Float","work":{"check":{"readings":[{"name":"float","unit":"mm"}]}}}"#);
    let mut step = sheet.steps[0].clone();
    for (typed, shown, words) in [
        (".0300", "0.0300", "at least 0.0300 mm"),
        ("0,30", "0.30", "at least 0.30 mm"),
        ("−2.50", "−2.50", "at least −2.50 mm"),
        ("2", "2", "at least 2 mm"),
        ("2.0", "2.0", "at least 2.0 mm"),
    ] {
        set(&sheet, &mut step, "reading/1/least", typed).unwrap();
        let form = fields(&sheet, &step);
        let field = form.iter().find(|field| field.id == "reading/1/least").unwrap();
        assert_eq!(field.value, shown);
        assert_eq!(limits(&step), words);
        let written = Sheet::new("Plan", vec![step.clone()]);
        let read = Sheet::from_json(&written.to_json()).unwrap();
        assert_eq!(read, written, "{typed}");
        assert_eq!(limits(&read.steps[0]), words);
        // What the form shows is taken again as it is.
        set(&sheet, &mut step, "reading/1/least", shown).unwrap();
        assert_eq!(limits(&step), words);
    }
}

/// In thousandths one limit may be printed to four places and the other to three: both to the longer.
#[test]
fn two_limits_are_printed_alike() {
    let sheet = sheet(
        r#"{"id":1,"title":"Float","work":{"check":{"readings":[
            {"name":"float","unit":"in","least":"0.0300","most":0.032,"worn_most":".04"}]}}}"#,
    );
    assert_eq!(
        limits(&sheet.steps[0]),
        "0.0300 to 0.0320 in, worn at most 0.040 in"
    );
}

#[test]
fn a_number_of_an_earlier_release_is_written_back_the_same() {
    for number in ["0.03", "2.0", "-0.5", "61.961", "1e-7", "0.0"] {
        let stated: Stated = json::read(number).unwrap();
        let plain: f64 = json::read(number).unwrap();
        assert_eq!(
            json::write(&stated).unwrap(),
            json::write(&plain).unwrap(),
            "{number}"
        );
    }
    let whole: Stated = json::read("2").unwrap();
    assert_eq!(json::write(&whole).unwrap(), "2.0");
}

#[test]
fn what_is_no_number_is_refused_with_its_place() {
    let text = r#"{"version":1,"title":"x","steps":[{"id":4,"title":"y","work":{"check":{"readings":[
        {"name":"pin","unit":"mm","least":"thick"}]}}}]}"#;
    let refused = Sheet::from_json(text).unwrap_err().to_string();
    assert!(
        refused.contains("Line 2") && refused.contains("“thick” is not a number"),
        "{refused}"
    );
    let text = text.replace("\"thick\"", "\"2000000.0\"");
    assert!(
        Sheet::from_json(&text).is_err(),
        "a text has the range of a number"
    );
}

proptest! {
    /// Whatever was typed comes back from the store to the last bit and the last digit.
    #[test]
    fn every_stated_number_survives_its_file(whole in -100_000_i64..100_000, decimals in 0_usize..9) {
        let typed = format!("{:.*}", decimals, whole as f64 / 1_000.0);
        let stated = Stated::typed(&typed).unwrap();
        let back: Stated = json::read(&json::write(&stated).unwrap()).unwrap();
        prop_assert_eq!(back, stated);
    }
}
