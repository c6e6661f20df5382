//! Adapters: worked numbers of US Army, aircraft and Navy manuals, by setting = T·L/(L + E).

use halfcase::trade::adapter::{AdapterError, corrected_setting};
use halfcase::trade::quantity::{Angle, AngleUnit, Length, LengthUnit, TorqueUnit};

fn setting(unit: TorqueUnit, torque: f64, inches: (f64, f64), degrees: f64) -> Result<f64, AdapterError> {
    let torque = unit.torque(torque);
    corrected_setting(torque, inch(inches.0), inch(inches.1), angle(degrees)).map(|set| unit.value_of(set))
}

fn inch(value: f64) -> Length {
    LengthUnit::Inch.length(value)
}

fn angle(degrees: f64) -> Angle {
    AngleUnit::Degree.angle(degrees)
}

fn close(got: f64, wanted: f64, slack: f64, source: &str) {
    assert!(
        (got - wanted).abs() <= slack,
        "{source}: got {got}, printed {wanted}"
    );
}

#[test]
fn printed_examples() {
    // Slack: half a unit of the last printed digit.
    for (torque, length, adapter, degrees, printed, slack, source) in [
        (300.0, 10.0, 4.0, 0.0, 214.0, 0.5, "US Army TM 1-1500-204-23-9"),
        (40.0, 12.0, 4.0, 0.0, 30.0, 1e-9, "US Army TM 9-2350-261-20-1"),
        (
            135.0,
            10.0,
            1.5,
            0.0,
            117.0,
            0.5,
            "an aircraft maintenance manual, lengthened",
        ),
        (
            135.0,
            10.0,
            1.5,
            180.0,
            159.0,
            0.5,
            "an aircraft maintenance manual, shortened",
        ),
        (
            30.0,
            12.0,
            3.0,
            0.0,
            24.0,
            1e-9,
            "an aircraft maintenance manual, 1 ft + 0.25 ft",
        ),
        (100.0, 12.0, 6.0, 0.0, 66.7, 0.05, "NAVEDTRA 14315"),
        (
            300.0,
            10.0,
            4.0,
            90.0,
            300.0,
            1e-9,
            "the same manuals: no correction at a right angle",
        ),
    ] {
        let got = setting(TorqueUnit::PoundInch, torque, (length, adapter), degrees).expect(source);
        close(got, printed, slack, source);
    }
}

#[test]
fn by_hand() {
    // 300 mm and 50 mm: 100 · 300/350 = 85.714 N·m. At 60° half the adapter counts: 100 · 300/325 =
    // 92.308. At 120° it counts back: 100 · 300/275 = 109.091. The angle's sign makes no difference.
    let millimetre = |value| LengthUnit::Millimetre.length(value);
    for (degrees, wanted) in [
        (0.0, 85.714_286),
        (60.0, 92.307_692),
        (-60.0, 92.307_692),
        (120.0, 109.090_909),
    ] {
        let hundred = TorqueUnit::NewtonMetre.torque(100.0);
        let set = corrected_setting(hundred, millimetre(300.0), millimetre(50.0), angle(degrees));
        let set = set.expect("sound lengths");
        close(TorqueUnit::NewtonMetre.value_of(set), wanted, 1e-6, "by hand");
    }
}

#[test]
fn out_of_range() {
    let at =
        |torque, length, adapter, degrees| setting(TorqueUnit::PoundFoot, torque, (length, adapter), degrees);
    for (torque, length, adapter, degrees, error) in [
        (0.0, 10.0, 1.0, 0.0, AdapterError::Torque),
        (-1.0, 10.0, 1.0, 0.0, AdapterError::Torque),
        (f64::NAN, 10.0, 1.0, 0.0, AdapterError::Torque),
        (f64::MAX / 2.0, 10.0, 7.4, 180.0, AdapterError::Torque),
        (40.0, 0.0, 1.0, 0.0, AdapterError::WrenchLength),
        (40.0, f64::INFINITY, 1.0, 0.0, AdapterError::WrenchLength),
        (40.0, 10.0, -1.0, 0.0, AdapterError::AdapterLength),
        (40.0, 10.0, f64::NAN, 0.0, AdapterError::AdapterLength),
        (40.0, 10.0, 10.01, 0.0, AdapterError::LongerThanWrench),
        (40.0, 10.0, 1.0, 181.0, AdapterError::Angle),
        (40.0, 10.0, 1.0, f64::NAN, AdapterError::Angle),
        (40.0, 10.0, 7.51, 180.0, AdapterError::ReachesBack),
    ] {
        assert_eq!(
            at(torque, length, adapter, degrees),
            Err(error),
            "{torque} {length} {adapter} {degrees}"
        );
        assert!(error.to_string().ends_with('.'), "{error}");
    }
    // A quarter of the lever is the least: 40 · 4 = 160.
    close(
        at(40.0, 10.0, 7.49, 180.0).expect("just enough"),
        159.36,
        0.01,
        "by hand",
    );
    close(
        at(40.0, 10.0, 10.0, 0.0).expect("as long as the wrench"),
        20.0,
        1e-9,
        "by hand",
    );
}
