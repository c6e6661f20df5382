//! Lifting: any number is answered or refused, and a harder lift never gets a higher limit.

use halfcase::trade::lift::{Duration, Grip, Lift};
use halfcase::trade::quantity::{Angle, Length, Mass};
use proptest::prelude::*;
use uom::si::angle::degree;
use uom::si::length::centimeter;
use uom::si::mass::kilogram;

fn cm(value: f64) -> Length {
    Length::new::<centimeter>(value)
}

fn lift_of(numbers: [f64; 8], duration: Duration, grip: Grip) -> Lift {
    let [
        mass,
        from_reach,
        to_reach,
        from,
        to,
        from_turn,
        to_turn,
        lifts_per_minute,
    ] = numbers;
    Lift {
        mass: Mass::new::<kilogram>(mass),
        horizontal_from: cm(from_reach),
        horizontal_to: cm(to_reach),
        vertical_from: cm(from),
        vertical_to: cm(to),
        asymmetry_from: Angle::new::<degree>(from_turn),
        asymmetry_to: Angle::new::<degree>(to_turn),
        lifts_per_minute,
        duration,
        grip,
        placed_with_care: true,
    }
}

fn duration() -> impl Strategy<Value = Duration> {
    prop::sample::select(vec![Duration::Short, Duration::Moderate, Duration::Long])
}

fn grip() -> impl Strategy<Value = Grip> {
    prop::sample::select(vec![Grip::Good, Grip::Fair, Grip::Poor])
}

fn sane() -> impl Strategy<Value = [f64; 8]> {
    (
        (1.0..60.0_f64, 10.0..70.0_f64, 10.0..70.0_f64, 0.0..190.0_f64),
        (0.0..190.0_f64, 0.0..150.0_f64, 0.0..150.0_f64, 0.0..16.0_f64),
    )
        .prop_map(|((a, b, c, d), (e, f, g, h))| [a, b, c, d, e, f, g, h])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_numbers_are_answered_or_refused(
        numbers in prop::array::uniform8(prop::num::f64::ANY),
        duration in duration(),
        grip in grip(),
    ) {
        if let Ok(answer) = lift_of(numbers, duration, grip).judge() {
            prop_assert!((0.0..=23.0).contains(&answer.governing().limit.get::<kilogram>()));
        }
    }

    #[test]
    fn every_factor_lies_between_nought_and_one(numbers in sane(), duration in duration(), grip in grip()) {
        let answer = lift_of(numbers, duration, grip).judge().unwrap();
        for station in [answer.origin, answer.destination] {
            let m = station.multipliers;
            for factor in [m.horizontal, m.vertical, m.distance, m.asymmetry, m.frequency, m.coupling] {
                prop_assert!((0.0..=1.0).contains(&factor));
            }
            prop_assert_eq!(station.index.is_none(), station.limit.get::<kilogram>() == 0.0);
            prop_assert!(answer.governing().limit <= station.limit || !answer.destination_governs);
        }
    }

    #[test]
    fn further_out_turned_more_or_oftener_never_lifts_more(
        numbers in sane(),
        more in prop::array::uniform3(0.0..20.0_f64),
        duration in duration(),
        grip in grip(),
    ) {
        let limit = |numbers| lift_of(numbers, duration, grip).judge().unwrap().origin.limit;
        let plain = limit(numbers);
        for (place, more) in [1, 5, 7].into_iter().zip(more) {
            let mut harder = numbers;
            harder[place] += more;
            prop_assert!(limit(harder) <= plain);
        }
    }

    #[test]
    fn longer_work_and_a_worse_hold_never_lift_more(numbers in sane()) {
        let limit = |duration, grip| lift_of(numbers, duration, grip).judge().unwrap().origin.limit;
        prop_assert!(limit(Duration::Long, Grip::Good) <= limit(Duration::Moderate, Grip::Good));
        prop_assert!(limit(Duration::Moderate, Grip::Good) <= limit(Duration::Short, Grip::Good));
        prop_assert!(limit(Duration::Short, Grip::Poor) <= limit(Duration::Short, Grip::Fair));
        prop_assert!(limit(Duration::Short, Grip::Fair) <= limit(Duration::Short, Grip::Good));
    }
}
