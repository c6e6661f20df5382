//! The judgement as a person would say it.

use super::window::{Weakest, Window};
use super::{Fastener, Joint, Judgement, Stage, Verdict};

/// One or two sentences on the torque: how it sits and, unless all is well, what may settle it.
pub(super) fn sentence(judged: &Judgement, joint: &Joint, stage: Stage, limits: &Window) -> String {
    let said = said(judged, joint, stage, limits);
    if judged.verdict == Verdict::Plausible {
        return said;
    }
    if judged.what_is_it {
        return format!(
            "{said} What is it? A plug, a banjo bolt, a stud driven in, a shaft nut is given less."
        );
    }
    match (judged.readings.first(), judged.higher) {
        (Some(reading), _) => format!("{said} Did the manual say {}?", reading.text()),
        (None, Some(higher)) => format!(
            "{said} If the manual says {}, type it; else check its value, unit and thread.",
            higher.text()
        ),
        (None, None) => format!("{said} Check the manual's value, unit and thread."),
    }
}

/// Of a plug's torque that is too high, and right for a banjo bolt.
pub(super) fn banjo(judged: &Judgement, joint: &Joint, stage: Stage, limits: &Window) -> String {
    let said = said(judged, joint, stage, limits);
    format!("{said} A banjo bolt is given more: if it is one, say so.")
}

fn said(judged: &Judgement, joint: &Joint, stage: Stage, limits: &Window) -> String {
    let it = with_class(joint);
    match (judged.verdict, judged.too_high, stage) {
        (Verdict::Plausible, _, Stage::Final) => format!("In the usual range for {it}."),
        (Verdict::Plausible, _, Stage::Snug) => {
            format!("A start for the turn of {it}: the angle does the rest.")
        }
        (Verdict::Absurd, true, _) if limits.absurd_by == Weakest::FemaleThread => {
            format!("That would strip {}.", female(joint))
        }
        (Verdict::Absurd, true, Stage::Snug) => {
            format!("That is no start for the turn of {it}: it is a whole torque.")
        }
        (Verdict::Absurd, true, Stage::Final) => too_much(joint, &it),
        (Verdict::Absurd, false, Stage::Final) => format!("That would hardly load {it}."),
        (Verdict::Absurd, false, Stage::Snug) => {
            format!("That would hardly bring {it} to its seat before the turn.")
        }
        (Verdict::High, _, _) if limits.high_by == Weakest::FemaleThread => {
            format!("High for {}.", female(joint))
        }
        (Verdict::High, _, Stage::Final) => format!("High for {it}."),
        (Verdict::Low, _, Stage::Final) => format!("Low for {it}."),
        (Verdict::High, _, Stage::Snug) => format!("High for the start of a turn of {it}."),
        (Verdict::Low, _, Stage::Snug) => format!("Low for the start of a turn of {it}."),
    }
}

/// Of a torque that is high only by what is put on the thread: the manual's may be for it already.
pub(super) fn only_by(joint: &Joint, put_on: &str) -> String {
    let it = with_class(joint);
    format!("High for {it} with {put_on} on its thread: take the manual’s torque for that, or ask.")
}

fn too_much(joint: &Joint, it: &str) -> String {
    match (joint.strength, joint.fastener) {
        (Some(_), Fastener::NotTold | Fastener::Bolt) => format!("That would stretch {it} past its limit."),
        (None, Fastener::NotTold | Fastener::Bolt) => {
            format!("That is more than {it} of any class can bear.")
        }
        (_, Fastener::SoftClamp) => format!("That would crush the gasket under {it}."),
        (_, Fastener::Stud | Fastener::Plug | Fastener::Banjo | Fastener::HeadPlug | Fastener::ShaftNut) => {
            format!("That is more than {it} is ever given.")
        }
    }
}

/// "an M6 8.8", "a 1/4-20 UNC", "an M14×1.5 plug".
fn with_class(joint: &Joint) -> String {
    let class = joint
        .strength
        .map_or(String::new(), |class| format!(" {}", class.name()));
    let behind = match joint.fastener {
        // What lies under it is said in its own words.
        Fastener::SoftClamp => "",
        other => other.behind(),
    };
    format!("{}{class}{behind}", with_article(joint))
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
