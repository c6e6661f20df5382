//! One step of the plan as a form.

use super::field::field_row;
use crate::bench::Bench;
use crate::job::field::{Entry, Shown};
use crate::job::form;
use crate::job::kinds::LIST;
use crate::job::sheet::StepId;
use crate::parts::dynamic::{piece, press, row, rows};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::not_together::not_together;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use leptos::prelude::*;

/// What a row is told apart by: all that it shows.
fn key(field: &Shown) -> String {
    let mut key = [field.id.as_str(), &field.label, &field.value].join("\n");
    match &field.entry {
        Entry::Number { unit, .. } => key += unit,
        Entry::Choice(offered) => offered.iter().for_each(|(value, words)| {
            key += value;
            key += words;
        }),
        Entry::Head
        | Entry::Said
        | Entry::Words
        | Entry::Torque
        | Entry::Thread
        | Entry::Flag
        | Entry::Press => {}
    }
    key
}

/// The form of one step; every change is kept at once.
#[component]
pub fn StepForm(step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let fields = move || {
        bench.sheet.with(|sheet| {
            let fields = sheet.step(step).map(|found| form::fields(sheet, found));
            let row = |field| row(key(&field), move || field_row(bench, step, field));
            fields.into_iter().flatten().map(row).collect()
        })
    };
    let heading = move || {
        bench.sheet.with(|sheet| {
            sheet
                .place(step)
                .map_or("There is no such step in this job.".to_owned(), |at| {
                    format!("Step {} of {}", at + 1, sheet.steps.len())
                })
        })
    };
    let kinds = RwSignal::new(false);
    let other_kind = piece(move || {
        if !kinds.get() {
            return keys(vec![KeySpec::new("another kind of work", move || {
                kinds.set(true)
            })]);
        }
        let offered = LIST
            .iter()
            .filter_map(|kind| (kind.blank)().map(|work| (kind.word, work)));
        let specs = offered.map(|(kind, work)| {
            KeySpec::new(kind, move || {
                bench.tell_plan(bench.change_work(step, work.clone()));
                kinds.set(false);
            })
        });
        keys(specs.collect())
    });
    view! {
        <div class="step plan">
            <header class="head end"><h1>{heading}</h1></header>
            <div class="body form">
                {not_together(bench, Some(step))}
                {rows(fields)}
                {other_kind}
            </div>
            <div class="work-keys">
                <button class="work-key first" on:click=press(move || Route::Plan.go())>"Back to the plan"</button>
                <UndoKey />
            </div>
        </div>
    }
}
