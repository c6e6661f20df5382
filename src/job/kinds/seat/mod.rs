//! Seat: a part pressed or shrunk into its bore, or onto its shaft.

pub mod after;
pub mod answer;
mod data;
pub mod depth;
pub mod fields;
pub mod how;
mod loose;
pub mod manual;
mod manual_words;
pub mod oven;
pub mod ruler;
pub mod sense;
pub mod service;
pub mod source;
mod stated;
pub mod words;

pub use answer::{SeatAnswer, SeatError, answer, nominal, press_fit, request};
pub use data::{HeldBy, Seat, SeatDepth, SeatWay};
pub use loose::loose;
pub use manual::{Manual, ManualChill, ManualHeat};
pub use manual_words::{beside, order, own_words, recorded, stated_kind};

use crate::job::field::{self, Form, Seen, Set};
use crate::job::json;
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::{Cooling, Heating, Pressing, Situation};
use crate::trade::cure::Milestone;
use crate::trade::heat_plan::{ChillMeans, CoolMeans, HeatMeans, HeatPlan, HoleIn, PlanKind, Rejection};
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
        heating: heating(seat, answer.as_ref()),
        cooling: cooling(seat, answer.as_ref()),
        pressing,
        ..with
    }
}

/// The plan's heat of the one with the hole and its cold of the other.
fn hot_and_cold(
    seat: &Seat,
    plan: &HeatPlan,
) -> (Option<ThermodynamicTemperature>, Option<ThermodynamicTemperature>) {
    match seat.hole_in {
        HoleIn::Housing => (plan.housing_to, plan.part_to),
        HoleIn::Part => (plan.part_to, plan.housing_to),
    }
}

fn heating(seat: &Seat, answer: Option<&SeatAnswer>) -> Option<Heating> {
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let by_hand = seat.manual.and_then(|manual| manual.heat);
    let stated = seat.manual.and_then(|manual| manual.heat_to());
    let followed = answer.map(SeatAnswer::followed);
    let planned = followed.and_then(|plan| hot_and_cold(seat, plan).0);
    // Where the manual has its way nothing of ours is heated on.
    let over = followed.filter(|_| by_hand.is_none()).and_then(too_hot);
    // Until the sizes give a plan, what may be used is minded as if it were; who says that a flame is used
    // uses heat, whatever the plan would do.
    let unplanned = answer.is_none() && seat.way == SeatWay::Heat && seat.manual.is_none();
    let heats = by_hand.is_some() || planned.is_some() || over.is_some() || seat.open_flame || unplanned;
    let own_limit_c = match seat.hole_in {
        HoleIn::Housing => seat.housing_limit_c,
        HoleIn::Part => seat.part_limit_c,
    };
    let part_limit = match (stated, answer) {
        // What the manual heats past is told by the lowest limit there is, the material's among them.
        (Some(_), Some(answer)) => answer.hottest,
        _ => celsius(over.map_or(own_limit_c, |(_, limit_c)| limit_c)),
    };
    let means = by_hand.and_then(|heat| heat.means);
    heats.then(|| Heating {
        target: stated
            .or(planned)
            .or(over.map(|(needed_c, _)| celsius(needed_c)))
            // Told a limit and no figure, it may come up to the limit.
            .or(by_hand
                .and_then(|heat| heat.never_over)
                .map(|limit| limit.temperature())),
        part_limit: Some(part_limit),
        holds_seals_or_compound: seat.holds_seals,
        open_flame: seat.open_flame,
        by_manual: by_hand.is_some(),
        oil_bath: means == Some(HeatMeans::OilBath),
        flash_point: by_hand
            .and_then(|heat| heat.flash_point)
            .map(|flash| flash.temperature()),
        induction: means == Some(HeatMeans::Induction),
    })
}

fn cooling(seat: &Seat, answer: Option<&SeatAnswer>) -> Option<Cooling> {
    let by_hand = seat.manual.and_then(|manual| manual.chill);
    let stated = seat.manual.and_then(|manual| manual.chill_to());
    let planned = answer.and_then(|answer| hot_and_cold(seat, answer.followed()).1);
    let own = planned.is_some() || (answer.is_none() && seat.cool.is_some() && seat.manual.is_none());
    let means = by_hand.and_then(|chill| chill.means);
    (by_hand.is_some() || own).then(|| Cooling {
        to: stated.or(planned),
        dry_ice: match by_hand {
            Some(_) => means == Some(ChillMeans::DryIce),
            None => seat.cool == Some(CoolMeans::DryIce),
        },
        liquid_nitrogen: means == Some(ChillMeans::LiquidNitrogen),
    })
}
