//! Seat: how a press fit goes together, from its own numbers or from a step's.

mod sizes;

use crate::bench::Bench;
use crate::job::field::Field;
use crate::job::seating::fields::{DEPTHS, LIMITS, SHAPE, TOOLS};
use crate::job::sheet::StepId;
use crate::job::work::{Seat, SeatDepth, SeatWay, Work};
use crate::parts::caution_card::caution_list;
use crate::parts::dynamic::{press, text, whether};
use crate::parts::field_table::field_table;
use crate::parts::picker::picker;
use crate::parts::seat::{
    answered, countdown, depth_readings, fit_drawing, fit_facts, other_ways, plan_plate, tool_facts,
    tools_drawing,
};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::heat_plan::CoolMeans;
use crate::trade::material::Material;
use leptos::prelude::*;

/// What every part of the form needs.
#[derive(Clone, Copy)]
struct Form {
    bench: Bench,
    step: Option<StepId>,
    seat: Memo<Option<Seat>>,
}

impl Form {
    /// A choice among words: what holds, and what a pick changes.
    fn choice(
        self,
        name: &'static str,
        options: &[&'static str],
        holds: fn(&Seat) -> usize,
        change: fn(&mut Seat, usize),
    ) -> AnyView {
        let words: Vec<String> = options.iter().map(|&words| words.to_owned()).collect();
        let shown = words.clone();
        let value = text(move || {
            let at = self.seat.with(|seat| seat.as_ref().map(holds));
            at.and_then(|at| shown.get(at).cloned()).unwrap_or_default()
        });
        let pick = Callback::new(move |at: usize| {
            self.bench.change_seat(self.step, name, |seat| change(seat, at));
        });
        picker(name, value, words, pick)
    }

    fn numbers(self, table: &'static [Field<Seat>]) -> AnyView {
        let change = Callback::new(move |(field, kept): (&'static Field<Seat>, f64)| {
            self.bench
                .change_seat(self.step, field.name, |seat| (field.set)(seat, kept));
        });
        field_table(table, self.seat, change)
    }
}

/// The screen; with a step, its numbers are the step's.
pub fn seat_screen(step: Option<StepId>) -> AnyView {
    let bench = Bench::here();
    let form = Form {
        bench,
        step,
        seat: Memo::new(move |_| bench.seat(step)),
    };
    let answered = answered(step);
    let cautions = Memo::new(move |_| {
        form.seat
            .get()
            .map_or(Vec::new(), |seat| bench.cautions_of(&Work::Seat(seat)))
    });
    let none = whether(move || form.seat.with(Option::is_none));
    view! {
        <div class="worked">
            <div class="worked-answer">
                {head(bench, step, "Seat")}
                <p class="trouble-line" hidden=whether(move || !none.get())>"This step seats nothing."</p>
                {plan_plate(answered)}
                {countdown(step, answered)}
                {caution_list(step, cautions)}
                {depth_readings(step, answered)}
                {fit_drawing(answered)}
                {fit_facts(answered)}
                {other_ways(answered)}
                <h2>"What to push with, what to stand it on"</h2>
                {tool_facts(answered)}
                {tools_drawing(answered)}
            </div>
            <div class="worked-form" hidden=none>
                {sizes::sizes(form)}
                {limits(form)}
                {shape(form)}
                {depth(form)}
                <UndoKey />
            </div>
        </div>
    }
    .into_any()
}

/// The screen's title, or the step's with the way back to it.
fn head(bench: Bench, step: Option<StepId>, name: &'static str) -> AnyView {
    let Some(id) = step else {
        return view! { <h1>{name}</h1> }.into_any();
    };
    let title = text(move || {
        bench
            .sheet
            .with(|sheet| sheet.step(id).map_or(String::new(), |step| step.title.clone()))
    });
    view! {
        <header class="of-step">
            <h1>{title}</h1>
            <button class="side-key" on:click=press(move || Route::Step(id).go())>
                "back to the step"
            </button>
        </header>
    }
    .into_any()
}

fn limits(form: Form) -> AnyView {
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

fn material_at(material: Material) -> usize {
    Material::ALL
        .iter()
        .position(|other| *other == material)
        .unwrap_or(0)
}

fn shape(form: Form) -> AnyView {
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

fn depth(form: Form) -> AnyView {
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
