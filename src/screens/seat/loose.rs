//! The way on to Bond where the fit is loose.

use crate::bench::Bench;
use crate::job::kinds::seat;
use crate::parts::dynamic::{memo, piece, press};
use crate::parts::seat::Answered;
use crate::screens::Route;
use leptos::prelude::*;

/// A key that opens Bond with the gap and the metals filled in; nothing where the fit is tight.
pub fn loose_key(answered: Answered) -> AnyView {
    let bench = Bench::here();
    let walk = memo(move || {
        answered.with(|found| match found {
            Some((seat, Ok(answer))) => seat::loose(seat, answer),
            _ => None,
        })
    });
    let open = move || {
        if let Some(loose) = walk.get_untracked() {
            bench.walk("loose fit", |walk| *walk = loose);
            Route::Bond(None).go();
        }
    };
    let shown = memo(move || walk.with(Option::is_some));
    piece(move || {
        if shown.get() {
            view! {
                <button class="side-key" on:click=press(open)>
                    "It is loose: what holds it"
                </button>
            }
            .into_any()
        } else {
            ().into_any()
        }
    })
    .into_any()
}
