//! The jobs of this bench: which is at hand, new ones, files in and out.

mod restore;

use crate::bench::{Bench, Incoming, JobHead, Restore};
use crate::device::files::hand_out;
use crate::device::place;
use crate::job::fasteners;
use crate::job::job_line::JobLine;
use crate::job::sheet::{JobId, Sheet};
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{piece, text, when as shown_when};
use crate::parts::file_key::FileKey;
use crate::parts::keys::{KeySpec, keys};
use crate::parts::when::when;
use crate::parts::work_keys::UndoKey;
use crate::screens::Route;
use crate::screens::first::begin_empty;
use leptos::prelude::*;

/// All jobs.
#[component]
pub fn JobsScreen() -> impl IntoView {
    let bench = Bench::here();
    let restore = RwSignal::new(None::<Restore>);
    let open = RwSignal::new(None::<JobId>);
    let groups = piece(move || {
        let lines = bench.job_lines();
        let group = |words: &'static str, which: fn(&JobHead) -> bool| {
            let rows: Vec<AnyView> = lines
                .iter()
                .filter(|line| which(&line.head))
                .map(|line| row(bench, line, open))
                .collect();
            (!rows.is_empty()).then(|| {
                view! { <h2>{words}</h2> <ul class="job-list" aria-label=words>{rows}</ul> }.into_any()
            })
        };
        let free = lines.iter().any(|line| line.head.deleted).then(|| {
            keys(vec![KeySpec::new("free the space of deleted jobs", move || {
                bench.free_deleted()
            })])
        });
        view! {
            {group("On the bench", |head| !head.archived && !head.deleted)}
            {group("Archived", |head| head.archived && !head.deleted)}
            {group("Deleted", |head| head.deleted)}
            {free}
        }
        .into_any()
    });
    let take_title = Callback::new(move |title: String| begin_empty(bench, &title));
    let take_file =
        Callback::new(move |(name, text): (String, String)| take_in(bench, &name, &text, restore));
    view! {
        <div class="page jobs">
            <h1>"Jobs"</h1>
            {shown_when(move || bench.not_kept.get(), room)}
            {keys(vec![KeySpec::new("find in every job", || Route::Find.go())])}
            {piece(move || restore::preview(bench, restore))}
            {groups}
            <fieldset>
                <legend>"A new job"</legend>
                <AskWords key="empty job" label="What is the job?" take=take_title />
                {keys(vec![
                    KeySpec::new("from the example", move || {
                        bench.begin_example();
                        Route::Job.go();
                    }),
                    KeySpec::new("from the example in inches", move || {
                        bench.begin_inch_example();
                        Route::Job.go();
                    }),
                ])}
                <FileKey words="from a file: a job sheet, a table of fasteners, or a backup" accept=".json,.csv,.txt,.tsv,application/json,text/csv" take=take_file />
            </fieldset>
            <fieldset>
                <legend>"Export as a file"</legend>
                {keys(hand_out_keys(bench))}
                <p>{text(move || bench.backup_words())}</p>
                <p class="quiet">"A backup holds every job, record, clock and setting of this bench. Keep it off this phone."</p>
            </fieldset>
            <UndoKey />
        </div>
    }
}

/// How room is made, and the way back to where the work is.
fn room() -> AnyView {
    view! {
        <section class="waits" aria-label="room">
            <h2>"Not everything is kept yet"</h2>
            <p>
                "What you do stays on the screen and goes to the phone as soon as there is room. Back up the whole bench, delete jobs that are over, then free their space."
            </p>
            {keys(vec![KeySpec::new("back to where I was", place::back)])}
        </section>
    }
    .into_any()
}

fn hand_out_keys(bench: Bench) -> Vec<KeySpec> {
    let name = move || file_name(&bench.sheet.with_untracked(|sheet| sheet.title.clone()));
    let hand_out = move |name: &str, media_type: &str, text: &str| {
        if !hand_out(name, media_type, text) {
            bench.say("This browser gives out no file: nothing was saved.", true);
        }
    };
    let mut specs = vec![
        KeySpec::new("back up the whole bench", move || {
            hand_out("halfcase-backup.json", "application/json", &bench.backup_text());
        }),
        KeySpec::new("this job’s sheet", move || {
            let text = bench.sheet.with_untracked(Sheet::to_json);
            hand_out(&format!("{}.json", name()), "application/json", &text);
        }),
        KeySpec::new("this job’s fasteners as a table", move || {
            let text = bench.sheet.with_untracked(fasteners::write);
            hand_out(&format!("{}-fasteners.csv", name()), "text/csv", &text);
        }),
    ];
    if let Some(text) = bench.rescued_text() {
        specs.push(KeySpec::new("damaged copies that were set aside", move || {
            hand_out("halfcase-rescue.txt", "text/plain", &text);
        }));
    }
    specs
}

/// Letters and digits of a title, for a file's name.
fn file_name(title: &str) -> String {
    let plain: String = title
        .chars()
        .map(|c| if c.is_alphanumeric() { c } else { '-' })
        .collect();
    let words: Vec<&str> = plain.split('-').filter(|word| !word.is_empty()).collect();
    if words.is_empty() {
        "job".to_owned()
    } else {
        words.join("-").to_ascii_lowercase()
    }
}

fn take_in(bench: Bench, name: &str, text: &str, restore: RwSignal<Option<Restore>>) {
    match bench.read_file(text) {
        Ok(Incoming::Sheet(sheet)) => {
            bench.begin_job(sheet);
            Route::Steps.go();
        }
        Ok(Incoming::Steps(steps)) => {
            let title = name.rsplit_once('.').map_or(name, |(title, _)| title);
            bench.begin_job(Sheet::new(title, steps));
            Route::Steps.go();
        }
        Ok(Incoming::Backup(found)) => restore.set(Some(*found)),
        Err(words) => bench.say(format!("{name}: {words}"), true),
    }
}

/// A job's line: its machine, how far it is and when it was last worked at; touched, it shows what can be
/// done with it.
fn row(bench: Bench, line: &JobLine, open: RwSignal<Option<JobId>>) -> AnyView {
    let head = line.head.clone();
    let (id, title, deleted) = (head.id, head.title.clone(), head.deleted);
    let at_hand = line.at_hand;
    let now = bench.now.get_untracked();
    let last = match (line.closed, line.last) {
        (Some(at), _) => format!("closed {}", when(at, now)),
        (None, Some(at)) => format!("last {}", when(at, now)),
        (None, None) => String::new(),
    };
    let counted = line.done_words();
    let at_hand_word = if at_hand { "at hand" } else { "" };
    let mut about = vec![at_hand_word, &counted, &last];
    about.retain(|words| !words.is_empty());
    let about = about.join(" · ");
    let machine = line.machine.clone();
    let more = piece(move || {
        if open.get() == Some(id) {
            what_can_be_done(bench, head.clone(), at_hand)
        } else {
            ().into_any()
        }
    });
    let press = move |_| {
        if at_hand || deleted || open.get_untracked() == Some(id) {
            open.update(|open| *open = if *open == Some(id) { None } else { Some(id) });
        } else {
            open.set(Some(id));
        }
    };
    view! {
        <li>
            <button class="row-key" aria-current=at_hand.then_some("true") on:click=press>
                <span>{title}</span>
                <span class="quiet figures">{about}</span>
                <span class="quiet">{machine}</span>
            </button>
            {more}
        </li>
    }
    .into_any()
}

fn what_can_be_done(bench: Bench, head: JobHead, at_hand: bool) -> AnyView {
    let id = head.id;
    let told = move |outcome| bench.tell(outcome);
    if head.deleted {
        return keys(vec![KeySpec::new("restore", move || bench.bring_back_job(id))]);
    }
    let mut specs = Vec::new();
    if at_hand {
        specs.push(KeySpec::new("go on with it", || Route::Job.go()));
    } else {
        specs.push(KeySpec::new("use this job", move || {
            let taken = bench.take_job(id);
            if taken.is_ok() {
                Route::Job.go();
            }
            told(taken);
        }));
    }
    specs.push(KeySpec::new("copy as a fresh sheet", move || {
        told(bench.duplicate_job(id).map(drop));
    }));
    let away = !head.archived;
    let words = if away { "archive" } else { "out of the archive" };
    specs.push(KeySpec::new(words, move || bench.archive_job(id, away)));
    specs.push(KeySpec::new("delete", move || told(bench.delete_job(id))));
    let rename = Callback::new(move |title: String| {
        let outcome = bench.rename_job(id, &title);
        let taken = outcome.is_ok();
        told(outcome);
        taken
    });
    view! {
        <div class="more">
            {keys(specs)}
            <AskWords key="rename" label="Its new name" first=head.title take=rename />
        </div>
    }
    .into_any()
}
