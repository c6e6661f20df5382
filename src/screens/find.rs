//! Search across jobs: one field, and what is found under it.

use crate::bench::Bench;
use crate::job::search::{Hit, Opens, Query, found};
use crate::parts::dynamic::{memo, press, row, rows, text};
use crate::parts::when::when;
use crate::screens::Route;
use leptos::prelude::*;

/// Lines drawn at once: more are of no use to anyone who looks for something.
const AT_ONCE: usize = 60;

/// What to type, while nothing is found.
const HOW: &str = "Part of a word will do: M8 case, flange nut, a remark, a tool, initials. All words are to be there. And days: today, yesterday, last week, October, last October, 2025.";

/// The field and what it finds.
#[component]
pub fn FindScreen() -> impl IntoView {
    let bench = Bench::here();
    let all = StoredValue::new(bench.gathered());
    let typed = bench.sought;
    let seen = memo(move || {
        let query = Query::read(&typed.get(), bench.right_now().day);
        let hits: Vec<Hit> = all.with_value(|all| found(all, &query).cloned().collect());
        (query.is_empty(), hits)
    });
    let said = text(move || {
        seen.with(|(empty, hits)| match (*empty, hits.len()) {
            (true, _) => HOW.to_owned(),
            (false, 0) => format!("Nothing of that in any job. {HOW}"),
            (false, 1) => "One found.".to_owned(),
            (false, many @ ..=AT_ONCE) => format!("{many} found, the newest first."),
            (false, many) => format!("{many} found, the newest {AT_ONCE} shown: one more word finds less."),
        })
    });
    let lines = move || {
        let hits = seen.with(|(_, hits)| hits.iter().take(AT_ONCE).cloned().collect::<Vec<Hit>>());
        let numbered = hits.into_iter().enumerate();
        numbered
            .map(|(at, hit)| row(format!("{at} {}", hit.key()), move || line(bench, hit)))
            .collect()
    };
    view! {
        <div class="page find">
            <h1>"Find"</h1>
            <label>
                "In every job"
                <input
                    type="search"
                    autocomplete="off"
                    autocapitalize="off"
                    enterkeyhint="search"
                    prop:value=typed
                    on:input=move |event| typed.set(event_target_value(&event))
                />
            </label>
            <p class="quiet" role="status">{said}</p>
            <ul class="lines" aria-label="found">
                {rows(lines)}
            </ul>
        </div>
    }
}

/// One thing found; touched, it opens.
fn line(bench: Bench, hit: Hit) -> AnyView {
    let at = hit
        .at
        .map_or("planned".to_owned(), |at| when(at, bench.now.get_untracked()));
    let mut place = vec![hit.step, hit.title, hit.machine];
    place.retain(|words| !words.is_empty());
    let (job, opens) = (hit.job, hit.opens);
    let go = press(move || match bench.take_job_of(job) {
        Ok(()) => route(opens).go(),
        Err(refused) => bench.tell(Err(refused)),
    });
    view! {
        <li>
            <button class="row-key" on:click=go>
                <span class="quiet figures">{format!("{} · {at}", hit.sort.word())}</span>
                <span class="what">{hit.words}</span>
                <span class="quiet">{place.join(" · ")}</span>
            </button>
        </li>
    }
    .into_any()
}

fn route(opens: Opens) -> Route {
    match opens {
        Opens::Step(step) => Route::Step(step),
        Opens::Parts => Route::Parts,
        Opens::Record => Route::Record,
        Opens::Clocks => Route::Clocks,
    }
}
