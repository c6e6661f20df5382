//! The journal of the latest writes, beside the store: what a killed browser had not yet written.
//!
//! An IndexedDB transaction of strict durability answers when it is on the disk; local storage is written
//! seconds later, and under steady work up to a minute. Private windows, old browsers and full phones may
//! have no database: then there is no journal, and the app works without one.

#[cfg(feature = "app")]
mod base;
#[cfg(feature = "app")]
mod pages;

#[cfg(feature = "app")]
pub use pages::{Laid, under};

/// Whether the last change outlives the browser itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Safe {
    /// No journal answers: a killed browser may lose the last minute.
    Unsure,
    /// On its way to the disk.
    Underway,
    /// On the disk.
    Sure,
}
