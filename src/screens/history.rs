//! The last twenty actions, newest first; undo takes them back one by one.

use crate::bench::Bench;
use crate::parts::dynamic::piece;
use crate::parts::when::when;
use crate::parts::work_keys::UndoKey;
use leptos::prelude::*;

/// What was done last.
#[component]
pub fn HistoryScreen() -> impl IntoView {
    let bench = Bench::here();
    let actions = piece(move || {
        let now = bench.now.get_untracked();
        let rows: Vec<AnyView> = bench
            .history()
            .into_iter()
            .map(|(at, words)| view! { <dt class="figures">{when(at, now)}</dt> <dd>{words}</dd> }.into_any())
            .collect();
        if rows.is_empty() {
            return view! { <p class="quiet">"Nothing done yet."</p> }.into_any();
        }
        view! { <dl class="facts" aria-label="last actions">{rows}</dl> }.into_any()
    });
    view! {
        <div class="step">
            <header class="head end"><h1>"Last actions"</h1></header>
            <div class="body">
                <p class="quiet">"Newest first. Undo takes the first one back, then the next. What is in the record stays there, marked as taken back."</p>
                {actions}
            </div>
            <div class="work-keys"><UndoKey /></div>
        </div>
    }
}
