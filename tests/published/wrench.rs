//! Torque wrenches: ISO 6789, and scales read by hand.

use halfcase::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque};
use halfcase::trade::wrench::{RangeVerdict, ScaleSetting, Setting, Wrench, WrenchKind};

pub fn wrench(unit: TorqueUnit, min: f64, max: f64, division: f64, kind: WrenchKind) -> Wrench {
    Wrench {
        name: "bench wrench".to_owned(),
        unit,
        min,
        max,
        division,
        kind,
        accuracy: 0.04,
    }
}

pub fn small() -> Wrench {
    wrench(
        TorqueUnit::NewtonMetre,
        5.0,
        25.0,
        0.1,
        WrenchKind::Thimble { main_division: 1.0 },
    )
}

fn set(wrench: &Wrench, text: &str) -> Setting {
    wrench
        .setting(parse_torque(text, None).expect(text).torque())
        .expect(text)
}

fn close(got: f64, wanted: f64, slack: f64) {
    assert!(
        (got - wanted).abs() <= slack,
        "got {got}, wanted {wanted} ± {slack}"
    );
}

#[test]
fn iso_6789_permissible_deviation() {
    // ISO 6789 for the common indicating and setting tools, from memory: ±6 % for a maximum up to
    // 10 N·m, ±4 % above.
    for (maximum, deviation) in [
        (4.0, 0.06),
        (10.0, 0.06),
        (10.05, 0.04),
        (25.0, 0.04),
        (200.0, 0.04),
    ] {
        let maximum = TorqueUnit::NewtonMetre.torque(maximum);
        assert_eq!(Wrench::typical_accuracy(maximum), deviation);
    }
}

#[test]
fn iso_6789_lowest_test_point() {
    // ISO 6789:2003, second-hand: the lowest test point is 20 % of the maximum.
    let wrench = wrench(TorqueUnit::NewtonMetre, 10.0, 100.0, 0.5, WrenchKind::Dial);
    for (text, range) in [
        ("9.9 N·m", RangeVerdict::BelowScale),
        ("10 N·m", RangeVerdict::LowPart),
        ("19.9 N·m", RangeVerdict::LowPart),
        ("20 N·m", RangeVerdict::Inside),
        ("100 N·m", RangeVerdict::Inside),
        ("100.1 N·m", RangeVerdict::AboveScale),
    ] {
        assert_eq!(set(&wrench, text).range, range, "{text}");
    }
}

#[test]
fn a_setting_is_the_nearest_division() {
    // By hand: 7.2 ft·lb × 1.355 818 = 9.761 89 N·m; the nearest tenth is 9.8, 0.390 % over; 4 %
    // either way of it is 9.408 and 10.192.
    let setting = set(&small(), "7.2 ft-lb");
    assert_eq!(setting.text(), "9.8");
    close(setting.value, 9.8, 1e-12);
    close(setting.rounding, 0.003_904, 2e-6);
    close(TorqueUnit::NewtonMetre.value_of(setting.low), 9.408, 1e-9);
    close(TorqueUnit::NewtonMetre.value_of(setting.high), 10.192, 1e-9);
    assert_eq!(
        setting.scale,
        Some(ScaleSetting {
            main: 9.0,
            divisions: 8,
            division: 0.1
        })
    );
}

#[test]
fn thimble_scales_read_by_hand() {
    // Lowest mark, highest, line, division; torque → line passed and divisions past it.
    for (min, max, line, division, text, main, divisions, number) in [
        (5.0, 25.0, 1.0, 0.1, "9 N·m", 9.0, 0, "9.0"),
        (5.0, 25.0, 1.0, 0.1, "24.96 N·m", 25.0, 0, "25.0"),
        (20.0, 100.0, 5.0, 0.5, "38.3 N·m", 35.0, 7, "38.5"),
        // Lines from the lowest mark: 28, 42, 56, …; 14 divisions of 1 between them.
        (28.0, 210.0, 14.0, 1.0, "60 N·m", 56.0, 4, "60"),
        // The lowest mark, 4, is no line here: lines are at 5, 10, …
        (4.0, 20.0, 5.0, 0.25, "8.6 N·m", 5.0, 14, "8.50"),
        // 10.8 is no division of 0.25, 10.75 is the last one on the scale.
        (2.0, 10.8, 5.0, 0.25, "10.8 N·m", 10.0, 3, "10.75"),
    ] {
        let kind = WrenchKind::Thimble { main_division: line };
        let setting = set(&wrench(TorqueUnit::NewtonMetre, min, max, division, kind), text);
        assert_eq!(
            setting.scale,
            Some(ScaleSetting {
                main,
                divisions,
                division
            }),
            "{text}"
        );
        assert_eq!(setting.text(), number, "{text}");
    }
}

#[test]
fn a_wrench_in_another_unit() {
    // By hand: 10 N·m ÷ 0.112 984 8 = 88.5075 in·lb; by fives 90, 1.69 % over. No scale is told for a dial.
    let dial = wrench(TorqueUnit::PoundInch, 30.0, 150.0, 5.0, WrenchKind::Dial);
    let setting = set(&dial, "10 N·m");
    assert_eq!((setting.text(), setting.scale), ("90".to_owned(), None));
    close(setting.rounding, 0.016_863, 2e-6);
    // Off the scale the number is only for show.
    let off = set(&dial, "30 N·m");
    assert_eq!(
        (off.range, off.text()),
        (RangeVerdict::AboveScale, "265".to_owned())
    );
    let off = set(&small(), "2.04 N·m");
    assert_eq!(
        (off.range, off.text(), off.scale),
        (RangeVerdict::BelowScale, "2.0".to_owned(), None)
    );
}

#[test]
fn a_preset_wrench_breaks_at_its_one_value() {
    let preset = wrench(TorqueUnit::NewtonMetre, 9.0, 9.0, 0.1, WrenchKind::Preset);
    let setting = set(&preset, "9.3 N·m");
    assert_eq!(
        (setting.text(), setting.range),
        ("9.0".to_owned(), RangeVerdict::Inside)
    );
    close(setting.rounding, -0.3 / 9.3, 1e-12);
    // Its accuracy, 4 %, is its whole reach: 8.64 to 9.36.
    assert_eq!(set(&preset, "9.4 N·m").range, RangeVerdict::AboveScale);
    assert_eq!(set(&preset, "8.6 N·m").range, RangeVerdict::BelowScale);
}

#[test]
fn a_band_moves_the_setting_into_it() {
    let by = |division| wrench(TorqueUnit::NewtonMetre, 4.0, 24.0, division, WrenchKind::Dial);
    for (text, division, number) in [
        // 8.8 is nearest to 9 but below the band.
        ("9 +2/-0 N·m", 0.8, "9.6"),
        ("9 +0/-2 N·m", 0.8, "8.8"),
        ("9 +0/-2 N·m", 0.7, "8.4"),
        ("9 +2/-0 N·m", 0.1, "9.0"),
        // No multiple of 5 lies within: the nearest of all.
        ("12 ± 1 N·m", 5.0, "10"),
    ] {
        let stated = parse_torque(text, None).expect(text);
        let setting = by(division).setting_for(&stated).expect(text);
        assert_eq!(setting.text(), number, "{text} by {division}");
        assert_eq!(
            setting.inside(stated.band()),
            division < 5.0,
            "{text} by {division}"
        );
    }
}

#[test]
fn inside_and_surely_inside() {
    // 9 N·m on a 4 % wrench is 8.64 to 9.36.
    let nine = set(&small(), "9 N·m");
    let band = |low, high| TorqueStatement::range(low, high, TorqueUnit::NewtonMetre, 2).band();
    for (low, high, inside, surely) in [
        (8.64, 9.36, true, true),
        (8.65, 9.36, true, false),
        (8.64, 9.35, true, false),
        (9.0, 12.0, true, false),
        (6.0, 9.0, true, false),
        (9.01, 12.0, false, false),
        (6.0, 8.99, false, false),
        // One value without a tolerance: within reach of the wrench's accuracy or not.
        (9.35, 9.35, true, false),
        (9.37, 9.37, false, false),
        (8.63, 8.63, false, false),
    ] {
        let band = band(low, high);
        // The exact ends are met to the last bits only.
        let wide = (band.0 * (1.0 - 1e-12), band.1 * (1.0 + 1e-12));
        let band = if band.0 == band.1 { band } else { wide };
        assert_eq!(
            (nine.inside(band), nine.surely_inside(band)),
            (inside, surely),
            "{low}–{high}"
        );
    }
}
