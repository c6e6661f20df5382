//! How a lift's number comes about, line by line.

use super::answer::{LiftingAnswer, LiftingError, farther, heavier};
use super::data::{LiftWay, LiftWork};
use super::words::{farther_words, force_words, to_safe_side};
use crate::trade::lift::{LOAD_CONSTANT_KG, LiftAnswer};
use crate::trade::quantity::{Force, Mass, MassUnit, fixed, print_mass};
use crate::trade::sling::{GRAVITY_M_S2, Hitch};
use uom::si::force::newton;
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

/// The steps from the load to what hands may lift, or to what a leg must bear.
pub fn how(
    work: &LiftWork,
    answer: &Result<LiftingAnswer, LiftingError>,
    weighs_in: MassUnit,
) -> Vec<String> {
    match answer {
        Ok(LiftingAnswer::Hands(hands)) => by_hand(hands, weighs_in),
        Ok(LiftingAnswer::Sling { leg, leg_rating, .. }) => slung(work, *leg, *leg_rating, weighs_in),
        Err(_) => Vec::new(),
    }
}

/// The factors of the end that decides.
fn by_hand(hands: &LiftAnswer, weighs_in: MassUnit) -> Vec<String> {
    let station = hands.governing();
    let m = station.multipliers;
    let factors = [
        ("reach", m.horizontal),
        ("height", m.vertical),
        ("way up", m.distance),
        ("turn", m.asymmetry),
        ("how often", m.frequency),
        ("grip", m.coupling),
    ];
    let product: Vec<String> = factors
        .iter()
        .map(|(name, factor)| format!("{name} {}", fixed(*factor, 2)))
        .collect();
    let most = print_mass(Mass::new::<kilogram>(LOAD_CONSTANT_KG), weighs_in, 3);
    let limit = to_safe_side(station.limit, weighs_in, 2, f64::floor);
    vec![
        format!(
            "{most} at best × {}: {limit} {} at most.",
            product.join(" × "),
            weighs_in.symbol()
        ),
        "Revised NIOSH lifting equation (DHHS 94-110), for a lift now and then with a healthy back."
            .to_owned(),
    ]
}

fn slung(work: &LiftWork, leg: Force, rating: Mass, weighs_in: MassUnit) -> Vec<String> {
    let LiftWay::Sling { legs, angle_deg } = work.way else {
        return Vec::new();
    };
    let load = Force::new::<newton>(work.mass_kg * GRAVITY_M_S2);
    let mut lines = vec![format!(
        "The load pulls with {}; each leg, {} of them at {}° from the horizontal, with {}.",
        force_words(load, weighs_in),
        legs,
        fixed(angle_deg, 0),
        force_words(leg, weighs_in)
    )];
    if legs > 2 {
        lines.push("Two are reckoned with: more never share alike.".to_owned());
    }
    if let Ok(Some(share)) = heavier(work) {
        lines.push(format!(
            "Off centre, one side carries {} %.",
            fixed(share.get::<ratio>() * 100.0, 0)
        ));
    }
    if let Ok(Some(leg)) = farther(work) {
        lines.push(format!(
            "That is the nearer leg’s angle: with the hook above the centre of gravity the farther stands at {}.",
            farther_words(&leg)
        ));
    }
    lines.extend(match work.hitch {
        Hitch::Straight => None,
        Hitch::Choker => Some("In a choker a sling bears 75 %.".to_owned()),
        Hitch::Basket => Some("In a basket each sling has two parts.".to_owned()),
    });
    lines.push(format!(
        "That is a rating of {} {} straight up. A leg pulls 1/sin of its angle more than its share (ASME B30.9).",
        to_safe_side(rating, weighs_in, 3, f64::ceil),
        weighs_in.symbol()
    ));
    lines
}
