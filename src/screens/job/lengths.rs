//! How often a fasten step's bolts were tightened, how long each is, free and tight, and how far it
//! stretched.

use super::accept::accept;
use super::said::as_typed;
use crate::bench::{Ask, Bench, Intent, ReadWith};
use crate::job::kinds::{Fasten, Work};
use crate::job::progress::Reading;
use crate::job::reading::What;
use crate::job::readings;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{text, when};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::parts::typed::next_unit;
use crate::trade::quantity::{convert, read_in};
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
        <NumberField name=What::Uses.name(None) unit=Signal::stored(String::new()) value=text(value) take asked />
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
            let mm = convert(read.value, &read.unit, "mm");
            let (name, pull) =
                step.with_value(|step| (read.what.name(Some(step)), mm.and_then(|mm| pull_of(step, mm))));
            let pull = pull.map_or(String::new(), |pull| format!(" · {pull}"));
            format!(
                "{name}: {} {} · {}{pull}",
                read.text(),
                read.unit,
                read.verdict.words()
            )
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

/// One length: read in the unit it was read in last, else in the plan's; a key turns to another. It is `asked`
/// where it is the one thing the step asks for now.
pub fn length_field(bench: Bench, step: StoredValue<Step>, what: What, asked: bool) -> AnyView {
    let (id, name) = step.with_value(|step| (step.id, what.name(Some(step))));
    let planned = step.with_value(|step| readings::unit(step, &what).unwrap_or("mm").to_owned());
    let kept = StoredValue::new(what);
    let found = move || {
        bench
            .progress
            .with(|progress| kept.with_value(|what| progress.touched(id)?.reading(what).cloned()))
    };
    let last = untrack(found).map(|found| found.unit);
    let first = last.filter(|unit| convert(1.0, unit, &planned).is_some());
    let unit = RwSignal::new(first.unwrap_or_else(|| planned.clone()));
    let value = move || {
        let shown = |found: Reading| unit.with(|unit| found.shown_in(unit));
        found().map_or(String::new(), shown)
    };
    let typed = RwSignal::new(String::new());
    let take = move |read: f64| {
        let unit = unit.get_untracked();
        let read = bench.measure(id, kept.get_value(), read, &unit, &as_typed(typed));
        read.map_err(|refused| refused.to_string())
    };
    let units = read_in(&planned);
    let turn = Callback::new(move |()| unit.update(|unit| next_unit(&units, unit)));
    view! { <NumberField name unit value=text(value) take typed turn=Some(turn) asked /> }.into_any()
}
