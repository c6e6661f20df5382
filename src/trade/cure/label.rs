//! The label's own times, which a user's bottle brings and which are the floor of every clock.

use super::Milestone;
use crate::trade::quantity::{ThermodynamicTemperature, Time};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::day;

/// The times of a label at the label's temperature. Only full cure has to be there; a milestone that
/// is left out waits for the next one that is named.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LabelTimes {
    /// The temperature the times hold at.
    #[serde(rename = "at_c", with = "stored::celsius")]
    pub at: ThermodynamicTemperature,
    /// Skin forms, or the parts begin to grip: be done by then.
    #[serde(default, rename = "assembly_min", with = "stored::minutes::maybe")]
    pub assembly: Option<Time>,
    /// Parts stay where they are.
    #[serde(default, rename = "fixture_min", with = "stored::minutes::maybe")]
    pub fixture: Option<Time>,
    /// Parts can be moved.
    #[serde(default, rename = "handling_min", with = "stored::minutes::maybe")]
    pub handling: Option<Time>,
    /// Oil may touch it.
    #[serde(default, rename = "fit_for_oil_min", with = "stored::minutes::maybe")]
    pub fit_for_oil: Option<Time>,
    /// Pressure may act on it.
    #[serde(default, rename = "fit_for_pressure_min", with = "stored::minutes::maybe")]
    pub fit_for_pressure: Option<Time>,
    /// Cured.
    #[serde(rename = "full_min", with = "stored::minutes")]
    pub full: Time,
}

/// What is wrong with a label's figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LabelError {
    /// A time is zero, negative, not a number or over 90 days.
    Time,
    /// The label's temperature is outside 5 to 60 °C.
    Temperature,
    /// An earlier milestone has a longer time than a later one.
    Order,
}

impl fmt::Display for LabelError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Time => "Enter the label's times, each above zero and at most 90 days.",
            Self::Temperature => "Enter the temperature the label's times hold at, 5 to 60 °C.",
            Self::Order => "The label's times have to grow from the time to join to full cure: check them.",
        })
    }
}

impl std::error::Error for LabelError {}

// What a label may plausibly say.
const LONGEST_DAYS: f64 = 90.0;
const COLDEST_CELSIUS: f64 = 5.0;
const HOTTEST_CELSIUS: f64 = 60.0;

impl LabelTimes {
    /// A label that names nothing but full cure.
    pub fn full_only(at: ThermodynamicTemperature, full: Time) -> Self {
        Self {
            at,
            assembly: None,
            fixture: None,
            handling: None,
            fit_for_oil: None,
            fit_for_pressure: None,
            full,
        }
    }

    /// Checks that the figures make sense.
    ///
    /// # Errors
    /// Names the first thing that doesn't.
    pub fn check(&self) -> Result<(), LabelError> {
        let celsius = self.at.get::<degree_celsius>();
        // A whisker for the way through kelvin and fahrenheit.
        if !(celsius > COLDEST_CELSIUS - 1e-6 && celsius < HOTTEST_CELSIUS + 1e-6) {
            return Err(LabelError::Temperature);
        }
        let mut last = 0.0;
        for time in [
            self.assembly,
            self.fixture,
            self.handling,
            self.fit_for_oil,
            self.fit_for_pressure,
            Some(self.full),
        ]
        .into_iter()
        .flatten()
        {
            let days = time.get::<day>();
            if !(days > 0.0 && days <= LONGEST_DAYS) {
                return Err(LabelError::Time);
            }
            if days < last {
                return Err(LabelError::Order);
            }
            last = days;
        }
        Ok(())
    }

    /// The label's time to a milestone: its own, or that of the next one named. The assembly limit is
    /// a deadline and has only its own.
    pub fn time_to(&self, milestone: Milestone) -> Option<Time> {
        let full = Some(self.full);
        let pressure = self.fit_for_pressure.or(full);
        let oil = self.fit_for_oil.or(pressure);
        let handling = self.handling.or(oil);
        match milestone {
            Milestone::AssemblyLimit => self.assembly,
            Milestone::Fixture => self.fixture.or(handling),
            Milestone::Handling => handling,
            Milestone::FitForOil => oil,
            Milestone::FitForPressure => pressure,
            Milestone::FullCure => full,
        }
    }
}
