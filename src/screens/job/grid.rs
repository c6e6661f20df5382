//! A bore read in two directions at three depths: the readings where they are taken, and what they say.

use super::said::read_with;
use crate::bench::{Bench, ReadWith};
use crate::job::id::ReadingId;
use crate::job::kinds::check::bore::{BoreAnswer, answer, size_words};
use crate::job::kinds::{Bore, Check, DEPTH_WORDS, DIRECTION_WORDS};
use crate::job::reading::{What, whole_bore};
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece};
use crate::parts::number_field::NumberField;
use crate::trade::quantity::Unit;
use leptos::prelude::*;

/// One bore, with its journal where there is one.
#[component]
pub fn BoreGrid(step: StoredValue<Step>, bore: Bore, with: RwSignal<ReadWith>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let kept = StoredValue::new(bore.clone());
    let said = memo(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        kept.with_value(|bore| Said(answer(bore, &progress)))
    });
    let journal = bore.journal.as_ref().map(|journal| {
        grid(
            bench,
            id,
            (bore.id, true),
            &journal.name,
            (String::new(), true),
            (with, None),
        )
    });
    let own = (size_words(&bore), bore.shaft);
    view! {
        {grid(bench, id, (bore.id, false), &bore.name, own, (with, None))}
        {journal}
        {piece(move || said.with(|said| judged(&said.0)))}
        {super::accept::accept(id, whole_bore(bore.id))}
    }
}

#[derive(Clone, PartialEq)]
struct Said(BoreAnswer);

/// The six readings where they are taken, a row a depth, a column a direction: in a bore cut open, or over a
/// shaft. The one asked for is ringed, and the step's big key opens it.
fn grid(
    bench: Bench,
    step: StepId,
    (bore, journal): (ReadingId, bool),
    name: &str,
    (limits, shaft): (String, bool),
    (with, asked): (RwSignal<ReadWith>, Option<&What>),
) -> AnyView {
    let unit = bench.sheet.with_untracked(|sheet| sheet.units.length.symbol());
    let places: Vec<What> = What::grid(bore, journal).collect();
    let rows = places.chunks(DIRECTION_WORDS.len());
    let cells: Vec<AnyView> = DEPTH_WORDS
        .iter()
        .zip(rows)
        .flat_map(|(depth, row)| {
            let row = row
                .iter()
                .map(|what| cell(bench, step, what, with, asked == Some(what)));
            std::iter::once(view! { <span class="row-name">{*depth}</span> }.into_any()).chain(row)
        })
        .collect();
    view! {
        <section class="bore" aria-label=name.to_owned()>
            <h2>{name.to_owned()} ", " {unit} " " <span class="quiet figures">{limits}</span></h2>
            <div class="grid" class:shaft=shaft>
                <span></span>
                <span>{DIRECTION_WORDS[0]}</span>
                <span>{DIRECTION_WORDS[1]}</span>
                {cells}
            </div>
        </section>
    }
    .into_any()
}

/// The bore or its journal that a place belongs to, with that place asked for.
pub fn asked(step: StoredValue<Step>, check: &Check, what: &What, with: RwSignal<ReadWith>) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let What::Place { bore, journal, .. } = what else {
        return ().into_any();
    };
    let Some(found) = check.bores.iter().find(|found| found.id == *bore) else {
        return ().into_any();
    };
    let (name, drawn) = match (&found.journal, journal) {
        (Some(own), true) => (&own.name, (String::new(), true)),
        _ => (&found.name, (size_words(found), found.shaft)),
    };
    grid(bench, id, (*bore, *journal), name, drawn, (with, Some(what)))
}

/// One place's field; `asked`: it is the one the step asks for, so that its big key opens it.
fn cell(bench: Bench, step: StepId, what: &What, with: RwSignal<ReadWith>, asked: bool) -> AnyView {
    let kept = StoredValue::new(what.clone());
    let name = bench.sheet.with_untracked(|sheet| what.name(sheet.step(step)));
    let unit = bench.sheet.with_untracked(|sheet| sheet.units.length.symbol());
    let value = memo(move || {
        bench.progress.with(|progress| {
            let found = kept.with_value(|what| progress.touched(step)?.reading(what));
            found.map_or(String::new(), |found| found.shown_in(unit))
        })
    });
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        let with = read_with(with, typed);
        bench
            .measure(step, kept.get_value(), value, unit, &with)
            .map_err(|refused| refused.to_string())
    };
    let unit = Signal::stored(unit.to_owned());
    view! { <NumberField name unit value take typed asked /> }.into_any()
}

fn judged(said: &BoreAnswer) -> AnyView {
    let rows: Vec<AnyView> = said
        .judged
        .iter()
        .map(|line| {
            let mark = match (line.verdict.is_empty(), line.outside) {
                (true, _) => "",
                (false, true) => "✕ ",
                (false, false) => "✓ ",
            };
            let limit = match (line.verdict.as_str(), line.limit.as_str()) {
                ("", _) => String::new(),
                (verdict, limit) => format!("{mark}{verdict} ({limit})"),
            };
            view! {
                <dt>{line.name.clone()}</dt>
                <dd class:trouble-line=line.outside>{line.value.clone()} " " <span>{limit}</span></dd>
            }
            .into_any()
        })
        .collect();
    view! {
        <dl class="facts" aria-label="what the readings say" aria-live="polite">{rows}</dl>
        <p>{said.trouble.clone()}</p>
    }
    .into_any()
}
