//! What is looked for: words, all of which are to be found, by how they begin; and days.

use crate::job::date::{date_of, day_of};
use std::ops::Range;

/// The months as they are written out.
const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// As many letters of a month behind "last" tell which it is.
const LETTERS: usize = 3;

/// What is looked for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Query {
    terms: Vec<Term>,
}

/// One of the things that must all hold.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Term {
    /// The words, all of them there.
    words: Vec<String>,
    /// Or a day among these.
    days: Option<Range<i64>>,
}

impl Query {
    /// Reads what was typed on the day `today`, counted from 1970-01-01.
    ///
    /// "today", "yesterday", "last week", "this month", "last October" are days, or the words themselves.
    pub fn read(typed: &str, today: i64) -> Self {
        let plain = plain(typed);
        let words: Vec<&str> = plain
            .split(' ')
            .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()))
            // "M8 x 30" and "M8x30" are the same search.
            .filter(|word| !word.is_empty() && *word != "x")
            .collect();
        let mut terms = Vec::new();
        let mut rest = words.as_slice();
        while let Some((first, after)) = rest.split_first() {
            let second = after.first().copied().unwrap_or_default();
            let (days, taken) = match (one_day(first, today), span(first, second, today)) {
                (Some(days), _) => (Some(days), 1),
                (None, Some(days)) => (Some(days), 2),
                (None, None) => (None, 1),
            };
            let (own, left) = rest.split_at(taken);
            terms.push(Term {
                words: own.iter().map(|word| (*word).to_owned()).collect(),
                days,
            });
            rest = left;
        }
        Self { terms }
    }

    /// Nothing is looked for.
    pub fn is_empty(&self) -> bool {
        self.terms.is_empty()
    }

    /// Whether all of it is in `hay`, or of that day.
    pub(super) fn finds(&self, hay: &str, day: Option<i64>) -> bool {
        !self.is_empty()
            && self.terms.iter().all(|term| {
                let of_day = |days: &Range<i64>| day.is_some_and(|day| days.contains(&day));
                term.days.as_ref().is_some_and(of_day) || term.words.iter().all(|word| begins(hay, word))
            })
    }
}

/// Whether a word of `hay` begins with `word`; a number is that number, so that "M1" is no "M10".
fn begins(hay: &str, word: &str) -> bool {
    let digit = |c: char| c.is_ascii_digit();
    hay.match_indices(word).any(|(at, _)| {
        let before = hay.get(..at).and_then(|before| before.chars().next_back());
        let after = hay.get(at + word.len()..).and_then(|after| after.chars().next());
        let starts = !before.is_some_and(char::is_alphanumeric);
        let same_number = !(word.ends_with(digit) && after.is_some_and(digit));
        starts && same_number
    })
}

/// Text as it is compared: small letters, sizes apart ("m8 x 30"), the decimal comma a point, units
/// without their dot ("nm").
pub(super) fn plain(text: &str) -> String {
    let letters: Vec<char> = text.to_lowercase().chars().collect();
    let mut plain = String::with_capacity(letters.len());
    let digit = |at: Option<usize>| {
        at.and_then(|at| letters.get(at))
            .is_some_and(char::is_ascii_digit)
    };
    for (at, letter) in letters.iter().enumerate() {
        let between = digit(at.checked_sub(1)) && digit(Some(at + 1));
        match letter {
            '×' => plain.push_str(" x "),
            'x' if between => plain.push_str(" x "),
            ',' if between => plain.push('.'),
            '·' => {}
            c if c.is_whitespace() => plain.push(' '),
            c => plain.push(*c),
        }
    }
    plain
}

/// A day as it is found by its words: "2025-10-14 14 october 2025".
pub(super) fn day_words(day: i64) -> String {
    let (year, month, of_month) = date_of(day);
    let name = MONTHS.get(month as usize - 1).copied().unwrap_or_default();
    format!("{year:04}-{month:02}-{of_month:02} {of_month} {name} {year}")
}

fn one_day(word: &str, today: i64) -> Option<Range<i64>> {
    match word {
        "today" => Some(today..today + 1),
        "yesterday" => Some(today - 1..today),
        _ => None,
    }
}

/// The days of "last week", "this year", "last october".
fn span(which: &str, what: &str, today: i64) -> Option<Range<i64>> {
    let back = match which {
        "this" => 0,
        "last" => 1,
        _ => return None,
    };
    let (year, month, _) = date_of(today);
    let (year, month) = (i32::try_from(year).ok()?, month as i32);
    let months = |from: i32, count: i32| {
        let first = |months: i32| day_of(year + months.div_euclid(12), months.rem_euclid(12) as u32 + 1, 1);
        first(from)..first(from + count)
    };
    match what {
        "week" => {
            // Day 0 was a Thursday; a week begins on Monday.
            let monday = today - (today + 3).rem_euclid(7) - 7 * i64::from(back);
            Some(monday..monday + 7)
        }
        "month" => Some(months(month - 1 - back, 1)),
        "year" => Some(months(-12 * back, 12)),
        // The last one that is over; of this year's or the year before's.
        name if back == 1 && name.len() >= LETTERS => {
            let at = MONTHS.iter().position(|month| month.starts_with(name))? as i32;
            let over = at < month - 1;
            Some(months(if over { at } else { at - 12 }, 1))
        }
        _ => None,
    }
}
