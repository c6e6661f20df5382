//! What goes on a thread or a face, and its clocks.

use crate::bench::Bench;
use crate::job::bonding::BondAnswer;
use crate::job::kinds::Work;
use crate::job::sheet::{Step, StepId};
use crate::parts::clock_bar::ClockBar;
use crate::parts::dynamic::{piece, press};
use crate::screens::Route;
use crate::trade::application::Application;
use leptos::prelude::*;

/// The work of a bond step: the compound and, once it is on, its clock.
#[component]
pub fn BondWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let bond = step.with_value(|step| match &step.work {
        Work::Bond(bond) => Some(bond.clone()),
        _ => None,
    });
    let clocks = Memo::new(move |_| {
        let mine = bench.progress.with(|progress| progress.step(id).clocks);
        bench.clocks.with(|clocks| {
            let mine = clocks
                .iter()
                .filter(|clock| clock.counts() && mine.contains(&clock.id));
            mine.cloned().collect::<Vec<_>>()
        })
    });
    view! {
        {bond.map(|bond| view! { <p class="quiet">{bond.joint.clone()}</p> <CompoundLine application=bond.application step=id /> }.into_any())}
        {piece(move || {
            let clocks = clocks.get().into_iter();
            clocks.map(|clock| view! { <ClockBar clock /> }.into_any()).collect::<Vec<_>>().into_any()
        })}
    }
}

/// What goes on the joint, out of which bottle, why, how; and the way to the whole answer.
#[component]
pub fn CompoundLine(application: Application, step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let answer = Memo::new(move |_| bench.bond(&application, false));
    view! {
        <section class="compound" aria-label="compound">
            <span class="quiet">"goes on it"</span>
            {piece(move || answer.with(short))}
            <button on:click=press(move || Route::Bond(Some(step)).go())>"the whole answer"</button>
        </section>
    }
}

fn short(answer: &BondAnswer) -> AnyView {
    let mut lines = vec![answer.recommendation.reason.to_owned()];
    lines.extend(
        answer
            .bottle
            .iter()
            .map(|bottle| format!("Out of “{}”.", bottle.name)),
    );
    lines.extend(
        answer
            .recommendation
            .where_and_how
            .iter()
            .map(|line| (*line).to_owned()),
    );
    view! {
        <strong>{answer.title()}</strong>
        {answer.refused.clone().map(|why| view! { <p class="trouble-line">{why}</p> }.into_any())}
        {lines.into_iter().map(|line| view! { <p>{line}</p> }.into_any()).collect::<Vec<_>>()}
    }
    .into_any()
}
