//! Flatness of a face by straightedge and feeler, straightness of an edge by heights along it.

use super::{MeasuringError, ends, mm, reading_mm, readings_mm, size_mm};
use crate::trade::application::sizes::{ANAEROBIC_GAP_MM, SILICONE_GAP_MM};
use crate::trade::quantity::Length;
use uom::si::length::millimeter;

/// Lines that a face is read along: two long sides, two short ones, both diagonals.
pub const LINES: usize = 6;

/// The worst of some lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flat {
    /// The thickest feeler that went under the straightedge.
    pub worst: Length,
    /// On which line, from 0.
    pub line: usize,
}

/// The worst of the feelers that went under along each line; [`LINES`] are usual.
///
/// # Errors
/// No line, or a feeler below zero.
pub fn flatness(lines: &[Length]) -> Result<Flat, MeasuringError> {
    let all = readings_mm(lines, 1)?;
    let (least, worst) = ends(&all);
    if least < 0.0 {
        return Err(MeasuringError::Reading);
    }
    let line = all.iter().position(|one| *one == worst).unwrap_or(0);
    Ok(Flat {
        worst: mm(worst),
        line,
    })
}

/// What fills a gap as wide as this.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bridge {
    /// Anaerobic flange sealant, between rigid faces.
    Anaerobic,
    /// Neutral-cure silicone.
    Silicone,
    /// Nothing that is relied on.
    Nothing,
}

/// The sealant that a gap allows, by the limits of the compound rules; which belongs there, the joint decides.
pub fn bridge(gap: Length) -> Bridge {
    let mm = gap.get::<millimeter>();
    if mm <= ANAEROBIC_GAP_MM {
        Bridge::Anaerobic
    } else if mm <= SILICONE_GAP_MM {
        Bridge::Silicone
    } else {
        Bridge::Nothing
    }
}

/// A limit "so much in so much of length", over this length; never under the limit itself for a shorter one.
///
/// # Errors
/// A length that is not above zero, a limit below it.
pub fn limit_over(limit: Length, in_each: Length, length: Length) -> Result<Length, MeasuringError> {
    let share = size_mm(length)? / size_mm(in_each).map_err(|_| MeasuringError::Base)?;
    let limit = reading_mm(limit)?;
    if limit < 0.0 {
        return Err(MeasuringError::Limits);
    }
    Ok(mm(limit * share.max(1.0)))
}

/// How straight an edge is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Straight {
    /// Highest to lowest from the line between its ends, as a straightedge on two equal blocks tells it.
    pub from_ends: Length,
    /// Between the two closest parallel lines that hold all of it (ISO 12780, least zone): never more.
    pub least_zone: Length,
}

/// Straightness of heights read at equal steps along an edge.
///
/// The least zone lies on a line through two of the points: every pair is tried, so it is exact; for some
/// hundred points at most.
///
/// # Errors
/// Fewer than three heights, or an absurd one.
pub fn straightness(heights: &[Length]) -> Result<Straight, MeasuringError> {
    let all = readings_mm(heights, 3)?;
    let last = all.len() - 1;
    let ends_slope = (all[last] - all[0]) / last as f64;
    let mut least = zone(&all, ends_slope);
    let from_ends = least;
    for one in 0..last {
        for other in one + 1..=last {
            let slope = (all[other] - all[one]) / (other - one) as f64;
            least = least.min(zone(&all, slope));
        }
    }
    Ok(Straight {
        from_ends: mm(from_ends),
        least_zone: mm(least),
    })
}

/// Highest to lowest from any line of that slope.
fn zone(heights: &[f64], slope: f64) -> f64 {
    let left: Vec<f64> = heights
        .iter()
        .enumerate()
        .map(|(at, height)| height - slope * at as f64)
        .collect();
    let (low, high) = ends(&left);
    high - low
}
