//! Cautions: the level as a word, the danger, what to do, and a stop stands alone until it is read.

use super::dynamic::{each, memo, piece, press};
use crate::bench::Bench;
use crate::device::place;
use crate::job::sheet::StepId;
use crate::job::situation::to_show;
use crate::trade::caution::{Caution, Level};
use crate::trade::quantity::in_mark;
use leptos::prelude::*;
use std::collections::BTreeSet;

/// The cautions to mind now, at most three; those of a step are acknowledged in its record.
///
/// While the step is `stopped` only the STOP that is to be read is shown; the step's big key says that it is.
pub fn caution_list(step: Option<StepId>, cautions: Memo<Vec<Caution>>, stopped: Signal<bool>) -> AnyView {
    let bench = Bench::here();
    let acknowledged = memo(move || {
        let step = step.map(|id| bench.progress.with(|progress| progress.step(id)));
        match step {
            // Gone when done: the danger is past.
            Some(step) if step.closed() => None,
            Some(step) => Some(step.acknowledged),
            None => Some(BTreeSet::new()),
        }
    });
    piece(move || {
        let Some(acknowledged) = acknowledged.get() else {
            return ().into_any();
        };
        let mut show = cautions.with(|all| to_show(all, &acknowledged));
        if stopped.get() {
            show.retain(|caution| caution.level == Level::Stop && !acknowledged.contains(caution.id));
            show.truncate(1);
        }
        each(show.into_iter().enumerate(), |(place, caution)| {
            let read = acknowledged.contains(caution.id);
            card((place == 0, read), caution)
        })
        .into_any()
    })
    .into_any()
}

/// One caution; the first has the way to all of them.
fn card((first, read): (bool, bool), caution: Caution) -> AnyView {
    let stop = caution.level == Level::Stop;
    let word = if stop { "STOP" } else { "CARE" };
    let level = if stop && read {
        "STOP — acknowledged"
    } else {
        word
    };
    let Caution { danger, act, .. } = caution;
    let act = in_mark(act);
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
    // A long one shrinks until it stands whole on its stage.
    let letters = (level.len() + danger.chars().count() + act.chars().count()).to_string();
    view! {
        <section class="caution" class:stop=stop class:read=read style=("--letters", letters) aria-label=name>
            {all}
            <p>
                <span class="level">{level}</span>
                " "
                <strong>{danger}</strong>
                " "
                {act}
            </p>
        </section>
    }
    .into_any()
}
