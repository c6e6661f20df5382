//! A bottle's own label in place of the typical figures, and every reason to refuse it.

use halfcase::job::bonding::{Surroundings, bond};
use halfcase::job::bottle::{Bottle, BottleId, Unfit};
use halfcase::job::date::day_of;
use halfcase::trade::application::{Application, JointKind, answer};
use halfcase::trade::compound::{CompoundClass, recommend};
use halfcase::trade::cure::{LabelError, Milestone};
use halfcase::trade::quantity::{Length, Time};
use uom::si::length::millimeter;
use uom::si::time::{hour, minute};

fn today() -> i64 {
    day_of(2026, 6, 1)
}

/// The walking tractor's case joint: stiff machined aluminium, oil inside, nothing named.
fn case_joint() -> Application {
    let mut joint = Application::new(JointKind::CaseHalves);
    for (question, choice) in [
        ("face", "aluminium"),
        ("temperature", "to_150"),
        ("rigid", "yes"),
        ("gap", "to_0_1"),
        ("fluid", "oil"),
        ("oxygen_sensor", "no"),
        ("oil_ways", "no"),
    ] {
        answer(&mut joint, question, choice).unwrap();
    }
    joint
}

fn sealant() -> Bottle {
    Bottle {
        name: "Shelf tube".into(),
        ..Bottle::new(BottleId(1), CompoundClass::AnaerobicFlange)
    }
}

fn unfit(bottle: &Bottle, joint: &Application) -> Option<Unfit> {
    bottle.unfit(joint, &recommend(joint), today(), Some(22.0))
}

/// A deadline is told to the tenth and down, and an activator's hurry with it.
#[test]
fn the_time_to_join_is_never_told_longer_than_the_label_says() {
    let told = |minutes: f64, activator| {
        let mut bottle = sealant();
        bottle.label.assembly = Some(Time::new::<minute>(minutes));
        let around = Surroundings {
            bottles: &[bottle],
            activator,
            today: today(),
            shop_c: Some(22.0),
        };
        let sections = bond(&case_joint(), around).sections();
        let join = sections.into_iter().find(|section| section.title == "join it");
        join.unwrap().lines.remove(0)
    };
    assert_eq!(told(7.5, false), "Within 7.5 min, by its label.");
    assert_eq!(told(1.99, false), "Within 1.9 min, by its label.");
    assert_eq!(
        told(10.0, true),
        "Within 10 min, by its label. An activator can halve that."
    );
}

#[test]
fn a_gap_is_told_as_it_was_given() {
    let gap = Length::new::<millimeter>(0.123).get::<millimeter>();
    assert_ne!(gap, 0.123);
    assert_eq!(
        Unfit::GapTooWide(gap, 0.1).to_string(),
        "Fills 0.1 mm; the gap is, or may be, 0.123 mm."
    );
}

#[test]
fn a_bottle_that_keeps_for_ever_is_no_overflow() {
    let bottle = Bottle {
        opened: Some(today()),
        keeps_months: Some(1e300),
        ..sealant()
    };
    assert_eq!(bottle.spoiled(today()), None);
}

#[test]
fn a_good_bottle_brings_its_own_times() {
    let mut bottle = sealant();
    bottle.label.full = Time::new::<hour>(72.0);
    bottle.label.fixture = Some(Time::new::<minute>(90.0));
    let joint = case_joint();
    assert_eq!(unfit(&bottle, &joint), None);
    let around = Surroundings {
        bottles: &[bottle.clone()],
        activator: false,
        today: today(),
        shop_c: Some(22.0),
    };
    let answer = bond(&joint, around);
    assert_eq!(answer.title(), "anaerobic flange sealant");
    assert_eq!(answer.compound_words(), "anaerobic flange sealant “Shelf tube”");
    let label = answer.spec.unwrap().label;
    assert_eq!(label, bottle.label);
    assert_eq!(label.time_to(Milestone::FullCure), Some(Time::new::<hour>(72.0)));
    // Without it, the typical day.
    let typical = bond(
        &joint,
        Surroundings {
            bottles: &[],
            ..around
        },
    )
    .spec
    .unwrap();
    assert_eq!(typical.label.full, Time::new::<hour>(24.0));
}

#[test]
fn a_printed_month_is_good_to_its_last_day() {
    let dated = |year, month| Bottle {
        expires_year: Some(year),
        expires_month: month,
        ..sealant()
    };
    assert_eq!(dated(2026, Some(6)).spoiled(day_of(2026, 6, 30)), None);
    assert_eq!(
        dated(2026, Some(6))
            .spoiled(day_of(2026, 7, 1))
            .unwrap()
            .to_string(),
        "Expired: good until 2026-06-30."
    );
    assert_eq!(dated(2025, Some(12)).spoiled(day_of(2025, 12, 31)), None);
    assert!(dated(2025, Some(12)).spoiled(day_of(2026, 1, 1)).is_some());
    // A year alone is good to its end; a month alone says nothing.
    assert_eq!(dated(2026, None).spoiled(day_of(2026, 12, 31)), None);
    let month_only = Bottle {
        expires_month: Some(1),
        ..sealant()
    };
    assert_eq!(month_only.spoiled(today()), None);
}

#[test]
fn an_open_bottle_keeps_for_its_months() {
    let opened = Bottle {
        opened: Some(day_of(2025, 6, 1)),
        keeps_months: Some(12.0),
        ..sealant()
    };
    assert_eq!(opened.spoiled(day_of(2026, 6, 1)), None);
    assert_eq!(
        opened.spoiled(day_of(2026, 6, 2)).unwrap().to_string(),
        "Open for too long: good until 2026-06-01."
    );
}

#[test]
fn every_reason_to_refuse_is_said() {
    let joint = case_joint();
    let mut no_label = sealant();
    no_label.label.full = Time::new::<hour>(0.0);
    assert_eq!(unfit(&no_label, &joint), Some(Unfit::Label(LabelError::Time)));

    let silicone = Bottle::new(BottleId(2), CompoundClass::SiliconeNeutral);
    let why = unfit(&silicone, &joint).unwrap().to_string();
    assert!(
        why.starts_with("This joint wants anaerobic flange sealant. It keeps the faces apart"),
        "{why}"
    );

    let mut fuel = Application::new(JointKind::FlangeFlexible);
    answer(&mut fuel, "fluid", "fuel").unwrap();
    assert_eq!(
        unfit(&silicone, &fuel).unwrap().to_string(),
        "Silicone swells and lets go in fuel."
    );

    let hot = Bottle {
        stands_c: Some(120.0),
        ..sealant()
    };
    assert_eq!(
        unfit(&hot, &joint).unwrap().to_string(),
        "Stands 120 °C; the joint gets, or may get, 150 °C."
    );
    let narrow = Bottle {
        fills_mm: Some(0.05),
        ..sealant()
    };
    assert_eq!(
        unfit(&narrow, &joint).unwrap().to_string(),
        "Fills 0.05 mm; the gap is, or may be, 0.1 mm."
    );
    let warm = Bottle {
        apply_from_c: Some(15.0),
        ..sealant()
    };
    let cold_shop = warm.unfit(&joint, &recommend(&joint), today(), Some(8.0));
    assert_eq!(
        cold_shop.unwrap().to_string(),
        "Put on from 15 °C; the shop is 8 °C."
    );
    // What exactly meets its limit is no reason.
    let just = Bottle {
        stands_c: Some(150.0),
        fills_mm: Some(0.1),
        apply_from_c: Some(22.0),
        ..sealant()
    };
    assert_eq!(unfit(&just, &joint), None);
}

#[test]
fn nothing_goes_where_nothing_is_wanted() {
    let mut coated = Application::new(JointKind::ThreadedFastener);
    answer(&mut coated, "precoated", "yes").unwrap();
    let locker = Bottle::new(BottleId(1), CompoundClass::ThreadlockMedium);
    assert_eq!(
        unfit(&locker, &coated).unwrap().to_string(),
        "The thread is coated at the factory; no liquid goes on top."
    );
}

#[test]
fn a_spoiled_bottle_in_use_stops_the_start_until_another_is_taken() {
    let spoiled = Bottle {
        expires_year: Some(2026),
        expires_month: Some(1),
        ..sealant()
    };
    let mut bottles = vec![spoiled];
    let joint = case_joint();
    let around = |bottles: &[Bottle]| {
        bond(
            &joint,
            Surroundings {
                bottles,
                activator: false,
                today: today(),
                shop_c: None,
            },
        )
    };
    let answer = around(&bottles);
    assert_eq!(answer.bottle, None);
    assert_eq!(
        answer.refused.as_deref(),
        Some("“Shelf tube”: Expired: good until 2026-01-31.")
    );
    bottles[0].in_use = false;
    assert_eq!(around(&bottles).refused, None);
    assert!(around(&bottles).shelf[0].unfit.is_some());
}

#[test]
fn a_sensor_safe_silicone_serves_as_a_plain_one_and_not_the_other_way_round() {
    let safe = Bottle::new(BottleId(1), CompoundClass::SiliconeSensorSafe);
    let plain = Bottle::new(BottleId(2), CompoundClass::SiliconeNeutral);
    assert!(safe.serves(CompoundClass::SiliconeNeutral));
    assert!(!plain.serves(CompoundClass::SiliconeSensorSafe));
}

#[test]
fn a_bottle_is_read_back_as_it_was_written() {
    let bottle = Bottle {
        expires_year: Some(2027),
        opened: Some(today()),
        stands_c: Some(180.0),
        ..sealant()
    };
    let text = serde_json::to_string(&bottle).unwrap();
    let again: Bottle = serde_json::from_str(&text).unwrap();
    assert_eq!(serde_json::to_string(&again).unwrap(), text);
    assert_eq!(
        (again.id, again.opened, again.in_use),
        (bottle.id, bottle.opened, true)
    );
}

/// A bottle said to be of another class keeps none of the first class's times, and all that was typed.
#[test]
fn another_class_brings_its_own_times_but_keeps_the_labels() {
    let lock = CompoundClass::ThreadlockMedium;
    let silicone = CompoundClass::SiliconeNeutral;
    let mut bottle = Bottle::new(BottleId(1), lock);
    bottle.become_of(silicone);
    assert_eq!(bottle, Bottle::new(BottleId(1), silicone));
    let own = Time::new::<hour>(31.0);
    bottle.label.full = own;
    bottle.become_of(lock);
    assert_eq!(bottle.label.full, own);
    assert_eq!(bottle.label.fixture, Bottle::new(BottleId(1), lock).label.fixture);
}
