//! One cure clock as a bar with its marks, the time left in large figures and the end in words.

use super::when::{digits, span, when};
use crate::bench::Bench;
use crate::job::clock::CureClock;
use crate::trade::cure::{DoneAt, Milestone, ShopHistory};
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use leptos::prelude::*;
use uom::si::time::second;

/// Where a clock stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// Not ripe yet: what comes next, and when at the latest.
    Running { next: Milestone, until: Moment },
    /// Ripe for everything since then.
    Ripe { since: Moment },
    /// It does not get there as things are.
    Stalled(String),
}

/// A clock's milestones worth a mark, each with its range, in order of time.
pub fn marks(clock: &CureClock, shop: &ShopHistory) -> Vec<(Milestone, DoneAt)> {
    let mut marks: Vec<(Milestone, DoneAt)> = Vec::new();
    for milestone in Milestone::ALL {
        if let Ok(done) = clock.reached_at(milestone, shop)
            // A label that names one time for several is drawn with one mark: the last, most said.
            && marks.last().is_none_or(|(_, last)| *last != done)
        {
            marks.push((milestone, done));
        }
    }
    marks
}

/// Where `clock` stands at `now`.
pub fn standing(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Standing {
    match clock.reached_at(Milestone::FullCure, shop) {
        Err(why) => Standing::Stalled(why.to_string()),
        Ok(full) if full.latest <= now => Standing::Ripe { since: full.latest },
        Ok(full) => {
            let next = marks(clock, shop)
                .into_iter()
                .find(|(milestone, done)| done.binding(*milestone) > now);
            let (next, until) = next.map_or((Milestone::FullCure, full.latest), |(milestone, done)| {
                (milestone, done.binding(milestone))
            });
            Standing::Running { next, until }
        }
    }
}

/// A remaining time as digits and its unit in one text.
pub fn left_text(until: Moment, now: Moment) -> String {
    let (digits, unit) = digits(until.since(now));
    format!("{digits} {unit}")
}

/// The clock, drawn.
#[component]
pub fn ClockBar(clock: CureClock) -> impl IntoView {
    let bench = Bench::here();
    let kept = StoredValue::new(clock.clone());
    let stands = Memo::new(move |_| {
        let now = bench.now.get();
        bench
            .settings
            .with(|s| kept.with_value(|clock| standing(clock, &s.shop, now)))
    });
    let left = move || match stands.get() {
        Standing::Running { until, .. } => left_text(until, bench.now.get()),
        Standing::Ripe { .. } => "cured".to_owned(),
        Standing::Stalled(_) => "not curing".to_owned(),
    };
    let end = move || {
        let now = bench.now.get();
        match stands.get() {
            Standing::Running { next, until } => format!("{}: {}", next.words(), when(until, now)),
            Standing::Ripe { since } => format!("finished {} ago", span(now.since(since))),
            Standing::Stalled(why) => why,
        }
    };
    view! {
        <article class="clock">
            <h3>{clock.name.clone()}</h3>
            <p class="quiet">{clock.compound.clone()}</p>
            <p class="left">{left}</p>
            <p>{end}</p>
            <Bar clock=kept />
            <ol class="marks">
                {move || {
                    let now = bench.now.get();
                    bench
                        .settings
                        .with(|s| kept.with_value(|clock| marks(clock, &s.shop)))
                        .into_iter()
                        .map(|(milestone, done)| {
                            let at = done.binding(milestone);
                            let state = if at <= now { "✓ " } else { "" };
                            view! {
                                <li>
                                    <span>{state}{milestone.words()}</span>
                                    <span class="figures">{when(at, now)}</span>
                                </li>
                            }
                        })
                        .collect_view()
                }}
            </ol>
        </article>
    }
}

const WIDE: f64 = 360.0;
const HIGH: f64 = 36.0;

#[component]
fn Bar(clock: StoredValue<CureClock>) -> impl IntoView {
    let bench = Bench::here();
    let drawn = move || {
        let now = bench.now.get();
        bench
            .settings
            .with(|s| clock.with_value(|clock| bar(clock, &s.shop, now)))
    };
    move || {
        drawn().map(|bar| {
            view! {
                <svg viewBox=format!("-2 -2 {} {}", WIDE + 4.0, HIGH + 4.0) preserveAspectRatio="none" aria-hidden="true">
                    <rect class="spread" x=bar.spread_from y="0" width=WIDE - bar.spread_from height=HIGH />
                    <rect class="run" x="0" y="0" width=bar.run height=HIGH />
                    {bar
                        .marks
                        .into_iter()
                        .map(|x| view! { <line class="mark" x1=x x2=x y1="0" y2=HIGH /> })
                        .collect_view()}
                    <rect class="outline" x="0" y="0" width=WIDE height=HIGH />
                </svg>
            }
        })
    }
}

/// Lengths along the bar.
struct Drawn {
    run: f64,
    spread_from: f64,
    marks: Vec<f64>,
}

/// The bar runs from the start to the latest end; its lighter part is the range of the end.
fn bar(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Option<Drawn> {
    let full = clock.reached_at(Milestone::FullCure, shop).ok()?;
    let whole = seconds(full.latest.since(clock.started)).max(1.0);
    let along = |at: Moment| (seconds(at.since(clock.started)) / whole).clamp(0.0, 1.0) * WIDE;
    Some(Drawn {
        run: along(now),
        spread_from: along(full.earliest),
        marks: marks(clock, shop)
            .into_iter()
            .map(|(milestone, done)| along(done.binding(milestone)))
            .collect(),
    })
}

fn seconds(span: Time) -> f64 {
    span.get::<second>()
}
