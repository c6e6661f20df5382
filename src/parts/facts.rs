//! A short table of facts.

use leptos::prelude::*;

/// Names and values, one a row.
#[component]
pub fn Facts(rows: Vec<(&'static str, String)>) -> impl IntoView {
    view! {
        <dl class="facts">
            {rows.into_iter().map(|(name, words)| view! { <div><dt>{name}</dt> <dd>{words}</dd></div> }.into_any()).collect::<Vec<_>>()}
        </dl>
    }
}
