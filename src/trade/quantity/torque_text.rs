//! Torques out of text and into it.

use super::print::{Printed, significant};
use super::scan::{Number, Scanner};
use super::text_error::{Problem, TextError};
use super::typed::{Unit, check_comma};
use super::{StatementForm, Torque, TorqueStatement, TorqueUnit};

/// Most torques read out of one text.
const MOST_VALUES: usize = 8;

/// Reads one torque as people write it; `fallback` is the unit where none is written.
///
/// A comma is a decimal comma ("7,2"), a point a decimal point ("1.200" is 1.2), a space may part
/// thousands ("1 200"). "1,200" is refused where both 1.2 and 1200 are possible. A range aims at
/// its middle. "9 +2" alone is +2/−0. A tolerance may be in percent.
///
/// ```
/// use halfcase::trade::quantity::parse_torque;
/// let stated = parse_torque("9 +2/-0 Nm", None)?;
/// assert_eq!(stated.text(), "9 +2/−0 N·m");
/// assert_eq!(parse_torque("7,2 ft lbs", None)?.text(), "7.2 ft·lb");
/// # Ok::<(), halfcase::trade::quantity::TextError>(())
/// ```
///
/// # Errors
/// The place and what was expected there; values of zero, below zero or above 20 000 N·m are refused.
pub fn parse_torque(text: &str, fallback: Option<TorqueUnit>) -> Result<TorqueStatement, TextError> {
    let mut scanner = Scanner::new(text);
    let statement = read_statement(&mut scanner, fallback)?;
    if scanner.done() {
        return Ok(statement);
    }
    Err(scanner.error(Problem::Extra {
        word: scanner.word_here(),
    }))
}

/// Reads every torque of a text that states one several times: "14 N·m (10.3 ft·lb)".
///
/// Brackets, commas, semicolons, slashes and "=" part the values; only the first may lack its unit.
///
/// # Errors
/// As [`parse_torque`], and for more than eight values.
pub fn parse_torques(text: &str, fallback: Option<TorqueUnit>) -> Result<Vec<TorqueStatement>, TextError> {
    let mut scanner = Scanner::new(text);
    let mut statements = Vec::new();
    loop {
        let fallback = fallback.filter(|_| statements.is_empty());
        statements.push(read_statement(&mut scanner, fallback)?);
        let after_value = scanner.at();
        while !scanner.done() && scanner.take(&['(', ')', '[', ']', ',', ';', '/', '=', '|']) {}
        if scanner.done() {
            return Ok(statements);
        }
        if scanner.at() == after_value {
            return Err(scanner.error(Problem::Extra {
                word: scanner.word_here(),
            }));
        }
        if statements.len() == MOST_VALUES {
            return Err(scanner.error(Problem::TooManyValues));
        }
    }
}

/// `torque` in `unit` with `figures` significant figures, trailing zeros kept.
pub fn print_torque(torque: Torque, unit: TorqueUnit, figures: u32) -> Printed {
    Printed {
        number: significant(unit.value_of(torque), figures),
        unit: unit.symbol(),
    }
}

/// What follows the first number.
enum Tail {
    Nothing,
    To(Number),
    /// Up and down, in the unit.
    Off(f64, f64),
}

fn read_statement(scanner: &mut Scanner, fallback: Option<TorqueUnit>) -> Result<TorqueStatement, TextError> {
    let subject = TorqueUnit::SUBJECT;
    if scanner.done() {
        return Err(scanner.error(Problem::Empty {
            example: subject.example,
        }));
    }
    let at_most = take_at_most(scanner);
    let first = read_positive(scanner)?;
    let mut unit = None;
    read_unit(scanner, &mut unit)?;
    scanner.skip_space();
    let tail_at = scanner.at();
    let tail = read_tail(scanner, &first, &mut unit)?;
    let units = TorqueUnit::SUBJECT.units;
    if unit.is_none() && !scanner.done() && scanner.peek().is_some_and(char::is_alphabetic) {
        return Err(scanner.error(Problem::UnknownUnit {
            word: scanner.word_here(),
            units,
        }));
    }
    let unit = unit
        .or(fallback)
        .ok_or_else(|| scanner.error(Problem::UnitExpected { units }))?;
    let statement = build(&first, tail, unit, tail_at)?;
    if !at_most {
        return Ok(statement);
    }
    // "at most 10 ± 1" says two things.
    if statement.form != StatementForm::Single {
        return Err(TextError::new(
            tail_at,
            Problem::Extra {
                word: "a tolerance behind “at most”".to_owned(),
            },
        ));
    }
    Ok(TorqueStatement {
        form: StatementForm::AtMost,
        ..statement
    })
}

/// "at most", "max.", "up to", "≤" before a number.
fn take_at_most(scanner: &mut Scanner) -> bool {
    scanner.skip_space();
    if scanner.take(&['≤']) {
        return true;
    }
    let start = scanner.at();
    for words in ["at most", "not over", "up to", "maximum", "max"] {
        let here = words.chars().enumerate().all(|(ahead, c)| {
            scanner
                .peek_at(ahead)
                .is_some_and(|own| own.eq_ignore_ascii_case(&c))
        });
        let count = words.chars().count();
        if here && !scanner.peek_at(count).is_some_and(char::is_alphabetic) {
            scanner.go_to(start);
            scanner.skip(count);
            scanner.take(&['.']);
            return true;
        }
    }
    false
}

/// Puts a statement together, once its unit is known.
fn build(first: &Number, tail: Tail, unit: TorqueUnit, tail_at: usize) -> Result<TorqueStatement, TextError> {
    check_comma(first, unit)?;
    let decimals = first.decimals;
    let statement = match tail {
        Tail::Nothing => TorqueStatement::single(first.value, unit, decimals),
        Tail::To(second) => {
            check_comma(&second, unit)?;
            if second.value <= first.value {
                return Err(TextError::new(second.at, Problem::RangeReversed));
            }
            TorqueStatement::range(first.value, second.value, unit, decimals.max(second.decimals))
        }
        Tail::Off(up, down) => TorqueStatement::tolerance(first.value, up, down, unit, decimals),
    };
    statement.check().map_err(|error| {
        let at = if error.problem == Problem::ToleranceTooWide {
            tail_at
        } else {
            first.at
        };
        TextError::new(at, error.problem)
    })?;
    Ok(statement)
}

/// A number above zero.
fn read_positive(scanner: &mut Scanner) -> Result<Number, TextError> {
    let what = TorqueUnit::SUBJECT.what;
    scanner.skip_space();
    let at = scanner.at();
    if scanner.take_minus() {
        return Err(TextError::new(at, Problem::Negative { what }));
    }
    let number = scanner.number()?;
    if number.value == 0.0 {
        return Err(TextError::new(at, Problem::Zero { what }));
    }
    Ok(number)
}

/// A unit, if one stands here; refuses a second one that differs from the first.
fn read_unit(scanner: &mut Scanner, unit: &mut Option<TorqueUnit>) -> Result<(), TextError> {
    scanner.skip_space();
    let at = scanner.at();
    let found = scanner.unit(TorqueUnit::spelled);
    if unit.is_some() && found.is_some() && *unit != found {
        return Err(TextError::new(at, Problem::UnitsDiffer));
    }
    *unit = unit.or(found);
    Ok(())
}

fn read_tail(
    scanner: &mut Scanner,
    first: &Number,
    unit: &mut Option<TorqueUnit>,
) -> Result<Tail, TextError> {
    if take_plus_minus(scanner) {
        let off = read_deviation(scanner, first, unit)?;
        return Ok(Tail::Off(off, off));
    }
    if scanner.take(&['+']) {
        let up = read_deviation(scanner, first, unit)?;
        let down = read_opposite(scanner, first, unit, Scanner::take_minus)?;
        return Ok(Tail::Off(up, down.unwrap_or(0.0)));
    }
    let dash = scanner.take_minus();
    if !dash && !take_range_word(scanner) {
        return Ok(Tail::Nothing);
    }
    scanner.skip_space();
    let second_at = scanner.at();
    let second = scanner.number()?;
    let after_second = scanner.at();
    if dash {
        // "9 −0/+2": the dash was a minus after all.
        scanner.go_to(second_at);
        let down = read_deviation(scanner, first, unit)?;
        if let Some(up) = read_opposite(scanner, first, unit, |s| s.take(&['+']))? {
            return Ok(Tail::Off(up, down));
        }
        scanner.go_to(after_second);
    }
    read_unit(scanner, unit)?;
    if second.value == 0.0 {
        return Err(TextError::new(second_at, Problem::RangeReversed));
    }
    Ok(Tail::To(second))
}

/// A deviation from the first number: in its unit, or in percent of it.
fn read_deviation(
    scanner: &mut Scanner,
    first: &Number,
    unit: &mut Option<TorqueUnit>,
) -> Result<f64, TextError> {
    scanner.skip_space();
    let number = scanner.number()?;
    let after = scanner.at();
    scanner.skip_space();
    if scanner.take(&['%']) {
        read_unit(scanner, unit)?;
        return Ok(first.value * number.value / 100.0);
    }
    scanner.go_to(after);
    read_unit(scanner, unit)?;
    Ok(number.value)
}

/// The other half of "+2/−0" behind an optional slash; goes nowhere when its sign is missing.
fn read_opposite(
    scanner: &mut Scanner,
    first: &Number,
    unit: &mut Option<TorqueUnit>,
    take_sign: impl Fn(&mut Scanner) -> bool,
) -> Result<Option<f64>, TextError> {
    let start = scanner.at();
    scanner.skip_space();
    scanner.take(&['/']);
    scanner.skip_space();
    if take_sign(scanner) {
        return read_deviation(scanner, first, unit).map(Some);
    }
    scanner.go_to(start);
    Ok(None)
}

/// "±", "+/-", "+-".
fn take_plus_minus(scanner: &mut Scanner) -> bool {
    let start = scanner.at();
    if scanner.take(&['±']) {
        return true;
    }
    if scanner.take(&['+']) {
        scanner.take(&['/']);
        if scanner.take_minus() {
            return true;
        }
    }
    scanner.go_to(start);
    false
}

/// "to", "…", "..", "~".
fn take_range_word(scanner: &mut Scanner) -> bool {
    let ahead = |n| scanner.peek_at(n);
    let length = match (ahead(0), ahead(1)) {
        (Some('…' | '~' | '‥'), _) => 1,
        (Some('.'), Some('.')) => 2,
        (Some('t' | 'T'), Some('o' | 'O')) if !ahead(2).is_some_and(char::is_alphabetic) => 2,
        _ => return false,
    };
    scanner.skip(length);
    scanner.take(&['.']);
    true
}
