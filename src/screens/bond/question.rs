//! The question at hand, and the answers given, each a touch away from being changed.

use super::desk::{Desk, KIND};
use crate::job::bonding::{Walk, chosen_words};
use crate::parts::choice_tiles::{ChoiceTiles, Tile};
use crate::parts::dynamic::{memo, piece, press};
use crate::trade::application::{DONT_KNOW, JointKind, Question};
use crate::trade::quantity::in_mark;
use leptos::prelude::*;

/// A question as the screen asks it.
#[derive(Debug, Clone, PartialEq)]
struct Asked {
    id: String,
    words: &'static str,
    tiles: Vec<Tile>,
    assumed: &'static str,
    /// Others are open after it.
    more: bool,
}

const KIND_WORDS: &str = "What is joined?";

fn asked(walk: &Walk, again: Option<&str>) -> Option<Asked> {
    if walk.joint.is_none() || again == Some(KIND) {
        let on = |kind: JointKind| walk.joint.as_ref().is_some_and(|joint| joint.kind == kind);
        let kinds = JointKind::ALL.iter();
        return Some(Asked {
            id: KIND.to_owned(),
            words: KIND_WORDS,
            tiles: kinds
                .map(|kind| Tile::new(kind.id(), kind.words(), on(*kind)))
                .collect(),
            assumed: "",
            more: false,
        });
    }
    let next = walk.next();
    let more = next.is_some();
    let question = again.and_then(|id| walk.question(id)).or(next)?;
    let met = walk.met.iter().any(|met| met == question.id);
    // An unanswered question that was met is one not known.
    let chosen = question.chosen.or(met.then_some(DONT_KNOW));
    let choices = question.choices.iter();
    Some(Asked {
        id: question.id.to_owned(),
        words: question.words,
        tiles: choices
            .map(|choice| Tile::new(choice.id, in_mark(choice.words), chosen == Some(choice.id)))
            .collect(),
        assumed: question.assumed,
        more,
    })
}

/// The question at hand; nothing when every one that matters is met.
#[component]
pub fn QuestionNow(desk: Desk) -> impl IntoView {
    let now = memo(move || {
        let again = desk.again.get();
        desk.walk.with(|walk| asked(walk, again.as_deref()))
    });
    piece(move || match now.get() {
        None => ().into_any(),
        Some(asked) => one(desk, asked),
    })
}

fn one(desk: Desk, asked: Asked) -> AnyView {
    let Asked {
        id,
        words,
        tiles,
        assumed,
        more,
    } = asked;
    let take = Callback::new(move |choice: String| desk.choose(&id, &choice));
    let assumed =
        (!assumed.is_empty()).then(|| view! { <p class="quiet">"Don’t know: " {assumed}</p> }.into_any());
    let rest = more.then(|| {
        view! { <button on:click=press(move || desk.leave_the_rest())>"I don’t know the rest"</button> }
            .into_any()
    });
    view! {
        <section class="question" aria-label="question">
            <h2>{words}</h2>
            <ChoiceTiles name=words tiles=Signal::stored(tiles) press=take />
            {assumed}
            {rest}
        </section>
    }
    .into_any()
}

/// The answers so far; a touch asks again.
#[component]
pub fn Answers(desk: Desk) -> impl IntoView {
    let rows = memo(move || desk.walk.with(answers));
    let row = move |(id, words, answer): (String, &'static str, String)| {
        let ask = move || {
            desk.again.set(Some(id.clone()));
            crate::device::place::to_top();
        };
        view! {
            <li>
                <button class="row-key" on:click=press(ask)>
                    <span>{words}</span>
                    <strong>{answer}</strong>
                </button>
            </li>
        }
        .into_any()
    };
    view! {
        <section class="answers" aria-label="answers">
            <h2>"Answers: touch one to change it"</h2>
            <ul>{piece(move || rows.get().into_iter().map(row).collect::<Vec<_>>().into_any())}</ul>
            {desk.step.is_none().then(|| view! { <button on:click=press(move || desk.begin_again())>"another joint"</button> }.into_any())}
        </section>
    }
}

fn answers(walk: &Walk) -> Vec<(String, &'static str, String)> {
    let Some(joint) = &walk.joint else {
        return Vec::new();
    };
    let kind = (KIND.to_owned(), KIND_WORDS, joint.kind.words().to_owned());
    let met = walk.asked().into_iter().filter(|(_, met)| *met);
    let row = |question: &Question| {
        (
            question.id.to_owned(),
            question.words,
            in_mark(chosen_words(question)),
        )
    };
    std::iter::once(kind)
        .chain(met.map(|(question, _)| row(&question)))
        .collect()
}
