//! What a seat step needs: the fit, the force, the heat, worked out from its numbers.

use super::work::{Seat, SeatWay};
use crate::trade::cooling::{Faces, TimeRange, Wall, window};
use crate::trade::fit::{FitError, Interference, SizeSource, interference};
use crate::trade::heat_plan::{HeatPlan, HoleIn, PlanError, PlanRequest, plan, usual_slip_clearance};
use crate::trade::press::{ForceRange, PressError, PressFit};
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use std::fmt;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Where the shop's temperature isn't told: the reference of all sizes (ISO 1).
const ROOM_C: f64 = 20.0;

/// Everything the screen shows of a press fit.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatAnswer {
    /// The fit at 20 °C.
    pub interference: Interference,
    /// The force to press it cold; none where there is clearance.
    pub force: Option<ForceRange>,
    /// The mildest way within the limits.
    pub plan: HeatPlan,
    /// From the oven until half the clearance is gone.
    pub window: Option<TimeRange>,
}

/// Why a press fit can't be worked out.
#[derive(Debug, Clone, PartialEq)]
pub enum SeatError {
    /// The sizes.
    Fit(FitError),
    /// The shape.
    Press(PressError),
    /// The temperatures.
    Plan(PlanError),
}

impl fmt::Display for SeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Fit(error) => error.fmt(f),
            Self::Press(error) => error.fmt(f),
            Self::Plan(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for SeatError {}

/// Works a seat step out, in a room of `room`, or of 20 °C where that isn't known.
///
/// # Errors
/// [`SeatError`] with the sentence of whichever number makes no sense.
pub fn answer(seat: &Seat, room: Option<ThermodynamicTemperature>) -> Result<SeatAnswer, SeatError> {
    let millimetres = Length::new::<millimeter>;
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let room = room.unwrap_or(celsius(ROOM_C));
    let diameter = nominal(&seat.hole);
    let interference = interference(&seat.hole, &seat.shaft).map_err(SeatError::Fit)?;
    let press = PressFit {
        diameter,
        length: millimetres(seat.length_mm),
        part_inside: millimetres(seat.part_inside_mm),
        housing_outside: millimetres(seat.boss_outside_mm),
        part: seat.part_material,
        housing: seat.housing,
    };
    let force = (interference.most.get::<millimeter>() > 0.0)
        .then(|| press.force(&interference))
        .transpose()
        .map_err(SeatError::Press)?;
    let plan = plan(&PlanRequest {
        diameter,
        interference,
        hole_in: HoleIn::Housing,
        housing: seat.housing,
        part: seat.part_material,
        housing_limit: celsius(seat.housing_limit_c),
        part_limit: celsius(seat.part_limit_c),
        may_heat: seat.way == SeatWay::Heat,
        may_cool: None,
        may_press: true,
        slip_clearance: usual_slip_clearance(diameter),
        room,
    })
    .map_err(SeatError::Plan)?;
    let wall = Wall {
        material: seat.housing,
        thickness: millimetres(seat.wall_mm),
        faces: Faces::Both,
    };
    let window = match (plan.housing_to, plan.housing_until) {
        (Some(from), Some(until)) => window(&wall, from, until, room).ok(),
        _ => None,
    };
    Ok(SeatAnswer {
        interference,
        force,
        plan,
        window,
    })
}

/// The size the two parts share.
fn nominal(source: &SizeSource) -> Length {
    match *source {
        SizeSource::Class { nominal, .. }
        | SizeSource::BearingOuter { nominal }
        | SizeSource::BearingBore { nominal } => nominal,
        SizeSource::Measured { size, .. } => size,
    }
}
