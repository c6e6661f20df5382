//! A seat step: how this press fit goes together, and what was read when it sat.

use super::accept::accept;
use super::notes::notes;
use crate::bench::{Bench, Intent};
use crate::job::reading::What;
use crate::job::readings;
use crate::job::sheet::Step;
use crate::parts::dynamic::{press, text};
use crate::parts::number_field::NumberField;
use crate::parts::seat::{
    answered, countdown, depth_readings, fit_facts, plan_plate, running_countdown, tool_facts, tools_drawing,
};
use crate::screens::Route;
use crate::trade::quantity::Stated;
use leptos::prelude::*;

/// The plan, its countdown, and how deep it sits; the drawing where there is room.
pub fn seat_stage(step: StoredValue<Step>, asked: Option<What>) -> AnyView {
    let id = step.with_value(|step| step.id);
    let answered = answered(Some(id));
    // The depth is read when it sits; how it gets there stands first.
    let readings = match asked {
        Some(what) => {
            let limits = step.with_value(|step| readings::limit_words(step, &what));
            view! { <div class="asking">{one(step, what)}</div> <p class="figures mid">{limits}</p> }
                .into_any()
        }
        None => depth_readings(Some(id), answered),
    };
    view! {
        <div class="stage flow seat">
            {running_countdown(id)}
            {plan_plate(answered)}
            {readings}
            {notes(step)}
            {tools_drawing(answered)}
        </div>
    }
    .into_any()
}

/// The depth or the gap, as it is asked for.
fn one(step: StoredValue<Step>, what: What) -> AnyView {
    let bench = Bench::here();
    let (id, name) = step.with_value(|step| (step.id, what.name(Some(step))));
    let gap = what == What::Gap;
    let typed = RwSignal::new(String::new());
    let take = move |mm: f64| {
        let step = Some(id);
        let stated = typed.with_untracked(|typed| Stated::typed(typed));
        let mm = stated.unwrap_or(Stated::plain(mm));
        let intent = match gap {
            true => Intent::ReadGap { step, mm },
            false => Intent::ReadDepth { step, mm },
        };
        bench.send(intent).map_err(|refused| refused.to_string())
    };
    let kept = StoredValue::new(what);
    let value = text(move || {
        bench.progress.with(|progress| {
            let read = progress
                .touched(id)
                .and_then(|step| kept.with_value(|what| step.reading(what).cloned()));
            read.map_or(String::new(), |read| read.shown_in("mm"))
        })
    });
    view! { <NumberField name unit=Signal::stored("mm".to_owned()) value take typed signed=true asked=true /> }
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
