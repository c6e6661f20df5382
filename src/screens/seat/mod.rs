//! Seat: how a press fit goes together, from its own numbers or from a step's.

mod loose;
mod manual;
mod sizes;

use crate::bench::Bench;
use crate::job::kinds::seat::fields::{DEPTHS, LIMITS, SHAPE, TOOLS};
use crate::job::kinds::seat::service::{
    RUNNING, SEALED_CHOICES, choose_held, choose_sealed, held_at, held_choices, sealed_at, tell_running,
};
use crate::job::kinds::{Seat, SeatDepth, SeatWay, Work};
use crate::job::sheet::StepId;
use crate::parts::caution_card::caution_list;
use crate::parts::seat::{
    answered, countdown, depth_readings, fit_drawing, fit_facts, other_ways, plan_plate, tool_facts,
    tools_drawing,
};
use crate::parts::worked::{Form, Worked};
use crate::screens::Route;
use crate::trade::heat_plan::CoolMeans;
use crate::trade::material::Material;
use leptos::prelude::*;

impl Worked for Seat {
    const TITLE: &'static str = "Seat";
    const NOT_THIS_STEP: &'static str = "This step seats nothing.";

    fn at_hand(bench: Bench, step: Option<StepId>) -> Option<Self> {
        bench.seat(step)
    }

    fn change(
        bench: Bench,
        step: Option<StepId>,
        words: &'static str,
        change: &dyn Fn(&mut Self),
    ) -> Result<(), String> {
        bench.change_seat(step, words, change)
    }

    fn into_work(self) -> Work {
        Work::Seat(self)
    }
}

/// The screen; with a step, its numbers are the step's.
pub fn seat_screen(step: Option<StepId>) -> AnyView {
    let form = Form::of(step);
    let answered = answered(step);
    let answer = vec![
        plan_plate(answered),
        loose::loose_key(answered),
        countdown(step, answered),
        caution_list(step, form.cautions(), Signal::stored(false)),
        depth_readings(step, answered),
        fit_drawing(answered),
        fit_facts(answered),
        other_ways(answered),
        view! { <h2>"What to push with, what to stand it on"</h2> }.into_any(),
        tool_facts(answered),
        tools_drawing(answered),
    ];
    form.screen(
        |id| Route::Step(id).go(),
        answer,
        vec![
            manual::manual(form),
            sizes::sizes(form),
            limits(form),
            running(form),
            shape(form),
            depth(form),
        ],
    )
}

fn limits(form: Form<Seat>) -> AnyView {
    view! {
        <fieldset>
            <legend>"What is allowed"</legend>
            <div class="two">
                {form
                    .choice(
                        "heating",
                        &["may be heated", "must not be heated"],
                        |s| usize::from(s.way != SeatWay::Heat),
                        |s, at| s.way = if at == 0 { SeatWay::Heat } else { SeatWay::Press },
                    )}
                {form
                    .choice(
                        "heated with",
                        &["oven, hot plate or hot air", "an open flame"],
                        |s| usize::from(s.open_flame),
                        |s, at| s.open_flame = at == 1,
                    )}
                {form.numbers(&LIMITS)}
                {form
                    .choice(
                        "cooling",
                        &["none", "freezer, −18 °C", "dry ice, −78 °C"],
                        |s| match s.cool {
                            None => 0,
                            Some(CoolMeans::Freezer) => 1,
                            Some(CoolMeans::DryIce) => 2,
                        },
                        |s, at| s.cool = [None, Some(CoolMeans::Freezer), Some(CoolMeans::DryIce)].get(at).copied().flatten(),
                    )}
                {form
                    .choice(
                        "pressing cold",
                        &["may be pressed", "must not be pressed"],
                        |s| usize::from(s.no_press),
                        |s, at| s.no_press = at == 1,
                    )}
                {form
                    .choice(
                        "driven in",
                        &["by the press", "with a hammer"],
                        |s| usize::from(s.struck),
                        |s, at| s.struck = at == 1,
                    )}
                {form
                    .choice(
                        "the push goes through",
                        &["the ring that is fitted", "the balls of the bearing"],
                        |s| usize::from(s.through_balls),
                        |s, at| s.through_balls = at == 1,
                    )}
                {form
                    .choice(
                        "in the part that is heated",
                        &["no seals, no cured compound", "seals, O-rings or cured compound"],
                        |s| usize::from(s.holds_seals),
                        |s, at| s.holds_seals = at == 1,
                    )}
            </div>
        </fieldset>
    }
    .into_any()
}

fn running(form: Form<Seat>) -> AnyView {
    view! {
        <fieldset>
            <legend>"When it runs"</legend>
            <div class="two">
                {form.choice("held by, should the fit let go", &held_choices(), held_at, choose_held)}
                {form
                    .choice(
                        "running temperature",
                        &["not told", "told"],
                        |s| usize::from(s.runs_at_c.is_some()),
                        |s, at| tell_running(s, at == 1),
                    )}
                {form.numbers(&RUNNING)}
                {form.choice("bearing with seals or grease of its own", &SEALED_CHOICES, sealed_at, choose_sealed)}
            </div>
        </fieldset>
    }
    .into_any()
}

fn material_at(material: Material) -> usize {
    Material::ALL
        .iter()
        .position(|other| *other == material)
        .unwrap_or(0)
}

fn shape(form: Form<Seat>) -> AnyView {
    let names: Vec<&'static str> = Material::ALL.iter().map(|material| material.words()).collect();
    view! {
        <fieldset>
            <legend>"Materials and shape"</legend>
            <div class="two">
                {form
                    .choice(
                        "case (or shaft)",
                        &names,
                        |s| material_at(s.housing),
                        |s, at| s.housing = Material::ALL.get(at).copied().unwrap_or(s.housing),
                    )}
                {form
                    .choice(
                        "part",
                        &names,
                        |s| material_at(s.part_material),
                        |s, at| s.part_material = Material::ALL.get(at).copied().unwrap_or(s.part_material),
                    )}
                {form.numbers(&SHAPE)}
                {form.numbers(&TOOLS)}
            </div>
        </fieldset>
    }
    .into_any()
}

fn depth(form: Form<Seat>) -> AnyView {
    view! {
        <fieldset>
            <legend>"How deep it sits"</legend>
            <div class="two">
                {form
                    .choice(
                        "depth",
                        &["not stated", "stated, from the face"],
                        |s| usize::from(s.depth.is_some()),
                        |s, at| s.depth = (at == 1).then(SeatDepth::default),
                    )}
                {form.numbers(&DEPTHS)}
            </div>
            <p class="quiet">"Depths are below the face; a minus sign where the part stands proud."</p>
        </fieldset>
    }
    .into_any()
}
