//! Mutated and arbitrary texts through every reader: no panic, no NaN, an error that points into the text.

use halfcase::trade::quantity::{
    AngleUnit, LengthUnit, Problem, TemperatureUnit, TextError, TorqueStatement, TorqueUnit, Typed, Unit,
    VolumeUnit, parse_angle, parse_deviation, parse_length, parse_temperature, parse_torque, parse_torques,
    parse_volume,
};

const CORPUS: &[&str] = &[
    "7.2 ft-lb",
    "7,2 ft lbs",
    "86 in-lbs",
    "9Nm",
    "9 N.m",
    "1,2 kgm",
    "1.2 kgf-m",
    "120 kgf·cm",
    "64 oz·in",
    "9–12 N·m",
    "9 ± 1 Nm",
    "9 +2/-0",
    "9 N·m −0/+2 N·m",
    "9 Nm ± 10 %",
    "14 N·m (10.3 ft·lb)",
    "5 N·m (0.5 kgf·m, 3.7 ft·lb)",
    "1 200 in·lb",
    "1,200",
    "9 to 12 newton metres",
    "9..12",
    "1 3/8 in",
    "1-3/8\"",
    "½\"",
    "62,005 mm",
    "-9 µm",
    "40 thou",
    "-18 °C",
    "68F",
    "293.15 K",
    "23 kg",
    "2 1/2 US qt",
    "8 imp. fl oz",
    "350 ml",
    "51 lbs",
    "1/4 turn",
    "90°",
    "0.000000000001",
    "999999999999999",
];

/// Characters that matter to a reader, or ought not to.
const ALPHABET: &str = "0123456789.,+-−–—±/%() \u{a0}\u{2009}\u{202f}\u{200b}\u{301}·⋅*×°ºN·mftlbinkgoz½⅜″\"µμKCFe\
                        EİßǅΩ٣９\u{0}\n\t\u{1f527}\u{feff}~…=;[]|'";

/// xorshift64*: small, and the same on every machine.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(seed)
    }

    fn roll(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 33) as usize % sides.max(1)
    }

    fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        from[self.roll(from.len())]
    }

    /// A character of the alphabet, now and then any at all.
    fn character(&mut self, alphabet: &[char]) -> char {
        if self.roll(8) > 0 {
            return self.pick(alphabet);
        }
        char::from_u32(self.roll(0x11_0000) as u32).unwrap_or('\u{fffd}')
    }

    fn text(&mut self, alphabet: &[char]) -> String {
        self.text_of(CORPUS, alphabet)
    }

    /// A text of that corpus, changed in a few places; now and then noise.
    pub fn text_of(&mut self, corpus: &[&str], alphabet: &[char]) -> String {
        if self.roll(5) == 0 {
            let length = self.roll(24);
            return (0..length).map(|_| self.character(alphabet)).collect();
        }
        let mut chars: Vec<char> = self.pick(corpus).chars().collect();
        for _ in 0..=self.roll(4) {
            let at = self.roll(chars.len() + 1);
            match self.roll(5) {
                0 if at < chars.len() => drop(chars.remove(at)),
                1 if at < chars.len() => chars[at] = self.character(alphabet),
                2 => {
                    let other: Vec<char> = self.pick(corpus).chars().collect();
                    let from = self.roll(other.len());
                    chars.splice(at..at, other[from..].iter().copied());
                }
                3 if at < chars.len() => chars.insert(at, chars[at]),
                _ => chars.insert(at.min(chars.len()), self.character(alphabet)),
            }
        }
        chars.into_iter().collect()
    }
}

/// How many texts are tried.
pub fn cases() -> usize {
    std::env::var("HALFCASE_FUZZ")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(4000)
}

fn check_error(text: &str, error: &TextError) {
    assert!(error.at <= text.chars().count(), "{text:?}: {error:?}");
    let sentence = error.to_string();
    assert!(sentence.ends_with('.'), "{sentence}");
    assert!(sentence.chars().all(|c| !c.is_control()), "{sentence:?}");
    assert!(sentence.chars().count() < 400, "{sentence}");
    if text.trim().is_empty() {
        assert!(
            matches!(error.problem, Problem::Empty { .. }),
            "{text:?}: {error:?}"
        );
    }
}

fn check_torque(text: &str, read: Result<TorqueStatement, TextError>) {
    let statement = match read {
        Ok(statement) => statement,
        Err(error) => return check_error(text, &error),
    };
    assert_eq!(statement.check(), Ok(()), "{text:?}: {statement:?}");
    let again = parse_torque(&statement.text(), None);
    let again = again.unwrap_or_else(|error| panic!("{text:?} → {:?}: {error}", statement.text()));
    assert_eq!(again.unit, statement.unit, "{text:?}");
    for (a, b) in [
        (again.low, statement.low),
        (again.target, statement.target),
        (again.high, statement.high),
    ] {
        assert!(
            (a - b).abs() <= 1e-8 * b.abs(),
            "{text:?} → {:?}",
            statement.text()
        );
    }
}

fn check_typed<U: Unit>(text: &str, read: Result<Typed<U>, TextError>) {
    match read {
        Err(error) => check_error(text, &error),
        Ok(typed) => {
            assert!(
                typed.value.is_finite() && typed.unit.base(typed.value).abs() <= 20_000.0,
                "{text:?}"
            );
            assert!(typed.text().ends_with(typed.unit.symbol()), "{text:?}");
        }
    }
}

fn check_all(text: &str) {
    for fallback in [None, Some(TorqueUnit::PoundFoot)] {
        check_torque(text, parse_torque(text, fallback));
        match parse_torques(text, fallback) {
            Ok(list) => {
                assert!((1..=8).contains(&list.len()));
                list.into_iter()
                    .for_each(|statement| check_torque(text, Ok(statement)));
            }
            Err(error) => check_error(text, &error),
        }
    }
    check_typed(text, parse_length(text, Some(LengthUnit::Inch)));
    check_typed(text, parse_length(text, None));
    check_typed(text, parse_deviation(text, Some(LengthUnit::Micrometre)));
    check_typed(text, parse_volume(text, Some(VolumeUnit::Litre)));
    check_typed(text, parse_volume(text, None));
    check_typed(text, parse_temperature(text, Some(TemperatureUnit::Celsius)));
    check_typed::<AngleUnit>(text, parse_angle(text));
}

#[test]
fn no_text_at_all_breaks_a_reader() {
    let alphabet: Vec<char> = ALPHABET.chars().collect();
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    CORPUS.iter().for_each(|text| check_all(text));
    for _ in 0..cases() {
        check_all(&dice.text(&alphabet));
    }
}

#[test]
fn a_very_long_text_is_answered_at_once() {
    for piece in ["9", " ", "9 ", "N·m ", "9 N·m (", "½", "((((", "9.", "−", "ft-"] {
        check_all(&piece.repeat(20_000));
    }
}
