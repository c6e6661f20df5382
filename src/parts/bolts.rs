//! The bolts of a step drawn where they lie: tallied, next, still to do.

use super::dynamic::{each, piece, text};
use leptos::prelude::*;

/// One bolt in the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bolt {
    /// Place in the unit square, from the top left.
    pub at: (f64, f64),
    /// Its turn in the tightening order, from 1.
    pub turn: usize,
    /// Brought to this pass's torque.
    pub tallied: bool,
    /// The one to do now.
    pub next: bool,
}

const WIDE: f64 = 360.0;
const HIGH: f64 = 200.0;
const MARGIN: f64 = 26.0;

/// The pattern; the numbers are the tightening order.
#[component]
pub fn Bolts(#[prop(into)] bolts: Signal<Vec<Bolt>>) -> impl IntoView {
    let words = text(move || {
        bolts.with(|bolts| {
            let done = bolts.iter().filter(|bolt| bolt.tallied).count();
            let next = bolts
                .iter()
                .find(|bolt| bolt.next)
                .map_or(String::new(), |b| format!(", next number {}", b.turn));
            format!("{done} of {} tallied{next}", bolts.len())
        })
    });
    let drawn = piece(move || {
        let bolts = bolts.get();
        let radius = if bolts.len() > 12 { 17.0 } else { 22.0 };
        each(bolts, |bolt| draw(bolt, radius)).into_any()
    });
    view! {
        <svg class="bolts" viewBox=format!("0 0 {WIDE} {HIGH}") role="img" aria-label=words>
            {drawn}
        </svg>
    }
    .into_any()
}

fn draw(bolt: Bolt, radius: f64) -> AnyView {
    let x = MARGIN + bolt.at.0 * (WIDE - 2.0 * MARGIN);
    let y = MARGIN + bolt.at.1 * (HIGH - 2.0 * MARGIN);
    view! {
        <g class:tallied=bolt.tallied class:next=bolt.next>
            <circle cx=x cy=y r=radius />
            <text x=x y=y font-size=radius>
                {bolt.turn}
            </text>
        </g>
    }
    .into_any()
}
