//! The judgement as a person would say it.

use super::window::{Weakest, Window};
use super::{Joint, Part, Reading, Verdict};

/// One sentence on the torque.
pub(super) fn said(verdict: Verdict, too_high: bool, joint: &Joint, part: Part, limits: &Window) -> String {
    let bolt = bolt(joint, part);
    match (verdict, too_high) {
        (Verdict::Plausible, _) => format!("In the usual range for {bolt}."),
        (Verdict::Absurd, true) => match (limits.absurd_by, joint.strength, part) {
            (Weakest::FemaleThread, ..) => format!("That would strip {}.", female(joint)),
            (_, None, Part::Bolt) => format!("That is more than {bolt} of any class can bear."),
            (_, None, Part::Plug) => format!("That is more than {bolt} can bear."),
            (_, Some(_), _) => format!("That would stretch {bolt} past its limit."),
        },
        (Verdict::Absurd, false) => format!("That would hardly load {bolt}."),
        (Verdict::Low, _) => format!("Low for {bolt}."),
        (Verdict::High, _) => match limits.high_by {
            Weakest::FemaleThread => format!("High for {}.", female(joint)),
            Weakest::Bolt => format!("High for {bolt}."),
        },
    }
}

/// `said` and, unless all is well, the question that may settle it.
pub(super) fn with_question(said: String, verdict: Verdict, reading: Option<&Reading>) -> String {
    match (verdict, reading) {
        (Verdict::Plausible, _) => said,
        (_, Some(reading)) => format!("{said} Did the manual say {}?", reading.text()),
        (_, None) => format!("{said} Check the manual's value, unit and thread."),
    }
}

/// "an M6 8.8", "a 1/4-20 UNC", "an M14×1.5 plug".
fn bolt(joint: &Joint, part: Part) -> String {
    let mut words = with_article(joint);
    if let Some(class) = joint.strength {
        words = format!("{words} {}", class.name());
    }
    match part {
        Part::Bolt => words,
        Part::Plug => format!("{words} plug"),
    }
}

/// "an M6 thread in cast aluminium".
fn female(joint: &Joint) -> String {
    let thread = with_article(joint);
    match joint.material {
        Some(material) => format!("{thread} thread in {}", material.words()),
        None => format!("{thread} thread"),
    }
}

fn with_article(joint: &Joint) -> String {
    let name = joint.thread.name();
    let article = if name.starts_with('M') { "an" } else { "a" };
    format!("{article} {name}")
}
