//! Reads numbers and units out of a text, keeping the place.

use super::decimal::decimal;
use super::text_error::{Problem, TextError};

/// Most significant digits kept: what an `f64` can hold and give back.
const MOST_DIGITS: usize = 15;
/// Most digits after the point.
const MOST_DECIMALS: usize = 12;
/// Most words in a unit: "newton", "metres" and their like, with room for one stray word.
const MOST_WORDS: usize = 4;
/// Longest piece of someone's text repeated in a sentence, in characters.
const LONGEST_WORD: usize = 16;

/// A number as it was written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    pub value: f64,
    pub decimals: u8,
    /// Where it starts.
    pub at: usize,
    /// Where a comma stands that might part thousands: "1,200", not "0,200" or "1,20".
    pub unclear_comma: Option<usize>,
    /// The denominator when it was written as a fraction.
    pub denominator: Option<u32>,
}

/// A text and a place in it.
pub(super) struct Scanner {
    chars: Vec<char>,
    at: usize,
}

impl Scanner {
    pub fn new(text: &str) -> Self {
        Self {
            chars: text.chars().collect(),
            at: 0,
        }
    }

    pub fn at(&self) -> usize {
        self.at
    }

    pub fn go_to(&mut self, at: usize) {
        self.at = at;
    }

    pub fn peek(&self) -> Option<char> {
        self.peek_at(0)
    }

    pub fn peek_at(&self, ahead: usize) -> Option<char> {
        self.chars.get(self.at + ahead).copied()
    }

    pub fn skip(&mut self, count: usize) {
        self.at = (self.at + count).min(self.chars.len());
    }

    pub fn skip_space(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.at += 1;
        }
    }

    /// Skips spaces; true at the end of the text.
    pub fn done(&mut self) -> bool {
        self.skip_space();
        self.peek().is_none()
    }

    /// Takes one character if it is one of `these`.
    pub fn take(&mut self, these: &[char]) -> bool {
        let found = self.peek().is_some_and(|c| these.contains(&c));
        if found {
            self.at += 1;
        }
        found
    }

    pub fn take_minus(&mut self) -> bool {
        self.take(&['-', '−', '–', '—', '‐', '‑', '‒'])
    }

    /// An error at the present place.
    pub fn error(&self, problem: Problem) -> TextError {
        TextError::new(self.at, problem)
    }

    /// What stands here up to the next space, cut short, for a sentence.
    pub fn word_here(&self) -> String {
        let rest = self.chars.get(self.at..).unwrap_or_default();
        let word = rest.iter().take_while(|c| !c.is_whitespace()).take(LONGEST_WORD);
        word.flat_map(|c| c.escape_debug()).collect()
    }

    fn digits(&mut self) -> String {
        let mut digits = String::new();
        while let Some(c) = self.peek().filter(char::is_ascii_digit) {
            digits.push(c);
            self.at += 1;
        }
        digits
    }

    fn digit_at(&self, ahead: usize) -> bool {
        self.peek_at(ahead).is_some_and(|c| c.is_ascii_digit())
    }

    /// A space with exactly three digits behind it, which go on with the number before.
    fn group_follows(&self) -> bool {
        self.peek()
            .is_some_and(|c| matches!(c, ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}'))
            && (1..=3).all(|i| self.digit_at(i))
            && !self.digit_at(4)
            && self.peek_at(4) != Some('/')
    }

    /// Digits with a decimal point or comma; a space may part groups of three before it.
    pub fn number(&mut self) -> Result<Number, TextError> {
        let at = self.at;
        let mut whole = self.digits();
        if (1..=3).contains(&whole.len()) {
            while self.group_follows() {
                self.at += 1;
                whole.push_str(&self.digits());
            }
        }
        let separator_at = self.at;
        let comma = self.peek() == Some(',');
        let mut fraction = String::new();
        if self.peek().is_some_and(|c| c == '.' || c == ',') {
            if self.digit_at(1) {
                self.at += 1;
                fraction = self.digits();
            } else if !whole.is_empty() && self.point_is_left_open() {
                self.at += 1;
            }
        }
        if whole.is_empty() && fraction.is_empty() {
            return Err(self.error(Problem::NumberExpected {
                found: self.word_here(),
            }));
        }
        if !fraction.is_empty() && matches!(self.peek(), Some('.' | ',')) && self.digit_at(1) {
            return Err(self.error(Problem::SecondSeparator));
        }
        let digits = format!("{whole}{fraction}");
        if digits.trim_start_matches('0').len() > MOST_DIGITS || fraction.len() > MOST_DECIMALS {
            return Err(TextError::new(at, Problem::TooManyDigits));
        }
        let groups = comma && fraction.len() == 3 && (1..=3).contains(&whole.len());
        let unclear_comma = (groups && !whole.starts_with('0')).then_some(separator_at);
        let value = decimal(&format!("{whole}.{fraction}")).ok_or(TextError::new(
            at,
            Problem::NumberExpected { found: String::new() },
        ))?;
        let decimals = fraction.len() as u8;
        Ok(Number {
            value,
            decimals,
            at,
            unclear_comma,
            denominator: None,
        })
    }

    /// "7." while a keypad's owner is still typing; not the first dot of "9..12".
    fn point_is_left_open(&self) -> bool {
        match self.peek() {
            Some('.') => self.peek_at(1) != Some('.'),
            _ => self.chars.iter().skip(self.at + 1).all(|c| c.is_whitespace()),
        }
    }

    /// A number, or a fraction: "3/8", "1 3/8", "1-3/8", "½", "1½".
    pub fn number_or_fraction(&mut self) -> Result<Number, TextError> {
        let at = self.at;
        if let Some((over, under)) = self.fraction() {
            return fraction_number(at, 0.0, over, under);
        }
        let whole = self.number()?;
        if whole.decimals > 0 {
            return Ok(whole);
        }
        let after = self.at;
        self.take(&[' ', '-', '\u{a0}', '\u{2009}', '\u{202f}']);
        if let Some((over, under)) = self.fraction() {
            return fraction_number(at, whole.value, over, under);
        }
        self.at = after;
        Ok(whole)
    }

    /// "3/8" or one character such as "⅜"; goes nowhere when there is none.
    fn fraction(&mut self) -> Option<(u32, u32)> {
        let start = self.at;
        if let Some(&(_, over, under)) = VULGAR.iter().find(|row| Some(row.0) == self.peek()) {
            self.at += 1;
            return Some((over, under));
        }
        let over = self.digits();
        let slash = !over.is_empty() && self.take(&['/', '⁄']);
        let under = if slash { self.digits() } else { String::new() };
        if under.is_empty() {
            self.at = start;
            return None;
        }
        // Anything longer than four digits is no workshop fraction; 0 is refused by the caller.
        Some((short_integer(&over), short_integer(&under)))
    }

    /// The longest unit that starts here, by `spelled`; goes nowhere when there is none.
    ///
    /// Words are joined without what parts them (spaces, dots, hyphens, crosses); a slash is kept.
    pub fn unit<U>(&mut self, spelled: impl Fn(&str) -> Option<U>) -> Option<U> {
        let start = self.at;
        let mut key = String::new();
        let mut best = None;
        for _ in 0..MOST_WORDS {
            let before = key.len();
            while let Some(c) = self.peek().filter(|&c| is_unit_char(c)) {
                key.push(c.to_ascii_lowercase());
                self.at += 1;
            }
            if key.len() == before || key.len() > 64 {
                break;
            }
            let bounded = !self.peek().is_some_and(char::is_alphanumeric);
            if let Some(unit) = spelled(&key).filter(|_| bounded) {
                best = Some((unit, self.at));
            }
            if !self.skip_joint(&mut key) {
                break;
            }
        }
        self.at = best.as_ref().map_or(start, |found| found.1);
        let (unit, _) = best?;
        if self.peek() == Some('.') && !self.digit_at(1) && self.peek_at(1) != Some('.') {
            self.at += 1;
        }
        Some(unit)
    }

    /// What may stand between the words of a unit, where another word follows.
    fn skip_joint(&mut self, key: &mut String) -> bool {
        let start = self.at;
        if self.peek() == Some('/') && self.peek_at(1).is_some_and(is_unit_char) {
            key.push('/');
            self.at += 1;
            return true;
        }
        for _ in 0..4 {
            if self
                .peek()
                .is_some_and(|c| c.is_whitespace() || JOINTS.contains(c))
            {
                self.at += 1;
            }
        }
        let word_follows = self.peek().is_some_and(is_unit_char);
        if !word_follows {
            self.at = start;
        }
        word_follows
    }
}

/// What people put between the two halves of a torque unit.
const JOINTS: &str = ".·⋅•∙‧*×-‐‑–−";

/// Letters, and the signs that stand for units.
fn is_unit_char(c: char) -> bool {
    c.is_alphabetic() || matches!(c, '°' | '℃' | '℉' | '"' | '″' | '”')
}

/// One-character fractions of the workshop: halves to eighths, and thirds for flats of a nut.
const VULGAR: [(char, u32, u32); 11] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

fn short_integer(digits: &str) -> u32 {
    if digits.len() > 4 {
        0
    } else {
        digits.parse().unwrap_or(0)
    }
}

fn fraction_number(at: usize, whole: f64, over: u32, under: u32) -> Result<Number, TextError> {
    if over == 0 || under < 2 || over >= under {
        return Err(TextError::new(
            at,
            Problem::Fraction {
                allowed: "type one such as 3/8 or 1 3/8",
            },
        ));
    }
    let value = whole + f64::from(over) / f64::from(under);
    let decimals = if under.is_power_of_two() {
        under.trailing_zeros().min(12) as u8
    } else {
        6
    };
    Ok(Number {
        value,
        decimals,
        at,
        unclear_comma: None,
        denominator: Some(under),
    })
}
