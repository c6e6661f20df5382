//! The clock and the calendar of the phone.
//!
//! A page may bring its own clock as `window.halfcaseClock.now()` (milliseconds since 1970) and
//! `.monotonic()`: that is how the tests move time. Page timers freeze while a phone sleeps, so nothing counts ticks.

use crate::trade::moment::Moment;
use js_sys::{Date, Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};

/// What time it is.
pub fn now() -> Moment {
    let ms = brought("now").unwrap_or_else(Date::now);
    Moment(ms as i64)
}

/// Milliseconds since the page began, by a clock that nobody can set. While a phone sleeps it may stand still.
pub fn monotonic() -> f64 {
    let window = web_sys::window();
    brought("monotonic")
        .or_else(|| Some(window?.performance()?.now()))
        .unwrap_or(0.0)
}

fn brought(which: &str) -> Option<f64> {
    let window = web_sys::window()?;
    let clock = Reflect::get(&window, &JsValue::from_str("halfcaseClock")).ok()?;
    let now: Function = Reflect::get(&clock, &JsValue::from_str(which))
        .ok()?
        .dyn_into()
        .ok()?;
    now.call0(&clock).ok()?.as_f64()
}

/// A day of the phone's calendar and a time on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LocalTime {
    /// Days since 1970-01-01 in the phone's time zone.
    pub day: i64,
    /// Year, month (1–12), day of the month.
    pub date: (i32, u32, u32),
    /// Hour and minute.
    pub clock: (u32, u32),
}

/// `at` in the phone's time zone, daylight saving included.
pub fn local(at: Moment) -> LocalTime {
    let date = Date::new(&JsValue::from_f64(at.0 as f64));
    let minutes = at.0.div_euclid(60_000) - date.get_timezone_offset() as i64;
    LocalTime {
        day: minutes.div_euclid(24 * 60),
        date: (date.get_full_year() as i32, date.get_month() + 1, date.get_date()),
        clock: (date.get_hours(), date.get_minutes()),
    }
}
