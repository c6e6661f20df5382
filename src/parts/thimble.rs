//! The wrench's own scale at its setting: the lines of the tube, and the thimble over them.

use crate::job::scale::{Mark, ThimbleScale};
use leptos::prelude::*;

const WIDE: f64 = 360.0;
const HIGH: f64 = 132.0;
/// The thimble's edge.
const EDGE: f64 = 236.0;
const LINE: f64 = 56.0;
/// A figure's middle keeps this far from the thimble's edge.
const FIGURE: f64 = 24.0;
const DIVISION: f64 = 25.0;
const MIDDLE: f64 = HIGH / 2.0;

/// The drawing.
pub fn thimble(scale: ThimbleScale) -> AnyView {
    let tube = scale.tube.into_iter().map(tube_line).collect::<Vec<_>>();
    let divisions = scale.thimble.into_iter().map(division).collect::<Vec<_>>();
    view! {
        <svg class="thimble" viewBox=format!("0 0 {WIDE} {HIGH}") role="img" aria-label=format!("scale: {}", scale.words)>
            <line x1="0" y1="22" x2=EDGE y2="22" />
            <line x1="0" y1="110" x2=EDGE y2="110" />
            <rect x=EDGE y="2" width="120" height="128" />
            <line class="set" x1="0" y1=MIDDLE x2=EDGE + 34.0 y2=MIDDLE />
            {tube}
            {divisions}
        </svg>
    }
    .into_any()
}

fn tube_line(mark: Mark) -> AnyView {
    let x = EDGE - mark.at * LINE - 2.0;
    (x > 16.0)
        .then(|| {
            view! {
                <g class:set=mark.set>
                    <line x1=x y1="40" x2=x y2=MIDDLE />
                    <text x=x.min(EDGE - FIGURE) y="92">{mark.figure}</text>
                </g>
            }
            .into_any()
        })
        .into_any()
}

fn division(mark: Mark) -> AnyView {
    let y = MIDDLE - mark.at * DIVISION;
    view! {
        <g class:set=mark.set>
            <line x1=EDGE y1=y x2=EDGE + 34.0 y2=y />
            <text x=EDGE + 74.0 y=y + 8.0>{mark.figure}</text>
        </g>
    }
    .into_any()
}
