//! How warm and how damp the shop was, is and is planned to be.

use crate::trade::moment::Moment;
use crate::trade::quantity::{Ratio, ThermodynamicTemperature};
use crate::trade::stored;
use serde::{Deserialize, Serialize};

/// One reading, or one plan for a moment to come.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ShopReading {
    /// From when on it holds.
    pub at: Moment,
    /// Air temperature at the part.
    #[serde(rename = "temperature_c", with = "stored::celsius")]
    pub temperature: ThermodynamicTemperature,
    /// Relative humidity.
    #[serde(default, rename = "humidity_percent", with = "stored::percent::maybe")]
    pub humidity: Option<Ratio>,
}

/// The readings as a step function: each holds until the next, the last for good, the first also
/// before itself. Their order in the list doesn't matter, except that of two at one instant the later
/// in the list counts. A reading that is not a number is passed over.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ShopHistory(pub Vec<ShopReading>);

impl ShopHistory {
    /// No reading that counts.
    pub fn is_empty(&self) -> bool {
        !self.0.iter().any(ShopReading::counts)
    }

    /// The reading that holds at this instant.
    pub fn at(&self, now: Moment) -> Option<&ShopReading> {
        let ordered = self.ordered();
        ordered
            .iter()
            .rev()
            .find(|reading| reading.at <= now)
            .or(ordered.first())
            .copied()
    }

    /// The humidity told for this instant.
    pub fn humidity_at(&self, now: Moment) -> Option<Ratio> {
        self.at(now).and_then(|reading| reading.humidity)
    }

    /// The stretches from `start` on: each with its beginning and its reading, in order.
    pub(super) fn stretches(&self, start: Moment) -> Vec<(Moment, &ShopReading)> {
        let Some(first) = self.at(start) else {
            return Vec::new();
        };
        let later = self.ordered().into_iter().filter(|reading| reading.at > start);
        std::iter::once((start, first))
            .chain(later.map(|reading| (reading.at, reading)))
            .collect()
    }

    fn ordered(&self) -> Vec<&ShopReading> {
        let mut ordered: Vec<_> = self.0.iter().filter(|reading| reading.counts()).collect();
        ordered.sort_by_key(|reading| reading.at);
        ordered
    }
}

impl ShopReading {
    fn counts(&self) -> bool {
        self.temperature.value.is_finite()
    }
}
