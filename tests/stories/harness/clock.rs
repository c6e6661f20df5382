//! The page clock: the app asks `window.halfcaseClock`, where there is one, instead of the phone.
//!
//! `now()` is the wall clock in milliseconds since 1970, `monotonic()` the one that can't be set,
//! in milliseconds since the page began.

use std::time::Duration;

use serde_json::{Value, json};

use super::Told;
use super::page::Page;

/// Every story begins on Monday 2 March 2026, 08:00 UTC.
pub const START_MS: f64 = 1_772_438_400_000.0;

/// How far the page's clock is from the machine's.
pub struct Clock {
    wall_ahead_ms: f64,
    pub(super) injected: Option<String>,
}

impl Clock {
    pub fn new() -> Clock {
        let machine = std::time::SystemTime::now()
            .duration_since(std::time::UNIX_EPOCH)
            .unwrap_or_default();
        Clock {
            wall_ahead_ms: START_MS - machine.as_millis() as f64,
            injected: None,
        }
    }
}

const ADVANCE: &str = "
    const clock = window.halfcaseClock;
    clock.wallAhead += arguments[0].wall;
    clock.monotonicAhead += arguments[0].monotonic;
    document.dispatchEvent(new Event('visibilitychange'));";

impl Page {
    /// Time passes on the open page: both its clocks move, and it is told as on return to it.
    pub async fn advance_clock(&mut self, by: Duration) -> Told {
        let by_ms = by.as_millis() as f64;
        self.move_clock(by_ms, by_ms).await
    }

    /// Someone sets the phone's clock: only the wall clock moves, forwards or back.
    pub async fn set_phone_clock_ahead(&mut self, by_ms: f64) -> Told {
        self.move_clock(by_ms, 0.0).await
    }

    /// The page's wall clock now, in milliseconds since 1970.
    pub async fn now_ms(&self) -> Told<f64> {
        let now = self
            .script("return window.halfcaseClock.now()", Value::Null)
            .await?;
        Ok(now.as_f64().unwrap_or_default())
    }

    /// The page is put aside for a while and comes back after `by`, with no timer run in between:
    /// as [`advance_clock`](Page::advance_clock), but through a reload.
    pub async fn sleep_and_reload(&mut self, by: Duration) -> Told {
        self.clock.wall_ahead_ms += by.as_millis() as f64;
        self.inject_clock().await?;
        self.reload().await
    }

    async fn move_clock(&mut self, wall_ms: f64, monotonic_ms: f64) -> Told {
        self.clock.wall_ahead_ms += wall_ms;
        self.script(ADVANCE, json!({ "wall": wall_ms, "monotonic": monotonic_ms }))
            .await?;
        self.inject_clock().await
    }

    /// Every page loaded from now on finds the clock before its first script.
    pub(super) async fn inject_clock(&mut self) -> Told {
        let source = format!(
            "window.halfcaseClock = {{
                wallAhead: {}, monotonicAhead: 0,
                now() {{ return Date.now() + this.wallAhead; }},
                monotonic() {{ return performance.now() + this.monotonicAhead; }},
            }};",
            self.clock.wall_ahead_ms
        );
        let added = self
            .cdp(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({ "source": source }),
            )
            .await?;
        let identifier = added["identifier"].as_str().map(str::to_owned);
        if let Some(old) = std::mem::replace(&mut self.clock.injected, identifier) {
            // In a new tab the old tab's script is unknown, which is just as well.
            let gone = json!({ "identifier": old });
            drop(self.cdp("Page.removeScriptToEvaluateOnNewDocument", gone).await);
        }
        Ok(())
    }
}
