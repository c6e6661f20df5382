//! How a press fit's number comes about, line by line.

use super::answer::{SeatAnswer, joining_at, outer_and_inner, press_fit};
use super::data::Seat;
use super::words::{celsius_text, kilonewtons, microns, thousandths};
use crate::trade::growth::REFERENCE_CELSIUS;
use crate::trade::heat_plan::PlanKind;
use crate::trade::material::Material;
use crate::trade::press::FRICTION;
use crate::trade::quantity::{Length, ThermodynamicTemperature, fixed, shortest};
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The steps from the sizes to the temperature or the force, each with what it rests on.
pub fn how(seat: &Seat, answer: &SeatAnswer) -> Vec<String> {
    let sizes = &answer.sizes;
    let tight = sizes.part_cold - sizes.hole_cold;
    let mut lines = vec![format!(
        "The tightest pair at 20 °C (ISO 1): bore {} mm, in it {} mm: {}.",
        thousandths(sizes.hole_cold),
        thousandths(sizes.part_cold),
        apart(tight)
    )];
    let plan = answer.followed();
    if plan.which == PlanKind::PressCold {
        lines.extend(pressed(seat, answer).into_iter().flatten());
        return lines;
    }
    let (outer, inner) = outer_and_inner(seat);
    let (hole_at, part_at) = joining_at(seat, plan, answer.room);
    lines.extend(grown(
        "The bore",
        outer,
        (sizes.hole_cold, sizes.hole_joining),
        hole_at,
    ));
    lines.extend(grown(
        "What goes in",
        inner,
        (sizes.part_cold, sizes.part_joining),
        part_at,
    ));
    lines.push(format!(
        "Then it is {}; to drop in it wants {} µm.",
        apart(sizes.part_joining - sizes.hole_joining),
        microns(answer.slip)
    ));
    lines.push("Sizes grow in proportion; of the metal’s range the end that gives less is taken.".to_owned());
    lines
}

/// "21 µm tight", "25 µm loose".
fn apart(tight: Length) -> String {
    match tight >= Length::new::<millimeter>(0.0) {
        true => format!("{} µm tight", microns(tight)),
        false => format!("{} µm loose", microns(-tight)),
    }
}

/// One size on its way to the temperature at which both are joined; none where it stays as it is.
fn grown(
    name: &str,
    material: Material,
    (cold, joining): (Length, Length),
    at: ThermodynamicTemperature,
) -> Option<String> {
    let apart_k = at.get::<degree_celsius>() - REFERENCE_CELSIUS;
    let by = joining - cold;
    if apart_k.abs() < 0.5 {
        return None;
    }
    let per_kelvin = by.get::<millimeter>() / cold.get::<millimeter>() / apart_k;
    let sign = if apart_k < 0.0 { '−' } else { '+' };
    Some(format!(
        "{name}, {}, at {} °C: {} mm × {} µm/(m·K) × {} K = {sign}{} µm.",
        material.words(),
        celsius_text(at),
        thousandths(cold),
        fixed(per_kelvin * 1e6, 1),
        fixed(apart_k.abs(), u8::from((apart_k * 10.0).round() % 10.0 != 0.0)),
        microns(by.abs())
    ))
}

/// From the squeeze to the force.
fn pressed(seat: &Seat, answer: &SeatAnswer) -> Option<[String; 2]> {
    let press = press_fit(seat);
    let pressure = press.pressure(answer.interference.most).ok()?;
    let force = answer.force?;
    let friction = shortest(FRICTION.1);
    Some([
        format!(
            "Squeezed so, they press on each other with {} MPa (thick rings, Lamé).",
            fixed(pressure.get::<megapascal>(), 1)
        ),
        format!(
            "Friction {friction} × π × ⌀ {} mm × {} mm long × that = {} kN at most; at least {} kN.",
            fixed(press.diameter.get::<millimeter>(), 1),
            fixed(press.length.get::<millimeter>(), 1),
            kilonewtons(force.most),
            kilonewtons(force.least)
        ),
    ])
}
