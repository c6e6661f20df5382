//! Bore and journal readings: size, out-of-round, taper, and the clearance of one in the other.

use crate::trade::growth::{GrowthError, size_at_20};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature, fixed};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::length::millimeter;

/// Depths at which a bore is read: top, middle, bottom.
pub const DEPTHS: usize = 3;

/// Directions at each depth: along and across.
pub const DIRECTIONS: usize = 2;

/// A reading further than this share from the middle one is a slip.
const SLIP_SHARE: f64 = 0.05;

/// Why readings give no answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasureError {
    /// So many readings are missing.
    Missing(usize),
    /// A reading is not above zero, or absurd.
    Reading,
    /// A reading, in mm, is far from the others.
    Stray(f64),
    /// The temperature is outside −100 to 300 °C.
    Temperature,
    /// The limits are missing, not numbers, or the wrong way round.
    Limits,
}

impl fmt::Display for MeasureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing(1) => f.write_str("One reading is still to be taken."),
            Self::Missing(count) => write!(f, "{count} readings are still to be taken."),
            Self::Reading => f.write_str("Enter each reading, above zero and under 1000 mm."),
            Self::Stray(mm) => write!(
                f,
                "{} mm is far from the other readings: take it again.",
                fixed(*mm, 3)
            ),
            Self::Temperature => f.write_str("Enter a temperature between −100 and 300 °C."),
            Self::Limits => f.write_str("Enter at least one limit, the lower one first."),
        }
    }
}

impl std::error::Error for MeasureError {}

/// Diameters of a bore or a journal, read in two directions at three depths.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct DiameterGrid {
    /// The part's temperature.
    #[serde(rename = "at_c", with = "stored::celsius")]
    pub at: ThermodynamicTemperature,
    /// What the part is made of.
    pub material: Material,
    /// The readings in mm, one row a depth, one column a direction; `None` is still to be taken.
    pub readings_mm: [[Option<f64>; DIRECTIONS]; DEPTHS],
}

/// What a full grid says, at 20 °C.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Shape {
    /// The mean of all readings.
    #[serde(rename = "mean_mm", with = "stored::millimetres")]
    pub mean: Length,
    /// The smallest.
    #[serde(rename = "smallest_mm", with = "stored::millimetres")]
    pub smallest: Length,
    /// The largest.
    #[serde(rename = "largest_mm", with = "stored::millimetres")]
    pub largest: Length,
    /// The largest difference between the two directions at one depth.
    #[serde(rename = "out_of_round_mm", with = "stored::millimetres")]
    pub out_of_round: Length,
    /// The largest difference between two depths in one direction.
    #[serde(rename = "taper_mm", with = "stored::millimetres")]
    pub taper: Length,
}

impl DiameterGrid {
    /// How many readings are still to be taken.
    pub fn missing(&self) -> usize {
        self.readings_mm.iter().flatten().filter(|r| r.is_none()).count()
    }

    /// Size and shape at 20 °C, once every reading is there.
    ///
    /// Out-of-round and taper are differences of diameters, as workshop limits are given, not the radial
    /// deviations of ISO 1101.
    pub fn shape(&self) -> Result<Shape, MeasureError> {
        let sizes = self.sizes_mm()?;
        let all = sizes.as_flattened();
        let mean = all.iter().sum::<f64>() / all.len() as f64;
        if let Some(stray) = stray(all) {
            return Err(MeasureError::Stray(stray));
        }
        let out_of_round = sizes.iter().map(|depth| spread(depth)).fold(0.0, f64::max);
        let [along, across] = [0, 1].map(|direction| sizes.map(|depth| depth[direction]));
        let (smallest, largest) = ends(all);
        let mm = Length::new::<millimeter>;
        Ok(Shape {
            mean: mm(mean),
            smallest: mm(smallest),
            largest: mm(largest),
            out_of_round: mm(out_of_round),
            taper: mm(spread(&along).max(spread(&across))),
        })
    }

    fn sizes_mm(&self) -> Result<[[f64; DIRECTIONS]; DEPTHS], MeasureError> {
        match self.missing() {
            0 => {}
            count => return Err(MeasureError::Missing(count)),
        }
        let mut sizes = [[0.0; DIRECTIONS]; DEPTHS];
        for (size, reading) in sizes
            .as_flattened_mut()
            .iter_mut()
            .zip(self.readings_mm.as_flattened())
        {
            let mm = reading.unwrap_or_default();
            if !(0.1..1000.0).contains(&mm) {
                return Err(MeasureError::Reading);
            }
            *size = size_at_20(Length::new::<millimeter>(mm), self.material, self.at)
                .map_err(|why| match why {
                    GrowthError::Size | GrowthError::Coefficient => MeasureError::Reading,
                    GrowthError::Temperature => MeasureError::Temperature,
                })?
                .get::<millimeter>();
        }
        Ok(sizes)
    }
}

/// The reading furthest from the middle one, when it is too far: a mean would be drawn along by it.
fn stray(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = *sorted.get(sorted.len() / 2)?;
    let off = |mm: &f64| (mm - middle).abs();
    let furthest = sorted.into_iter().max_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(&furthest) > middle * SLIP_SHARE).then_some(furthest)
}

fn ends(values: &[f64]) -> (f64, f64) {
    values
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), &v| {
            (low.min(v), high.max(v))
        })
}

fn spread(values: &[f64]) -> f64 {
    let (low, high) = ends(values);
    high - low
}

/// The clearance of a journal in its bore at 20 °C; negative is interference.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Clearance {
    /// The smallest bore reading with the largest journal reading.
    #[serde(rename = "least_mm", with = "stored::millimetres")]
    pub least: Length,
    /// Mean with mean.
    #[serde(rename = "mean_mm", with = "stored::millimetres")]
    pub mean: Length,
    /// The largest bore reading with the smallest journal reading.
    #[serde(rename = "most_mm", with = "stored::millimetres")]
    pub most: Length,
}

/// The clearance of a journal in a bore.
pub fn clearance(bore: &Shape, journal: &Shape) -> Clearance {
    Clearance {
        least: bore.smallest - journal.largest,
        mean: bore.mean - journal.mean,
        most: bore.largest - journal.smallest,
    }
}

/// What the manual allows; either end may be open.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Allowed {
    /// The least.
    #[serde(default, rename = "least_mm", with = "stored::millimetres::maybe")]
    pub least: Option<Length>,
    /// The most.
    #[serde(default, rename = "most_mm", with = "stored::millimetres::maybe")]
    pub most: Option<Length>,
}

/// Where a value lies against its limits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasureVerdict {
    /// On or between the limits.
    Within,
    /// Under the least by so much.
    Below {
        /// How far under.
        #[serde(rename = "by_mm", with = "stored::millimetres")]
        by: Length,
    },
    /// Over the most by so much.
    Above {
        /// How far over.
        #[serde(rename = "by_mm", with = "stored::millimetres")]
        by: Length,
    },
}

/// A tenth of a micrometre: less than any limit's last digit, more than a binary rounding.
const SAME_MM: f64 = 1e-4;

impl Allowed {
    /// Judges one value: a diameter, a clearance, a depth. A value on a limit is within it.
    pub fn judge(&self, value: Length) -> Result<MeasureVerdict, MeasureError> {
        let mm = value.get::<millimeter>();
        let sane = |mm: f64| mm.abs() < 1e6;
        let ends = [self.least, self.most].map(|end| end.map(|l| l.get::<millimeter>()));
        let (least, most) = match ends {
            [None, None] => return Err(MeasureError::Limits),
            [least, most] => (least.unwrap_or(-1e6), most.unwrap_or(1e6)),
        };
        if !sane(mm) {
            return Err(MeasureError::Reading);
        }
        if !ends.into_iter().flatten().all(sane) || least > most {
            return Err(MeasureError::Limits);
        }
        let by = Length::new::<millimeter>;
        Ok(if mm < least - SAME_MM {
            MeasureVerdict::Below { by: by(least - mm) }
        } else if mm > most + SAME_MM {
            MeasureVerdict::Above { by: by(mm - most) }
        } else {
            MeasureVerdict::Within
        })
    }
}
