//! Measure: one calculation of the bench at a time, drawn out of the table of `job::measuring`.

mod fields;

use crate::bench::Bench;
use crate::job::measuring::{Answer, LIST, Trouble, of};
use crate::parts::dynamic::{memo, piece, press, text};
use crate::parts::facts::Facts;
use crate::parts::picker::picker;
use crate::parts::work_keys::UndoKey;
use leptos::prelude::*;

/// The screen.
pub fn measure_screen() -> AnyView {
    let bench = Bench::here();
    let at = memo(move || bench.settings.with(|s| s.measure.at_hand().id));
    view! {
        <div class="worked">
            <div class="worked-answer">
                <h1>"Measure"</h1>
                {chooser(bench)}
                {answer_plate(bench)}
                {piece(move || view! { <p class="quiet">{of(at.get()).how}</p> }.into_any())}
            </div>
            <div class="worked-form">
                {units(bench)}
                {piece(move || fields::fields(bench, of(at.get())))}
                {clear(bench)}
                <UndoKey />
            </div>
        </div>
    }
    .into_any()
}

/// Which calculation.
fn chooser(bench: Bench) -> AnyView {
    let name = text(move || bench.settings.with(|s| s.measure.at_hand().name.to_owned()));
    let names = LIST.iter().map(|one| one.name.to_owned()).collect();
    let pick = Callback::new(move |at: usize| {
        if let Some(one) = LIST.get(at) {
            bench.set("calculation", |s| one.id.clone_into(&mut s.measure.calculation));
        }
    });
    picker("calculation", name, names, pick)
}

/// Millimetres or inches.
fn units(bench: Bench) -> AnyView {
    const UNITS: [&str; 2] = ["mm, N·m, N, °C", "in, in·lb, lb, °F"];
    let unit = text(move || {
        let inch = bench.settings.with(|s| s.measure.inch);
        UNITS[usize::from(inch)].to_owned()
    });
    let pick = Callback::new(move |at: usize| bench.set("units", |s| s.measure.inch = at == 1));
    picker("units", unit, UNITS.map(str::to_owned).to_vec(), pick)
}

/// The answer, or what it waits for.
fn answer_plate(bench: Bench) -> AnyView {
    let answered = memo(move || {
        bench.settings.with(|s| {
            let calculation = s.measure.at_hand();
            (calculation.id, calculation.answer(&s.measure))
        })
    });
    piece(move || {
        let (id, answer) = answered.get();
        match answer {
            Ok(answer) => answered_plate(answer, of(id).model),
            Err(why @ (Trouble::Missing(_) | Trouble::Line(_))) => {
                view! { <p class="mid" role="status">{why.to_string()}</p> }.into_any()
            }
            Err(why @ (Trouble::Said(_) | Trouble::Wrong(_) | Trouble::Bolt(_))) => {
                view! { <p class="trouble-line mid" role="alert">{why.to_string()}</p> }.into_any()
            }
        }
    })
    .into_any()
}

fn answered_plate(answer: Answer, model: &'static str) -> AnyView {
    let verdict = if answer.refused { "trouble mid" } else { "mid" };
    // A range is two numbers, and a class may be a word: they have no room at the size of one number.
    let digits = |c: char| c.is_ascii_digit() || "-−.,".contains(c);
    let number = if !answer.number.chars().all(digits) {
        view! { <div class="large">{answer.number} " " {answer.unit}</div> }.into_any()
    } else {
        view! {
            <div class="number">
                <span class="value">{answer.number}</span>
                <span class="unit">{answer.unit}</span>
            </div>
        }
        .into_any()
    };
    let mut rows = answer.rows;
    rows.push(("model", model.to_owned()));
    view! {
        <section class="plate" aria-live="polite">
            <div class="says">{answer.says}</div>
            {number}
            <p class=verdict>{answer.verdict}</p>
        </section>
        <Facts rows />
    }
    .into_any()
}

/// Forgets what was typed for the calculation at hand; Undo brings it back.
fn clear(bench: Bench) -> AnyView {
    let forget = press(move || {
        bench.set("clearing of the numbers", |s| {
            let calculation = s.measure.at_hand();
            s.measure.clear(calculation);
        });
    });
    view! { <button class="side-key" on:click=forget>"clear these numbers"</button> }.into_any()
}
