//! A fasten step: the number for the wrench in the hand, the bolts, what goes on the thread.

use super::bond::CompoundLine;
use super::lengths;
use super::no_wrench::no_wrench;
use super::said::{as_typed, read, say};
use crate::bench::{Ask, Bench};
use crate::job::answer::TorqueAnswer;
use crate::job::guarding::{KnownBolt, guard_fasten, guard_others, silent_words};
use crate::job::journal::time_words;
use crate::job::kinds::fasten::fastening::{PassAnswer, running, running_words};
use crate::job::kinds::fasten::size_words;
use crate::job::kinds::fasten::{Front, Lock};
use crate::job::kinds::{Fasten, Reuse, Work};
use crate::job::progress::next_fastener;
use crate::job::reading::{Fact, What};
use crate::job::sheet::Step;
use crate::parts::angle_gauge::AngleGauge;
use crate::parts::bolts::{Bolt, Bolts};
use crate::parts::dynamic::{Piece, derive, memo, piece, press, text};
use crate::parts::guard::{GuardFold, GuardLine};
use crate::parts::line::widths;
use crate::parts::number_field::NumberField;
use crate::parts::plate::Plate;
use crate::parts::torque_plate::{AnswerPlate, OtherUnits, Ruler, ScaleDrawing, WrenchLine, WrenchRow};
use crate::parts::work_keys::Resting;
use crate::screens::Route;
use crate::trade::guard::Verdict;
use crate::trade::order::Layout;
use crate::trade::quantity::shortest;
use crate::trade::stages::Deed;
use leptos::prelude::*;

/// The fastening at hand, and where it is: handles, freely copied.
#[derive(Clone, Copy)]
struct Here {
    bench: Bench,
    kept: StoredValue<Fasten>,
    pass: Memo<usize>,
    place: Memo<usize>,
    asked: Memo<Option<PassAnswer>>,
    answer: Signal<Option<TorqueAnswer>>,
}

impl Here {
    fn of(step: StoredValue<Step>) -> Option<Self> {
        let bench = Bench::here();
        let kept = StoredValue::new(step.with_value(|step| as_fasten(step).cloned())?);
        let pass = memo(move || step.with_value(|step| pass_at_hand(bench, step, kept)));
        let place = memo(move || step.with_value(|step| place_at_hand(bench, step)));
        let asked = memo(move || step.with_value(|step| bench.pass_answer(step, pass.get(), place.get())));
        let answer = derive(move || match asked.get() {
            Some(PassAnswer::Torque(answer)) => Some(*answer),
            _ => None,
        });
        Some(Self {
            bench,
            kept,
            pass,
            place,
            asked,
            answer,
        })
    }
}

/// What the next fastener asks for: its number and the pattern, and nothing else.
pub fn tally_stage(step: StoredValue<Step>) -> AnyView {
    let Some(here) = Here::of(step) else {
        return ().into_any();
    };
    let Here {
        bench,
        kept,
        pass,
        place,
        asked,
        answer,
        ..
    } = here;
    let id = step.with_value(|step| step.id);
    // What the core asks to be done may be done, with whatever was said to be used for it.
    let allowed = derive(move || matches!(bench.ask(id), Some(Ask::Tally(_))));
    let adapted = derive(move || answer.with(|answer| answer.as_ref().is_some_and(|a| a.adapted)));
    let plate: Piece = piece(move || match asked.get() {
        Some(PassAnswer::Angle { degrees, off }) => turn_plate(degrees, off),
        Some(PassAnswer::Hand) => big_words("Snug by hand".to_owned(), "until the faces meet; no more"),
        Some(PassAnswer::All(deed)) => deed_plate(deed),
        Some(PassAnswer::Torque(_)) | None => view! {
            <WrenchLine adapted />
            <AnswerPlate answer trouble=None empty=false allowed />
            <Ruler answer />
        }
        .into_any(),
    });
    let bolts = derive(move || step.with_value(|step| bolts(bench, step, pass.get())));
    let manual = move || {
        kept.with_value(|fasten| {
            let own = fasten.at(place.get());
            own.share_words(pass.get())
        })
    };
    let doubt = piece(move || {
        match kept.with_value(|fasten| doubt(fasten, place.get(), answer.get().as_ref())) {
            Some((stop, words)) => {
                // It shrinks to its lines: the manual's likely reading stands at its end.
                let letters = widths(&words).to_string();
                view! { <p class="doubt" class:stop=stop role="alert" style=("--letters", letters)>{words}</p> }.into_any()
            }
            None => ().into_any(),
        }
    });
    let resting = use_context::<Resting>();
    let touched = move |place: usize| {
        if resting.is_none_or(Resting::counts) {
            bench.tally_at(id, place);
        }
    };
    view! {
        <div class="stage split">
            <div class="focal">
                {plate}
                <p class="pass">{text(manual)}</p>
            </div>
            {doubt}
            <Bolts bolts outline=kept.with_value(outline) front=kept.with_value(front) touched=touched />
        </div>
    }
    .into_any()
}

/// What speaks against the number for that fastener, and whether it stops: its own torque's guard, stages that
/// make no sense, the end of the wrench's scale.
fn doubt(fasten: &Fasten, place: usize, answer: Option<&TorqueAnswer>) -> Option<(bool, String)> {
    let own = fasten.at(place);
    let guard = guard_fasten(&own).filter(|guard| guard.verdict != Verdict::Plausible);
    if let Some(guard) = guard {
        let stop = guard.verdict == Verdict::Absurd;
        return Some((stop, format!("{} {}", guard.mark, guard.sentence)));
    }
    if let Some(why) = fasten.stages_wrong() {
        return Some((true, why));
    }
    let low = answer.filter(|answer| answer.setting.is_some())?;
    low.trouble.clone().map(|why| (false, why))
}

/// The torque that the next fastener asks for, in the manual's words.
pub fn asked_torque(step: StoredValue<Step>) -> AnyView {
    let Some(here) = Here::of(step) else {
        return ().into_any();
    };
    let words = text(move || {
        here.kept
            .with_value(|fasten| fasten.at(here.place.get()).share_words(here.pass.get()))
    });
    // An adapter that makes no sense is why no wrench fits.
    let why = text(move || {
        here.answer
            .get()
            .and_then(|answer| answer.trouble)
            .unwrap_or_default()
    });
    view! { <p class="large figures">{words}</p> <p class="trouble-line">{why}</p> }.into_any()
}

/// The part's outline as far as the pattern tells it.
fn outline(fasten: &Fasten) -> &'static str {
    match fasten.layout {
        Layout::Circle { .. } => "bolts round",
        Layout::PairedRows { .. } | Layout::Rectangle { .. } => "bolts framed",
        Layout::Single => "bolts single",
        Layout::Line { .. } | Layout::Free { .. } => "bolts",
    }
}

/// Where the part's front is: a class; none where nobody said.
fn front(fasten: &Fasten) -> Option<&'static str> {
    match fasten.front {
        Front::NotSaid => None,
        side => Some(side.words()),
    }
}

/// The work of a fasten step in full.
#[component]
pub fn FastenWork(step: StoredValue<Step>) -> impl IntoView {
    let Some(here) = Here::of(step) else {
        return ().into_any();
    };
    let Here {
        bench,
        kept,
        place,
        pass,
        answer,
        ..
    } = here;
    let (id, fasten) = (step.with_value(|step| step.id), kept.get_value());
    let manual = text(move || kept.with_value(|fasten| fasten.at(place.get()).manual_words()));
    let groups = fasten.group_words();
    let others: Vec<AnyView> = guard_others(&fasten)
        .into_iter()
        .map(|words| view! { <p class="trouble-line" role="alert">{words}</p> }.into_any())
        .collect();
    // It takes no room the first time.
    let time: Piece = piece(move || {
        let round = bench.progress.with(|progress| progress.step(id).loosened + 1);
        match time_words(round).trim_start_matches(", ") {
            "" => ().into_any(),
            words => view! { <p class="mid">{words.to_owned()}</p> }.into_any(),
        }
    });
    let how = text(move || {
        let answer = answer.get();
        answer.map_or(String::new(), |answer| answer.how().join(" "))
    });
    view! {
        <div class="manual-says">
            <p>
                <span class="quiet">"manual says "</span>
                <span class="figures mid">{manual}</span>
            </p>
            {(!groups.is_empty()).then(|| view! { <p>{groups}</p> }.into_any())}
            {others}
            {time}
            {fasten.stages_wrong().map(|why| view! { <p class="trouble-line" role="alert">{why}</p> }.into_any())}
            <p class="mid pass">{text(move || kept.with_value(|fasten| fasten.at(place.get()).pass_words(pass.get())))}</p>
        </div>
        {no_wrench(id)}
        <Guard step kept />
        {silent_words(&fasten).map(|words| view! { <p class="silent">{words}</p> }.into_any())}
        <p>{how}</p>
        <WrenchRow />
        <OtherUnits answer />
        <ScaleDrawing answer />
        {fasten.self_locking.then(|| view! { <Running step kept /> }.into_any())}
        {lengths::uses(id, &fasten, false)}
        {locked(step, fasten.lock)}
        {fasten.compound.clone().map(|application| view! { <CompoundLine application step=id /> }.into_any())}
        {lengths::lengths(step, &fasten)}
        <p>{fastener_words(&fasten)}</p>
        {fasten.pull_words().into_iter().map(|line| view! { <p>{line}</p> }.into_any()).collect::<Vec<_>>()}
        <button on:click=press(move || on_torque(bench, step))>"on Torque: adapter, bolt, other units"</button>
    }
    .into_any()
}

/// What keeps them from coming loose, once all are at their torque.
pub fn locked(step: StoredValue<Step>, lock: Lock) -> AnyView {
    let nuts = step.with_value(|step| as_fasten(step).map_or(Vec::new(), Fasten::castle_nuts));
    let reached: Vec<AnyView> = nuts
        .into_iter()
        .map(|nut| {
            let name = step.with_value(|step| nut.name(Some(step)));
            read(step, nut, &name, false)
        })
        .collect();
    match lock {
        Lock::None => ().into_any(),
        lock => view! {
            <p class="mid">{format!("Then: {}.", lock.words())}</p>
            <p class="quiet">{lock.how()}</p>
            {reached}
            {say(step, Fact::Locked)}
        }
        .into_any(),
    }
}

/// Carries the step's value to the Torque screen.
fn on_torque(bench: Bench, step: StoredValue<Step>) {
    step.with_value(|step| {
        bench.carry(step);
        Route::TorqueOf(step.id).go();
    });
}

/// The plate and gauge of an angle stage.
fn turn_plate(degrees: f64, off: f64) -> AnyView {
    let unit = if off == 0.0 {
        "°".to_owned()
    } else {
        format!("° ± {}°", shortest(off))
    };
    view! {
        <Plate says="turn a further".to_owned() number=shortest(degrees) unit />
        <AngleGauge degrees=derive(move || degrees) off />
    }
    .into_any()
}

/// What is done to all by one touch, large.
fn deed_plate(deed: Deed) -> AnyView {
    match deed {
        Deed::Oil => big_words("Oil all".to_owned(), "the threads and under the heads"),
        Deed::Dry => big_words("Dry and clean".to_owned(), "all threads, without oil"),
        Deed::Loosen => view! {
            {big_words("Loosen all".to_owned(), "fully, until each turns by hand; then begin anew")}
            <svg class="loosen" viewBox="0 0 120 120" role="img" aria-label="turn anticlockwise, loose">
                <path class="bolt" d="M60 38 79 49 V71 L60 82 41 71 V49 Z" />
                <circle class="hidden" cx="60" cy="60" r="12" />
                <path class="turn" d="M96 74 A39 39 0 1 0 88 88" />
                <path class="tip" d="M76 86 94 96 92 76 Z" />
            </svg>
        }
        .into_any(),
    }
}

/// A plate of words.
fn big_words(large: String, small: &'static str) -> AnyView {
    view! {
        <section class="plate words" aria-live="polite">
            <div class="large">{large}</div>
            <p class="mid">{small}</p>
        </section>
    }
    .into_any()
}

/// The pass to do now; after the last bolt, the last one.
fn pass_at_hand(bench: Bench, step: &Step, fasten: StoredValue<Fasten>) -> usize {
    let next = bench
        .progress
        .with(|progress| next_fastener(step, &progress.step(step.id)));
    next.map_or_else(
        || fasten.with_value(Fasten::pass_count).saturating_sub(1),
        |next| next.pass,
    )
}

/// The place of the fastener to do now; after the last one, the first.
fn place_at_hand(bench: Bench, step: &Step) -> usize {
    let next = bench
        .progress
        .with(|progress| next_fastener(step, &progress.step(step.id)));
    next.map_or(0, |next| next.place)
}

fn bolts(bench: Bench, step: &Step, pass: usize) -> Vec<Bolt> {
    let Some(fasten) = as_fasten(step) else {
        return Vec::new();
    };
    let progress = bench.progress.with(|progress| progress.step(step.id));
    let next = next_fastener(step, &progress);
    let done = progress.tallied(fasten);
    let to_all = fasten.to_all(pass);
    // While a length is read the ring is round the bolt that is read.
    let read = lengths::asked(bench, step.id).map(|(_, at)| at);
    let points = fasten.layout.points().into_iter().enumerate();
    points
        .map(|(place, at)| Bolt {
            at,
            name: fasten.name(place),
            tallied: done.contains(&(pass, if to_all { 0 } else { place })),
            next: match read {
                Some(at) => at == place,
                None => next.is_some_and(|next| to_all || next.place == place),
            },
        })
        .collect()
}

/// The slip guard's line; behind it the pull, and keys that correct the sheet.
#[component]
fn Guard(step: StoredValue<Step>, kept: StoredValue<Fasten>) -> impl IntoView {
    let bench = Bench::here();
    let open = RwSignal::new(false);
    let guard = kept.with_value(guard_fasten);
    let (statement, bolt) = kept.with_value(|fasten| (fasten.torque, KnownBolt::of(fasten)));
    let Some(bolt) = bolt else {
        return ().into_any();
    };
    let correct = move |statement| bench.correct_torque(step.with_value(|step| step.id), statement);
    let tell = move |fastener| bench.say_fastener(step.with_value(|step| step.id), fastener);
    let guard = derive(move || guard.clone());
    view! {
        <GuardLine guard open=move |()| open.update(|o| *o = !*o) correct tell />
        <GuardFold open guard statement bolt />
    }
    .into_any()
}

/// The running torque of a self-locking nut, measured and kept in the record.
#[component]
fn Running(step: StoredValue<Step>, kept: StoredValue<Fasten>) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let (target, apart) = kept.with_value(|fasten| (fasten.torque, fasten.running_apart));
    let measured = move || bench.progress.with(|progress| running(&progress.step(id)));
    // Read before the plan was written in another unit, it is shown in this one.
    let value = text(move || {
        bench.progress.with(|progress| {
            let read = progress.touched(id).and_then(|step| step.reading(&What::Running));
            read.map_or(String::new(), |read| read.shown_in(target.unit.symbol()))
        })
    });
    let said =
        text(move || measured().map_or(String::new(), |running| running_words(&target, running, !apart)));
    let typed = RwSignal::new(String::new());
    let take = move |number: f64| {
        bench
            .measure(id, What::Running, number, target.unit.symbol(), &as_typed(typed))
            .map_err(|refused| refused.to_string())
    };
    view! {
        <NumberField name="self-locking nut: running torque before it seats" unit=target.unit.symbol().to_owned() value take typed />
        <p role="status">{said}</p>
    }
}

fn as_fasten(step: &Step) -> Option<&Fasten> {
    match &step.work {
        Work::Fasten(fasten) => Some(fasten),
        _ => None,
    }
}

/// "4 × M6, 8.8, new ones only; thread oiled".
fn fastener_words(fasten: &Fasten) -> String {
    let new = match fasten.reuse {
        Reuse::New => ", new ones only",
        Reuse::Again => "",
    };
    let again = match fasten.reuse_words() {
        words if words.is_empty() => words,
        words => format!(", {words}"),
    };
    format!(
        "{} × {}{}{new}{again}; thread {}",
        fasten.layout.count(),
        size_words(fasten),
        fasten.what_it_is().behind(),
        fasten.thread_condition().of_thread()
    )
}
