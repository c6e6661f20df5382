//! The browser's hold on the display.

use js_sys::{Function, Promise, Reflect};
use std::cell::RefCell;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

use super::Awake;

thread_local! {
    static SENTINEL: RefCell<Option<JsValue>> = const { RefCell::new(None) };
}

/// Asks for the display to stay on, and tells what came of it.
pub fn hold(told: impl Fn(Awake) + 'static) {
    spawn_local(async move {
        let held = request().await;
        told(if held.is_some() {
            Awake::Held
        } else {
            Awake::Refused
        });
        // Every lock keeps the display on by itself: the one before must go.
        let before = held.and_then(|held| SENTINEL.replace(Some(held)));
        before.iter().for_each(let_go);
    });
}

/// Lets the display sleep again.
pub fn release() {
    SENTINEL.take().iter().for_each(let_go);
}

fn let_go(sentinel: &JsValue) {
    if let Some(release) = method(sentinel, "release") {
        release.call0(sentinel).ok();
    }
}

async fn request() -> Option<JsValue> {
    let navigator = web_sys::window()?.navigator();
    let lock = Reflect::get(&navigator, &"wakeLock".into()).ok()?;
    let asked: Promise = method(&lock, "request")?
        .call1(&lock, &"screen".into())
        .ok()?
        .dyn_into()
        .ok()?;
    JsFuture::from(asked).await.ok()
}

fn method(of: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}
