//! My wrenches: add, change, order, remove.

use crate::bench::Bench;
use crate::job::answer::percent;
use crate::parts::dynamic::{Piece, from_its_top, piece, press, text, whether};
use crate::parts::number_field::NumberField;
use crate::parts::picker::pick;
use crate::trade::quantity::{TorqueUnit, shortest};
use crate::trade::wrench::{Wrench, WrenchKind};
use leptos::prelude::*;

/// Which wrench is being described.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Describing {
    /// None.
    No,
    /// A new one.
    New,
    /// The one at that place.
    At(usize),
}

/// The list, and the form for one of them.
#[component]
pub fn MyWrenches() -> impl IntoView {
    let bench = Bench::here();
    let describing = RwSignal::new(Describing::No);
    let draft = RwSignal::new(fresh());
    let describe = move |what: Describing, wrench: Wrench| {
        draft.set(wrench);
        describing.set(what);
    };
    // While one is described the others keep their places, or the form would end up on another.
    let still = move |never: bool| whether(move || never || describing.get() != Describing::No);
    let rows: Piece = piece(move || {
        let (wrenches, in_hand) = bench.settings.with(|s| (s.wrenches.clone(), s.in_hand));
        let row = move |(at, wrench): (usize, Wrench)| {
            let held = at == in_hand;
            let (name, words, kept) = (wrench.name.clone(), wrench_words(&wrench), wrench);
            let edit = move |_| describe(Describing::At(at), kept.clone());
            view! {
                <div class="mine">
                    <button
                        class="row-key"
                        role="radio"
                        aria-checked=held.to_string()
                        on:click=press(move || bench.take_wrench(at))
                    >
                        <span>{name.clone()}</span>
                        <span class="quiet figures">{words}</span>
                    </button>
                    <div class="row-tools">
                        <button aria-label=format!("change {name}") on:click=edit>"change"</button>
                        <button aria-label=format!("move {name} up") disabled=still(at == 0) on:click=press(move || bench.move_wrench_up(at))>"up"</button>
                        <button aria-label=format!("remove {name}") disabled=still(false) on:click=press(move || bench.remove_wrench(at))>"remove"</button>
                    </div>
                </div>
            }.into_any()
        };
        wrenches
            .into_iter()
            .enumerate()
            .map(row)
            .collect::<Vec<_>>()
            .into_any()
    });
    let form: Piece = piece(move || {
        match describing.get() {
        Describing::No => {
            view! { <button on:click=press(move || describe(Describing::New, fresh()))>"add a wrench"</button> }
                .into_any()
        }
        what => view! { <Form what describing draft /> }.into_any(),
    }
    });
    view! {
        <fieldset>
            <legend>"My wrenches"</legend>
            <p class="quiet">"The one in the hand is marked; the first is taken when two suit alike."</p>
            <div class="my-wrenches" role="radiogroup" aria-label="wrench in the hand">{rows}</div>
            {form}
        </fieldset>
    }
}

/// A wrench to begin a description with.
fn fresh() -> Wrench {
    Wrench {
        name: String::new(),
        unit: TorqueUnit::NewtonMetre,
        min: 5.0,
        max: 25.0,
        division: 0.5,
        kind: WrenchKind::Dial,
        accuracy: 0.04,
    }
}

/// "20–120 in·lb by 1, ±4 %".
fn wrench_words(wrench: &Wrench) -> String {
    let range = if wrench.min == wrench.max {
        shortest(wrench.min)
    } else {
        format!("{}–{}", shortest(wrench.min), shortest(wrench.max))
    };
    let (unit, by) = (wrench.unit.symbol(), shortest(wrench.division));
    format!("{range} {unit} by {by}, ±{} %", percent(wrench.accuracy))
}

const KINDS: [&str; 4] = [
    "lines and a thimble",
    "pointer on a dial",
    "digits",
    "one fixed value, or no scale",
];

fn kind_place(kind: WrenchKind) -> usize {
    match kind {
        WrenchKind::Thimble { .. } => 0,
        WrenchKind::Dial => 1,
        WrenchKind::Digital => 2,
        WrenchKind::Preset => 3,
    }
}

/// A kind by its place; a thimble begins with ten divisions to a line.
fn kind_at(place: usize, division: f64) -> WrenchKind {
    match place {
        0 => WrenchKind::Thimble {
            main_division: division * 10.0,
        },
        1 => WrenchKind::Dial,
        2 => WrenchKind::Digital,
        _ => WrenchKind::Preset,
    }
}

#[component]
fn Form(what: Describing, describing: RwSignal<Describing>, draft: RwSignal<Wrench>) -> impl IntoView {
    let bench = Bench::here();
    let trouble = RwSignal::new(String::new());
    let save = move |_| {
        let mut wrench = draft.get_untracked();
        wrench.name = match wrench.name.trim() {
            "" => "Wrench".to_owned(),
            name => name.to_owned(),
        };
        let kept = match what {
            Describing::At(at) => bench.change_wrench(at, wrench),
            _ => bench.add_wrench(wrench),
        };
        match kept {
            Ok(()) => describing.set(Describing::No),
            Err(error) => trouble.set(error.to_string()),
        }
    };
    let units = TorqueUnit::ALL
        .iter()
        .map(|unit| unit.symbol().to_owned())
        .collect();
    let unit_place = move || {
        TorqueUnit::ALL
            .iter()
            .position(|unit| *unit == draft.with(|d| d.unit))
    };
    let take_unit = move |at: usize| {
        if let Some(unit) = TorqueUnit::ALL.get(at) {
            draft.update(|d| d.unit = *unit);
        }
    };
    let main: Piece = piece(move || match draft.with(|d| d.kind) {
        WrenchKind::Thimble { .. } => number(draft, "from line to line", main_division, |d, v| {
            d.kind = WrenchKind::Thimble { main_division: v };
        }),
        _ => ().into_any(),
    });
    view! {
        <div class="wrench-form" node_ref=from_its_top()>
            <label>
                "its name"
                <input
                    type="text"
                    autocomplete="off"
                    maxlength="24"
                    prop:value=text(move || draft.with(|d| d.name.clone()))
                    on:input=move |event| draft.update(|d| d.name = event_target_value(&event))
                />
            </label>
            {pick("unit of its scale", units, unit_place, take_unit)}
            {pick(
                "it shows its torque by",
                KINDS.map(str::to_owned).to_vec(),
                move || Some(draft.with(|d| kind_place(d.kind))),
                move |at| draft.update(|d| d.kind = kind_at(at, d.division)),
            )}
            <div class="two">
                {number(draft, "lowest mark", |d| d.min, |d, v| d.min = v)}
                {number(draft, "highest mark", |d| d.max, take_max)}
                {number(draft, "smallest division", |d| d.division, |d, v| d.division = v)}
                {main}
                {percentage(draft)}
            </div>
            <p class="trouble-line" role="alert">{trouble}</p>
            <div class="work-keys">
                <button class="work-key first" on:click=save>
                    {if what == Describing::New { "Add it" } else { "Keep it" }}
                </button>
                <button class="work-key" on:click=press(move || describing.set(Describing::No))>"Cancel"</button>
            </div>
        </div>
    }
}

fn main_division(wrench: &Wrench) -> f64 {
    match wrench.kind {
        WrenchKind::Thimble { main_division } => main_division,
        _ => wrench.division,
    }
}

/// The highest mark brings the accuracy usual for its size; the certificate's own can be typed after.
fn take_max(wrench: &mut Wrench, max: f64) {
    wrench.max = max;
    wrench.accuracy = Wrench::typical_accuracy(wrench.unit.torque(max));
}

fn number(
    draft: RwSignal<Wrench>,
    name: &'static str,
    get: fn(&Wrench) -> f64,
    set: fn(&mut Wrench, f64),
) -> AnyView {
    let take = move |value: f64| {
        if value > 0.0 {
            draft.update(|draft| set(draft, value));
            Ok(())
        } else {
            Err("It must be above zero.".to_owned())
        }
    };
    let unit = text(move || draft.with(|d| d.unit.symbol().to_owned()));
    view! { <NumberField name unit value=text(move || draft.with(|d| shortest(get(d)))) take /> }.into_any()
}

fn percentage(draft: RwSignal<Wrench>) -> AnyView {
    let take = move |value: f64| {
        if value > 0.0 && value <= 20.0 {
            draft.update(|draft| draft.accuracy = value / 100.0);
            Ok(())
        } else {
            Err("The accuracy is between 0 and 20 %; most are 4 or 6 %.".to_owned())
        }
    };
    let value = text(move || draft.with(|d| percent(d.accuracy)));
    view! { <NumberField name="accuracy, either way" unit="%".to_owned() value take /> }.into_any()
}
