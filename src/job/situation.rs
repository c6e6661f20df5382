//! A step seen as what can go wrong in it: from its numbers to the cautions that apply.

use super::kinds::Work;
pub use super::kinds::around::Around;
use super::progress::{Progress, Status};
use super::sheet::Sheet;
use crate::trade::caution::{Caution, Level, Situation, cautions as by_rule, shown};
use crate::trade::compound::{CompoundClass, recommend};
use crate::trade::moment::Moment;
use crate::trade::quantity::Time;
use std::collections::BTreeSet;
use uom::si::time::hour;

/// How long solvent hangs in a part and in the air after a wash, hours (common practice, no source).
const SOLVENT_HANGS_H: f64 = 1.0;

/// The cautions of some work, gravest first.
pub fn cautions_of(work: &Work, around: &Around<'_>) -> Vec<Caution> {
    by_rule(&situation(work, around))
}

/// The cautions to show: at most three. Those not yet acknowledged come first, the gravest of them,
/// so that none is hidden behind one that was read; the order on the screen stays that of the list.
pub fn to_show(all: &[Caution], acknowledged: &BTreeSet<String>) -> Vec<Caution> {
    let read = |caution: &Caution| caution.level == Level::Stop && acknowledged.contains(caution.id);
    let (old, fresh): (Vec<&Caution>, Vec<&Caution>) = all.iter().partition(|caution| read(caution));
    let first: Vec<Caution> = fresh.into_iter().chain(old).cloned().collect();
    let chosen = shown(&first);
    all.iter()
        .filter(|caution| chosen.contains(caution))
        .cloned()
        .collect()
}

/// Whether a step with solvent was closed within the hour.
pub fn solvent_about(sheet: &Sheet, progress: &Progress, now: Moment) -> bool {
    let hangs = Time::new::<hour>(SOLVENT_HANGS_H);
    sheet
        .steps
        .iter()
        .filter(|step| step.work.kind().solvent())
        .any(|step| matches!(progress.step(step.id).status, Status::Done(at) if now.since(at) < hangs))
}

fn chemical(work: &Work) -> Option<CompoundClass> {
    work.application()
        .and_then(|application| recommend(application).class)
}

/// What some work does, as far as it can hurt.
pub fn situation(work: &Work, around: &Around<'_>) -> Situation {
    let with = Situation {
        chemicals: chemical(work).into_iter().collect(),
        before_cure: around.before_cure,
        ..Situation::default()
    };
    work.kind().situation(around, with)
}
