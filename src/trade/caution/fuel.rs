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
        words: &["diesel", "gas oil"],
        flash_celsius: 52.0,
    },
];

/// The fuel of which nothing is known.
pub fn any_fuel() -> &'static Fuel {
    &FUELS[0]
}

/// The fuel that these words name; "fuel" alone may be any. Oil and grease are none, whatever engine or pump
/// they are named after; oil that is mixed into a fuel is burnt with it.
pub fn fuel_named(words: &str) -> Option<&'static Fuel> {
    let oil = names(words, "oil") && !names(words, "fuel oil") && !names(words, "gas oil");
    if oil && !oil_in_fuel(words) || names(words, "grease") {
        return None;
    }
    let by_name = FUELS.iter().find(|fuel| fuel.is_meant(words));
    let unnamed = names(words, "fuel") || two_stroke_mix(words, oil) || oil;
    by_name.or_else(|| unnamed.then(any_fuel))
}

impl Fuel {
    fn is_meant(&self, words: &str) -> bool {
        self.words.iter().any(|word| names(words, word))
    }
}

fn names_fuel(words: &str) -> bool {
    names(words, "fuel") || FUELS.iter().any(|fuel| fuel.is_meant(words))
}

const TWO_STROKE: [&str; 4] = ["two-stroke", "two stroke", "2-stroke", "2 stroke"];

/// "two-stroke mix", "two-stroke 50:1": petrol, though nobody says so; "two-stroke oil" is oil.
fn two_stroke_mix(words: &str, oil: bool) -> bool {
    let two_stroke = TWO_STROKE.iter().any(|word| names(words, word));
    two_stroke && (names(words, "mix") || !oil && in_parts(words))
}

/// Whether words that name oil mean it mixed into a fuel: they say "mix", tell the parts as "50:1", or join
/// the two, as "petrol with oil" does and "petrol engine oil" doesn't.
fn oil_in_fuel(words: &str) -> bool {
    let told = names(words, "mix") || in_parts(words);
    told && apart(words).iter().any(|word| burns(word)) || two_stroke_mix(words, true) || joined(words)
}

/// "50:1" or "1:25".
fn in_parts(words: &str) -> bool {
    let digit = |byte: u8| byte.is_ascii_digit();
    let mut all = words.as_bytes().windows(3);
    all.any(|part| part[1] == b':' && digit(part[0]) && digit(part[2]))
}

/// What puts two fluids together, before a fuel's name or behind it.
const JOINS: [&str; 4] = ["with", "and", "in", "plus"];

/// Burnt in engines, and "gas" also what petrol is called: by these words alone no fuel is named.
const GASES: [&str; 3] = ["gas", "lpg", "cng"];

/// What several engines of a kind are called: nobody stirs those into anything.
const ENGINES: [&str; 4] = ["engines", "motors", "cars", "vehicles"];

/// A fuel's name next to a joining word or sign, and no other fuel on its far side: "petrol and diesel engine
/// oil" is oil for both, and so is what is for "petrol and hybrid engines". Oil itself on the far side is a mix
/// whatever comes behind.
fn joined(words: &str) -> bool {
    let words = apart(words);
    let is = |at: usize, of: &[&str]| {
        let word = words.get(at);
        word.is_some_and(|word| of.iter().any(|one| word.eq_ignore_ascii_case(one)))
    };
    words.windows(3).enumerate().any(|(at, three)| {
        // "hybrid engines", "natural gas engines"; nothing of oil from the first word on.
        let engines = (at + 3..at + 5).find(|at| is(*at, &ENGINES));
        let of_engines = engines.is_some_and(|last| {
            !(at..last).any(|at| is(at, &["for"])) && !(at..words.len()).any(|at| is(at, &["oil"]))
        });
        // "oil 4 % and petrol engines": a figure tells parts.
        let parts = three[0].starts_with(|one: char| one.is_ascii_digit());
        is(at + 1, &JOINS) && burns(&three[0]) != burns(&three[2]) && (parts || !of_engines)
    })
}

/// Its words, a sign that joins two of them being one.
fn apart(words: &str) -> Vec<String> {
    let in_words = words.replace(['/', '+', '&', ':'], " and ");
    let apart = in_words.split(|one: char| !one.is_alphanumeric());
    apart.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

fn burns(word: &str) -> bool {
    names_fuel(word) || GASES.iter().any(|gas| word.eq_ignore_ascii_case(gas))
}

/// Whether that word stands in a text, in capitals or not; the word is of ASCII letters.
pub fn names(text: &str, word: &str) -> bool {
    let mut all = text.as_bytes().windows(word.len().max(1));
    all.any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
}
