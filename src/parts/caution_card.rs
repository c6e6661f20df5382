//! Cautions: the level as a word, the danger, what to do, and for a stop the key that acknowledges it.

use super::dynamic::{each, piece, press, state};
use super::work_keys::rest;
use crate::bench::Bench;
use crate::device::place;
use crate::job::sheet::StepId;
use crate::job::situation::to_show;
use crate::trade::caution::{Caution, Level};
use leptos::prelude::*;
use std::collections::BTreeSet;

/// The cautions to mind now, at most three; those of a step are acknowledged in its record.
pub fn caution_list(step: Option<StepId>, cautions: Memo<Vec<Caution>>) -> AnyView {
    let bench = Bench::here();
    let acknowledged = Memo::new(move |_| {
        let step = step.map(|id| bench.progress.with(|progress| progress.step(id)));
        match step {
            // Gone when done: the danger is past.
            Some(step) if step.closed() => None,
            Some(step) => Some(step.acknowledged),
            None => Some(BTreeSet::new()),
        }
    });
    // The next card moves under the finger that acknowledged one.
    let resting = RwSignal::new(false);
    piece(move || {
        let Some(acknowledged) = acknowledged.get() else {
            return ().into_any();
        };
        let show = cautions.with(|all| to_show(all, &acknowledged));
        each(show.into_iter().enumerate(), |(place, caution)| {
            let read = acknowledged.contains(caution.id);
            card(bench, step, (place == 0, read), caution, resting)
        })
        .into_any()
    })
    .into_any()
}

/// One caution; the first has the way to all of them.
fn card(
    bench: Bench,
    step: Option<StepId>,
    (first, read): (bool, bool),
    caution: Caution,
    resting: RwSignal<bool>,
) -> AnyView {
    let stop = caution.level == Level::Stop;
    let word = if stop { "STOP" } else { "CARE" };
    let level = if stop && read {
        "STOP — acknowledged"
    } else {
        word
    };
    let Caution { danger, act, .. } = caution.clone();
    let key = step.filter(|_| stop && !read).map(|id| {
        let read = press(move || {
            if resting.get_untracked() {
                return;
            }
            rest(resting);
            bench.acknowledge(id, &caution);
        });
        view! {
            <button class="work-key" aria-disabled=state(move || resting.get()) on:click=read>
                "I have read it"
            </button>
        }
        .into_any()
    });
    let all = first.then(|| {
        view! {
            <button class="all" aria-label="all cautions" on:click=press(|| place::go("cautions"))>
                "all"
            </button>
        }
        .into_any()
    });
    // Two cautions are two landmarks: each is called by its danger.
    let name = format!("{word}: {danger}");
    view! {
        <section class="caution" class:stop=stop aria-label=name>
            {all}
            <p>
                <span class="level">{level}</span>
                " "
                <strong>{danger}</strong>
                " "
                {act}
            </p>
            {key}
        </section>
    }
    .into_any()
}
