//! A caution: its level as a word, the danger, what to do, and for a stop the key that acknowledges it.

use super::dynamic::{press, text, when};
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
    let level = text(move || match stop && acknowledged.get() {
        true => format!("{word} — acknowledged"),
        false => word.to_owned(),
    });
    let key = when(
        move || stop && !acknowledged.get(),
        move || {
            let press = press(move || acknowledge.run(kept.get_value()));
            view! {
                <button class="work-key" on:click=press>
                    "I have read it"
                </button>
            }
            .into_any()
        },
    );
    view! {
        <section class="caution" class:stop=stop aria-label=word>
            <p>
                <span class="level">{level}</span>
                <strong>{caution.danger}</strong>
                " "
                {caution.act}
            </p>
            {key}
        </section>
    }
    .into_any()
}
