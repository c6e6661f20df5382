//! A fill step: how much of what and to which level; what was put in is read, the level is said.

use super::facts::Facts;
use super::said::{read, say};
use crate::job::kinds::Work;
use crate::job::reading::{Fact, What};
use crate::job::readings;
use crate::job::sheet::Step;
use leptos::prelude::*;

/// The work of a fill step.
#[component]
pub fn FillWork(step: StoredValue<Step>) -> impl IntoView {
    let Some((fill, asked)) = step.with_value(|step| match &step.work {
        Work::Fill(fill) => Some((fill.clone(), readings::asked(step))),
        _ => None,
    }) else {
        return ().into_any();
    };
    let rows = fill.facts().into_iter().filter(|(_, words)| !words.is_empty());
    let rows: Vec<_> = rows.collect();
    let put_in = asked
        .contains(&What::PutIn)
        .then(|| read(step, What::PutIn, "How much was put in"));
    let level = asked
        .contains(&What::Fact(Fact::Level))
        .then(|| say(step, Fact::Level));
    view! { <Facts rows /> {put_in} {level} }.into_any()
}
