//! What goes on a thread or a face, and its clocks.

use crate::bench::Bench;
use crate::job::sheet::Step;
use crate::job::work::Work;
use crate::parts::clock_bar::ClockBar;
use crate::trade::application::Application;
use crate::trade::compound::recommend;
use leptos::prelude::*;

/// The work of a bond step: the compound and, once it is on, its clock.
#[component]
pub fn BondWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let bond = step.with_value(|step| match &step.work {
        Work::Bond(bond) => Some(bond.clone()),
        _ => None,
    });
    let clocks = move || {
        let id = step.with_value(|step| step.id);
        let mine = bench.progress.with(|progress| progress.step(id).clocks);
        bench.clocks.with(|clocks| {
            clocks
                .iter()
                .filter(|clock| clock.counts() && mine.contains(&clock.id))
                .cloned()
                .collect::<Vec<_>>()
        })
    };
    view! {
        {bond.map(|bond| view! { <p class="quiet">{bond.joint.clone()}</p> <CompoundCard application=bond.application /> })}
        {move || clocks().into_iter().map(|clock| view! { <ClockBar clock /> }).collect_view()}
    }
}

/// One line: what goes on the thread.
#[component]
pub fn CompoundLine(application: Application) -> impl IntoView {
    view! { <CompoundCard application /> }
}

/// The compound, why, and how it is put on.
#[component]
fn CompoundCard(application: Application) -> impl IntoView {
    let answer = recommend(&application);
    let name = answer.class.map_or("nothing", |class| class.name());
    view! {
        <section class="compound" aria-label="compound">
            <span class="quiet">"goes on it"</span>
            <strong>{name}</strong>
            <p>{answer.reason}</p>
            {answer.where_and_how.into_iter().map(|line| view! { <p>{line}</p> }).collect_view()}
        </section>
    }
}
