//! Where to push and what to stand it on, cut open.

use super::{Answered, with_answer};
use crate::job::kinds::Seat;
use crate::job::kinds::seat::nominal;
use crate::parts::drawn::{across, arrow_down, both_sides, boxes, drawing, label, lines, shape};
use crate::trade::heat_plan::HoleIn;
use crate::trade::press::Tools;
use crate::trade::quantity::Length;
use leptos::prelude::*;
use uom::si::length::millimeter;

const MIDDLE: f64 = 92.0;
const HALF: f64 = 40.0;
const WORDS_AT: f64 = 184.0;
const HIGH: f64 = 226.0;
const BENCH: f64 = 212.0;

/// The drawing for the fit at hand; nothing where no tool fits.
pub fn tools_drawing(answered: Answered) -> AnyView {
    with_answer(answered, |seat, answer| match &answer.tools {
        Ok(tools) => drawn(seat, tools),
        Err(_) => ().into_any(),
    })
}

fn drawn(seat: &Seat, tools: &Tools) -> AnyView {
    let fit = nominal(&seat.hole);
    let half = move |size: Length| (size / fit).value * HALF;
    let of_mm = |mm: f64| half(Length::new::<millimeter>(mm));
    let (mut parts, case_word) = match seat.hole_in {
        HoleIn::Housing => (into_bore(seat, tools, &half), "case"),
        HoleIn::Part => (onto_shaft(of_mm(seat.boss_outside_mm)), "shaft"),
    };
    let (driver_in, driver_out) = (half(tools.driver_inside), half(tools.driver_outside));
    parts.push(shape(
        "tool",
        boxes(&both_sides(MIDDLE, driver_in, driver_out, 30.0, 74.0)),
    ));
    parts.push(shape("axis", lines(&[[MIDDLE, 34.0, MIDDLE, BENCH + 8.0]])));
    parts.push(shape("arrow", arrow_down(MIDDLE, 28.0, 22.0)));
    parts.push(shape("ground", lines(&[[12.0, BENCH, 172.0, BENCH]])));
    let words = [
        ("push here", 52.0, driver_out),
        ("part", 94.0, HALF),
        (case_word, 134.0, HALF + 16.0),
        ("stand it here", 186.0, HALF + 10.0),
    ];
    for (word, y, from) in words {
        parts.push(shape(
            "leader",
            lines(&[[MIDDLE + from + 2.0, y, WORDS_AT - 6.0, y]]),
        ));
        parts.push(label(WORDS_AT, y + 6.0, "start", word.to_owned()));
    }
    drawing(
        HIGH,
        "where to push and where to support, cut open".to_owned(),
        parts,
        "Push only on the ring that is being fitted. Not to scale along the axis.".to_owned(),
    )
}

fn into_bore(seat: &Seat, tools: &Tools, half: &dyn Fn(Length) -> f64) -> Vec<AnyView> {
    let of_mm = |mm: f64| half(Length::new::<millimeter>(mm));
    let boss = of_mm(seat.boss_outside_mm).clamp(HALF + 14.0, 80.0);
    let inside = of_mm(seat.part_inside_mm).min(HALF - 6.0);
    let mut case = both_sides(MIDDLE, HALF, boss, 96.0, 152.0).to_vec();
    let opening = seat.shoulder_mm.map(|opening| of_mm(opening).clamp(4.0, HALF));
    let mut edges = vec![(74.0, inside), (114.0, inside), (152.0, opening.unwrap_or(HALF))];
    if let Some(opening) = opening {
        case.extend(both_sides(MIDDLE, opening, HALF, 138.0, 152.0));
        edges.push((138.0, opening));
    }
    // The bore's far rim: behind the ring's far wall, or behind the whole part where that isn't hollow.
    let behind = if inside > 0.0 { inside } else { HALF };
    let ring = if inside > 0.0 {
        both_sides(MIDDLE, inside, HALF, 74.0, 114.0).to_vec()
    } else {
        vec![[MIDDLE - HALF, 74.0, MIDDLE + HALF, 114.0]]
    };
    let outer = half(tools.support_outside).min(boss);
    let inner = half(tools.support_inside).min(outer - 4.0);
    vec![
        shape("case", boxes(&case)),
        shape("part", boxes(&ring)),
        across("edge", MIDDLE, &edges),
        across("hidden", MIDDLE, &[(96.0, behind)]),
        shape("tool", boxes(&both_sides(MIDDLE, inner, outer, 152.0, BENCH))),
    ]
}

fn onto_shaft(ring_outside: f64) -> Vec<AnyView> {
    let outside = ring_outside.clamp(HALF + 8.0, 80.0);
    vec![
        shape("case", boxes(&[[MIDDLE - HALF, 88.0, MIDDLE + HALF, BENCH]])),
        shape("part", boxes(&both_sides(MIDDLE, HALF, outside, 74.0, 114.0))),
        across("edge", MIDDLE, &[(74.0, HALF)]),
        // The ring's far edge, behind the shaft.
        across("hidden", MIDDLE, &[(114.0, HALF)]),
    ]
}
