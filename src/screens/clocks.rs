//! Every clock, the soonest first; the shop they go by; how they are heard.

use crate::bench::Bench;
use crate::device::alarm::{self, Leave};
use crate::job::clock::{ClockId, Standing};
use crate::parts::clock_bar::ClockBar;
use crate::parts::dynamic::{piece, press, text};
use crate::parts::hand_over::hand_over_calendar;
use crate::parts::shop::{ShopHumidity, ShopNights, ShopTemperature};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::moment::Moment;
use leptos::prelude::*;

/// The clocks and the shop's temperature they go by.
#[component]
pub fn ClocksScreen() -> impl IntoView {
    let bench = Bench::here();
    let shown = Memo::new(move |_| in_order(bench));
    let clock = move |id: ClockId| {
        bench
            .clocks
            .with_untracked(|clocks| clocks.iter().find(|clock| clock.id == id).cloned())
            .map(|clock| view! { <ClockBar clock /> }.into_any())
    };
    view! {
        <div class="page clocks">
            <h1>"Clocks"</h1>
            {piece(move || if shown.with(Vec::is_empty) {
                view! {
                    <p class="quiet">"No joint is curing. A clock starts from the step that puts a compound on, or from Bond."</p>
                    <button class="work-key" on:click=press(move || Route::Bond(None).go())>"Bond"</button>
                }
                .into_any()
            } else {
                shown.get().into_iter().filter_map(clock).collect::<Vec<_>>().into_any()
            })}
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

/// What runs, the next mark first; then what is ripe, the latest first.
fn in_order(bench: Bench) -> Vec<ClockId> {
    let now = bench.now.get();
    let mut all: Vec<(bool, Moment, ClockId)> = bench.settings.with(|s| {
        bench.clocks.with(|clocks| {
            let clocks = clocks.iter().filter(|clock| clock.ended.is_none());
            clocks
                .map(|clock| match clock.standing(&s.shop, now) {
                    Standing::Running(mark) => (false, mark.at(), clock.id),
                    Standing::Stalled(_) => (false, Moment(i64::MAX), clock.id),
                    Standing::Ripe { since } => (true, Moment(since.0.saturating_neg()), clock.id),
                })
                .collect()
        })
    });
    all.sort();
    all.into_iter().map(|(.., id)| id).collect()
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
