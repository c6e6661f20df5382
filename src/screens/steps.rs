//! The whole job at a glance: progress as a picture, what is next, what blocks, how long is left; every step.

use crate::bench::Bench;
use crate::job::gate::opens_at;
use crate::job::overview::{Overview, overview};
use crate::job::sheet::StepId;
use crate::parts::dynamic::{memo, piece, press, row, rows, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::not_together::not_together;
use crate::parts::progress_bar::progress_bar;
use crate::parts::when::{span, when};
use crate::screens::Route;
use crate::trade::moment::Moment;
use leptos::prelude::*;

/// How often the overview is worked out anew while the page is open: cures move by minutes.
const MINUTE_MS: i64 = 60_000;

/// The overview and the list of steps.
#[component]
pub fn StepsScreen() -> impl IntoView {
    let bench = Bench::here();
    let minute = memo(move || bench.now.get().0 / MINUTE_MS);
    let seen = memo(move || {
        minute.track();
        let now = bench.now.get_untracked();
        bench.ground(|ground| overview(ground, now))
    });
    let heading = piece(move || {
        let (title, machine) = bench
            .sheet
            .with(|sheet| (sheet.title.clone(), sheet.machine.clone()));
        view! { <h1>{title}</h1> <p class="quiet">{machine}</p> }.into_any()
    });
    let steps = move || {
        let (states, at_hand) = seen.with(|seen| (seen.states.clone(), seen.next));
        bench.sheet.with(|sheet| {
            let steps = sheet.steps.iter().zip(states).zip(1..);
            steps
                .map(|((step, state), number)| {
                    let word = match state.word() {
                        "" => step.work.word(),
                        word => word,
                    };
                    let next = at_hand == Some(step.id);
                    let line = (step.id, number, step.title.clone(), word, next);
                    let key = format!("{} {number} {word} {next} {}", line.0.0, line.2);
                    row(key, move || step_row(line))
                })
                .collect()
        })
    };
    view! {
        <div class="page overview">
            {heading}
            <p class="mid figures">{text(move || seen.with(counted))}</p>
            {piece(move || seen.with(|seen| progress_bar(&seen.states)))}
            {piece(move || not_settled(bench))}
            {not_together(bench, None)}
            <ol class="step-list">
                {rows(steps)}
            </ol>
            {piece(move || seen.with(|seen| left(bench, seen)))}
            {keys(vec![
                KeySpec::new("go on", || Route::Job.go()),
                KeySpec::new("change the plan", || Route::Plan.go()),
                KeySpec::new("parts", || Route::Parts.go()),
                KeySpec::new("record", || Route::Record.go()),
                KeySpec::new("jobs", || Route::Jobs.go()),
                KeySpec::new("last actions", || Route::History.go()),
            ])}
        </div>
    }
}

/// What was found and is not settled, each with the way to its step.
fn not_settled(bench: Bench) -> AnyView {
    let found = bench.all_findings();
    if found.is_empty() {
        return ().into_any();
    }
    let rows: Vec<AnyView> = found
        .into_iter()
        .map(|(id, words)| {
            view! { <button class="row-key" on:click=press(move || Route::Step(id).go())><span>{words}</span></button> }
                .into_any()
        })
        .collect();
    view! {
        <section class="finding" aria-label="found, not settled">
            <h2>"Not settled"</h2>
            {rows}
        </section>
    }
    .into_any()
}

fn counted(seen: &Overview) -> String {
    let all = seen.states.len();
    match seen.left_out {
        0 => format!("{} of {all} done", seen.done),
        out => format!("{} of {all} done, {out} skipped", seen.done),
    }
}

/// What is next, what blocks, how long is left.
fn left(bench: Bench, seen: &Overview) -> AnyView {
    let now = bench.now.get_untracked();
    let title = |id: StepId| {
        bench
            .sheet
            .with(|sheet| sheet.step(id).map_or(String::new(), |step| step.title.clone()))
    };
    let mut rows = Vec::new();
    if let Some(next) = seen.next {
        rows.push(("next", title(next)));
        rows.push(("work left", format!("about {}", span(seen.hands))));
        rows.push((
            "done, cures included",
            seen.finish.map_or("no time known".to_owned(), |at| {
                format!("{} at the earliest", when(round_up(at), now))
            }),
        ));
    }
    for deadline in bench.deadlines(None) {
        if let Ok(until) = deadline.until {
            let (step, bead) = (title(deadline.step), title(deadline.bead));
            let words = match deadline.over(now) {
                true => format!("{step}: too late, “{bead}” has skinned"),
                false => format!("{step}: {}", when(until, now)),
            };
            rows.push(("before it skins", words));
        }
    }
    for (id, waits) in &seen.blocked {
        let opens = opens_at(waits).map_or("no time known".to_owned(), |at| {
            format!("opens {}", when(at, now))
        });
        rows.push(("waits for a cure", format!("{}: {opens}", title(*id))));
    }
    let rows: Vec<AnyView> = rows
        .into_iter()
        .map(|(name, words)| view! { <dt>{name}</dt> <dd>{words}</dd> }.into_any())
        .collect();
    view! { <dl class="facts">{rows}</dl> }.into_any()
}

/// To the next five minutes: the figure is an estimate.
fn round_up(at: Moment) -> Moment {
    let five = 5 * MINUTE_MS;
    Moment(
        at.0.saturating_add(five - 1)
            .div_euclid(five)
            .saturating_mul(five),
    )
}

fn step_row((id, number, title, word, next): (StepId, usize, String, &'static str, bool)) -> AnyView {
    view! {
        <li>
            <button aria-current=next.then_some("step") on:click=press(move || Route::Step(id).go())>
                <span class="figures">{number}</span>
                <span>{title}</span>
                <span class="quiet">{word}</span>
            </button>
        </li>
    }
    .into_any()
}
