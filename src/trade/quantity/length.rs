//! Lengths out of text and into it.

use super::Length;
use super::print::Printed;
use super::text_error::TextError;
use super::typed::{Sign, Subject, Typed, Unit, read_single};
use serde::{Deserialize, Serialize};
use uom::si::length::meter;

// Exact by definition: the international inch.
const INCH_METRES: f64 = 0.025_4;

/// A unit of length of drawings, rules and micrometers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthUnit {
    /// Millimetre, mm.
    Millimetre,
    /// Micrometre, µm.
    Micrometre,
    /// Centimetre, cm.
    Centimetre,
    /// Inch, in; read and printed in fractions too.
    Inch,
    /// Thousandth of an inch, thou.
    Thou,
}

use LengthUnit::{Centimetre, Inch, Micrometre, Millimetre, Thou};

impl LengthUnit {
    /// Every unit, in the order the screens show them.
    pub const ALL: [Self; 5] = [Millimetre, Micrometre, Centimetre, Inch, Thou];

    /// Metres in one of this unit.
    pub const fn metres(self) -> f64 {
        match self {
            Millimetre => 1e-3,
            Micrometre => 1e-6,
            Centimetre => 1e-2,
            Inch => INCH_METRES,
            Thou => INCH_METRES / 1000.0,
        }
    }

    /// `value` of this unit as a quantity.
    pub fn length(self, value: f64) -> Length {
        Length::new::<meter>(value * self.metres())
    }

    /// How many of this unit `length` is.
    pub fn value_of(self, length: Length) -> f64 {
        length.get::<meter>() / self.metres()
    }
}

impl Unit for LengthUnit {
    const SUBJECT: Subject = Subject {
        what: "a length",
        example: "62 mm",
        units: "mm, µm, cm, in or thou",
        least: -10.0,
        least_limit: "−10 m",
        least_why: "no part on a bench is so far off",
        most: 10.0,
        limit: "10 m",
        why: "no part on a bench is so long",
    };
    const FRACTIONS: &'static str = "halves to 64ths of an inch are, such as 1 3/8 in";

    fn spelled(key: &str) -> Option<Self> {
        SPELLINGS.iter().find(|row| row.0 == key).map(|row| row.1)
    }

    fn symbol(self) -> &'static str {
        match self {
            Millimetre => "mm",
            Micrometre => "µm",
            Centimetre => "cm",
            Inch => "in",
            Thou => "thou",
        }
    }

    fn base(self, value: f64) -> f64 {
        value * self.metres()
    }

    fn takes_fraction(self, denominator: u32) -> bool {
        self == Inch && denominator <= 64 && denominator.is_power_of_two()
    }
}

/// "mil" is left out: a thousandth of an inch to some, a millimetre to others.
const SPELLINGS: &[(&str, LengthUnit)] = &[
    ("mm", Millimetre),
    ("millimetre", Millimetre),
    ("millimetres", Millimetre),
    ("millimeter", Millimetre),
    ("millimeters", Millimetre),
    // The micro sign, the Greek letter, and what a keyboard without either types.
    ("µm", Micrometre),
    ("μm", Micrometre),
    ("um", Micrometre),
    ("micron", Micrometre),
    ("microns", Micrometre),
    ("micrometre", Micrometre),
    ("micrometres", Micrometre),
    ("cm", Centimetre),
    ("centimetre", Centimetre),
    ("centimetres", Centimetre),
    ("centimeter", Centimetre),
    ("centimeters", Centimetre),
    ("in", Inch),
    ("ins", Inch),
    ("inch", Inch),
    ("inches", Inch),
    ("\"", Inch),
    ("″", Inch),
    ("”", Inch),
    ("thou", Thou),
    ("thous", Thou),
];

impl Typed<LengthUnit> {
    /// The length that was typed.
    pub fn length(&self) -> Length {
        self.unit.length(self.value)
    }
}

/// Reads a length above zero; `fallback` is the unit where none is written.
///
/// ```
/// use halfcase::trade::quantity::{LengthUnit, parse_length};
/// let socket = parse_length("1 3/8 in", None)?;
/// assert_eq!((socket.value, socket.unit), (1.375, LengthUnit::Inch));
/// # Ok::<(), halfcase::trade::quantity::TextError>(())
/// ```
///
/// # Errors
/// The place and what was expected there; zero, negative and more than 10 m are refused.
pub fn parse_length(text: &str, fallback: Option<LengthUnit>) -> Result<Typed<LengthUnit>, TextError> {
    read_single(text, fallback, Sign::Positive)
}

/// Reads a length that may be zero or negative: a deviation, a clearance.
///
/// # Errors
/// As [`parse_length`], but only more than 10 m to either side is refused.
pub fn parse_deviation(text: &str, fallback: Option<LengthUnit>) -> Result<Typed<LengthUnit>, TextError> {
    read_single(text, fallback, Sign::Any)
}

/// `length` as inches and a fraction, "1 3/8", where it is a whole number of 64ths to a millionth.
///
/// None where it isn't, where it isn't above zero, or above 10 m.
pub fn print_inch_fraction(length: Length) -> Option<Printed> {
    let parts = Inch.value_of(length) * 64.0;
    let whole = parts.round();
    let in_range = whole >= 1.0 && length.get::<meter>() <= LengthUnit::SUBJECT.most;
    if !in_range || (parts - whole).abs() > 64e-6 {
        return None;
    }
    let (inches, mut over, mut under) = (whole as u32 / 64, whole as u32 % 64, 64);
    while over > 0 && over.is_multiple_of(2) {
        (over, under) = (over / 2, under / 2);
    }
    let number = match (inches, over) {
        (_, 0) => inches.to_string(),
        (0, _) => format!("{over}/{under}"),
        _ => format!("{inches} {over}/{under}"),
    };
    Some(Printed { number, unit: "in" })
}
