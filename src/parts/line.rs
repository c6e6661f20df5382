//! Words that stand on one or two lines of a step.

use leptos::prelude::*;

/// How many small letters' width a text has: a capital is a quarter wider, and so may be what is not ASCII.
pub fn widths(text: &str) -> usize {
    let wide = text.chars().filter(|c| c.is_ascii_uppercase() || !c.is_ascii());
    text.chars().count() + wide.count() / 4
}

/// Words that lead to what is behind the lane.
pub fn touch_above(words: impl IntoView) -> AnyView {
    view! {
        {words}
        ": touch "
        <span aria-hidden="true">"›"</span>
        <span class="unseen">"“all”"</span>
        " above"
    }
    .into_any()
}
