//! A new step: its kind first; fasteners need their thread and the manual's torque, which nothing makes up.

use super::field::torque_sheet;
use crate::bench::Bench;
use crate::job::kinds::{LIST, Work, blank, fasten};
use crate::job::sheet::{Step, StepId};
use crate::job::text_form::thread::read;
use crate::parts::dynamic::{piece, press};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::thread_picker::thread_sheet;
use crate::screens::Route;
use leptos::html::Section;
use leptos::prelude::*;

/// Asks for the kind and what it can't do without, then goes on to the new step's form.
pub fn new_step(bench: Bench, after: Option<StepId>, adding: RwSignal<Option<Option<StepId>>>) -> AnyView {
    let thread = RwSignal::new(None::<String>);
    let fasteners = RwSignal::new(false);
    let add = move |work: Work, title: String| {
        let id = bench.add_step(after, Step::new(StepId(0), &title, work));
        adding.set(None);
        Route::PlanStep(id).go();
    };
    let pick_kind = move |kind: &'static str| match blank(kind) {
        Some(work) => add(work, format!("{kind}: new step")),
        None => fasteners.set(true),
    };
    let asked = piece(move || {
        if !fasteners.get() {
            let kinds = LIST
                .iter()
                .map(|kind| KeySpec::new(kind.word, move || pick_kind(kind.word)));
            return view! { <h2>"What kind of step?"</h2> {keys(kinds.collect())} }.into_any();
        }
        let Some(name) = thread.get() else {
            let take = move |words: &str| {
                let read = read(words)?;
                thread.set(Some(read.map_or(String::new(), |thread| thread.name())));
                Ok(())
            };
            let asked = "Which thread?".to_owned();
            return thread_sheet(asked, bench.threads_in_use(), take, move || adding.set(None));
        };
        let title = format!("Fasten {name}").trim_end().to_owned();
        torque_sheet(
            format!(
                "What does the manual say for {}?",
                if name.is_empty() { "them" } else { &name }
            ),
            bench.last_torque_unit(),
            move |torque| match fasten::begin(&name, torque) {
                Ok(fasten) => {
                    add(Work::Fasten(fasten), title.clone());
                    Ok(())
                }
                Err(words) => Err(words),
            },
            move || adding.set(None),
        )
    });
    // It stands below a long plan: it comes into sight by itself.
    let here = NodeRef::<Section>::new();
    here.on_load(|here| {
        here.focus().ok();
    });
    view! {
        <section class="waits" aria-label="new step" tabindex="-1" node_ref=here>
            {asked}
            <button on:click=press(move || adding.set(None))>"no new step"</button>
        </section>
    }
    .into_any()
}
