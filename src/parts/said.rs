//! What the app has to say, one line each, until put away.

use super::clock_doubt::ClockDoubt;
use crate::bench::Bench;
use leptos::prelude::*;

/// The lines under the strip.
#[component]
pub fn SaidLines() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <ul class="said" role="status">
            <ClockDoubt />
            <For each=move || bench.said.get() key=|said| said.words.clone() children=move |said| {
                let (words, trouble) = (said.words.clone(), said.trouble);
                view! {
                <li class:trouble=trouble>
                    <span>{words}</span>
                    <button
                        aria-label="put this message away"
                        on:click=move |_| bench.said.update(|all| all.retain(|other| *other != said))
                    >
                        "ok"
                    </button>
                </li>
            } } />
        </ul>
    }
}
