//! What was found and is not settled: accepted with a reason and initials, or a part is ordered.

use crate::bench::{Bench, Intent};
use crate::job::reading::What;
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece, text};
use leptos::prelude::*;

/// A finding is done again (which the step itself offers), accepted, or waits for a part.
pub fn accept(step: StepId, what: What) -> AnyView {
    let bench = Bench::here();
    let kept = StoredValue::new(what);
    let found = memo(move || kept.with_value(|what| bench.finding(step, what)));
    let reason = move || {
        bench.progress.with(|progress| {
            let step = progress.touched(step)?;
            kept.with_value(|what| {
                let found = step.accepted.iter().find(|(own, ..)| own == what);
                found.map(|(.., reason)| reason.clone())
            })
        })
    };
    let ask = piece(move || match found.get() {
        Some(words) => ways(bench, step, kept, words),
        None => ().into_any(),
    });
    view! {
        {ask}
        <p>{text(move || match (found.get(), reason()) {
            (None, Some(reason)) => format!("Accepted: {reason}"),
            _ => String::new(),
        })}</p>
    }
    .into_any()
}

fn ways(bench: Bench, step: StepId, kept: StoredValue<What>, words: String) -> AnyView {
    let taken = move |intent: Intent| {
        let outcome = bench.send(intent);
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    };
    let initials = RwSignal::new(bench.settings.with_untracked(|s| s.initials.clone()));
    let take = Callback::new(move |reason: String| {
        taken(Intent::Accept {
            step,
            what: kept.get_value(),
            reason,
            initials: initials.get_untracked(),
        })
    });
    let order = Callback::new(move |name: String| {
        let what = kept.get_value();
        taken(Intent::Order { step, what, name })
    });
    let first = bench.part_for(step, &kept.get_value());
    view! {
        <section class="finding" aria-label="found, not settled">
            <p class="mid">{words}</p>
            <AskWords
                key="accept it as it is"
                label="Why it may stay as it is: this goes into the record."
                take
                signed=initials
            />
            <AskWords key="order a part" label="The part to order" first take=order />
        </section>
    }
    .into_any()
}
