//! The store that the browser gives this page; how things are kept in one is [`crate::job::shelf`].

#[cfg(feature = "app")]
mod browser;

#[cfg(feature = "app")]
pub use browser::BrowserStore;

pub use crate::job::shelf::{MemoryStore, Shelf, StorageError, Store, Write};
