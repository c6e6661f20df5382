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
        words: &["petrol", "gasoline", "petroil"],
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
        words: &["diesel", "gasoil"],
        flash_celsius: 52.0,
    },
];

/// The fuel of which nothing is known.
pub fn any_fuel() -> &'static Fuel {
    &FUELS[0]
}

/// The fuel that these words name; "fuel" alone may be any. Where a fuel and an oil are named it is a mix, which is
/// burnt, unless every fuel stands there only for the engines or pumps the oil is for: wrong, it warns once too
/// often.
pub fn fuel_named(words: &str) -> Option<&'static Fuel> {
    let words = Words::of(words);
    let named: Vec<usize> = (0..words.0.len())
        .filter(|at| words.fuel(*at) || words.petrol_by_gas(*at))
        .collect();
    let only_for_engines = words.oily() && named.iter().all(|at| words.kind_of_engine(*at));
    let unnamed = words.two_stroke_mix();
    if !unnamed && (named.is_empty() || only_for_engines) {
        return None;
    }
    // What a two-stroke burns is petrol whatever it is called: "gas oil", of diesel's kin, is not for it.
    let gasoil = words.any(&["gasoil"]) && (words.two_stroke() || words.thinned());
    if unnamed || gasoil || named.iter().any(|at| words.is(*at, &["gas"])) {
        return Some(any_fuel());
    }
    let by_name = FUELS
        .iter()
        .find(|fuel| words.0.iter().any(|word| fuel.is_in(word)));
    by_name.or_else(|| Some(any_fuel()))
}

impl Fuel {
    fn is_in(&self, word: &str) -> bool {
        self.words.iter().any(|name| word.contains(name))
    }
}

const OILS: [&str; 4] = ["oil", "oils", "grease", "greases"];

/// What parts or joins two things of a list.
const LISTED: [&str; 3] = [",", "and", "or"];

/// Puts two fluids together, where "and" may list engines.
const ADDED: [&str; 3] = ["with", "plus", ":"];

/// Kinds of engines that no fuel's name tells.
const KINDS: [&str; 10] = [
    "gas", "lpg", "cng", "natural", "dual", "hybrid", "electric", "turbo", "steam", "wankel",
];

/// How an engine works: a kind too, with its count before it, but after a comma or an "and" it begins the oil:
/// "petrol, two-stroke engine oil" is a mix, and so is "petrol 2 % engine oil".
const STROKES: [&str; 2] = ["stroke", "cycle"];

/// What an oil or a grease is for.
const ENGINES: [&str; 14] = [
    "engine",
    "engines",
    "motor",
    "motors",
    "car",
    "cars",
    "vehicle",
    "vehicles",
    "turbine",
    "turbines",
    "pump",
    "pumps",
    "injector",
    "injectors",
];

/// What a grease withstands.
const PROOF: [&str; 2] = ["resistant", "proof"];

/// Gas that is no petrol, by the word before it, and what works by gas, by the word behind.
const OTHER_GAS: [&str; 7] = [
    "exhaust",
    "nitrogen",
    "natural",
    "inert",
    "shielding",
    "lpg",
    "for",
];
const BY_GAS: [&str; 8] = [
    "shock", "shocks", "strut", "struts", "spring", "springs", "valve", "valves",
];

/// How the words begin that say that one fluid is in the other.
const THINNED: [&str; 6] = ["mix", "premix", "dilut", "thinn", "dissolv", "stir"];

/// Mixed too, but nothing that burns.
const WATERY: [&str; 5] = ["coolant", "antifreeze", "water", "cleaner", "soap"];

/// Fewer parts to one are no two-stroke's mix: a share of a litre, a cleaner.
const LEAST_PARTS: u32 = 8;

/// A fluid's name in small letters, word by word; what joins two words is "and", what parts them a comma, a colon
/// is a word of its own, and "gas oil" is one.
struct Words(Vec<String>);

impl Words {
    fn of(text: &str) -> Self {
        let mut apart = format!("{} ", text.to_ascii_lowercase());
        for sign in [" - ", ". ", "(", ")", ";", "–", "—", "|", ","] {
            apart = apart.replace(sign, " , ");
        }
        for sign in ["/", "+", "&"] {
            apart = apart.replace(sign, " and ");
        }
        let apart = apart
            .replace(':', " : ")
            .replace("gas oil", "gasoil")
            .replace("gas-oil", "gasoil");
        let words = apart.split(|one: char| !(one.is_alphanumeric() || one == ',' || one == ':'));
        Self(words.filter(|word| !word.is_empty()).map(str::to_owned).collect())
    }

    fn word(&self, at: usize) -> Option<&str> {
        self.0.get(at).map(String::as_str)
    }

    fn is(&self, at: usize, of: &[&str]) -> bool {
        self.word(at).is_some_and(|word| of.contains(&word))
    }

    fn before(&self, at: usize, of: &[&str]) -> bool {
        at.checked_sub(1).is_some_and(|before| self.is(before, of))
    }

    fn any(&self, of: &[&str]) -> bool {
        (0..self.0.len()).any(|at| self.is(at, of))
    }

    fn fuel(&self, at: usize) -> bool {
        let named = |word: &str| word.contains("fuel") || FUELS.iter().any(|fuel| fuel.is_in(word));
        self.word(at).is_some_and(named)
    }

    /// Something that lubricates; "fuel oil" is burnt.
    fn oily(&self) -> bool {
        (0..self.0.len()).any(|at| self.is(at, &OILS) && !self.before(at, &["fuel"]))
    }

    /// What petrol is called too, where an oil or a two-stroke's parts stand beside it.
    fn petrol_by_gas(&self, at: usize) -> bool {
        let other = self.before(at, &OTHER_GAS) || self.is(at + 1, &BY_GAS);
        self.is(at, &["gas"]) && !other && (self.oily() || self.lean() || self.two_stroke())
    }

    fn two_stroke(&self) -> bool {
        let told = |at: usize| self.is(at, &["two", "2"]) && self.is(at + 1, &STROKES);
        self.any(&["2t", "2stroke", "twostroke"]) || (0..self.0.len()).any(told)
    }

    /// Petrol, though nobody says so: "two-stroke mix", "2-stroke 50:1", "premix", "mix 1:25"; "two-stroke oil" is
    /// oil.
    fn two_stroke_mix(&self) -> bool {
        let premix = self.0.iter().any(|word| word.starts_with("premix"));
        let told = match self.two_stroke() {
            true => self.mixed() || self.in_parts() && !self.oily(),
            false => premix || self.mixed() && self.lean() && !self.oily(),
        };
        told && !self.any(&WATERY)
    }

    fn mixed(&self) -> bool {
        let told = |word: &String| THINNED.iter().any(|begin| word.starts_with(begin));
        self.0.iter().any(told)
    }

    /// "50:1", "1 to 25", "50/1", "50 parts".
    fn in_parts(&self) -> bool {
        let told = |at: usize| self.is(at + 1, &[":"]) && self.parts(at).is_some();
        let counted = |at: usize| self.number(at).is_some() && self.is(at + 1, &["part", "parts"]);
        (0..self.0.len()).any(|at| told(at) || counted(at)) || self.lean()
    }

    /// Many parts to one, as two-strokes burn it.
    fn lean(&self) -> bool {
        let lean = |(one, other): (u32, u32)| one.min(other) == 1 && one.max(other) >= LEAST_PARTS;
        (0..self.0.len()).any(|at| self.parts(at).is_some_and(lean))
    }

    fn number(&self, at: usize) -> Option<u32> {
        self.word(at)?.parse().ok()
    }

    /// Two numbers with what parts or joins them between.
    fn parts(&self, at: usize) -> Option<(u32, u32)> {
        let both = self.number(at).zip(self.number(at + 2));
        both.filter(|_| self.is(at + 1, &[":", "to", "and"]))
    }

    fn thinned(&self) -> bool {
        self.mixed() || self.in_parts()
    }

    /// Whether the fuel there only tells what an oil is for or withstands: "petrol and diesel engine oil", "fuel
    /// pump grease"; not so where it is joined to something else, as in "oil and petrol engines", or where a mix is
    /// told.
    fn kind_of_engine(&self, at: usize) -> bool {
        let kind = |at: usize| self.fuel(at) || self.is(at, &KINDS);
        let mut end = at + 1;
        loop {
            let counted = self.is(end, &["two", "four", "2", "4"]) && self.is(end + 1, &STROKES);
            if counted || self.is(end, &LISTED) && kind(end + 1) {
                end += 2;
            } else if kind(end) {
                end += 1;
            } else {
                break;
            }
        }
        let listed = |before: usize| kind(before) || self.is(before, &STROKES) || self.is(before, &ENGINES);
        let other_before = !at.checked_sub(2).is_some_and(listed);
        let joined = self.before(at, &ADDED) || self.before(at, &["and", "or"]) && other_before;
        let for_engines = self.is(end, &ENGINES) && !joined && !self.thinned();
        for_engines || self.is(end, &PROOF)
    }
}

/// Whether that word stands in a text, in capitals or not; the word is of ASCII letters.
pub fn names(text: &str, word: &str) -> bool {
    let mut all = text.as_bytes().windows(word.len().max(1));
    all.any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
}
