//! A pack of one's own: taken from the box piece by piece, or written.

use super::Here;
use crate::job::kinds::Piece;
use crate::job::kinds::select::By;
use crate::job::kinds::select::words::{size_words, sum_words};
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{piece, press};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use leptos::prelude::*;

/// The key that opens it, and what it opens.
pub fn own(here: Here) -> AnyView {
    let open = RwSignal::new(false);
    let taken = RwSignal::new(Vec::<Piece>::new());
    let add = move |piece: Piece| taken.update(|taken| piece.add(taken));
    piece(move || {
        if !open.get() {
            return view! {
                <button class="row-key" on:click=press(move || open.set(true))>"put in something else"</button>
            }
            .into_any();
        }
        let unit = here.unit();
        let by = here.select.with_value(|select| select.by);
        let there = here.step.with_value(|step| here.bench.there(step));
        let tiles = there.into_iter().map(|one| {
            let words = match one.thick {
                Some(thick) => format!("+ {}", size_words(thick, unit)),
                None => format!("+ {}", one.code),
            };
            KeySpec::new(words, move || add(one.clone()))
        });
        let thickness = move |thick: f64| {
            add(Piece::shims(thick, 1));
            Ok(())
        };
        let code = Callback::new(move |words: String| {
            let given = !words.trim().is_empty();
            if given {
                add(Piece::coded(words.trim(), None));
            }
            given
        });
        let by_code = matches!(by, By::Range | By::Code);
        let code = by_code
            .then(|| view! { <AskWords key="by its mark" label="What it is marked" take=code /> }.into_any());
        let size = (by != By::Code).then(|| {
            view! {
                <NumberField name="another thickness" unit=Signal::stored(unit.to_owned()) value=Signal::stored(String::new()) take=thickness />
            }
            .into_any()
        });
        let sum = piece(move || {
            let words = taken.with(|taken| match taken.as_slice() {
                [] => "Nothing taken yet.".to_owned(),
                taken => sum_words(taken, unit),
            });
            view! { <p class="mid" aria-live="polite">{words}</p> }.into_any()
        });
        let shut = move || {
            taken.set(Vec::new());
            open.set(false);
        };
        view! {
            <section aria-label="something else">
                {keys(tiles.collect())}
                {size}
                {code}
                {sum}
                {keys(vec![
                    KeySpec::new("this is in", move || {
                        if here.choose(taken.get_untracked()) {
                            shut();
                        }
                    }),
                    KeySpec::new("begin again", move || taken.set(Vec::new())),
                    KeySpec::new("cancel", shut),
                ])}
            </section>
        }
        .into_any()
    })
    .into_any()
}
