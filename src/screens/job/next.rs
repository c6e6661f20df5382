//! The one key that moves the step on: it shows what the step asks for, and does that where a touch can.

use crate::bench::{Ask, Bench, Intent};
use crate::job::kinds::fasten::fastening::Asked;
use crate::job::kinds::select::words::pieces_words;
use crate::job::kinds::{Fasten, Gauged, Work};
use crate::job::reading::What;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{piece, press, state, text, whether};
use crate::parts::work_keys::rest;
use crate::screens::Route;
use crate::trade::quantity::Unit;
use crate::trade::stages::Deed;
use leptos::prelude::*;

/// The big key.
#[component]
pub fn NextKey(step: StepId) -> impl IntoView {
    let bench = Bench::here();
    let ask = Memo::new(move |_| bench.ask(step));
    let resting = RwSignal::new(false);
    // The press that led to this step must not answer for it too.
    rest(resting);
    let act = press(move || {
        if resting.get_untracked() {
            return;
        }
        rest(resting);
        if let Some(ask) = ask.get_untracked() {
            go_on(bench, step, &ask);
        }
    });
    // Not shut while it rests: a keyboard would lose its place.
    let shut = whether(move || ask.with(|ask| ask.as_ref().is_none_or(is_shut)));
    let said = Memo::new(move |_| {
        ask.with(|ask| {
            if let Some(Ask::TakeWrench(_)) = ask {
                let (_, other, in_hand) = bench.wrench_instead(step)?;
                return Some((format!("Use {other}"), format!("{in_hand} can’t set this")));
            }
            let found = bench.sheet.with(|sheet| sheet.step(step).cloned());
            let found = ask.as_ref().zip(found);
            let (face, small) = found.map(|(ask, step)| match ask {
                Ask::Choose => ("It is in", offered_words(bench, &step)),
                other => words(other, &step),
            })?;
            Some(match ask {
                Some(Ask::GoOn) => (face.to_owned(), title(bench, bench.onward(step).0)),
                _ => (face.to_owned(), small),
            })
        })
    });
    let face = text(move || said.get().map_or(String::new(), |(face, _)| face));
    let small = text(move || said.get().map_or(String::new(), |(_, small)| small));
    view! {
        <button class="work-key first" class:resting=whether(move || resting.get()) aria-disabled=state(move || resting.get()) disabled=shut on:click=act>
            {face}
            <small>{small}</small>
        </button>
    }
    .into_any()
}

/// A step's number and title; none: the job's end.
fn title(bench: Bench, step: Option<StepId>) -> String {
    bench.sheet.with(|sheet| {
        let found = step.and_then(|id| Some((sheet.place(id)? + 1, sheet.step(id)?)));
        found.map_or("the job’s end".to_owned(), |(at, step)| {
            format!("{at} {}", step.title)
        })
    })
}

/// The first step before this one that is still open, where this one is left behind.
pub fn open_before(step: StepId) -> AnyView {
    let bench = Bench::here();
    let before = Memo::new(move |_| match bench.ask(step) {
        Some(Ask::GoOn | Ask::OnOrder(_)) => bench.onward(step).1,
        _ => None,
    });
    let named = piece(move || match before.get() {
        Some(open) => {
            let title = title(bench, Some(open));
            view! {
                <button class="row-key open-before" on:click=press(move || Route::Step(open).go())>
                    <span>"Still open before this: "{title}</span>
                </button>
            }
            .into_any()
        }
        None => ().into_any(),
    });
    view! { {named} }.into_any()
}

/// What a touch of the key can't do.
fn is_shut(ask: &Ask) -> bool {
    matches!(ask, Ask::Wait(_) | Ask::Skinned(_))
}

fn go_on(bench: Bench, step: StepId, ask: &Ask) {
    let intent = match ask {
        Ask::Wait(_) | Ask::Skinned(_) => return,
        Ask::Acknowledge(caution) => Intent::Acknowledge {
            step,
            caution: (*caution).to_owned(),
        },
        Ask::GoOn | Ask::OnOrder(_) => {
            return untrack(|| bench.onward(step))
                .0
                .map_or(Route::JobEnd, Route::Step)
                .go();
        }
        Ask::NewOn(part) => Intent::NewOn { step, part: *part },
        Ask::Loosen(_) => Intent::Loosen(step),
        Ask::PutOn => Intent::PutOn {
            step,
            activator: false,
        },
        Ask::TakeWrench(at) => return bench.take_wrench(*at),
        Ask::Tally(_) => Intent::Tally(step),
        Ask::Gauge(done) => Intent::Gauge { step, done: *done },
        Ask::Choose => match bench
            .sheet
            .with_untracked(|sheet| bench.offered(sheet.step(step)?))
        {
            Some(pieces) => Intent::Choose { step, pieces },
            None => Intent::Close(step),
        },
        // The step says what is still wanted.
        Ask::NoWrench(_) | Ask::Read(_) | Ask::Finding(_) | Ask::Code | Ask::Feel | Ask::Close => {
            Intent::Close(step)
        }
    };
    bench.tell(bench.send(intent));
}

/// What the key says of it: large, and small below.
fn words(ask: &Ask, step: &Step) -> (&'static str, String) {
    let part_name = |part| What::Part(part).name(Some(step));
    match ask {
        Ask::GoOn => ("Next step", String::new()),
        Ask::Wait(_) => ("Shut", "see what it waits for".to_owned()),
        Ask::Acknowledge(_) => ("I have read it", String::new()),
        Ask::Skinned(_) => ("It has skinned", "see what to do".to_owned()),
        Ask::Loosen(count) => ("All loose", format!("{count} are too tight")),
        Ask::PutOn => ("Compound on", "start its clock".to_owned()),
        Ask::TakeWrench(_) => ("Another wrench", String::new()),
        Ask::NoWrench(_) => ("No wrench fits", "say what you use".to_owned()),
        Ask::Tally(next) => {
            let fasten = match &step.work {
                Work::Fasten(fasten) => Some(fasten),
                _ => None,
            };
            if let Some(face) = fasten.and_then(|fasten| deed(fasten, next.pass)) {
                let pass = fasten.map_or(String::new(), |fasten| pass_words(fasten, next.pass + 1));
                return (face, format!("all{pass}"));
            }
            let of = fasten.map_or(0, |fasten| fasten.layout.count());
            let pass = fasten.map_or(String::new(), |fasten| pass_words(fasten, next.pass + 1));
            ("Tally", format!("{} of {of}{pass}", next.done_in_pass + 1))
        }
        Ask::Read(what) => ("Read", what.name(Some(step))),
        Ask::Code => ("Read", "both codes".to_owned()),
        Ask::Choose => ("It is in", String::new()),
        Ask::Gauge(Gauged::Laid(plastic)) => ("It is laid", plastic.words().to_owned()),
        Ask::Gauge(Gauged::Tight) => ("It is tight", "the cap, fully".to_owned()),
        Ask::Gauge(Gauged::Off) => ("Cap is off", String::new()),
        Ask::Gauge(Gauged::Wiped) => ("Wiped away", "all of it".to_owned()),
        Ask::Finding(what) => ("Not settled", what.judged_name(step)),
        Ask::OnOrder(part) => ("Next step", format!("{} is on order", part_name(*part))),
        Ask::NewOn(part) => ("New ones on", part_name(*part)),
        Ask::Feel => ("Turn it", "and say how it turns".to_owned()),
        Ask::Close => ("Done", String::new()),
    }
}

/// What the key says of a stage that is done to all by one touch.
fn deed(fasten: &Fasten, pass: usize) -> Option<&'static str> {
    match fasten.asked(pass, None) {
        Asked::All(Deed::Oil) => Some("All oiled"),
        Asked::All(Deed::Dry) => Some("All dry"),
        Asked::All(Deed::Loosen) => Some("All loose"),
        Asked::Torque(_) | Asked::Angle { .. } | Asked::Hand => None,
    }
}

/// What is offered to be put in.
fn offered_words(bench: Bench, step: &Step) -> String {
    match (&step.work, bench.offered(step)) {
        (Work::Select(select), Some(pieces)) => pieces_words(&pieces, select.unit.symbol()),
        _ => "choose what goes in".to_owned(),
    }
}

/// ", pass 2 of 4"; nothing where there is one.
fn pass_words(fasten: &Fasten, pass: usize) -> String {
    match fasten.pass_count() {
        1 => String::new(),
        count => {
            let word = if fasten.stages.is_empty() { "pass" } else { "stage" };
            format!(", {word} {pass} of {count}")
        }
    }
}
