//! What the app has stored, seen and changed behind its back.

use serde_json::{Value, json};

use super::Told;
use super::page::Page;

impl Page {
    /// The stored keys that begin with `prefix`, sorted.
    pub async fn stored_keys(&self, prefix: &str) -> Told<Vec<String>> {
        let body = "return Object.keys(localStorage).filter(key => key.startsWith(arguments[0])).sort()";
        Ok(serde_json::from_value(self.script(body, json!(prefix)).await?)?)
    }

    /// One stored entry.
    pub async fn stored(&self, key: &str) -> Told<Option<String>> {
        let entry = self
            .script("return localStorage.getItem(arguments[0])", json!(key))
            .await?;
        Ok(entry.as_str().map(str::to_owned))
    }

    /// Puts an entry there: a damaged one, or one of an older version.
    pub async fn store(&self, key: &str, entry: &str) -> Told {
        let body = "localStorage.setItem(arguments[0].key, arguments[0].entry)";
        self.script(body, json!({ "key": key, "entry": entry }))
            .await
            .map(drop)
    }

    /// Removes an entry.
    pub async fn unstore(&self, key: &str) -> Told {
        self.script("localStorage.removeItem(arguments[0])", json!(key))
            .await
            .map(drop)
    }

    /// The whole of local storage, to compare before and after.
    pub async fn everything_stored(&self) -> Told<Value> {
        self.script(
            "return Object.fromEntries(Object.entries(localStorage).sort())",
            Value::Null,
        )
        .await
    }
}
