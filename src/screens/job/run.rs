//! A run step: each thing in its turn, as it is asked.

use super::facts::Facts;
use super::said::{read, say};
use crate::bench::Bench;
use crate::job::kinds::{Run, Work};
use crate::job::reading::{Fact, What};
use crate::job::readings;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece, press, text};
use crate::parts::when::span;
use crate::screens::Route;
use leptos::prelude::*;

/// The work of a run step: what is done already, and what comes next; nothing further yet.
#[component]
pub fn RunWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some((id, run)) = step.with_value(|step| match &step.work {
        Work::Run(run) => Some((step.id, run.clone())),
        _ => None,
    }) else {
        return ().into_any();
    };
    let rows: Vec<_> = run
        .facts()
        .into_iter()
        .filter(|(_, words)| !words.is_empty())
        .collect();
    let asked = run.asked();
    // A row stays as it is while the next comes in below it.
    let reached = memo(move || {
        let next = bench
            .progress
            .with(|progress| step.with_value(|step| readings::missing(step, &progress.step(id))));
        let all = step.with_value(readings::asked);
        next.and_then(|next| all.iter().position(|what| *what == next))
            .map_or(all.len(), |at| at + 1)
    });
    let again = run.torque_again;
    let one = move |(at, what): (usize, What)| {
        let there = memo(move || at < reached.get());
        piece(move || {
            if there.get() {
                row(bench, step, what.clone(), again)
            } else {
                ().into_any()
            }
        })
    };
    let all: Vec<_> = asked.into_iter().enumerate().map(one).collect();
    view! { <Facts rows /> {all} }.into_any()
}

/// What stands beside an answer of a run: since when it runs, the way to what is torqued again.
pub fn beside(step: StoredValue<Step>, fact: Fact) -> AnyView {
    let bench = Bench::here();
    let again = step.with_value(|step| match &step.work {
        Work::Run(run) => run.torque_again,
        _ => None,
    });
    match fact {
        Fact::TorquedAgain => again.map_or(().into_any(), |again| way_to(bench, again)),
        Fact::Runs | Fact::Locked | Fact::Level | Fact::NoLeaks | Fact::Cooled => ().into_any(),
    }
}

/// What a run or a fill calls a reading.
pub fn reading_name(step: &Step, what: &What) -> String {
    match (&step.work, what) {
        (_, What::RanAt) => "what it reads now".to_owned(),
        (_, What::RanFor) => "how long it ran".to_owned(),
        (_, What::PutIn) => "How much was put in".to_owned(),
        _ => what.name(Some(step)),
    }
}

/// The run in a few facts.
pub fn told(run: &Run) -> AnyView {
    let rows = run.facts().into_iter().filter(|(_, words)| !words.is_empty());
    view! { <Facts rows=rows.collect() /> }.into_any()
}

fn row(bench: Bench, step: StoredValue<Step>, what: What, again: Option<StepId>) -> AnyView {
    match what {
        What::Fact(fact) => {
            let more = match fact {
                Fact::Runs => since(bench, step),
                Fact::TorquedAgain => again.map_or(().into_any(), |again| way_to(bench, again)),
                Fact::Locked | Fact::Level | Fact::NoLeaks | Fact::Cooled => ().into_any(),
            };
            view! { {say(step, fact)} {more} }.into_any()
        }
        what => {
            let name = step.with_value(|step| reading_name(step, &what));
            read(step, what, &name, false)
        }
    }
}

/// Since when it runs; nothing while it doesn't.
pub fn since(bench: Bench, step: StoredValue<Step>) -> AnyView {
    let id = step.with_value(|step| step.id);
    let at = memo(move || {
        bench.progress.with(|progress| {
            let said = progress.touched(id)?.said(Fact::Runs)?;
            said.holds.then_some(said.at)
        })
    });
    let words = text(move || {
        at.get().map_or(String::new(), |at| {
            format!("Started {} ago.", span(bench.now.get().since(at)))
        })
    });
    view! { <p class="quiet">{words}</p> }.into_any()
}

/// The step whose fasteners are brought to torque again, and the way there.
fn way_to(bench: Bench, again: StepId) -> AnyView {
    let title = bench.sheet.with(|sheet| {
        let found = sheet.place(again).zip(sheet.step(again));
        found.map_or(String::new(), |(at, step)| format!("{} {}", at + 1, step.title))
    });
    view! {
        <button class="row-key" on:click=press(move || Route::Step(again).go())>
            <span>"Torque again: "{title}</span>
        </button>
    }
    .into_any()
}
