//! Whether what is filled in reaches a step's joint: told at the bench by one touch.

use crate::bench::Bench;
use crate::job::gate::wetted;
use crate::job::sheet::StepId;
use crate::parts::dynamic::{memo, piece, press};
use leptos::prelude::*;

/// Says whether a fill waits for the joint of that step, and turns it; nothing where nothing cures.
#[component]
pub fn WettedKey(step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let wet = memo(move || bench.sheet.with(|sheet| sheet.step(step).and_then(wetted)));
    piece(move || {
        let Some(wet) = wet.get() else {
            return ().into_any();
        };
        let words = if wet {
            "fluid reaches it: a fill waits for its cure"
        } else {
            "no fluid reaches it: a fill need not wait"
        };
        view! { <button on:click=press(move || bench.wet_joint(step, !wet))>{words}</button> }.into_any()
    })
}
