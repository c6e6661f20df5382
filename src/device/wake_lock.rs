//! Keeping the display awake while a step or clock is open.
//!
//! Screen Wake Lock is lost whenever the page is hidden or the battery is low, and some phones
//! give it only to a tab or only to an installed page: ask again on return, and say whether it is held.

#[cfg(feature = "app")]
mod sentinel;

#[cfg(feature = "app")]
pub use sentinel::{hold, release};

/// Whether the display stays on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Awake {
    /// Not asked for.
    NotAsked,
    /// The browser holds the display on.
    Held,
    /// The browser can't, or won't now.
    Refused,
}

/// Without a browser there is no display to hold.
#[cfg(not(feature = "app"))]
pub fn hold(told: impl Fn(Awake) + 'static) {
    told(Awake::Refused);
}

/// Without a browser there is no display to let go.
#[cfg(not(feature = "app"))]
pub fn release() {}
