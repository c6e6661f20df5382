//! A shut step: what it waits for, until when, and the way to open it by hand.

use crate::bench::{Bench, Intent};
use crate::job::clock::ClockId;
use crate::job::gate::{Wait, blocking, opens_at};
use crate::job::sheet::Step;
use crate::parts::clock_bar::{cure_scale, warmth_note};
use crate::parts::dynamic::{each, memo, piece, press, text, when as shown_when};
use crate::parts::line::touch_above;
use crate::parts::plate::{Plate, how_sheet};
use crate::parts::when::{span, up, when};
use leptos::prelude::*;

/// When it opens, as large as a number, and the one thing that keeps it shut; the rest is behind “all”.
pub fn shut(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let waits = memo(move || step.with_value(|step| bench.waits(step)));
    let opens = memo(move || opens_words(bench, &waits.get()));
    let blocks = text(move || {
        waits.with(|waits| blocking(waits).map_or(String::new(), |wait| wait_words(bench, wait)))
    });
    let more = piece(move || match waits.with(Vec::len) {
        0 | 1 => ().into_any(),
        all => touch_above(format!("and {} more", all - 1)),
    });
    let warmth = text(move || warmth(bench, &waits.get()).unwrap_or_default());
    // The cure that ends last, on its own scale: behind the words, which go first where there is little room.
    let last = memo(move || waits.with(|waits| last_cure(waits)));
    let cure = piece(move || {
        let clock = last.get().and_then(|id| {
            bench
                .clocks
                .with_untracked(|clocks| clocks.iter().find(|clock| clock.id == id).cloned())
        });
        clock.map_or(().into_any(), cure_scale)
    });
    let told = RwSignal::new(false);
    let lines = move || how_lines(bench, step, &waits.get());
    let how = Callback::new(move |()| told.set(true));
    view! {
        <Plate
            says=text(move || opens.with(|opens| opens.0.clone()))
            number=text(move || opens.with(|opens| opens.1.clone()))
            unit=text(move || opens.with(|opens| opens.2.to_owned()))
            how=Some(how)
        />
        {how_sheet(told, lines, || ().into_any())}
        <p class="mid">{blocks}</p>
        <p class="mid">{warmth}</p>
        <p class="mid quiet">{more}</p>
        {cure}
    }
    .into_any()
}

/// The cure that ends last, of those it waits for.
fn last_cure(waits: &[Wait]) -> Option<ClockId> {
    let cures = waits.iter().filter_map(|wait| match wait {
        Wait::Cure { clock, until } => Some((*until, *clock)),
        _ => None,
    });
    cures.max().map(|(_, clock)| clock)
}

/// What is taken for the shop's temperature where nobody told it for the cure that ends last.
fn warmth(bench: Bench, waits: &[Wait]) -> Option<String> {
    let id = last_cure(waits)?;
    bench.settings.with(|settings| {
        bench.clocks.with(|clocks| {
            let clock = clocks.iter().find(|clock| clock.id == id)?;
            warmth_note(clock, &settings.shop).map(|words| bench.in_figures(&words))
        })
    })
}

/// How the time of the gate comes about: by the cure that ends last, else by what is in the way.
fn how_lines(bench: Bench, step: StoredValue<Step>, waits: &[Wait]) -> Vec<String> {
    let milestone = step.with_value(Step::needs_cured);
    let told = opens_at(waits).and(last_cure(waits)).zip(milestone);
    let Some((id, milestone)) = told else {
        return waits.iter().map(|wait| wait_words(bench, wait)).collect();
    };
    bench.settings.with(|settings| {
        bench.clocks.with(|clocks| {
            let clock = clocks.iter().find(|clock| clock.id == id);
            let lines = clock.map_or(Vec::new(), |clock| clock.how(milestone, &settings.shop));
            lines.iter().map(|line| bench.in_figures(line)).collect()
        })
    })
}

/// What `step` waits for; nothing when it is open.
#[component]
pub fn GateView(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let waits = memo(move || step.with_value(|step| bench.waits(step)));
    let reason = RwSignal::new(String::new());
    let asking = RwSignal::new(false);
    let by_hand = move || {
        let open = press(move || {
            let step = step.with_value(|step| step.id);
            bench.tell(bench.send(Intent::Override {
                step,
                reason: reason.get_untracked(),
            }))
        });
        view! {
            <label>
                "Why it may be opened: this goes into the record."
                <input
                    type="text"
                    prop:value=text(move || reason.get())
                    on:input=move |event| reason.set(event_target_value(&event))
                />
            </label>
            <button class="work-key" on:click=open>
                "Override"
            </button>
        }
        .into_any()
    };
    let shut = move || {
        let opens = text(move || {
            let (says, when, unit) = opens_words(bench, &waits.get());
            format!("{says} {when} {unit}")
        });
        let list = piece(move || {
            each(waits.get(), |wait| {
                view! { <li>{wait_words(bench, &wait)}</li> }.into_any()
            })
            .into_any()
        });
        let ask = piece(move || match asking.get() {
            _ if !waits.with(|waits| waits.iter().all(Wait::by_hand)) => ().into_any(),
            true => by_hand(),
            false => {
                view! { <button on:click=press(move || asking.set(true))>"override"</button> }.into_any()
            }
        });
        view! {
            <section class="waits" aria-label="what this step waits for">
                <h2>"Shut"</h2>
                <p class="opens">{opens}</p>
                <p>{text(move || warmth(bench, &waits.get()).unwrap_or_default())}</p>
                <ul>{list}</ul>
                {ask}
            </section>
        }
        .into_any()
    };
    shown_when(move || !waits.with(Vec::is_empty), shut)
}

/// What is said of it, what stands large, and its unit.
fn opens_words(bench: Bench, waits: &[Wait]) -> (String, String, &'static str) {
    let now = bench.now.get();
    if let Some(at) = opens_at(waits) {
        let when = when(up(at), now);
        let (day, clock) = when.rsplit_once(' ').unwrap_or(("", &when));
        return (format!("Opens {day}"), clock.to_owned(), "");
    }
    let steps = waits
        .iter()
        .filter(|wait| matches!(wait, Wait::Step(_) | Wait::Undone(_)));
    let found = waits.iter().filter(|wait| matches!(wait, Wait::Finding { .. }));
    let (count, unit) = match (found.count(), steps.count()) {
        (1, _) => (1, "finding"),
        (found @ 2.., _) => (found, "findings"),
        (_, 1) => (1, "step"),
        (_, steps @ 2..) => (steps, "steps"),
        _ => return ("Opens".to_owned(), "—".to_owned(), "no time known"),
    };
    ("Opens after".to_owned(), count.to_string(), unit)
}

fn wait_words(bench: Bench, wait: &Wait) -> String {
    let title = |id| {
        bench
            .sheet
            .with(|sheet| sheet.step(id).map_or(String::new(), |step| step.title.clone()))
    };
    let clock = |id| {
        bench.clocks.with(|clocks| {
            clocks
                .iter()
                .find(|c| c.id == id)
                .map_or(String::new(), |c| c.name.clone())
        })
    };
    let now = bench.now.get();
    match wait {
        Wait::Step(id) => format!("Not done yet: {}.", title(*id)),
        Wait::Undone(id) => format!(
            "“{}” was done before its plan changed: open it again for what it asks now.",
            title(*id)
        ),
        Wait::ClockNotStarted(id) => format!("The clock of “{}” was never started.", title(*id)),
        Wait::Cure { clock: id, until } => {
            format!(
                "Not before {}: {} ({} left).",
                when(up(*until), now),
                clock(*id),
                span(until.since(now))
            )
        }
        Wait::Finding { step: id, what } => {
            let found = bench.finding(*id, what).unwrap_or_default();
            format!("In “{}”: {found}. Settle it there.", title(*id))
        }
        Wait::Stalled { clock: id, why } => format!("{} does not cure as things are: {why}", clock(*id)),
    }
}
