//! An angle to turn further by, as it is typed.

use crate::trade::quantity::parse_angle;
use crate::trade::stages::Act;
use uom::si::angle::degree;

/// An angle with its unit, and its tolerance where there is one: "90°", "1/4 turn", "120° ± 5°". A number
/// without a unit is none: it may be a torque whose unit was forgotten.
pub fn angle(words: &str) -> Option<Act> {
    if !words.contains(|c: char| c.is_alphabetic() || matches!(c, '°' | 'º')) {
        return None;
    }
    let parted = ["±", "+/-", "+/−", "+-"]
        .iter()
        .find_map(|sign| words.split_once(sign));
    let (target, off) = parted.unwrap_or((words, ""));
    let off = if off.trim().is_empty() && parted.is_none() {
        0.0
    } else {
        degrees(off)?
    };
    degrees(target).map(|degrees| Act::Angle { degrees, off })
}

fn degrees(words: &str) -> Option<f64> {
    let angle = parse_angle(words).ok()?;
    Some((angle.angle().get::<degree>() * 1e6).round() / 1e6)
}
