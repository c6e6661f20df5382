//! A cure clock: the time left in large figures, the end in words, a scale with its marks named on it; a row in
//! the list of all, whole in a sheet or beside its joint, and on a step's stage.

use super::dynamic::{each, memo, piece, press, text, when as shown_when};
use super::hand_over::hand_over_calendar;
use super::plate::Plate;
use super::sheet::sheet;
use super::when::{ago, brief, date, digits, up, when};
use crate::bench::Bench;
use crate::job::air::{Air, air_of};
use crate::job::clock::{ClockId, CureClock, Mark, Standing};
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
    /// The same in few letters, for the row.
    next: String,
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
    /// The same in few letters, for the scale.
    brief: String,
    range: String,
}

/// Lengths along the bar.
#[derive(Debug, Clone, PartialEq)]
struct Drawn {
    run: f64,
    spread_from: f64,
    marks: Vec<f64>,
}

fn face(clock: &CureClock, shop: &ShopHistory, now: Moment, doubted_ms: i64) -> Face {
    let stands = clock.standing(shop, now, doubted_ms);
    let all = clock.marks(shop, doubted_ms);
    let (left, end, next) = match stands {
        Standing::Running(mark) => (
            left_text(mark.at(), now),
            format!("{}: {}", mark.words(), when(shown(&mark), now)),
            format!("{} {}", mark.words(), brief(shown(&mark), now)),
        ),
        Standing::Ripe { since } => {
            let words = format!("finished {}", ago(now.since(since)));
            ("cured".to_owned(), words.clone(), words)
        }
        Standing::Stalled(why) => ("not curing".to_owned(), why.to_string(), why.to_string()),
    };
    Face {
        left,
        end,
        next,
        bar: bar(clock, &all, shop, now),
        marks: rows(all, now),
        note: note(clock, shop, now),
        ripe: matches!(stands, Standing::Ripe { .. }),
    }
}

/// The minute that is shown for a mark: of a deadline the one that has begun, of a wait the next.
fn shown(mark: &Mark) -> Moment {
    match mark.last.is_deadline() {
        true => mark.at(),
        false => up(mark.at()),
    }
}

/// What is taken for the shop's temperature where nobody told it for this cure.
pub fn warmth_note(clock: &CureClock, shop: &ShopHistory) -> Option<String> {
    match air_of(clock, shop) {
        Air::Told => None,
        Air::NotTold { label } => Some(format!(
            "No shop temperature told: the label’s {:.0} °C is taken.",
            label.get::<degree_celsius>()
        )),
        Air::Stale { temperature, told } => Some(format!(
            "The shop’s {:.0} °C was told {}, not for this cure: see Clocks.",
            temperature.get::<degree_celsius>(),
            date(told)
        )),
    }
}

/// What of the air nobody told, and what is taken for it.
fn note(clock: &CureClock, shop: &ShopHistory, now: Moment) -> Option<String> {
    let warmth = warmth_note(clock, shop).filter(|_| !clock.ripe(shop, now));
    let damp = (clock.spec.goes_by_humidity() && shop.humidity_at(now).is_none())
        .then(|| "No humidity told: 40 to 50 % is taken.".to_owned());
    let all: Vec<String> = warmth.into_iter().chain(damp).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

fn rows(marks: Vec<Mark>, now: Moment) -> Vec<Row> {
    marks
        .into_iter()
        .map(|mark| {
            let done = mark.done;
            // A wait is over; of a deadline nobody knows here whether it was kept.
            let passed = match mark.at() <= now {
                true if mark.last.is_deadline() => "past: ",
                true => "✓ ",
                false => "",
            };
            let range = if mark.last.is_deadline() || done.earliest == done.latest || mark.at() <= now {
                String::new()
            } else {
                format!("at the earliest {}", when(done.earliest, now))
            };
            Row {
                words: format!("{passed}{}", mark.words()),
                at: when(shown(&mark), now),
                brief: brief(shown(&mark), now),
                range,
            }
        })
        .collect()
}

/// The face of a clock, by now and by the shop; its start may be moved while it is looked at.
fn face_of(bench: Bench, kept: StoredValue<CureClock>) -> Memo<Face> {
    let id = kept.with_value(|clock| clock.id);
    memo(move || {
        let (now, doubted_ms) = (bench.now.get(), bench.doubted_ms());
        bench.settings.with(|s| {
            bench
                .clocks
                .with(|clocks| match clocks.iter().find(|clock| clock.id == id) {
                    Some(clock) => face(clock, &s.shop, now, doubted_ms),
                    None => kept.with_value(|clock| face(clock, &s.shop, now, doubted_ms)),
                })
        })
    })
}

/// The clock whole: its marks as a list with their ranges, and what can be done with it.
#[component]
pub fn ClockBar(clock: CureClock) -> impl IntoView {
    let bench = Bench::here();
    let (name, compound) = (clock.name.clone(), clock.compound.clone());
    let (id, bound) = (clock.id, clock.bound.is_some());
    let label = name.clone();
    let face = face_of(bench, StoredValue::new(clock));
    // The keys are built anew only when they change: a touch must not lose its key to a tick.
    let ripe = memo(move || face.with(|face| face.ripe));
    view! {
        <article class="clock" aria-label=label>
            <h2>{name}</h2>
            <p class="quiet">{compound}</p>
            <p class="left">{text(move || face.with(|face| face.left.clone()))}</p>
            <p class="end">{text(move || face.with(|face| face.end.clone()))}</p>
            <p class="end">{text(move || before_then(bench, id))}</p>
            {scale(face)}
            <ol class="marks">{piece(move || face.with(|face| face.marks.iter().map(mark).collect::<Vec<_>>().into_any()))}</ol>
            <p class="quiet">{text(move || face.with(|face| face.note.clone().unwrap_or_default()))}</p>
            <div class="clock-keys">
                {piece(move || {
                    let again = key("Put on anew", "restart its clock", move || bench.restart(id));
                    let calendar = key("Calendar", "a file with its alarms", move || hand_over_calendar(bench, Some(id)));
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

/// The clock as a row, as high whatever it says; a touch opens the whole of it.
pub fn clock_row(clock: CureClock) -> AnyView {
    let bench = Bench::here();
    let name = clock.name.clone();
    let kept = StoredValue::new(clock);
    let face = face_of(bench, kept);
    let open = RwSignal::new(false);
    let leave = move || open.set(false);
    let whole = move || {
        let clock = kept.get_value();
        let name = clock.name.clone();
        let inside = view! {
            <ClockBar clock />
            <button class="work-key" on:click=press(leave)>"back"</button>
        };
        sheet(name, leave, inside.into_any())
    };
    view! {
        <li class="clock-row">
            <button on:click=press(move || open.set(true))>
                <span class="name">{name}</span>
                <span class="left">{text(move || face.with(|face| face.left.clone()))}</span>
                <span class="end">{text(move || face.with(|face| face.next.clone()))}</span>
                {scale(face)}
            </button>
            {shown_when(move || open.get(), whole)}
        </li>
    }
    .into_any()
}

/// The clock's scale alone.
pub fn cure_scale(clock: CureClock) -> AnyView {
    scale(face_of(Bench::here(), StoredValue::new(clock)))
}

/// The clock on a step's stage: the time left as its number, what ends then, the scale.
pub fn clock_on_stage(clock: CureClock) -> AnyView {
    let bench = Bench::here();
    let (id, name) = (clock.id, clock.name.clone());
    let face = face_of(bench, StoredValue::new(clock));
    let part = move |at: usize| {
        let left = face.with(|face| face.left.clone());
        left.splitn(2, ' ').nth(at).unwrap_or_default().to_owned()
    };
    view! {
        <Plate says=name number=text(move || part(0)) unit=text(move || part(1)) />
        <p class="mid">{text(move || face.with(|face| face.end.clone()))}</p>
        <p class="mid">{text(move || before_then(bench, id))}</p>
        {scale(face)}
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
    let Row { words, at, range, .. } = row.clone();
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
const HIGH: f64 = 30.0;
/// Where the lines to the names end.
const LOW: f64 = 46.0;

/// The scale of a cure, drawn true: how far it is, the late end hatched, and each mark's name on it, joined to
/// its place where the names stand wider than their marks.
fn scale(face: Memo<Face>) -> AnyView {
    // The drawing changes by tenths of a pixel, the names by the mark: neither builds the other anew.
    let bar = memo(move || face.with(|face| face.bar.clone()));
    let marks = memo(move || face.with(|face| face.marks.clone()));
    let drawing = piece(move || bar.with(|bar| bar.as_ref().map(drawn).into_any()));
    let name = |row: Row| view! { <span>{row.words} <b>{row.brief}</b></span> }.into_any();
    let names = piece(move || each(marks.get(), name).into_any());
    view! {
        <span class="cure-scale">
            {drawing}
            <span class="mark-names">{names}</span>
        </span>
    }
    .into_any()
}

fn drawn(bar: &Drawn) -> AnyView {
    let count = bar.marks.len().max(1) as f64;
    let ticks = bar.marks.iter().zip(0..);
    let ticks = ticks.map(|(x, at)| {
        let name = (f64::from(at) + 0.5) * WIDE / count;
        view! { <path class="mark" d=format!("M{x} 0V{HIGH}L{name:.1} {LOW}") /> }.into_any()
    });
    view! {
        <svg viewBox=format!("-2 -2 {} {}", WIDE + 4.0, LOW + 2.0) preserveAspectRatio="none" aria-hidden="true">
            <defs>
                <pattern id="late" width="8" height="8" patternUnits="userSpaceOnUse">
                    <path d="M0 8 8 0" />
                </pattern>
            </defs>
            <rect class="spread" x=bar.spread_from y="0" width=WIDE - bar.spread_from height=HIGH />
            <rect class="run" x="0" y="0" width=bar.run height=HIGH />
            <rect class="outline" x="0" y="0" width=WIDE height=HIGH />
            {ticks.collect::<Vec<_>>()}
        </svg>
    }
    .into_any()
}

/// The bar runs from the start to the latest end; its lighter part is the range of the end.
fn bar(clock: &CureClock, marks: &[Mark], shop: &ShopHistory, now: Moment) -> Option<Drawn> {
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
        marks: marks.iter().map(|mark| along(mark.at())).collect(),
    })
}

fn seconds(span: Time) -> f64 {
    span.get::<second>()
}
