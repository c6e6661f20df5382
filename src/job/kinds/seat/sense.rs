//! Rules between the numbers of a press fit: what can't be, whatever each number's own range allows.
//!
//! A size of 0 is not said yet and breaks none. Asked of every change and of files that come in; what stands
//! in storage is opened as it is, and a change is refused only for what it breaks itself.

use super::answer::nominal;
use super::data::Seat;
use super::manual::Stated;
use crate::trade::fit::{FitError, interference};
use crate::trade::heat_plan::HeatMeans;
use crate::trade::quantity::{TemperatureUnit, fixed, rounded};
use uom::si::length::millimeter;

/// More interference than this share of the diameter is a slip in a size.
const MOST_INTERFERENCE: f64 = 0.01;

/// What a manual heats to, °C: from a warm room to where steel loses more than its temper.
const HEAT: (f64, f64) = (30.0, 400.0);
/// What a manual chills to, °C: from past liquid nitrogen to a cool room.
const CHILL: (f64, f64) = (-200.0, 20.0);
/// Flash points of oils, °C.
const FLASH: (f64, f64) = (30.0, 400.0);

/// Dust of the units.
const DUST_MM: f64 = 1e-6;

/// A rule that is broken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wrong {
    /// The field it is about.
    pub field: &'static str,
    /// What is wrong with it, and what to do.
    pub why: String,
}

/// Every rule that is broken, in the order of the form.
pub fn wrong(seat: &Seat) -> Vec<Wrong> {
    [fit(seat), shape(seat), depth(seat), manual(seat)].concat()
}

/// Refuses a change for a rule that held before.
///
/// # Errors
/// What is wrong, and what to do.
pub fn changed(before: &Seat, after: &Seat) -> Result<(), String> {
    let broken = wrong(before);
    let new = wrong(after).into_iter().find(|wrong| !broken.contains(wrong));
    new.map_or(Ok(()), |wrong| Err(wrong.why))
}

fn said(mm: f64) -> Option<f64> {
    (mm > 0.0).then_some(mm)
}

/// Millimetres without zeros at the end: "62", "61.982".
fn mm(length: f64) -> String {
    rounded(length, 3)
}

fn fit(seat: &Seat) -> Vec<Wrong> {
    let sizes = [&seat.hole, &seat.shaft].map(|size| said(nominal(size).get::<millimeter>()));
    let [Some(hole), Some(_)] = sizes else {
        return Vec::new();
    };
    let why = match interference(&seat.hole, &seat.shaft) {
        Ok(fit) if fit.most.get::<millimeter>() > hole * MOST_INTERFERENCE => format!(
            "An interference of {} mm is more than 1 % of the diameter: check both sizes.",
            mm(fit.most.get::<millimeter>())
        ),
        Err(
            error @ (FitError::Mismatch(..)
            | FitError::NotAHole
            | FitError::NotAShaft
            | FitError::Between(..)),
        ) => error.to_string(),
        // Sizes beyond the tables, or a class that isn't in them: the answer says so.
        Ok(_)
        | Err(
            FitError::NotAClass(_)
            | FitError::NotAFit(_)
            | FitError::Size(_)
            | FitError::Grade(_)
            | FitError::NotDefined(_)
            | FitError::Measured(_),
        ) => return Vec::new(),
    };
    vec![Wrong { field: "size", why }]
}

fn shape(seat: &Seat) -> Vec<Wrong> {
    let fit =
        said(nominal(&seat.hole).get::<millimeter>()).or(said(nominal(&seat.shaft).get::<millimeter>()));
    let Some(fit) = fit else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut add = |field, why| found.push(Wrong { field, why });
    if seat.part_inside_mm >= fit - DUST_MM {
        add(
            "inside of what goes in, 0 if solid",
            format!(
                "The inside of what goes in, {} mm, must be smaller than the fit, {} mm: change that first.",
                mm(seat.part_inside_mm),
                mm(fit)
            ),
        );
    }
    if let Some(boss) = said(seat.boss_outside_mm) {
        let ring = (boss - fit) / 2.0;
        if ring <= DUST_MM {
            add(
                "outside of the boss",
                format!(
                    "The outside around the hole, {} mm, must be larger than the fit, {} mm: change that first.",
                    mm(boss),
                    mm(fit)
                ),
            );
        }
    }
    found
}

fn depth(seat: &Seat) -> Vec<Wrong> {
    let Some(depth) = seat.depth else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let (least, most) = (depth.least_mm, depth.most_mm);
    // 0 is where either begins.
    if least > most && least != 0.0 && most != 0.0 {
        found.push(Wrong {
            field: "depth, least",
            why: "The least depth is above the most: change that first.".to_owned(),
        });
    }
    if let Some(bore) = depth.bore_mm
        && least.max(most) > bore + DUST_MM
    {
        found.push(Wrong {
            field: "depth, most",
            why: format!(
                "A depth of {} mm is deeper than the bore, {} mm from face to shoulder: change that first.",
                mm(least.max(most)),
                mm(bore)
            ),
        });
    }
    found
}

fn manual(seat: &Seat) -> Vec<Wrong> {
    let Some(manual) = seat.manual else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut add = |field, why| found.push(Wrong { field, why });
    let celsius = |stated: Stated| TemperatureUnit::Celsius.value_of(stated.temperature());
    let mut outside = |field, what: &str, stated: Option<Stated>, (least, most): (f64, f64)| {
        let out = stated.is_some_and(|stated| !(least..=most).contains(&celsius(stated)));
        if out {
            let fahrenheit = |c: f64| fixed(c * 1.8 + 32.0, 0);
            add(
                field,
                format!(
                    "{what} lies between {} and {} °C ({} and {} °F).",
                    fixed(least, 0),
                    fixed(most, 0),
                    fahrenheit(least),
                    fahrenheit(most)
                ),
            );
        }
    };
    let heat = manual.heat.unwrap_or_default();
    outside("the manual: heat to", "What is heated to", heat.to, HEAT);
    outside(
        "the manual: never over",
        "The limit of the heat",
        heat.never_over,
        HEAT,
    );
    outside(
        "flash point of the bath’s oil",
        "An oil’s flash point",
        heat.flash_point,
        FLASH,
    );
    let chill = manual.chill.and_then(|chill| chill.to);
    outside("the manual: chill to", "What is chilled to", chill, CHILL);
    if let (Some(to), Some(limit)) = (heat.to, heat.never_over)
        && celsius(to) > celsius(limit) + DUST_MM
    {
        let why = format!(
            "The manual’s {} is above its own limit, {}: read both again.",
            to.text(),
            limit.text()
        );
        found.push(Wrong {
            field: "the manual: heat to",
            why,
        });
    }
    if heat.flash_point.is_some() && heat.means != Some(HeatMeans::OilBath) {
        found.push(Wrong {
            field: "flash point of the bath’s oil",
            why: "A flash point belongs to an oil bath: choose the oil bath first.".to_owned(),
        });
    }
    found
}
