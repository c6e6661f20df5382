//! What the other steps of a job, and its record, do to one of them: the one place that looks across.

use super::gate::{Ground, bead_clock};
use super::kinds::Work;
use super::kinds::around::{Across, Around};
use super::kinds::kind::Kind;
use super::kinds::seat::oven::OvenRun;
use super::progress::{Progress, Status};
use super::sheet::{Sheet, Step, StepId};
use crate::trade::application::JointKind;
use crate::trade::caution::{Situation, names};
use crate::trade::compound::{Family, recommend};
use crate::trade::cure::Milestone;
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use uom::si::time::hour;

/// How long solvent hangs in a part and in the air after a wash, hours (common practice, no source).
const SOLVENT_HANGS_H: f64 = 1.0;

/// How long a case from the oven or an engine that ran stays too hot to touch, hours (common practice, no
/// source).
const STAYS_HOT_H: f64 = 1.0;

/// Words of a part's name that mean something heat spoils.
const SOFT: [&str; 4] = ["O-ring", "O ring", "seal", "rubber"];

/// What every other step left behind for `step` at `now`; `oven` is what is on its way from the oven.
pub fn across<'a>(ground: Ground<'a>, oven: Option<&OvenRun>, step: StepId, now: Moment) -> Across<'a> {
    let title = |holds: &dyn Fn(&Step) -> bool| {
        let mut others = ground.sheet.steps.iter().filter(|other| other.id != step);
        others
            .find(|other| holds(other))
            .map(|other| other.title.as_str())
    };
    Across {
        soft: title(&|other| soft(ground, other)),
        half_cured: title(&|other| half_cured(ground, other, now)),
        hot: title(&|other| hot(ground, oven, other, now)),
        fuel: title(&|other| done_at(ground.progress, other).is_some() && fills_fuel(other)),
    }
}

/// Whether a step with solvent was closed within the hour.
pub fn solvent_about(sheet: &Sheet, progress: &Progress, now: Moment) -> bool {
    let used = sheet.steps.iter().filter(|step| step.work.kind().solvent());
    used.filter_map(|step| done_at(progress, step))
        .any(|at| within(SOLVENT_HANGS_H, at, now))
}

fn done_at(progress: &Progress, step: &Step) -> Option<Moment> {
    match progress.touched(step.id)?.status {
        Status::Done(at) => Some(at),
        Status::Open | Status::Skipped(_) => None,
    }
}

fn within(hours: f64, at: Moment, now: Moment) -> bool {
    now.since(at) < Time::new::<hour>(hours)
}

/// Compound went on in it, or something soft went in.
fn soft(ground: Ground<'_>, step: &Step) -> bool {
    let Some(progress) = ground.progress.touched(step.id) else {
        return false;
    };
    let done = matches!(progress.status, Status::Done(_));
    let joint = step.work.application();
    let compound = (done || progress.put_on())
        && joint.is_some_and(|joint| {
            let class = recommend(joint).class;
            class.is_some_and(|class| class.family() != Family::NonCuring)
        });
    let ring = joint.is_some_and(|joint| joint.kind == JointKind::ORing);
    compound || (done && (ring || fits_soft(step)))
}

fn fits_soft(step: &Step) -> bool {
    let named = |name: &str| SOFT.iter().any(|word| names(name, word));
    let own = match &step.work {
        Work::Fit(fit) => fit.soft || named(&fit.part),
        Work::Seat(seat) => seat.holds_seals || named(&seat.part),
        Work::Clean(_) | Work::Check(_) | Work::Fasten(_) | Work::Bond(_) | Work::Lift(_) => false,
        Work::Turn(_) | Work::Fill(_) | Work::Select(_) | Work::Gauge(_) | Work::Run(_) => false,
    };
    own || step.parts.iter().any(|part| named(&part.name))
}

/// Its compound is on and can't be handled yet, and no thread or bolts hold the joint meanwhile.
fn half_cured(ground: Ground<'_>, step: &Step, now: Moment) -> bool {
    let Some(joint) = step.work.application() else {
        return false;
    };
    let held = match joint.kind {
        JointKind::ThreadedFastener | JointKind::Stud | JointKind::PlugOrPipeThread => true,
        kind => between_faces(kind) && bolted_since(ground, step),
    };
    let clock = bead_clock(ground, step.id).filter(|_| !held);
    clock.is_some_and(|clock| {
        let handled = clock.reached_at(Milestone::Handling, ground.shop);
        handled.map_or(true, |done| done.latest > now)
    })
}

fn between_faces(kind: JointKind) -> bool {
    matches!(
        kind,
        JointKind::FlangeRigid
            | JointKind::FlangeFlexible
            | JointKind::CaseHalves
            | JointKind::ThreeWay
            | JointKind::Gasket
    )
}

/// Whether the fasteners that hold that bead are at their torque: those that name it, where any does, else
/// the next ones behind it.
fn bolted_since(ground: Ground<'_>, step: &Step) -> bool {
    let place = ground.sheet.place(step.id).map_or(0, |at| at + 1);
    let behind = || {
        ground
            .sheet
            .steps
            .iter()
            .skip(place)
            .filter(|later| later.fastens())
    };
    let done = |later: &Step| done_at(ground.progress, later).is_some();
    let mut named = behind()
        .filter(|later| later.before_skin.contains(&step.id))
        .peekable();
    match named.peek() {
        Some(_) => named.all(done),
        None => behind().next().is_some_and(done),
    }
}

/// It left something hot: a part out of the oven, an engine that ran and was not left to cool.
fn hot(ground: Ground<'_>, oven: Option<&OvenRun>, step: &Step, now: Moment) -> bool {
    let own = |run: &&OvenRun| run.step == Some(step.id) && run.job == Some(ground.job);
    let out = oven.filter(own).map(|run| run.started);
    if out.is_some_and(|at| within(STAYS_HOT_H, at, now)) {
        return true;
    }
    let lately = done_at(ground.progress, step).is_some_and(|at| within(STAYS_HOT_H, at, now));
    lately
        && match &step.work {
            Work::Run(run) => !run.cool,
            Work::Check(check) => check.running,
            Work::Seat(seat) => {
                let alone = seat.situation(&Around::default(), Situation::default());
                alone.heating.is_some()
            }
            Work::Clean(_) | Work::Fit(_) | Work::Fasten(_) | Work::Bond(_) | Work::Lift(_) => false,
            Work::Turn(_) | Work::Fill(_) | Work::Select(_) | Work::Gauge(_) => false,
        }
}

fn fills_fuel(step: &Step) -> bool {
    matches!(&step.work, Work::Fill(fill) if fill.fuel().is_some())
}
