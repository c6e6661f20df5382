//! What can be wrong with a typed quantity, said so that it can be put right.

use super::mark::{in_mark, mark};
use std::fmt;

/// Why a text is no quantity, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct TextError {
    /// Which character, counted from 0; the length of the text where its end is meant.
    pub at: usize,
    /// What is wrong there.
    pub problem: Problem,
}

/// What is wrong at one place of a text.
#[derive(Debug, Clone, PartialEq)]
pub enum Problem {
    /// Nothing was typed.
    Empty {
        /// What would be read.
        example: &'static str,
    },
    /// Something else stands where a number belongs.
    NumberExpected {
        /// What stands there, cut short when long; empty at the end of the text.
        found: String,
    },
    /// The number has no unit.
    UnitExpected {
        /// The units that are read.
        units: &'static str,
    },
    /// A word that is no unit of this quantity.
    UnknownUnit {
        /// The word, cut short when long.
        word: String,
        /// The units that are read.
        units: &'static str,
    },
    /// A comma that may be a decimal comma or may part thousands.
    CommaUnclear {
        /// The number if it is a decimal comma.
        decimal: String,
        /// The number if it parts thousands.
        thousands: String,
    },
    /// A second point or comma in one number.
    SecondSeparator,
    /// More digits than a number here can keep.
    TooManyDigits,
    /// A fraction that is not read, or not with this unit.
    Fraction {
        /// Which fractions are read, with an example.
        allowed: &'static str,
    },
    /// A minus sign before a quantity that has none.
    Negative {
        /// The quantity.
        what: &'static str,
    },
    /// Zero where the quantity must be above it.
    Zero {
        /// The quantity.
        what: &'static str,
    },
    /// Above the largest value that is read.
    TooLarge {
        /// The largest value, with its unit.
        limit: &'static str,
        /// Why there is such a limit.
        why: &'static str,
    },
    /// Below the smallest value that is read.
    TooSmall {
        /// The smallest value, with its unit.
        limit: &'static str,
        /// Why there is such a limit.
        why: &'static str,
    },
    /// A range whose second number is not above its first.
    RangeReversed,
    /// A tolerance that reaches zero or below.
    ToleranceTooWide,
    /// Two different units in one value.
    UnitsDiffer,
    /// More text after the quantity.
    Extra {
        /// What follows, cut short when long.
        word: String,
    },
    /// More values in one text than are read.
    TooManyValues,
}

impl TextError {
    pub(super) fn new(at: usize, problem: Problem) -> Self {
        Self { at, problem }
    }
}

impl fmt::Display for TextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Problem::Empty { example } = self.problem {
            return write!(
                f,
                "Nothing typed: enter a number and its unit, such as {}.",
                in_mark(example)
            );
        }
        match &self.problem {
            Problem::Empty { .. } => Ok(()),
            Problem::NumberExpected { found } if found.is_empty() => {
                let such = in_mark("7.2");
                write!(f, "The text ends where a number belongs, such as 9 or {such}.")
            }
            Problem::NumberExpected { found } => f.write_str(&no_number(found)),
            Problem::UnitExpected { units } => write!(f, "The unit is missing; add {units}."),
            Problem::UnknownUnit { word, units } => {
                write!(f, "“{word}” is not a unit read here; write {units}.")
            }
            Problem::CommaUnclear { decimal, thousands } => {
                write!(
                    f,
                    "The comma can be read two ways; type {decimal} or {thousands}."
                )
            }
            Problem::SecondSeparator => {
                write!(f, "A number has one decimal point or comma; leave out the other.")
            }
            Problem::TooManyDigits => {
                write!(
                    f,
                    "Too many digits; type at most 15, and at most 12 after the point."
                )
            }
            Problem::Fraction { allowed } => write!(f, "This fraction is not read; {allowed}."),
            Problem::Negative { what } => write!(f, "Leave out the minus sign: {what} is not negative."),
            Problem::Zero { what } => write!(f, "Type a value above zero: {what} of zero says nothing."),
            Problem::TooLarge { limit, why } => {
                write!(
                    f,
                    "This is more than {limit}, and {why}; check the unit and the decimal point."
                )
            }
            Problem::TooSmall { limit, why } => {
                write!(
                    f,
                    "This is less than {limit}, and {why}; check the unit and the sign."
                )
            }
            Problem::RangeReversed => {
                write!(
                    f,
                    "The second number of a range must be above the first; type the low end first."
                )
            }
            Problem::ToleranceTooWide => {
                write!(
                    f,
                    "The tolerance reaches down to zero; type one that is smaller than the value."
                )
            }
            Problem::UnitsDiffer => {
                write!(
                    f,
                    "This unit differs from the one before; give one value in one unit."
                )
            }
            Problem::Extra { word } => {
                write!(f, "“{word}” is not expected here; leave it out.")
            }
            Problem::TooManyValues => write!(f, "Too many values in one text; give at most 8."),
        }
    }
}

impl std::error::Error for TextError {}

/// What to say of a text that is no number: in the user's mark.
///
/// ```
/// use halfcase::trade::quantity::no_number;
///
/// assert_eq!(no_number("abc"), "“abc” is not a number: use digits and one point.");
/// assert_eq!(no_number(" "), "Type a number first.");
/// ```
pub fn no_number(text: &str) -> String {
    let mark = mark().name();
    match short(&in_mark(text.trim())) {
        text if text.is_empty() => "Type a number first.".to_owned(),
        text => format!("“{text}” is not a number: use digits and one {mark}."),
    }
}

/// As much of a text as a sentence bears.
pub fn short(text: &str) -> String {
    cut(text, 24)
}

/// As much of a name as a sentence bears.
pub fn short_name(name: &str) -> String {
    cut(name, 80)
}

/// As much of another step's title as a warning bears.
pub fn short_title(title: &str) -> String {
    cut(title, 40)
}

/// A text in which what can't be seen, or would turn the sentence round, is spelt out.
pub fn spelt_out(text: &str) -> String {
    let mut words = String::new();
    for c in text.chars() {
        match unseen(c) {
            true => words.extend(c.escape_unicode()),
            false => words.push(c),
        }
    }
    words
}

/// Whether a character shows nothing by itself and joins nothing: controls, marks of direction, soft and zero
/// breaks, tags. Accents and what joins emoji stay.
fn unseen(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{ad}' | '\u{61c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

fn cut(text: &str, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((end, _)) => spelt_out(&text[..end]) + "…",
        None => spelt_out(text),
    }
}
