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
            Self::Unreadable => f.write_str(
                "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
            ),
            Self::UnknownSize => f.write_str(
                "That size is not in the table: metric M2 to M48, inch #2 to 1 1/2 and pipe 1/16 to 1 are.",
            ),
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
    if let Some(found) = read_pipe(&plain) {
        return found;
    }
    match plain.strip_prefix('m') {
        Some(rest) => read_metric(rest),
        None => read_unified(&mixed(text), &plain),
    }
}

/// The words a pipe thread is known by, behind or before its size; a taper one's twin is meant by its own.
const PIPE: [(&str, &str); 8] = [
    ("nptf", "NPTF"),
    ("npt", "NPT"),
    ("rp", "Rp"),
    ("bspp", "G"),
    ("bspt", "R"),
    ("bsp", "G"),
    ("g", "G"),
    ("r", "R"),
];

/// A pipe thread; none where no such word stands there.
fn read_pipe(plain: &str) -> Option<Result<Thread, ThreadError>> {
    let (size, mark) = PIPE.iter().find_map(|(word, mark)| {
        let size = plain.strip_prefix(word).or_else(|| plain.strip_suffix(word))?;
        let size = size.trim_matches('-').trim_end_matches("in");
        let of_digits = size
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '/' | '.' | '-'));
        (of_digits && !size.is_empty()).then_some((size, *mark))
    })?;
    // The pitch follows from the size: said too, it must be the right one.
    let (size, pitch) = match size.split_once('-') {
        Some((size, pitch)) => (size, Some(pitch)),
        None => (size, None),
    };
    let of_mark = || {
        let rows = ROWS.iter().filter(move |row| Thread(row).is_pipe());
        rows.filter(move |row| pipe_parts(row.name).1 == mark)
    };
    let Some(row) = of_mark().find(|row| pipe_parts(row.name).0 == size) else {
        return Some(Err(ThreadError::UnknownSize));
    };
    let right = match pitch.map(number) {
        None => true,
        Some(Err(why)) => return Some(Err(why)),
        Some(Ok(per_inch)) => (MM_PER_INCH / per_inch - row.pitch_mm).abs() < SAME_MM,
    };
    Some(if right {
        Ok(Thread(row))
    } else {
        Err(ThreadError::UnknownPitch {
            offered: row.name.to_owned(),
        })
    })
}

/// The size and the mark of a pipe thread's name: "G 1/4", "1/8-27 NPT".
fn pipe_parts(name: &str) -> (&str, &str) {
    match name.split_once(' ') {
        Some((mark @ ("G" | "Rp" | "R"), size)) => (size, mark),
        Some((size, mark)) => (size.split_once('-').map_or(size, |(size, _)| size), mark),
        None => (name, ""),
    }
}

/// Every thread whose name has what was typed in it, whatever stands between.
pub(super) fn found(typed: &str) -> Vec<Thread> {
    let plain = |text: &str| -> String {
        text.chars()
            .filter_map(plain_letter)
            .filter(|letter| !matches!(letter, '#' | '-'))
            .collect()
    };
    let wanted = plain(typed);
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut found: Vec<(usize, Thread)> = ROWS
        .iter()
        .filter_map(|row| Some((plain(row.name).find(&wanted)?, Thread(row))))
        .collect();
    found.sort_by_key(|(at, _)| *at);
    found.into_iter().map(|(_, thread)| thread).collect()
}

/// The whole inch of a size such as 1 1/8 or 1-1/8, which without its blank would be 11/8.
fn mixed(text: &str) -> Option<String> {
    let rest = text.trim().strip_prefix('1')?;
    let fraction = rest.strip_prefix(|c: char| c == '-' || c == '–' || c.is_whitespace())?;
    let fraction = fraction.trim_start();
    let digits = fraction.find(|c: char| !c.is_ascii_digit())?;
    (digits > 0 && fraction[digits..].starts_with('/')).then(|| fraction.to_owned())
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

fn read_unified(mixed: &Option<String>, plain: &str) -> Result<Thread, ThreadError> {
    let fraction: Option<String> = mixed
        .as_ref()
        .map(|fraction| fraction.chars().filter_map(plain_letter).collect());
    let plain = fraction.as_deref().unwrap_or(plain);
    let whole = if fraction.is_some() { "1 " } else { "" };
    let series = [("unef", Series::Unef), ("unc", Series::Unc), ("unf", Series::Unf)];
    let (rest, series) = series
        .into_iter()
        .find_map(|(word, series)| Some((plain.strip_suffix(word)?, Some(series))))
        .unwrap_or((plain, None));
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
            let name = row.name.trim_start_matches('#');
            let name = name.strip_prefix(whole).unwrap_or("");
            !Thread(row).is_pipe() && name.split_once('-').is_some_and(|(name, _)| name == size)
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
