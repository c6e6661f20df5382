//! A bearing's clearance by gauging plastic: in its order, judged by both ends, and never closed with the
//! plastic still in.

use super::select::{STEP, ask, bench, lines, read, send};
use halfcase::job::form::set;
use halfcase::job::kinds::gauge::answer;
use halfcase::job::kinds::gauge::words::{lay_words, plastic_words, said_words};
use halfcase::job::kinds::{Gauge, Gauged, Work, blank};
use halfcase::job::reading::What;
use halfcase::job::sheet::{Sheet, Step};
use halfcase::job::state::{Ask, Intent, ReadWith, Refused, State};
use halfcase::trade::gauging::Plastic;
use halfcase::trade::quantity::LengthUnit;
use serde_json::Value;

/// The walking tractor's big end: 0.0010 to 0.0025 in new, 0.0030 worn, ends alike to 0.0005.
fn big_end() -> State {
    bench(
        r#"{"id":1,"title":"Big end","work":{"gauge":{"bearing":"big end","unit":"inch","least":0.001,
            "most":0.0025,"worn":0.003,"taper":0.0005,"torque":"12 ft·lb"}}}"#,
    )
}

fn gauge(state: &mut State, done: Gauged) -> Result<(), Refused> {
    send(state, Intent::Gauge { step: STEP, done })
}

fn close(state: &mut State) -> Result<(), Refused> {
    send(state, Intent::Close(STEP))
}

fn accept(state: &mut State, what: What) -> Result<(), Refused> {
    let reason = "last of its size in the shop".to_owned();
    send(
        state,
        Intent::Accept {
            step: STEP,
            what,
            reason,
            initials: "jb".to_owned(),
        },
    )
}

/// As far as the readings.
fn squeezed(state: &mut State, plastic: Plastic) {
    for done in [Gauged::Laid(plastic), Gauged::Tight, Gauged::Off] {
        gauge(state, done).unwrap();
    }
}

fn ends(state: &mut State, widest: f64, narrow: f64) {
    read(state, What::Widest, widest, "in");
    read(state, What::Narrow, narrow, "in");
}

fn said(state: &State) -> Vec<String> {
    let Work::Gauge(gauge) = &state.step(STEP).unwrap().work else {
        panic!()
    };
    said_words(gauge, &state.progress(STEP))
}

#[test]
fn it_is_laid_tightened_read_at_both_ends_and_wiped_away_in_that_order() {
    let mut state = big_end();
    let all = [Gauged::Laid(Plastic::Fine), Gauged::Tight, Gauged::Off];
    for done in all {
        assert_eq!(ask(&state), Ask::Gauge(done));
        assert_eq!(close(&mut state), Err(Refused::NotGauged(done)));
        // Nothing to read under a cap.
        let early = Intent::Read {
            step: STEP,
            what: What::Widest,
            value: 0.002,
            unit: "in".to_owned(),
            with: ReadWith::default(),
        };
        assert_eq!(send(&mut state, early), Err(Refused::NotGauged(done)));
        gauge(&mut state, done).unwrap();
    }
    assert_eq!(ask(&state), Ask::Read(What::Widest));
    read(&mut state, What::Widest, 0.002, "in");
    assert_eq!(ask(&state), Ask::Read(What::Narrow));
    read(&mut state, What::Narrow, 0.0023, "in");
    assert_eq!(ask(&state), Ask::Gauge(Gauged::Wiped));
    let refused = close(&mut state).unwrap_err();
    assert_eq!(refused.to_string(), "Wipe all of the gauging plastic away first.");
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(said(&state), ["The ends differ by 0.0003 in."]);
    assert_eq!(close(&mut state), Ok(()));
    assert_eq!(
        lines(&state),
        [
            "gauging plastic laid, fine, 0.001 to 0.003 in",
            "cap on, at full torque",
            "cap off",
            "clearance at the widest place: 0.002 in: within limits",
            "clearance at the narrow end: 0.0023 in: noted",
            "gauging plastic wiped away",
        ]
    );
}

#[test]
fn out_of_its_order_it_says_what_comes_first() {
    let mut state = big_end();
    for (done, first) in [
        (Gauged::Tight, "Lay the gauging plastic along the journal first."),
        (Gauged::Wiped, "Lay the gauging plastic along the journal first."),
    ] {
        assert_eq!(gauge(&mut state, done).unwrap_err().to_string(), first);
    }
    gauge(&mut state, Gauged::Laid(Plastic::Coarse)).unwrap();
    gauge(&mut state, Gauged::Laid(Plastic::Fine)).unwrap();
    let refused = gauge(&mut state, Gauged::Off).unwrap_err();
    assert_eq!(refused.to_string(), "Put the cap on and tighten it fully first.");
    gauge(&mut state, Gauged::Tight).unwrap();
    let refused = gauge(&mut state, Gauged::Laid(Plastic::Fine)).unwrap_err();
    assert_eq!(refused.to_string(), "Take the cap off first.");
    gauge(&mut state, Gauged::Off).unwrap();
    assert!(
        gauge(&mut state, Gauged::Laid(Plastic::Fine)).is_err(),
        "on top of the last one"
    );
}

/// Smeared: wiped away unread, it begins anew, and what was read of the one before counts no more.
#[test]
fn another_one_is_read_anew() {
    let mut state = big_end();
    squeezed(&mut state, Plastic::Fine);
    ends(&mut state, 0.002, 0.002);
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(ask(&state), Ask::Close);
    // A digit typed wrongly can still be put right.
    read(&mut state, What::Narrow, 0.0021, "in");
    assert_eq!(ask(&state), Ask::Close);
    squeezed(&mut state, Plastic::Fine);
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(ask(&state), Ask::Gauge(Gauged::Laid(Plastic::Fine)));
    assert!(close(&mut state).is_err());
}

#[test]
fn a_clearance_outside_its_limits_holds_the_step() {
    // Too tight; over the new limit and within the worn one; over both.
    for (widest, holds) in [(0.0009, false), (0.0025, true), (0.0028, true), (0.0031, false)] {
        let mut state = big_end();
        squeezed(&mut state, Plastic::Fine);
        ends(&mut state, widest, widest);
        gauge(&mut state, Gauged::Wiped).unwrap();
        let expected = if holds {
            Ask::Close
        } else {
            Ask::Finding(What::Widest)
        };
        assert_eq!(ask(&state), expected, "{widest}");
        if !holds {
            accept(&mut state, What::Widest).unwrap();
            assert_eq!(ask(&state), Ask::Close);
        }
        let worn = said(&state)
            .iter()
            .any(|line| line.starts_with("More than new parts"));
        assert_eq!(worn, widest == 0.0028);
    }
}

#[test]
fn ends_too_far_apart_or_the_wrong_way_round_hold_the_step() {
    let mut state = big_end();
    squeezed(&mut state, Plastic::Fine);
    ends(&mut state, 0.0015, 0.0021);
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Narrow));
    accept(&mut state, What::Narrow).unwrap();
    assert_eq!(ask(&state), Ask::Close);
    // The reason was for those two readings.
    read(&mut state, What::Widest, 0.0014, "in");
    assert_eq!(ask(&state), Ask::Finding(What::Narrow));
    // Narrower plastic, less clearance: one of the two was misread.
    ends(&mut state, 0.0022, 0.0019);
    assert_eq!(ask(&state), Ask::Finding(What::Narrow));
    ends(&mut state, 0.0017, 0.0022);
    assert_eq!(ask(&state), Ask::Close, "on the limit is within");
}

/// A width beyond the card is no clearance anybody printed.
#[test]
fn what_the_card_cannot_tell_holds_the_step() {
    let mut state = bench(r#"{"id":1,"title":"Main","work":{"gauge":{"least":0.02,"most":0.2}}}"#);
    squeezed(&mut state, Plastic::Fine);
    for what in [What::Widest, What::Narrow] {
        read(&mut state, what, 0.12, "mm");
    }
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Widest));
    assert!(said(&state)[0].starts_with("That is beyond what this card tells"));
    squeezed(&mut state, Plastic::Medium);
    for what in [What::Widest, What::Narrow] {
        read(&mut state, what, 0.12, "mm");
    }
    gauge(&mut state, Gauged::Wiped).unwrap();
    assert_eq!(ask(&state), Ask::Close);
}

#[test]
fn the_limits_say_which_plastic_to_take() {
    let gauge = |least: Option<f64>, most: Option<f64>, worn: Option<f64>| Gauge {
        unit: LengthUnit::Thou,
        least,
        most,
        worn,
        ..Gauge::default()
    };
    let take = |gauge: &Gauge| answer::plastic(gauge).map(|take| take.plastic);
    assert_eq!(take(&gauge(Some(1.0), Some(2.5), Some(3.0))), Some(Plastic::Fine));
    // One card tells the worn limit too.
    assert_eq!(
        take(&gauge(Some(2.0), Some(3.0), Some(5.0))),
        Some(Plastic::Medium)
    );
    // None does: the one for new parts.
    assert_eq!(take(&gauge(Some(1.0), Some(3.0), Some(6.0))), Some(Plastic::Fine));
    assert_eq!(take(&gauge(None, None, None)), None);
    assert_eq!(
        lay_words(&gauge(Some(4.0), Some(8.0), None)),
        ["Take the coarse, 4 to 9 thou."]
    );
    assert_eq!(
        lay_words(&gauge(Some(1.0), Some(5.0), None)),
        [
            "Take the medium, 2 to 6 thou.",
            "No card tells all of these limits."
        ]
    );
    assert_eq!(
        plastic_words(Plastic::Fine, LengthUnit::Millimetre),
        "fine, 0.025 to 0.076 mm"
    );
}

#[test]
fn it_is_planned_by_touch_and_survives_its_file() {
    let mut step = Step::new(STEP, "Big end", blank("Gauge").unwrap());
    let plan = Sheet::new("Plan", vec![step.clone()]);
    let mut put = |path: &str, value: &str| set(&plan, &mut step, path, value).map_err(|e| e.to_string());
    for (path, value) in [
        ("gauge/bearing", "big end"),
        ("gauge/unit", "1"),
        ("gauge/least", ".001"),
        ("gauge/most", ".0025"),
        ("gauge/worn_most", ".003"),
        ("gauge/taper", ".0005"),
        ("gauge/torque", "12 ± 1 ft·lb"),
    ] {
        assert_eq!(put(path, value), Ok(()), "{path}");
    }
    for (path, value) in [
        ("gauge/worn_most", "0.002"),
        ("gauge/least", "0.01"),
        ("gauge/torque", "12"),
    ] {
        assert!(put(path, value).is_err(), "{path}");
    }
    let sheet = Sheet::new("Plan", vec![step.clone()]);
    assert_eq!(Sheet::from_json(&sheet.to_json()), Ok(sheet));
    let Work::Gauge(gauge) = &step.work else { panic!() };
    let schema: Value = serde_json::from_str(include_str!("../../public/job-form.schema.json")).unwrap();
    let named = schema
        .pointer("/$defs/gauge/properties")
        .and_then(Value::as_object)
        .unwrap();
    let written = serde_json::to_value(gauge).unwrap();
    for name in written.as_object().unwrap().keys() {
        assert!(named.contains_key(name), "{name}");
    }
    assert_eq!(
        written.as_object().unwrap().len(),
        named.len(),
        "every field is filled"
    );
    set(&plan, &mut step, "gauge/torque", "").unwrap();
    let Work::Gauge(gauge) = &step.work else { panic!() };
    assert_eq!(gauge.torque, None);
}
