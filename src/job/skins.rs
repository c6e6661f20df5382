//! Before it skins: what must be done while a bead is still wet, until when, and what comes too late.

use super::clock::ClockId;
use super::gate::{Ground, bead_clock};
use super::reading::What;
use super::sheet::{Step, StepId};
use crate::trade::compound::skins_at;
use crate::trade::cure::NoCure;
use crate::trade::moment::Moment;

/// Until when a step must be done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Deadline {
    /// The step that must be done.
    pub step: StepId,
    /// The step that put the bead on.
    pub bead: StepId,
    /// The bead's clock.
    pub clock: ClockId,
    /// When it skins, at the earliest; or why nobody knows.
    pub until: Result<Moment, NoCure>,
    /// Its label names no such time: what its kind usually takes.
    pub usual: bool,
}

impl Deadline {
    /// Whether it has skinned at `now`.
    pub fn over(&self, now: Moment) -> bool {
        self.until.is_ok_and(|until| until <= now)
    }
}

/// Until when `step` must be done, one for each bead it must be done before; none once it is closed.
pub fn deadlines(ground: Ground<'_>, step: &Step) -> Vec<Deadline> {
    match ground.progress.closed(step.id) {
        true => Vec::new(),
        false => beads(ground, step),
    }
}

/// The steps whose bead is torn where what `step` tightened is loosened at `now`: it has skinned.
pub fn torn(ground: Ground<'_>, step: &Step, now: Moment) -> Vec<StepId> {
    let skinned = beads(ground, step).into_iter().filter(|bead| bead.over(now));
    skinned.map(|bead| bead.bead).collect()
}

/// The beads `step` is done before, those that are on.
fn beads(ground: Ground<'_>, step: &Step) -> Vec<Deadline> {
    let on = step
        .before_skin
        .iter()
        .filter_map(|bead| bead_clock(ground, *bead).map(|clock| (*bead, clock)));
    on.map(|(bead, clock)| {
        let skins = skins_at(&clock.spec, clock.started, ground.shop);
        Deadline {
            step: step.id,
            bead,
            clock: clock.id,
            until: skins.map(|(at, _)| clock.by_the_harsher(at, ground.doubted_ms)),
            usual: skins.is_ok_and(|(_, usual)| usual),
        }
    })
    .collect()
}

/// The first bead that skinned before `step` was done, unless that was accepted.
pub fn too_late(ground: Ground<'_>, step: &Step, now: Moment) -> Option<Deadline> {
    let progress = ground.progress.touched(step.id);
    let accepted =
        |clock| progress.is_some_and(|progress| progress.accepted(&What::Skin(clock), &[]).is_some());
    let mut all = deadlines(ground, step).into_iter();
    all.find(|deadline| deadline.over(now) && !accepted(deadline.clock))
}

/// The deadlines that press: to come, or over and not accepted; the nearest first.
pub fn pressing(ground: Ground<'_>, now: Moment) -> Vec<Deadline> {
    let mut all = all_deadlines(ground);
    all.retain(|deadline| {
        let progress = ground.progress.touched(deadline.step);
        let accepted =
            progress.is_some_and(|progress| progress.accepted(&What::Skin(deadline.clock), &[]).is_some());
        deadline.until.is_ok() && !(accepted && deadline.over(now))
    });
    all
}

/// Every deadline of the job's open steps, the nearest first; those nobody knows come last.
pub fn all_deadlines(ground: Ground<'_>) -> Vec<Deadline> {
    let steps = ground.sheet.steps.iter();
    let mut all: Vec<Deadline> = steps.flat_map(|step| deadlines(ground, step)).collect();
    all.sort_by_key(|deadline| deadline.until.unwrap_or(Moment(i64::MAX)));
    all
}
