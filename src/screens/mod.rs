//! The screens, one folder or file each, and the frame around them.

mod announce;
mod bench;
mod bond;
mod cautions;
mod clocks;
mod find;
mod first;
mod history;
mod job;
mod jobs;
mod lift;
mod measure;
mod paper;
mod parts_list;
mod plan;
mod record;
mod route;
mod seat;
mod steps;
mod torque;

pub use route::Route;

use crate::bench::{Bench, Look, Now, Ring, Shelves};
use crate::device::journal::{self, Laid};
use crate::device::storage::{BrowserStore, MemoryStore, Shelf, Store};
use crate::device::{alarm, focus, hands, place, release, time, wake_lock};
use crate::parts::dynamic::{each, memo, piece, press, text, when, whether};
use crate::parts::said::SaidLines;
use crate::parts::strip::Strip;
use crate::parts::which_wrench::WhichWrench;
use crate::trade::moment::Moment;
use leptos::prelude::*;
use std::rc::Rc;
use std::time::Duration;

/// How often the shown time is taken anew. Nothing counts ticks: states come from recorded instants.
const TICK: Duration = Duration::from_secs(1);

/// Mounts the app on the page.
pub fn start() {
    if place::framed() {
        return;
    }
    let (store, blocked): (Rc<dyn Store>, _) = match BrowserStore::open() {
        Ok(store) => (Rc::new(store), None),
        Err(error) => (Rc::new(MemoryStore::default()), Some(error)),
    };
    let kept = blocked.is_none();
    let begin = move |laid: Laid| {
        let shelves = Shelves::new(Shelf::new(laid.store.clone()), blocked);
        leptos::mount::mount_to_body(move || {
            let bench = Bench::open(shelves, time::now);
            provide_context(bench);
            bench.say_put_back(laid.back);
            laid.watch(move |safe| bench.safe.set(safe));
            follow_the_phone(bench);
            view! { <Frame /> }.into_any()
        });
        place::take_over();
    };
    match kept {
        true => journal::under(store, begin),
        false => begin(Laid::without(store)),
    }
}

/// Ties the bench to what the phone does: time passing, coming back, another tab, a newer release.
fn follow_the_phone(bench: Bench) {
    bench.follow_calendar(calendar);
    bench.watch_clock(time::monotonic);
    set_interval(
        move || {
            bench.tick();
            ring_on(bench);
        },
        TICK,
    );
    alarm::unlock_at_a_touch();
    let felt = move || alarm::felt(bench.settings.with_untracked(|settings| settings.ticks));
    let refused = move || {
        bench.say(
            "Not counted: that was no fingertip. Wipe the screen, touch with one finger.",
            false,
        )
    };
    hands::follow(felt, refused);
    focus::follow_arrows();
    Effect::new(move |told: Option<Vec<Ring>>| ring(&bench.ringing.get(), &told.unwrap_or_default()));
    bench.stay_awake();
    place::on_return(move || {
        bench.tick();
        bench.stay_awake();
        release::look_for_newer();
    });
    place::on_other_tab(move |key| match key {
        None => bench.store_cleared(),
        Some(key) if Shelf::is_ours(&key) => {
            bench.say(crate::device::storage::StorageError::OtherTab.to_string(), true);
        }
        Some(_) => {}
    });
    release::watch(move |kept| bench.kept.set(kept), move |news| bench.news.set(news));
    Effect::new(move || {
        let look = bench.settings.with(|settings| settings.look);
        let page = document().document_element();
        page.map(|page| match look {
            Look::Phone => page.remove_attribute("data-look"),
            Look::Dark => page.set_attribute("data-look", "dark"),
            Look::Light => page.set_attribute("data-look", "light"),
        });
        place::remember_look(match look {
            Look::Phone => None,
            Look::Dark => Some("dark"),
            Look::Light => Some("light"),
        });
    });
    on_cleanup(wake_lock::release);
}

/// Where an instant stands in the phone's calendar.
fn calendar(at: Moment) -> Now {
    let local = time::local(at);
    let (hour, minute) = local.clock;
    Now {
        at,
        day: local.day,
        minute: i64::from(hour) * 60 + i64::from(minute),
        ahead_ms: 0,
    }
}

/// Rings for what is new among the clocks that want to be heard; gives back what was rung for.
fn ring(now: &[Ring], before: &[Ring]) -> Vec<Ring> {
    let mut new = now.iter().filter(|ring| !before.contains(ring)).peekable();
    if new.peek().is_some() {
        alarm::sound();
    }
    new.for_each(|ring| alarm::notify(ring.name.clone(), ring.words.clone()));
    now.to_vec()
}

/// How often, in seconds, and for how long an unheard clock goes on ringing.
const AGAIN_S: i64 = 5;
const GIVEN_UP_S: i64 = 120;

/// Rings on, every few seconds for a while, for what was reached just now and nobody has touched.
fn ring_on(bench: Bench) {
    let now = bench.now.get_untracked();
    let loud = bench.ringing.with_untracked(|ringing| {
        ringing.iter().any(|ring| {
            let since_s = (now.0 - ring.at.0) / 1_000;
            (AGAIN_S..GIVEN_UP_S).contains(&since_s) && since_s % AGAIN_S == 0
        })
    });
    if loud {
        alarm::sound();
    }
}

#[component]
fn Frame() -> impl IntoView {
    let bench = Bench::here();
    let route = RwSignal::new(Route::read(&place::read()));
    place::on_change(move |address| {
        route.set(Route::read(&address));
        bench.answered();
        place::to_top();
    });
    provide_context(route);
    let at = memo(move || route.get());
    // At a desk the steps stand on one side and, while one is planned, the step itself on the other.
    let wide = RwSignal::new(place::at_a_desk());
    place::on_resize(move || wide.set(place::at_a_desk()));
    let desk = memo(move || wide.get());
    let planned = memo(move || match at.get() {
        Route::PlanStep(step) if desk.get() => Some(step),
        _ => None,
    });
    let listed = memo(move || desk.get() && at.get() != Route::Steps);
    // Nothing of a job is shown where none was begun.
    let first = memo(move || at.get().of_a_job() && !bench.has_job());
    // On a step nothing is half filled that the page can't see.
    let on_a_step = move || matches!(at.get(), Route::Job | Route::Step(_));
    let newer = memo(move || on_a_step() && !first.get() && bench.newer_costs_nothing());
    view! {
        <div class="frame" class:desk=whether(move || desk.get())>
            {when(move || listed.get(), || view! {
                <aside class="beside" aria-label="steps"><steps::StepsScreen /></aside>
            }.into_any())}
            {piece(move || planned.get().map(|step| view! {
                <aside class="as-shown" inert=true aria-label="the step as the phone shows it"><job::StepScreen step /></aside>
            }.into_any()).into_any())}
            <Strip />
            <SaidLines newer />
            <announce::Announce at />
            <main tabindex="-1">
                {piece(move || match at.get() {
                    _ if first.get() => view! { <first::FirstScreen /> }.into_any(),
                    Route::Job => view! { <job::JobNow /> }.into_any(),
                    Route::Step(step) => view! { <job::StepScreen step /> }.into_any(),
                    Route::JobEnd => view! { <job::JobEnd /> }.into_any(),
                    Route::Steps => view! { <steps::StepsScreen /> }.into_any(),
                    Route::Torque => torque_screen(bench),
                    Route::TorqueOf(step) => view! { <torque::TorqueScreen from=Some(step) /> }.into_any(),
                    Route::Bond(step) => view! { <bond::BondScreen step /> }.into_any(),
                    Route::Plan => view! { <plan::PlanScreen /> }.into_any(),
                    Route::PlanStep(step) => view! { <plan::StepForm step /> }.into_any(),
                    Route::Parts => view! { <parts_list::PartsScreen /> }.into_any(),
                    Route::Record => view! { <record::RecordScreen /> }.into_any(),
                    Route::Paper => view! { <paper::PaperScreen /> }.into_any(),
                    Route::Jobs => view! { <jobs::JobsScreen /> }.into_any(),
                    Route::Find => view! { <find::FindScreen /> }.into_any(),
                    Route::History => view! { <history::HistoryScreen /> }.into_any(),
                    Route::Clocks => view! { <clocks::ClocksScreen /> }.into_any(),
                    Route::Bench => view! { <bench::BenchScreen /> }.into_any(),
                    Route::Seat(step) => seat::seat_screen(step),
                    Route::Lift(step) => lift::lift_screen(step),
                    Route::Measure => measure::measure_screen(),
                    Route::Cautions => cautions::cautions_screen(),
                })}
            </main>
            <nav class="edge" aria-label="Screens">
                {each(EDGE, |(name, to)| edge_key(name, to, at))}
            </nav>
        </div>
    }
}

/// The Torque screen; the first time it asks which wrench is in the hand.
fn torque_screen(bench: Bench) -> AnyView {
    let asks = memo(move || bench.asks_wrench());
    piece(move || match asks.get() {
        true => view! { <WhichWrench /> }.into_any(),
        false => view! { <torque::TorqueScreen from=None /> }.into_any(),
    })
    .into_any()
}

/// The keys along the edge.
const EDGE: [(&str, Route); 5] = [
    ("Job", Route::Job),
    ("Torque", Route::Torque),
    ("Bond", Route::Bond(None)),
    ("Seat", Route::Seat(None)),
    ("Lift", Route::Lift(None)),
];

fn edge_key(name: &'static str, to: Route, at: Memo<Route>) -> AnyView {
    let current = text(move || {
        if at.get().screen() == to.screen() {
            "page"
        } else {
            "false"
        }
        .to_owned()
    });
    view! {
        <button aria-current=current on:click=press(move || to.go())>
            {name}
        </button>
    }
    .into_any()
}
