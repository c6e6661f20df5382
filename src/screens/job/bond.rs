//! What goes on a thread or a face, and its clocks.

use crate::bench::Bench;
use crate::job::bonding::BondAnswer;
use crate::job::kinds::Work;
use crate::job::sheet::{Step, StepId};
use crate::parts::clock_bar::{ClockBar, clock_on_stage};
use crate::parts::dynamic::{each, memo, piece, press};
use crate::screens::Route;
use crate::trade::application::Application;
use leptos::prelude::*;

/// The clocks of a step that count.
pub fn clocks(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let clocks = memo(move || {
        let mine = bench.progress.with(|progress| progress.step(id).clocks);
        bench.clocks.with(|clocks| {
            let mine = clocks
                .iter()
                .filter(|clock| clock.counts() && mine.contains(&clock.id));
            mine.cloned().collect::<Vec<_>>()
        })
    });
    let drawn = piece(move || {
        let clocks = clocks.get();
        each(clocks, |clock| view! { <ClockBar clock /> }.into_any()).into_any()
    });
    view! { {drawn} }.into_any()
}

/// The last of them, on the stage.
pub fn clock_stage(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let clock = memo(move || {
        let mine = bench.progress.with(|progress| progress.step(id).clocks);
        bench.clocks.with(|clocks| {
            let mut mine = clocks
                .iter()
                .filter(|clock| clock.counts() && mine.contains(&clock.id));
            mine.next_back().cloned()
        })
    });
    let shown = piece(move || clock.get().map(clock_on_stage).into_any());
    view! { {shown} }.into_any()
}

/// What is put on now, and how.
pub fn put_on(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let (application, joint) = step.with_value(|step| {
        let joint = match &step.work {
            Work::Bond(bond) => bond.joint.clone(),
            _ => String::new(),
        };
        (step.work.application().cloned(), joint)
    });
    let Some(application) = application else {
        return ().into_any();
    };
    let answer = memo(move || bench.bond(&application, false));
    let said = piece(move || answer.with(large));
    view! { <p class="quiet">{joint}</p> {said} }.into_any()
}

/// The compound as large as a number, then where it goes and how, the reason last.
fn large(answer: &BondAnswer) -> AnyView {
    let bottle = answer
        .bottle
        .iter()
        .map(|bottle| format!("Out of “{}”.", bottle.name));
    let how = answer
        .recommendation
        .where_and_how
        .iter()
        .map(|line| (*line).to_owned());
    let lines: Vec<String> = bottle
        .chain(how)
        .chain(std::iter::once(answer.recommendation.reason.to_owned()))
        .collect();
    view! {
        <p class="large">{answer.title()}</p>
        {answer.refused.clone().map(|why| view! { <p class="trouble-line mid">{why}</p> }.into_any())}
        {each(lines, |line| view! { <p class="mid">{line}</p> }.into_any())}
    }
    .into_any()
}

/// The work of a bond step: the compound and, once it is on, its clock.
#[component]
pub fn BondWork(step: StoredValue<Step>) -> impl IntoView {
    let id = step.with_value(|step| step.id);
    let bond = step.with_value(|step| match &step.work {
        Work::Bond(bond) => Some(bond.clone()),
        _ => None,
    });
    view! {
        {bond.map(|bond| view! { <p class="quiet">{bond.joint.clone()}</p> <CompoundLine application=bond.application step=id /> }.into_any())}
        {clocks(step)}
    }
}

/// What goes on the joint, out of which bottle, why, how; and the way to the whole answer.
#[component]
pub fn CompoundLine(application: Application, step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let answer = memo(move || bench.bond(&application, false));
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
