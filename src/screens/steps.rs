//! All steps of the job: what is done, what is next.

use crate::bench::Bench;
use crate::job::sheet::Step;
use crate::screens::Route;
use leptos::prelude::*;

/// The list of steps.
#[component]
pub fn StepsScreen() -> impl IntoView {
    let bench = Bench::here();
    let heading = move || {
        bench
            .sheet
            .with(|sheet| (sheet.title.clone(), sheet.machine.clone()))
    };
    let counted = move || {
        bench.sheet.with(|sheet| {
            let done = bench.progress.with(|progress| progress.closed_count(sheet));
            format!("{done} of {} done", sheet.steps.len())
        })
    };
    view! {
        <div class="page">
            <h1>{move || heading().0}</h1>
            <p class="quiet">{move || heading().1}</p>
            <p class="mid figures">{counted}</p>
            <ol class="step-list">
                {move || bench.sheet.with(|sheet| sheet.steps.iter().enumerate().map(|(at, step)| row(bench, at, step)).collect_view())}
            </ol>
        </div>
    }
}

fn row(bench: Bench, at: usize, step: &Step) -> impl IntoView + use<> {
    let id = step.id;
    let state = move || {
        let next = bench
            .sheet
            .with(|sheet| bench.progress.with(|p| p.next_open(sheet).map(|step| step.id)));
        if bench.progress.with(|progress| progress.closed(id)) {
            "done"
        } else if next == Some(id) {
            "next"
        } else {
            ""
        }
    };
    view! {
        <li>
            <button aria-current=move || (state() == "next").then_some("step") on:click=move |_| Route::Step(id).go()>
                <span class="figures">{at + 1}</span>
                <span>{step.title.clone()}</span>
                <span class="quiet">{move || if state().is_empty() { step_word(bench, id) } else { state() }}</span>
            </button>
        </li>
    }
}

fn step_word(bench: Bench, id: crate::job::sheet::StepId) -> &'static str {
    bench
        .sheet
        .with(|sheet| sheet.step(id).map_or("", |step| step.work.word()))
}
