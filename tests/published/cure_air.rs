//! What air and causes together do to a cure, and from what temperature on fluids light, beside their sources.

use halfcase::trade::caution::{Heating, Situation, cautions, fuel_named};
use halfcase::trade::cure::{
    Chemistry, CureSpec, LabelTimes, Milestone, ShopHistory, ShopReading, Substrate,
};
use halfcase::trade::moment::Moment;
use uom::si::f64::{Length, Ratio, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::{degree_celsius, degree_fahrenheit};
use uom::si::time::{day, hour};

const START: Moment = Moment(1_000_000);

fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(number)
}

fn fahrenheit(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_fahrenheit>(number)
}

/// A day by the label.
fn a_day(chemistry: Chemistry, at: f64) -> CureSpec {
    CureSpec {
        chemistry,
        label: LabelTimes::full_only(celsius(at), Time::new::<day>(1.0)),
    }
}

fn anaerobic(substrate: Substrate, gap_mm: f64) -> CureSpec {
    let chemistry = Chemistry::Anaerobic {
        substrate,
        gap: Length::new::<millimeter>(gap_mm),
        activator: false,
    };
    a_day(chemistry, 22.0)
}

fn silicone(depth_mm: f64) -> CureSpec {
    let depth = Length::new::<millimeter>(depth_mm);
    a_day(Chemistry::MoistureSilicone { depth }, 23.0)
}

/// Early, likely and late, in days.
fn days(spec: &CureSpec, at: f64, humidity: Option<f64>) -> [f64; 3] {
    let shop = ShopHistory(vec![ShopReading {
        at: START,
        temperature: celsius(at),
        humidity: humidity.map(Ratio::new::<percent>),
    }]);
    let done = spec.reached_at(Milestone::FullCure, START, &shop).unwrap();
    [done.earliest, done.likely, done.latest].map(|at| at.since(START).get::<hour>() / 24.0)
}

#[track_caller]
fn near(got: f64, expected: f64, within: f64, source: &str) {
    assert!(
        (got / expected - 1.0).abs() < within,
        "{got}, expected {expected}: {source}"
    );
}

/// Twice as fast per 10 K, as accelerated ageing is reckoned: ASTM F1980, its factors at Q10 = 2, from memory.
#[test]
fn the_likely_time_follows_the_rule_of_ten_kelvin() {
    let drying = a_day(Chemistry::SolventDrying, 40.0);
    for (colder, factor) in [
        (10.0, 2.0),
        (20.0, 4.0),
        (25.0, 5.66),
        (28.0, 6.96),
        (30.0, 8.0),
        (33.0, 9.85),
        (35.0, 11.31),
    ] {
        near(
            days(&drying, 40.0 - colder, None)[1],
            factor,
            1e-3,
            "ASTM F1980, from memory",
        );
    }
}

/// A rate that doubles from 25 to 35 °C has an activation energy of 52.9 kJ/mol (a chemistry textbook's
/// example of the Arrhenius equation, from memory); with the gas constant 8.314 J/(mol·K).
#[test]
fn twice_in_ten_kelvin_is_an_ordinary_activation_energy() {
    let arrhenius = (52_900.0 / 8.314 * (1.0 / 298.0 - 1.0 / 308.0_f64)).exp();
    let drying = a_day(Chemistry::SolventDrying, 35.0);
    let [early, likely, late] = days(&drying, 25.0, None);
    near(likely, arrhenius, 5e-3, "Arrhenius, from memory");
    assert!(early < arrhenius && arrhenius < late);
}

/// Sharp front (Comyn, Int. J. Adhesion & Adhesives 18, 1998): depth goes with the root of vapour pressure
/// and time, so the time to a depth goes inversely with humidity.
#[test]
fn half_the_humidity_takes_twice_the_time() {
    for (humidity, factor) in [(40.0, 1.25), (30.0, 1.666_7), (20.0, 2.5), (10.0, 5.0)] {
        for end in days(&silicone(2.5), 23.0, Some(humidity)) {
            near(end, factor, 1e-3, "Comyn 1998");
        }
    }
}

/// The same law: time goes with the square of the depth. 3.2 mm (1/8 in) is what a tube says of 24 h (from
/// memory): we are later, and say so.
#[test]
fn depth_goes_with_the_root_of_time() {
    let late = |depth_mm| days(&silicone(depth_mm), 23.0, Some(50.0))[2];
    near(late(3.75), 2.25, 1e-3, "Comyn 1998, 1.5²");
    near(late(6.0), 5.76, 1e-3, "Comyn 1998, 2.4²");
    assert!(days(&silicone(3.175), 23.0, Some(50.0))[0] > 1.0);
}

/// Multiplicative spreads of independent causes combine as exp √Σ ln² (Limpert, Stahel, Abbt, BioScience 51,
/// 2001, from memory); worked by hand from the spreads of each cause, which are common practice, no source.
#[test]
fn independent_causes_combine_in_quadrature() {
    // Aluminium 1.5, up to 2; gap of 0.25 mm 1.5, up to 2: 2.25 × exp √(2 × 0.287682²), and 4 by the worst of both.
    let [early, likely, late] = days(&anaerobic(Substrate::Aluminium, 0.25), 22.0, None);
    near(likely, 2.25, 1e-4, "1.5 × 1.5");
    near(late, 3.379_7, 1e-4, "2.25 × e^0.406844");
    // Early: 1.5 each, down to 1 and 1.25: 2.25 / exp √(0.405465² + 0.182322²).
    near(early, 2.25 / 1.559_86, 1e-4, "2.25 / e^0.444566");
    // The gap and 10 K: 1.5 × 2 × exp √(0.287682² + 0.223144²).
    let cold = days(&anaerobic(Substrate::SteelOrIron, 0.25), 12.0, None);
    near(cold[2], 4.317_6, 1e-4, "3 × e^0.364079");
    // Stainless and 17 K: 2 × 3.249010 × exp √(0.405465² + 0.379344²).
    let cold = days(&anaerobic(Substrate::Stainless, 0.05), 5.0, None);
    near(cold[2], 11.322, 2e-4, "6.498020 × e^0.555246");
}

/// A fire-safety supplier's table of flash points, °F.
#[test]
fn fuels_light_from_their_flash_points_on() {
    for (name, flash) in [
        ("gasoline", -45.0),
        ("methanol", 52.0),
        ("ethanol", 55.0),
        ("kerosene", 100.0),
        ("diesel 2-D", 125.0),
    ] {
        let own = fuel_named(name).unwrap().flash_celsius;
        let table = fahrenheit(flash).get::<degree_celsius>();
        assert!(
            (own - table).abs() < 0.5,
            "{name}: {own} °C, the table {table} °C"
        );
    }
}

/// The same table: motor oil 420 to 485 °F, gear oil 375 to 580 °F; gears are heated to 360 °F and bearing
/// cones to 275 °F in government manuals. The margin of 30 K is common practice, no source.
#[test]
fn a_bath_of_the_lightest_gear_oil_is_too_near_its_flash_point_for_a_gear() {
    let stopped = |to: f64, flash: f64| {
        let step = Situation {
            heating: Some(Heating {
                target: Some(fahrenheit(to)),
                by_manual: true,
                oil_bath: true,
                flash_point: Some(fahrenheit(flash)),
                ..Heating::default()
            }),
            ..Situation::default()
        };
        cautions(&step).iter().any(|caution| caution.id == "oil-flash")
    };
    assert!(stopped(360.0, 375.0), "a gear, the lightest gear oil");
    assert!(!stopped(360.0, 420.0), "a gear, the lightest motor oil");
    assert!(!stopped(360.0, 580.0), "a gear, the heaviest gear oil");
    assert!(!stopped(275.0, 375.0), "a bearing cone, the lightest gear oil");
    assert!(stopped(480.0, 485.0), "a ring gear, the heaviest motor oil");
}
