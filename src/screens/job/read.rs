//! The one reading or answer that a step asks for now, large; and what was found, with what settles it.

use super::said::say;
use super::{ReadingOpen, accept, check, gauge, lengths, run, said, select};
use crate::bench::Bench;
use crate::job::kinds::Work;
use crate::job::reading::{Fact, What};
use crate::job::readings;
use crate::job::sheet::Step;
use crate::parts::dynamic::text;
use crate::parts::line::touch_above;
use leptos::prelude::*;

/// The reading asked for: its name, its limits, its field, and what the last one said.
pub fn asked(step: StoredValue<Step>, what: What) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let open = use_context::<ReadingOpen>().map(|open| open.0);
    // A new thing to read begins with its keypad shut.
    if let Some(open) = open {
        open.set(false);
    }
    let limits = step.with_value(|step| readings::limit_words(step, &what));
    let last = text(move || {
        bench.progress.with(|progress| {
            let last = progress.touched(id).and_then(|step| step.readings.last());
            last.map_or(String::new(), |last| {
                step.with_value(|step| {
                    format!(
                        "{}: {} {} · {}",
                        last.what.name(Some(step)),
                        last.text(),
                        last.unit,
                        last.verdict.words()
                    )
                })
            })
        })
    });
    let work = step.with_value(|step| step.work.clone());
    let field = match (&work, &what) {
        (_, What::Fact(fact)) => {
            view! { {say(step, *fact)} {run::beside(step, *fact)} {lock(&work, *fact)} }.into_any()
        }
        (Work::Check(check), _) => check::one(step, check, &what),
        (Work::Fasten(fasten), What::Uses) => lengths::uses(id, fasten, true),
        (Work::Fasten(_), What::Free(_) | What::Tight(_)) => lengths::length_field(bench, step, what, true),
        (Work::Gauge(gauge), _) => gauge::one(step, gauge, what),
        (Work::Select(_), _) => select::one(step, what),
        (Work::Fasten(_), _)
        | (Work::Bond(_), _)
        | (Work::Seat(_), _)
        | (Work::Lift(_), _)
        | (Work::Turn(_), _)
        | (Work::Fill(_), _)
        | (Work::Run(_), _)
        | (Work::Clean(_), _)
        | (Work::Fit(_), _) => {
            let name = step.with_value(|step| run::reading_name(step, &what));
            view! { {said::read(step, what, &name, true)} {run::since(bench, step)} }.into_any()
        }
    };
    // Of what, how much, until when: before it is told how much it was.
    let told = match &work {
        Work::Fill(fill) => super::fill::told(fill),
        Work::Run(run) => run::told(run),
        _ => ().into_any(),
    };
    view! {
        <div class="asking">{field}</div>
        <p class="figures mid">{limits}</p>
        {told}
        <p class="last">{last}</p>
    }
    .into_any()
}

/// How what keeps the fasteners is put on.
fn lock(work: &Work, fact: Fact) -> AnyView {
    match (work, fact) {
        (Work::Fasten(fasten), Fact::Locked) => {
            view! { <p class="mid">{format!("{}: {}", fasten.lock.words(), fasten.lock.how())}</p> }
                .into_any()
        }
        _ => ().into_any(),
    }
}

/// What was found and is not settled.
pub fn found(step: StoredValue<Step>, what: What) -> AnyView {
    let id = step.with_value(|step| step.id);
    // A trial that failed is mended by the next pack.
    if step.with_value(|step| matches!(step.work, Work::Select(_))) {
        return select::chosen(step);
    }
    // What was said is said anew by the same keys.
    match &what {
        What::Turning => return super::turn::feel(step),
        What::Fact(fact) => return say(step, *fact),
        _ => {}
    }
    view! {
        <div class="asking">{accept::accept(id, what)}</div>
        <p class="quiet">{touch_above("Or do it again")}</p>
    }
    .into_any()
}
