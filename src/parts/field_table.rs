//! A table of numbers to ask for, drawn as fields.

use super::dynamic::{text, whether};
use super::number_field::NumberField;
use crate::bench::Bench;
use crate::job::field::Number;
use leptos::prelude::*;

/// A field that shows a number and opens the keypad: one compiled form of it for all tables.
pub fn number(
    name: &'static str,
    unit: Signal<String>,
    value: Signal<String>,
    signed: bool,
    take: Callback<f64, Result<(), String>>,
) -> AnyView {
    view! { <NumberField name unit value take=move |number| take.run(number) signed /> }.into_any()
}

/// The fields of `table` for the `T` at hand; a field that reads nothing now is hidden. What `change` refuses
/// stays typed.
pub fn field_table<T: Clone + PartialEq + Send + Sync + 'static>(
    table: &'static [Number<T>],
    at_hand: Memo<Option<T>>,
    change: Callback<(&'static Number<T>, f64), Result<(), String>>,
) -> AnyView {
    let bench = Bench::here();
    let figures = move || bench.figures();
    let one = |field: &'static Number<T>| {
        let kept = move || at_hand.with(|now| now.as_ref().and_then(field.get));
        let value = text(move || kept().map_or(String::new(), |kept| field.kept.text(kept, figures())));
        let unit = text(move || field.kept.symbol(figures()).to_owned());
        let take = Callback::new(move |typed: f64| {
            let kept = field.judge(typed, untrack(figures))?;
            change.run((field, kept))
        });
        view! {
            <div hidden=whether(move || kept().is_none())>
                {number(field.name, unit, value, field.signed(), take)}
            </div>
        }
        .into_any()
    };
    table.iter().map(one).collect::<Vec<_>>().into_any()
}
