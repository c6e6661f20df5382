//! Fluid volumes: NIST SP 811 (2008), appendix B.8, "Volume", prints the factors to m³ with seven figures;
//! the gallons are exact: 231 in³ of 25.4 mm, and 4.546 09 L.

use halfcase::trade::quantity::{Unit, VolumeUnit, parse_volume, print_volume};

/// NIST SP 811, B.8: gallon 3.785 412 E−03, quart 9.463 529 E−04, pint 4.731 765 E−04, fluid ounce
/// 2.957 353 E−05; gallon (UK) 4.546 09 E−03, ounce (UK fluid) 2.841 306 E−05.
#[test]
fn the_factors_are_those_printed() {
    for (unit, litres) in [
        (VolumeUnit::UsGallon, 3.785_412),
        (VolumeUnit::UsQuart, 0.946_352_9),
        (VolumeUnit::UsPint, 0.473_176_5),
        (VolumeUnit::UsFluidOunce, 0.029_573_53),
        (VolumeUnit::ImperialGallon, 4.546_09),
        (VolumeUnit::ImperialFluidOunce, 0.028_413_06),
    ] {
        let off = (unit.litres() / litres - 1.0).abs();
        assert!(off < 2e-7, "{unit:?}: {}", unit.litres());
    }
    let cubic_inch = 0.254_f64.powi(3);
    assert!((VolumeUnit::UsGallon.litres() - 231.0 * cubic_inch).abs() < 1e-12);
}

/// By definition: four quarts, eight pints a gallon; 128 US, 160 imperial ounces.
#[test]
fn the_parts_of_a_gallon_make_a_gallon() {
    use VolumeUnit::*;
    for (part, count, whole) in [
        (UsQuart, 4.0, UsGallon),
        (UsPint, 8.0, UsGallon),
        (UsFluidOunce, 128.0, UsGallon),
        (ImperialQuart, 4.0, ImperialGallon),
        (ImperialPint, 8.0, ImperialGallon),
        (ImperialFluidOunce, 160.0, ImperialGallon),
        (Millilitre, 1000.0, Litre),
    ] {
        assert!((part.litres() * count - whole.litres()).abs() < 1e-12, "{part:?}");
    }
}

#[test]
fn spellings_are_read_and_a_unit_that_may_be_either_is_refused() {
    use VolumeUnit::*;
    for (text, value, unit) in [
        ("1.1 L", 1.1, Litre),
        ("350 ml", 350.0, Millilitre),
        ("350 cc", 350.0, Millilitre),
        ("2 1/2 US qt", 2.5, UsQuart),
        ("2½ U.S. quarts", 2.5, UsQuart),
        ("3 US pints", 3.0, UsPint),
        ("8 US fl. oz", 8.0, UsFluidOunce),
        ("1 imp gal", 1.0, ImperialGallon),
        ("4 imperial pints", 4.0, ImperialPint),
        ("2 UK qt", 2.0, ImperialQuart),
        ("10 imp fl oz", 10.0, ImperialFluidOunce),
    ] {
        let read = parse_volume(text, None).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!((read.value, read.unit), (value, unit), "{text}");
        let again = parse_volume(&read.text(), None).unwrap();
        assert_eq!(
            (again.value, again.unit),
            (value, unit),
            "{text}: {}",
            read.text()
        );
    }
    for text in [
        "2.5 qt", "3 pt", "1 gal", "8 fl oz", "8 oz", "0 L", "-1 L", "1001 L", "US L", "",
    ] {
        assert!(parse_volume(text, None).is_err(), "{text}");
    }
    let said = parse_volume("2.5 qt", None).unwrap_err().to_string();
    assert!(said.contains("US qt") && said.contains("imp qt"), "{said}");
    for unit in VolumeUnit::ALL {
        let text = format!("1.5 {}", unit.symbol());
        assert_eq!(parse_volume(&text, None).unwrap().unit, unit);
        assert_eq!(
            print_volume(unit.volume(1.5), unit, 3).to_string(),
            format!("1.50 {}", unit.symbol())
        );
    }
}
