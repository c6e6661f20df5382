//! What the phone does for us: offline, awake, kept; and a newer release, taken by one touch.

use crate::bench::Bench;
use crate::device::journal::Safe;
use crate::device::release::{self, Kept};
use crate::device::wake_lock::Awake;
use crate::parts::dynamic::{each, memo, piece, press, when};
use leptos::prelude::*;

/// A newer release, on top: the key that takes it, in sight before what is new is read, and what that is.
pub fn newer(bench: Bench) -> AnyView {
    let waits = when(
        move || bench.kept.get() == Kept::NewerWaits,
        move || {
            let news = piece(move || {
                let lines = bench.news.get();
                let lines = lines.lines().map(str::to_owned);
                each(lines, |line| view! { <li>{line}</li> }.into_any()).into_any()
            });
            let offered = memo(move || bench.newer_waits());
            let taken = piece(move || match offered.get() {
                true => view! {
                    <button class="work-key first" on:click=press(release::take_over)>
                        "Take the newer release"
                    </button>
                }
                .into_any(),
                false => {
                    view! { <p>"Something is about to end: it is offered again after that."</p> }.into_any()
                }
            });
            view! {
                <section class="waits" aria-label="a newer release">
                    <h2>"A newer release waits"</h2>
                    {taken}
                    <ul class="news">{news}</ul>
                </section>
            }
            .into_any()
        },
    );
    view! { {waits} }.into_any()
}

/// How things stand with this phone.
#[component]
pub fn Standing() -> impl IntoView {
    let bench = Bench::here();
    let offline = move || match bench.kept.get() {
        Kept::Asking => "Looking whether the app is kept on this phone.",
        Kept::Whole => "Kept on this phone: starts without a network.",
        Kept::Not => "Not kept on this phone: it needs HTTPS (or localhost), and no private browsing.",
        Kept::NewerWaits => "A newer release is on this phone and waits for your word.",
    };
    let awake = move || match bench.awake.get() {
        Awake::Held => "The display stays awake while a step or clock is open.",
        Awake::Refused => "This browser can’t keep the display awake: set the phone’s own time-out longer.",
        Awake::NotAsked => "The display may sleep: nothing is open.",
    };
    let safe = move || match bench.safe.get() {
        Safe::Sure | Safe::Underway => "Each change is on the phone’s disk before it counts as kept.",
        Safe::Unsure => {
            "This browser writes late: when it crashes or the battery dies, the last minute may be lost."
        }
    };
    view! {
        <fieldset>
            <legend>"This phone"</legend>
            <p role="status">{offline}</p>
            <p>{awake}</p>
            <p>{safe}</p>
            <p class="quiet">
                "Everything stays in this browser’s storage. A page that is not installed may be cleared by some phones after a week without use: put it on the home screen first."
            </p>
            <p class="quiet">
                {format!("Halfcase {}. ", release::own())}
                <a href="./licences.txt" target="_blank" rel="noopener">"licences of all that is in it"</a>
                " (over the network)"
            </p>
        </fieldset>
    }
}
