//! A gauge step: plastic laid, cap tightened and taken off, read, wiped away.

use super::accept::accept;
use super::facts::Facts;
use super::said::as_typed;
use crate::bench::{Ask, Bench, Intent};
use crate::job::kinds::gauge::words::{how_words, lay_words, limits_words, plastic_words, said_words};
use crate::job::kinds::{Gauge, Gauged, Work};
use crate::job::reading::What;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::trade::gauging::Plastic;
use crate::trade::quantity::Unit;
use leptos::prelude::*;

/// The work of a gauge step.
#[component]
pub fn GaugeWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some((id, gauge)) = step.with_value(|step| Some((step.id, as_gauge(step)?))) else {
        return ().into_any();
    };
    let torque = gauge
        .torque
        .as_ref()
        .map_or(String::new(), |torque| torque.text());
    let rows = vec![("bearing", gauge.bearing.clone()), ("cap", torque)];
    let rows = rows.into_iter().filter(|(_, words)| !words.is_empty());
    let kept = StoredValue::new(gauge.clone());
    let readings: Vec<AnyView> = [What::Widest, What::Narrow]
        .into_iter()
        .map(|what| reading(bench, id, (step, kept), what, false))
        .collect();
    let said = said(step, &gauge);
    view! {
        <Facts rows=rows.collect() />
        {lines(limits_words(&gauge))}
        {now(bench, id, kept)}
        {readings}
        {said}
    }
    .into_any()
}

/// What the card said.
pub fn said(step: StoredValue<Step>, gauge: &Gauge) -> AnyView {
    let bench = Bench::here();
    let (id, kept) = (step.with_value(|step| step.id), StoredValue::new(gauge.clone()));
    piece(move || {
        let said = kept.with_value(|gauge| {
            bench
                .progress
                .with(|progress| said_words(gauge, &progress.step(id)))
        });
        lines(said)
    })
    .into_any()
}

/// What is to be done of a gauging now.
pub fn do_now(step: StoredValue<Step>, done: Gauged) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let Some(gauge) = step.with_value(as_gauge) else {
        return ().into_any();
    };
    let cap = match (done, &gauge.torque) {
        (Gauged::Tight, Some(torque)) => {
            Some(view! { <p class="large figures">{torque.text()}</p> }.into_any())
        }
        _ => None,
    };
    view! { {cap} {now(bench, id, StoredValue::new(gauge))} }.into_any()
}

/// The field of one end's clearance.
pub fn one(step: StoredValue<Step>, gauge: &Gauge, what: What) -> AnyView {
    let id = step.with_value(|step| step.id);
    reading(
        Bench::here(),
        id,
        (step, StoredValue::new(gauge.clone())),
        what,
        true,
    )
}

fn as_gauge(step: &Step) -> Option<Gauge> {
    match &step.work {
        Work::Gauge(gauge) => Some(gauge.clone()),
        _ => None,
    }
}

fn lines(words: Vec<String>) -> AnyView {
    let lines = words.into_iter().map(|line| view! { <p>{line}</p> }.into_any());
    lines.collect::<Vec<_>>().into_any()
}

/// What is to be done now, and which plastic lies in the bearing.
fn now(bench: Bench, id: StepId, gauge: StoredValue<Gauge>) -> AnyView {
    let ask = memo(move || bench.ask(id));
    let laid = memo(move || {
        bench.progress.with(|progress| {
            progress
                .touched(id)
                .map(|step| step.gauged.clone())
                .unwrap_or_default()
        })
    });
    piece(move || {
        let how = match ask.get() {
            Some(Ask::Gauge(done @ Gauged::Laid(_))) => {
                let how = std::iter::once(how_words(done).to_owned());
                lines(gauge.with_value(lay_words).into_iter().chain(how).collect())
            }
            Some(Ask::Gauge(done)) => lines(vec![how_words(done).to_owned()]),
            _ => ().into_any(),
        };
        let laid = laid.get();
        let unit = gauge.with_value(|gauge| gauge.unit);
        let there = match laid.first() {
            Some(Gauged::Laid(plastic)) => format!("Laid: {}.", plastic_words(*plastic, unit)),
            _ => String::new(),
        };
        // Another one is laid at the beginning, or once this one is wiped away.
        let free = matches!(laid.last(), None | Some(Gauged::Laid(_) | Gauged::Wiped));
        let tiles = Plastic::ALL.map(|plastic| {
            let on = laid.len() == 1 && laid.first() == Some(&Gauged::Laid(plastic));
            KeySpec::choice(plastic_words(plastic, unit), on, move || {
                let done = Gauged::Laid(plastic);
                bench.tell(bench.send(Intent::Gauge { step: id, done }));
            })
        });
        let closed =
            ask.with(|ask| matches!(ask, Some(Ask::GoOn | Ask::Wait(_) | Ask::Acknowledge(_)) | None));
        // The question goes nowhere without its answers.
        let lay = (free && !closed).then(|| {
            view! { <section class="lay"><h2>"Lay which?"</h2> {keys(tiles.to_vec())}</section> }.into_any()
        });
        view! { {how} <p>{there}</p> {lay} }.into_any()
    })
    .into_any()
}

/// One end's clearance, off the card.
fn reading(
    bench: Bench,
    id: StepId,
    (step, gauge): (StoredValue<Step>, StoredValue<Gauge>),
    what: What,
    asked: bool,
) -> AnyView {
    let name = step.with_value(|step| what.name(Some(step)));
    let unit = gauge.with_value(|gauge| gauge.unit.symbol());
    let kept = StoredValue::new(what.clone());
    let found = memo(move || {
        let reading = bench.progress.with(|progress| {
            let step = progress.touched(id)?;
            kept.with_value(|what| step.reading(what).cloned())
        });
        reading.filter(|reading| reading.unit == unit)
    });
    let value = text(move || found.with(|found| found.as_ref().map_or(String::new(), |r| r.text())));
    let verdict = text(move || {
        found.with(|found| {
            found
                .as_ref()
                .map_or(String::new(), |r| r.verdict.words().to_owned())
        })
    });
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        bench
            .measure(id, kept.get_value(), value, unit, &as_typed(typed))
            .map_err(|refused| refused.to_string())
    };
    view! {
        <NumberField name unit=Signal::stored(unit.to_owned()) value take typed asked />
        <p><strong>{verdict}</strong></p>
        {accept(id, what)}
    }
    .into_any()
}
