//! The nights to come, planned and kept.

use super::{MORNING, hours};
use halfcase::job::clock::{ClockId, CureClock, Standing};
use halfcase::job::night::{Night, NightError, note, note_humidity, plan, unplan};
use halfcase::trade::application::{Application, Face, JointKind};
use halfcase::trade::compound::CompoundClass;
use halfcase::trade::cure::{Milestone, ShopHistory};
use halfcase::trade::moment::Moment;
use uom::si::thermodynamic_temperature::degree_celsius;

/// MORNING is 08:00 by a phone in UTC.
const EIGHT: i64 = 8 * 60;

const NIGHT: Night = Night {
    celsius: 12.0,
    from_hour: 20,
    to_hour: 7,
    day_celsius: 0.0,
};

fn at(shop: &ShopHistory, after: f64) -> Option<f64> {
    let reading = shop.at(hours(after))?;
    Some((reading.temperature.get::<degree_celsius>() * 10.0).round() / 10.0)
}

fn planned() -> (ShopHistory, Night) {
    let mut shop = ShopHistory::default();
    note(&mut shop, None, 22.0, MORNING, EIGHT);
    let night = plan(&mut shop, None, NIGHT, MORNING, EIGHT).unwrap();
    (shop, night)
}

#[test]
fn evenings_and_mornings_are_laid_out() {
    let (shop, night) = planned();
    assert_eq!(night.day_celsius, 22.0);
    // 08:00 + 12 h is 20:00, + 23 h is 07:00.
    for (after, celsius) in [
        (0.0, 22.0),
        (11.9, 22.0),
        (12.0, 12.0),
        (22.9, 12.0),
        (23.0, 22.0),
        (36.0, 12.0),
        (47.0, 22.0),
        // The 60th night: a slow cure must not find warm ones before.
        (12.0 + 59.0 * 24.0, 12.0),
    ] {
        assert_eq!(at(&shop, after), Some(celsius), "after {after} h");
    }
}

/// Nothing told for over a year: what was told then still held last week.
#[test]
fn an_old_reading_holds_until_the_next() {
    let mut shop = ShopHistory::default();
    let day = |days: f64| hours(days * 24.0);
    note(&mut shop, None, 30.0, day(-900.0), EIGHT);
    note(&mut shop, None, 6.0, day(-800.0), EIGHT);
    note(&mut shop, None, 22.0, day(0.0), EIGHT);
    assert_eq!(at(&shop, -7.0 * 24.0), Some(6.0));
    assert_eq!(at(&shop, 0.0), Some(22.0));
    assert_eq!(shop.0.len(), 2);
}

#[test]
fn a_cure_over_a_cold_night_ends_later_by_what_the_model_says() {
    let mut joint = Application::new(JointKind::ThreadedFastener);
    joint.face = Some(Face::SteelOrIron);
    let clock = CureClock {
        id: ClockId(1),
        name: "x".into(),
        compound: "y".into(),
        spec: CompoundClass::ThreadlockMedium.typical_cure(&joint).unwrap(),
        started: MORNING,
        held_ms: 0,
        bound: None,
        ended: None,
    };
    let (shop, _) = planned();
    // At the slow end 10 K colder is 2.5 times slower: 12 h by day, 11 h at night worth 4.4 h, and
    // 7.6 h of the second day. 12 + 11 + 7.6 = 30.6 h instead of 24.
    let done = clock.reached_at(Milestone::FullCure, &shop).unwrap().latest;
    assert!((done.0 - hours(30.6).0).abs() < 5_000, "{done:?}");
    let warm = {
        let mut shop = ShopHistory::default();
        note(&mut shop, None, 22.0, MORNING, EIGHT);
        clock.reached_at(Milestone::FullCure, &shop).unwrap().latest
    };
    assert_eq!(warm, hours(24.0));
    assert!(matches!(
        clock.standing(&shop, hours(25.0), 0),
        Standing::Running(_)
    ));
    assert!(clock.ripe(&shop, hours(31.0)));
}

#[test]
fn a_night_behind_us_is_never_forgotten() {
    let (mut shop, mut night) = planned();
    // The next morning at ten the shop is read anew.
    note(&mut shop, Some(&mut night), 18.0, hours(26.0), 10 * 60);
    assert_eq!(at(&shop, 15.0), Some(12.0));
    assert_eq!(at(&shop, 26.0), Some(18.0));
    // The evening stays planned, the morning after is as this day.
    assert_eq!(at(&shop, 36.0), Some(12.0));
    assert_eq!(at(&shop, 47.0), Some(18.0));
    unplan(&mut shop, night, hours(27.0), 11 * 60);
    assert_eq!(at(&shop, 15.0), Some(12.0));
    assert_eq!(at(&shop, 36.0), Some(18.0));
}

#[test]
fn a_reading_at_night_says_nothing_of_the_day() {
    let (mut shop, mut night) = planned();
    // 22:00: colder than planned.
    note(&mut shop, Some(&mut night), 8.0, hours(14.0), 22 * 60);
    assert_eq!(at(&shop, 14.5), Some(8.0));
    assert_eq!(at(&shop, 23.0), Some(22.0));
    assert_eq!(night.day_celsius, 22.0);
}

#[test]
fn a_night_planned_at_night_begins_at_once() {
    let mut shop = ShopHistory::default();
    note(&mut shop, None, 22.0, hours(14.0), 22 * 60);
    plan(&mut shop, None, NIGHT, hours(14.0), 22 * 60).unwrap();
    assert_eq!(at(&shop, 14.0), Some(12.0));
    assert_eq!(at(&shop, 23.0), Some(22.0));
}

#[test]
fn a_plan_that_makes_no_sense_changes_nothing() {
    let mut shop = ShopHistory::default();
    assert_eq!(
        plan(&mut shop, None, NIGHT, MORNING, EIGHT),
        Err(NightError::DayUnknown)
    );
    note(&mut shop, None, 22.0, MORNING, EIGHT);
    let before = shop.clone();
    for night in [
        Night {
            celsius: 80.0,
            ..NIGHT
        },
        Night {
            celsius: f64::NAN,
            ..NIGHT
        },
        Night {
            from_hour: 24,
            ..NIGHT
        },
        Night { to_hour: 20, ..NIGHT },
    ] {
        assert!(plan(&mut shop, None, night, MORNING, EIGHT).is_err());
    }
    assert_eq!(shop, before);
}

#[test]
fn hours_are_met_from_any_minute() {
    for minute in 0..24 * 60 {
        let now = Moment(MORNING.0 + minute * 60_000 + 17_000);
        let of_day = (EIGHT + minute) % (24 * 60);
        let mut shop = ShopHistory::default();
        note(&mut shop, None, 22.0, now, of_day);
        plan(&mut shop, None, NIGHT, now, of_day).unwrap();
        for reading in shop.0.iter().filter(|reading| reading.at > now) {
            let hour = (reading.at.0 / 60_000).rem_euclid(24 * 60);
            let cold = reading.temperature.get::<degree_celsius>() < 15.0;
            assert_eq!(hour, if cold { 20 * 60 } else { 7 * 60 }, "planned at {of_day}");
        }
    }
}

/// A number with more digits than the store keeps is kept as it will be read.
#[test]
fn what_is_told_of_the_air_comes_back_from_the_store_as_it_went_in() {
    for n in 0..2_000 {
        let share = f64::from(n) / 1_999.0;
        let mut shop = ShopHistory::default();
        note(&mut shop, None, 5.0 + 25.0 * share, MORNING, EIGHT);
        note_humidity(&mut shop, Some(3.0 + 97.0 * share), MORNING).unwrap();
        let text = serde_json::to_string(&shop).unwrap();
        assert_eq!(
            serde_json::from_str::<ShopHistory>(&text).unwrap(),
            shop,
            "{text}"
        );
    }
}
