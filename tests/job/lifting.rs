//! Lifts as the screen words them, each figure against `trade` itself or a sum done by hand.

use halfcase::job::field::{Kept, Number};
use halfcase::job::kinds::lift::fields::{HANDS, LOAD, SLING};
use halfcase::job::kinds::lift::words::{headline, rows, summary};
use halfcase::job::kinds::lift::{Hoist, Hoisted, LiftingAnswer, RatedBy, answer, by_hand, hoisted};
use halfcase::job::kinds::{LiftWay, LiftWork};
use halfcase::trade::hoist::{BoomPosition, HoistError};
use halfcase::trade::lift::Grip;
use halfcase::trade::quantity::{Angle, Length, Mass, MassUnit};
use halfcase::trade::sling::{leg_tension, rating_needed};
use uom::si::angle::degree;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

const NONE: Hoist<'static> = Hoist {
    boom: &[],
    rating: None,
};

fn row(rows: &[(&'static str, String)], name: &str) -> String {
    rows.iter()
        .find(|(row, _)| *row == name)
        .map_or(String::new(), |(_, words)| words.clone())
}

fn kg(kg: f64) -> Mass {
    Mass::new::<kilogram>(kg)
}

fn engine_at_arms_length() -> LiftWork {
    LiftWork {
        load: "engine".to_owned(),
        mass_kg: 48.0,
        way: LiftWay::Hands {
            reach_cm: 60.0,
            from_cm: 30.0,
            to_cm: 90.0,
            turn_deg: 0.0,
            grip: Grip::Fair,
        },
        ..LiftWork::default()
    }
}

fn slung(legs: u8, angle_deg: f64) -> LiftWork {
    LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Sling { legs, angle_deg },
        ..LiftWork::default()
    }
}

/// 23 · 25/60 · (1 − 0.003·45) · (0.82 + 4.5/60) · 0.95 = 7.05 kg; LI 48/7.05 = 6.8.
#[test]
fn a_48_kg_engine_at_arms_length_is_refused_by_hand() {
    let work = engine_at_arms_length();
    let answer = answer(&work, NONE);
    let head = headline(&answer, MassUnit::Kilogram);
    assert_eq!((head.number.as_str(), head.unit.as_str()), ("7.0", "kg"));
    assert_eq!(head.verdict, "Not by hand: use a hoist.");
    assert!(head.refused);
    let facts = rows(&work, &answer, MassUnit::Kilogram);
    assert_eq!(row(&facts, "load"), "engine, 48 kg");
    assert_eq!(row(&facts, "lifting index"), "6.8");
    assert_eq!(row(&facts, "takes most off"), "the reach, × 0.42");
    // The same in pounds: 7.05 kg are 15.5 lb, 48 kg 105.82 lb.
    assert_eq!(headline(&answer, MassUnit::Pound).number, "15");
    assert_eq!(
        row(&rows(&work, &answer, MassUnit::Pound), "load"),
        "engine, 105.82 lb"
    );
    assert_eq!(
        answer.ok(),
        Some(LiftingAnswer::Hands(by_hand(&work).unwrap().judge().unwrap()))
    );
}

#[test]
fn a_turn_and_a_poor_grip_lower_the_limit() {
    let mut work = engine_at_arms_length();
    let limit = |work: &LiftWork| match answer(work, NONE) {
        Ok(LiftingAnswer::Hands(hands)) => hands.governing().limit.get::<kilogram>(),
        other => panic!("{other:?}"),
    };
    let straight = limit(&work);
    if let LiftWay::Hands { turn_deg, .. } = &mut work.way {
        *turn_deg = 90.0;
    }
    // Set down at 90 cm, turned: 23·25/60·0.955·0.895·(1 − 0.0032·90) = 5.83 kg.
    assert!((limit(&work) - 5.832).abs() < 0.01, "{}", limit(&work));
    if let LiftWay::Hands { grip, .. } = &mut work.way {
        *grip = Grip::Poor;
    }
    assert!((limit(&work) - 5.249).abs() < 0.01);
    assert!(straight > limit(&work));
}

/// 23·25/40·0.955·0.9·0.95 or so: whatever the numbers, the plate never says more than the limit, nor
/// less than a leg needs.
#[test]
fn a_limit_is_rounded_down_and_a_need_up() {
    for unit in [MassUnit::Kilogram, MassUnit::Pound] {
        for cm in 25..63 {
            let mut work = engine_at_arms_length();
            if let LiftWay::Hands { reach_cm, .. } = &mut work.way {
                *reach_cm = f64::from(cm);
            }
            let answer = answer(&work, NONE);
            let Ok(LiftingAnswer::Hands(hands)) = &answer else {
                panic!("hands were asked for");
            };
            let printed: f64 = headline(&answer, unit).number.parse().unwrap();
            let limit = unit.value_of(hands.governing().limit);
            assert!(
                printed <= limit + 1e-6 && printed > limit * 0.9,
                "{printed} of {limit}"
            );
        }
        for deg in 30..=90 {
            let answer = answer(&slung(2, f64::from(deg)), NONE);
            let Ok(LiftingAnswer::Sling { leg_rating, .. }) = &answer else {
                panic!("a sling was asked for");
            };
            let printed: f64 = headline(&answer, unit).number.parse().unwrap();
            let needed = unit.value_of(*leg_rating);
            assert!(
                printed >= needed - 1e-6 && printed < needed * 1.01,
                "{printed} of {needed}"
            );
        }
    }
}

#[test]
fn a_two_leg_sling_at_25_degrees_is_refused() {
    let head = headline(&answer(&slung(2, 25.0), NONE), MassUnit::Kilogram);
    assert!(head.refused);
    assert_eq!(head.number, "—");
    assert!(
        head.verdict.starts_with("25° from the horizontal is too flat"),
        "{}",
        head.verdict
    );
}

/// 48/(2·sin 60°) = 27.713 kg, 271.8 N (ASME B30.9: factor 1.155).
#[test]
fn a_sling_at_60_degrees_is_the_trades() {
    let work = slung(2, 60.0);
    let answer = answer(&work, NONE);
    let head = headline(&answer, MassUnit::Kilogram);
    assert_eq!(
        (head.says, head.number.as_str()),
        ("each leg must be rated for", "27.8")
    );
    assert!(!head.refused);
    assert!(head.verdict.contains("not known"));
    assert_eq!(
        row(&rows(&work, &answer, MassUnit::Kilogram), "pull in each leg"),
        "0.27 kN"
    );
    assert_eq!(
        row(&rows(&work, &answer, MassUnit::Pound), "pull in each leg"),
        "61 lbf"
    );
    let angle = Angle::new::<degree>(60.0);
    assert_eq!(
        answer,
        Ok(LiftingAnswer::Sling {
            leg: leg_tension(kg(48.0), 2, angle).unwrap(),
            leg_rating: rating_needed(kg(48.0), 2, angle).unwrap(),
            hoist: Hoisted::Unknown,
        })
    );
    // One leg hangs plumb, whatever angle was left there.
    assert_eq!(
        headline(&super::lifting::answer(&slung(1, 10.0), NONE), MassUnit::Kilogram).number,
        "48.0"
    );
}

fn position(reach_mm: f64, rating_kg: f64) -> BoomPosition {
    BoomPosition {
        reach: Length::new::<millimeter>(reach_mm),
        rating: kg(rating_kg),
    }
}

#[test]
fn the_boom_decides_what_the_hoist_has_left() {
    let boom = [
        position(900.0, 250.0),
        position(1_200.0, 100.0),
        position(1_500.0, 45.0),
    ];
    let hoist = Hoist {
        boom: &boom,
        rating: Some(kg(1_000.0)),
    };
    let says = |reach| match hoisted(kg(48.0), reach, hoist) {
        Hoisted::Margin(margin, by) => (margin.rating.get::<kilogram>(), by),
        other => panic!("{other:?}"),
    };
    assert_eq!(says(Some(900.0)), (250.0, RatedBy::Plate));
    // Between two holes the outer one counts.
    assert_eq!(says(Some(1_000.0)), (100.0, RatedBy::Plate));
    // No position chosen: the least of the plate.
    assert_eq!(says(None), (45.0, RatedBy::LeastOfPlate));
    assert_eq!(
        hoisted(kg(48.0), Some(1_600.0), hoist),
        Hoisted::Refused(HoistError::TooFar)
    );

    let mut work = slung(2, 60.0);
    work.boom_mm = Some(1_200.0);
    let answered = answer(&work, hoist);
    assert_eq!(
        headline(&answered, MassUnit::Kilogram).verdict,
        "The hoist takes it."
    );
    assert_eq!(
        row(&rows(&work, &answered, MassUnit::Kilogram), "left"),
        "52.0 kg; 48 % used"
    );
    work.boom_mm = None;
    assert!(headline(&answer(&work, hoist), MassUnit::Kilogram).refused);
    work.boom_mm = Some(1_600.0);
    assert!(headline(&answer(&work, hoist), MassUnit::Kilogram).refused);
}

/// 100 kg at 1 m, the hook at 1.25 m: the same moment leaves 80 kg.
#[test]
fn one_position_further_out_is_an_estimate_by_the_moment() {
    let boom = [position(1_000.0, 100.0)];
    let hoist = Hoist {
        boom: &boom,
        rating: None,
    };
    let Hoisted::Margin(margin, by) = hoisted(kg(48.0), Some(1_250.0), hoist) else {
        panic!("an estimate was due");
    };
    assert_eq!(by, RatedBy::Moment);
    assert!((margin.rating.get::<kilogram>() - 80.0).abs() < 1e-9);
}

#[test]
fn the_record_says_what_was_lifted_and_how() {
    let work = engine_at_arms_length();
    assert_eq!(
        summary(&work, &answer(&work, NONE), MassUnit::Kilogram),
        "one person may lift here 7.0 kg; Not by hand: use a hoist.; load: engine, 48 kg; lifting index: 6.8; \
         decided: where it is picked up; takes most off: the reach, × 0.42"
    );
}

#[test]
fn each_field_reads_back_what_it_keeps_in_either_unit() {
    let check = |fields: &[Number<LiftWork>], work: LiftWork| {
        for field in fields {
            for unit in [MassUnit::Kilogram, MassUnit::Pound] {
                let mut work = work.clone();
                (field.set)(&mut work, field.judge(40.0, unit).unwrap());
                let kept = (field.get)(&work).unwrap();
                assert_eq!(field.kept.text(kept, unit), "40", "{}", field.name);
                assert!(field.judge(-1.0, unit).is_err(), "{}", field.name);
                assert!(field.judge(1e5, unit).is_err(), "{}", field.name);
            }
        }
    };
    check(&LOAD, engine_at_arms_length());
    check(&HANDS, engine_at_arms_length());
    check(&SLING, slung(2, 60.0));
    // What does not apply reads nothing.
    assert!(HANDS.iter().all(|field| (field.get)(&slung(2, 60.0)).is_none()));
    // 1 lb = 0.453 592 37 kg, 1 in = 2.54 cm (NIST SP 811).
    assert!((LOAD[0].judge(100.0, MassUnit::Pound).unwrap() - 45.359_237).abs() < 1e-9);
    assert_eq!(Kept::Centimetre.text(63.5, MassUnit::Pound), "25");
}
