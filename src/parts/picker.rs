//! One of a few: a key that shows what is chosen and opens the tiles to choose from.

use super::dynamic::{piece, press, text};
use super::sheet::sheet;
use leptos::prelude::*;

/// A choice by place: `chosen` tells which of `options` holds, `take` the one that is touched.
pub fn pick(
    name: &'static str,
    options: Vec<String>,
    chosen: impl Fn() -> Option<usize> + Send + Sync + 'static,
    take: impl Fn(usize) + Send + Sync + 'static,
) -> AnyView {
    let known = options.clone();
    let value = text(move || {
        let words = chosen().and_then(|at| known.get(at).cloned());
        words.unwrap_or_else(|| "—".to_owned())
    });
    picker(name, value, options, Callback::new(take))
}

/// A choice among `options`; `value` is the words of the one that holds.
pub fn picker(
    name: &'static str,
    value: Signal<String>,
    options: Vec<String>,
    pick: Callback<usize>,
) -> AnyView {
    let open = RwSignal::new(false);
    let options = StoredValue::new(options);
    let tiles = move || {
        let holds = value.get_untracked();
        options
            .get_value()
            .into_iter()
            .enumerate()
            .map(|(at, words)| {
                let checked = (words == holds).to_string();
                let choose = move |_| {
                    open.set(false);
                    pick.run(at);
                };
                view! {
                    <button role="radio" aria-checked=checked on:click=choose>
                        {words}
                    </button>
                }
                .into_any()
            })
            .collect::<Vec<_>>()
    };
    let opened = piece(move || {
        if !open.get() {
            return ().into_any();
        }
        let inside = view! {
            <p class="quiet">{name}</p>
            <div class="tiles" role="radiogroup" aria-label=name>
                {tiles()}
            </div>
            <button on:click=press(move || open.set(false))>"cancel"</button>
        };
        sheet(name.to_owned(), move || open.set(false), inside.into_any())
    });
    view! {
        <div class="field chosen">
            <span>{name}</span>
            <button
                aria-expanded=text(move || open.get().to_string())
                aria-label=text(move || format!("{name}: {}", value.get()))
                on:click=press(move || open.update(|open| *open = !*open))
            >
                {value}
            </button>
            {opened}
        </div>
    }
    .into_any()
}
