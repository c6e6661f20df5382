//! Lengths, masses, temperatures and angles.

use halfcase::trade::quantity::{
    Length, LengthUnit, Mass, MassUnit, TemperatureUnit, ThermodynamicTemperature, convert, parse_angle,
    parse_length, parse_temperature, print_inch_fraction, print_mass, print_temperature,
};
use uom::si::angle::{degree, radian};
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

fn close(got: f64, wanted: f64) {
    assert!(
        (got - wanted).abs() <= 1e-12 * wanted.abs().max(1.0),
        "got {got}, wanted {wanted}"
    );
}

#[test]
fn lengths_by_definition() {
    // International yard and pound agreement, 1959: 1 in = 25.4 mm.
    for (unit, metres) in [
        (LengthUnit::Millimetre, 0.001),
        (LengthUnit::Micrometre, 0.000_001),
        (LengthUnit::Centimetre, 0.01),
        (LengthUnit::Inch, 0.0254),
        (LengthUnit::Thou, 0.000_025_4),
    ] {
        close(unit.length(1.0).get::<meter>() / metres, 1.0);
        close(unit.value_of(Length::new::<meter>(metres)), 1.0);
    }
}

#[test]
fn inch_fractions_in_millimetres() {
    // Inch-millimetre tables: 1/64 in is 0.396 875 mm, 3/8 is 9.525, 1 3/8 is 34.925.
    for (text, millimetres) in [
        ("1/64 in", 0.396_875),
        ("3/8\"", 9.525),
        ("1 3/8 in", 34.925),
        ("1-3/8 in", 34.925),
        ("1½ in", 38.1),
        ("⅞ in", 22.225),
        ("63/64 in", 25.003_125),
    ] {
        let length = parse_length(text, None).map(|typed| typed.length().get::<millimeter>());
        close(length.expect(text), millimetres);
    }
    for (millimetres, text) in [
        (9.525, "3/8 in"),
        (34.925, "1 3/8 in"),
        (50.8, "2 in"),
        (0.396_875, "1/64 in"),
    ] {
        let printed = print_inch_fraction(Length::new::<millimeter>(millimetres));
        assert_eq!(printed.map(|p| p.to_string()), Some(text.to_owned()));
    }
    for (millimetres, why) in [
        (9.6, "no 64th"),
        (0.0, "zero"),
        (-9.525, "negative"),
        (10_200.0, "over 10 m"),
    ] {
        assert_eq!(
            print_inch_fraction(Length::new::<millimeter>(millimetres)),
            None,
            "{why}"
        );
    }
    // To a millionth of an inch it is a 64th, beyond that it isn't.
    for (off, is_fraction) in [(0.995e-6, true), (1.005e-6, false)] {
        let near = print_inch_fraction(LengthUnit::Inch.length(0.375 + off));
        assert_eq!(near.is_some(), is_fraction, "{off}");
    }
    // 62/25.4.
    let inches = LengthUnit::Inch.value_of(Length::new::<millimeter>(62.0));
    assert!((inches - 2.4409).abs() < 5e-5);
}

#[test]
fn masses_by_definition() {
    // International yard and pound agreement, 1959: 1 lb = 0.453 592 37 kg.
    for (unit, value, kilograms) in [
        (MassUnit::Pound, 1.0, 0.453_592_37),
        (MassUnit::Kilogram, 23.0, 23.0),
        (MassUnit::Pound, 51.0, 23.133_210_87),
    ] {
        close(value * unit.kilograms(), kilograms);
        close(unit.value_of(Mass::new::<kilogram>(kilograms)), value);
    }
    // The load constant of the revised NIOSH lifting equation is printed as 23 kg or 51 lb.
    assert_eq!(
        print_mass(Mass::new::<kilogram>(23.0), MassUnit::Pound, 2).to_string(),
        "51 lb"
    );
}

#[test]
fn temperatures_by_definition() {
    // The scales' fixed points: ice, steam, where both scales meet, and absolute zero.
    for (text, celsius) in [
        ("32 °F", 0.0),
        ("212F", 100.0),
        ("-40 °F", -40.0),
        ("−40 °C", -40.0),
        ("273.15 K", 0.0),
        ("-459.67 °F", -273.15),
        ("20 degC", 20.0),
    ] {
        let kelvins = parse_temperature(text, None).map(|typed| typed.temperature().get::<kelvin>());
        close(kelvins.expect(text), celsius + 273.15);
    }
    let shop = ThermodynamicTemperature::new::<degree_celsius>(20.0);
    for (unit, text) in [
        (TemperatureUnit::Celsius, "20.0 °C"),
        (TemperatureUnit::Fahrenheit, "68.0 °F"),
        (TemperatureUnit::Kelvin, "293.1 K"),
    ] {
        assert_eq!(print_temperature(shop, unit, 1).to_string(), text);
    }
}

#[test]
fn angles_by_definition() {
    for (text, degrees) in [
        ("90°", 90.0),
        ("90", 90.0),
        ("1/4 turn", 90.0),
        ("½ turn", 180.0),
        ("1/6 turn", 60.0),
    ] {
        let angle = parse_angle(text).expect(text).angle();
        close(angle.get::<degree>(), degrees);
        close(angle.get::<radian>(), degrees / 180.0 * std::f64::consts::PI);
    }
}

/// Every unit that readings are taken in, against the first of its kind: exact by definition, as NIST SP 811 has
/// them and for imperial measures the Weights and Measures Act 1985 (all from memory).
#[test]
fn units_of_readings_by_definition() {
    for (unit, first, factor) in [
        ("in", "mm", 25.4),
        ("thou", "mm", 0.0254),
        ("µm", "mm", 0.001),
        ("cm", "mm", 10.0),
        ("ft·lb", "N·m", 1.355_817_948_331_400_4),
        ("in·lb", "N·m", 0.112_984_829_027_616_7),
        ("kgf·cm", "N·m", 0.098_066_5),
        ("kgf·m", "N·m", 9.806_65),
        ("oz·in", "N·m", 0.007_061_551_814_226_04),
        ("g", "kg", 0.001),
        ("lb", "kg", 0.453_592_37),
        ("oz", "kg", 0.028_349_523_125),
        ("lbf", "N", 4.448_221_615_260_5),
        ("kgf", "N", 9.806_65),
        ("kN", "N", 1_000.0),
        ("bar", "kPa", 100.0),
        ("psi", "kPa", 6.894_757_293_168_361),
        ("kgf/cm²", "kPa", 98.066_5),
        ("MPa", "kPa", 1_000.0),
        ("mL", "L", 0.001),
        ("US qt", "L", 0.946_352_946),
        ("US pt", "L", 0.473_176_473),
        ("US gal", "L", 3.785_411_784),
        ("US fl oz", "L", 0.029_573_529_562_5),
        ("imp qt", "L", 1.136_522_5),
        ("imp pt", "L", 0.568_261_25),
        ("imp gal", "L", 4.546_09),
        ("imp fl oz", "L", 0.028_413_062_5),
        ("s", "min", 1.0 / 60.0),
        ("h", "min", 60.0),
    ] {
        let got = convert(1.0, unit, first).unwrap_or_else(|| panic!("{unit} to {first}"));
        assert!(
            (got / factor - 1.0).abs() < 1e-12,
            "{unit}: {got}, by definition {factor}"
        );
        let back = convert(factor, first, unit).unwrap_or_default();
        assert!((back - 1.0).abs() < 1e-12, "{first} to {unit}: {back}");
    }
}

/// Ice melts at 32 °F and 0 °C, water boils at 212 °F and 100 °C; both scales meet at −40 (definition of the degree
/// Fahrenheit, NIST Special Publication 811, M).
#[test]
fn degrees_turn_into_degrees() {
    for (fahrenheit, celsius) in [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (68.0, 20.0)] {
        let got = convert(fahrenheit, "°F", "°C").unwrap();
        assert!((got - celsius).abs() < 1e-9, "{fahrenheit} °F: {got} °C");
        let back = convert(celsius, "°C", "°F").unwrap();
        assert!((back - fahrenheit).abs() < 1e-9, "{celsius} °C: {back} °F");
    }
}
