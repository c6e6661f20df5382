//! A seat step: how this press fit goes together.

use super::facts::Facts;
use crate::bench::Bench;
use crate::job::seating::{self, SeatAnswer};
use crate::job::sheet::Step;
use crate::job::work::Work;
use crate::parts::plate::Plate;
use crate::trade::quantity::{Length, LengthUnit, ThermodynamicTemperature};
use leptos::prelude::*;
use uom::si::force::kilonewton;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// The work of a seat step.
#[component]
pub fn SeatWork(step: StoredValue<Step>) -> impl IntoView {
    let bench = Bench::here();
    let Some(seat) = step.with_value(|step| match &step.work {
        Work::Seat(seat) => Some(seat.clone()),
        _ => None,
    }) else {
        return ().into_any();
    };
    let part = seat.part.clone();
    let answer = move || {
        let now = bench.now.get();
        seating::answer(&seat, bench.settings.with(|s| s.temperature_at(now)))
    };
    (move || match answer() {
        Ok(answer) => view! { <SeatAnswered answer part=part.clone() /> }.into_any(),
        Err(error) => view! { <p class="trouble-line">{error.to_string()}</p> }.into_any(),
    })
    .into_any()
}

#[component]
fn SeatAnswered(answer: SeatAnswer, part: String) -> impl IntoView {
    let (says, number, unit) = match answer.plan.housing_to {
        Some(to) => ("warm the housing evenly to", whole_celsius(to), "°C"),
        None => (
            "press with up to",
            answer
                .force
                .map_or("—".to_owned(), |force| one_decimal_kn(force.most)),
            "kN",
        ),
    };
    view! {
        <Plate says=says.to_owned() number=number unit=unit.to_owned()>
            <p>{answer.plan.which.how()}</p>
        </Plate>
        <Facts rows=rows(&answer, part) />
    }
}

fn rows(answer: &SeatAnswer, part: String) -> Vec<(&'static str, String)> {
    let fit = &answer.interference;
    let mut rows = vec![
        ("part", part),
        (
            "interference at 20 °C",
            format!("{} to {} µm", microns(fit.least), microns(fit.most)),
        ),
    ];
    if let Some(force) = answer.force {
        rows.push((
            "cold, the press needs",
            format!(
                "{} to {} kN",
                one_decimal_kn(force.least),
                one_decimal_kn(force.most)
            ),
        ));
    }
    if answer.plan.housing_to.is_some() {
        rows.push((
            "then it is loose by",
            format!("{} µm at least", microns(answer.plan.clearance_at_fit)),
        ));
    }
    if let Some(window) = answer.window {
        let (short, long) = (window.shortest.get::<second>(), window.longest.get::<second>());
        rows.push((
            "be home within",
            format!("{short:.0} to {long:.0} s of leaving the heat (still air)"),
        ));
    }
    rows
}

fn whole_celsius(temperature: ThermodynamicTemperature) -> String {
    format!("{:.0}", temperature.get::<degree_celsius>().ceil())
}

fn one_decimal_kn(force: uom::si::f64::Force) -> String {
    format!("{:.1}", force.get::<kilonewton>())
}

fn microns(length: Length) -> String {
    format!("{:.0}", LengthUnit::Micrometre.value_of(length)).replace('-', "−")
}
