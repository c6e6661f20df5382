//! Clocks as a file for the phone's own calendar, which rings when a page can't: iCalendar, RFC 5545.
//!
//! Times are UTC, so the file means the same in every time zone and across a change of clocks.

use super::clock::CureClock;
use super::date::date_of;
use crate::trade::cure::ShopHistory;
use crate::trade::moment::Moment;

/// The type such a file is handed out under.
pub const MEDIA_TYPE: &str = "text/calendar;charset=utf-8";

/// RFC 5545, 3.1: a line is at most so many octets long, without its end.
const LONGEST_LINE: usize = 75;
/// An entry this long is easy to see in a day's view.
const LENGTH_MIN: u32 = 15;
const DAY_MS: i64 = 86_400_000;
/// 0000-01-01 to 9999-12-31: what four digits of a year can say.
const WRITABLE_MS: std::ops::Range<i64> = -62_167_219_200_000..253_402_300_800_000;

/// One instant the calendar is to ring at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alarm {
    /// The same for the same thing, so that a later file replaces it.
    pub uid: String,
    /// Grows with every later file.
    pub revision: u32,
    /// When to ring, to the second.
    pub at: Moment,
    /// What it says.
    pub summary: String,
    /// More of it.
    pub description: String,
}

/// The marks of `clock` still to come at `now`. `ahead_ms` is how far the phone's clock, which the
/// calendar goes by, is ahead of ours, `doubted_ms` as in [`CureClock::marks`].
pub fn alarms(
    clock: &CureClock,
    shop: &ShopHistory,
    now: Moment,
    ahead_ms: i64,
    doubted_ms: i64,
) -> Vec<Alarm> {
    let since_start = now.0.saturating_sub(clock.started.0).max(0) / 1_000;
    clock
        .marks(shop, doubted_ms)
        .into_iter()
        .filter(|mark| mark.at() > now)
        .map(|mark| Alarm {
            uid: format!("{}-{}-{:?}@halfcase", clock.started.0, clock.id.0, mark.last),
            revision: u32::try_from(since_start).unwrap_or(u32::MAX),
            at: whole_second(mark.at().0.saturating_add(ahead_ms), mark.last.is_deadline()),
            summary: match mark.last.is_deadline() {
                true => format!("{}: {} now", clock.name, mark.words()),
                false => format!("{}: {}", clock.name, mark.reached_words()),
            },
            description: format!("{}. {}", clock.compound, CHECK_FIRST),
        })
        .collect()
}

const CHECK_FIRST: &str = "Reckoned for the shop temperature told so far; look at the clock in Halfcase, the label and the manual first.";

/// A deadline is never late, a wait never early.
fn whole_second(ms: i64, early: bool) -> Moment {
    let up = if early { 0 } else { 999 };
    Moment(ms.saturating_add(up).div_euclid(1_000).saturating_mul(1_000))
}

/// The file. `stamp` is when it was made. An instant beyond the year 9999 is left out.
pub fn calendar(alarms: &[Alarm], stamp: Moment) -> String {
    let mut file = String::new();
    let mut line = |text: &str| fold(&mut file, text);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Halfcase//Cure clocks//EN");
    for alarm in alarms {
        let (Some(at), Some(stamp)) = (utc(alarm.at), utc(stamp)) else {
            continue;
        };
        let summary = escaped(&alarm.summary);
        line("BEGIN:VEVENT");
        line(&format!("UID:{}", escaped(&alarm.uid)));
        line(&format!("DTSTAMP:{stamp}"));
        line(&format!("SEQUENCE:{}", alarm.revision.min(i32::MAX as u32)));
        line(&format!("DTSTART:{at}"));
        line(&format!("DURATION:PT{LENGTH_MIN}M"));
        line(&format!("SUMMARY:{summary}"));
        line(&format!("DESCRIPTION:{}", escaped(&alarm.description)));
        line("TRANSP:TRANSPARENT");
        line("BEGIN:VALARM");
        line("ACTION:DISPLAY");
        line("TRIGGER:PT0S");
        line(&format!("DESCRIPTION:{summary}"));
        line("END:VALARM");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    file
}

/// "20260302T080000Z".
fn utc(at: Moment) -> Option<String> {
    WRITABLE_MS.contains(&at.0).then(|| {
        let (year, month, day) = date_of(at.0.div_euclid(DAY_MS));
        let second = at.0.rem_euclid(DAY_MS) / 1_000;
        let (hour, minute, second) = (second / 3_600, second / 60 % 60, second % 60);
        format!("{year:04}{month:02}{day:02}T{hour:02}{minute:02}{second:02}Z")
    })
}

/// Text as a property's value; control characters have no place in one.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.replace("\r\n", "\n").chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' | '\r' => out.push_str("\\n"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// Writes one line, folded between characters; what follows a fold begins with a blank that counts.
fn fold(file: &mut String, text: &str) {
    let mut octets = 0;
    for c in text.chars() {
        if octets + c.len_utf8() > LONGEST_LINE {
            file.push_str("\r\n ");
            octets = 1;
        }
        octets += c.len_utf8();
        file.push(c);
    }
    file.push_str("\r\n");
}
