//! Lifting by hand: the revised NIOSH lifting equation (DHHS (NIOSH) Publication 94-110).
//!
//! It holds for two-handed lifts, standing, on firm ground, without jerks, in fair weather, not over
//! eight hours; not for carrying, kneeling, cramped places or one hand.

mod frequency;

use crate::trade::quantity::{Angle, Length, Mass, Ratio};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::angle::degree;
use uom::si::length::centimeter;
use uom::si::mass::kilogram;

/// The load constant LC, kg: the most under the best conditions.
pub const LOAD_CONSTANT_KG: f64 = 23.0;

/// Share of two people's summed limits that they manage together (safety bodies' guidance for team
/// lifts, from memory).
const TEAM_SHARE: f64 = 2.0 / 3.0;

/// How long the lifting goes on, with the recovery the equation asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Duration {
    /// Up to an hour.
    Short,
    /// Up to two hours.
    Moderate,
    /// Up to eight hours.
    Long,
}

/// How well the hands hold it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grip {
    /// Handles, or edges the hands wrap around.
    Good,
    /// Poor handles, or fingers bent to a right angle under it.
    Fair,
    /// Bulky, slippery, sharp or sagging.
    Poor,
}

/// One lift, from where the load stands to where it goes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Lift {
    /// The load.
    #[serde(rename = "mass_kg", with = "stored::kilograms")]
    pub mass: Mass,
    /// From between the ankles out to the hands, at the start.
    #[serde(rename = "horizontal_from_mm", with = "stored::millimetres")]
    pub horizontal_from: Length,
    /// The same at the end.
    #[serde(rename = "horizontal_to_mm", with = "stored::millimetres")]
    pub horizontal_to: Length,
    /// Height of the hands above the floor, at the start.
    #[serde(rename = "vertical_from_mm", with = "stored::millimetres")]
    pub vertical_from: Length,
    /// The same at the end.
    #[serde(rename = "vertical_to_mm", with = "stored::millimetres")]
    pub vertical_to: Length,
    /// Turn of the load out of straight ahead, at the start; either way.
    #[serde(rename = "asymmetry_from_deg", with = "stored::degrees")]
    pub asymmetry_from: Angle,
    /// The same at the end.
    #[serde(rename = "asymmetry_to_deg", with = "stored::degrees")]
    pub asymmetry_to: Angle,
    /// Lifts a minute; 0.2 and fewer count alike.
    pub lifts_per_minute: f64,
    /// How long it goes on.
    pub duration: Duration,
    /// The hold.
    pub grip: Grip,
    /// Whether it must be set down with care: a case onto its dowels, an engine into its mounts.
    /// Only then does the end count.
    pub placed_with_care: bool,
}

/// Why a lift can't be reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftError {
    /// The mass is not above zero, or absurd.
    Mass,
    /// The reach is negative or absurd.
    Horizontal,
    /// A height is below the floor or absurd.
    Vertical,
    /// The turn is over 180°.
    Asymmetry,
    /// The frequency is negative or not a number.
    Frequency,
}

impl fmt::Display for LiftError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Mass => "Enter the mass, above zero and under 100 000 kg.",
            Self::Horizontal => "Enter the reach from the ankles to the hands, from 0 to 3 m.",
            Self::Vertical => "Enter the height of the hands above the floor, from 0 to 3 m.",
            Self::Asymmetry => "Enter the turn from straight ahead, from 0 to 180°.",
            Self::Frequency => "Enter how often it is lifted, in lifts a minute from 0 up.",
        })
    }
}

impl std::error::Error for LiftError {}

/// The six factors, each from 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Multipliers {
    /// HM: reach.
    pub horizontal: f64,
    /// VM: height.
    pub vertical: f64,
    /// DM: distance moved up or down.
    pub distance: f64,
    /// AM: turn.
    pub asymmetry: f64,
    /// FM: how often and how long.
    pub frequency: f64,
    /// CM: hold.
    pub coupling: f64,
}

/// The answer at one end of the lift.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Station {
    /// The factors.
    pub multipliers: Multipliers,
    /// RWL, the recommended weight limit; zero where no weight is right.
    #[serde(rename = "limit_kg", with = "stored::kilograms")]
    pub limit: Mass,
    /// LI, the load over its limit; `None` where the limit is zero.
    pub index: Option<f64>,
}

/// Who lifts it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftVerdict {
    /// One person: LI up to 1.
    OnePerson,
    /// Two people who lift together, each with room to stand and a hold of their own.
    TwoPeople,
    /// Neither: a hoist.
    Hoist,
}

/// What the equation says of a lift.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LiftAnswer {
    /// At the start.
    pub origin: Station,
    /// At the end.
    pub destination: Station,
    /// Whether the end, not the start, governs.
    pub destination_governs: bool,
    /// Who lifts it.
    pub verdict: LiftVerdict,
}

impl LiftAnswer {
    /// The end of the lift that decides.
    pub fn governing(&self) -> &Station {
        if self.destination_governs {
            &self.destination
        } else {
            &self.origin
        }
    }
}

impl LiftAnswer {
    /// Who lifts it where one of two people carries that share of it: what fits two who share alike may be
    /// too much for the one at the heavy end.
    pub fn shared(self, mass: Mass, heavier: Ratio) -> Self {
        let each = self.governing().limit * TEAM_SHARE;
        let verdict = match self.verdict {
            LiftVerdict::TwoPeople if mass * heavier > each => LiftVerdict::Hoist,
            verdict => verdict,
        };
        Self { verdict, ..self }
    }
}

impl Lift {
    /// Judges the lift at both ends: RWL = LC·HM·VM·DM·AM·FM·CM, LI = load/RWL.
    ///
    /// Up to LI 1 one person; up to two thirds of two people's limits, two; beyond, a hoist.
    pub fn judge(&self) -> Result<LiftAnswer, LiftError> {
        let mass_kg = self.mass.get::<kilogram>();
        if !(f64::MIN_POSITIVE..1e5).contains(&mass_kg) {
            return Err(LiftError::Mass);
        }
        let origin = self.station(self.horizontal_from, self.vertical_from, self.asymmetry_from)?;
        let destination = self.station(self.horizontal_to, self.vertical_to, self.asymmetry_to)?;
        let destination_governs = self.placed_with_care && destination.limit < origin.limit;
        let limit = if destination_governs {
            destination.limit
        } else {
            origin.limit
        };
        let verdict = if self.mass <= limit {
            LiftVerdict::OnePerson
        } else if self.mass <= limit * (2.0 * TEAM_SHARE) {
            LiftVerdict::TwoPeople
        } else {
            LiftVerdict::Hoist
        };
        Ok(LiftAnswer {
            origin,
            destination,
            destination_governs,
            verdict,
        })
    }

    fn station(&self, reach: Length, height: Length, turn: Angle) -> Result<Station, LiftError> {
        let multipliers = self.multipliers(reach, height, turn)?;
        let Multipliers {
            horizontal,
            vertical,
            distance,
            asymmetry,
            frequency,
            coupling,
        } = multipliers;
        let limit = Mass::new::<kilogram>(
            LOAD_CONSTANT_KG * horizontal * vertical * distance * asymmetry * frequency * coupling,
        );
        let index = (self.mass / limit).get::<uom::si::ratio::ratio>();
        Ok(Station {
            multipliers,
            limit,
            index: index.is_finite().then_some(index),
        })
    }

    fn multipliers(&self, reach: Length, height: Length, turn: Angle) -> Result<Multipliers, LiftError> {
        let height_cm = within(height, LiftError::Vertical)?;
        let travel_cm = (within(self.vertical_from, LiftError::Vertical)?
            - within(self.vertical_to, LiftError::Vertical)?)
        .abs();
        let turn_deg = turn.get::<degree>().abs();
        if !(0.0..=180.0).contains(&turn_deg) {
            return Err(LiftError::Asymmetry);
        }
        if !(0.0..f64::INFINITY).contains(&self.lifts_per_minute) {
            return Err(LiftError::Frequency);
        }
        Ok(Multipliers {
            horizontal: horizontal(within(reach, LiftError::Horizontal)?),
            vertical: vertical(height_cm),
            distance: distance(travel_cm),
            asymmetry: asymmetry(turn_deg),
            frequency: frequency::multiplier(self.lifts_per_minute, self.duration, height_cm),
            coupling: coupling(self.grip, height_cm),
        })
    }
}

/// Centimetres, when from 0 to 3 m. Rounded to a micrometre, so that 175 cm typed in inches or read
/// back from storage stays within the limit of 175 cm.
fn within(length: Length, refusal: LiftError) -> Result<f64, LiftError> {
    let cm = (length.get::<centimeter>() * 1e4).round() / 1e4;
    if (0.0..=300.0).contains(&cm) {
        Ok(cm)
    } else {
        Err(refusal)
    }
}

/// Hands lower than this stand below the knuckles, cm: hold and frequency count otherwise.
pub(crate) const KNUCKLES_CM: f64 = 75.0;

/// HM = 25/H; 1 within 25 cm, 0 beyond 63 cm.
fn horizontal(reach_cm: f64) -> f64 {
    if reach_cm > 63.0 {
        0.0
    } else {
        25.0 / reach_cm.max(25.0)
    }
}

/// VM = 1 − 0.003·|V − 75|; 0 above 175 cm.
fn vertical(height_cm: f64) -> f64 {
    if height_cm > 175.0 {
        0.0
    } else {
        1.0 - 0.003 * (height_cm - 75.0).abs()
    }
}

/// DM = 0.82 + 4.5/D; 1 within 25 cm, 0 beyond 175 cm.
fn distance(travel_cm: f64) -> f64 {
    if travel_cm > 175.0 {
        0.0
    } else {
        0.82 + 4.5 / travel_cm.max(25.0)
    }
}

/// AM = 1 − 0.0032·A; 0 beyond 135°.
fn asymmetry(turn_deg: f64) -> f64 {
    if turn_deg > 135.0 {
        0.0
    } else {
        1.0 - 0.0032 * turn_deg
    }
}

/// CM (table 7).
fn coupling(grip: Grip, height_cm: f64) -> f64 {
    match grip {
        Grip::Good => 1.00,
        Grip::Fair if height_cm < KNUCKLES_CM => 0.95,
        Grip::Fair => 1.00,
        Grip::Poor => 0.90,
    }
}
