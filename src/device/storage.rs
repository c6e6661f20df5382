//! Local storage: one entry a thing, versioned and checked, written to two slots in turn.
//!
//! A torn or unreadable slot falls back to the other and is set aside for rescue, never dropped.
//! Browsers may lose the last half second of writes, or the whole store (a page that is not
//! installed, after a week without use): backups are the user's safety, this module the page's.

#[cfg(feature = "app")]
mod browser;

use crate::job::json;
use crc::{CRC_32_ISO_HDLC, Crc, NoTable};
use serde::{Serialize, de::DeserializeOwned};
use serde_json::Value;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt;
use std::rc::Rc;

#[cfg(feature = "app")]
pub use browser::BrowserStore;

/// Everything of ours in local storage begins with this: the store is shared with every page of the host.
const PREFIX: &str = "halfcase/";
/// Under this, damaged text is kept for rescue.
const RESCUE: &str = "halfcase/rescue/";
const SLOTS: [&str; 2] = ["a", "b"];

/// A store of text by key, as the browser offers it.
pub trait Store {
    /// The text under `key`.
    fn get(&self, key: &str) -> Option<String>;
    /// Keeps `text` under `key`.
    ///
    /// # Errors
    /// [`StorageError::Full`] or [`StorageError::Blocked`].
    fn set(&self, key: &str, text: &str) -> Result<(), StorageError>;
    /// Forgets `key`.
    fn remove(&self, key: &str);
    /// Every key.
    fn keys(&self) -> Vec<String>;
}

/// Why something could not be kept or read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StorageError {
    /// The browser's share of space is used up.
    Full,
    /// The browser keeps nothing for this page.
    Blocked,
    /// Another tab wrote in between.
    OtherTab,
    /// Written by a later release.
    TooNew { name: String, version: u32 },
}

impl fmt::Display for StorageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Full => f.write_str(
                "The browser's storage is full: the last change is not kept. Close old jobs or free space on the phone.",
            ),
            Self::Blocked => f.write_str(
                "The browser keeps nothing for this page: leave private browsing or allow site data, or all is lost on closing.",
            ),
            Self::OtherTab => f.write_str(
                "Halfcase is open in another tab, which changed this. Close one of the two and reload the other: until then what is done here may be lost.",
            ),
            Self::TooNew { name, version } => {
                write!(f, "“{name}” was kept by a newer release (form {version}): update the app before using it.")
            }
        }
    }
}

impl std::error::Error for StorageError {}

/// One step that brings the stored form of the version before up to the next.
pub type Migration = fn(Value) -> Value;

/// What reading one thing found.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded<T> {
    /// The newest good value.
    pub value: Option<T>,
    /// Keys under which damaged text was set aside, to be said to the user.
    pub rescued: Vec<String>,
}

/// One named thing in the store, with what this tab knows of its sequence.
pub struct Shelf {
    store: Rc<dyn Store>,
    known: RefCell<BTreeMap<String, u64>>,
}

struct Slot<'a> {
    sequence: u64,
    version: u32,
    data: &'a str,
}

impl Shelf {
    /// A shelf on that store.
    pub fn new(store: Rc<dyn Store>) -> Self {
        Self {
            store,
            known: RefCell::default(),
        }
    }

    /// Reads the newest good slot of `name`, brought up to the latest version by `migrations`
    /// (the first takes version 1 to 2, and so on).
    ///
    /// # Errors
    /// [`StorageError::TooNew`]: the text is left as it is.
    pub fn load<T: DeserializeOwned>(
        &self,
        name: &str,
        migrations: &[Migration],
    ) -> Result<Loaded<T>, StorageError> {
        let latest = migrations.len() as u32 + 1;
        let mut texts: Vec<(u64, String, String)> = Vec::new();
        let mut rescued = Vec::new();
        for slot in SLOTS {
            let key = slot_key(name, slot);
            let Some(text) = self.store.get(&key) else {
                continue;
            };
            match read_slot(&text).map(|slot| slot.sequence) {
                Some(sequence) => texts.push((sequence, key, text)),
                None => rescued.extend(self.set_aside(&key, &text)),
            }
        }
        texts.sort_by_key(|(sequence, ..)| std::cmp::Reverse(*sequence));
        let newest = texts.first().map_or(0, |(sequence, ..)| *sequence);
        self.known.borrow_mut().insert(name.to_owned(), newest);
        for (_, key, text) in &texts {
            let Some(slot) = read_slot(text) else { continue };
            if slot.version > latest {
                return Err(StorageError::TooNew {
                    name: name.to_owned(),
                    version: slot.version,
                });
            }
            match read_data(&slot, migrations) {
                Some(value) => {
                    return Ok(Loaded {
                        value: Some(value),
                        rescued,
                    });
                }
                None => rescued.extend(self.set_aside(key, text)),
            }
        }
        Ok(Loaded { value: None, rescued })
    }

    /// Writes `value` over the older slot of `name` and reads it back.
    ///
    /// # Errors
    /// [`StorageError::OtherTab`] when the store holds a newer one than this tab knows;
    /// [`StorageError::TooNew`] when a later release wrote it; [`StorageError::Full`] or [`StorageError::Blocked`] from the browser. The newest good slot stays untouched.
    pub fn save<T: Serialize>(&self, name: &str, version: u32, value: &T) -> Result<(), StorageError> {
        let stored = SLOTS.map(|slot| self.head(name, slot));
        let (newest, form) = stored.into_iter().max().unwrap_or_default();
        let known = self.known.borrow().get(name).copied().unwrap_or(0);
        if newest > known {
            return Err(StorageError::OtherTab);
        }
        if form > version {
            return Err(StorageError::TooNew {
                name: name.to_owned(),
                version: form,
            });
        }
        let older = if stored[0] > stored[1] { SLOTS[1] } else { SLOTS[0] };
        let key = slot_key(name, older);
        let sequence = known + 1;
        let data = json::write(value).map_err(|_| StorageError::Blocked)?;
        self.put(&key, &slot_text(sequence, version, &data))?;
        self.known.borrow_mut().insert(name.to_owned(), sequence);
        Ok(())
    }

    /// The newest good slot of `name` as it is stored: its version and its JSON text.
    pub fn text(&self, name: &str) -> Option<(u32, String)> {
        let texts = SLOTS.map(|slot| self.store.get(&slot_key(name, slot)));
        texts
            .iter()
            .flatten()
            .filter_map(|text| read_slot(text))
            .max_by_key(|slot| slot.sequence)
            .map(|slot| (slot.version, slot.data.to_owned()))
    }

    /// Puts JSON text of that version in the place of whatever `name` holds, whoever wrote it.
    ///
    /// # Errors
    /// [`StorageError::Full`] or [`StorageError::Blocked`]; the older slot is freed only after the new one is read back.
    pub fn put_text(&self, name: &str, version: u32, data: &str) -> Result<(), StorageError> {
        let sequences = SLOTS.map(|slot| self.sequence(name, slot));
        let older = usize::from(sequences[0] > sequences[1]);
        let sequence = sequences.into_iter().max().unwrap_or(0) + 1;
        self.put(&slot_key(name, SLOTS[older]), &slot_text(sequence, version, data))?;
        self.store.remove(&slot_key(name, SLOTS[1 - older]));
        self.known.borrow_mut().insert(name.to_owned(), sequence);
        Ok(())
    }

    /// Frees the older slot of a thing that will not change again.
    pub fn settle(&self, name: &str) {
        let sequences = SLOTS.map(|slot| self.sequence(name, slot));
        if sequences[0] != sequences[1] {
            let older = usize::from(sequences[0] > sequences[1]);
            // Only while the newer one is sound: `sequence` is 0 for one that is not.
            if sequences[1 - older] > 0 {
                self.store.remove(&slot_key(name, SLOTS[older]));
            }
        }
    }

    /// Forgets a thing.
    pub fn forget(&self, name: &str) {
        SLOTS
            .iter()
            .for_each(|slot| self.store.remove(&slot_key(name, slot)));
        self.known.borrow_mut().remove(name);
    }

    fn sequence(&self, name: &str, slot: &str) -> u64 {
        self.head(name, slot).0
    }

    /// Sequence and version of a slot; zeros for one that is not sound.
    fn head(&self, name: &str, slot: &str) -> (u64, u32) {
        self.store
            .get(&slot_key(name, slot))
            .and_then(|text| read_slot(&text).map(|slot| (slot.sequence, slot.version)))
            .unwrap_or_default()
    }

    /// Writes one slot and reads it back.
    fn put(&self, key: &str, text: &str) -> Result<(), StorageError> {
        self.store.set(key, text)?;
        if self.store.get(key).as_deref() == Some(text) {
            Ok(())
        } else {
            Err(StorageError::Blocked)
        }
    }

    /// Names of things whose name begins with `start`, in order.
    pub fn names(&self, start: &str) -> Vec<String> {
        let mut names: Vec<String> = self
            .store
            .keys()
            .iter()
            .filter(|key| !key.starts_with(RESCUE))
            .filter_map(|key| {
                key.strip_prefix(PREFIX)?
                    .rsplit_once('/')
                    .map(|(name, _)| name.to_owned())
            })
            .filter(|name| name.starts_with(start))
            .collect();
        names.sort();
        names.dedup();
        names
    }

    /// Whether `key` of a storage event is one of ours.
    pub fn is_ours(key: &str) -> bool {
        key.starts_with(PREFIX) && !key.starts_with(RESCUE)
    }

    /// Damaged texts kept for rescue: (key, text).
    pub fn rescued(&self) -> Vec<(String, String)> {
        let keys = self
            .store
            .keys()
            .into_iter()
            .filter(|key| key.starts_with(RESCUE));
        keys.filter_map(|key| self.store.get(&key).map(|text| (key, text)))
            .collect()
    }

    /// Copies a damaged slot aside and frees it; where the copy can't be kept, the slot stays.
    fn set_aside(&self, key: &str, text: &str) -> Option<String> {
        let free = (0..).map(|n| format!("{RESCUE}{}/{n}", key.trim_start_matches(PREFIX)));
        let place = free
            .into_iter()
            .find(|place| self.store.get(place).is_none_or(|kept| kept == text))?;
        self.store.set(&place, text).ok()?;
        self.store.remove(key);
        Some(place)
    }
}

fn slot_key(name: &str, slot: &str) -> String {
    format!("{PREFIX}{name}/{slot}")
}

/// A head line "CRC-32, sequence, version", then the thing itself as JSON. The CRC is over all after it.
fn slot_text(sequence: u64, version: u32, data: &str) -> String {
    let rest = format!("{sequence} {version}\n{data}");
    format!("{:08x} {rest}", crc(&rest))
}

/// CRC-32 as in ISO 3309. Without a table: a fast one is 16 kB of the download, and the longest
/// thing takes a millisecond.
fn crc(text: &str) -> u32 {
    const CRC: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);
    CRC.checksum(text.as_bytes())
}

fn read_slot(text: &str) -> Option<Slot<'_>> {
    let (check, rest) = text.split_once(' ')?;
    if check.len() != 8 || u32::from_str_radix(check, 16).ok()? != crc(rest) {
        return None;
    }
    let (head, data) = rest.split_once('\n')?;
    let (sequence, version) = head.split_once(' ')?;
    Some(Slot {
        sequence: sequence.parse().ok()?,
        version: version.parse().ok()?,
        data,
    })
}

/// Reads a thing, brought up to the latest form first where it is older.
fn read_data<T: DeserializeOwned>(slot: &Slot<'_>, migrations: &[Migration]) -> Option<T> {
    let steps = migrations
        .get(slot.version.saturating_sub(1) as usize..)
        .unwrap_or_default();
    if steps.is_empty() {
        return json::read(slot.data).ok();
    }
    let old: Value = json::read(slot.data).ok()?;
    json::from_value(&steps.iter().fold(old, |data, step| step(data))).ok()
}

/// A store that lives as long as the page: stands in where the browser keeps nothing, and in tests.
#[derive(Default)]
pub struct MemoryStore {
    /// What is kept.
    pub texts: RefCell<BTreeMap<String, String>>,
    /// When set, writing more than this many bytes in all is refused.
    pub room: Option<usize>,
}

impl Store for MemoryStore {
    fn get(&self, key: &str) -> Option<String> {
        self.texts.borrow().get(key).cloned()
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        let used: usize = self
            .texts
            .borrow()
            .iter()
            .filter(|(k, _)| *k != key)
            .map(|(k, t)| k.len() + t.len())
            .sum();
        if self.room.is_some_and(|room| used + key.len() + text.len() > room) {
            return Err(StorageError::Full);
        }
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) {
        self.texts.borrow_mut().remove(key);
    }

    fn keys(&self) -> Vec<String> {
        self.texts.borrow().keys().cloned().collect()
    }
}
