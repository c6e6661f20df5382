//! The keys that move the work on, at the bottom of a screen: the next thing, and undo.

use crate::bench::Bench;
use leptos::prelude::*;

/// Takes the last action back, and says which that is.
#[component]
pub fn UndoKey() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <button
            class="work-key undo"
            disabled=move || bench.undoable().is_none()
            on:click=move |_| bench.tell(bench.undo())
        >
            "Undo"
            <small>{move || bench.undoable().unwrap_or_default()}</small>
        </button>
    }
}
