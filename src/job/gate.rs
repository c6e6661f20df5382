//! The gate: why a fill, start or load step is shut, and when it opens.

use super::clock::{ClockId, CureClock};
use super::kinds::Work;
use super::kinds::gauge::answer as gauging;
use super::kinds::select::answer as choice;
use super::progress::{Progress, Status, StepProgress, next_fastener};
use super::reading::What;
use super::readings;
use super::sheet::{JobId, Sheet, Step, StepId};
use crate::trade::cure::{Milestone, NoCure, ShopHistory};
use crate::trade::moment::Moment;

/// One thing a step waits for.
#[derive(Debug, Clone, PartialEq)]
pub enum Wait {
    /// An earlier step is still open.
    Step(StepId),
    /// A compound is to be put on in that step, and its clock was never started.
    ClockNotStarted(StepId),
    /// A joint is curing until then, at the latest.
    Cure { clock: ClockId, until: Moment },
    /// A joint does not cure as things are.
    Stalled { clock: ClockId, why: NoCure },
    /// Something found in that step is not settled.
    Finding { step: StepId, what: What },
    /// That step was done before its plan changed, and what it asks for now was not.
    Undone(StepId),
}

impl Wait {
    /// Whether somebody who knows better may open it by hand: a cure, but no work left undone and nothing
    /// that was found.
    pub fn by_hand(&self) -> bool {
        match self {
            Self::Cure { .. } | Self::Stalled { .. } | Self::ClockNotStarted(_) => true,
            Self::Step(_) | Self::Finding { .. } | Self::Undone(_) => false,
        }
    }
}

/// The one of them to say first: what somebody must do, else the cure that ends last.
pub fn blocking(waits: &[Wait]) -> Option<&Wait> {
    let rank = |wait: &&Wait| match wait {
        Wait::Finding { .. } => (0, 0),
        Wait::Step(_) | Wait::Undone(_) => (1, 0),
        Wait::ClockNotStarted(_) => (2, 0),
        Wait::Stalled { .. } => (3, 0),
        Wait::Cure { until, .. } => (4, until.0.saturating_neg()),
    };
    waits.iter().min_by_key(rank)
}

/// What the gate looks at.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// Which job this is.
    pub job: JobId,
    /// Its sheet.
    pub sheet: &'a Sheet,
    /// How far it is.
    pub progress: &'a Progress,
    /// Every clock of the bench.
    pub clocks: &'a [CureClock],
    /// The shop's temperature, past and planned.
    pub shop: &'a ShopHistory,
    /// By how much, ms, the phone's clock is ahead of ours while nobody has said which is right. A wait goes
    /// by ours, what comes too late by the phone's.
    pub doubted_ms: i64,
}

/// Everything `step` waits for at `now`; empty means open.
///
/// A fill step waits for every step before it and for every cure begun in one that its fluid reaches; another
/// step waits for the steps named in its `waits_for`, and one that closes the case up for whatever was found in any
/// step before it. A step already closed waits for nothing, one overridden for no cure.
pub fn waits(ground: Ground<'_>, step: &Step, now: Moment) -> Vec<Wait> {
    let own = ground.progress.step(step.id);
    if own.closed() {
        return Vec::new();
    }
    let mut waits = would_wait(ground, step, now);
    waits.retain(|wait| !own.overridden || !wait.by_hand());
    waits
}

/// The time of the next gate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextGate {
    /// What the step waits for.
    pub milestone: Milestone,
    /// The latest end of the cures that run.
    pub at: Moment,
    /// That cure goes from outside inwards: by full cure its edge has.
    pub from_outside: bool,
    /// Nothing else holds it; else it is not before then, and nobody knows when.
    pub sure: bool,
}

/// When the first open step that a cure holds opens; none while nothing cures that a step waits for, or where
/// what it waits for does not cure as things are.
pub fn next_gate(ground: Ground<'_>, now: Moment) -> Option<NextGate> {
    let open = ground
        .sheet
        .steps
        .iter()
        .filter(|step| !ground.progress.closed(step.id));
    let held = |wait: &Wait| matches!(wait, Wait::Cure { .. } | Wait::Stalled { .. });
    let (milestone, waits) = open
        .filter_map(|step| Some((step.needs_cured()?, waits(ground, step, now))))
        .find(|(_, waits)| waits.iter().any(held))?;
    let ends: Option<Vec<(Moment, ClockId)>> = waits
        .iter()
        .filter(|wait| held(wait))
        .map(|wait| match wait {
            Wait::Cure { until, clock } => Some((*until, *clock)),
            _ => None,
        })
        .collect();
    let (at, last) = ends?.into_iter().max()?;
    let mut clocks = ground.clocks.iter();
    Some(NextGate {
        milestone,
        at,
        from_outside: clocks.any(|clock| clock.id == last && clock.spec.from_outside()),
        sure: waits.iter().all(held),
    })
}

impl NextGate {
    /// What is waited for, before a time.
    pub fn words(&self) -> &'static str {
        let own = self.milestone.words_from_outside().filter(|_| self.from_outside);
        own.unwrap_or_else(|| self.milestone.words())
    }
}

/// Whether `step` was overridden and something it would wait for has still not cured.
pub fn opened_uncured(ground: Ground<'_>, step: &Step, now: Moment) -> bool {
    let own = ground.progress.step(step.id);
    own.overridden && !own.closed() && would_wait(ground, step, now).iter().any(Wait::by_hand)
}

fn would_wait(ground: Ground<'_>, step: &Step, now: Moment) -> Vec<Wait> {
    let milestone = step.needs_cured();
    let mut found = Vec::new();
    for earlier in ground.sheet.before(step.id) {
        match milestone {
            Some(milestone) if waits_for(step, earlier) => {
                found.extend(waits_on(ground, step, earlier, milestone, now));
            }
            _ if step.closes_up => found.extend(findings(ground, earlier)),
            _ => {}
        }
        // What is done while a bead is wet begins when the bead is on.
        let not_on = step.before_skin.contains(&earlier.id)
            && !ground.progress.closed(earlier.id)
            && bead_clock(ground, earlier.id).is_none();
        if not_on && !found.contains(&Wait::Step(earlier.id)) {
            found.push(Wait::Step(earlier.id));
        }
    }
    found
}

fn findings(ground: Ground<'_>, step: &Step) -> impl Iterator<Item = Wait> {
    let id = step.id;
    let found = match ground.progress.touched(id) {
        Some(progress) => readings::findings(step, progress),
        None => Vec::new(),
    };
    found
        .into_iter()
        .map(move |what| Wait::Finding { step: id, what })
}

/// Whether `step` waits for `earlier` and its cure: all steps before a fill or a run, else those it names.
pub fn waits_for(step: &Step, earlier: &Step) -> bool {
    step.work.kind().waits_for_all() || step.waits_for.contains(&earlier.id)
}

/// Whether what is filled in reaches what cures in that step; not told, it does. None where nothing cures.
pub fn wetted(step: &Step) -> Option<bool> {
    step.work.cures().then(|| !dry(step))
}

fn dry(step: &Step) -> bool {
    let joint = step.work.application();
    joint.is_some_and(|joint| joint.wetted == Some(false))
}

/// Whether `step` waits until what was put on in `earlier` has cured so far as it needs: a fill waits for the
/// joints that its fluid reaches, and for a dry one only where it names it.
pub fn waits_for_cure(step: &Step, earlier: &Step) -> bool {
    let by_fluid = step.needs_cured() == Some(Milestone::FitForOil);
    step.needs_cured().is_some()
        && waits_for(step, earlier)
        && !(dry(earlier) && by_fluid && !step.waits_for.contains(&earlier.id))
}

/// The earlier steps that `step` waits for: all of them before a fill, else those it names.
pub fn waited_for<'a>(sheet: &'a Sheet, step: &'a Step) -> impl Iterator<Item = &'a Step> {
    let before = sheet.before(step.id).iter();
    before.filter(move |earlier| waits_for(step, earlier))
}

/// The closed steps behind `step` that were done on it as it was: those that wait for it.
pub fn depending<'a>(sheet: &'a Sheet, progress: &Progress, step: StepId) -> Vec<&'a Step> {
    let behind = sheet.place(step).map_or(0, |at| at + 1);
    let later = sheet.steps.iter().skip(behind);
    later
        .filter(|later| progress.closed(later.id))
        .filter(|later| waited_for(sheet, later).any(|own| own.id == step))
        .collect()
}

/// The last clock of that step which still stands for its bead.
pub fn bead_clock<'a>(ground: Ground<'a>, bead: StepId) -> Option<&'a CureClock> {
    let mut newest_first = ground.clocks.iter().rev().filter(|clock| clock.counts());
    newest_first.find(|clock| {
        clock
            .bound
            .is_some_and(|bound| bound.job == ground.job && bound.step == bead)
    })
}

/// Whether that step was done although its compound's clock was never started: nobody knows when it cures.
pub fn unstarted(step: &Step, progress: &StepProgress, clocks: bool) -> bool {
    !clocks && matches!(progress.status, Status::Done(_)) && step.work.cures()
}

/// Whether a step that is done lacks what its plan, changed since, now asks for: a fastener at its torque, a
/// reading, something chosen or gauged.
///
/// What a fill asks is not looked at: earlier releases closed one without a word of how much went in.
pub fn undone(step: &Step, progress: &StepProgress) -> bool {
    if !matches!(progress.status, Status::Done(_)) {
        return false;
    }
    let wanted = match &step.work {
        Work::Fill(_) => return false,
        Work::Fasten(fasten) => next_fastener(step, progress).is_some() || progress.too_tight(fasten) > 0,
        Work::Select(select) => choice::wants(select, progress).is_some(),
        Work::Gauge(gauge) => gauging::wants(gauge, progress).is_some(),
        Work::Clean(_)
        | Work::Check(_)
        | Work::Fit(_)
        | Work::Seat(_)
        | Work::Bond(_)
        | Work::Lift(_)
        | Work::Turn(_)
        | Work::Run(_) => false,
    };
    wanted || readings::missing(step, progress).is_some()
}

/// When everything known to be curing is done; `None` while something has no end in sight.
pub fn opens_at(waits: &[Wait]) -> Option<Moment> {
    let ends: Option<Vec<Moment>> = waits
        .iter()
        .map(|wait| match wait {
            Wait::Cure { until, .. } => Some(*until),
            _ => None,
        })
        .collect();
    ends.and_then(|ends| ends.into_iter().max())
}

fn waits_on(ground: Ground<'_>, step: &Step, earlier: &Step, milestone: Milestone, now: Moment) -> Vec<Wait> {
    let progress = ground.progress.step(earlier.id);
    let cures = waits_for_cure(step, earlier);
    let running: Vec<&CureClock> = ground
        .clocks
        .iter()
        .filter(|clock| {
            let bound = clock.bound;
            cures && clock.counts() && bound.is_some_and(|b| b.job == ground.job && b.step == earlier.id)
        })
        .collect();
    let mut found = Vec::new();
    if !progress.closed() {
        found.push(Wait::Step(earlier.id));
    }
    if undone(earlier, &progress) {
        found.push(Wait::Undone(earlier.id));
    }
    if cures && unstarted(earlier, &progress, !running.is_empty()) {
        found.push(Wait::ClockNotStarted(earlier.id));
    }
    found.extend(findings(ground, earlier));
    found.extend(
        running
            .into_iter()
            .filter_map(|clock| match clock.reached_at(milestone, ground.shop) {
                Ok(done) if done.latest <= now => None,
                Ok(done) => Some(Wait::Cure {
                    clock: clock.id,
                    until: done.latest,
                }),
                Err(why) => Some(Wait::Stalled { clock: clock.id, why }),
            }),
    );
    found
}
