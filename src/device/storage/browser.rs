//! The store that the browser gives this page.

use super::{StorageError, Store};

/// The browser's local storage.
pub struct BrowserStore;

impl BrowserStore {
    /// The store, when the browser gives this page one.
    ///
    /// # Errors
    /// [`StorageError::Blocked`]: gloo-storage throws where storage is absent, so web-sys is asked first.
    pub fn open() -> Result<Self, StorageError> {
        let window = web_sys::window().ok_or(StorageError::Blocked)?;
        let store = window.local_storage().ok().flatten();
        // Some hand out one that throws at the first question.
        let answers = store.and_then(|store| store.length().ok());
        answers.map(|_| Self).ok_or(StorageError::Blocked)
    }

    fn raw() -> web_sys::Storage {
        <gloo_storage::LocalStorage as gloo_storage::Storage>::raw()
    }
}

impl Store for BrowserStore {
    fn get(&self, key: &str) -> Option<String> {
        Self::raw().get_item(key).ok().flatten()
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        Self::raw().set_item(key, text).map_err(|error| {
            let name = js_sys::Reflect::get(&error, &"name".into())
                .ok()
                .and_then(|name| name.as_string());
            match name.as_deref() {
                Some("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => StorageError::Full,
                _ => StorageError::Blocked,
            }
        })
    }

    fn remove(&self, key: &str) {
        Self::raw().remove_item(key).ok();
    }

    fn keys(&self) -> Vec<String> {
        let raw = Self::raw();
        let count = raw.length().unwrap_or(0);
        (0..count).filter_map(|at| raw.key(at).ok().flatten()).collect()
    }
}
