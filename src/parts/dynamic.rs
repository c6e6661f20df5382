//! Changing text, changing pieces of view and presses, each as one type: a bare closure in a view or a signal
//! makes the framework compile a renderer of its own for it, and they were a third of the page.

use leptos::ev::MouseEvent;
use leptos::html::Div;
use leptos::prelude::*;
use web_sys::{ScrollIntoViewOptions, ScrollLogicalPosition};

/// A piece of view that changes.
pub type Piece = Box<dyn FnMut() -> AnyView + Send>;

/// What a touch does.
pub type Press = Box<dyn FnMut(MouseEvent)>;

/// Text that changes.
pub fn text(words: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    derived(Box::new(words))
}

/// What is worked out whenever it is asked for.
pub fn derive<T: Send + Sync + 'static>(it: impl Fn() -> T + Send + Sync + 'static) -> Signal<T> {
    derived(Box::new(it))
}

/// What is worked out once for each change, and tells only of another answer.
pub fn memo<T: PartialEq + Send + Sync + 'static>(it: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    remembered(Box::new(it))
}

#[inline(never)]
fn remembered<T: PartialEq + Send + Sync + 'static>(it: Box<dyn Fn() -> T + Send + Sync>) -> Memo<T> {
    Memo::new(move |_| it())
}

/// One for all: the framework's own way is made anew for each closure's type.
#[inline(never)]
fn derived<T: Send + Sync + 'static>(it: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T> {
    Signal::derive(it)
}

/// A yes or no that changes, for attributes and classes.
pub fn whether(it_is: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    derived(Box::new(it_is))
}

/// An ARIA state that changes: "true" or "false".
pub fn state(it_is: impl Fn() -> bool + Send + Sync + 'static) -> Signal<String> {
    derived(Box::new(move || it_is().to_string()))
}

/// View that changes: `piece(move || view! { … }.into_any())`.
pub fn piece(view: impl FnMut() -> AnyView + Send + 'static) -> Piece {
    Box::new(view)
}

/// View that is there while something holds.
pub fn when(
    it_is: impl Fn() -> bool + Send + Sync + 'static,
    view: impl FnMut() -> AnyView + Send + 'static,
) -> Piece {
    while_it_holds(Box::new(it_is), Box::new(view))
}

fn while_it_holds(it_is: Box<dyn Fn() -> bool + Send + Sync>, mut view: Piece) -> Piece {
    // The memo keeps the piece while the answer stays the same.
    let holds = remembered(it_is);
    Box::new(move || if holds.get() { view() } else { ().into_any() })
}

/// What a touch does.
pub fn press(mut act: impl FnMut() + 'static) -> Press {
    Box::new(move |_| act())
}

/// A row of views of one kind.
pub fn each<T>(items: impl IntoIterator<Item = T>, view: impl FnMut(T) -> AnyView) -> Vec<AnyView> {
    items.into_iter().map(view).collect()
}

/// A row of a list: what tells it from the others, what it says included, and its view.
pub struct Row {
    key: String,
    view: Box<dyn FnOnce() -> AnyView + Send>,
}

/// A row whose view is made only when its key is new in the list.
pub fn row(key: String, view: impl FnOnce() -> AnyView + Send + 'static) -> Row {
    let view = Box::new(view);
    Row { key, view }
}

/// A list that changes: rows whose keys stay keep their place on the page and their focus.
pub fn rows(list: impl Fn() -> Vec<Row> + Send + Sync + 'static) -> AnyView {
    let list: Box<dyn Fn() -> Vec<Row> + Send + Sync> = Box::new(list);
    let key = |row: &Row| row.key.clone();
    let children = |row: Row| (row.view)();
    view! { <For each=list key children /> }.into_any()
}

/// For a form that opens: it comes into sight from its top, wherever the key stood that opened it.
pub fn from_its_top() -> NodeRef<Div> {
    let here = NodeRef::<Div>::new();
    here.on_load(|here| here.scroll_into_view());
    here
}

/// For a few lines that open: they come into sight whole, and nothing moves more than it must.
pub fn in_sight() -> NodeRef<Div> {
    let here = NodeRef::<Div>::new();
    here.on_load(|here| {
        let options = ScrollIntoViewOptions::new();
        options.set_block(ScrollLogicalPosition::Nearest);
        here.scroll_into_view_with_scroll_into_view_options(&options);
    });
    here
}
