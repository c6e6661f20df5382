//! Thermal growth, and materials' figures.

use halfcase::trade::growth::{GrowthError, grown_by, grown_range, size_at_20, size_at_20_by};
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::f64::TemperatureCoefficient;
use uom::si::length::{inch, micrometer, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::{gigapascal, megapascal};
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

fn micro(value: f64) -> TemperatureCoefficient {
    TemperatureCoefficient::new::<per_kelvin>(value * 1e-6)
}

#[test]
fn a_heated_bearing_bore() {
    // Published growth of a 100 mm steel bore from 20 °C, mm, seen in a stored mounting guide.
    for (to, growth) in [(75.0, 0.0600), (100.0, 0.0873), (125.0, 0.1145), (150.0, 0.1418)] {
        let grown = grown_by(mm(100.0), micro(10.91), celsius(20.0), celsius(to)).unwrap() - mm(100.0);
        assert!((grown.get::<millimeter>() - growth).abs() < 0.0001, "{to}");
    }
}

#[test]
fn a_reading_carried_to_20_degrees() {
    // NPL's example, seen: 500.035 mm at 23.7 °C, α 11.7e-6, is 500.013 mm.
    let size = size_at_20_by(mm(500.035), micro(11.7), celsius(23.7)).unwrap();
    assert!((size.get::<millimeter>() - 500.013).abs() < 0.0005);
}

#[test]
fn a_steel_instrument_hides_its_own_share() {
    // Worked: a 62 mm bore at 30 °C read with steel beside it, 23 against 11.5 millionths: 7.13 µm large.
    let size = size_at_20_by(mm(62.0), micro(23.0) - micro(11.5), celsius(30.0)).unwrap();
    assert!(((mm(62.0) - size).get::<micrometer>() - 7.13).abs() < 0.001);
    // With the typical casting alloy here, 22: 6.51 µm, and 13.64 with an instrument that shows true length.
    let off = |size: Length| (mm(62.0) - size).get::<micrometer>();
    let steel = size_at_20(mm(62.0), Material::CastAluminium, celsius(30.0)).unwrap();
    assert!((off(steel) - 6.51).abs() < 0.001);
    let alone = size_at_20_by(mm(62.0), Material::CastAluminium.expansion(), celsius(30.0)).unwrap();
    assert!((off(alone) - 13.64).abs() < 0.001);
    let ring = size_at_20(mm(62.0), Material::BearingSteel, celsius(30.0));
    assert_eq!(ring, Ok(mm(62.0)));
}

#[test]
fn dry_ice_shrinks_steel_less_than_a_constant_says() {
    // Kaw, Numerical Methods, the trunnion: 12.363 in from 80 to −108 °F. A constant 6.47e-6/°F gives
    // −0.01504 in (seen); its own cubic for α gives −0.01369 in (from memory), and is 6.380e-6/°F at
    // 68 °F (its cubic 6.0150e-6 + 6.1946e-9·T − 1.2278e-11·T², from memory).
    let alpha = TemperatureCoefficient::new::<per_kelvin>(6.380e-6 * 1.8);
    let from = ThermodynamicTemperature::new::<degree_fahrenheit>(80.0);
    let to = ThermodynamicTemperature::new::<degree_fahrenheit>(-108.0);
    let size = Length::new::<inch>(12.363);
    let shrunk = (size - grown_by(size, alpha, from, to).unwrap()).get::<inch>();
    assert!((shrunk / 0.01369 - 1.0).abs() < 0.005, "{shrunk}");
    assert!(shrunk < 0.01504 * 0.93, "{shrunk}");
    // The loss itself: from 20 to −78 °C the cubic's mean is 0.9177 of its value at 20 °C (integrated
    // by hand), held here to a tenth of a percent.
    let cold = grown_by(mm(1000.0), micro(10.0), celsius(20.0), celsius(-78.0)).unwrap();
    let mean_share = (mm(1000.0) - cold).get::<millimeter>() / (1000.0 * 10e-6 * 98.0);
    assert!((mean_share - 0.9167).abs() < 0.0005, "{mean_share}");
}

#[test]
fn growth_goes_both_ways_and_has_a_range() {
    // α·d·ΔT by hand: 22e-6·62·80 = 0.10912; 21 and 23.5 give 0.10416 and 0.11656.
    let hot = grown_by(
        mm(62.0),
        Material::CastAluminium.expansion(),
        celsius(20.0),
        celsius(100.0),
    )
    .unwrap();
    assert!(((hot - mm(62.0)).get::<millimeter>() - 0.10912).abs() < 1e-6);
    let (least, most) =
        grown_range(mm(62.0), Material::CastAluminium, celsius(20.0), celsius(100.0)).unwrap();
    assert!(((least - mm(62.0)).get::<millimeter>() - 0.10416).abs() < 1e-6);
    assert!(((most - mm(62.0)).get::<millimeter>() - 0.11656).abs() < 1e-6);
    // Worked for the handbook's 23 of plain aluminium: 62·23e-6·80 = 0.114.
    let published = grown_by(mm(62.0), micro(23.0), celsius(20.0), celsius(100.0)).unwrap();
    assert!(((published - mm(62.0)).get::<millimeter>() - 0.114).abs() < 0.0005);
}

#[test]
fn refusals_say_what_to_do() {
    let say = |size, from, to| {
        grown_by(mm(size), Material::Steel.expansion(), celsius(from), celsius(to))
            .unwrap_err()
            .to_string()
    };
    assert_eq!(say(0.0, 20.0, 80.0), "Enter a size above zero.");
    assert_eq!(
        say(62.0, 20.0, 800.0),
        "Enter a temperature between −100 and 300 °C."
    );
    // The limits themselves.
    assert!(
        grown_by(
            mm(62.0),
            Material::Steel.expansion(),
            celsius(-100.0),
            celsius(300.0)
        )
        .is_ok()
    );
    assert!(
        grown_by(
            mm(99_500.0),
            Material::Steel.expansion(),
            celsius(20.0),
            celsius(80.0)
        )
        .is_ok()
    );
    assert!(
        grown_by(
            mm(100_500.0),
            Material::Steel.expansion(),
            celsius(20.0),
            celsius(80.0)
        )
        .is_err()
    );
    assert!(grown_by(mm(62.0), micro(995.0), celsius(20.0), celsius(80.0)).is_ok());
    assert!(grown_by(mm(62.0), micro(1005.0), celsius(20.0), celsius(80.0)).is_err());
    assert!(
        grown_by(
            mm(62.0),
            Material::Steel.expansion(),
            celsius(-100.5),
            celsius(300.0)
        )
        .is_err()
    );
    assert!(
        grown_by(
            mm(62.0),
            Material::Steel.expansion(),
            celsius(-100.0),
            celsius(301.0)
        )
        .is_err()
    );
    assert_eq!(
        grown_by(mm(62.0), micro(2000.0), celsius(20.0), celsius(80.0)),
        Err(GrowthError::Coefficient)
    );
    assert_eq!(
        GrowthError::Coefficient.to_string(),
        "Enter an expansion under 1000 millionths a kelvin."
    );
}

/// E GPa, ν, α ×10⁻⁶/K (least, usual, most), strength MPa (least, most), ρ kg/m³, c J/kgK, heat limit °C.
type Figures = (f64, f64, [f64; 3], [f64; 2], f64, f64, f64);

#[test]
fn materials_hold_handbook_figures() {
    // E, ν, α, ρ and c: engineers' handbooks, from memory; α ranges and the heat limits: common practice,
    // no source. Strengths: the low and high ends of the ordinary grades (EN 1706 and EN 1753 castings,
    // EN 10025 to EN 10083 steels, EN 1561 iron, EN 1982 bronze), from memory.
    let figures: [(Material, Figures); 7] = [
        (
            Material::CastAluminium,
            (
                71.0,
                0.33,
                [21.0, 22.0, 23.5],
                [90.0, 160.0],
                2700.0,
                920.0,
                150.0,
            ),
        ),
        (
            Material::Magnesium,
            (
                45.0,
                0.35,
                [25.0, 26.0, 27.0],
                [85.0, 150.0],
                1800.0,
                1020.0,
                120.0,
            ),
        ),
        (
            Material::Steel,
            (
                207.0,
                0.30,
                [11.0, 11.5, 12.5],
                [250.0, 650.0],
                7850.0,
                470.0,
                150.0,
            ),
        ),
        (
            Material::StainlessSteel,
            (
                195.0,
                0.30,
                [16.0, 16.5, 17.3],
                [200.0, 450.0],
                7900.0,
                500.0,
                150.0,
            ),
        ),
        (
            Material::BearingSteel,
            (
                208.0,
                0.30,
                [11.0, 11.5, 12.5],
                [1500.0, 2000.0],
                7810.0,
                475.0,
                120.0,
            ),
        ),
        (
            Material::CastIron,
            (
                110.0,
                0.26,
                [10.0, 10.5, 11.0],
                [200.0, 300.0],
                7200.0,
                500.0,
                150.0,
            ),
        ),
        (
            Material::Bronze,
            (
                105.0,
                0.34,
                [17.0, 18.0, 18.5],
                [130.0, 180.0],
                8800.0,
                377.0,
                150.0,
            ),
        ),
    ];
    let same = |ours: f64, theirs: f64| (ours / theirs - 1.0).abs() < 1e-9;
    for (material, (young, poisson, expansion, strength, density, heat, limit)) in figures {
        let (least, most) = material.expansion_range();
        let (weak, strong) = material.strength_range();
        assert!(same(material.young().get::<gigapascal>(), young), "{material:?}");
        assert!(same(material.poisson().get::<ratio>(), poisson), "{material:?}");
        assert!(
            same(least.get::<per_kelvin>(), expansion[0] * 1e-6),
            "{material:?}"
        );
        assert!(
            same(material.expansion().get::<per_kelvin>(), expansion[1] * 1e-6),
            "{material:?}"
        );
        assert!(
            same(most.get::<per_kelvin>(), expansion[2] * 1e-6),
            "{material:?}"
        );
        assert!(same(weak.get::<megapascal>(), strength[0]), "{material:?}");
        assert!(same(strong.get::<megapascal>(), strength[1]), "{material:?}");
        assert!(
            same(material.density().get::<kilogram_per_cubic_meter>(), density),
            "{material:?}"
        );
        assert!(
            same(material.specific_heat().get::<joule_per_kilogram_kelvin>(), heat),
            "{material:?}"
        );
        assert!(
            same(material.heat_limit().get::<degree_celsius>(), limit),
            "{material:?}"
        );
        assert_eq!(material.is_brittle(), material == Material::CastIron);
    }
}
