//! The slip guard: its limits, its words and its refusals.

use halfcase::trade::guard::{
    Fastener, GuardError, Joint, Slip, Verdict, Weakest, judge, judge_snug, snug_window, window,
};
use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::{Length, TorqueUnit};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

fn m6(strength: Option<Strength>, material: Option<FemaleMaterial>) -> Joint {
    let thread = Thread::parse("M6").expect("a size of the table");
    Joint {
        strength,
        material,
        ..Joint::of(thread)
    }
}

fn close(got: f64, worked: f64, what: &str) {
    assert!(
        (got / worked - 1.0).abs() < 1e-5,
        "{what}: {got}, worked {worked}"
    );
}

/// The limits of an M6, worked by hand from the formulas of VDI 2230 and the strengths of
/// ISO 898-1 and ISO 3506-1: lever 1.203 020 2 mm at 0.15, 1.272 611 2 at 0.16, 0.994 247 2 at 0.12.
#[test]
fn window_worked_by_hand() {
    let nm = |torque: halfcase::trade::quantity::Torque| torque.get::<newton_meter>();
    // The ceiling: twist 1.5 · 5.350 481/5.061 806 · (1/(π·5.350 481) + μ/cos 30°).
    let ceiling = |yield_mpa: f64, friction: f64| {
        let twist =
            1.5 * 5.350_481 / 5.061_806 * (1.0 / (std::f64::consts::PI * 5.350_481) + friction / 0.866_025_4);
        20.123_377 * 0.9 * yield_mpa / (1.0 + 3.0 * twist * twist).sqrt()
    };
    let (usual, oiled) = (1.203_020_2e-3, 1.272_611_2e-3);
    let all = |joint: &Joint| {
        let w = window(joint);
        [w.absurd_below, w.low_below, w.high_above, w.absurd_above].map(nm)
    };
    let same = |got: [f64; 4], worked: [f64; 4], what: &str| {
        got.iter()
            .zip(worked)
            .for_each(|(got, worked)| close(*got, worked, what));
    };
    // 0.42 and half of stainless 50's 210 MPa on 20.123 377 mm²; 12.9's ceiling at an oiled table's 0.16.
    let weakest = 210.0 * 20.123_377 * usual;
    let strongest = ceiling(1100.0, 0.16) * oiled;
    let unknown = m6(None, None);
    same(
        all(&unknown),
        [0.42 * weakest, 0.5 * weakest, strongest, 1.1 * strongest],
        "class unknown",
    );
    close(
        nm(window(&unknown).typical),
        0.85 * ceiling(640.0, 0.15) * usual,
        "typical",
    );
    // A fifth and 0.4 of 8.8's own proof load; 1.1 of its own ceiling, and 1.3 above that.
    let proof = 580.0 * 20.123_377;
    let known = m6(Some(Strength::Class8_8), None);
    let high = 1.1 * ceiling(640.0, 0.16) * oiled;
    same(
        all(&known),
        [0.2 * proof * usual, 0.4 * proof * usual, high, 1.3 * high],
        "class known",
    );
    // Dry tables go to 0.15, and lie above oiled ones below.
    let dry = Joint {
        condition: Condition::Dry,
        ..known
    };
    let high = 1.1 * ceiling(640.0, 0.15) * usual;
    same(
        all(&dry),
        [0.2 * proof * usual, 0.4 * proof * usual, high, 1.3 * high],
        "dry",
    );
    let wet = Joint {
        condition: Condition::Oiled,
        ..known
    };
    let high = 1.1 * ceiling(640.0, 0.16) * oiled;
    let lever = 0.994_247_2e-3;
    same(
        all(&wet),
        [0.2 * proof * lever, 0.4 * proof * lever, high, 1.3 * high],
        "oiled",
    );
    // Into cast aluminium no more than the plain ceiling.
    let soft = m6(Some(Strength::Class8_8), Some(FemaleMaterial::CastAluminium));
    close(
        nm(window(&soft).high_above),
        ceiling(640.0, 0.15) * usual,
        "into aluminium",
    );
    // A stage before an angle: shares of 0.85 of 10.9's ceiling.
    let start = snug_window(&unknown);
    let plain = 0.85 * ceiling(940.0, 0.15) * usual;
    same(
        [
            start.absurd_below,
            start.low_below,
            start.high_above,
            start.absurd_above,
        ]
        .map(nm),
        [0.09 * plain, 0.12 * plain, 0.75 * plain, 1.2 * plain],
        "start",
    );
    // What is no bolt: 2 and 2.8 times off a torque of its own; a stud driven in, 3.15 and 3.25 below it, 2.2 and
    // 2.8 above.
    let own = |fastener| all(&Joint { fastener, ..unknown });
    let plain = ceiling(640.0, 0.15) * usual;
    const CLOSE: [f64; 4] = [2.8, 2.0, 2.0, 2.8];
    for (fastener, middle, [stop_below, note_below, note_above, stop_above]) in [
        (Fastener::Plug, 0.12 * 36.0, CLOSE),
        (Fastener::Banjo, 0.2 * 36.0, CLOSE),
        (Fastener::HeadPlug, 0.12 * 36.0, CLOSE),
        (Fastener::ShaftNut, 0.38 * 36.0, CLOSE),
        (Fastener::Stud, 0.31 * plain, [3.25, 3.15, 2.2, 2.8]),
        (Fastener::SoftClamp, 0.45 * plain, CLOSE),
    ] {
        let worked = [
            middle / stop_below,
            middle / note_below,
            middle * note_above,
            middle * stop_above,
        ];
        same(own(fastener), worked, fastener.words());
    }
    // 6 mm in cast aluminium: 12.266 455 8 mm²/mm at 108 MPa, 16.493 360 9 at 144 MPa.
    let shallow = Joint {
        engagement: Some(Length::new::<millimeter>(6.0)),
        ..m6(None, Some(FemaleMaterial::CastAluminium))
    };
    let strip = window(&shallow);
    close(
        nm(strip.high_above),
        6.0 * 12.266_455_8 * 108.0 * 1.203_020_2e-3,
        "strip high above",
    );
    close(
        nm(strip.absurd_above),
        6.0 * 16.493_360_9 * 144.0 * 1.203_020_2e-3,
        "strip absurd above",
    );
    assert_eq!(
        (strip.high_by, strip.absurd_by),
        (Weakest::FemaleThread, Weakest::FemaleThread)
    );
    let bolt = window(&known);
    assert_eq!((bolt.high_by, bolt.absurd_by), (Weakest::Bolt, Weakest::Bolt));
}

/// The bench story: 9 N·m on an M6 of class 8.8 in aluminium passes, 9 ft·lb is questioned and
/// 9 N·m is the first reading offered, whatever the thread's condition.
#[test]
fn nine_foot_pounds_on_an_m6_in_aluminium() {
    // On dry stainless 9 N·m pulls little indeed, and a class 8.8 bolt is none; with paste it pulls hard.
    let likely = |condition: &Condition| !matches!(condition, Condition::StainlessDry | Condition::Paste);
    for condition in Condition::ALL.into_iter().filter(likely) {
        let joint = Joint {
            condition,
            ..m6(Some(Strength::Class8_8), Some(FemaleMaterial::CastAluminium))
        };
        let meant = judge(9.0, TorqueUnit::NewtonMetre, &joint).expect("a judgement");
        assert_eq!(meant.verdict, Verdict::Plausible, "{condition:?}");
        assert!(meant.readings.is_empty());
        let slip = judge(9.0, TorqueUnit::PoundFoot, &joint).expect("a judgement");
        assert_eq!(
            (slip.verdict, slip.too_high),
            (Verdict::High, true),
            "{condition:?}"
        );
        let first = slip.readings.first().expect("a reading");
        assert_eq!(
            (first.value, first.unit, first.why),
            (9.0, TorqueUnit::NewtonMetre, Slip::OtherUnit)
        );
        assert_eq!(slip.sentence, "High for an M6 8.8. Did the manual say 9 N·m?");
    }
}

/// 14 N·m printed beside 103 ft·lb: the second has lost its point.
#[test]
fn lost_point_on_an_m8() {
    let joint = Joint::of(Thread::parse("M8").expect("a size of the table"));
    let right = judge(10.3, TorqueUnit::PoundFoot, &joint).expect("a judgement");
    assert_eq!(right.verdict, Verdict::Plausible);
    let wrong = judge(103.0, TorqueUnit::PoundFoot, &joint).expect("a judgement");
    assert_eq!((wrong.verdict, wrong.too_high), (Verdict::Absurd, true));
    let shifted = wrong
        .readings
        .iter()
        .find(|r| r.unit == TorqueUnit::PoundFoot)
        .expect("the point moved");
    assert_eq!(
        (shifted.value, shifted.why),
        (10.3, Slip::DecimalPoint { shift: -1 })
    );
    assert_eq!(shifted.text(), "10.3 ft·lb");
}

#[test]
fn sentences() {
    let said = |value: f64, unit, joint: &Joint| judge(value, unit, joint).expect("a judgement").sentence;
    let plain = m6(None, None);
    let nm = TorqueUnit::NewtonMetre;
    assert_eq!(said(9.0, nm, &plain), "In the usual range for an M6.");
    assert_eq!(
        said(86.0, nm, &plain),
        "That is more than an M6 of any class can bear. Did the manual say 86 in·lb?"
    );
    assert_eq!(
        said(86.0, nm, &m6(Some(Strength::Class8_8), None)),
        "That would stretch an M6 8.8 past its limit. Did the manual say 86 in·lb?"
    );
    assert_eq!(
        said(7.2, TorqueUnit::PoundInch, &plain),
        "That would hardly load an M6. What is it? A plug, a banjo bolt, a stud driven in, a shaft nut is given less."
    );
    // Told that it is a bolt: the higher reading in words, none to take.
    let told = Joint {
        fastener: Fastener::Bolt,
        ..plain
    };
    let low = judge(7.2, TorqueUnit::PoundInch, &told).expect("a judgement");
    assert_eq!(
        low.sentence,
        "That would hardly load an M6. If the manual says 7.2 ft·lb, type it; else check its value, unit \
         and thread."
    );
    assert!(low.readings.is_empty() && !low.what_is_it);
    assert_eq!(
        low.higher.map(|reading| reading.text()),
        Some("7.2 ft·lb".to_owned())
    );
    assert_eq!(
        said(20_000.0, nm, &plain),
        "That is more than an M6 of any class can bear. Check the manual's value, unit and thread."
    );
    assert_eq!(
        said(2.5, nm, &plain),
        "Low for an M6. What is it? A plug, a banjo bolt, a stud driven in, a shaft nut is given less."
    );
    let shallow = |mm: f64| Joint {
        engagement: Some(Length::new::<millimeter>(mm)),
        ..m6(Some(Strength::Class8_8), Some(FemaleMaterial::CastAluminium))
    };
    assert_eq!(
        said(9.0, nm, &shallow(5.0)).split('.').next(),
        Some("High for an M6 thread in cast aluminium")
    );
    assert_eq!(
        said(9.0, nm, &shallow(2.0)).split('.').next(),
        Some("That would strip an M6 thread in cast aluminium")
    );
    let inch = Joint::of(Thread::parse("1/4-20").expect("a size of the table"));
    assert_eq!(
        said(8.0, TorqueUnit::PoundFoot, &inch),
        "In the usual range for a 1/4-20 UNC."
    );
}

/// Shares: 9 N·m over the levers at 0.24 and 0.08, over 8.8's proof load; strip from weakest to
/// strongest at two diameters.
#[test]
fn shares_worked_by_hand() {
    let joint = m6(Some(Strength::Class8_8), Some(FemaleMaterial::CastAluminium));
    let judged = judge(9.0, TorqueUnit::NewtonMetre, &joint).expect("a judgement");
    let proof = 580.0 * 20.123_377;
    let (low, high) = judged.proof_share.expect("the class is known");
    close(low, 9_000.0 / 1.829_339_3 / proof, "least of proof");
    close(high, 9_000.0 / 0.715_883_07 / proof, "most of proof");
    let (low, high) = judged.strip_share.expect("the material is known");
    close(
        low,
        9_000.0 / 1.829_339_3 / (12.0 * 16.493_360_9 * 144.0),
        "least of strip",
    );
    close(
        high,
        9_000.0 / 0.715_883_07 / (12.0 * 12.266_455_8 * 108.0),
        "most of strip",
    );
    let no_thread = Joint {
        engagement: Some(Length::new::<millimeter>(0.0)),
        ..joint
    };
    let judged = judge(9.0, TorqueUnit::NewtonMetre, &no_thread).expect("a judgement");
    assert_eq!(judged.strip_share, Some((1e6, 1e6)));
    let nothing_known = judge(9.0, TorqueUnit::NewtonMetre, &m6(None, None)).expect("a judgement");
    assert_eq!(
        (nothing_known.proof_share, nothing_known.strip_share),
        (None, None)
    );
}

/// A drain plug is given less than a bolt, and nobody is offered ten times as much for it.
#[test]
fn what_is_no_bolt_is_judged_by_its_own_torque() {
    let m14 = Joint::of(Thread::parse("M14x1.5").expect("a size of the table"));
    let nm = TorqueUnit::NewtonMetre;
    let plug = Joint {
        fastener: Fastener::Plug,
        ..m14
    };
    let judged = |value: f64, joint: &Joint| judge(value, nm, joint).expect("a judgement");
    for value in [20.0, 25.0, 30.0, 45.0] {
        assert_eq!(judged(value, &plug).verdict, Verdict::Plausible, "{value}");
    }
    let asked = judged(25.0, &m14);
    assert_eq!(
        asked.sentence,
        "That would hardly load an M14×1.5. What is it? A plug, a banjo bolt, a stud driven in, a shaft nut is given less."
    );
    assert!(asked.what_is_it && asked.readings.is_empty());
    let slip = judged(25.0 * 8.85, &plug);
    assert_eq!((slip.verdict, slip.too_high), (Verdict::Absurd, true));
    assert!(
        slip.sentence
            .starts_with("That is more than an M14×1.5 plug is ever given. Did the manual say "),
        "{}",
        slip.sentence
    );
    let slip = judged(25.0 / 8.85, &plug);
    assert_eq!((slip.verdict, slip.too_high), (Verdict::Absurd, false));
    let m6 = |fastener| Joint {
        fastener,
        ..m6(None, None)
    };
    let said = |value: f64, joint: &Joint| judged(value, joint).sentence;
    assert!(
        said(60.0, &m6(Fastener::SoftClamp)).starts_with("That would crush the gasket under an M6. "),
        "{}",
        said(60.0, &m6(Fastener::SoftClamp))
    );
    assert_eq!(
        said(6.0, &m6(Fastener::Stud)),
        "In the usual range for an M6 stud."
    );
    // A start of a turn is in its own words; what is no bolt knows no such start.
    let rod = Joint::of(Thread::parse("M10").expect("a size of the table"));
    let start = |value: f64, joint: &Joint| judge_snug(value, nm, joint).expect("a judgement");
    assert_eq!(
        start(20.0, &rod).sentence,
        "A start for the turn of an M10: the angle does the rest."
    );
    let left = start(2.0, &rod);
    assert_eq!((left.verdict, left.too_high), (Verdict::Absurd, false));
    assert_eq!(
        left.sentence,
        "That would hardly bring an M10 to its seat before the turn. If the manual says 20 N·m, type it; \
         else check its value, unit and thread."
    );
    assert_eq!(start(25.0, &plug), judged(25.0, &plug));
}

/// Studs go in by a few N·m and banjo bolts by as much as a small bolt; either in its own words.
#[test]
fn studs_and_banjo_bolts_have_torques_of_their_own() {
    let judged = |thread: &str, fastener, nm: f64| {
        let joint = Joint {
            fastener,
            ..Joint::of(Thread::parse(thread).expect("a size of the table"))
        };
        judge(nm, TorqueUnit::NewtonMetre, &joint).expect("a judgement")
    };
    let verdict = |thread: &str, fastener, nm: f64| judged(thread, fastener, nm).verdict;
    for nm in [3.0, 4.0, 8.0, 15.0] {
        assert_eq!(verdict("M8", Fastener::Stud, nm), Verdict::Plausible, "{nm}");
    }
    // Firmly, and less than just run home: said, and no stop.
    assert_eq!(verdict("M8", Fastener::Stud, 20.0), Verdict::High);
    let light = judged("M8", Fastener::Stud, 2.75);
    assert_eq!(
        light.sentence,
        "Low for an M8 stud. If the manual says 2.75 ft·lb, type it; else check its value, unit and thread."
    );
    for nm in [12.0, 18.0, 25.0, 30.0, 35.0] {
        assert_eq!(verdict("M10×1", Fastener::Banjo, nm), Verdict::Plausible, "{nm}");
    }
    // As a plug it is a lot, and earlier plans have no other name for it.
    let plug = judged("M10×1", Fastener::Plug, 30.0);
    assert_eq!(plug.verdict, Verdict::High);
    assert_eq!(
        plug.sentence,
        "High for an M10×1 plug. A banjo bolt is given more: if it is one, say so."
    );
    let plug = judged("M10×1", Fastener::Plug, 35.0);
    assert_eq!(
        plug.sentence,
        "That is more than an M10×1 plug is ever given. A banjo bolt is given more: if it is one, say so."
    );
    // Too much of either is no banjo bolt's.
    let slip = judged("M10×1", Fastener::Plug, 60.0);
    assert!(!slip.sentence.contains("banjo"), "{}", slip.sentence);
    let slip = judged("M10×1", Fastener::Banjo, 18.0 * 8.85);
    assert_eq!((slip.verdict, slip.too_high), (Verdict::Absurd, true));
    assert!(
        slip.sentence
            .starts_with("That is more than an M10×1 banjo bolt is ever given. "),
        "{}",
        slip.sentence
    );
}

/// The torques of studs run home as an overhaul manual of aircraft engines prints them (from memory), in in·lb and
/// typed as N·m, 8.85 times too much: stopped, and the key that mends it is there.
#[test]
fn a_stud_s_inch_pounds_typed_as_newton_metres_are_stopped() {
    for (thread, value) in [
        ("1/4-20", 15.0),
        ("5/16-18", 25.0),
        ("3/8-16", 50.0),
        ("7/16-14", 75.0),
        ("1/2-13", 100.0),
    ] {
        let stud = Joint {
            fastener: Fastener::Stud,
            ..Joint::of(Thread::parse(thread).expect("a size of the table"))
        };
        let right = judge(value, TorqueUnit::PoundInch, &stud).expect("a judgement");
        assert_eq!(right.verdict, Verdict::Plausible, "{thread} {value} in·lb");
        let slip = judge(value, TorqueUnit::NewtonMetre, &stud).expect("a judgement");
        assert_eq!((slip.verdict, slip.too_high), (Verdict::Absurd, true), "{thread}");
        let meant = format!("{value} in·lb");
        assert!(
            slip.readings.iter().any(|reading| reading.text() == meant),
            "{thread}: {:?}",
            slip.readings
        );
    }
}

/// What is no bolt bears no more than a bolt of its class: 4.6 yields at 240 MPa where 8.8 does at 640, and 0.9 of an
/// 8.8's torque is what a clamp on a soft gasket may have unnoted.
#[test]
fn a_weak_class_caps_what_is_no_bolt() {
    let told = |fastener| Joint {
        fastener,
        ..m6(Some(Strength::Class4_6), None)
    };
    let bolt = window(&told(Fastener::Bolt));
    for fastener in [Fastener::SoftClamp, Fastener::Stud] {
        let own = window(&told(fastener));
        let free = window(&Joint {
            strength: None,
            ..told(fastener)
        });
        assert!(free.high_above > bolt.high_above, "{fastener:?}: {free:?}");
        assert_eq!(
            (own.high_above, own.absurd_above),
            (bolt.high_above, bolt.absurd_above.min(free.absurd_above)),
            "{fastener:?}"
        );
    }
}

/// A class tells what a solid bolt bears: of a hollow one there is no proof load, and no cap by it.
#[test]
fn a_hollow_bolt_s_class_says_nothing() {
    let m10 = Joint {
        fastener: Fastener::Banjo,
        ..Joint::of(Thread::parse("M10x1").expect("a size of the table"))
    };
    let classed = Joint {
        strength: Some(Strength::Class4_6),
        ..m10
    };
    assert_eq!(window(&classed), window(&m10));
    let judged = judge(30.0, TorqueUnit::NewtonMetre, &classed).expect("a judgement");
    assert_eq!((judged.verdict, judged.proof_share), (Verdict::Plausible, None));
}

/// Hardly engaged, a thread strips whatever is tightened in it, and a torque that strips it is too much even where a
/// bolt would be given more. M6, 0.5 mm in cast aluminium: 0.5 · 16.493 360 9 · 144 N at 1.203 020 2 mm, 1.429 N·m.
#[test]
fn a_thread_hardly_engaged_caps_whatever_is_in_it() {
    let joint = |fastener| Joint {
        fastener,
        engagement: Some(Length::new::<millimeter>(0.5)),
        ..m6(None, Some(FemaleMaterial::CastAluminium))
    };
    let strips = 0.5 * 16.493_360_9 * 144.0 * 1.203_020_2e-3;
    for fastener in Fastener::ALL {
        let own = window(&joint(fastener));
        assert_eq!(own.absurd_by, Weakest::FemaleThread, "{fastener:?}");
        close(own.absurd_above.get::<newton_meter>(), strips, fastener.words());
    }
    let start = snug_window(&joint(Fastener::Bolt));
    assert_eq!(start.absurd_by, Weakest::FemaleThread);
    close(start.absurd_above.get::<newton_meter>(), strips, "start");
    // 1.8 N·m would hardly load an M6, and strips this one.
    let bolt = joint(Fastener::Bolt);
    for judged in [
        judge(1.8, TorqueUnit::NewtonMetre, &bolt),
        judge_snug(1.8, TorqueUnit::NewtonMetre, &bolt),
    ] {
        let judged = judged.expect("a judgement");
        assert_eq!((judged.verdict, judged.too_high), (Verdict::Absurd, true));
    }
}

#[test]
fn refuses_the_impossible() {
    let plain = m6(None, None);
    let sentence = |value: f64, joint: &Joint| {
        judge(value, TorqueUnit::NewtonMetre, joint)
            .map(|_| ())
            .map_err(|error| error.to_string())
    };
    assert_eq!(
        sentence(0.0, &plain),
        Err("A torque must be more than zero: type it again.".to_owned())
    );
    assert_eq!(
        sentence(1e9, &plain),
        Err("That is more than 10 000 000 N·m: check the value and its unit.".to_owned())
    );
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let joint = Joint {
            engagement: Some(Length::new::<millimeter>(bad)),
            ..plain
        };
        assert_eq!(
            judge(9.0, TorqueUnit::NewtonMetre, &joint).err(),
            Some(GuardError::Engagement)
        );
    }
    assert_eq!(
        GuardError::Engagement.to_string(),
        "The engagement must be zero or more: measure it again."
    );
}

#[test]
fn joint_is_stored_readably() {
    let joint = Joint {
        engagement: Some(Length::new::<millimeter>(12.5)),
        ..m6(Some(Strength::Class8_8), Some(FemaleMaterial::CastAluminium))
    };
    let stored = serde_json::to_string(&joint).expect("text");
    assert!(
        stored.contains("\"thread\":\"M6\"") && stored.contains("\"engagement\":12.5"),
        "{stored}"
    );
    assert_eq!(serde_json::from_str::<Joint>(&stored).ok(), Some(joint));
    assert!(!stored.contains("fastener"), "{stored}");
    let bare = r#"{"thread":"M6","strength":null,"material":null,"condition":"unknown"}"#;
    assert_eq!(serde_json::from_str::<Joint>(bare).ok(), Some(m6(None, None)));
}
