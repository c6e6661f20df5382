//! From the oven to the bench: one tap starts it, the recorded instant does the rest.

use super::Answered;
use crate::bench::Bench;
use crate::job::kinds::seat::oven::OvenState;
use crate::job::kinds::seat::words::{clock_text, window_words};
use crate::job::sheet::StepId;
use crate::parts::dynamic::{memo, piece, press, text, when, whether};
use crate::parts::ruler::under;
use crate::trade::heat_plan::PlanKind;
use leptos::prelude::*;

/// The key that starts the countdown, then the countdown.
pub fn countdown(step: Option<StepId>, answered: Answered) -> AnyView {
    let bench = Bench::here();
    let running = memo(move || bench.countdown(step).is_some());
    piece(move || {
        if running.get() {
            running_view(bench, step, true)
        } else {
            start_key(bench, step, answered)
        }
    })
    .into_any()
}

fn start_key(bench: Bench, step: Option<StepId>, answered: Answered) -> AnyView {
    let found = answered.with(|found| match found {
        Some((_, Ok(answer))) => Some((answer.followed().which, answer.window?)),
        _ => None,
    });
    let Some((which, window)) = found else {
        return ().into_any();
    };
    let words = out_words(which);
    view! {
        <button class="work-key first" on:click=press(move || bench.take_out(step, window))>
            {words}
            <small>{window_words(window)}</small>
        </button>
    }
    .into_any()
}

/// What is said when it comes out.
pub fn out_words(which: PlanKind) -> &'static str {
    match which {
        PlanKind::CoolPart | PlanKind::CoolShaft => "Out of the cold",
        PlanKind::HeatAndCool => "Both are out",
        PlanKind::HeatHousing
        | PlanKind::HeatPart
        | PlanKind::PressCold
        | PlanKind::SlideCold
        | PlanKind::NoPlan => "Out of the oven",
    }
}

/// The countdown alone, while it runs: on a step its key is the big one.
pub fn running_countdown(step: StepId) -> AnyView {
    let bench = Bench::here();
    let running = memo(move || bench.countdown(Some(step)).is_some());
    let shown = when(
        move || running.get(),
        move || running_view(bench, Some(step), false),
    );
    view! { {shown} }.into_any()
}

fn running_view(bench: Bench, step: Option<StepId>, keyed: bool) -> AnyView {
    let state = move || bench.countdown(step);
    let says = text(move || {
        match state() {
            Some(OvenState::Open(_)) => "be home within",
            Some(OvenState::Doubtful(_)) => "good only in still air, for",
            Some(OvenState::Shut(_)) => "too late: back into the heat, since",
            None => "",
        }
        .to_owned()
    });
    let digits = text(move || match state() {
        Some(OvenState::Open(left) | OvenState::Doubtful(left)) => clock_text(left),
        Some(OvenState::Shut(since)) => clock_text(since),
        None => String::new(),
    });
    let late = whether(move || matches!(state(), Some(OvenState::Shut(_))));
    let line = memo(move || bench.countdown_ruler(step));
    let line = piece(move || under(line.get()));
    let doubtful = whether(move || matches!(state(), Some(OvenState::Doubtful(_))));
    view! {
        <div class="plate countdown" style=("--wide", "3.1") role="timer" aria-label="countdown" class:late=late class:doubtful=doubtful>
            <div class="says">{says}</div>
            <div class="number">
                <span class="value">{digits}</span>
                <span class="unit">"min"</span>
            </div>
            {line}
            {keyed.then(|| view! {
                <button class="work-key" on:click=press(move || bench.put_countdown_away())>
                    "It is home"
                    <small>"or start again"</small>
                </button>
            }.into_any())}
        </div>
    }
    .into_any()
}
