//! A reading outside its limits that stays as it is, with a reason.

use crate::bench::{Bench, Intent};
use crate::job::reading::What;
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{piece, text};
use leptos::prelude::*;

/// A reading outside its limits is read again, or accepted with a reason.
pub fn accept(step: StepId, what: What) -> AnyView {
    let bench = Bench::here();
    let kept = StoredValue::new(what);
    let broken = Memo::new(move |_| kept.with_value(|what| bench.broken(step).contains(what)));
    let reason = move || {
        bench.progress.with(|progress| {
            let step = progress.touched(step)?;
            kept.with_value(|what| {
                let found = step.accepted.iter().find(|(own, ..)| own == what);
                found.map(|(.., reason)| reason.clone())
            })
        })
    };
    let take = Callback::new(move |reason: String| {
        let what = kept.get_value();
        let outcome = bench.send(Intent::Accept { step, what, reason });
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    });
    let ask = piece(move || {
        if broken.get() {
            view! {
                <AskWords
                    key="accept it as it is"
                    label="Why it may stay outside its limits: this goes into the record."
                    take
                />
            }
            .into_any()
        } else {
            ().into_any()
        }
    });
    view! {
        {ask}
        <p>{text(move || match (broken.get(), reason()) {
            (false, Some(reason)) => format!("Accepted: {reason}"),
            _ => String::new(),
        })}</p>
    }
    .into_any()
}
