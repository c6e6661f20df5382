//! The bench: my wrenches, the shop, ratings, how the display looks, what is kept.

mod bottles;
mod wrenches;

use crate::bench::{Bench, Look};
use crate::device::release::{self, Kept};
use crate::device::wake_lock::Awake;
use crate::job::sense;
use crate::parts::ask_words::MOST_INITIALS;
use crate::parts::dynamic::{press, state, text, when};
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
            <Standing />
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

/// What the phone does for us: offline, awake.
#[component]
fn Standing() -> impl IntoView {
    let bench = Bench::here();
    let offline = move || match bench.kept.get() {
        Kept::Asking => "Looking whether the app is kept on this phone.",
        Kept::Whole => "Kept on this phone: starts without a network.",
        Kept::Not => "Not kept on this phone: it needs HTTPS (or localhost), and no private browsing.",
        Kept::NewerWaits => "A newer release is on this phone and waits for your word.",
    };
    let awake = move || match bench.awake.get() {
        Awake::Held => "The display stays awake while a step or clock is open.",
        Awake::Refused => "This browser can’t keep the display awake: set the phone’s own time-out longer.",
        Awake::NotAsked => "The display may sleep: nothing is open.",
    };
    view! {
        <fieldset>
            <legend>"This phone"</legend>
            <p role="status">{offline}</p>
            {when(move || bench.kept.get() == Kept::NewerWaits, || view! {
                <button class="work-key" on:click=press(release::take_over)>"Take the newer release"</button>
            }.into_any())}
            <p>{awake}</p>
            <p class="quiet">
                "Everything stays in this browser’s storage. A page that is not installed may be cleared by some phones after a week without use: put it on the home screen first."
            </p>
        </fieldset>
    }
}
