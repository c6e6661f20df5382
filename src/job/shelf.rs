//! Local storage: one entry a thing, versioned and checked, written to two slots in turn; all that one
//! touch changes is there whole or not at all.
//!
//! Each slot bears the number of the transaction that wrote it. A transaction writes its things into
//! their older slots and then, last, a mark of its own number: a slot whose number is above the last
//! mark was never finished, and is swept away at the next start. A torn or unreadable slot falls back to
//! the other and is set aside for rescue, never dropped.
//!
//! Browsers may lose the last half second of writes, or the whole store (a page that is not
//! installed, after a week without use): backups are the user's safety, this module the page's.

use crc::{CRC_32_ISO_HDLC, Crc, NoTable};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::fmt;
use std::rc::Rc;

/// Everything of ours in local storage begins with this: the store is shared with every page of the host.
const PREFIX: &str = "halfcase/";
/// Under this, damaged text is kept for rescue.
const RESCUE: &str = "halfcase/rescue/";
const SLOTS: [&str; 2] = ["a", "b"];
/// The mark's own name.
const MARK: &str = "mark";
/// What stands by itself and goes by no mark: written every minute, it must not shut another tab out.
const ALONE: &str = "watch";

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
                "The browser's storage is full: the last change is not kept yet. Make room: export old jobs as a backup, then delete them.",
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

/// What reading one thing found.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded<T> {
    /// The newest good value, with the form it was written in.
    pub value: Option<(u32, T)>,
    /// Keys under which damaged text was set aside, to be said to the user.
    pub rescued: Vec<String>,
}

/// One thing to be written, or forgotten.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Write {
    /// Its name.
    pub name: String,
    /// The form it is in.
    pub version: u32,
    /// Its JSON text; none forgets it.
    pub text: Option<String>,
}

/// The store, with what this tab knows of its transactions.
pub struct Shelf {
    store: Rc<dyn Store>,
    /// The number of the last transaction this tab knows of.
    known: Cell<u64>,
}

struct Slot<'a> {
    sequence: u64,
    version: u32,
    data: &'a str,
}

impl Shelf {
    /// A shelf on that store. What a broken-off transaction left is swept away.
    pub fn new(store: Rc<dyn Store>) -> Self {
        let shelf = Self {
            store,
            known: Cell::new(0),
        };
        let names = shelf.names("");
        let marked = names.iter().filter(|name| *name != ALONE);
        let slots = || marked.clone().flat_map(|name| SLOTS.map(|slot| (name, slot)));
        let marks = SLOTS.map(|slot| shelf.store.get(&slot_key(MARK, slot)));
        let mark = marks
            .iter()
            .flatten()
            .map(|text| read_slot(text).map(|slot| slot.sequence));
        match mark
            .collect::<Option<Vec<u64>>>()
            .and_then(|marks| marks.into_iter().max())
        {
            Some(mark) => {
                shelf.known.set(mark);
                slots()
                    .filter(|(name, slot)| shelf.head(name, slot).0 > mark)
                    .for_each(|(name, slot)| shelf.store.remove(&slot_key(name, slot)));
            }
            // A store of form 1, or an empty one: every slot in it was finished by itself. Or a mark that
            // can't be read: it is written last, so what it would finish is all there.
            None => {
                let newest = slots().map(|(name, slot)| shelf.head(name, slot).0).max();
                let sound = SLOTS.map(|slot| shelf.head(MARK, slot).0).into_iter().max();
                shelf.known.set(newest.max(sound).unwrap_or(0));
            }
        }
        // What a transaction forgot, and nobody came to take away.
        for name in names.iter().filter(|name| shelf.is_forgotten(name)) {
            shelf.take_away(name);
        }
        shelf
    }

    /// Reads the newest good slot of `name` by `read`, which is given the form and the text; one that it
    /// can't read is set aside as a damaged one is.
    ///
    /// # Errors
    /// [`StorageError::TooNew`] where its form is above `latest`: the text is left as it is.
    pub fn load<T>(
        &self,
        name: &str,
        latest: u32,
        read: impl Fn(u32, &str) -> Option<T>,
    ) -> Result<Loaded<T>, StorageError> {
        let mut value = None;
        let rescued = self.look(name, latest, &mut |form, text| {
            value = read(form, text).map(|value| (form, value));
            value.is_some()
        })?;
        Ok(Loaded { value, rescued })
    }

    // Apart from `load`, so that it is compiled once and not for every type there is.
    fn look(
        &self,
        name: &str,
        latest: u32,
        read: &mut dyn FnMut(u32, &str) -> bool,
    ) -> Result<Vec<String>, StorageError> {
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
        // The newer of the two first.
        if texts.len() == 2 && texts[0].0 < texts[1].0 {
            texts.swap(0, 1);
        }
        for (_, key, text) in &texts {
            let Some(slot) = read_slot(text) else { continue };
            if slot.data.is_empty() {
                break;
            }
            if slot.version > latest {
                return Err(StorageError::TooNew {
                    name: name.to_owned(),
                    version: slot.version,
                });
            }
            if read(slot.version, slot.data) {
                break;
            }
            rescued.extend(self.set_aside(key, text));
        }
        Ok(rescued)
    }

    /// Writes all of these, each over its older slot and read back, then the mark: after a crash at any
    /// point all of them are there, or none.
    ///
    /// # Errors
    /// [`StorageError::OtherTab`] when the store holds a later transaction than this tab knows;
    /// [`StorageError::TooNew`] when a later release wrote one of them; [`StorageError::Full`] or
    /// [`StorageError::Blocked`] from the browser. Then everything is as it was.
    pub fn keep(&self, writes: &[Write]) -> Result<(), StorageError> {
        let known = self.known.get();
        let heads = |name: &str| SLOTS.map(|slot| self.head(name, slot));
        if heads(MARK).into_iter().any(|(sequence, _)| sequence > known) {
            return Err(StorageError::OtherTab);
        }
        // Without a mark every slot counts: it stands before the first transaction begins.
        let known = if heads(MARK).into_iter().all(|(sequence, _)| sequence == 0) {
            let known = known.max(1);
            self.put(&slot_key(MARK, SLOTS[0]), &slot_text(known, 1, "0"))?;
            self.known.set(known);
            known
        } else {
            known
        };
        let sequence = known + 1;
        let mut before: Vec<(String, Option<String>)> = Vec::new();
        let mut write_over = |heads: [(u64, u32); 2], name: &str, version: u32, text: &str| {
            let key = slot_key(name, SLOTS[usize::from(heads[0].0 > heads[1].0)]);
            before.push((key.clone(), self.store.get(&key)));
            self.put(&key, &slot_text(sequence, version, text))
        };
        let outcome = writes
            .iter()
            .try_for_each(|write| {
                let heads = heads(&write.name);
                let (newest, form) = heads.into_iter().max().unwrap_or_default();
                if newest > known {
                    return Err(StorageError::OtherTab);
                }
                if form > write.version {
                    return Err(StorageError::TooNew {
                        name: write.name.clone(),
                        version: form,
                    });
                }
                // What is forgotten is written as nothing, so that it goes with the rest or stays with it.
                let text = write.text.as_deref().unwrap_or_default();
                write_over(heads, &write.name, write.version, text)
            })
            .and_then(|()| write_over(heads(MARK), MARK, 1, "0"));
        if let Err(error) = outcome {
            // Room first, then what stood there.
            before.iter().for_each(|(key, _)| self.store.remove(key));
            for (key, text) in before {
                if let Some(text) = text {
                    self.store.set(&key, &text)?;
                }
            }
            return Err(error);
        }
        self.known.set(sequence);
        let gone = writes.iter().filter(|write| write.text.is_none());
        gone.for_each(|write| self.take_away(&write.name));
        Ok(())
    }

    /// Writes what stands by itself, and no mark.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`]; the newer slot stays untouched.
    pub fn keep_alone(&self, text: &str) -> Result<(), StorageError> {
        let heads = SLOTS.map(|slot| self.head(ALONE, slot).0);
        let key = slot_key(ALONE, SLOTS[usize::from(heads[0] > heads[1])]);
        let sequence = heads[0].max(heads[1]) + 1;
        self.put(&key, &slot_text(sequence, 1, text))
    }

    /// Takes things away without a transaction: for room, where there is none left to write in.
    pub fn make_room(&self, names: &[String]) {
        names.iter().for_each(|name| self.take_away(name));
    }

    /// Whether anything is kept under that name.
    pub fn has(&self, name: &str) -> bool {
        let there = |slot: &&str| self.store.get(&slot_key(name, slot)).is_some();
        SLOTS.iter().any(there) && !self.is_forgotten(name)
    }

    /// Whether the newest that is known of a thing is that it was forgotten.
    fn is_forgotten(&self, name: &str) -> bool {
        let texts = SLOTS.map(|slot| self.store.get(&slot_key(name, slot)));
        let slots = texts.iter().flatten().filter_map(|text| read_slot(text));
        slots
            .max_by_key(|slot| slot.sequence)
            .is_some_and(|slot| slot.data.is_empty())
    }

    /// The newest good slot of `name` as it is stored: its version and its JSON text.
    pub fn text(&self, name: &str) -> Option<(u32, String)> {
        let texts = SLOTS.map(|slot| self.store.get(&slot_key(name, slot)));
        texts
            .iter()
            .flatten()
            .filter_map(|text| read_slot(text))
            .max_by_key(|slot| slot.sequence)
            .filter(|slot| !slot.data.is_empty())
            .map(|slot| (slot.version, slot.data.to_owned()))
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

    /// Takes a forgotten thing away: what says that it is forgotten goes last.
    fn take_away(&self, name: &str) {
        let sequences = SLOTS.map(|slot| self.sequence(name, slot));
        let newer = usize::from(sequences[1] > sequences[0]);
        self.store.remove(&slot_key(name, SLOTS[1 - newer]));
        self.store.remove(&slot_key(name, SLOTS[newer]));
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
            .filter(|name| name.starts_with(start) && name != MARK)
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

/// The number of the last transaction that stands whole in a store; 0 where there is none.
pub fn mark_in(store: &dyn Store) -> u64 {
    let marks = SLOTS.map(|slot| store.get(&slot_key(MARK, slot)));
    let marks = marks.iter().flatten().filter_map(|text| read_slot(text));
    marks.map(|slot| slot.sequence).max().unwrap_or(0)
}

/// Which transaction wrote that text under that key; none for what goes by no mark, or is not sound.
pub fn written_by(key: &str, text: &str) -> Option<u64> {
    let (name, _) = key.strip_prefix(PREFIX)?.rsplit_once('/')?;
    let counts = name != ALONE && !key.starts_with(RESCUE);
    read_slot(text).filter(|_| counts).map(|slot| slot.sequence)
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
