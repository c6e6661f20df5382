//! Torque: a value in the manual's unit, the number for the wrench in the hand, and whether it can be.

mod bolt;
mod entry;
mod extras;
mod guard;
mod plate;
mod second;

pub use guard::{GuardFold, GuardLine};
pub use plate::{AnswerPlate, OtherUnits, ScaleDrawing, WrenchRow};

use crate::bench::Bench;
use crate::job::sheet::StepId;
use crate::parts::angle_gauge::AngleGauge;
use crate::parts::dynamic::{Piece, piece, press, text, whether};
use crate::parts::keypad::TorqueKeypad;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use entry::{Entry, Panel};
use leptos::prelude::*;

/// The Torque screen, empty-handed or with a step's value.
#[component]
pub fn TorqueScreen(from: Option<StepId>) -> impl IntoView {
    let bench = Bench::here();
    let entry = Entry::open(bench, from);
    let panel: Piece = piece(move || {
        match entry.panel.get() {
        Panel::Keys => view! {
            <TorqueKeypad typed=entry.typed unit=entry.unit clearing=move |()| entry.remember() words=move |()| entry.panel.set(Panel::Words) />
            <Recent entry />
        }
        .into_any(),
        Panel::Words => view! { <second::Words entry /> }.into_any(),
        Panel::Also => view! { <second::Also entry /> }.into_any(),
        Panel::Bolt => view! { <bolt::BoltPanel entry /> }.into_any(),
        Panel::Wrench => view! {
            <ScaleDrawing answer=entry.set />
            <WrenchRow />
            <button on:click=press(move || Route::Bench.go())>"my wrenches"</button>
        }
        .into_any(),
        Panel::More => view! { <extras::Extras entry /> }.into_any(),
    }
    });
    view! {
        <div class="torque">
            <div class="shown">
                <div class="entry">
                    {match from {
                        Some(step) => view! { <FromStep step /> }.into_any(),
                        None => view! { <span class="quiet">"manual says"</span> }.into_any(),
                    }}
                    <span class="typed" aria-label="typed">
                        {text(move || format!("{} {}", entry.typed.get(), entry.unit.get().symbol()))}
                    </span>
                </div>
                <AnswerPlate answer=entry.set trouble=entry.trouble />
                <second::PairLine entry />
                <GuardLine
                    guard=entry.guard
                    open=move |()| entry.show(Panel::Bolt)
                    correct=move |statement| entry.correct(&statement)
                />
                <Turn entry />
                <OtherUnits answer=entry.set />
            </div>
            <Tabs entry />
            <div class="hand">
                {panel}
                <UndoKey />
            </div>
        </div>
    }
}

/// What the lower half shows.
#[component]
fn Tabs(entry: Entry) -> impl IntoView {
    let tabs = [
        ("keypad", Panel::Keys),
        ("bolt", Panel::Bolt),
        ("wrench", Panel::Wrench),
        ("more", Panel::More),
    ];
    let tab = move |(name, panel): (&'static str, Panel)| {
        let on = whether(move || entry.panel.get().tab() == panel);
        view! {
            <button role="tab" aria-selected=text(move || on.get().to_string()) on:click=press(move || entry.show(panel))>
                {name}
            </button>
        }
    };
    view! { <div class="tabs" role="tablist" aria-label="Torque">{tabs.map(tab)}</div> }
}

/// The way back to the step the value came from.
#[component]
fn FromStep(step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let title = bench
        .sheet
        .with_untracked(|sheet| sheet.step(step).map(|step| step.title.clone()))
        .unwrap_or_default();
    view! {
        <button class="from-step" on:click=press(move || Route::Step(step).go())>
            <span aria-hidden="true">"← "</span>
            {title}
        </button>
    }
}

/// The last values, each one tap away.
#[component]
fn Recent(entry: Entry) -> impl IntoView {
    let keys: Piece = piece(move || {
        let recent = entry.desk.with(|desk| desk.recent.clone());
        if recent.is_empty() {
            return ().into_any();
        }
        let key = move |words: String| {
            let shown = words.clone();
            view! { <button on:click=press(move || drop(entry.take_words(&words)))>{shown}</button> }
        };
        let keys = recent.into_iter().map(key).collect_view();
        view! { <div class="corrections" role="group" aria-label="last values">{keys}</div> }.into_any()
    });
    view! { {keys} }
}

/// The gauge for the turn after the torque.
#[component]
fn Turn(entry: Entry) -> impl IntoView {
    let turn = Memo::new(move |_| entry.desk.with(|desk| desk.turn_deg));
    let gauge: Piece = piece(move || match turn.get() {
        Some(degrees) => view! { <AngleGauge degrees=Signal::derive(move || degrees) /> }.into_any(),
        None => ().into_any(),
    });
    view! { {gauge} }
}
