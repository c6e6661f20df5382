//! Which of several wrenches to take, and which make no sense. The cases are worked by hand.

use super::wrench::{small, wrench};
use halfcase::trade::quantity::{TorqueUnit, parse_torque};
use halfcase::trade::wrench::{Wrench, WrenchError, WrenchKind, choose};

#[test]
fn choosing_among_wrenches() {
    let nm = TorqueUnit::NewtonMetre;
    let large = wrench(nm, 20.0, 200.0, 1.0, WrenchKind::Dial);
    let middle = wrench(nm, 10.0, 60.0, 0.5, WrenchKind::Dial);
    let better = Wrench {
        accuracy: 0.02,
        ..middle.clone()
    };
    let coarse = wrench(nm, 5.0, 60.0, 5.0, WrenchKind::Digital);
    let broken = Wrench {
        max: f64::NAN,
        ..middle.clone()
    };
    let pick = |wrenches: &[&Wrench], text: &str| {
        let wrenches: Vec<Wrench> = wrenches.iter().map(|wrench| (*wrench).clone()).collect();
        let stated = parse_torque(text, None).expect(text);
        choose(&wrenches, stated.torque(), Some(stated.band()))
    };
    assert_eq!(
        pick(&[&large, &middle], "150 N·m"),
        Some(0),
        "only one reaches it"
    );
    assert_eq!(
        pick(&[&large, &middle], "30 N·m"),
        Some(1),
        "30 is in the low part of 200"
    );
    assert_eq!(pick(&[&large, &small()], "300 N·m"), None, "no scale has it");
    assert_eq!(
        pick(&[&middle, &better], "30 N·m"),
        Some(1),
        "the better accuracy"
    );
    assert_eq!(
        pick(&[&coarse, &middle], "32 N·m"),
        Some(1),
        "the smaller rounding"
    );
    assert_eq!(
        pick(&[&middle, &middle], "30 N·m"),
        Some(0),
        "the first of equals"
    );
    assert_eq!(
        pick(&[&broken, &middle], "30 N·m"),
        Some(1),
        "a broken entry is passed over"
    );
    // 33 lies between 30 and 35 on the coarse one, whose accuracy is better; only 33 is in the band.
    let coarse = Wrench {
        accuracy: 0.001,
        ..coarse
    };
    let fine = Wrench {
        accuracy: 0.15,
        ..middle
    };
    assert_eq!(
        pick(&[&coarse, &fine], "33 ± 1 N·m"),
        Some(1),
        "the band before the accuracy"
    );
    assert_eq!(choose(&[], nm.torque(30.0), None), None);
}

#[test]
fn a_wrench_that_makes_no_sense_says_so() {
    let sound = small();
    assert_eq!(sound.check(), Ok(()));
    let per_line = |main_division| WrenchKind::Thimble { main_division };
    for (wrench, error) in [
        (
            Wrench {
                min: 0.0,
                ..sound.clone()
            },
            WrenchError::NotPositive { what: "lowest mark" },
        ),
        (
            Wrench {
                max: f64::NAN,
                ..sound.clone()
            },
            WrenchError::NotPositive { what: "highest mark" },
        ),
        (
            Wrench {
                division: -0.1,
                ..sound.clone()
            },
            WrenchError::NotPositive {
                what: "smallest division",
            },
        ),
        (
            Wrench {
                accuracy: 0.0,
                ..sound.clone()
            },
            WrenchError::NotPositive { what: "accuracy" },
        ),
        (
            Wrench {
                min: 25.0,
                ..sound.clone()
            },
            WrenchError::NoRange,
        ),
        (
            Wrench {
                max: 20_001.0,
                ..sound.clone()
            },
            WrenchError::TooLarge,
        ),
        (
            Wrench {
                division: 20.1,
                kind: WrenchKind::Dial,
                ..sound.clone()
            },
            WrenchError::Division,
        ),
        (
            Wrench {
                division: 0.000_249,
                ..sound.clone()
            },
            WrenchError::Division,
        ),
        (
            Wrench {
                kind: per_line(0.25),
                ..sound.clone()
            },
            WrenchError::MainDivision,
        ),
        (
            Wrench {
                kind: per_line(0.0),
                ..sound.clone()
            },
            WrenchError::MainDivision,
        ),
        (
            Wrench {
                kind: per_line(f64::NAN),
                ..sound.clone()
            },
            WrenchError::MainDivision,
        ),
        (
            Wrench {
                kind: per_line(25.1),
                ..sound.clone()
            },
            WrenchError::MainDivision,
        ),
        (
            Wrench {
                accuracy: 0.201,
                ..sound.clone()
            },
            WrenchError::Accuracy,
        ),
    ] {
        assert_eq!(wrench.check(), Err(error), "{wrench:?}");
        assert_eq!(wrench.setting(TorqueUnit::NewtonMetre.torque(9.0)), Err(error));
        assert!(error.to_string().ends_with('.'), "{error}");
    }
    for sound in [
        Wrench {
            accuracy: 0.2,
            ..sound.clone()
        },
        Wrench {
            max: 20_000.0,
            division: 1.0,
            ..sound.clone()
        },
        Wrench {
            division: 0.000_251,
            kind: WrenchKind::Digital,
            ..sound.clone()
        },
        Wrench {
            division: 20.0,
            kind: WrenchKind::Dial,
            ..sound.clone()
        },
    ] {
        assert_eq!(sound.check(), Ok(()), "{sound:?}");
    }
    for newton_metres in [0.0, -9.0, f64::NAN, f64::INFINITY, 20_001.0] {
        assert_eq!(
            sound.setting(TorqueUnit::NewtonMetre.torque(newton_metres)),
            Err(WrenchError::Target)
        );
    }
}
