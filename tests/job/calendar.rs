//! The calendar file, read by a library that isn't ours.

use super::{MORNING, hours};
use halfcase::job::bottle::with_activator;
use halfcase::job::calendar::{Alarm, alarms, calendar};
use halfcase::job::clock::{ClockId, CureClock};
use halfcase::job::date::{date_of, day_of, written};
use halfcase::trade::application::{Application, Face, JointKind, answer};
use halfcase::trade::compound::CompoundClass;
use halfcase::trade::cure::{ShopHistory, ShopReading};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::ThermodynamicTemperature;
use icalendar::parser::{read_calendar, unfold};
use icalendar::{CalendarDateTime, Component, DatePerhapsTime};
use uom::si::thermodynamic_temperature::degree_celsius;

/// A threadlocker on steel: 10 min to join, 30 min to hold, 24 h to full cure at 22 °C, by typical labels.
fn clock(name: &str) -> CureClock {
    let mut joint = Application::new(JointKind::ThreadedFastener);
    joint.face = Some(Face::SteelOrIron);
    answer(&mut joint, "hole", "through").unwrap();
    CureClock {
        id: ClockId(3),
        name: name.to_owned(),
        compound: "medium-strength threadlocker".to_owned(),
        spec: CompoundClass::ThreadlockMedium.typical_cure(&joint).unwrap(),
        started: MORNING,
        held_ms: 0,
        bound: None,
        ended: None,
    }
}

fn shop(celsius: f64) -> ShopHistory {
    ShopHistory(vec![ShopReading {
        at: MORNING,
        temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius),
        humidity: None,
    }])
}

/// Every event's start in milliseconds since 1970, with its summary, as the library reads them.
fn read(file: &str) -> Vec<(i64, String)> {
    let calendar: icalendar::Calendar = file.parse().unwrap();
    calendar
        .events()
        .map(|event| {
            let Some(DatePerhapsTime::DateTime(CalendarDateTime::Utc(start))) = event.get_start() else {
                panic!("not in UTC: {event:?}");
            };
            assert!(event.get_timestamp().is_some(), "no DTSTAMP");
            assert!(event.get_uid().is_some(), "no UID");
            (start.timestamp_millis(), event.get_summary().unwrap().to_owned())
        })
        .collect()
}

/// Each event's alarms: (action, trigger).
fn bells(file: &str) -> Vec<Vec<(String, String)>> {
    let unfolded = unfold(file);
    let calendar = read_calendar(&unfolded).unwrap();
    let events = calendar
        .components
        .iter()
        .filter(|component| component.name == "VEVENT");
    events
        .map(|event| {
            let alarms = event
                .components
                .iter()
                .filter(|component| component.name == "VALARM");
            alarms
                .map(|alarm| {
                    let value = |name: &str| {
                        let found = alarm.properties.iter().find(|property| property.name == name);
                        found.unwrap().val.to_string()
                    };
                    assert!(!value("DESCRIPTION").is_empty());
                    (value("ACTION"), value("TRIGGER"))
                })
                .collect()
        })
        .collect()
}

fn file_of(clock: &CureClock, shop: &ShopHistory, now: Moment) -> String {
    calendar(&alarms(clock, shop, now, 0, 0), now)
}

#[test]
fn every_mark_to_come_rings_at_its_instant() {
    let file = file_of(&clock("Baffle screws"), &shop(22.0), MORNING);
    let expected = [
        (1_780_300_800_000 + 600_000, "Baffle screws: close it by now"),
        (1_780_300_800_000 + 1_800_000, "Baffle screws: holds its place"),
        (1_780_300_800_000 + 21_600_000, "Baffle screws: fit for oil"),
        (1_780_300_800_000 + 86_400_000, "Baffle screws: full cure"),
    ];
    let expected: Vec<(i64, String)> = expected
        .iter()
        .map(|(at, words)| (*at, (*words).to_owned()))
        .collect();
    assert_eq!(read(&file), expected);
    // At the event's own start, and shown: RFC 5545, 3.8.6.3.
    let bell = vec![("DISPLAY".to_owned(), "PT0S".to_owned())];
    assert_eq!(bells(&file), [bell.clone(), bell.clone(), bell.clone(), bell]);
    assert!(file.contains("\r\nDTSTART:20260602T080000Z\r\n"), "{file}");
}

#[test]
fn what_has_passed_is_left_out() {
    let file = file_of(&clock("Baffle screws"), &shop(22.0), hours(1.0));
    assert_eq!(read(&file).len(), 2);
    let done = file_of(&clock("Baffle screws"), &shop(22.0), hours(25.0));
    assert_eq!(read(&done), []);
    assert!(done.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n"));
}

#[test]
fn a_colder_shop_rings_later_never_earlier() {
    // 10 K colder takes up to 2.5 times as long: 24 h become 60 h at the latest.
    let file = file_of(&clock("Case joint"), &shop(12.0), hours(1.0));
    let (at, _) = read(&file).last().unwrap().clone();
    let expected = 1_780_300_800_000 + 60 * 3_600_000;
    assert!((expected..expected + 2_000).contains(&at), "{at}");
}

#[test]
fn the_phone_ahead_of_our_time_is_met_at_its_own() {
    let marks = alarms(&clock("Case joint"), &shop(22.0), hours(1.0), 8 * 3_600_000, 0);
    // Oil after 6 h (common practice, no source), met 8 h ahead.
    assert_eq!(marks[0].at, hours(14.0));
}

#[test]
fn lines_are_short_and_end_as_they_should_whatever_the_name() {
    let name = "Übergehäuse; links, “Ölkanal” \\ rechts\nÅngström ✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓✓\u{7}";
    let file = file_of(&clock(name), &shop(22.0), MORNING);
    for line in file.split_inclusive("\r\n") {
        assert!(line.ends_with("\r\n"), "{line:?}");
        assert!(line.len() <= 77, "{} octets: {line:?}", line.len() - 2);
        assert!(
            !line.trim_end_matches("\r\n").contains(['\r', '\n', '\u{7}']),
            "{line:?}"
        );
    }
    let (_, summary) = &read(&file)[0];
    let whole = summary
        .replace("\\n", "\n")
        .replace("\\;", ";")
        .replace("\\,", ",")
        .replace("\\\\", "\\");
    assert_eq!(
        whole,
        format!("{}: close it by now", name.trim_end_matches('\u{7}'))
    );
}

#[test]
fn a_later_file_replaces_the_earlier() {
    let uid = |now| {
        let all = alarms(&clock("Case joint"), &shop(22.0), now, 0, 0);
        let last = all.last().unwrap();
        (last.uid.clone(), last.revision)
    };
    let (first, second) = (uid(MORNING), uid(hours(2.0)));
    assert_eq!(first.0, second.0);
    assert!(second.1 > first.1);
}

#[test]
fn times_are_true_across_a_change_of_clocks() {
    // Each instant's UTC reading from `date -u`: the European and the American change of 2026, a leap
    // day, the last second of a year.
    let instants = [
        (1_774_746_000_000, "20260329T010000Z"),
        (1_772_953_200_000, "20260308T070000Z"),
        (1_835_395_200_000, "20280229T000000Z"),
        (1_798_761_599_000, "20261231T235959Z"),
    ];
    for (ms, written) in instants {
        let alarm = Alarm {
            uid: "1".into(),
            revision: 0,
            at: Moment(ms),
            summary: "x".into(),
            description: "y".into(),
        };
        let file = calendar(&[alarm], MORNING);
        assert!(file.contains(&format!("DTSTART:{written}\r\n")), "{file}");
        assert_eq!(read(&file)[0].0, ms);
    }
}

#[test]
fn an_instant_no_calendar_can_write_is_left_out() {
    for ms in [i64::MAX, i64::MIN] {
        let alarm = Alarm {
            uid: "1".into(),
            revision: 0,
            at: Moment(ms),
            summary: "x".into(),
            description: "y".into(),
        };
        assert_eq!(read(&calendar(&[alarm], MORNING)), []);
    }
}

#[test]
fn days_and_dates_are_each_others_way_back() {
    assert_eq!(day_of(1970, 1, 1), 0);
    assert_eq!(day_of(2026, 6, 1), 1_780_300_800 / 86_400);
    assert_eq!(written(day_of(2024, 2, 29)), "2024-02-29");
    // A thirteenth month is the next January.
    assert_eq!(day_of(2026, 13, 1), day_of(2027, 1, 1));
    for day in (-800_000..800_000).step_by(97) {
        let (year, month, of_month) = date_of(day);
        assert_eq!(day_of(year as i32, month, of_month), day);
        assert!((1..=12).contains(&month) && (1..=31).contains(&of_month));
    }
}

#[test]
fn an_activator_makes_only_anaerobics_quicker() {
    let mut joint = Application::new(JointKind::FlangeFlexible);
    joint.face = Some(Face::CastAluminium);
    let slow = CompoundClass::AnaerobicFlange.typical_cure(&joint).unwrap();
    assert_ne!(with_activator(slow.clone()), slow);
    let silicone = CompoundClass::SiliconeNeutral.typical_cure(&joint).unwrap();
    assert_eq!(with_activator(silicone.clone()), silicone);
}
