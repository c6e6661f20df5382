//! The plate of a torque, the other units, and my wrenches in a row.

use super::dynamic::{Piece, derive, memo, piece, press, text, when};
use super::plate::{Plate, how_sheet};
use super::ruler::under;
use super::sheet::sheet;
use super::thimble::thimble;
use crate::bench::Bench;
use crate::job::answer::TorqueAnswer;
use crate::job::scale::{ruler, thimble_scale};
use crate::job::settings::Settings;
use crate::trade::quantity::shortest;
use crate::trade::wrench::Wrench;
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
    /// It may be done though no wrench of mine can be set to it: with what, was said.
    #[prop(optional, into)]
    allowed: Signal<bool>,
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
        Some(answer) if !answer.is_barred() => "on any wrench".to_owned(),
        None if empty.get() => "Type the manual’s torque.".to_owned(),
        // What was typed is no torque: no wrench is to blame.
        None => "nothing to set yet".to_owned(),
        _ => match in_hand() {
            Some(name) => format!("{name} can’t set this"),
            None => "no wrench can set this".to_owned(),
        },
    });
    let barred = derive(move || {
        !allowed.get() && answer.with(|answer| answer.as_ref().is_some_and(TorqueAnswer::is_barred))
    });
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
    let told = RwSignal::new(false);
    let how = Callback::new(move |()| told.set(answer.with_untracked(Option::is_some)));
    let lines = move || answer.with(|answer| answer.as_ref().map_or(Vec::new(), TorqueAnswer::how));
    let telling = how_sheet(told, lines, move || view! { <OtherUnits answer /> }.into_any());
    view! {
        <Plate says number unit barred how=Some(how)>
            <div class="under">
                <span>{rounding}</span>
                <span class="band">{band}</span>
            </div>
            {trouble}
        </Plate>
        {telling}
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
pub fn WrenchRow(
    /// One was taken.
    #[prop(optional)]
    taken: Option<Callback<()>>,
) -> impl IntoView {
    let bench = Bench::here();
    let take = move |at: usize| {
        bench.take_wrench(at);
        if let Some(taken) = taken {
            taken.run(());
        }
    };
    let tiles: Piece = piece(move || {
        bench.settings.with(|settings| {
            let in_hand = settings.in_hand;
            let tile = |(at, wrench): (usize, &Wrench)| {
                let range = range_words(wrench);
                view! {
                    <button role="radio" aria-checked=(at == in_hand).to_string() on:click=press(move || take(at))>
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

/// The ends of a wrench's scale, in its unit.
fn range_words(wrench: &Wrench) -> String {
    format!(
        "{}–{} {}",
        shortest(wrench.min),
        shortest(wrench.max),
        wrench.unit.symbol()
    )
}

/// The wrench in the hand and its range, as a key that opens the others.
#[component]
pub fn WrenchLine(
    /// The number allows for the adapter on it.
    #[prop(into)]
    adapted: Signal<bool>,
) -> impl IntoView {
    let bench = Bench::here();
    let open = RwSignal::new(false);
    let name = text(move || {
        let wrench = |s: &Settings| s.wrench().map(|wrench| wrench.name.clone());
        bench
            .settings
            .with(wrench)
            .unwrap_or_else(|| "any wrench".to_owned())
    });
    let range = text(move || {
        bench
            .settings
            .with(|s| s.wrench().map(range_words))
            .unwrap_or_default()
    });
    let adapter = text(move || if adapted.get() { "+ adapter" } else { "" }.to_owned());
    // The set number allows for the adapter: its word and the range stand whole, the name gives way.
    let class = text(move || {
        if adapted.get() {
            "wrench-line adapted"
        } else {
            "wrench-line"
        }
        .to_owned()
    });
    let others = when(
        move || open.get(),
        move || {
            let inside = view! {
                <h2>"Which wrench is in your hand?"</h2>
                <WrenchRow taken=Callback::new(move |()| open.set(false)) />
            };
            sheet(
                "wrench in the hand".to_owned(),
                move || open.set(false),
                inside.into_any(),
            )
        },
    );
    view! {
        <button
            class=class
            aria-label=text(move || {
                format!("wrench in the hand: {} {} {}", name.get(), range.get(), adapter.get())
            })
            on:click=press(move || open.set(true))
        >
            <span class="figures">{name}</span>
            <span class="figures">{adapter}</span>
            <span class="figures">{range}</span>
            <span aria-hidden="true">"⇄"</span>
        </button>
        {others}
    }
}

/// The whole of the wrench's scale as a ruler, with the pointer where it is set; its lowest fifth, where it
/// is least certain, is hatched. Nothing where it has no scale or can't be set.
#[component]
pub fn Ruler(#[prop(into)] answer: Signal<Option<TorqueAnswer>>) -> impl IntoView {
    let bench = Bench::here();
    let ruler = memo(move || {
        let setting = answer.get()?.setting?;
        bench.settings.with(|s| ruler(s.wrench()?, &setting))
    });
    let drawn: Piece = piece(move || under(ruler.get()));
    view! { {drawn} }
}
