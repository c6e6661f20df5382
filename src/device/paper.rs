//! The browser's print dialogue, which most phones also save a PDF with.

/// Opens it; nothing happens where there is none.
pub fn print() {
    if let Some(window) = web_sys::window() {
        window.print().ok();
    }
}
