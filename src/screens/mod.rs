//! The screens, one folder or file each, and the frame around them.

mod bench;
mod clocks;
mod history;
mod job;
mod jobs;
mod paper;
mod parts_list;
mod plan;
mod record;
mod route;
mod steps;
mod torque;

pub use route::Route;

use crate::bench::{Bench, Look, Shelves};
use crate::device::storage::{BrowserStore, MemoryStore, Shelf, Store};
use crate::device::{place, release, time, wake_lock};
use crate::parts::said::SaidLines;
use crate::parts::strip::Strip;
use leptos::prelude::*;
use std::rc::Rc;
use std::time::Duration;

/// How often the shown time is taken anew. Nothing counts ticks: states come from recorded instants.
const TICK: Duration = Duration::from_secs(1);

/// Mounts the app on the page.
pub fn start() {
    let (store, blocked): (Rc<dyn Store>, _) = match BrowserStore::open() {
        Ok(store) => (Rc::new(store), None),
        Err(error) => (Rc::new(MemoryStore::default()), Some(error)),
    };
    let shelves = Shelves::new(Shelf::new(store), blocked);
    leptos::mount::mount_to_body(move || {
        let bench = Bench::open(shelves, time::now);
        provide_context(bench);
        follow_the_phone(bench);
        view! { <Frame /> }
    });
}

/// Ties the bench to what the phone does: time passing, coming back, another tab, a newer release.
fn follow_the_phone(bench: Bench) {
    set_interval(move || bench.tick(), TICK);
    bench.stay_awake();
    place::on_return(move || {
        bench.tick();
        bench.stay_awake();
        release::look_for_newer();
    });
    place::on_other_tab(move |key| {
        if Shelf::is_ours(&key) {
            bench.say(crate::device::storage::StorageError::OtherTab.to_string(), true);
        }
    });
    release::watch(move |kept| bench.kept.set(kept));
    Effect::new(move || {
        let look = bench.settings.with(|settings| settings.look);
        let page = document().document_element();
        page.map(|page| match look {
            Look::Phone => page.remove_attribute("data-look"),
            Look::Dark => page.set_attribute("data-look", "dark"),
            Look::Light => page.set_attribute("data-look", "light"),
        });
    });
    on_cleanup(wake_lock::release);
}

#[component]
fn Frame() -> impl IntoView {
    let route = RwSignal::new(Route::read(&place::read()));
    place::on_change(move |address| route.set(Route::read(&address)));
    provide_context(route);
    let at = Memo::new(move |_| route.get());
    view! {
        <div class="frame">
            <Strip />
            <SaidLines />
            <main tabindex="-1">
                {move || match at.get() {
                    Route::Job => view! { <job::JobNow /> }.into_any(),
                    Route::Step(step) => view! { <job::StepScreen step /> }.into_any(),
                    Route::JobEnd => view! { <job::JobEnd /> }.into_any(),
                    Route::Steps => view! { <steps::StepsScreen /> }.into_any(),
                    Route::Plan => view! { <plan::PlanScreen /> }.into_any(),
                    Route::PlanStep(step) => view! { <plan::StepForm step /> }.into_any(),
                    Route::Parts => view! { <parts_list::PartsScreen /> }.into_any(),
                    Route::Record => view! { <record::RecordScreen /> }.into_any(),
                    Route::Paper => view! { <paper::PaperScreen /> }.into_any(),
                    Route::Jobs => view! { <jobs::JobsScreen /> }.into_any(),
                    Route::History => view! { <history::HistoryScreen /> }.into_any(),
                    Route::Torque => view! { <torque::TorqueScreen /> }.into_any(),
                    Route::Clocks => view! { <clocks::ClocksScreen /> }.into_any(),
                    Route::Bench => view! { <bench::BenchScreen /> }.into_any(),
                }}
            </main>
            <nav class="edge" aria-label="Screens">
                <EdgeKey name="Job" to=Route::Job at />
                <EdgeKey name="Torque" to=Route::Torque at />
                <EdgeKey name="Clocks" to=Route::Clocks at />
                <EdgeKey name="Bench" to=Route::Bench at />
            </nav>
        </div>
    }
}

#[component]
fn EdgeKey(name: &'static str, to: Route, at: Memo<Route>) -> impl IntoView {
    view! {
        <button
            aria-current=move || (at.get().screen() == to.screen()).then_some("page")
            on:click=move |_| to.go()
        >
            {name}
        </button>
    }
}
