//! The slip guard: one line with a mark; behind it the pull as bars, and the likely readings. Where it
//! must first be said what the fastener is, one key asks that.

use super::dynamic::{Piece, piece, press, text};
use super::picker::picker;
use super::share_bar::share_bar;
use crate::job::guarding::{Correction, GuardAnswer, KnownBolt, pulls};
use crate::job::kinds::fasten::pull::NO_PULL;
use crate::trade::guard::{Fastener, Verdict};
use crate::trade::quantity::TorqueStatement;
use leptos::prelude::*;

/// The line, and below it, when the torque is doubtful, what to ask and the readings as keys.
#[component]
pub fn GuardLine(
    #[prop(into)] guard: Signal<Option<GuardAnswer>>,
    /// The line is touched.
    #[prop(into)]
    open: Callback<()>,
    /// A reading is taken.
    #[prop(into)]
    correct: Callback<TorqueStatement>,
    /// What it is was said.
    #[prop(into)]
    tell: Callback<Fastener>,
) -> impl IntoView {
    let line: Piece = piece(move || {
        let Some(guard) = guard.get() else {
            return ().into_any();
        };
        let doubtful = guard.verdict != Verdict::Plausible;
        let stop = guard.verdict == Verdict::Absurd;
        let what = guard.what_is_it;
        let asked = (!what.is_empty()).then(|| what_key(what, tell));
        view! {
            <div class="guard" class:stop=stop class:doubtful=doubtful>
                <button class="guard-line" on:click=press(move || open.run(()))>
                    <span class="mark" aria-hidden="true">{guard.mark}</span>
                    <span>{guard.line}</span>
                    <span class="quiet" aria-hidden="true">"…"</span>
                </button>
                {doubtful.then(|| view! { <p role=if stop { "alert" } else { "status" }>{guard.sentence}</p> {asked} {correction_keys(guard.corrections, correct)} }.into_any())}
            </div>
        }
        .into_any()
    });
    view! { {line} }
}

/// One key that asks what it is.
fn what_key(offered: &'static [Fastener], tell: Callback<Fastener>) -> AnyView {
    let words = offered.iter().map(|fastener| fastener.words().to_owned());
    let unsaid = text(|| "say which".to_owned());
    let take = move |at: usize| {
        offered
            .get(at)
            .into_iter()
            .for_each(|fastener| tell.run(*fastener));
    };
    picker("it is", unsaid, words.collect(), Callback::new(take))
}

/// Readings as keys: a touch corrects the entry.
fn correction_keys(corrections: Vec<Correction>, correct: Callback<TorqueStatement>) -> impl IntoView {
    let key = move |correction: Correction| {
        view! { <button on:click=press(move || correct.run(correction.statement))>{correction.words}</button> }.into_any()
    };
    view! { <div class="corrections" role="group" aria-label="it says">{corrections.into_iter().map(key).collect::<Vec<_>>()}</div> }
}

/// The pull against what bolt and thread bear, and what the thread's condition does to it.
pub fn guard_details(guard: GuardAnswer, statement: TorqueStatement, bolt: KnownBolt) -> AnyView {
    let bars = guard
        .bars
        .into_iter()
        .map(|bar| share_bar(bar.words(), bar.low, bar.high))
        .collect::<Vec<_>>();
    let now = bolt.joint.condition;
    let note = now
        .note()
        .map(|note| view! { <p class="mid">{note}</p> }.into_any());
    let told = !guard.pull.is_empty();
    let rows = pulls(&statement, &bolt.joint)
        .into_iter()
        .map(|(condition, pull)| {
            let name = if condition == now {
                format!("{} (as here)", condition.words())
            } else {
                condition.words().to_owned()
            };
            view! { <dt>{name}</dt> <dd>{pull}</dd> }.into_any()
        })
        .collect::<Vec<_>>();
    let pulls = if told {
        view! {
            <p class="mid figures">{format!("pull {}", guard.pull)}</p>
            {bars}
            {note}
            <p class="quiet">"The same torque on a thread that is"</p>
            <dl class="facts">{rows}</dl>
            <p class="quiet">
                "The range is friction’s, reckoned by VDI 2230. The manual’s torque stays as it is: its makers chose it for their condition of the thread."
            </p>
        }
        .into_any()
    } else {
        view! { <p class="mid">{NO_PULL}</p> {note} }.into_any()
    };
    view! {
        <section class="guard-details" aria-label="what the torque does">
            <p>{guard.sentence}</p>
            {pulls}
        </section>
    }
    .into_any()
}

/// A guard's details that open and close.
#[component]
pub fn GuardFold(
    open: RwSignal<bool>,
    #[prop(into)] guard: Signal<Option<GuardAnswer>>,
    statement: TorqueStatement,
    bolt: KnownBolt,
) -> impl IntoView {
    let details: Piece = piece(move || match (open.get(), guard.get()) {
        (true, Some(guard)) => guard_details(guard, statement, bolt),
        _ => ().into_any(),
    });
    view! { {details} }
}
