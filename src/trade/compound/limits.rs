//! The limits the rules share, and the questions they ask of a joint.

use crate::trade::application::JointKind::{
    self, CaseHalves, Cylindrical, FlangeFlexible, FlangeRigid, Gasket, PlugOrPipeThread, Stud,
    ThreadedFastener, ThreeWay,
};
use crate::trade::application::{Known, ManualWord};

/// Low strength serves threads to about this size (common practice).
pub(super) const LOW_TO_MM: f64 = 6.0;
/// Wicking grades serve threads to about this size (common practice).
pub(super) const WICKING_TO_MM: f64 = 12.0;
/// Medium strength serves threads to about this size (common practice).
pub(super) const MEDIUM_TO_MM: f64 = 20.0;
/// High strength starts here; below it, removal shears the fastener (common practice).
pub(super) const HIGH_FROM_MM: f64 = 10.0;
/// The widest gap an anaerobic sealant or retaining compound is trusted with (common practice).
pub const ANAEROBIC_GAP_MM: f64 = 0.25;
/// The widest gap for silicone, "a few millimetres" (common practice).
pub const SILICONE_GAP_MM: f64 = 3.0;
/// High-temperature grades serve to about this (common practice).
pub(super) const HOTTEST_CELSIUS: f64 = 230.0;
/// A whisker, so that a limit typed in inches is still the limit.
pub(super) const WHISKER: f64 = 1e-9;

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
