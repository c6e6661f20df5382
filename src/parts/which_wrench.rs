//! Which wrench is in the hand: its unit, its scale and its division by three touches, or any.

use super::dynamic::{piece, press, text};
use super::keys::{KeySpec, keys};
use crate::bench::Bench;
use crate::device::place;
use crate::job::wrench_asked::{Marks, UNITS, described, divisions, scales};
use crate::trade::quantity::{TorqueUnit, shortest};
use leptos::prelude::*;

/// The question, in the place of the screen that needs the answer.
#[component]
pub fn WhichWrench() -> impl IntoView {
    let bench = Bench::here();
    let unit = RwSignal::new(None::<TorqueUnit>);
    let scale = RwSignal::new(None::<Marks>);
    let asked = text(move || match (unit.get(), scale.get()) {
        (None, _) => "1 of 3: the unit of its scale".to_owned(),
        (Some(unit), None) => format!("2 of 3: its lowest and highest mark, {}", unit.symbol()),
        (Some(unit), Some((low, high))) => {
            let (low, high) = (shortest(low), shortest(high));
            format!(
                "3 of 3: from one mark to the next, of {low}–{high} {}",
                unit.symbol()
            )
        }
    });
    let offered = piece(move || {
        let specs: Vec<KeySpec> = match (unit.get(), scale.get()) {
            (None, _) => UNITS
                .into_iter()
                .map(|own| KeySpec::new(own.symbol(), move || unit.set(Some(own))))
                .collect(),
            (Some(own), None) => scales(own)
                .iter()
                .map(|marks| {
                    let marks = *marks;
                    KeySpec::new(
                        format!("{}–{}", shortest(marks.0), shortest(marks.1)),
                        move || scale.set(Some(marks)),
                    )
                })
                .collect(),
            (Some(own), Some(marks)) => divisions(marks)
                .into_iter()
                .map(|division| {
                    KeySpec::new(shortest(division), move || {
                        bench.tell(bench.add_wrench(described(own, marks, division)));
                    })
                })
                .collect(),
        };
        keys(specs)
    });
    let back = press(move || match scale.get_untracked() {
        Some(_) => scale.set(None),
        None => unit.set(None),
    });
    view! {
        <div class="page which-wrench">
            <h1>"Which wrench is in your hand?"</h1>
            <p class="mid" role="status">{asked}</p>
            {offered}
            <div class="two">
                <button class="work-key" on:click=press(move || bench.any_wrench())>
                    "Any"
                    <small>"only convert: no rounding to its marks"</small>
                </button>
                <button class="work-key" on:click=back>"Back"</button>
            </div>
            <button class="row-key" on:click=press(|| place::go("bench"))>"Another: I describe it on Bench"</button>
        </div>
    }
}
