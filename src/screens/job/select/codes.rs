//! The two codes a shell goes by: each picked from the table's, or written as it stands on the part.

use super::Here;
use crate::bench::Intent;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece};
use crate::parts::keys::{KeySpec, keys};
use leptos::prelude::*;

/// Both codes; with the second one read they are noted.
pub fn codes(here: Here) -> AnyView {
    // What was touched since the last two were noted.
    let touched = [RwSignal::new(None::<String>), RwSignal::new(None)];
    let noted = memo(move || {
        let codes = here.progress.with(|progress| progress.codes.clone());
        let (down, across) = codes.unwrap_or_default();
        [down, across]
    });
    let read = move |side: usize| {
        touched[side]
            .get()
            .unwrap_or_else(|| noted.with(|noted| noted[side].clone()))
    };
    let take = move |side: usize, code: &str| {
        touched[side].set(Some(code.to_owned()));
        let [down, across] = [0, 1].map(|side| untrack(|| read(side)));
        if !down.is_empty() && !across.is_empty() {
            let step = here.id;
            let outcome = here.bench.send(Intent::Code { step, down, across });
            if outcome.is_ok() {
                touched.iter().for_each(|code| code.set(None));
            }
            here.bench.tell(outcome);
        }
    };
    let table = here
        .select
        .with_value(|select| select.codes.clone().unwrap_or_default());
    let sides = [
        (table.down_name, table.down, "first code"),
        (table.across_name, table.across, "second code"),
    ];
    let sides: Vec<AnyView> = sides
        .into_iter()
        .enumerate()
        .map(|(side, (name, offered, or))| {
            let name = if name.is_empty() { or.to_owned() } else { name };
            let label = format!("The {name}, as it stands on the part");
            let own = Callback::new(move |words: String| {
                let given = !words.trim().is_empty();
                if given {
                    take(side, words.trim());
                }
                given
            });
            let tiles = piece(move || {
                let now = read(side);
                let tiles = offered.iter().map(|one| {
                    let on = one.eq_ignore_ascii_case(&now);
                    let one = one.clone();
                    KeySpec::choice(one.clone(), on, move || take(side, &one))
                });
                let other = !now.is_empty() && !offered.iter().any(|one| one.eq_ignore_ascii_case(&now));
                let other = other.then(|| view! { <p>"Read: " {now.clone()}</p> }.into_any());
                view! { {keys(tiles.collect())} {other} }.into_any()
            });
            view! {
                <section aria-label=name.clone()>
                    <h2>{name.clone()}</h2>
                    {tiles}
                    <AskWords key="another code" label take=own />
                </section>
            }
            .into_any()
        })
        .collect();
    sides.into_any()
}
