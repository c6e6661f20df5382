//! The lane under a step's title: what to mind, in one line; behind it everything there is of the step, as
//! a sheet.

use super::far::spoken;
use super::next::{open_before, open_row, title};
use super::{gate, more, parts, skin, whole_work};
use crate::bench::Bench;
use crate::device::voice;
use crate::job::sheet::Step;
use crate::job::situation::to_show;
use crate::parts::caution_card::caution_list;
use crate::parts::dynamic::{memo, press, text};
use crate::parts::line::widths;
use crate::parts::sheet::sheet;
use crate::trade::caution::{Caution, Level};
use leptos::prelude::*;

/// The lane, always there and always as high: a word more moves nothing.
#[component]
pub fn Lane(
    step: StoredValue<Step>,
    cautions: Memo<Vec<Caution>>,
    stopped: Memo<bool>,
    open: RwSignal<bool>,
) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let said = memo(move || {
        let progress = bench.progress.with(|progress| progress.step(id));
        let show = match progress.closed() {
            true => Vec::new(),
            false => cautions.with(|all| to_show(all, &progress.acknowledged)),
        };
        let conflict = bench.conflicts(Some(id)).into_iter().next();
        let open = open_before(bench, id);
        let (level, words, beside) = match (conflict, open, show.first()) {
            (Some((_, words)), _, _) => ("CHECK", words, show.len()),
            (None, Some(open), _) => {
                let words = format!("still before this: {}", title(bench, Some(open)));
                ("OPEN", words, show.len())
            }
            (None, None, Some(first)) => {
                let level = match first.level {
                    Level::Stop if progress.acknowledged.contains(first.id) => "STOP read",
                    Level::Stop => "STOP",
                    Level::Care => "CARE",
                };
                (level, first.short.to_owned(), show.len() - 1)
            }
            (None, None, None) => ("", "nothing to mind".to_owned(), 0),
        };
        (level, words, beside)
    });
    let level = text(move || match stopped.get() {
        true => String::new(),
        // The tick of a read one is the style's, with “read” in its place for who hears it.
        false => said.with(|said| said.0.trim_end_matches(" read").to_owned()),
    });
    // Beside the words, which may be cut.
    let more = text(move || match said.with(|said| said.2) {
        0 => String::new(),
        _ if stopped.get() => String::new(),
        more => format!("+{more}"),
    });
    let words = text(move || match stopped.get() {
        true => "read this first".to_owned(),
        false => said.with(|said| said.1.clone()),
    });
    let class = text(move || {
        match said.with(|said| said.0) {
            _ if stopped.get() => "lane quiet",
            "" => "lane quiet",
            "CARE" => "lane care",
            "STOP read" => "lane care stop read",
            _ => "lane care stop",
        }
        .to_owned()
    });
    // They shrink to their lines.
    let letters = text(move || (level.with(String::len) + words.with(|words| widths(words))).to_string());
    let show = move || open.set(true);
    // Each new thing that is asked, where it is set so; not what stands there already.
    let spoken = memo(move || spoken(bench, id));
    Effect::new(move |before: Option<String>| {
        let now = spoken.get();
        if before.is_some_and(|before| before != now) && bench.settings.with_untracked(|s| s.aloud) {
            voice::say(&now);
        }
        now
    });
    let speaker = voice::supported().then(|| {
        view! {
            <button class="speaker" aria-label="read aloud" on:click=press(move || voice::say(&spoken.get_untracked()))>
                <svg viewBox="0 0 32 32" aria-hidden="true">
                    <path d="M4 12h6l8-7v22l-8-7H4z" />
                    <path class="waves" d="M22 11q4 5 0 10M26 7q7 9 0 18" />
                </svg>
            </button>
        }
        .into_any()
    });
    view! {
        <div class="lanes">
            <button class=class style=("--letters", letters) on:click=press(show)>
                <span class="words">
                    <span class="level">{level}</span>
                    " "
                    {words}
                </span>
                <span class="all">{more}" "<span>"all"</span>" ›"</span>
            </button>
            {speaker}
        </div>
    }
}

/// All of the step, as a sheet over it.
pub fn whole(
    step: StoredValue<Step>,
    cautions: Memo<Vec<Caution>>,
    stopped: Memo<bool>,
    open: RwSignal<bool>,
) -> AnyView {
    let (id, title, notes) = step.with_value(|step| (step.id, step.title.clone(), step.notes.clone()));
    let shut = move || open.set(false);
    let work = (!stopped.get_untracked()).then(|| whole_work(step));
    let inside = view! {
        <header class="sheet-head">
            <h2>{title.clone()}</h2>
            <button class="side-key" aria-label="back to the step" on:click=press(shut)>"✕"</button>
        </header>
        <div class="sheet-body">
            <p class="notes">{notes}</p>
            <gate::GateView step />
            {skin::skin(id)}
            {caution_list(Some(id), cautions, stopped.into())}
            {open_row(id)}
            {work}
            {parts::parts_of(id)}
            <more::More step />
        </div>
    };
    view! { <div class="whole">{sheet(title, shut, inside.into_any())}</div> }.into_any()
}
