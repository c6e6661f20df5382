//! Where in the app the user is: the part of the address after `#`, so that any static folder can serve it.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// The address after `#`, without it.
pub fn read() -> String {
    let hash = web_sys::window()
        .and_then(|window| window.location().hash().ok())
        .unwrap_or_default();
    hash.trim_start_matches('#').to_owned()
}

/// Goes to that address; the browser's back key returns.
pub fn go(to: &str) {
    if let Some(window) = web_sys::window() {
        window.location().set_hash(to).ok();
    }
}

/// Goes to that address in the place of the present one: the back key skips it.
pub fn replace(to: &str) {
    if let Some(window) = web_sys::window() {
        window.location().replace(&format!("#{to}")).ok();
    }
}

/// Goes back to where the user came from.
pub fn back() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        history.back().ok();
    }
}

/// Whether another page shows this one inside itself, where it could press our keys.
pub fn framed() -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    window.top().ok().flatten().is_none_or(|top| top != window)
}

/// What `boot.js` waits for.
const STARTED: &str = "halfcase-started";

/// Takes away what stood on the page until the app did, and the notice for when it doesn't.
pub fn take_over() {
    let (window, started) = (web_sys::window(), web_sys::Event::new(STARTED));
    if let (Some(window), Ok(started)) = (window, started) {
        window.dispatch_event(&started).ok();
    }
    let Some(page) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    if let Some(before) = page.get_element_by_id("before") {
        before.remove();
    }
    if let Some(notice) = page.get_element_by_id("not-started") {
        notice.set_attribute("hidden", "").ok();
    }
}

/// Where the chosen look is told to the page that paints before the app does; no part of what is kept.
const LOOK: &str = "halfcase-look";

/// Tells the next start the chosen look; none follows the phone.
pub fn remember_look(look: Option<&str>) {
    let store = web_sys::window().and_then(|window| window.local_storage().ok().flatten());
    if let Some(store) = store {
        match look {
            Some(look) => store.set_item(LOOK, look).ok(),
            None => store.remove_item(LOOK).ok(),
        };
    }
}

/// Brings the top of the screen into sight, and the keyboard and a screen reader to it: the key that
/// led here may be gone.
pub fn to_top() {
    let Some(window) = web_sys::window() else { return };
    let main = window
        .document()
        .and_then(|page| page.query_selector("main").ok().flatten())
        .and_then(|main| main.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(main) = main {
        main.focus().ok();
        main.set_scroll_top(0);
    }
    // With large text it is the page that scrolls.
    window.scroll_to_with_x_and_y(0.0, 0.0);
}

/// Calls `then` whenever the address changes. Lives as long as the page.
pub fn on_change(then: impl Fn(String) + 'static) {
    listen("hashchange", move || then(read()));
}

/// From this width on the screen is a desk's, CSS px.
const DESK_PX: f64 = 1_000.0;

/// Whether the screen is as wide as a desk's.
pub fn at_a_desk() -> bool {
    let wide = web_sys::window().and_then(|window| window.inner_width().ok()?.as_f64());
    wide.is_some_and(|wide| wide >= DESK_PX)
}

/// Calls `then` whenever the window changes its size.
pub fn on_resize(then: impl Fn() + 'static) {
    listen("resize", then);
}

/// Calls `then` when the page comes back into sight or from the browser's cache.
pub fn on_return(then: impl Fn() + Clone + 'static) {
    let again = then.clone();
    listen("pageshow", then);
    let closure = Closure::<dyn Fn()>::new(again);
    if let Some(document) = web_sys::window().and_then(|window| window.document()) {
        document
            .add_event_listener_with_callback("visibilitychange", closure.as_ref().unchecked_ref())
            .ok();
    }
    closure.forget();
}

/// Calls `then` with the key whenever another tab, or another page of the host, writes to the store; without
/// one when all of it was cleared. Lives as long as the page.
pub fn on_other_tab(then: impl Fn(Option<String>) + 'static) {
    let closure = Closure::<dyn Fn(web_sys::StorageEvent)>::new(move |event: web_sys::StorageEvent| {
        then(event.key());
    });
    if let Some(window) = web_sys::window() {
        window
            .add_event_listener_with_callback("storage", closure.as_ref().unchecked_ref())
            .ok();
    }
    closure.forget();
}

fn listen(event: &str, then: impl Fn() + 'static) {
    let closure = Closure::<dyn Fn()>::new(then);
    if let Some(window) = web_sys::window() {
        window
            .add_event_listener_with_callback(event, closure.as_ref().unchecked_ref())
            .ok();
    }
    // Root-owned: there is one of each for the whole life of the page.
    closure.forget();
}
