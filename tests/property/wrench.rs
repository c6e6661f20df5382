//! Wrench settings and adapters, for any sound wrench and any torque at all.

use halfcase::trade::adapter::corrected_setting;
use halfcase::trade::quantity::{AngleUnit, LengthUnit, TorqueStatement, TorqueUnit};
use halfcase::trade::stages::prevailing_added;
use halfcase::trade::wrench::{RangeVerdict, Wrench, WrenchKind, choose};
use proptest::prelude::*;
use proptest::sample::select;
use uom::si::torque::newton_meter;

fn sound_wrench() -> impl Strategy<Value = Wrench> {
    let divisions = select(&[0.01, 0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 5.0][..]);
    (
        select(&TorqueUnit::ALL[..]),
        divisions,
        1u32..200,
        10u32..1000,
        1u32..20,
        0..3,
    )
        .prop_map(|(unit, division, from, steps, per_line, kind)| {
            let kind = match kind {
                0 if per_line <= from + steps => WrenchKind::Thimble {
                    main_division: f64::from(per_line) * division,
                },
                1 => WrenchKind::Digital,
                _ => WrenchKind::Dial,
            };
            let min = f64::from(from) * division;
            let max = f64::from(from + steps) * division;
            Wrench {
                name: String::new(),
                unit,
                min,
                max,
                division,
                kind,
                accuracy: 0.04,
            }
        })
        .prop_filter("larger than any wrench", |wrench| {
            wrench.unit.newton_metres() * wrench.max <= 15_000.0
        })
}

fn is_on_scale(range: RangeVerdict) -> bool {
    matches!(range, RangeVerdict::LowPart | RangeVerdict::Inside)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn a_setting_is_within_half_a_division_and_on_the_scale(wrench in sound_wrench(), share in 0.001f64..1.2) {
        prop_assert_eq!(wrench.check(), Ok(()));
        let wanted = wrench.max * share;
        let setting = wrench.setting(wrench.unit.torque(wanted)).expect("a sound wrench");
        prop_assert!((setting.value - wanted).abs() <= wrench.division * 0.500_001);
        prop_assert!((setting.value - wanted * (1.0 + setting.rounding)).abs() <= 1e-9 * wrench.max);
        let printed: f64 = setting.text().parse().expect("plain digits");
        prop_assert!((printed - setting.value).abs() <= 1e-9 * wrench.max);
        if is_on_scale(setting.range) {
            prop_assert!(setting.value >= wrench.min * (1.0 - 1e-9));
            prop_assert!(setting.value <= wrench.max * (1.0 + 1e-9));
        }
        if let Some(scale) = setting.scale {
            let told = scale.main + f64::from(scale.divisions) * scale.division;
            prop_assert!((told - setting.value).abs() <= 1e-9 * wrench.max, "{scale:?}");
            let WrenchKind::Thimble { main_division } = wrench.kind else { panic!("only a thimble has lines") };
            prop_assert!(f64::from(scale.divisions) * scale.division < main_division * (1.0 - 1e-9));
        }
    }

    #[test]
    fn a_setting_rises_with_its_target(wrench in sound_wrench(), a in 0.01f64..1.2, b in 0.01f64..1.2) {
        let value = |share: f64| wrench.setting(wrench.unit.torque(wrench.max * share)).map(|s| s.value);
        let (low, high) = (value(a.min(b)), value(a.max(b)));
        prop_assert!(low.expect("sound") <= high.expect("sound"));
    }

    #[test]
    fn a_band_is_met_where_a_division_lies_in_it(
        wrench in sound_wrench(),
        share in 0.1f64..1.0,
        up in 0.0f64..0.3,
        down in 0.0f64..0.3,
    ) {
        let target = wrench.max * share;
        let stated = TorqueStatement::tolerance(target, target * up, target * down, wrench.unit, 3);
        let setting = wrench.setting_for(&stated).expect("a sound wrench");
        // Every division here is a whole multiple, counted from the lowest mark.
        let count = |value: f64| (value - wrench.min) / wrench.division;
        let first = (count(stated.low.max(wrench.min)) - 1e-7).ceil();
        let last = (count(stated.high.min(wrench.max)) + 1e-7).floor();
        prop_assume!(first <= last && up + down > 1e-6);
        prop_assume!((first - count(stated.low)).abs() > 1e-6 && (last - count(stated.high)).abs() > 1e-6);
        prop_assert!(setting.inside(stated.band()), "{setting:?} {stated:?}");
    }

    #[test]
    fn the_chosen_wrench_has_the_target_on_its_scale(
        wrenches in proptest::collection::vec(sound_wrench(), 0..5),
        newton_metres in 0.01f64..500.0,
    ) {
        let target = TorqueUnit::NewtonMetre.torque(newton_metres);
        let fits = |wrench: &Wrench| wrench.setting(target).is_ok_and(|setting| is_on_scale(setting.range));
        match choose(&wrenches, target, None) {
            Some(i) => prop_assert!(fits(&wrenches[i])),
            None => prop_assert!(!wrenches.iter().any(fits)),
        }
    }

    #[test]
    fn no_numbers_at_all_make_nan_or_panic(
        min in proptest::num::f64::ANY,
        max in proptest::num::f64::ANY,
        division in proptest::num::f64::ANY,
        main_division in proptest::num::f64::ANY,
        accuracy in proptest::num::f64::ANY,
        target in proptest::num::f64::ANY,
    ) {
        let kind = WrenchKind::Thimble { main_division };
        let unit = TorqueUnit::OunceInch;
        let wrench = Wrench { name: String::new(), unit, min, max, division, kind, accuracy };
        if let Ok(setting) = wrench.setting(unit.torque(target)) {
            prop_assert!(setting.value.is_finite() && setting.rounding.is_finite());
        }
        let (target, other) = (unit.torque(target), unit.torque(max));
        let (l, e) = (LengthUnit::Millimetre.length(min), LengthUnit::Millimetre.length(division));
        if let Ok(set) = corrected_setting(target, l, e, AngleUnit::Degree.angle(accuracy)) {
            prop_assert!(set.get::<newton_meter>().is_finite());
        }
        if let Ok(nut) = prevailing_added(target, other) {
            prop_assert!(nut.torque.get::<newton_meter>().is_finite() && nut.share.is_finite());
        }
    }

    #[test]
    fn an_adapter_raises_the_setting_only_beyond_a_right_angle(
        length in 150.0f64..700.0,
        share in 0.01f64..0.7,
        degrees in 0.0f64..180.0,
        further in 0.0f64..30.0,
    ) {
        let target = TorqueUnit::NewtonMetre.torque(50.0);
        let (l, e) = (LengthUnit::Millimetre.length(length), LengthUnit::Millimetre.length(length * share));
        let at = |degrees: f64| {
            let set = corrected_setting(target, l, e, AngleUnit::Degree.angle(degrees)).expect("sound lengths");
            // The bolt gets the setting by the ratio of the levers, which is the target again.
            let back = set * (1.0 + share * degrees.to_radians().cos());
            assert!(((back / target).get::<uom::si::ratio::ratio>() - 1.0).abs() < 1e-12);
            TorqueUnit::NewtonMetre.value_of(set)
        };
        prop_assert_eq!(at(degrees) > 50.0 * (1.0 + 1e-12), degrees > 90.000_001);
        prop_assert!(at((degrees + further).min(180.0)) >= at(degrees) * (1.0 - 1e-12), "monotone in the angle");
    }
}
