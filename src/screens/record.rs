//! The record: newest first, filtered, each line with the remarks made on it.

use crate::bench::Bench;
use crate::device::files::hand_out;
use crate::job::csv;
use crate::job::journal::{Filter, Line, journal};
use crate::job::record::EntryId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece, press, row, rows};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::when::{date, when};
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::trade::quantity::kept;
use leptos::prelude::*;

/// Lines drawn at once; "earlier" draws as many more.
const AT_ONCE: usize = 100;

/// The record of the job at hand.
#[component]
pub fn RecordScreen() -> impl IntoView {
    let bench = Bench::here();
    let filter = RwSignal::new(Filter::All);
    let most = RwSignal::new(AT_ONCE);
    let open = RwSignal::new(None::<EntryId>);
    let shown = memo(move || {
        let (filter, most) = (filter.get(), most.get());
        bench.record.with(|record| {
            bench
                .sheet
                .with(|sheet| journal(record, sheet, filter, None, most))
        })
    });
    let filters = piece(move || {
        let now = filter.get();
        let specs = Filter::ALL.iter().map(|(own, words)| {
            KeySpec::choice(*words, *own == now, move || {
                filter.set(*own);
                most.set(AT_ONCE);
            })
        });
        keys(specs.collect())
    });
    let earlier = piece(move || match shown.with(|journal| journal.earlier) {
        0 => ().into_any(),
        left => keys(vec![KeySpec::new(format!("earlier lines: {left}"), move || {
            most.update(|most| *most += AT_ONCE);
        })]),
    });
    let lines = move || {
        let lines = shown.with(|journal| journal.lines.clone());
        let row = |line: Line| {
            let key = format!("{} {} {}", line.id.0, line.taken_back, line.remarks.len());
            row(key, move || line_row(bench, line, open))
        };
        lines.into_iter().map(row).collect()
    };
    let remark = Callback::new(move |words: String| remarked(bench, None, &words));
    view! {
        <div class="page record">
            <h1>"Record"</h1>
            {keys(vec![
                KeySpec::new("on paper", || Route::Paper.go()),
                KeySpec::new("export as a table", move || hand_out_record(bench)),
                KeySpec::new("last actions", || Route::History.go()),
                KeySpec::new("find in every job", || Route::Find.go()),
            ])}
            <AskWords key="add a remark" label="A remark on the whole job" take=remark />
            {filters}
            <ol class="lines" aria-label="record">
                {rows(lines)}
            </ol>
            {earlier}
            <p class="quiet">"Nothing leaves the record. To correct a line, add a remark to it."</p>
            <UndoKey />
        </div>
    }
}

fn line_row(bench: Bench, line: Line, open: RwSignal<Option<EntryId>>) -> AnyView {
    let id = line.id;
    let more = piece(move || {
        if open.get() != Some(id) {
            return ().into_any();
        }
        let take = Callback::new(move |words: String| remarked(bench, Some(id), &words));
        view! { <AskWords key="add a remark to this line" label="What is to be corrected or added" take /> }
            .into_any()
    });
    let at = when(line.at, bench.now.get_untracked());
    // Initials behind the time alone were read as a.m. and p.m.
    let by = match line.who.as_str() {
        "" => String::new(),
        who => format!(" · by {who}"),
    };
    let remarks: Vec<AnyView> = line
        .remarks
        .into_iter()
        .map(|words| view! { <p class="remark">{words}</p> }.into_any())
        .collect();
    view! {
        <li class:taken-back=line.taken_back>
            <button class="row-key" on:click=press(move || open.update(|at| *at = if *at == Some(id) { None } else { Some(id) }))>
                <span>
                    <span class="quiet figures">{format!("{} · {at}{by}", id.0 + 1)}</span>
                    <br />
                    <span class="what">{line.what}</span>
                    {if line.taken_back { " — taken back" } else { "" }}
                    <br />
                    <span class="quiet">{line.step}</span>
                </span>
            </button>
            {remarks}
            {more}
        </li>
    }
    .into_any()
}

fn remarked(bench: Bench, about: Option<EntryId>, words: &str) -> bool {
    let outcome = bench.add_remark(about, words);
    let taken = outcome.is_ok();
    bench.tell(outcome);
    taken
}

/// The whole record as a table, oldest first; a file, so its numbers have the point.
fn hand_out_record(bench: Bench) {
    hand_out("record.csv", "text/csv", &kept(|| record_table(bench)));
}

fn record_table(bench: Bench) -> String {
    let lines = bench.record.with_untracked(|record| {
        bench
            .sheet
            .with_untracked(|sheet| journal(record, sheet, Filter::All, None, usize::MAX).lines)
    });
    let head = ["entry", "when", "who", "step", "what", "taken back", "remarks"].map(str::to_owned);
    let rows = lines.into_iter().rev().map(|line| {
        vec![
            (line.id.0 + 1).to_string(),
            date(line.at),
            line.who,
            line.step,
            line.what,
            if line.taken_back { "yes" } else { "" }.to_owned(),
            line.remarks.join("; "),
        ]
    });
    let table: Vec<Vec<String>> = std::iter::once(head.to_vec()).chain(rows).collect();
    csv::write(&table)
}
