//! A turn step: how it feels by hand, as a record.

use super::accept::accept;
use super::facts::Facts;
use crate::bench::Bench;
use crate::job::kinds::Work;
use crate::job::reading::What;
use crate::job::sheet::Step;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece, text};
use crate::parts::keys::{KeySpec, keys};
use leptos::prelude::*;

/// Where a shaft may bind, as seen from the end that is turned.
const TIGHT: [&str; 7] = [
    "all the way round",
    "at 12 o’clock",
    "at 2 o’clock",
    "at 4 o’clock",
    "at 6 o’clock",
    "at 8 o’clock",
    "at 10 o’clock",
];

/// The work of a turn step in full.
#[component]
pub fn TurnWork(step: StoredValue<Step>) -> impl IntoView {
    feel(step)
}

/// What it must feel like, and the keys that say what it does.
pub fn feel(step: StoredValue<Step>) -> AnyView {
    let bench = Bench::here();
    let Some((id, turn)) = step.with_value(|step| match &step.work {
        Work::Turn(turn) => Some((step.id, turn.clone())),
        _ => None,
    }) else {
        return ().into_any();
    };
    let felt = memo(move || {
        bench
            .progress
            .with(|progress| progress.touched(id).and_then(|step| step.felt.clone()))
    });
    let binds = RwSignal::new(false);
    let feel = move |tight_at: &str| bench.feel(id, tight_at);
    let choice = piece(move || {
        let now = felt.get();
        let free = now.as_deref() == Some("");
        let tight = now.as_ref().is_some_and(|words| !words.is_empty());
        keys(vec![
            KeySpec::choice("spins freely", free, move || {
                binds.set(false);
                feel("");
            }),
            KeySpec::choice("tight spot", tight || binds.get(), move || binds.set(true)),
        ])
    });
    let places = piece(move || {
        let now = felt.get().unwrap_or_default();
        if !binds.get() && now.is_empty() {
            return ().into_any();
        }
        let tiles = TIGHT.map(|words| KeySpec::choice(words, now == words, move || feel(words)));
        let own = Callback::new(move |words: String| {
            let given = !words.trim().is_empty();
            if given {
                feel(&words);
            }
            given
        });
        view! {
            <section class="binds">
                <h2>"Where does it bind?"</h2>
                {keys(tiles.to_vec())}
            </section>
            <AskWords key="in other words" label="Where it binds" take=own />
        }
        .into_any()
    });
    let settle = accept(id, What::Turning);
    view! {
        <div class="felt">{choice}</div>
        {places}
        <Facts rows=vec![("turn", turn.what), ("must feel", turn.expect)] />
        <p class="mid" aria-live="polite">
            {text(move || match felt.get().as_deref() {
                None => String::new(),
                Some("") => "Noted: spins freely.".to_owned(),
                Some(words) => format!("Noted: tight {words}. Find out why before you go on."),
            })}
        </p>
        {settle}
    }
    .into_any()
}
