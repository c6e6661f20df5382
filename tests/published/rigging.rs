//! Hitches, eyebolts and loads that hang off centre, as rigging papers print them.

use halfcase::trade::lift::{Duration, Grip, Lift, LiftVerdict};
use halfcase::trade::quantity::{Angle, Length, Mass};
use halfcase::trade::sling::{
    Hitch, SlingError, eyebolt_rating, farther_angle, heavier_share, rating_needed, sling_rating,
};
use uom::si::angle::degree;
use uom::si::length::{centimeter, foot, inch};
use uom::si::mass::{kilogram, pound};
use uom::si::ratio::ratio;

fn lb(value: f64) -> Mass {
    Mass::new::<pound>(value)
}

fn at(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn near(ours: f64, published: f64, share: f64) {
    assert!(
        (ours - published).abs() <= share * published.abs(),
        "{ours} is not {published}"
    );
}

/// What a sling of that straight rating carries: the turned-round question of rating papers.
fn carries(rated: f64, legs: u8, degrees: f64, hitch: Hitch) -> f64 {
    let needed = sling_rating(lb(1000.0), legs, at(degrees), hitch).unwrap();
    rated * 1000.0 / needed.get::<pound>()
}

/// A British Columbia crane-safety practice paper (S): two-leg bridle of 9 900 lb in choker, 9 900 × 0.75 = 7 425; chain
/// of 16 627 lb, 12 470.
#[test]
fn a_choker_keeps_three_quarters() {
    for (straight, choker) in [(9_900.0, 7_425.0), (16_627.0, 12_470.0)] {
        let needed = sling_rating(lb(choker), 1, at(90.0), Hitch::Choker).unwrap();
        near(needed.get::<pound>(), straight, 0.0001);
    }
}

/// A basket carries 2·sin β of the straight rating (ASME B30.9; 29 CFR 1926.251's tables for basket hitches, from
/// memory): 2.000, 1.732, 1.414, 1.000 at 90, 60, 45, 30°.
#[test]
fn a_basket_carries_by_the_sine() {
    for (degrees, times) in [(90.0, 2.0), (60.0, 1.732), (45.0, 1.414), (30.0, 1.0)] {
        near(carries(1000.0, 1, degrees, Hitch::Basket) / 1000.0, times, 0.001);
        near(
            carries(1000.0, 2, degrees, Hitch::Basket) / 1000.0,
            2.0 * times,
            0.001,
        );
    }
    // Not this: a flat basket carries no double.
    assert!(carries(1000.0, 1, 30.0, Hitch::Basket) < 1001.0);
    assert!(matches!(
        sling_rating(lb(1000.0), 1, at(25.0), Hitch::Basket),
        Err(SlingError::TooFlat(_))
    ));
}

/// A rigging paper's worked numbers (S): two straight slings, 1 000 lb, length 10, height 5 ft (30°): factor 2.0, each
/// rated 1 000 lb; length 6, height 4 ft: reduction 4/6 = 0.667. And the same paper's practice question: length × load/(2 ×
/// height), 16 ft, 15 000 lb, 12 ft: 10 000 lb.
#[test]
fn length_over_height() {
    let by_sides = |length: f64, height: f64| at((height / length).asin().to_degrees());
    let needed = |load, length, height| {
        rating_needed(lb(load), 2, by_sides(length, height))
            .unwrap()
            .get::<pound>()
    };
    near(needed(1000.0, 10.0, 5.0), 1000.0, 1e-6);
    near(needed(15_000.0, 16.0, 12.0), 10_000.0, 1e-6);
    near(500.0 / needed(1000.0, 6.0, 4.0), 0.667, 0.001);
}

/// Shoulder-type eyebolts (ASME B30.26, from memory): plumb all of it, at 45° 0.3 to 0.5 of it, flatter not at all.
#[test]
fn eyebolts_lose_most_of_it_at_an_angle() {
    let needed = |degrees| eyebolt_rating(lb(300.0), at(degrees)).map(|mass| mass.get::<pound>().round());
    assert_eq!(needed(90.0), Ok(300.0));
    assert_eq!(needed(60.0), Ok(1000.0));
    assert_eq!(needed(45.0), Ok(1000.0));
    assert_eq!(needed(44.0), Err(SlingError::Eyebolt));
}

/// Two lifting points 10 ft apart, the centre 4 ft from one: 60 and 40 % (statics; army rigging papers print the same sum,
/// from memory): of 10 000 lb 6 000 on the nearer.
#[test]
fn the_nearer_point_carries_more() {
    let feet = Length::new::<foot>;
    let share = heavier_share(feet(10.0), feet(4.0)).unwrap().get::<ratio>();
    near(share * 10_000.0, 6_000.0, 1e-9);
    near(
        heavier_share(feet(10.0), feet(5.0)).unwrap().get::<ratio>(),
        0.5,
        1e-9,
    );
    near(
        heavier_share(feet(8.0), feet(6.0)).unwrap().get::<ratio>(),
        0.75,
        1e-9,
    );
    for (span, near) in [(10.0, 0.0), (10.0, 10.0), (0.0, 1.0)] {
        assert_eq!(heavier_share(feet(span), feet(near)), Err(SlingError::Centre));
    }
}

/// The hook above the centre, 3 ft from one point and 9 from the other, 9 ft up: tan β 3 and 1 (statics: the heights are one),
/// 71.565° and 45°. 20 and 80 cm at 60°: atan(√3/4).
#[test]
fn the_farther_leg_lies_flatter() {
    let feet = Length::new::<foot>;
    let far = |span: f64, near: f64, angle: f64| farther_angle(feet(span), feet(near), at(angle));
    for (span, to, angle, flatter) in [
        (12.0, 3.0, 3.0_f64.atan().to_degrees(), 45.0),
        (12.0, 9.0, 3.0_f64.atan().to_degrees(), 45.0),
        (100.0, 20.0, 60.0, (3.0_f64.sqrt() / 4.0).atan().to_degrees()),
        (10.0, 5.0, 50.0, 50.0),
        (10.0, 4.0, 90.0, 90.0),
        (10.0, 4.0, 0.0, 0.0),
    ] {
        near(far(span, to, angle).unwrap().get::<degree>(), flatter, 1e-6);
    }
    assert_eq!(far(10.0, 10.0, 60.0), Err(SlingError::Centre));
    assert_eq!(far(10.0, 4.0, 91.0), Err(SlingError::Angle));
}

fn inches(load: f64, reach: (f64, f64), height: (f64, f64)) -> Lift {
    let length = Length::new::<inch>;
    Lift {
        mass: lb(load),
        horizontal_from: length(reach.0),
        horizontal_to: length(reach.1),
        vertical_from: length(height.0),
        vertical_to: length(height.1),
        asymmetry_from: at(0.0),
        asymmetry_to: at(0.0),
        lifts_per_minute: 0.2,
        duration: Duration::Short,
        grip: Grip::Fair,
        placed_with_care: true,
    }
}

/// DHHS (NIOSH) 94-110, example 2, loading supply rolls (from memory; the manual rounds its multipliers, so 4 %): 35 lb,
/// H 15 → 20, V 27 → 10 in, poor hold: 28.0 lb and 1.3 at the start, 18.1 lb and 1.9 at the end.
#[test]
fn both_ends_are_reckoned_and_the_smaller_counts() {
    let rolls = Lift {
        grip: Grip::Poor,
        ..inches(35.0, (15.0, 20.0), (27.0, 10.0))
    };
    let answer = rolls.judge().unwrap();
    near(answer.origin.limit.get::<pound>(), 28.0, 0.04);
    near(answer.origin.index.unwrap(), 1.3, 0.05);
    near(answer.destination.limit.get::<pound>(), 18.1, 0.04);
    near(answer.destination.index.unwrap(), 1.9, 0.05);
    assert!(answer.destination_governs);
    near(answer.governing().limit.get::<pound>(), 18.1, 0.04);
    // The other way about the start decides: the way up is as long, the reach and the height the same.
    let back = Lift {
        grip: Grip::Poor,
        ..inches(35.0, (20.0, 15.0), (10.0, 27.0))
    };
    let answer = back.judge().unwrap();
    near(answer.origin.limit.get::<pound>(), 18.1, 0.04);
    assert!(!answer.destination_governs);
}

/// Two people at a load whose centre is nearer to one: each manages two thirds of the limit, so 60 % of 30 kg, 18, is
/// more than 2/3 of 23 = 15.3 where half of it, 15, isn't.
#[test]
fn the_heavy_end_may_be_too_much_for_one_of_two() {
    let cm = Length::new::<centimeter>;
    let lift = Lift {
        mass: Mass::new::<kilogram>(30.0),
        grip: Grip::Good,
        horizontal_from: cm(25.0),
        horizontal_to: cm(25.0),
        vertical_from: cm(75.0),
        vertical_to: cm(75.0),
        ..inches(0.0, (10.0, 10.0), (30.0, 30.0))
    };
    let alike = lift.judge().unwrap();
    assert_eq!(alike.verdict, LiftVerdict::TwoPeople);
    let share = |near: f64| heavier_share(cm(100.0), cm(near)).unwrap();
    assert_eq!(
        alike.shared(lift.mass, share(50.0)).verdict,
        LiftVerdict::TwoPeople
    );
    assert_eq!(alike.shared(lift.mass, share(40.0)).verdict, LiftVerdict::Hoist);
}
