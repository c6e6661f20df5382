//! A step seen as what can go wrong in it: from its numbers to the cautions that apply.

use super::lifting::{self, Hoist, Hoisted, LiftingAnswer};
use super::progress::{Progress, Status};
use super::seating;
use super::sheet::{Sheet, Step};
use super::work::{LiftWay, LiftWork, Seat, SeatWay, Work};
use crate::trade::caution::{
    Caution, Cooling, Heating, Level, Lifting, Pressing, Situation, cautions as by_rule, shown,
};
use crate::trade::compound::{CompoundClass, Family, recommend};
use crate::trade::heat_plan::{CoolMeans, HoleIn};
use crate::trade::moment::Moment;
use crate::trade::quantity::{Angle, Force, Mass, ThermodynamicTemperature, Time};
use std::collections::BTreeSet;
use uom::si::angle::degree;
use uom::si::force::kilonewton;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;

/// How long solvent hangs in a part and in the air after a wash, hours (common practice, no source).
const SOLVENT_HANGS_H: f64 = 1.0;

/// What stands around a step: my press and hoist, the room, solvent used of late.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Around<'a> {
    /// What my press may push, kN.
    pub press_kn: Option<f64>,
    /// My hoist.
    pub hoist: Hoist<'a>,
    /// The room.
    pub room: Option<ThermodynamicTemperature>,
    /// Solvent was used within the hour.
    pub solvent: bool,
    /// The step was opened by hand before what it waits for had cured.
    pub before_cure: bool,
}

/// The cautions of `step`, gravest first, with the press's and the hoist's ratings where known (kN, kg).
pub fn cautions(step: &Step, press_kn: Option<f64>, hoist_kg: Option<f64>) -> Vec<Caution> {
    let hoist = Hoist {
        boom: &[],
        rating: hoist_kg.map(Mass::new::<kilogram>),
    };
    let around = Around {
        press_kn,
        hoist,
        ..Around::default()
    };
    cautions_of(&step.work, &around)
}

/// The cautions of some work, gravest first.
pub fn cautions_of(work: &Work, around: &Around<'_>) -> Vec<Caution> {
    by_rule(&situation(work, around))
}

/// The cautions to show: at most three. Those not yet acknowledged come first, the gravest of them,
/// so that none is hidden behind one that was read; the order on the screen stays that of the list.
pub fn to_show(all: &[Caution], acknowledged: &BTreeSet<String>) -> Vec<Caution> {
    let read = |caution: &Caution| caution.level == Level::Stop && acknowledged.contains(caution.id);
    let (old, fresh): (Vec<&Caution>, Vec<&Caution>) = all.iter().partition(|caution| read(caution));
    let first: Vec<Caution> = fresh.into_iter().chain(old).cloned().collect();
    let chosen = shown(&first);
    all.iter()
        .filter(|caution| chosen.contains(caution))
        .cloned()
        .collect()
}

/// Whether a step with solvent was closed within the hour.
pub fn solvent_about(sheet: &Sheet, progress: &Progress, now: Moment) -> bool {
    let hangs = Time::new::<hour>(SOLVENT_HANGS_H);
    sheet
        .steps
        .iter()
        .filter(|step| has_solvent(&step.work))
        .any(|step| matches!(progress.step(step.id).status, Status::Done(at) if now.since(at) < hangs))
}

fn has_solvent(work: &Work) -> bool {
    match work {
        Work::Clean(clean) => clean.solvent,
        _ => chemical(work).is_some_and(|class| class.family() == Family::SolventDrying),
    }
}

fn chemical(work: &Work) -> Option<CompoundClass> {
    work.application()
        .and_then(|application| recommend(application).class)
}

/// What some work does, as far as it can hurt.
pub fn situation(work: &Work, around: &Around<'_>) -> Situation {
    let with = Situation {
        chemicals: chemical(work).into_iter().collect(),
        before_cure: around.before_cure,
        ..Situation::default()
    };
    match work {
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
        Work::Fill(fill) => Situation {
            hot_oil: fill.hot,
            ..with
        },
        Work::Seat(seat) => seat_situation(seat, around, with),
        Work::Lift(lift) => Situation {
            lifting: Some(lift_facts(lift, around.hoist)),
            ..with
        },
        Work::Check(_) | Work::Fasten(_) | Work::Bond(_) => with,
    }
}

fn seat_situation(seat: &Seat, around: &Around<'_>, with: Situation) -> Situation {
    let answer = seating::answer(seat, around.room).ok();
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
    let heats = hot.is_some() || (unplanned && seat.way == SeatWay::Heat);
    let cools = cold.is_some() || (unplanned && seat.cool.is_some());
    let heating = heats.then(|| Heating {
        target: hot,
        part_limit: Some(celsius(limit_c)),
        holds_seals_or_compound: seat.holds_seals,
        solvent_near: around.solvent,
        ..Heating::default()
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
        ..Pressing::default()
    });
    Situation {
        heating,
        cooling,
        pressing,
        ..with
    }
}

fn lift_facts(lift: &LiftWork, hoist: Hoist<'_>) -> Lifting {
    let mass = Some(Mass::new::<kilogram>(lift.mass_kg));
    let answer = lifting::answer(lift, hoist);
    let with = Lifting {
        mass,
        under_load: lift.under_load,
        ..Lifting::default()
    };
    match lift.way {
        LiftWay::Hands { .. } => {
            let lifting_index = match answer {
                Ok(LiftingAnswer::Hands(answer)) => Some(answer.governing().index.unwrap_or(f64::INFINITY)),
                _ => None,
            };
            Lifting {
                by_hand: true,
                lifting_index,
                ..with
            }
        }
        LiftWay::Sling { legs, angle_deg } => Lifting {
            // A single leg hangs plumb, whatever angle is left over from before.
            sling_angle: (legs != 1).then(|| Angle::new::<degree>(angle_deg)),
            hoist_share: match lifting::hoisted(Mass::new::<kilogram>(lift.mass_kg), lift.boom_mm, hoist) {
                Hoisted::Margin(margin, _) => Some(margin.share.value),
                Hoisted::Refused(_) => Some(f64::INFINITY),
                Hoisted::Unknown => None,
            },
            ..with
        },
    }
}
