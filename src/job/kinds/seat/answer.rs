//! What a seat step needs: the fit, the force, the heat, the tools, worked out from its numbers.

use super::data::{Seat, SeatWay, USUAL_RUNNING_C};
use crate::trade::bearing_fit::SEALED_LIMIT_C;
use crate::trade::cooling::{Faces, TimeRange, Wall, window};
use crate::trade::fit::{FitError, Interference, RunningFit, SizeSource, interference, running, size_range};
use crate::trade::growth::{GrowthError, REFERENCE_CELSIUS, grown_range};
use crate::trade::heat_plan::{HeatPlan, HoleIn, PlanError, PlanRequest, plan, stated, usual_slip_clearance};
use crate::trade::material::Material;
use crate::trade::press::{ForceRange, PressError, PressFit, Push, Stress, ToolError, Tools, tools};
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use std::fmt;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Where the shop's temperature isn't told: the reference of all sizes (ISO 1).
const ROOM_C: f64 = REFERENCE_CELSIUS;

/// The smallest inside a driver is reckoned for, mm: a solid part is pushed anywhere on its face.
const SOLID_MM: f64 = 0.1;

/// Everything the screen shows of a press fit.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatAnswer {
    /// The fit at 20 °C.
    pub interference: Interference,
    /// The force to press it cold; none where there is clearance.
    pub force: Option<ForceRange>,
    /// The stress in both parts, cold or joined; none where there is clearance.
    pub stress: Option<Stress>,
    /// The mildest way within the limits.
    pub plan: HeatPlan,
    /// The manual's way, where it states temperatures: it goes before ours.
    pub manual: Option<HeatPlan>,
    /// The hottest that either may become, by what is known.
    pub hottest: ThermodynamicTemperature,
    /// The clearance that lets it drop in.
    pub slip: Length,
    /// From the oven (or the freezer) until half the clearance is gone.
    pub window: Option<TimeRange>,
    /// What to push with and what to stand it on.
    pub tools: Result<Tools, ToolError>,
    /// The tightest pair, cold and at the moment of joining.
    pub sizes: TightestPair,
    /// The room it was reckoned for.
    pub room: ThermodynamicTemperature,
    /// The fit as the machine runs; none where both parts grow alike and no temperature is told.
    pub running: Option<RunningFit>,
}

impl SeatAnswer {
    /// The plan that is followed: the manual's, else ours.
    pub fn followed(&self) -> &HeatPlan {
        self.manual.as_ref().unwrap_or(&self.plan)
    }
}

/// The smallest hole and the largest part that the sizes allow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TightestPair {
    /// The hole at 20 °C.
    pub hole_cold: Length,
    /// What goes into it, at 20 °C.
    pub part_cold: Length,
    /// The hole as it is when they are joined.
    pub hole_joining: Length,
    /// What goes into it, then.
    pub part_joining: Length,
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
    /// The sizes at the temperatures.
    Growth(GrowthError),
}

impl fmt::Display for SeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Fit(error) => error.fmt(f),
            Self::Press(error) => error.fmt(f),
            Self::Plan(error) => error.fmt(f),
            Self::Growth(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for SeatError {}

fn millimetres(mm: f64) -> Length {
    Length::new::<millimeter>(mm)
}

fn celsius(c: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(c)
}

/// Works a seat step out, in a room of `room`, or of 20 °C where that isn't known.
///
/// # Errors
/// [`SeatError`] with the sentence of whichever number makes no sense.
pub fn answer(seat: &Seat, room: Option<ThermodynamicTemperature>) -> Result<SeatAnswer, SeatError> {
    let room = room.unwrap_or(celsius(ROOM_C));
    let interference = interference(&seat.hole, &seat.shaft).map_err(SeatError::Fit)?;
    let request = request(seat, interference, room);
    let plan = plan(&request).map_err(SeatError::Plan)?;
    let manual = by_manual(seat, &request).transpose().map_err(SeatError::Plan)?;
    let followed = manual.as_ref().unwrap_or(&plan);
    let press = press_fit(seat);
    let tight = interference.most.get::<millimeter>() > 0.0;
    let force = tight.then(|| press.force(&interference)).transpose();
    let stress = tight.then(|| press.stress(&interference)).transpose();
    Ok(SeatAnswer {
        interference,
        force: force.map_err(SeatError::Press)?,
        stress: stress.map_err(SeatError::Press)?,
        window: open_window(seat, followed, room),
        tools: tools_for(seat),
        sizes: tightest(seat, followed, room)?,
        slip: request.slip_clearance,
        hottest: request.hottest().map_err(SeatError::Plan)?.0,
        plan,
        manual,
        room,
        running: running_fit(seat, &interference)?,
    })
}

/// The manual's way, where it states temperatures.
fn by_manual(seat: &Seat, request: &PlanRequest) -> Option<Result<HeatPlan, PlanError>> {
    let manual = seat.manual?;
    let (heat, chill) = (manual.heat_to(), manual.chill_to());
    // Heat without a temperature is ours to reckon, beside whatever is chilled.
    let reckoned = heat.is_some() || (manual.heat.is_none() && chill.is_some());
    reckoned.then(|| stated(request, heat, chill))
}

/// The fit as the machine runs; none where both parts grow alike and no temperature is told.
///
/// # Errors
/// [`SeatError::Growth`].
fn running_fit(seat: &Seat, cold: &Interference) -> Result<Option<RunningFit>, SeatError> {
    let (outer, inner) = outer_and_inner(seat);
    let alike = outer.expansion_range() == inner.expansion_range();
    if alike && seat.runs_at_c.is_none() {
        return Ok(None);
    }
    let at = celsius(seat.runs_at_c.unwrap_or(USUAL_RUNNING_C));
    let hot = running(cold, nominal(&seat.hole), outer, inner, at);
    hot.map(Some).map_err(SeatError::Growth)
}

/// The plan's question, with everything the seat allows.
pub fn request(seat: &Seat, interference: Interference, room: ThermodynamicTemperature) -> PlanRequest {
    let diameter = nominal(&seat.hole);
    let never_over = seat.manual.and_then(|manual| manual.heat?.never_over);
    // Our own plan keeps the manual's limit too.
    let limit = |c: f64| never_over.map_or(celsius(c), |limit| celsius(c).min(limit.temperature()));
    let part_limit_c = match seat.sealed {
        Some(true) => seat.part_limit_c.min(SEALED_LIMIT_C),
        Some(false) | None => seat.part_limit_c,
    };
    let (housing_limit, part_limit) = match seat.hole_in {
        HoleIn::Housing => (limit(seat.housing_limit_c), celsius(part_limit_c)),
        HoleIn::Part => (celsius(seat.housing_limit_c), limit(part_limit_c)),
    };
    PlanRequest {
        diameter,
        interference,
        hole_in: seat.hole_in,
        housing: seat.housing,
        part: seat.part_material,
        housing_limit,
        part_limit,
        may_heat: seat.way == SeatWay::Heat,
        may_cool: seat.cool,
        may_press: !seat.no_press,
        slip_clearance: usual_slip_clearance(diameter),
        room,
    }
}

/// The two rings as the press formulas see them.
pub fn press_fit(seat: &Seat) -> PressFit {
    let (outer, inner) = outer_and_inner(seat);
    PressFit {
        diameter: nominal(&seat.hole),
        length: millimetres(seat.length_mm),
        part_inside: millimetres(seat.part_inside_mm),
        housing_outside: millimetres(seat.boss_outside_mm),
        part: inner,
        housing: outer,
    }
}

/// What the one with the hole and the one that goes in are made of.
pub fn outer_and_inner(seat: &Seat) -> (Material, Material) {
    match seat.hole_in {
        HoleIn::Housing => (seat.housing, seat.part_material),
        HoleIn::Part => (seat.part_material, seat.housing),
    }
}

/// The temperatures of the one with the hole and of the one that goes in, when they are joined.
pub fn joining_at(
    seat: &Seat,
    plan: &HeatPlan,
    room: ThermodynamicTemperature,
) -> (ThermodynamicTemperature, ThermodynamicTemperature) {
    let (outer, inner) = match seat.hole_in {
        HoleIn::Housing => (plan.housing_to, plan.part_to),
        HoleIn::Part => (plan.part_to, plan.housing_to),
    };
    (outer.unwrap_or(room), inner.unwrap_or(room))
}

/// The least clearance's two sizes, with the end of each expansion range that gives less.
fn tightest(seat: &Seat, plan: &HeatPlan, room: ThermodynamicTemperature) -> Result<TightestPair, SeatError> {
    let (hole_cold, _) = size_range(&seat.hole).map_err(SeatError::Fit)?;
    let (_, part_cold) = size_range(&seat.shaft).map_err(SeatError::Fit)?;
    let (outer, inner) = outer_and_inner(seat);
    let (hole_at, part_at) = joining_at(seat, plan, room);
    let at = |size, material, to| grown_range(size, material, celsius(REFERENCE_CELSIUS), to);
    let (a, b) = at(hole_cold, outer, hole_at).map_err(SeatError::Growth)?;
    let (c, d) = at(part_cold, inner, part_at).map_err(SeatError::Growth)?;
    Ok(TightestPair {
        hole_cold,
        part_cold,
        hole_joining: a.min(b),
        part_joining: c.max(d),
    })
}

/// How long the way to the bench may take: until either part has used up half of the clearance.
fn open_window(seat: &Seat, plan: &HeatPlan, room: ThermodynamicTemperature) -> Option<TimeRange> {
    if plan.clearance_at_fit <= millimetres(0.0) {
        return None;
    }
    let (outer, inner) = outer_and_inner(seat);
    // A ring cools from inside and outside; a solid bar's volume over its area is that of a ring without a hole.
    let ring_mm = (nominal(&seat.shaft).get::<millimeter>() - seat.part_inside_mm) / 2.0;
    let hole_wall = (outer, seat.wall_mm);
    let part_wall = (inner, ring_mm);
    let (housing, part) = match seat.hole_in {
        HoleIn::Housing => (hole_wall, part_wall),
        HoleIn::Part => (part_wall, hole_wall),
    };
    let one = |(material, thickness_mm), from, until| {
        let wall = Wall {
            material,
            thickness: millimetres(thickness_mm),
            faces: Faces::Both,
        };
        window(&wall, from?, until?, room).ok()
    };
    let both = [
        one(housing, plan.housing_to, plan.housing_until),
        one(part, plan.part_to, plan.part_until),
    ];
    both.into_iter().flatten().reduce(|a, b| TimeRange {
        shortest: a.shortest.min(b.shortest),
        longest: a.longest.min(b.longest),
    })
}

/// What to push with and what to stand it on.
fn tools_for(seat: &Seat) -> Result<Tools, ToolError> {
    tools(&match seat.hole_in {
        HoleIn::Housing => Push::IntoBore {
            bore: nominal(&seat.hole),
            ring_inside: millimetres(seat.face_mm.unwrap_or(seat.part_inside_mm).max(SOLID_MM)),
            shoulder: seat.shoulder_mm.map(millimetres),
            boss_outside: millimetres(seat.boss_outside_mm),
        },
        HoleIn::Part => Push::OntoShaft {
            shaft: nominal(&seat.shaft),
            ring_outside: millimetres(seat.face_mm.unwrap_or(seat.boss_outside_mm)),
        },
    })
}

/// The size the two parts share.
pub fn nominal(source: &SizeSource) -> Length {
    match *source {
        SizeSource::Class { nominal, .. }
        | SizeSource::BearingOuter { nominal }
        | SizeSource::BearingBore { nominal } => nominal,
        SizeSource::Measured { size, .. } => size,
        SizeSource::Between { least, .. } => least,
    }
}
