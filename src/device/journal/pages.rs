//! Writing the journal, and reading it at the start.

use super::Safe;
use super::base::{Answer, Base};
use crate::job::carbon::{Back, Copied, Turn, put_back};
use crate::job::shelf::{Store, mark_in};
use js_sys::Array;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;

/// Kept at least: the latest turns, and all of the last while. Local storage is written long before.
const TURNS: usize = 200;
const WHILE_MS: f64 = 600_000.0;
/// Waiting for a journal that doesn't answer: with more than this it is given up.
const MOST_WAITING: usize = 400;

/// A store with a journal beside it, where the browser gives one.
pub struct Laid {
    /// The store to write into.
    pub store: Rc<dyn Store>,
    /// What was put back into it.
    pub back: Back,
    journal: Option<Rc<Journal>>,
}

impl Laid {
    /// The store alone.
    pub fn without(store: Rc<dyn Store>) -> Self {
        Self {
            store,
            back: Back::default(),
            journal: None,
        }
    }

    /// Tells, now and with each change, whether the last one outlives the browser.
    pub fn watch(&self, told: impl Fn(Safe) + 'static) {
        match &self.journal {
            None => told(Safe::Unsure),
            Some(journal) => {
                told(Safe::Sure);
                drop(journal.told.replace(Box::new(told)));
            }
        }
    }
}

/// Lays a journal under a store, and brings the store up to where the journal stands; then goes on.
pub fn under(store: Rc<dyn Store>, then: impl FnOnce(Laid) + 'static) {
    spawn_local(async move { then(lay(store).await) });
}

async fn lay(store: Rc<dyn Store>) -> Laid {
    let opened = match Base::open().await {
        Ok(base) => brought_up(&*store, &base).await.map(|back| (base, back)),
        Err(error) => Err(error),
    };
    let Ok((base, (back, last))) = opened else {
        return Laid::without(store);
    };
    let journal = Rc::new_cyclic(|journal: &Weak<Journal>| {
        let own = journal.clone();
        let begun = move || {
            if let Some(journal) = own.upgrade() {
                // Once the turn is over.
                spawn_local(async move { journal.write().await });
            }
        };
        Journal {
            copied: Rc::new(Copied::new(store, Box::new(begun))),
            base: RefCell::new(Some(Rc::new(base))),
            waiting: RefCell::default(),
            written: RefCell::new(vec![(last, 0.0)]),
            busy: Cell::new(false),
            told: RefCell::new(Box::new(|_| {})),
        }
    });
    // It lives as long as the page: the store knows it only by a weak hand.
    std::mem::forget(journal.clone());
    Laid {
        store: journal.copied.clone(),
        back,
        journal: Some(journal),
    }
}

/// Puts back what the store lacks, and forgets what is long written; tells the number of the last turn.
async fn brought_up(store: &dyn Store, base: &Base) -> Answer<(Back, f64)> {
    let Some(last) = base.last().await? else {
        return Ok((Back::default(), 0.0));
    };
    let mut back = Back::default();
    let ahead = turn_of(&last.value).is_none_or(|turn| turn.after > mark_in(store));
    if ahead {
        let all: Vec<JsValue> = base.all().await?.to_vec();
        let turns: Vec<Turn> = all.iter().filter_map(turn_of).collect();
        back = put_back(store, &turns);
    }
    // What doesn't fit will not fit later.
    let forgotten = if back.apart {
        last.number
    } else {
        last.number - TURNS as f64
    };
    if forgotten > 0.0 {
        base.add(&[], Some(forgotten)).await?;
    }
    Ok((back, last.number))
}

struct Journal {
    copied: Rc<Copied>,
    /// None while the browser has closed it.
    base: RefCell<Option<Rc<Base>>>,
    waiting: RefCell<Vec<Turn>>,
    /// The numbers of what is in it, with the time of each on the page's own clock.
    written: RefCell<Vec<(f64, f64)>>,
    busy: Cell<bool>,
    told: RefCell<Box<dyn Fn(Safe)>>,
}

impl Journal {
    /// Writes what waits, until nothing does.
    async fn write(&self) {
        loop {
            let turn = self.copied.take();
            let changes = turn.as_ref().is_some_and(|turn| turn.after != turn.before);
            self.waiting.borrow_mut().extend(turn);
            if changes {
                self.tell(Safe::Underway);
            }
            let count = self.waiting.borrow().len();
            if count == 0 || self.busy.get() {
                return;
            }
            self.busy.set(true);
            let done = match self.try_write(count).await {
                // A phone closes databases of pages out of sight: once more with one opened anew.
                Err(_) => {
                    self.base.replace(None);
                    self.try_write(count).await
                }
                done => done,
            };
            self.busy.set(false);
            if done.is_err() {
                self.base.replace(None);
                if count > MOST_WAITING {
                    self.waiting.borrow_mut().clear();
                }
                // The rest goes with the next.
                return self.tell(Safe::Unsure);
            }
            self.waiting.borrow_mut().drain(..count);
            if self.waiting.borrow().is_empty() {
                self.tell(Safe::Sure);
            }
        }
    }

    async fn try_write(&self, count: usize) -> Answer<()> {
        let open = self.base.borrow().clone();
        let base = match open {
            Some(base) => base,
            None => Rc::new(Base::open().await?),
        };
        self.base.replace(Some(base.clone()));
        let values: Vec<JsValue> = self.waiting.borrow().iter().take(count).map(value_of).collect();
        let now = crate::device::time::monotonic();
        let number = base.add(&values, self.past(now)).await?;
        self.written.borrow_mut().push((number, now));
        Ok(())
    }

    /// The number of the last turn that need not be kept any more.
    fn past(&self, now: f64) -> Option<f64> {
        let mut written = self.written.borrow_mut();
        let old = written.len().saturating_sub(TURNS);
        let old = written.iter().take(old);
        let count = old.take_while(|(_, at)| now - at > WHILE_MS).count();
        written.drain(..count).next_back().map(|(number, _)| number)
    }

    fn tell(&self, safe: Safe) {
        (self.told.borrow())(safe);
    }
}

/// A turn as the database keeps it: the two numbers, then keys and texts in turn.
fn value_of(turn: &Turn) -> JsValue {
    let all = Array::of2(&(turn.before as f64).into(), &(turn.after as f64).into());
    for (key, text) in &turn.writes {
        all.push(&key.into());
        all.push(&text.as_ref().map_or(JsValue::NULL, JsValue::from));
    }
    all.into()
}

/// None where it is not what this release writes.
fn turn_of(value: &JsValue) -> Option<Turn> {
    let all: &Array = value.dyn_ref()?;
    let number = |at: u32| all.get(at).as_f64().map(|number| number as u64);
    let (before, after) = (number(0)?, number(1)?);
    let writes = (2..all.length()).step_by(2).map(|at| {
        let text = all.get(at + 1);
        let key = all.get(at).as_string()?;
        (text.is_null() || text.is_string()).then(|| (key, text.as_string()))
    });
    Some(Turn {
        before,
        after,
        writes: writes.collect::<Option<_>>()?,
    })
}
