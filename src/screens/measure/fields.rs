//! The fields of a calculation, one after the other.

use crate::bench::Bench;
use crate::job::measuring::{Calculation, Field, Takes};
use crate::job::text_form::thread::read;
use crate::parts::dynamic::{each, press, state, text, when, whether};
use crate::parts::field_table::number;
use crate::parts::picker::picker;
use crate::parts::thread_picker::thread_sheet;
use leptos::prelude::*;

/// All fields of a calculation.
pub fn fields(bench: Bench, calculation: &'static Calculation) -> AnyView {
    let all = each(calculation.fields, |field| one(bench, calculation, field));
    view! { <div class="two">{all}</div> }.into_any()
}

fn one(bench: Bench, calculation: &'static Calculation, field: &'static Field) -> AnyView {
    match field.takes {
        Takes::Number(..) => figure(bench, calculation, field),
        Takes::Choice(offered) => {
            let words = offered.iter().map(|words| (*words).to_owned()).collect();
            let pick = Callback::new(move |at: usize| {
                if let Some(word) = offered.get(at) {
                    choose(bench, calculation, field, word);
                }
            });
            picker(field.name, word(bench, calculation, field), words, pick)
        }
        Takes::Thread => thread(bench, calculation, field),
        Takes::Words | Takes::Line(_) => typed(bench, calculation, field),
    }
}

fn figure(bench: Bench, calculation: &'static Calculation, field: &'static Field) -> AnyView {
    let value = text(move || bench.settings.with(|s| s.measure.shown(calculation, field)));
    let unit = text(move || {
        let inch = bench.settings.with(|s| s.measure.inch);
        field.symbol(inch).to_owned()
    });
    let take = Callback::new(move |typed: f64| {
        let mut measure = bench.settings.with_untracked(|s| s.measure.clone());
        measure.type_number(calculation, field, typed)?;
        bench.set(field.name, |s| s.measure = measure);
        Ok(())
    });
    number(field.name, unit, value, field.signed(), take)
}

fn choose(bench: Bench, calculation: &'static Calculation, field: &'static Field, word: &str) {
    bench.set(field.name, |s| s.measure.choose(calculation, field, word));
}

fn word(bench: Bench, calculation: &'static Calculation, field: &'static Field) -> Signal<String> {
    text(move || bench.settings.with(|s| s.measure.word(calculation, field)))
}

/// Words: kept as they are typed, whatever the answer says to them; hidden where they aren't asked for.
fn typed(bench: Bench, calculation: &'static Calculation, field: &'static Field) -> AnyView {
    let value = word(bench, calculation, field);
    let label = text(move || {
        let label = bench.settings.with(|s| calculation.label(&s.measure, field));
        label.unwrap_or_default()
    });
    let take = move |event| choose(bench, calculation, field, event_target_value(&event).trim());
    view! {
        <div class="in-words" hidden=whether(move || label.with(String::is_empty))>
            <label>
                {label}
                <input type="text" autocomplete="off" prop:value=value on:change=take />
            </label>
        </div>
    }
    .into_any()
}

/// A thread: the key shows it and opens the sheet to choose from.
fn thread(bench: Bench, calculation: &'static Calculation, field: &'static Field) -> AnyView {
    let open = RwSignal::new(false);
    let value = word(bench, calculation, field);
    let take = move |words: &str| {
        let name = read(words)?.map_or(String::new(), |thread| thread.name());
        choose(bench, calculation, field, &name);
        open.try_set(false);
        Ok(())
    };
    let sheet = when(
        move || open.get(),
        move || {
            let in_use = bench.threads_in_use();
            thread_sheet("Which thread?".to_owned(), in_use, take, move || open.set(false))
        },
    );
    let shown = text(move || match value.get() {
        none if none.is_empty() => "—".to_owned(),
        name => name,
    });
    view! {
        <div class="field chosen">
            <span>{field.name}</span>
            <button
                aria-expanded=state(move || open.get())
                aria-label=text(move || format!("{}: {}", field.name, value.get()))
                on:click=press(move || open.update(|open| *open = !*open))
            >
                {shown}
            </button>
            {sheet}
        </div>
    }
    .into_any()
}
