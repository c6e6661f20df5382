//! Every round so far: what was in, what was read.

use super::Here;
use crate::job::kinds::select::words::{round_words, sum_words};
use crate::parts::dynamic::piece;
use leptos::prelude::*;

/// The rounds, oldest first; nothing before the first.
pub fn rounds(here: Here) -> AnyView {
    piece(move || {
        let rounds = here.progress.with(|progress| {
            let numbered = progress.rounds.iter().enumerate();
            numbered
                .map(|(at, round)| {
                    let read = round_words(progress.readings_of(at));
                    (at + 1, sum_words(&round.pieces, &round.unit), read)
                })
                .collect::<Vec<_>>()
        });
        if rounds.is_empty() {
            return ().into_any();
        }
        let rows: Vec<AnyView> = rounds
            .into_iter()
            .map(|(round, pieces, read)| {
                view! { <dt>"round " {round}</dt> <dd>{pieces} " " <span class="quiet">{read}</span></dd> }
                    .into_any()
            })
            .collect();
        view! { <dl class="facts" aria-label="rounds so far">{rows}</dl> }.into_any()
    })
    .into_any()
}
