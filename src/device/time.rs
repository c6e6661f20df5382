//! The clock and the calendar of the phone.
//!
//! A page may bring its own clock as `window.halfcaseClock.now()` (milliseconds since 1970) and
//! `.monotonic()`: that is how the tests move time. Page timers freeze while a phone sleeps, so nothing counts ticks.

#[cfg(feature = "app")]
mod phone;

#[cfg(feature = "app")]
pub use phone::{local, monotonic, now};

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
