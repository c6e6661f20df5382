//! Lift: something heavy moved, by hand or by hoist.

pub mod answer;
mod data;
pub mod fields;
pub mod how;
pub mod ruler;
pub mod words;

pub use answer::{
    Farther, Hoist, Hoisted, LiftingAnswer, LiftingError, RatedBy, answer, by_hand, eyebolts, farther,
    heavier, hoisted,
};
pub use data::{LiftWay, LiftWork};

use crate::job::field::{self, Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::{Lifting, Situation};
use crate::trade::cure::Milestone;
use crate::trade::quantity::{Angle, Mass};
use crate::trade::sling::Hitch;
use uom::si::angle::degree;
use uom::si::mass::kilogram;

impl LiftWork {
    /// A lift of which no mass is known: zero, which no sum takes.
    pub fn blank() -> Self {
        Self {
            mass_kg: 0.0,
            ..Self::default()
        }
    }
}

impl Kind for LiftWork {
    fn word(&self) -> &'static str {
        "Lift"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, around: &Around<'_>, with: Situation) -> Situation {
        Situation {
            lifting: Some(lift_facts(self, around.hoist)),
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        15.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        // What is started or loaded goes by full cure.
        waits.then_some(Milestone::FullCure)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "lift", &fields::TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        field::set(&fields::TABLE, self, "lift", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&fields::TABLE, self, Some(&Self::blank()), see);
    }
}

fn lift_facts(lift: &LiftWork, hoist: Hoist<'_>) -> Lifting {
    // A plan begins at zero: nobody has said yet what it weighs.
    let mass = (lift.mass_kg != 0.0).then(|| Mass::new::<kilogram>(lift.mass_kg));
    let answer = answer(lift, hoist);
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
            // A single leg hangs plumb, whatever angle is left over from before; off centre the flatter counts.
            sling_angle: (legs != 1 || lift.hitch == Hitch::Basket).then(|| {
                let farther = farther(lift).ok().flatten().map(|leg| leg.angle);
                farther.unwrap_or_else(|| Angle::new::<degree>(angle_deg))
            }),
            hoist_share: mass.and_then(|mass| match hoisted(mass, lift.boom_mm, hoist) {
                Hoisted::Margin(margin, _) => Some(margin.share.value),
                Hoisted::Refused(_) => Some(f64::INFINITY),
                Hoisted::Unknown => None,
            }),
            ..with
        },
    }
}
