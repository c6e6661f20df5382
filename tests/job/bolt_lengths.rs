//! How far a bolt stretches and how long it may be, in the manual's own unit.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::fasteners;
use halfcase::job::field::{Entry, Shown};
use halfcase::job::form;
use halfcase::job::journal::{torque_table, words};
use halfcase::job::kinds::{Fasten, Work};
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings::finding_words;
use halfcase::job::record::Event;
use halfcase::job::sheet::{Sheet, StepId, Units};
use halfcase::job::state::{Ask, Intent, Refused};
use halfcase::trade::quantity::LengthUnit;

fn rod(lengths: &str) -> Hand {
    let mut hand = Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Rod bolts","work":{{"fasten":{{"thread":"5/16-24 UNF","torque":"20 ft·lb",
            "layout":"single",{lengths}}}}}}}"#
    )));
    hand.state.settings.wrenches.clear();
    hand
}

const INCHES: &str =
    r#""lengths":{"unit":"inch","stretch_least":"0.0050","stretch_most":0.006,"longest":1.81}"#;

fn fasten(hand: &Hand) -> Fasten {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Fasten(fasten) => fasten.clone(),
        other => panic!("{other:?}"),
    }
}

fn field(hand: &Hand, path: &str) -> Shown {
    let job = hand.state.job();
    let fields = form::fields(&job.sheet, &job.sheet.steps[0]);
    fields.into_iter().find(|field| field.id == path).unwrap()
}

/// Tightens it, and reads it tight.
fn stretch(hand: &mut Hand, free: (f64, &str), tight: (f64, &str)) {
    hand.read(1, What::Free(0), free.0, free.1).unwrap();
    hand.send(Intent::Tally(StepId(1))).unwrap();
    hand.read(1, What::Tight(0), tight.0, tight.1).unwrap();
}

fn read_stretch(hand: &Hand) -> (f64, String, Verdict) {
    let progress = hand.state.progress(StepId(1));
    let read = progress.reading(&What::Stretch(0)).unwrap();
    (read.value, read.unit.clone(), read.verdict)
}

#[test]
fn a_file_of_millimetres_reads_on_and_is_written_back_the_same() {
    let hand = rod(r#""stretch_least_mm":0.13,"stretch_most_mm":0.15,"longest_mm":45.4"#);
    let fasten = fasten(&hand);
    assert_eq!(fasten.length_unit(), LengthUnit::Millimetre);
    assert_eq!(fasten.stretch_words(), "stretch 0.13 to 0.15 mm");
    assert_eq!(fasten.reuse_words(), "no longer than 45.4 mm");
    let written = hand.state.job().sheet.to_json();
    assert!(written.contains(r#""stretch_least_mm": 0.13"#), "{written}");
    assert!(!written.contains("lengths"), "{written}");
}

#[test]
fn inches_keep_their_digits_in_words_in_the_file_and_in_the_table() {
    let hand = rod(INCHES);
    let fasten = fasten(&hand);
    assert_eq!(fasten.stretch_words(), "stretch 0.0050 to 0.0060 in");
    assert_eq!(fasten.reuse_words(), "no longer than 1.81 in");
    let sheet = &hand.state.job().sheet;
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), *sheet);
    let table = fasteners::write(sheet);
    assert!(table.contains("0.0050 in"), "{table}");
    let back = fasteners::read(&table, StepId(1)).unwrap();
    assert_eq!(back[0].work, sheet.steps[0].work);
}

#[test]
fn a_table_says_inches_behind_the_number_and_all_of_a_row_in_one_unit() {
    let read = |cells: &str| {
        fasteners::read(
            &format!("thread,torque,least stretch,most stretch\nM8,28 N·m,{cells}"),
            StepId(1),
        )
    };
    let steps = read("5 thou,6 thou").unwrap();
    let Work::Fasten(fasten) = &steps[0].work else {
        panic!("a fasten step")
    };
    assert_eq!(fasten.stretch_words(), "stretch 5 to 6 thou");
    let words = |cells: &str| read(cells).unwrap_err().to_string();
    assert!(
        words("0.13,0.006 in").contains("in one unit"),
        "{}",
        words("0.13,0.006 in")
    );
    assert!(words("0.3 in,0.4 in").contains("makes no sense"));
    assert!(words("0.3 ells,").contains("write digits and mm, in or thou"));
}

/// By definition the inch is 25.4 mm: 0.0055 in of stretch is 0.1397 mm.
#[test]
fn it_is_read_in_inches_or_on_another_instrument_and_judged_in_the_plans() {
    let mut hand = rod(INCHES);
    assert_eq!(hand.ask(1), Ask::Read(What::Free(0)));
    stretch(&mut hand, (1.8, "in"), (1.8055, "in"));
    assert_eq!(read_stretch(&hand), (0.0055, "in".to_owned(), Verdict::Within));
    let mut hand = rod(INCHES);
    // 45.72 mm is 1.8 in.
    stretch(&mut hand, (45.72, "mm"), (1.8055, "in"));
    assert_eq!(read_stretch(&hand), (0.0055, "in".to_owned(), Verdict::Within));
    assert_eq!(hand.ask(1), Ask::Close);
    let mut hand = rod(INCHES);
    stretch(&mut hand, (1.8, "in"), (45.8724, "mm"));
    // On its limit, whichever way it was turned: 0.1524 mm is 0.006 in.
    assert_eq!(read_stretch(&hand), (0.1524, "mm".to_owned(), Verdict::Within));
}

#[test]
fn too_long_in_inches_is_a_finding_and_the_record_says_inches() {
    let mut hand = rod(INCHES);
    hand.read(1, What::Free(0), 1.82, "in").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(What::Free(0)));
    let (step, progress) = (
        hand.state.step(StepId(1)).unwrap(),
        hand.state.progress(StepId(1)),
    );
    assert_eq!(
        finding_words(step, &progress, &What::Free(0)),
        "“bolt 1, free length” is outside its limits: 1.82 in"
    );
    let job = hand.state.job();
    let last = job.record.entries().last().unwrap();
    assert_eq!(
        words(last, &job.sheet),
        "bolt 1, free length: 1.82 in: outside limits"
    );
    assert_eq!(
        torque_table(&job.record, &job.sheet)[0].manual,
        "20 ft·lb, stretch 0.0050 to 0.0060 in"
    );
    let refused = hand.read(1, What::Free(0), 45.0, "in");
    assert_eq!(
        refused,
        Err(Refused::NoSense(
            "Enter the length over the ends in inches, from 0.04 to 40."
        ))
    );
    assert!(matches!(
        hand.read(1, What::Free(0), 45.0, "°C"),
        Err(Refused::OtherUnit(..))
    ));
}

/// What earlier releases recorded stands in mm, whatever the plan says since.
#[test]
fn a_plan_turned_to_inches_judges_what_was_read_in_millimetres() {
    let mut hand = rod(r#""stretch_least_mm":0.13,"stretch_most_mm":0.15"#);
    stretch(&mut hand, (45.0, "mm"), (45.14, "mm"));
    assert_eq!(hand.ask(1), Ask::Close);
    hand.edit("fasten/stretch_least", "").unwrap();
    hand.edit("fasten/stretch_most", "").unwrap();
    hand.edit("fasten/lengths_in", "1").unwrap();
    hand.edit("fasten/stretch_most", ".0050").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(What::Stretch(0)));
    hand.edit("fasten/stretch_most", ".0060").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    let lines = hand.state.job().record.entries();
    assert!(lines.iter().any(|line| matches!(&line.event,
        Event::Measured { what: What::Stretch(0), value, unit, .. } if *value == 0.14 && unit == "mm")));
}

#[test]
fn the_plan_takes_it_by_touch_in_the_jobs_unit() {
    let mut hand = rod(r#""condition":"dry""#);
    let mm = field(&hand, "fasten/stretch_least");
    assert!(matches!(mm.entry, Entry::Number { unit: "mm", .. }), "{mm:?}");
    let before = hand.state.job().sheet.to_json();
    let length = LengthUnit::Inch;
    hand.send(Intent::SetUnits(Units {
        length,
        ..Units::default()
    }))
    .unwrap();
    assert!(matches!(
        field(&hand, "fasten/stretch_least").entry,
        Entry::Number { unit: "in", .. }
    ));
    assert_eq!(field(&hand, "fasten/lengths_in").value, "in");
    hand.edit("fasten/stretch_least", ".0050").unwrap();
    assert_eq!(field(&hand, "fasten/stretch_least").value, "0.0050");
    let refused = hand.edit("fasten/stretch_most", "0.5");
    assert_eq!(
        refused.unwrap_err().to_string(),
        "Enter a number from 0.00003937 to 0.19685 in."
    );
    // Its figures stay under another unit, unless they make no sense there.
    hand.edit("fasten/longest", "1.81").unwrap();
    let thou = hand.edit("fasten/lengths_in", "2").unwrap_err().to_string();
    assert!(
        thou.starts_with("In thou the stretch or length entered makes no sense"),
        "{thou}"
    );
    hand.edit("fasten/longest", "").unwrap();
    hand.edit("fasten/stretch_least", "").unwrap();
    hand.send(Intent::SetUnits(Units::default())).unwrap();
    assert_eq!(hand.state.job().sheet.to_json(), before);
    // One who wants mm in a job of inches gets mm, before and after a number is typed.
    hand.send(Intent::SetUnits(Units {
        length,
        ..Units::default()
    }))
    .unwrap();
    hand.edit("fasten/lengths_in", "0").unwrap();
    assert_eq!(field(&hand, "fasten/lengths_in").value, "mm");
    hand.edit("fasten/stretch_least", "0.13").unwrap();
    assert_eq!(fasten(&hand).stretch_least_mm, Some(0.13));
}

#[test]
fn a_file_with_a_senseless_stretch_in_inches_is_refused() {
    let read = |lengths: &str| {
        Sheet::from_json(&format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":1,"title":"y","work":{{"fasten":{{"torque":"9 N·m",
                "layout":"single","lengths":{{"unit":"inch",{lengths}}}}}}}}}]}}"#
        ))
    };
    assert!(read(r#""stretch_most":0.19"#).is_ok());
    assert!(read(r#""stretch_most":0.2"#).is_err());
    assert!(read(r#""longest":45"#).is_err());
}

#[test]
fn the_schema_names_every_length() {
    let schema: serde_json::Value =
        serde_json::from_str(include_str!("../../public/job-form.schema.json")).unwrap();
    let named = schema
        .pointer("/$defs/fasten/properties/lengths/properties")
        .unwrap();
    let written = serde_json::to_value(fasten(&rod(INCHES))).unwrap();
    let written = written["lengths"].as_object().unwrap();
    assert_eq!(written.len(), 4, "{written:?}");
    for name in written.keys() {
        assert!(named.get(name).is_some(), "{name}");
    }
}
