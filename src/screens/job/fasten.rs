//! A fasten step: the number for the wrench in the hand, the bolts, what goes on the thread.

use super::bond::CompoundLine;
use crate::bench::{Bench, WrenchSet};
use crate::job::answer;
use crate::job::progress::next_fastener;
use crate::job::sheet::Step;
use crate::job::work::{Fasten, Reuse, Work};
use crate::parts::bolts::{Bolt, Bolts};
use crate::screens::torque::{AnswerPlate, OtherUnits, WrenchRow};
use crate::trade::guard::Verdict;
use leptos::prelude::*;

/// The work of a fasten step.
#[component]
pub fn FastenWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some(fasten) = step.with_value(|step| as_fasten(step).cloned()) else {
        return ().into_any();
    };
    let id = step.with_value(|step| step.id);
    let next = Memo::new(move |_| {
        bench
            .progress
            .with(|progress| step.with_value(|step| next_fastener(step, &progress.step(id))))
    });
    let kept = StoredValue::new(fasten.clone());
    let pass = Memo::new(move |_| {
        next.get().map_or_else(
            || kept.with_value(Fasten::pass_count).saturating_sub(1),
            |next| next.pass,
        )
    });
    let answer = Signal::derive(move || {
        bench
            .settings
            .with(|s| kept.with_value(|f| Some(answer::fasten(f, pass.get(), &s.wrenches, s.in_hand))))
    });
    let bolts = Signal::derive(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        let (pass, next) = (pass.get(), next.get());
        kept.with_value(|fasten| {
            let order = fasten.pass(pass).order(&fasten.layout);
            let turn = |place| order.iter().position(|at| *at == place).map_or(0, |at| at + 1);
            fasten
                .layout
                .points()
                .into_iter()
                .enumerate()
                .map(|(place, at)| Bolt {
                    at,
                    turn: turn(place),
                    tallied: progress.tallied.contains(&(pass, place)),
                    next: next.is_some_and(|next| next.place == place),
                })
                .collect()
        })
    });
    view! {
        <p class="manual-says">
            <span class="quiet">"manual says "</span>
            <span class="figures mid">{fasten.torque.text()}</span>
            <span class="quiet">{move || pass_words(&kept.get_value(), pass.get())}</span>
        </p>
        <AnswerPlate answer trouble=None />
        <GuardLine fasten=fasten.clone() />
        {fasten.compound.clone().map(|application| view! { <CompoundLine application step=id /> })}
        <Bolts bolts />
        <p>{fastener_words(&fasten)}</p>
        <OtherUnits answer />
        <WrenchRow />
    }
    .into_any()
}

/// What the slip guard says of the manual's torque on this thread: a mark, a word, a sentence.
#[component]
fn GuardLine(fasten: Fasten) -> impl IntoView {
    answer::guard(&fasten).map(|judgement| {
        let mark = match judgement.verdict {
            Verdict::Plausible => "✓",
            Verdict::High => "▲",
            Verdict::Low => "▼",
            Verdict::Absurd => "✕",
        };
        view! {
            <p class="guard" class:trouble-line=judgement.verdict == Verdict::Absurd>
                <span aria-hidden="true">{mark}</span>
                " "
                {judgement.sentence}
            </p>
        }
    })
}

/// What is set on which wrench for the next fastener of `step`, for the record.
pub fn wrench_set(bench: Bench, step: &Step) -> Option<WrenchSet> {
    let fasten = as_fasten(step)?;
    let next = bench
        .progress
        .with(|progress| next_fastener(step, &progress.step(step.id)))?;
    let answer = bench
        .settings
        .with(|s| answer::fasten(fasten, next.pass, &s.wrenches, s.in_hand));
    Some(WrenchSet {
        value: answer.number,
        unit: answer.unit,
        tool: answer.wrench.unwrap_or_default(),
    })
}

fn as_fasten(step: &Step) -> Option<&Fasten> {
    match &step.work {
        Work::Fasten(fasten) => Some(fasten),
        _ => None,
    }
}

fn pass_words(fasten: &Fasten, pass: usize) -> String {
    let this = fasten.pass(pass);
    if fasten.pass_count() == 1 {
        String::new()
    } else if this.round {
        format!(" · pass {}: once round at the full torque", pass + 1)
    } else {
        format!(" · pass {}: {:.0} % of it", pass + 1, this.share * 100.0)
    }
}

/// "4 × M6, class 8.8, new, thread oiled".
fn fastener_words(fasten: &Fasten) -> String {
    let class = fasten
        .strength
        .map_or(String::new(), |strength| format!(", {}", strength.name()));
    let new = match fasten.reuse {
        Reuse::New => ", new ones only",
        Reuse::Again => "",
    };
    format!(
        "{} × {}{class}{new}; thread {}",
        fasten.layout.count(),
        fasten.thread.name(),
        fasten.condition.words()
    )
}
