//! A seat step: how this press fit goes together, and what was read when it sat.

use super::accept::accept;
use crate::job::reading::What;
use crate::job::sheet::Step;
use crate::parts::dynamic::press;
use crate::parts::seat::{answered, countdown, depth_readings, fit_facts, plan_plate, tool_facts};
use crate::screens::Route;
use leptos::prelude::*;

/// The work of a seat step.
#[component]
pub fn SeatWork(step: StoredValue<Step>) -> impl IntoView {
    let id = step.with_value(|step| step.id);
    let answered = answered(Some(id));
    view! {
        {plan_plate(answered)}
        {countdown(Some(id), answered)}
        {depth_readings(Some(id), answered)}
        {accept(id, What::Depth)}
        {accept(id, What::Gap)}
        {tool_facts(answered)}
        {fit_facts(answered)}
        <button class="side-key" on:click=press(move || Route::Seat(Some(id)).go())>
            "on Seat: drawings, sizes, limits"
        </button>
    }
    .into_any()
}
