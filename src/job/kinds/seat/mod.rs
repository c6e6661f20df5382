//! Seat: a part pressed or shrunk into its bore, or onto its shaft.

pub mod answer;
mod data;
pub mod depth;
pub mod fields;
pub mod oven;
pub mod source;
pub mod words;

pub use answer::{SeatAnswer, SeatError, answer, nominal, press_fit, request};
pub use data::{Seat, SeatDepth, SeatWay};

use crate::job::field::{self, Form, Seen, Set};
use crate::job::json;
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::{Cooling, Heating, Pressing, Situation};
use crate::trade::cure::Milestone;
use crate::trade::heat_plan::{CoolMeans, HeatPlan, HoleIn, PlanKind, Rejection};
use crate::trade::quantity::{Force, ThermodynamicTemperature};
use uom::si::force::kilonewton;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A press fit of which no size is known, in the job form, so that every other field begins as a file's would.
const UNSIZED: &str = r#"{"part":"",
    "hole":{"measured":{"size_mm":0,"at_c":20,"material":"cast_aluminium"}},
    "shaft":{"measured":{"size_mm":0,"at_c":20,"material":"bearing_steel"}},
    "housing":"cast_aluminium","part_material":"bearing_steel","length_mm":0,"boss_outside_mm":0,
    "wall_mm":0,"housing_limit_c":120,"part_limit_c":120}"#;

impl Seat {
    /// A press fit of which no size is known: zeros, which no sum takes.
    pub fn blank() -> Self {
        json::read(UNSIZED).unwrap_or_default()
    }
}

impl Kind for Seat {
    fn word(&self) -> &'static str {
        "Seat"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, around: &Around<'_>, with: Situation) -> Situation {
        seat_situation(self, around, with)
    }

    fn part(&self) -> Option<OwnPart> {
        OwnPart::named(&self.part, false)
    }

    fn usual_minutes(&self) -> f64 {
        20.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "seat", &fields::TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        fields::set(self, path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&fields::TABLE, self, Some(&Self::blank()), see);
    }
}

/// Where nothing allowed works: the heat it would take and the limit that forbids it, °C. Who finds no way is
/// the one who heats on.
fn too_hot(plan: &HeatPlan) -> Option<(f64, f64)> {
    let none = plan.which == PlanKind::NoPlan;
    plan.rejected
        .iter()
        .filter(|_| none)
        .find_map(|(_, why)| match *why {
            Rejection::TooHot {
                needed_c, limit_c, ..
            } => Some((needed_c, limit_c)),
            Rejection::NotAllowed | Rejection::TooLittle { .. } => None,
        })
}

fn seat_situation(seat: &Seat, around: &Around<'_>, with: Situation) -> Situation {
    let answer = answer(seat, around.room).ok();
    let plan = answer.as_ref().map(|answer| &answer.plan);
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let (hot, cold, limit_c) = match seat.hole_in {
        HoleIn::Housing => (
            plan.and_then(|plan| plan.housing_to),
            plan.and_then(|plan| plan.part_to),
            seat.housing_limit_c,
        ),
        HoleIn::Part => (
            plan.and_then(|plan| plan.part_to),
            plan.and_then(|plan| plan.housing_to),
            seat.part_limit_c,
        ),
    };
    // Until the sizes give a plan, what may be used is minded as if it were.
    let unplanned = answer.is_none();
    // Whoever says that a flame is used uses heat, whatever the plan would do.
    let over = plan.and_then(too_hot);
    let heats =
        hot.is_some() || over.is_some() || seat.open_flame || (unplanned && seat.way == SeatWay::Heat);
    let cools = cold.is_some() || (unplanned && seat.cool.is_some());
    let heating = heats.then(|| Heating {
        target: hot.or(over.map(|(needed_c, _)| celsius(needed_c))),
        part_limit: Some(celsius(over.map_or(limit_c, |(_, limit_c)| limit_c))),
        holds_seals_or_compound: seat.holds_seals,
        solvent_near: around.solvent,
        open_flame: seat.open_flame,
    });
    let cooling = cools.then(|| Cooling {
        to: cold,
        dry_ice: seat.cool == Some(CoolMeans::DryIce),
    });
    // A part that should drop in may stop half-way: the press stays a danger in either way.
    let pressing = Some(Pressing {
        force: answer
            .as_ref()
            .and_then(|answer| answer.force)
            .map(|force| force.most),
        rating: around.press_kn.map(Force::new::<kilonewton>),
        through_rolling_elements: seat.through_balls,
        struck: seat.struck,
    });
    Situation {
        heating,
        cooling,
        pressing,
        ..with
    }
}
