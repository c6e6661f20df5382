//! Hitches, eyebolts, another reach at the end, a centre that isn't midway: planned, answered, kept.

use halfcase::job::field;
use halfcase::job::kinds::lift::words::{headline, rows, summary};
use halfcase::job::kinds::lift::{Hoist, LiftingAnswer, answer, fields};
use halfcase::job::kinds::{LiftWay, LiftWork, Work};
use halfcase::job::sheet::{Step, StepId};
use halfcase::trade::lift::LiftVerdict;
use halfcase::trade::quantity::MassUnit;
use halfcase::trade::sling::Hitch;

fn typed(work: &mut LiftWork, name: &str, value: &str) {
    field::set(&fields::TABLE, work, "lift", &format!("lift/{name}"), value).unwrap();
}

fn row(work: &LiftWork, name: &str) -> String {
    let found = rows(work, &answer(work, Hoist::default()), MassUnit::Kilogram);
    found
        .into_iter()
        .find(|(row, _)| *row == name)
        .map_or(String::new(), |(_, words)| words)
}

fn number(work: &LiftWork) -> String {
    headline(&answer(work, Hoist::default()), MassUnit::Kilogram).number
}

/// 48/(2·sin 60°) = 27.7 kg a leg; over 0.75, 37.0; in baskets half of it, 13.9. Off centre, 60 % on one: 33.3.
#[test]
fn the_hitch_and_the_centre_change_what_a_leg_must_be_rated_for() {
    let mut work = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::sling(),
        ..LiftWork::default()
    };
    assert_eq!(number(&work), "27.8");
    typed(&mut work, "hitch", "1");
    assert_eq!((work.hitch, number(&work).as_str()), (Hitch::Choker, "37.0"));
    assert!(row(&work, "choker").contains("75 %"));
    typed(&mut work, "hitch", "2");
    assert_eq!(number(&work), "13.9");
    typed(&mut work, "hitch", "0");
    typed(&mut work, "span", "100");
    typed(&mut work, "near", "40");
    assert_eq!(number(&work), "33.3");
    assert_eq!(row(&work, "off centre"), "the nearer one carries 60 %");
    typed(&mut work, "near", "200");
    let head = headline(&answer(&work, Hoist::default()), MassUnit::Kilogram);
    assert!(
        head.refused && head.verdict.contains("between the two lifting points"),
        "{head:?}"
    );
}

/// 27.7 kg at 60° over 0.3 are 92.4 kg; at 40° no eyebolt is pulled.
#[test]
fn eyebolts_are_rated_for_the_angle() {
    let mut work = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::sling(),
        eyebolts: true,
        ..LiftWork::default()
    };
    assert!(
        row(&work, "eyebolts").starts_with("each rated 92.4 kg straight up"),
        "{}",
        row(&work, "eyebolts")
    );
    typed(&mut work, "angle", "40");
    let head = headline(&answer(&work, Hoist::default()), MassUnit::Kilogram);
    assert!(head.refused && head.verdict.contains("flatter than 45°"));
    // One leg hangs plumb.
    typed(&mut work, "legs", "1");
    assert!(row(&work, "eyebolts").starts_with("each rated 48.0 kg"));
}

/// 23·25/H·(1 − 0.003·|V − 75|)·0.895·0.95 or 1: 40 cm out at 30 cm, 10.5 kg; 60 cm out at 90 cm, 8.1.
#[test]
fn the_smaller_of_both_ends_counts() {
    let mut work = LiftWork::default();
    assert_eq!(number(&work), "10");
    typed(&mut work, "reach_to", "60");
    assert_eq!(number(&work), "8.1");
    assert_eq!(row(&work, "decided"), "where it is set down");
    assert_eq!(row(&work, "where it is picked up"), "up to 10 kg");
    assert_eq!(row(&work, "where it is set down"), "up to 8.1 kg");
    assert!(!summary(&work, &answer(&work, Hoist::default()), MassUnit::Kilogram).contains("picked up: "));
}

/// 13 kg with its centre nearer to one of two.
#[test]
fn two_lifters_share_by_the_centre() {
    let verdict = |work: &LiftWork| match answer(work, Hoist::default()) {
        Ok(LiftingAnswer::Hands(hands)) => hands.verdict,
        other => panic!("{other:?}"),
    };
    let mut work = LiftWork {
        mass_kg: 13.0,
        ..LiftWork::default()
    };
    assert_eq!(verdict(&work), LiftVerdict::TwoPeople);
    typed(&mut work, "span", "80");
    typed(&mut work, "near", "30");
    // 62.5 % of 13 kg are 8.1, over two thirds of 10.5.
    assert_eq!(verdict(&work), LiftVerdict::Hoist);
}

#[test]
fn what_is_told_is_kept_and_what_is_not_is_left_out() {
    let mut work = LiftWork {
        hitch: Hitch::Basket,
        eyebolts: true,
        ..LiftWork::default()
    };
    for (name, value) in [("reach_to", "55"), ("span", "80"), ("near", "30")] {
        typed(&mut work, name, value);
    }
    let step = Step::new(StepId(1), "Engine", Work::Lift(work));
    let text = serde_json::to_string(&step).unwrap();
    assert_eq!(serde_json::from_str::<Step>(&text).unwrap(), step);
    let plain = serde_json::to_string(&LiftWork::default()).unwrap();
    for new in ["reach_to", "hitch", "eyebolts", "span", "near"] {
        assert!(!plain.contains(new), "{plain}");
    }
}
