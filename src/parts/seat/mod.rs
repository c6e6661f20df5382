//! A press fit as it is shown on its step and on the Seat screen.

mod countdown;
mod depth;
mod fit_drawing;
mod tools_drawing;

pub use countdown::{countdown, out_words, running_countdown};
pub use depth::depth_readings;
pub use fit_drawing::fit_drawing;
pub use tools_drawing::tools_drawing;

use super::dynamic::{memo, piece};
use super::facts::Facts;
use super::plate::told_plate;
use super::ruler::under;
use crate::bench::Bench;
use crate::job::kinds::Seat;
use crate::job::kinds::seat::ruler::{of_manual, ruler};
use crate::job::kinds::seat::words::{Headline, Row, headline, passed_over, rows, tool_rows, warnings};
use crate::job::kinds::seat::{self, SeatAnswer, SeatError, after};
use crate::job::scale::Ruler;
use crate::job::sheet::StepId;
use leptos::prelude::*;

/// The fit at hand and its answer; none where the step is no seat step.
pub type Answered = Memo<Option<(Seat, Result<SeatAnswer, SeatError>)>>;

/// Works the fit at hand out, and again whenever a number of it or the room changes.
pub fn answered(step: Option<StepId>) -> Answered {
    let bench = Bench::here();
    memo(move || {
        let now = bench.now.get();
        let seat = bench.seat(step)?;
        let answer = seat::answer(&seat, bench.settings.with(|s| s.temperature_at(now)));
        Some((seat, answer))
    })
}

/// A piece of view that needs the whole answer; nothing while there is none.
fn with_answer(answered: Answered, view: fn(&Seat, &SeatAnswer) -> AnyView) -> AnyView {
    piece(move || {
        answered.with(|found| match found {
            Some((seat, Ok(answer))) => view(seat, answer),
            _ => ().into_any(),
        })
    })
    .into_any()
}

/// The plate, how it is done, and what speaks against it.
pub fn plan_plate(answered: Answered) -> AnyView {
    let bench = Bench::here();
    let told = RwSignal::new(false);
    let press_kn = memo(move || bench.settings.with(|s| s.press_kn));
    piece(move || {
        let press_kn = press_kn.get();
        answered.with(|found| {
            let Some((seat, answer)) = found else {
                return ().into_any();
            };
            match (seat::order(seat), answer) {
                (Some(order), answer) => by_manual(seat, order, told, answer.as_ref(), press_kn),
                (None, Ok(answer)) => plate(
                    said_head(bench, headline(answer)),
                    told,
                    how_lines(seat, answer),
                    ruler(answer, press_kn, bench.figures()),
                    after::how(seat, answer),
                    troubles(seat, answer, press_kn),
                ),
                (None, Err(error)) => trouble(error),
            }
        })
    })
    .into_any()
}

/// What speaks against it, while it is seated and afterwards.
fn troubles(seat: &Seat, answer: &SeatAnswer, press_kn: Option<f64>) -> Vec<String> {
    let figures = Bench::here().figures();
    let all = [warnings(answer, press_kn), after::warnings(seat, answer)].concat();
    all.iter().map(|words| figures.said(words)).collect()
}

/// Our own number in the user's unit.
fn said_head(bench: Bench, head: Headline) -> Headline {
    let figures = bench.figures();
    let said = figures.said(&format!("{} {}", head.number, head.unit));
    let (number, unit) = match (said.split_once(' '), head.unit) {
        (Some((number, _)), "°C") => (number.to_owned(), figures.degree()),
        (Some((number, _)), "kN") => (number.to_owned(), figures.force()),
        _ => (head.number, head.unit),
    };
    Headline {
        number,
        unit,
        also: figures.said(&head.also),
        ..head
    }
}

/// Rows of ours in the user's units; what the manual says stays as it says it.
fn said_rows(bench: Bench, rows: Vec<Row>) -> Vec<Row> {
    let figures = bench.figures();
    let said = rows.into_iter().map(|(name, words)| (name, figures.said(&words)));
    said.collect()
}

fn trouble(error: &SeatError) -> AnyView {
    view! { <p class="trouble-line mid" role="alert">{Bench::here().in_figures(&error.to_string())}</p> }
        .into_any()
}

/// The manual's way first, then ours, and why it differs.
fn by_manual(
    seat: &Seat,
    order: Headline,
    told: RwSignal<bool>,
    answer: Result<&SeatAnswer, &SeatError>,
    press_kn: Option<f64>,
) -> AnyView {
    let troubles = answer.map_or(Vec::new(), |answer| troubles(seat, answer, press_kn));
    let figures = Bench::here().figures();
    let line = answer.ok().and_then(|answer| of_manual(seat, answer, figures));
    let ours = match answer {
        Ok(answer) => {
            let beside = seat::beside(seat, answer);
            let own = Bench::here().in_figures(&seat::own_words(answer));
            view! {
                <p class="mid">{own}</p>
                {beside.map(|words| view! { <p class="mid">{words}</p> }.into_any())}
            }
            .into_any()
        }
        Err(error) => trouble(error),
    };
    view! {
        {plate(order, told, answer.map_or(Vec::new(), |answer| how_lines(seat, answer)), line, seat::stated_kind(seat).how(), troubles)}
        <section class="own-plan" aria-label="our own plan">
            <h2>"Our own plan beside it"</h2>
            {ours}
        </section>
    }
    .into_any()
}

/// How the number comes about, in the user's units.
fn how_lines(seat: &Seat, answer: &SeatAnswer) -> Vec<String> {
    let bench = Bench::here();
    let lines = seat::how::how(seat, answer);
    lines.iter().map(|line| bench.in_figures(line)).collect()
}

fn plate(
    head: Headline,
    told: RwSignal<bool>,
    lines: Vec<String>,
    line: Option<Ruler>,
    how: &'static str,
    troubles: Vec<String>,
) -> AnyView {
    let Headline {
        says,
        number,
        unit,
        also,
    } = head;
    view! {
        {told_plate(says.to_owned(), number, unit.to_owned(), told, move || lines.clone())}
        {under(line)}
        {(!also.is_empty()).then(|| view! { <p class="mid also">{also}</p> }.into_any())}
        {troubles.into_iter().map(|line| view! { <p class="trouble-line">{line}</p> }.into_any()).collect::<Vec<_>>()}
        <p class="how">{how}</p>
    }
    .into_any()
}

/// The figures behind the plate.
pub fn fit_facts(answered: Answered) -> AnyView {
    let bench = Bench::here();
    piece(move || {
        let press_kn = bench.settings.with(|s| s.press_kn);
        answered.with(|found| match found {
            Some((seat, Ok(answer))) => {
                let rows = said_rows(
                    bench,
                    [rows(answer, press_kn), after::rows(seat, answer)].concat(),
                );
                view! { <Facts rows=rows /> }.into_any()
            }
            _ => ().into_any(),
        })
    })
    .into_any()
}

/// The ways that were passed over, each with its reason.
pub fn other_ways(answered: Answered) -> AnyView {
    with_answer(answered, |_, answer| {
        let ways = said_rows(Bench::here(), passed_over(answer));
        if ways.is_empty() {
            return ().into_any();
        }
        view! {
            <section class="ways" aria-label="ways passed over">
                <h2>"Not this way"</h2>
                <Facts rows=ways />
            </section>
        }
        .into_any()
    })
}

/// What to look for in the drawer.
pub fn tool_facts(answered: Answered) -> AnyView {
    with_answer(answered, |seat, answer| {
        view! { <Facts rows=tool_rows(seat, answer) /> }.into_any()
    })
}
