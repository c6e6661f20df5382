//! Lift: whether hands may do it, what the sling sees, what the hoist has left.

mod boom;

use crate::bench::Bench;
use crate::job::field::Field;
use crate::job::lifting::fields::{HANDS, LOAD, SLING};
use crate::job::sheet::StepId;
use crate::job::work::{LiftWay, LiftWork, Work};
use crate::parts::caution_card::caution_list;
use crate::parts::dynamic::{press, text, whether};
use crate::parts::field_table::field_table;
use crate::parts::lift::{answered, lift_drawing, lift_plate};
use crate::parts::picker::picker;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::lift::Grip;
use crate::trade::quantity::MassUnit;
use leptos::prelude::*;

/// What every part of the form needs.
#[derive(Clone, Copy)]
struct Form {
    bench: Bench,
    step: Option<StepId>,
    work: Memo<Option<LiftWork>>,
}

impl Form {
    /// A choice among words: what holds, and what a pick changes.
    fn choice(
        self,
        name: &'static str,
        options: &[&'static str],
        holds: fn(&LiftWork) -> usize,
        change: fn(&mut LiftWork, usize),
    ) -> AnyView {
        let words: Vec<String> = options.iter().map(|&words| words.to_owned()).collect();
        let shown = words.clone();
        let value = text(move || {
            let at = self.work.with(|work| work.as_ref().map(holds));
            at.and_then(|at| shown.get(at).cloned()).unwrap_or_default()
        });
        let pick = Callback::new(move |at: usize| {
            self.bench.change_lift(self.step, name, |work| change(work, at));
        });
        picker(name, value, words, pick)
    }

    fn numbers(self, table: &'static [Field<LiftWork>]) -> AnyView {
        let change = Callback::new(move |(field, kept): (&'static Field<LiftWork>, f64)| {
            self.bench
                .change_lift(self.step, field.name, |work| (field.set)(work, kept));
        });
        field_table(table, self.work, change)
    }

    fn slung(self) -> bool {
        self.work
            .with(|work| matches!(work.as_ref().map(|w| &w.way), Some(LiftWay::Sling { .. })))
    }
}

/// The screen; with a step, its numbers are the step's.
pub fn lift_screen(step: Option<StepId>) -> AnyView {
    let bench = Bench::here();
    let form = Form {
        bench,
        step,
        work: Memo::new(move |_| bench.lift(step)),
    };
    let answered = answered(step);
    let cautions = Memo::new(move |_| {
        form.work
            .get()
            .map_or(Vec::new(), |work| bench.cautions_of(&Work::Lift(work)))
    });
    let none = whether(move || form.work.with(Option::is_none));
    view! {
        <div class="worked">
            <div class="worked-answer">
                {head(bench, step)}
                <p class="trouble-line" hidden=whether(move || !none.get())>"This step lifts nothing."</p>
                {lift_plate(answered)}
                {caution_list(step, cautions)}
                {lift_drawing(answered)}
            </div>
            <div class="worked-form" hidden=none>
                {load(form)}
                {hands(form)}
                {sling(form)}
                <UndoKey />
            </div>
        </div>
    }
    .into_any()
}

/// The screen's title, or the step's with the way back to it.
fn head(bench: Bench, step: Option<StepId>) -> AnyView {
    let Some(id) = step else {
        return view! { <h1>"Lift"</h1> }.into_any();
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

fn load(form: Form) -> AnyView {
    let bench = form.bench;
    let units = [MassUnit::Kilogram, MassUnit::Pound];
    let words = ["kg and cm", "lb and in"];
    let unit = text(move || {
        let pounds = bench.settings.with(|s| s.lift.unit) == MassUnit::Pound;
        words
            .get(usize::from(pounds))
            .copied()
            .unwrap_or_default()
            .to_owned()
    });
    let pick_unit = Callback::new(move |at: usize| {
        if let Some(unit) = units.get(at).copied() {
            bench.set("unit of mass", |settings| settings.lift.unit = unit);
        }
    });
    view! {
        <fieldset>
            <legend>"The load"</legend>
            <div class="two">
                {form.numbers(&LOAD)}
                {picker("units", unit, words.map(str::to_owned).to_vec(), pick_unit)}
                {form
                    .choice(
                        "lifted",
                        &["by hand", "by hoist and sling"],
                        |w| usize::from(matches!(w.way, LiftWay::Sling { .. })),
                        |w, at| w.way = if at == 0 { LiftWay::hands() } else { LiftWay::sling() },
                    )}
                {form
                    .choice(
                        "under it",
                        &["nobody, nothing", "someone has to reach under"],
                        |w| usize::from(w.under_load),
                        |w, at| w.under_load = at == 1,
                    )}
            </div>
        </fieldset>
    }
    .into_any()
}

fn hands(form: Form) -> AnyView {
    view! {
        <fieldset hidden=whether(move || form.slung())>
            <legend>"By hand"</legend>
            <div class="two">
                {form.numbers(&HANDS)}
                {form
                    .choice(
                        "grip",
                        &["good: handles", "fair: fingers bent under it", "poor: bulky, slippery, sharp"],
                        |w| match w.way {
                            LiftWay::Hands { grip: Grip::Good, .. } => 0,
                            LiftWay::Hands { grip: Grip::Poor, .. } => 2,
                            _ => 1,
                        },
                        |w, at| {
                            if let LiftWay::Hands { grip, .. } = &mut w.way {
                                *grip = match at {
                                    0 => Grip::Good,
                                    1 => Grip::Fair,
                                    _ => Grip::Poor,
                                };
                            }
                        },
                    )}
            </div>
            <p class="quiet">
                "For a lift now and then, with two hands, standing, on firm ground, without a jerk. Not for carrying."
            </p>
        </fieldset>
    }
    .into_any()
}

fn sling(form: Form) -> AnyView {
    view! {
        <fieldset hidden=whether(move || !form.slung())>
            <legend>"Sling and hoist"</legend>
            <div class="two">
                {form
                    .choice(
                        "legs",
                        &["one", "two", "three", "four"],
                        |w| match w.way {
                            LiftWay::Sling { legs, .. } => usize::from(legs).saturating_sub(1),
                            LiftWay::Hands { .. } => 0,
                        },
                        |w, at| {
                            if let LiftWay::Sling { legs, .. } = &mut w.way {
                                *legs = [1, 2, 3, 4].get(at).copied().unwrap_or(2);
                            }
                        },
                    )}
                {form.numbers(&SLING)}
            </div>
            {boom::boom(form)}
        </fieldset>
    }
    .into_any()
}
