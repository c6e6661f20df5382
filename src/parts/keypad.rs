//! Our own keypad: big keys for one knuckle, and the three units that matter beside the digits.

use super::dynamic::text;
use crate::trade::quantity::TorqueUnit;
use leptos::prelude::*;

/// What a key does to the text typed so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// Adds a character.
    Type(char),
    /// Takes the last one off.
    Back,
    /// Empties it.
    Clear,
}

/// The longest entry a keypad takes: "9.5–12.5" and a tolerance fit well within.
const LONGEST: usize = 16;

impl Key {
    /// The text after this key.
    pub fn press(self, typed: &str) -> String {
        match self {
            Self::Type(c) if typed.chars().count() < LONGEST => format!("{typed}{c}"),
            Self::Type(_) => typed.to_owned(),
            Self::Back => typed
                .chars()
                .take(typed.chars().count().saturating_sub(1))
                .collect(),
            Self::Clear => String::new(),
        }
    }
}

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
    let rows = [['7', '8', '9'], ['4', '5', '6'], ['1', '2', '3']];
    let digits = |keys: [char; 3]| keys.map(|c| view! { <DigitKey key=Key::Type(c) typed /> });
    let row = move |at: usize| view! { {digits(rows[at])} <UnitKey at unit other /> };
    view! {
        <div class="keypad torque-keypad" role="group" aria-label="Keypad">
            {[0, 1, 2].map(row)}
            {['.', '0'].map(|c| view! { <DigitKey key=Key::Type(c) typed /> })}
            <DigitKey key=Key::Back typed />
            <button
                class="word"
                aria-pressed=text(move || other.get().to_string())
                on:click=move |_| other.update(|o| *o = !*o)
            >
                "other"
            </button>
            {['–', '±'].map(|c| view! { <DigitKey key=Key::Type(c) typed /> })}
            <button class="word" on:click=move |_| words.run(())>
                "type it"
            </button>
            <button
                class="word"
                on:click=move |_| {
                    clearing.run(());
                    typed.set(String::new());
                }
            >
                "clear"
            </button>
        </div>
    }
}

/// A torque unit's key: the main three, or the rarer three while `other` is on.
#[component]
fn UnitKey(at: usize, unit: RwSignal<TorqueUnit>, other: RwSignal<bool>) -> impl IntoView {
    let this = move || {
        if other.get() {
            OTHER_UNITS[at]
        } else {
            MAIN_UNITS[at]
        }
    };
    view! {
        <button
            class="unit"
            aria-pressed=text(move || (unit.get() == this()).to_string())
            aria-label=text(move || this().words().to_owned())
            on:click=move |_| unit.set(untrack(this))
        >
            {text(move || this().symbol().to_owned())}
        </button>
    }
}

/// A keypad for a plain number.
#[component]
pub fn NumberKeypad(
    typed: RwSignal<String>,
    /// The key that takes the number, in the last column.
    #[prop(into)]
    take: Callback<()>,
    /// Whether a minus sign makes sense.
    #[prop(optional)]
    signed: bool,
) -> impl IntoView {
    let digit = move |c: char| view! { <DigitKey key=Key::Type(c) typed /> };
    view! {
        <div class="keypad" role="group" aria-label="Keypad">
            {digit('7')}
            {digit('8')}
            {digit('9')}
            <DigitKey key=Key::Back typed />
            {digit('4')}
            {digit('5')}
            {digit('6')}
            <DigitKey key=Key::Clear typed />
            {digit('1')}
            {digit('2')}
            {digit('3')}
            {if signed { view! { <DigitKey key=Key::Type('−') typed /> }.into_any() } else { view! { <span></span> }.into_any() }}
            {digit('.')}
            {digit('0')}
            <button class="word take" style:grid-column="span 2" on:click=move |_| take.run(())>
                "take it"
            </button>
        </div>
    }
}

#[component]
fn DigitKey(key: Key, typed: RwSignal<String>) -> impl IntoView {
    let (face, name, class) = match key {
        Key::Type('.') => (".".to_owned(), "point".to_owned(), "digit"),
        Key::Type('−') => ("−".to_owned(), "minus".to_owned(), "digit"),
        Key::Type('–') => ("–".to_owned(), "to".to_owned(), "digit"),
        Key::Type('±') => ("±".to_owned(), "plus or minus".to_owned(), "digit"),
        Key::Type(c) => (c.to_string(), c.to_string(), "digit"),
        Key::Back => ("←".to_owned(), "back".to_owned(), "digit"),
        Key::Clear => ("clear".to_owned(), "clear".to_owned(), "word"),
    };
    view! {
        <button class=class aria-label=name on:click=move |_| typed.update(|text| *text = key.press(text))>
            {face}
        </button>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_change_the_text_and_never_more_than_it() {
        assert_eq!(Key::Type('7').press("1"), "17");
        assert_eq!(Key::Back.press("1–"), "1");
        assert_eq!(Key::Back.press(""), "");
        assert_eq!(Key::Clear.press("7.2"), "");
        assert_eq!(Key::Type('1').press("1234567890123456"), "1234567890123456");
    }
}
