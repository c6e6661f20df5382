//! What is wrong with a text, and where.

use super::node::{Node, Seen, What};
use crate::trade::quantity::{short, spelt_out};
use std::fmt::{self, Display};

/// Why a text can't be read, in words that go on from "… can't be read:".
#[derive(Debug, Clone, PartialEq, Eq)]
// Boxed: the result of each field is moved about in every type's reader.
pub struct JsonError(Box<Problem>);

#[derive(Debug, Clone, PartialEq, Eq, Default)]
struct Problem {
    /// Counted from 1; 0 where there is no text.
    line: usize,
    /// Where in the text it is: the beginning of a node.
    at: usize,
    path: Vec<String>,
    what: String,
}

/// Characters that a sentence bears of what is wrong.
const LONGEST: usize = 600;

impl JsonError {
    #[cold]
    #[inline(never)]
    pub(super) fn new(mut what: String) -> Self {
        // Some readers speak in whole sentences; whoever shows this one ends it.
        if what.ends_with('.') {
            what.pop();
        }
        // Some give back all that they were given; the end of what they say is what they expected.
        let mut what = spelt_out(&what);
        let count = what.chars().count();
        if count > LONGEST {
            let end: String = what.chars().skip(count - 400).collect();
            what = format!("{}… {end}", what.chars().take(80).collect::<String>());
        }
        Self(Box::new(Problem {
            what,
            ..Problem::default()
        }))
    }

    /// With the names that lead from `root` to the node at which reading stopped.
    #[cold]
    #[inline(never)]
    pub(super) fn found_in(mut self, root: &Node<'_>) -> Self {
        let mut next = Some(root);
        while let Some(node) = next {
            self.0.at = node.at;
            next = match &node.what {
                _ if node.seen.get() == Seen::Ended => None,
                What::List(items) => {
                    let last = items.iter().enumerate().rfind(|(_, item)| item.is_seen());
                    last.map(|(place, item)| {
                        self.0.path.push(ordinal(place + 1));
                        item
                    })
                }
                What::Fields(fields) => {
                    let last = fields.iter().rfind(|(name, _)| name.is_seen());
                    last.and_then(|(name, value)| {
                        // A fault of the name itself, which has a line of its own, is the object's.
                        self.0.at = name.at;
                        value.is_seen().then(|| {
                            self.0.path.extend(name.words().map(short));
                            value
                        })
                    })
                }
                _ => None,
            };
        }
        self
    }

    /// With the line on which it is in `text`.
    #[cold]
    #[inline(never)]
    pub(super) fn on_line_of(mut self, text: &str) -> Self {
        let before = text.bytes().take(self.0.at);
        self.0.line = 1 + before.filter(|byte| *byte == b'\n').count();
        self
    }

    pub(super) fn at(mut self, at: usize) -> Self {
        self.0.at = at;
        self
    }

    /// What is wrong.
    pub fn what(&self) -> &str {
        &self.0.what
    }

    /// The names of the fields that lead there, and its number in each list: "steps, 3rd, work".
    pub fn path(&self) -> String {
        self.0.path.join(", ")
    }

    /// Its line with the path: "12 (steps, 3rd, work)"; the path alone where nothing has lines.
    pub fn place(&self) -> String {
        match (self.0.line, self.0.path.is_empty()) {
            (0, _) => self.path(),
            (line, true) => line.to_string(),
            (line, false) => format!("{line} ({})", self.path()),
        }
    }
}

fn ordinal(number: usize) -> String {
    let end = match (number % 10, number % 100) {
        (1, rest) if rest != 11 => "st",
        (2, rest) if rest != 12 => "nd",
        (3, rest) if rest != 13 => "rd",
        _ => "th",
    };
    format!("{number}{end}")
}

impl Display for JsonError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let place = self.place();
        let line = if self.0.line > 0 { "line " } else { "" };
        let colon = if place.is_empty() { "" } else { ": " };
        write!(f, "{line}{place}{colon}{}", self.0.what)
    }
}

impl std::error::Error for JsonError {}

impl serde::de::Error for JsonError {
    fn custom<T: Display>(words: T) -> Self {
        Self::new(words.to_string())
    }
}

impl serde::ser::Error for JsonError {
    fn custom<T: Display>(words: T) -> Self {
        Self::new(words.to_string())
    }
}
