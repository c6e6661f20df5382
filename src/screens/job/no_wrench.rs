//! A torque that no wrench on the bench can be set to: what is used for it.

use crate::bench::{Bench, Intent};
use crate::job::record::Instead;
use crate::job::sheet::StepId;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece};
use crate::parts::keys::{KeySpec, keys};
use leptos::prelude::*;

/// The choices, while the step asks for one; nothing else.
pub fn no_wrench(step: StepId) -> AnyView {
    let bench = Bench::here();
    let asked = memo(move || bench.offered_instead(step));
    let say = move |instead: Instead| {
        let said = bench.send(Intent::WithoutWrench { step, instead });
        let taken = said.is_ok();
        bench.tell(said);
        taken
    };
    piece(move || {
        let offered = asked.get();
        if offered.is_empty() {
            return ().into_any();
        }
        let tiles = offered.into_iter().map(|instead| {
            let words = instead.words().to_owned();
            KeySpec::new(words, move || {
                say(instead.clone());
            })
        });
        let other = Callback::new(move |words: String| say(Instead::Other(words)));
        view! {
            <section aria-label="no wrench for it">
                <p class="mid">"No wrench on your bench can be set to this. It is tightened with"</p>
                {keys(tiles.collect())}
                <AskWords key="something else" label="What it is tightened with: this goes into the record." take=other />
            </section>
        }
        .into_any()
    })
    .into_any()
}
