//! Numbers as text: digits and the decimal mark, never an exponent.

use super::mark::mark;
use std::fmt;

/// A printed value: number and unit apart, so that a screen can set them in different sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    /// Digits, with the decimal mark where there is a fraction and “−” where negative.
    pub number: String,
    /// The unit's symbol.
    pub unit: &'static str,
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let gap = if self.unit == "°" { "" } else { " " };
        write!(f, "{}{gap}{}", self.number, self.unit)
    }
}

/// The sign printed before a negative number: the minus of typography, as wide as a plus.
const MINUS: char = '−';

/// What stands for a value that is no number.
const NO_NUMBER: &str = "—";

/// A printed number with the decimal mark in the place of its point.
fn marked(text: String) -> String {
    match mark().sign() {
        '.' => text,
        sign => text.replace('.', sign.encode_utf8(&mut [0; 4])),
    }
}

/// A number printed with a point, without idle zeros behind it.
fn without_zeros(text: &str) -> &str {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        text
    }
}

/// `value` with `figures` significant figures (1–15), trailing zeros kept: 7.2 at three is "7.20".
///
/// Digits before the point that are beyond the figures become zeros: 12 345 at three is "12300".
/// Not a number or infinite prints as "—".
pub fn significant(value: f64, figures: u32) -> String {
    marked(pointed(value, figures))
}

/// The same with a point.
fn pointed(value: f64, figures: u32) -> String {
    if !value.is_finite() {
        return NO_NUMBER.to_owned();
    }
    if value == 0.0 {
        return "0".to_owned();
    }
    let figures = figures.clamp(1, 15) as usize;
    // The exponent form rounds the exact binary value once; its digits are then laid out plainly.
    let scientific = format!("{:.*e}", figures - 1, value.abs());
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let exponent: i32 = exponent.parse().unwrap_or(0);
    let digits: String = mantissa.chars().filter(char::is_ascii_digit).collect();
    let mut text = String::new();
    if value < 0.0 {
        text.push(MINUS);
    }
    lay_out(&mut text, &digits, exponent);
    text
}

/// The same without idle zeros behind the point: 7.2 at five is "7.2".
pub fn trimmed(value: f64, figures: u32) -> String {
    marked(without_zeros(&pointed(value, figures)).to_owned())
}

/// `value` in as few digits as read back as the same, with a hyphen where it is negative.
pub fn shortest(value: f64) -> String {
    marked(value.to_string())
}

/// `value` with at most so many digits behind the point, without idle zeros; "—" when it is no number.
pub fn rounded(value: f64, decimals: u8) -> String {
    marked(without_zeros(&to_decimals(value, decimals)).to_owned())
}

/// Writes digits d.ddd × 10^exponent without the exponent.
fn lay_out(text: &mut String, digits: &str, exponent: i32) {
    if exponent < 0 {
        text.push_str("0.");
        text.extend(std::iter::repeat_n('0', exponent.unsigned_abs() as usize - 1));
        text.push_str(digits);
        return;
    }
    let before_point = exponent as usize + 1;
    for (i, digit) in digits.chars().enumerate() {
        if i == before_point {
            text.push('.');
        }
        text.push(digit);
    }
    text.extend(std::iter::repeat_n(
        '0',
        before_point.saturating_sub(digits.len()),
    ));
}

/// `value` with `decimals` digits after the point (at most 12); "—" when it is no number.
pub fn fixed(value: f64, decimals: u8) -> String {
    marked(to_decimals(value, decimals))
}

/// The same with a point.
fn to_decimals(value: f64, decimals: u8) -> String {
    if !value.is_finite() {
        return NO_NUMBER.to_owned();
    }
    let text = format!("{:.*}", usize::from(decimals.min(12)), value.abs());
    let negative = value < 0.0 && text.chars().any(|c| ('1'..='9').contains(&c));
    if negative { format!("{MINUS}{text}") } else { text }
}

/// What arithmetic in `f64` and a trip through another unit may leave behind, as a share.
pub(in crate::trade) const LAST_BITS: f64 = 1e-9;

/// The fewest decimals (at most 12) that print `value` to within `slack`.
pub(in crate::trade) fn decimals_of(value: f64, slack: f64) -> u8 {
    let mut scale = 1.0;
    for decimals in 0..12 {
        if ((value * scale).round() / scale - value).abs() <= slack {
            return decimals;
        }
        scale *= 10.0;
    }
    12
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn significant_figures_are_laid_out_without_exponent() {
        for (value, figures, text) in [
            (7.2, 2, "7.2"),
            (7.2, 3, "7.20"),
            (9.999, 3, "10.0"),
            (12_345.0, 3, "12300"),
            (0.007_061_552, 3, "0.00706"),
            (-0.5, 1, "−0.5"),
            (1350.0, 4, "1350"),
            (99.96, 3, "100"),
            (0.0, 3, "0"),
            (-0.0, 3, "0"),
            (f64::NAN, 3, "—"),
            (f64::INFINITY, 3, "—"),
        ] {
            assert_eq!(significant(value, figures), text, "{value} at {figures}");
        }
    }

    #[test]
    fn fixed_decimals_never_print_a_negative_zero() {
        assert_eq!(fixed(-0.04, 1), "0.0");
        assert_eq!(fixed(-0.06, 1), "−0.1");
        assert_eq!(fixed(12.0, 0), "12");
        assert_eq!(fixed(f64::NAN, 2), "—");
    }

    #[test]
    fn decimals_are_as_few_as_hold_the_value() {
        for (value, decimals) in [(2.0, 0), (0.5, 1), (0.25, 2), (0.1 + 0.2, 1), (1.0 / 3.0, 12)] {
            assert_eq!(decimals_of(value, 1e-14), decimals, "{value}");
        }
    }
}
