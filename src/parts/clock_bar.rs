//! One cure clock as a bar with its marks, the time left in large figures and the end in words.

use super::dynamic::{each, piece, press, text};
use super::hand_over::hand_over_calendar;
use super::plate::Plate;
use super::when::{digits, span, when};
use crate::bench::Bench;
use crate::job::clock::{ClockId, CureClock, Standing};
use crate::trade::cure::{Milestone, ShopHistory};
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use leptos::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// A remaining time as digits and its unit in one text.
pub fn left_text(until: Moment, now: Moment) -> String {
    let (digits, unit) = digits(until.since(now));
    format!("{digits} {unit}")
}

/// Everything a clock shows, in words and lengths.
#[derive(Debug, Clone, PartialEq)]
struct Face {
    left: String,
    end: String,
    marks: Vec<Row>,
    bar: Option<Drawn>,
    note: Option<String>,
    ripe: bool,
}

/// A mark in words.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Row {
    words: String,
    at: String,
    range: String,
}

/// Lengths along the bar.
#[derive(Debug, Clone, PartialEq)]
struct Drawn {
    run: f64,
    spread_from: f64,
    marks: Vec<f64>,
}

fn face(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Face {
    let stands = clock.standing(shop, now);
    let (left, end) = match stands {
        Standing::Running(mark) => (
            left_text(mark.at(), now),
            format!("{}: {}", mark.words(), when(mark.at(), now)),
        ),
        Standing::Ripe { since } => (
            "cured".to_owned(),
            format!("finished {} ago", span(now.since(since))),
        ),
        Standing::Stalled(why) => ("not curing".to_owned(), why.to_string()),
    };
    Face {
        left,
        end,
        marks: rows(clock, shop, now),
        bar: bar(clock, shop, now),
        note: note(clock, shop, now),
        ripe: matches!(stands, Standing::Ripe { .. }),
    }
}

/// What of the air nobody told, and what is taken for it.
fn note(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Option<String> {
    let label = clock.spec.label.at.get::<degree_celsius>();
    let warmth = shop
        .is_empty()
        .then(|| format!("No shop temperature told: the label’s {label:.0} °C is taken."));
    let damp = (clock.spec.goes_by_humidity() && shop.humidity_at(now).is_none())
        .then(|| "No humidity told: 40 to 50 % is taken.".to_owned());
    let all: Vec<String> = warmth.into_iter().chain(damp).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

fn rows(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Vec<Row> {
    let marks = clock.marks(shop).into_iter();
    marks
        .map(|mark| {
            let done = mark.done;
            let passed = if mark.at() <= now { "✓ " } else { "" };
            let range = if mark.last.is_deadline() || done.earliest == done.latest || mark.at() <= now {
                String::new()
            } else {
                format!("at the earliest {}", when(done.earliest, now))
            };
            Row {
                words: format!("{passed}{}", mark.words()),
                at: when(mark.at(), now),
                range,
            }
        })
        .collect()
}

/// The clock, drawn.
#[component]
pub fn ClockBar(clock: CureClock) -> impl IntoView {
    let bench = Bench::here();
    let (name, compound) = (clock.name.clone(), clock.compound.clone());
    let (id, bound) = (clock.id, clock.bound.is_some());
    let label = name.clone();
    let kept = StoredValue::new(clock);
    let face = Memo::new(move |_| {
        let now = bench.now.get();
        bench
            .settings
            .with(|s| kept.with_value(|clock| face(clock, &s.shop, now)))
    });
    // The keys are built anew only when they change: a touch must not lose its key to a tick.
    let ripe = Memo::new(move |_| face.with(|face| face.ripe));
    view! {
        <article class="clock" aria-label=label>
            <h2>{name}</h2>
            <p class="quiet">{compound}</p>
            <p class="left">{text(move || face.with(|face| face.left.clone()))}</p>
            <p class="end">{text(move || face.with(|face| face.end.clone()))}</p>
            <p class="end">{text(move || before_then(bench, id))}</p>
            {piece(move || face.with(|face| face.bar.as_ref().map(drawn).into_any()))}
            <ol class="marks">{piece(move || face.with(|face| face.marks.iter().map(mark).collect::<Vec<_>>().into_any()))}</ol>
            <p class="quiet">{text(move || face.with(|face| face.note.clone().unwrap_or_default()))}</p>
            <div class="clock-keys">
                {piece(move || {
                    let again = key("Opened again", "on anew, restart", move || bench.restart(id));
                    let calendar = key("Calendar", "a file for the phone’s", move || hand_over_calendar(bench, Some(id)));
                    let away = (ripe.get() || !bound).then(|| key("Archive", "out of sight", move || bench.put_away(id)));
                    if ripe.get() {
                        (away, again).into_any()
                    } else {
                        (again, calendar, away).into_any()
                    }
                })}
            </div>
        </article>
    }
}

/// The clock on a step's stage: the time left as its number, what ends then, the bar and its marks, each
/// finding its own place.
pub fn clock_on_stage(clock: CureClock) -> AnyView {
    let bench = Bench::here();
    let (id, name) = (clock.id, clock.name.clone());
    let kept = StoredValue::new(clock);
    let face = Memo::new(move |_| {
        let now = bench.now.get();
        bench
            .settings
            .with(|s| kept.with_value(|clock| face(clock, &s.shop, now)))
    });
    let part = move |at: usize| {
        let left = face.with(|face| face.left.clone());
        left.splitn(2, ' ').nth(at).unwrap_or_default().to_owned()
    };
    let bar = piece(move || {
        let bar = face.with(|face| face.bar.as_ref().map(drawn));
        bar.map(|bar| view! { <div class="clock-bar">{bar}</div> }.into_any())
            .into_any()
    });
    let marks = piece(move || {
        let row = |row: Row| {
            view! { <p class="mark-row"><span>{row.words}</span> <span class="figures">{row.at}</span></p> }
                .into_any()
        };
        each(face.with(|face| face.marks.clone()), row).into_any()
    });
    view! {
        <Plate says=name number=text(move || part(0)) unit=text(move || part(1)) />
        <p class="mid">{text(move || face.with(|face| face.end.clone()))}</p>
        <p class="mid">{text(move || before_then(bench, id))}</p>
        {bar}
        {marks}
    }
    .into_any()
}

/// The steps that must be done before it skins, and how long is left.
fn before_then(bench: Bench, id: ClockId) -> String {
    let now = bench.now.get();
    let all = bench.deadlines(None).into_iter();
    let words = all
        .filter(|deadline| deadline.clock == id)
        .filter_map(|deadline| {
            let title = bench
                .sheet
                .with(|sheet| sheet.step(deadline.step).map(|step| step.title.clone()))?;
            let until = deadline.until.ok()?;
            Some(match deadline.over(now) {
                true => format!("It has skinned before “{title}” was done."),
                false => format!("“{title}” before it skins: {} left.", left_text(until, now)),
            })
        });
    words.collect::<Vec<_>>().join(" ")
}

fn key(words: &'static str, small: &'static str, act: impl Fn() + 'static) -> AnyView {
    view! {
        <button class="work-key" on:click=press(act)>
            {words}
            <small>{small}</small>
        </button>
    }
    .into_any()
}

fn mark(row: &Row) -> AnyView {
    let Row { words, at, range } = row.clone();
    view! {
        <li>
            <span>{words}</span>
            <span class="figures">{at}</span>
            <span class="quiet">{range}</span>
        </li>
    }
    .into_any()
}

const WIDE: f64 = 360.0;
const HIGH: f64 = 36.0;

fn drawn(bar: &Drawn) -> AnyView {
    let ticks = bar.marks.clone().into_iter();
    view! {
        <svg viewBox=format!("-2 -2 {} {}", WIDE + 4.0, HIGH + 4.0) preserveAspectRatio="none" aria-hidden="true">
            <defs>
                <pattern id="late" width="8" height="8" patternUnits="userSpaceOnUse">
                    <path d="M0 8 8 0" />
                </pattern>
            </defs>
            <rect class="spread" x=bar.spread_from y="0" width=WIDE - bar.spread_from height=HIGH />
            <rect class="run" x="0" y="0" width=bar.run height=HIGH />
            {ticks.map(|x| view! { <line class="mark" x1=x x2=x y1="0" y2=HIGH /> }.into_any()).collect::<Vec<_>>()}
            <rect class="outline" x="0" y="0" width=WIDE height=HIGH />
        </svg>
    }
    .into_any()
}

/// The bar runs from the start to the latest end; its lighter part is the range of the end.
fn bar(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Option<Drawn> {
    let full = clock.reached_at(Milestone::FullCure, shop).ok()?;
    let whole = seconds(full.latest.since(clock.started)).max(1.0);
    // To a tenth of a pixel: the bar is drawn anew only when it has moved.
    let along = |at: Moment| {
        let share = (seconds(at.since(clock.started)) / whole).clamp(0.0, 1.0);
        (share * WIDE * 10.0).round() / 10.0
    };
    Some(Drawn {
        run: along(now),
        spread_from: along(full.earliest),
        marks: clock.marks(shop).iter().map(|mark| along(mark.at())).collect(),
    })
}

fn seconds(span: Time) -> f64 {
    span.get::<second>()
}
