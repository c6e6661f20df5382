//! How often a fasten step's bolts were tightened, how long each is, free and tight, and how far it
//! stretched.

use super::accept::accept;
use crate::bench::{Ask, Bench, Intent, ReadWith};
use crate::job::kinds::{Fasten, Work};
use crate::job::reading::What;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{text, when};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use leptos::prelude::*;

/// The length the step asks for, and of which bolt, from 0.
pub fn asked(bench: Bench, step: StepId) -> Option<(What, usize)> {
    match bench.ask(step) {
        Some(Ask::Read(what)) => match what {
            What::Free(at) | What::Tight(at) => Some((what, usize::from(at))),
            _ => None,
        },
        _ => None,
    }
}

/// How often they were tightened before; nothing where the manual doesn't limit it.
pub fn uses(step: StepId, fasten: &Fasten, asked: bool) -> AnyView {
    let bench = Bench::here();
    if fasten.most_uses().is_none() {
        return ().into_any();
    }
    let value = move || {
        let uses = bench.progress.with(|progress| progress.touched(step)?.uses);
        uses.map_or(String::new(), |uses| uses.to_string())
    };
    let take = move |times: f64| {
        let read = bench.measure(step, What::Uses, times, "", &ReadWith::default());
        read.map_err(|refused| refused.to_string())
    };
    view! {
        <NumberField name=What::Uses.name(None) unit=Signal::stored(String::new()) value=Signal::derive(value) take asked />
        <p>{fasten.reuse_words()}</p>
    }
    .into_any()
}

/// Every bolt with what was read of it, and a key for when they are loose again.
pub fn lengths(step: StoredValue<Step>, fasten: &Fasten) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let loosen =
        (fasten.most_uses().is_some() || !fasten.lengths().is_empty()).then(|| loosen_all(bench, id));
    if fasten.lengths().is_empty() {
        return view! { {loosen} }.into_any();
    }
    let rows: Vec<AnyView> = (0..fasten.layout.count() as u8)
        .map(|at| bolt_row(bench, step, at, fasten.stretches()))
        .collect();
    view! {
        <section aria-label="lengths over the ends">
            <h2>"Lengths over the ends"</h2>
            {rows}
        </section>
        {loosen}
    }
    .into_any()
}

/// A key for when all were loosened again; only where any is tight.
fn loosen_all(bench: Bench, step: StepId) -> AnyView {
    let tight = move || {
        bench.progress.with(|progress| {
            let step = progress.touched(step);
            step.is_some_and(|step| !step.closed() && !step.tallies.is_empty())
        })
    };
    let key = when(tight, move || {
        keys(vec![KeySpec::new("all are loose again", move || {
            bench.tell(bench.send(Intent::Loosen(step)));
        })])
    });
    view! { {key} }.into_any()
}

fn bolt_row(bench: Bench, step: StoredValue<Step>, at: u8, stretches: bool) -> AnyView {
    let id = step.with_value(|step| step.id);
    let said = text(move || {
        let read = bench.progress.with(|progress| {
            let step = progress.touched(id)?;
            step.reading(&What::Stretch(at)).cloned()
        });
        read.map_or(String::new(), |read| {
            let (name, pull) =
                step.with_value(|step| (read.what.name(Some(step)), pull_of(step, read.value)));
            let pull = pull.map_or(String::new(), |pull| format!(" · {pull}"));
            format!("{name}: {} mm · {}{pull}", read.value, read.verdict.words())
        })
    });
    let tight = stretches.then(|| length_field(bench, step, What::Tight(at), false));
    view! {
        <div class="two">
            {length_field(bench, step, What::Free(at), false)}
            {tight}
        </div>
        <p>{said}</p>
        {accept(id, What::Free(at))}
        {accept(id, What::Stretch(at))}
    }
    .into_any()
}

/// What that stretch pulls, where the bolt's grip is told.
fn pull_of(step: &Step, mm: f64) -> Option<String> {
    match &step.work {
        Work::Fasten(fasten) => fasten.pull_of_stretch(mm),
        _ => None,
    }
}

/// The field of one length.
pub fn length_field(bench: Bench, step: StoredValue<Step>, what: What, asked: bool) -> AnyView {
    let (id, name) = step.with_value(|step| (step.id, what.name(Some(step))));
    let kept = StoredValue::new(what);
    let value = move || {
        bench.progress.with(|progress| {
            let found = progress.touched(id);
            let read =
                found.and_then(|step| kept.with_value(|what| step.reading(what).map(|read| read.value)));
            read.map_or(String::new(), |value| value.to_string())
        })
    };
    let take = move |mm: f64| {
        let read = bench.measure(id, kept.get_value(), mm, "mm", &ReadWith::default());
        read.map_err(|refused| refused.to_string())
    };
    view! { <NumberField name unit=Signal::stored("mm".to_owned()) value=Signal::derive(value) take asked /> }
        .into_any()
}
