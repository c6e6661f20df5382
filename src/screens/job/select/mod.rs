//! A select step: what is measured or read off, what to put in, the trial after it, round by round.

mod codes;
mod own;
mod rounds;

use super::accept::accept;
use super::facts::Facts;
use super::said::as_typed;
use crate::bench::{Bench, Intent};
use crate::job::kinds::select::answer::{Wants, aim, wants};
use crate::job::kinds::select::words::{Said, advice_words, aim_words};
use crate::job::kinds::select::{By, Select};
use crate::job::kinds::{Piece, Work};
use crate::job::progress::StepProgress;
use crate::job::reading::What;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::trade::quantity::Unit;
use leptos::prelude::*;

/// The step at hand, its select work, and how far it is.
#[derive(Clone, Copy)]
struct Here {
    bench: Bench,
    id: StepId,
    step: StoredValue<Step>,
    select: StoredValue<Select>,
    progress: Memo<StepProgress>,
}

impl Here {
    /// Says what is in; tells whether it was taken.
    fn choose(self, pieces: Vec<Piece>) -> bool {
        let step = self.id;
        let outcome = self.bench.send(Intent::Choose { step, pieces });
        let taken = outcome.is_ok();
        self.bench.tell(outcome);
        taken
    }

    /// The symbol of the step's unit.
    fn unit(self) -> &'static str {
        self.select.with_value(|select| select.unit.symbol())
    }
}

impl Here {
    fn of(step: StoredValue<Step>) -> Option<Self> {
        let bench = Bench::here();
        let (id, select) = step.with_value(|step| match &step.work {
            Work::Select(select) => Some((step.id, select.clone())),
            _ => None,
        })?;
        Some(Self {
            bench,
            id,
            step,
            select: StoredValue::new(select),
            progress: memo(move || bench.progress.with(|progress| progress.step(id))),
        })
    }
}

/// The field of the one reading asked for.
pub fn one(step: StoredValue<Step>, what: What) -> AnyView {
    Here::of(step).map_or(().into_any(), |here| reading(here, what, true))
}

/// What to put in, or both codes it is chosen by.
pub fn choose(step: StoredValue<Step>) -> AnyView {
    let Some(here) = Here::of(step) else {
        return ().into_any();
    };
    let codes = here.select.with_value(|select| select.by == By::Code);
    view! {
        {offered(here)}
        {codes.then(|| codes::codes(here))}
        {accept(here.id, What::Pack)}
        {rounds::rounds(here)}
    }
    .into_any()
}

/// What is in, round by round.
pub fn chosen(step: StoredValue<Step>) -> AnyView {
    Here::of(step).map_or(().into_any(), |here| {
        view! { {offered(here)} {accept(here.id, What::Pack)} {accept(here.id, What::Trial)} {rounds::rounds(here)} }
            .into_any()
    })
}

/// The work of a select step in full.
#[component]
pub fn SelectWork(step: StoredValue<Step>) -> impl IntoView {
    let Some(here) = Here::of(step) else {
        return ().into_any();
    };
    let select = here.select.get_value();
    let by = By::ALL.iter().find(|(by, _)| *by == select.by);
    let rows = vec![
        ("choose", select.part.clone()),
        ("by", by.map_or(String::new(), |(_, words)| (*words).to_owned())),
    ];
    let rows = rows.into_iter().filter(|(_, words)| !words.is_empty());
    let places = select.places.iter().filter(|_| select.measured());
    let places: Vec<AnyView> = places
        .map(|place| reading(here, What::At(place.id), false))
        .collect();
    let codes = (select.by == By::Code).then(|| codes::codes(here));
    let aimed = piece(move || {
        let found = here
            .select
            .with_value(|select| here.progress.with(|progress| aim(select, progress)));
        match found {
            Some(Ok(aim)) if here.select.with_value(|select| select.by == By::Gap) => {
                lines(aim_words(&aim, here.unit()))
            }
            _ => ().into_any(),
        }
    });
    view! {
        <Facts rows=rows.collect() />
        {places}
        {codes}
        {aimed}
        {offered(here)}
        {own::own(here)}
        {accept(here.id, What::Pack)}
        {trial(here)}
        {rounds::rounds(here)}
    }
    .into_any()
}

fn lines(words: Vec<String>) -> AnyView {
    let lines = words.into_iter().map(|line| view! { <p>{line}</p> }.into_any());
    lines.collect::<Vec<_>>().into_any()
}

/// What to put in now, and the key that says it is in.
fn offered(here: Here) -> AnyView {
    let said = memo(move || {
        let advice = here.step.with_value(|step| here.bench.advice(step));
        let mut said: Said = here.select.with_value(|select| {
            here.progress
                .with(|progress| advice_words(select, progress, &advice))
        });
        let away = here.step.with_value(|step| here.bench.in_elsewhere(step));
        said.lines.extend(away);
        let pieces = here.step.with_value(|step| here.bench.offered(step));
        // What is in already is not offered again.
        let there = here
            .progress
            .with(|progress| progress.rounds.last().map(|round| round.pieces.clone()));
        (said, pieces.filter(|pieces| there.as_ref() != Some(pieces)))
    });
    piece(move || {
        let (said, pieces) = said.get();
        if said == Said::default() {
            return ().into_any();
        }
        let key = pieces.map(|pieces| {
            keys(vec![KeySpec::new("this is in", move || {
                here.choose(pieces.clone());
            })])
        });
        let head = (!said.head.is_empty()).then(|| view! { <strong>{said.head.clone()}</strong> }.into_any());
        view! {
            <section class="compound" aria-label="what to put in" aria-live="polite">
                <span class="quiet">"put in"</span>
                {head}
                {lines(said.lines)}
                {key}
            </section>
        }
        .into_any()
    })
    .into_any()
}

/// What is read once it is in: shown from the first round on.
fn trial(here: Here) -> AnyView {
    let asked = here.select.with_value(|select| {
        let trial = select.trial.as_ref()?;
        let whats = match trial.loose {
            true => vec![What::TurnLoose, What::TurnTight],
            false => vec![What::Trial],
        };
        Some((
            whats,
            format!("{}: {}", trial.name(), trial.limit_words(select.unit)),
        ))
    });
    let Some((whats, limits)) = asked else {
        return ().into_any();
    };
    let begun = memo(move || {
        let wants = here
            .select
            .with_value(|select| here.progress.with(|progress| wants(select, progress)));
        !matches!(
            wants,
            Some(Wants::Choose | Wants::Code | Wants::Read(What::At(_)))
        )
    });
    piece(move || {
        if !begun.get() {
            return ().into_any();
        }
        let fields: Vec<AnyView> = whats
            .iter()
            .map(|what| reading(here, what.clone(), false))
            .collect();
        view! {
            <section aria-label="with it in">
                <p>"Tightened as the manual says, then read."</p>
                {fields}
                <p>{limits.clone()}</p>
                {accept(here.id, What::Trial)}
            </section>
        }
        .into_any()
    })
    .into_any()
}

/// One reading, in the unit the step asks for, with what its limits said.
fn reading(here: Here, what: What, asked: bool) -> AnyView {
    let bench = here.bench;
    let name = here.step.with_value(|step| what.name(Some(step)));
    let unit = here.select.with_value(|select| match (&what, &select.trial) {
        (What::Trial | What::TurnTight | What::TurnLoose, Some(trial)) => trial.unit(select.unit),
        _ => select.unit.symbol(),
    });
    let kept = StoredValue::new(what);
    let found = memo(move || {
        here.progress
            .with(|progress| kept.with_value(|what| progress.reading(what).cloned()))
    });
    let value = text(move || {
        found.with(|found| {
            let found = found.as_ref().filter(|reading| reading.unit == unit);
            found.map_or(String::new(), |reading| reading.shown_in(unit))
        })
    });
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        bench
            .measure(here.id, kept.get_value(), value, unit, &as_typed(typed))
            .map_err(|refused| refused.to_string())
    };
    view! { <NumberField name unit=Signal::stored(unit.to_owned()) value take signed=true typed asked /> }
        .into_any()
}
