//! Two printed readings of one torque: do they agree, and if not, which slip would explain it?

use super::quantity::{LAST_BITS, TorqueStatement, TorqueUnit};
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
/// number already rounded, or count a kilogram-force as ten newtons, so 2 % more is allowed. Two
/// bands are compared end by end; a single number must lie in the other's band, or as near to it as
/// that goes.
///
/// Where they differ, every other unit and every decimal slip of one and two places is tried on
/// either side, and those that would agree are listed, the closest first; of equally close ones a
/// unit before a decimal point. Numbers of one figure agree with much: 3 N·m and 3 ft·lb can't be told apart.
pub fn agree(a: &TorqueStatement, b: &TorqueStatement) -> Agreement {
    if a.check().is_err() || b.check().is_err() {
        return Agreement::Unsound;
    }
    if within(a, b) {
        return Agreement::Agree;
    }
    let ratio = newton_metres(a, a.target) / newton_metres(b, b.target);
    let mut likely: Vec<(u64, u8, Likely)> = Vec::new();
    for (side, one, other) in [(Side::First, a, b), (Side::Second, b, a)] {
        for (slip, statement) in slips(one) {
            if within(&statement, other) {
                likely.push((
                    apart(&statement, other),
                    rank(slip),
                    Likely {
                        side,
                        slip,
                        statement,
                    },
                ));
            }
        }
    }
    likely.sort_by_key(|(apart, rank, _)| (*apart, *rank));
    Agreement::Differ {
        ratio,
        likely: likely.into_iter().map(|(_, _, likely)| likely).collect(),
    }
}

/// How far two targets are apart, in millionths: fine enough to tell readings apart, coarse enough
/// for the same change made on either side to tie.
fn apart(a: &TorqueStatement, b: &TorqueStatement) -> u64 {
    let ratio = newton_metres(a, a.target) / newton_metres(b, b.target);
    (ratio.ln().abs() * 1e6).round() as u64
}

/// Of readings equally close, a unit is mistaken more often than a point is lost.
fn rank(slip: Slip) -> u8 {
    match slip {
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

/// What taking a kilogram-force for ten newtons adds: 1.97 %.
const TEN_NEWTONS: f64 = 10.0 / TorqueUnit::KilogramMetre.newton_metres() - 1.0;

/// Whether the readings agree within both roundings and the habit of ten newtons.
fn within(a: &TorqueStatement, b: &TorqueStatement) -> bool {
    let (a_low, a_high) = (newton_metres(a, a.low), newton_metres(a, a.high));
    let (b_low, b_high) = (newton_metres(b, b.low), newton_metres(b, b.high));
    // Printed halves convert to numbers that meet exactly; a last bit must not part them.
    let rounding = (half_unit(a) + half_unit(b)) * (1.0 + LAST_BITS);
    let near = |x: f64, y: f64| x - y <= rounding + TEN_NEWTONS * y;
    let same = |x: f64, y: f64| near(x, y) && near(y, x);
    if a_low < a_high && b_low < b_high {
        return same(a_low, b_low) && same(a_high, b_high);
    }
    near(a_low, b_high) && near(b_low, a_high)
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
