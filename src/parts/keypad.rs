//! Our own keypad: big keys for one knuckle, and the three units that matter beside the digits.

use super::dynamic::{Press, each, press, state, text};
use super::typed::Key;
use crate::trade::quantity::{TorqueUnit, mark};
use leptos::prelude::*;

const MAIN_UNITS: [TorqueUnit; 3] = [
    TorqueUnit::NewtonMetre,
    TorqueUnit::PoundFoot,
    TorqueUnit::PoundInch,
];
const OTHER_UNITS: [TorqueUnit; 3] = [
    TorqueUnit::KilogramMetre,
    TorqueUnit::KilogramCentimetre,
    TorqueUnit::OunceInch,
];

/// Digits, point, back, a column of torque units with "other" for the rarer three, and the marks of a
/// range and a tolerance.
#[component]
pub fn TorqueKeypad(
    typed: RwSignal<String>,
    unit: RwSignal<TorqueUnit>,
    /// Told before the entry is emptied.
    #[prop(into)]
    clearing: Callback<()>,
    /// Asks for the phone's own keyboard.
    #[prop(into)]
    words: Callback<()>,
) -> impl IntoView {
    let other = RwSignal::new(OTHER_UNITS.contains(&unit.get_untracked()));
    let units = move || if other.get() { OTHER_UNITS } else { MAIN_UNITS };
    let unit_key = move |at: usize| {
        let this = move || units()[at];
        Face {
            class: "unit",
            key: None,
            face: text(move || this().symbol().to_owned()),
            // What is seen is part of the name: it can be called by voice as it is read.
            name: text(move || format!("{}, {}", this().symbol(), this().words())),
            pressed: Some(state(move || unit.get() == this())),
            press: press(move || unit.set(untrack(this))),
        }
    };
    let other_key = Face {
        class: "word",
        key: None,
        face: "other".into(),
        name: "other".into(),
        pressed: Some(state(move || other.get())),
        press: press(move || other.update(|other| *other = !*other)),
    };
    let rows = [
        (['7', '8', '9'], unit_key(0)),
        (['4', '5', '6'], unit_key(1)),
        (['1', '2', '3'], unit_key(2)),
        (['.', '0', '←'], other_key),
    ];
    let words_key = wordy("type it", press(move || words.run(())));
    let clear_key = wordy(
        "clear",
        press(move || {
            clearing.run(());
            typed.set(String::new());
        }),
    );
    let keys = rows
        .into_iter()
        .flat_map(|(keys, last)| keys.map(|c| type_key(c, typed)).into_iter().chain([last]))
        .chain(['–', '±'].map(|c| type_key(c, typed)))
        .chain([words_key, clear_key]);
    pad("keypad torque-keypad", keys)
}

/// A key with a word on it.
fn wordy(word: &'static str, press: Press) -> Face {
    Face {
        class: "word",
        key: None,
        face: word.into(),
        name: word.into(),
        pressed: None,
        press,
    }
}

/// A keypad for a plain number.
#[component]
pub fn NumberKeypad(
    typed: RwSignal<String>,
    /// The key that takes the number.
    #[prop(into)]
    take: Callback<()>,
    /// Whether a minus sign makes sense.
    #[prop(optional)]
    signed: bool,
) -> impl IntoView {
    // The digits, the point and “back” where Torque has them: one hand's habit for both.
    let (class, upper) = match signed {
        true => ("keypad number-keypad signed", "789×456−123"),
        false => ("keypad number-keypad", "789×456123"),
    };
    let take_key = Face {
        class: "word take",
        key: None,
        face: "use".into(),
        name: "use".into(),
        pressed: None,
        press: press(move || take.run(())),
    };
    let keys = |faces: &'static str| faces.chars().map(|c| type_key(c, typed));
    pad(class, keys(upper).chain([take_key]).chain(keys(".0←")))
}

/// One key's look and effect.
struct Face {
    class: &'static str,
    /// The character it types, for a real keyboard.
    key: Option<String>,
    face: Signal<String>,
    name: Signal<String>,
    pressed: Option<Signal<String>>,
    press: Press,
}

fn pad(class: &'static str, keys: impl IntoIterator<Item = Face>) -> AnyView {
    let keys = each(keys, |key| {
        view! {
            <button class=key.class data-key=key.key aria-label=key.name aria-pressed=key.pressed on:click=key.press>
                {key.face}
            </button>
        }
        .into_any()
    });
    view! { <div class=class role="group" aria-label="Keypad">{keys}</div> }.into_any()
}

fn type_key(face: char, typed: RwSignal<String>) -> Face {
    let (key, name, class) = match face {
        '←' => (Key::Back, "back".to_owned(), "digit back"),
        '×' => (Key::Clear, "clear".to_owned(), "word clear"),
        // Typed is the point, whatever is shown.
        '.' => (Key::Type('.'), mark().name().to_owned(), "digit"),
        '−' => (Key::Type('−'), "minus".to_owned(), "digit sign"),
        '–' => (Key::Type('–'), "to".to_owned(), "digit"),
        '±' => (Key::Type('±'), "plus or minus".to_owned(), "digit"),
        c => (Key::Type(c), c.to_string(), "digit"),
    };
    let shown = match face {
        '×' => "clear".to_owned(),
        '.' => mark().sign().to_string(),
        other => other.to_string(),
    };
    Face {
        class,
        key: Some(face.to_string()),
        face: shown.into(),
        name: name.into(),
        pressed: None,
        press: press(move || typed.update(|text| *text = key.press(text))),
    }
}
