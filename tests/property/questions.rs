//! No question is asked in vain: wherever one is asked, two of its answers lead to different cards, by every
//! way of answering what comes after it. That none is left out is tried beside the rules, which alone can be
//! shown answers that were not asked for.

use halfcase::trade::application::{Application, DONT_KNOW, JointKind, answer, questions};
use halfcase::trade::compound::recommend;
use halfcase::trade::cure::Chemistry;
use std::hash::{DefaultHasher, Hash, Hasher};
use uom::si::length::millimeter;
use uom::si::time::second;

/// All that a card says, as one number; what was taken for an open answer apart.
fn card(joint: &Application) -> u64 {
    let card = recommend(joint);
    let mut sum = DefaultHasher::new();
    (card.class, card.reason, card.removal, card.service_limit).hash(&mut sum);
    (card.where_and_how, card.preparation, card.must_not_touch).hash(&mut sum);
    (card.cautions, card.rejected).hash(&mut sum);
    if let Some((low, high)) = card.assembly_time {
        (low.get::<second>().to_bits(), high.get::<second>().to_bits()).hash(&mut sum);
    }
    match card.cure.map(|cure| cure.chemistry) {
        Some(Chemistry::Anaerobic { substrate, gap, .. }) => {
            (1, format!("{substrate:?}"), gap.get::<millimeter>().to_bits()).hash(&mut sum);
        }
        Some(Chemistry::MoistureSilicone { depth }) => {
            (2, depth.get::<millimeter>().to_bits()).hash(&mut sum);
        }
        Some(Chemistry::SolventDrying) => 3.hash(&mut sum),
        None => 4.hash(&mut sum),
    }
    sum.finish()
}

/// What can still be said of a joint after these answers: one number for one card, or for one tree of them.
fn said(joint: &Application, depth: usize, vain: &mut Vec<String>, seen: &mut usize) -> u64 {
    let asked = questions(joint);
    let Some(question) = asked.get(depth) else {
        *seen += 1;
        return card(joint);
    };
    let branches: Vec<(&str, u64)> = question
        .choices
        .iter()
        .map(|choice| {
            let mut told = joint.clone();
            answer(&mut told, question.id, choice.id).unwrap();
            (choice.id, said(&told, depth + 1, vain, seen))
        })
        .collect();
    let mut known = branches.iter().filter(|(id, _)| *id != DONT_KNOW);
    let first = known.next().map(|(_, sum)| *sum);
    if known.all(|(_, sum)| Some(*sum) == first) && vain.len() < 20 {
        vain.push(format!("{} of {joint:?}", question.id));
    }
    // A tree all of whose branches say the same says no more than one of them.
    let (_, any) = branches[0];
    if branches.iter().all(|(_, sum)| *sum == any) {
        return any;
    }
    let mut sum = DefaultHasher::new();
    (question.id, branches).hash(&mut sum);
    sum.finish()
}

#[test]
fn no_question_is_asked_in_vain() {
    let mut seen = 0;
    let mut vain = Vec::new();
    for &kind in JointKind::ALL {
        said(&Application::new(kind), 0, &mut vain, &mut seen);
    }
    assert_eq!(vain, Vec::<String>::new());
    assert!(seen > 100_000, "only {seen} joints were told");
}
