//! Seen from afar: after half a minute without a touch, the number, what comes next and the nearest clock,
//! across the whole screen. The first touch wakes it and does nothing else.

use super::next::face;
use crate::bench::{Ask, Bench};
use crate::device::{hands, place};
use crate::job::guarding::guard_fasten;
use crate::job::kinds::Work;
use crate::job::kinds::fasten::fastening::PassAnswer;
use crate::job::kinds::seat::oven::OvenState;
use crate::job::kinds::seat::words::clock_text;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, press, text, when};
use crate::parts::strip::nearest;
use crate::trade::guard::Verdict;
use crate::trade::quantity::{TorqueUnit, printed_with_point, shortest};
use leptos::prelude::*;

/// Without a touch for so long, ms.
const UNTOUCHED_MS: f64 = 30_000.0;

/// The view of the step from afar, while nobody touches it.
pub fn far(step: StepId) -> AnyView {
    let bench = Bench::here();
    let far = RwSignal::new(false);
    Effect::new(move || {
        bench.now.track();
        let free = !place::at_a_desk() && !hands::at_a_field();
        if free && hands::idle_ms() > UNTOUCHED_MS && !far.get_untracked() {
            far.set(true);
        }
    });
    let shown = when(
        move || far.get(),
        move || {
            let number = memo(move || number(bench, step));
            let next = text(move || face(bench, step).map_or(String::new(), |(face, _)| face));
            let count = text(move || face(bench, step).map_or(String::new(), |(_, small)| small));
            view! {
                <button class="far" on:click=press(move || far.set(false))>
                    <span class="near figures">{text(move || nearest(bench))}</span>
                    <span class="number">
                        {text(move || number.get().0)} " " <span class="unit">{text(move || number.get().1)}</span>
                    </span>
                    <span class="next">{next}</span>
                    <span class="count">{count}</span>
                    <span class="unseen">"touch to wake"</span>
                </button>
            }
            .into_any()
        },
    );
    view! { {shown} }.into_any()
}

/// What is asked and its number, as they are said aloud; the unit in full. The voice is English, so that it has the
/// point: it would read 1,200 as twelve hundred.
pub fn spoken(bench: Bench, step: StepId) -> String {
    printed_with_point(|| said_aloud(bench, step))
}

fn said_aloud(bench: Bench, step: StepId) -> String {
    let (face, small) = face(bench, step).unwrap_or_default();
    let (number, symbol) = number(bench, step);
    let (symbol, adapter) = symbol.split_once(", ").unwrap_or((&symbol, ""));
    let unit = TorqueUnit::ALL.into_iter().find(|unit| unit.symbol() == symbol);
    let unit = match unit {
        Some(unit) => format!("{} {adapter}", unit.words()),
        None if symbol == "°" => "degrees".to_owned(),
        None => String::new(),
    };
    let said = [format!("{number} {unit}"), face, small];
    let said = said
        .iter()
        .map(|words| words.trim())
        .filter(|words| !words.is_empty());
    said.collect::<Vec<_>>().join(". ")
}

/// The number to set now and its unit, or how long what is hot stays good; nothing where none is asked for, or it
/// can't be set.
fn number(bench: Bench, step: StepId) -> (String, String) {
    // Hot metal cools: how long it is good for comes before all else.
    if let Some(OvenState::Open(left) | OvenState::Doubtful(left)) = bench.on_its_way() {
        return (clock_text(left), "min".to_owned());
    }
    let Some(Ask::Tally(next)) = bench.ask(step) else {
        return Default::default();
    };
    let found = bench.sheet.with(|sheet| sheet.step(step).cloned());
    // What would wreck the bolt isn't called across the shop.
    if found.as_ref().is_some_and(|step| absurd(step, next.place)) {
        return Default::default();
    }
    let answer = found.and_then(|step| bench.pass_answer(&step, next.pass, next.place));
    match answer {
        Some(PassAnswer::Torque(answer)) => {
            let adapter = if answer.adapted { ", adapter" } else { "" };
            (
                answer.number.clone(),
                format!("{}{adapter}", answer.unit.symbol()),
            )
        }
        Some(PassAnswer::Angle { degrees, .. }) => (shortest(degrees), "°".to_owned()),
        Some(PassAnswer::Hand | PassAnswer::All(_)) | None => Default::default(),
    }
}

fn absurd(step: &Step, place: usize) -> bool {
    match &step.work {
        Work::Fasten(fasten) => {
            guard_fasten(&fasten.at(place)).is_some_and(|guard| guard.verdict == Verdict::Absurd)
        }
        _ => false,
    }
}
