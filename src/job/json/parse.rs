//! From text to nodes.

use super::error::JsonError;
use super::node::{Node, What};
use crate::trade::quantity::number;
use std::borrow::Cow;

/// Lists and objects within each other; more is nobody's file, and each takes stack.
const DEEPEST: usize = 127;

const ENDS: &str = "the text ends too early";
const ESCAPE: &str = "an escape after `\\` is misspelt";

type Fault = &'static str;

/// The nodes of a whole text.
pub fn parse(text: &str) -> Result<Node<'_>, JsonError> {
    let mut parser = Parser { text, at: 0 };
    parser
        .value(0)
        .and_then(|root| match parser.next() {
            None => Ok(root),
            Some(_) => Err("something follows the end"),
        })
        .map_err(|fault| JsonError::new(fault.to_owned()).at(parser.at).on_line_of(text))
}

struct Parser<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Parser<'a> {
    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// The next byte that is no space.
    fn next(&mut self) -> Option<u8> {
        while let Some(b' ' | b'\n' | b'\r' | b'\t') = self.byte() {
            self.at += 1;
        }
        self.byte()
    }

    fn take(&mut self, wanted: &str) -> bool {
        let found = self.rest().starts_with(wanted);
        if found {
            self.at += wanted.len();
        }
        found
    }

    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn value(&mut self, depth: usize) -> Result<Node<'a>, Fault> {
        let first = self.next().ok_or(ENDS)?;
        let at = self.at;
        let what = match first {
            b'{' | b'[' if depth == DEEPEST => return Err("brackets are nested too deeply"),
            b'{' => What::Fields(self.fields(depth)?),
            b'[' => What::List(self.list(depth)?),
            b'"' => What::Words(self.words()?),
            b'-' | b'0'..=b'9' => self.number()?,
            _ if self.take("null") => What::Null,
            _ if self.take("true") => What::Flag(true),
            _ if self.take("false") => What::Flag(false),
            _ => return Err("a value is missing or misspelt"),
        };
        Ok(Node::new(at, what))
    }

    fn list(&mut self, depth: usize) -> Result<Vec<Node<'a>>, Fault> {
        let mut items = Vec::new();
        while self.goes_on(b']', items.is_empty())? {
            items.push(self.value(depth + 1)?);
        }
        Ok(items)
    }

    fn fields(&mut self, depth: usize) -> Result<Vec<(Node<'a>, Node<'a>)>, Fault> {
        let mut fields = Vec::new();
        while self.goes_on(b'}', fields.is_empty())? {
            if self.next() != Some(b'"') {
                return Err("key must be a string");
            }
            let at = self.at;
            let what = What::Words(self.words()?);
            if self.next() != Some(b':') {
                return Err("`:` is missing after a key");
            }
            self.at += 1;
            fields.push((Node::new(at, what), self.value(depth + 1)?));
        }
        Ok(fields)
    }

    /// Steps over the opening bracket or the comma; `false` past the closing bracket.
    fn goes_on(&mut self, close: u8, first: bool) -> Result<bool, Fault> {
        self.at += usize::from(first);
        let last = self.at;
        let next = self.next().ok_or(ENDS)?;
        if next == close {
            self.at += 1;
            return Ok(false);
        }
        if first {
            return Ok(true);
        }
        if next != b',' {
            // It is missing where the last item ends, often a line before the next.
            self.at = last;
            return Err(match close {
                b']' => "`,` or `]` is missing",
                _ => "`,` or `}` is missing",
            });
        }
        self.at += 1;
        match self.next() {
            None => Err(ENDS),
            Some(next) if next == close => Err("nothing follows a comma"),
            Some(_) => Ok(true),
        }
    }

    fn number(&mut self) -> Result<What<'a>, Fault> {
        let rest = self.rest();
        let end = rest.find(|c: char| !matches!(c, '0'..='9' | '-' | '+' | '.' | 'e' | 'E'));
        let digits = rest.get(..end.unwrap_or(rest.len())).unwrap_or_default();
        let plain = digits.strip_prefix('-').unwrap_or(digits);
        // -0 is a real number; a whole one doesn't begin with 0, and std would take a +.
        let what = match plain.as_bytes() {
            [b'0'] if plain == digits => Some(What::Whole(0)),
            [b'1'..=b'9', ..] if plain == digits => digits.parse().ok().map(What::Whole),
            [b'1'..=b'9', ..] => digits.parse().ok().map(What::Negative),
            _ => None,
        };
        let what = what.or_else(|| number(digits).map(What::Real));
        let what = what.ok_or("a number is misspelt or too large")?;
        self.at += digits.len();
        Ok(what)
    }

    fn words(&mut self) -> Result<Cow<'a, str>, Fault> {
        self.at += 1;
        let mut words = Cow::Borrowed("");
        loop {
            let rest = self.rest();
            let end = rest
                .bytes()
                .position(|byte| matches!(byte, b'"' | b'\\' | ..0x20))
                .ok_or(ENDS);
            let end = end.inspect_err(|_| self.at = self.text.len())?;
            words += rest.get(..end).unwrap_or_default();
            self.at += end + 1;
            match rest.as_bytes().get(end) {
                Some(b'"') => return Ok(words),
                Some(b'\\') => words.to_mut().push(self.escape()?),
                _ => {
                    self.at -= 1;
                    return Err("a line break or control character stands inside quotes");
                }
            }
        }
    }

    fn escape(&mut self) -> Result<char, Fault> {
        let letter = self.byte().ok_or(ENDS)?;
        self.at += 1;
        Ok(match letter {
            b'"' | b'\\' | b'/' => char::from(letter),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => {
                let mut code = self.code()?;
                // Two halves of one character beyond the first 65 536.
                if let 0xD800..0xDC00 = code {
                    let low = if self.take("\\u") { self.code()? } else { 0 };
                    let low = low.checked_sub(0xDC00).filter(|low| *low < 0x400).ok_or(ESCAPE)?;
                    code = 0x1_0000 + ((code - 0xD800) << 10) + low;
                }
                char::from_u32(code).ok_or(ESCAPE)?
            }
            _ => return Err(ESCAPE),
        })
    }

    fn code(&mut self) -> Result<u32, Fault> {
        let digits = self.rest().get(..4).ok_or(ESCAPE)?;
        self.at += 4;
        digits
            .chars()
            .try_fold(0, |code, digit| Some(code * 16 + digit.to_digit(16)?))
            .ok_or(ESCAPE)
    }
}
