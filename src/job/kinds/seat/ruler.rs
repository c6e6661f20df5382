//! A press fit's number on its line: a temperature between what is too little and what is too much, a force
//! against the press.

use super::answer::SeatAnswer;
use super::data::Seat;
use super::manual_words::order;
use crate::job::figures::Figures;
use crate::job::scale::{Ruler, on_line};
use crate::trade::heat_plan::{HeatPlan, PlanKind};
use crate::trade::quantity::{ThermodynamicTemperature, Unit, fixed};
use uom::si::force::kilonewton;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The line under the number that is followed, in the user's units; none where it has no ends. `press_kn` is
/// what my press gives.
pub fn ruler(answer: &SeatAnswer, press_kn: Option<f64>, figures: Figures) -> Option<Ruler> {
    let plan = answer.followed();
    match plan.which {
        PlanKind::PressCold => pressed(answer, press_kn?, figures),
        PlanKind::HeatHousing | PlanKind::HeatPart | PlanKind::HeatAndCool => heated(answer, plan, figures),
        PlanKind::CoolPart | PlanKind::CoolShaft => cooled(answer, plan, figures),
        PlanKind::SlideCold | PlanKind::NoPlan => None,
    }
}

/// The same under the manual's own number, in the unit that is written in; none where that is no temperature.
pub fn of_manual(seat: &Seat, answer: &SeatAnswer, figures: Figures) -> Option<Ruler> {
    answer.manual.as_ref()?;
    let unit = order(seat)?.unit;
    let temperature = Figures::TEMPERATURES.into_iter().find(|it| it.symbol() == unit)?;
    ruler(
        answer,
        None,
        Figures {
            temperature,
            ..figures
        },
    )
}

/// From the room to the limit; what is too cool to go in is out of bounds.
fn heated(answer: &SeatAnswer, plan: &HeatPlan, figures: Figures) -> Option<Ruler> {
    let warm = |to: Option<ThermodynamicTemperature>| to.filter(|to| *to > answer.room);
    let (to, until) = match warm(plan.housing_to) {
        Some(to) => (to, plan.housing_until?),
        None => (warm(plan.part_to)?, plan.part_until?),
    };
    let [room, to, until, limit] = in_degrees([answer.room, to, until, answer.hottest], figures);
    let unit = figures.degree();
    let words = format!("{to} {unit}; home by {until} {unit}, limit {limit} {unit}");
    let drawn = on_line((room, limit), to, (room, until), words)?;
    Some(Ruler {
        most: format!("limit {}", drawn.most),
        ..drawn
    })
}

/// From the cold to the room; what is too warm to go in is out of bounds.
fn cooled(answer: &SeatAnswer, plan: &HeatPlan, figures: Figures) -> Option<Ruler> {
    let (to, until) = match plan.which {
        PlanKind::CoolShaft => (plan.housing_to?, plan.housing_until?),
        _ => (plan.part_to?, plan.part_until?),
    };
    let [room, to, until] = in_degrees([answer.room, to, until], figures);
    let unit = figures.degree();
    let words = format!("{to} {unit}; home by {until} {unit}, the shop has {room} {unit}");
    let drawn = on_line((to, room), to, (until, room), words)?;
    Some(Ruler {
        most: format!("shop {}", drawn.most),
        ..drawn
    })
}

/// From nothing to what the press gives, or what it takes where that is more; what is over the press is out of
/// bounds.
fn pressed(answer: &SeatAnswer, press_kn: f64, figures: Figures) -> Option<Ruler> {
    let own = |kn: f64| kn / figures.kilonewtons();
    let takes_kn = answer.force?.most.get::<kilonewton>();
    let (takes, gives) = (own(takes_kn), own(press_kn));
    let words = figures.said(&format!(
        "up to {} kN of the press’s {} kN",
        fixed(takes_kn, 1),
        fixed(press_kn, 1)
    ));
    let drawn = on_line((0.0, takes.max(gives)), takes, (gives, takes.max(gives)), words)?;
    let most = match takes > gives {
        true => drawn.most,
        false => format!("press {}", drawn.most),
    };
    Some(Ruler { most, ..drawn })
}

/// Whole degrees of the user's thermometer.
fn in_degrees<const N: usize>(all: [ThermodynamicTemperature; N], figures: Figures) -> [f64; N] {
    all.map(|it| figures.of_celsius(it.get::<degree_celsius>()).round())
}
