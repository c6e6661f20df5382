//! The keyboard's focus: what has it, and giving it back.

use leptos::prelude::{GetValue, StoredValue, on_cleanup};
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Gives the focus back to what has it now once the present view goes; else it would fall to the
/// top of the page, and a keyboard would begin anew.
pub fn return_later() {
    let page = web_sys::window().and_then(|window| window.document());
    let held = page
        .and_then(|page| page.active_element())
        .and_then(|held| held.dyn_into::<HtmlElement>().ok());
    let held = StoredValue::new_local(held);
    on_cleanup(move || {
        if let Some(held) = held.try_get_value().flatten() {
            held.focus().ok();
        }
    });
}
