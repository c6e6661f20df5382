//! A store whose pen can be taken away after so many writes.

use halfcase::job::shelf::{StorageError, Store};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

#[derive(Default)]
pub struct Paper {
    texts: RefCell<BTreeMap<String, String>>,
    /// Writes left; none: as many as are asked for.
    left: Cell<Option<usize>>,
    torn: Cell<bool>,
    cut: Cell<bool>,
}

impl Paper {
    pub fn copy(&self) -> Self {
        Self {
            texts: self.texts.clone(),
            ..Self::default()
        }
    }

    /// After so many more writes nothing reaches the paper; the next one, when `torn`, by half.
    pub fn cut_after(&self, writes: usize, torn: bool) {
        self.left.set(Some(writes));
        self.torn.set(torn);
    }

    pub fn was_cut(&self) -> bool {
        self.cut.get()
    }

    /// The pen is back.
    pub fn mend(&self) {
        self.left.set(None);
    }

    /// Whether this write still reaches the paper.
    fn reaches(&self) -> bool {
        match self.left.get() {
            None => true,
            Some(0) => {
                self.cut.set(true);
                false
            }
            Some(left) => {
                self.left.set(Some(left - 1));
                true
            }
        }
    }
}

impl Store for Paper {
    fn get(&self, key: &str) -> Option<String> {
        self.texts.borrow().get(key).cloned()
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        let first = !self.cut.get();
        if self.reaches() {
            self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        } else if first && self.torn.get() {
            let half: String = text.chars().take(text.chars().count() / 2).collect();
            self.texts.borrow_mut().insert(key.to_owned(), half);
        }
        // A phone that dies says nothing.
        Ok(())
    }

    fn remove(&self, key: &str) {
        if self.reaches() {
            self.texts.borrow_mut().remove(key);
        }
    }

    fn keys(&self) -> Vec<String> {
        self.texts.borrow().keys().cloned().collect()
    }
}
