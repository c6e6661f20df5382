//! A number with its unit, typed on our keypad; what was typed stays until it is a number.

use super::dynamic::{press, state, text, when};
use super::keypad::NumberKeypad;
use super::sheet::sheet;
use super::typed::read_number;
use crate::trade::quantity::in_mark;
use leptos::prelude::*;

/// Whether the keypad of the one reading a step asks for is open: its big key opens it too.
#[derive(Clone, Copy)]
pub struct ReadingOpen(pub RwSignal<bool>);

/// A field that shows a number and opens the keypad when touched. `take` judges and keeps the number;
/// its refusal is shown and what was typed stays.
#[component]
pub fn NumberField(
    /// What it is.
    #[prop(into)]
    name: String,
    /// Its unit's symbol.
    #[prop(into)]
    unit: Signal<String>,
    /// What is kept now, as shown; empty for none.
    #[prop(into)]
    value: Signal<String>,
    /// Judges and keeps a number.
    #[prop(into)]
    take: Callback<f64, Result<(), String>>,
    /// Whether a minus sign makes sense.
    #[prop(optional)]
    signed: bool,
    /// What is typed, for who wants its digits too and not the number alone.
    #[prop(optional)]
    typed: Option<RwSignal<String>>,
    /// The step asks for this one: its big key opens the keypad too.
    #[prop(optional)]
    asked: bool,
    /// Turns to the next unit it may be read in, where there is another.
    #[prop(optional_no_strip)]
    turn: Option<Callback<()>>,
) -> impl IntoView {
    let own = RwSignal::new(false);
    let open = match use_context::<ReadingOpen>() {
        Some(ReadingOpen(open)) if asked => open,
        _ => own,
    };
    let typed = typed.unwrap_or_else(|| RwSignal::new(String::new()));
    let trouble = RwSignal::new(None::<String>);
    let label = StoredValue::new(name);
    let try_take = move |()| match read_number(&typed.get_untracked()).and_then(|number| take.run(number)) {
        Ok(()) => {
            trouble.set(None);
            typed.set(String::new());
            open.set(false);
        }
        Err(words) => trouble.set(Some(words)),
    };
    let pad = when(
        move || open.get(),
        move || {
            let shown = text(move || format!("{} {}", in_mark(&typed.get()), unit.get()));
            let why = text(move || trouble.get().unwrap_or_default());
            let inside = view! {
                <div class="entry">
                    <span class="quiet">{label.get_value()}</span>
                    <span class="typed" aria-live="polite">
                        {shown}
                    </span>
                </div>
                <p class="trouble" role="alert">
                    {why}
                </p>
                <NumberKeypad typed take=try_take signed />
                {leave(open, turn.map(|turn| unit_key(unit, turn)))}
            };
            sheet(label.get_value(), move || open.set(false), inside.into_any())
        },
    );
    let shown = text(move || {
        if value.get().is_empty() {
            "—".to_owned()
        } else {
            value.get()
        }
    });
    let named = text(move || format!("{}: {} {}", label.get_value(), value.get(), unit.get()));
    view! {
        <div class="field" class:ringed=asked>
            <span>{label.get_value()}</span>
            <button
                aria-expanded=state(move || open.get())
                aria-label=named
                on:click=press(move || open.update(|open| *open = !*open))
            >
                <span>{shown}</span>
                " "
                <span class="quiet">{unit}</span>
            </button>
            {pad}
        </div>
    }
    .into_any()
}

/// Leaves it as it was, beside what turns its unit where there is such.
fn leave(open: RwSignal<bool>, turn: Option<AnyView>) -> AnyView {
    let leave = view! { <button on:click=press(move || open.set(false))>"cancel"</button> };
    match turn {
        None => leave.into_any(),
        Some(turn) => view! { <div class="two">{leave} {turn}</div> }.into_any(),
    }
}

/// The unit that is typed in; a press turns to the next.
fn unit_key(unit: Signal<String>, turn: Callback<()>) -> AnyView {
    let named = text(move || format!("read in {}: turn to another unit", unit.get()));
    view! {
        <button aria-label=named on:click=press(move || turn.run(()))>
            "read in " {unit} " ⇄"
        </button>
    }
    .into_any()
}
