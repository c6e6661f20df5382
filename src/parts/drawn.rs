//! Small helps for drawings: shapes as path data, words in their place.

use leptos::prelude::*;
use std::fmt::Write;

/// Width of every drawing in its own units: the narrowest phone's, so that words never shrink.
pub const WIDE: f64 = 296.0;

/// Rectangles from corner to corner, as one path.
pub fn boxes(corners: &[[f64; 4]]) -> String {
    let mut path = String::new();
    for [left, top, right, bottom] in corners {
        // Writing to a string can't fail.
        let _ = write!(path, "M{left:.1} {top:.1}H{right:.1}V{bottom:.1}H{left:.1}Z");
    }
    path
}

/// Lines from point to point, as one path.
pub fn lines(ends: &[[f64; 4]]) -> String {
    let mut path = String::new();
    for [x1, y1, x2, y2] in ends {
        let _ = write!(path, "M{x1:.1} {y1:.1}L{x2:.1} {y2:.1}");
    }
    path
}

/// An arrow straight down to (x, y) from `high` above it.
pub fn arrow_down(x: f64, y: f64, high: f64) -> String {
    lines(&[
        [x, y - high, x, y],
        [x - 6.0, y - 9.0, x, y],
        [x + 6.0, y - 9.0, x, y],
    ])
}

/// A box on both sides of a middle line, from `inner` to `outer` of it.
pub fn both_sides(middle: f64, inner: f64, outer: f64, top: f64, bottom: f64) -> [[f64; 4]; 2] {
    [
        [middle - outer, top, middle - inner, bottom],
        [middle + inner, top, middle + outer, bottom],
    ]
}

/// Level lines across a middle line, `half` to both sides of it: edges that run round behind the cut. `edge` is
/// one that is seen through the opening, `hidden` one that something stands in front of. One without a length is
/// none: its round ends would show as a dot.
pub fn across(class: &'static str, middle: f64, edges: &[(f64, f64)]) -> AnyView {
    let ends: Vec<_> = edges
        .iter()
        .filter(|(_, half)| *half > 0.0)
        .map(|&(y, half)| [middle - half, y, middle + half, y])
        .collect();
    shape(class, lines(&ends))
}

/// One filled or stroked shape of a drawing, by class.
pub fn shape(class: &'static str, path: String) -> AnyView {
    view! { <path class=class d=path /> }.into_any()
}

/// Words in a drawing; `anchor` is start, middle or end.
pub fn label(x: f64, y: f64, anchor: &'static str, words: String) -> AnyView {
    view! {
        <text x=format!("{x:.0}") y=format!("{y:.0}") text-anchor=anchor>
            {words}
        </text>
    }
    .into_any()
}

/// The drawing around its parts, with what it shows in words.
pub fn drawing(high: f64, words: String, parts: Vec<AnyView>, note: String) -> AnyView {
    view! {
        <figure class="drawing">
            <svg viewBox=format!("0 0 {WIDE} {high}") role="img" aria-label=words>
                <defs>
                    <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                        <path class="hatch" d="M0 0V7" />
                    </pattern>
                </defs>
                {parts}
            </svg>
            <figcaption>{note}</figcaption>
        </figure>
    }
    .into_any()
}
