//! The bench: my wrenches, the shop, ratings, how the display looks, what is kept.

mod bottles;
mod phone;
mod wrenches;

use crate::bench::{Bench, Look};
use crate::device::voice;
use crate::job::figures::Figures;
use crate::job::sense;
use crate::parts::ask_words::MOST_INITIALS;
use crate::parts::dynamic::{press, state, text};
use crate::parts::number_field::NumberField;
use crate::parts::shop::ShopTemperature;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::quantity::{DecimalMark, MassUnit, Unit, trimmed};
use leptos::prelude::*;

/// Settings of the bench.
#[component]
pub fn BenchScreen() -> impl IntoView {
    view! {
        <div class="page">
            <h1>"Bench"</h1>
            {phone::newer(Bench::here())}
            <button class="work-key" on:click=press(|| Route::Measure.go())>
                "Measure"
                <small>"shims, clearances, preload, run-out, springs"</small>
            </button>
            <button class="work-key" on:click=press(|| Route::Find.go())>
                "Find"
                <small>"fasteners, readings, compounds and remarks of every job"</small>
            </button>
            <wrenches::MyWrenches />
            <bottles::Bottles />
            <fieldset>
                <legend>"The shop"</legend>
                <div class="two">
                    <ShopTemperature />
                    <Ratings />
                </div>
            </fieldset>
            <Display />
            <OurFigures />
            <phone::Standing />
            <button on:click=press(|| Route::Cautions.go())>"all cautions"</button>
            <UndoKey />
        </div>
    }
}

/// Figures of a rating as it is typed.
const RATING_FIGURES: u32 = 6;

#[component]
fn Ratings() -> impl IntoView {
    let bench = Bench::here();
    let figures = move || untrack(|| bench.figures());
    let press = text(move || {
        let kn = bench.settings.with(|s| s.press_kn);
        kn.map_or(String::new(), |kn| {
            trimmed(kn / bench.figures().kilonewtons(), RATING_FIGURES)
        })
    });
    let hoist = text(move || {
        let kg = bench.settings.with(|s| s.hoist_kg);
        kg.map_or(String::new(), |kg| {
            trimmed(kg / bench.figures().mass.kilograms(), RATING_FIGURES)
        })
    });
    let take_press = move |typed: f64| {
        let kn = sense::PRESS_KN.of(typed * figures().kilonewtons())?;
        bench.set("press rating", |settings| settings.press_kn = Some(kn));
        Ok(())
    };
    let take_hoist = move |typed: f64| {
        let kg = sense::HOIST_KG.of(typed * figures().mass.kilograms())?;
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(kg));
        Ok(())
    };
    let force = text(move || bench.figures().force().to_owned());
    let mass = text(move || bench.figures().mass.symbol().to_owned());
    view! {
        <NumberField name="my press gives" unit=force value=press take=take_press />
        <NumberField name="my hoist carries" unit=mass value=hoist take=take_hoist />
    }
}

#[component]
fn Display() -> impl IntoView {
    let bench = Bench::here();
    let looks = [
        (Look::Phone, "as the phone"),
        (Look::Dark, "dark"),
        (Look::Light, "light"),
    ];
    view! {
        <fieldset>
            <legend>"Display"</legend>
            <div class="tiles" role="radiogroup" aria-label="look">
                {looks
                    .into_iter()
                    .map(|(look, words)| {
                        view! {
                            <button
                                role="radio"
                                aria-checked=state(move || bench.settings.with(|s| s.look) == look)
                                on:click=press(move || bench.set("look", |settings| settings.look = look))
                            >
                                {words}
                            </button>
                        }.into_any()
                    })
                    .collect::<Vec<_>>()}
            </div>
            {voice::supported().then(|| view! {
                <button
                    aria-pressed=state(move || bench.settings.with(|s| s.aloud))
                    on:click=press(move || bench.set("read aloud", |settings| settings.aloud = !settings.aloud))
                >
                    "read aloud each new thing a step asks"
                </button>
            }.into_any())}
            <button
                aria-pressed=state(move || bench.settings.with(|s| s.ticks))
                on:click=press(move || bench.set("sound of keys", |settings| settings.ticks = !settings.ticks))
            >
                "a tick at each press"
            </button>
            <label>
                "Initials for the record"
                <input
                    type="text"
                    autocomplete="off"
                    maxlength=MOST_INITIALS
                    prop:value=text(move || bench.settings.with(|s| s.initials.clone()))
                    on:change=move |event| {
                        let initials = event_target_value(&event);
                        bench.set("initials", |settings| settings.initials = initials);
                    }
                />
            </label>
        </fieldset>
    }
}

/// What our own temperatures, masses and forces are said in; the manual's stay as it has them.
#[component]
fn OurFigures() -> impl IntoView {
    let bench = Bench::here();
    let degrees = Figures::TEMPERATURES.map(|unit| {
        let now = move || bench.figures().temperature == unit;
        let take = move || bench.set("unit of temperature", |settings| settings.temperature = unit);
        radio(unit.symbol(), now, take)
    });
    let masses = [
        (MassUnit::Kilogram, "kg and kN"),
        (MassUnit::Pound, "lb and lbf, inches"),
    ]
    .map(|(unit, words)| {
        let now = move || bench.figures().mass == unit;
        let take = move || bench.set("unit of mass", |settings| settings.lift.unit = unit);
        radio(words, now, take)
    });
    let marks = DecimalMark::ALL.map(|mark| {
        let now = move || bench.settings.with(|settings| settings.decimal) == mark;
        let take = move || bench.set("decimal mark", |settings| settings.decimal = mark);
        radio(mark.words(), now, take)
    });
    view! {
        <fieldset>
            <legend>"Our own figures"</legend>
            <p class="quiet">"The manual’s own stay as the manual has them; so do the plan, the record and files."</p>
            <div class="tiles" role="radiogroup" aria-label="temperatures">{degrees.into_iter().collect::<Vec<_>>()}</div>
            <div class="tiles" role="radiogroup" aria-label="masses and forces">{masses.into_iter().collect::<Vec<_>>()}</div>
            <div class="tiles" role="radiogroup" aria-label="decimal mark">{marks.into_iter().collect::<Vec<_>>()}</div>
        </fieldset>
    }
}

fn radio(
    words: &'static str,
    now: impl Fn() -> bool + Send + Sync + 'static,
    take: impl FnMut() + 'static,
) -> AnyView {
    view! { <button role="radio" aria-checked=state(now) on:click=press(take)>{words}</button> }.into_any()
}
