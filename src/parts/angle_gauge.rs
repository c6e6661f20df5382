//! A gauge for the turn after the torque, with the phone's own tilt as an aid where there is one.

use super::dynamic::{Piece, piece, text};
use crate::device::tilt;
use crate::job::turning::turn_deg;
use crate::trade::quantity::shortest;
use crate::trade::stages::angle_words;
use leptos::prelude::*;

const SIZE: f64 = 240.0;
const MIDDLE: f64 = SIZE / 2.0;
const RADIUS: f64 = 100.0;

/// Where the phone's tilt stands.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Tilt {
    /// Not asked for.
    Off,
    /// Asked, nothing heard yet.
    Waiting,
    /// Turned so far since the start, with the last heading.
    Turned { last: f64, so_far: f64 },
    /// The phone or its user says no.
    Refused,
}

/// The gauge for `degrees`, and a key that lays the phone's tilt beside it.
#[component]
pub fn AngleGauge(
    #[prop(into)] degrees: Signal<f64>,
    /// How far it may be missed, °: a band on the dial where it is above zero.
    #[prop(optional)]
    off: f64,
) -> impl IntoView {
    let tilt_state = RwSignal::new(Tilt::Off);
    on_cleanup(tilt::stop);
    let start = move |_| {
        tilt_state.set(Tilt::Waiting);
        let hear = move |heading| {
            tilt_state.try_update(|state| *state = after(*state, heading));
        };
        let refused = move || {
            tilt_state.try_set(Tilt::Refused);
        };
        tilt::watch(hear, refused);
    };
    let drawing: Piece = piece(move || dial(degrees.get(), off, so_far(tilt_state.get())));
    let words = text(move || tilt_words(tilt_state.get(), degrees.get()));
    view! {
        <section class="angle-gauge" aria-label="angle gauge">
            {drawing}
            <div>
                <p class="mid">{text(move || format!("Turn a further {}, in one smooth pull.", angle_words(degrees.get(), off)))}</p>
                <p class="quiet">"Mark socket and case with a line first; the mark is the measure."</p>
                <p role="status">{words}</p>
                {tilt::supported().then(|| view! {
                    <button on:click=start>"phone’s tilt as an aid, from here"</button>
                }.into_any())}
            </div>
        </section>
    }
}

/// The state after one more heading: turns are summed, so that more than half round counts.
fn after(state: Tilt, heading: f64) -> Tilt {
    match state {
        Tilt::Turned { last, so_far } => Tilt::Turned {
            last: heading,
            so_far: so_far + turn_deg(last, heading),
        },
        Tilt::Off => Tilt::Off,
        Tilt::Waiting | Tilt::Refused => Tilt::Turned {
            last: heading,
            so_far: 0.0,
        },
    }
}

fn so_far(state: Tilt) -> Option<f64> {
    match state {
        Tilt::Turned { so_far, .. } => Some(so_far.abs()),
        _ => None,
    }
}

fn tilt_words(state: Tilt, degrees: f64) -> String {
    match state {
        Tilt::Off => String::new(),
        Tilt::Waiting => "Hold the phone against the wrench; nothing heard from its sensor yet.".to_owned(),
        Tilt::Refused => "This phone doesn’t tell its tilt: go by the mark.".to_owned(),
        Tilt::Turned { so_far, .. } => {
            format!(
                "About {:.0}° of {}° by the phone’s tilt: an aid, not a gauge.",
                so_far.abs(),
                shortest(degrees)
            )
        }
    }
}

fn dial(degrees: f64, off: f64, turned: Option<f64>) -> AnyView {
    let at = |angle: f64, radius: f64| {
        let angle = angle.to_radians();
        (MIDDLE + radius * angle.sin(), MIDDLE - radius * angle.cos())
    };
    let ticks = (0..24)
        .map(|tick| {
            let angle = f64::from(tick) * 15.0;
            let (x1, y1) = at(angle, if tick % 6 == 0 { 82.0 } else { 91.0 });
            let (x2, y2) = at(angle, RADIUS);
            view! { <line x1=x1 y1=y1 x2=x2 y2=y2 /> }.into_any()
        })
        .collect::<Vec<_>>();
    let (x, y) = at(degrees, RADIUS);
    let large = i32::from(degrees > 180.0);
    // A full turn ends where it starts, and an arc of no length is not drawn.
    let wedge = if degrees >= 359.9 {
        String::new()
    } else {
        format!(
            "M{MIDDLE} {MIDDLE} V{} A{RADIUS} {RADIUS} 0 {large} 1 {x:.1} {y:.1} Z",
            MIDDLE - RADIUS
        )
    };
    let band = (off > 0.0).then(|| {
        let ((x1, y1), (x2, y2)) = (at(degrees - off, 94.0), at(degrees + off, 94.0));
        let large = i32::from(2.0 * off > 180.0);
        view! { <path class="band" d=format!("M{x1:.1} {y1:.1} A94 94 0 {large} 1 {x2:.1} {y2:.1}") /> }
            .into_any()
    });
    let needle = turned.map(|turned| {
        let (x, y) = at(turned, RADIUS - 6.0);
        view! { <line class="needle" x1=MIDDLE y1=MIDDLE x2=x y2=y /> }.into_any()
    });
    view! {
        <svg viewBox=format!("0 0 {SIZE} {SIZE}") role="img" aria-label=format!("{} clockwise", angle_words(degrees, off))>
            <circle cx=MIDDLE cy=MIDDLE r=RADIUS />
            <path d=wedge />
            {band}
            {ticks}
            {needle}
        </svg>
    }
    .into_any()
}
