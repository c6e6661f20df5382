//! A field of a form, by its kind.

use crate::bench::Bench;
use crate::job::field::{Entry, Shown};
use crate::job::sheet::StepId;
use crate::parts::dynamic::{derive, piece, press, text, when};
use crate::parts::keypad::TorqueKeypad;
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::parts::sheet::sheet;
use crate::parts::thread_picker::thread_sheet;
use crate::trade::quantity::{TorqueUnit, in_mark, parse_torque};
use leptos::prelude::*;

/// One row of the form of that step.
pub fn field_row(bench: Bench, step: StepId, field: Shown) -> AnyView {
    let id = StoredValue::new(field.id.clone());
    let set = move |value: &str| {
        id.with_value(|id| bench.edit_step(step, id, value))
            .map_err(|refused| refused.to_string())
    };
    let told = move |value: &str| {
        if let Err(words) = set(value) {
            bench.refuse(words);
        }
    };
    let label = field.label.clone();
    match field.entry {
        Entry::Head => view! { <h2>{label}</h2> }.into_any(),
        Entry::Said => view! { <p class="trouble-line">{label}</p> }.into_any(),
        Entry::Press => keys(vec![KeySpec::new(label, move || told("yes"))]),
        Entry::Flag => {
            let on = field.value == "yes";
            keys(vec![KeySpec::choice(
                format!("{label}: {}", field.value),
                on,
                move || {
                    told(if on { "no" } else { "yes" });
                },
            )])
        }
        // Several sentences are read whole, not through a slit.
        Entry::Words if field.id == "notes" => view! {
            <label>
                {label}
                <textarea rows="2" prop:value=field.value on:change=move |event| told(&event_target_value(&event))></textarea>
            </label>
        }
        .into_any(),
        Entry::Words => view! {
            <label>
                {label}
                <input
                    type="text"
                    autocomplete="off"
                    prop:value=field.value
                    on:focus=select_all
                    on:change=move |event| told(&event_target_value(&event))
                />
            </label>
        }
        .into_any(),
        Entry::Number { unit, optional } => {
            let clear = (optional && !field.value.is_empty())
                .then(|| keys(vec![KeySpec::new(format!("{label}: none"), move || told(""))]));
            let value = field.value.clone();
            // Its digits count as they are typed: .0300 is not .03.
            let typed = RwSignal::new(String::new());
            view! {
                <NumberField
                    name=label
                    unit=Signal::stored(unit.to_owned())
                    value=Signal::stored(value)
                    signed=true
                    typed
                    take=move |_: f64| set(&typed.get_untracked())
                />
                {clear}
            }
            .into_any()
        }
        Entry::Torque => {
            let first = torque_unit(&field.value);
            opened(label, field.value, move |open| {
                torque_sheet("What does the manual say?".to_owned(), first, set, move || {
                    open.set(false)
                })
            })
        }
        Entry::Thread => opened(label, field.value, move |open| {
            let take = move |words: &str| {
                set(words)?;
                open.try_set(false);
                Ok(())
            };
            let asked = "Which thread?".to_owned();
            thread_sheet(asked, bench.threads_in_use(), take, move || open.set(false))
        }),
        Entry::Choice(offered) => opened(label, field.value, move |open| {
            choose(offered.clone(), move |value| {
                told(&value);
                open.try_set(false);
            })
        }),
    }
}

/// What stands there is written over at once: a made-up name is not deleted letter by letter.
fn select_all(event: leptos::ev::FocusEvent) {
    event_target::<web_sys::HtmlInputElement>(&event).select();
}

/// A key with a field's value that opens what changes it.
fn opened(
    label: String,
    value: String,
    inside: impl Fn(RwSignal<bool>) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let open = RwSignal::new(false);
    let more = piece(move || if open.get() { inside(open) } else { ().into_any() });
    view! {
        <div class="field">
            <span>{label.clone()}</span>
            <button
                aria-label=format!("{label}: {value}")
                aria-expanded=derive(move || open.get().to_string())
                on:click=press(move || open.update(|open| *open = !*open))
            >
                <span>{value.clone()}</span>
                <span class="quiet" aria-hidden="true">"▾"</span>
            </button>
            {more}
        </div>
    }
    .into_any()
}

/// One of several.
pub fn choose(
    offered: Vec<(String, String)>,
    take: impl Fn(String) + Send + Sync + Clone + 'static,
) -> AnyView {
    let specs = offered.into_iter().map(|(value, words)| {
        let take = take.clone();
        KeySpec::new(words, move || take(value.clone()))
    });
    keys(specs.collect())
}

/// The unit a torque is written in.
fn torque_unit(text: &str) -> TorqueUnit {
    parse_torque(text, None).map_or(TorqueUnit::NewtonMetre, |statement| statement.unit)
}

/// A torque on the keypad, beginning in that unit, or in the manual's own words with its tolerance.
pub fn torque_sheet(
    asked: String,
    first: TorqueUnit,
    take: impl Fn(&str) -> Result<(), String> + Send + Sync + 'static,
    leave: impl Fn() + Clone + Send + Sync + 'static,
) -> AnyView {
    let typed = RwSignal::new(String::new());
    let words = RwSignal::new(String::new());
    let in_words = RwSignal::new(false);
    let unit = RwSignal::new(first);
    let trouble = RwSignal::new(String::new());
    let name = asked.clone();
    let go = move |_| {
        let own = words.get_untracked();
        let text = if own.trim().is_empty() {
            format!("{} {}", typed.get_untracked(), unit.get_untracked().symbol())
        } else {
            own
        };
        if let Err(words) = take(&text) {
            trouble.try_set(words);
        }
    };
    let own_words = when(
        move || in_words.get(),
        move || {
            view! {
                <label>
                    "in the manual’s words: 9 ± 1 N·m"
                    <input
                        type="text"
                        autocomplete="off"
                        prop:value=words
                        on:input=move |event| words.set(event_target_value(&event))
                    />
                </label>
            }
            .into_any()
        },
    );
    let escape = leave.clone();
    let inside = view! {
        <div class="entry">
            <span class="quiet">{asked}</span>
            <span class="typed" aria-live="polite">{text(move || in_mark(&typed.get()))} " " {derive(move || unit.get().symbol())}</span>
        </div>
        <p class="trouble-line" role="alert">{trouble}</p>
        <TorqueKeypad typed unit clearing=|()| () words=move |()| in_words.set(true) />
        {own_words}
        <button class="work-key first" on:click=go>"use"</button>
        <button on:click=press(leave)>"cancel"</button>
    };
    sheet(name, escape, inside.into_any())
}
