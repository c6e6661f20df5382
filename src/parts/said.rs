//! What the app has to say, one line each, until put away.

use super::clock_doubt::ClockDoubt;
use super::dynamic::{each, piece, press};
use crate::bench::Bench;
use crate::device::place;
use leptos::prelude::*;

/// The lines under the strip.
#[component]
pub fn SaidLines() -> impl IntoView {
    let bench = Bench::here();
    let lines = piece(move || {
        each(bench.said.get(), |said| {
            let (words, trouble) = (said.words.clone(), said.trouble);
            let room = said.room.then(|| {
                view! { <button on:click=press(|| place::go("jobs"))>"make room"</button> }.into_any()
            });
            let away = press(move || bench.said.update(|all| all.retain(|other| *other != said)));
            view! {
                <div class:trouble=trouble>
                    <span>{words}</span>
                    {room}
                    <button aria-label="ok, dismiss this message" on:click=away>
                        "ok"
                    </button>
                </div>
            }
            .into_any()
        })
        .into_any()
    });
    view! {
        <div class="said" role="status" aria-atomic="false">
            <ClockDoubt />
            {lines}
        </div>
    }
}
