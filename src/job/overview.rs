//! The whole job at a glance: what is done, what is next, what blocks, how long is left.

use super::gate::{Ground, Wait, undone, unstarted, waits, waits_for_cure};
use super::progress::Status;
use super::readings;
use super::sheet::{Step, StepId};
use crate::trade::compound::recommend;
use crate::trade::cure::{CureSpec, Milestone};
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use std::collections::BTreeMap;
use uom::si::time::minute;

/// Where a step stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepState {
    /// Closed.
    Done,
    /// Skipped with a reason.
    LeftOut,
    /// The first one open.
    Next,
    /// Still to do.
    Open,
    /// Still to do, and waiting for a cure.
    Curing,
    /// Something was found in it and is not settled, or it lacks what its plan now asks for.
    NotSettled,
}

impl StepState {
    /// The state in a word; empty for a step that is simply still to do.
    pub fn word(self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::LeftOut => "skipped",
            Self::Next => "next",
            Self::Open => "",
            Self::Curing => "waits",
            Self::NotSettled => "not settled",
        }
    }
}

/// The job at a glance.
#[derive(Debug, Clone, PartialEq)]
pub struct Overview {
    /// Where every step stands, in the sheet's order.
    pub states: Vec<StepState>,
    /// How many are done.
    pub done: usize,
    /// How many are skipped.
    pub left_out: usize,
    /// How many are open.
    pub open: usize,
    /// The first one open.
    pub next: Option<StepId>,
    /// Open steps held up by a cure, and by what.
    pub blocked: Vec<(StepId, Vec<Wait>)>,
    /// How long hands still have to work, as planned, or by the usual figure of the kind.
    pub hands: Time,
    /// When the last step could be done at the earliest, working without a break, cures included;
    /// `None` when something has no end in sight.
    pub finish: Option<Moment>,
}

/// How long that step takes: as planned, else as usual.
pub fn hands_on(step: &Step) -> Time {
    let planned = step
        .minutes
        .filter(|minutes| minutes.is_finite() && *minutes >= 0.0);
    Time::new::<minute>(planned.unwrap_or_else(|| step.work.kind().usual_minutes()))
}

/// Where one step stands at `now`.
pub fn standing(ground: Ground<'_>, step: &Step, now: Moment) -> StepState {
    let next = ground.progress.next_open(ground.sheet).map(|step| step.id);
    let held = cures(ground, step, now);
    state(ground, step, next, !held.is_empty())
}

fn cures(ground: Ground<'_>, step: &Step, now: Moment) -> Vec<Wait> {
    let all = waits(ground, step, now).into_iter();
    all.filter(Wait::by_hand).collect()
}

fn state(ground: Ground<'_>, step: &Step, next: Option<StepId>, held: bool) -> StepState {
    let progress = ground.progress.touched(step.id);
    let unsettled = |progress| !readings::findings(step, progress).is_empty() || undone(step, progress);
    if progress.is_some_and(unsettled) {
        return StepState::NotSettled;
    }
    match progress.map_or(Status::Open, |progress| progress.status) {
        Status::Done(_) => StepState::Done,
        Status::Skipped(_) => StepState::LeftOut,
        Status::Open if next == Some(step.id) => StepState::Next,
        Status::Open if held => StepState::Curing,
        Status::Open => StepState::Open,
    }
}

/// Looks at the whole job at `now`.
pub fn overview(ground: Ground<'_>, now: Moment) -> Overview {
    let next = ground.progress.next_open(ground.sheet).map(|step| step.id);
    let mut found = Overview {
        states: Vec::with_capacity(ground.sheet.steps.len()),
        done: 0,
        left_out: 0,
        open: 0,
        next,
        blocked: Vec::new(),
        hands: Time::new::<minute>(0.0),
        finish: None,
    };
    for step in &ground.sheet.steps {
        let status = ground
            .progress
            .touched(step.id)
            .map_or(Status::Open, |step| step.status);
        let held = match status {
            Status::Open => cures(ground, step, now),
            Status::Done(_) | Status::Skipped(_) => Vec::new(),
        };
        found.states.push(state(ground, step, next, !held.is_empty()));
        match status {
            Status::Done(_) => found.done += 1,
            Status::Skipped(_) => found.left_out += 1,
            Status::Open => {
                found.open += 1;
                found.hands += hands_on(step);
                if !held.is_empty() {
                    found.blocked.push((step.id, held));
                }
            }
        }
    }
    found.finish = finish(ground, now);
    found
}

/// Works on from step to step without a break, waiting at each gate for its cures.
fn finish(ground: Ground<'_>, now: Moment) -> Option<Moment> {
    let mut at = now;
    // What is curing, or will be, by the step it belongs to.
    let mut curing: BTreeMap<StepId, Vec<(CureSpec, Moment)>> = BTreeMap::new();
    for clock in ground.clocks.iter().filter(|clock| clock.counts()) {
        if let Some(bound) = clock.bound.filter(|bound| bound.job == ground.job) {
            curing
                .entry(bound.step)
                .or_default()
                .push((clock.spec.clone(), clock.started));
        }
    }
    for step in &ground.sheet.steps {
        let progress = ground.progress.touched(step.id);
        if progress.is_some_and(|step| step.closed()) {
            continue;
        }
        if let Some(milestone) = step.needs_cured()
            && !progress.is_some_and(|step| step.overridden)
        {
            at = at.max(opens(ground, step, milestone, &curing)?);
        }
        at = at.plus(hands_on(step));
        if progress.is_none_or(|step| !step.put_on())
            && let Some(spec) = step.work.application().and_then(|joint| recommend(joint).cure)
        {
            curing.entry(step.id).or_default().push((spec, at));
        }
    }
    Some(at)
}

/// When every cure before `step` is far enough; `None` when one never is.
fn opens(
    ground: Ground<'_>,
    step: &Step,
    milestone: Milestone,
    curing: &BTreeMap<StepId, Vec<(CureSpec, Moment)>>,
) -> Option<Moment> {
    let mut latest = Moment(i64::MIN);
    let before = ground.sheet.before(step.id).iter();
    for earlier in before.filter(|earlier| waits_for_cure(step, earlier)) {
        let progress = ground.progress.step(earlier.id);
        if unstarted(earlier, &progress, curing.contains_key(&earlier.id)) {
            return None;
        }
        for (spec, started) in curing.get(&earlier.id).into_iter().flatten() {
            latest = latest.max(spec.reached_at(milestone, *started, ground.shop).ok()?.latest);
        }
    }
    Some(latest)
}
