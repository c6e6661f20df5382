//! A lift step: whether hands may do it, what the sling sees.

use super::facts::Facts;
use crate::bench::Bench;
use crate::job::lifting::{self, LiftingAnswer};
use crate::job::sheet::Step;
use crate::job::work::{LiftWork, Work};
use crate::parts::plate::Plate;
use crate::trade::quantity::{Mass, MassUnit, print_mass};
use leptos::prelude::*;
use uom::si::force::kilonewton;
use uom::si::mass::kilogram;

/// The work of a lift step.
#[component]
pub fn LiftView(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some(work) = step.with_value(|step| match &step.work {
        Work::Lift(lift) => Some(lift.clone()),
        _ => None,
    }) else {
        return ().into_any();
    };
    (move || {
        let hoist = bench.settings.with(|s| s.hoist_kg.map(Mass::new::<kilogram>));
        match lifting::answer(&work, hoist) {
            Ok(answer) => view! { <LiftAnswered answer work=work.clone() /> }.into_any(),
            Err(error) => view! { <p class="trouble-line mid">{error.to_string()}</p> }.into_any(),
        }
    })
    .into_any()
}

#[component]
fn LiftAnswered(answer: LiftingAnswer, work: LiftWork) -> impl IntoView {
    let load = ("load", format!("{}, {} kg", work.load, work.mass_kg));
    match answer {
        LiftingAnswer::Hands(answer) => {
            let station = answer.governing();
            let limit = print_mass(station.limit, MassUnit::Kilogram, 2);
            let index = station
                .index
                .map_or("no weight is light enough".to_owned(), |index| {
                    format!("{index:.1}")
                });
            view! {
                <Plate says="weight limit for one person here".to_owned() number=limit.number unit=limit.unit.to_owned()>
                    <p class="mid">{answer.verdict.words()}</p>
                </Plate>
                <Facts rows=vec![load, ("lifting index", index), ("model", "revised NIOSH lifting equation".to_owned())] />
            }
            .into_any()
        }
        LiftingAnswer::Sling {
            leg,
            leg_rating,
            hoist,
        } => {
            let pull = format!("{:.2}", leg.get::<kilonewton>());
            let rating = print_mass(leg_rating, MassUnit::Kilogram, 3);
            let hoist = match hoist {
                Some(margin) => margin.verdict.words().to_owned(),
                None => "rating not known: enter it on Bench".to_owned(),
            };
            view! {
                <Plate says="pull in each sling leg".to_owned() number=pull unit="kN".to_owned() />
                <Facts rows=vec![load, ("each leg rated for", format!("{} {}", rating.number, rating.unit)), ("hoist", hoist)] />
            }
            .into_any()
        }
    }
}
