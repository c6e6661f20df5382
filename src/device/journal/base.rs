//! The browser's database, as far as a journal needs it.

use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

const NAME: &str = "halfcase";
const STORE: &str = "turns";

/// How long the app waits for the database before it starts without.
const PATIENCE_MS: i32 = 3_000;

#[wasm_bindgen]
extern "C" {
    /// What web-sys has without the durability, which is what it is all about.
    #[derive(Clone)]
    #[wasm_bindgen(js_name = IDBDatabase)]
    type Database;
    #[wasm_bindgen(method, catch)]
    fn transaction(this: &Database, store: &str, mode: &str, how: &Object) -> Result<Transaction, JsValue>;
    #[wasm_bindgen(method, catch, js_name = createObjectStore)]
    fn create_object_store(this: &Database, name: &str, how: &Object) -> Result<JsValue, JsValue>;
    #[wasm_bindgen(method)]
    fn close(this: &Database);

    #[derive(Clone)]
    #[wasm_bindgen(js_name = IDBTransaction)]
    type Transaction;
    #[wasm_bindgen(method, catch, js_name = objectStore)]
    fn object_store(this: &Transaction, name: &str) -> Result<ObjectStore, JsValue>;

    #[derive(Clone)]
    #[wasm_bindgen(js_name = IDBObjectStore)]
    type ObjectStore;
    #[wasm_bindgen(method, catch)]
    fn add(this: &ObjectStore, value: &JsValue) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = delete)]
    fn delete(this: &ObjectStore, keys: &JsValue) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getAll)]
    fn get_all(this: &ObjectStore) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = openCursor)]
    fn open_cursor(this: &ObjectStore, keys: &JsValue, direction: &str) -> Result<Request, JsValue>;

    #[derive(Clone)]
    #[wasm_bindgen(js_name = IDBRequest)]
    type Request;
    #[wasm_bindgen(method, getter, catch)]
    fn result(this: &Request) -> Result<JsValue, JsValue>;
}

/// Why nothing came of it: the browser's own error, or none.
pub type Answer<T> = Result<T, JsValue>;

/// An open database.
pub struct Base(Database);

/// One thing in it, with its number.
pub struct Kept {
    /// Numbers grow with time.
    pub number: f64,
    /// What was added.
    pub value: JsValue,
}

impl Base {
    /// Opens the database, or makes it; gives up after a while.
    pub async fn open() -> Answer<Self> {
        let window = web_sys::window().ok_or(JsValue::NULL)?;
        let factory = Reflect::get(&window, &"indexedDB".into())?;
        let open: Function = Reflect::get(&factory, &"open".into())?.dyn_into()?;
        let request: Request = open.call2(&factory, &NAME.into(), &1.into())?.unchecked_into();
        let of = request.clone();
        let make = Closure::once_into_js(move || {
            if let Ok(base) = of.result() {
                let base: Database = base.unchecked_into();
                let how = Object::new();
                Reflect::set(&how, &"autoIncrement".into(), &true.into()).ok();
                base.create_object_store(STORE, &how).ok();
            }
        });
        Reflect::set(&request, &"onupgradeneeded".into(), &make)?;
        let late = Promise::new(&mut |_, refuse| {
            window
                .set_timeout_with_callback_and_timeout_and_arguments_0(&refuse, PATIENCE_MS)
                .ok();
        });
        let there = heard(&request, "onsuccess", &["onerror", "onblocked"]);
        JsFuture::from(Promise::race(&Array::of2(&there, &late))).await?;
        let base: Database = request.result()?.unchecked_into();
        // A later release that changes the form must not wait for this page.
        let of = base.clone();
        let give_way = Closure::once_into_js(move || of.close());
        Reflect::set(&base, &"onversionchange".into(), &give_way)?;
        Ok(Self(base))
    }

    /// Adds all of these, and forgets what is no later than a number; tells the number of the last once they
    /// are on the disk.
    pub async fn add(&self, values: &[JsValue], forgotten: Option<f64>) -> Answer<f64> {
        let how = Object::new();
        Reflect::set(&how, &"durability".into(), &"strict".into())?;
        let transaction = self.0.transaction(STORE, "readwrite", &how)?;
        let done = heard(&transaction, "oncomplete", &["onabort", "onerror"]);
        let store = transaction.object_store(STORE)?;
        let mut last = None;
        for value in values {
            last = Some(store.add(value)?);
        }
        if let Some(number) = forgotten {
            store.delete(&up_to(number)?)?;
        }
        JsFuture::from(done).await?;
        last.map_or(Ok(0.0), |last| Ok(last.result()?.as_f64().unwrap_or(0.0)))
    }

    /// The last thing in it.
    pub async fn last(&self) -> Answer<Option<Kept>> {
        let cursor = self
            .ask(|store| store.open_cursor(&JsValue::NULL, "prev"))
            .await?;
        if cursor.is_null() {
            return Ok(None);
        }
        let number = Reflect::get(&cursor, &"key".into())?.as_f64();
        Ok(Some(Kept {
            number: number.unwrap_or(0.0),
            value: Reflect::get(&cursor, &"value".into())?,
        }))
    }

    /// Everything in it, in order.
    pub async fn all(&self) -> Answer<Array> {
        self.ask(ObjectStore::get_all).await?.dyn_into()
    }

    async fn ask(&self, ask: impl FnOnce(&ObjectStore) -> Answer<Request>) -> Answer<JsValue> {
        let transaction = self.0.transaction(STORE, "readonly", &Object::new())?;
        let request = ask(&transaction.object_store(STORE)?)?;
        JsFuture::from(heard(&request, "onsuccess", &["onerror"])).await?;
        request.result()
    }
}

/// A range of keys up to that number.
fn up_to(number: f64) -> Answer<JsValue> {
    let window = web_sys::window().ok_or(JsValue::NULL)?;
    let ranges = Reflect::get(&window, &"IDBKeyRange".into())?;
    let make: Function = Reflect::get(&ranges, &"upperBound".into())?.dyn_into()?;
    make.call1(&ranges, &number.into())
}

/// A promise of the one event, broken by the others.
fn heard(from: &JsValue, well: &str, ill: &[&str]) -> Promise {
    Promise::new(&mut |keep, refuse| {
        Reflect::set(from, &well.into(), &keep).ok();
        for event in ill {
            Reflect::set(from, &(*event).into(), &refuse).ok();
        }
    })
}
