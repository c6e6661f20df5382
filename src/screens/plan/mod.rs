//! The plan of the job: its steps added, moved, copied and taken out by thumb.

mod field;
mod new;
mod step_form;

pub use step_form::StepForm;

use crate::bench::{Bench, Incoming};
use crate::job::sheet::{StepId, Units};
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{piece, press, row, rows};
use crate::parts::file_key::FileKey;
use crate::parts::keys::{KeySpec, keys};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::quantity::Unit;
use leptos::prelude::*;

/// The steps, to change.
#[component]
pub fn PlanScreen() -> impl IntoView {
    let bench = Bench::here();
    let picked = RwSignal::new(None::<StepId>);
    // Where a new step is being put: behind that one, or at the end.
    let adding = RwSignal::new(None::<Option<StepId>>);
    let steps = move || {
        bench.sheet.with(|sheet| {
            let numbered = sheet.steps.iter().zip(1..);
            numbered
                .map(|(step, number)| {
                    let line = (step.id, number, step.title.clone(), step.work.word());
                    let key = format!("{} {number} {} {}", line.0.0, line.3, line.2);
                    row(key, move || plan_row(bench, line, picked, adding))
                })
                .collect()
        })
    };
    let machine = Callback::new(move |words: String| {
        bench.name_machine(&words);
        true
    });
    let head = piece(move || {
        let (title, machine_name, empty) = bench
            .sheet
            .with(|sheet| (sheet.title.clone(), sheet.machine.clone(), sheet.steps.is_empty()));
        view! {
            <h1>{title}</h1>
            <AskWords key="name the machine" label="Which machine?" first=machine_name.clone() take=machine />
            <p class="quiet">{machine_name}</p>
            {units(bench)}
            {empty.then(|| view! { <p>"No steps yet. Add the first one."</p> }.into_any())}
        }
        .into_any()
    });
    view! {
        <div class="step plan">
            <header class="head end"><p class="quiet">"Plan"</p></header>
            <div class="body">
                {head}
                <ol class="step-list">
                    {rows(steps)}
                </ol>
                {piece(move || adding.get().map_or(().into_any(), |after| new::new_step(bench, after, adding)))}
                <FileKey words="add steps from a table of fasteners" accept=".csv,.txt,.tsv,text/csv" take=from_table(bench) />
                {keys(vec![KeySpec::new("all steps", || Route::Steps.go())])}
            </div>
            <div class="work-keys">
                <button class="work-key first" on:click=press(move || adding.set(Some(None)))>"Add a step"</button>
                <UndoKey />
            </div>
        </div>
    }
}

/// What the manual measures in: where a new reading begins.
fn units(bench: Bench) -> AnyView {
    let now = bench.sheet.with(|sheet| sheet.units);
    let lengths = Units::LENGTHS.into_iter().map(move |length| {
        let on = now.length == length;
        KeySpec::choice(length.symbol(), on, move || {
            bench.set_units(Units { length, ..now })
        })
    });
    let temperatures = Units::TEMPERATURES.into_iter().map(move |temperature| {
        let on = now.temperature == temperature;
        let set = move || bench.set_units(Units { temperature, ..now });
        KeySpec::choice(temperature.symbol(), on, set)
    });
    let all: Vec<KeySpec> = lengths.chain(temperatures).collect();
    view! {
        <section aria-label="the manual measures in">
            <p class="quiet">"The manual measures in"</p>
            {keys(all)}
        </section>
    }
    .into_any()
}

fn from_table(bench: Bench) -> Callback<(String, String)> {
    Callback::new(
        move |(name, text): (String, String)| match bench.read_file(&text) {
            Ok(Incoming::Steps(steps)) => bench.add_steps(steps),
            Ok(_) => bench.say(
                format!("{name} is no table of fasteners: open it under Jobs."),
                true,
            ),
            Err(words) => bench.say(format!("{name}: {words}"), true),
        },
    )
}

fn plan_row(
    bench: Bench,
    (id, number, title, word): (StepId, usize, String, &'static str),
    picked: RwSignal<Option<StepId>>,
    adding: RwSignal<Option<Option<StepId>>>,
) -> AnyView {
    let more = piece(move || {
        if picked.get() != Some(id) {
            return ().into_any();
        }
        let told = move |outcome| {
            bench.tell_plan(outcome);
        };
        keys(vec![
            KeySpec::new("change it", move || Route::PlanStep(id).go()),
            KeySpec::new("↑ earlier", move || told(bench.move_step(id, false))),
            KeySpec::new("↓ later", move || told(bench.move_step(id, true))),
            KeySpec::new("add one after it", move || adding.set(Some(Some(id)))),
            KeySpec::new("copy it", move || told(bench.copy_step(id).map(drop))),
            KeySpec::new("delete", move || told(bench.remove_step(id))),
        ])
    });
    view! {
        <li>
            <button on:click=press(move || picked.update(|at| *at = if *at == Some(id) { None } else { Some(id) }))>
                <span class="figures">{number}</span>
                <span>{title}</span>
                <span class="quiet">{word}</span>
            </button>
            {more}
        </li>
    }
    .into_any()
}
