//! Choice tiles: one of a few, by a touch.

use super::dynamic::{piece, press};
use leptos::prelude::*;

/// One tile.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tile {
    /// What a touch tells.
    pub id: String,
    /// Its words.
    pub words: String,
    /// A second, quieter line.
    pub small: String,
    /// It is the one chosen.
    pub on: bool,
}

impl Tile {
    /// A tile of one line.
    pub fn new(id: impl Into<String>, words: impl Into<String>, on: bool) -> Self {
        Self {
            id: id.into(),
            words: words.into(),
            small: String::new(),
            on,
        }
    }
}

/// A group of tiles of which one is chosen.
#[component]
pub fn ChoiceTiles(
    /// What is chosen.
    #[prop(into)]
    name: String,
    /// The tiles.
    #[prop(into)]
    tiles: Signal<Vec<Tile>>,
    /// Told the id of the tile touched.
    #[prop(into)]
    press: Callback<String>,
) -> impl IntoView {
    view! {
        <div class="tiles" role="radiogroup" aria-label=name>
            {piece(move || tiles.get().into_iter().map(|tile| one(tile, press)).collect::<Vec<_>>().into_any())}
        </div>
    }
}

fn one(tile: Tile, take: Callback<String>) -> AnyView {
    let Tile { id, words, small, on } = tile;
    view! {
        <button role="radio" aria-checked=on.to_string() on:click=press(move || take.run(id.clone()))>
            {words}
            {(!small.is_empty()).then(|| view! { <small>{small}</small> }.into_any())}
        </button>
    }
    .into_any()
}
