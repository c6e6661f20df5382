//! How fast it cures against the label: the coefficients of the model, each as a range.

use super::{Chemistry, LabelTimes, NoCure, ShopReading, Substrate};
use crate::trade::quantity::{Ratio, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::day;

/// Which end of the range is reckoned.
#[derive(Debug, Clone, Copy)]
pub(super) enum Pace {
    Quick,
    Likely,
    Slow,
}

/// A cause that slows it: how many times longer at the quick end, in the middle and at the slow end.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spread {
    quick: f64,
    likely: f64,
    slow: f64,
}

impl Spread {
    const fn new(quick: f64, likely: f64, slow: f64) -> Self {
        Self { quick, likely, slow }
    }

    /// At its kindest no slower than the label says.
    const fn from_label(likely: f64, slow: f64) -> Self {
        Self::new(1.0, likely, slow)
    }

    /// It slows nothing.
    const NONE: Self = Self::new(1.0, 1.0, 1.0);

    /// Each of its numbers turned into another.
    fn map(self, turn: impl Fn(f64) -> f64) -> Self {
        Self::new(turn(self.quick), turn(self.likely), turn(self.slow))
    }
}

/// Causes that know nothing of each other, taken together: their middles multiply; how far an end lies from
/// there is the root of the sum of squares of each one's ln(end/middle), as independent spreads add up. That
/// every worst comes at once is not the late end but beyond it.
fn together(causes: &[Spread], pace: Pace) -> f64 {
    let likely: f64 = causes.iter().map(|cause| cause.likely).product();
    let away = |end: fn(&Spread) -> f64| -> f64 {
        let squares = causes
            .iter()
            .map(|cause| (end(cause) / cause.likely).ln().powi(2));
        squares.sum::<f64>().sqrt().exp()
    };
    match pace {
        Pace::Quick => likely / away(|cause| cause.quick),
        Pace::Likely => likely,
        Pace::Slow => likely * away(|cause| cause.slow),
    }
}

/// How many times longer it takes per 10 K colder: about twice (common practice, no source).
const PER_TEN_KELVIN: Spread = Spread::new(1.7, 2.0, 2.5);

/// Below this it hardly cures and none is counted (common practice, no source).
const COLDEST_CELSIUS: f64 = 5.0;

/// How many times longer an anaerobic takes on each slow metal without activator; on the others it keeps
/// the label's time. That brass and copper are quickest: Int. J. Adhesion & Adhesives 17 (1997). The
/// figures: common practice, no source.
const ON_SLOW_METAL: [(Substrate, Spread); 4] = [
    (Substrate::Aluminium, Spread::from_label(1.5, 2.0)),
    (Substrate::Stainless, Spread::from_label(2.0, 3.0)),
    (Substrate::Plated, Spread::from_label(2.0, 3.0)),
    (Substrate::Unknown, Spread::from_label(2.0, 3.0)),
];

/// Labels are written for close-fitting parts, to about this gap (common practice, no source).
const CLOSE_GAP_MM: f64 = 0.05;
/// The gap at which the spread below is reached; between and beyond, in proportion.
const WIDE_GAP_MM: f64 = 0.25;
/// How many times longer at the wide gap (common practice, no source).
const AT_WIDE_GAP: Spread = Spread::new(1.25, 1.5, 2.0);
/// It hardly cures across this (Handbook of Adhesives and Sealants, ch. 10).
const NO_CURE_GAP_MM: f64 = 0.75;

/// Depth of silicone cured after one day at 23 °C and 50 % humidity, mm; it grows with the root of
/// time (sharp front: Comyn, Int. J. Adhesion & Adhesives 18, 1998). From published 2 to 3 mm in a day
/// and 7.5 mm in seven days.
const SILICONE_MM_PER_ROOT_DAY: Spread = Spread::new(2.8, 2.65, 2.5);
/// The humidity those figures hold at.
const LABEL_HUMIDITY: f64 = 0.5;
/// What an unknown humidity is taken as at the slow end; else it is the label's (common practice).
const OPEN_HUMIDITY: f64 = 0.4;
/// Air drier than this is taken as not curing it at all (common practice, no source).
const DRIEST: f64 = 0.05;
/// No bead is deeper.
const DEEPEST_MM: f64 = 50.0;

/// Warmer than this above the label, in tens of kelvin, a deadline comes no nearer.
const WARMEST_TENS: f64 = 6.0;

/// An activator can halve the time until it grips (from memory).
const ACTIVATOR_HURRY: f64 = 2.0;

/// What of the joint itself slows it against the label: its metal and its gap, or its depth.
pub(super) fn of_joint(chemistry: &Chemistry, label: &LabelTimes) -> Result<[Spread; 2], NoCure> {
    match *chemistry {
        Chemistry::Anaerobic {
            substrate,
            gap,
            activator,
        } => {
            let metal = if activator {
                Spread::NONE
            } else {
                on_metal(substrate)
            };
            Ok([metal, across_gap(gap.get::<millimeter>())?])
        }
        Chemistry::MoistureSilicone { depth } => {
            let depth_mm = depth.get::<millimeter>();
            if !(0.0..=DEEPEST_MM).contains(&depth_mm) {
                return Err(NoCure::DepthUnusable);
            }
            let full_days = label.full.get::<day>();
            let through = |per_root_day: f64| ((depth_mm / per_root_day).powi(2) / full_days).max(1.0);
            Ok([SILICONE_MM_PER_ROOT_DAY.map(through), Spread::NONE])
        }
        Chemistry::SolventDrying => Ok([Spread::NONE; 2]),
    }
}

fn on_metal(substrate: Substrate) -> Spread {
    let row = ON_SLOW_METAL.iter().find(|row| row.0 == substrate);
    row.map_or(Spread::NONE, |row| row.1)
}

fn across_gap(gap_mm: f64) -> Result<Spread, NoCure> {
    if gap_mm.is_nan() || gap_mm >= NO_CURE_GAP_MM {
        return Err(NoCure::GapTooWide);
    }
    let share = ((gap_mm - CLOSE_GAP_MM) / (WIDE_GAP_MM - CLOSE_GAP_MM)).max(0.0);
    Ok(AT_WIDE_GAP.map(|wide| 1.0 + share * (wide - 1.0)))
}

/// How fast that joint cures in this air, 1 being the label's rate; never more. 0: not at all. Without a
/// reading the label's temperature is taken.
pub(super) fn rate(
    joint: [Spread; 2],
    chemistry: &Chemistry,
    label: &LabelTimes,
    air: Option<&ShopReading>,
    pace: Pace,
) -> f64 {
    if air.is_some_and(too_cold) {
        return 0.0;
    }
    let colder = air.map_or(0.0, |air| tens_colder(label.at, air.temperature).max(0.0));
    let cold = PER_TEN_KELVIN.map(|per_ten| per_ten.powf(colder));
    let dry = match chemistry {
        Chemistry::MoistureSilicone { .. } => dryness(air.and_then(|air| air.humidity)),
        Chemistry::Anaerobic { .. } | Chemistry::SolventDrying => Some(Spread::NONE),
    };
    let [first, second] = joint;
    dry.map_or(0.0, |dry| 1.0 / together(&[first, second, cold, dry], pace))
}

fn too_cold(air: &ShopReading) -> bool {
    air.temperature.get::<degree_celsius>() < COLDEST_CELSIUS
}

/// Why it doesn't cure in this air.
pub(super) fn hindrance(air: &ShopReading) -> NoCure {
    if too_cold(air) {
        NoCure::TooCold
    } else {
        NoCure::TooDry
    }
}

/// How fast the time to join runs out, 1 being the label's rate; never less.
pub(super) fn hurry(chemistry: &Chemistry, label: &LabelTimes, air: Option<&ShopReading>, pace: Pace) -> f64 {
    // What is slow for a cure is quick for a deadline: the harshest figure brings its early end.
    let steep = match pace {
        Pace::Quick => PER_TEN_KELVIN.slow,
        Pace::Likely => PER_TEN_KELVIN.likely,
        Pace::Slow => return 1.0,
    };
    let activator = match chemistry {
        Chemistry::Anaerobic { activator: true, .. } => ACTIVATOR_HURRY,
        _ => 1.0,
    };
    let Some(air) = air else { return activator };
    let damp = match (chemistry, humidity(air.humidity)) {
        (Chemistry::MoistureSilicone { .. }, Some(humidity)) => (humidity / LABEL_HUMIDITY).max(1.0),
        _ => 1.0,
    };
    activator * damp * steep.powf((-tens_colder(label.at, air.temperature)).max(0.0))
}

/// How much colder than the label it is, in tens of kelvin; held at the warm end so that no power overflows.
fn tens_colder(label: ThermodynamicTemperature, air: ThermodynamicTemperature) -> f64 {
    ((label.get::<degree_celsius>() - air.get::<degree_celsius>()) / 10.0).max(-WARMEST_TENS)
}

fn humidity(air: Option<Ratio>) -> Option<f64> {
    air.map(|air| air.get::<ratio>())
        .filter(|air| air.is_finite() && *air >= 0.0)
        .map(|air| air.min(1.0))
}

/// How much longer it takes in air drier than the label's; none where it is too dry. Damper than the label
/// is no quicker.
fn dryness(air: Option<Ratio>) -> Option<Spread> {
    let longer = |humidity: f64| (LABEL_HUMIDITY / humidity).max(1.0);
    match humidity(air) {
        Some(humidity) if humidity < DRIEST => None,
        Some(humidity) => Some(Spread::NONE.map(|_| longer(humidity))),
        None => Some(Spread::from_label(1.0, longer(OPEN_HUMIDITY))),
    }
}
