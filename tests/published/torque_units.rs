//! The six torque units.

use halfcase::trade::quantity::{TorqueUnit, parse_torque, print_torque};
use rink_core::ast::Expr;
use rink_core::parsing::text_query::{TokenIterator, parse_expr};
use rink_core::{Context, Value, simple_context};

fn close(got: f64, wanted: f64, slack: f64) {
    assert!(
        (got - wanted).abs() <= slack,
        "got {got}, wanted {wanted} ± {slack}"
    );
}

#[test]
fn nist_sp_811_factors() {
    // NIST SP 811 (2008), appendix B.8, from memory; half a unit of the last printed digit. The
    // kilogram-force centimetre is a hundredth of the metre row.
    for (unit, newton_metres, half_digit) in [
        (TorqueUnit::NewtonMetre, 1.0, 0.0),
        (TorqueUnit::PoundFoot, 1.355_818, 0.5e-6),
        (TorqueUnit::PoundInch, 0.112_984_8, 0.5e-7),
        (TorqueUnit::OunceInch, 7.061_552e-3, 0.5e-9),
        (TorqueUnit::KilogramMetre, 9.806_65, 1e-15),
        (TorqueUnit::KilogramCentimetre, 0.098_066_5, 1e-16),
    ] {
        close(unit.newton_metres(), newton_metres, half_digit);
    }
}

fn in_newton_metres(context: &Context, unit: &str) -> f64 {
    let expression: Expr =
        parse_expr(&mut TokenIterator::new(&format!("{unit} / (newton * meter)")).peekable());
    match context.eval(&expression) {
        Ok(Value::Number(number)) if number.dimless() => number.value.to_f64(),
        _ => panic!("{unit} is not a torque there"),
    }
}

#[test]
fn a_library_of_other_origin_agrees_on_all_six() {
    // rink-core carries its own table of units, kept as exact fractions.
    let context = simple_context().expect("rink's bundled units load");
    for (unit, theirs) in [
        (TorqueUnit::NewtonMetre, "newton * meter"),
        (TorqueUnit::PoundFoot, "lbf * foot"),
        (TorqueUnit::PoundInch, "lbf * inch"),
        (TorqueUnit::KilogramMetre, "kgf * meter"),
        (TorqueUnit::KilogramCentimetre, "kgf * centimeter"),
        (TorqueUnit::OunceInch, "ounce * gravity * inch"),
    ] {
        let wanted = in_newton_metres(&context, theirs);
        close(unit.newton_metres(), wanted, 4e-16 * wanted);
    }
}

#[test]
fn two_facts_of_the_trade() {
    // Common practice, no source: 10 N·m is about 88.5 in·lb.
    let ten = TorqueUnit::NewtonMetre.torque(10.0);
    assert_eq!(
        print_torque(ten, TorqueUnit::PoundInch, 3).to_string(),
        "88.5 in·lb"
    );
    // Common practice, no source: 8.7 ft·lb is the 12 N·m of a metric manual, within its rounding.
    let stated = parse_torque("8.7 ft-lb", None).expect("a plain torque");
    let newton_metres = TorqueUnit::NewtonMetre.value_of(stated.torque());
    close(newton_metres, 12.0, 0.5);
    let twelve = TorqueUnit::NewtonMetre.torque(12.0);
    close(TorqueUnit::PoundFoot.value_of(twelve), 8.7, 0.2);
}

#[test]
fn whole_ratios_between_units() {
    // By definition: 12 inches a foot, 16 ounces a pound, 100 centimetres a metre.
    for (large, small, ratio) in [
        (TorqueUnit::PoundFoot, TorqueUnit::PoundInch, 12.0),
        (TorqueUnit::PoundInch, TorqueUnit::OunceInch, 16.0),
        (TorqueUnit::KilogramMetre, TorqueUnit::KilogramCentimetre, 100.0),
    ] {
        close(small.value_of(large.torque(1.0)), ratio, 1e-12);
    }
}

/// The wrench's own deviation as ISO 6789-1 prints it (from memory): ±6 % up to 10 N·m, ±4 % above. In N·m worked by
/// hand.
#[test]
fn a_deviation_in_percent_is_of_the_first_number() {
    for (text, low, high) in [
        ("10 N·m ± 6 %", 9.4, 10.6),
        ("200 N·m ± 4 %", 192.0, 208.0),
        ("200 ± 4 % N·m", 192.0, 208.0),
        ("150 N·m +10 % / −5 %", 142.5, 165.0),
    ] {
        let read = parse_torque(text, None).unwrap_or_else(|why| panic!("{text}: {why}"));
        close(read.low, low, 1e-9);
        close(read.high, high, 1e-9);
    }
}
