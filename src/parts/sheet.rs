//! A sheet over the lower part of the screen: it takes the focus, Escape leaves it, and the focus
//! goes back to the key that opened it.

use crate::device::focus;
use leptos::ev::KeyboardEvent;
use leptos::html::Div;
use leptos::prelude::*;

/// What is `inside`, as a sheet.
pub fn sheet(name: String, leave: impl Fn() + 'static, inside: AnyView) -> AnyView {
    focus::return_later();
    let here = NodeRef::<Div>::new();
    here.on_load(|here| {
        here.focus().ok();
    });
    let keyed = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            leave();
        }
    };
    view! {
        <div class="sheet" role="dialog" aria-label=name tabindex="-1" node_ref=here on:keydown=keyed>
            {inside}
        </div>
    }
    .into_any()
}
