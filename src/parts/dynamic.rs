//! Changing text and changing pieces of view, each as one type: a bare closure in a view makes the
//! framework compile a renderer of its own for it, and hundreds of them were a third of the page.

use leptos::prelude::*;

/// A piece of view that changes.
pub type Piece = Box<dyn FnMut() -> AnyView + Send>;

/// Text that changes.
pub fn text(words: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(words)
}

/// View that changes: `piece(move || view! { … }.into_any())`.
pub fn piece(view: impl FnMut() -> AnyView + Send + 'static) -> Piece {
    Box::new(view)
}

/// A yes or no that changes, for attributes and classes.
pub fn whether(it_is: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(it_is)
}
