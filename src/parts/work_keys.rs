//! The keys that move the work on, at the bottom of a screen: the next thing, and undo.

use super::dynamic::{press, state, text, whether};
use crate::bench::Bench;
use leptos::prelude::*;
use std::time::Duration;

/// How long a key rests after a press.
const REST: Duration = Duration::from_millis(350);

/// How long the second of two presses is said to be none.
const SAID: Duration = Duration::from_millis(1_600);

/// One rest for all that moves a step on, its big key and its bolts: a knuckle bounces, so two presses within
/// it are one.
#[derive(Clone, Copy)]
pub struct Resting {
    rests: RwSignal<bool>,
    twice: RwSignal<bool>,
}

impl Resting {
    /// Rests from now: the press that led here must not answer for what comes.
    pub fn from_now() -> Self {
        let resting = Self {
            rests: RwSignal::new(false),
            twice: RwSignal::new(false),
        };
        resting.rest();
        resting
    }

    fn rest(self) {
        lit_for(self.rests, REST);
    }

    /// Whether a press counts; one that comes too soon after another does not, and says so.
    pub fn counts(self) -> bool {
        let counts = !self.rests.get_untracked();
        if counts {
            self.twice.set(false);
            self.rest();
        } else {
            lit_for(self.twice, SAID);
        }
        counts
    }

    /// Whether it rests; followed.
    pub fn now(self) -> bool {
        self.rests.get()
    }

    /// What a key says below its words: that the second press was none, else `words`; followed.
    pub fn said(self, words: String) -> String {
        match self.twice.get() {
            true => "too soon: not counted".to_owned(),
            false => words,
        }
    }
}

/// True, and false again after `span`.
fn lit_for(signal: RwSignal<bool>, span: Duration) {
    signal.set(true);
    set_timeout(
        move || {
            signal.try_set(false);
        },
        span,
    );
}

/// Takes the last action back, and says which that is.
#[component]
pub fn UndoKey() -> impl IntoView {
    let bench = Bench::here();
    let resting = Resting::from_now();
    let words = text(move || resting.said(bench.undoable().unwrap_or_default()));
    // Not shut while it rests: a keyboard would lose its place.
    let undo = press(move || {
        if resting.counts() {
            bench.tell(bench.undo());
        }
    });
    view! {
        <button
            class="work-key undo"
            aria-disabled=state(move || resting.now())
            disabled=whether(move || bench.undoable().is_none())
            on:click=undo
        >
            "Undo"
            <small>{words}</small>
        </button>
    }
    .into_any()
}
