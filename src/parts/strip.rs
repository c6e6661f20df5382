//! The strip, on every screen: what hurries, what has just been reached or the clock to look at first; when the
//! gate opens; the way to all clocks.

use super::clock_bar::left_text;
use super::dynamic::{memo, piece, press, text, whether};
use super::example_mark::ExampleMark;
use super::waiting::corner;
use super::when::{ago, brief, up};
use crate::bench::Bench;
use crate::device::place;
use crate::job::clock::{CureClock, Standing, in_order};
use crate::job::gate::next_gate;
use crate::job::kinds::seat::oven::OvenState;
use crate::job::kinds::seat::words::clock_text;
use leptos::prelude::*;

/// How often the gate's time is worked out anew.
const MINUTE_MS: i64 = 60_000;

/// One line for the strip.
#[derive(Debug, Clone, PartialEq)]
struct Line {
    left: String,
    name: String,
    more: String,
}

/// The strip along the top.
#[component]
pub fn Strip() -> impl IntoView {
    let bench = Bench::here();
    let ring = memo(move || ring_line(bench));
    // What must be done before it is too late comes before what was reached, and that before what runs.
    let hurry = memo(move || hurry_line(bench));
    let line = memo(move || hurry.get().or_else(|| ring.get()).or_else(|| strip_line(bench)));
    let minute = memo(move || bench.now.get().0 / MINUTE_MS);
    let gate = memo(move || {
        minute.track();
        let now = bench.now.get_untracked();
        let next = bench.ground(|ground| next_gate(ground, now))?;
        let least = if next.sure { "" } else { "≥ " };
        Some((next.words(), format!("{least}{}", brief(up(next.at), now))))
    });
    let to_clocks = press(move || {
        bench.silence_all();
        place::go("clocks");
    });
    view! {
        <header
            class="strip"
            class:ringing=whether(move || hurry.with(Option::is_none) && ring.with(Option::is_some))
            class:hurry=whether(move || hurry.with(Option::is_some))
        >
            <button class="running" on:click=to_clocks>
                <span class="unseen">"running clocks: "</span>
                {piece(move || match line.get() {
                    Some(line) => view! {
                        <span class="left">{line.left} " " <span class="quiet">{line.more}</span></span>
                        " "
                        <span class="name">{line.name}</span>
                    }
                    .into_any(),
                    None => view! { <span class="quiet">"no clock running"</span> }.into_any(),
                })}
            </button>
            {piece(move || gate.get().map(|(says, at)| view! {
                <p class="gate">
                    <span class="unseen">"next gate: "</span>
                    <span class="left">{at}</span>
                    " "
                    <span class="name">{says}</span>
                </p>
            }.into_any()).into_any())}
            <ExampleMark />
            {corner(bench)}
            <p class="unseen" role="alert">
                {text(move || bench.ringing.with(|all| all.iter().map(|ring| format!("{}: {}. ", ring.name, ring.words)).collect()))}
            </p>
        </header>
    }
    .into_any()
}

/// The line of the strip in words, without what hurries nobody; empty where no clock runs.
pub fn nearest(bench: Bench) -> String {
    let line = hurry_line(bench).or_else(|| strip_line(bench));
    line.map_or(String::new(), |line| format!("{} {}", line.left, line.name))
}

/// The part on its way from the oven, while it may still be good.
fn oven_line(bench: Bench) -> Option<Line> {
    let (OvenState::Open(left) | OvenState::Doubtful(left)) = bench.on_its_way()? else {
        return None;
    };
    Some(Line {
        left: format!("{} min", clock_text(left)),
        name: "home by then".to_owned(),
        more: String::new(),
    })
}

/// What is to be closed first before its bead skins, or that it has skinned.
fn hurry_line(bench: Bench) -> Option<Line> {
    let now = bench.now.get();
    let all = bench.pressing();
    let more = all.len().saturating_sub(1);
    let first = all.into_iter().next()?;
    let until = first.until.ok()?;
    let title = |step| {
        let sheet = bench.sheet;
        sheet.with(|sheet| sheet.step(step).map_or(String::new(), |step| step.title.clone()))
    };
    Some(match first.over(now) {
        true => Line {
            left: "late".to_owned(),
            name: format!("{} has skinned: see {}", title(first.bead), title(first.step)),
            more: more_words(more),
        },
        false => Line {
            left: left_text(until, now),
            name: format!("close it: {}", title(first.step)),
            more: more_words(more),
        },
    })
}

/// The latest mark reached that nobody has looked at.
fn ring_line(bench: Bench) -> Option<Line> {
    let now = bench.now.get();
    bench.ringing.with(|ringing| {
        let ring = ringing.iter().max_by_key(|ring| ring.at)?;
        let more = ringing.len().saturating_sub(1);
        Some(Line {
            left: format!("{}{}", if ring.late { "" } else { "✓ " }, ago(now.since(ring.at))),
            name: format!("{}: {}", ring.name, ring.words),
            more: more_words(more),
        })
    })
}

/// The part from the oven, else the clock to look at first; a ripe one when none runs.
fn strip_line(bench: Bench) -> Option<Line> {
    let (now, doubted_ms) = (bench.now.get(), bench.doubted_ms());
    let (line, running) = bench.settings.with(|s| {
        bench.clocks.with(|clocks| {
            let order = in_order(clocks, &s.shop, now, doubted_ms);
            let standing = |clock: &CureClock| clock.standing(&s.shop, now, doubted_ms);
            let live = clocks.iter().filter(|clock| clock.ended.is_none());
            let running = live.filter(|clock| !clock.ripe(&s.shop, now));
            let first = clocks.iter().find(|clock| order.first() == Some(&clock.id));
            let line = first.map(|clock| {
                let name = clock.name.clone();
                let (left, name) = match standing(clock) {
                    Standing::Running(mark) => (left_text(mark.at(), now), name),
                    Standing::Stalled(_) => ("not curing".to_owned(), name),
                    Standing::Ripe { since } => {
                        let ago = ago(now.since(since));
                        ("cured".to_owned(), format!("{name}, finished {ago}"))
                    }
                };
                Line {
                    left,
                    name,
                    more: String::new(),
                }
            });
            (line, running.count())
        })
    });
    match oven_line(bench) {
        Some(oven) => Some(Line {
            more: more_words(running),
            ..oven
        }),
        None => line.map(|line| Line {
            more: more_words(running.saturating_sub(1)),
            ..line
        }),
    }
}

fn more_words(more: usize) -> String {
    if more == 0 {
        String::new()
    } else {
        format!("+{more}")
    }
}
