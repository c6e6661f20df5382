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
        (
            "x9 N·m",
            "Character 1: a number was expected, such as 9 or 7.2, and “x” found.",
        ),
        (
            "9 ± N·m",
            "Character 5: a number was expected, such as 9 or 7.2, and “N” found.",
        ),
        (
            "9–",
            "Character 3: a number was expected, such as 9 or 7.2, and the text ends.",
        ),
        ("9", &format!("Character 2: the unit is missing; add {UNITS}.")),
        (
            "9 bananas",
            &format!("Character 3: “bananas” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 kg/cm",
            &format!("Character 3: “kg/cm” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 kgcm²",
            &format!("Character 3: “kgcm²” is not a unit read here; write {UNITS}."),
        ),
        (
            "9 mN·m",
            &format!("Character 3: “mN·m” is not a unit read here; write {UNITS}."),
        ),
        (
            "1,200 N·m",
            "Character 2: the comma can be read two ways; type 1.200 or 1200.",
        ),
        (
            "1,250.5 in·lb",
            "Character 6: a number has one decimal point or comma; leave out the other.",
        ),
        (
            "7.2.5 N·m",
            "Character 4: a number has one decimal point or comma; leave out the other.",
        ),
        (
            "9.1234567890123 N·m",
            "Character 1: too many digits; type at most 15, and at most 12 after the point.",
        ),
        (
            "1234567890123456 N·m",
            "Character 1: too many digits; type at most 15, and at most 12 after the point.",
        ),
        (
            "-9 N·m",
            "Character 1: a torque is not negative; leave out the minus sign.",
        ),
        (
            "0 N·m",
            "Character 1: a torque of zero says nothing; type a value above zero.",
        ),
        (
            "0.0 ft·lb",
            "Character 1: a torque of zero says nothing; type a value above zero.",
        ),
        (
            "20 001 N·m",
            "Character 1: this is more than 20 000 N·m, and no thread up to M24 takes a tenth of that; check the \
             unit and the decimal point.",
        ),
        (
            "12–9 N·m",
            "Character 4: the second number of a range must be above the first; type the low end first.",
        ),
        (
            "9–9 N·m",
            "Character 3: the second number of a range must be above the first; type the low end first.",
        ),
        (
            "9–0 N·m",
            "Character 3: the second number of a range must be above the first; type the low end first.",
        ),
        (
            "9 ± 9 N·m",
            "Character 3: the tolerance reaches down to zero; type one that is smaller than the value.",
        ),
        (
            "9 N·m – 12 ft·lb",
            "Character 12: this unit differs from the one before; give one value in one unit.",
        ),
        (
            "9 N·m (6.6 ft·lb)",
            "Character 7: nothing more was expected here, and “(6.6” found; leave it out.",
        ),
        (
            "9–12 % N·m",
            "Character 6: nothing more was expected here, and “%” found; leave it out.",
        ),
        (
            "9 N·m 9",
            "Character 7: nothing more was expected here, and “9” found; leave it out.",
        ),
        (
            "1e3 N·m",
            &format!("Character 2: “e3” is not a unit read here; write {UNITS}."),
        ),
        (
            "12 34 N·m",
            &format!("Character 4: the unit is missing; add {UNITS}."),
        ),
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
        (
            &*nine,
            "Character 57: too many values in one text; give at most 8.",
        ),
        (
            "14 N·m (10.3)",
            &format!("Character 13: the unit is missing; add {UNITS}."),
        ),
        (
            "14 N·m 10 ft·lb",
            "Character 8: nothing more was expected here, and “10” found; leave it out.",
        ),
        (
            "14 N·m (x)",
            "Character 9: a number was expected, such as 9 or 7.2, and “x” found.",
        ),
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
    let inches = "this fraction is not read; halves to 64ths of an inch are, such as 1 3/8 in.";
    for (answer, sentence) in [
        (mm(""), "Nothing typed: enter a number and its unit, such as 62 mm.".to_owned()),
        (mm("0"), "Character 1: a length of zero says nothing; type a value above zero.".to_owned()),
        (mm("-5 mm"), "Character 1: a length is not negative; leave out the minus sign.".to_owned()),
        (mm("1,200"), "Character 2: the comma can be read two ways; type 1.200 or 1200.".to_owned()),
        (mm("10 001"), format!("Character 1: this is more than 10 m, and no part on a bench is so long; {check}")),
        (mm("3/8 mm"), format!("Character 1: {inches}")),
        (mm("3/7 in"), format!("Character 1: {inches}")),
        (mm("3/128 in"), format!("Character 1: {inches}")),
        (mm("9/8 in"), "Character 1: this fraction is not read; type one such as 3/8 or 1 3/8.".to_owned()),
        (mm("3/0 in"), "Character 1: this fraction is not read; type one such as 3/8 or 1 3/8.".to_owned()),
        (mm("62 furlongs"), "Character 4: “furlongs” is not a unit read here; write mm, µm, cm, in or thou.".to_owned()),
        (mm("62 mm 5"), "Character 7: nothing more was expected here, and “5” found; leave it out.".to_owned()),
        (
            um("-10 000 001"),
            "Character 2: this is less than −10 m, and no part on a bench is so far off; check the unit and the \
             sign."
                .to_owned(),
        ),
        (
            celsius("-274"),
            "Character 2: this is less than −273.15 °C, and nothing is colder; check the unit and the sign.".to_owned(),
        ),
        (celsius("1 001"), format!("Character 1: this is more than 1 000 °C, and steel glows long before; {check}")),
        (degrees("361"), format!("Character 1: this is more than 360°, and no stage goes past a full turn; {check}")),
        (degrees("-5"), "Character 1: an angle is not negative; leave out the minus sign.".to_owned()),
        (
            degrees("1/5 turn"),
            "Character 1: this fraction is not read; halves, thirds, quarters, sixths, eighths and twelfths of a \
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
