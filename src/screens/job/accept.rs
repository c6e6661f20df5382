//! A reading outside its limits that stays as it is, with a reason.

use crate::bench::{Bench, Intent};
use crate::job::reading::What;
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{piece, text};
use leptos::prelude::*;

/// A reading outside its limits is read again, or accepted with a reason.
pub fn accept(bench: Bench, step: StepId, what: What) -> AnyView {
    let kept = StoredValue::new(what);
    let broken = Memo::new(move |_| kept.with_value(|what| bench.broken(step).contains(what)));
    let reason = move || {
        bench.progress.with(|progress| {
            let step = progress.touched(step)?;
            kept.with_value(|what| step.accepted(what).map(str::to_owned))
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
        <p>{text(move || reason().map_or(String::new(), |reason| format!("Accepted: {reason}")))}</p>
    }
    .into_any()
}
