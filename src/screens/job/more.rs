//! What can be done with a step besides its work: skip it, open it again, change its plan.

use crate::bench::{Bench, Intent};
use crate::job::gate;
use crate::job::progress::Status;
use crate::job::sheet::{Step, StepId};
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece};
use crate::parts::keys::{KeySpec, keys};
use crate::screens::Route;
use leptos::prelude::*;

/// The lesser keys at the end of a step.
#[component]
pub fn More(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let status = memo(move || {
        bench
            .progress
            .with(|progress| progress.touched(id).map_or(Status::Open, |step| step.status))
    });
    let skip = Callback::new(move |reason: String| {
        let outcome = bench.send(Intent::Skip { step: id, reason });
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    });
    let plan = move || KeySpec::new("change its plan", move || Route::PlanStep(id).go());
    // A fastening that was begun can be done again, whether it is closed or not; the key of the step
    // itself says so where bolts are too tight.
    let again = move || {
        let tallied = bench
            .progress
            .with(|progress| progress.touched(id).is_some_and(|step| !step.tallies.is_empty()));
        tallied.then(|| KeySpec::new("loosen and do again", move || bench.loosen(id)))
    };
    let depending = piece(move || depending(bench, id));
    let keys_of = piece(move || match status.get() {
        Status::Open => view! {
            <AskWords key="skip this step" label="Why it is skipped: this goes into the record." take=skip />
            {keys(again().into_iter().chain([plan()]).collect())}
        }
        .into_any(),
        Status::Done(_) | Status::Skipped(_) => {
            let open = KeySpec::new("open it again", move || bench.reopen(id));
            keys(again().into_iter().chain([open, plan()]).collect())
        }
    });
    view! { {depending} {keys_of} }.into_any()
}

/// The closed steps that stand on an open one as it was: each is opened by a touch of its own.
fn depending(bench: Bench, id: StepId) -> AnyView {
    let found = bench.sheet.with(|sheet| {
        bench.progress.with(|progress| {
            if progress.closed(id) {
                return Vec::new();
            }
            let steps = gate::depending(sheet, progress, id);
            steps.iter().map(|step| (step.id, step.title.clone())).collect()
        })
    });
    if found.is_empty() {
        return ().into_any();
    }
    let specs = found
        .into_iter()
        .map(|(id, title)| KeySpec::new(format!("open “{title}” again"), move || bench.reopen(id)));
    view! {
        <p>"Done while this step was closed, and waiting for it:"</p>
        {keys(specs.collect())}
    }
    .into_any()
}
