//! How fast it cures against the label: the coefficients of the model, each as a range.

use super::{Chemistry, LabelTimes, NoCure, ShopReading, Substrate};
use crate::trade::quantity::{Ratio, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::day;

/// Which end of the range is reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Pace {
    Quick,
    Likely,
    Slow,
}

/// A coefficient at the quick end, in the middle and at the slow end.
struct Spread {
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

    fn at(&self, pace: Pace) -> f64 {
        match pace {
            Pace::Quick => self.quick,
            Pace::Likely => self.likely,
            Pace::Slow => self.slow,
        }
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

/// How many times the label's time this joint needs at the label's temperature: 1 or more.
pub(super) fn stretch(chemistry: &Chemistry, label: &LabelTimes, pace: Pace) -> Result<f64, NoCure> {
    match *chemistry {
        Chemistry::Anaerobic {
            substrate,
            gap,
            activator,
        } => {
            let metal = if activator { 1.0 } else { on_metal(substrate, pace) };
            Ok(metal * across_gap(gap.get::<millimeter>(), pace)?)
        }
        Chemistry::MoistureSilicone { depth } => {
            let depth_mm = depth.get::<millimeter>();
            if !(0.0..=DEEPEST_MM).contains(&depth_mm) {
                return Err(NoCure::DepthUnusable);
            }
            let days = (depth_mm / SILICONE_MM_PER_ROOT_DAY.at(pace)).powi(2);
            Ok((days / label.full.get::<day>()).max(1.0))
        }
        Chemistry::SolventDrying => Ok(1.0),
    }
}

fn on_metal(substrate: Substrate, pace: Pace) -> f64 {
    ON_SLOW_METAL
        .iter()
        .find(|row| row.0 == substrate)
        .map_or(1.0, |row| row.1.at(pace))
}

fn across_gap(gap_mm: f64, pace: Pace) -> Result<f64, NoCure> {
    if gap_mm.is_nan() || gap_mm >= NO_CURE_GAP_MM {
        return Err(NoCure::GapTooWide);
    }
    let share = ((gap_mm - CLOSE_GAP_MM) / (WIDE_GAP_MM - CLOSE_GAP_MM)).max(0.0);
    Ok(1.0 + share * (AT_WIDE_GAP.at(pace) - 1.0))
}

/// How fast it cures in this air, 1 being the label's rate; never more. 0: not at all.
pub(super) fn rate(chemistry: &Chemistry, label: &LabelTimes, air: &ShopReading, pace: Pace) -> f64 {
    if air.temperature.get::<degree_celsius>() < COLDEST_CELSIUS {
        return 0.0;
    }
    let warmth = PER_TEN_KELVIN
        .at(pace)
        .powf(-tens_colder(label.at, air.temperature).max(0.0));
    let damp = match chemistry {
        Chemistry::MoistureSilicone { .. } => dampness(air.humidity, pace),
        _ => 1.0,
    };
    warmth * damp
}

/// Why it doesn't cure in this air.
pub(super) fn hindrance(air: &ShopReading) -> NoCure {
    if air.temperature.get::<degree_celsius>() < COLDEST_CELSIUS {
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

fn dampness(air: Option<Ratio>, pace: Pace) -> f64 {
    let humidity = humidity(air).unwrap_or(if pace == Pace::Slow {
        OPEN_HUMIDITY
    } else {
        LABEL_HUMIDITY
    });
    if humidity < DRIEST {
        0.0
    } else {
        (humidity / LABEL_HUMIDITY).min(1.0)
    }
}
