//! A fill step: how much of what and to which level; what was put in is read, the level is said.

use super::facts::Facts;
use super::said::{read, say};
use crate::job::kinds::{Fill, Work};
use crate::job::reading::{Fact, What};
use crate::job::readings;
use crate::job::sheet::Step;
use leptos::prelude::*;

/// The fill in a few facts.
pub fn told(fill: &Fill) -> AnyView {
    let rows = fill.facts().into_iter().filter(|(_, words)| !words.is_empty());
    view! { <Facts rows=rows.collect() /> }.into_any()
}

/// The work of a fill step.
#[component]
pub fn FillWork(step: StoredValue<Step>) -> impl IntoView {
    let Some((fill, asked)) = step.with_value(|step| match &step.work {
        Work::Fill(fill) => Some((fill.clone(), readings::asked(step))),
        _ => None,
    }) else {
        return ().into_any();
    };
    let put_in = asked
        .contains(&What::PutIn)
        .then(|| read(step, What::PutIn, "How much was put in", false));
    let level = asked
        .contains(&What::Fact(Fact::Level))
        .then(|| say(step, Fact::Level));
    view! { {told(&fill)} {put_in} {level} }.into_any()
}
