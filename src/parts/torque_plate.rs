//! The plate of a torque, the other units, and my wrenches in a row.

use super::dynamic::{Piece, piece, press, text};
use super::plate::Plate;
use super::thimble::thimble;
use crate::bench::Bench;
use crate::job::answer::TorqueAnswer;
use crate::job::scale::thimble_scale;
use leptos::prelude::*;

/// The plate of a torque: what to set, on which wrench, how it rounds.
#[component]
pub fn AnswerPlate(
    #[prop(into)] answer: Signal<Option<TorqueAnswer>>,
    /// Why there is no answer.
    #[prop(into)]
    trouble: Signal<Option<String>>,
    /// Nothing is typed yet: an invitation stands there.
    #[prop(into)]
    empty: Signal<bool>,
) -> impl IntoView {
    let bench = Bench::here();
    let in_hand = move || {
        bench
            .settings
            .with(|s| s.wrench().map(|wrench| wrench.name.clone()))
    };
    let says = text(move || match answer.get() {
        Some(TorqueAnswer {
            wrench: Some(wrench),
            adapted,
            ..
        }) => format!(
            "set on {wrench}{}",
            if adapted { ", allowing for the adapter" } else { "" }
        ),
        None if empty.get() => "Type the manual’s torque.".to_owned(),
        _ => match in_hand() {
            Some(name) => format!("{name} can’t set this"),
            None => "no wrench can set this".to_owned(),
        },
    });
    let barred =
        Signal::derive(move || answer.with(|answer| answer.as_ref().is_some_and(|a| a.setting.is_none())));
    let number = text(move || answer.get().map_or("—".to_owned(), |answer| answer.number));
    let unit = text(move || answer.get().map_or("", |answer| answer.unit.symbol()).to_owned());
    let rounding = text(move || {
        answer
            .get()
            .and_then(|answer| answer.rounding)
            .unwrap_or_default()
    });
    let band = text(move || answer.get().and_then(|answer| answer.band).unwrap_or_default());
    let line = move || match answer.get() {
        Some(answer) => answer.trouble.map(|words| (words, answer.take)),
        None => trouble.get().map(|words| (words, None)),
    };
    let trouble: Piece = piece(move || match line() {
        None => ().into_any(),
        Some((words, take)) => {
            let name = take.and_then(|at| {
                bench
                    .settings
                    .with(|s| s.wrenches.get(at).map(|w| w.name.clone()))
            });
            let take = take.zip(name).map(|(at, name)| {
                view! { <button on:click=press(move || bench.take_wrench(at))>{format!("use {name}")}</button> }.into_any()
            });
            view! { <p class="trouble">{words}</p> {take} }.into_any()
        }
    });
    view! {
        <Plate says number unit barred>
            <div class="under">
                <span>{rounding}</span>
                <span class="band">{band}</span>
            </div>
            {trouble}
        </Plate>
    }
}

/// The wrench's own scale at its setting, drawn; nothing for a dial or digits.
#[component]
pub fn ScaleDrawing(#[prop(into)] answer: Signal<Option<TorqueAnswer>>) -> impl IntoView {
    let bench = Bench::here();
    let drawing: Piece = piece(move || {
        let setting = answer.get().and_then(|answer| answer.setting);
        let scale = setting.and_then(|setting| {
            bench
                .settings
                .with(|s| s.wrench().and_then(|w| thimble_scale(w, &setting)))
        });
        match scale {
            Some(scale) => thimble(scale),
            None => ().into_any(),
        }
    });
    view! { {drawing} }
}

/// The same torque in every other unit.
#[component]
pub fn OtherUnits(#[prop(into)] answer: Signal<Option<TorqueAnswer>>) -> impl IntoView {
    let units: Piece = piece(move || {
        let others = answer.get().map(|answer| answer.others).unwrap_or_default();
        others
            .into_iter()
            .map(|printed| view! { <span>{format!("{} {}", printed.number, printed.unit)}</span> }.into_any())
            .collect::<Vec<_>>()
            .into_any()
    });
    view! { <p class="units" role="group" aria-label="other units">{units}</p> }
}

/// Which wrench is in the hand; a touch takes another.
#[component]
pub fn WrenchRow() -> impl IntoView {
    let bench = Bench::here();
    let tiles: Piece = piece(move || {
        bench.settings.with(|settings| {
            let in_hand = settings.in_hand;
            let tile = |(at, wrench): (usize, &crate::trade::wrench::Wrench)| {
                let range = format!("{}–{} {}", wrench.min, wrench.max, wrench.unit.symbol());
                view! {
                    <button role="radio" aria-checked=(at == in_hand).to_string() on:click=press(move || bench.take_wrench(at))>
                        <span>{wrench.name.clone()}</span>
                        " "
                        <span class="quiet figures">{range}</span>
                    </button>
                }.into_any()
            };
            settings.wrenches.iter().enumerate().map(tile).collect::<Vec<_>>().into_any()
        })
    });
    view! {
        <div class="tiles wrenches" role="radiogroup" aria-label="wrench in the hand">
            {tiles}
        </div>
    }
}
