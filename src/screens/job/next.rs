//! The one key that moves the step on: it shows what the step asks for, and does that where a touch can.

use crate::bench::{Ask, Bench, Intent, OvenNext};
use crate::job::kinds::fasten::fastening::Asked;
use crate::job::kinds::seat::oven::OvenState;
use crate::job::kinds::seat::words::window_words;
use crate::job::kinds::select::words::pieces_words;
use crate::job::kinds::{Fasten, Gauged, Work};
use crate::job::reading::What;
use crate::job::record::Instead;
use crate::job::sheet::{Step, StepId};
use crate::parts::dynamic::{memo, piece, press, state, text, whether};
use crate::parts::number_field::ReadingOpen;
use crate::parts::seat::out_words;
use crate::parts::work_keys::Resting;
use crate::screens::Route;
use crate::trade::quantity::Unit;
use crate::trade::stages::Deed;
use leptos::prelude::*;

/// A face of so many letters stands on the key in full size.
const SHORT: usize = 8;

/// The big key.
#[component]
pub fn NextKey(
    step: StepId,
    /// Opens everything of the step.
    whole: RwSignal<bool>,
) -> impl IntoView {
    let bench = Bench::here();
    let ask = memo(move || bench.ask(step));
    let reading = use_context::<ReadingOpen>();
    let resting = use_context::<Resting>().unwrap_or_else(Resting::from_now);
    let instead = memo(move || ask.with(|ask| instead(bench, step, ask.as_ref()?)));
    let act = press(move || {
        if !resting.counts() {
            return;
        }
        match (instead.get_untracked(), ask.get_untracked()) {
            (Some(OvenNext::Out(_, window)), _) => bench.take_out(Some(step), window),
            (Some(OvenNext::Home), _) => bench.put_countdown_away(),
            // The big key opens the keypad of what is to be read.
            (None, Some(Ask::Read(what))) if what.is_number() => {
                reading.into_iter().for_each(|ReadingOpen(open)| open.set(true));
            }
            // What has more than one way out is chosen among all there is of the step.
            (None, Some(ask)) if is_shut(&ask) || matches!(ask, Ask::Finding(_)) => whole.set(true),
            (None, Some(ask)) => go_on(bench, step, &ask),
            (None, None) => {}
        }
    });
    // Never disabled: a keyboard would lose its place.
    let shut = whether(move || ask.with(|ask| ask.as_ref().is_none_or(is_shut)));
    let said = memo(move || face(bench, step));
    let large = text(move || said.get().map_or(String::new(), |(face, _)| face));
    let wordy = whether(move || said.with(|said| said.as_ref().is_some_and(|(face, _)| face.len() > SHORT)));
    let counted = memo(move || counted(bench, step));
    let count = text(move || counted.get().unwrap_or_default());
    // "6 of 16" is said by the large digits; who can't see them hears it.
    let below = memo(move || {
        let small = said.get().map_or(String::new(), |(_, small)| small);
        match counted.with(Option::is_some) {
            false => (String::new(), small),
            true => match small.split_once(", ") {
                Some((of, pass)) => (format!("{of},"), pass.to_owned()),
                None => (small, String::new()),
            },
        }
    });
    let ordinal = text(move || below.with(|(ordinal, _)| ordinal.clone()));
    let small = text(move || resting.said(below.get().1));
    view! {
        <button
            class="work-key first"
            class:wordy=wordy
            class:counted=whether(move || counted.with(Option::is_some))
            class:resting=whether(move || resting.now())
            class:shut=shut
            aria-disabled=state(move || resting.now() || ask.with(Option::is_none))
            on:click=act
        >
            <span>{large}</span>
            " "
            <b aria-hidden="true">{count}</b>
            <span class="unseen">{ordinal}</span>
            " "
            <small>{small}</small>
        </button>
    }
    .into_any()
}

/// What of the way from the oven comes before the step is done.
fn instead(bench: Bench, step: StepId, ask: &Ask) -> Option<OvenNext> {
    match ask {
        Ask::Close | Ask::Read(What::Depth | What::Gap) => bench.oven_next(step),
        _ => None,
    }
}

/// What the big key says now: large, and small below.
pub fn face(bench: Bench, step: StepId) -> Option<(String, String)> {
    let ask = bench.ask(step)?;
    match instead(bench, step, &ask) {
        Some(OvenNext::Out(which, window)) => {
            return Some((out_words(which).to_owned(), window_words(window)));
        }
        Some(OvenNext::Home) => {
            let small = match bench.on_its_way() {
                Some(OvenState::Shut(_)) => "else heat it again",
                _ => "",
            };
            return Some(("It is home".to_owned(), small.to_owned()));
        }
        None => {}
    }
    let found = bench.sheet.with(|sheet| sheet.step(step).cloned())?;
    Some(match &ask {
        Ask::TakeWrench(_) => {
            let (_, other, in_hand) = bench.wrench_instead(step)?;
            (format!("Use {other}"), format!("{in_hand} can’t set this"))
        }
        Ask::Choose => ("It is in".to_owned(), offered_words(bench, &found)),
        Ask::GoOn => (words(&ask, &found).0, title(bench, bench.onward(step).0)),
        Ask::Tally(_) if by_hand(bench, step) => {
            let (face, small) = words(&ask, &found);
            (face.replace("at torque", "snug"), small)
        }
        other => words(other, &found),
    })
}

/// Which of how many is done next, in digits, where there are several.
fn counted(bench: Bench, step: StepId) -> Option<String> {
    let Some(Ask::Tally(next)) = bench.ask(step) else {
        return None;
    };
    let all = bench.sheet.with(|sheet| match &sheet.step(step)?.work {
        Work::Fasten(fasten) if !fasten.to_all(next.pass) => Some(fasten.layout.count()),
        _ => None,
    })?;
    (all > 1).then(|| format!("{}/{all}", next.done_in_pass + 1))
}

/// Whether hands were said to do, as no wrench reaches so low and more follows.
fn by_hand(bench: Bench, step: StepId) -> bool {
    let instead = bench
        .progress
        .with(|progress| progress.touched(step)?.instead.clone());
    instead == Some(Instead::Hands)
}

/// A step's number and title; none: the job's end.
pub fn title(bench: Bench, step: Option<StepId>) -> String {
    bench.sheet.with(|sheet| {
        let found = step.and_then(|id| Some((sheet.place(id)? + 1, sheet.step(id)?)));
        found.map_or("the job’s end".to_owned(), |(at, step)| {
            format!("{at} {}", step.title)
        })
    })
}

/// The first step before this one that is still open, where this one is left behind.
pub fn open_before(bench: Bench, step: StepId) -> Option<StepId> {
    match bench.ask(step) {
        Some(Ask::GoOn | Ask::OnOrder(_)) => bench.onward(step).1,
        _ => None,
    }
}

/// The way back to it.
pub fn open_row(step: StepId) -> AnyView {
    let bench = Bench::here();
    let before = memo(move || open_before(bench, step));
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
        Ask::Wait(_) | Ask::Skinned(_) | Ask::Finding(_) => return,
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
        Ask::NoWrench(_) | Ask::Read(_) | Ask::Code | Ask::Feel | Ask::Close => Intent::Close(step),
    };
    bench.tell(bench.send(intent));
}

/// What the key says of it: large, and small below.
fn words(ask: &Ask, step: &Step) -> (String, String) {
    let part_name = |part| What::Part(part).name(Some(step));
    let (face, small) = match ask {
        Ask::GoOn => ("Next step", String::new()),
        Ask::Wait(_) => ("Shut", "see what it waits for".to_owned()),
        Ask::Acknowledge(_) => ("I have read it", String::new()),
        Ask::Skinned(_) => ("It has skinned", "see what to do".to_owned()),
        Ask::Loosen(count) => ("All loose", format!("{count} are too tight")),
        Ask::PutOn => ("Compound on: start clock", String::new()),
        Ask::TakeWrench(_) => ("Another wrench", String::new()),
        Ask::NoWrench(_) => ("No wrench fits", "say what you use".to_owned()),
        Ask::Tally(next) => {
            let fasten = match &step.work {
                Work::Fasten(fasten) => Some(fasten),
                _ => None,
            };
            if let Some(face) = fasten.and_then(|fasten| deed(fasten, next.pass)) {
                let pass = fasten.map_or(String::new(), |fasten| pass_words(fasten, next.pass + 1));
                return (face.to_owned(), format!("all{pass}"));
            }
            let of = fasten.map_or(0, |fasten| fasten.layout.count());
            let pass = fasten.map_or(String::new(), |fasten| pass_words(fasten, next.pass + 1));
            let small = format!("{} of {of}{pass}", next.done_in_pass + 1);
            let brought = fasten.map_or("at torque", |fasten| brought_to(fasten, next.pass));
            let name = fasten.map_or(String::new(), |fasten| fasten.name(next.place));
            return (format!("Bolt {name} {brought}"), small);
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
    };
    (face.to_owned(), small)
}

/// What a fastener is once that pass is done on it.
fn brought_to(fasten: &Fasten, pass: usize) -> &'static str {
    match fasten.asked(pass, None) {
        Asked::Torque(_) => "at torque",
        Asked::Angle { .. } => "turned",
        Asked::Hand => "snug",
        Asked::All(_) => "done",
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
