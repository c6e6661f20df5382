//! From a step's numbers to its cautions.

use super::{MORNING, done, hours, sheet};
use halfcase::job::example;
use halfcase::job::form;
use halfcase::job::kinds::lift::{self, Hoist, LiftingAnswer};
use halfcase::job::kinds::seat::manual::{Manual, ManualChill, ManualHeat};
use halfcase::job::kinds::{
    Bond, Clean, Fill, Fit, LiftWay, LiftWork, Seat, SeatWay, Work, blank, fasten, seat,
};
use halfcase::job::progress::Progress;
use halfcase::job::record::Record;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::situation::{Across, Around, cautions_of, solvent_about, to_show};
use halfcase::trade::application::{Application, Fluid, JointKind, ManualWord};
use halfcase::trade::caution::{Level, every};
use halfcase::trade::heat_plan::{ChillMeans, CoolMeans, HeatMeans};
use halfcase::trade::hoist::BoomPosition;
use halfcase::trade::lift::LiftVerdict;
use halfcase::trade::quantity::{Length, Mass, parse_temperature};
use std::collections::BTreeSet;
use uom::si::force::kilonewton;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

fn ids(work: &Work, around: &Around<'_>) -> Vec<&'static str> {
    cautions_of(work, around).into_iter().map(|c| c.id).collect()
}

fn alone(work: Work) -> Vec<&'static str> {
    ids(&work, &Around::default())
}

#[test]
fn heat_cold_and_press_each_bring_their_own() {
    let heated = alone(Work::Seat(Seat::default()));
    assert!(
        heated.contains(&"hot-part") && heated.contains(&"press"),
        "{heated:?}"
    );
    let pressed = alone(Work::Seat(Seat {
        way: SeatWay::Press,
        ..Seat::default()
    }));
    assert!(!pressed.contains(&"hot-part"), "{pressed:?}");
    let chilled = alone(Work::Seat(Seat {
        housing_limit_c: 60.0,
        cool: Some(CoolMeans::DryIce),
        ..Seat::default()
    }));
    assert!(chilled.contains(&"dry-ice"), "{chilled:?}");
    let seals = alone(Work::Seat(Seat {
        holds_seals: true,
        ..Seat::default()
    }));
    assert!(seals.contains(&"heat-seals"), "{seals:?}");
}

#[test]
fn a_seat_without_sizes_warns_of_what_it_may_be_done_with() {
    let seat = Seat {
        length_mm: 0.0,
        holds_seals: true,
        cool: Some(CoolMeans::DryIce),
        ..Seat::default()
    };
    let around = Around {
        solvent: true,
        ..Around::default()
    };
    let found = ids(&Work::Seat(seat.clone()), &around);
    for id in ["heat-seals", "heat-solvent", "dry-ice", "hot-part"] {
        assert!(found.contains(&id), "{id}: {found:?}");
    }
    let pressed = Seat {
        way: SeatWay::Press,
        cool: None,
        ..seat
    };
    let found = ids(&Work::Seat(pressed), &around);
    assert!(
        !found.contains(&"heat-seals") && !found.contains(&"dry-ice"),
        "{found:?}"
    );
}

#[test]
fn a_press_too_small_stops() {
    let work = Work::Seat(Seat {
        way: SeatWay::Press,
        ..Seat::default()
    });
    let small = Around {
        press_kn: Some(1.0),
        ..Around::default()
    };
    assert!(ids(&work, &small).contains(&"press-over"));
    let large = Around {
        press_kn: Some(500.0),
        ..Around::default()
    };
    assert!(!ids(&work, &large).contains(&"press-over"));
}

#[test]
fn lifts_are_stopped_by_hand_by_sling_and_by_boom() {
    let hands = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::hands(),
        ..LiftWork::default()
    };
    assert!(alone(Work::Lift(hands)).contains(&"hands-refused"));
    let flat = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Sling {
            legs: 2,
            angle_deg: 25.0,
        },
        ..LiftWork::default()
    };
    assert!(alone(Work::Lift(flat)).contains(&"sling-flat"));
    let plumb = LiftWork {
        way: LiftWay::Sling {
            legs: 1,
            angle_deg: 25.0,
        },
        under_load: true,
        boom_mm: Some(1_600.0),
        ..LiftWork::default()
    };
    let boom = [
        BoomPosition {
            reach: Length::new::<millimeter>(900.0),
            rating: Mass::new::<kilogram>(250.0),
        },
        BoomPosition {
            reach: Length::new::<millimeter>(1_500.0),
            rating: Mass::new::<kilogram>(45.0),
        },
    ];
    let around = Around {
        hoist: Hoist {
            boom: &boom,
            rating: None,
        },
        ..Around::default()
    };
    let found = ids(&Work::Lift(plumb), &around);
    assert!(
        found.contains(&"under-load") && found.contains(&"hoist-over"),
        "{found:?}"
    );
    assert!(!found.contains(&"sling-flat"), "{found:?}");
}

/// What two people may lift ends at an index of 4/3: the caution must not send two to what the answer
/// gives to a hoist.
#[test]
fn the_caution_and_the_answer_agree_on_two_people() {
    let work = LiftWork {
        mass_kg: 24.0,
        ..LiftWork::default()
    };
    let Ok(LiftingAnswer::Hands(hands)) = lift::answer(&work, Hoist::default()) else {
        panic!("hands were asked for");
    };
    assert_eq!(hands.verdict, LiftVerdict::Hoist);
    let index = hands.governing().index.unwrap();
    assert!(index > 4.0 / 3.0 && index < 3.0, "{index}");
    let said = cautions_of(&Work::Lift(work), &Around::default());
    let strain = said.iter().find(|caution| caution.id == "hands-strain").unwrap();
    assert!(
        strain.act.contains("up to an index of 1.3, beyond it a hoist"),
        "{}",
        strain.act
    );
}

#[test]
fn springs_and_hot_oil_where_the_step_has_them() {
    let fit = Fit {
        spring: true,
        ..Fit::default()
    };
    assert_eq!(alone(Work::Fit(fit)), ["spring"]);
    let hot = Fill {
        hot: true,
        ..Fill::default()
    };
    assert_eq!(alone(Work::Fill(hot)), ["hot-oil"]);
    assert_eq!(alone(Work::Fill(Fill::default())), [] as [&str; 0]);
}

#[test]
fn a_wash_with_solvent_stops_heat_for_an_hour() {
    let sheet = sheet(
        r#"{"id":1,"title":"Wash","work":{"clean":{"solvent":true}}},
        {"id":2,"title":"Look","work":{"turn":{}}}"#,
    );
    let mut record = Record::default();
    let about = |record: &Record, at| solvent_about(&sheet, &Progress::of(record), at);
    assert!(!about(&record, MORNING));
    done(&mut record, 1);
    assert!(about(&record, hours(0.9)));
    assert!(!about(&record, hours(1.1)));
    let around = Around {
        solvent: true,
        ..Around::default()
    };
    assert!(ids(&Work::Seat(Seat::default()), &around).contains(&"heat-solvent"));
    // Pressed cold, it is no danger.
    let pressed = Seat {
        way: SeatWay::Press,
        ..Seat::default()
    };
    assert!(!ids(&Work::Seat(pressed), &around).contains(&"heat-solvent"));
}

#[test]
fn at_most_three_are_shown_and_none_hides_behind_one_that_was_read() {
    let all = every();
    let mut read = BTreeSet::new();
    let stops = all.iter().filter(|c| c.level == Level::Stop).count();
    // Reading what is shown brings every stop into sight.
    for _ in 0..stops {
        let shown = to_show(&all, &read);
        assert_eq!(shown.len(), 3);
        let fresh = shown
            .iter()
            .find(|c| c.level == Level::Stop && !read.contains(c.id));
        read.insert(fresh.unwrap().id.to_owned());
    }
    assert_eq!(read.len(), stops);
    // With three, all stay in their places.
    let three = &all[..3];
    assert_eq!(to_show(three, &BTreeSet::from([three[0].id.to_owned()])), three);
}

/// Seven cautions stood in the list that no step could bring up: an open flame, what holds the old bolts, a push
/// through the balls, a hammer, a running engine, a weight
/// nobody has told, more heat than a part stands.
#[test]
fn every_caution_comes_up_from_a_step() {
    let seat = || Work::Seat(Seat::default());
    let of_seat = |change: fn(&mut Seat)| {
        let mut seat = Seat::default();
        change(&mut seat);
        Work::Seat(seat)
    };
    let lifted = |mass_kg: f64, way: LiftWay, under_load: bool| {
        Work::Lift(LiftWork {
            mass_kg,
            way,
            under_load,
            ..LiftWork::default()
        })
    };
    let sling = |angle_deg: f64| LiftWay::Sling { legs: 2, angle_deg };
    let said = |kind: &str, path: &str| {
        let mut step = Step::new(StepId(1), "New", blank(kind).unwrap_or_else(bolts));
        form::set(&Sheet::new("Plan", vec![step.clone()]), &mut step, path, "yes").unwrap();
        step.work
    };
    let press = |press_kn: f64| Around {
        press_kn: Some(press_kn),
        ..Around::default()
    };
    let hoist = |kg: f64| Around {
        hoist: Hoist {
            boom: &[],
            rating: Some(Mass::new::<kilogram>(kg)),
        },
        ..Around::default()
    };
    let (alone, wet) = (
        Around::default(),
        Around {
            solvent: true,
            before_cure: true,
            ..Around::default()
        },
    );
    let behind = Around {
        across: Across {
            soft: Some("Baffle screws"),
            half_cured: Some("Spigot"),
            hot: Some("Bearing"),
            fuel: Some("Fuel"),
        },
        ..Around::default()
    };
    let silicone = Work::Bond(Bond {
        application: Application {
            manual: Some(ManualWord::Silicone),
            fluid: Some(Fluid::Oil),
            gap: Some(Length::new::<millimeter>(0.1)),
            oxygen_sensor: Some(false),
            oil_ways: Some(false),
            ..Application::new(JointKind::CaseHalves)
        },
        ..Bond::blank()
    });
    let most_kn = {
        let answer = seat::answer(&Seat::default(), None).unwrap();
        answer.force.unwrap().most.get::<kilonewton>()
    };
    let cleaned = Work::Clean(Clean {
        solvent: true,
        compressed_air: true,
    });
    let steps = [
        (seat(), alone),
        (seat(), wet),
        (seat(), press(most_kn / 2.0)),
        (seat(), press(most_kn * 1.1)),
        (of_seat(|s| s.holds_seals = true), alone),
        (
            of_seat(|s| {
                s.housing_limit_c = 60.0;
                s.cool = Some(CoolMeans::DryIce);
            }),
            alone,
        ),
        (said("Seat", "seat/flame"), alone),
        (said("Seat", "seat/through_balls"), alone),
        (said("Seat", "seat/struck"), alone),
        (by_manual(HeatMeans::OilBath, "200 °C", Some("220 °C")), alone),
        (by_manual(HeatMeans::Induction, "200 °C", None), alone),
        (
            of_seat(|s| {
                s.manual = Some(Manual {
                    chill: Some(ManualChill {
                        means: Some(ChillMeans::LiquidNitrogen),
                        to: None,
                    }),
                    ..Manual::default()
                });
            }),
            alone,
        ),
        (said("Fasten", "fasten/old_locked"), alone),
        (said("Check", "check/running"), alone),
        (said("Fit", "fit/spring"), alone),
        (said("Fill", "fill/hot"), alone),
        (said("Fill", "fill/fuel"), behind),
        (seat(), behind),
        (blank("Turn").unwrap(), behind),
        (blank("Lift").unwrap(), behind),
        (blank("Turn").unwrap(), wet),
        (blank("Gauge").unwrap(), alone),
        (blank("Lift").unwrap(), alone),
        (lifted(60.0, LiftWay::hands(), true), alone),
        (lifted(20.0, LiftWay::hands(), false), alone),
        (lifted(48.0, sling(25.0), false), hoist(40.0)),
        (lifted(48.0, sling(40.0), false), hoist(50.0)),
        (cleaned, alone),
        (example::sheet().step(StepId(15)).unwrap().work.clone(), alone),
        (silicone, alone),
        // 74 °C would be needed, and there is no other way.
        (
            of_seat(|s| {
                s.housing_limit_c = 60.0;
                s.no_press = true;
            }),
            alone,
        ),
    ];
    let found: BTreeSet<&str> = steps
        .iter()
        .flat_map(|(work, around)| ids(work, around))
        .collect();
    let missing: Vec<&str> = every()
        .iter()
        .map(|rule| rule.id)
        .filter(|id| !found.contains(id))
        .collect();
    assert!(missing.is_empty(), "nothing brings up {missing:?}");
}

fn bolts() -> Work {
    Work::Fasten(fasten::begin("M8", "20 N·m").unwrap())
}

/// A weight that nobody has told is no weight of nothing: no share of the hoist's rating is worked out from it.
#[test]
fn a_lift_whose_mass_nobody_has_told_says_so() {
    for way in [LiftWay::hands(), LiftWay::sling()] {
        let untold = LiftWork {
            way,
            ..LiftWork::blank()
        };
        let found = alone(Work::Lift(untold.clone()));
        assert!(found.contains(&"mass-unknown"), "{found:?}");
        let told = LiftWork {
            mass_kg: 12.0,
            ..untold
        };
        assert!(!alone(Work::Lift(told)).contains(&"mass-unknown"));
    }
}

/// A fit that the manual has heated so.
fn by_manual(means: HeatMeans, to: &str, flash_point: Option<&str>) -> Work {
    let stated = |text: &str| parse_temperature(text, None).unwrap();
    Work::Seat(Seat {
        manual: Some(Manual {
            heat: Some(ManualHeat {
                means: Some(means),
                to: Some(stated(to)),
                never_over: None,
                flash_point: flash_point.map(stated),
            }),
            ..Manual::default()
        }),
        ..Seat::default()
    })
}
