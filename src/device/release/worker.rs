//! The service worker, as the page talks to it.

use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{ServiceWorkerRegistration, ServiceWorkerState};

use super::Kept;

/// Tells, now and later, where things stand. The worker itself is registered by `boot.js`, which must
/// work even when the app doesn't.
pub fn watch(told: impl Fn(Kept) + Clone + 'static, news: impl Fn(String) + 'static) {
    tell_a_refusal(told.clone());
    hear_news(told.clone(), news);
    spawn_local(async move {
        let Some(registration) = registration().await else {
            return told(Kept::Not);
        };
        let of = registration.clone();
        follow(&registration, move |kept| {
            // What waits is a release once it has told of itself: nothing at all, which some networks give, is a
            // worker too.
            if kept == Kept::NewerWaits {
                of.waiting().iter().for_each(|waiting| say(waiting, "news"));
            }
            if kept != Kept::NewerWaits {
                told(kept);
            } else if of.active().is_some() {
                told(Kept::Whole);
            }
        });
    });
}

/// Of the release at hand: its version and the day it was made.
pub fn own() -> String {
    let page = web_sys::window().and_then(|window| window.document());
    let found = page.and_then(|page| page.query_selector("meta[name=release]").ok().flatten());
    found
        .and_then(|found| found.get_attribute("content"))
        .unwrap_or_default()
}

/// Hears what a release that waits tells of itself.
fn hear_news(told: impl Fn(Kept) + 'static, news: impl Fn(String) + 'static) {
    let Some(container) = container() else { return };
    let get = |of: &JsValue, name: &str| js_sys::Reflect::get(of, &name.into()).unwrap_or_default();
    let closure = Closure::<dyn Fn(JsValue)>::new(move |event: JsValue| {
        let data = get(&event, "data");
        if data.is_object() && get(&data, "kind").as_string().as_deref() == Some("news") {
            news(get(&data, "words").as_string().unwrap_or_default());
            told(Kept::NewerWaits);
        }
    });
    container
        .add_event_listener_with_callback("message", closure.as_ref().unchecked_ref())
        .ok();
    closure.forget();
}

fn say(worker: &web_sys::ServiceWorker, kind: &str) {
    let message = js_sys::Object::new();
    js_sys::Reflect::set(&message, &"kind".into(), &kind.into()).ok();
    worker.post_message(&message).ok();
}

/// Where the browser refused the worker, its being ready is waited for in vain.
fn tell_a_refusal(told: impl Fn(Kept) + 'static) {
    const REFUSED_BY_MS: i32 = 10_000;
    let look = Closure::once_into_js(move || {
        spawn_local(async move {
            let Some(container) = container() else { return };
            let found = JsFuture::from(container.get_registration()).await;
            if found.is_ok_and(|found| found.is_undefined()) {
                told(Kept::Not);
            }
        });
    });
    if let Some(window) = web_sys::window() {
        window
            .set_timeout_with_callback_and_timeout_and_arguments_0(look.unchecked_ref(), REFUSED_BY_MS)
            .ok();
    }
}

/// Looks for a newer release; nothing happens when there is none or no network.
pub fn look_for_newer() {
    spawn_local(async {
        let Some(container) = container() else { return };
        let Ok(found) = JsFuture::from(container.get_registration()).await else {
            return;
        };
        if let Ok(registration) = found.dyn_into::<ServiceWorkerRegistration>()
            && let Ok(asked) = registration.update()
        {
            JsFuture::from(asked).await.ok();
        }
    });
}

/// Lets the waiting release take over and starts the page anew with it.
pub fn take_over() {
    spawn_local(async {
        let Some(container) = container() else { return };
        if let Ok(found) = JsFuture::from(container.get_registration()).await
            && let Ok(registration) = found.dyn_into::<ServiceWorkerRegistration>()
            && let Some(waiting) = registration.waiting()
        {
            say(&waiting, "take-over");
        }
        reload_when(&container);
    });
}

/// Reloads on `controllerchange`, and after 2 s where a browser forgets to send it.
fn reload_when(container: &web_sys::ServiceWorkerContainer) {
    let closure = Closure::<dyn Fn()>::new(|| {
        if let Some(window) = web_sys::window() {
            window.location().reload().ok();
        }
    });
    let call = closure.as_ref().unchecked_ref();
    container
        .add_event_listener_with_callback("controllerchange", call)
        .ok();
    if let Some(window) = web_sys::window() {
        window
            .set_timeout_with_callback_and_timeout_and_arguments_0(call, 2_000)
            .ok();
    }
    closure.forget();
}

fn container() -> Option<web_sys::ServiceWorkerContainer> {
    let navigator = web_sys::window()?.navigator();
    // web-sys would hand out `undefined` on plain HTTP.
    js_sys::Reflect::has(&navigator, &"serviceWorker".into())
        .ok()?
        .then(|| navigator.service_worker())
}

/// The registration, once there is an active worker; `boot.js` asked for it before the app began.
async fn registration() -> Option<ServiceWorkerRegistration> {
    let ready = container()?.ready().ok()?;
    JsFuture::from(ready).await.ok()?.dyn_into().ok()
}

fn follow(registration: &ServiceWorkerRegistration, told: impl Fn(Kept) + Clone + 'static) {
    if registration.waiting().is_some() {
        told(Kept::NewerWaits);
    } else if registration.active().is_some() {
        told(Kept::Whole);
    }
    let of = registration.clone();
    let closure = Closure::<dyn Fn()>::new(move || {
        if let Some(worker) = of.installing() {
            follow_worker(&worker, of.active().is_some(), told.clone());
        }
    });
    registration
        .add_event_listener_with_callback("updatefound", closure.as_ref().unchecked_ref())
        .ok();
    if let Some(worker) = registration.installing() {
        closure
            .as_ref()
            .unchecked_ref::<js_sys::Function>()
            .call0(&JsValue::NULL)
            .ok();
        drop(worker);
    }
    closure.forget();
}

fn follow_worker(worker: &web_sys::ServiceWorker, replaces: bool, told: impl Fn(Kept) + 'static) {
    let of = worker.clone();
    let closure = Closure::<dyn Fn()>::new(move || match of.state() {
        ServiceWorkerState::Installed if replaces => told(Kept::NewerWaits),
        ServiceWorkerState::Activated => told(Kept::Whole),
        ServiceWorkerState::Redundant => told(if replaces { Kept::Whole } else { Kept::Not }),
        _ => {}
    });
    worker
        .add_event_listener_with_callback("statechange", closure.as_ref().unchecked_ref())
        .ok();
    closure.forget();
}
