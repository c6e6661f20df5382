//! A text's values, before they have a type.

use serde_json::Value;
use std::borrow::Cow;
use std::cell::Cell;

/// One value, and where it begins: no two begin at one place, and what is inside begins later.
pub struct Node<'a> {
    pub at: usize,
    pub seen: Cell<Seen>,
    pub what: What<'a>,
}

/// The words of the one, and those of the other.
pub type Parted = (String, Vec<String>);

/// How a text that says two things is parted.
pub struct Parting {
    /// The name its fields stand under.
    pub under: &'static str,
    /// The field that is written.
    pub first: &'static str,
    /// The field that holds the rest, a list.
    pub second: &'static str,
    /// What stands in the one and in the other; none where the text says one thing.
    pub part: fn(&str) -> Option<Parted>,
}

/// How far reading came.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Seen {
    Not,
    Begun,
    /// All inside was read: what is wrong from here on is wrong with the whole.
    Ended,
}

/// What stands there. Fields are in the order of the text, repeated ones too: their type decides.
pub enum What<'a> {
    Null,
    Flag(bool),
    Whole(u64),
    Negative(i64),
    Real(f64),
    Words(Cow<'a, str>),
    List(Vec<Node<'a>>),
    Fields(Vec<(Node<'a>, Node<'a>)>),
}

impl<'a> Node<'a> {
    pub fn new(at: usize, what: What<'a>) -> Node<'a> {
        let seen = Cell::new(Seen::Not);
        Node { at, seen, what }
    }

    /// The nodes of a value, numbered from `next` in place of a text's bytes.
    pub fn of(value: &'a Value, next: &mut usize) -> Node<'a> {
        let at = *next;
        *next += 1;
        let what = match value {
            Value::Null => What::Null,
            Value::Bool(flag) => What::Flag(*flag),
            Value::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(whole), _) => What::Whole(whole),
                (None, Some(negative)) => What::Negative(negative),
                _ => What::Real(number.as_f64().unwrap_or(f64::NAN)),
            },
            Value::String(words) => What::Words(Cow::Borrowed(words)),
            Value::Array(items) => What::List(items.iter().map(|item| Node::of(item, next)).collect()),
            Value::Object(fields) => What::Fields(
                fields
                    .iter()
                    .map(|(name, value)| {
                        let name = Node::new(*next, What::Words(Cow::Borrowed(name)));
                        *next += 1;
                        (name, Node::of(value, next))
                    })
                    .collect(),
            ),
        };
        Node::new(at, what)
    }

    /// Parts words that say two things, here and inside.
    pub fn part(&mut self, parting: &Parting) {
        match &mut self.what {
            What::List(items) => items.iter_mut().for_each(|item| item.part(parting)),
            What::Fields(fields) => {
                for (name, value) in fields {
                    if name.words() == Some(parting.under) {
                        value.part_here(parting);
                    }
                    value.part(parting);
                }
            }
            What::Null
            | What::Flag(_)
            | What::Whole(_)
            | What::Negative(_)
            | What::Real(_)
            | What::Words(_) => {}
        }
    }

    fn part_here(&mut self, parting: &Parting) {
        let What::Fields(fields) = &mut self.what else {
            return;
        };
        if fields
            .iter()
            .any(|(name, _)| name.words() == Some(parting.second))
        {
            return;
        }
        let first = fields
            .iter_mut()
            .find(|(name, _)| name.words() == Some(parting.first));
        let Some((_, value)) = first else { return };
        let at = value.at;
        let Some((first, second)) = value.words().and_then(parting.part) else {
            return;
        };
        value.what = What::Words(Cow::Owned(first));
        // Words that part have bytes enough behind their mark for nodes of their own.
        let item = |(words, at)| Node::new(at, What::Words(Cow::Owned(words)));
        let items = second.into_iter().zip(at + 3..).map(item).collect();
        let name = Node::new(at + 1, What::Words(Cow::Borrowed(parting.second)));
        fields.push((name, Node::new(at + 2, What::List(items))));
    }

    pub fn is_seen(&self) -> bool {
        self.seen.get() != Seen::Not
    }

    /// The words, where it is words.
    pub fn words(&self) -> Option<&str> {
        match &self.what {
            What::Words(words) => Some(words),
            _ => None,
        }
    }

    /// What it is, for a sentence that refuses it.
    pub fn named(&self) -> String {
        match &self.what {
            What::Null => "null".to_owned(),
            What::Flag(flag) => flag.to_string(),
            What::Whole(whole) => whole.to_string(),
            What::Negative(negative) => negative.to_string(),
            What::Real(real) => format!("{real:?}"),
            What::Words(words) if words.chars().count() > 60 => "a long text".to_owned(),
            What::Words(words) => format!("{words:?}"),
            What::List(_) => "a list".to_owned(),
            What::Fields(_) => "fields in { }".to_owned(),
        }
    }
}

/// One node, to be read. It is marked when it is: an error says nothing of its place, and noting how
/// far reading came costs each type less than adding to the error on its way out.
#[derive(Clone, Copy)]
pub struct Reader<'n> {
    pub node: &'n Node<'n>,
}
