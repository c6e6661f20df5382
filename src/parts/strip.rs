//! The strip: the clock that ends next, on every screen; the way to all of them, and to the bench.

use super::clock_bar::{Standing, left_text, standing};
use crate::bench::Bench;
use crate::device::place;
use crate::job::seating::oven::OvenState;
use crate::job::seating::words::clock_text;
use crate::trade::moment::Moment;
use leptos::prelude::*;

/// One line for the strip.
#[derive(Debug, Clone, PartialEq)]
struct Line {
    left: String,
    name: String,
    more: usize,
}

/// The strip along the top.
#[component]
pub fn Strip() -> impl IntoView {
    let bench = Bench::here();
    let line = Memo::new(move |_| strip_line(bench));
    view! {
        <header class="strip">
            <button class="running" aria-label="running clocks" on:click=move |_| place::go("clocks")>
                {move || match line.get() {
                    Some(line) => view! {
                        <span class="left">{line.left}</span>
                        <span class="name">{line.name}</span>
                        <span class="quiet">{(line.more > 0).then(|| format!("+{}", line.more))}</span>
                    }
                    .into_any(),
                    None => view! { <span class="quiet">"no clock running"</span> }.into_any(),
                }}
            </button>
            <button class="corner" on:click=move |_| place::go("bench")>
                "Bench"
            </button>
        </header>
    }
}

/// The part on its way from the oven, while it may still be good.
fn oven_line(bench: Bench) -> Option<(Moment, Line)> {
    let now = bench.now.get();
    let run = bench.settings.with(|s| s.seat.oven)?;
    let (OvenState::Open(left) | OvenState::Doubtful(left)) = run.state(now) else {
        return None;
    };
    let line = Line {
        left: format!("{} min", clock_text(left)),
        name: "home by then".to_owned(),
        more: 0,
    };
    Some((now.plus(left), line))
}

/// The running clock that ends first; ripe ones when none runs.
fn strip_line(bench: Bench) -> Option<Line> {
    let now = bench.now.get();
    let mut running: Vec<(Moment, Line)> = bench.settings.with(|s| {
        bench.clocks.with(|clocks| {
            clocks
                .iter()
                .filter(|clock| clock.ended.is_none())
                .filter_map(|clock| {
                    let line = |left: String| Line {
                        left,
                        name: clock.name.clone(),
                        more: 0,
                    };
                    match standing(clock, &s.shop, now) {
                        Standing::Running { until, .. } => Some((until, line(left_text(until, now)))),
                        Standing::Stalled(_) => Some((Moment(i64::MAX), line("not curing".to_owned()))),
                        Standing::Ripe { .. } => None,
                    }
                })
                .collect()
        })
    });
    if let Some((until, left)) = oven_line(bench) {
        running.push((until, left));
    }
    running.sort_by_key(|(until, _)| *until);
    let more = running.len().saturating_sub(1);
    running.into_iter().next().map(|(_, line)| Line { more, ..line })
}
