//! A step's own words, and words as large as a number.

use crate::job::sheet::Step;
use leptos::prelude::*;

/// What to do, in the plan's own words.
pub fn notes(step: StoredValue<Step>) -> AnyView {
    view! { <p class="notes">{step.with_value(|step| step.notes.clone())}</p> }.into_any()
}

/// Words as large as a number.
pub fn big(large: String, small: String) -> AnyView {
    view! {
        <section class="plate words" aria-live="polite">
            <div class="large">{large}</div>
            <p class="mid">{small}</p>
        </section>
    }
    .into_any()
}
