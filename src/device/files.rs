//! Files out to the phone and in from it, and paper.
//!
//! A page may only offer a file: where it lands is the browser's. Reading one back needs a touch on a
//! file field. iOS opens some files instead of keeping them; the user keeps them from there.

use std::cell::RefCell;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Offers `text` as a file of that name.
pub fn hand_out(name: &str, mime: &str, text: &str) {
    // Softly: a browser that refuses one of these offers nothing, and the page goes on.
    offer(name, mime, text).ok();
}

fn offer(name: &str, mime: &str, text: &str) -> Result<(), JsValue> {
    let parts = js_sys::Array::of1(&text.into());
    let bag = web_sys::BlobPropertyBag::new();
    bag.set_type(mime);
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &bag)?;
    let url = web_sys::Url::create_object_url_with_blob(&blob)?;
    let document = web_sys::window()
        .and_then(|window| window.document())
        .ok_or(JsValue::NULL)?;
    let link: web_sys::HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // The download has begun by the time the click returns; a later turn gives it room.
    let free = Closure::once_into_js(move || {
        web_sys::Url::revoke_object_url(&url).ok();
    });
    web_sys::window()
        .ok_or(JsValue::NULL)?
        .set_timeout_with_callback_and_timeout_and_arguments_0(free.unchecked_ref(), 10_000)?;
    Ok(())
}

/// Calls `then` with the name and the text of the file chosen in `input`; the field is then empty again.
pub fn on_chosen(
    input: &web_sys::HtmlInputElement,
    then: impl FnOnce(String /* name */, String /* text */) + 'static,
) {
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    let Ok(reader) = web_sys::FileReader::new() else {
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
