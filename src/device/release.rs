//! The installed release: the service worker that keeps it, and a newer one that waits for the user's word.

#[cfg(feature = "app")]
mod worker;

#[cfg(feature = "app")]
pub use worker::{look_for_newer, own, take_over, watch};

/// Where the app stands with being kept for offline use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// Not known yet.
    Asking,
    /// The whole release is on this phone: it starts without a network.
    Whole,
    /// The browser can't keep it here (plain HTTP, or private browsing).
    Not,
    /// A newer release is on the phone and waits.
    NewerWaits,
}
