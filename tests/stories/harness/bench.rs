//! The bench a story begins with: the example job and its wrenches, kept as the app keeps them.

use std::rc::Rc;

use halfcase::job::keep::Shelves;
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::job::start;
use serde_json::{Map, Value, json};

use super::Told;
use super::page::Page;

/// Set by the page's first document, so that a bench a story empties stays empty.
const BEGUN: &str = "story-begun";

/// Everything that such a bench has stored, by key.
fn stored() -> Map<String, Value> {
    let store = Rc::new(MemoryStore::default());
    let shelves = Shelves::new(Shelf::new(store.clone()), None);
    shelves
        .keep_everything(&start::example())
        .expect("memory takes it");
    store
        .keys()
        .into_iter()
        .filter_map(|key| store.get(&key).map(|text| (key, Value::from(text))))
        .collect()
}

impl Page {
    /// The first document finds the example's bench in its storage.
    pub(super) async fn inject_bench(&mut self) -> Told {
        let source = format!(
            "try {{
                if (!localStorage.getItem('{BEGUN}')) {{
                    localStorage.setItem('{BEGUN}', 'yes');
                    for (const [key, text] of Object.entries({})) localStorage.setItem(key, text);
                }}
            }} catch {{ /* a page without storage */ }}",
            Value::Object(stored())
        );
        let what = json!({ "source": source });
        let added = self.cdp("Page.addScriptToEvaluateOnNewDocument", what).await?;
        self.laid_out = added["identifier"].as_str().map(str::to_owned);
        Ok(())
    }

    /// The story begins with nothing stored, as on a new phone. Before the first page is opened.
    pub async fn with_nothing_stored(&mut self) -> Told {
        match self.laid_out.take() {
            Some(identifier) => {
                let gone = json!({ "identifier": identifier });
                self.cdp("Page.removeScriptToEvaluateOnNewDocument", gone)
                    .await
                    .map(drop)
            }
            None => Ok(()),
        }
    }
}
