//! The keys that move the work on, at the bottom of a screen: the next thing, and undo.

use super::dynamic::{press, text, whether};
use crate::bench::Bench;
use leptos::prelude::*;

/// Takes the last action back, and says which that is.
#[component]
pub fn UndoKey() -> impl IntoView {
    let bench = Bench::here();
    let words = text(move || bench.undoable().unwrap_or_default());
    view! {
        <button
            class="work-key undo"
            disabled=whether(move || bench.undoable().is_none())
            on:click=press(move || bench.tell(bench.undo()))
        >
            "Undo"
            <small>{words}</small>
        </button>
    }
    .into_any()
}
