//! A torque wrench: what to set on its scale, and which of several to take.

mod check;
mod setting;

pub use check::WrenchError;
pub use setting::{LOW_PART, RangeVerdict, ScaleSetting, Setting};

use super::quantity::{Torque, TorqueUnit};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;
use uom::si::torque::newton_meter;

/// What a wrench shows its torque on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WrenchKind {
    /// Lines on the tube, and a thimble whose divisions lie between two of them.
    Thimble {
        /// From one line on the tube to the next, in the wrench's unit.
        main_division: f64,
    },
    /// A pointer over a dial.
    Dial,
    /// Digits; `division` is their last step.
    Digital,
    /// No scale: breaks at one torque (`min` and `max` are both that), or is set on a tester.
    Preset,
}

/// A torque wrench; its numbers are in `unit`.
///
/// One out of a file may hold anything: ask [`Wrench::check`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Wrench {
    /// What its owner calls it.
    pub name: String,
    /// The unit of its scale.
    pub unit: TorqueUnit,
    /// Lowest marked value.
    pub min: f64,
    /// Highest marked value.
    pub max: f64,
    /// Smallest division.
    pub division: f64,
    /// What it shows its torque on.
    pub kind: WrenchKind,
    /// Permissible deviation either way, as a fraction of the set value: 0.04 is ±4 %.
    pub accuracy: f64,
}

impl Wrench {
    /// Permissible deviation of ISO 6789 for the common indicating and setting tools: ±6 % up to
    /// 10 N·m maximum, ±4 % above.
    pub fn typical_accuracy(max: Torque) -> f64 {
        if max.get::<newton_meter>() <= 10.0 {
            0.06
        } else {
            0.04
        }
    }
}

/// Which wrench to take for `target`: its place in `wrenches`, none when no scale has it.
///
/// First those whose scale has the target above its low part, then those that set within `band`,
/// then the smallest sum of rounding and accuracy, then the order given.
pub fn choose(wrenches: &[Wrench], target: Torque, band: Option<(Torque, Torque)>) -> Option<usize> {
    let rank = |wrench: &Wrench| {
        let setting = wrench.setting(target).ok()?;
        let part = match setting.range {
            RangeVerdict::Inside => 0,
            RangeVerdict::LowPart => 1,
            RangeVerdict::BelowScale | RangeVerdict::AboveScale => return None,
        };
        let misses_band = band.is_some_and(|band| !setting.inside(band));
        Some((part, misses_band, setting.rounding.abs() + wrench.accuracy))
    };
    let ranked = wrenches
        .iter()
        .enumerate()
        .filter_map(|(i, wrench)| Some((i, rank(wrench)?)));
    let best = ranked.min_by(|a, b| a.1.partial_cmp(&b.1).unwrap_or(Ordering::Equal));
    best.map(|(i, _)| i)
}
