//! A plain number, without a unit.

/// Reads digits with one point or comma, after a hyphen or our minus where it is negative.
///
/// `None` for anything else: no digits, words, exponents, more than an `f64` spans.
///
/// ```
/// use halfcase::trade::quantity::decimal;
///
/// assert_eq!(decimal(" 7,25 "), Some(7.25));
/// assert_eq!(decimal("−.5"), Some(-0.5));
/// assert_eq!(decimal("1e3"), None);
/// ```
pub fn decimal(text: &str) -> Option<f64> {
    let plain = text.trim().replace(',', ".");
    let digits = plain.strip_prefix(['-', '−']);
    let sign = if digits.is_some() { "-" } else { "" };
    let digits = digits.unwrap_or(&plain);
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    let only_digits = [whole, fraction]
        .iter()
        .all(|part| part.bytes().all(|byte| byte.is_ascii_digit()));
    if !only_digits || (whole.is_empty() && fraction.is_empty()) {
        return None;
    }
    let whole = match whole.trim_start_matches('0') {
        "" => "0",
        significant => significant,
    };
    number(&format!("{sign}{whole}.{fraction}0"))
}

/// Reads a number as JSON writes it, to the last bit; `None` for anything else.
///
/// The page has one reader of numbers, JSON's: std's would bring a table of 10 kB more.
#[inline(never)]
pub fn number(text: &str) -> Option<f64> {
    // Not `from_str`: its refusals of other types would bring a table too.
    text.parse::<serde_json::Number>().ok()?.as_f64()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_and_one_point_are_a_number() {
        for (text, number) in [("007", 7.0), ("5.", 5.0), (".5", 0.5), ("-18", -18.0), ("0", 0.0)] {
            assert_eq!(decimal(text), Some(number), "{text}");
        }
    }

    #[test]
    fn all_else_is_none() {
        let huge = "9".repeat(400);
        for text in [
            "", ".", "-", "1.2.3", "inf", "nan", "1e4", "+5", "0x1", "1 000", "٣", &huge,
        ] {
            assert_eq!(decimal(text), None, "{text}");
        }
    }

    #[test]
    fn the_nearest_number_is_taken() {
        // The same as std's reader, to the last bit.
        for text in [
            "0.1",
            "123456.789012345",
            "2.2250738585072011",
            "9007199254740993",
        ] {
            assert_eq!(decimal(text), text.parse().ok(), "{text}");
        }
    }
}
