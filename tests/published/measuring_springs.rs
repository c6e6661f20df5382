//! Coil springs against textbooks and government manuals. (S): seen in a stored copy, (M): from memory.

use halfcase::trade::measuring::MeasuringError;
use halfcase::trade::measuring::spring::{Coil, LoadRead, Rate, load_at, tested};
use halfcase::trade::quantity::{Force, Length, LengthUnit, Pressure};
use uom::si::force::{newton, pound_force};
use uom::si::pressure::{gigapascal, megapascal, psi};
use uom::si::radiant_exposure::joule_per_square_meter;

fn mm(value: f64) -> Length {
    LengthUnit::Millimetre.length(value)
}

fn inch(value: f64) -> Length {
    LengthUnit::Inch.length(value)
}

fn coil(wire: f64, mean: f64, working: f64) -> Coil {
    Coil {
        wire: mm(wire),
        mean: mm(mean),
        working,
    }
}

fn per_mm(rate: Rate) -> f64 {
    rate.get::<joule_per_square_meter>() / 1000.0
}

fn per_inch(rate: Rate) -> f64 {
    (rate * inch(1.0)).get::<pound_force>()
}

fn close(got: f64, printed: f64, within: f64, what: &str) {
    assert!(
        (got / printed - 1.0).abs() <= within,
        "{what}: {got}, printed {printed}"
    );
}

/// Bhandari, Design of Machine Elements, chapter 10 (S, in a stored companion), G 81 370 N/mm².
#[test]
fn rates_of_a_textbook() {
    let g = Pressure::new::<megapascal>(81_370.0);
    let rate = |c: Coil| per_mm(c.rate(g).expect("a spring"));
    close(rate(coil(11.0, 55.0, 5.0)), 179.014, 1e-6, "example 10.2");
    close(rate(coil(5.0, 40.0, 5.0)), 19.865_723, 1e-6, "example 10.7");
    // The coils that it takes, before they are rounded.
    close(
        rate(coil(5.0, 40.0, 4.966_431)),
        20.0,
        1e-6,
        "example 10.7, wanted",
    );
    close(rate(coil(21.0, 150.0, 7.814_775)), 75.0, 1e-6, "example 10.3");
    // Example 10.1: 1250 N over 30 mm takes 7.9 coils, 8 in the whole.
    let eight = rate(coil(7.0, 42.0, 8.0));
    assert!(eight < 1250.0 / 30.0 && rate(coil(7.0, 42.0, 7.0)) > 1250.0 / 30.0);
}

/// The same book, example 10.19 (S): 1000 N on two springs one in the other, the inner one 15 mm shorter.
#[test]
fn two_springs_share_a_load() {
    let g = Pressure::new::<megapascal>(81_370.0);
    let (outer, inner) = (coil(6.0, 36.0, 10.0), coil(5.0, 30.0, 8.0));
    let load = |c: Coil, shorter: f64| {
        let rate = c.rate(g).expect("a spring");
        load_at(rate, mm(100.0), mm(100.0 - shorter))
            .expect("a height")
            .get::<newton>()
    };
    close(load(outer, 24.988_839), 706.021_471, 1e-6, "outer");
    close(load(inner, 9.988_839), 293.978_529, 1e-6, "inner");
}

/// A textbook of strength of materials, example 8.8 (S, in a stored companion): ten coils of 3 mm wire on 3 cm,
/// G 80 GPa, 2 cm shorter; what is left of 100 N over 1 cm is the inner spring's 4000 N/m.
#[test]
fn a_spring_inside_a_spring() {
    let outer = coil(3.0, 30.0, 10.0)
        .rate(Pressure::new::<gigapascal>(80.0))
        .expect("a spring");
    let load = load_at(outer, mm(80.0), mm(60.0))
        .expect("a height")
        .get::<newton>();
    close(load, 60.0, 1e-9, "outer");
    close((100.0 - load) / 0.01, 4000.0, 1e-9, "inner, N/m");
}

/// Shigley's Mechanical Engineering Design, example 10-1 (M): music wire 0.037 in, outside 7/16 in, 12 1/2 turns of
/// which 10 1/2 work, G 11.85 Mpsi: 4.13 lbf/in.
#[test]
fn a_spring_in_inches() {
    let spring = Coil::by_outside(inch(0.037), inch(0.437), 10.5);
    let rate = spring.rate(Pressure::new::<psi>(11.85e6)).expect("a spring");
    close(per_inch(rate), 4.13, 0.002, "rate");
}

/// An exercise (S): 4 mm wire, outside 30 mm, 11 coils of which two are dead, G 79.3 GPa. Its answer is reckoned
/// here: 79 300·256/(8·26³·9) = 16.04 N/mm. Solid with its dead coils: 44 mm.
#[test]
fn an_exercise_in_mm() {
    let spring = Coil::by_outside(mm(4.0), mm(30.0), 9.0);
    let rate = spring.rate(Pressure::new::<gigapascal>(79.3)).expect("a spring");
    close(per_mm(rate), 16.04, 0.000_5, "rate");
    close(
        LengthUnit::Millimetre.value_of(spring.solid()),
        44.0,
        1e-9,
        "solid",
    );
    let (low, high) = spring.steel_rate().expect("a spring");
    assert!(low < rate && rate < high);
}

/// Khurmi, A Textbook of Machine Design, example 23.1 (M): 6 mm wire, outside 75 mm, G 84 kN/mm²: 383.4 N shorten
/// each coil by 9.26 mm.
#[test]
fn one_coil_of_a_textbook() {
    let rate = Coil::by_outside(mm(6.0), mm(75.0), 1.0)
        .rate(Pressure::new::<gigapascal>(84.0))
        .expect("a spring");
    close(383.4 / per_mm(rate), 9.26, 0.001, "a coil");
}

fn read(pounds: f64, inches: f64) -> LoadRead {
    LoadRead {
        load: Force::new::<pound_force>(pounds),
        height: inch(inches),
    }
}

/// TM 9-2815-247-34 (S): inner spring 43.9 lb at 1.3 in and 26.2 lb at 2.07 in, outer 134.2 lb at 1.56 and 85.4 at
/// 2.26. The rates are theirs by division; both lead to free lengths beyond the longer height. Its intermediate
/// spring is printed with 1.4 lb at the shorter height and 51.7 at the longer: no spring does so, and we say so.
#[test]
fn springs_read_at_two_heights() {
    for (one, other, rate, free) in [
        ((43.9, 1.3), (26.2, 2.07), 22.99, 3.21),
        ((134.2, 1.56), (85.4, 2.26), 69.71, 3.485),
    ] {
        let found = tested(read(one.0, one.1), read(other.0, other.1)).expect("two loads");
        close(per_inch(found.rate), rate, 0.000_5, "rate");
        close(
            LengthUnit::Inch.value_of(found.free),
            free,
            0.000_5,
            "free length",
        );
        let other_way = tested(read(other.0, other.1), read(one.0, one.1)).expect("two loads");
        close(per_inch(other_way.rate), rate, 0.000_5, "the other way round");
    }
    let misprinted = tested(read(1.4, 1.56), read(51.7, 2.26));
    assert_eq!(misprinted, Err(MeasuringError::Loads));
}

/// TM 55-1905-223-24-3 (S): free 2.685 in, 147.25 to 162.75 lb at 1.724 in; the rate of the middle, 155 lb, leads back to the free length. TM 5-1940-322-24 (S): free 2.362 in, 80.7 to 89.2 lb at 1.94 in.
#[test]
fn valve_springs_of_manuals() {
    for (free, height, least, most, rate) in [
        (2.685, 1.724, 147.25, 162.75, 161.3),
        (2.362, 1.94, 80.7, 89.2, 201.3),
    ] {
        let middle = (least + most) / 2.0;
        let found = tested(read(0.0, free), read(middle, height)).expect("two loads");
        close(per_inch(found.rate), rate, 0.000_5, "rate");
        let load = load_at(found.rate, inch(free), inch(height)).expect("a height");
        close(load.get::<pound_force>(), middle, 1e-9, "load");
    }
}

/// A valve spring of 4 mm wire, mean 28 mm, 6 working coils: G·d⁴/(8·D³·n) by hand with 78.5 and 81.5 GPa, least and
/// most of the handbooks (from memory), 19.07 and 19.80 N/mm.
#[test]
fn steel_is_as_stiff_as_the_handbooks_differ() {
    let (least, most) = coil(4.0, 28.0, 6.0).steel_rate().expect("a spring");
    close(
        per_mm(least),
        78.5e3 * 256.0 / (8.0 * 21_952.0 * 6.0),
        1e-6,
        "least",
    );
    close(
        per_mm(most),
        81.5e3 * 256.0 / (8.0 * 21_952.0 * 6.0),
        1e-6,
        "most",
    );
}
