//! What the app has to say, one line each, until put away.

use super::clock_doubt::ClockDoubt;
use super::dynamic::{each, piece, press, when};
use crate::bench::Bench;
use crate::device::{place, release};
use leptos::prelude::*;

/// The lines over the screen. `newer`: a newer release waits, and nothing is lost by taking it at once.
#[component]
pub fn SaidLines(newer: Memo<bool>) -> impl IntoView {
    let bench = Bench::here();
    let later = RwSignal::new(false);
    let newer = when(
        move || newer.get() && !later.get(),
        move || {
            view! {
                <div class="newer">
                    <span>"A newer release waits."</span>
                    <button on:click=press(release::take_over)>"take it"</button>
                    <button on:click=press(move || later.set(true))>"later"</button>
                </div>
            }
            .into_any()
        },
    );
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
            {newer}
            {lines}
        </div>
    }
}
