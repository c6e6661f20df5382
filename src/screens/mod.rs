//! The views: one file or folder a screen.

use leptos::prelude::*;

/// Mounts the app into the page's body.
pub fn start() {
    leptos::mount::mount_to_body(|| view! { <main>"Halfcase"</main> });
}
