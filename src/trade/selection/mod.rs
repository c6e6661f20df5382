//! Choosing a part by its size: packs of shims, washers and shells by ranges or codes, and the change of a
//! pack after a trial.
//!
//! Sizes are plain numbers in the manual's own unit, whichever: here they are only added and compared. They
//! are counted in millionths of that unit, so that no sum is off in its last bit.

mod pack;
mod table;
mod trial;

pub use pack::{Found, MOST_SHIMS, Pack, Size, pack};
pub use table::{Codes, NoPart, place, row_of};
pub use trial::{Change, Thicker, change};

use super::quantity::{decimals_of, fixed};
use serde::{Deserialize, Serialize};

/// What counts of readings at several places.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Counts {
    /// Their mean.
    #[default]
    Mean,
    /// The greatest.
    Greatest,
    /// The least.
    Least,
}

impl Counts {
    /// Every one with its words.
    pub const ALL: [(Self, &'static str); 3] = [
        (Self::Mean, "their mean"),
        (Self::Greatest, "the greatest"),
        (Self::Least, "the least"),
    ];

    /// What counts of these readings; none of none.
    pub fn of(self, readings: &[f64]) -> Option<f64> {
        let first = *readings.first()?;
        let found = match self {
            Self::Mean => readings.iter().sum::<f64>() / readings.len() as f64,
            Self::Greatest => readings.iter().fold(first, |most, one| most.max(*one)),
            Self::Least => readings.iter().fold(first, |least, one| least.min(*one)),
        };
        Some(tidy(found))
    }
}

const MILLION: f64 = 1e6;

/// A size in millionths; what is no number or beyond all sense is as far off as can be.
fn millionths(size: f64) -> i64 {
    (size * MILLION).round() as i64
}

/// A size without what arithmetic leaves in the last bits: to a millionth of its unit.
pub fn tidy(size: f64) -> f64 {
    (size * MILLION).round() / MILLION
}

/// A size in figures, with so many decimals and two more where it has them: "0.10", "0.125", "0.4267" of a
/// mean.
pub fn figures(size: f64, decimals: u8) -> String {
    fixed(size, decimals_of(size, 1e-7).clamp(decimals, decimals + 2))
}
