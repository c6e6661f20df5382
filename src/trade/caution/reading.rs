//! What the rules read off a step: its numbers against the limits, and the words for them.

use super::situation::{Cooling, Heating, Lifting, Pressing, Situation};
use crate::trade::compound::Family;
use crate::trade::quantity::{fixed, short_title};
use uom::si::angle::degree;
use uom::si::force::kilonewton;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

// Limits the rules go by.
/// Sling legs not flatter than this, from the horizontal (ASME B30.9).
pub(super) const FLATTEST_DEG: f64 = 30.0;
/// Below this the pull in a leg is already 1.4 times its share (ASME B30.9 factor table).
pub(super) const STEEP_DEG: f64 = 45.0;
/// Lifting index above which a lift strains most people (DHHS (NIOSH) 94-110).
pub(super) const INDEX_FOR_ALL: f64 = 1.0;
/// Lifting index above which it is unsafe for most (DHHS (NIOSH) 94-110, from memory).
pub(super) const INDEX_FOR_NONE: f64 = 3.0;
/// The most one person lifts under the best conditions, kg (DHHS (NIOSH) 94-110 load constant).
pub(super) const BEST_LIFT_KG: f64 = 23.0;
/// Share of a rating from which on there is little left for error (common practice, no source).
pub(super) const NEAR_RATING: f64 = 0.8;
/// Metal hotter than this burns skin that stays on it (ISO 13732-1, from memory: 51 °C for a minute).
pub(super) const BURNS_CELSIUS: f64 = 50.0;
/// Metal colder than this freezes to damp skin (common practice, no source).
pub(super) const FREEZES_CELSIUS: f64 = 0.0;
/// Colder than this, steel and rubber turn brittle (common practice, no source).
pub(super) const BRITTLE_CELSIUS: f64 = -40.0;

/// What a trip through another unit may leave behind.
const DUST: f64 = 1e-6;

/// An oil bath stays this far under its flash point, K (common practice, no source).
pub(super) const FLASH_MARGIN_K: f64 = 30.0;

// Shorthands.
pub(super) fn press(step: &Situation, test: fn(&Pressing) -> bool) -> bool {
    step.pressing.as_ref().is_some_and(test)
}

pub(super) fn heat(step: &Situation, test: fn(&Heating) -> bool) -> bool {
    step.heating.as_ref().is_some_and(test)
}

pub(super) fn cold(step: &Situation, test: fn(&Cooling) -> bool) -> bool {
    step.cooling.as_ref().is_some_and(test)
}

pub(super) fn lift(step: &Situation, test: fn(&Lifting) -> bool) -> bool {
    step.lifting.as_ref().is_some_and(test)
}

/// Beyond a limit, or no number at all.
pub(super) fn beyond(number: f64, limit: f64) -> bool {
    number > limit || number.is_nan() || limit.is_nan()
}

/// Short of a limit, or no number at all.
pub(super) fn short_of(number: f64, limit: f64) -> bool {
    number < limit || number.is_nan()
}

pub(super) fn none(_: &Situation) -> Option<String> {
    None
}

/// Force and rating in kilonewtons, where both are known.
fn press_kn(press: &Pressing) -> Option<(f64, f64)> {
    Some((
        press.force?.get::<kilonewton>(),
        press.rating?.get::<kilonewton>(),
    ))
}

/// Force over rating; beyond everything where the rating is nothing.
pub(super) fn press_share(press: &Pressing) -> Option<f64> {
    press_kn(press).map(|(force, rating)| {
        if rating > 0.0 {
            force / rating
        } else {
            f64::INFINITY
        }
    })
}

pub(super) fn press_numbers(step: &Situation) -> Option<String> {
    let (force, rating) = press_kn(step.pressing.as_ref()?)?;
    (force.is_finite() && rating.is_finite())
        .then(|| format!("{} of {} kN.", fixed(force, 1), fixed(rating, 1)))
}

pub(super) fn heat_celsius(heat: &Heating) -> Option<f64> {
    heat.target.map(|target| target.get::<degree_celsius>())
}

/// Hotter than the part may get, where both are known.
pub(super) fn over_limit(heat: &Heating) -> bool {
    match (heat_celsius(heat), heat.part_limit) {
        (Some(target), Some(limit)) => beyond(target, limit.get::<degree_celsius>()),
        _ => false,
    }
}

fn flash_celsius(heat: &Heating) -> Option<f64> {
    heat.flash_point.map(|flash| flash.get::<degree_celsius>())
}

/// An oil bath within the margin of its flash point.
pub(super) fn near_flash(heat: &Heating) -> bool {
    match (heat_celsius(heat), flash_celsius(heat)) {
        (Some(target), Some(flash)) => heat.oil_bath && beyond(target, flash - FLASH_MARGIN_K),
        _ => false,
    }
}

pub(super) fn flash_numbers(step: &Situation) -> Option<String> {
    let heat = step.heating.as_ref()?;
    let (target, flash) = (heat_celsius(heat)?, flash_celsius(heat)?);
    (target.is_finite() && flash.is_finite()).then(|| format!("{target:.0} °C, flash point {flash:.0} °C."))
}

pub(super) fn heat_numbers(step: &Situation) -> Option<String> {
    let heat = step.heating.as_ref()?;
    let (target, limit) = (heat_celsius(heat)?, heat.part_limit?.get::<degree_celsius>());
    (target.is_finite() && limit.is_finite()).then(|| format!("{target:.0} °C, allowed {limit:.0} °C."))
}

pub(super) fn target_numbers(step: &Situation) -> Option<String> {
    let target = step
        .heating
        .as_ref()
        .and_then(heat_celsius)
        .filter(|target| target.is_finite())?;
    Some(format!("{target:.0} °C."))
}

pub(super) fn cold_celsius(cooling: &Cooling) -> Option<f64> {
    cooling.to.map(|to| to.get::<degree_celsius>())
}

pub(super) fn mass_kg(lifting: &Lifting) -> Option<f64> {
    lifting.mass.map(|mass| mass.get::<kilogram>())
}

/// The lifting index, or the least it can be for that mass.
pub(super) fn index(lifting: &Lifting) -> Option<f64> {
    lifting
        .lifting_index
        .or(mass_kg(lifting).map(|mass_kg| mass_kg / BEST_LIFT_KG))
}

pub(super) fn index_numbers(step: &Situation) -> Option<String> {
    let lifting = step.lifting.as_ref()?;
    let index = index(lifting).filter(|index| index.is_finite())?;
    let at_least = if lifting.lifting_index.is_some() {
        ""
    } else {
        "at least "
    };
    Some(format!("Lifting index {at_least}{}.", fixed(index, 1)))
}

pub(super) fn leg_deg(lifting: &Lifting) -> Option<f64> {
    lifting.sling_angle.map(|angle| angle.get::<degree>())
}

pub(super) fn leg_numbers(step: &Situation) -> Option<String> {
    let leg_deg = step
        .lifting
        .as_ref()
        .and_then(leg_deg)
        .filter(|leg_deg| leg_deg.is_finite())?;
    // Towards the danger, so that no number reads as if it kept the limit it breaks.
    Some(format!("{:.0}° from the horizontal.", (leg_deg + DUST).floor()))
}

pub(super) fn hoist_numbers(step: &Situation) -> Option<String> {
    let percent = step.lifting.as_ref()?.hoist_share? * 100.0;
    percent
        .is_finite()
        .then(|| format!("{:.0} % of what it may carry there.", (percent - DUST).ceil()))
}

pub(super) fn wet(step: &Situation, family: Family) -> bool {
    step.chemicals.iter().any(|class| class.family() == family)
}

/// Heat is brought to something: by oven, plate or flame, or to a locked thread.
pub(super) fn heated(step: &Situation) -> bool {
    step.heating.is_some() || step.high_strength_removal
}

/// The step it is about; a long title would push what to do off the screen.
pub(super) fn in_quotes(step: &Option<String>) -> Option<String> {
    step.as_ref().map(|title| format!("“{}”.", short_title(title)))
}

/// Which fuel, from when on it lights, and the step that left it or the heat there.
pub(super) fn fuel_numbers(step: &Situation) -> Option<String> {
    let other = in_quotes(step.fuel.map_or(&step.fuel_near, |_| &step.hot_near))?;
    Some(match step.fuel {
        Some(fuel) => {
            let celsius = format!("{:.0}", fuel.flash_celsius).replace('-', "−");
            format!("{other} {} lights from {celsius} °C on.", capital(fuel.name))
        }
        None => other,
    })
}

fn capital(word: &str) -> String {
    let first = word.get(..1).unwrap_or_default().to_ascii_uppercase();
    format!("{first}{}", word.get(1..).unwrap_or_default())
}

pub(super) fn vapour(step: &Situation) -> bool {
    step.solvent || wet(step, Family::SolventDrying)
}
