//! Reading a thread designation as people write it.

use super::table::{MM_PER_INCH, ROWS, Row};
use super::{Series, Thread};
use crate::trade::quantity::decimal;
use std::fmt;

/// Longest text read: no designation comes near it.
const LONGEST: usize = 40;
/// Diameters and pitches closer than this are the same number typed.
const SAME_MM: f64 = 1e-6;

/// Why a text is not a thread of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ThreadError {
    /// Nothing was typed.
    Empty,
    /// The text is no thread designation.
    Unreadable,
    /// A designation, but of a diameter outside the table.
    UnknownSize,
    /// A known diameter with a pitch that is not made for it; the designations that are.
    UnknownPitch {
        /// Designations of this diameter.
        offered: String,
    },
    /// An inch size without threads per inch or series; the designations to choose from.
    NeedsPitch {
        /// Designations of this diameter.
        offered: String,
    },
}

impl fmt::Display for ThreadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("Type a thread, such as M8, M10×1.25 or 1/4-20."),
            Self::Unreadable => {
                f.write_str("That is no thread size: write it as M8, M10×1.25, 1/4-20 or #10-32.")
            }
            Self::UnknownSize => {
                f.write_str("That size is not in the table: metric M3 to M24 and inch #4 to 3/4 are.")
            }
            Self::UnknownPitch { offered } => write!(f, "That pitch is not in the table: choose {offered}."),
            Self::NeedsPitch { offered } => {
                write!(f, "An inch size needs its threads per inch: choose {offered}.")
            }
        }
    }
}

impl std::error::Error for ThreadError {}

/// Reads one designation.
pub(super) fn read(text: &str) -> Result<Thread, ThreadError> {
    if text.chars().count() > LONGEST {
        return Err(ThreadError::Unreadable);
    }
    let plain: String = text.chars().filter_map(plain_letter).collect();
    if plain.is_empty() {
        return Err(ThreadError::Empty);
    }
    match plain.strip_prefix('m') {
        Some(rest) => read_metric(rest),
        None => read_unified(&plain),
    }
}

/// One way of writing for each sign: lower case, `x` for times, a point for a comma, a plain hyphen.
fn plain_letter(letter: char) -> Option<char> {
    match letter {
        '×' | '✕' | '*' | 'X' => Some('x'),
        '–' | '—' | '−' | '‑' => Some('-'),
        ',' => Some('.'),
        '"' | '″' | '”' => None,
        letter if letter.is_whitespace() => None,
        letter => Some(letter.to_ascii_lowercase()),
    }
}

fn read_metric(rest: &str) -> Result<Thread, ThreadError> {
    let (size, pitch) = match rest.split_once(['x', '-']) {
        Some((size, pitch)) => (size, Some(number(pitch)?)),
        None => (rest, None),
    };
    let major_mm = number(size)?;
    let rows = || {
        ROWS.iter().filter(move |row| {
            matches!(row.series, Series::MetricCoarse | Series::MetricFine)
                && (row.major_mm - major_mm).abs() < SAME_MM
        })
    };
    let found = rows().find(|row| match pitch {
        Some(pitch_mm) => (row.pitch_mm - pitch_mm).abs() < SAME_MM,
        None => row.series == Series::MetricCoarse,
    });
    match found {
        Some(row) => Ok(Thread(row)),
        None if rows().next().is_none() => Err(ThreadError::UnknownSize),
        None => Err(ThreadError::UnknownPitch {
            offered: names(rows()),
        }),
    }
}

fn read_unified(plain: &str) -> Result<Thread, ThreadError> {
    let (rest, series) = if let Some(rest) = plain.strip_suffix("unc") {
        (rest, Some(Series::Unc))
    } else if let Some(rest) = plain.strip_suffix("unf") {
        (rest, Some(Series::Unf))
    } else {
        (plain, None)
    };
    let rest = ["#", "no.", "no"]
        .iter()
        .find_map(|mark| rest.strip_prefix(mark))
        .unwrap_or(rest);
    let (size, pitch) = match rest.trim_end_matches('-').split_once(['-', 'x']) {
        Some((size, per_inch)) => (size, Some(number(per_inch)?)),
        None => (rest.trim_end_matches('-'), None),
    };
    let size = size.trim_end_matches("in");
    if size.is_empty()
        || !size
            .chars()
            .all(|letter| letter.is_ascii_digit() || letter == '/')
    {
        return Err(ThreadError::Unreadable);
    }
    let rows = || {
        ROWS.iter().filter(move |row| {
            row.name
                .trim_start_matches('#')
                .split_once('-')
                .is_some_and(|(name, _)| name == size)
        })
    };
    if rows().next().is_none() {
        return Err(ThreadError::UnknownSize);
    }
    if pitch.is_none() && series.is_none() {
        return Err(ThreadError::NeedsPitch {
            offered: names(rows()),
        });
    }
    rows()
        .find(|row| {
            pitch.is_none_or(|per_inch| (MM_PER_INCH / per_inch - row.pitch_mm).abs() < SAME_MM)
                && series.is_none_or(|series| series == row.series)
        })
        .map(Thread)
        .ok_or_else(|| ThreadError::UnknownPitch {
            offered: names(rows()),
        })
}

fn number(text: &str) -> Result<f64, ThreadError> {
    decimal(text)
        .filter(|value| *value > 0.0)
        .ok_or(ThreadError::Unreadable)
}

/// "M8, M8×1 or M8×0.75".
fn names(rows: impl Iterator<Item = &'static Row>) -> String {
    let names: Vec<&str> = rows.map(|row| row.name).collect();
    match names.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => String::new(),
    }
}
