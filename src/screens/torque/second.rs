//! The manual's own words, and what it says a second time in another unit.

use super::entry::{Entry, Panel};
use crate::bench::Bench;
use crate::job::pairing::Fix;
use crate::parts::dynamic::{Piece, piece, press, text};
use crate::parts::keypad::TorqueKeypad;
use crate::trade::quantity::in_mark;
use leptos::prelude::*;

/// A field for pasting or typing: "14 N·m (10.3 ft·lb)".
#[component]
pub fn Words(entry: Entry) -> impl IntoView {
    let words = RwSignal::new(String::new());
    let trouble = RwSignal::new(String::new());
    let take = move |_| {
        let refused = entry.take_words(&words.get_untracked());
        trouble.set(refused.unwrap_or_default());
    };
    view! {
        <label>
            "The manual’s own words, one value or the same in two units"
            <input
                type="text"
                autocomplete="off"
                placeholder=in_mark("14 N·m (10.3 ft·lb)")
                prop:value=words
                on:input=move |event| words.set(event_target_value(&event))
            />
        </label>
        <p class="trouble-line" role="alert">{trouble}</p>
        <div class="work-keys">
            <button class="work-key first" on:click=take>"Take it"</button>
            <button class="work-key" on:click=press(move || entry.panel.set(Panel::Keys))>"Back"</button>
        </div>
    }
}

/// The keypad for the second value.
#[component]
pub fn Also(entry: Entry) -> impl IntoView {
    view! {
        <div class="entry">
            <span class="quiet">"and also says"</span>
            <span class="typed" role="group" aria-label="also typed">
                {text(move || format!("{} {}", in_mark(&entry.also_typed.get()), entry.also_unit.get().symbol()))}
            </span>
        </div>
        <TorqueKeypad
            typed=entry.also_typed
            unit=entry.also_unit
            clearing=move |()| {}
            words=move |()| entry.panel.set(Panel::Words)
        />
    }
}

/// Whether the two values agree; when they don't, the ways out as keys.
#[component]
pub fn PairLine(entry: Entry) -> impl IntoView {
    let bench = Bench::here();
    let line: Piece = piece(move || {
        let unread = match entry.also.get() {
            None => return ().into_any(),
            Some(Err(words)) => Some(format!("The second value: {words}")),
            Some(Ok(_)) => None,
        };
        let pair = entry.whole.get().and_then(|whole| whole.pair);
        let (mark, stop, sentence, fixes) = match (unread, pair) {
            (Some(words), _) => ("?", false, words, Vec::new()),
            (None, Some(pair)) => (
                if pair.agree { "✓" } else { "✕" },
                !pair.agree,
                pair.sentence,
                pair.fixes,
            ),
            (None, None) => return ().into_any(),
        };
        let fix = move |fix: Fix| {
            let words = fix.words.clone();
            let press = move |_| {
                entry.correct(&fix.first);
                bench.enter_also(Some(&fix.second));
            };
            view! { <button on:click=press>{words}</button> }.into_any()
        };
        view! {
            <div class="guard" class:stop=stop role="status">
                <p>
                    <span class="mark" aria-hidden="true">{mark}</span>
                    {stop.then_some("STOP ")}
                    {sentence}
                </p>
                <div class="corrections" role="group" aria-label="it says">
                    {fixes.into_iter().map(fix).collect::<Vec<_>>()}
                    <button on:click=press(move || bench.enter_also(None))>"forget the second"</button>
                </div>
            </div>
        }
        .into_any()
    });
    view! { {line} }
}
