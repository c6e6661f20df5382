//! Keys side by side: words and what each does, as plain data.

use super::dynamic::press;
use leptos::prelude::*;
use std::sync::Arc;

/// One key of a row.
#[derive(Clone)]
pub struct KeySpec {
    /// Its words.
    pub words: String,
    /// Pressed, where it is one of several to choose from.
    pub on: Option<bool>,
    /// What it does.
    pub press: Arc<dyn Fn() + Send + Sync>,
}

impl KeySpec {
    /// A key that does something.
    pub fn new(words: impl Into<String>, press: impl Fn() + Send + Sync + 'static) -> Self {
        Self {
            words: words.into(),
            on: None,
            press: Arc::new(press),
        }
    }

    /// A key that is on or off.
    pub fn choice(words: impl Into<String>, on: bool, press: impl Fn() + Send + Sync + 'static) -> Self {
        Self {
            on: Some(on),
            ..Self::new(words, press)
        }
    }
}

/// A row of keys, as many side by side as fit.
pub fn keys(specs: Vec<KeySpec>) -> AnyView {
    let keys: Vec<AnyView> = specs
        .into_iter()
        .map(|spec| {
            let pressed = spec.on.map(|on| on.to_string());
            view! {
                <button aria-pressed=pressed on:click=press(move || (spec.press)())>
                    {spec.words}
                </button>
            }
            .into_any()
        })
        .collect();
    view! { <div class="tiles pair">{keys}</div> }.into_any()
}
