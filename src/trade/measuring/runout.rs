//! Run-out of a shaft or a face under a dial indicator.

use super::{MeasuringError, ends, mean, mm, reading_mm, readings_mm, size_mm};
use crate::trade::quantity::{Angle, Length};
use std::f64::consts::PI;
use uom::si::angle::radian;

/// The offset of a centre, or the bend of a shaft: half the total indicator reading (US Army
/// TM 10-3930-653-14&P).
pub fn offset(total: Length) -> Length {
    total / 2.0
}

/// What readings round one turn say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunOut {
    /// Greatest less least reading: the total indicator reading.
    pub total: Length,
    /// How far the centre lies off, by the fit.
    pub offset: Length,
    /// Where it is highest, from the first reading on, 0 to a turn.
    pub high_at: Angle,
    /// What is left of the total once the offset is taken out: the shaft is not round there. None of three
    /// readings, which any offset fits.
    pub out_of_round: Option<Length>,
}

/// Run-out of readings at equal steps round one turn, the first at 0, the last one step before the first again.
///
/// First harmonic by least squares: a = 2/n·Σ r·cos θ, b = 2/n·Σ r·sin θ, offset √(a² + b²), high spot at
/// atan2(b, a) (NIST/SEMATECH handbook 2.3, roundness; exact for equal steps).
///
/// # Errors
/// Fewer than three readings, or an absurd one.
pub fn round_one_turn(readings: &[Length]) -> Result<RunOut, MeasuringError> {
    let all = readings_mm(readings, 3)?;
    let n = all.len() as f64;
    let middle = mean(&all);
    let step = 2.0 * PI / n;
    let turned = |at: usize| step * at as f64;
    let sum = |part: fn(f64) -> f64| -> f64 {
        let parts = all.iter().enumerate();
        parts.map(|(at, r)| (r - middle) * part(turned(at))).sum::<f64>() * 2.0 / n
    };
    let (a, b) = (sum(f64::cos), sum(f64::sin));
    let rest: Vec<f64> = all
        .iter()
        .enumerate()
        .map(|(at, r)| r - middle - a * turned(at).cos() - b * turned(at).sin())
        .collect();
    let (low, high) = ends(&all);
    let (under, over) = ends(&rest);
    Ok(RunOut {
        total: mm(high - low),
        offset: mm(a.hypot(b)),
        high_at: Angle::new::<radian>(b.atan2(a).rem_euclid(2.0 * PI)),
        out_of_round: (all.len() > 3).then(|| mm(over - under)),
    })
}

/// A limit "so much for each so much of radius", at this radius: 0.001 in an inch, a face of 5 in: 0.005.
///
/// # Errors
/// A radius or a base that is not above zero, a limit below it.
pub fn limit_at(limit: Length, for_each: Length, radius: Length) -> Result<Length, MeasuringError> {
    let share = size_mm(radius)? / size_mm(for_each).map_err(|_| MeasuringError::Base)?;
    let limit = reading_mm(limit)?;
    if limit < 0.0 {
        return Err(MeasuringError::Limits);
    }
    Ok(mm(limit * share))
}

/// How far two places of one shaft run apart, as a total indicator reading, each with its total reading and the
/// angle of its high spot: the sum where the high spots are opposite, the difference where they are in line,
/// √(x² + y²) at right angles (vectors; the manuals' rules for neighbouring journals come out of it).
pub fn between(one: (Length, Angle), other: (Length, Angle)) -> Length {
    let part =
        |trig: fn(f64) -> f64| one.0 * trig(one.1.get::<radian>()) - other.0 * trig(other.1.get::<radian>());
    let (x, y) = (part(f64::cos), part(f64::sin));
    x.hypot(y)
}
