//! Local storage: one entry a thing, versioned and checked, written to two slots in turn; all that one
//! touch changes is there whole or not at all.
//!
//! Each slot bears the number of the transaction that wrote it. A transaction writes its things into
//! their older slots and then, last, a mark of its own number: a slot whose number is above the last
//! mark was never finished, and is swept away at the next start. A torn or unreadable slot falls back to
//! the other and is set aside for rescue, never dropped. The mark also bears the print of the newest copies
//! that stood when it was written: where others stand at the next start, something was lost without a trace.
//!
//! Browsers may lose the last half second of writes, or the whole store (a page that is not
//! installed, after a week without use): backups are the user's safety, this module the page's.

use crc::{CRC_32_ISO_HDLC, Crc};
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
    /// What is there can't be read: it must not be written over.
    Unread,
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
            Self::Unread => f.write_str(
                "The browser does not give back what it keeps: nothing is written over it. Close Halfcase, restart the phone, and open it again.",
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
    /// Keys under which damaged text was set aside, to be said to the user; its own key where there was no
    /// room for that.
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
    /// The sum of the newest copy of each thing that goes by the mark.
    newest: RefCell<Vec<(String, u32)>>,
    /// What the last start found that nobody asked for, to be said to the user.
    odd: Cell<Option<&'static str>>,
    /// A key was there and could not be read.
    unread: Cell<bool>,
    /// So it was when things were loaded: what is in memory is not what is kept.
    blind: Cell<bool>,
}

/// Said where a transaction was never finished.
pub const CUT_OFF: &str =
    "The last change was cut off while it was being kept, and is taken out: do it again.";
/// Said where other copies stand than those that were last kept.
pub const OTHERWISE: &str = "The browser lost a part of what was kept here, or brought back an older one: check the last things you did.";

/// A slot, its data borrowed or owned.
struct Slot<T> {
    sum: u32,
    sequence: u64,
    version: u32,
    data: T,
}

impl Shelf {
    /// A shelf on that store. What a broken-off transaction left is swept away.
    pub fn new(store: Rc<dyn Store>) -> Self {
        let shelf = Self {
            store,
            known: Cell::new(0),
            newest: RefCell::default(),
            odd: Cell::new(None),
            unread: Cell::new(false),
            blind: Cell::new(false),
        };
        let names = shelf.names("");
        let marked = || names.iter().filter(|name| *name != ALONE);
        let slots = || marked().flat_map(|name| SLOTS.map(|slot| (name, slot)));
        let marks = SLOTS.map(|slot| shelf.get(&slot_key(MARK, slot)));
        let mark = marks
            .iter()
            .flatten()
            .map(|text| read_slot(text).map(|slot| slot.sequence));
        match mark
            .collect::<Option<Vec<u64>>>()
            .and_then(|marks| marks.into_iter().max())
            .filter(|_| !shelf.unread.get())
        {
            Some(mark) => {
                shelf.known.set(mark);
                for (name, slot) in slots().filter(|(name, slot)| shelf.sequence(name, slot) > mark) {
                    shelf.store.remove(&slot_key(name, slot));
                    shelf.odd.set(Some(CUT_OFF));
                }
            }
            // A store of form 1, or an empty one: every slot in it was finished by itself. Or a mark that
            // can't be read: it is written last, so what it would finish is all there.
            None => {
                let newest = slots().map(|(name, slot)| shelf.sequence(name, slot)).max();
                let sound = SLOTS.map(|slot| shelf.sequence(MARK, slot)).into_iter().max();
                shelf.known.set(newest.max(sound).unwrap_or(0));
            }
        }
        // What a transaction forgot, and nobody came to take away.
        let forgotten = |name: &&String| !shelf.unread.get() && shelf.is_forgotten(name);
        for name in names.iter().filter(forgotten) {
            shelf.take_away(name);
        }
        marked().for_each(|name| shelf.note_newest(name));
        // A mark of a release before has 0 in the place of the print.
        let mark = shelf.newest(MARK);
        let mark = mark.filter(|mark| mark.sequence == shelf.known.get() && mark.data != "0");
        if mark.is_some_and(|mark| mark.data != print_of(&shelf.newest.borrow())) {
            shelf.odd.set(Some(OTHERWISE));
        }
        shelf.blind.set(shelf.unread.get());
        shelf
    }

    /// What the start found that nobody asked for, in words, once: the last change was cut off, or what stands is
    /// not what was last kept.
    pub fn odd(&self) -> Option<&'static str> {
        self.odd.take()
    }

    /// Whether something that is kept could not be read when it was loaded: nothing is written then.
    pub fn is_blind(&self) -> bool {
        self.blind.get()
    }

    /// The text under a key. Where the key is there and its text is not, it is asked for once more.
    fn get(&self, key: &str) -> Option<String> {
        let text = self.store.get(key);
        if text.is_some() || !self.store.keys().iter().any(|own| own == key) {
            return text;
        }
        let again = self.store.get(key);
        self.unread.set(self.unread.get() || again.is_none());
        again
    }

    /// The newest sound slot of a thing, with its data; empty where it was forgotten.
    fn newest(&self, name: &str) -> Option<Slot<String>> {
        let texts = SLOTS.map(|slot| self.get(&slot_key(name, slot)));
        let slots = texts.iter().flatten().filter_map(|text| read_slot(text));
        let newest = slots.max_by_key(|slot| slot.sequence)?;
        Some(Slot {
            sum: newest.sum,
            sequence: newest.sequence,
            version: newest.version,
            data: newest.data.to_owned(),
        })
    }

    /// What stands of a thing now is what the next mark answers for.
    fn note_newest(&self, name: &str) {
        let copy = self.newest(name).filter(|slot| !slot.data.is_empty());
        let mut newest = self.newest.borrow_mut();
        newest.retain(|(own, _)| own != name);
        newest.extend(copy.map(|slot| (name.to_owned(), slot.sum)));
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
        // A reading in vain counts here, not one of before that is over.
        self.unread.set(self.blind.get());
        for slot in SLOTS {
            let key = slot_key(name, slot);
            let Some(text) = self.get(&key) else {
                continue;
            };
            match read_slot(&text).map(|slot| slot.sequence) {
                Some(sequence) => texts.push((sequence, key, text)),
                None => rescued.push(self.set_aside(key, &text)),
            }
        }
        self.blind.set(self.blind.get() || self.unread.get());
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
            rescued.push(self.set_aside(key.clone(), text));
            // It was sound, and counted as the newest.
            if name != ALONE {
                self.note_newest(name);
            }
        }
        Ok(rescued)
    }

    /// Writes all of these, each over its older slot and read back, then the mark: after a crash at any
    /// point all of them are there, or none.
    ///
    /// # Errors
    /// [`StorageError::OtherTab`] when the store holds a later transaction than this tab knows;
    /// [`StorageError::TooNew`] when a later release wrote one of them; [`StorageError::Unread`] where what
    /// stands can't be read; [`StorageError::Full`] or [`StorageError::Blocked`] from the browser. Then
    /// everything is as it was.
    pub fn keep(&self, writes: &[Write]) -> Result<(), StorageError> {
        let known = self.known.get();
        let heads = |name: &str| SLOTS.map(|slot| self.head(name, slot));
        // Before anything is written over.
        self.unread.set(self.blind.get());
        for name in writes.iter().map(|write| write.name.as_str()).chain([MARK]) {
            heads(name);
        }
        if self.unread.get() {
            return Err(StorageError::Unread);
        }
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
            let text = slot_text(sequence, version, text);
            self.put(&key, &text)?;
            Ok(sum_in(&text))
        };
        let mut copies = self.newest.borrow().clone();
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
                let sum = write_over(heads, &write.name, write.version, text)?;
                copies.retain(|(name, _)| *name != write.name);
                copies.extend(
                    sum.filter(|_| !text.is_empty())
                        .map(|sum| (write.name.clone(), sum)),
                );
                Ok(())
            })
            .and_then(|()| write_over(heads(MARK), MARK, 1, &print_of(&copies)));
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
        self.newest.replace(copies);
        let gone = writes.iter().filter(|write| write.text.is_none());
        gone.for_each(|write| self.take_away(&write.name));
        Ok(())
    }

    /// Writes what stands by itself, and no mark.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`]; the newer slot stays untouched.
    pub fn keep_alone(&self, text: &str) -> Result<(), StorageError> {
        if self.blind.get() {
            return Err(StorageError::Unread);
        }
        let heads = SLOTS.map(|slot| self.head(ALONE, slot).0);
        let key = slot_key(ALONE, SLOTS[usize::from(heads[0] > heads[1])]);
        let sequence = heads[0].max(heads[1]) + 1;
        self.put(&key, &slot_text(sequence, 1, text))
    }

    /// Takes things away without a transaction: for room, where there is none left to write in.
    pub fn make_room(&self, names: &[String]) {
        names.iter().for_each(|name| self.take_away(name));
        self.newest.borrow_mut().retain(|(name, _)| !names.contains(name));
        // A mark alone, so that nothing of it is missed at the next start; refused, it goes with what is kept next.
        drop(self.keep(&[]));
    }

    /// Whether anything is kept under that name.
    pub fn has(&self, name: &str) -> bool {
        let there = |slot: &&str| self.store.get(&slot_key(name, slot)).is_some();
        SLOTS.iter().any(there) && !self.is_forgotten(name)
    }

    /// Whether the newest that is known of a thing is that it was forgotten.
    fn is_forgotten(&self, name: &str) -> bool {
        self.newest(name).is_some_and(|slot| slot.data.is_empty())
    }

    /// The newest good slot of `name` as it is stored: its version and its JSON text.
    pub fn text(&self, name: &str) -> Option<(u32, String)> {
        let newest = self.newest(name).filter(|slot| !slot.data.is_empty());
        newest.map(|slot| (slot.version, slot.data))
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
        self.get(&slot_key(name, slot))
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

    /// Copies a damaged slot aside and frees it; where the copy can't be kept, the slot stays. Tells where it is.
    fn set_aside(&self, key: String, text: &str) -> String {
        let free = (0..).map(|n| format!("{RESCUE}{}/{n}", key.trim_start_matches(PREFIX)));
        let place = free
            .into_iter()
            .find(|place| self.store.get(place).is_none_or(|kept| kept == text));
        match place.filter(|place| self.store.set(place, text).is_ok()) {
            Some(place) => {
                self.store.remove(&key);
                place
            }
            None => key,
        }
    }

    /// Whether that is where a damaged copy was set aside.
    pub fn is_aside(key: &str) -> bool {
        key.starts_with(RESCUE)
    }
}

/// The number of the last transaction that stands whole in a store; 0 where there is none.
pub fn mark_in(store: &dyn Store) -> u64 {
    let marks = SLOTS.map(|slot| store.get(&slot_key(MARK, slot)));
    let marks = marks.iter().flatten().filter_map(|text| read_slot(text));
    marks.map(|slot| slot.sequence).max().unwrap_or(0)
}

/// Whether that is the key of a mark.
pub fn is_mark(key: &str) -> bool {
    SLOTS.iter().any(|slot| slot_key(MARK, slot) == key)
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

/// How a sum is reckoned. The page has no table, as that would add to the download: the longest thing takes a
/// millisecond. Natively, where tests keep a million things without optimisation, there is a small one.
#[cfg(target_arch = "wasm32")]
type Reckoned = crc::NoTable;
#[cfg(not(target_arch = "wasm32"))]
type Reckoned = crc::Table<1>;

/// CRC-32 as in ISO 3309.
fn crc(text: &str) -> u32 {
    static CRC: Crc<u32, Reckoned> = Crc::<u32, Reckoned>::new(&CRC_32_ISO_HDLC);
    CRC.checksum(text.as_bytes())
}

/// The sum that a slot's text begins with.
fn sum_in(text: &str) -> Option<u32> {
    u32::from_str_radix(text.get(..8)?, 16).ok()
}

/// One number for exactly these copies, in any order.
fn print_of(newest: &[(String, u32)]) -> String {
    let print = newest
        .iter()
        .fold(0_u32, |print, (_, sum)| print.wrapping_add(*sum));
    print.to_string()
}

fn read_slot(text: &str) -> Option<Slot<&str>> {
    let (check, rest) = text.split_once(' ')?;
    let sum = sum_in(text).filter(|sum| check.len() == 8 && *sum == crc(rest))?;
    let (head, data) = rest.split_once('\n')?;
    let (sequence, version) = head.split_once(' ')?;
    Some(Slot {
        sum,
        // The journal's numbers are exact so far.
        sequence: sequence.parse().ok().filter(|number| *number < 1 << 53)?,
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

#[cfg(test)]
mod tests {
    use super::{CRC_32_ISO_HDLC, Crc};

    /// The check value that goes with the polynomial (CRC RevEng's catalogue), and the page's own way.
    #[test]
    fn both_ways_to_reckon_a_sum_agree() {
        let without_table = Crc::<u32, crc::NoTable>::new(&CRC_32_ISO_HDLC);
        for text in ["123456789", "", "4 1\n{\"bolt\":\"M8 × 1.25\"}"] {
            assert_eq!(
                super::crc(text),
                without_table.checksum(text.as_bytes()),
                "{text}"
            );
        }
        assert_eq!(super::crc("123456789"), 0xCBF4_3926);
    }
}
