//! A torque as a manual states it: the number, its range or tolerance, in the manual's own unit.

use super::print::{LAST_BITS, decimals_of, fixed};
use super::text_error::{Problem, TextError};
use super::typed::Unit;
use super::{Torque, TorqueUnit};
use serde::{Deserialize, Serialize};

/// How a manual states a torque.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StatementForm {
    /// One number: 9 N·m.
    Single,
    /// Two ends: 9–12 N·m; the target is the middle.
    Range,
    /// A number that must not be passed: at most 12 N·m; it is the target too.
    AtMost,
    /// A number and how far it may be missed: 9 ± 1 N·m, 9 +2/−0 N·m.
    Tolerance,
}

/// A torque as a manual states it; the numbers are in `unit`.
///
/// One that was read from text is always sound; one that came out of a file may be anything:
/// ask [`TorqueStatement::check`] before using it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TorqueStatement {
    /// What to aim at.
    pub target: f64,
    /// Lowest allowed; the target itself for a single number.
    pub low: f64,
    /// Highest allowed; the target itself for a single number.
    pub high: f64,
    /// The unit of the three numbers.
    pub unit: TorqueUnit,
    /// Digits printed after the point; in a range, those of the finer end.
    pub decimals: u8,
    /// How it was written.
    pub form: StatementForm,
}

impl TorqueStatement {
    /// One number of `unit`, printed with `decimals` digits after the point.
    pub fn single(value: f64, unit: TorqueUnit, decimals: u8) -> Self {
        Self {
            target: value,
            low: value,
            high: value,
            unit,
            decimals,
            form: StatementForm::Single,
        }
    }

    /// One number of `unit` that must not be passed.
    pub fn at_most(value: f64, unit: TorqueUnit, decimals: u8) -> Self {
        Self {
            form: StatementForm::AtMost,
            ..Self::single(value, unit, decimals)
        }
    }

    /// A range from `low` to `high` of `unit`, aiming at its middle.
    pub fn range(low: f64, high: f64, unit: TorqueUnit, decimals: u8) -> Self {
        Self {
            target: low + (high - low) / 2.0,
            low,
            high,
            unit,
            decimals,
            form: StatementForm::Range,
        }
    }

    /// `target` of `unit`, allowed to come out up to `up` above and `down` below.
    pub fn tolerance(target: f64, up: f64, down: f64, unit: TorqueUnit, decimals: u8) -> Self {
        let (low, high) = (target - down, target + up);
        Self {
            target,
            low,
            high,
            unit,
            decimals,
            form: StatementForm::Tolerance,
        }
    }

    /// The torque to aim at.
    pub fn torque(&self) -> Torque {
        self.unit.torque(self.target)
    }

    /// Lowest and highest allowed torque; both the target for a single number.
    pub fn band(&self) -> (Torque, Torque) {
        (self.unit.torque(self.low), self.unit.torque(self.high))
    }

    /// Whether the numbers make sense: finite, above zero, in order, not absurdly large.
    ///
    /// # Errors
    /// What is wrong, placed at the first character, as if the statement had just been typed.
    pub fn check(&self) -> Result<(), TextError> {
        let subject = TorqueUnit::SUBJECT;
        let problem = if ![self.target, self.low, self.high].iter().all(|x| x.is_finite()) {
            Problem::NumberExpected { found: String::new() }
        } else if self.target < 0.0 {
            Problem::Negative { what: subject.what }
        } else if self.target == 0.0 {
            Problem::Zero { what: subject.what }
        } else if self.low <= 0.0 {
            Problem::ToleranceTooWide
        } else if self.low > self.target || self.target > self.high {
            Problem::RangeReversed
        } else if self.unit.base(self.high) > subject.most {
            Problem::TooLarge {
                limit: subject.limit,
                why: subject.why,
            }
        } else {
            return Ok(());
        };
        Err(TextError::new(0, problem))
    }

    /// As a manual would print it: "9–12 N·m", "9 ± 1 N·m", "9 +2/−0 N·m", "7.2 ft·lb".
    pub fn text(&self) -> String {
        let unit = self.unit.symbol();
        let number = |value| fixed(value, self.decimals);
        match self.form {
            StatementForm::Single => format!("{} {unit}", number(self.target)),
            StatementForm::AtMost => format!("at most {} {unit}", number(self.target)),
            StatementForm::Range => format!("{}–{} {unit}", number(self.low), number(self.high)),
            StatementForm::Tolerance => {
                let up = self.deviation(self.high - self.target);
                let down = self.deviation(self.target - self.low);
                let target = number(self.target);
                if up == down {
                    format!("{target} ± {up} {unit}")
                } else {
                    format!("{target} +{up}/−{down} {unit}")
                }
            }
        }
    }

    /// A deviation in as few digits as it needs; what subtraction left in the last bits is dropped.
    fn deviation(&self, value: f64) -> String {
        fixed(value, decimals_of(value, self.target.abs() * LAST_BITS))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::quantity::parse_torque;

    #[test]
    fn a_statement_prints_as_a_manual_prints_it() {
        for text in [
            "9–12 N·m",
            "at most 9.5 N·m",
            "9 ± 1 N·m",
            "9 +2/−0 N·m",
            "7.2 ft·lb",
            "86 in·lb",
            "1.20 kgf·m",
            "9.1 ± 0.1 N·m",
        ] {
            assert_eq!(parse_torque(text, None).map(|s| s.text()), Ok(text.to_owned()));
        }
    }

    #[test]
    fn what_a_file_may_hold_is_checked() {
        let sound = TorqueStatement::range(9.0, 12.0, TorqueUnit::NewtonMetre, 0);
        assert_eq!(sound.check(), Ok(()));
        for (low, target, high) in [
            (f64::NAN, 9.0, 9.0),
            (9.0, f64::INFINITY, f64::INFINITY),
            (0.0, 9.0, 12.0),
            (-1.0, -1.0, -1.0),
            (0.0, 0.0, 0.0),
            (10.0, 9.0, 12.0),
            (8.0, 9.0, 8.5),
            (9.0, 9.0, 30_000.0),
        ] {
            assert!(
                TorqueStatement {
                    low,
                    target,
                    high,
                    ..sound
                }
                .check()
                .is_err(),
                "{low} {target} {high}"
            );
        }
    }
}
