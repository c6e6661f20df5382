//! The fields of a joint that a compound goes on: its kind, and the questions that kind asks.

use crate::job::field::{Entry, Form, Refused, Set, pick, refuse};
use crate::trade::application::{Application, Choice, DONT_KNOW, JointKind, answer, questions};
use crate::trade::compound::recommend;
use crate::trade::quantity::in_mark;

/// Whether what is filled in reaches it.
pub const WETTED: &str = "Does what is filled in reach it?";
/// Its answers.
static WET: [Choice; 3] = [
    Choice {
        id: "yes",
        words: "Yes: a fill waits for its cure",
    },
    Choice {
        id: "no",
        words: "No: a fill need not wait",
    },
    Choice {
        id: DONT_KNOW,
        words: "Don’t know: a fill waits",
    },
];

fn wet_words(joint: &Application) -> &'static str {
    let [yes, no, unknown] = &WET;
    match joint.wetted {
        Some(true) => yes.words,
        Some(false) => no.words,
        None => unknown.words,
    }
}

/// Adds the fields of a joint.
pub fn show(form: &mut Form, joint: &Application) {
    let kinds = JointKind::ALL.iter().enumerate();
    let kinds = kinds.map(|(at, kind)| (at.to_string(), kind.words().to_owned()));
    form.add(
        "joint/kind",
        "the joint",
        joint.kind.words(),
        Entry::Choice(kinds.collect()),
    );
    for question in questions(joint) {
        let chosen = question
            .chosen
            .and_then(|id| question.choices.iter().find(|choice| choice.id == id));
        let offered = question
            .choices
            .iter()
            .map(|choice| (choice.id.to_owned(), in_mark(choice.words)));
        form.add(
            format!("joint/answer/{}", question.id),
            question.words,
            &chosen.map_or("Don't know".to_owned(), |choice| in_mark(choice.words)),
            Entry::Choice(offered.collect()),
        );
    }
    // Nothing waits for what doesn't cure.
    if recommend(joint).cure.is_some() {
        let offered = WET.iter().map(|one| (one.id.to_owned(), one.words.to_owned()));
        form.add(
            "joint/wetted",
            WETTED,
            wet_words(joint),
            Entry::Choice(offered.collect()),
        );
    }
}

/// Changes the field of that path.
///
/// # Errors
/// [`Refused::NoField`], or the question's sentence.
pub fn set(joint: &mut Application, path: &str, value: &str) -> Set {
    match path.split('/').collect::<Vec<_>>().as_slice() {
        ["joint", "kind"] => {
            let kind = pick(JointKind::ALL, value)?;
            joint.become_of(kind);
            Ok(())
        }
        ["joint", "wetted"] => {
            joint.wetted = match value {
                "yes" => Some(true),
                "no" => Some(false),
                DONT_KNOW => None,
                _ => return refuse("Choose one of those shown."),
            };
            Ok(())
        }
        ["joint", "answer", question] => {
            answer(joint, question, value).map_err(|error| Refused::Said(error.to_string()))
        }
        _ => Err(Refused::NoField),
    }
}
