//! The two codes a shell goes by: each picked from the table's, or written as it stands on the part.

use super::Here;
use crate::bench::Intent;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::piece;
use crate::parts::keys::{KeySpec, keys};
use leptos::prelude::*;

/// Both codes; the second one read sends them.
pub fn codes(here: Here) -> AnyView {
    let now = here.progress.with_untracked(|progress| progress.codes.clone());
    let (down, across) = now.unwrap_or_default();
    let read = [RwSignal::new(down), RwSignal::new(across)];
    let send = move || {
        let [down, across] = read.map(|code| code.get_untracked());
        if !down.is_empty() && !across.is_empty() {
            let step = here.id;
            here.bench
                .tell(here.bench.send(Intent::Code { step, down, across }));
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
        .zip(read)
        .map(|((name, offered, or), code)| {
            let name = if name.is_empty() { or.to_owned() } else { name };
            let label = format!("The {name}, as it stands on the part");
            let own = Callback::new(move |words: String| {
                let given = !words.trim().is_empty();
                if given {
                    code.set(words.trim().to_owned());
                    send();
                }
                given
            });
            let tiles = piece(move || {
                let now = code.get();
                let tiles = offered.iter().map(|one| {
                    let on = one.eq_ignore_ascii_case(&now);
                    let one = one.clone();
                    KeySpec::choice(one.clone(), on, move || {
                        code.set(one.clone());
                        send();
                    })
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
