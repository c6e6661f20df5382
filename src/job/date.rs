//! Days of the civil calendar, counted from 1970-01-01, and spans in words; which day it is comes from outside.

/// The day of that date, counted from 1970-01-01 (proleptic Gregorian, any year an `i32` holds).
/// A month outside 1–12 counts on into its neighbours' years.
pub fn day_of(year: i32, month: u32, day: u32) -> i64 {
    // The year begins in March, so that the leap day is its last.
    let months = i64::from(year) * 12 + i64::from(month) - 3;
    let (year, month) = (months.div_euclid(12), months.rem_euclid(12));
    let (era, of_era) = (year.div_euclid(400), year.rem_euclid(400));
    let of_year = (153 * month + 2) / 5 + i64::from(day) - 1;
    era * DAYS_IN_ERA + of_era * 365 + of_era / 4 - of_era / 100 + of_year - DAYS_TO_1970
}

/// Year, month (1–12) and day of the month of that day.
pub fn date_of(day: i64) -> (i64, u32, u32) {
    let days = day + DAYS_TO_1970;
    let (era, of_era) = (days.div_euclid(DAYS_IN_ERA), days.rem_euclid(DAYS_IN_ERA));
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    let year = era * 400 + year + i64::from(month <= 2);
    (year, month as u32, day as u32)
}

/// A span in words, whichever way it goes.
pub fn span_words(ms: i64) -> String {
    let minutes = (ms.unsigned_abs() + 30_000) / 60_000;
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

/// "2026-03-02".
pub fn written(day: i64) -> String {
    let (year, month, day) = date_of(day);
    format!("{year:04}-{month:02}-{day:02}")
}

/// Days of 400 years, after which the calendar repeats.
const DAYS_IN_ERA: i64 = 146_097;
/// Days from 0000-03-01 to 1970-01-01.
const DAYS_TO_1970: i64 = 719_468;
