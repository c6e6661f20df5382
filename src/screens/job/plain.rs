//! Steps that need no numbers of their own: clean, fit.

use super::facts::Facts;
use crate::job::kinds::Work;
use crate::job::sheet::Step;
use leptos::prelude::*;

/// The few facts of a plain step.
#[component]
pub fn PlainWork(step: StoredValue<Step>) -> impl IntoView {
    view! { <Facts rows=step.with_value(|step| rows(&step.work)) /> }
}

/// The same, on the stage.
pub fn told(step: StoredValue<Step>) -> AnyView {
    view! { <Facts rows=step.with_value(|step| rows(&step.work)) /> }.into_any()
}

fn rows(work: &Work) -> Vec<(&'static str, String)> {
    let rows = match work {
        Work::Fit(fit) => vec![
            (
                "part",
                if fit.new_part {
                    format!("{}, new", fit.part)
                } else {
                    fit.part.clone()
                },
            ),
            ("way round", fit.orientation.clone()),
        ],
        Work::Clean(clean) => vec![(
            "with",
            match (clean.solvent, clean.compressed_air) {
                (true, true) => "solvent, then compressed air".to_owned(),
                (true, false) => "solvent".to_owned(),
                (false, true) => "compressed air".to_owned(),
                (false, false) => String::new(),
            },
        )],
        Work::Check(_)
        | Work::Fasten(_)
        | Work::Bond(_)
        | Work::Seat(_)
        | Work::Lift(_)
        | Work::Turn(_)
        | Work::Select(_)
        | Work::Gauge(_)
        | Work::Fill(_)
        | Work::Run(_) => Vec::new(),
    };
    rows.into_iter().filter(|(_, words)| !words.is_empty()).collect()
}
