//! A load off centre under a sling: its farther leg lies flatter than the nearer one, and is judged too. The hook
//! hangs above the centre of gravity, so tan β of the two are as the distances the other way round (statics).

use halfcase::job::kinds::around::Around;
use halfcase::job::kinds::kind::Kind;
use halfcase::job::kinds::lift::how::how;
use halfcase::job::kinds::lift::words::{headline, rows};
use halfcase::job::kinds::lift::{Hoist, answer};
use halfcase::job::kinds::{LiftWay, LiftWork};
use halfcase::trade::caution::Situation;
use halfcase::trade::quantity::MassUnit;
use uom::si::angle::degree;

fn off_centre(near: f64, angle_deg: f64) -> LiftWork {
    LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Sling { legs: 2, angle_deg },
        span_cm: Some(100.0),
        near_cm: Some(near),
        ..LiftWork::default()
    }
}

fn row(work: &LiftWork, name: &str) -> Option<String> {
    let found = rows(work, &answer(work, Hoist::default()), MassUnit::Kilogram);
    found
        .into_iter()
        .find(|(row, _)| *row == name)
        .map(|(_, words)| words)
}

fn verdict(work: &LiftWork) -> (bool, String) {
    let head = headline(&answer(work, Hoist::default()), MassUnit::Kilogram);
    (head.refused, head.verdict)
}

/// 20 and 80 cm, 60° at the nearer leg: atan(tan 60°·20/80) = 23.4°, under the 30° of ASME B30.9.
#[test]
fn a_farther_leg_too_flat_is_refused() {
    let work = off_centre(20.0, 60.0);
    let (refused, words) = verdict(&work);
    assert!(
        refused && words.starts_with("The farther leg stands at 23°"),
        "{words}"
    );
    assert!(
        row(&work, "farther leg")
            .unwrap()
            .starts_with("23° from the horizontal")
    );
    // Told from the other end it is the same load.
    assert_eq!(verdict(&off_centre(80.0, 60.0)), (refused, words));
    // The caution goes by the flatter leg.
    let around = Around::default();
    let lifting = work.situation(&around, Situation::default()).lifting.unwrap();
    let flattest = lifting.sling_angle.unwrap().get::<degree>();
    assert!((flattest - 23.413).abs() < 0.001, "{flattest}");
    // In the middle both stand alike, and one leg has no other.
    assert!(!verdict(&off_centre(50.0, 60.0)).0);
    let mut one = work;
    one.way = LiftWay::Sling {
        legs: 1,
        angle_deg: 60.0,
    };
    assert!(!verdict(&one).0);
    assert_eq!(row(&one, "farther leg"), None);
}

/// 40 and 60 cm, 60° at the nearer leg: atan(tan 60°·40/60) = 49.1°. The nearer pulls 48·0.6/sin 60° = 33.3 kg, the
/// farther 48·0.4/sin 49.1° = 25.4 kg, 0.25 kN.
#[test]
fn the_farther_leg_is_told_with_its_angle_and_pull() {
    let work = off_centre(40.0, 60.0);
    assert!(!verdict(&work).0);
    assert_eq!(
        row(&work, "farther leg").as_deref(),
        Some("49° from the horizontal, pulls 0.25 kN; the angle told is the nearer leg’s")
    );
    let lines = how(&work, &answer(&work, Hoist::default()), MassUnit::Kilogram);
    assert!(
        lines
            .iter()
            .any(|line| line.contains("nearer leg’s angle") && line.contains("49°")),
        "{lines:?}"
    );
}

/// Eyebolts not flatter than 45° (ASME B30.26, from memory): 35 and 65 cm at 60° leave the farther at 43.0°.
#[test]
fn an_eyebolt_under_the_farther_leg_is_judged_too() {
    let on = |work: LiftWork| LiftWork {
        eyebolts: true,
        ..work
    };
    assert!(!verdict(&off_centre(35.0, 60.0)).0);
    let (refused, words) = verdict(&on(off_centre(35.0, 60.0)));
    assert!(refused && words.contains("flatter than 45°"), "{words}");
    assert!(!verdict(&on(off_centre(40.0, 60.0))).0);
    // As good as plumb at the nearer leg an eyebolt bears all of it; the farther, at 68.3°, 0.3 of it decides:
    // 48·0.18/sin 68.3°/0.3 = 31.0 kg, under the nearer's 48·0.82/sin 85° = 39.5.
    assert!(
        row(&on(off_centre(18.0, 85.0)), "eyebolts")
            .unwrap()
            .starts_with("each rated 39.6 kg")
    );
    // 30 and 70 cm at 85°: the farther at 78.5°, 48·0.3/sin 78.5°/0.3 = 49.0, over the nearer's 33.8.
    assert!(
        row(&on(off_centre(30.0, 85.0)), "eyebolts")
            .unwrap()
            .starts_with("each rated 49.0 kg")
    );
}
