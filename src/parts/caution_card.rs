//! A caution: its level as a word, the danger, what to do, and for a stop the key that acknowledges it.

use crate::trade::caution::{Caution, Level};
use leptos::prelude::*;

/// One caution of a step.
#[component]
pub fn CautionCard(
    /// The caution.
    caution: Caution,
    /// Whether it has been acknowledged.
    #[prop(into)]
    acknowledged: Signal<bool>,
    /// Acknowledges it.
    #[prop(into)]
    acknowledge: Callback<Caution>,
) -> impl IntoView {
    let stop = caution.level == Level::Stop;
    let word = if stop { "STOP" } else { "CARE" };
    let kept = StoredValue::new(caution.clone());
    view! {
        <section class="caution" class:stop=stop aria-label=word>
            <p class="level">{word}{move || if stop && acknowledged.get() { " — acknowledged" } else { "" }}</p>
            <p>
                <strong>{caution.danger}</strong>
                " "
                {caution.act}
            </p>
            <Show when=move || stop && !acknowledged.get()>
                <button class="work-key" on:click=move |_| acknowledge.run(kept.get_value())>
                    "I have read it"
                </button>
            </Show>
        </section>
    }
}
