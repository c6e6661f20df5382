//! One job on paper: torque table, readings, compounds, open items, remarks.

use crate::bench::Bench;
use crate::device::paper;
use crate::job::journal::{Filter, compounds, journal, torque_table};
use crate::parts::dynamic::{piece, press};
use crate::parts::when::date;
use crate::screens::Route;
use crate::trade::moment::Moment;
use leptos::prelude::*;

/// More lines of one kind than this belong in the record's own table, not on paper.
const MOST_LINES: usize = 400;

/// The sheet as it is printed.
#[component]
pub fn PaperScreen() -> impl IntoView {
    let bench = Bench::here();
    view! {
        <div class="paper-screen">
            <div class="work-keys no-print">
                <button class="work-key first" on:click=press(paper::print)>"Print"</button>
                <button class="work-key" on:click=press(move || Route::Record.go())>"Back"</button>
            </div>
            {piece(move || sheet(bench))}
        </div>
    }
}

fn sheet(bench: Bench) -> AnyView {
    let now = bench.now.get_untracked();
    let day = |at: Moment| date(at);
    let (title, machine) = bench
        .sheet
        .with(|sheet| (sheet.title.clone(), sheet.machine.clone()));
    let torques: Vec<Vec<String>> = bench.record.with(|record| {
        let rows = bench.sheet.with(|sheet| torque_table(record, sheet));
        rows.into_iter()
            .map(|row| {
                let at = row.at.map_or(String::new(), day);
                let set = if row.stages.is_empty() {
                    row.set
                } else {
                    row.stages.join("; ")
                };
                vec![row.step, row.fastener, row.manual, set, row.tallied, at, row.who]
            })
            .collect()
    });
    let compounds: Vec<Vec<String>> = bench.record.with(|record| {
        let rows = bench.clocks.with(|clocks| compounds(record, clocks));
        rows.into_iter()
            .map(|(joint, compound, at)| vec![joint, compound, day(at)])
            .collect()
    });
    let lines = |filter| -> Vec<Vec<String>> {
        let found = bench.record.with(|record| {
            bench
                .sheet
                .with(|sheet| journal(record, sheet, filter, None, MOST_LINES))
        });
        let standing = found.lines.into_iter().rev().filter(|line| !line.taken_back);
        standing
            .map(|line| {
                let what = std::iter::once(line.what)
                    .chain(line.remarks)
                    .collect::<Vec<_>>()
                    .join("; ");
                vec![line.step, what, day(line.at), line.who]
            })
            .collect()
    };
    let open: Vec<Vec<String>> = bench.sheet.with(|sheet| {
        let numbered = sheet.steps.iter().zip(1..);
        bench.progress.with(|progress| {
            numbered
                .filter(|(step, _)| !progress.closed(step.id))
                .map(|(step, number)| vec![format!("{number} {}", step.title), step.work.word().to_owned()])
                .collect()
        })
    });
    let found: Vec<Vec<String>> = bench
        .all_findings()
        .into_iter()
        .map(|(id, words)| {
            let title = bench.sheet.with(|sheet| {
                let at = sheet.place(id).map_or(0, |at| at + 1);
                sheet
                    .step(id)
                    .map_or(String::new(), |step| format!("{at} {}", step.title))
            });
            vec![title, words]
        })
        .collect();
    let closed = bench.progress.with(|progress| progress.job_closed);
    let state = match (closed, open.len()) {
        (Some(at), _) => format!("Closed {}.", day(at)),
        (None, 0) => "Every step is done; the job is not closed.".to_owned(),
        (None, 1) => "One step is open.".to_owned(),
        (None, left) => format!("{left} steps are open."),
    };
    view! {
        <article class="paper">
            <h1>{title}</h1>
            <p>{machine}</p>
            <p>{format!("Printed {}. {state}", day(now))}</p>
            {table("Not settled", &["step", "found"], found)}
            {table("Torque", &["step", "fastener", "manual says", "set", "tallied", "when", "who"], torques)}
            {table("Compounds", &["joint", "compound", "when"], compounds)}
            {table("Readings", &["step", "reading", "when", "who"], lines(Filter::Reading))}
            {table("Open", &["step", "kind"], open)}
            {table("Steps and cautions", &["step", "what", "when", "who"], lines(Filter::Steps))}
            {table("Remarks", &["step", "remark", "when", "who"], lines(Filter::Remarks))}
            <p class="signed">"Signed"</p>
        </article>
    }
    .into_any()
}

/// A table with its heading; nothing where it has no rows.
fn table(heading: &'static str, columns: &[&'static str], rows: Vec<Vec<String>>) -> Option<AnyView> {
    if rows.is_empty() {
        return None;
    }
    let head: Vec<AnyView> = columns
        .iter()
        .map(|words| view! { <th scope="col">{*words}</th> }.into_any())
        .collect();
    let rows: Vec<AnyView> = rows
        .into_iter()
        .map(|cells| {
            let cells: Vec<AnyView> = cells
                .into_iter()
                .map(|words| view! { <td>{words}</td> }.into_any())
                .collect();
            view! { <tr>{cells}</tr> }.into_any()
        })
        .collect();
    Some(
        view! {
            <section>
                <h2>{heading}</h2>
                <table aria-label=heading>
                    <thead><tr>{head}</tr></thead>
                    <tbody>{rows}</tbody>
                </table>
            </section>
        }
        .into_any(),
    )
}
