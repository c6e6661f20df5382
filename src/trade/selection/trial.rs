//! What to change of a pack after it was fitted, tightened and read.

use super::tidy;
use serde::{Deserialize, Serialize};

/// What a thicker pack does to the reading: the manual's drawing tells.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Thicker {
    /// It lowers it: a shim behind a bearing takes up end float.
    #[default]
    Lowers,
    /// It raises it: a shim under a cover gives end float.
    Raises,
}

impl Thicker {
    /// Every one with its words.
    pub const ALL: [(Self, &'static str); 2] = [
        (Self::Lowers, "lowers the reading"),
        (Self::Raises, "raises the reading"),
    ];
}

/// The change that brings the reading to the middle of its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// By how much the pack gets thicker; negative: thinner.
    pub by: f64,
    /// The least change that brings it within its limits.
    pub from: f64,
    /// The most.
    pub to: f64,
}

/// The change of a pack for a reading and its limits, `per` of pack for one of reading: 1 for end float in
/// the pack's own unit, the manual's figure for a turning torque.
///
/// Pack and reading go in proportion: right for end float, near enough for a small change of preload.
pub fn change(reading: f64, (least, most): (f64, f64), thicker: Thicker, per: f64) -> Change {
    let by = |wanted: f64| {
        let off = (reading - wanted) * per;
        tidy(match thicker {
            Thicker::Lowers => off,
            Thicker::Raises => -off,
        })
    };
    let ends = [by(least), by(most)];
    Change {
        by: by((least + most) / 2.0),
        from: ends[0].min(ends[1]),
        to: ends[0].max(ends[1]),
    }
}
