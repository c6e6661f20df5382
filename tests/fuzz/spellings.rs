//! The ways people write a torque, a length and the rest: one line each.

use halfcase::trade::quantity::TorqueUnit::{
    KilogramCentimetre, KilogramMetre, NewtonMetre, OunceInch, PoundFoot, PoundInch,
};
use halfcase::trade::quantity::{
    AngleUnit, LengthUnit, TemperatureUnit, parse_angle, parse_deviation, parse_length, parse_temperature,
    parse_torque, parse_torques,
};

#[test]
fn torques() {
    for (text, value, unit, decimals) in [
        ("9 N·m", 9.0, NewtonMetre, 0),
        ("9Nm", 9.0, NewtonMetre, 0),
        ("9 N.m", 9.0, NewtonMetre, 0),
        ("9 N.m.", 9.0, NewtonMetre, 0),
        ("9 N m", 9.0, NewtonMetre, 0),
        ("9 N-m", 9.0, NewtonMetre, 0),
        ("9 n*m", 9.0, NewtonMetre, 0),
        ("9 N⋅m", 9.0, NewtonMetre, 0),
        ("9 newton metres", 9.0, NewtonMetre, 0),
        ("9 Newton-meters", 9.0, NewtonMetre, 0),
        ("9.50 N·m", 9.5, NewtonMetre, 2),
        (".5 N·m", 0.5, NewtonMetre, 1),
        ("7. N·m", 7.0, NewtonMetre, 0),
        ("7.2 ft-lb", 7.2, PoundFoot, 1),
        ("7,2 ft lbs", 7.2, PoundFoot, 1),
        ("7.2 ft.-lbs.", 7.2, PoundFoot, 1),
        ("7.2 lb·ft", 7.2, PoundFoot, 1),
        ("7.2 lbf·ft", 7.2, PoundFoot, 1),
        ("7.2 lbf ft", 7.2, PoundFoot, 1),
        ("7.2 FT/LBS", 7.2, PoundFoot, 1),
        ("7.2 foot-pounds", 7.2, PoundFoot, 1),
        ("7.2 pound feet", 7.2, PoundFoot, 1),
        ("86 inlb", 86.0, PoundInch, 0),
        ("86 in-lbs", 86.0, PoundInch, 0),
        ("86 in. lbs.", 86.0, PoundInch, 0),
        ("86 lbf·in", 86.0, PoundInch, 0),
        ("86 inch pounds", 86.0, PoundInch, 0),
        ("1.2 kgf-m", 1.2, KilogramMetre, 1),
        ("1,2 kgm", 1.2, KilogramMetre, 1),
        ("1.20 kg-m", 1.2, KilogramMetre, 2),
        ("1.2 mkg", 1.2, KilogramMetre, 1),
        ("1.200 kgf·m", 1.2, KilogramMetre, 3),
        ("120 kgf·cm", 120.0, KilogramCentimetre, 0),
        ("120 kg-cm", 120.0, KilogramCentimetre, 0),
        ("120 cmkg", 120.0, KilogramCentimetre, 0),
        ("64 oz·in", 64.0, OunceInch, 0),
        ("64 ozf-in", 64.0, OunceInch, 0),
        ("64 in-oz", 64.0, OunceInch, 0),
        // A space of any kind may part thousands.
        ("1 200 in·lb", 1200.0, PoundInch, 0),
        ("1\u{2009}200 in·lb", 1200.0, PoundInch, 0),
        ("1\u{202f}200,5 in·lb", 1200.5, PoundInch, 1),
        // Thousands are beyond any torque here, so the comma can only be a decimal comma.
        ("62,005 N·m", 62.005, NewtonMetre, 3),
        ("0,125 N·m", 0.125, NewtonMetre, 3),
    ] {
        let read = parse_torque(text, None).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(
            (read.target, read.unit, read.decimals),
            (value, unit, decimals),
            "{text}"
        );
        assert_eq!((read.low, read.high), (value, value), "{text}");
    }
    assert_eq!(
        parse_torque("9", Some(PoundFoot)).map(|read| read.unit),
        Ok(PoundFoot)
    );
    assert_eq!(
        parse_torque("9 N·m", Some(PoundFoot)).map(|read| read.unit),
        Ok(NewtonMetre)
    );
}

#[test]
fn ranges_and_tolerances() {
    for (text, low, target, high, printed) in [
        ("9–12 N·m", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9-12Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9 - 12 Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9 to 12 Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9 Nm to 12 Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9..12 Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9…12 Nm", 9.0, 10.5, 12.0, "9–12 N·m"),
        ("9,0 – 12,5 Nm", 9.0, 10.75, 12.5, "9.0–12.5 N·m"),
        ("9 ± 1 Nm", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9±1Nm", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9 +/- 1 Nm", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9 +-1 Nm", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9 Nm ± 1", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9 Nm ± 1 Nm", 8.0, 9.0, 10.0, "9 ± 1 N·m"),
        ("9 Nm ± 10 %", 8.1, 9.0, 9.9, "9 ± 0.9 N·m"),
        ("9 +2/-0 Nm", 9.0, 9.0, 11.0, "9 +2/−0 N·m"),
        ("9 +2/−0 Nm", 9.0, 9.0, 11.0, "9 +2/−0 N·m"),
        ("9 +2 -1 Nm", 8.0, 9.0, 11.0, "9 +2/−1 N·m"),
        ("9 Nm +2/-1", 8.0, 9.0, 11.0, "9 +2/−1 N·m"),
        ("9 -1/+2 Nm", 8.0, 9.0, 11.0, "9 +2/−1 N·m"),
        ("9 -0 +2 Nm", 9.0, 9.0, 11.0, "9 +2/−0 N·m"),
        ("9 +2 Nm", 9.0, 9.0, 11.0, "9 +2/−0 N·m"),
        ("9 +10 %/-5 % Nm", 8.55, 9.0, 9.9, "9 +0.9/−0.45 N·m"),
    ] {
        let read = parse_torque(text, None).unwrap_or_else(|error| panic!("{text}: {error}"));
        for (got, wanted) in [(read.low, low), (read.target, target), (read.high, high)] {
            assert!((got - wanted).abs() < 1e-12, "{text}: {read:?}");
        }
        assert_eq!(read.text(), printed, "{text}");
    }
}

#[test]
fn several_in_one_text() {
    for (text, printed) in [
        ("14 N·m (10.3 ft·lb)", vec!["14 N·m", "10.3 ft·lb"]),
        (
            "5 N·m (0.5 kgf·m, 3.7 ft·lb)",
            vec!["5 N·m", "0.5 kgf·m", "3.7 ft·lb"],
        ),
        ("12 N·m / 8.7 ft-lb", vec!["12 N·m", "8.7 ft·lb"]),
        ("12 N·m = 106 in-lb", vec!["12 N·m", "106 in·lb"]),
        ("9–12 N·m [80–106 in·lb]", vec!["9–12 N·m", "80–106 in·lb"]),
        ("9 ± 1 N·m; 80 ± 9 in·lb", vec!["9 ± 1 N·m", "80 ± 9 in·lb"]),
        ("12 (8.7 ft·lb)", vec!["12 N·m", "8.7 ft·lb"]),
        ("12", vec!["12 N·m"]),
    ] {
        let read = parse_torques(text, Some(NewtonMetre)).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(
            read.iter().map(|one| one.text()).collect::<Vec<_>>(),
            printed,
            "{text}"
        );
    }
}

#[test]
fn lengths() {
    use LengthUnit::{Centimetre, Inch, Micrometre, Millimetre, Thou};
    for (text, value, unit) in [
        ("62 mm", 62.0, Millimetre),
        ("62mm", 62.0, Millimetre),
        ("62,005 mm", 62.005, Millimetre),
        ("25 µm", 25.0, Micrometre),
        ("25 μm", 25.0, Micrometre),
        ("25 um", 25.0, Micrometre),
        ("2.5 cm", 2.5, Centimetre),
        ("1.375 in", 1.375, Inch),
        ("1 3/8 in", 1.375, Inch),
        ("1 3/8 inches", 1.375, Inch),
        ("3/8\"", 0.375, Inch),
        ("1⅜″", 1.375, Inch),
        ("40 thou", 40.0, Thou),
        ("7", 7.0, Millimetre),
    ] {
        let read = parse_length(text, Some(Millimetre)).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!((read.value, read.unit), (value, unit), "{text}");
    }
    for (text, value) in [
        ("-9", -9.0),
        ("−9 µm", -9.0),
        ("+12", 12.0),
        ("0", 0.0),
        ("– 9 µm", -9.0),
    ] {
        let read = parse_deviation(text, Some(Micrometre)).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!((read.value, read.unit), (value, Micrometre), "{text}");
    }
    assert_eq!(
        parse_length("3/8", Some(Inch)).map(|read| (read.value, read.decimals)),
        Ok((0.375, 3))
    );
}

#[test]
fn temperatures_masses_and_angles() {
    use TemperatureUnit::{Celsius, Fahrenheit, Kelvin};
    for (text, value, unit) in [
        ("20 °C", 20.0, Celsius),
        ("20C", 20.0, Celsius),
        ("20 ºC", 20.0, Celsius),
        ("20 ℃", 20.0, Celsius),
        ("20 deg C", 20.0, Celsius),
        ("−18", -18.0, Celsius),
        ("68 °F", 68.0, Fahrenheit),
        ("293,15 K", 293.15, Kelvin),
    ] {
        let read = parse_temperature(text, Some(Celsius)).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!((read.value, read.unit), (value, unit), "{text}");
    }
    for (text, value, unit) in [
        ("90°", 90.0, AngleUnit::Degree),
        ("90 deg", 90.0, AngleUnit::Degree),
        ("0", 0.0, AngleUnit::Degree),
        ("1/4 turn", 0.25, AngleUnit::Turn),
        ("¾ turn", 0.75, AngleUnit::Turn),
        ("1/12 turn", 1.0 / 12.0, AngleUnit::Turn),
    ] {
        let read = parse_angle(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!((read.value, read.unit), (value, unit), "{text}");
    }
}
