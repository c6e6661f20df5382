//! Every clock, the soonest first.

use crate::bench::Bench;
use crate::parts::clock_bar::ClockBar;
use crate::parts::number_field::NumberField;
use crate::parts::work_keys::UndoKey;
use leptos::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The clocks and the shop's temperature they go by.
#[component]
pub fn ClocksScreen() -> impl IntoView {
    let bench = Bench::here();
    let clocks = move || {
        bench.clocks.with(|clocks| {
            clocks
                .iter()
                .filter(|clock| clock.counts())
                .cloned()
                .rev()
                .collect::<Vec<_>>()
        })
    };
    view! {
        <div class="page clocks">
            <h1>"Clocks"</h1>
            <ShopTemperature />
            <Show when=move || clocks().is_empty()>
                <p class="quiet">"No joint is curing. A clock starts from the step that puts a compound on."</p>
            </Show>
            <For each=clocks key=|clock| clock.id let:clock>
                <ClockBar clock />
            </For>
            <p class="quiet">
                "Times are the label’s, stretched for a shop colder than the label’s temperature, never shortened. The label in your hand comes first."
            </p>
            <UndoKey />
        </div>
    }
}

/// How warm the shop is; every change is kept with its time.
#[component]
pub fn ShopTemperature() -> impl IntoView {
    let bench = Bench::here();
    let value = Signal::derive(move || {
        let now = bench.now.get();
        let known = bench.settings.with(|settings| settings.temperature_at(now));
        known.map_or(String::new(), |t| {
            format!("{:.0}", t.get::<degree_celsius>()).replace('-', "−")
        })
    });
    let take = move |celsius: f64| {
        if (-40.0..=60.0).contains(&celsius) {
            bench.note_temperature(celsius);
            Ok(())
        } else {
            Err("A shop is between −40 and 60 °C: read the thermometer again.".to_owned())
        }
    };
    view! { <NumberField name="shop temperature now" unit="°C".to_owned() value take signed=true /> }
}
