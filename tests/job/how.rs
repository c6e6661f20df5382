//! How numbers come about, told line by line: each figure in them against a sum done by hand.

use super::{MORNING, hours};
use halfcase::job::clock::{ClockId, CureClock, Standing, in_order};
use halfcase::job::kinds::lift::{Hoist, how as lifting};
use halfcase::job::kinds::seat::{answer, how as seating};
use halfcase::job::kinds::{LiftWay, LiftWork, Seat, lift};
use halfcase::trade::cure::{Chemistry, CureSpec, LabelTimes, Milestone, ShopHistory, ShopReading};
use halfcase::trade::lift::Grip;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{LengthUnit, MassUnit, ThermodynamicTemperature, Time};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;

fn celsius(celsius: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(celsius)
}

/// 62 N7 bore at its least 61.961, bearing at its most 62.000 (ISO 286-2, ISO 492); aluminium's least 21.0
/// millionths a degree: 61.961 · 21e-6 · 54 = 70.3 µm, so that 31 µm are left.
#[test]
fn a_temperature_is_told_from_its_sizes() {
    let seat = Seat::default();
    let answer = answer(&seat, None).unwrap();
    let lines = seating::how(&seat, &answer);
    assert_eq!(
        lines[0],
        "The tightest pair at 20 °C (ISO 1): bore 61.961 mm, in it 62.000 mm: 39 µm tight."
    );
    assert!(
        lines[1].ends_with("at 74 °C: 61.961 mm × 21.0 µm/(m·K) × 54 K = +70 µm."),
        "{}",
        lines[1]
    );
    assert_eq!(lines[2], "Then it is 31 µm loose; to drop in it wants 31 µm.");
}

/// The same pressed cold: the force is told as the plate has it, with the friction it rests on.
#[test]
fn a_force_is_told_from_its_squeeze() {
    let seat = Seat {
        housing_limit_c: 25.0,
        ..Seat::default()
    };
    let answer = answer(&seat, None).unwrap();
    let head = halfcase::job::kinds::seat::words::headline(&answer);
    assert_eq!(head.says, "press cold with up to");
    let lines = seating::how(&seat, &answer).join(" ");
    assert!(
        lines.contains(&format!("= {} kN at most", head.number)),
        "{lines}"
    );
    assert!(lines.contains("Friction 0.2 × π × ⌀ 62.0 mm"), "{lines}");
}

/// 23 kg × 25/60 × 0.865 (told as 0.86) × 0.895 × 1 × 1 × 0.95 = 7.05 kg, told as 7.0 as on the plate.
#[test]
fn a_lift_is_told_factor_by_factor() {
    let work = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Hands {
            reach_cm: 60.0,
            from_cm: 30.0,
            to_cm: 90.0,
            turn_deg: 0.0,
            grip: Grip::Fair,
        },
        ..LiftWork::default()
    };
    let answer = lift::answer(&work, Hoist::default());
    let lines = lifting::how(&work, &answer, MassUnit::Kilogram);
    assert_eq!(
        lines[0],
        "23.0 kg at best × reach 0.42 × height 0.86 × way up 0.89 × turn 1.00 × how often 1.00 × grip 0.95: 7.0 kg at most."
    );
}

/// Two legs at 60°: 48 · 9.80665 = 471 N; 471 / 2 / sin 60° = 272 N; 48 / 2 / sin 60° = 27.7 kg.
#[test]
fn a_sling_is_told_leg_by_leg() {
    let work = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Sling {
            legs: 2,
            angle_deg: 60.0,
        },
        ..LiftWork::default()
    };
    let answer = lift::answer(&work, Hoist::default());
    let lines = lifting::how(&work, &answer, MassUnit::Kilogram);
    assert_eq!(
        lines[0],
        "The load pulls with 0.47 kN; each leg, 2 of them at 60° from the horizontal, with 0.27 kN."
    );
    assert!(
        lines[1].starts_with("That is a rating of 27.8 kg straight up."),
        "{}",
        lines[1]
    );
}

/// One full day at 22 °C by its label.
fn clock(id: u32, name: &str, started: Moment, assembly_h: Option<f64>) -> CureClock {
    let hours = Time::new::<hour>;
    CureClock {
        id: ClockId(id),
        name: name.to_owned(),
        compound: "a sealant".to_owned(),
        spec: CureSpec {
            chemistry: Chemistry::SolventDrying,
            label: LabelTimes {
                assembly: assembly_h.map(hours),
                ..LabelTimes::full_only(celsius(22.0), hours(24.0))
            },
        },
        started,
        held_ms: 0,
        bound: None,
        ended: None,
    }
}

fn shop(at: f64) -> ShopHistory {
    ShopHistory(vec![ShopReading {
        at: MORNING,
        temperature: celsius(at),
        humidity: None,
    }])
}

/// Silicone cures from its edges inwards: nobody is told that the middle of a wide land has.
#[test]
fn of_silicone_between_faces_the_edge_is_cured() {
    let stud = clock(1, "Stud", MORNING, None);
    let mut clock = clock(2, "Cover", MORNING, None);
    clock.spec.chemistry = Chemistry::MoistureSilicone {
        depth: LengthUnit::Millimetre.length(2.5),
    };
    let marks = clock.marks(&shop(23.0), 0);
    let last = marks.last().expect("a mark");
    assert_eq!(last.last, Milestone::FullCure);
    assert_eq!(last.words(), "oil after, edge cured");
    assert!(
        last.reached_words().ends_with(", edge cured"),
        "{}",
        last.reached_words()
    );
    let lines = clock.how(Milestone::FullCure, &shop(23.0));
    assert!(
        lines[4].contains("the middle of a wide land follows later"),
        "{lines:?}"
    );
    // What cures all through is cured all through.
    assert!(
        stud.marks(&shop(22.0), 0)
            .last()
            .is_some_and(|mark| mark.words().ends_with("full cure"))
    );
    assert_eq!(stud.how(Milestone::FullCure, &shop(22.0)).len(), 4);
}

/// Ten degrees colder: 1.7 to 2.5 times as long (common practice, no source), the late end 60 h.
#[test]
fn a_time_is_told_from_its_label() {
    let clock = clock(1, "Case joint", MORNING, None);
    let lines = clock.how(Milestone::FullCure, &shop(12.0));
    assert_eq!(
        lines[0],
        "Case joint: full cure 24 h at 22 °C by the label, from when it was put on."
    );
    assert_eq!(lines[1], "Here 1.7 to 2.5 times as long.");
    assert_eq!(
        lines[2],
        "The late end counts: 60 h, and never less than the label."
    );
    let unknown = clock.how(Milestone::FullCure, &ShopHistory::default());
    assert_eq!(
        unknown[1],
        "No shop temperature is told: the label’s is taken. Here 1.0 times as long."
    );
    // A milestone without a time of its own has nothing to tell.
    assert_eq!(
        clock.how(Milestone::AssemblyLimit, &shop(12.0)),
        Vec::<String>::new()
    );
}

#[test]
fn what_has_a_deadline_is_looked_at_before_what_is_waited_for() {
    let waits = clock(1, "soon done", hours(-23.0), None);
    let closes = clock(2, "to be closed", MORNING, Some(3.0));
    let ripe = clock(3, "ripe", hours(-30.0), None);
    let riper = clock(4, "riper", hours(-40.0), None);
    let mut ended = clock(5, "put away", MORNING, Some(1.0));
    ended.ended = Some(halfcase::job::clock::Ended::PutAway);
    let all = [riper, ripe, waits, ended, closes];
    let now = hours(0.5);
    // Done in half an hour, but nobody has to do anything for it.
    assert_eq!(in_order(&all, &shop(22.0), now, 0), [2, 1, 3, 4].map(ClockId));
    assert_eq!(
        in_order(&all, &shop(22.0), hours(5.0), 0),
        [2, 1, 3, 4].map(ClockId)
    );
}

/// The strip hurries by the harsher of two clocks; a clock's own row must say the same.
#[test]
fn while_the_phones_clock_is_in_doubt_a_deadline_goes_by_the_harsher() {
    let bead = clock(1, "to be closed", MORNING, Some(3.0));
    let shop = shop(22.0);
    let two_hours_ms = 2 * 3_600_000;
    let deadline = |clock: &CureClock, doubted_ms| {
        let marks = clock.marks(&shop, doubted_ms);
        marks.iter().find(|mark| mark.last.is_deadline()).unwrap().at()
    };
    let wait = |doubted_ms| bead.marks(&shop, doubted_ms).last().unwrap().at();
    let sure = deadline(&bead, 0);
    assert_eq!(deadline(&bead, two_hours_ms).0, sure.0 - two_hours_ms);
    // What is waited for is never sooner for it.
    assert_eq!(wait(two_hours_ms), wait(0));
    // An hour before it, by a phone two hours ahead, it is over.
    let now = Moment(sure.0 - 3_600_000);
    let next = |doubted_ms| match bead.standing(&shop, now, doubted_ms) {
        Standing::Running(mark) => mark.last.is_deadline(),
        _ => panic!("it does not run"),
    };
    assert!(next(0) && !next(two_hours_ms));
    assert!(bead.reached(&shop, now, 0).is_none());
    assert!(
        bead.reached(&shop, now, two_hours_ms)
            .is_some_and(|mark| mark.last.is_deadline())
    );
    // Put on while the phone was two hours ahead already, it has not aged by that.
    let mut since = bead.clone();
    since.held_ms = two_hours_ms;
    assert_eq!(deadline(&since, two_hours_ms), sure);
}
