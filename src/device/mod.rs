//! The browser's edges, one ability a file. Every step into JavaScript may fail, and fails softly.

#[cfg(feature = "app")]
pub mod alarm;
#[cfg(feature = "app")]
pub mod files;
#[cfg(feature = "app")]
pub mod focus;
#[cfg(feature = "app")]
pub mod hands;
pub mod journal;
#[cfg(feature = "app")]
pub mod paper;
#[cfg(feature = "app")]
pub mod place;
pub mod release;
pub mod storage;
#[cfg(feature = "app")]
pub mod tilt;
pub mod time;
#[cfg(feature = "app")]
pub mod voice;
pub mod wake_lock;
