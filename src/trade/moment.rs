//! An instant on the wall clock, handed in from outside: nothing here asks what time it is.

use serde::{Deserialize, Serialize};
use uom::si::f64::Time;
use uom::si::time::millisecond;

/// Milliseconds since 1970-01-01 00:00 UTC.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Moment(pub i64);

impl Moment {
    /// This instant moved by `span`, which may be negative; a span that is not finite moves nothing.
    pub fn plus(self, span: Time) -> Self {
        let ms = span.get::<millisecond>();
        Self(if ms.is_finite() {
            self.0.saturating_add(ms.round() as i64)
        } else {
            self.0
        })
    }

    /// The time from `earlier` to this instant; negative when `earlier` is later.
    pub fn since(self, earlier: Self) -> Time {
        Time::new::<millisecond>(self.0.saturating_sub(earlier.0) as f64)
    }
}
