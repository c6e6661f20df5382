//! Lift: whether hands may do it, what the sling sees, what the hoist has left.

mod boom;

use crate::bench::Bench;
use crate::job::kinds::lift::fields::{CENTRE, HANDS, LOAD, REACH_TO, SLING};
use crate::job::kinds::{LiftWay, LiftWork, Work};
use crate::job::sheet::StepId;
use crate::parts::caution_card::caution_list;
use crate::parts::dynamic::{text, whether};
use crate::parts::lift::{answered, lift_drawing, lift_plate};
use crate::parts::picker::picker;
use crate::parts::worked::{Form, Worked};
use crate::screens::Route;
use crate::trade::lift::Grip;
use crate::trade::quantity::MassUnit;
use crate::trade::sling::Hitch;
use leptos::prelude::*;

impl Worked for LiftWork {
    const TITLE: &'static str = "Lift";
    const NOT_THIS_STEP: &'static str = "This step lifts nothing.";

    fn at_hand(bench: Bench, step: Option<StepId>) -> Option<Self> {
        bench.lift(step)
    }

    fn change(
        bench: Bench,
        step: Option<StepId>,
        words: &'static str,
        change: &dyn Fn(&mut Self),
    ) -> Result<(), String> {
        bench.change_lift(step, words, change);
        Ok(())
    }

    fn into_work(self) -> Work {
        Work::Lift(self)
    }
}

impl Form<LiftWork> {
    fn slung(self) -> bool {
        self.work
            .with(|work| matches!(work.as_ref().map(|w| &w.way), Some(LiftWay::Sling { .. })))
    }
}

/// The screen; with a step, its numbers are the step's.
pub fn lift_screen(step: Option<StepId>) -> AnyView {
    let form = Form::of(step);
    let answered = answered(step);
    let answer = vec![
        lift_plate(answered),
        caution_list(step, form.cautions(), Signal::stored(false)),
        lift_drawing(answered),
    ];
    form.screen(
        |id| Route::Step(id).go(),
        answer,
        vec![load(form), hands(form), sling(form), centre(form)],
    )
}

fn load(form: Form<LiftWork>) -> AnyView {
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

fn hands(form: Form<LiftWork>) -> AnyView {
    view! {
        <fieldset hidden=whether(move || form.slung())>
            <legend>"By hand"</legend>
            <div class="two">
                {form.numbers(&HANDS)}
                {form
                    .choice(
                        "reach at the end",
                        &["as at the start", "another"],
                        |w| usize::from(w.reach_to_cm.is_some()),
                        |w, at| {
                            let now = match w.way {
                                LiftWay::Hands { reach_cm, .. } => reach_cm,
                                LiftWay::Sling { .. } => return,
                            };
                            w.reach_to_cm = (at == 1).then_some(w.reach_to_cm.unwrap_or(now));
                        },
                    )}
                {form.numbers(&REACH_TO)}
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

fn sling(form: Form<LiftWork>) -> AnyView {
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
                {form
                    .choice(
                        "slings go round it",
                        &Hitch::ALL.map(Hitch::words),
                        |w| Hitch::ALL.iter().position(|hitch| *hitch == w.hitch).unwrap_or(0),
                        |w, at| w.hitch = Hitch::ALL.get(at).copied().unwrap_or_default(),
                    )}
                {form
                    .choice(
                        "they pull on",
                        &["hooks, lugs, the load itself", "eyebolts with a shoulder"],
                        |w| usize::from(w.eyebolts),
                        |w, at| w.eyebolts = at == 1,
                    )}
            </div>
            {boom::boom(form)}
        </fieldset>
    }
    .into_any()
}

/// A centre to begin with, cm: in the middle of half a metre.
const MIDDLE: (f64, f64) = (50.0, 25.0);

fn centre(form: Form<LiftWork>) -> AnyView {
    view! {
        <fieldset>
            <legend>"Off centre"</legend>
            <div class="two">
                {form
                    .choice(
                        "centre of gravity",
                        &["midway, or not told", "off centre, between two legs or two people"],
                        |w| usize::from(w.span_cm.is_some()),
                        |w, at| {
                            let (span, near) = MIDDLE;
                            w.span_cm = (at == 1).then_some(w.span_cm.unwrap_or(span));
                            w.near_cm = (at == 1).then_some(w.near_cm.unwrap_or(near));
                        },
                    )}
                {form.numbers(&CENTRE)}
            </div>
        </fieldset>
    }
    .into_any()
}
