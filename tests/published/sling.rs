//! Sling legs and the hoist they hang from.

use halfcase::trade::hoist::{BoomPosition, HoistError, HoistVerdict, derated, margin, rating_at};
use halfcase::trade::quantity::{Angle, Length, Mass};
use halfcase::trade::sling::{
    GRAVITY_M_S2, SlingError, angle_factor, angle_from_spread, leg_tension, rating_needed,
};
use uom::si::angle::degree;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::ratio::{percent, ratio};

fn degrees(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn kg(value: f64) -> Mass {
    Mass::new::<kilogram>(value)
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

#[test]
fn the_angle_factors() {
    // Load angle factors from the horizontal, after ASME B30.9, seen on several sheets, which print 1.742
    // for 35° where 1/sin 35° is 1.7434.
    for (angle, factor) in [
        (90.0, 1.000),
        (75.0, 1.035),
        (60.0, 1.155),
        (50.0, 1.305),
        (45.0, 1.414),
        (40.0, 1.555),
        (35.0, 1.742),
        (30.0, 2.000),
    ] {
        let ours = angle_factor(degrees(angle)).unwrap().get::<ratio>();
        assert!((ours - factor).abs() < 0.0015, "{angle}: {ours}");
        // Not the angle from the vertical, which some sheets print.
        if angle > 45.0 {
            assert!((ours - 1.0 / degrees(angle).get::<uom::si::angle::radian>().cos()).abs() > 0.1);
        }
    }
}

#[test]
fn tension_and_rating() {
    // Standard gravity, exact: 9.806 65 m/s².
    assert!((GRAVITY_M_S2 - 9.806_65).abs() < 1e-12);
    // 48 kg on two legs at 60°: 48/(2·sin 60°) = 27.713 kg, 271.77 N.
    let rating = rating_needed(kg(48.0), 2, degrees(60.0)).unwrap();
    assert!((rating.get::<kilogram>() - 27.7128).abs() < 1e-3);
    let tension = leg_tension(kg(48.0), 2, degrees(60.0)).unwrap();
    assert!((tension.get::<newton>() - 271.770).abs() < 0.01);
    // Three and four legs count as two (common practice, rigid load); one carries all, plumb.
    assert_eq!(rating_needed(kg(48.0), 4, degrees(60.0)).unwrap(), rating);
    assert_eq!(rating_needed(kg(48.0), 3, degrees(60.0)).unwrap(), rating);
    assert_eq!(rating_needed(kg(48.0), 1, degrees(60.0)).unwrap(), kg(48.0));
}

#[test]
fn a_flat_sling_is_refused() {
    let say = |load, legs, angle| {
        leg_tension(kg(load), legs, degrees(angle))
            .unwrap_err()
            .to_string()
    };
    assert_eq!(
        say(48.0, 2, 25.0),
        "25° from the horizontal is too flat: use longer legs, at least 30° and best 60°."
    );
    assert!(say(48.0, 2, 29.9).starts_with("29° from the horizontal is too flat"));
    assert_eq!(
        leg_tension(kg(48.0), 2, degrees(29.9)),
        Err(SlingError::TooFlat(29.9))
    );
    assert!(leg_tension(kg(48.0), 2, degrees(30.0)).is_ok());
    assert!(leg_tension(kg(48.0), 2, degrees(90.0)).is_ok());
    assert_eq!(
        say(48.0, 2, 90.5),
        "Enter the legs' angle from the horizontal, from 30 to 90°."
    );
    assert_eq!(say(48.0, 0, 60.0), "Enter one to eight legs.");
    assert_eq!(say(48.0, 9, 60.0), "Enter one to eight legs.");
    assert_eq!(
        say(0.0, 2, 60.0),
        "Enter the load, above zero and under 100 000 kg."
    );
}

#[test]
fn the_angle_from_two_lengths() {
    // A leg as long as the spread makes an equilateral triangle: 60°.
    let angle = angle_from_spread(mm(600.0), mm(600.0)).unwrap();
    assert!((angle.get::<degree>() - 60.0).abs() < 1e-9);
    let refused = angle_from_spread(mm(290.0), mm(600.0)).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "The leg must be longer than half the spread of its ends: check both lengths."
    );
}

#[test]
fn the_margin_of_a_hoist() {
    let at = |load| margin(kg(load), kg(250.0)).unwrap();
    let light = at(48.0);
    assert!((light.share.get::<percent>() - 19.2).abs() < 1e-9);
    assert!((light.spare.get::<kilogram>() - 202.0).abs() < 1e-9);
    assert_eq!(light.verdict, HoistVerdict::Takes);
    // Thin above 80 % (common practice, no source).
    assert_eq!(at(199.5).verdict, HoistVerdict::Takes);
    assert_eq!(at(200.5).verdict, HoistVerdict::Thin);
    assert_eq!(at(250.0).verdict, HoistVerdict::Thin);
    assert_eq!(at(250.5).verdict, HoistVerdict::Refused);
    assert_eq!(margin(kg(48.0), kg(0.0)), Err(HoistError::Rating));
    assert_eq!(
        HoistError::Rating.to_string(),
        "Enter the rating on the boom's plate for each position."
    );
    assert_eq!(
        margin(kg(-1.0), kg(250.0)).unwrap_err().to_string(),
        "Enter the load with its rigging, above zero and under 100 000 kg."
    );
}

#[test]
fn the_boom_further_out_takes_less() {
    let boom = |reach, rating| BoomPosition {
        reach: mm(reach),
        rating: kg(rating),
    };
    // An invented plate, out of order on purpose.
    let plate = [boom(1400.0, 250.0), boom(1000.0, 1000.0), boom(1200.0, 500.0)];
    assert_eq!(rating_at(&plate, mm(1000.0)), Ok(kg(1000.0)));
    // Between two holes the outer one's rating holds.
    assert_eq!(rating_at(&plate, mm(1001.0)), Ok(kg(500.0)));
    assert_eq!(rating_at(&plate, mm(1400.0)), Ok(kg(250.0)));
    assert_eq!(rating_at(&plate, mm(1405.0)), Err(HoistError::TooFar));
    assert_eq!(rating_at(&[], mm(1000.0)), Err(HoistError::Rating));
    assert_eq!(
        HoistError::TooFar.to_string(),
        "The plate gives no rating that far out: bring the boom in."
    );
    // Same moment: 1000 kg at 1.0 m is 800 kg at 1.25 m; never more than the plate says.
    let derated_at = |reach| {
        derated(boom(1000.0, 1000.0), mm(reach))
            .unwrap()
            .get::<kilogram>()
    };
    assert!((derated_at(1250.0) - 800.0).abs() < 1e-9);
    assert!((derated_at(500.0) - 1000.0).abs() < 1e-9);
    assert_eq!(derated(boom(1000.0, 1000.0), mm(0.0)), Err(HoistError::Reach));
}
