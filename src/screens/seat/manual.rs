//! What the manual says of heat and cold, in its own units.

use crate::job::field::Field;
use crate::job::kinds::Seat;
use crate::job::kinds::seat::fields;
use crate::job::kinds::seat::manual::{
    CHILL_TO, FLASH_POINT, HEAT_TO, NEVER_OVER, chill_at, chill_choices, choose_chill, choose_heat, heat_at,
    heat_choices,
};
use crate::job::planning::PlanRefused;
use crate::parts::dynamic::{piece, text, whether};
use crate::parts::worked::Form;
use crate::trade::heat_plan::HeatMeans;
use leptos::prelude::*;

/// What the screen asks of the manual.
pub fn manual(form: Form<Seat>) -> AnyView {
    view! {
        <fieldset>
            <legend>"What the manual says"</legend>
            <div class="two">
                {form.choice("heat the one with the hole", &heat_choices(), heat_at, choose_heat)}
                {temperature(form, &HEAT_TO, |seat| heat_at(seat) > 0)}
                {temperature(form, &NEVER_OVER, |seat| heat_at(seat) > 0)}
                {temperature(form, &FLASH_POINT, in_oil)}
                {form.choice("chill the one that goes in", &chill_choices(), chill_at, choose_chill)}
                {temperature(form, &CHILL_TO, |seat| chill_at(seat) > 0)}
            </div>
            <p class="quiet">"As it is printed, with its unit: 250 °F, 120 °C. It goes before our own plan."</p>
        </fieldset>
    }
    .into_any()
}

fn in_oil(seat: &Seat) -> bool {
    let heat = seat.manual.and_then(|manual| manual.heat);
    heat.and_then(|heat| heat.means) == Some(HeatMeans::OilBath)
}

/// A temperature typed with its unit, where `asked`; what is refused stays typed.
fn temperature(form: Form<Seat>, row: &'static Field<Seat>, asked: fn(&Seat) -> bool) -> AnyView {
    let Field::Typed { id, label, get, .. } = row else {
        return ().into_any();
    };
    let (id, label, get) = (*id, *label, *get);
    let trouble = RwSignal::new(String::new());
    let hidden = whether(move || !form.work.with(|seat| seat.as_ref().is_some_and(asked)));
    let value = text(move || form.work.with(|seat| seat.as_ref().map_or(String::new(), get)));
    let take = move |event: leptos::ev::Event| {
        let typed = event_target_value(&event);
        let Some(mut seat) = form.work.get_untracked() else {
            return;
        };
        let taken = fields::set(&mut seat, &format!("seat/{id}"), &typed);
        let taken = taken.map_err(|refused| PlanRefused::from(refused).to_string());
        let kept = taken.and_then(|()| form.bench.change_seat(form.step, label, |kept| *kept = seat));
        trouble.set(kept.err().unwrap_or_default());
    };
    view! {
        <div hidden=hidden>
            <label>
                {label}
                <input type="text" autocomplete="off" autocapitalize="off" spellcheck="false" prop:value=value on:change=take />
            </label>
            {piece(move || {
                let words = trouble.get();
                if words.is_empty() {
                    ().into_any()
                } else {
                    view! { <p class="trouble-line" role="alert">{words}</p> }.into_any()
                }
            })}
        </div>
    }
    .into_any()
}
