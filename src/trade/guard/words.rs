//! The judgement as a person would say it.

use super::window::{Weakest, Window};
use super::{Joint, Reading, Verdict};

/// One sentence on the torque, and the question that may settle it.
pub(super) fn sentence(
    verdict: Verdict,
    too_high: bool,
    joint: &Joint,
    limits: &Window,
    reading: Option<&Reading>,
) -> String {
    let bolt = bolt(joint);
    let said = match (verdict, too_high) {
        (Verdict::Plausible, _) => return format!("In the usual range for {bolt}."),
        (Verdict::Absurd, true) => match (limits.absurd_by, joint.strength) {
            (Weakest::FemaleThread, _) => format!("That would strip {}.", female(joint)),
            (Weakest::Bolt, Some(_)) => format!("That would stretch {bolt} past its limit."),
            (Weakest::Bolt, None) => format!("That is more than {bolt} of any class can bear."),
        },
        (Verdict::Absurd, false) => format!("That would hardly load {bolt}."),
        (Verdict::Low, _) => format!("Low for {bolt}."),
        (Verdict::High, _) => match limits.high_by {
            Weakest::FemaleThread => format!("High for {}.", female(joint)),
            Weakest::Bolt => format!("High for {bolt}."),
        },
    };
    match reading {
        Some(reading) => format!("{said} Did the manual say {}?", reading.text()),
        None => format!("{said} Check the manual's value, unit and thread."),
    }
}

/// "an M6 8.8", "a 1/4-20 UNC".
fn bolt(joint: &Joint) -> String {
    let name = joint.thread.name();
    let article = if name.starts_with('M') { "an" } else { "a" };
    match joint.strength {
        Some(class) => format!("{article} {name} {}", class.name()),
        None => format!("{article} {name}"),
    }
}

/// "an M6 thread in cast aluminium".
fn female(joint: &Joint) -> String {
    let name = joint.thread.name();
    let article = if name.starts_with('M') { "an" } else { "a" };
    match joint.material {
        Some(material) => format!("{article} {name} thread in {}", material.words()),
        None => format!("{article} {name} thread"),
    }
}
