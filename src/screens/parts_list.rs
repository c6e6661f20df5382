//! The parts of all steps: where each is, whether it must be new, ticked off before work begins.

use crate::bench::Bench;
use crate::job::kinds::fasten::bag;
use crate::job::parts::{self, Listed, PartKey, PartPlace, PartsTally};
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece, press, row, rows, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use leptos::prelude::*;

/// Which lines are shown: words, and whether a line is among them.
type Which = (&'static str, fn(&Listed) -> bool);

const WHICH: [Which; 5] = [
    ("all", |_| true),
    ("not ticked", |part| !part.ticked()),
    ("went to the shop", |part| part.sent),
    ("must be new", |part| part.new_part),
    ("fasteners", |part| part.fastener),
];

/// The list.
#[component]
pub fn PartsScreen() -> impl IntoView {
    let bench = Bench::here();
    let listed = memo(move || {
        bench
            .sheet
            .with(|sheet| bench.progress.with(|progress| parts::list(sheet, progress)))
    });
    let which = RwSignal::new(0_usize);
    let open = RwSignal::new(None);
    let filters = piece(move || {
        let now = which.get();
        let specs = WHICH.iter().enumerate();
        keys(
            specs
                .map(|(at, (words, _))| KeySpec::choice(*words, at == now, move || which.set(at)))
                .collect(),
        )
    });
    let shown = move || {
        let (_, takes) = WHICH.get(which.get()).copied().unwrap_or(WHICH[0]);
        listed.with(|list| {
            list.iter()
                .filter(|part| takes(part))
                .cloned()
                .enumerate()
                .map(|(at, part)| row(key(at, &part), move || part_row(bench, part, open)))
                .collect()
        })
    };
    view! {
        <div class="page parts-list">
            <h1>"Parts"</h1>
            <p class="mid">{text(move || listed.with(|list| PartsTally::of(list).words().join(" ")))}</p>
            {filters}
            <ul aria-label="parts">
                {rows(shown)}
            </ul>
            <h2>"Bags: fasteners by size"</h2>
            {piece(move || bags(bench, &listed.get()))}
            {keys(vec![KeySpec::new("all steps", || Route::Steps.go())])}
            <UndoKey />
        </div>
    }
}

/// What a row is told apart by: its place, and all that it shows.
fn key(at: usize, part: &Listed) -> String {
    let marks = [
        part.new_part,
        part.fastener,
        part.sent,
        part.done,
        part.new_wanted,
    ];
    let marks: String = marks.map(|mark| if mark { '1' } else { '0' }).iter().collect();
    format!("{at} {} {} {marks} {}", part.step.0, part.name, part.words())
}

fn part_row(bench: Bench, part: Listed, open: RwSignal<Option<(StepId, PartKey)>>) -> AnyView {
    let number = bench
        .sheet
        .with_untracked(|sheet| sheet.place(part.step).map_or(0, |at| at + 1));
    let ticked = part.ticked();
    let key = StoredValue::new((part.step, part.key));
    let kept = StoredValue::new(part.clone());
    let tick = move |_| {
        kept.with_value(|part| {
            if part.ticked() {
                bench.place_part(part, part.place.clone(), 0);
            } else {
                bench.tick_part(part);
            }
        });
    };
    let new = if part.new_part { ", new" } else { "" };
    let name = format!("{} × {}{new}", part.of, part.name);
    let more = piece(move || {
        let opened = open.with(|open| key.with_value(|key| open.as_ref() == Some(key)));
        if opened {
            kept.with_value(|part| where_it_is(bench, part))
        } else {
            ().into_any()
        }
    });
    view! {
        <li>
            <button class="tick" role="checkbox" aria-checked=ticked.to_string() aria-label=format!("here: {name}") on:click=tick>
                {if ticked { "✓" } else { "" }}
            </button>
            <button
                class="row-key"
                on:click=press(move || open.update(|open| {
                    let key = key.get_value();
                    *open = if *open == Some(key) { None } else { Some(key) };
                }))
            >
                <span>{name} <br /> <span class="quiet">{part.words()}</span></span>
                <span class="quiet figures">{format!("step {number}")}</span>
            </button>
            {more}
        </li>
    }
    .into_any()
}

/// Where it is, and how many were counted.
fn where_it_is(bench: Bench, part: &Listed) -> AnyView {
    let kept = StoredValue::new(part.clone());
    let place = move |place: PartPlace| {
        kept.with_value(|part| {
            // Away means none of it is here; back on the bench it is still to be counted.
            let here = if place.at_hand() { part.here } else { 0 };
            bench.place_part(part, place, here);
        });
    };
    let tiles = PartPlace::TILES.into_iter().skip(1).map(|tile| {
        let on = tile == part.place;
        KeySpec::choice(tile.words(), on, move || place(tile.clone()))
    });
    let bag = match &part.place {
        PartPlace::Bag(name) => name.clone(),
        _ => String::new(),
    };
    let take_bag = Callback::new(move |name: String| {
        place(PartPlace::Bag(name.trim().to_owned()));
        true
    });
    let count = move |number: f64| {
        let of = kept.with_value(|part| part.of);
        if number < 0.0 || number.fract() != 0.0 || number > f64::from(of) {
            return Err(format!("Count from 0 to {of}."));
        }
        kept.with_value(|part| bench.place_part(part, part.place.clone(), number as u32));
        Ok(())
    };
    let (here, of) = (part.here.to_string(), part.of);
    view! {
        <div class="more">
            {keys(tiles.collect())}
            <AskWords key="in a bag" label="Which bag?" first=bag take=take_bag />
            <NumberField
                name="counted here"
                unit=Signal::stored(format!("of {of}"))
                value=Signal::stored(here)
                take=count
            />
        </div>
    }
    .into_any()
}

fn bags(bench: Bench, listed: &[Listed]) -> AnyView {
    let lines = bench.sheet.with(|sheet| bag::list(sheet, listed));
    let rows: Vec<AnyView> = lines
        .into_iter()
        .map(|line| {
            let new = match line.new_ones {
                0 => String::new(),
                all if all == line.count => ", all new".to_owned(),
                some => format!(", {some} of them new"),
            };
            let places = line.places.join(", ");
            view! { <dt>{line.size}</dt> <dd>{format!("{}{new}", line.count)} <br /> <span class="quiet">{places}</span></dd> }.into_any()
        })
        .collect();
    view! { <dl class="facts" aria-label="bags">{rows}</dl> }.into_any()
}
