//! The word EXAMPLE in the head, while that is what is shown, and the way out of it.

use super::dynamic::{press, when};
use crate::bench::Bench;
use crate::device::place;
use leptos::prelude::*;

/// The mark; nothing on a bench of one's own. Touched, it closes the example.
#[component]
pub fn ExampleMark() -> impl IntoView {
    let bench = Bench::here();
    let close = move || {
        bench.close_example();
        place::go("job");
    };
    when(
        move || bench.is_example(),
        move || {
            view! {
                <button class="example-mark" aria-label="EXAMPLE: close it; nothing of it is kept" on:click=press(close)>
                    "EXAMPLE "
                    <span aria-hidden="true">"×"</span>
                </button>
            }
            .into_any()
        },
    )
}
