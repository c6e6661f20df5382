//! What is known of the air that a joint cures in.

use super::clock::CureClock;
use crate::trade::cure::{ShopHistory, ShopReading};
use crate::trade::moment::Moment;
use crate::trade::quantity::ThermodynamicTemperature;

/// A temperature told longer before a compound went on says little of the shop it cures in: a shop is warmed by
/// day and left at night (ours, no source).
const STALE_MS: i64 = 18 * 3_600_000;

/// Told so soon after it went on, it is told for all of the cure (ours, no source).
const SOON_MS: i64 = 3_600_000;

/// How well the shop's temperature is known for a clock.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Air {
    /// Nobody told any: the label's is taken.
    NotTold {
        /// That one.
        label: ThermodynamicTemperature,
    },
    /// It was told long before the compound went on, and is taken still.
    Stale {
        /// What was told.
        temperature: ThermodynamicTemperature,
        /// When.
        told: Moment,
    },
    /// It was told for the time of the cure.
    Told,
}

/// What is known of the air of that clock.
pub fn air_of(clock: &CureClock, shop: &ShopHistory) -> Air {
    let Some(held) = shop.at(clock.started) else {
        return Air::NotTold {
            label: clock.spec.label.at,
        };
    };
    // What is told hours later says nothing of the hours before.
    let fresh = |reading: &ShopReading| {
        let before_ms = clock.started.0.saturating_sub(reading.at.0);
        (-SOON_MS..=STALE_MS).contains(&before_ms)
    };
    match shop.0.iter().any(fresh) {
        true => Air::Told,
        false => Air::Stale {
            temperature: held.temperature,
            told: held.at,
        },
    }
}
