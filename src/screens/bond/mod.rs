//! Bond: what goes on it, and when it is cured. A few touches describe the joint; the answer stands
//! below and changes with every answer.

mod card;
mod desk;
mod question;
mod wetted;

use crate::bench::{Bench, Intent};
use crate::job::clock::CureClock;
use crate::job::sheet::StepId;
use crate::parts::clock_bar::ClockBar;
use crate::parts::dynamic::{memo, piece, press, text, whether};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use desk::Desk;
use leptos::prelude::*;
use wetted::WettedKey;

/// The selector: of a joint of its own, or of a step's.
#[component]
pub fn BondScreen(step: Option<StepId>) -> impl IntoView {
    let desk = Desk::new(Bench::here(), step);
    let walking = memo(move || desk.walk.with(|walk| walk.joint.is_some()));
    let start = move || match step {
        Some(step) => step_keys(desk, step),
        None => free_keys(desk),
    };
    view! {
        <div class="bond">
            <div class="asks">
                <h1>{text(move || desk.title())}</h1>
                <question::QuestionNow desk />
            </div>
            <div class="grows" hidden=whether(move || !walking.get())>
                {piece(move || if walking.get() {
                    view! {
                        <card::AnswerCard desk />
                        {start()}
                        <question::Answers desk />
                    }
                    .into_any()
                } else {
                    ().into_any()
                })}
                <UndoKey />
            </div>
        </div>
    }
}

/// On a step: start its clock, or see it; and the way back.
fn step_keys(desk: Desk, id: StepId) -> AnyView {
    let bench = desk.bench;
    let clocks = memo(move || {
        let mine = bench.progress.with(|progress| progress.step(id).clocks);
        bench.clocks.with(|clocks| {
            let clocks = clocks
                .iter()
                .filter(|clock| clock.counts() && mine.contains(&clock.id));
            clocks.cloned().collect::<Vec<CureClock>>()
        })
    });
    let start = move || {
        let activator = desk.activator.get_untracked();
        bench.tell(bench.send(Intent::PutOn { step: id, activator }));
    };
    let key = move || {
        if clocks.with(Vec::is_empty) {
            let shut = desk.cures.get();
            view! {
                <button class="work-key first" disabled=!shut on:click=press(start)>
                    "Compound on"
                    <small>"start its clock"</small>
                </button>
            }
            .into_any()
        } else {
            let clocks = clocks.get().into_iter();
            clocks
                .map(|clock| view! { <ClockBar clock /> }.into_any())
                .collect::<Vec<_>>()
                .into_any()
        }
    };
    view! {
        {piece(key)}
        <WettedKey step=id />
        <button class="work-key" on:click=press(move || Route::Step(id).go())>"Back to the step"</button>
    }
    .into_any()
}

/// On its own: a name for the joint, and its clock.
fn free_keys(desk: Desk) -> AnyView {
    let bench = desk.bench;
    let name = RwSignal::new(String::new());
    let start = move || {
        if let Some(joint) = desk.walk.with_untracked(|walk| walk.joint.clone()) {
            let typed = name.get_untracked().trim().to_owned();
            let name = if typed.is_empty() {
                untrack(|| desk.kind_words()).to_owned()
            } else {
                typed
            };
            let done = bench.send(Intent::PutOnFree {
                name,
                joint: Box::new(joint),
                activator: desk.activator.get_untracked(),
            });
            if done.is_ok() {
                Route::Clocks.go();
            }
            bench.tell(done);
        }
    };
    let cures = desk.cures;
    view! {
        {piece(move || if cures.get() {
            view! {
                <label>
                    "which joint, in your words"
                    <input
                        type="text"
                        autocomplete="off"
                        maxlength="40"
                        prop:value=name
                        on:input=move |event| name.set(event_target_value(&event))
                    />
                </label>
                <button class="work-key first" on:click=press(start)>
                    "Compound on"
                    <small>"start its clock"</small>
                </button>
            }
            .into_any()
        } else {
            ().into_any()
        })}
    }
    .into_any()
}
