//! The limits the rules share, and the questions they ask of a joint.

use crate::trade::application::JointKind::{
    self, CaseHalves, Cylindrical, FlangeFlexible, FlangeRigid, Gasket, PlugOrPipeThread, ShaftSeal, Stud,
    ThreadedFastener, ThreeWay,
};
pub(super) use crate::trade::application::sizes::*;
use crate::trade::application::{Apart, Held, Hole, Known, ManualWord, Outside};

/// Medium strength serves threads to about this size (common practice).
pub(super) const MEDIUM_TO_MM: f64 = 20.0;
/// High-temperature grades serve to about this (common practice).
pub(super) const HOTTEST_CELSIUS: f64 = 230.0;

pub(super) const BOLTS: &[JointKind] = &[ThreadedFastener, Stud];
pub(super) const THREADS: &[JointKind] = &[ThreadedFastener, Stud, PlugOrPipeThread];
pub(super) const FACES: &[JointKind] = &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay];
pub(super) const FACES_AND_GASKET: &[JointKind] =
    &[FlangeRigid, FlangeFlexible, CaseHalves, ThreeWay, Gasket];

pub(super) fn gap_within(joint: &Known, limit_mm: f64) -> bool {
    joint.gap_mm.is_some_and(|gap_mm| gap_mm <= limit_mm + WHISKER)
}

pub(super) fn named(joint: &Known, word: ManualWord) -> bool {
    joint.manual == word
}

pub(super) fn bolt(joint: &Known) -> bool {
    joint.is(BOLTS)
}

pub(super) fn faces(joint: &Known) -> bool {
    joint.is(FACES)
}

pub(super) fn plug(joint: &Known) -> bool {
    joint.is(&[PlugOrPipeThread])
}

pub(super) fn bore(joint: &Known) -> bool {
    joint.is(&[Cylindrical])
}

pub(super) fn metal_to_metal(joint: &Known) -> bool {
    joint.kind == FlangeRigid || (joint.kind == CaseHalves && joint.rigid)
}

/// The manual names nothing.
pub(super) fn silent(joint: &Known) -> bool {
    named(joint, ManualWord::NotStated)
}

/// The manual names a threadlocker.
pub(super) fn lock_named(joint: &Known) -> bool {
    use ManualWord::{LockHigh, LockLow, LockMedium};
    matches!(joint.manual, LockLow | LockMedium | LockHigh)
}

/// Its hole goes through into oil or coolant.
pub(super) fn to_fluid(joint: &Known) -> bool {
    joint.hole == Some(Hole::ThroughToFluid)
}

/// A small thread, or one of some size that is often adjusted: a stronger grade shears it.
pub(super) fn small(joint: &Known) -> bool {
    bolt(joint)
        && ((joint.thread_mm < LOW_TO_MM - WHISKER && joint.apart != Apart::Never)
            || (joint.apart == Apart::Often && joint.thread_mm < LOW_TO_MM + WHISKER))
}

/// A part holds the thread, and its hole needs no sealing.
pub(super) fn held_dry(joint: &Known) -> bool {
    bolt(joint) && joint.locked && silent(joint) && !to_fluid(joint)
}

/// Nothing shakes it, and its hole needs no sealing: the right torque holds it.
pub(super) fn clamped(joint: &Known) -> bool {
    joint.is(&[ThreadedFastener])
        && silent(joint)
        && !joint.vibration
        && !joint.assembled
        && matches!(joint.hole, Some(Hole::Blind | Hole::Through))
}

/// Coming apart hot would shear it, or take more than it is worth.
pub(super) fn shears(joint: &Known) -> bool {
    joint.thread_mm < HIGH_FROM_MM - WHISKER && joint.apart != Apart::Never
}

pub(super) fn seal(joint: &Known) -> bool {
    joint.is(&[ShaftSeal])
}

/// A liquid is named for a seal.
pub(super) fn seal_named(joint: &Known) -> bool {
    seal(joint) && matches!(joint.manual, ManualWord::LiquidGasket | ManualWord::Retaining)
}

/// A seal whose outside stays dry, as far as is known.
pub(super) fn seal_dry(joint: &Known) -> bool {
    seal(joint) && silent(joint) && joint.outside != Some(Outside::Metal)
}

/// What slides in there has to run true and would not.
pub(super) fn off_centre(joint: &Known) -> bool {
    joint.held != Some(Held::Bush) && !gap_within(joint, CENTRED_GAP_MM)
}
