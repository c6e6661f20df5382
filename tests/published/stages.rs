//! Stages and self-locking nuts.

use halfcase::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque};
use halfcase::trade::stages::{PrevailingError, Stage, StagesError, check, prevailing_added, total_angle};
use uom::si::angle::degree;

fn stated(text: &str) -> TorqueStatement {
    parse_torque(text, None).expect(text)
}

#[test]
fn running_torque_is_always_added() {
    // US Army TB 43-0218: 50–70 lbf·in wanted, the nut runs at 30, so 80–100 is set. Always: FAA AC
    // 43.13-1B, 7-40.
    let inch_pounds = |value| TorqueUnit::PoundInch.torque(value);
    for (wanted, running, set) in [
        (50.0, 30.0, 80.0),
        (70.0, 30.0, 100.0),
        (90.0, 30.0, 120.0),
        (90.9, 30.0, 120.9),
        (90.0, 0.0, 90.0),
    ] {
        let nut = prevailing_added(inch_pounds(wanted), inch_pounds(running)).expect("a sound nut");
        let got = TorqueUnit::PoundInch.value_of(nut.torque);
        assert!(
            (got - set).abs() < 1e-9,
            "{wanted} wanted, {running} running: got {got}, not {set}"
        );
        assert!((nut.share - running / wanted).abs() < 1e-12);
    }
    let hard =
        |running| prevailing_added(inch_pounds(50.0), inch_pounds(running)).map(|nut| nut.runs_too_hard());
    assert_eq!((hard(50.0), hard(50.4)), (Ok(false), Ok(true)));
    for (wanted, running, error) in [
        (0.0, 30.0, PrevailingError::Target),
        (f64::NAN, 30.0, PrevailingError::Target),
        (50.0, -1.0, PrevailingError::Running),
        (50.0, f64::INFINITY, PrevailingError::Running),
        (1e-300, 1e300, PrevailingError::Running),
    ] {
        assert_eq!(
            prevailing_added(inch_pounds(wanted), inch_pounds(running)),
            Err(error)
        );
        assert!(error.to_string().ends_with('.'));
    }
}

#[test]
fn the_angles_of_all_stages_add_up() {
    let stages = [
        Stage::snug(stated("20 N·m")),
        Stage::angle(60.0),
        Stage::angle(30.0),
    ];
    let angle = total_angle(&stages);
    assert!((angle.get::<degree>() - 90.0).abs() < 1e-9);
}

#[test]
fn the_plan_reads_aloud() {
    for (stage, text) in [
        (Stage::snug(stated("20 Nm")), "snug to 20 N·m"),
        (Stage::torque(stated("9-12 Nm")), "to 9–12 N·m"),
        (Stage::angle(90.0), "turn a further 90°"),
        (Stage::angle(22.5), "turn a further 22.5°"),
        (Stage::angle(120.0), "turn a further 120°"),
    ] {
        assert_eq!(stage.text(), text);
    }
}

#[test]
fn stages_that_can_and_cannot_be_carried_out() {
    let snug = Stage::snug(stated("20 N·m"));
    let torque = |text| Stage::torque(stated(text));
    let angle = |degrees| Stage::angle(degrees);
    let unsound = Stage::torque(TorqueStatement::single(f64::NAN, TorqueUnit::NewtonMetre, 0));
    for stages in [
        vec![torque("9 N·m")],
        vec![snug, angle(90.0), angle(90.0)],
        vec![snug, torque("40 N·m"), angle(360.0)],
        // 15 ft·lb is 20.3 N·m: a rise across units.
        vec![snug, torque("15 ft·lb")],
    ] {
        assert_eq!(check(&stages), Ok(()), "{stages:?}");
    }
    for (stages, error) in [
        (vec![], StagesError::None),
        (vec![angle(90.0)], StagesError::AngleWithoutStart { at: 0 }),
        (vec![snug, angle(0.0)], StagesError::Angle { at: 1 }),
        (vec![snug, angle(361.0)], StagesError::Angle { at: 1 }),
        (vec![snug, angle(f64::NAN)], StagesError::Angle { at: 1 }),
        (vec![snug, torque("14.7 ft·lb")], StagesError::NotRising { at: 1 }),
        (vec![snug, torque("20 N·m")], StagesError::NotRising { at: 1 }),
        (vec![torque("9 N·m"), snug], StagesError::SnugLate { at: 1 }),
        (vec![snug, unsound], StagesError::Torque { at: 1 }),
    ] {
        assert_eq!(check(&stages), Err(error), "{stages:?}");
        assert!(error.to_string().ends_with('.'), "{error}");
    }
}
