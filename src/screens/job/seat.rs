//! A seat step: how this press fit goes together, and what was read when it sat.

use super::accept::accept;
use super::notes::notes;
use crate::bench::{Bench, Intent};
use crate::job::reading::What;
use crate::job::sheet::Step;
use crate::parts::dynamic::{press, text};
use crate::parts::number_field::NumberField;
use crate::parts::seat::{
    answered, countdown, depth_readings, fit_facts, plan_plate, running_countdown, tool_facts, tools_drawing,
};
use crate::screens::Route;
use leptos::prelude::*;

/// The plan, its countdown, and how deep it sits; the drawing where there is room.
pub fn seat_stage(step: StoredValue<Step>) -> AnyView {
    let id = step.with_value(|step| step.id);
    let answered = answered(Some(id));
    view! {
        <div class="stage flow seat">
            {running_countdown(id)}
            {plan_plate(answered)}
            {depth_readings(Some(id), answered)}
            {notes(step)}
            {tools_drawing(answered)}
        </div>
    }
    .into_any()
}

/// The depth or the gap, as it is asked for.
pub fn one(step: StoredValue<Step>, what: What) -> AnyView {
    let bench = Bench::here();
    let (id, name) = step.with_value(|step| (step.id, what.name(Some(step))));
    let gap = what == What::Gap;
    let take = move |mm: f64| {
        let step = Some(id);
        let intent = match gap {
            true => Intent::ReadGap { step, mm },
            false => Intent::ReadDepth { step, mm },
        };
        bench.send(intent).map_err(|refused| refused.to_string())
    };
    let value = text(move || {
        let (depth, read_gap) = bench.depth_read(Some(id));
        let read = if gap { read_gap } else { depth };
        read.map_or(String::new(), |mm| mm.to_string())
    });
    view! { <NumberField name unit=Signal::stored("mm".to_owned()) value take signed=true asked=true /> }
        .into_any()
}

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
