//! Hitches, eyebolts, shares: what holds for any of them.

use halfcase::trade::quantity::{Angle, Length, Mass};
use halfcase::trade::sling::{Hitch, eyebolt_rating, heavier_share, rating_needed, sling_rating};
use proptest::prelude::*;
use uom::si::angle::degree;
use uom::si::length::centimeter;
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn a_choker_asks_for_more_and_a_basket_for_half(kg in 0.1..5000.0_f64, legs in 2_u8..=4, deg in 30.0..90.0_f64) {
        let (load, angle) = (Mass::new::<kilogram>(kg), Angle::new::<degree>(deg));
        let needed = |hitch| sling_rating(load, legs, angle, hitch).unwrap();
        let straight = rating_needed(load, legs, angle).unwrap();
        prop_assert_eq!(needed(Hitch::Straight), straight);
        prop_assert!(needed(Hitch::Choker) > straight * 1.3);
        prop_assert!((needed(Hitch::Basket) * 2.0 - straight).get::<kilogram>().abs() < 1e-6 * kg);
        if let Ok(rating) = eyebolt_rating(straight, angle) {
            prop_assert!(rating >= straight && deg >= 45.0);
        } else {
            prop_assert!(deg < 45.0);
        }
    }

    #[test]
    fn the_heavier_of_two_carries_from_half_to_all(span in 1.0..900.0_f64, near in 0.001..0.999_f64) {
        let cm = Length::new::<centimeter>;
        let share = heavier_share(cm(span), cm(span * near)).unwrap().get::<ratio>();
        prop_assert!((0.5..1.0).contains(&share));
        let other = heavier_share(cm(span), cm(span * (1.0 - near))).unwrap().get::<ratio>();
        prop_assert!((share - other).abs() < 1e-9);
    }

    #[test]
    fn any_numbers_are_answered_or_refused(a in prop::num::f64::ANY, b in prop::num::f64::ANY, legs in prop::num::u8::ANY) {
        for hitch in Hitch::ALL {
            if let Ok(rating) = sling_rating(Mass::new::<kilogram>(a), legs, Angle::new::<degree>(b), hitch) {
                prop_assert!(rating.get::<kilogram>().is_finite());
            }
        }
        let _ = eyebolt_rating(Mass::new::<kilogram>(a), Angle::new::<degree>(b));
        let _ = heavier_share(Length::new::<centimeter>(a), Length::new::<centimeter>(b));
    }
}
