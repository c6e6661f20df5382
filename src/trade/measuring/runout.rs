//! Run-out of a shaft or a face under a dial indicator.

use super::{MeasuringError, ends, mean, mm, reading_mm, readings_mm, size_mm};
use crate::trade::quantity::{Angle, Length};
use std::f64::consts::PI;
use uom::si::angle::radian;
use uom::si::length::millimeter;

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

impl RunOut {
    /// The total reading at most: what was read swings over all of it, out of round and all, and a few places may
    /// miss the high spot that the fit sees.
    pub fn most(&self) -> Length {
        self.total.max(2.0 * self.offset)
    }
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

/// A place of a shaft: its total indicator reading, and the angle of its high spot from a mark that holds for the
/// whole shaft.
pub type Swing = (Length, Angle);

/// Its part along the mark and a quarter turn on, mm of total reading.
fn parts_mm((total, high): Swing) -> (f64, f64) {
    let (sin, cos) = high.get::<radian>().sin_cos();
    (total.get::<millimeter>() * cos, total.get::<millimeter>() * sin)
}

/// How far two places of one shaft run apart, as a total indicator reading: the sum where the high spots are
/// opposite, the difference where they are in line, √(x² + y²) at right angles (vectors; the manuals' rules for
/// neighbouring journals come out of it).
pub fn between(one: Swing, other: Swing) -> Length {
    let (one, other) = (parts_mm(one), parts_mm(other));
    mm((one.0 - other.0).hypot(one.1 - other.1))
}

/// What readings round one turn say once the line through two journals that run out themselves is taken off each
/// at its angle: on centres or in a chuck, where the shaft's own line does not turn true. What is not round stays.
/// The journals' high spots from the first reading on; `at` is the place's way from the first journal towards the
/// second, below zero or over `span` where it lies outside them; `span` the way from the one to the other.
///
/// r(θ) less half of \[e₁ + (e₂ − e₁)·at/span\] along θ, vectors (run-out to a common axis A–B, as ISO 1101 tells
/// it, from memory). A high spot of what runs true means nothing.
///
/// # Errors
/// Fewer than three readings, a span that is not above zero, a place absurdly far off, an absurd reading.
pub fn off_line(
    readings: &[Length],
    at: Length,
    (first, second): (Swing, Swing),
    span: Length,
) -> Result<RunOut, MeasuringError> {
    let all = readings_mm(readings, 3)?;
    for (total, _) in [first, second] {
        reading_mm(total)?;
    }
    let span = size_mm(span).map_err(|_| MeasuringError::Base)?;
    let way = at.get::<millimeter>();
    if way.is_nan() || way.abs() >= FARTHEST_MM {
        return Err(MeasuringError::Size);
    }
    let share = way / span;
    let (first, second) = (parts_mm(first), parts_mm(second));
    let line = |first: f64, second: f64| first + (second - first) * share;
    let (x, y) = (line(first.0, second.0), line(first.1, second.1));
    let step = 2.0 * PI / all.len() as f64;
    let left = |(turned, read): (usize, &f64)| {
        let (sin, cos) = (step * turned as f64).sin_cos();
        mm(read - (x * cos + y * sin) / 2.0)
    };
    let left: Vec<Length> = all.iter().enumerate().map(left).collect();
    round_one_turn(&left)
}

/// No shaft is longer.
const FARTHEST_MM: f64 = 10_000.0;
