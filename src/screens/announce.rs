//! What a screen reader is told, and the tab's title: which screen is up, and what was just done, once.

use super::Route;
use crate::bench::Bench;
use crate::parts::dynamic::{memo, text};
use leptos::prelude::*;

/// Stays on the page whatever screen is up: a region that comes with its words is not read.
#[component]
pub fn Announce(at: Memo<Route>) -> impl IntoView {
    let bench = Bench::here();
    // The name of the release stays behind it.
    let app = document().title();
    let screen = memo(move || match at.get() {
        Route::Step(id) | Route::PlanStep(id) | Route::TorqueOf(id) => bench.sheet.with(|sheet| {
            let step = sheet.step(id).zip(sheet.place(id));
            step.map_or(at.get().title().to_owned(), |(step, place)| {
                format!("{} {}", place + 1, step.title)
            })
        }),
        other => other.title().to_owned(),
    });
    Effect::new(move || document().set_title(&format!("{} · {app}", screen.get())));
    view! {
        <p class="unseen" role="status">{text(move || bench.heard.get())}</p>
    }
}
