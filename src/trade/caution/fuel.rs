//! Fuels by the words that name them, and from what temperature on their vapour lights.

/// A fuel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fuel {
    /// What it is called here.
    pub name: &'static str,
    /// Any of these in a fluid's name means it.
    words: &'static [&'static str],
    /// From here on enough of it is in the air to light, °C: the lowest flash point.
    pub flash_celsius: f64,
}

/// The one that lights most easily first: it is taken where nobody says which, and named beside another it
/// counts. From a fire-safety supplier's table of flash points: −45, 52, 55, 100 and 125 °F, the diesel 2-D.
pub static FUELS: [Fuel; 5] = [
    Fuel {
        name: "petrol",
        words: &["petrol", "gasoline"],
        flash_celsius: -43.0,
    },
    Fuel {
        name: "methanol",
        words: &["methanol"],
        flash_celsius: 11.0,
    },
    Fuel {
        name: "ethanol",
        words: &["ethanol"],
        flash_celsius: 13.0,
    },
    Fuel {
        name: "kerosene",
        words: &["kerosene", "paraffin"],
        flash_celsius: 38.0,
    },
    Fuel {
        name: "diesel",
        words: &["diesel"],
        flash_celsius: 52.0,
    },
];

/// The fuel of which nothing is known.
pub fn any_fuel() -> &'static Fuel {
    &FUELS[0]
}

/// The fuel that these words name; "fuel" alone may be any. Oil and grease are none, whatever engine or pump
/// they are named after.
pub fn fuel_named(words: &str) -> Option<&'static Fuel> {
    if names(words, "oil") && !names(words, "fuel oil") || names(words, "grease") {
        return None;
    }
    let meant = |fuel: &&Fuel| fuel.words.iter().any(|word| names(words, word));
    FUELS
        .iter()
        .find(meant)
        .or_else(|| names(words, "fuel").then(any_fuel))
}

/// Whether that word stands in a text, in capitals or not; the word is of ASCII letters.
pub fn names(text: &str, word: &str) -> bool {
    let mut all = text.as_bytes().windows(word.len().max(1));
    all.any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
}
