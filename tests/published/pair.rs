//! Two readings of one torque: conversions as manuals print them, and their slips.

use halfcase::trade::pair::{Agreement, Likely, Side, Slip, agree};
use halfcase::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque, parse_torques};

fn stated(text: &str) -> TorqueStatement {
    parse_torque(text, None).expect(text)
}

/// Both ways round must give one answer.
fn agreement(one: &str, other: &str) -> Agreement {
    let (forth, back) = (
        agree(&stated(one), &stated(other)),
        agree(&stated(other), &stated(one)),
    );
    assert_eq!(
        forth == Agreement::Agree,
        back == Agreement::Agree,
        "{one}, {other}"
    );
    forth
}

fn differ(one: &str, other: &str) -> Vec<Likely> {
    match agreement(one, other) {
        Agreement::Differ { likely, .. } => likely,
        other_answer => panic!("{one}, {other}: {other_answer:?}"),
    }
}

#[test]
fn conversions_as_manuals_print_them() {
    // An engine maker's general table, clean dry; it counts a kilogram-force as ten newtons.
    for line in [
        "5 N·m (0.5 kgf·m, 3.7 ft·lb)",
        "8 N·m (0.8 kgf·m, 5.9 ft·lb)",
        "18 N·m (1.8 kgf·m, 13 ft·lb)",
        "36 N·m (3.6 kgf·m, 27 ft·lb)",
        "43 N·m (4.3 kgf·m, 32 ft·lb)",
        // Common practice, no source.
        "12 N·m (8.7 ft·lb)",
        "10 N·m (88.5 in·lb)",
        "9–12 N·m (80–106 in·lb)",
        "9 ± 1 N·m (80 ± 9 in·lb)",
        "10 ± 2 N·m (7.4 ft·lb)",
        "100.0 N·m (10.00 kgf·m)",
    ] {
        let readings = parse_torques(line, None).expect(line);
        for one in &readings {
            for other in &readings {
                assert_eq!(
                    agree(one, other),
                    Agreement::Agree,
                    "{line}: {} and {}",
                    one.text(),
                    other.text()
                );
            }
        }
    }
}

#[test]
fn the_edge_of_rounding() {
    // By hand: ft·lb of one decimal is ±0.0678 N·m, N·m of one decimal ±0.05, and 2 % more (1.97 %,
    // ten newtons for a kilogram-force): about 13.6 N·m, 10 ft·lb (13.558) takes up to 13.94.
    for (one, other, agrees) in [
        ("13.9 N·m", "10.0 ft·lb", true),
        ("14.0 N·m", "10.0 ft·lb", false),
        ("13.2 N·m", "10.0 ft·lb", true),
        ("13.1 N·m", "10.0 ft·lb", false),
        // Whole numbers allow ±0.678 and ±0.5 more: to 15.0 and 12.1.
        ("15 N·m", "10 ft·lb", true),
        ("16 N·m", "10 ft·lb", false),
        ("12 N·m", "9.2 ft·lb", true),
        // 1.97 % and no more, where rounding is small.
        ("101.9 N·m", "100.00 N·m", true),
        ("102.5 N·m", "100.00 N·m", false),
        // To the last digit: half of 0.1, half of 0.001 and 1.972 % of 10 make 0.247 66.
        ("10.247 N·m", "10.0 N·m", true),
        ("10.248 N·m", "10.0 N·m", false),
        // Bands: each end counts.
        ("9–12 N·m", "80–120 in·lb", false),
        ("9–12 N·m", "60–106 in·lb", false),
        // One number in a band.
        ("9–12 N·m", "8.5 ft·lb", true),
        ("9–12 N·m", "12.1 ft·lb", false),
        ("9–12 N·m", "5.0 ft·lb", false),
    ] {
        assert_eq!(
            agreement(one, other) == Agreement::Agree,
            agrees,
            "{one} and {other}"
        );
    }
}

#[test]
fn slips_are_named() {
    let unit = |side, unit| (side, Slip::Unit(unit));
    let point = |side, places| (side, Slip::Point(places));
    for (one, other, slip) in [
        // 12 N·m is 8.9 ft·lb and 106 in·lb.
        ("12 N·m", "106 ft·lb", unit(Side::Second, TorqueUnit::PoundInch)),
        ("12 N·m", "8.9 in·lb", unit(Side::Second, TorqueUnit::PoundFoot)),
        (
            "12 in·lb",
            "8.9 ft·lb",
            unit(Side::First, TorqueUnit::NewtonMetre),
        ),
        ("12 N·m", "89 ft·lb", point(Side::First, 1)),
        ("1.2 N·m", "8.9 ft·lb", point(Side::First, 1)),
        ("25.0 N·m", "1844 ft·lb", point(Side::First, 2)),
        // 36 N·m is 367 kgf·cm.
        (
            "36 N·m",
            "367 kgf·m",
            unit(Side::Second, TorqueUnit::KilogramCentimetre),
        ),
    ] {
        let likely = differ(one, other);
        let first = likely.first().map(|likely| (likely.side, likely.slip));
        assert_eq!(first, Some(slip), "{one}, {other}: {likely:?}");
    }
    // A lost point may be on either side; both are offered, with what they then say.
    let texts: Vec<_> = differ("12 N·m", "89 ft·lb")
        .iter()
        .map(|likely| likely.statement.text())
        .collect();
    assert_eq!(texts, ["120 N·m", "8.9 ft·lb", "12 kgf·m"]);
    // Half the torque is no slip of unit or point.
    assert_eq!(differ("24.0 N·m", "8.85 ft·lb"), vec![]);
}

#[test]
fn the_ratio_is_first_over_second() {
    // By hand: 9 ft·lb = 12.202 N·m; 9 / 12.202 = 0.7376.
    match agreement("9.0 N·m", "9.0 ft·lb") {
        Agreement::Differ { ratio, .. } => assert!((ratio - 0.737_56).abs() < 1e-5, "{ratio}"),
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_is_no_torque_is_not_compared() {
    let sound = stated("9 N·m");
    for value in [0.0, -9.0, f64::NAN, f64::INFINITY] {
        let unsound = TorqueStatement::single(value, TorqueUnit::NewtonMetre, 0);
        assert_eq!(agree(&sound, &unsound), Agreement::Unsound);
        assert_eq!(agree(&unsound, &sound), Agreement::Unsound);
    }
}
