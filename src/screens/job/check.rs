//! A check step: readings against their limits.

use crate::bench::Bench;
use crate::job::sheet::Step;
use crate::job::work::{Limit, Work};
use crate::parts::number_field::NumberField;
use leptos::prelude::*;

/// The readings of a check step.
#[component]
pub fn CheckWork(step: StoredValue<Step>) -> impl IntoView {
    let limits = step.with_value(|step| match &step.work {
        Work::Check(check) => check.readings.clone(),
        _ => Vec::new(),
    });
    limits
        .into_iter()
        .map(|limit| view! { <OneReading step limit /> })
        .collect_view()
}

#[component]
fn OneReading(step: StoredValue<Step>, limit: Limit) -> impl IntoView {
    let bench = Bench::here();
    let id = step.with_value(|step| step.id);
    let kept = StoredValue::new(limit.clone());
    let reading = move || {
        bench
            .progress
            .with(|p| kept.with_value(|limit| p.step(id).reading(&limit.name).cloned()))
    };
    let take = move |value: f64| {
        kept.with_value(|limit| {
            let verdict = if limit.holds(value) {
                "within limits"
            } else {
                "outside limits"
            };
            bench.measure(id, &limit.name, value, &limit.unit, verdict);
        });
        Ok(())
    };
    view! {
        <NumberField
            name=limit.name.clone()
            unit=limit.unit.clone()
            value=Signal::derive(move || reading().map_or(String::new(), |reading| reading.value.to_string()))
            take
        />
        <p>
            {limit_words(&limit)}
            <strong>{move || reading().map_or(String::new(), |reading| format!(" · {}", reading.verdict))}</strong>
        </p>
    }
}

fn limit_words(limit: &Limit) -> String {
    match (limit.least, limit.most) {
        (Some(least), Some(most)) => format!("{least} to {most} {}", limit.unit),
        (Some(least), None) => format!("at least {least} {}", limit.unit),
        (None, Some(most)) => format!("at most {most} {}", limit.unit),
        (None, None) => "no limit given".to_owned(),
    }
}
