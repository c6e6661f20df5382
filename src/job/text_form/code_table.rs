//! A table of codes as it is typed: the codes of either side, and for each code down the side a line of what
//! goes with those across the top, all with commas.

use crate::trade::quantity::short;
use crate::trade::selection::{Codes, NoPart, place};

/// More codes than any case has, on either side.
pub const MOST_CODES: usize = 20;
/// What stands for a cell in which the manual has nothing.
const EMPTY: &str = "–";

/// The codes of one side as typed.
pub fn list(typed: &str) -> impl Iterator<Item = &str> {
    typed.split(',').map(str::trim).filter(|part| !part.is_empty())
}

/// Reads the codes of one side, each once.
///
/// # Errors
/// A sentence: too many, or one twice.
pub fn side(typed: &str) -> Result<Vec<String>, String> {
    let codes: Vec<String> = list(typed).map(str::to_owned).collect();
    let twice = |at: usize, code: &String| codes[..at].iter().any(|other| other.eq_ignore_ascii_case(code));
    if codes.len() > MOST_CODES {
        return Err("A side has 20 codes at most.".to_owned());
    }
    match codes.iter().enumerate().find(|(at, code)| twice(*at, code)) {
        Some((_, code)) => Err(format!("“{}” stands there twice.", short(code))),
        None => Ok(codes),
    }
}

/// Reads what goes with each code across the top, for that code down the side. A dash, or nothing between two
/// commas, is a cell in which the manual has nothing; so is what is left off at the end.
///
/// # Errors
/// A sentence: more parts than there are codes across.
pub fn line(code: &str, across: &[String], typed: &str) -> Result<Vec<String>, String> {
    let mut parts: Vec<&str> = typed.split(',').map(str::trim).collect();
    while parts.last().is_some_and(|last| last.is_empty()) {
        parts.pop();
    }
    if across.is_empty() && !parts.is_empty() {
        return Err(format!(
            "There are no codes across the top yet: enter these before the line of “{}”.",
            short(code)
        ));
    }
    if parts.len() > across.len() {
        return Err(one_for_each(code, parts.len(), across));
    }
    // A phone's keyboard has a hyphen sooner than the dash.
    let empty = |part: &str| matches!(part, EMPTY | "-" | "—" | "−");
    let cells = parts
        .into_iter()
        .map(|part| if empty(part) { "" } else { part }.to_owned());
    Ok(cells.collect())
}

/// The same of a table that is copied out whole: a line of fewer parts may be one of other codes across the top.
///
/// # Errors
/// A sentence: more parts than there are codes across, or fewer; none is a line not entered yet.
pub fn whole_line(code: &str, across: &[String], typed: &str) -> Result<Vec<String>, String> {
    let cells = line(code, across, typed)?;
    match cells.len() {
        count if count == 0 || count == across.len() => Ok(cells),
        count => Err(one_for_each(code, count, across)),
    }
}

fn one_for_each(code: &str, count: usize, across: &[String]) -> String {
    let parts = if count == 1 { "part" } else { "parts" };
    format!(
        "The line of “{}” has {count} {parts}, and across the top are {}: enter one part for each of these, with commas, – where the manual has nothing.",
        short(code),
        across.join(", ")
    )
}

/// Where each of these codes stood before: under its own name; or in its own place, where it alone was renamed.
pub fn stood(before: &[String], codes: &[String]) -> Vec<Option<usize>> {
    let new = codes.iter().filter(|code| place(before, code).is_none()).count();
    let renamed = |at: usize| {
        let old = before.get(at).filter(|_| before.len() == codes.len() && new == 1);
        old.is_some_and(|old| place(codes, old).is_none()).then_some(at)
    };
    let all = codes.iter().enumerate();
    all.map(|(at, code)| place(before, code).or_else(|| renamed(at)))
        .collect()
}

/// A line as it is typed.
pub fn line_words(cells: &[String]) -> String {
    let cells = cells.iter().map(|cell| match cell.as_str() {
        "" => EMPTY,
        cell => cell,
    });
    cells.collect::<Vec<_>>().join(", ")
}

/// What is asked for in the line of a code: "A: what goes with 1, 2, 3".
pub fn line_label(code: &str, across: &str) -> String {
    format!("{code}: what goes with {across}")
}

/// Why the table has no part for the codes read: which of them it hasn't, and which it has.
pub fn no_part_words(codes: &Codes, why: NoPart, down: &str, across: &str) -> String {
    let unknown = |name: &str, or: &str, read: &str, all: &[String]| {
        let name = if name.is_empty() { or } else { name };
        format!(
            "The manual’s table has no “{}” as {name}, only {}: nothing is chosen. Read it again.",
            short(read.trim()),
            all.join(", ")
        )
    };
    match why {
        NoPart::Down if !codes.down.is_empty() => unknown(&codes.down_name, "first code", down, &codes.down),
        NoPart::Across if !codes.across.is_empty() => {
            unknown(&codes.across_name, "second code", across, &codes.across)
        }
        NoPart::Down | NoPart::Across | NoPart::Cell => {
            "The manual’s table has nothing for these codes: nothing is chosen. Read them again.".to_owned()
        }
    }
}
