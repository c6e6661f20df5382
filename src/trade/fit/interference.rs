//! What two parts have to do with each other at 20 °C.

use super::FitError;
use super::class::{Feature, ToleranceClass};
use super::limits::{Limits, limits};
use crate::trade::bearing;
use crate::trade::growth::{GrowthError, size_at_20};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// Where a size comes from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SizeSource {
    /// A drawing's tolerance class.
    Class {
        /// The nominal size.
        #[serde(rename = "nominal_mm", with = "stored::millimetres")]
        nominal: Length,
        /// Its class; a capital letter for a hole.
        class: ToleranceClass,
    },
    /// The outside of a radial rolling bearing, Normal class.
    BearingOuter {
        /// The nominal outside diameter.
        #[serde(rename = "nominal_mm", with = "stored::millimetres")]
        nominal: Length,
    },
    /// The bore of a radial rolling bearing, Normal class.
    BearingBore {
        /// The nominal bore.
        #[serde(rename = "nominal_mm", with = "stored::millimetres")]
        nominal: Length,
    },
    /// The limits of the size at 20 °C, as the manual gives them.
    Between {
        /// The least size.
        #[serde(rename = "least_mm", with = "stored::millimetres")]
        least: Length,
        /// The most.
        #[serde(rename = "most_mm", with = "stored::millimetres")]
        most: Length,
    },
    /// A reading, with a steel instrument that shares the part's temperature.
    Measured {
        /// The reading.
        #[serde(rename = "size_mm", with = "stored::millimetres")]
        size: Length,
        /// The part's temperature.
        #[serde(rename = "at_c", with = "stored::celsius")]
        at: ThermodynamicTemperature,
        /// What the part is made of.
        material: Material,
    },
}

/// How much larger than its hole a part is, on the diameter, at 20 °C; negative is clearance.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Interference {
    /// The largest hole with the smallest part.
    #[serde(rename = "least_mm", with = "stored::millimetres")]
    pub least: Length,
    /// The smallest hole with the largest part.
    #[serde(rename = "most_mm", with = "stored::millimetres")]
    pub most: Length,
}

/// The largest part that limits or readings are taken for: past a flywheel's ring gear.
const LARGEST_MM: f64 = 10_000.0;

/// Sizes that differ by more than this share of the hole are a slip, not a fit.
const MISMATCH_SHARE: f64 = 0.01;

/// The smallest and the largest size that a source allows, at 20 °C.
pub fn size_range(source: &SizeSource) -> Result<(Length, Length), FitError> {
    let about = |nominal: Length, Limits { lower, upper }: Limits| (nominal + lower, nominal + upper);
    match *source {
        SizeSource::Class { nominal, class } => Ok(about(nominal, limits(nominal, class)?)),
        SizeSource::BearingOuter { nominal } => Ok(about(nominal, bearing::outer_limits(nominal)?)),
        SizeSource::BearingBore { nominal } => Ok(about(nominal, bearing::bore_limits(nominal)?)),
        SizeSource::Between { least, most } => {
            let (low, high) = (least.get::<millimeter>(), most.get::<millimeter>());
            if low > 0.0 && low <= high && high < LARGEST_MM {
                Ok((least, most))
            } else {
                Err(FitError::Between(low, high))
            }
        }
        SizeSource::Measured { size, at, material } => {
            let size = size_at_20(size, material, at)?;
            if size.get::<millimeter>() < LARGEST_MM {
                Ok((size, size))
            } else {
                Err(FitError::Measured(GrowthError::Size))
            }
        }
    }
}

/// The interference of a part in a hole, from the smallest to the largest that both sources allow.
///
/// ```
/// use halfcase::trade::fit::{SizeSource, interference};
/// use halfcase::trade::quantity::Length;
/// use uom::si::length::{micrometer, millimeter};
///
/// let nominal = Length::new::<millimeter>(62.0);
/// let bore = SizeSource::Class { nominal, class: "N7".parse()? };
/// let fit = interference(&bore, &SizeSource::BearingOuter { nominal })?;
/// assert_eq!(fit.least.get::<micrometer>().round(), -4.0);
/// assert_eq!(fit.most.get::<micrometer>().round(), 39.0);
/// # Ok::<(), halfcase::trade::fit::FitError>(())
/// ```
pub fn interference(hole: &SizeSource, part: &SizeSource) -> Result<Interference, FitError> {
    match hole {
        SizeSource::Class { class, .. } if class.feature == Feature::Shaft => return Err(FitError::NotAHole),
        SizeSource::BearingOuter { .. } => return Err(FitError::NotAHole),
        _ => {}
    }
    match part {
        SizeSource::Class { class, .. } if class.feature == Feature::Hole => return Err(FitError::NotAShaft),
        SizeSource::BearingBore { .. } => return Err(FitError::NotAShaft),
        _ => {}
    }
    let (hole_least, hole_most) = size_range(hole)?;
    let (part_least, part_most) = size_range(part)?;
    if (part_most - hole_least).abs() > hole_least * MISMATCH_SHARE
        && (part_least - hole_most).abs() > hole_least * MISMATCH_SHARE
    {
        return Err(FitError::Mismatch(
            hole_most.get::<millimeter>(),
            part_most.get::<millimeter>(),
        ));
    }
    Ok(Interference {
        least: part_least - hole_most,
        most: part_most - hole_least,
    })
}
