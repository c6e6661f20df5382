//! The phone's clock has jumped: what happened, and the two keys that say which clock is right.

use super::dynamic::{piece, press};
use crate::bench::Bench;
use crate::job::tamper::jump_words;
use leptos::prelude::*;

/// The question; nothing while the clocks are in step.
#[component]
pub fn ClockDoubt() -> impl IntoView {
    let bench = Bench::here();
    piece(move || match bench.doubt.get() {
        None => ().into_any(),
        Some(ahead) => {
            let (right, wrong) = if ahead > 0 {
                ("count that time", "hold cures back")
            } else {
                ("go by it", "go on as before")
            };
            view! {
                <div class="trouble doubt" role="group" aria-label="which clock is right">
                    <p>{jump_words(ahead)} " Cures are held until you say which is right."</p>
                    <div class="clock-keys">
                        {answer(bench, true, "The phone is right", right)}
                        {answer(bench, false, "The phone is wrong", wrong)}
                    </div>
                </div>
            }
            .into_any()
        }
    })
}

fn answer(bench: Bench, phone_is_right: bool, words: &'static str, small: &'static str) -> AnyView {
    view! {
        <button class="work-key" on:click=press(move || bench.judge_clock(phone_is_right))>
            {words}
            <small>{small}</small>
        </button>
    }
    .into_any()
}
