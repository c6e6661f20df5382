//! A fit as it runs, what it takes from a bearing, and time in the oven: what holds for any input.

use halfcase::trade::bearing_fit::{Ring, clearance_lost};
use halfcase::trade::fit::{Interference, running};
use halfcase::trade::heat_plan::oven_time;
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use proptest::prelude::*;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;

fn material() -> impl Strategy<Value = Material> {
    prop::sample::select(Material::ALL.to_vec())
}

fn fit() -> impl Strategy<Value = Interference> {
    (-200.0..400.0_f64, 0.0..200.0_f64).prop_map(|(least, wide)| Interference {
        least: Length::new::<micrometer>(least),
        most: Length::new::<micrometer>(least + wide),
    })
}

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn the_widest_holds_the_usual_and_20_degrees_change_nothing(
        cold in fit(), mm in 1.0..630.0_f64, hole in material(), part in material(), at in -100.0..300.0_f64,
    ) {
        let diameter = Length::new::<millimeter>(mm);
        let hot = running(&cold, diameter, hole, part, celsius(at)).unwrap();
        let whisker = Length::new::<micrometer>(1e-6);
        prop_assert!(hot.widest.least <= hot.usual.least + whisker && hot.usual.most <= hot.widest.most + whisker);
        prop_assert!(hot.usual.least <= hot.usual.most && hot.widest.least <= hot.widest.most);
        let wide = |fit: Interference| fit.most - fit.least;
        prop_assert!((wide(hot.usual) - wide(cold)).abs() < whisker);
        let same = running(&cold, diameter, hole, part, celsius(20.0)).unwrap();
        prop_assert!((same.usual.least - cold.least).abs() < whisker && (same.widest.most - cold.most).abs() < whisker);
    }

    #[test]
    fn hotter_is_looser_where_the_hole_grows_more(cold in fit(), mm in 1.0..630.0_f64, at in 21.0..299.0_f64) {
        let diameter = Length::new::<millimeter>(mm);
        let hot = |at| running(&cold, diameter, Material::CastAluminium, Material::BearingSteel, celsius(at)).unwrap();
        prop_assert!(hot(at + 1.0).usual.most < hot(at).usual.most);
        prop_assert!(hot(at).usual.most < cold.most);
    }

    #[test]
    fn a_bearing_never_gains_clearance_nor_loses_more_than_the_fit(cold in fit()) {
        for ring in [Ring::Inner, Ring::Outer] {
            let (least, most) = clearance_lost(ring, &cold);
            prop_assert!(Length::default() <= least && least <= most);
            prop_assert!(most <= cold.most.max(Length::default()));
        }
    }

    #[test]
    fn thicker_takes_longer(mm in 0.1..400.0_f64, more in 0.01..50.0_f64) {
        let time = |mm| oven_time(Length::new::<millimeter>(mm)).unwrap();
        prop_assert!(time(mm).shortest < time(mm + more).shortest);
        prop_assert!(time(mm).shortest < time(mm).longest);
    }
}
