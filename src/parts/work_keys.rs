//! The keys that move the work on, at the bottom of a screen: the next thing, and undo.

use super::dynamic::{press, state, text, whether};
use crate::bench::Bench;
use leptos::prelude::*;
use std::time::Duration;

/// How long a key rests after a press.
const REST: Duration = Duration::from_millis(350);

/// A knuckle bounces: what was just pressed rests for a moment.
pub fn rest(resting: RwSignal<bool>) {
    resting.set(true);
    set_timeout(
        move || {
            resting.try_set(false);
        },
        REST,
    );
}

/// One rest for all that moves a step on: its big key and its bolts.
#[derive(Clone, Copy)]
pub struct Resting(pub RwSignal<bool>);

/// Takes the last action back, and says which that is.
#[component]
pub fn UndoKey() -> impl IntoView {
    let bench = Bench::here();
    let words = text(move || bench.undoable().unwrap_or_default());
    let resting = RwSignal::new(false);
    // Not shut while it rests: a keyboard would lose its place.
    let undo = press(move || {
        if resting.get_untracked() {
            return;
        }
        rest(resting);
        bench.tell(bench.undo());
    });
    view! {
        <button
            class="work-key undo"
            aria-disabled=state(move || resting.get())
            disabled=whether(move || bench.undoable().is_none())
            on:click=undo
        >
            "Undo"
            <small>{words}</small>
        </button>
    }
    .into_any()
}
