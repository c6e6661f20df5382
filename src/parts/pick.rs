//! One of several, shown as a row that opens into tiles.

use super::dynamic::{Piece, piece, press, text};
use leptos::prelude::*;

/// A row with what is chosen; a touch opens the choices, another takes one and closes them.
pub fn pick(
    name: &'static str,
    choices: Vec<String>,
    chosen: impl Fn() -> Option<usize> + Copy + Send + Sync + 'static,
    take: impl Fn(usize) + Copy + Send + Sync + 'static,
) -> AnyView {
    let (chosen, take) = (Signal::derive(chosen), Callback::new(take));
    view! { <Pick name choices chosen take /> }.into_any()
}

#[component]
fn Pick(
    name: &'static str,
    choices: Vec<String>,
    chosen: Signal<Option<usize>>,
    take: Callback<usize>,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let choices = StoredValue::new(choices);
    let value = text(move || {
        let at = chosen.get();
        choices.with_value(|all| {
            at.and_then(|at| all.get(at).cloned())
                .unwrap_or_else(|| "—".to_owned())
        })
    });
    let tiles: Piece = piece(move || {
        if !open.get() {
            return ().into_any();
        }
        let now = chosen.get();
        let tile = move |(at, words): (usize, String)| {
            let pressed = now == Some(at);
            let press = move |_| {
                open.set(false);
                take.run(at);
            };
            view! { <button role="radio" aria-checked=pressed.to_string() on:click=press>{words}</button> }
        };
        let tiles = choices
            .get_value()
            .into_iter()
            .enumerate()
            .map(tile)
            .collect_view();
        view! { <div class="tiles narrow" role="radiogroup" aria-label=name>{tiles}</div> }.into_any()
    });
    view! {
        <div class="pick">
            <button class="row-key" aria-expanded=text(move || open.get().to_string()) on:click=press(move || open.update(|o| *o = !*o))>
                <span class="quiet">{name}</span>
                <span class="figures">{value}</span>
            </button>
            {tiles}
        </div>
    }
}
