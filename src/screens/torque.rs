//! Torque: a value in the manual's unit, the number for the wrench in the hand.

use crate::bench::Bench;
use crate::job::answer::{self, TorqueAnswer};
use crate::parts::keypad::TorqueKeypad;
use crate::parts::plate::Plate;
use crate::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque};
use leptos::prelude::*;

/// The quick conversion.
#[component]
pub fn TorqueScreen() -> impl IntoView {
    let bench = Bench::here();
    let (words, first_unit) = bench
        .settings
        .with_untracked(|s| (s.torque_typed.clone(), s.torque_unit));
    let typed = RwSignal::new(words);
    let unit = RwSignal::new(first_unit);
    let read = Memo::new(move |_| typed.with(|text| read_typed(text, unit.get())));
    let answer = Memo::new(move |_| {
        read.get().ok().map(|statement| {
            bench
                .settings
                .with(|s| answer::torque(statement.torque(), statement.unit, &s.wrenches, s.in_hand))
        })
    });
    Effect::new(move |before: Option<()>| {
        let (text, unit) = (typed.get(), unit.get());
        if before.is_some() {
            bench.note(|settings| (settings.torque_typed, settings.torque_unit) = (text, unit));
        }
    });
    view! {
        <div class="torque">
            <div class="shown">
                <div class="entry">
                    <span class="quiet">"manual says"</span>
                    <span class="typed" aria-label="typed">{move || typed.get()} " " {move || unit.get().symbol()}</span>
                </div>
                <AnswerPlate answer=Signal::derive(move || answer.get()) trouble=Signal::derive(move || refusal(&typed.get(), read.get())) />
                <OtherUnits answer=Signal::derive(move || answer.get()) />
                <WrenchRow />
            </div>
            <TorqueKeypad typed unit />
        </div>
    }
}

/// The plate of a torque: what to set, on which wrench, how it rounds.
#[component]
pub fn AnswerPlate(
    #[prop(into)] answer: Signal<Option<TorqueAnswer>>,
    /// Why there is no answer.
    #[prop(into)]
    trouble: Signal<Option<String>>,
) -> impl IntoView {
    let says = move || match answer.get() {
        Some(TorqueAnswer {
            wrench: Some(wrench), ..
        }) => format!("set on {wrench}"),
        Some(_) => "no setting".to_owned(),
        None => "set".to_owned(),
    };
    let number = move || answer.get().map_or("—".to_owned(), |answer| answer.number);
    let unit = move || answer.get().map_or("", |answer| answer.unit.symbol()).to_owned();
    let line = move || match answer.get() {
        Some(TorqueAnswer {
            trouble: Some(words), ..
        }) => Some(words),
        Some(_) => None,
        None => trouble.get(),
    };
    view! {
        <Plate says=Signal::derive(says) number=Signal::derive(number) unit=Signal::derive(unit)>
            <div class="under">
                <span>{move || answer.get().and_then(|answer| answer.rounding)}</span>
                <span>{move || answer.get().and_then(|answer| scale_words(&answer))}</span>
            </div>
            {move || line().map(|words| view! { <p class="trouble">{words}</p> })}
        </Plate>
    }
}

/// The same torque in every other unit.
#[component]
pub fn OtherUnits(#[prop(into)] answer: Signal<Option<TorqueAnswer>>) -> impl IntoView {
    view! {
        <p class="units" aria-label="other units">
            {move || {
                answer
                    .get()
                    .map(|answer| {
                        answer
                            .others
                            .into_iter()
                            .map(|printed| view! { <span>{printed.number} " " {printed.unit}</span> })
                            .collect_view()
                    })
            }}
        </p>
    }
}

/// Which wrench is in the hand; a touch takes another.
#[component]
pub fn WrenchRow() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <div class="tiles wrenches" role="radiogroup" aria-label="wrench in the hand">
            {move || {
                bench.settings.with(|settings| {
                    let in_hand = settings.in_hand;
                    settings
                        .wrenches
                        .iter()
                        .enumerate()
                        .map(|(at, wrench)| {
                            let range = format!("{}–{} {}", wrench.min, wrench.max, wrench.unit.symbol());
                            view! {
                                <button role="radio" aria-checked=(at == in_hand).to_string() on:click=move |_| bench.take_wrench(at)>
                                    <span>{wrench.name.clone()}</span>
                                    " "
                                    <span class="quiet figures">{range}</span>
                                </button>
                            }
                        })
                        .collect_view()
                })
            }}
        </div>
    }
}

/// "line 80, then 6 divisions" on a scale-and-thimble wrench.
fn scale_words(answer: &TorqueAnswer) -> Option<String> {
    let scale = answer.setting?.scale?;
    Some(format!("line {} + {}", scale.main, scale.divisions))
}

fn read_typed(text: &str, unit: TorqueUnit) -> Result<TorqueStatement, String> {
    parse_torque(text, Some(unit)).map_err(|error| error.to_string())
}

/// An empty entry is an invitation, not a mistake.
fn refusal(typed: &str, read: Result<TorqueStatement, String>) -> Option<String> {
    if typed.is_empty() {
        Some("Type the manual’s torque.".to_owned())
    } else {
        read.err()
    }
}
