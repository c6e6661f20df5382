//! What in a plan doesn't go together, said where the plan is made and where it would happen.

use super::dynamic::{memo, piece};
use crate::bench::Bench;
use crate::job::sheet::StepId;
use leptos::prelude::*;

/// The sentences of one step, or of the whole plan; nothing where all goes together.
pub fn not_together(bench: Bench, step: Option<StepId>) -> AnyView {
    let all = memo(move || bench.conflicts(step));
    let said = piece(move || {
        let all = all.get();
        if all.is_empty() {
            return ().into_any();
        }
        let lines: Vec<AnyView> = all
            .into_iter()
            .map(|(_, words)| view! { <p>{words}</p> }.into_any())
            .collect();
        view! {
            <section class="finding" aria-label="what does not go together">
                <h2>"This can’t be done as planned"</h2>
                {lines}
            </section>
        }
        .into_any()
    });
    view! { {said} }.into_any()
}
