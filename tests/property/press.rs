//! Press fits: finite for any input, and monotone where the physics is.

use halfcase::trade::fit::Interference;
use halfcase::trade::hoist::{BoomPosition, derated, margin, rating_at};
use halfcase::trade::material::Material;
use halfcase::trade::measure::Allowed;
use halfcase::trade::press::{PressFit, Push, tools};
use halfcase::trade::quantity::{Angle, Length, Mass};
use halfcase::trade::sling::{angle_from_spread, leg_tension};
use proptest::prelude::*;
use uom::si::angle::degree;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn material() -> impl Strategy<Value = Material> {
    prop::sample::select(Material::ALL.to_vec())
}

/// A fit that makes sense, from a pin to a wheel hub.
fn fit() -> impl Strategy<Value = PressFit> {
    (
        3.0..180.0_f64,
        1.0..100.0_f64,
        0.0..0.95_f64,
        1.05..5.0_f64,
        material(),
        material(),
    )
        .prop_map(|(diameter, length, inside, outside, part, housing)| PressFit {
            diameter: mm(diameter),
            length: mm(length),
            part_inside: mm(diameter * inside),
            housing_outside: mm(diameter * outside),
            part,
            housing,
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_numbers_are_answered_or_refused(
        sizes in prop::array::uniform4(prop::num::f64::ANY),
        least in prop::num::f64::ANY,
        most in prop::num::f64::ANY,
    ) {
        let fit = PressFit {
            diameter: mm(sizes[0]),
            length: mm(sizes[1]),
            part_inside: mm(sizes[2]),
            housing_outside: mm(sizes[3]),
            part: Material::Steel,
            housing: Material::CastAluminium,
        };
        let interference = Interference { least: mm(least), most: mm(most) };
        if let Ok(pressure) = fit.pressure(mm(most)) {
            prop_assert!(pressure.get::<pascal>().is_finite() && pressure.get::<pascal>() >= 0.0);
        }
        if let Ok(force) = fit.force(&interference) {
            prop_assert!(force.most.get::<newton>().is_finite());
        }
        if let Ok(stress) = fit.stress(&interference) {
            prop_assert!(stress.housing_share.get::<ratio>().is_finite());
            prop_assert!(stress.part_share.get::<ratio>().is_finite());
        }
        let _ = tools(&Push::IntoBore {
            bore: mm(sizes[0]),
            ring_inside: mm(sizes[1]),
            shoulder: Some(mm(sizes[2])),
            boss_outside: mm(sizes[3]),
        });
    }

    #[test]
    fn more_interference_more_pressure(fit in fit(), share in 0.0..0.009_f64, more in 1.0..1.1_f64) {
        let at = |share: f64| fit.pressure(fit.diameter * share).unwrap();
        prop_assert!(at(share) <= at(share * more));
        prop_assert!(at(-share).get::<pascal>() == 0.0);
    }

    #[test]
    fn thicker_walls_more_pressure(fit in fit(), more in 1.001..2.0_f64) {
        let delta = fit.diameter * 0.001;
        let thicker = PressFit { housing_outside: fit.housing_outside * more, ..fit };
        prop_assert!(fit.pressure(delta).unwrap() <= thicker.pressure(delta).unwrap());
        let solid = PressFit { part_inside: mm(0.0), ..fit };
        prop_assert!(fit.pressure(delta).unwrap() <= solid.pressure(delta).unwrap());
    }

    #[test]
    fn the_range_is_a_range(fit in fit(), least in -0.001..0.001_f64, width in 0.0..0.001_f64) {
        let range = Interference {
            least: fit.diameter * least,
            most: fit.diameter * (least + width),
        };
        let force = fit.force(&range).unwrap();
        prop_assert!(force.least <= force.most);
    }

    #[test]
    fn drivers_bear_on_the_ring_and_clear_the_rest(
        bore in 5.0..200.0_f64,
        ring in 0.2..1.0_f64,
        shoulder in 0.2..1.2_f64,
        boss in 0.8..3.0_f64,
    ) {
        let (bore, ring_inside) = (mm(bore), mm(bore * ring));
        let push = Push::IntoBore {
            bore,
            ring_inside,
            shoulder: Some(bore * shoulder),
            boss_outside: bore * boss,
        };
        if let Ok(tools) = tools(&push) {
            prop_assert!(ring_inside < tools.driver_inside && tools.driver_outside < bore);
            prop_assert!(tools.driver_inside < tools.driver_outside);
            prop_assert!(tools.support_inside < tools.support_outside);
            prop_assert!(tools.support_outside <= bore * boss);
        }
    }

    #[test]
    fn slings_and_hoists_answer_or_refuse(
        load in prop::num::f64::ANY,
        legs in 0_u8..12,
        angle in prop::num::f64::ANY,
        reach in prop::num::f64::ANY,
    ) {
        let load = Mass::new::<kilogram>(load);
        if let Ok(tension) = leg_tension(load, legs, Angle::new::<degree>(angle)) {
            prop_assert!(tension.get::<newton>().is_finite() && tension.get::<newton>() > 0.0);
        }
        if let Ok(found) = angle_from_spread(mm(reach), mm(angle)) {
            prop_assert!((0.0..=90.0 + 1e-9).contains(&found.get::<degree>()));
        }
        let plate = [BoomPosition { reach: mm(reach), rating: load }];
        let _ = rating_at(&plate, mm(1000.0));
        let _ = derated(plate[0], mm(angle));
        if let Ok(margin) = margin(load, Mass::new::<kilogram>(250.0)) {
            prop_assert!(margin.share.get::<ratio>().is_finite());
        }
        let _ = Allowed { least: Some(mm(reach)), most: Some(mm(angle)) }.judge(mm(1.0));
    }

    #[test]
    fn flatter_legs_carry_more(load in 1.0..500.0_f64, angle in 30.0..89.0_f64, flatter in 0.0..1.0_f64) {
        let at = |degrees| leg_tension(Mass::new::<kilogram>(load), 2, Angle::new::<degree>(degrees)).unwrap();
        prop_assert!(at(angle) <= at(30.0 + (angle - 30.0) * flatter));
    }
}
