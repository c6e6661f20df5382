//! One lane of two lines under the number: the worst of what there is to say, and the one key that helps.

use super::IN_A_ROW;
use super::entry::{Entry, Panel};
use crate::bench::Bench;
use crate::job::asked::Worst;
use crate::parts::dynamic::{each, piece, press};
use crate::trade::guard::Verdict;
use crate::trade::quantity::in_mark;
use leptos::prelude::*;

/// The lane: latest values while nothing is typed, else the worst of the answer.
pub fn lane(entry: Entry) -> AnyView {
    let bench = Bench::here();
    if entry.typed.with(String::is_empty) {
        return keys(entry, "latest values", IN_A_ROW);
    }
    let Some(whole) = entry.whole.get() else {
        let why = entry.trouble.get().unwrap_or_default();
        return view! { <p class="said-lane">{why}</p> }.into_any();
    };
    match whole.worst(entry.desk.with(|desk| desk.turn_deg)) {
        Worst::Apart(pair) => line(entry, "stop", format!("✕ STOP {}", pair.sentence), None),
        Worst::Doubted(guard) => {
            let class = match guard.verdict {
                Verdict::Absurd => "stop",
                _ => "doubtful",
            };
            let first = guard.corrections.into_iter().next().map(|correction| {
                let take = press(move || entry.correct(&correction.statement));
                view! { <button on:click=take>{correction.words}</button> }.into_any()
            });
            line(entry, class, format!("{} {}", guard.mark, guard.sentence), first)
        }
        Worst::Wrench(why, take) => {
            let name = take.and_then(|at| {
                bench
                    .settings
                    .with(|s| s.wrenches.get(at).map(|w| w.name.clone()))
            });
            let take = take.zip(name).map(|(at, name)| {
                view! { <button on:click=press(move || bench.take_wrench(at))>{format!("use {name}")}</button> }
                    .into_any()
            });
            line(entry, "doubtful", why, take)
        }
        Worst::Fine(words) if words.is_empty() => line(
            entry,
            "",
            "Say which bolt it is: a slip is caught then.".to_owned(),
            None,
        ),
        Worst::Fine(words) => line(entry, "", words, None),
    }
}

/// The words as a key that opens all there is to say, and the key that helps.
fn line(entry: Entry, class: &'static str, words: String, help: Option<AnyView>) -> AnyView {
    view! {
        <button class=format!("said-lane {class}") on:click=press(move || entry.show(Panel::Bolt))>
            {words}
        </button>
        {help}
    }
    .into_any()
}

/// The last values, each one tap away.
#[component]
pub fn Recent(entry: Entry) -> impl IntoView {
    piece(move || keys(entry, "last values", usize::MAX))
}

fn keys(entry: Entry, name: &'static str, most: usize) -> AnyView {
    let mut recent = entry.desk.with(|desk| desk.recent.clone());
    recent.truncate(most);
    if recent.is_empty() {
        return view! { <p class="said-lane quiet">"Then the number for your wrench stands above."</p> }
            .into_any();
    }
    let key = move |words: String| {
        let shown = in_mark(&words);
        let take = press(move || {
            entry.panel.set(Panel::Keys);
            drop(entry.take_words(&words));
        });
        view! { <button on:click=take>{shown}</button> }.into_any()
    };
    view! { <div class="corrections" role="group" aria-label=name>{each(recent, key)}</div> }.into_any()
}
