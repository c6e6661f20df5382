//! A part of the state as views see it: they follow it, and can't change it.

use crate::job::state::State;
use reactive_graph::owner::{LocalStorage, StoredValue};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use std::cell::RefCell;
use std::rc::Rc;

/// The state, where the whole bench finds it.
#[derive(Clone, Copy)]
pub(super) struct Held(StoredValue<Rc<RefCell<State>>, LocalStorage>);

impl Held {
    pub fn new(state: State) -> Self {
        Self(StoredValue::new_local(Rc::new(RefCell::new(state))))
    }

    // Not generic, so that it is compiled once and not for every look at it.
    pub fn get(self) -> Rc<RefCell<State>> {
        self.0.get_value()
    }

    pub fn with<R>(self, look: impl FnOnce(&State) -> R) -> R {
        look(&self.get().borrow())
    }
}

/// A part of the state, followed like a signal.
pub struct Seen<T: 'static> {
    state: Held,
    changes: RwSignal<u32>,
    of: fn(&State) -> &T,
}

impl<T> Clone for Seen<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Seen<T> {}

impl<T> Seen<T> {
    pub(super) fn new(state: Held, of: fn(&State) -> &T) -> Self {
        Self {
            state,
            changes: RwSignal::new(0),
            of,
        }
    }

    /// Shows it, and what reads it here follows it.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        self.changes.track();
        self.with_untracked(look)
    }

    /// Shows it as it is now.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look((self.of)(&self.state.get().borrow()))
    }

    /// What reads the state otherwise follows this part of it too.
    pub(super) fn follow(self) {
        self.changes.track();
    }

    /// It has changed.
    pub(super) fn changed(self) {
        self.changes.update(|count| *count = count.wrapping_add(1));
    }
}

impl<T: Clone> Seen<T> {
    /// A copy, followed.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// A copy as it is now.
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}
