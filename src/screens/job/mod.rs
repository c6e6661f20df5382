//! The job, one step at a time: what to do, what it needs, the key for the next thing.

mod accept;
mod bond;
mod check;
mod facts;
mod far;
mod fasten;
mod fill;
mod gate;
mod gauge;
mod grid;
mod lane;
mod lengths;
mod lift;
mod more;
mod next;
mod no_wrench;
mod notes;
mod parts;
mod plain;
mod read;
mod run;
mod said;
mod seat;
mod select;
mod skin;
mod stage;
mod turn;

use crate::bench::{Ask, Bench, Intent};
use crate::job::kinds::Work;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece, press, state, text, when, whether};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::line::widths;
use crate::parts::number_field::ReadingOpen;
use crate::parts::work_keys::{Resting, UndoKey};
use crate::screens::Route;
use leptos::prelude::*;

/// Goes to the step at hand, or to the job's end. The step then stays in sight until the user
/// moves on, so that a bouncing finger can't close two.
#[component]
pub fn JobNow() -> impl IntoView {
    Bench::here()
        .at_hand()
        .map_or(Route::JobEnd, Route::Step)
        .instead();
}

/// One step.
#[component]
pub fn StepScreen(step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let found = memo(move || bench.sheet.with(|sheet| sheet.step(step).cloned()));
    piece(move || match found.get() {
        Some(step) => view! { <StepView step /> }.into_any(),
        None => view! { <h1 class="page">"There is no such step in this job."</h1> }.into_any(),
    })
}

#[component]
fn StepView(step: Step) -> impl IntoView {
    let bench = Bench::here();
    let id = step.id;
    let kept = StoredValue::new(step.clone());
    let cautions = memo(move || kept.with_value(|step| bench.cautions_of(&step.work, Some(step.id))));
    // First the STOP, and nothing beside it.
    let stopped = memo(move || matches!(bench.ask(id), Some(Ask::Acknowledge(_))));
    let open = RwSignal::new(false);
    let reading = RwSignal::new(false);
    provide_context(ReadingOpen(reading));
    provide_context(Resting::from_now());
    view! {
        <div class="step" class:stopped=whether(move || stopped.get()) inert=whether(move || open.get())>
            <StepHead step=kept />
            <lane::Lane step=kept cautions stopped open />
            <stage::Stage step=kept cautions />
            <div class="work-keys">
                <next::NextKey step=id whole=open />
                <UndoKey />
            </div>
        </div>
        {when(move || open.get(), move || lane::whole(kept, cautions, stopped, open))}
        {far::far(id)}
    }
}

/// Everything of the step's work, as long as it is.
fn whole_work(kept: StoredValue<Step>) -> AnyView {
    kept.with_value(|step| match step.work {
        Work::Fasten(_) => view! { <fasten::FastenWork step=kept /> }.into_any(),
        Work::Bond(_) => view! { <bond::BondWork step=kept /> }.into_any(),
        Work::Seat(_) => view! { <seat::SeatWork step=kept /> }.into_any(),
        Work::Lift(_) => view! { <lift::LiftView step=kept /> }.into_any(),
        Work::Check(_) => view! { <check::CheckWork step=kept /> }.into_any(),
        Work::Select(_) => view! { <select::SelectWork step=kept /> }.into_any(),
        Work::Gauge(_) => view! { <gauge::GaugeWork step=kept /> }.into_any(),
        Work::Turn(_) => view! { <turn::TurnWork step=kept /> }.into_any(),
        Work::Fill(_) => view! { <fill::FillWork step=kept /> }.into_any(),
        Work::Run(_) => view! { <run::RunWork step=kept /> }.into_any(),
        Work::Clean(_) | Work::Fit(_) => view! { <plain::PlainWork step=kept /> }.into_any(),
    })
}

/// A title of so many characters stands on one line of the head.
const SHORT_TITLE: usize = 17;

#[component]
fn StepHead(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let (id, title, word) = step.with_value(|step| (step.id, step.title.clone(), step.work.word()));
    // It shrinks to its lines: the head is as high on every step.
    let letters = widths(&title);
    let long = letters > SHORT_TITLE;
    let neighbour = move |by: isize| {
        bench.sheet.with(|sheet| {
            let at = sheet.place(id)?.checked_add_signed(by)?;
            sheet.steps.get(at).map(|step| step.id)
        })
    };
    let go = move |by| {
        if let Some(id) = neighbour(by) {
            Route::Step(id).go();
        }
    };
    let counted = move || {
        let (at, all) = bench
            .sheet
            .with(|sheet| (sheet.place(id).unwrap_or(0) + 1, sheet.steps.len()));
        let state = bench.standing(id).word();
        let state = if state.is_empty() {
            String::new()
        } else {
            format!(" · {state}")
        };
        format!("{at}/{all} · {word}{state}")
    };
    let side = move |name: &'static str, face: &'static str, by: isize| {
        let none = whether(move || neighbour(by).is_none());
        view! {
            <button class="side-key" aria-label=name disabled=none on:click=press(move || go(by))>
                {face}
            </button>
        }
        .into_any()
    };
    view! {
        <header class="head">
            {side("previous step", "←", -1)}
            <button class="title" on:click=press(|| Route::Steps.go())>
                <span class="quiet figures">{text(counted)}</span>
                <h1 class:long=long style=("--letters", letters.to_string())>{title}</h1>
            </button>
            {side("next step", "→", 1)}
        </header>
    }
    .into_any()
}

/// Every step is closed: close the job, or see that it is.
#[component]
pub fn JobEnd() -> impl IntoView {
    let bench = Bench::here();
    let closed = move || bench.progress.with(|progress| progress.job_closed);
    let title = move || bench.sheet.with(|sheet| sheet.title.clone());
    let open_words = move || {
        let left = bench
            .sheet
            .with(|sheet| sheet.steps.len() - bench.progress.with(|p| p.closed_count(sheet)));
        match left {
            _ if bench.sheet.with(|sheet| sheet.steps.is_empty()) => {
                "No steps yet: plan them first.".to_owned()
            }
            0 => "Every step is done.".to_owned(),
            1 => "One step is still open.".to_owned(),
            n => format!("{n} steps are still open."),
        }
    };
    let standing = text(move || match closed() {
        Some(at) => format!("Closed {}.", crate::parts::when::when(at, bench.now.get())),
        None => open_words(),
    });
    let resting = Resting::from_now();
    let close = press(move || {
        if resting.counts() {
            bench.tell(bench.send(Intent::CloseJob));
        }
    });
    view! {
        <div class="step">
            <header class="head end">
                <h1>{text(title)}</h1>
            </header>
            <div class="body">
                <p class="mid">{standing}</p>
                {keys(vec![
                    KeySpec::new("all steps", || Route::Steps.go()),
                    KeySpec::new("the record on paper", || Route::Paper.go()),
                    KeySpec::new("change the plan", || Route::Plan.go()),
                    KeySpec::new("jobs", || Route::Jobs.go()),
                ])}
            </div>
            <div class="work-keys">
                <button class="work-key first" aria-disabled=state(move || resting.now()) disabled=whether(move || closed().is_some()) on:click=close>
                    "Close the job"
                </button>
                <UndoKey />
            </div>
        </div>
    }
    .into_any()
}
