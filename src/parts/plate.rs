//! The plate: the one number that matters, what it is, and what stands under it.

use super::dynamic::whether;
use leptos::prelude::*;

/// One number at the size the far view needs.
#[component]
pub fn Plate(
    /// What the number is: "set on Middle".
    #[prop(into)]
    says: Signal<String>,
    /// The number; a dash when there is none.
    #[prop(into)]
    number: Signal<String>,
    /// Its unit.
    #[prop(into)]
    unit: Signal<String>,
    /// The number must not be set: it is struck through, and the words say so.
    #[prop(optional, into)]
    barred: Signal<bool>,
    /// Lines under it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <section class="plate" class:barred=whether(move || barred.get()) aria-live="polite">
            <div class="says">{says}</div>
            <div class="number">
                <span class="value">{number}</span>
                <span class="unit">{unit}</span>
            </div>
            {children.map(|children| children())}
        </section>
    }
    .into_any()
}
