//! A plan that asks for the impossible: what must be cured first, and what must be done before it skins.
//!
//! Each is a warning: nobody's file is refused for it, and the step says it again at the bench.

use super::gate::{waits_for, waits_for_cure};
use super::kinds::Work;
use super::overview::hands_on;
use super::sheet::{Sheet, Step, StepId};
use crate::trade::application::JointKind;
use crate::trade::compound::skins_at;
use crate::trade::cure::{CureSpec, ShopHistory};
use crate::trade::moment::Moment;
use uom::si::time::minute;

/// Two things a plan asks for that don't go together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Conflict {
    /// The step waits until the bead has cured, and must be done before it skins.
    BothWaits { step: StepId, bead: StepId },
    /// The step must be done before the bead skins, but another stands between and waits for its cure.
    HeldUp { step: StepId, bead: StepId, by: StepId },
    /// The fasteners that pull the joint closed wait until its bead has cured.
    PulledWhenCured { step: StepId, bead: StepId },
    /// The bead skins before the hands can be done, minutes.
    TooShort {
        step: StepId,
        bead: StepId,
        open_min: f64,
        hands_min: f64,
        /// The label names no such time: what its kind usually takes.
        usual: bool,
    },
}

/// What a plan is looked at with: how each step's bead cures, and the shop it is put on in.
pub struct Bench<'a> {
    /// How the bead of a step cures, and whether by a bottle's own label; none where nothing cures.
    pub spec: &'a dyn Fn(&Step) -> Option<(CureSpec, bool)>,
    /// The shop's temperature, past and planned.
    pub shop: &'a ShopHistory,
    /// When the bead would be put on.
    pub now: Moment,
}

/// Everything in the plan that doesn't go together, in the order of its steps.
pub fn conflicts(sheet: &Sheet, bench: &Bench<'_>) -> Vec<Conflict> {
    let mut found = Vec::new();
    for (at, bead) in sheet.steps.iter().enumerate() {
        let Some((spec, labelled)) = (bench.spec)(bead) else {
            continue;
        };
        let behind = sheet.steps.get(at + 1..).unwrap_or_default();
        let held = held_by(bead, behind);
        for (place, step) in behind.iter().enumerate() {
            if step.before_skin.contains(&bead.id) {
                let between = behind.get(..place).unwrap_or_default();
                found.extend(timing(bead, step, between, &held));
                let short = too_short(step, between, &spec, bench);
                found.extend(short.map(|(open_min, hands_min, usual)| Conflict::TooShort {
                    step: step.id,
                    bead: bead.id,
                    open_min,
                    hands_min,
                    usual: usual || !labelled,
                }));
            } else if pulls_too_late(bead, step, behind) {
                found.push(Conflict::PulledWhenCured {
                    step: step.id,
                    bead: bead.id,
                });
            }
        }
    }
    found
}

/// The steps behind a bead that can't begin before it has cured: those that wait for it, and those that
/// wait for one of these.
fn held_by(bead: &Step, behind: &[Step]) -> Vec<StepId> {
    let mut held: Vec<StepId> = Vec::new();
    for (place, step) in behind.iter().enumerate() {
        let between = behind.get(..place).unwrap_or_default();
        let by_cure = waits_for_cure(step, bead);
        let by_another = between
            .iter()
            .any(|other| held.contains(&other.id) && waits_for(step, other));
        if by_cure || by_another {
            held.push(step.id);
        }
    }
    held
}

fn timing(bead: &Step, step: &Step, between: &[Step], held: &[StepId]) -> Option<Conflict> {
    if waits_for(step, bead) {
        return Some(Conflict::BothWaits {
            step: step.id,
            bead: bead.id,
        });
    }
    let by = between.iter().find(|other| held.contains(&other.id))?;
    Some(Conflict::HeldUp {
        step: step.id,
        bead: bead.id,
        by: by.id,
    })
}

/// How long the bead stays open and how long the hands take up to the end of `step`, minutes, where the
/// first is less; and whether its label names no such time.
fn too_short(step: &Step, between: &[Step], spec: &CureSpec, bench: &Bench<'_>) -> Option<(f64, f64, bool)> {
    let (skins, usual) = skins_at(spec, bench.now, bench.shop).ok()?;
    let open_min = skins.since(bench.now).get::<minute>();
    let hands_min: f64 = between
        .iter()
        .chain([step])
        .map(|step| hands_on(step).get::<minute>())
        .sum();
    (open_min < hands_min).then_some((open_min, hands_min, usual))
}

/// Whether `step` brings fasteners to torque that wait for the bead of a joint between faces, while none
/// behind it are said to pull the joint closed before it skins.
fn pulls_too_late(bead: &Step, step: &Step, behind: &[Step]) -> bool {
    let fastens = |step: &Step| matches!(step.work, Work::Fasten(_));
    let faces = bead.work.application().is_some_and(|joint| {
        matches!(
            joint.kind,
            JointKind::FlangeRigid | JointKind::FlangeFlexible | JointKind::CaseHalves | JointKind::ThreeWay
        )
    });
    let pulled = |step: &Step| fastens(step) && step.before_skin.contains(&bead.id);
    faces && fastens(step) && step.waits_for.contains(&bead.id) && !behind.iter().any(pulled)
}

impl Conflict {
    /// The step it is about, and the one that puts the bead on.
    pub fn about(&self) -> (StepId, StepId) {
        match self {
            Self::BothWaits { step, bead }
            | Self::HeldUp { step, bead, .. }
            | Self::PulledWhenCured { step, bead }
            | Self::TooShort { step, bead, .. } => (*step, *bead),
        }
    }

    /// What doesn't go together, and what to do, by the sheet's titles.
    pub fn words(&self, sheet: &Sheet) -> String {
        let title = |id: StepId| sheet.step(id).map_or("", |step| step.title.as_str());
        let (step, bead) = self.about();
        let (step, bead) = (title(step), title(bead));
        match self {
            Self::BothWaits { .. } => format!(
                "“{step}” waits until “{bead}” has cured and must be done before it skins: it can’t do both. \
                 Take one of the two out of its plan."
            ),
            Self::HeldUp { by, .. } => format!(
                "“{step}” must be done before “{bead}” skins, but “{}” comes first and waits until it has \
                 cured: move that one behind.",
                title(*by)
            ),
            Self::PulledWhenCured { .. } => format!(
                "“{step}” waits until “{bead}” has cured, but a joint is pulled closed while its bead is wet: \
                 say which fasteners are done before it skins."
            ),
            Self::TooShort {
                open_min,
                hands_min,
                usual,
                ..
            } => {
                let whose = if *usual {
                    "as such compounds usually do"
                } else {
                    "by its label"
                };
                format!(
                    "“{bead}” skins {} min after it is put on, {whose}, and the work up to the end of \
                     “{step}” takes about {} min: put it on later, take a slower compound, or take a second \
                     pair of hands.",
                    open_min.floor(),
                    hands_min.ceil()
                )
            }
        }
    }
}
