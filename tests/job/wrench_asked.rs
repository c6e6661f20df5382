//! Which wrench is in the hand: asked once, by unit, scale and division.

use halfcase::job::answer::torque;
use halfcase::job::settings::Settings;
use halfcase::job::wrench_asked::{UNITS, described, divisions, is_asked, scales};
use halfcase::trade::quantity::parse_torque;

#[test]
fn every_way_through_the_three_touches_ends_in_a_wrench_that_makes_sense() {
    let mut ways = 0;
    for unit in UNITS {
        assert!(scales(unit).len() >= 5, "{}", unit.symbol());
        for scale in scales(unit) {
            let divisions = divisions(*scale);
            assert!((2..=7).contains(&divisions.len()), "{scale:?}: {divisions:?}");
            for division in divisions {
                assert_eq!(described(unit, *scale, division).check(), Ok(()));
                ways += 1;
            }
        }
    }
    assert!(ways > 60);
}

#[test]
fn it_is_asked_until_there_is_a_wrench_or_any_will_do() {
    let mut settings = Settings::default();
    assert!(is_asked(&settings));
    settings.any_wrench = true;
    assert!(!is_asked(&settings));
    assert!(!is_asked(&Settings::example()));
}

/// 7.2 ft·lb is 9.76 N·m (1 ft·lb = 1.355 818 N·m, NIST SP 811).
#[test]
fn without_a_wrench_a_torque_is_converted_and_nothing_is_barred() {
    let asked = parse_torque("7.2 ft·lb", None).unwrap();
    let answer = torque(&asked, &[], 0, None);
    assert!(!answer.is_barred());
    assert_eq!(
        (answer.number.as_str(), answer.wrench, answer.setting),
        ("7.20", None, None)
    );
    assert!(answer.others.iter().any(|other| other.number == "9.76"));
    // Out of reach of the one there is, it is barred.
    let small = &Settings::example().wrenches[..1];
    assert!(torque(&parse_torque("90 N·m", None).unwrap(), small, 0, None).is_barred());
}
