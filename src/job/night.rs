//! The shop over the nights to come: a plan, written into its history as readings of the future.
//!
//! What lies ahead is replaced whenever the plan or the day's temperature changes; what has passed
//! stays, so that a cold night behind us is never forgotten.

use crate::trade::cure::{ShopHistory, ShopReading};
use crate::trade::moment::Moment;
use crate::trade::quantity::{Ratio, ThermodynamicTemperature};
use crate::trade::stored::tidy;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;

/// How far ahead nights are planned: beyond them the day would seem to last, and a slow cure to end too soon.
pub const NIGHTS_AHEAD: i64 = 60;

/// No label names more than 90 days; a cold shop makes some more of them.
const OLDEST_DAYS: i64 = 400;

const MINUTE_MS: i64 = 60_000;
const DAY_MIN: i64 = 24 * 60;

/// A night in the shop.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Night {
    /// How cold it gets, °C.
    pub celsius: f64,
    /// The hour from which on, 0–23 by the phone's zone.
    pub from_hour: u32,
    /// The hour until which, 0–23.
    pub to_hour: u32,
    /// How warm it is by day, °C.
    pub day_celsius: f64,
}

/// Why a night can't be planned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NightError {
    /// No shop.
    Temperature,
    /// No such hours.
    Hours,
    /// The day's temperature isn't known.
    DayUnknown,
    /// No air has that humidity.
    Humidity,
    /// The shop's temperature isn't known, to which the humidity belongs.
    TemperatureUnknown,
}

impl fmt::Display for NightError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Temperature => "A shop is between −40 and 60 °C: read the thermometer again.",
            Self::Hours => "Give two different hours from 0 to 23.",
            Self::DayUnknown => "Enter the shop temperature now first, then the night’s.",
            Self::Humidity => "Humidity is 0 to 100 %: read the hygrometer again.",
            Self::TemperatureUnknown => "Enter the shop temperature now first, then the humidity.",
        })
    }
}

impl std::error::Error for NightError {}

/// Whether a shop can be so warm, °C.
pub fn plausible(celsius: f64) -> bool {
    (-40.0..=60.0).contains(&celsius)
}

impl Night {
    /// Whether the plan makes sense.
    ///
    /// # Errors
    /// What doesn't.
    pub fn check(&self) -> Result<(), NightError> {
        if !plausible(self.celsius) {
            return Err(NightError::Temperature);
        }
        let hours = self.from_hour.max(self.to_hour) < 24 && self.from_hour != self.to_hour;
        hours.then_some(()).ok_or(NightError::Hours)
    }

    /// Minutes from `minute` of the day until the next `hour`, above 0 and up to a whole day.
    fn until(hour: u32, minute: i64) -> i64 {
        (i64::from(hour) * 60 - minute - 1).rem_euclid(DAY_MIN) + 1
    }

    /// Whether `minute` of the day lies in the night.
    fn holds(&self, minute: i64) -> bool {
        Self::until(self.to_hour, minute) < Self::until(self.from_hour, minute)
    }
}

/// Notes that the shop is so warm from `now` on, and plans the nights ahead anew.
/// `minute` is the minute of the day by the phone's zone.
pub fn note(shop: &mut ShopHistory, night: Option<&mut Night>, celsius: f64, now: Moment, minute: i64) {
    forget(shop, now);
    let humidity = shop.humidity_at(now);
    shop.0.push(reading(now, celsius, humidity));
    if let Some(night) = night {
        // Read at night, a temperature says nothing of the day: the day stays as it was told.
        if !night.holds(minute) {
            night.day_celsius = celsius;
        }
        lay_out(shop, night, now, minute);
    }
}

/// Notes that the shop's air is so damp from `now` on, %, the nights planned included; or that nobody knows.
///
/// # Errors
/// No such humidity, or no temperature was ever told; nothing is changed then.
pub fn note_humidity(shop: &mut ShopHistory, told: Option<f64>, now: Moment) -> Result<(), NightError> {
    if told.is_some_and(|told| !(0.0..=100.0).contains(&told)) {
        return Err(NightError::Humidity);
    }
    let at_now = shop.at(now).ok_or(NightError::TemperatureUnknown)?;
    let humidity = told.map(|told| Ratio::new::<percent>(tidy(told)));
    let mut reading = at_now.clone();
    (reading.at, reading.humidity) = (now, humidity);
    let ahead = shop.0.iter_mut().filter(|reading| reading.at > now);
    ahead.for_each(|reading| reading.humidity = humidity);
    shop.0.push(reading);
    Ok(())
}

/// Plans the nights ahead as `night`, in the place of the plan `before`; its day is filled in.
///
/// # Errors
/// The plan makes no sense, or the day's temperature was never told; nothing is changed then.
pub fn plan(
    shop: &mut ShopHistory,
    before: Option<Night>,
    night: Night,
    now: Moment,
    minute: i64,
) -> Result<Night, NightError> {
    night.check()?;
    let day_celsius = day_celsius(shop, before, now, minute).ok_or(NightError::DayUnknown)?;
    let night = Night { day_celsius, ..night };
    forget(shop, now);
    let at = if night.holds(minute) {
        night.celsius
    } else {
        day_celsius
    };
    let humidity = shop.humidity_at(now);
    shop.0.push(reading(now, at, humidity));
    lay_out(shop, &night, now, minute);
    Ok(night)
}

/// No nights are planned any more: the day's temperature holds from `now` on.
pub fn unplan(shop: &mut ShopHistory, before: Night, now: Moment, minute: i64) {
    let day = day_celsius(shop, Some(before), now, minute);
    forget(shop, now);
    let humidity = shop.humidity_at(now);
    shop.0.extend(day.map(|day| reading(now, day, humidity)));
}

fn day_celsius(shop: &ShopHistory, before: Option<Night>, now: Moment, minute: i64) -> Option<f64> {
    let told = shop
        .at(now)
        .map(|reading| reading.temperature.get::<degree_celsius>());
    match before {
        Some(night) if night.holds(minute) => Some(night.day_celsius),
        _ => told,
    }
}

/// What was planned from `now` on, and what is so old that no cure can ask for it: the last of the old
/// ones holds until the next, and stays.
fn forget(shop: &mut ShopHistory, now: Moment) {
    let oldest = now.0.saturating_sub(OLDEST_DAYS * DAY_MIN * MINUTE_MS);
    let first = shop
        .0
        .iter()
        .map(|reading| reading.at.0)
        .filter(|at| *at <= oldest)
        .max();
    let kept = first.unwrap_or(oldest)..=now.0;
    shop.0.retain(|reading| kept.contains(&reading.at.0));
}

/// Evenings and mornings from `now` on. A change to or from daylight saving shifts them by its hour.
fn lay_out(shop: &mut ShopHistory, night: &Night, now: Moment, minute: i64) {
    let humidity = shop.humidity_at(now);
    let from = now.0 - now.0.rem_euclid(MINUTE_MS);
    for ahead in 0..NIGHTS_AHEAD {
        let at = |hour| Moment(from + (Night::until(hour, minute) + ahead * DAY_MIN) * MINUTE_MS);
        shop.0.push(reading(at(night.from_hour), night.celsius, humidity));
        shop.0
            .push(reading(at(night.to_hour), night.day_celsius, humidity));
    }
}

fn reading(at: Moment, celsius: f64, humidity: Option<Ratio>) -> ShopReading {
    ShopReading {
        at,
        temperature: ThermodynamicTemperature::new::<degree_celsius>(tidy(celsius)),
        humidity,
    }
}
