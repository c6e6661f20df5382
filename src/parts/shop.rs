//! The shop's temperature: now, over the nights to come, and what was told of it.

use super::dynamic::{memo, piece, press, text};
use super::number_field::NumberField;
use super::when::when;
use crate::bench::Bench;
use crate::job::night::{Night, plausible};
use leptos::prelude::*;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

/// How warm the shop is; every change is kept with its time.
#[component]
pub fn ShopTemperature() -> impl IntoView {
    let bench = Bench::here();
    let value = text(move || {
        let now = bench.now.get();
        let known = bench.settings.with(|settings| settings.temperature_at(now));
        known.map_or(String::new(), |t| {
            degrees(bench.figures().of_celsius(t.get::<degree_celsius>()))
        })
    });
    let take = move |read: f64| {
        let figures = untrack(|| bench.figures());
        let celsius = figures.celsius(read);
        if plausible(celsius) {
            bench.note_shop(celsius);
            Ok(())
        } else {
            Err(figures.said("A shop is between −40 and 60 °C: read the thermometer again."))
        }
    };
    view! { <NumberField name="shop temperature now" unit=degree(bench) value take signed=true /> }
}

/// How damp its air is: what cures by moisture is slower in dry air.
#[component]
pub fn ShopHumidity() -> impl IntoView {
    let bench = Bench::here();
    let value = text(move || humidity(bench).map_or(String::new(), |told| format!("{told:.0}")));
    let take = move |told: f64| bench.note_humidity(Some(told)).map_err(|error| error.to_string());
    view! { <NumberField name="humidity now" unit="%".to_owned() value take /> }
}

/// The humidity told last, %.
fn humidity(bench: Bench) -> Option<f64> {
    let now = bench.now.get();
    bench.settings.with(|settings| {
        let told = settings.shop.humidity_at(now);
        told.map(|told| told.get::<percent>())
    })
}

/// The way back to a humidity nobody knows.
fn humidity_unknown(bench: Bench) -> AnyView {
    let known = memo(move || humidity(bench).is_some());
    let away = move || bench.tell(bench.note_humidity(None));
    piece(move || {
        if known.get() {
            view! { <button on:click=press(away)>"humidity not known any more"</button> }.into_any()
        } else {
            ().into_any()
        }
    })
    .into_any()
}

/// What of a night a field plans.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part {
    Celsius,
    From,
    To,
}

/// An evening and a morning to begin with.
const FIRST_NIGHT: Night = Night {
    celsius: 0.0,
    from_hour: 20,
    to_hour: 7,
    day_celsius: 0.0,
};

/// The nights to come, and the readings behind them.
#[component]
pub fn ShopNights() -> impl IntoView {
    let bench = Bench::here();
    let planned = memo(move || bench.settings.with(|settings| settings.night.is_some()));
    let more = move || {
        let away = move || bench.unplan_night();
        view! {
            {night_field(bench, Part::From)}
            {night_field(bench, Part::To)}
            <button on:click=press(away)>"no colder nights any more"</button>
        }
        .into_any()
    };
    view! {
        <div class="two">
            {night_field(bench, Part::Celsius)}
            {piece(move || if planned.get() { more() } else { ().into_any() })}
        </div>
        {humidity_unknown(bench)}
        <ul class="readings quiet" aria-label="shop temperatures">
            {piece(move || readings(bench).into_iter().map(|words| view! { <li>{words}</li> }.into_any()).collect::<Vec<_>>().into_any())}
        </ul>
    }
}

fn night_field(bench: Bench, part: Part) -> AnyView {
    let (name, unit) = match part {
        Part::Celsius => ("planned at night", degree(bench)),
        Part::From => ("night from", text(|| "o’clock".to_owned())),
        Part::To => ("night until", text(|| "o’clock".to_owned())),
    };
    let value = text(move || {
        bench.settings.with(|settings| {
            settings.night.map_or(String::new(), |night| match part {
                Part::Celsius => degrees(bench.figures().of_celsius(night.celsius)),
                Part::From => night.from_hour.to_string(),
                Part::To => night.to_hour.to_string(),
            })
        })
    });
    let take = move |number: f64| {
        let before = bench
            .settings
            .with_untracked(|settings| settings.night)
            .unwrap_or(FIRST_NIGHT);
        // An hour with a fraction, or none at all, is refused as one beyond the day.
        let hour = if number.fract() == 0.0 && (0.0..24.0).contains(&number) {
            number as u32
        } else {
            24
        };
        let plan = match part {
            Part::Celsius => Night {
                celsius: untrack(|| bench.figures()).celsius(number),
                ..before
            },
            Part::From => Night {
                from_hour: hour,
                ..before
            },
            Part::To => Night {
                to_hour: hour,
                ..before
            },
        };
        let figures = untrack(|| bench.figures());
        bench
            .plan_night(plan)
            .map_err(|error| figures.said(&error.to_string()))
    };
    view! { <NumberField name unit value take signed=true /> }.into_any()
}

/// How many readings behind and ahead are shown.
const SHOWN: usize = 3;

/// The last readings and the next planned ones.
fn readings(bench: Bench) -> Vec<String> {
    let now = bench.now.get();
    bench.settings.with(|settings| {
        let mut all: Vec<_> = settings.shop.0.iter().collect();
        all.sort_by_key(|reading| reading.at);
        let passed = all.iter().filter(|reading| reading.at <= now).count();
        let words = all
            .iter()
            .skip(passed.saturating_sub(SHOWN))
            .take(passed.min(SHOWN) + SHOWN)
            .map(|reading| {
                let planned = if reading.at > now { ", planned" } else { "" };
                let celsius = degrees(reading.temperature.get::<degree_celsius>());
                let damp = reading
                    .humidity
                    .map_or(String::new(), |damp| format!(", {:.0} %", damp.get::<percent>()));
                let told = settings.figures().said(&format!("{celsius} °C"));
                format!("from {}: {told}{damp}{planned}", when(reading.at, now))
            });
        // Told twice in a minute it is one.
        let mut words: Vec<String> = words.collect();
        words.dedup();
        words
    })
}

/// The symbol of the user's degrees.
fn degree(bench: Bench) -> Signal<String> {
    text(move || bench.figures().degree().to_owned())
}

fn degrees(read: f64) -> String {
    format!("{read:.0}").replace('-', "−")
}
