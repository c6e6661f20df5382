//! A store whose pen is taken away after so many writes; nobody is told.

use halfcase::job::shelf::{MemoryStore, StorageError, Store};
use std::cell::Cell;
use std::rc::Rc;

pub struct Dying {
    pub store: MemoryStore,
    /// Writes that still reach it.
    pub left: Cell<usize>,
    /// Writes that were tried.
    pub made: Cell<usize>,
}

impl Dying {
    pub fn new() -> Rc<Self> {
        Rc::new(Self {
            store: MemoryStore::default(),
            left: Cell::new(usize::MAX),
            made: Cell::new(0),
        })
    }
    fn reaches(&self) -> bool {
        let left = self.left.get();
        self.left.set(left.saturating_sub(1));
        self.made.set(self.made.get() + 1);
        left > 0
    }
}

impl Store for Dying {
    fn get(&self, key: &str) -> Option<String> {
        self.store.get(key)
    }
    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        if self.reaches() {
            self.store.set(key, text)
        } else {
            Ok(())
        }
    }
    fn remove(&self, key: &str) {
        if self.reaches() {
            self.store.remove(key);
        }
    }
    fn keys(&self) -> Vec<String> {
        self.store.keys()
    }
}
