//! Volumes of fluids out of text and into it.
//!
//! A quart, a pint, a gallon and a fluid ounce differ between the United States and Britain by a fifth or
//! so: a bare "qt" is no unit here, "US qt" and "imp qt" are.

use super::Volume;
use super::print::{Printed, significant};
use super::text_error::TextError;
use super::typed::{Sign, Subject, Typed, Unit, read_single};
use serde::{Deserialize, Serialize};
use uom::si::volume::liter;

// Exact by definition: 231 cubic inches of 25.4 mm (NIST SP 811, appendix B, prints 3.785 412 L).
const US_GALLON_LITRES: f64 = 3.785_411_784;
// Exact by definition: the imperial gallon (NIST SP 811, appendix B, prints the same).
const IMPERIAL_GALLON_LITRES: f64 = 4.546_09;

/// A unit of volume for fluids.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum VolumeUnit {
    /// Litre, L.
    Litre,
    /// Millilitre, mL.
    Millilitre,
    /// US liquid quart: a quarter of a US gallon.
    UsQuart,
    /// US liquid pint: an eighth.
    UsPint,
    /// US gallon.
    UsGallon,
    /// US fluid ounce: one part in 128.
    UsFluidOunce,
    /// Imperial quart: a quarter of an imperial gallon.
    ImperialQuart,
    /// Imperial pint: an eighth.
    ImperialPint,
    /// Imperial gallon.
    ImperialGallon,
    /// Imperial fluid ounce: one part in 160.
    ImperialFluidOunce,
}

use VolumeUnit::{
    ImperialFluidOunce, ImperialGallon, ImperialPint, ImperialQuart, Litre, Millilitre, UsFluidOunce,
    UsGallon, UsPint, UsQuart,
};

impl VolumeUnit {
    /// Every unit, in the order the screens show them.
    pub const ALL: [Self; 10] = [
        Litre,
        Millilitre,
        UsQuart,
        UsPint,
        UsGallon,
        UsFluidOunce,
        ImperialQuart,
        ImperialPint,
        ImperialGallon,
        ImperialFluidOunce,
    ];

    /// Litres in one of this unit.
    pub const fn litres(self) -> f64 {
        match self {
            Litre => 1.0,
            Millilitre => 1e-3,
            UsQuart => US_GALLON_LITRES / 4.0,
            UsPint => US_GALLON_LITRES / 8.0,
            UsGallon => US_GALLON_LITRES,
            UsFluidOunce => US_GALLON_LITRES / 128.0,
            ImperialQuart => IMPERIAL_GALLON_LITRES / 4.0,
            ImperialPint => IMPERIAL_GALLON_LITRES / 8.0,
            ImperialGallon => IMPERIAL_GALLON_LITRES,
            ImperialFluidOunce => IMPERIAL_GALLON_LITRES / 160.0,
        }
    }

    /// `value` of this unit as a quantity.
    pub fn volume(self, value: f64) -> Volume {
        Volume::new::<liter>(value * self.litres())
    }

    /// How many of this unit `volume` is.
    pub fn value_of(self, volume: Volume) -> f64 {
        volume.get::<liter>() / self.litres()
    }
}

impl Unit for VolumeUnit {
    const SUBJECT: Subject = Subject {
        what: "a volume",
        example: "1.1 L",
        units: "L, mL, US qt, US pt, US gal, US fl oz, imp qt, imp pt, imp gal or imp fl oz",
        least: 0.0,
        least_limit: "zero",
        least_why: "a volume is not negative",
        most: 1000.0,
        limit: "1 000 L",
        why: "no engine or gearbox on a bench takes that",
    };
    const FRACTIONS: &'static str =
        "halves to sixteenths of a quart, pint, gallon or ounce are, such as 2 1/2 US qt";

    fn spelled(key: &str) -> Option<Self> {
        let (rest, of) = if let Some(rest) = SETS.us.iter().find_map(|set| key.strip_prefix(set)) {
            (rest, Some(false))
        } else if let Some(rest) = SETS.imperial.iter().find_map(|set| key.strip_prefix(set)) {
            (rest, Some(true))
        } else {
            (key, None)
        };
        let row = SPELLINGS.iter().find(|row| row.0.contains(&rest))?;
        match of {
            Some(false) => row.1,
            Some(true) => row.2,
            None => row.3,
        }
    }

    fn symbol(self) -> &'static str {
        match self {
            Litre => "L",
            Millilitre => "mL",
            UsQuart => "US qt",
            UsPint => "US pt",
            UsGallon => "US gal",
            UsFluidOunce => "US fl oz",
            ImperialQuart => "imp qt",
            ImperialPint => "imp pt",
            ImperialGallon => "imp gal",
            ImperialFluidOunce => "imp fl oz",
        }
    }

    fn base(self, value: f64) -> f64 {
        value * self.litres()
    }

    fn takes_fraction(self, denominator: u32) -> bool {
        !matches!(self, Litre | Millilitre) && matches!(denominator, 2 | 4 | 8 | 16)
    }
}

/// What stands before a unit and says whose it is.
struct Sets {
    us: [&'static str; 2],
    imperial: [&'static str; 4],
}

// The longer ones first: "imp" begins "imperial".
const SETS: Sets = Sets {
    us: ["usa", "us"],
    imperial: ["imperial", "imp", "british", "uk"],
};

/// Spellings, then what they mean behind "US", behind "imperial", and by themselves.
type Spelling = (
    &'static [&'static str],
    Option<VolumeUnit>,
    Option<VolumeUnit>,
    Option<VolumeUnit>,
);

const SPELLINGS: &[Spelling] = &[
    (
        &["l", "litre", "litres", "liter", "liters", "dm³"],
        None,
        None,
        Some(Litre),
    ),
    (
        &[
            "ml",
            "millilitre",
            "millilitres",
            "milliliter",
            "milliliters",
            "cc",
            "ccm",
            "cm³",
        ],
        None,
        None,
        Some(Millilitre),
    ),
    (
        &["qt", "qts", "quart", "quarts"],
        Some(UsQuart),
        Some(ImperialQuart),
        None,
    ),
    (
        &["pt", "pts", "pint", "pints"],
        Some(UsPint),
        Some(ImperialPint),
        None,
    ),
    (
        &["gal", "gals", "gallon", "gallons"],
        Some(UsGallon),
        Some(ImperialGallon),
        None,
    ),
    (
        &["floz", "fluidounce", "fluidounces", "fluidoz"],
        Some(UsFluidOunce),
        Some(ImperialFluidOunce),
        None,
    ),
];

impl Typed<VolumeUnit> {
    /// The volume that was typed.
    pub fn volume(&self) -> Volume {
        self.unit.volume(self.value)
    }
}

/// Reads a volume above zero; `fallback` is the unit where none is written.
///
/// ```
/// use halfcase::trade::quantity::{VolumeUnit, parse_volume};
/// let sump = parse_volume("2 1/2 US qt", None)?;
/// assert_eq!((sump.value, sump.unit), (2.5, VolumeUnit::UsQuart));
/// assert!(parse_volume("2.5 qt", None).is_err(), "whose quart?");
/// # Ok::<(), halfcase::trade::quantity::TextError>(())
/// ```
///
/// # Errors
/// The place and what was expected there; zero, negative and more than 1 000 L are refused, and so is a
/// quart, pint, gallon or ounce that does not say whose it is.
pub fn parse_volume(text: &str, fallback: Option<VolumeUnit>) -> Result<Typed<VolumeUnit>, TextError> {
    read_single(text, fallback, Sign::Positive)
}

/// `volume` in `unit` with `figures` significant figures.
pub fn print_volume(volume: Volume, unit: VolumeUnit, figures: u32) -> Printed {
    Printed {
        number: significant(unit.value_of(volume), figures),
        unit: unit.symbol(),
    }
}
