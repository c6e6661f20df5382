//! A key that takes a file in.

use crate::device::files;
use leptos::prelude::*;

/// The key; `take` gets the file's name and its text.
#[component]
pub fn FileKey(
    /// The key's words.
    words: &'static str,
    /// The kinds of file offered: ".json,.csv".
    accept: &'static str,
    /// Gets name and text.
    #[prop(into)]
    take: Callback<(String, String)>,
) -> impl IntoView {
    let chosen = move |event| {
        let input: web_sys::HtmlInputElement = event_target(&event);
        files::on_chosen(&input, move |name, text| take.run((name, text)));
    };
    view! {
        <label class="file-key">
            {words}
            <input type="file" class="unseen" accept=accept on:change=chosen />
        </label>
    }
}
