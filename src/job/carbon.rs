//! A carbon copy of the latest writes, for a browser that was killed before it had written them.
//!
//! Browsers write local storage late: what is read back from it may still be gone when the battery dies.
//! So all that one turn of the page wrote goes a second time, at once, into a journal that answers only when
//! it is on the disk. The store stays the store. At the start it is brought up to where the journal stands.

use super::shelf::{StorageError, Store, is_mark, mark_in, written_by};
use serde_json::Value;
use std::cell::RefCell;
use std::fmt;
use std::rc::Rc;

/// What one turn of the page wrote: a whole transaction with its mark, seldom more than one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Turn {
    /// The last transaction that stood before.
    pub before: u64,
    /// The last that stands now.
    pub after: u64,
    /// Each key once, with what stands there now; none where it was taken away.
    pub writes: Vec<(String, Option<String>)>,
}

impl Turn {
    /// A turn as the journal and a file hold it: the two numbers, then keys and texts in turn, no text where
    /// the key was taken away. None where it is not that.
    pub fn read(value: &Value) -> Option<Self> {
        let [before, after, writes @ ..] = value.as_array()?.as_slice() else {
            return None;
        };
        let writes = writes.chunks(2).map(|pair| match pair {
            [Value::String(key), Value::String(text)] => Some((key.clone(), Some(text.clone()))),
            [Value::String(key), Value::Null] => Some((key.clone(), None)),
            _ => None,
        });
        Some(Self {
            before: before.as_u64()?,
            after: after.as_u64()?,
            writes: writes.collect::<Option<_>>()?,
        })
    }
}

/// A store all of whose writes are copied.
pub struct Copied {
    store: Rc<dyn Store>,
    turn: RefCell<Option<Turn>>,
    /// Called with the first write of a turn: [`Copied::take`] it when the turn is over.
    begun: Box<dyn Fn()>,
}

impl Copied {
    /// Lays carbon under a store.
    pub fn new(store: Rc<dyn Store>, begun: Box<dyn Fn()>) -> Self {
        Self {
            store,
            turn: RefCell::new(None),
            begun,
        }
    }

    /// What was written since the last time it was taken.
    pub fn take(&self) -> Option<Turn> {
        let mut turn = self.turn.take()?;
        turn.after = mark_in(&*self.store);
        Some(turn)
    }

    fn copy(&self, key: &str, text: Option<&str>) {
        let mut turn = self.turn.borrow_mut();
        let Some(turn) = &mut *turn else { return };
        let text = text.map(str::to_owned);
        match turn.writes.iter_mut().find(|(own, _)| own == key) {
            Some((_, own)) => *own = text,
            None => turn.writes.push((key.to_owned(), text)),
        }
    }

    fn begin(&self) {
        if self.turn.borrow().is_none() {
            let before = mark_in(&*self.store);
            self.turn.replace(Some(Turn {
                before,
                after: before,
                writes: Vec::new(),
            }));
            (self.begun)();
        }
    }
}

impl Store for Copied {
    fn get(&self, key: &str) -> Option<String> {
        self.store.get(key)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        self.begin();
        self.store.set(key, text)?;
        self.copy(key, Some(text));
        Ok(())
    }

    fn remove(&self, key: &str) {
        self.begin();
        self.store.remove(key);
        self.copy(key, None);
    }

    fn keys(&self) -> Vec<String> {
        self.store.keys()
    }
}

/// What the journal had more than the store.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Back {
    /// So many transactions were put back.
    pub put: u64,
    /// The journal has more that doesn't follow what the store holds.
    pub apart: bool,
}

impl Back {
    /// Nothing was missing.
    pub fn is_nothing(self) -> bool {
        self == Self::default()
    }

    /// In words, of a file saved without the app: nothing of it is here until it is taken in.
    pub fn words_of_file(self) -> String {
        self.words(
            "in this file, and here once you take it in",
            "This file has changes that don’t fit the rest of it: they are left out.",
        )
    }

    fn words(self, there: &str, apart: &str) -> String {
        let what = match self.put {
            1 => "last change: it is".to_owned(),
            many => format!("last {many} changes: they are"),
        };
        let mut words = String::new();
        if self.put > 0 {
            words = format!("The browser was stopped before it had written your {what} {there}.");
        }
        if self.apart {
            words.extend((self.put > 0).then_some(' '));
            words += apart;
        }
        words
    }
}

impl fmt::Display for Back {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(
            "put back",
            "The browser lost changes that don’t fit what is here: check the last things you did.",
        ))
    }
}

/// Brings the store up to where the journal stands: `turns` in the order they were written.
///
/// What doesn't follow the store's own last transaction stays out: the store went on without the journal,
/// or the journal has a gap.
pub fn put_back(store: &dyn Store, turns: &[Turn]) -> Back {
    let mark = mark_in(store);
    // A mark that is there and can't be read: what would be written over is not known.
    if mark == 0 && store.keys().iter().any(|key| is_mark(key)) {
        return Back::default();
    }
    let mut later = turns.iter().filter(|turn| turn.after > mark).peekable();
    if later.peek().is_none() {
        return Back::default();
    }
    let mut back = Back {
        put: 0,
        apart: went_another_way(store, mark, turns),
    };
    let mut at = mark;
    for turn in later {
        back.apart |= turn.before > at;
        if back.apart || write(store, turn).is_err() {
            back.apart = true;
            break;
        }
        at = turn.after;
    }
    back.put = at - mark;
    back
}

/// The transaction that the store holds as its last is not the one of that number in the journal.
fn went_another_way(store: &dyn Store, mark: u64, turns: &[Turn]) -> bool {
    let same = turns
        .iter()
        .filter(|turn| turn.before < mark && mark <= turn.after);
    let mut writes = same.flat_map(|turn| &turn.writes);
    writes.any(|(key, text)| {
        let here = store.get(key);
        let by = |text: &Option<String>| text.as_deref().and_then(|text| written_by(key, text));
        by(text) == Some(mark) && by(&here) == Some(mark) && here != *text
    })
}

/// All of a turn, or nothing of it; what stands just so is left alone, and what could not be written over too.
fn write(store: &dyn Store, turn: &Turn) -> Result<(), StorageError> {
    let mut before: Vec<(&String, Option<String>)> = Vec::new();
    for (key, text) in &turn.writes {
        let stood = store.get(key);
        if &stood == text {
            continue;
        }
        let done = match text {
            Some(text) => store.set(key, text),
            None => {
                store.remove(key);
                Ok(())
            }
        };
        if done.is_err() {
            before.iter().for_each(|(key, _)| store.remove(key));
            for (key, text) in before {
                if let Some(text) = text {
                    store.set(key, &text)?;
                }
            }
            return done;
        }
        before.push((key, stood));
    }
    Ok(())
}
