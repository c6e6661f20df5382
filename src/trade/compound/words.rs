//! The words of the answer card: how to put it on, prepare, keep it off, take it apart; by class.

use super::limits::{CENTRED_GAP_MM, FACES, STRONGEST_MM, bolt, bore, gap_within, seal};
use super::{CompoundClass, Family};
use crate::trade::application::{Face, Held, Hole, JointKind, Known};

/// Where it goes and how much.
pub(super) fn where_and_how(class: CompoundClass, joint: &Known) -> Vec<&'static str> {
    use CompoundClass as C;
    match class {
        C::ThreadlockLow | C::ThreadlockMedium | C::ThreadlockHigh => thread_places(joint),
        C::ThreadlockWicking => {
            vec!["Torque it first, then a drop where the thread meets the nut or case; let it creep in."]
        }
        C::RetainingCompound => retaining_places(joint),
        C::AnaerobicFlange => vec![
            "A thin, unbroken film or a fine bead on one face, round every bolt hole.",
            "Close at once and torque in order.",
        ],
        C::SiliconeNeutral | C::SiliconeSensorSafe => vec![
            "An even, unbroken bead of 2 to 3 mm on one face, inside the bolt holes and round each.",
            "Join before the skin forms, and torque at once.",
        ],
        C::SemiDryingGasket if joint.is(&[JointKind::ShaftSeal, JointKind::CorePlug]) => vec![
            "A thin film round the outer rim of the part, none on its leading edge: the bore pushes it back, not in.",
            "Press in straight; wipe off what comes out.",
        ],
        C::SemiDryingGasket => vec![
            "A thin, even film on both faces.",
            "Let the solvent go until the film is tacky, then join.",
        ],
        C::AnaerobicPipe => vec!["Round the thread, filling it, with the first two threads left bare."],
        C::PtfePaste => vec!["Round the thread with the first two threads left bare."],
        C::LightOil => oil_places(joint),
        C::Grease if seal(joint) => vec![
            "Fill the groove behind the lip a third, and wipe the shaft with it; the outside stays clean and dry.",
        ],
        C::Grease if !bolt(joint) => vec!["A film on the ring or washer and its groove; no more."],
        C::Grease => vec!["A film on the thread and under the head, as the manual says; no more."],
        C::AntiSeize => anti_seize_places(joint),
    }
}

fn retaining_places(joint: &Known) -> Vec<&'static str> {
    const TURNED: &str = "Push in with a slow turn; wipe off what comes out. Do not move it again.";
    const PRESSED: &str = "Press in straight, once; wipe off what comes out. Do not move it again.";
    match joint.kind {
        JointKind::CorePlug => vec!["A film round the bore’s edge and on the plug’s rim.", PRESSED],
        JointKind::ShaftSeal => vec![
            "A film in the bore, none on the seal’s leading edge or lip.",
            PRESSED,
        ],
        JointKind::TaperSeat => vec!["A thin film on the shaft’s taper.", PRESSED],
        _ => vec![
            "A bead round the leading edge of the bore and a film on the other part.",
            TURNED,
        ],
    }
}

fn anti_seize_places(joint: &Known) -> Vec<&'static str> {
    match joint.kind {
        JointKind::SparkPlug => {
            vec!["A trace on the thread, the first two turns bare; none on washer, cone or electrode."]
        }
        _ => vec!["A thin film on the thread and under the head or nut, brushed into the roots."],
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
        Family::NonCuring if class == CompoundClass::AntiSeize => {
            return vec![
                "Wire-brush the threads, male and female; run a nut down by hand.",
                "A grade whose label names the heat and both metals: copper paste eats at aluminium.",
            ];
        }
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
    if class.family() != Family::Anaerobic && joint.is(FACES) {
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
        Family::Silicone => keep_off.extend([
            "Bearings, oil ways, jets and strainers: loose crumbs block them.",
            "Fuel.",
        ]),
        Family::SolventDrying => keep_off.extend([
            "Plastics: the solvent attacks many.",
            "Bearings, oil ways and jets.",
        ]),
        Family::NonCuring if class == CompoundClass::PtfePaste => keep_off.push("The bore of the fitting."),
        Family::NonCuring if class == CompoundClass::AntiSeize => keep_off.extend([
            "Oxygen sensors, electrodes and brake faces.",
            "Threads that are locked by compound.",
        ]),
        Family::NonCuring => keep_off.push("Threads and faces that go together dry."),
    }
    if seal(joint) && class != CompoundClass::Grease {
        keep_off.push("The seal’s lip and the shaft it runs on.");
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
        C::ThreadlockHigh if joint.may_be_aluminium() => {
            "230 to 320 °C at the thread, turned while hot. Cast aluminium loses its temper from about 150 °C: heat the fastener, not the case, seals and oil out of the way, and count on a thread insert."
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
        C::PtfePaste | C::LightOil | C::Grease | C::AntiSeize => "Hand tools.",
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
        Family::NonCuring if class == CompoundClass::AntiSeize => {
            "As its label says: copper grades commonly to about 1000 °C, aluminium ones less; the oil in it burns off and the metal stays."
        }
        Family::NonCuring => "As its label says.",
    }
}

/// Standard grades of anaerobics serve to this, °C (common practice; MIL-S-46163A tested to 149 °C).
const STANDARD_CELSIUS: f64 = 150.0;

/// What to mind with it.
pub(super) fn cautions(class: CompoundClass, joint: &Known) -> Vec<&'static str> {
    use CompoundClass as C;
    let mut lines = match class.family() {
        Family::Anaerobic => vec!["Gloves: it can make the skin allergic. Read its label and safety sheet."],
        Family::Silicone => vec!["Fresh air while it cures; off the skin and out of the eyes."],
        Family::SolventDrying => {
            vec!["Flammable vapour: fresh air, no flame, no sparks, no heat until it is dry."]
        }
        Family::NonCuring => Vec::new(),
    };
    if class == C::ThreadlockHigh {
        lines.push("Once it is set, only heat takes it apart: be sure before it goes on.");
        if joint.may_be_aluminium() {
            lines.push("In aluminium that heat takes the casting’s temper: ask whether medium is meant.");
        }
    }
    if class.locks_threads() {
        lines.push("The manual's torque stands. Wet compound changes the friction, so use it only where it is called for.");
    }
    match class {
        C::LightOil => lines
            .push("Oil on a thread raises the preload at the same torque: keep it where it is called for."),
        C::Grease if bolt(joint) => lines.push(
            "Grease on a thread raises the preload at the same torque: keep it where it is called for.",
        ),
        C::AntiSeize => lines.extend(anti_seize_cautions(joint)),
        C::RetainingCompound if bore(joint) => lines.extend(retaining_cautions(joint)),
        _ => {}
    }
    if bolt(joint) && !matches!(class, C::ThreadlockWicking | C::AntiSeize) && joint.galls() != Some(false) {
        lines.push("Stainless seizes on stainless and in aluminium: wet the whole thread, turn it by hand and slowly, and stop when it stiffens.");
    }
    if class.family() == Family::Anaerobic && bolt(joint) && joint.plastic_part {
        lines.push("A plastic part is within reach: a drop in the hole, none on the part, and wipe off at once what gets out. Wet compound cracks many plastics under load.");
    }
    lines
}

/// What paste does to the preload, and what it must be kept from.
fn anti_seize_cautions(joint: &Known) -> Vec<&'static str> {
    let mut lines = vec![
        "Its friction is about 0.06 to 0.12: at the same torque it pulls the thread far harder than dry, up to twice and over. Set the torque the manual gives for anti-seize; where it gives a dry one alone, ask before this goes on. Never reckon one of your own.",
        "Gloves: it holds fine metal, nickel in some, which makes the skin allergic.",
    ];
    if joint.kind == JointKind::Exhaust && joint.oxygen_sensor {
        lines.push("Near an oxygen sensor only a paste whose label spares it.");
    }
    lines
}

/// Where it is strongest, and how far off centre the part may sit.
fn retaining_cautions(joint: &Known) -> Vec<&'static str> {
    let mut lines = Vec::new();
    let loose = !gap_within(joint, 0.0);
    let (least, most) = STRONGEST_MM;
    if loose && gap_within(joint, least) {
        lines.push("Strongest at 0.05 to 0.13 mm on the diameter: a closer fit wipes the film off, so wet both parts.");
    } else if !gap_within(joint, most) {
        lines.push("Strongest at 0.05 to 0.13 mm on the diameter: this gap holds less.");
    }
    if loose && joint.held != Some(Held::Bush) {
        lines.push(if gap_within(joint, CENTRED_GAP_MM) {
            "It sits off centre by up to half the gap: centre it while it sets."
        } else {
            "It sits off centre by up to half the gap: over 0.1 mm is more than a bearing or gear should have. Check the page."
        });
    }
    if loose && matches!(joint.held, None | Some(Held::Race | Held::OnShaft)) {
        lines.push("Never into the bearing: one drop in its balls or rollers and it is done.");
    }
    lines
}
