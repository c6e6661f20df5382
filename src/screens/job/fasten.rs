//! A fasten step: the number for the wrench in the hand, the bolts, what goes on the thread.

use super::bond::CompoundLine;
use super::lengths;
use super::said::{read, say};
use crate::bench::{Bench, ReadWith};
use crate::job::guarding::{KnownBolt, guard_fasten, guard_others, silent_words};
use crate::job::journal::time_words;
use crate::job::kinds::fasten::Lock;
use crate::job::kinds::fasten::fastening::{PassAnswer, running, running_words};
use crate::job::kinds::fasten::size_words;
use crate::job::kinds::{Fasten, Reuse, Work};
use crate::job::progress::next_fastener;
use crate::job::reading::{Fact, What};
use crate::job::sheet::Step;
use crate::parts::angle_gauge::AngleGauge;
use crate::parts::bolts::{Bolt, Bolts};
use crate::parts::dynamic::{Piece, piece, press, text};
use crate::parts::guard::{GuardFold, GuardLine};
use crate::parts::number_field::NumberField;
use crate::parts::plate::Plate;
use crate::parts::torque_plate::{AnswerPlate, OtherUnits, ScaleDrawing, WrenchRow};
use crate::screens::Route;
use crate::trade::guard::Verdict;
use crate::trade::quantity::significant;
use crate::trade::stages::Deed;
use leptos::prelude::*;

/// The work of a fasten step.
#[component]
pub fn FastenWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some(fasten) = step.with_value(|step| as_fasten(step).cloned()) else {
        return ().into_any();
    };
    let id = step.with_value(|step| step.id);
    let kept = StoredValue::new(fasten.clone());
    let pass = Memo::new(move |_| step.with_value(|step| pass_at_hand(bench, step, kept)));
    let place = Memo::new(move |_| step.with_value(|step| place_at_hand(bench, step)));
    let asked = Memo::new(move |_| step.with_value(|step| bench.pass_answer(step, pass.get(), place.get())));
    let answer = Signal::derive(move || match asked.get() {
        Some(PassAnswer::Torque(answer)) => Some(*answer),
        _ => None,
    });
    let bolts = Signal::derive(move || step.with_value(|step| bolts(bench, step, pass.get())));
    let plate: Piece = piece(move || match asked.get() {
        Some(PassAnswer::Angle { degrees, off }) => turn_plate(degrees, off),
        Some(PassAnswer::Hand) => big_words("Snug by hand".to_owned(), "until the faces meet; no more"),
        Some(PassAnswer::All(deed)) => deed_plate(deed),
        Some(PassAnswer::Torque(_)) | None => {
            view! { <AnswerPlate answer trouble=None empty=false /> }.into_any()
        }
    });
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
    // A doubtful torque is said before the bolts; a plausible one leaves the next bolt in sight.
    let doubtful = guard_fasten(&fasten).is_some_and(|guard| guard.verdict != Verdict::Plausible);
    let guard = move |here: bool| here.then(|| view! { <Guard step kept /> }.into_any());
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
        {plate}
        {guard(doubtful)}
        {silent_words(&fasten).map(|words| view! { <p class="silent">{words}</p> }.into_any())}
        {fasten.self_locking.then(|| view! { <Running step kept /> }.into_any())}
        {lengths::uses(id, &fasten)}
        {lengths::next_length(step)}
        <Bolts bolts />
        {locked(step, fasten.lock)}
        {guard(!doubtful)}
        {fasten.compound.clone().map(|application| view! { <CompoundLine application step=id /> }.into_any())}
        {lengths::lengths(step, &fasten)}
        <p>{fastener_words(&fasten)}</p>
        {fasten.pull_words().into_iter().map(|line| view! { <p>{line}</p> }.into_any()).collect::<Vec<_>>()}
        <OtherUnits answer />
        <ScaleDrawing answer />
        <WrenchRow />
        <button on:click=press(move || on_torque(bench, step))>"on Torque: adapter, bolt, other units"</button>
    }
    .into_any()
}

/// What keeps them from coming loose, once all are at their torque.
fn locked(step: StoredValue<Step>, lock: Lock) -> AnyView {
    let nuts = step.with_value(|step| as_fasten(step).map_or(Vec::new(), Fasten::castle_nuts));
    let reached: Vec<AnyView> = nuts
        .into_iter()
        .map(|nut| {
            let name = step.with_value(|step| nut.name(Some(step)));
            read(step, nut, &name)
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
        format!("° ± {off}°")
    };
    view! {
        <Plate says="turn a further".to_owned() number=degrees.to_string() unit />
        <AngleGauge degrees=Signal::derive(move || degrees) off />
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
    let order = fasten.places(pass);
    let to_all = fasten.to_all(pass);
    let turn = |place| {
        order
            .iter()
            .position(|at| *at == place)
            .map_or(place + 1, |at| at + 1)
    };
    // While a length is read the numbers are the record's, and the ring is round the bolt that is read.
    let read = lengths::asked(bench, step.id).map(|(_, at)| at);
    let points = fasten.layout.points().into_iter().enumerate();
    points
        .map(|(place, at)| Bolt {
            at,
            turn: read.map_or_else(|| turn(place), |_| place + 1),
            name: (fasten.labels.len() == fasten.layout.count()).then(|| fasten.name(place)),
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
    let guard = Signal::derive(move || guard.clone());
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
        let running = measured();
        running.map_or(String::new(), |running| {
            significant(target.unit.value_of(running), 4)
        })
    });
    let said =
        text(move || measured().map_or(String::new(), |running| running_words(&target, running, !apart)));
    let take = move |number: f64| {
        bench
            .measure(
                id,
                What::Running,
                number,
                target.unit.symbol(),
                &ReadWith::default(),
            )
            .map_err(|refused| refused.to_string())
    };
    view! {
        <NumberField name="self-locking nut: running torque before it seats" unit=target.unit.symbol().to_owned() value take />
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
        fasten.condition.words()
    )
}
