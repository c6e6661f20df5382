//! A sheet over the lower part of the screen: it takes the focus and keeps it, Escape or a touch beside it leaves
//! it, and the focus goes back to the key that opened it.

use super::dynamic::Press;
use crate::device::focus;
use leptos::ev::{KeyboardEvent, MouseEvent};
use leptos::html::Div;
use leptos::prelude::*;
use std::rc::Rc;

/// What is `inside`, as a sheet.
pub fn sheet(name: String, leave: impl Fn() + 'static, inside: AnyView) -> AnyView {
    over_the_screen(name, Box::new(leave), inside)
}

fn over_the_screen(name: String, leave: Box<dyn Fn()>, inside: AnyView) -> AnyView {
    focus::return_later();
    let here = NodeRef::<Div>::new();
    let leave: Rc<dyn Fn()> = leave.into();
    let beside = Rc::clone(&leave);
    let touched: Press = Box::new(move |event: MouseEvent| {
        if here
            .get_untracked()
            .is_some_and(|here| focus::is_beside(&here, &event))
        {
            beside();
        }
    });
    here.on_load(|here| {
        here.focus().ok();
    });
    let keyed = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            event.stop_propagation();
            leave();
        } else if let Some(here) = here.get_untracked() {
            focus::keep_inside(&here, &event);
        }
    };
    view! {
        <div class="sheet" role="dialog" aria-modal="true" aria-label=name tabindex="-1" node_ref=here on:keydown=keyed on:click=touched>
            {inside}
        </div>
    }
    .into_any()
}
