//! What a lift step needs: the weight limit for hands, the pull in a sling leg, what the hoist has left.

use super::data::{LiftWay, LiftWork};
use crate::trade::hoist::{BoomPosition, HoistError, HoistMargin, derated, margin, rating_at};
use crate::trade::lift::{Duration, Lift, LiftAnswer, LiftError};
use crate::trade::quantity::{Angle, Force, Length, Mass};
use crate::trade::sling::{SlingError, leg_tension, rating_needed};
use std::fmt;
use uom::si::angle::degree;
use uom::si::length::{centimeter, millimeter};
use uom::si::mass::kilogram;

/// A single lift, now and then: the equation's least frequency.
const SELDOM_PER_MINUTE: f64 = 0.2;

/// My hoist, as its plate has it.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Hoist<'a> {
    /// The holes of its boom, each with its rating.
    pub boom: &'a [BoomPosition],
    /// What it carries where no holes are told.
    pub rating: Option<Mass>,
}

/// What a rating rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RatedBy {
    /// The plate, at this position or the next further out.
    Plate,
    /// The plate's least, as no position is chosen.
    LeastOfPlate,
    /// The same moment about the post, from the one position the plate gives.
    Moment,
    /// The one figure told for the hoist.
    OneFigure,
}

/// What the hoist says to the load.
#[derive(Debug, Clone, PartialEq)]
pub enum Hoisted {
    /// No rating is known.
    Unknown,
    /// What is left.
    Margin(HoistMargin, RatedBy),
    /// It must not be lifted so.
    Refused(HoistError),
}

/// What the screen shows of a lift.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftingAnswer {
    /// By hand, by the revised NIOSH equation.
    Hands(LiftAnswer),
    /// By sling: pull in each leg, the rating each leg must have, and what the hoist says.
    Sling {
        leg: Force,
        leg_rating: Mass,
        hoist: Hoisted,
    },
}

/// Why a lift can't be reckoned, or must not be made.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftingError {
    /// By hand.
    Hands(LiftError),
    /// By sling.
    Sling(SlingError),
}

impl fmt::Display for LiftingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Hands(error) => error.fmt(f),
            Self::Sling(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for LiftingError {}

/// The lift as the equation sees it; none for a sling.
pub fn by_hand(work: &LiftWork) -> Option<Lift> {
    let LiftWay::Hands {
        reach_cm,
        from_cm,
        to_cm,
        turn_deg,
        grip,
    } = work.way
    else {
        return None;
    };
    let centimetres = Length::new::<centimeter>;
    let turn = Angle::new::<degree>(turn_deg);
    Some(Lift {
        mass: Mass::new::<kilogram>(work.mass_kg),
        horizontal_from: centimetres(reach_cm),
        horizontal_to: centimetres(reach_cm),
        vertical_from: centimetres(from_cm),
        vertical_to: centimetres(to_cm),
        // The body turns on the way: straight at the start, turned where it is set down.
        asymmetry_from: Angle::new::<degree>(0.0),
        asymmetry_to: turn,
        lifts_per_minute: SELDOM_PER_MINUTE,
        duration: Duration::Short,
        grip,
        placed_with_care: true,
    })
}

/// Works a lift step out with my hoist.
///
/// # Errors
/// [`LiftingError`] with the sentence of whichever number makes no sense, or forbids it.
pub fn answer(work: &LiftWork, hoist: Hoist<'_>) -> Result<LiftingAnswer, LiftingError> {
    if let Some(lift) = by_hand(work) {
        let judged = lift.judge().map_err(LiftingError::Hands)?;
        return Ok(LiftingAnswer::Hands(judged));
    }
    let LiftWay::Sling { legs, angle_deg } = work.way else {
        return Err(LiftingError::Hands(LiftError::Mass));
    };
    let mass = Mass::new::<kilogram>(work.mass_kg);
    let angle = Angle::new::<degree>(angle_deg);
    Ok(LiftingAnswer::Sling {
        leg: leg_tension(mass, legs, angle).map_err(LiftingError::Sling)?,
        leg_rating: rating_needed(mass, legs, angle).map_err(LiftingError::Sling)?,
        hoist: hoisted(mass, work.boom_mm, hoist),
    })
}

/// What the hoist says to a load with its boom at that reach.
pub fn hoisted(load: Mass, boom_mm: Option<f64>, hoist: Hoist<'_>) -> Hoisted {
    let told = match rating_here(boom_mm, hoist) {
        Ok(Some(told)) => told,
        Ok(None) => return Hoisted::Unknown,
        Err(why) => return Hoisted::Refused(why),
    };
    match margin(load, told.0) {
        Ok(margin) => Hoisted::Margin(margin, told.1),
        Err(why) => Hoisted::Refused(why),
    }
}

fn rating_here(boom_mm: Option<f64>, hoist: Hoist<'_>) -> Result<Option<(Mass, RatedBy)>, HoistError> {
    let reach = boom_mm.map(Length::new::<millimeter>);
    match (hoist.boom, reach) {
        ([], _) => Ok(hoist.rating.map(|rating| (rating, RatedBy::OneFigure))),
        ([only], Some(reach)) if reach > only.reach => {
            derated(*only, reach).map(|rating| Some((rating, RatedBy::Moment)))
        }
        (boom, Some(reach)) => rating_at(boom, reach).map(|rating| Some((rating, RatedBy::Plate))),
        (boom, None) => {
            let least = boom.iter().map(|position| position.rating).reduce(Mass::min);
            Ok(least.map(|rating| (rating, RatedBy::LeastOfPlate)))
        }
    }
}
