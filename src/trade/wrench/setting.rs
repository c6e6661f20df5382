//! A torque as a setting on a wrench's scale.

use super::{Wrench, WrenchError, WrenchKind};
use crate::trade::quantity::{
    LAST_BITS, StatementForm, Torque, TorqueStatement, TorqueUnit, Unit, decimals_of, fixed,
};
use serde::{Deserialize, Serialize};

/// Where a torque lies on a wrench's scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum RangeVerdict {
    /// Under the lowest mark: another wrench.
    BelowScale,
    /// On the scale, but under 20 % of its maximum, where a wrench need not have been tested.
    LowPart,
    /// On the scale.
    Inside,
    /// Over the highest mark: another wrench.
    AboveScale,
}

/// What to set on a wrench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// The value on the wrench's scale, a whole number of divisions; off the scale it is the target
    /// rounded alike, to be shown beside the scale's ends but not set.
    pub value: f64,
    /// The wrench's unit.
    pub unit: TorqueUnit,
    /// Decimals that print the value and every division.
    pub decimals: u8,
    /// What rounding to the division adds, as a fraction of the target; negative when it takes away.
    pub rounding: f64,
    /// Where the target lies on the scale.
    pub range: RangeVerdict,
    /// The least that may be applied at this setting, by the wrench's accuracy.
    pub low: Torque,
    /// The most that may be applied at this setting.
    pub high: Torque,
    /// Line and thimble divisions, on a wrench that has them.
    pub scale: Option<ScaleSetting>,
}

/// A setting on a thimble scale: the line on the tube, then divisions of the thimble past it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ScaleSetting {
    /// The line last passed, in the wrench's unit.
    pub main: f64,
    /// Divisions of the thimble past that line.
    pub divisions: u32,
    /// What one division is worth.
    pub division: f64,
}

/// Below this share of the maximum a wrench is in the low part of its scale: the lowest test point
/// of ISO 6789:2003. The 2017 edition starts at the lowest marked value.
pub const LOW_PART: f64 = 0.2;
impl Wrench {
    /// The setting nearest to `target`; halfway between two divisions, the higher.
    ///
    /// # Errors
    /// A wrench that fails its check, or a target that isn't above zero or is over 20 000 N·m. A
    /// target off the scale is no error but a verdict in the answer.
    pub fn setting(&self, target: Torque) -> Result<Setting, WrenchError> {
        let wanted = self.wanted(target)?;
        let nearest = ((wanted - self.start()) / self.division).round();
        let on_scale = matches!(self.verdict(wanted), RangeVerdict::LowPart | RangeVerdict::Inside);
        let (first, last) = self.counts(self.min, self.max);
        let count = if on_scale {
            nearest.max(first).min(last)
        } else {
            nearest
        };
        Ok(self.setting_at(count, wanted))
    }

    /// The setting nearest to the statement's target that lies within its band; the nearest of all
    /// when no division falls into the band: "9 +2/−0" by divisions of 0.8 is set at 9.6, not 8.8.
    ///
    /// # Errors
    /// As [`Wrench::setting`].
    pub fn setting_for(&self, statement: &TorqueStatement) -> Result<Setting, WrenchError> {
        let nearest = self.setting(statement.torque())?;
        if statement.form == StatementForm::AtMost {
            return self.not_over(statement, nearest);
        }
        let band = statement.band();
        if nearest.inside(band) {
            return Ok(nearest);
        }
        let (low, high) = (self.unit.value_of(band.0), self.unit.value_of(band.1));
        let (first, last) = self.counts(low.max(self.min), high.min(self.max));
        let edge = if nearest.value < low { first } else { last };
        let within = self.setting_at(edge, self.wanted(statement.torque())?);
        Ok(if first <= last && within.inside(band) {
            within
        } else {
            nearest
        })
    }

    /// The last division that doesn't pass the most that is allowed; the nearest where none does.
    fn not_over(&self, statement: &TorqueStatement, nearest: Setting) -> Result<Setting, WrenchError> {
        let wanted = self.wanted(statement.torque())?;
        let (first, last) = self.counts(self.min, wanted.min(self.max));
        let under = self.setting_at(last, wanted);
        Ok(if first <= last { under } else { nearest })
    }

    /// The first and the last division between two values; the first is past the last when there is
    /// none.
    fn counts(&self, low: f64, high: f64) -> (f64, f64) {
        let count = |value: f64| (value - self.start()) / self.division;
        ((count(low) - LAST_BITS).ceil(), (count(high) + LAST_BITS).floor())
    }

    fn wanted(&self, target: Torque) -> Result<f64, WrenchError> {
        self.check()?;
        let wanted = self.unit.value_of(target);
        if !(wanted > 0.0 && self.unit.base(wanted) <= TorqueUnit::SUBJECT.most) {
            return Err(WrenchError::Target);
        }
        Ok(wanted)
    }

    /// Where divisions are counted from: the lowest mark when that is a line on the tube (the scale
    /// is then a whole number of lines long) or the only value, else zero.
    fn start(&self) -> f64 {
        let lines = match self.kind {
            WrenchKind::Thimble { main_division } => (self.max - self.min) / main_division,
            WrenchKind::Preset if self.min == self.max => 0.0,
            _ => return 0.0,
        };
        if (lines - lines.round()).abs() < LAST_BITS {
            self.min
        } else {
            0.0
        }
    }

    /// The setting `count` divisions past the start.
    fn setting_at(&self, count: f64, wanted: f64) -> Setting {
        let fixed_value = self.min == self.max;
        let start = self.start();
        let count = if fixed_value { 0.0 } else { count };
        let slack = self.division * LAST_BITS;
        let decimals = decimals_of(self.division, slack).max(decimals_of(start, slack));
        let value = round_to(start + count * self.division, decimals);
        let range = self.verdict(wanted);
        let on_scale = matches!(range, RangeVerdict::LowPart | RangeVerdict::Inside);
        Setting {
            value,
            unit: self.unit,
            decimals,
            rounding: (value - wanted) / wanted,
            range,
            low: self.unit.torque(value * (1.0 - self.accuracy)),
            high: self.unit.torque(value * (1.0 + self.accuracy)),
            scale: if on_scale {
                self.scale_setting(count, start)
            } else {
                None
            },
        }
    }

    fn verdict(&self, wanted: f64) -> RangeVerdict {
        // A converted number may miss a mark by a last bit; that is no reason to refuse the mark.
        let slack = self.division * LAST_BITS;
        let preset_reach = if self.min == self.max {
            self.max * self.accuracy
        } else {
            0.0
        };
        if wanted < self.min - slack - preset_reach {
            RangeVerdict::BelowScale
        } else if wanted > self.max + slack + preset_reach {
            RangeVerdict::AboveScale
        } else if wanted < LOW_PART * self.max - slack {
            RangeVerdict::LowPart
        } else {
            RangeVerdict::Inside
        }
    }

    fn scale_setting(&self, count: f64, start: f64) -> Option<ScaleSetting> {
        let WrenchKind::Thimble { main_division } = self.kind else {
            return None;
        };
        let per_line = (main_division / self.division).round();
        let line = (count / per_line).floor();
        let main = start + line * main_division;
        let decimals = decimals_of(main_division, self.division * LAST_BITS);
        Some(ScaleSetting {
            main: round_to(main, decimals.max(decimals_of(start, self.division * LAST_BITS))),
            divisions: (count - line * per_line) as u32,
            division: self.division,
        })
    }
}

/// `value` without what multiplication left behind its last decimal.
fn round_to(value: f64, decimals: u8) -> f64 {
    let scale = 10f64.powi(i32::from(decimals));
    (value * scale).round() / scale
}

impl Setting {
    /// The number to set, without its unit.
    pub fn text(&self) -> String {
        fixed(self.value, self.decimals)
    }

    /// Whether the set value lies within `band`.
    ///
    /// A band of one value (a manual that gives no tolerance) holds a setting whose accuracy band
    /// reaches that value.
    pub fn inside(&self, band: (Torque, Torque)) -> bool {
        let value = self.unit.torque(self.value);
        let slack = value * LAST_BITS;
        if band.0 == band.1 {
            return self.low <= band.0 + slack && band.1 <= self.high + slack;
        }
        band.0 <= value + slack && value <= band.1 + slack
    }

    /// Whether all that the wrench's accuracy allows at this setting lies within `band`.
    pub fn surely_inside(&self, band: (Torque, Torque)) -> bool {
        band.0 <= self.low && self.high <= band.1
    }
}
