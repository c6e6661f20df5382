//! When a question changes nothing: by the answers before it, as the rules of `compound` read them. A test
//! beside the rules walks every joint and fails where one asks in vain or leaves one out that counts.

use super::Application;
use super::answers::{Apart, Face, Fluid, Held, Hole, JointKind, ManualWord, Outside};
use super::sizes::*;

use uom::si::length::millimeter;

/// The manual names nothing, as far as is known.
pub(super) fn silent(j: &Application) -> bool {
    matches!(j.manual, None | Some(ManualWord::NotStated))
}

/// The manual names what stays soft.
fn soft(j: &Application) -> bool {
    use ManualWord::{AntiSeize, Grease, Oil};
    matches!(j.manual, Some(Oil | Grease | AntiSeize))
}

fn sealant(j: &Application) -> bool {
    j.manual == Some(ManualWord::ThreadSealant)
}

fn high(j: &Application) -> bool {
    j.manual == Some(ManualWord::LockHigh)
}

fn plastic(j: &Application) -> bool {
    j.face == Some(Face::Thermoplastic)
}

fn thread_mm(j: &Application) -> f64 {
    j.thread.map_or(OPEN_THREAD_MM, |size| size.get::<millimeter>())
}

fn large(j: &Application) -> bool {
    thread_mm(j) > HIGH_FROM_MM - WHISKER
}

fn held(j: &Application) -> bool {
    j.locked == Some(true)
}

fn together(j: &Application) -> bool {
    j.assembled == Some(true)
}

/// Nothing goes on for a reason that no later answer lifts.
fn thread_settled(j: &Application) -> bool {
    let conflict = held(j) && !silent(j);
    let take_out = together(j) && (!silent(j) || thread_mm(j) > WICKING_TO_MM + WHISKER);
    let shears = high(j) && !large(j) && j.apart != Some(Apart::Never);
    conflict || take_out || shears
}

/// Held by a part, in a hole that needs no sealing as far as is known: nothing that cures goes on.
fn held_dry(j: &Application) -> bool {
    held(j) && !sealant(j) && j.hole != Some(Hole::ThroughToFluid)
}

/// The right torque holds it.
fn clamped(j: &Application) -> bool {
    silent(j)
        && j.kind == JointKind::ThreadedFastener
        && j.vibration == Some(false)
        && matches!(j.hole, Some(Hole::Blind | Hole::Through))
}

pub(super) fn lock(j: &Application) -> bool {
    soft(j) || sealant(j)
}

pub(super) fn assembled(j: &Application) -> bool {
    held(j)
}

pub(super) fn thread(j: &Application) -> bool {
    held(j) || (!silent(j) && !high(j)) || (together(j) && !silent(j))
}

pub(super) fn thread_apart(j: &Application) -> bool {
    let middling = thread_mm(j) > LOW_TO_MM + WHISKER && !large(j);
    thread(j) || together(j) || (silent(j) && middling) || (high(j) && large(j))
}

pub(super) fn partner(j: &Application) -> bool {
    let stainless = j.face == Some(Face::Stainless) && j.manual != Some(ManualWord::AntiSeize);
    let never_large = silent(j) && large(j) && j.apart == Some(Apart::Never);
    let plated = j.face == Some(Face::Plated) && (high(j) || never_large);
    thread_settled(j) || together(j) || !(stainless || plated)
}

pub(super) fn hole(j: &Application) -> bool {
    thread_settled(j) || together(j) || soft(j) || sealant(j)
}

pub(super) fn thread_heat(j: &Application) -> bool {
    thread_settled(j) || soft(j) || held_dry(j)
}

pub(super) fn vibration(j: &Application) -> bool {
    !silent(j) || together(j) || held(j) || !matches!(j.hole, Some(Hole::Blind | Hole::Through))
}

pub(super) fn plastic_part(j: &Application) -> bool {
    thread_heat(j) || clamped(j)
}

/// What makes a plug tight has to be found out first, or needs nothing.
pub(super) fn plug_settled(j: &Application) -> bool {
    j.seal.is_none() && !sealant(j)
}

pub(super) fn plug_apart(j: &Application) -> bool {
    plug_settled(j) || sealant(j) || plastic(j)
}

pub(super) fn spark_seal(j: &Application) -> bool {
    j.manual == Some(ManualWord::AntiSeize)
}

pub(super) fn not_retained(j: &Application) -> bool {
    j.manual != Some(ManualWord::Retaining)
}

fn gap_mm(j: &Application) -> Option<f64> {
    j.gap.map(|gap| gap.get::<millimeter>())
}

/// The fit alone says that nothing goes on.
pub(super) fn bore_settled(j: &Application) -> bool {
    gap_mm(j).is_none_or(|gap| gap > ANAEROBIC_GAP_MM + WHISKER || (silent(j) && gap <= WHISKER))
}

pub(super) fn bore_held(j: &Application) -> bool {
    bore_settled(j) || gap_mm(j).is_some_and(|gap| gap <= WHISKER)
}

/// The fit and what is held say that nothing goes on.
pub(super) fn bore_unfit(j: &Application) -> bool {
    let off_centre = silent(j)
        && j.held != Some(Held::Bush)
        && gap_mm(j).is_some_and(|gap| gap > CENTRED_GAP_MM + WHISKER);
    bore_settled(j) || off_centre
}

pub(super) fn bore_apart(j: &Application) -> bool {
    bore_unfit(j) || !silent(j)
}

/// A seal that goes in dry, whatever else is known.
pub(super) fn seal_dry(j: &Application) -> bool {
    use ManualWord::{LiquidGasket, Retaining};
    match j.manual {
        Some(LiquidGasket | Retaining) => matches!(j.outside, Some(Outside::Rubber | Outside::Coated)),
        _ => j.manual == Some(ManualWord::Grease) || j.outside != Some(Outside::Metal),
    }
}

pub(super) fn seal_outside(j: &Application) -> bool {
    j.manual == Some(ManualWord::Grease)
}

pub(super) fn press_in_loose(j: &Application) -> bool {
    gap_mm(j).is_some_and(|gap| gap > WHISKER)
}

pub(super) fn seal_heat(j: &Application) -> bool {
    let most = if silent(j) {
        CENTRED_GAP_MM
    } else {
        ANAEROBIC_GAP_MM
    };
    seal_dry(j) || gap_mm(j).is_some_and(|gap| gap > most + WHISKER)
}

// Faces and gaskets.

fn face_named(j: &Application) -> bool {
    use ManualWord::{AnaerobicSealant, LiquidGasket, Silicone};
    matches!(j.manual, Some(AnaerobicSealant | Silicone | LiquidGasket))
}

fn bare_gasket(j: &Application) -> bool {
    j.kind == JointKind::Gasket && silent(j)
}

fn attacks_plastic(j: &Application) -> bool {
    matches!(
        j.manual,
        Some(ManualWord::AnaerobicSealant | ManualWord::LiquidGasket)
    )
}

pub(super) fn face(j: &Application) -> bool {
    let machined = matches!(j.kind, JointKind::FlangeRigid | JointKind::CaseHalves);
    bare_gasket(j) || !(attacks_plastic(j) || (machined && silent(j)))
}

/// The manual's word and plastic don't agree, or a gasket goes in dry.
pub(super) fn face_settled(j: &Application) -> bool {
    bare_gasket(j) || (attacks_plastic(j) && plastic(j))
}

pub(super) fn rigid(j: &Application) -> bool {
    face_named(j) || plastic(j)
}

/// The gap as it counts: an open one is narrow between stiff faces, wide elsewhere.
fn narrow(j: &Application) -> bool {
    match gap_mm(j) {
        Some(gap) => gap <= ANAEROBIC_GAP_MM + WHISKER,
        None => matches!(j.kind, JointKind::FlangeRigid | JointKind::CaseHalves),
    }
}

/// Stiff machined metal faces that meet.
fn machined(j: &Application) -> bool {
    let stiff =
        j.kind == JointKind::FlangeRigid || (j.kind == JointKind::CaseHalves && j.rigid == Some(true));
    silent(j) && stiff && narrow(j) && !plastic(j)
}

pub(super) fn fluid(j: &Application) -> bool {
    face_settled(j) || attacks_plastic(j) || machined(j)
}

/// Fuel wets it, or may, where only silicone is left.
fn fuelled(j: &Application) -> bool {
    !fluid(j) && matches!(j.fluid, None | Some(Fluid::Fuel))
}

pub(super) fn oxygen_sensor(j: &Application) -> bool {
    fluid(j) || fuelled(j)
}

pub(super) fn oil_ways(j: &Application) -> bool {
    let unfit = j.manual == Some(ManualWord::AnaerobicSealant) && !narrow(j);
    face_settled(j) || fuelled(j) || unfit
}
