//! The plate: the one number that matters, what it is, and what stands under it.

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
    /// Lines under it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <section class="plate" aria-live="polite">
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
