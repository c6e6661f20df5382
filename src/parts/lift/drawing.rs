//! A lift drawn: a figure with its reach and heights, or a sling with its angle from the horizontal.

use super::Answered;
use crate::bench::Bench;
use crate::job::field::Kept;
use crate::job::kinds::{LiftWay, LiftWork};
use crate::parts::drawn::{WIDE, boxes, drawing, label, lines, shape};
use crate::parts::dynamic::piece;
use crate::trade::quantity::MassUnit;
use leptos::prelude::*;

const HIGH: f64 = 240.0;
const FLOOR: f64 = 212.0;

/// The drawing of the lift at hand.
pub fn lift_drawing(answered: Answered) -> AnyView {
    let bench = Bench::here();
    piece(move || {
        let unit = bench.settings.with(|s| s.lift.unit);
        answered.with(|found| match found {
            Some((work, _)) => drawn(work, unit),
            None => ().into_any(),
        })
    })
    .into_any()
}

fn drawn(work: &LiftWork, unit: MassUnit) -> AnyView {
    match work.way {
        LiftWay::Hands {
            reach_cm,
            from_cm,
            to_cm,
            ..
        } => hands(reach_cm, from_cm, to_cm, unit),
        LiftWay::Sling { legs, angle_deg } => sling(legs, angle_deg),
    }
}

/// Side view: ankles on the floor line, hands at their reach; one unit a centimetre.
fn hands(reach_cm: f64, from_cm: f64, to_cm: f64, unit: MassUnit) -> AnyView {
    let ankles = 64.0;
    // What is far out of reach is drawn at the edge.
    let at = |cm: f64| FLOOR - cm.clamp(0.0, 195.0);
    let x = ankles + (reach_cm * 1.3).clamp(18.0, 130.0);
    let shown = |cm: f64| {
        let symbol = Kept::Centimetre.symbol(unit);
        format!("{} {symbol}", Kept::Centimetre.text(cm, unit))
    };
    let crate_at = |y: f64| boxes(&[[x - 4.0, y - 20.0, x + 32.0, y + 4.0]]);
    let (low, high) = (at(from_cm), at(to_cm));
    // Words stay clear of the floor line.
    let low_words = low.min(FLOOR - 12.0);
    let shoulder = (ankles + 6.0, FLOOR - 142.0);
    let body = lines(&[
        [ankles - 10.0, FLOOR, ankles + 6.0, FLOOR],
        [ankles - 4.0, FLOOR, ankles + 4.0, FLOOR - 46.0],
        [ankles + 4.0, FLOOR - 46.0, ankles - 6.0, FLOOR - 90.0],
        [ankles - 6.0, FLOOR - 90.0, shoulder.0, shoulder.1],
        [shoulder.0, shoulder.1, x, low],
    ]);
    let across = FLOOR + 16.0;
    let parts = vec![
        shape("ground", lines(&[[8.0, FLOOR, WIDE - 8.0, FLOOR]])),
        shape("ghost", crate_at(high)),
        shape("part", crate_at(low)),
        shape("body", body),
        view! { <circle class="body" cx=format!("{}", shoulder.0 + 4.0) cy=format!("{}", shoulder.1 - 20.0) r="14" /> }
            .into_any(),
        shape(
            "leader",
            lines(&[
                [ankles, across, x, across],
                [ankles, across - 6.0, ankles, across + 6.0],
                [x, across - 6.0, x, across + 6.0],
            ]),
        ),
        label(x + 10.0, across + 7.0, "start", shown(reach_cm)),
        label(x + 40.0, low_words + 6.0, "start", shown(from_cm)),
        label(x + 40.0, apart(high.min(FLOOR - 12.0), low_words) + 6.0, "start", shown(to_cm)),
    ];
    drawing(
        HIGH,
        format!(
            "hands {} out, from {} up to {}",
            shown(reach_cm),
            shown(from_cm),
            shown(to_cm)
        ),
        parts,
        "Reach from between the ankles; heights of the hands above the floor. Dashes and dots: the end."
            .to_owned(),
    )
}

/// A label's place, kept clear of another's.
fn apart(y: f64, other: f64) -> f64 {
    if (y - other).abs() >= 22.0 {
        y
    } else if y > other {
        other + 22.0
    } else {
        other - 22.0
    }
}

/// Legs of one length from the hook to the load, at the angle they stand.
fn sling(legs: u8, angle_deg: f64) -> AnyView {
    let leg = 142.0;
    let foot = 176.0;
    let middle = WIDE / 2.0;
    let plumb = legs == 1;
    let angle = if plumb { 90.0 } else { angle_deg.clamp(0.0, 90.0) }.to_radians();
    let (half, rise) = (leg * angle.cos(), leg * angle.sin());
    let hook = foot - rise;
    let mut ends = vec![[middle, hook, middle + half, foot]];
    if !plumb {
        ends.push([middle, hook, middle - half, foot]);
    }
    let load = half.clamp(46.0, 142.0);
    let mut parts = vec![
        shape(
            "part",
            boxes(&[[middle - load, foot, middle + load, foot + 44.0]]),
        ),
        shape("rope", lines(&ends)),
        shape("body", lines(&[[middle, (hook - 22.0).max(2.0), middle, hook]])),
    ];
    if !plumb {
        let arc = 40.0;
        let left = middle - half;
        let (x, y) = (left + arc * angle.cos(), foot - arc * angle.sin());
        let path = format!("M{:.1} {foot}A{arc} {arc} 0 0 0 {x:.1} {y:.1}", left + arc);
        parts.push(shape("arrow", path));
        // Steep legs leave room beside them, flat ones above.
        let (words_x, words_y, anchor) = if half < 70.0 {
            (left - 14.0, foot - 26.0, "end")
        } else {
            (
                left + arc + 8.0 + (35.0 - angle_deg).max(0.0) * 1.8,
                foot - 8.0,
                "start",
            )
        };
        parts.push(label(words_x, words_y, anchor, format!("{angle_deg:.0}°")));
    }
    if legs > 2 {
        parts.push(label(
            middle,
            foot + 28.0,
            "middle",
            format!("{legs} legs, two carry"),
        ));
    }
    drawing(
        HIGH,
        format!("sling with {legs} legs at {angle_deg:.0} degrees from the horizontal"),
        parts,
        "The angle is from the horizontal, not from the vertical.".to_owned(),
    )
}
