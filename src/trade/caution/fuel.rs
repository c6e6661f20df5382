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

/// The fuel that these words name; "fuel" alone may be any. Where a fuel and an oil are named it is a mix, which is
/// burnt, unless every fuel stands there only for the engines or pumps the oil is for: wrong, it warns once too
/// often.
pub fn fuel_named(words: &str) -> Option<&'static Fuel> {
    let words = Words::of(words);
    let burnt: Vec<usize> = (0..words.0.len()).filter(|at| words.burns(*at)).collect();
    let two_stroke = words.two_stroke() && (words.mixed() || !words.oily() && words.in_parts());
    let unnamed = two_stroke || words.any_begins("premix") && words.lean();
    let only_kinds = words.oily() && burnt.iter().all(|at| words.kind_of_engine(*at));
    if !unnamed && (burnt.is_empty() || only_kinds) {
        return None;
    }
    // Without a mix "gas oil" is of diesel's kin.
    let gas_oil = burnt.iter().all(|at| words.gas_oil(*at)) && !words.thinned();
    let gas = burnt.iter().any(|at| words.is(*at, &["gas", "gasoil"]));
    let by_name = FUELS.iter().find(|fuel| match fuel.name {
        "petrol" => words.names(fuel) || unnamed || gas && !gas_oil,
        "diesel" => words.names(fuel) || gas_oil,
        _ => words.names(fuel),
    });
    by_name.or_else(|| Some(any_fuel()))
}

/// A fluid's name in small letters, word by word; signs that join two words are "and", a comma and a colon are
/// words of their own.
struct Words(Vec<String>);

const OILS: [&str; 4] = ["oil", "oils", "grease", "greases"];

/// What stands between two things of a list.
const LISTED: [&str; 3] = [",", "and", "or"];

/// Puts two fluids together, where "and" may list engines.
const ADDED: [&str; 3] = ["with", "plus", ":"];

/// Kinds of engines that no fuel's name tells.
const KINDS: [&str; 10] = [
    "gas", "lpg", "cng", "natural", "dual", "hybrid", "electric", "turbo", "steam", "wankel",
];

/// Kinds that a comma or an "and" before them parts from the fuel: "petrol, two-stroke engine oil" is a mix.
const STROKES: [&str; 6] = ["two", "four", "2", "4", "stroke", "cycle"];

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

/// How the words begin that say that one fluid is in the other.
const THINNED: [&str; 6] = ["mix", "premix", "dilut", "thinn", "dissolv", "stir"];

impl Words {
    fn of(text: &str) -> Self {
        let mut apart = text.to_ascii_lowercase();
        for (sign, word) in [("/", "and"), ("+", "and"), ("&", "and"), (",", ","), (":", ":")] {
            apart = apart.replace(sign, &format!(" {word} "));
        }
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

    fn any_begins(&self, with: &str) -> bool {
        self.0.iter().any(|word| word.starts_with(with))
    }

    fn names(&self, fuel: &Fuel) -> bool {
        let names = |word: &String| fuel.words.iter().any(|name| word.contains(name));
        self.0.iter().any(names)
    }

    fn fuel(&self, at: usize) -> bool {
        let names = |word: &str| {
            word.contains("fuel")
                || FUELS
                    .iter()
                    .any(|fuel| fuel.words.iter().any(|name| word.contains(name)))
        };
        self.word(at).is_some_and(names)
    }

    /// "gas oil" is of diesel's kin.
    fn gas_oil(&self, at: usize) -> bool {
        self.is(at, &["gasoil"]) || self.is(at, &["gas"]) && self.is(at + 1, &["oil"])
    }

    /// Something that lubricates; "fuel oil" and "gas oil" are burnt.
    fn oily(&self) -> bool {
        (0..self.0.len()).any(|at| self.is(at, &OILS) && !self.before(at, &["fuel", "gas"]))
    }

    /// A fuel, or gas where it means petrol: mixed with something, or alone beside an oil.
    fn burns(&self, at: usize) -> bool {
        if self.fuel(at) || self.gas_oil(at) {
            return true;
        }
        let joined = |of: Option<&str>| {
            of.is_none_or(|word| [&LISTED[..], &ADDED[..], &["for"]].concat().contains(&word))
        };
        let alone =
            joined(self.word(at + 1)) && joined(at.checked_sub(1).and_then(|before| self.word(before)));
        let petrol = match self.oily() {
            true => self.thinned() || alone,
            false => self.mixed() && self.in_parts(),
        };
        self.is(at, &["gas"]) && petrol && !self.before(at, &["for"])
    }

    fn two_stroke(&self) -> bool {
        (0..self.0.len()).any(|at| self.is(at, &["two", "2"]) && self.is(at + 1, &["stroke", "cycle"]))
    }

    fn mixed(&self) -> bool {
        THINNED.iter().any(|begin| self.any_begins(begin))
    }

    /// "50:1", "1 to 25", "50/1".
    fn in_parts(&self) -> bool {
        let told = |at: usize| self.is(at + 1, &[":"]) && self.parts(at).is_some();
        (0..self.0.len()).any(told) || self.lean()
    }

    /// Many parts to one, as two-strokes burn it.
    fn lean(&self) -> bool {
        let lean = |(one, other): (u32, u32)| one.min(other) == 1 && one.max(other) >= LEAST_PARTS;
        (0..self.0.len()).any(|at| self.parts(at).is_some_and(lean))
    }

    /// Two numbers with what parts or joins them between.
    fn parts(&self, at: usize) -> Option<(u32, u32)> {
        let number = |at: usize| self.word(at)?.parse().ok();
        let both = number(at).zip(number(at + 2));
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
            if self.is(end, &LISTED) && kind(end + 1) {
                end += 2;
            } else if kind(end) || self.is(end, &STROKES) {
                end += 1;
            } else {
                break;
            }
        }
        let listed = |before: usize| {
            kind(before) || self.is(before, &["stroke", "cycle"]) || self.is(before, &ENGINES)
        };
        let joined = self.before(at, &ADDED)
            || self.before(at, &LISTED[1..]) && !at.checked_sub(2).is_some_and(listed);
        self.is(end, &PROOF) || self.is(end, &ENGINES) && !joined && !self.thinned()
    }
}

/// Less than so many parts to one is no fuel for a two-stroke: a share of a litre, or a date.
const LEAST_PARTS: u32 = 8;

/// Whether that word stands in a text, in capitals or not; the word is of ASCII letters.
pub fn names(text: &str, word: &str) -> bool {
    let mut all = text.as_bytes().windows(word.len().max(1));
    all.any(|part| part.eq_ignore_ascii_case(word.as_bytes()))
}
