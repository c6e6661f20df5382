//! The fit cut open: as the parts are at 20 °C, and as they are when they are joined.

use super::{Answered, with_answer};
use crate::bench::Bench;
use crate::job::kinds::Seat;
use crate::job::kinds::seat::SeatAnswer;
use crate::job::kinds::seat::words::drawing_words;
use crate::parts::drawn::{WIDE, across, arrow_down, both_sides, boxes, drawing, label, lines, shape};
use crate::trade::quantity::significant;
use leptos::prelude::*;
use uom::si::length::millimeter;

/// Half of the bore in the drawing.
const HALF: f64 = 34.0;
/// The largest difference drawn, on the radius.
const SHOWN: f64 = 9.0;
const HIGH: f64 = 208.0;
const CASE: (f64, f64) = (104.0, 156.0);

/// The drawing of the fit at hand.
pub fn fit_drawing(answered: Answered) -> AnyView {
    with_answer(answered, drawn)
}

fn drawn(seat: &Seat, answer: &SeatAnswer) -> AnyView {
    let mm = |length: crate::trade::quantity::Length| length.get::<millimeter>();
    let sizes = &answer.sizes;
    let bore = mm(sizes.hole_cold);
    let more = |size| mm(size) - bore;
    let (part_cold, hole_hot, part_hot) = (
        more(sizes.part_cold),
        more(sizes.hole_joining),
        more(sizes.part_joining),
    );
    let largest = [part_cold, hole_hot, part_hot]
        .into_iter()
        .map(f64::abs)
        .fold(1e-6, f64::max);
    // Rounded down to one figure, as it is said.
    let exact = SHOWN * bore / (largest * HALF);
    let scale = 10_f64.powf(exact.log10().floor());
    let times = ((exact / scale).floor() * scale).max(1.0);
    let px = move |difference: f64| HALF + difference * HALF / bore * times;
    let inside = (seat.part_inside_mm / bore * HALF).clamp(0.0, HALF - 7.0);
    let boss = (seat.boss_outside_mm / bore * HALF).clamp(HALF + 14.0, 64.0);
    let loose = part_hot <= hole_hot;
    let figures = Bench::here().figures();
    let (cold, joining) = drawing_words(seat, answer);
    let (cold, joining) = (
        cold.map(|words| figures.said(&words)),
        joining.map(|words| figures.said(&words)),
    );
    let mut parts = panel(WIDE / 4.0, HALF, px(part_cold), inside, boss, false, cold.clone());
    parts.extend(panel(
        WIDE * 0.75,
        px(hole_hot),
        px(part_hot),
        inside,
        boss,
        loose,
        joining.clone(),
    ));
    let words = format!("cross-section: {}; then {}", cold.join(", "), joining.join(", "));
    let note = format!(
        "Differences drawn {} times too large. Sizes in mm, the tightest pair.",
        significant(times, 1)
    );
    drawing(HIGH, words, parts, note)
}

/// One state: the case cut open, the part above it or on its way in.
fn panel(
    middle: f64,
    hole: f64,
    part: f64,
    inside: f64,
    boss: f64,
    slips: bool,
    words: [String; 4],
) -> Vec<AnyView> {
    let (top, bottom) = CASE;
    let part_bottom = if slips { top + 26.0 } else { top - 4.0 };
    let part_top = part_bottom - 34.0;
    let ring = if inside > 0.0 {
        both_sides(middle, inside, part, part_top, part_bottom).to_vec()
    } else {
        vec![[middle - part, part_top, middle + part, part_bottom]]
    };
    // The bore's far rim: free, or behind what is in it, a ring's far wall or a whole part.
    let rim = match (slips, inside > 0.0) {
        (false, _) => ("edge", hole),
        (true, true) => ("hidden", inside),
        (true, false) => ("hidden", part),
    };
    let [first, second, hole_words, part_words] = words;
    let mut parts = vec![
        label(middle, 18.0, "middle", first),
        label(middle, 40.0, "middle", second),
        // The whole boss grows, not only its bore.
        shape(
            "case",
            boxes(&both_sides(middle, hole, boss + hole - HALF, top, bottom)),
        ),
        shape("part", boxes(&ring)),
        across(
            "edge",
            middle,
            &[(part_top, inside), (part_bottom, inside), (bottom, hole)],
        ),
        across(rim.0, middle, &[(top, rim.1)]),
        shape("axis", lines(&[[middle, part_top - 8.0, middle, bottom + 6.0]])),
        label(middle, bottom + 22.0, "middle", hole_words),
        label(middle, bottom + 44.0, "middle", part_words),
    ];
    if slips {
        parts.push(shape("arrow", arrow_down(middle, part_bottom + 14.0, 34.0)));
    }
    parts
}
