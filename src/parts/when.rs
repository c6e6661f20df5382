//! Times in the user's words: "tomorrow 07:40", "06:12 left", "finished 3 h ago".

use crate::device::time::LocalTime;
#[cfg(feature = "app")]
use crate::device::time::local;
#[cfg(feature = "app")]
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use uom::si::time::second;

/// `at` as seen from `now`, in the phone's time zone.
#[cfg(feature = "app")]
pub fn when(at: Moment, now: Moment) -> String {
    phrase(local(at), local(now))
}

/// `at` in few letters, as seen from `now`: “14:00” today, “Sun 08:10” within a week.
#[cfg(feature = "app")]
pub fn brief(at: Moment, now: Moment) -> String {
    brief_phrase(local(at), local(now))
}

/// To the next whole minute: what is waited for is not over in a minute that has only begun.
#[cfg(feature = "app")]
pub fn up(at: Moment) -> Moment {
    Moment(
        at.0.saturating_add(59_999)
            .div_euclid(60_000)
            .saturating_mul(60_000),
    )
}

/// `at` as a date and time that stay true: for paper and files.
#[cfg(feature = "app")]
pub fn date(at: Moment) -> String {
    let at = local(at);
    format!(
        "{:04}-{:02}-{:02} {:02}:{:02}",
        at.date.0, at.date.1, at.date.2, at.clock.0, at.clock.1
    )
}

/// A day and time as seen from another.
pub fn phrase(at: LocalTime, now: LocalTime) -> String {
    let clock = format!("{:02}:{:02}", at.clock.0, at.clock.1);
    match at.day - now.day {
        0 => format!("today {clock}"),
        1 => format!("tomorrow {clock}"),
        -1 => format!("yesterday {clock}"),
        days if (2..7).contains(&days) => format!("{} {clock}", weekday(at.day)),
        _ => format!("{:04}-{:02}-{:02} {clock}", at.date.0, at.date.1, at.date.2),
    }
}

/// A day and time as seen from another, in few letters.
pub fn brief_phrase(at: LocalTime, now: LocalTime) -> String {
    let clock = format!("{:02}:{:02}", at.clock.0, at.clock.1);
    match at.day - now.day {
        0 => clock,
        days if (-6..7).contains(&days) => {
            let day = weekday(at.day);
            format!("{} {clock}", day.get(..3).unwrap_or(day))
        }
        _ => format!("{:02}-{:02} {clock}", at.date.1, at.date.2),
    }
}

/// Day 0, 1970-01-01, was a Thursday.
fn weekday(day: i64) -> &'static str {
    const NAMES: [&str; 7] = [
        "Thursday",
        "Friday",
        "Saturday",
        "Sunday",
        "Monday",
        "Tuesday",
        "Wednesday",
    ];
    NAMES[day.rem_euclid(7) as usize]
}

/// A remaining time as digits: "06:12" hours and minutes above an hour, "12:30" minutes and seconds below
/// with the unit said apart.
pub fn digits(span: Time) -> (String, &'static str) {
    let seconds = span.get::<second>().max(0.0).ceil() as i64;
    if seconds >= 3_600 {
        let minutes = (seconds + 59) / 60;
        (format!("{}:{:02}", minutes / 60, minutes % 60), "h")
    } else {
        (format!("{}:{:02}", seconds / 60, seconds % 60), "min")
    }
}

/// A span in words: "3 h", "25 min", "2 days".
pub fn span(span: Time) -> String {
    let minutes = (span.get::<second>().abs() / 60.0).round() as i64;
    match minutes {
        0 => "less than a minute".to_owned(),
        1..=119 => format!("{minutes} min"),
        120..=2879 => {
            let (hours, rest) = (minutes / 60, minutes % 60);
            if rest == 0 || hours >= 10 {
                format!("{hours} h")
            } else {
                format!("{hours} h {rest} min")
            }
        }
        _ => format!("{} days", (minutes + 720) / 1440),
    }
}

/// How long ago that was.
pub fn ago(span_since: Time) -> String {
    match span_since.get::<second>().abs() < 30.0 {
        true => "just now".to_owned(),
        false => format!("{} ago", span(span_since)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(day: i64, clock: (u32, u32)) -> LocalTime {
        LocalTime {
            day,
            date: (2026, 6, 1),
            clock,
        }
    }

    #[test]
    fn says_the_day_as_a_person_would() {
        let now = at(20_000, (9, 5));
        assert_eq!(phrase(at(20_000, (17, 40)), now), "today 17:40");
        assert_eq!(phrase(at(20_001, (7, 4)), now), "tomorrow 07:04");
        assert_eq!(phrase(at(19_999, (7, 4)), now), "yesterday 07:04");
        // Day 20 000 is 2024-10-04, a Friday.
        assert_eq!(phrase(at(20_003, (7, 4)), now), "Monday 07:04");
        assert_eq!(phrase(at(20_009, (7, 4)), now), "2026-06-01 07:04");
    }

    #[test]
    fn says_it_in_few_letters() {
        let now = at(20_000, (9, 5));
        assert_eq!(brief_phrase(at(20_000, (17, 40)), now), "17:40");
        assert_eq!(brief_phrase(at(20_001, (7, 4)), now), "Sat 07:04");
        assert_eq!(brief_phrase(at(19_999, (7, 4)), now), "Thu 07:04");
        assert_eq!(brief_phrase(at(20_009, (7, 4)), now), "06-01 07:04");
    }

    #[test]
    fn rounds_what_is_left_up_so_that_nothing_is_early() {
        assert_eq!(
            digits(Time::new::<second>(3_600.0 * 6.0 + 1.0)),
            ("6:01".to_owned(), "h")
        );
        assert_eq!(digits(Time::new::<second>(61.2)), ("1:02".to_owned(), "min"));
        assert_eq!(digits(Time::new::<second>(-5.0)), ("0:00".to_owned(), "min"));
    }

    #[test]
    fn spans_in_words() {
        assert_eq!(span(Time::new::<second>(20.0)), "less than a minute");
        assert_eq!(span(Time::new::<second>(90.0 * 60.0)), "90 min");
        assert_eq!(span(Time::new::<second>(2.5 * 3_600.0)), "2 h 30 min");
        assert_eq!(span(Time::new::<second>(3.0 * 86_400.0)), "3 days");
    }
}
