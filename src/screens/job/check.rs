//! A check step: readings against their limits, bores read as a grid, with the tool and the temperature.

use super::accept::accept;
use super::grid::BoreGrid;
use super::said::read_with;
use crate::bench::{Bench, ReadWith};
use crate::job::kinds::{Check, Limit, Work};
use crate::job::progress::Reading;
use crate::job::reading::What;
use crate::job::readings;
use crate::job::sense;
use crate::job::sheet::Step;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{each, memo, piece, press, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::parts::typed::{next_unit, turned};
use crate::trade::quantity::{Unit, convert, read_in, trimmed};
use leptos::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;

/// What sizes are read with.
const TOOLS: [&str; 6] = [
    "micrometer",
    "bore gauge",
    "caliper",
    "dial gauge",
    "feeler gauge",
    "depth gauge",
];

/// The readings of a check step.
#[component]
pub fn CheckWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some((id, check)) = step.with_value(|step| match &step.work {
        Work::Check(check) => Some((step.id, check.clone())),
        _ => None,
    }) else {
        return ().into_any();
    };
    let mut measured = check.readings.iter().filter(|limit| limit.worked.is_none());
    let measures = !check.bores.is_empty() || measured.any(|limit| !limit.whole);
    let with = RwSignal::new(first_with(bench, id));
    let readings: Vec<AnyView> = check
        .readings
        .into_iter()
        .map(|limit| match limit.worked {
            Some(_) => worked(step, limit),
            None => view! { <OneReading step limit with radius_too=true /> }.into_any(),
        })
        .collect();
    let bores: Vec<AnyView> = check
        .bores
        .into_iter()
        .map(|bore| view! { <BoreGrid step bore with /> }.into_any())
        .collect();
    let with_what = measures.then(|| view! { <WithWhat with /> }.into_any());
    view! { {with_what} {readings} {bores} }.into_any()
}

/// The one reading asked for, with what it is read with.
pub fn one(step: StoredValue<Step>, check: &Check, what: &What) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let with = RwSignal::new(first_with(bench, id));
    let (field, measures) = match what {
        What::Limit(reading) => {
            let Some(limit) = readings::limit(check, *reading).cloned() else {
                return ().into_any();
            };
            let measures = !limit.whole;
            (
                view! { <OneReading step limit with radius_too=false /> }.into_any(),
                measures,
            )
        }
        What::Radius(_) => (radius(step, what.clone(), with, true), true),
        place => (super::grid::asked(step, check, place, with), true),
    };
    let with_what = measures.then(|| view! { <WithWhat with /> }.into_any());
    view! { {field} {with_what} }.into_any()
}

/// Every reading with what its limits said, one a line.
pub fn verdicts(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    piece(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        let rows = step.with_value(|step| readings::said(step, &progress));
        let row = |(name, value): (String, String)| {
            view! { <div><dt>{name}</dt> <dd>{value}</dd></div> }.into_any()
        };
        view! { <dl class="facts" aria-label="what was read" aria-live="polite">{each(rows, row)}</dl> }
            .into_any()
    })
    .into_any()
}

/// What the last reading of the step was taken with; else no tool, and the shop's temperature.
fn first_with(bench: Bench, id: crate::job::sheet::StepId) -> ReadWith {
    let last = bench.progress.with_untracked(|progress| {
        let readings = &progress.touched(id)?.readings;
        readings.last().map(|reading| ReadWith {
            tool: reading.tool.clone(),
            at_c: reading.at_c,
            decimals: None,
        })
    });
    let now = bench.now.get_untracked();
    last.unwrap_or_else(|| ReadWith {
        tool: String::new(),
        at_c: bench.settings.with_untracked(|settings| {
            let known = settings.temperature_at(now)?;
            Some((known.get::<degree_celsius>() * 10.0).round() / 10.0)
        }),
        decimals: None,
    })
}

/// The tool in the hand and the part's temperature, kept with every reading from now on.
#[component]
fn WithWhat(with: RwSignal<ReadWith>) -> impl IntoView {
    let open = RwSignal::new(false);
    let own = Callback::new(move |words: String| {
        with.update(|with| words.trim().clone_into(&mut with.tool));
        open.set(false);
        true
    });
    let tools = piece(move || {
        if !open.get() {
            return ().into_any();
        }
        let now = with.with(|with| with.tool.clone());
        let tiles = TOOLS.map(|tool| {
            KeySpec::choice(tool, now == tool, move || {
                with.update(|with| tool.clone_into(&mut with.tool));
                open.set(false);
            })
        });
        view! { {keys(tiles.to_vec())} <AskWords key="another tool" label="What it is read with" take=own /> }
            .into_any()
    });
    let tool = move || {
        with.with(|with| {
            if with.tool.is_empty() {
                "—".to_owned()
            } else {
                with.tool.clone()
            }
        })
    };
    let scale = Bench::here()
        .sheet
        .with_untracked(|sheet| sheet.units.temperature.symbol());
    let at = move || with.with(|with| with.at_c.map_or(String::new(), |at| turned(at, "°C", scale)));
    let take = move |read: f64| {
        let celsius = convert(read, scale, "°C").unwrap_or(read);
        let celsius = sense::PART_C.of(celsius)?;
        with.update(|with| with.at_c = Some(celsius));
        Ok(())
    };
    view! {
        <div class="two">
            <div class="field">
                <span>"read with"</span>
                <button aria-label=text(move || format!("read with: {}", tool())) on:click=press(move || open.update(|open| *open = !*open))>
                    <span>{text(tool)}</span>
                </button>
            </div>
            <NumberField name="part and gauge at" unit=Signal::stored(scale.to_owned()) value=text(at) take signed=true />
        </div>
        {tools}
    }
}

/// The radius that a run-out is read at, where its limits are per radius and the plan names none.
fn radius(step: StoredValue<Step>, what: What, with: RwSignal<ReadWith>, asked: bool) -> AnyView {
    let bench = Bench::here();
    let (id, name, unit) = step.with_value(|step| {
        let unit = readings::unit(step, &what).unwrap_or_default().to_owned();
        (step.id, what.name(Some(step)), unit)
    });
    let kept = StoredValue::new((what, unit.clone()));
    let value = move || {
        kept.with_value(|(what, unit)| {
            bench.progress.with(|progress| {
                let found = progress.touched(id).and_then(|step| step.reading(what));
                found.map_or(String::new(), |found| found.shown_in(unit))
            })
        })
    };
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        let with = read_with(with, typed);
        kept.with_value(|(what, unit)| bench.measure(id, what.clone(), value, unit, &with))
            .map_err(|refused| refused.to_string())
    };
    view! { <NumberField name unit=Signal::stored(unit) value=text(value) take typed asked /> }.into_any()
}

/// One worked out from the others: what it comes to, and what its limits say.
fn worked(step: StoredValue<Step>, limit: Limit) -> AnyView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let what = What::Limit(limit.id);
    let kept = StoredValue::new((what.clone(), limit.clone()));
    let said = text(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        step.with_value(|step| {
            kept.with_value(|(what, limit)| match readings::value(step, &progress, what) {
                None => "—".to_owned(),
                Some(value) => {
                    let verdict = readings::judge(step, &progress, what, value).words();
                    format!("{} · {verdict}", limit.figure(value))
                }
            })
        })
    });
    let how = limit.worked.as_ref().map_or("", |worked| worked.words());
    let lines = piece(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        let lines = step.with_value(|step| kept.with_value(|(what, _)| readings::how(step, &progress, what)));
        each(lines, |line| view! { <p class="how-line">{line}</p> }.into_any()).into_any()
    });
    view! {
        <dl class="facts" aria-label=limit.name.clone() aria-live="polite">
            <dt>{limit.name.clone()}</dt>
            <dd>{said} " " <span>{format!("{how} ({})", limit.words())}</span></dd>
        </dl>
        {lines}
        {accept(id, what)}
    }
    .into_any()
}

#[component]
fn OneReading(
    step: StoredValue<Step>,
    limit: Limit,
    with: RwSignal<ReadWith>,
    /// Its radius above it, where the plan names none.
    radius_too: bool,
) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let kept = StoredValue::new(limit.clone());
    let what = What::Limit(limit.id);
    let read = what.clone();
    let reading = memo(move || {
        bench
            .progress
            .with(|progress| progress.touched(id)?.reading(&read).cloned())
    });
    // It is read in the unit it was read in last, else in the plan's.
    let last = reading.with_untracked(|found| found.as_ref().map(|found| found.unit.clone()));
    let first = last.filter(|unit| convert(1.0, unit, &limit.unit).is_some());
    let unit = RwSignal::new(first.unwrap_or_else(|| limit.unit.clone()));
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        let what = kept.with_value(|limit| What::Limit(limit.id));
        let unit = unit.get_untracked();
        bench
            .measure(id, what, value, &unit, &read_with(with, typed))
            .map_err(|refused| refused.to_string())
    };
    let value = move || {
        reading.with(|found| {
            let shown = |found: &Reading| unit.with(|unit| found.shown_in(unit));
            found.as_ref().map_or(String::new(), shown)
        })
    };
    let said = move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        step.with_value(|step| {
            let what = kept.with_value(|limit| What::Limit(limit.id));
            readings::value(step, &progress, &what).map_or(String::new(), |value| {
                let per = kept.with_value(|limit| limit.per.map(Unit::symbol));
                let per = per.map_or(String::new(), |per| format!(" · {} per {per}", trimmed(value, 3)));
                format!(
                    "{per} · {}",
                    readings::judge(step, &progress, &what, value).words()
                )
            })
        })
    };
    let units = read_in(&limit.unit);
    let turn = (!units.is_empty()).then(|| {
        Callback::new(move |()| {
            unit.update(|unit| next_unit(&units, unit));
        })
    });
    let radius =
        (radius_too && limit.asks_radius()).then(|| radius(step, What::Radius(limit.id), with, false));
    view! {
        {radius}
        <NumberField name=limit.name.clone() unit=unit value=text(value) take signed=true typed turn=turn asked=!radius_too />
        <p><span class="limits">{limit.words()}</span> <strong>{text(said)}</strong></p>
        {accept(id, what)}
    }
}
