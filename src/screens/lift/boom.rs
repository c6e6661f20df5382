//! My hoist's boom: its holes with their ratings, and which one is in use.

use crate::job::field::Kept;
use crate::job::kinds::LiftWork;
use crate::job::kinds::lift::fields::BOOM;
use crate::parts::dynamic::{piece, press, text};
use crate::parts::field_table::number;
use crate::parts::worked::Form;
use crate::trade::hoist::BoomPosition;
use crate::trade::quantity::MassUnit;
use leptos::prelude::*;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

/// The holes as tiles, and the way to tell one more.
pub fn boom(form: Form<LiftWork>) -> AnyView {
    let bench = form.bench;
    let tiles = piece(move || {
        let unit = bench.settings.with(|s| s.lift.unit);
        let here = form.work.with(|work| work.as_ref().and_then(|work| work.boom_mm));
        bench
            .settings
            .with(|s| s.lift.boom.clone())
            .into_iter()
            .enumerate()
            .map(|(at, position)| hole(form, at, position, here, unit))
            .collect::<Vec<_>>()
            .into_any()
    });
    view! {
        <h2>"Boom of my hoist"</h2>
        <div class="holes">{tiles}</div>
        {new_hole(form)}
        <p class="quiet">
            "Read the plate: the further out the hook, the less the hoist may carry. Between two positions the outer one counts."
        </p>
    }
    .into_any()
}

fn hole(
    form: Form<LiftWork>,
    at: usize,
    position: BoomPosition,
    here: Option<f64>,
    unit: MassUnit,
) -> AnyView {
    let reach_mm = position.reach.get::<millimeter>();
    let on = here.is_some_and(|here| (here - reach_mm).abs() < 1.0);
    let words = hole_words(reach_mm, position.rating.get::<kilogram>(), unit);
    let use_it = move |_| {
        form.bench
            .change_lift(form.step, "boom position", |work| work.boom_mm = Some(reach_mm));
    };
    let gone = format!("remove {words}");
    view! {
        <div class="hole">
            <button aria-pressed=on.to_string() on:click=use_it>
                {words}
            </button>
            <button class="side-key" aria-label=gone on:click=press(move || form.bench.remove_boom(at))>
                "remove"
            </button>
        </div>
    }
    .into_any()
}

fn hole_words(reach_mm: f64, rating_kg: f64, unit: MassUnit) -> String {
    let (long, heavy) = (Kept::Centimetre, Kept::Kilogram);
    format!(
        "{} {} out: {} {}",
        long.text(reach_mm / 10.0, unit),
        long.symbol(unit),
        heavy.text(rating_kg, unit),
        heavy.symbol(unit)
    )
}

fn new_hole(form: Form<LiftWork>) -> AnyView {
    let bench = form.bench;
    let (reach_cm, rating_kg) = (RwSignal::new(None::<f64>), RwSignal::new(None::<f64>));
    let unit = move || bench.settings.with(|s| s.lift.unit);
    let asked = move |name, kept: Kept, value: RwSignal<Option<f64>>, most: f64, refusal: &'static str| {
        let take = Callback::new(move |typed: f64| {
            let typed = kept.to_kept(typed, untrack(unit));
            if typed > 0.0 && typed <= most {
                value.set(Some(typed));
                Ok(())
            } else {
                Err(refusal.to_owned())
            }
        });
        number(
            name,
            text(move || kept.symbol(unit()).to_owned()),
            text(move || value.get().map_or(String::new(), |v| kept.text(v, unit()))),
            false,
            take,
        )
    };
    let add = move |_| {
        if let (Some(cm), Some(kg)) = (reach_cm.get_untracked(), rating_kg.get_untracked()) {
            bench.add_boom(cm * 10.0, kg);
            form.bench
                .change_lift(form.step, "boom position", |work| work.boom_mm = Some(cm * 10.0));
            reach_cm.set(None);
            rating_kg.set(None);
        } else {
            bench.refuse("Enter the reach and the rating of the position first.");
        }
    };
    view! {
        <div class="two">
            {asked("post to hook", Kept::Centimetre, reach_cm, BOOM[0].range.1 / 10.0, "Enter the boom’s reach, above zero and under 20 m.")}
            {asked("rating there", Kept::Kilogram, rating_kg, 50_000.0, "Enter the rating on the boom’s plate.")}
        </div>
        <button class="side-key" on:click=add>
            "add this position"
        </button>
    }
    .into_any()
}
