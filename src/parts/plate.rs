//! The plate: the one number that matters, what it is, and what stands under it.

use super::dynamic::{each, press, text, when, whether};
use super::sheet::sheet;
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
    /// Tells how the number came about, at a touch of it.
    #[prop(optional_no_strip)]
    how: Option<Callback<()>>,
    /// Lines under it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    // How wide it is in its own ems: a longer number shrinks, and its place stays as it is.
    let wide = text(move || {
        let letters = |signal: Signal<String>| signal.with(|words| words.chars().count()) as f64;
        format!("{:.2}", 0.1 + 0.5 * letters(number) + 0.17 * letters(unit))
    });
    view! {
        <section class="plate" class:barred=whether(move || barred.get()) style=("--wide", wide) aria-live="polite">
            <div class="says">{says}</div>
            {match how {
                None => view! { <div class="number"><span class="value">{number}</span> <span class="unit">{unit}</span></div> }.into_any(),
                Some(how) => view! {
                    <button class="number" on:click=press(move || how.run(()))>
                        <span class="value">{number}</span>
                        " "
                        <span class="unit">{unit}</span>
                        <span class="unseen">": how it comes about"</span>
                    </button>
                }.into_any(),
            }}
            {children.map(|children| children())}
        </section>
    }
    .into_any()
}

/// How the number of a plate comes about, as a sheet while `told`; `more` stands below the lines.
pub fn how_sheet(
    told: RwSignal<bool>,
    lines: impl Fn() -> Vec<String> + Send + Sync + 'static,
    more: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let leave = move || told.set(false);
    let inside = move || {
        let inside = view! {
            <h2>"How the number comes about"</h2>
            {each(untrack(&lines), |line| view! { <p class="how-line">{line}</p> }.into_any())}
            {more()}
            <div class="sheet-foot"><button class="work-key" on:click=press(leave)>"back"</button></div>
        };
        sheet("how the number comes about".to_owned(), leave, inside.into_any())
    };
    view! { {when(move || told.get(), inside)} }.into_any()
}

/// A plate whose number tells how it comes about.
pub fn told_plate(
    says: String,
    number: String,
    unit: String,
    // It stays open while the number changes.
    told: RwSignal<bool>,
    lines: impl Fn() -> Vec<String> + Send + Sync + 'static,
) -> AnyView {
    let how = Callback::new(move |()| told.set(true));
    view! {
        <Plate says number unit how=Some(how) />
        {how_sheet(told, lines, || ().into_any())}
    }
    .into_any()
}
