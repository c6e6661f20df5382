//! A lift step: whether hands may do it, what the sling sees.

use crate::job::sheet::Step;
use crate::parts::dynamic::press;
use crate::parts::lift::{answered, lift_drawing, lift_plate};
use crate::screens::Route;
use leptos::prelude::*;

/// The number and the drawing.
pub fn lift_stage(step: StoredValue<Step>) -> AnyView {
    let answered = answered(Some(step.with_value(|step| step.id)));
    view! {
        <div class="stage flow lift">
            {lift_plate(answered)}
            {lift_drawing(answered)}
        </div>
    }
    .into_any()
}

/// The work of a lift step.
#[component]
pub fn LiftView(step: StoredValue<Step>) -> impl IntoView {
    let id = step.with_value(|step| step.id);
    let answered = answered(Some(id));
    view! {
        {lift_plate(answered)}
        {lift_drawing(answered)}
        <button class="side-key" on:click=press(move || Route::Lift(Some(id)).go())>
            "on Lift: reach, heights, sling, hoist"
        </button>
    }
    .into_any()
}
