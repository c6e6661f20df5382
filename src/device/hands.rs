//! What hands do beside a plain touch: keyboards, presenters and foot pedals; and touches that no finger
//! made: a wet screen, a palm, two at once.

use std::cell::Cell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{
    AddEventListenerOptions, Document, Element, Event, HtmlElement, KeyboardEvent, MouseEvent, PointerEvent,
};

/// A contact wider than this is no fingertip, CSS px (12 mm at 0.16 mm each; common practice, no source).
const WIDEST_PX: i32 = 76;

thread_local! {
    /// The touch under way is no finger's.
    static NO_FINGER: Cell<bool> = const { Cell::new(false) };
    /// Touches on the screen now.
    static DOWN: Cell<u32> = const { Cell::new(0) };
    /// When the screen was last touched or a key pressed, ms since the page began.
    static LAST: Cell<f64> = const { Cell::new(0.0) };
}

/// For how long nobody touched anything, ms.
pub fn idle_ms() -> f64 {
    super::time::monotonic() - LAST.get()
}

/// Whether somebody is at a field or a sheet: then nothing is laid over them.
pub fn at_a_field() -> bool {
    let Some(page) = web_sys::window().and_then(|window| window.document()) else {
        return false;
    };
    let typing = page
        .active_element()
        .is_some_and(|at| at.matches("input, textarea, select").unwrap_or(false));
    typing || page.query_selector(".sheet, .asked").ok().flatten().is_some()
}

/// Follows the keyboard and the touches for as long as the page lives: `felt` is told of each that moves the
/// work or types, `refused` of one that isn't counted.
pub fn follow(felt: impl Fn() + 'static, refused: impl Fn() + 'static) {
    let Some(page) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    LAST.set(super::time::monotonic());
    on(&page, "keydown", false, |event| {
        LAST.set(super::time::monotonic());
        if let Ok(key) = event.dyn_into::<KeyboardEvent>() {
            pressed(&key);
        }
    });
    on(&page, "pointerdown", true, |event| {
        LAST.set(super::time::monotonic());
        if let Ok(touch) = event.dyn_into::<PointerEvent>() {
            // The first of a touch: whatever was missed of an earlier one is over.
            let before = if touch.is_primary() { 0 } else { DOWN.get() };
            DOWN.set(before + 1);
            let wide = touch.width() > WIDEST_PX || touch.height() > WIDEST_PX;
            NO_FINGER.set(touch.pointer_type() == "touch" && (wide || DOWN.get() > 1));
        }
    });
    for ended in ["pointerup", "pointercancel"] {
        on(&page, ended, true, |_| DOWN.set(DOWN.get().saturating_sub(1)));
    }
    // Caught before the key hears of it.
    on(&page, "click", true, move |event| {
        let at = event.target().and_then(|at| at.dyn_into::<Element>().ok());
        let within = |what: &str| {
            at.as_ref()
                .and_then(|at| at.closest(what).ok().flatten())
                .is_some()
        };
        let work = within(".work-keys, .bolts");
        // A key, a voice or a script presses without a finger.
        let pressed = event
            .dyn_ref::<MouseEvent>()
            .is_some_and(|event| event.detail() > 0);
        if work && NO_FINGER.replace(false) && pressed {
            event.stop_propagation();
            event.prevent_default();
            refused();
        } else if within(".work-keys, .bolt, .keypad") {
            felt();
        }
    });
}

fn on(page: &Document, name: &str, capture: bool, act: impl Fn(Event) + 'static) {
    let act = Closure::<dyn Fn(Event)>::new(act);
    let options = AddEventListenerOptions::new();
    options.set_capture(capture);
    page.add_event_listener_with_callback_and_add_event_listener_options(
        name,
        act.as_ref().unchecked_ref(),
        &options,
    )
    .ok();
    act.forget();
}

/// Presses the first of these keys that is there; tells whether one was.
fn press(page: &Document, keys: &str) -> bool {
    let found = page.query_selector_all(keys).ok();
    let all = found
        .into_iter()
        .flat_map(|all| (0..all.length()).filter_map(move |at| all.item(at)));
    let mut there = all.filter_map(|key| key.dyn_into::<HtmlElement>().ok());
    match there.find(|key| key.offset_width() > 0) {
        Some(key) => {
            key.click();
            true
        }
        None => false,
    }
}

/// A keyboard drives everything: one key moves the work on, one takes it back, digits type.
fn pressed(key: &KeyboardEvent) {
    let Some(page) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    let at = key.target().and_then(|at| at.dyn_into::<Element>().ok());
    let within = |what: &str| {
        at.as_ref()
            .is_some_and(|at| at.closest(what).ok().flatten().is_some())
    };
    // Arrows within a group, and Escape of a sheet, are taken already.
    let taken = key.default_prevented();
    if taken || key.ctrl_key() || key.alt_key() || key.meta_key() || within("input, textarea, select") {
        return;
    }
    // From afar any key wakes the step, and does nothing else.
    if press(&page, ".far") {
        key.prevent_default();
        return;
    }
    // An open sheet has the keys for itself.
    let sheet = page.query_selector(".sheet").ok().flatten().is_some();
    let name = key.key();
    // A pedal held down is one press; only what is typed may repeat.
    if key.repeat() && !within(".keypad") {
        key.prevent_default();
        return;
    }
    let taken = match name.as_str() {
        // On another key they press that one.
        "Enter" | " " if within("button, a, summary") => false,
        "PageDown" | "Enter" | " " if sheet => press(&page, ".sheet .take"),
        "PageDown" | "Enter" | " " => press(&page, "main .work-keys .first"),
        "Backspace" if press(&page, ".sheet [data-key='←']") => true,
        "Backspace" if !sheet && press(&page, ".torque > .keypad [data-key='←']") => true,
        "PageUp" | "Backspace" if !sheet => press(&page, "main .work-keys .undo"),
        "ArrowLeft" if !sheet && !within("[role=radiogroup], [role=tablist]") => {
            press(&page, "main .step > .head .side-key:first-child")
        }
        "ArrowRight" if !sheet && !within("[role=radiogroup], [role=tablist]") => {
            press(&page, "main .step > .head .side-key:last-child")
        }
        _ => {
            let typed = match name.as_str() {
                "," => ".",
                "-" => "−",
                other => other,
            };
            let one = |pad: &str| press(&page, &format!("{pad} [data-key='{typed}']"));
            let digit = typed.chars().count() == 1 && "0123456789.−–±".contains(typed);
            // The torque's keypad knows a range's dash, the others a minus.
            let dash = typed == "−" && !sheet && press(&page, ".torque > .keypad [data-key='–']");
            digit && (dash || one(".sheet") || !sheet && one(".torque > .keypad"))
        }
    };
    if taken {
        key.prevent_default();
    }
}
