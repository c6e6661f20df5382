//! The decimal mark: what stands between the whole number and its fraction wherever the app prints one.
//!
//! It is a setting of the thread, as a locale is: every number is printed in one place (`print.rs`), far below
//! whoever knows the settings, and nothing but this one choice would have to be handed down to there. What
//! leaves the screen never goes by it: the doors to storage and files work inside [`kept`], and what is
//! decided inside [`printed_with_point`]. Nobody who never calls [`choose`] sees anything but the point.

use serde::{Deserialize, Serialize};
use std::cell::Cell;

/// Point or comma.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DecimalMark {
    /// 7.2
    #[default]
    Point,
    /// 7,2
    Comma,
}

impl DecimalMark {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Point, Self::Comma];

    /// The character.
    pub fn sign(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Point => "point",
            Self::Comma => "comma",
        }
    }

    /// The choice in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Point => "decimal point 7.2",
            Self::Comma => "decimal comma 7,2",
        }
    }
}

thread_local! {
    /// What is printed.
    static PRINTED: Cell<DecimalMark> = const { Cell::new(DecimalMark::Point) };
    /// What a comma is read as where both 1.2 and 1200 are possible.
    static READ: Cell<DecimalMark> = const { Cell::new(DecimalMark::Point) };
}

/// From now on numbers are printed with this mark, and a comma that is typed is read by it.
pub fn choose(mark: DecimalMark) {
    PRINTED.set(mark);
    READ.set(mark);
}

/// The mark printed here and now.
pub fn mark() -> DecimalMark {
    PRINTED.get()
}

/// Whether a typed "1,200" is 1.2 without a question.
pub fn comma_is_decimal() -> bool {
    READ.get() == DecimalMark::Comma
}

/// Puts the marks back that were there, on a panic too.
struct Back {
    printed: DecimalMark,
    read: DecimalMark,
}

impl Back {
    fn here() -> Self {
        Self {
            printed: PRINTED.get(),
            read: READ.get(),
        }
    }
}

impl Drop for Back {
    fn drop(&mut self) {
        PRINTED.set(self.printed);
        READ.set(self.read);
    }
}

/// Works with the point in all that is printed; what was typed is read as the user types.
///
/// ```
/// use halfcase::trade::quantity::{DecimalMark, choose, fixed, printed_with_point};
///
/// choose(DecimalMark::Comma);
/// assert_eq!(fixed(7.2, 1), "7,2");
/// assert_eq!(printed_with_point(|| fixed(7.2, 1)), "7.2");
/// assert_eq!(fixed(7.2, 1), "7,2");
/// ```
pub fn printed_with_point<T>(work: impl FnOnce() -> T) -> T {
    let _back = Back::here();
    PRINTED.set(DecimalMark::Point);
    work()
}

/// Works as storage and files do, whatever the user chose: the point is printed, and a comma that may part
/// thousands is asked about.
pub fn kept<T>(work: impl FnOnce() -> T) -> T {
    let _back = Back::here();
    choose(DecimalMark::Point);
    work()
}

/// Text that is kept with points, as the keypad types it and the desk remembers it, in the user's mark. A point
/// that a digit follows is the mark of a number; of two in a row, which part a range, neither is. So is one that
/// ends a text of numbers alone, half typed; behind words it is a full stop.
///
/// For numbers with their units: no designation ("M8×1.25", "8.8") may stand in it.
pub fn in_mark(text: &str) -> String {
    let sign = PRINTED.get().sign();
    if sign == '.' {
        return text.to_owned();
    }
    let letters: Vec<char> = text.chars().collect();
    let at = |place: Option<usize>| place.and_then(|place| letters.get(place)).copied();
    let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    let words = letters.iter().any(|c| c.is_alphabetic());
    let shown = letters.iter().enumerate().map(|(place, &letter)| {
        let (before, after) = (at(place.checked_sub(1)), at(Some(place + 1)));
        let of_a_range = before == Some('.') || after == Some('.');
        let of_a_number = digit(after) || digit(before) && after.is_none() && !words;
        match letter {
            '.' if of_a_number && !of_a_range => sign,
            other => other,
        }
    });
    shown.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::quantity::{fixed, parse_torque};

    #[test]
    fn a_panic_inside_leaves_the_mark_as_it_was() {
        choose(DecimalMark::Comma);
        let fell = std::panic::catch_unwind(|| kept(|| panic!("inside")));
        assert!(fell.is_err());
        assert_eq!((mark(), comma_is_decimal()), (DecimalMark::Comma, true));
    }

    #[test]
    fn scopes_nest() {
        choose(DecimalMark::Comma);
        printed_with_point(|| {
            assert!(comma_is_decimal(), "typed text is read as the user types");
            kept(|| assert!(!comma_is_decimal()));
            assert_eq!(fixed(0.5, 1), "0.5");
            assert!(comma_is_decimal());
        });
        assert_eq!(fixed(0.5, 1), "0,5");
    }

    #[test]
    fn a_comma_is_asked_about_only_where_it_may_part_thousands() {
        assert!(parse_torque("1,200 N·m", None).is_err());
        choose(DecimalMark::Comma);
        assert_eq!(parse_torque("1,200 N·m", None).map(|read| read.target), Ok(1.2));
        assert!(kept(|| parse_torque("1,200 N·m", None)).is_err());
    }

    #[test]
    fn what_is_kept_is_shown_with_the_mark() {
        assert_eq!(in_mark("7.2"), "7.2");
        choose(DecimalMark::Comma);
        for (text, shown) in [
            ("7.2 ft·lb", "7,2 ft·lb"),
            ("7.", "7,"),
            (".5", ",5"),
            ("9.5–12.5 ± .5", "9,5–12,5 ± ,5"),
            ("9..12", "9..12"),
            ("30 ft.lb max. 40", "30 ft.lb max. 40"),
            ("Write 0.5–62.000.", "Write 0,5–62,000."),
            ("Gap taken as 3.", "Gap taken as 3."),
            ("", ""),
        ] {
            assert_eq!(in_mark(text), shown);
        }
    }
}
