//! Every clock in a row of its own, what has a deadline first; the shop they go by; how they are heard.

use crate::bench::Bench;
use crate::device::alarm::{self, Leave};
use crate::job::clock::{ClockId, in_order};
use crate::parts::clock_bar::clock_row;
use crate::parts::dynamic::{memo, piece, press, row, rows, text, when};
use crate::parts::hand_over::hand_over_calendar;
use crate::parts::shop::{ShopHumidity, ShopNights, ShopTemperature};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use leptos::prelude::*;

/// The clocks and the shop's temperature they go by.
#[component]
pub fn ClocksScreen() -> impl IntoView {
    let bench = Bench::here();
    let shown = memo(move || {
        let (now, doubted_ms) = (bench.now.get(), bench.doubted_ms());
        let clocks = bench.clocks;
        bench
            .settings
            .with(|s| clocks.with(|clocks| in_order(clocks, &s.shop, now, doubted_ms)))
    });
    let clock = move |id: ClockId| {
        let clocks = bench.clocks;
        let found = clocks.with_untracked(|clocks| clocks.iter().find(|clock| clock.id == id).cloned());
        found.map(clock_row).into_any()
    };
    let list = move || {
        let all = shown.get().into_iter();
        all.map(|id| row(id.0.to_string(), move || clock(id))).collect()
    };
    view! {
        <div class="page clocks">
            <h1>"Clocks"</h1>
            {when(move || shown.with(Vec::is_empty), || {
                view! {
                    <p class="quiet">"No joint is curing. A clock starts from the step that puts a compound on, or from Bond."</p>
                    <button class="work-key" on:click=press(move || Route::Bond(None).go())>"Bond"</button>
                }
                .into_any()
            })}
            <ol class="clock-list">{rows(list)}</ol>
            <fieldset>
                <legend>"The shop"</legend>
                <div class="two">
                    <ShopTemperature />
                    <ShopHumidity />
                </div>
                <ShopNights />
                <p class="quiet">
                    "Times are the label’s, stretched for a shop colder than the label’s temperature, never shortened. The label in your hand comes first."
                </p>
            </fieldset>
            <Alarms />
            <UndoKey />
        </div>
    }
}

/// Sound, vibration, notification, and the calendar for a phone that sleeps.
#[component]
fn Alarms() -> impl IntoView {
    let bench = Bench::here();
    let leave = RwSignal::new(alarm::leave());
    let words = text(move || {
        match leave.get() {
            Leave::Given => "Notifications are allowed.",
            Leave::NotAsked => "Notifications are not allowed yet.",
            Leave::Refused => "Notifications are refused; the browser’s settings change that.",
            Leave::None => "This browser has no notifications.",
        }
        .to_owned()
    });
    let ask = move || {
        alarm::ask_leave(move |given| {
            leave.try_set(given);
        });
    };
    view! {
        <fieldset>
            <legend>"Alarm"</legend>
            <p>"A clock rings while this page is open and the phone awake. A sleeping phone may not ring: let its calendar do it."</p>
            <div class="clock-keys">
                <button class="work-key" on:click=press(move || hand_over_calendar(bench, None))>
                    "Calendar"
                    <small>"all running clocks"</small>
                </button>
                <button class="work-key" on:click=press(alarm::sound)>
                    "Try it"
                    <small>"sound, vibration"</small>
                </button>
            </div>
            <p>{words}</p>
            {piece(move || if leave.get() == Leave::NotAsked {
                view! { <button on:click=press(ask)>"allow notifications"</button> }.into_any()
            } else {
                ().into_any()
            })}
        </fieldset>
    }
}
