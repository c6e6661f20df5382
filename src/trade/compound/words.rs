//! The words of the answer card: how to put it on, prepare, keep it off, take it apart; by class.

use super::limits::FACES;
use super::{CompoundClass, Family};
use crate::trade::application::{Apart, Face, Hole, JointKind, Known};

/// Where it goes and how much.
pub(super) fn where_and_how(class: CompoundClass, joint: &Known) -> Vec<&'static str> {
    use CompoundClass as C;
    match class {
        C::ThreadlockLow | C::ThreadlockMedium | C::ThreadlockHigh => thread_places(joint),
        C::ThreadlockWicking => {
            vec!["Torque it first, then a drop where the thread meets the nut or case; let it creep in."]
        }
        C::RetainingCompound => vec![
            "A bead round the leading edge of the bore and a film on the other part.",
            "Push in with a slow turn; wipe off what comes out. Do not move it again.",
        ],
        C::AnaerobicFlange => vec![
            "A thin, unbroken film or a fine bead on one face, round every bolt hole.",
            "Close at once and torque in order.",
        ],
        C::SiliconeNeutral | C::SiliconeSensorSafe => vec![
            "An even, unbroken bead of 2 to 3 mm on one face, inside the bolt holes and round each.",
            "Join before the skin forms, and torque at once.",
        ],
        C::SemiDryingGasket => vec![
            "A thin, even film on both faces.",
            "Let the solvent go until the film is tacky, then join.",
        ],
        C::AnaerobicPipe => vec!["Round the thread, filling it, with the first two threads left bare."],
        C::PtfePaste => vec!["Round the thread with the first two threads left bare."],
        C::LightOil => oil_places(joint),
    }
}

fn thread_places(joint: &Known) -> Vec<&'static str> {
    const BLIND: &str =
        "Blind hole: a few drops on the hole's bottom threads; trapped air would push it off the bolt.";
    const THROUGH: &str = "Through hole: on the bolt, where the nut or the thread ends up.";
    const SEALED: &str = "Hole into oil or coolant: round the whole engaged thread, so that it seals.";
    match joint.hole {
        Some(Hole::Blind) => vec![BLIND],
        Some(Hole::Through) => vec![THROUGH],
        Some(Hole::ThroughToFluid) => vec![SEALED],
        None => vec![BLIND, SEALED],
    }
}

fn oil_places(joint: &Known) -> Vec<&'static str> {
    match joint.kind {
        JointKind::ThreadedFastener | JointKind::Stud => {
            vec!["A film on the thread and under the head, as the manual says; no more."]
        }
        JointKind::ORing => vec!["A film on the ring and its groove, of a kind the ring's rubber stands."],
        _ => vec!["A trace on the ring or washer only; the thread stays as the manual says."],
    }
}

/// What comes before.
pub(super) fn preparation(class: CompoundClass, joint: &Known) -> Vec<&'static str> {
    let mut steps = match class.family() {
        Family::NonCuring => return vec!["Clean the faces and threads; look them over for nicks."],
        Family::Anaerobic if class == CompoundClass::ThreadlockWicking => {
            return vec!["Degrease from outside and let it dry; it creeps only into a clean gap."];
        }
        _ => vec![
            "Take off all old compound, from the holes too.",
            "Degrease, and let the cleaner dry off: clean, dry, no oil.",
        ],
    };
    if class.family() == Family::Anaerobic && slow(joint.face) {
        steps.push(
            "This metal is slow to start the cure: use an activator, or give it the longer time shown.",
        );
    }
    if class.family() != Family::Anaerobic {
        steps.push("Close the joint dry once and check that the dowels let the faces meet.");
    }
    steps
}

/// Whether anaerobics start slowly on this face; an unknown one counts as slow.
pub(super) fn slow(face: Option<Face>) -> bool {
    !matches!(face, Some(Face::BrassOrCopper | Face::SteelOrIron))
}

/// What it must be kept off.
pub(super) fn must_not_touch(class: CompoundClass, joint: &Known) -> Vec<&'static str> {
    let mut keep_off = Vec::new();
    match class.family() {
        Family::Anaerobic => keep_off.extend([
            "Plastics and paint: it cracks or lifts many.",
            "Bearings, oil ways and jets.",
        ]),
        Family::Silicone => {
            keep_off.extend(["Oil ways, jets and strainers: loose crumbs block them.", "Fuel."])
        }
        Family::SolventDrying => {
            keep_off.extend(["Plastics: the solvent attacks many.", "Oil ways and jets."])
        }
        Family::NonCuring if class == CompoundClass::PtfePaste => keep_off.push("The bore of the fitting."),
        Family::NonCuring => keep_off.push("Threads and faces that go together dry."),
    }
    if joint.oil_ways && joint.is(FACES) {
        keep_off
            .push("A bare strip round each oil way and bearing bore, so that squeeze-out does not reach it.");
    }
    if joint.oil_ways && joint.kind == JointKind::Cylindrical {
        keep_off.push("The bearing's open sides: a thin film, wiped off before it can run in.");
    }
    keep_off
}

/// How it comes apart again.
pub(super) fn removal(class: CompoundClass, joint: &Known) -> &'static str {
    use CompoundClass as C;
    match class {
        C::ThreadlockLow => "Small hand tools.",
        C::ThreadlockMedium => "Hand tools.",
        C::ThreadlockHigh if joint.apart == Apart::Never => {
            "Not meant to. If it must: 230 to 320 °C at the thread, turned while hot, seals and oil out of the way."
        }
        C::ThreadlockHigh => {
            "Heat the thread to 230 to 320 °C and turn it hot; seals, oil and coatings near by may not stand that."
        }
        C::ThreadlockWicking => {
            "Hand tools; it stays stiff over the first turns. A little heat if it will not start."
        }
        C::RetainingCompound => "A press or puller, with heat as far as the parts allow.",
        C::AnaerobicFlange => "Part the faces evenly at the lugs; scrape with plastic or wood, not steel.",
        C::SiliconeNeutral | C::SiliconeSensorSafe => {
            "Cut the bead with a thin blade; peel and rub off the rest."
        }
        C::SemiDryingGasket => "Part the faces evenly; wipe off with the solvent its label names.",
        C::AnaerobicPipe => "Hand tools; local heat if it will not start.",
        C::PtfePaste | C::LightOil => "Hand tools.",
    }
}

/// What it stands in service, typically. Its label comes first.
pub(super) fn service_limit(class: CompoundClass, joint: &Known) -> &'static str {
    let hot = joint.celsius > STANDARD_CELSIUS;
    match class.family() {
        Family::Anaerobic if hot => {
            "Ask for a high-temperature grade: those serve to about 230 °C, the standard ones to 150 °C."
        }
        Family::Anaerobic => "Standard grades serve to about 150 °C.",
        Family::Silicone if hot => "Ask for a grade rated for the heat; not in fuel.",
        Family::Silicone => "Stands 150 °C; not in fuel.",
        Family::SolventDrying if hot => "Many soften when hot: the label must name the temperature.",
        Family::SolventDrying => "Stands 150 °C by most labels; check yours.",
        Family::NonCuring => "As its label says.",
    }
}

/// Standard grades of anaerobics serve to this, °C (common practice; MIL-S-46163A tested to 149 °C).
const STANDARD_CELSIUS: f64 = 150.0;

/// What to mind with it.
pub(super) fn cautions(class: CompoundClass) -> Vec<&'static str> {
    let mut lines = match class.family() {
        Family::Anaerobic => vec!["Gloves: it can make the skin allergic. Read its label and safety sheet."],
        Family::Silicone => vec!["Fresh air while it cures; off the skin and out of the eyes."],
        Family::SolventDrying => {
            vec!["Flammable vapour: fresh air, no flame, no sparks, no heat until it is dry."]
        }
        Family::NonCuring => Vec::new(),
    };
    if class == CompoundClass::ThreadlockHigh {
        lines.push("Once it is set, only heat takes it apart: be sure before it goes on.");
    }
    if class.locks_threads() {
        lines.push("The manual's torque stands. Wet compound changes the friction, so use it only where it is called for.");
    }
    if class == CompoundClass::LightOil {
        lines.push("Oil on a thread raises the preload at the same torque: keep it where it is called for.");
    }
    lines
}
