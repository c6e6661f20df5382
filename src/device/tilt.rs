//! The phone's tilt, where it has the sensor and the user permits it.
//!
//! Some phones ask the user, and only when asked out of a tap; a desktop browser knows the event but
//! never sends it. What arrives is an aid: a magnet, a steel case or a hurried hand mislead it.

use crate::job::turning::heading_deg;
use js_sys::{Function, Promise, Reflect};
use std::cell::RefCell;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

const EVENT: &str = "deviceorientation";

type Listener = Closure<dyn Fn(JsValue)>;

thread_local! {
    static LISTENER: RefCell<Option<Listener>> = const { RefCell::new(None) };
}

/// Whether this browser knows of tilt at all.
pub fn supported() -> bool {
    sensor().is_some()
}

/// Asks, out of a tap, and then tells the phone's heading in degrees whenever it changes; `refused` is
/// called where the user or the phone says no. Ends with [`stop`].
pub fn watch(told: impl Fn(f64) + 'static, refused: impl Fn() + 'static) {
    // The question must be put while the tap lasts, so before anything is awaited.
    let question = sensor().map(|sensor| ask(&sensor));
    spawn_local(async move {
        match question {
            None => refused(),
            Some(None) => listen(told),
            Some(Some(question)) => match JsFuture::from(question).await {
                Ok(answer) if answer == "granted" => listen(told),
                _ => refused(),
            },
        }
    });
}

/// Listens no more.
pub fn stop() {
    let Some(listener) = LISTENER.with(|kept| kept.borrow_mut().take()) else {
        return;
    };
    if let Some(window) = web_sys::window() {
        window
            .remove_event_listener_with_callback(EVENT, listener.as_ref().unchecked_ref())
            .ok();
    }
}

fn sensor() -> Option<JsValue> {
    let window: JsValue = web_sys::window()?.into();
    let sensor = Reflect::get(&window, &"DeviceOrientationEvent".into()).ok()?;
    sensor.is_function().then_some(sensor)
}

/// The question to the user, on phones that put one.
fn ask(sensor: &JsValue) -> Option<Promise> {
    let request: Function = Reflect::get(sensor, &"requestPermission".into())
        .ok()?
        .dyn_into()
        .ok()?;
    request.call0(sensor).ok()?.dyn_into().ok()
}

fn listen(told: impl Fn(f64) + 'static) {
    stop();
    let listener = Listener::new(move |event: JsValue| {
        let angle = |name: &str| Reflect::get(&event, &name.into()).ok()?.as_f64();
        let angles = (angle("alpha"), angle("beta"), angle("gamma"));
        if let (Some(alpha), Some(beta), Some(gamma)) = angles
            && let Some(heading) = heading_deg(alpha, beta, gamma)
        {
            told(heading);
        }
    });
    if let Some(window) = web_sys::window() {
        window
            .add_event_listener_with_callback(EVENT, listener.as_ref().unchecked_ref())
            .ok();
    }
    LISTENER.with(|kept| *kept.borrow_mut() = Some(listener));
}
