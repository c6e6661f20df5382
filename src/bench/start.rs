//! The first minutes: no job yet, the example to look at, the wrench that is asked for.

use super::{Bench, Shelves};
use crate::job::clock::ClockId;
use crate::job::shelf::{MemoryStore, Shelf};
use crate::job::start;
use crate::job::state::{State, Touched};
use crate::job::wrench_asked;
use crate::trade::cure::Milestone;
use reactive_graph::prelude::*;
use std::mem;
use std::rc::Rc;

/// What is put aside while the example is looked at.
pub(super) struct Aside {
    shelves: Shelves,
    rung: Vec<(ClockId, Milestone)>,
}

impl Bench {
    /// Whether a job was begun that is at hand; followed.
    pub fn has_job(self) -> bool {
        self.jobs.follow();
        self.sheet.follow();
        self.progress.follow();
        self.state.with(State::has_job)
    }

    /// Whether what is shown is the example, of which nothing is kept; followed.
    pub fn is_example(self) -> bool {
        self.example.get()
    }

    /// Lays out the example beside what is stored: whatever is done in it is gone when it is closed.
    pub fn look_at_example(self) {
        if self.example.get_untracked() {
            return;
        }
        let aside = Aside {
            shelves: self.change_shelves(Shelves::new(Shelf::new(Rc::new(MemoryStore::default())), None)),
            rung: self.rung(),
        };
        self.aside.set_value(Some(aside));
        self.show_whole(start::example());
        self.example.set(true);
    }

    /// Closes the example: what is stored is there as it was.
    pub fn close_example(self) {
        let Some(aside) = self.aside.try_update_value(Option::take).flatten() else {
            return;
        };
        drop(self.change_shelves(aside.shelves));
        let left = self.shelves.with_value(Shelves::read);
        self.show_whole(left.state);
        self.keep_rung(aside.rung);
        self.said.update(|said| said.extend(left.said));
        self.example.set(false);
    }

    fn change_shelves(self, new: Shelves) -> Shelves {
        let mut old = new;
        self.shelves.update_value(|shelves| mem::swap(shelves, &mut old));
        old
    }

    /// Another bench altogether.
    fn show_whole(self, state: State) {
        *self.state.get().borrow_mut() = state;
        self.said.set(Vec::new());
        self.ringing.set(Vec::new());
        self.show(Touched {
            jobs: true,
            sheet: true,
            record: true,
            clocks: true,
            settings: true,
        });
        self.tick();
    }

    /// Whether it is still to be asked which wrench is in the hand; followed.
    pub fn asks_wrench(self) -> bool {
        self.settings.with(wrench_asked::is_asked)
    }

    /// Any wrench will do.
    pub fn any_wrench(self) {
        self.set("choice of wrench", |settings| settings.any_wrench = true);
    }
}
