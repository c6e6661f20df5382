//! What keys make of an entry, and the number it comes to.

use crate::trade::quantity::{Stated, convert, decimal, no_number, shortest, trimmed};

/// What a key does to the text typed so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// Adds a character.
    Type(char),
    /// Takes the last one off.
    Back,
    /// Empties it.
    Clear,
}

/// The longest entry a keypad takes: "9.5–12.5" and a tolerance fit well within.
const LONGEST: usize = 16;

impl Key {
    /// The text after this key.
    pub fn press(self, typed: &str) -> String {
        match self {
            Self::Type(c) if typed.chars().count() < LONGEST => format!("{typed}{c}"),
            Self::Type(_) => typed.to_owned(),
            Self::Back => typed
                .chars()
                .take(typed.chars().count().saturating_sub(1))
                .collect(),
            Self::Clear => String::new(),
        }
    }
}

/// Reads a plain number as typed on the keypad or a phone's keyboard: point or comma, our minus or a hyphen.
///
/// # Errors
/// A sentence that says what to type.
pub fn read_number(text: &str) -> Result<f64, String> {
    decimal(text).ok_or_else(|| no_number(text))
}

/// A number as shown in another unit: as it was read where it is the same, else to five figures; empty where
/// it can't be told.
pub fn turned(value: f64, from: &str, to: &str) -> String {
    match convert(value, from, to) {
        _ if from == to => shortest(value).replace('-', "−"),
        Some(value) => trimmed(value, 5),
        None => String::new(),
    }
}

/// How many digits behind its point a number was typed with: .0300 is not .03.
pub fn decimals(text: &str) -> Option<u8> {
    Stated::typed(text).map(|stated| stated.decimals)
}

/// Turns to the next of the units something may be read in.
pub fn next_unit(units: &[&'static str], unit: &mut String) {
    let at = units.iter().position(|own| own == unit).map_or(0, |at| at + 1);
    if let Some(next) = units.get(at % units.len().max(1)) {
        (*next).clone_into(unit);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_change_the_text_and_never_more_than_it() {
        assert_eq!(Key::Type('7').press("1"), "17");
        assert_eq!(Key::Back.press("1–"), "1");
        assert_eq!(Key::Back.press(""), "");
        assert_eq!(Key::Clear.press("7.2"), "");
        assert_eq!(Key::Type('1').press("1234567890123456"), "1234567890123456");
    }

    #[test]
    fn reads_what_hands_type() {
        assert_eq!(read_number(" 7,25 "), Ok(7.25));
        assert_eq!(read_number("−18"), Ok(-18.0));
        assert_eq!(read_number(""), Err("Type a number first.".to_owned()));
        assert_eq!(
            read_number("1.2.3"),
            Err("“1.2.3” is not a number: use digits and one point.".to_owned())
        );
        assert!(read_number("inf").is_err());
        assert!(read_number("1e400").is_err());
    }
}
