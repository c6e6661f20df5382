//! What a lift step needs: the weight limit for hands, the pull in a sling leg.

use super::work::{LiftWay, LiftWork};
use crate::trade::hoist::{HoistError, HoistMargin, margin};
use crate::trade::lift::{Duration, Grip, Lift, LiftAnswer, LiftError};
use crate::trade::quantity::{Angle, Force, Length, Mass};
use crate::trade::sling::{SlingError, leg_tension, rating_needed};
use std::fmt;
use uom::si::angle::degree;
use uom::si::length::centimeter;
use uom::si::mass::kilogram;

/// A single lift, now and then: the equation's least frequency.
const SELDOM_PER_MINUTE: f64 = 0.2;

/// What the screen shows of a lift.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftingAnswer {
    /// By hand, by the revised NIOSH equation.
    Hands(LiftAnswer),
    /// By sling: pull in each leg, the rating each leg must have, and the hoist's margin where its rating is known.
    Sling {
        leg: Force,
        leg_rating: Mass,
        hoist: Option<HoistMargin>,
    },
}

/// Why a lift can't be reckoned, or must not be made.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftingError {
    /// By hand.
    Hands(LiftError),
    /// By sling.
    Sling(SlingError),
    /// By hoist.
    Hoist(HoistError),
}

impl fmt::Display for LiftingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Hands(error) => error.fmt(f),
            Self::Sling(error) => error.fmt(f),
            Self::Hoist(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for LiftingError {}

/// Works a lift step out; `hoist` is what my hoist may carry.
///
/// # Errors
/// [`LiftingError`] with the sentence of whichever number makes no sense, or forbids it.
pub fn answer(work: &LiftWork, hoist: Option<Mass>) -> Result<LiftingAnswer, LiftingError> {
    let mass = Mass::new::<kilogram>(work.mass_kg);
    match work.way {
        LiftWay::Hands {
            reach_cm,
            from_cm,
            to_cm,
        } => {
            let centimetres = Length::new::<centimeter>;
            let lift = Lift {
                mass,
                horizontal_from: centimetres(reach_cm),
                horizontal_to: centimetres(reach_cm),
                vertical_from: centimetres(from_cm),
                vertical_to: centimetres(to_cm),
                asymmetry_from: Angle::new::<degree>(0.0),
                asymmetry_to: Angle::new::<degree>(0.0),
                lifts_per_minute: SELDOM_PER_MINUTE,
                duration: Duration::Short,
                grip: Grip::Fair,
                placed_with_care: true,
            };
            lift.judge()
                .map(LiftingAnswer::Hands)
                .map_err(LiftingError::Hands)
        }
        LiftWay::Sling { legs, angle_deg } => {
            let angle = Angle::new::<degree>(angle_deg);
            let leg = leg_tension(mass, legs, angle).map_err(LiftingError::Sling)?;
            let leg_rating = rating_needed(mass, legs, angle).map_err(LiftingError::Sling)?;
            let hoist = hoist
                .map(|rating| margin(mass, rating))
                .transpose()
                .map_err(LiftingError::Hoist)?;
            Ok(LiftingAnswer::Sling {
                leg,
                leg_rating,
                hoist,
            })
        }
    }
}
