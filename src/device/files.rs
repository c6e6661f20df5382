//! Handing a file to the user, where the browser puts what is downloaded, and taking one in.

use js_sys::Array;
use std::cell::RefCell;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, FileReader, HtmlAnchorElement, HtmlInputElement, Url};

/// How long the browser may take to begin with the file.
const KEPT_MS: i32 = 60_000;

/// Hands out `text` as a file of that name and media type; tells whether the browser took it.
pub fn hand_out(name: &str, media_type: &str, text: &str) -> bool {
    try_hand_out(name, media_type, text).is_some()
}

fn try_hand_out(name: &str, media_type: &str, text: &str) -> Option<()> {
    let window = web_sys::window()?;
    let document = window.document()?;
    let kind = BlobPropertyBag::new();
    kind.set_type(media_type);
    let parts = Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind).ok()?;
    let url = Url::create_object_url_with_blob(&blob).ok()?;
    let anchor: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.set_hidden(true);
    // Some browsers follow only a link that is on the page.
    document.body()?.append_child(&anchor).ok()?;
    anchor.click();
    anchor.remove();
    let forget = Closure::once_into_js(move || drop(Url::revoke_object_url(&url)));
    window
        .set_timeout_with_callback_and_timeout_and_arguments_0(forget.unchecked_ref(), KEPT_MS)
        .ok()?;
    Some(())
}

/// Calls `then` with the name and the text of the file chosen in `input`; the field is then empty again.
pub fn on_chosen(
    input: &HtmlInputElement,
    then: impl FnOnce(String /* name */, String /* text */) + 'static,
) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    let Ok(reader) = FileReader::new() else {
        return;
    };
    let name = file.name();
    let result = reader.clone();
    let then = RefCell::new(Some(then));
    let loaded = Closure::once_into_js(move || {
        let text = result.result().ok().and_then(|text| text.as_string());
        if let (Some(then), Some(text)) = (then.take(), text) {
            then(name, text);
        }
    });
    reader.set_onload(Some(loaded.unchecked_ref()));
    reader.read_as_text(&file).ok();
    // The same file chosen again is a choice too.
    input.set_value("");
}
