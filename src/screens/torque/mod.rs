//! Torque: a value in the manual's unit, the number for the wrench in the hand, and whether it can be.

mod bolt;
mod entry;
mod extras;
mod lane;
mod second;

use crate::bench::Bench;
use crate::job::sheet::StepId;
use crate::parts::angle_gauge::AngleGauge;
use crate::parts::dynamic::{Piece, derive, memo, piece, press, text, whether};
use crate::parts::guard::GuardLine;
use crate::parts::keypad::TorqueKeypad;
use crate::parts::sheet::sheet;
use crate::parts::torque_plate::{AnswerPlate, OtherUnits, Ruler, ScaleDrawing, WrenchRow};
use crate::screens::Route;
use crate::trade::quantity::{in_mark, shortest};
use entry::{Entry, Panel};
use leptos::prelude::*;

/// Values in the lane while nothing is typed.
const IN_A_ROW: usize = 3;

/// The Torque screen, empty-handed or with a step's value. Every row has its place from the start; what
/// is wanted less often comes as a sheet over it.
#[component]
pub fn TorqueScreen(from: Option<StepId>) -> impl IntoView {
    let bench = Bench::here();
    let entry = Entry::open(bench, from);
    let opened: Piece = piece(move || panel(entry, entry.panel.get()));
    view! {
        <div class="torque" inert=whether(move || entry.panel.get() != Panel::Keys)>
            <h1 class="unseen">"Torque"</h1>
            <div class="entry">
                {match from {
                    Some(step) => view! { <FromStep step /> }.into_any(),
                    None => view! { <span class="quiet">"manual says"</span> }.into_any(),
                }}
                <span class="typed" role="group" aria-label="typed">
                    {text(move || format!("{} {}", in_mark(&entry.typed.get()), entry.unit.get().symbol()))}
                </span>
                <button class="menu" on:click=press(move || entry.show(Panel::Menu))>"more"</button>
            </div>
            <AnswerPlate answer=entry.set trouble=entry.trouble empty=whether(move || entry.typed.with(String::is_empty)) />
            <Ruler answer=entry.set />
            <div class="verdict" aria-live="polite">{piece(move || lane::lane(entry))}</div>
            <TorqueKeypad typed=entry.typed unit=entry.unit clearing=move |()| entry.remember() words=move |()| entry.panel.set(Panel::Words) />
            <div class="tabs" role="group" aria-label="more of it">{menu(entry)}</div>
        </div>
        {opened}
    }
}

/// The keys to what is wanted less often.
fn menu(entry: Entry) -> AnyView {
    let bench = Bench::here();
    let key = move |(name, to): (&'static str, Panel)| {
        view! { <button on:click=press(move || entry.show(to))>{name}</button> }.into_any()
    };
    let to = [
        ("bolt", Panel::Bolt),
        ("wrench", Panel::Wrench),
        ("extras", Panel::More),
    ];
    let undo = press(move || bench.tell(bench.undo()));
    view! {
        {to.map(key)}
        <button disabled=whether(move || bench.undoable().is_none()) on:click=undo>"undo"</button>
    }
    .into_any()
}

/// A panel as a sheet; none for the keypad itself.
fn panel(entry: Entry, panel: Panel) -> AnyView {
    let (name, inside) = match panel {
        Panel::Keys => return ().into_any(),
        Panel::Menu => (
            "more of it",
            view! { <div class="tiles pair">{menu(entry)}</div> }.into_any(),
        ),
        Panel::Words => (
            "the manual’s own words",
            view! { <second::Words entry /> }.into_any(),
        ),
        Panel::Also => (
            "the manual also says",
            view! { <second::Also entry /> }.into_any(),
        ),
        Panel::Bolt => (
            "the bolt",
            view! {
                <second::PairLine entry />
                <GuardLine
                    guard=entry.guard
                    open=move |()| {}
                    correct=move |statement| entry.correct(&statement)
                    tell=move |fastener| entry.tell(fastener)
                />
                <bolt::BoltPanel entry />
            }
            .into_any(),
        ),
        Panel::Wrench => (
            "the wrench",
            view! {
                <WrenchRow />
                <ScaleDrawing answer=entry.set />
                <OtherUnits answer=entry.set />
                <button on:click=press(move || Route::Bench.go())>"my wrenches"</button>
            }
            .into_any(),
        ),
        Panel::More => (
            "second value, adapter, nut, turn",
            view! { <extras::Extras entry /> <Turn entry /> <lane::Recent entry /> }.into_any(),
        ),
    };
    let leave = move || entry.panel.set(Panel::Keys);
    let back = view! {
        <div class="sheet-foot">
            <button class="work-key" on:click=press(leave)>"back to the number"</button>
        </div>
    };
    sheet(
        name.to_owned(),
        leave,
        view! { <h2>{name}</h2> {inside} {back} }.into_any(),
    )
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

/// The gauge for the turn after the torque.
#[component]
fn Turn(entry: Entry) -> impl IntoView {
    let turn = memo(move || entry.desk.with(|desk| desk.turn_deg));
    let gauge: Piece = piece(move || {
        match turn.get() {
        Some(degrees) => view! {
            <p class="mid">{format!("Set this and tighten all to it; then turn a further {}°.", shortest(degrees))}</p>
            <AngleGauge degrees=derive(move || degrees) />
        }
        .into_any(),
        None => ().into_any(),
    }
    });
    view! { {gauge} }
}
