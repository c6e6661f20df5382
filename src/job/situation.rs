//! A step seen as what can go wrong in it: from its numbers to the cautions that apply.

pub use super::across::{across, solvent_about};
use super::kinds::Work;
pub use super::kinds::around::{Across, Around};
use crate::trade::caution::{Caution, Level, Situation, cautions as by_rule, shown};
use crate::trade::compound::{CompoundClass, recommend};
use std::collections::BTreeSet;

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

fn chemical(work: &Work) -> Option<CompoundClass> {
    work.application()
        .and_then(|application| recommend(application).class)
}

/// What some work does, as far as it can hurt.
pub fn situation(work: &Work, around: &Around<'_>) -> Situation {
    let across = around.across;
    let with = Situation {
        chemicals: chemical(work).into_iter().collect(),
        before_cure: around.before_cure,
        solvent_near: around.solvent,
        soft_inside: across.soft.map(str::to_owned),
        half_cured: across.half_cured.map(str::to_owned),
        hot_near: across.hot.map(str::to_owned),
        fuel_near: across.fuel.map(str::to_owned),
        ..Situation::default()
    };
    work.kind().situation(around, with)
}
