//! What can be done with a step besides its work: leave it out, open it again, change its plan.

use crate::bench::{Bench, Intent};
use crate::job::progress::Status;
use crate::job::sheet::Step;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::piece;
use crate::parts::keys::{KeySpec, keys};
use crate::screens::Route;
use leptos::prelude::*;

/// The lesser keys at the end of a step.
#[component]
pub fn More(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let status = Memo::new(move |_| {
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
    piece(move || {
        match status.get() {
        Status::Open => view! {
            <AskWords key="leave this step out" label="Why it is left out: this goes into the record." take=skip />
            {keys(vec![plan()])}
        }
        .into_any(),
        Status::Done(_) | Status::Skipped(_) => {
            keys(vec![KeySpec::new("open it again", move || bench.reopen(id)), plan()])
        }
    }
    })
}
