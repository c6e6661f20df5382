//! What may have been meant: the same digits in another unit, or with the point elsewhere.

use super::Verdict;
use super::window::Window;
use crate::trade::quantity::{TorqueUnit, number, shortest};
use serde::{Deserialize, Serialize};
use uom::si::ratio::ratio;

/// How a reading differs from what was typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Slip {
    /// Same number, other unit.
    OtherUnit,
    /// Same unit, the decimal point moved.
    DecimalPoint {
        /// The reading is the typed value times ten to this power.
        shift: i8,
    },
}

/// A value that would be plausible in place of what was typed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: TorqueUnit,
    /// What would have gone wrong.
    pub why: Slip,
}

impl Reading {
    /// "7.2 ft·lb".
    pub fn text(&self) -> String {
        format!("{} {}", shortest(self.value), self.unit.symbol())
    }
}

/// How unlikely a unit is to be the one meant, in nepers (a factor e away from the typical torque
/// weighs 1). Common practice, no source: manuals and wrenches mostly use the first three.
static UNIT_WEIGHTS: [(TorqueUnit, f64); 6] = [
    (TorqueUnit::NewtonMetre, 0.0),
    (TorqueUnit::PoundFoot, 0.0),
    (TorqueUnit::PoundInch, 0.0),
    (TorqueUnit::KilogramMetre, 0.3),
    (TorqueUnit::KilogramCentimetre, 0.6),
    (TorqueUnit::OunceInch, 0.9),
];
/// The same for a moved point, by places moved.
static SHIFT_WEIGHTS: [(i8, f64); 4] = [(1, 0.2), (-1, 0.2), (2, 1.2), (-2, 1.2)];

/// Every plausible reading of the typed digits, likeliest first: nearest to the typical torque,
/// with the unlikelier slips held back.
pub(super) fn likely(value: f64, unit: TorqueUnit, limits: &Window) -> Vec<Reading> {
    let units = UNIT_WEIGHTS
        .iter()
        .filter(|(other, _)| *other != unit)
        .map(|&(other, weight)| {
            (
                Reading {
                    value,
                    unit: other,
                    why: Slip::OtherUnit,
                },
                weight,
            )
        });
    let shifts = SHIFT_WEIGHTS.iter().map(|&(shift, weight)| {
        let value = moved(value, shift);
        (
            Reading {
                value,
                unit,
                why: Slip::DecimalPoint { shift },
            },
            weight,
        )
    });
    let mut found: Vec<(f64, Reading)> = units
        .chain(shifts)
        .filter_map(|(reading, weight)| {
            let torque = reading.unit.torque(reading.value);
            let away = (torque / limits.typical).get::<ratio>().ln().abs();
            let plausible = limits.verdict(torque).0 == Verdict::Plausible;
            (plausible && away.is_finite()).then_some((away + weight, reading))
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found.into_iter().map(|(_, reading)| reading).collect()
}

/// `value` with its point moved, free of the last bits' noise.
fn moved(value: f64, shift: i8) -> f64 {
    number(&format!("{:.11e}", value * 10f64.powi(i32::from(shift)))).unwrap_or(value)
}
