//! One text for each refusal, and the whole sentence it is answered with.

use halfcase::trade::quantity::{
    LengthUnit, TemperatureUnit, TorqueUnit, parse_angle, parse_deviation, parse_length, parse_temperature,
    parse_torque, parse_torques,
};

const UNITS: &str = "N·m, ft·lb, in·lb, kgf·m, kgf·cm or oz·in";

#[test]
fn torques() {
    for (text, sentence) in [
        ("", "Nothing typed: enter a number and its unit, such as 9 N·m."),
        ("  ", "Nothing typed: enter a number and its unit, such as 9 N·m."),
        ("x9 N·m", "“x9” is not a number: use digits and one point."),
        ("9 ± N·m", "“N·m” is not a number: use digits and one point."),
        ("9–", "The text ends where a number belongs, such as 9 or 7.2."),
        ("9", &format!("The unit is missing; add {UNITS}.")),
        (
            "9 bananas",
            &format!("“bananas” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 kg/cm",
            &format!("“kg/cm” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 kgcm²",
            &format!("“kgcm²” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 mN·m",
            &format!("“mN·m” is not a unit read here; write {UNITS}."),
        ),
        ("1,200 N·m", "The comma can be read two ways; type 1.200 or 1200."),
        (
            "1,250.5 in·lb",
            "A number has one decimal point or comma; leave out the other.",
        ),
        (
            "7.2.5 N·m",
            "A number has one decimal point or comma; leave out the other.",
        ),
        (
            "9.1234567890123 N·m",
            "Too many digits; type at most 15, and at most 12 after the point.",
        ),
        (
            "1234567890123456 N·m",
            "Too many digits; type at most 15, and at most 12 after the point.",
        ),
        ("-9 N·m", "Leave out the minus sign: a torque is not negative."),
        ("0 N·m", "Type a value above zero: a torque of zero says nothing."),
        (
            "0.0 ft·lb",
            "Type a value above zero: a torque of zero says nothing.",
        ),
        (
            "20 001 N·m",
            "This is more than 20 000 N·m, and no thread up to M24 takes a tenth of that; check the \
             unit and the decimal point.",
        ),
        (
            "12–9 N·m",
            "The second number of a range must be above the first; type the low end first.",
        ),
        (
            "9–9 N·m",
            "The second number of a range must be above the first; type the low end first.",
        ),
        (
            "9–0 N·m",
            "The second number of a range must be above the first; type the low end first.",
        ),
        (
            "9 ± 9 N·m",
            "The tolerance reaches down to zero; type one that is smaller than the value.",
        ),
        (
            "9 N·m – 12 ft·lb",
            "This unit differs from the one before; give one value in one unit.",
        ),
        ("9 N·m (6.6 ft·lb)", "“(6.6” is not expected here; leave it out."),
        ("9–12 % N·m", "“%” is not expected here; leave it out."),
        ("9 N·m 9", "“9” is not expected here; leave it out."),
        (
            "1e3 N·m",
            &format!("“e3” is not a unit read here; write {UNITS}."),
        ),
        ("12 34 N·m", &format!("The unit is missing; add {UNITS}.")),
    ] {
        assert_eq!(
            parse_torque(text, None).map_err(|error| error.to_string()),
            Err(sentence.to_owned()),
            "{text}"
        );
    }
    assert!(parse_torque("9 bananas", Some(TorqueUnit::NewtonMetre)).is_err());
    // The limit itself is read; in another unit it is the same torque.
    assert!(parse_torque("20 000 N·m", None).is_ok());
    assert!(parse_torque("14 750 ft·lb", None).is_ok());
    assert!(parse_torque("14 760 ft·lb", None).is_err());
}

#[test]
fn several_in_one_text() {
    let nine = ["9 N·m"; 9].join(", ");
    for (text, sentence) in [
        (&*nine, "Too many values in one text; give at most 8."),
        ("14 N·m (10.3)", &format!("The unit is missing; add {UNITS}.")),
        ("14 N·m 10 ft·lb", "“10” is not expected here; leave it out."),
        ("14 N·m (x)", "“x)” is not a number: use digits and one point."),
    ] {
        let read = parse_torques(text, Some(TorqueUnit::NewtonMetre));
        assert_eq!(
            read.map_err(|error| error.to_string()),
            Err(sentence.to_owned()),
            "{text}"
        );
    }
}

#[test]
fn other_quantities() {
    let mm = |text| {
        parse_length(text, Some(LengthUnit::Millimetre))
            .map(|_| ())
            .map_err(|e| e.to_string())
    };
    let um = |text| {
        parse_deviation(text, Some(LengthUnit::Micrometre))
            .map(|_| ())
            .map_err(|e| e.to_string())
    };
    let celsius = |text| {
        parse_temperature(text, Some(TemperatureUnit::Celsius))
            .map(|_| ())
            .map_err(|e| e.to_string())
    };
    let degrees = |text| parse_angle(text).map(|_| ()).map_err(|e| e.to_string());
    let check = "check the unit and the decimal point.";
    let inches = "This fraction is not read; halves to 64ths of an inch are, such as 1 3/8 in.";
    for (answer, sentence) in [
        (
            mm(""),
            "Nothing typed: enter a number and its unit, such as 62 mm.".to_owned(),
        ),
        (
            mm("0"),
            "Type a value above zero: a length of zero says nothing.".to_owned(),
        ),
        (
            mm("-5 mm"),
            "Leave out the minus sign: a length is not negative.".to_owned(),
        ),
        (
            mm("1,200"),
            "The comma can be read two ways; type 1.200 or 1200.".to_owned(),
        ),
        (
            mm("10 001"),
            format!("This is more than 10 m, and no part on a bench is so long; {check}"),
        ),
        (mm("3/8 mm"), inches.to_owned()),
        (mm("3/7 in"), inches.to_owned()),
        (mm("3/128 in"), inches.to_owned()),
        (
            mm("9/8 in"),
            "This fraction is not read; type one such as 3/8 or 1 3/8.".to_owned(),
        ),
        (
            mm("3/0 in"),
            "This fraction is not read; type one such as 3/8 or 1 3/8.".to_owned(),
        ),
        (
            mm("62 furlongs"),
            "“furlongs” is not a unit read here; write mm, µm, cm, in or thou.".to_owned(),
        ),
        (
            mm("62 mm 5"),
            "“5” is not expected here; leave it out.".to_owned(),
        ),
        (
            um("-10 000 001"),
            "This is less than −10 m, and no part on a bench is so far off; check the unit and the \
             sign."
                .to_owned(),
        ),
        (
            celsius("-274"),
            "This is less than −273.15 °C, and nothing is colder; check the unit and the sign.".to_owned(),
        ),
        (
            celsius("1 001"),
            format!("This is more than 1 000 °C, and steel glows long before; {check}"),
        ),
        (
            degrees("361"),
            format!("This is more than 360°, and no stage goes past a full turn; {check}"),
        ),
        (
            degrees("-5"),
            "Leave out the minus sign: an angle is not negative.".to_owned(),
        ),
        (
            degrees("1/5 turn"),
            "This fraction is not read; halves, thirds, quarters, sixths, eighths and twelfths of a \
             turn are, such as 1/4 turn."
                .to_owned(),
        ),
    ] {
        assert_eq!(answer, Err(sentence));
    }
    // The limits themselves are read.
    for answer in [
        mm("10 000"),
        mm("393.7 in"),
        um("-10 000 000"),
        celsius("1 000"),
        celsius("-273.15"),
        degrees("360"),
    ] {
        assert_eq!(answer, Ok(()));
    }
}
