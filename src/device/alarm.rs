//! The alarm: sound, vibration, a notification.
//!
//! Sound has to be unlocked by a touch, and on some phones obeys the mute switch; some phones don't
//! vibrate; a notification needs leave, and comes only while the page runs. A sleeping phone may do none
//! of it: that is what the calendar file is for.

use js_sys::{Array, Function, Object, Promise, Reflect};
use std::cell::{Cell, RefCell};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{AudioContext, AudioContextState, OscillatorType};

/// Whether notifications may be shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leave {
    /// The browser has none.
    None,
    /// Not asked yet.
    NotAsked,
    /// Allowed.
    Given,
    /// Refused; only the browser's own settings change that.
    Refused,
}

thread_local! {
    /// A finger was on the page: before that a browser refuses to vibrate, and says so as an error.
    static TOUCHED: Cell<bool> = const { Cell::new(false) };
    static SOUND: RefCell<Option<AudioContext>> = const { RefCell::new(None) };
    /// It ran once: a browser that let a finger begin it lets it be begun without one from then on.
    static UNLOCKED: Cell<bool> = const { Cell::new(false) };
    /// Sounds asked for so far: the last one alone puts sound to rest.
    static ASKED: Cell<u32> = const { Cell::new(0) };
}

/// Unlocks sound at the first touch that does. Lives as long as the page.
pub fn unlock_at_a_touch() {
    let unlock = Closure::<dyn Fn()>::new(|| {
        TOUCHED.set(true);
        SOUND.with_borrow_mut(|sound| {
            if sound.is_none() {
                *sound = AudioContext::new().ok();
            }
            // A call that came between leaves a third state, which wants a finger again.
            let rests = |sound: &AudioContext| {
                matches!(
                    sound.state(),
                    AudioContextState::Running | AudioContextState::Suspended
                )
            };
            if let Some(sound) = sound
                && !(UNLOCKED.get() && rests(sound))
            {
                wake(sound, 0.0);
            }
        });
    });
    let listener = unlock.as_ref().unchecked_ref();
    if let Some(document) = web_sys::window().and_then(|window| window.document()) {
        for event in ["pointerup", "click"] {
            document.add_event_listener_with_callback(event, listener).ok();
        }
    }
    unlock.forget();
}

/// Lets it run, and stands it still again when what it has to sound is over: one that runs takes the
/// processor, and a phone's battery, all the while, sound or not.
fn wake(sound: &AudioContext, seconds: f64) {
    let this = ASKED.get().wrapping_add(1);
    ASKED.set(this);
    let Ok(woken) = sound.resume() else { return };
    let sound = sound.clone();
    spawn_local(async move {
        if JsFuture::from(woken).await.is_err() {
            return;
        }
        UNLOCKED.set(true);
        let over = ((seconds + REST_AFTER) * 1000.0) as i32;
        let rest = Closure::once_into_js(move || {
            if ASKED.get() == this
                && let Ok(rests) = sound.suspend()
            {
                spawn_local(async move { drop(JsFuture::from(rests).await) });
            }
        });
        if let Some(window) = web_sys::window() {
            window
                .set_timeout_with_callback_and_timeout_and_arguments_0(rest.unchecked_ref(), over)
                .ok();
        }
    });
}

/// It runs on for so many seconds after a sound: of presses one after the other, only the first waits for it.
const REST_AFTER: f64 = 3.0;

/// Sounds and vibrates once; whatever the phone can't do is left out.
pub fn sound() {
    // Before a first touch there is no sound to be had.
    SOUND.with_borrow(|sound| sound.as_ref().map(beeps));
    vibrate(&VIBRATION_MS);
}

/// Lets a press be felt, and heard where `loud`.
pub fn felt(loud: bool) {
    if loud {
        SOUND.with_borrow(|sound| sound.as_ref().map(|sound| tones(sound, TICK_LOUDNESS, &[TICK])));
    }
    vibrate(&[PRESS_MS]);
}

/// By turns on and off, so many ms each.
fn vibrate(pattern: &[f64]) {
    if TOUCHED.get()
        && let Some(navigator) = web_sys::window().map(|window| window.navigator())
        && !never_active(&navigator)
        && let Some(vibrate) = method(&navigator, "vibrate")
    {
        let pattern: Array = pattern.iter().map(|ms| JsValue::from_f64(*ms)).collect();
        vibrate.call1(&navigator, &pattern).ok();
    }
}

/// The browser tells that nobody has touched the page: what was pressed, a script pressed.
fn never_active(navigator: &JsValue) -> bool {
    let activation = Reflect::get(navigator, &"userActivation".into());
    let active = activation.and_then(|activation| Reflect::get(&activation, &"hasBeenActive".into()));
    active.is_ok_and(|active| active == JsValue::FALSE)
}

const VIBRATION_MS: [f64; 5] = [300.0, 150.0, 300.0, 150.0, 600.0];
/// Start after the first, length and pitch of each beep: a rising triad, told apart from a phone's own.
const BEEPS: [(f64, f64, f32); 3] = [(0.0, 0.18, 660.0), (0.25, 0.18, 830.0), (0.5, 0.5, 990.0)];
const LOUDNESS: f32 = 0.6;
/// A press is felt for so long.
const PRESS_MS: f64 = 15.0;
/// And heard as one short tone.
const TICK: (f64, f64, f32) = (0.0, 0.03, 1_800.0);
const TICK_LOUDNESS: f32 = 0.25;

fn beeps(sound: &AudioContext) -> Result<(), JsValue> {
    tones(sound, LOUDNESS, &BEEPS)
}

fn tones(sound: &AudioContext, loudness: f32, all: &[(f64, f64, f32)]) -> Result<(), JsValue> {
    let volume = sound.create_gain()?;
    volume.gain().set_value(loudness);
    volume.connect_with_audio_node(&sound.destination())?;
    for &(after, length, pitch) in all {
        let tone = sound.create_oscillator()?;
        tone.set_type(OscillatorType::Triangle);
        tone.frequency().set_value(pitch);
        tone.connect_with_audio_node(&volume)?;
        let from = sound.current_time() + after;
        tone.start_with_when(from)?;
        tone.stop_with_when(from + length)?;
    }
    let last = all.iter().map(|(after, length, _)| after + length);
    wake(sound, last.fold(0.0, f64::max));
    Ok(())
}

/// Whether notifications may be shown.
pub fn leave() -> Leave {
    let Some(permission) = notification().and_then(|n| Reflect::get(&n, &"permission".into()).ok()) else {
        return Leave::None;
    };
    match permission.as_string().as_deref() {
        Some("granted") => Leave::Given,
        Some("denied") => Leave::Refused,
        Some(_) => Leave::NotAsked,
        None => Leave::None,
    }
}

/// Asks for leave to show notifications, from a touch, and tells what came of it.
pub fn ask_leave(told: impl Fn(Leave) + 'static) {
    spawn_local(async move {
        if let Some(notification) = notification()
            && let Some(ask) = method(&notification, "requestPermission")
            && let Ok(asked) = ask.call0(&notification)
            && let Ok(asked) = asked.dyn_into::<Promise>()
        {
            JsFuture::from(asked).await.ok();
        }
        told(leave());
    });
}

/// Shows a notification through the service worker, where that is allowed.
pub fn notify(title: String, words: String) {
    if leave() != Leave::Given {
        return;
    }
    spawn_local(async move {
        show(&title, &words).await;
    });
}

async fn show(title: &str, words: &str) -> Option<()> {
    let container = Reflect::get(&web_sys::window()?.navigator(), &"serviceWorker".into()).ok()?;
    let asked: Promise = method(&container, "getRegistration")?
        .call0(&container)
        .ok()?
        .dyn_into()
        .ok()?;
    let registration = JsFuture::from(asked).await.ok()?;
    let options = Object::new();
    Reflect::set(&options, &"body".into(), &words.into()).ok()?;
    // One at a time for one joint: the later takes the earlier's place.
    Reflect::set(&options, &"tag".into(), &title.into()).ok()?;
    let shown: Promise = method(&registration, "showNotification")?
        .call2(&registration, &title.into(), &options)
        .ok()?
        .dyn_into()
        .ok()?;
    JsFuture::from(shown).await.ok().map(drop)
}

fn notification() -> Option<JsValue> {
    let window = web_sys::window()?;
    let found = Reflect::get(&window, &"Notification".into()).ok()?;
    (!found.is_undefined()).then_some(found)
}

fn method(of: &JsValue, name: &str) -> Option<Function> {
    Reflect::get(of, &name.into()).ok()?.dyn_into().ok()
}
