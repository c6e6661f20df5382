//! The fields of a joint that a compound goes on: its kind, and the questions that kind asks.

use crate::job::field::{Entry, Form, Refused, Set, pick};
use crate::trade::application::{Application, JointKind, answer, questions};

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
            .map(|choice| (choice.id.to_owned(), choice.words.to_owned()));
        form.add(
            format!("joint/answer/{}", question.id),
            question.words,
            chosen.map_or("Don't know", |choice| choice.words),
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
            joint.kind = pick(JointKind::ALL, value)?;
            Ok(())
        }
        ["joint", "answer", question] => {
            answer(joint, question, value).map_err(|error| Refused::Said(error.to_string()))
        }
        _ => Err(Refused::NoField),
    }
}
