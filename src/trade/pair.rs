//! Two printed readings of one torque: do they agree, and if not, which slip would explain it?

use super::quantity::{TorqueStatement, TorqueUnit};
use serde::{Deserialize, Serialize};

/// Which of two readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The first.
    First,
    /// The second.
    Second,
}

/// A slip that may have happened to one reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Slip {
    /// The number belongs to this unit.
    Unit(TorqueUnit),
    /// The decimal point belongs this many places further right; negative, further left.
    Point(i8),
}

/// A reading that would make the two agree.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Likely {
    /// Which reading is changed.
    pub side: Side,
    /// How.
    pub slip: Slip,
    /// What it then says.
    pub statement: TorqueStatement,
}

/// Whether two readings state one torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Agreement {
    /// They do, within the rounding of their printed digits.
    Agree,
    /// They don't.
    Differ {
        /// First over second.
        ratio: f64,
        /// Readings that would make them agree, likeliest first; may be empty.
        likely: Vec<Likely>,
    },
    /// One of them is no torque: zero, negative, not a number, out of order.
    Unsound,
}

/// Whether `a` and `b` state one torque within the rounding of their printed digits.
///
/// Each printed number may be off by half a unit in its last place. Manuals also convert from a
/// number already rounded, or count a kilogram-force as ten newtons, so half a unit more of the
/// coarser number is allowed. Two bands are compared end by end; a single number must lie in the
/// other's band or as near to it as rounding goes.
///
/// Where they differ, every other unit and every decimal slip of one and two places is tried on
/// either side; those that agree without the extra allowance are listed, the closest first, a unit
/// before a decimal point.
pub fn agree(a: &TorqueStatement, b: &TorqueStatement) -> Agreement {
    if a.check().is_err() || b.check().is_err() {
        return Agreement::Unsound;
    }
    if within(a, b, 1.0) {
        return Agreement::Agree;
    }
    let ratio = newton_metres(a, a.target) / newton_metres(b, b.target);
    let mut likely: Vec<(Likely, f64)> = Vec::new();
    for (side, one, other) in [(Side::First, a, b), (Side::Second, b, a)] {
        for (slip, statement) in slips(one) {
            if within(&statement, other, 0.0) {
                let left = newton_metres(&statement, statement.target) / newton_metres(other, other.target);
                likely.push((
                    Likely {
                        side,
                        slip,
                        statement,
                    },
                    left.ln().abs(),
                ));
            }
        }
    }
    likely.sort_by(|x, y| rank(&x.0).cmp(&rank(&y.0)).then(x.1.total_cmp(&y.1)));
    Agreement::Differ {
        ratio,
        likely: likely.into_iter().map(|(likely, _)| likely).collect(),
    }
}

/// A unit is mistaken more often than a point is lost, and one place more often than two.
fn rank(likely: &Likely) -> u8 {
    match likely.slip {
        Slip::Unit(_) => 0,
        Slip::Point(places) => places.unsigned_abs(),
    }
}

fn newton_metres(statement: &TorqueStatement, value: f64) -> f64 {
    value * statement.unit.newton_metres()
}

/// Half a unit in the last printed place.
fn half_unit(statement: &TorqueStatement) -> f64 {
    newton_metres(statement, 0.5 * 10f64.powi(-i32::from(statement.decimals)))
}

/// Whether the readings agree within both roundings and `extra` times the coarser one.
fn within(a: &TorqueStatement, b: &TorqueStatement, extra: f64) -> bool {
    let (ha, hb) = (half_unit(a), half_unit(b));
    // Printed halves convert to numbers that meet exactly; a last bit must not part them.
    let allowed = (ha + hb + extra * ha.max(hb)) * (1.0 + 1e-9);
    let (a_low, a_high) = (newton_metres(a, a.low), newton_metres(a, a.high));
    let (b_low, b_high) = (newton_metres(b, b.low), newton_metres(b, b.high));
    if a_low < a_high && b_low < b_high {
        return (a_low - b_low).abs() <= allowed && (a_high - b_high).abs() <= allowed;
    }
    a_low - b_high <= allowed && b_low - a_high <= allowed
}

/// Every slip of one reading.
fn slips(statement: &TorqueStatement) -> Vec<(Slip, TorqueStatement)> {
    let units = TorqueUnit::ALL.into_iter().filter(|unit| *unit != statement.unit);
    let units = units.map(|unit| (Slip::Unit(unit), TorqueStatement { unit, ..*statement }));
    let points = [1, -1, 2, -2].map(|places: i8| (Slip::Point(places), moved_point(statement, places)));
    units.chain(points).collect()
}

/// The statement with its decimal point `places` further right.
fn moved_point(statement: &TorqueStatement, places: i8) -> TorqueStatement {
    let factor = 10f64.powi(i32::from(places));
    let decimals = i16::from(statement.decimals) - i16::from(places);
    TorqueStatement {
        target: statement.target * factor,
        low: statement.low * factor,
        high: statement.high * factor,
        decimals: decimals.clamp(0, 12) as u8,
        ..*statement
    }
}
