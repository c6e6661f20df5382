//! Text and quantities: what is printed reads back as itself.

use halfcase::trade::pair::{Agreement, agree};
use halfcase::trade::quantity::{
    DecimalMark, LengthUnit, Stated, TemperatureUnit, TorqueStatement, TorqueUnit, Unit, choose, decimal,
    fixed, parse_deviation, parse_length, parse_temperature, parse_torque, parse_torques,
    print_inch_fraction, print_temperature, print_torque, rounded, shortest, significant, trimmed,
};
use proptest::prelude::*;
use proptest::sample::select;

fn torque_unit() -> impl Strategy<Value = TorqueUnit> {
    select(&TorqueUnit::ALL[..])
}

/// A number as printed: some thousandths, shown with as few or as many decimals as asked.
fn printed(range: std::ops::Range<u32>) -> impl Strategy<Value = (f64, u8)> {
    (range, 0u8..=3)
        .prop_map(|(count, decimals)| (f64::from(count) / 10f64.powi(i32::from(decimals)), decimals))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn a_printed_torque_reads_back_to_its_printed_digits(
        newton_metres in 0.01f64..15_000.0,
        unit in torque_unit(),
        figures in 1u32..=7,
    ) {
        let text = print_torque(TorqueUnit::NewtonMetre.torque(newton_metres), unit, figures);
        let read = parse_torque(&text.to_string(), None).expect("what is printed is read");
        prop_assert_eq!(read.unit, unit);
        prop_assert_eq!(fixed(read.target, read.decimals), text.number.clone());
        prop_assert_eq!(print_torque(read.torque(), unit, figures).number, text.number);
        // And the digits are right: within half a unit of the last figure.
        let value = newton_metres / unit.newton_metres();
        let off = (read.target - value).abs() / value;
        prop_assert!(off <= 0.5 * 10f64.powi(1 - figures as i32) * 1.000_001, "{off}");
    }

    #[test]
    fn a_statement_reads_back_as_itself(
        (value, decimals) in printed(1..20_000),
        (up, _) in printed(1..900),
        (down, _) in printed(0..900),
        unit in torque_unit(),
        form in 0..4,
    ) {
        let statement = match form {
            0 => TorqueStatement::single(value, unit, decimals),
            1 => TorqueStatement::range(value, value + up.ceil(), unit, decimals),
            2 => TorqueStatement::tolerance(value, up, up, unit, decimals),
            _ => TorqueStatement::tolerance(value, up, down, unit, decimals),
        };
        prop_assume!(statement.check().is_ok());
        let read = parse_torque(&statement.text(), None).expect("what is printed is read");
        prop_assert_eq!(read.text(), statement.text());
        prop_assert_eq!((read.unit, read.form, read.decimals), (unit, statement.form, decimals));
        for (got, wanted) in [(read.low, statement.low), (read.target, statement.target), (read.high, statement.high)]
        {
            prop_assert!((got - wanted).abs() <= 1e-9 * wanted, "{got} {wanted}");
        }
        let stored = serde_json::to_string(&statement).expect("plain numbers");
        let loaded: TorqueStatement = serde_json::from_str(&stored).expect("its own text");
        prop_assert_eq!(loaded.text(), statement.text());
        let twice = format!("{} ({})", statement.text(), statement.text());
        prop_assert_eq!(parse_torques(&twice, None).map(|list| list.len()), Ok(2));
    }

    /// With either mark a printed number is read back as the same value, and the comma's text is the point's but
    /// for its mark; also where a comma might part thousands.
    #[test]
    fn either_mark_reads_back(value in -9_999.0f64..9_999.0, decimals in 0u8..=6, figures in 1u32..=12) {
        choose(DecimalMark::Point);
        let point = [fixed(value, decimals), significant(value, figures), trimmed(value, figures), rounded(value, decimals), shortest(value)];
        choose(DecimalMark::Comma);
        let comma = [fixed(value, decimals), significant(value, figures), trimmed(value, figures), rounded(value, decimals), shortest(value)];
        for (point, comma) in point.iter().zip(&comma) {
            prop_assert_eq!(&point.replace('.', ","), comma);
            prop_assert_eq!(decimal(point), decimal(comma));
            prop_assert!(decimal(comma).is_some());
            prop_assert_eq!(Stated::typed(point), Stated::typed(comma));
        }
        let length = format!("{} mm", fixed(value, 3));
        let read = parse_deviation(&length, None);
        prop_assert!(read.is_ok(), "{}", length);
        prop_assert_eq!(read.map(|read| read.text()), Ok(length));
        choose(DecimalMark::Point);
    }

    #[test]
    fn spaces_commas_and_case_change_nothing((value, decimals) in printed(1..200_000), unit in torque_unit()) {
        prop_assume!(decimals != 3 && TorqueStatement::single(value, unit, 0).check().is_ok());
        let plain = format!("{} {}", fixed(value, decimals), unit.symbol());
        let wanted = parse_torque(&plain, None);
        prop_assert!(wanted.is_ok());
        for text in [
            plain.replace('.', ","),
            plain.replace(' ', ""),
            plain.to_uppercase(),
            plain.replace('·', "-"),
            plain.replace('·', ""),
            format!("  {}\t", plain.replace(' ', "\u{2009}")),
        ] {
            prop_assert_eq!(parse_torque(&text, None), wanted.clone(), "{}", text);
        }
    }

    #[test]
    fn other_quantities_read_back_to_their_printed_digits(value in 0.001f64..4000.0, figures in 1u32..=6) {
        for unit in LengthUnit::ALL {
            let number = significant(unit.value_of(LengthUnit::Millimetre.length(value)), figures);
            let text = format!("{number} {}", unit.symbol());
            let read = parse_length(&text, None).expect("what is printed is read");
            prop_assert_eq!(fixed(read.value, read.decimals), number);
            prop_assert_eq!(read.text(), text.clone());
            let below = parse_deviation(&format!("−{text}"), None).expect("a deviation may be negative");
            prop_assert_eq!(below.value, -read.value);
        }
    }

    #[test]
    fn temperatures_read_back(celsius in -273.0f64..999.0, decimals in 0u8..=3) {
        for unit in TemperatureUnit::ALL {
            let text = print_temperature(TemperatureUnit::Celsius.temperature(celsius), unit, decimals);
            let read = parse_temperature(&text.to_string(), None).expect("what is printed is read");
            prop_assert_eq!(read.text(), text.to_string());
            let back = TemperatureUnit::Celsius.value_of(read.temperature());
            prop_assert!((back - celsius).abs() <= 0.5 * 10f64.powi(-i32::from(decimals)) + 1e-9);
        }
    }

    #[test]
    fn every_64th_of_an_inch_reads_back(parts in 1u32..25_000) {
        let length = LengthUnit::Inch.length(f64::from(parts) / 64.0);
        let text = print_inch_fraction(length).expect("a 64th");
        let read = parse_length(&text.to_string(), None).expect("what is printed is read");
        prop_assert_eq!(read.value * 64.0, f64::from(parts));
    }

    #[test]
    fn significant_figures_match_the_machine_s_own(value in proptest::num::f64::NORMAL, figures in 1u32..=15) {
        let text = significant(value, figures);
        prop_assert!(!text.contains('e'));
        let read: f64 = text.replace('−', "-").parse().expect("plain digits");
        let wanted: f64 = format!("{:.*e}", figures as usize - 1, value).parse().expect("its own text");
        prop_assert!(read == wanted, "{text}");
    }

    #[test]
    fn a_conversion_printed_at_three_figures_agrees(
        newton_metres in 0.1f64..2000.0,
        one in torque_unit(),
        other in torque_unit(),
    ) {
        let torque = TorqueUnit::NewtonMetre.torque(newton_metres);
        let read = |unit| parse_torque(&print_torque(torque, unit, 3).to_string(), None).expect("printed");
        prop_assert_eq!(agree(&read(one), &read(other)), Agreement::Agree);
    }

    #[test]
    fn a_swapped_unit_is_found_at_three_figures(
        newton_metres in 1.0f64..900.0,
        one in torque_unit(),
        other in torque_unit(),
        wrong in torque_unit(),
    ) {
        // Two figures or more after rounding, so that the roundings leave room to tell.
        prop_assume!(wrong != other);
        let torque = TorqueUnit::NewtonMetre.torque(newton_metres);
        let read = |unit| parse_torque(&print_torque(torque, unit, 3).to_string(), None).expect("printed");
        let slipped = TorqueStatement { unit: wrong, ..read(other) };
        prop_assume!(slipped.check().is_ok());
        match agree(&read(one), &slipped) {
            Agreement::Differ { likely, .. } => {
                let offers = |unit| likely.iter().any(|reading| reading.statement.unit == unit);
                prop_assert!(offers(other), "{likely:?}");
            }
            answer => prop_assert!(false, "{answer:?}"),
        }
    }

    #[test]
    fn base_and_value_are_inverse(value in -1e6f64..1e6) {
        for unit in TorqueUnit::ALL {
            prop_assert!((unit.value_of(unit.torque(value)) - value).abs() <= 1e-9 * value.abs());
            prop_assert!((unit.base(value) - value * unit.newton_metres()).abs() <= 1e-9 * value.abs() * 10.0);
        }
    }
}
