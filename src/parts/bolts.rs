//! The bolts of a step drawn where they lie: tallied, next, still to do.

use super::dynamic::{each, piece, text};
use leptos::prelude::*;

/// One bolt in the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Bolt {
    /// Place in the unit square, from the top left.
    pub at: (f64, f64),
    /// Its turn in the tightening order, from 1.
    pub turn: usize,
    /// What the manual calls it, where it has numbers of its own.
    pub name: Option<String>,
    /// Brought to this pass's torque.
    pub tallied: bool,
    /// The one to do now.
    pub next: bool,
}

const WIDE: f64 = 360.0;
/// The unit square's height.
const HIGH: f64 = 148.0;
const MARGIN: f64 = 26.0;

/// The pattern; the numbers are the manual's own, else the tightening order.
#[component]
pub fn Bolts(#[prop(into)] bolts: Signal<Vec<Bolt>>) -> impl IntoView {
    let words = text(move || {
        bolts.with(|bolts| {
            let done = bolts.iter().filter(|bolt| bolt.tallied).count();
            let next = bolts
                .iter()
                .find(|bolt| bolt.next)
                .map_or(String::new(), |b| format!(", next number {}", shown(b)));
            format!("{done} of {} tallied{next}", bolts.len())
        })
    });
    let drawn = piece(move || {
        let bolts = bolts.get();
        let radius = if bolts.len() > 12 { 17.0 } else { 22.0 };
        let (top, _) = reach(&bolts);
        each(bolts, |bolt| draw(bolt, top, radius)).into_any()
    });
    // As high as the pattern: a row of two must not push the rest off the screen.
    let view_box = text(move || {
        let (top, bottom) = bolts.with(|bolts| reach(bolts));
        format!("0 0 {WIDE} {}", 2.0 * MARGIN + (bottom - top) * HIGH)
    });
    view! {
        <svg class="bolts" viewBox=view_box role="img" aria-label=words>
            {drawn}
        </svg>
    }
    .into_any()
}

/// Its number as it is drawn: the manual's own, else its turn.
fn shown(bolt: &Bolt) -> String {
    bolt.name.clone().unwrap_or_else(|| bolt.turn.to_string())
}

/// From the highest bolt to the lowest, in the unit square.
fn reach(bolts: &[Bolt]) -> (f64, f64) {
    let heights = bolts.iter().map(|bolt| bolt.at.1);
    (heights.clone().fold(1.0, f64::min), heights.fold(0.0, f64::max))
}

fn draw(bolt: Bolt, top: f64, radius: f64) -> AnyView {
    let x = MARGIN + bolt.at.0 * (WIDE - 2.0 * MARGIN);
    let y = MARGIN + (bolt.at.1 - top) * HIGH;
    view! {
        <g class:tallied=bolt.tallied class:next=bolt.next>
            <circle cx=x cy=y r=radius />
            <text x=x y=y font-size=radius>
                {shown(&bolt)}
            </text>
        </g>
    }
    .into_any()
}
