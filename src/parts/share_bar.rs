//! A range as a share of a limit: a bar with the limit marked.

use leptos::prelude::*;

const WIDE: f64 = 360.0;
const HIGH: f64 = 34.0;
/// The limit stands at this part of the width; what is over it still shows.
const LIMIT: f64 = 0.75;

/// `low` to `high` against 1, with the words that say it.
pub fn share_bar(words: String, low: f64, high: f64) -> AnyView {
    let x = |share: f64| (share * LIMIT).clamp(0.0, 1.0) * WIDE;
    let (from, to) = (x(low), x(high).max(x(low) + 4.0).min(WIDE));
    let over = high > 1.0;
    view! {
        <figure class="share-bar" class:over=over>
            <svg viewBox=format!("0 0 {WIDE} {HIGH}") role="img" aria-label=words.clone()>
                <line x1="0" y1="17" x2=WIDE y2="17" />
                <rect x=from y="8" width=to - from height="18" />
                <line class="limit" x1=WIDE * LIMIT y1="0" x2=WIDE * LIMIT y2=HIGH />
            </svg>
            <figcaption>{words}</figcaption>
        </figure>
    }
    .into_any()
}
