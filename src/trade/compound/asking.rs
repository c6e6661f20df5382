//! No question is left out that would change the card: the rules, shown answers that were not asked for,
//! say the same. The other half, that none is asked in vain, stands in `tests/property/questions.rs`.

use super::card::answered;
use crate::trade::application::{
    Application, DONT_KNOW, JointKind, Known, Question, answer, every_question, questions,
};

/// Every question there is, by id, each kind of tiles once.
fn all_questions() -> Vec<(JointKind, Question)> {
    let of = |kind: JointKind| {
        every_question(kind)
            .into_iter()
            .map(move |question| (kind, question))
    };
    let mut all: Vec<(JointKind, Question)> = Vec::new();
    for (kind, question) in JointKind::ALL.iter().copied().flat_map(of) {
        if !all
            .iter()
            .any(|(_, it)| it.id == question.id && it.choices == question.choices)
        {
            all.push((kind, question));
        }
    }
    all
}

/// Calls `look` with every joint that can be told by answering what is asked, and with what was asked.
fn every_told(joint: &Application, depth: usize, look: &mut dyn FnMut(&Application, &[Question])) {
    let asked = questions(joint);
    let Some(question) = asked.get(depth) else {
        return look(joint, &asked);
    };
    for choice in question.choices {
        let mut told = joint.clone();
        answer(&mut told, question.id, choice.id).unwrap();
        every_told(&told, depth + 1, look);
    }
}

/// Where an answer that was not asked for would change the card of a joint of this kind: each pair of question and
/// rules once.
fn asked_too_little(kind: JointKind, all: &[(JointKind, Question)]) -> Vec<(String, String)> {
    let mut missing: Vec<(String, String)> = Vec::new();
    let mut number = 0_usize;
    every_told(&Application::new(kind), 0, &mut |joint, asked| {
        number += 1;
        // All of the small kinds; of the others a part that meets every tile.
        if number > 2000 && !number.is_multiple_of(61) {
            return;
        }
        let card = answered(&Known::fill(joint));
        for (of, question) in all
            .iter()
            .filter(|(_, it)| !asked.iter().any(|one| one.id == it.id))
        {
            for choice in question.choices.iter().filter(|choice| choice.id != DONT_KNOW) {
                let mut stuffed = Application {
                    kind: *of,
                    ..joint.clone()
                };
                answer(&mut stuffed, question.id, choice.id).unwrap();
                stuffed.kind = kind;
                let other = answered(&Known::fill(&stuffed));
                let left_out = format!("{kind:?}, {}: {} not {}", question.id, other.rule, card.rule);
                if other != card && !missing.iter().any(|(it, _)| *it == left_out) {
                    missing.push((left_out, format!("{} for {joint:?}", choice.id)));
                }
            }
        }
    });
    assert!(number > 0);
    missing
}

#[test]
fn what_is_not_asked_would_change_nothing() {
    let all = all_questions();
    // Seconds on one core, and nothing else of the library's own tests takes any.
    let missing: Vec<(String, String)> = std::thread::scope(|scope| {
        let all = &all;
        let kinds: Vec<_> = JointKind::ALL
            .iter()
            .map(|&kind| scope.spawn(move || asked_too_little(kind, all)))
            .collect();
        kinds
            .into_iter()
            .flat_map(|kind| kind.join().expect("each kind is walked"))
            .collect()
    });
    assert_eq!(missing, Vec::new());
}
