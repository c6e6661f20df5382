//! A torque wrench: what to set on its scale, and which of several to take.

use super::quantity::{Torque, TorqueStatement, TorqueUnit, Unit, decimals_of, fixed};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;
use std::fmt;
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

/// Why a wrench, or a torque for it, makes no sense.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WrenchError {
    /// The target is zero, negative or no number.
    Target,
    /// A number of the wrench is zero, negative or no number.
    NotPositive {
        /// Which.
        what: &'static str,
    },
    /// The scale ends where it starts, or before.
    NoRange,
    /// The maximum is more than any fastener here takes.
    TooLarge,
    /// The division is wider than the scale, or finer than anyone can read.
    Division,
    /// The lines on the tube are not a whole number of divisions apart.
    MainDivision,
    /// The accuracy is not a fraction of 0.2 or less.
    Accuracy,
}

impl fmt::Display for WrenchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Target => write!(f, "The torque must be a number above zero; type it again."),
            Self::NotPositive { what } => write!(f, "The wrench's {what} must be a number above zero."),
            Self::NoRange => write!(
                f,
                "The wrench's highest mark must be above its lowest; swap them."
            ),
            Self::TooLarge => write!(
                f,
                "The wrench's highest mark is over 20 000 N·m; check its unit and the decimal point."
            ),
            Self::Division => write!(
                f,
                "The wrench's smallest division must fit into its scale, at most 100 000 times; read it off \
                 the scale."
            ),
            Self::MainDivision => write!(
                f,
                "From one line on the tube to the next must be a whole number of thimble divisions; count them."
            ),
            Self::Accuracy => {
                write!(
                    f,
                    "The wrench's accuracy must be between 0 and 20 %; most are 4 or 6 %."
                )
            }
        }
    }
}

impl std::error::Error for WrenchError {}

/// Below this share of the maximum a wrench is in the low part of its scale: the lowest test point
/// of ISO 6789:2003. The 2017 edition starts at the lowest marked value.
const LOW_PART: f64 = 0.2;
/// The widest accuracy taken for one: anything beyond is a percentage typed as a fraction.
const WIDEST_ACCURACY: f64 = 0.2;
/// More divisions on a scale than any wrench shows.
const MOST_DIVISIONS: f64 = 100_000.0;

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

    /// Whether the wrench's own numbers make sense.
    ///
    /// # Errors
    /// The first that doesn't.
    pub fn check(&self) -> Result<(), WrenchError> {
        let numbers = [
            ("lowest mark", self.min),
            ("highest mark", self.max),
            ("smallest division", self.division),
            ("accuracy", self.accuracy),
        ];
        for (what, value) in numbers {
            if !(value.is_finite() && value > 0.0) {
                return Err(WrenchError::NotPositive { what });
            }
        }
        let one_value = self.kind == WrenchKind::Preset && self.min == self.max;
        if self.min >= self.max && !one_value {
            return Err(WrenchError::NoRange);
        }
        if self.unit.base(self.max) > TorqueUnit::SUBJECT.most {
            return Err(WrenchError::TooLarge);
        }
        let room = if one_value { self.max } else { self.max - self.min };
        if self.division > room || self.max / self.division > MOST_DIVISIONS {
            return Err(WrenchError::Division);
        }
        if let WrenchKind::Thimble { main_division } = self.kind {
            let per_line = main_division / self.division;
            let whole = (per_line - per_line.round()).abs() < 1e-6 && per_line.round() >= 1.0;
            if !whole || main_division > self.max {
                return Err(WrenchError::MainDivision);
            }
        }
        if self.accuracy > WIDEST_ACCURACY {
            return Err(WrenchError::Accuracy);
        }
        Ok(())
    }

    /// The setting nearest to `target`; halfway between two divisions, the higher.
    ///
    /// # Errors
    /// A wrench that fails its check, or a target that isn't above zero. A target off the scale is
    /// no error but a verdict in the answer.
    pub fn setting(&self, target: Torque) -> Result<Setting, WrenchError> {
        let wanted = self.wanted(target)?;
        let start = self.start();
        Ok(self.setting_at(((wanted - start) / self.division).round(), wanted))
    }

    /// The setting nearest to the statement's target that lies within its band; the nearest of all
    /// when no division falls into the band: "9 +2/−0" by divisions of 0.8 is set at 9.6, not 8.8.
    ///
    /// # Errors
    /// As [`Wrench::setting`].
    pub fn setting_for(&self, statement: &TorqueStatement) -> Result<Setting, WrenchError> {
        let nearest = self.setting(statement.torque())?;
        let band = statement.band();
        if nearest.inside(band) {
            return Ok(nearest);
        }
        let wanted = self.wanted(statement.torque())?;
        let (low, start) = (self.unit.value_of(band.0), self.start());
        let high = self.unit.value_of(band.1);
        let edge = if nearest.value < low {
            ((low - start) / self.division - 1e-9).ceil()
        } else {
            ((high - start) / self.division + 1e-9).floor()
        };
        let within = self.setting_at(edge, wanted);
        let usable = within.inside(band) && (self.min..=self.max).contains(&within.value);
        Ok(if usable { within } else { nearest })
    }

    fn wanted(&self, target: Torque) -> Result<f64, WrenchError> {
        self.check()?;
        let wanted = self.unit.value_of(target);
        // The upper bound keeps the count of divisions finite, not the fastener safe.
        if !(wanted > 0.0 && self.unit.base(wanted) < 1e9) {
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
        if (lines - lines.round()).abs() < 1e-6 {
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
        let slack = self.division * 1e-6;
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
        let slack = self.division * 1e-6;
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
        let decimals = decimals_of(main_division, self.division * 1e-6);
        Some(ScaleSetting {
            main: round_to(main, decimals.max(decimals_of(start, self.division * 1e-6))),
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
        let slack = value * 1e-9;
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
