//! A wrench with an adapter on its drive, from above, with its two lengths and the angle.

use crate::job::adapter::Adapter;
use crate::parts::drawn::lines;
use leptos::prelude::*;

const WIDE: f64 = 360.0;
const HIGH: f64 = 190.0;
/// The drive.
const DRIVE: (f64, f64) = (236.0, 110.0);
/// The grip.
const GRIP: f64 = 30.0;
/// The adapter's length in the drawing; not to scale, and said so.
const ARM: f64 = 84.0;

/// The drawing; lengths are not to scale, the angle is.
pub fn adapter_drawing(adapter: Adapter) -> AnyView {
    let angle = adapter.angle_deg.to_radians();
    let (x, y) = (DRIVE.0 + ARM * angle.cos(), DRIVE.1 - ARM * angle.sin().abs());
    let name = format!(
        "wrench {} mm, adapter {} mm, angle {}°",
        adapter.wrench_mm, adapter.adapter_mm, adapter.angle_deg
    );
    view! {
        <figure>
            <svg class="adapter" viewBox=format!("0 0 {WIDE} {HIGH}") role="img" aria-label=name>
                <line class="body" x1=GRIP y1=DRIVE.1 x2=DRIVE.0 y2=DRIVE.1 />
                <line class="grip" x1=GRIP - 18.0 y1=DRIVE.1 x2=GRIP + 44.0 y2=DRIVE.1 />
                <line class="straight" x1=DRIVE.0 y1=DRIVE.1 x2=WIDE y2=DRIVE.1 />
                <line class="arm" x1=DRIVE.0 y1=DRIVE.1 x2=x y2=y />
                <circle cx=DRIVE.0 cy=DRIVE.1 r="9" />
                <circle class="bolt" cx=x cy=y r="14" />
                <path class="hidden" d=hexagon(x, y) />
                <path class="leader" d=format!("M{GRIP} 140H{0}M{GRIP} 132V148M{0} 132V148", DRIVE.0) />
                <text x="133" y="170">{format!("L {} mm", adapter.wrench_mm)}</text>
                <text x="133" y="40">{format!("E {} mm · {}°", adapter.adapter_mm, adapter.angle_deg)}</text>
            </svg>
            <figcaption class="quiet">"Angle as drawn, lengths not to scale. L: middle of the grip to the drive. E: drive to bolt."</figcaption>
        </figure>
    }
    .into_any()
}

/// The bolt's head round a point, under the socket.
fn hexagon(x: f64, y: f64) -> String {
    let corner = |of: u32| {
        let angle = f64::from(of) * std::f64::consts::FRAC_PI_3;
        (x + 10.0 * angle.cos(), y + 10.0 * angle.sin())
    };
    let sides: Vec<_> = (0..6)
        .map(|of| {
            let ((x1, y1), (x2, y2)) = (corner(of), corner(of + 1));
            [x1, y1, x2, y2]
        })
        .collect();
    lines(&sides)
}
