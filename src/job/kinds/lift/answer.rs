//! What a lift step needs: the weight limit for hands, the pull in a sling leg, what the hoist has left.

use super::data::{LiftWay, LiftWork};
use crate::trade::hoist::{BoomPosition, HoistError, HoistMargin, derated, margin, rating_at};
use crate::trade::lift::{Duration, Lift, LiftAnswer, LiftError};
use crate::trade::quantity::{Angle, Force, Length, Mass, Ratio};
use crate::trade::sling::{
    GRAVITY_M_S2, Hitch, SlingError, eyebolt_rating, farther_angle, heavier_share, rating_needed,
    sling_rating,
};
use std::fmt;
use uom::si::angle::degree;
use uom::si::force::newton;
use uom::si::length::{centimeter, millimeter};
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

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
        horizontal_to: centimetres(work.reach_to_cm.unwrap_or(reach_cm)),
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
        let shared = match heavier(work).map_err(LiftingError::Sling)? {
            Some(share) => judged.shared(lift.mass, share),
            None => judged,
        };
        return Ok(LiftingAnswer::Hands(shared));
    }
    let LiftWay::Sling { legs, angle_deg } = work.way else {
        return Err(LiftingError::Hands(LiftError::Mass));
    };
    let mass = Mass::new::<kilogram>(work.mass_kg);
    let angle = Angle::new::<degree>(angle_deg);
    let (pull, leg_rating) = slung(work, mass, legs, angle).map_err(LiftingError::Sling)?;
    if let Some(Err(why)) = eyebolts(work) {
        return Err(LiftingError::Sling(why));
    }
    Ok(LiftingAnswer::Sling {
        leg: Force::new::<newton>(pull.get::<kilogram>() * GRAVITY_M_S2),
        leg_rating,
        hoist: hoisted(mass, work.boom_mm, hoist),
    })
}

/// The heavier share of two, where the centre of gravity is told.
///
/// # Errors
/// Distances that make no sense.
pub fn heavier(work: &LiftWork) -> Result<Option<Ratio>, SlingError> {
    let centimetres = Length::new::<centimeter>;
    match (work.span_cm, work.near_cm) {
        (Some(span), Some(near)) => heavier_share(centimetres(span), centimetres(near)).map(Some),
        _ => Ok(None),
    }
}

/// How the farther of two legs stands and pulls, where the centre of gravity is told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Farther {
    /// From the horizontal; that of the step is the nearer leg's.
    pub angle: Angle,
    /// Its share of the load.
    pub share: Ratio,
}

impl Farther {
    /// The pull in it of a load of that mass, as a mass; of a basket in each of its parts.
    ///
    /// # Errors
    /// [`SlingError::FartherTooFlat`], and as [`rating_needed`].
    pub fn pull(&self, mass: Mass, hitch: Hitch) -> Result<Mass, SlingError> {
        // As if twice its share hung on both.
        pull(mass * self.share * 2.0, 2, self.angle, hitch).map_err(|why| match why {
            SlingError::TooFlat(degrees) => SlingError::FartherTooFlat(degrees),
            why => why,
        })
    }
}

/// The farther leg of a load off centre; none of a single leg, and none where nothing is told.
///
/// # Errors
/// Distances that make no sense.
pub fn farther(work: &LiftWork) -> Result<Option<Farther>, SlingError> {
    let LiftWay::Sling { legs: 2.., angle_deg } = work.way else {
        return Ok(None);
    };
    let (Some(span), Some(near)) = (work.span_cm, work.near_cm) else {
        return Ok(None);
    };
    let centimetres = Length::new::<centimeter>;
    let (span, near) = (centimetres(span), centimetres(near));
    Ok(Some(Farther {
        angle: farther_angle(span, near, Angle::new::<degree>(angle_deg))?,
        share: Ratio::new::<ratio>(1.0) - heavier_share(span, near)?,
    }))
}

/// The load as the slings see it: two legs that share unevenly are reckoned as if twice the heavier share
/// hung on both. The nearer leg pulls most, the farther one stands flattest.
fn on_slings(work: &LiftWork, mass: Mass, legs: u8) -> Result<Mass, SlingError> {
    let heavier = heavier(work)?.filter(|_| legs > 1);
    Ok(heavier.map_or(mass, |share| mass * share * 2.0))
}

/// The pull in the part of a sling that carries most, as a mass, and the straight rating each must have.
fn slung(work: &LiftWork, mass: Mass, legs: u8, angle: Angle) -> Result<(Mass, Mass), SlingError> {
    let load = on_slings(work, mass, legs)?;
    let rating = sling_rating(load, legs, angle, work.hitch)?;
    if let Some(farther) = farther(work)? {
        farther.pull(mass, work.hitch)?;
    }
    Ok((pull(load, legs, angle, work.hitch)?, rating))
}

/// The pull in a leg, as a mass; of a basket in each part.
fn pull(load: Mass, legs: u8, angle: Angle, hitch: Hitch) -> Result<Mass, SlingError> {
    match hitch {
        Hitch::Straight | Hitch::Choker => rating_needed(load, legs, angle),
        Hitch::Basket => sling_rating(load, legs, angle, hitch),
    }
}

/// The straight rating each eyebolt must have; none where there are none.
///
/// # Errors
/// As [`answer`], and a pull too flat for eyebolts.
pub fn eyebolts(work: &LiftWork) -> Option<Result<Mass, SlingError>> {
    let LiftWay::Sling { legs, angle_deg } = work.way else {
        return None;
    };
    // One leg hangs plumb, whatever angle is left over from before.
    let hangs = if legs == 1 && work.hitch != Hitch::Basket {
        90.0
    } else {
        angle_deg
    };
    let angle = Angle::new::<degree>(angle_deg);
    let mass = Mass::new::<kilogram>(work.mass_kg);
    work.eyebolts.then(|| {
        let (pull, _) = slung(work, mass, legs, angle)?;
        let nearer = eyebolt_rating(pull, Angle::new::<degree>(hangs))?;
        // As good as plumb an eyebolt bears all of it: then the flatter one may need more.
        let farther = farther(work)?.map(|leg| eyebolt_rating(leg.pull(mass, work.hitch)?, leg.angle));
        Ok(farther.transpose()?.map_or(nearer, |farther| nearer.max(farther)))
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
