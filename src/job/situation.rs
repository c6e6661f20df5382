//! A step seen as what can go wrong in it: from its numbers to the cautions that apply.

use super::lifting::{self, LiftingAnswer};
use super::seating;
use super::sheet::Step;
use super::work::{LiftWay, LiftWork, Seat, Work};
use crate::trade::caution::{Caution, Heating, Lifting, Pressing, Situation, cautions as by_rule};
use crate::trade::compound::recommend;
use crate::trade::quantity::{Angle, Force, Mass, ThermodynamicTemperature};
use uom::si::angle::degree;
use uom::si::force::kilonewton;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The cautions of `step`, gravest first, with the press's and the hoist's ratings where known (kN, kg).
pub fn cautions(step: &Step, press_kn: Option<f64>, hoist_kg: Option<f64>) -> Vec<Caution> {
    by_rule(&situation(step, press_kn, hoist_kg))
}

/// What the step does, as far as it can hurt.
pub fn situation(step: &Step, press_kn: Option<f64>, hoist_kg: Option<f64>) -> Situation {
    let chemicals = step
        .work
        .application()
        .and_then(|application| recommend(application).class)
        .into_iter()
        .collect();
    let with = Situation {
        chemicals,
        ..Situation::default()
    };
    match &step.work {
        Work::Clean(clean) => Situation {
            solvent: clean.solvent,
            compressed_air: clean.compressed_air,
            ..with
        },
        Work::Fit(fit) => Situation {
            spring: fit.spring,
            ..with
        },
        Work::Turn(_) => Situation {
            turning: true,
            ..with
        },
        Work::Seat(seat) => seat_situation(seat, press_kn, with),
        Work::Lift(lift) => Situation {
            lifting: Some(lift_facts(lift, hoist_kg)),
            ..with
        },
        Work::Check(_) | Work::Fasten(_) | Work::Bond(_) | Work::Fill(_) => with,
    }
}

fn seat_situation(seat: &Seat, press_kn: Option<f64>, with: Situation) -> Situation {
    let answer = seating::answer(seat, None).ok();
    let plan = answer.as_ref().map(|answer| &answer.plan);
    let heating = plan.and_then(|plan| plan.housing_to).map(|target| Heating {
        target: Some(target),
        part_limit: Some(ThermodynamicTemperature::new::<degree_celsius>(
            seat.housing_limit_c,
        )),
        holds_seals_or_compound: seat.holds_seals,
        ..Heating::default()
    });
    // A part that should drop in may stop half-way: the press stays a danger in either way.
    let pressing = Some(Pressing {
        force: answer
            .as_ref()
            .and_then(|answer| answer.force)
            .map(|force| force.most),
        rating: press_kn.map(Force::new::<kilonewton>),
        ..Pressing::default()
    });
    Situation {
        heating,
        pressing,
        ..with
    }
}

fn lift_facts(lift: &LiftWork, hoist_kg: Option<f64>) -> Lifting {
    let mass = Some(Mass::new::<kilogram>(lift.mass_kg));
    let answer = lifting::answer(lift, hoist_kg.map(Mass::new::<kilogram>));
    match lift.way {
        LiftWay::Hands { .. } => {
            let lifting_index = match answer {
                Ok(LiftingAnswer::Hands(answer)) => Some(answer.governing().index.unwrap_or(f64::INFINITY)),
                _ => None,
            };
            Lifting {
                mass,
                by_hand: true,
                lifting_index,
                ..Lifting::default()
            }
        }
        LiftWay::Sling { angle_deg, .. } => {
            let hoist_share = match answer {
                Ok(LiftingAnswer::Sling {
                    hoist: Some(hoist), ..
                }) => Some(hoist.share.value),
                _ => None,
            };
            Lifting {
                mass,
                sling_angle: Some(Angle::new::<degree>(angle_deg)),
                hoist_share,
                ..Lifting::default()
            }
        }
    }
}
