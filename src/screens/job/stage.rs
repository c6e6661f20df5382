//! What the step asks for now, as large as its place allows. Nothing here scrolls: what doesn't fit is
//! behind “all”.

use super::no_wrench::no_wrench;
use super::notes::{big, notes};
use super::{bond, check, fasten, fill, gate, gauge, lift, plain, read, run, seat, select, skin, turn};
use crate::bench::{Ask, Bench};
use crate::job::kinds::{Gauged, Work};
use crate::job::part::PartKey;
use crate::job::reading::What;
use crate::job::sheet::Step;
use crate::parts::caution_card::caution_list;
use crate::parts::dynamic::{memo, piece};
use crate::trade::caution::Caution;
use leptos::prelude::*;

/// What is on the stage: it changes when another thing is asked for, not with each bolt.
#[derive(Debug, Clone, PartialEq)]
enum Scene {
    Stop,
    Shut,
    Late,
    Found(What),
    New(PartKey),
    Loosen(usize),
    PutOn,
    Tally,
    NoWrench,
    Read(What),
    Code,
    Choose,
    Gauge(Gauged),
    Feel,
    /// The work itself, with nothing more to ask but that it is done.
    Work,
    Closed,
    /// What was found waits for this part.
    OnOrder(PartKey),
}

impl Scene {
    fn of(ask: Ask) -> Self {
        match ask {
            Ask::Acknowledge(_) => Self::Stop,
            Ask::Wait(_) => Self::Shut,
            Ask::Skinned(_) => Self::Late,
            Ask::Finding(what) => Self::Found(what),
            Ask::NewOn(part) => Self::New(part),
            Ask::Loosen(count) => Self::Loosen(count),
            Ask::PutOn => Self::PutOn,
            Ask::Tally(_) | Ask::TakeWrench(_) => Self::Tally,
            Ask::NoWrench(_) => Self::NoWrench,
            Ask::Read(what) => Self::Read(what),
            Ask::Code => Self::Code,
            Ask::Choose => Self::Choose,
            Ask::Gauge(done) => Self::Gauge(done),
            Ask::Feel => Self::Feel,
            Ask::Close => Self::Work,
            Ask::GoOn => Self::Closed,
            Ask::OnOrder(part) => Self::OnOrder(part),
        }
    }
}

/// The stage of a step.
#[component]
pub fn Stage(step: StoredValue<Step>, cautions: Memo<Vec<Caution>>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let scene = memo(move || bench.ask(id).map(Scene::of));
    piece(move || match scene.get() {
        None => ().into_any(),
        Some(scene) => shown(scene, step, cautions),
    })
}

fn shown(scene: Scene, step: StoredValue<Step>, cautions: Memo<Vec<Caution>>) -> AnyView {
    let id = step.with_value(|step| step.id);
    match scene {
        Scene::Stop => flow(caution_list(Some(id), cautions, Signal::stored(true))),
        Scene::Shut => flow(gate::shut(step)),
        Scene::Late => flow(skin::late(id)),
        Scene::Found(what) => flow(read::found(step, what)),
        Scene::New(part) => before_notes(
            step,
            big(
                "New ones on?".to_owned(),
                step.with_value(|step| What::Part(part).name(Some(step))),
            ),
        ),
        Scene::Loosen(count) => flow(big(
            "Loosen all".to_owned(),
            format!("{count} are tighter than the plan now wants"),
        )),
        Scene::PutOn => before_notes(step, bond::put_on(step)),
        Scene::Tally => fasten::tally_stage(step),
        Scene::NoWrench => flow(view! { {fasten::asked_torque(step)} {no_wrench(id)} }.into_any()),
        Scene::Read(what @ (What::Depth | What::Gap)) => seat::seat_stage(step, Some(what)),
        Scene::Read(what) => before_notes(step, read::asked(step, what)),
        Scene::OnOrder(part) => flow(big(
            "On order".to_owned(),
            step.with_value(|step| What::Part(part).name(Some(step))),
        )),
        Scene::Code | Scene::Choose => before_notes(step, select::choose(step)),
        Scene::Gauge(done) => before_notes(step, gauge::do_now(step, done)),
        Scene::Feel => before_notes(step, turn::feel(step)),
        Scene::Work => work(step),
        Scene::Closed => work(step),
    }
}

/// What stands there when nothing is asked but that it is done, or when it is.
fn work(step: StoredValue<Step>) -> AnyView {
    match step.with_value(|step| step.work.clone()) {
        Work::Fasten(_) => fasten::tally_stage(step),
        Work::Bond(_) => flow(bond::clock_stage(step)),
        Work::Seat(_) => seat::seat_stage(step, None),
        Work::Lift(_) => lift::lift_stage(step),
        Work::Check(_) => before_notes(step, check::verdicts(step)),
        Work::Select(_) => before_notes(step, select::chosen(step)),
        Work::Gauge(gauge) => before_notes(step, gauge::said(step, &gauge)),
        Work::Turn(_) => before_notes(step, turn::feel(step)),
        Work::Fill(fill) => before_notes(
            step,
            view! { {check::verdicts(step)} {fill::told(&fill)} }.into_any(),
        ),
        Work::Run(run) => before_notes(
            step,
            view! { {check::verdicts(step)} {run::told(&run)} }.into_any(),
        ),
        Work::Clean(_) | Work::Fit(_) => flow(view! { {notes(step)} {plain::told(step)} }.into_any()),
    }
}

/// One below the other, in a second column where there is room beside; what finds no place is left out.
fn flow(inside: AnyView) -> AnyView {
    view! { <div class="stage flow">{inside}</div> }.into_any()
}

/// What is asked, and then what to do as the plan has it.
fn before_notes(step: StoredValue<Step>, inside: AnyView) -> AnyView {
    flow(view! { {inside} {notes(step)} }.into_any())
}
