//! Readings against new and worn limits, in the digits the manual prints.

use super::{MORNING, sheet};
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::{Limit, Work};
use halfcase::job::planning::PlanRefused;
use halfcase::job::progress::{Progress, StepProgress};
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings::{findings, judge};
use halfcase::job::record::{Event, Record};
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::trade::quantity::Stated;

fn wear() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Fork","work":{"check":{"readings":[
            {"name":"fork to groove","unit":"mm","least":0.05,"most":0.15,"worn_most":0.3},
            {"name":"pin","unit":"in","worn_least":0.4985}]}}}"#,
    )
}

fn limit(step: &Step, at: usize) -> &Limit {
    match &step.work {
        Work::Check(check) => &check.readings[at],
        _ => panic!("no check"),
    }
}

/// A worn part may be used up to its own limit, and is told as worn.
#[test]
fn worn_is_told_from_new_and_from_outside() {
    let sheet = wear();
    let step = &sheet.steps[0];
    let fork = What::Limit(ReadingId(1));
    for (mm, verdict) in [
        (0.1, Verdict::Within),
        (0.15, Verdict::Within),
        (0.2, Verdict::Worn),
        (0.3, Verdict::Worn),
        (0.31, Verdict::Outside),
        (0.04, Verdict::Outside),
    ] {
        assert_eq!(judge(step, &StepProgress::default(), &fork, mm), verdict, "{mm}");
    }
    // Only the worn one is said: all that is good is usable.
    let pin = What::Limit(ReadingId(2));
    assert_eq!(
        judge(step, &StepProgress::default(), &pin, 0.4990),
        Verdict::Within
    );
    assert_eq!(
        judge(step, &StepProgress::default(), &pin, 0.4980),
        Verdict::Outside
    );
    assert_eq!(limit(step, 0).words(), "0.05 to 0.15 mm, worn at most 0.3 mm");
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
}

/// ".030" stays 0.030, as manuals print thousandths.
#[test]
fn limits_keep_the_digits_of_the_manual() {
    let words = |unit: &str, least: Option<f64>, most: Option<f64>| {
        Limit {
            unit: unit.to_owned(),
            least: least.map(Stated::plain),
            most: most.map(Stated::plain),
            ..Limit::default()
        }
        .words()
    };
    assert_eq!(words("in", Some(0.03), None), "at least 0.030 in");
    assert_eq!(words("in", Some(0.001), Some(0.0025)), "0.0010 to 0.0025 in");
    assert_eq!(words("mm", Some(0.03), Some(0.045)), "0.030 to 0.045 mm");
    assert_eq!(words("", None, Some(0.0)), "at most 0");
}

#[test]
fn a_worn_limit_closer_than_the_new_one_is_refused() {
    let sheet = wear();
    let mut step = sheet.steps[0].clone();
    let before = step.clone();
    let refused = form::set(&sheet, &mut step, "reading/1/worn_most", "0.1");
    assert_eq!(
        refused,
        Err(PlanRefused::Field(
            "A worn part may not be held closer than a new one: correct the worn limit.".to_owned()
        ))
    );
    assert_eq!(step, before);
}

/// A reason given under two limits still stands where the plan has room for four.
#[test]
fn what_was_accepted_before_there_were_worn_limits_stays_accepted() {
    let sheet = wear();
    let mut step = sheet.steps[0].clone();
    if let Work::Check(check) = &mut step.work {
        check.readings.remove(1);
        check.readings[0].worn_most = None;
    }
    let what = What::Limit(ReadingId(1));
    let mut record = Record::default();
    let mut add = |event| record.add(MORNING, Some(StepId(1)), "", event);
    add(Event::Measured {
        what: what.clone(),
        value: 0.2,
        unit: "mm".to_owned(),
        tool: String::new(),
        verdict: Verdict::Outside,
        at_c: None,
        decimals: None,
    });
    add(Event::Accepted {
        what: what.clone(),
        limits: vec![Some(0.05), Some(0.15)],
        reason: "run in once more".to_owned(),
    });
    let progress = Progress::of(&record).step(StepId(1));
    assert_eq!(findings(&step, &progress), []);
    step = sheet.steps[0].clone();
    if let Work::Check(check) = &mut step.work {
        check.readings[0].worn_most = Some(Stated::plain(0.19));
    }
    assert_eq!(findings(&step, &progress), [what]);
}

/// A file may say what a form refuses: it is refused by step, and what stands in storage still opens.
#[test]
fn limits_nobody_can_keep_are_refused_in_a_file() {
    for (inside, why) in [
        (
            r#"{"name":"pin","unit":"mm","least":2,"most":1}"#,
            "The lower limit is above the upper one.",
        ),
        (
            r#"{"name":"pin","unit":"mm","least":0.1,"most":0.3,"worn_most":0.2}"#,
            "A worn part may not be held closer than a new one: correct the worn limit.",
        ),
        (
            r#"{"name":"pin","unit":"mm"},{"name":"pin","unit":"mm"}"#,
            "Two readings have one name: give each its own.",
        ),
    ] {
        let text = format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":4,"title":"y","work":{{"check":{{"readings":[{inside}]}}}}}}]}}"#
        );
        let refused = Sheet::from_json(&text).map_err(|error| error.to_string());
        assert_eq!(refused, Err(format!("Step 4, “readings”: {why}")));
    }
}
