//! The parts of a step: looked at before they go in.

use super::accept::accept;
use crate::bench::{Bench, Intent};
use crate::job::parts::Listed;
use crate::job::reading::What;
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece};
use crate::parts::keys::{KeySpec, keys};
use leptos::prelude::*;

/// The step's parts, each with a way to say that it is not fit.
pub fn parts_of(step: StepId) -> AnyView {
    let bench = Bench::here();
    let parts = memo(move || bench.parts_of(step));
    let listed = piece(move || {
        let all = parts.get();
        if all.is_empty() {
            return ().into_any();
        }
        let rows: Vec<AnyView> = all.into_iter().map(|part| part_row(bench, part)).collect();
        view! {
            <section class="step-parts" aria-label="parts of this step">
                <h2>"Parts"</h2>
                {rows}
            </section>
        }
        .into_any()
    });
    view! { {listed} }.into_any()
}

fn part_row(bench: Bench, part: Listed) -> AnyView {
    let (step, key, unfit) = (part.step, part.key, !part.unfit.is_empty());
    let judge = move |unfit: String| {
        let outcome = bench.send(Intent::Judge {
            step,
            part: key,
            unfit,
        });
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    };
    let wrong = Callback::new(move |words: String| !words.trim().is_empty() && judge(words));
    let new = if part.new_part { ", new" } else { "" };
    let ways = if unfit {
        view! {
            {accept(step, What::Part(key))}
            {keys(vec![KeySpec::new("a good one is in", move || {
                judge(String::new());
            })])}
        }
        .into_any()
    } else {
        view! { <AskWords key="it is not fit" label="What is wrong with it" take=wrong /> }.into_any()
    };
    view! {
        <div class="step-part">
            <p>
                {format!("{} × {}{new}", part.of, part.name)}
                <span class="quiet">{format!(" {}", part.words())}</span>
            </p>
            {ways}
        </div>
    }
    .into_any()
}
