//! Torque: a value in the manual's unit, the number for the wrench in the hand, and whether it can be.

mod bolt;
mod entry;
mod extras;
mod second;

use crate::bench::Bench;
use crate::job::sheet::StepId;
use crate::parts::angle_gauge::AngleGauge;
use crate::parts::dynamic::{Piece, each, piece, press, text, whether};
use crate::parts::guard::GuardLine;
use crate::parts::keypad::TorqueKeypad;
use crate::parts::torque_plate::{AnswerPlate, OtherUnits, ScaleDrawing, WrenchRow};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use entry::{Entry, Panel};
use leptos::prelude::*;

/// Values above the keypad.
const IN_A_ROW: usize = 3;

/// The Torque screen, empty-handed or with a step's value.
#[component]
pub fn TorqueScreen(from: Option<StepId>) -> impl IntoView {
    let bench = Bench::here();
    let entry = Entry::open(bench, from);
    let panel: Piece = piece(move || {
        match entry.panel.get() {
        Panel::Keys => view! {
            <Recent entry above=true />
            <TorqueKeypad typed=entry.typed unit=entry.unit clearing=move |()| entry.remember() words=move |()| entry.panel.set(Panel::Words) />
            <Recent entry above=false />
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
            <h1 class="unseen">"Torque"</h1>
            <div class="shown" tabindex="0">
                <div class="entry">
                    {match from {
                        Some(step) => view! { <FromStep step /> }.into_any(),
                        None => view! { <span class="quiet">"manual says"</span> }.into_any(),
                    }}
                    <span class="typed" role="group" aria-label="typed">
                        {text(move || format!("{} {}", entry.typed.get(), entry.unit.get().symbol()))}
                    </span>
                </div>
                <AnswerPlate answer=entry.set trouble=entry.trouble empty=whether(move || entry.typed.with(String::is_empty)) />
                <second::PairLine entry />
                <GuardLine
                    guard=entry.guard
                    open=move |()| entry.show(Panel::Bolt)
                    correct=move |statement| entry.correct(&statement)
                    tell=move |fastener| entry.tell(fastener)
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
        ("keys", Panel::Keys),
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
        }.into_any()
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

/// The last values, each one tap away: while nothing is typed the newest above the keypad, and all below it.
#[component]
fn Recent(entry: Entry, above: bool) -> impl IntoView {
    let keys: Piece = piece(move || {
        let mut recent = entry.desk.with(|desk| desk.recent.clone());
        if above {
            recent.truncate(if entry.typed.with(String::is_empty) {
                IN_A_ROW
            } else {
                0
            });
        }
        if recent.is_empty() {
            return ().into_any();
        }
        let key = move |words: String| {
            let shown = words.clone();
            let take = press(move || drop(entry.take_words(&words)));
            view! { <button on:click=take>{shown}</button> }.into_any()
        };
        let (class, name) = if above {
            ("corrections above", "latest values")
        } else {
            ("corrections", "last values")
        };
        view! { <div class=class role="group" aria-label=name>{each(recent, key)}</div> }.into_any()
    });
    view! { {keys} }
}

/// The gauge for the turn after the torque.
#[component]
fn Turn(entry: Entry) -> impl IntoView {
    let turn = Memo::new(move |_| entry.desk.with(|desk| desk.turn_deg));
    let gauge: Piece = piece(move || match turn.get() {
        Some(degrees) => view! {
            <p class="mid">{format!("Set this and tighten all to it; then turn a further {degrees}°.")}</p>
            <AngleGauge degrees=Signal::derive(move || degrees) />
        }
        .into_any(),
        None => ().into_any(),
    });
    view! { {gauge} }
}
