//! The bench: my wrenches, the shop, ratings, how the display looks, what is kept.

mod bottles;
mod phone;
mod wrenches;

use crate::bench::{Bench, Look};
use crate::device::voice;
use crate::job::sense;
use crate::parts::ask_words::MOST_INITIALS;
use crate::parts::dynamic::{press, state, text};
use crate::parts::number_field::NumberField;
use crate::parts::shop::ShopTemperature;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
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
            <phone::Standing />
            <button on:click=press(|| Route::Cautions.go())>"all cautions"</button>
            <UndoKey />
        </div>
    }
}

#[component]
fn Ratings() -> impl IntoView {
    let bench = Bench::here();
    let shown = |value: Option<f64>| value.map_or(String::new(), |value| value.to_string());
    let press_kn = Signal::derive(move || shown(bench.settings.with(|s| s.press_kn)));
    let hoist = Signal::derive(move || shown(bench.settings.with(|s| s.hoist_kg)));
    let take_press = move |kn: f64| {
        let kn = sense::PRESS_KN.of(kn)?;
        bench.set("press rating", |settings| settings.press_kn = Some(kn));
        Ok(())
    };
    let take_hoist = move |kg: f64| {
        let kg = sense::HOIST_KG.of(kg)?;
        bench.set("hoist rating", |settings| settings.hoist_kg = Some(kg));
        Ok(())
    };
    view! {
        <NumberField name="my press gives" unit="kN".to_owned() value=press_kn take=take_press />
        <NumberField name="my hoist carries" unit="kg".to_owned() value=hoist take=take_hoist />
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
