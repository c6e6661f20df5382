//! The phone's clock has jumped: what happened, and the keys that say which clock is right.

use super::dynamic::{piece, press};
use super::when::brief;
use crate::bench::{Bench, Judged};
use crate::trade::moment::Moment;
use leptos::prelude::*;

/// The question; nothing while the clocks are in step.
#[component]
pub fn ClockDoubt() -> impl IntoView {
    let bench = Bench::here();
    piece(move || match bench.doubt.get() {
        None => ().into_any(),
        Some(doubt) => {
            // Not followed: keys that are drawn anew each second are hard to touch.
            let ours = bench.now.get_untracked();
            let phones = Moment(ours.0.saturating_add(doubt.ahead_ms));
            let words = doubt.words(&brief(ours, phones), &brief(phones, ours));
            let (ask, keys) = match (doubt.closed, doubt.ahead_ms > 0) {
                (true, _) => (
                    " Cures are held until you say so.",
                    [
                        answer(bench, Judged::Right, "Yes, it passed", "count that time"),
                        answer(bench, Judged::Wrong, "No", "the phone is wrong"),
                    ],
                ),
                (false, true) => (
                    " Cures are held until you say which is right.",
                    [
                        answer(bench, Judged::Right, "The phone is right", "count that time"),
                        answer(bench, Judged::Wrong, "The phone is wrong", "hold cures back"),
                    ],
                ),
                (false, false) => (
                    " Cures are held until you say which is right.",
                    [
                        answer(bench, Judged::Right, "The phone is right", "go by it"),
                        answer(bench, Judged::Wrong, "The phone is wrong", "go on as before"),
                    ],
                ),
            };
            view! {
                <div class="trouble doubt" role="group" aria-label="which clock is right">
                    <p>{words} {ask}</p>
                    <div class="clock-keys">
                        {keys}
                        {answer(
                            bench,
                            Judged::RightNow,
                            "It was wrong before",
                            "set right now: move what was put on",
                        )}
                    </div>
                </div>
            }
            .into_any()
        }
    })
}

fn answer(bench: Bench, judged: Judged, words: &'static str, small: &'static str) -> AnyView {
    view! {
        <button class="work-key" on:click=press(move || bench.judge_clock(judged))>
            {words}
            <small>{small}</small>
        </button>
    }
    .into_any()
}
