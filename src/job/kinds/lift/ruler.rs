//! A lift's number on its line: the load against what one person may lift, or against the hoist.

use super::answer::{Hoisted, LiftingAnswer};
use super::data::LiftWork;
use super::words::to_safe_side;
use crate::job::scale::{Ruler, on_line};
use crate::trade::lift::LOAD_CONSTANT_KG;
use crate::trade::quantity::{Mass, MassUnit};
use uom::si::mass::kilogram;

/// The load on the line of what may carry it; what is over that is out of bounds. None where the hoist's
/// rating isn't known.
pub fn ruler(work: &LiftWork, answer: &LiftingAnswer, weighs_in: MassUnit) -> Option<Ruler> {
    let load = Mass::new::<kilogram>(work.mass_kg);
    let (may, most, who) = match answer {
        // The equation's own most, in the best of places.
        LiftingAnswer::Hands(hands) => {
            let most = Mass::new::<kilogram>(LOAD_CONSTANT_KG);
            (hands.governing().limit, most, "one person")
        }
        LiftingAnswer::Sling {
            hoist: Hoisted::Margin(margin, _),
            ..
        } => (margin.rating, margin.rating, "the hoist"),
        LiftingAnswer::Sling { .. } => return None,
    };
    let words = format!(
        "load {} of {} {} for {who}",
        to_safe_side(load, weighs_in, 3, f64::ceil),
        to_safe_side(may, weighs_in, 3, f64::floor),
        weighs_in.symbol()
    );
    let own = |mass: Mass| weighs_in.value_of(mass);
    let end = own(most.max(load));
    on_line((0.0, end), own(load), (own(may), end), words)
}
