//! From a class to its limits: the rules of ISO 286-1:2010, clause 4 and tables 2 to 5.

use super::class::{Feature, GRADES, Position, ToleranceClass};
use super::{FitError, table};
use crate::trade::quantity::Length;
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use uom::si::length::{micrometer, millimeter};

/// Deviations from the nominal size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Limits {
    /// The lower deviation.
    #[serde(rename = "lower_mm", with = "stored::millimetres")]
    pub lower: Length,
    /// The upper deviation.
    #[serde(rename = "upper_mm", with = "stored::millimetres")]
    pub upper: Length,
}

impl Limits {
    pub(crate) fn micrometres(lower: f64, upper: f64) -> Self {
        Self {
            lower: Length::new::<micrometer>(lower),
            upper: Length::new::<micrometer>(upper),
        }
    }
}

/// The nominal size in mm when the tables hold it. A size that came through another unit is off in
/// its last bits only; rounding to a nanometre keeps it in its own band.
pub(crate) fn checked_nominal(nominal: Length) -> Result<f64, FitError> {
    let mm = (nominal.get::<millimeter>() * 1e6).round() / 1e6;
    if (1.0..=630.0).contains(&mm) {
        Ok(mm)
    } else {
        Err(FitError::Size(mm))
    }
}

/// The limit deviations of a tolerance class at a nominal size of 1 to 630 mm, grades 5 to 11.
///
/// Source: ISO 286-1:2010, with the Δ rule for holes K to U to 500 mm and its exceptions. Classes the standard
/// leaves out at that size (T up to 24 mm, J outside grades 6 to 8 and j outside 5 to 7, both over 500 mm, K over grade 8)
/// are refused.
pub fn limits(nominal: Length, class: ToleranceClass) -> Result<Limits, FitError> {
    let mm = checked_nominal(nominal)?;
    if !GRADES.contains(&class.grade) {
        return Err(FitError::Grade(class.grade));
    }
    let tolerance = table::tolerance(mm, class.grade).ok_or(FitError::Size(mm))?;
    let limits = match class.feature {
        Feature::Hole => hole(mm, class, tolerance),
        Feature::Shaft => shaft(mm, class, tolerance),
    };
    limits.ok_or(FitError::NotDefined(class))
}

fn shaft(mm: f64, class: ToleranceClass, tolerance: f64) -> Option<Limits> {
    let from_below = |lower: f64| Limits::micrometres(lower, lower + tolerance);
    let from_above = |upper: f64| Limits::micrometres(upper - tolerance, upper);
    Some(match class.position {
        Position::H => from_above(0.0),
        Position::Js => from_below(-tolerance / 2.0),
        Position::J => from_below(-table::shaft_j(mm, class.grade)?),
        Position::K if class.grade > 7 => from_below(0.0),
        p if p < Position::H => from_above(-table::amount(mm, p)?),
        p => from_below(table::amount(mm, p)?),
    })
}

fn hole(mm: f64, class: ToleranceClass, tolerance: f64) -> Option<Limits> {
    let from_below = |lower: f64| Limits::micrometres(lower, lower + tolerance);
    let from_above = |upper: f64| Limits::micrometres(upper - tolerance, upper);
    let no_shift = mm <= 3.0 || mm > 500.0;
    let grade = class.grade;
    Some(match class.position {
        Position::H => from_below(0.0),
        Position::Js => from_below(-tolerance / 2.0),
        Position::J => from_above(table::hole_j(mm, grade)?),
        Position::K if grade > 8 && mm > 3.0 => return None,
        Position::N if grade > 8 && !no_shift => from_above(0.0),
        p if p < Position::H => from_below(table::amount(mm, p)?),
        // The standard's own exception to the Δ rule.
        Position::M if grade == 6 && mm > 250.0 && mm <= 315.0 => from_above(-9.0),
        p => {
            // The fine grades K, M, N to IT8 and P to U to IT7 are shifted so that, say, H7/p6 and
            // P7/h6 give the same fit.
            let shifted = !no_shift && grade <= if p <= Position::N { 8 } else { 7 };
            let shift = if shifted {
                tolerance - table::tolerance(mm, grade - 1)?
            } else {
                0.0
            };
            from_above(shift - table::amount(mm, p)?)
        }
    })
}
