//! The clock and the calendar as the browser tells them.

use crate::trade::moment::Moment;
use js_sys::{Date, Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};

use super::LocalTime;

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
