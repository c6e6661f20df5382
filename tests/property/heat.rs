//! Heat, cold and cooling: no plan passes a limit, and times and temperatures agree with each other.

use halfcase::trade::cooling::{Faces, Wall, window};
use halfcase::trade::fit::Interference;
use halfcase::trade::growth::{grown_by, size_at_20};
use halfcase::trade::heat_plan::{CoolMeans, HoleIn, PlanKind, PlanRequest, plan};
use halfcase::trade::material::Material;
use halfcase::trade::measure::DiameterGrid;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use proptest::prelude::*;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

fn material() -> impl Strategy<Value = Material> {
    prop::sample::select(Material::ALL.to_vec())
}

fn means() -> impl Strategy<Value = Option<CoolMeans>> {
    prop::sample::select(vec![None, Some(CoolMeans::Freezer), Some(CoolMeans::DryIce)])
}

fn request() -> impl Strategy<Value = PlanRequest> {
    (
        (
            3.0..180.0_f64,
            -0.001..0.002_f64,
            0.0..0.001_f64,
            prop::bool::ANY,
            material(),
            material(),
        ),
        (
            -20.0..200.0_f64,
            -20.0..200.0_f64,
            prop::bool::ANY,
            means(),
            prop::bool::ANY,
            -30.0..50.0_f64,
        ),
    )
        .prop_map(
            |(
                (diameter, most, width, in_part, housing, part),
                (housing_limit, part_limit, may_heat, may_cool, may_press, room),
            )| PlanRequest {
                diameter: mm(diameter),
                interference: Interference {
                    least: mm(diameter * (most - width)),
                    most: mm(diameter * most),
                },
                hole_in: if in_part { HoleIn::Part } else { HoleIn::Housing },
                housing,
                part,
                housing_limit: celsius(housing_limit),
                part_limit: celsius(part_limit),
                may_heat,
                may_cool,
                may_press,
                slip_clearance: mm(diameter * 0.0005),
                room: celsius(room),
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn a_plan_keeps_within_every_limit(request in request()) {
        let plan = plan(&request).unwrap();
        for to in [plan.housing_to, plan.part_to].into_iter().flatten().filter(|to| *to > request.room) {
            prop_assert!(to <= request.housing_limit && to <= request.part_limit);
            prop_assert!(to <= request.housing.heat_limit() && to <= request.part.heat_limit());
            prop_assert!(request.may_heat);
        }
        // A rounding in the last bits is not a loss of clearance.
        let slack = mm(1e-9);
        match plan.which {
            PlanKind::SlideCold => prop_assert!(plan.clearance_at_fit + slack >= mm(0.0)),
            PlanKind::PressCold => prop_assert!(request.may_press && plan.clearance_at_fit < mm(0.0)),
            PlanKind::NoPlan => prop_assert!(!request.may_press),
            _ => prop_assert!(plan.clearance_at_fit + slack >= request.slip_clearance),
        }
        if matches!(plan.which, PlanKind::CoolPart | PlanKind::CoolShaft | PlanKind::HeatAndCool) {
            prop_assert!(request.may_cool.is_some());
        }
        for (kind, why) in &plan.rejected {
            prop_assert!(*kind != plan.which && !why.to_string().is_empty());
        }
    }

    #[test]
    fn home_by_lies_between_the_plan_and_the_room(request in request()) {
        let plan = plan(&request).unwrap();
        for (to, until) in [(plan.housing_to, plan.housing_until), (plan.part_to, plan.part_until)] {
            prop_assert_eq!(to.is_some(), until.is_some());
            let (Some(to), Some(until)) = (to, until) else { continue };
            if to > request.room {
                prop_assert!(until <= to);
            } else {
                prop_assert!(until >= to);
            }
        }
    }

    #[test]
    fn tighter_fits_never_need_less_heat(request in request(), more in 0.0..0.0005_f64) {
        let tighter = PlanRequest {
            interference: Interference {
                most: request.interference.most + request.diameter * more,
                ..request.interference
            },
            ..request
        };
        let heated = |request: &PlanRequest| {
            let plan = plan(request).unwrap();
            match plan.which {
                PlanKind::HeatHousing => plan.housing_to,
                PlanKind::HeatPart => plan.part_to,
                _ => None,
            }
        };
        if let (Some(one), Some(other)) = (heated(&request), heated(&tighter)) {
            prop_assert!(one <= other);
        }
    }

    #[test]
    fn any_numbers_are_planned_or_refused(numbers in prop::array::uniform7(prop::num::f64::ANY)) {
        let [diameter, least, most, limit, part_limit, slip, room] = numbers;
        let request = PlanRequest {
            diameter: mm(diameter),
            interference: Interference { least: mm(least), most: mm(most) },
            hole_in: HoleIn::Housing,
            housing: Material::CastAluminium,
            part: Material::Steel,
            housing_limit: celsius(limit),
            part_limit: celsius(part_limit),
            may_heat: true,
            may_cool: Some(CoolMeans::DryIce),
            may_press: true,
            slip_clearance: mm(slip),
            room: celsius(room),
        };
        if let Ok(plan) = plan(&request) {
            prop_assert!(plan.clearance_at_fit.get::<millimeter>().is_finite());
        }
    }

    #[test]
    fn any_growth_and_cooling_is_answered_or_refused(numbers in prop::array::uniform4(prop::num::f64::ANY)) {
        let [size, from, to, room] = numbers;
        if let Ok(grown) = grown_by(mm(size), Material::Bronze.expansion(), celsius(from), celsius(to)) {
            prop_assert!(grown > mm(0.0));
        }
        if let Ok(size) = size_at_20(mm(size), Material::Magnesium, celsius(from)) {
            prop_assert!(size > mm(0.0));
        }
        let wall = Wall { material: Material::Steel, thickness: mm(size), faces: Faces::One };
        if let Ok(open) = window(&wall, celsius(from), celsius(to), celsius(room)) {
            prop_assert!(open.longest.get::<second>().is_finite() && open.shortest <= open.longest);
        }
        let readings_mm = [[Some(size), Some(size)], [Some(size), Some(size)], [Some(size), Some(to)]];
        let grid = DiameterGrid { at: celsius(from), material: Material::Bronze, readings_mm };
        if let Ok(shape) = grid.shape() {
            prop_assert!(shape.smallest <= shape.mean + mm(1e-9) && shape.mean <= shape.largest + mm(1e-9));
        }
    }

    #[test]
    fn growing_there_and_back_is_the_same_size(
        size in 3.0..180.0_f64,
        from in -78.0..150.0_f64,
        to in -78.0..150.0_f64,
        material in material(),
    ) {
        let there = grown_by(mm(size), material.expansion(), celsius(from), celsius(to)).unwrap();
        let back = grown_by(there, material.expansion(), celsius(to), celsius(from)).unwrap();
        // First order: what is left is the square of the strain.
        prop_assert!((back - mm(size)).get::<micrometer>().abs() < size * 0.06);
        prop_assert!((to > from) == (there > mm(size)) || (to - from).abs() < 1e-6);
    }

    #[test]
    fn the_window_ends_at_its_temperature(
        start in 40.0..150.0_f64,
        share in 0.01..0.99_f64,
        room in -10.0..35.0_f64,
        thickness in 1.0..40.0_f64,
        material in material(),
    ) {
        let wall = Wall { material, thickness: mm(thickness), faces: Faces::Both };
        let until = room + (start - room) * share;
        let open = window(&wall, celsius(start), celsius(until), celsius(room)).unwrap();
        // Newton's cooling: T(t) = T_a + (T_0 − T_a)·e^(−t/τ), quick and slow each with its own τ.
        let tau = wall.time_constant().unwrap();
        for (time, tau) in [(open.shortest, tau.shortest), (open.longest, tau.longest)] {
            let after = room + (start - room) * (-time.get::<second>() / tau.get::<second>()).exp();
            prop_assert!((after - until).abs() < 1e-6);
        }
    }
}
