//! Readings in the manual's units and in the instrument's: one turns into the other, or is refused.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::journal::words;
use halfcase::job::json;
use halfcase::job::kinds::{Work, blank};
use halfcase::job::progress::Progress;
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings::{finding_words, findings, missing, value};
use halfcase::job::record::{Entry, Event, Record};
use halfcase::job::sheet::{Sheet, Step, StepId, Units};
use halfcase::job::state::{Ask, Intent, ReadWith, Refused};
use halfcase::trade::quantity::{
    LengthUnit, READ_UNITS, Stated, TemperatureUnit, convert, read_in, unit_symbol,
};

const ONE: What = What::Limit(ReadingId(1));

fn clearance() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Bearing","work":{"check":{"readings":[
            {"name":"clearance","unit":"in","least":0.001,"most":0.003}]}}}"#,
    )
}

fn accept(hand: &mut Hand) {
    let accepted = Intent::Accept {
        step: StepId(1),
        what: ONE,
        reason: "run in once more".to_owned(),
        initials: "jb".to_owned(),
    };
    hand.send(accepted).unwrap();
}

/// By definition: the inch is 25.4 mm, 32 °F is 0 °C and 212 °F 100 °C, the pound-force 4.448 221 615 260 5 N
/// (NIST SP 811, from memory).
#[test]
fn units_of_one_kind_turn_into_each_other() {
    for (value, from, to, turned) in [
        (30.0, "thou", "in", 0.03),
        (1.0, "in", "mm", 25.4),
        (0.0508, "mm", "thou", 2.0),
        (32.0, "°F", "°C", 0.0),
        (100.0, "°C", "°F", 212.0),
        (12.0, "in·lb", "ft·lb", 1.0),
        (1.0, "lb", "kg", 0.453_592_37),
        (1.0, "kgf", "N", 9.806_65),
        (1.0, "psi", "kPa", 4.448_221_615_260_5 / 0.645_16),
        (1.0, "US qt", "US fl oz", 32.0),
    ] {
        let found = convert(value, from, to).unwrap();
        assert!(
            (found - turned).abs() < 1e-9 * turned.abs().max(1.0),
            "{value} {from}: {found}"
        );
    }
    assert_eq!(convert(1.0, "kg", "N"), None, "a mass is no force");
    assert_eq!(convert(1.0, "drops", "mm"), None);
}

#[test]
fn what_is_offered_is_known_and_has_company_of_its_own_kind() {
    for unit in READ_UNITS {
        assert_eq!(unit_symbol(unit), unit);
        assert!(
            read_in(unit)
                .iter()
                .all(|other| convert(1.0, unit, other).is_some()),
            "{unit}"
        );
    }
    assert_eq!(read_in("in"), ["mm", "in", "thou"]);
    assert_eq!(read_in("µm"), ["µm", "mm", "in"]);
    assert_eq!(read_in("drops"), Vec::<&str>::new());
    for (written, symbol) in [
        ("inches", "in"),
        (".001 in", "thou"),
        ("Nm", "N·m"),
        ("deg F", "°F"),
        (" drops ", "drops"),
    ] {
        assert_eq!(unit_symbol(written), symbol, "{written}");
    }
}

/// Every two units of the table lead there and back.
#[test]
fn there_and_back_is_the_same_number() {
    for from in READ_UNITS {
        for to in READ_UNITS {
            if let Some(there) = convert(7.3, from, to) {
                let back = convert(there, to, from).unwrap();
                assert!((back - 7.3).abs() < 1e-9, "{from} {to}: {back}");
            }
        }
    }
}

#[test]
fn a_reading_in_another_unit_is_judged_by_the_plans_limits() {
    for (number, unit, verdict) in [
        (2.0, "thou", Verdict::Within),
        (3.0, "thou", Verdict::Within),
        (0.05, "mm", Verdict::Within),
        (0.05, "in", Verdict::Outside),
        (0.1, "mm", Verdict::Outside),
    ] {
        let mut hand = Hand::with(clearance());
        hand.read(1, ONE, number, unit).unwrap();
        let recorded = hand.state.progress(StepId(1)).reading(&ONE).cloned().unwrap();
        // As it was read, and what that says.
        assert_eq!(
            (recorded.value, recorded.unit.as_str(), recorded.verdict),
            (number, unit, verdict)
        );
        let asked = if verdict == Verdict::Outside {
            Ask::Finding(ONE)
        } else {
            Ask::Close
        };
        assert_eq!(hand.ask(1), asked, "{number} {unit}");
    }
}

#[test]
fn a_reading_that_measures_something_else_is_refused() {
    let mut hand = Hand::with(clearance());
    let refused = hand.read(1, ONE, 0.002, "°C");
    assert_eq!(refused, Err(Refused::OtherUnit("in".to_owned(), "°C".to_owned())));
    assert_eq!(
        refused.unwrap_err().to_string(),
        "The plan asks for it in in, and °C can’t be turned into that: read it in in."
    );
    assert_eq!(hand.ask(1), Ask::Read(ONE));
}

/// A closed step whose plan is written in another unit keeps what was found in it.
#[test]
fn a_changed_unit_hides_nothing_that_was_found() {
    let mut hand = Hand::with(clearance());
    hand.read(1, ONE, 0.002, "in").unwrap();
    hand.close(1).unwrap();
    // The manual meant mm after all: 0.002 in is 0.0508 mm.
    hand.edit("reading/1/unit", "mm").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), [ONE]);
    let step = hand.state.step(StepId(1)).unwrap();
    let told = value(step, &hand.state.progress(StepId(1)), &ONE).unwrap();
    assert!((told - 0.0508).abs() < 1e-9, "{told}");
    // Outside, and then of another kind altogether: it stays found.
    let mut hand = Hand::with(clearance());
    hand.read(1, ONE, 0.05, "in").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), [ONE]);
    hand.edit("reading/1/unit", "°C").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), [ONE]);
}

/// A reason given for one size stands for it however the plan writes its limits, and for no other.
#[test]
fn an_acceptance_knows_its_unit() {
    let mut hand = Hand::with(clearance());
    hand.read(1, ONE, 0.005, "in").unwrap();
    accept(&mut hand);
    assert_eq!(hand.ask(1), Ask::Close);
    // The same numbers of another unit are other limits.
    hand.edit("reading/1/unit", "mm").unwrap();
    assert_eq!(hand.ask(1), Ask::Finding(ONE));
    // The same limits in another unit are the same.
    hand.edit("reading/1/unit", "thou").unwrap();
    hand.edit("reading/1/most", "3").unwrap();
    hand.edit("reading/1/least", "1").unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    // Of another kind nothing is the same.
    hand.edit("reading/1/unit", "bar").unwrap();
    assert_eq!(hand.state.findings(StepId(1)), [ONE]);
}

/// As an earlier release wrote it: the limits of an acceptance stand in the unit of its reading.
#[test]
fn an_acceptance_of_an_earlier_release_still_stands() {
    let sheet = clearance();
    let mut record = Record::default();
    let mut add = |event| record.add(super::MORNING, Some(StepId(1)), "", event);
    add(Event::Measured {
        what: ONE,
        value: 0.005,
        unit: "in".to_owned(),
        tool: String::new(),
        verdict: Verdict::Outside,
        at_c: None,
        decimals: None,
    });
    add(Event::Accepted {
        what: ONE,
        limits: vec![Some(0.001), Some(0.003)],
        reason: "run in once more".to_owned(),
    });
    let progress = Progress::of(&record).step(StepId(1));
    assert_eq!(findings(&sheet.steps[0], &progress), []);
    assert_eq!(missing(&sheet.steps[0], &progress), None);
}

#[test]
fn a_new_reading_begins_in_the_units_of_the_job() {
    let mut hand = Hand::with(clearance());
    let inch = Units {
        length: LengthUnit::Thou,
        temperature: TemperatureUnit::Fahrenheit,
    };
    hand.send(Intent::SetUnits(inch)).unwrap();
    hand.edit("reading/add", "yes").unwrap();
    let unit = |hand: &Hand| match &hand.state.step(StepId(1)).unwrap().work {
        Work::Check(check) => check.readings[1].unit.clone(),
        _ => panic!("no check"),
    };
    assert_eq!(unit(&hand), "thou");
    hand.edit("reading/2/unit", "deg F").unwrap();
    assert_eq!(unit(&hand), "°F");
    hand.edit("reading/2/other_unit", "drops per minute").unwrap();
    assert_eq!(unit(&hand), "drops per minute");
    let text = hand.state.job().sheet.to_json();
    assert!(text.contains("\"units\""), "{text}");
    assert_eq!(Sheet::from_json(&text).unwrap(), hand.state.job().sheet);
    hand.send(Intent::SetUnits(Units::default())).unwrap();
    assert!(
        !hand.state.job().sheet.to_json().contains("\"units\""),
        "what says nothing is left out"
    );
}

/// A bore read on an inch micrometer is the same bore.
#[test]
fn a_bore_may_be_read_in_inches() {
    let mut hand = Hand::with(sheet(
        r#"{"id":1,"title":"Bore","work":{"check":{"readings":[],"bores":[
            {"id":1,"name":"bore","least_mm":50.79,"most_mm":50.81}]}}}"#,
    ));
    for what in What::grid(ReadingId(1), false) {
        hand.read(1, what, 2.0, "in").unwrap();
    }
    assert_eq!(hand.ask(1), Ask::Close);
    let first = What::grid(ReadingId(1), false).next().unwrap();
    assert!(
        hand.read(1, first.clone(), 50.8, "in").is_err(),
        "more than a metre across"
    );
    hand.read(1, first, 2.001, "in").unwrap();
    assert!(matches!(hand.ask(1), Ask::Finding(What::Place { .. })));
}

#[test]
fn a_blank_check_has_no_units_of_its_own() {
    let step = Step::new(StepId(1), "Check", blank("Check").unwrap());
    let mut changed = step.clone();
    let sheet = Sheet::new("Plan", vec![step]);
    form::set(&sheet, &mut changed, "reading/add", "yes").unwrap();
    let Work::Check(check) = &changed.work else {
        panic!("no check")
    };
    assert_eq!(check.readings[0].unit, "mm");
}

/// What was typed with its digits is kept and said with them; what needs none, and what an earlier release
/// wrote, as before.
#[test]
fn a_reading_keeps_the_digits_it_was_typed_with() {
    let mut hand = Hand::with(clearance());
    let typed = |hand: &mut Hand, text: &str| {
        let stated = Stated::typed(text).unwrap();
        let read = Intent::Read {
            step: StepId(1),
            what: ONE,
            value: stated.value,
            unit: "in".to_owned(),
            with: ReadWith {
                decimals: Some(stated.decimals),
                ..ReadWith::default()
            },
        };
        hand.send(read).unwrap();
        let job = hand.state.job();
        let last = job.record.entries().last().unwrap();
        (words(last, &job.sheet), json::write(last).unwrap())
    };
    let (said, written) = typed(&mut hand, ".0020");
    assert_eq!(said, "clearance: 0.0020 in: within limits");
    assert!(written.contains(r#""decimals":4"#), "{written}");
    assert_eq!(
        json::read::<Entry>(&written).unwrap(),
        *hand.state.job().record.entries().last().unwrap()
    );
    let progress = hand.state.progress(StepId(1));
    assert_eq!(progress.reading(&ONE).unwrap().shown_in("in"), "0.0020");
    assert_eq!(progress.reading(&ONE).unwrap().shown_in("thou"), "2");
    let (said, written) = typed(&mut hand, "0.002");
    assert_eq!(said, "clearance: 0.002 in: within limits");
    assert!(!written.contains("decimals"), "{written}");
    let (said, _) = typed(&mut hand, "12.50");
    assert_eq!(said, "clearance: 12.50 in: outside limits");
    let step = hand.state.step(StepId(1)).unwrap();
    assert_eq!(
        finding_words(step, &hand.state.progress(StepId(1)), &ONE),
        "“clearance” is outside its limits: 12.50 in"
    );
    let before = r#"{"id":0,"at":0,"step":1,"event":{"measured":{"what":{"limit":1},"value":0.03,"unit":"in","verdict":"outside"}}}"#;
    let entry = json::read::<Entry>(before).unwrap();
    assert_eq!(
        words(&entry, &hand.state.job().sheet),
        "clearance: 0.03 in: outside limits"
    );
    assert_eq!(json::write(&entry).unwrap(), before);
}
