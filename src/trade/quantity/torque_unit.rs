//! The six torque units found in service manuals and on wrenches.

use super::Torque;
use super::typed::{Subject, Unit};
use TorqueUnit::{KilogramCentimetre, KilogramMetre, NewtonMetre, OunceInch, PoundFoot, PoundInch};
use serde::{Deserialize, Serialize};
use uom::si::torque::newton_meter;

// Exact by definition: the international pound-force, foot and inch, and the kilogram-force.
const POUND_FORCE_NEWTONS: f64 = 4.448_221_615_260_5;
const FOOT_METRES: f64 = 0.304_8;
const INCH_METRES: f64 = 0.025_4;
const KILOGRAM_FORCE_NEWTONS: f64 = 9.806_65;

/// A unit of torque as manuals and wrenches write it.
///
/// Factors are products of exact definitions (uom's own pound-force units are rounded in the
/// eighth digit), so a conversion is exact to the last bit or two of an `f64`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TorqueUnit {
    /// Newton metre, N·m.
    NewtonMetre,
    /// Pound-force foot, ft·lb.
    PoundFoot,
    /// Pound-force inch, in·lb.
    PoundInch,
    /// Kilogram-force metre, kgf·m.
    KilogramMetre,
    /// Kilogram-force centimetre, kgf·cm.
    KilogramCentimetre,
    /// Ounce-force inch, oz·in.
    OunceInch,
}

impl TorqueUnit {
    /// Every unit, in the order the screens show them.
    pub const ALL: [Self; 6] = [
        Self::NewtonMetre,
        Self::PoundFoot,
        Self::PoundInch,
        Self::KilogramMetre,
        Self::KilogramCentimetre,
        Self::OunceInch,
    ];

    /// The symbol shown on screen.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::NewtonMetre => "N·m",
            Self::PoundFoot => "ft·lb",
            Self::PoundInch => "in·lb",
            Self::KilogramMetre => "kgf·m",
            Self::KilogramCentimetre => "kgf·cm",
            Self::OunceInch => "oz·in",
        }
    }

    /// The unit in words, for a screen reader.
    pub const fn words(self) -> &'static str {
        match self {
            Self::NewtonMetre => "newton metres",
            Self::PoundFoot => "foot-pounds",
            Self::PoundInch => "inch-pounds",
            Self::KilogramMetre => "kilogram-force metres",
            Self::KilogramCentimetre => "kilogram-force centimetres",
            Self::OunceInch => "ounce-inches",
        }
    }

    /// Newton metres in one of this unit.
    pub const fn newton_metres(self) -> f64 {
        match self {
            Self::NewtonMetre => 1.0,
            Self::PoundFoot => POUND_FORCE_NEWTONS * FOOT_METRES,
            Self::PoundInch => POUND_FORCE_NEWTONS * INCH_METRES,
            Self::KilogramMetre => KILOGRAM_FORCE_NEWTONS,
            Self::KilogramCentimetre => KILOGRAM_FORCE_NEWTONS / 100.0,
            Self::OunceInch => POUND_FORCE_NEWTONS * INCH_METRES / 16.0,
        }
    }

    /// `value` of this unit as a quantity.
    pub fn torque(self, value: f64) -> Torque {
        Torque::new::<newton_meter>(value * self.newton_metres())
    }

    /// How many of this unit `torque` is.
    pub fn value_of(self, torque: Torque) -> f64 {
        torque.get::<newton_meter>() / self.newton_metres()
    }
}

impl Unit for TorqueUnit {
    const SUBJECT: Subject = Subject {
        what: "a torque",
        example: "9 N·m",
        units: "N·m, ft·lb, in·lb, kgf·m, kgf·cm or oz·in",
        least: 0.0,
        least_limit: "zero",
        least_why: "a torque is not negative",
        // The largest thread here, M24 of class 12.9, is given 1 350 N·m dry: a slip of ten times
        // still gets through to the guard, which can say what was meant.
        most: 20_000.0,
        limit: "20 000 N·m",
        why: "no thread up to M24 takes a tenth of that",
    };

    fn spelled(key: &str) -> Option<Self> {
        SPELLINGS.iter().find(|row| row.0 == key).map(|row| row.1)
    }

    fn symbol(self) -> &'static str {
        TorqueUnit::symbol(self)
    }

    fn base(self, value: f64) -> f64 {
        value * self.newton_metres()
    }
}

/// What people write, without case and without what parts the words.
///
/// A slash is common between pounds and feet and is read as a hyphen there; "kg/cm" is a pressure
/// with its square lost, so no slash is read with kilograms.
const SPELLINGS: &[(&str, TorqueUnit)] = &[
    ("nm", NewtonMetre),
    ("newtonmetre", NewtonMetre),
    ("newtonmetres", NewtonMetre),
    ("newtonmeter", NewtonMetre),
    ("newtonmeters", NewtonMetre),
    ("ftlb", PoundFoot),
    ("ftlbs", PoundFoot),
    ("ftlbf", PoundFoot),
    ("ftlbsf", PoundFoot),
    ("lbft", PoundFoot),
    ("lbsft", PoundFoot),
    ("lbfft", PoundFoot),
    ("ft/lb", PoundFoot),
    ("ft/lbs", PoundFoot),
    ("lb/ft", PoundFoot),
    ("lbs/ft", PoundFoot),
    ("footlb", PoundFoot),
    ("footlbs", PoundFoot),
    ("footpound", PoundFoot),
    ("footpounds", PoundFoot),
    ("poundfoot", PoundFoot),
    ("poundfeet", PoundFoot),
    ("poundsfeet", PoundFoot),
    ("inlb", PoundInch),
    ("inlbs", PoundInch),
    ("inlbf", PoundInch),
    ("inlbsf", PoundInch),
    ("lbin", PoundInch),
    ("lbsin", PoundInch),
    ("lbfin", PoundInch),
    ("in/lb", PoundInch),
    ("in/lbs", PoundInch),
    ("lb/in", PoundInch),
    ("lbs/in", PoundInch),
    ("inchlb", PoundInch),
    ("inchlbs", PoundInch),
    ("inchpound", PoundInch),
    ("inchpounds", PoundInch),
    ("poundinch", PoundInch),
    ("poundinches", PoundInch),
    ("kgfm", KilogramMetre),
    ("kgm", KilogramMetre),
    ("mkg", KilogramMetre),
    ("mkgf", KilogramMetre),
    ("mkp", KilogramMetre),
    ("kpm", KilogramMetre),
    ("kilogramforcemetres", KilogramMetre),
    ("kilogramforcemeters", KilogramMetre),
    ("kgfcm", KilogramCentimetre),
    ("kgcm", KilogramCentimetre),
    ("cmkg", KilogramCentimetre),
    ("cmkgf", KilogramCentimetre),
    ("cmkp", KilogramCentimetre),
    ("kpcm", KilogramCentimetre),
    ("kilogramforcecentimetres", KilogramCentimetre),
    ("kilogramforcecentimeters", KilogramCentimetre),
    ("ozin", OunceInch),
    ("ozfin", OunceInch),
    ("inoz", OunceInch),
    ("inozf", OunceInch),
    ("ounceinch", OunceInch),
    ("ounceinches", OunceInch),
    ("inchounce", OunceInch),
    ("inchounces", OunceInch),
];
