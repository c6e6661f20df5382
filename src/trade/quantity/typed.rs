//! What every typed quantity has in common: one number, one unit, a limit on either side.

use super::mark::comma_is_decimal;
use super::print::fixed;
use super::scan::{Number, Scanner};
use super::text_error::{Problem, TextError};
use serde::{Deserialize, Serialize};

/// What a sentence about a quantity needs to know, and where its values end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Subject {
    /// The quantity with its article, opening a sentence half: "a torque".
    pub what: &'static str,
    /// A text that is read.
    pub example: &'static str,
    /// The units that are read, as a list in words.
    pub units: &'static str,
    /// Smallest value, in the base unit, for quantities that may be negative.
    pub least: f64,
    /// The smallest value in words.
    pub least_limit: &'static str,
    /// Why not less.
    pub least_why: &'static str,
    /// Largest value, in the base unit.
    pub most: f64,
    /// The largest value in words.
    pub limit: &'static str,
    /// Why not more.
    pub why: &'static str,
}

/// A unit that can be read and printed.
pub trait Unit: Copy + PartialEq {
    /// The quantity it measures.
    const SUBJECT: Subject;
    /// Which fractions are read with this quantity.
    const FRACTIONS: &'static str = "type a decimal number";

    /// The unit that a spelling means; letters in lower case, only slashes kept between words.
    fn spelled(key: &str) -> Option<Self>;

    /// The symbol shown on screen.
    fn symbol(self) -> &'static str;

    /// `value` of this unit in the quantity's base unit, in which its limits are.
    fn base(self, value: f64) -> f64;

    /// Whether a fraction with this denominator is read in this unit.
    fn takes_fraction(self, _denominator: u32) -> bool {
        false
    }
}

/// A number as it was typed, with its unit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Typed<U> {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: U,
    /// Digits after the point as typed.
    pub decimals: u8,
}

impl<U: Unit> Typed<U> {
    /// The number with its decimals and its unit.
    pub fn text(&self) -> String {
        let number = fixed(self.value, self.decimals);
        super::Printed {
            number,
            unit: self.unit.symbol(),
        }
        .to_string()
    }
}

/// Which signs a value may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sign {
    /// Above zero only.
    Positive,
    /// Zero too.
    NotNegative,
    /// Any.
    Any,
}

/// Reads one number and its unit, and nothing else.
pub(super) fn read_single<U: Unit>(
    text: &str,
    fallback: Option<U>,
    sign: Sign,
) -> Result<Typed<U>, TextError> {
    let subject = U::SUBJECT;
    let mut scanner = Scanner::new(text);
    if scanner.done() {
        return Err(scanner.error(Problem::Empty {
            example: subject.example,
        }));
    }
    let start = scanner.at();
    let minus = scanner.take_minus();
    if minus && sign != Sign::Any {
        return Err(TextError::new(start, Problem::Negative { what: subject.what }));
    }
    if !minus {
        scanner.take(&['+']);
    }
    scanner.skip_space();
    let number = scanner.number_or_fraction()?;
    scanner.skip_space();
    let unit = scanner.unit(U::spelled);
    if !scanner.done() {
        let word = scanner.word_here();
        return Err(scanner.error(match unit {
            Some(_) => Problem::Extra { word },
            None => Problem::UnknownUnit {
                word,
                units: subject.units,
            },
        }));
    }
    let unit = unit
        .or(fallback)
        .ok_or_else(|| scanner.error(Problem::UnitExpected { units: subject.units }))?;
    check_fraction(&number, unit)?;
    check_comma(&number, unit)?;
    let value = if minus { -number.value } else { number.value };
    check_limits(number.at, value, unit, sign)?;
    Ok(Typed {
        value,
        unit,
        decimals: number.decimals,
    })
}

fn check_fraction<U: Unit>(number: &Number, unit: U) -> Result<(), TextError> {
    match number.denominator {
        Some(d) if !unit.takes_fraction(d) => Err(TextError::new(
            number.at,
            Problem::Fraction {
                allowed: U::FRACTIONS,
            },
        )),
        _ => Ok(()),
    }
}

/// Refuses "1,200" where both 1.2 and 1200 are possible; "62,005 mm" can only be a decimal comma, and so can
/// any comma of who chose it for the decimal mark.
pub(super) fn check_comma<U: Unit>(number: &Number, unit: U) -> Result<(), TextError> {
    let Some(at) = number.unclear_comma.filter(|_| !comma_is_decimal()) else {
        return Ok(());
    };
    let thousands = number.value * 1000.0;
    if unit.base(thousands) > U::SUBJECT.most {
        return Ok(());
    }
    let (decimal, thousands) = (fixed(number.value, 3), fixed(thousands, 0));
    Err(TextError::new(at, Problem::CommaUnclear { decimal, thousands }))
}

fn check_limits<U: Unit>(at: usize, value: f64, unit: U, sign: Sign) -> Result<(), TextError> {
    let Subject {
        what,
        least,
        least_limit,
        least_why,
        most,
        limit,
        why,
        ..
    } = U::SUBJECT;
    let base = unit.base(value);
    let problem = if sign == Sign::Positive && value == 0.0 {
        Problem::Zero { what }
    } else if base < least {
        Problem::TooSmall {
            limit: least_limit,
            why: least_why,
        }
    } else if base > most {
        Problem::TooLarge { limit, why }
    } else {
        return Ok(());
    };
    Err(TextError::new(at, problem))
}
