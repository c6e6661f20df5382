//! A job's progress as a picture: a bar of its steps, done filled, skipped crossed, waiting hatched.

use crate::job::overview::StepState;
use leptos::prelude::*;

const WIDE: f64 = 360.0;
const HIGH: f64 = 36.0;

/// The bar; neighbours of one state are drawn as one, so that many steps cost no more than few.
pub fn progress_bar(states: &[StepState]) -> AnyView {
    let each = WIDE / states.len().max(1) as f64;
    let mut runs: Vec<(StepState, usize, usize)> = Vec::new();
    for (at, state) in states.iter().enumerate() {
        match runs.last_mut() {
            Some((same, _, to)) if same == state => *to = at + 1,
            _ => runs.push((*state, at, at + 1)),
        }
    }
    let done = states.iter().filter(|state| **state == StepState::Done).count();
    let drawn: Vec<AnyView> = runs
        .into_iter()
        .map(|(state, from, to)| {
            let (x, width) = (from as f64 * each, (to - from) as f64 * each);
            let class = match state {
                StepState::Done => "done",
                StepState::LeftOut => "left-out",
                StepState::Next => "next",
                StepState::Open => "open",
                StepState::Curing => "curing",
                StepState::NotSettled => "not-settled",
            };
            view! { <rect class=class x=x y="0" width=width height=HIGH /> }.into_any()
        })
        .collect();
    // A line between steps while they can be told apart.
    let lines = if states.len() <= 60 { states.len() } else { 0 };
    let lines: String = (1..lines.max(1))
        .map(|at| format!("M{:.1} 0V{HIGH}", at as f64 * each))
        .collect();
    view! {
        <svg
            class="progress"
            viewBox=format!("-1 -1 {} {}", WIDE + 2.0, HIGH + 2.0)
            preserveAspectRatio="none"
            role="img"
            aria-label=format!("{done} of {} steps done", states.len())
        >
            {drawn}
            <path class="between" d=lines />
            <rect class="outline" x="0" y="0" width=WIDE height=HIGH />
        </svg>
    }
    .into_any()
}
