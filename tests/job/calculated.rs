//! Readings that a calculation of the Measure screen works out: fed by readings and by the plan, judged by their own
//! limits, never passed where the calculation itself refuses.

use super::fill_run::Hand;
use super::measuring::{EXAMPLES, field, filled};
use super::sheet;
use halfcase::job::field::{Entry, Shown};
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::journal::words;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::check::{How, Worked};
use halfcase::job::measuring::{Measure, Takes, of};
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::state::{Ask, Intent};
use serde_json::{Value, json};

const WORKED: What = What::Limit(ReadingId(90));

fn limit(id: u32) -> What {
    What::Limit(ReadingId(id))
}

/// A check of these readings (id, name, unit), with one worked out by a calculation.
fn plan(readings: &[(u32, &str, &str)], worked: Value) -> Hand {
    Hand::with(sheet(&step(readings, worked)))
}

fn step(readings: &[(u32, &str, &str)], worked: Value) -> String {
    let mut all: Vec<Value> = readings
        .iter()
        .map(|(id, name, unit)| json!({"id": id, "name": name, "unit": unit}))
        .collect();
    all.push(worked);
    json!({"id": 1, "title": "Bottom end", "work": {"check": {"readings": all}}}).to_string()
}

/// The worked-out one, number 90.
fn by(calculation: &str, unit: &str, fed: Value) -> Value {
    let worked = json!({"how": "calculation", "calculation": calculation, "fed": fed});
    json!({"id": 90, "name": "worked", "unit": unit, "worked": worked})
}

fn with(mut limit: Value, key: &str, value: f64) -> Value {
    limit[key] = json!(value);
    limit
}

fn value(hand: &Hand) -> Option<f64> {
    let step = hand.state.step(StepId(1)).unwrap();
    readings::value(step, &hand.state.progress(StepId(1)), &WORKED)
}

fn verdict(hand: &Hand) -> Verdict {
    let step = hand.state.step(StepId(1)).unwrap();
    let value = value(hand).expect("a value");
    readings::judge(step, &hand.state.progress(StepId(1)), &WORKED, value)
}

fn found(hand: &Hand) -> String {
    let step = hand.state.step(StepId(1)).unwrap();
    readings::finding_words(step, &hand.state.progress(StepId(1)), &WORKED)
}

fn how(hand: &Hand) -> Vec<String> {
    let step = hand.state.step(StepId(1)).unwrap();
    readings::how(step, &hand.state.progress(StepId(1)), &WORKED)
}

fn accept(hand: &mut Hand) {
    hand.send(Intent::Accept {
        step: StepId(1),
        what: WORKED,
        reason: "the box has no other".to_owned(),
        initials: "jb".to_owned(),
    })
    .unwrap();
}

fn worked(hand: &Hand) -> Worked {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Check(check) => check.readings.last().unwrap().worked.clone().unwrap(),
        _ => panic!("no check"),
    }
}

fn shown(hand: &Hand, path: &str) -> Shown {
    let sheet = &hand.state.job().sheet;
    let fields = form::fields(sheet, &sheet.steps[0]);
    let all: Vec<&str> = fields.iter().map(|field| field.id.as_str()).collect();
    let found = fields.iter().find(|field| field.id == path);
    found
        .cloned()
        .unwrap_or_else(|| panic!("no {path} among {all:?}"))
}

/// What the form says of what is still to be told.
fn said(hand: &Hand) -> Option<String> {
    let sheet = &hand.state.job().sheet;
    let mut fields = form::fields(sheet, &sheet.steps[0]).into_iter();
    fields
        .find(|field| field.entry == Entry::Said)
        .map(|field| field.label)
}

/// Every filled example of the Measure screen, its numbers read in a step: the same number, and what was refused
/// there is outside here.
#[test]
fn each_comes_to_what_the_measure_screen_says() {
    let mut offered = 0;
    for (id, example, ..) in EXAMPLES {
        let calculation = of(id);
        let Some(reading) = &calculation.reading else {
            continue;
        };
        offered += 1;
        let mut measured = Vec::new();
        let mut fed = Vec::new();
        let mut limit_fields = Vec::new();
        for (at, (name, told)) in example.iter().enumerate() {
            let number = || told.parse::<f64>().unwrap();
            match field(calculation, name).takes {
                _ if reading.own.contains(name) => limit_fields.push((*name, number())),
                Takes::Number(measure, _) => {
                    measured.push((at as u32 + 1, *name, measure.symbol(false), number()));
                    fed.push(json!({"field": name, "reading": at + 1}));
                }
                _ => fed.push(json!({"field": name, "word": told})),
            }
        }
        let mut worked = by(id, reading.measure.symbol(false), Value::from(fed));
        for (name, number) in limit_fields {
            worked = with(worked, name, number);
        }
        let plain: Vec<(u32, &str, &str)> = measured
            .iter()
            .map(|(at, name, unit, _)| (*at, *name, *unit))
            .collect();
        let mut hand = plan(&plain, worked);
        for (at, name, unit, number) in measured {
            assert_eq!(value(&hand), None, "{id}: {name} is still to be read");
            assert_eq!(hand.ask(1), Ask::Read(limit(at)), "{id}");
            hand.read(1, limit(at), number, unit).unwrap();
        }
        let answer = calculation.answer(&filled(calculation, example)).unwrap();
        let (low, high) = answer.reckoned.unwrap().ends;
        let off = value(&hand).unwrap() - (low + high) / 2.0;
        assert!(off.abs() < 6e-4, "{id}: {off}");
        let outside = verdict(&hand) == Verdict::Outside;
        assert_eq!(outside, answer.refused, "{id}");
        match answer.refused {
            true => assert_eq!(hand.ask(1), Ask::Finding(WORKED), "{id}"),
            false => assert_eq!(hand.ask(1), Ask::Close, "{id}"),
        }
        assert_eq!(hand.close(1).is_err(), answer.refused, "{id}");
    }
    assert_eq!(offered, 13);
}

/// Readings in thousandths and inches, the result in inches: 0.0805 in of groove less 0.0784 in is 0.0021 in.
#[test]
fn units_turn_on_the_way_in_and_out() {
    let fed = json!([{"field": "groove", "reading": 1}, {"field": "ring", "reading": 2}]);
    let mut hand = plan(
        &[(1, "groove", "thou"), (2, "ring", "in")],
        with(by("side-gap", "in", fed), "most", 0.003),
    );
    hand.read(1, limit(1), 80.5, "thou").unwrap();
    hand.read(1, limit(2), 0.0784, "in").unwrap();
    assert_eq!(value(&hand), Some(0.0021));
    assert_eq!(verdict(&hand), Verdict::Within);
    // Read in another unit of the kind.
    hand.read(1, limit(2), 1.9685, "mm").unwrap();
    assert_eq!(value(&hand), Some(0.003));
    assert_eq!(verdict(&hand), Verdict::Within);
    hand.read(1, limit(2), 0.0774, "in").unwrap();
    assert_eq!(found(&hand), "“worked”: 0.0031 in. 0.0001 in over the most");
}

/// A cord's pull on a scale in lb, the seal's in N, a radius of the plan in inches, judged in in·lb:
/// 12 · 1.25 = 15 in·lb less 8.896 N · 31.75 mm = 0.282 N·m or 2.5 in·lb.
#[test]
fn what_a_scale_reads_in_pounds_is_a_force() {
    let fed = json!([
        {"field": "pull", "reading": 1}, {"field": "seal_pull", "reading": 2},
        {"field": "radius", "number": "1.250", "unit": "in"}
    ]);
    let mut hand = plan(
        &[(1, "pull", "lb"), (2, "of the seal", "N")],
        with(by("preload", "in·lb", fed), "least", 10.0),
    );
    hand.read(1, limit(1), 12.0, "lb").unwrap();
    hand.read(1, limit(2), 8.8964, "N").unwrap();
    assert_eq!(value(&hand), Some(12.5));
    assert_eq!(verdict(&hand), Verdict::Within);
    let sheet = &hand.state.job().sheet;
    assert_eq!(Sheet::from_json(&sheet.to_json()).as_ref(), Ok(sheet));
    assert!(
        sheet.to_json().contains(r#""number": "1.250""#),
        "its digits are kept"
    );
    for (kept, unit, told) in [(9.80665, "kg", 1.0), (4.4482216, "lb", 1.0), (1_000.0, "kN", 1.0)] {
        assert_eq!(Measure::Force.told(kept, unit), Some(told), "{unit}");
        let back = Measure::Force.kept(told, unit).unwrap();
        assert!((back - kept).abs() < 1e-6, "{unit}: {back}");
    }
    // A spring of 10 N/mm: 10 / 4.4482216 · 25.4 = 57.101 lb/in.
    assert_eq!(Measure::Rate.told(10.0, "lb/in"), Some(57.101));
    assert_eq!(Measure::Length.kept(1.0, "kg"), None);
    assert_eq!(Measure::Count.kept(9.0, ""), Some(9.0));
    assert_eq!(Measure::Count.kept(9.0, "mm"), None);
}

/// The mean is within its limits and the calculation refuses all the same: no pass, and its words say why.
#[test]
fn what_the_calculation_refuses_is_no_pass() {
    let fed = json!([
        {"field": "place_1", "reading": 1}, {"field": "place_2", "reading": 2}, {"field": "spread", "number": 0.03}
    ]);
    let limits = with(with(by("backlash", "mm", fed), "least", 0.1), "most", 0.25);
    let mut hand = plan(&[(1, "tooth 1", "mm"), (2, "tooth 9", "mm")], limits);
    hand.read(1, limit(1), 0.15, "mm").unwrap();
    hand.read(1, limit(2), 0.19, "mm").unwrap();
    assert_eq!(value(&hand), Some(0.17));
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    assert_eq!(
        found(&hand),
        "“worked”: 0.17 mm. It varies too much: look for run-out"
    );
    let job = hand.state.job();
    assert_eq!(
        words(job.record.entries().last().unwrap(), &job.sheet),
        "worked: 0.17 mm: outside limits"
    );
    // A reason is given for these readings: others that come to the same number ask again.
    accept(&mut hand);
    assert_eq!(hand.ask(1), Ask::Close);
    hand.read(1, limit(1), 0.14, "mm").unwrap();
    hand.read(1, limit(2), 0.20, "mm").unwrap();
    assert_eq!((value(&hand), hand.ask(1)), (Some(0.17), Ask::Finding(WORKED)));
    hand.read(1, limit(1), 0.16, "mm").unwrap();
    hand.read(1, limit(2), 0.18, "mm").unwrap();
    assert_eq!((value(&hand), hand.ask(1)), (Some(0.17), Ask::Close));
    assert_eq!(verdict(&hand), Verdict::Within);
}

/// Between a new part's limit and a worn one's it is worn: at the widest place, though its mean would pass as new.
#[test]
fn a_worn_part_is_judged_by_the_worn_limits() {
    let fed = json!([
        {"field": "narrowest", "reading": 1}, {"field": "widest", "reading": 2}, {"field": "piston", "number": 79.95}
    ]);
    let limits = with(with(by("piston", "mm", fed), "most", 0.06), "worn_most", 0.1);
    let mut hand = plan(&[(1, "narrow", "mm"), (2, "wide", "mm")], limits);
    hand.read(1, limit(1), 80.0, "mm").unwrap();
    for (wide, says) in [
        (80.01, Verdict::Within),
        (80.02, Verdict::Worn),
        (80.05, Verdict::Worn),
        (80.06, Verdict::Outside),
    ] {
        hand.read(1, limit(2), wide, "mm").unwrap();
        assert_eq!(verdict(&hand), says, "{wide}");
    }
    assert_eq!(found(&hand), "“worked”: 0.08 mm. 0.010 mm over the most");
}

/// A face is not flat before all of its lines are read: fewer are noted, and a gap too wide is outside all the same.
#[test]
fn what_is_not_all_read_has_not_passed() {
    let fed = json!([{"field": "line_1", "reading": 1}, {"field": "line_5", "reading": 2}]);
    let mut hand = plan(
        &[(1, "long side", "mm"), (2, "diagonal", "mm")],
        with(by("flatness", "mm", fed), "most", 0.05),
    );
    hand.read(1, limit(1), 0.03, "mm").unwrap();
    hand.read(1, limit(2), 0.04, "mm").unwrap();
    assert_eq!((value(&hand), verdict(&hand)), (Some(0.04), Verdict::Noted));
    assert!(how(&hand).contains(&"worst gap: 0.040 mm. So far within; 4 lines to read.".to_owned()));
    assert_eq!(hand.ask(1), Ask::Close);
    hand.read(1, limit(2), 0.06, "mm").unwrap();
    assert_eq!(verdict(&hand), Verdict::Outside);
}

/// A rate is a range: both its ends lie within, or it has not passed.
#[test]
fn a_range_is_judged_at_both_ends() {
    let fed = json!([
        {"field": "wire", "reading": 1}, {"field": "outside", "number": 30}, {"field": "coils", "number": 9}
    ]);
    for (most, says) in [
        (17.0, Verdict::Within),
        (16.3, Verdict::Outside),
        (15.0, Verdict::Outside),
    ] {
        let mut hand = plan(
            &[(1, "wire", "mm")],
            with(by("spring-rate", "N/mm", fed.clone()), "most", most),
        );
        hand.read(1, limit(1), 4.0, "mm").unwrap();
        assert_eq!(verdict(&hand), says, "{most}");
    }
}

/// What was read makes no sense: found, held, and accepted only with a reason; read again it is worked out.
#[test]
fn what_can_t_be_worked_out_is_found() {
    let fed = json!([{"field": "torque", "reading": 1}, {"field": "seal", "reading": 2}]);
    let mut hand = plan(
        &[(1, "all", "N·m"), (2, "seal", "N·m"), (3, "float", "mm")],
        by("preload", "N·m", fed),
    );
    hand.read(1, limit(1), 1.0, "N·m").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), []);
    hand.read(1, limit(2), 1.5, "N·m").unwrap();
    assert_eq!(value(&hand), None);
    assert_eq!(hand.state.findings(StepId(1)), [WORKED]);
    assert_eq!(hand.ask(1), Ask::Read(limit(3)), "the rest is read all the same");
    hand.read(1, limit(3), 0.1, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    let why = "“worked” can’t be worked out. The seal alone can’t drag more than all of it: read both again";
    assert_eq!(found(&hand), why);
    let refused = hand.close(1).unwrap_err().to_string();
    assert!(refused.starts_with(why), "{refused}");
    accept(&mut hand);
    assert_eq!(hand.ask(1), Ask::Close);
    let step = hand.state.step(StepId(1)).unwrap();
    let told = readings::said(step, &hand.state.progress(StepId(1)));
    let (name, words) = told.last().unwrap();
    assert_eq!(name, "worked");
    assert!(
        words.starts_with("The seal alone") && words.contains("accepted: "),
        "{words}"
    );
    // Other readings that make no sense either are not what the reason was for.
    hand.read(1, limit(2), 1.2, "N·m").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    hand.read(1, limit(2), 0.2, "N·m").unwrap();
    assert_eq!((value(&hand), hand.ask(1)), (Some(0.8), Ask::Close));
    hand.close(1).unwrap();
}

/// A reading that the field doesn't take is told in the field's own sentence, as on the screen.
#[test]
fn a_reading_out_of_the_field_s_range_is_found() {
    let fed = json!([{"field": "gap", "reading": 1}]);
    let mut hand = plan(&[(1, "gap", "in")], by("end-gap", "in", fed));
    hand.read(1, limit(1), -0.01, "in").unwrap();
    assert_eq!(
        found(&hand),
        "“worked” can’t be worked out. “gap, ring square in the bore”: Enter a number from 0 to 3.937008 in"
    );
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
}

/// A field that nothing feeds is said in the plan, and found at the bench.
#[test]
fn a_plan_that_names_too_little_says_so() {
    let mut hand = plan(
        &[(1, "groove", "mm"), (2, "other", "mm")],
        by("side-gap", "mm", json!([{"field": "groove", "reading": 1}])),
    );
    let why = "The plan names nothing for “ring height”: enter it there.";
    assert_eq!(said(&hand).as_deref(), Some(why));
    hand.read(1, limit(1), 2.0, "mm").unwrap();
    hand.read(1, limit(2), 2.0, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    assert_eq!(
        format!("{}.", found(&hand)),
        format!("“worked” can’t be worked out. {why}")
    );
    hand.edit("reading/90/fed/ring/number", "1.95").unwrap();
    assert_eq!((said(&hand), value(&hand)), (None, Some(0.05)));
    assert_eq!(hand.ask(1), Ask::Close);
    hand.close(1).unwrap();
    let job = hand.state.job();
    assert_eq!(
        words(job.record.entries().last().unwrap(), &job.sheet),
        "worked: 0.05 mm: noted"
    );
}

/// Fed by the plan alone it is known at once; one that the plan can't work out is not found before the rest is read.
#[test]
fn what_no_reading_feeds_is_asked_for_last() {
    let whole = json!([{"field": "groove", "number": 2}, {"field": "ring", "number": 1.95}]);
    let hand = plan(
        &[(1, "other", "mm")],
        with(by("side-gap", "mm", whole), "most", 0.04),
    );
    assert_eq!((value(&hand), verdict(&hand)), (Some(0.05), Verdict::Outside));
    assert_eq!(hand.ask(1), Ask::Read(limit(1)));
    let mut hand = plan(&[(1, "other", "mm")], by("side-gap", "mm", json!([])));
    assert_eq!(hand.state.findings(StepId(1)), []);
    assert_eq!(hand.ask(1), Ask::Read(limit(1)));
    hand.read(1, limit(1), 2.0, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
}

#[test]
fn it_is_planned_by_touch() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Rear axle","work":{"check":{"readings":[]}}}"#,
    ));
    for _ in 0..2 {
        hand.edit("reading/add", "yes").unwrap();
    }
    hand.edit("reading/add_worked", "yes").unwrap();
    let Entry::Choice(ways) = shown(&hand, "reading/3/how").entry else {
        panic!("no choice")
    };
    assert_eq!(ways.len(), How::ALL.len() + 13);
    hand.edit("reading/3/how", "backlash").unwrap();
    assert_eq!(shown(&hand, "reading/3/how").value, "Backlash");
    assert!(said(&hand).unwrap().contains("“backlash, first place”"));
    // Its limits are the reading's own: not asked for a second time.
    let refused = hand
        .edit("reading/3/fed/least/number", "0.1")
        .unwrap_err()
        .to_string();
    assert!(!refused.is_empty());
    hand.edit("reading/3/fed/place_1/reading", "1").unwrap();
    hand.edit("reading/3/fed/place_2/reading", "2").unwrap();
    assert_eq!(said(&hand), None);
    assert_eq!(shown(&hand, "reading/3/fed/place_1/reading").value, "reading 1");
    assert_eq!(
        hand.edit("reading/3/fed/angle/number", "45")
            .unwrap_err()
            .to_string(),
        "“their pressure angle”: Enter a number from 10 to 30°."
    );
    hand.edit("reading/3/fed/spread/number", ".030").unwrap();
    assert_eq!(shown(&hand, "reading/3/fed/spread/number").value, "0.030");
    // What feeds it stays, and stays of its kind.
    assert!(hand.edit("reading/1/remove", "yes").is_err());
    assert_eq!(
        hand.edit("reading/1/unit", "°C").unwrap_err().to_string(),
        "“backlash, first place” takes mm or in, not °C."
    );
    assert_eq!(
        hand.edit("reading/3/unit", "kg").unwrap_err().to_string(),
        "“mean 1” comes out in mm or in: give it such a unit."
    );
    // In inches, a new figure is one of inches; the one there keeps what it says.
    hand.edit("reading/3/unit", "in").unwrap();
    assert_eq!(shown(&hand, "reading/3/fed/spread/number").entry, number("mm"));
    assert_eq!(shown(&hand, "reading/3/fed/apart/number").entry, number("in"));
    hand.edit("reading/3/fed/spread/number", "").unwrap();
    assert_eq!(shown(&hand, "reading/3/fed/spread/number").entry, number("in"));
    hand.edit("reading/3/fed/spread/number", "0.0012").unwrap();
    hand.edit("reading/3/fed/place_2/reading", "").unwrap();
    assert_eq!(worked(&hand).fed.len(), 2);
    let sheet = &hand.state.job().sheet;
    assert_eq!(Sheet::from_json(&sheet.to_json()).as_ref(), Ok(sheet));
    // To another way and back: what fed it stands again.
    let fed = worked(&hand).fed;
    hand.edit("reading/3/how", "0").unwrap();
    assert_eq!(worked(&hand).of, [ReadingId(1), ReadingId(2)]);
    hand.edit("reading/3/how", "backlash").unwrap();
    assert_eq!(worked(&hand).fed, fed);
    hand.edit("reading/3/how", "0").unwrap();
    hand.edit("reading/1/unit", "in").unwrap();
    // To one of another kind: its unit goes with it, and what fed the other doesn't.
    hand.edit("reading/3/how", "spring-test").unwrap();
    assert_eq!(shown(&hand, "reading/3/unit").value, "lb");
    assert_eq!(worked(&hand).fed, []);
    hand.edit("reading/3/how", "1").unwrap();
    assert_eq!(shown(&hand, "reading/3/unit").value, "in");
}

fn number(unit: &'static str) -> Entry {
    let optional = true;
    Entry::Number { unit, optional }
}

/// A choice and a thread are the plan's; every field shown can be set to what it shows.
#[test]
fn choices_and_threads_are_planned() {
    let mut hand = plan(&[(1, "bolt", "mm")], by("engagement", "mm", json!([])));
    for (field, value) in [
        ("thread/word", "M8"),
        ("bolt/reading", "1"),
        ("stack/number", "12"),
        ("hole/word", "1"),
        ("threaded/number", "20"),
    ] {
        hand.edit(&format!("reading/90/fed/{field}"), value).unwrap();
    }
    assert!(hand.edit("reading/90/fed/thread/word", "M7.7").is_err());
    assert!(hand.edit("reading/90/fed/hole/word", "9").is_err());
    assert_eq!(shown(&hand, "reading/90/fed/hole/word").value, "through");
    assert_eq!(shown(&hand, "reading/90/fed/into/word").value, "cast aluminium");
    hand.read(1, limit(1), 30.0, "mm").unwrap();
    // 30 − 12 − 1.25 of point; 16 wanted in aluminium.
    assert_eq!((value(&hand), hand.ask(1)), (Some(16.75), Ask::Close));
    let job = hand.state.job();
    assert_eq!(Sheet::from_json(&job.sheet.to_json()).as_ref(), Ok(&job.sheet));
    hand.read(1, limit(1), 28.0, "mm").unwrap();
    assert_eq!(
        found(&hand),
        "“worked”: 14.75 mm. Too short by 1.25 mm: a longer bolt, or an insert"
    );
    // A reason for that thread is none for another.
    accept(&mut hand);
    hand.edit("reading/90/fed/into/word", "1").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
    let sheet = hand.state.job().sheet.clone();
    for field in form::fields(&sheet, &sheet.steps[0]) {
        if let (true, Entry::Number { .. } | Entry::Thread) = (field.id.contains("/fed/"), &field.entry) {
            let mut again = sheet.steps[0].clone();
            form::set(&sheet, &mut again, &field.id, &field.value).unwrap();
            assert_eq!(again, sheet.steps[0], "{}", field.id);
        }
    }
}

#[test]
fn what_feeds_a_field_wrongly_is_refused_in_a_file() {
    let all = [(1, "gap", "mm"), (2, "warm", "°C"), (3, "coils", "")];
    for (calculation, unit, fed, why) in [
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "reading": 2}]),
            "“groove width” takes mm or in, not °C.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "reading": 3}]),
            "“groove width” takes mm or in, not a plain number.",
        ),
        (
            "spring-rate",
            "N/mm",
            json!([{"field": "coils", "reading": 1}]),
            "“coils that work” takes a number without a unit, not mm.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "reading": 9}]),
            "“groove width” is fed by a reading measured in this step: name one.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "reading": 90}]),
            "“groove width” is fed by a reading measured in this step: name one.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "number": 6000}]),
            "“groove width”: Enter a number from 0.001 to 5000 mm.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "groove", "number": 3, "unit": "kg"}]),
            "“groove width” takes mm or in, not kg.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "most", "number": 0.1}]),
            "“side gap, at most” goes by the limits of the reading itself: enter them there.",
        ),
        (
            "side-gap",
            "mm",
            json!([{"field": "ring", "number": 2}, {"field": "ring", "reading": 1}]),
            "“ring height” is fed twice: take one out.",
        ),
        (
            "side-gap",
            "N·m",
            json!([]),
            "“worked” comes out in mm or in: give it such a unit.",
        ),
        (
            "engagement",
            "mm",
            json!([{"field": "hole", "word": "square"}]),
            "“its hole”: choose one of blind, through.",
        ),
        (
            "engagement",
            "mm",
            json!([{"field": "thread", "reading": 1}]),
            "“bolt’s thread” is told in the plan, not read: choose it there.",
        ),
    ] {
        let text = format!(
            r#"{{"version":1,"title":"x","steps":[{}]}}"#,
            step(&all, by(calculation, unit, fed.clone()))
        );
        let refused = Sheet::from_json(&text).unwrap_err().to_string();
        assert_eq!(refused, format!("Step 1, “readings”: {why}"), "{fed}");
        // What a bench has kept is opened as it is: nothing falls over, and nothing passes.
        let kept: Sheet = halfcase::job::json::read(&text).unwrap();
        let hand = Hand::with(kept);
        assert_eq!(value(&hand), None, "{fed}");
        let _ = (how(&hand), said(&hand), hand.ask(1));
    }
}

/// A calculation, or a field, of a later release: kept, written back, said, and never passed over.
#[test]
fn what_another_release_knows_is_kept_and_said() {
    for (calculation, field, why) in [
        (
            "wobble",
            "here",
            "This release has no calculation “wobble” for a reading: update the app, or work it out another way.",
        ),
        (
            "codes",
            "down",
            "This release has no calculation “codes” for a reading: update the app, or work it out another way.",
        ),
        (
            "side-gap",
            "soot",
            "This release knows no “soot” of “Ring side gap”: update the app.",
        ),
    ] {
        let fed = json!([{"field": field, "reading": 1}, {"field": "ring", "word": "as new", "number": 2, "unit": "mm"}]);
        let mut hand = plan(&[(1, "gap", "mm")], by(calculation, "mm", fed));
        let written = hand.state.job().sheet.to_json();
        for kept in [calculation, field, "as new"] {
            assert!(written.contains(&format!("\"{kept}\"")), "{written}");
        }
        assert_eq!(said(&hand).as_deref(), Some(why));
        hand.read(1, limit(1), 2.0, "mm").unwrap();
        assert_eq!((value(&hand), hand.ask(1)), (None, Ask::Finding(WORKED)));
        assert_eq!(
            format!("{}.", found(&hand)),
            format!("“worked” can’t be worked out. {why}")
        );
        assert!(hand.close(1).is_err());
        // Worked out another way, all is well.
        hand.edit("reading/90/how", "side-gap").unwrap();
        hand.edit("reading/90/fed/groove/reading", "1").unwrap();
        hand.edit("reading/90/fed/ring/number", "1.95").unwrap();
        if calculation != "side-gap" {
            assert_eq!((value(&hand), hand.ask(1)), (Some(0.05), Ask::Close));
        }
    }
}

/// A reading without a number of its own gets one later: nothing can name it by 0.
#[test]
fn a_reading_without_a_number_can_t_be_named() {
    for worked in [
        json!({"how": "offset", "of": [0]}),
        json!({"how": "calculation", "calculation": "end-gap", "fed": [{"field": "gap", "reading": 0}]}),
    ] {
        let text = json!({"version": 1, "title": "x", "steps": [{"id": 1, "title": "y", "work": {"check": {"readings": [
            {"name": "a", "unit": "mm"}, {"id": 90, "name": "w", "unit": "mm", "worked": worked}]}}}]});
        assert!(Sheet::from_json(&text.to_string()).is_err(), "{text}");
    }
}

/// What it was fed with, what came of it, and the rule.
#[test]
fn it_tells_how_it_comes_about() {
    let fed = json!([
        {"field": "pull", "reading": 1}, {"field": "radius", "number": 30}, {"field": "seal", "reading": 2},
        {"field": "pack", "number": "0.050"}, {"field": "for", "number": 0.5}
    ]);
    let limits = with(with(by("preload", "N·m", fed), "least", 1.5), "most", 2.0);
    let mut hand = plan(&[(1, "on the scale", "N"), (2, "seal alone", "N·m")], limits);
    hand.read(1, limit(1), 50.0, "N").unwrap();
    let lines = how(&hand);
    assert_eq!(lines[0], "pull on a cord, turning: 50 N (“on the scale”).");
    assert_eq!(lines[1], "radius of the cord: 30 mm.");
    assert_eq!(lines.len(), 5, "{lines:?}");
    hand.read(1, limit(2), 0.3, "N·m").unwrap();
    assert_eq!(
        how(&hand),
        [
            "pull on a cord, turning: 50 N (“on the scale”).",
            "radius of the cord: 30 mm.",
            "or the seal’s torque: 0.3 N·m (“seal alone”).",
            "manual: so much pack: 0.050 mm.",
            "for so much torque: 0.5 N·m.",
            "turning torque: 1.20 N·m. 0.30 N·m under the least.",
            "with the seal: 1.50 N·m.",
            "the seal’s: 0.30 N·m.",
            "pack, to the middle: 0.055 mm thinner.",
            "Bearing preload: torque = pull × radius, less the seal’s; the pack changes in proportion, by the manual’s figure.",
        ]
    );
}

/// Limits per radius are the reading's own affair: the value is judged for each mm of it.
#[test]
fn limits_per_radius_are_not_the_calculation_s() {
    let fed = json!([{"field": "total", "reading": 1}]);
    let mut worked = with(by("run-out", "mm", fed), "most", 0.001);
    worked["per"] = json!("millimetre");
    worked["radius"] = json!(80.0);
    let mut hand = plan(&[(1, "face", "mm")], worked);
    hand.read(1, limit(1), 0.08, "mm").unwrap();
    assert_eq!((value(&hand), verdict(&hand)), (Some(0.001), Verdict::Within));
    assert!(
        !how(&hand).iter().any(|line| line.contains("No limit entered")),
        "{:?}",
        how(&hand)
    );
    hand.read(1, limit(1), 0.1, "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(WORKED));
}

/// A face's run-out is read along the shaft: no line of journals is taken off it.
#[test]
fn a_face_s_limit_per_radius_knows_no_journals() {
    let fed = json!([
        {"field": "total", "reading": 1},
        {"field": "before", "number": 0.02},
        {"field": "next", "number": 0.02}
    ]);
    let mut worked = with(by("run-out", "mm", fed), "most", 0.001);
    worked["per"] = json!("millimetre");
    worked["radius"] = json!(80.0);
    let text = format!(
        r#"{{"version":1,"title":"x","steps":[{}]}}"#,
        step(&[(1, "face", "mm")], worked)
    );
    let refused = Sheet::from_json(&text).unwrap_err().to_string();
    assert!(
        refused.contains("is for a face, read along the shaft"),
        "{refused}"
    );
}

/// Of others the radius would take with the limits what the calculation knows of lines still to be read.
#[test]
fn of_run_out_alone_are_limits_per_radius() {
    let fed = json!([{"field": "groove", "reading": 1}]);
    let mut worked = with(by("side-gap", "mm", fed), "most", 0.001);
    worked["per"] = json!("millimetre");
    worked["radius"] = json!(80.0);
    let text = format!(
        r#"{{"version":1,"title":"x","steps":[{}]}}"#,
        step(&[(1, "groove", "mm")], worked)
    );
    let refused = Sheet::from_json(&text).unwrap_err().to_string();
    assert!(
        refused.contains("give its limits as they are, not per radius"),
        "{refused}"
    );
}
