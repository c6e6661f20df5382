//! The strip's corner: the way to Bench, whether the last change is kept for good, a release that waits.

use super::dynamic::{memo, press, text, when, whether};
use crate::bench::Bench;
use crate::device::journal::Safe;
use crate::device::place;
use leptos::prelude::*;

/// The corner's key. What it says beside its name moves nothing: "keeping…" stands in the name's own place,
/// and only where that takes longer than anybody waits.
pub fn corner(bench: Bench) -> AnyView {
    let newer = memo(move || bench.newer_waits());
    let keeping = whether(move || bench.safe.get() == Safe::Underway);
    view! {
        <button class="corner" class:keeping=keeping on:click=press(|| place::go("bench"))>
            <span>"Bench"</span>
            <small aria-hidden="true">"keeping…"</small>
            {when(move || newer.get(), || view! { <em aria-hidden="true">"newer"</em> }.into_any())}
        </button>
        <p class="unseen" role="status">
            {text(move || if newer.get() { "A newer release waits on Bench." } else { "" }.to_owned())}
        </p>
    }
    .into_any()
}
