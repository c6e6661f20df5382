//! The keyboard's focus: what has it, giving it back, keeping it inside, and moving it in a group.

use leptos::ev;
use leptos::prelude::{GetValue, StoredValue, on_cleanup, window_event_listener};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, KeyboardEvent, MouseEvent};

fn held() -> Option<HtmlElement> {
    let page = web_sys::window()?.document()?;
    page.active_element()?.dyn_into::<HtmlElement>().ok()
}

/// Gives the focus back to what has it now once the present view goes; else it would fall to the
/// top of the page, and a keyboard would begin anew.
pub fn return_later() {
    let held = StoredValue::new_local(held());
    on_cleanup(move || {
        if let Some(held) = held.try_get_value().flatten() {
            held.focus().ok();
        }
    });
}

/// Everything inside `holder` that takes the focus by the keyboard and that `is` asked for, in order.
fn stops(holder: &Element, is: impl Fn(&HtmlElement) -> bool) -> Vec<HtmlElement> {
    let all = holder.get_elements_by_tag_name("*");
    let each = (0..all.length()).filter_map(|at| all.item(at)?.dyn_into::<HtmlElement>().ok());
    let takes = |thing: &HtmlElement| {
        let kind = thing.tag_name();
        let entered = ["BUTTON", "INPUT", "SELECT", "TEXTAREA", "SUMMARY"].contains(&kind.as_str());
        (entered || thing.get_attribute("tabindex").as_deref() == Some("0"))
            && !thing.has_attribute("disabled")
    };
    each.filter(|thing| takes(thing) && is(thing)).collect()
}

/// Tab inside `holder` goes round in it and not out of it.
pub fn keep_inside(holder: &Element, event: &KeyboardEvent) {
    if event.key() != "Tab" {
        return;
    }
    let stops = stops(holder, |_| true);
    let at = held().and_then(|held| stops.iter().position(|stop| *stop == held));
    let next = match (at, event.shift_key()) {
        (None | Some(0), true) => stops.last(),
        (None, false) => stops.first(),
        (Some(at), false) if at + 1 == stops.len() => stops.first(),
        (Some(_), _) => return,
    };
    event.prevent_default();
    if let Some(next) = next {
        next.focus().ok();
    }
}

/// From now on the arrow keys, Home and End move the focus among the choices of a group and among tabs. They
/// choose nothing: a choice here acts at once, and stays with Enter and Space.
pub fn follow_arrows() {
    let listening = window_event_listener(ev::keydown, |event| {
        if move_in_group(&event).is_some() {
            event.prevent_default();
        }
    });
    on_cleanup(move || listening.remove());
}

fn move_in_group(event: &KeyboardEvent) -> Option<()> {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return None;
    }
    let held = held()?;
    let role = held.get_attribute("role")?;
    let group = match role.as_str() {
        "radio" => held.closest("[role=radiogroup]"),
        "tab" => held.closest("[role=tablist]"),
        _ => return None,
    };
    let all = stops(&group.ok()??, |stop| {
        stop.get_attribute("role").as_ref() == Some(&role)
    });
    let at = all.iter().position(|stop| *stop == held)?;
    let next = match event.key().as_str() {
        "ArrowRight" | "ArrowDown" => (at + 1) % all.len(),
        "ArrowLeft" | "ArrowUp" => (at + all.len() - 1) % all.len(),
        "Home" => 0,
        "End" => all.len() - 1,
        _ => return None,
    };
    all.get(next)?.focus().ok()
}

/// Whether a touch was beside a sheet: its style lays a clear ground of its own over the rest of the screen.
/// Where something is being typed it counts as inside.
pub fn is_beside(sheet: &HtmlElement, event: &MouseEvent) -> bool {
    let on_ground = event
        .target()
        .is_some_and(|target| target == *sheet.unchecked_ref::<web_sys::EventTarget>());
    let typing = sheet
        .query_selector(".keypad, input, textarea")
        .ok()
        .flatten()
        .is_some();
    on_ground && !typing && f64::from(event.client_y()) < sheet.get_bounding_client_rect().top()
}
