//! Kept twice, checked, and never silently dropped.

use super::copies::copies;
use super::dying::Dying;
use halfcase::job::json;
use halfcase::job::shelf::{CUT_OFF, Loaded, MemoryStore, OTHERWISE, Shelf, StorageError, Store, Write};
use serde::de::DeserializeOwned;
use std::rc::Rc;

fn shelf() -> (Rc<MemoryStore>, Shelf) {
    let store = Rc::new(MemoryStore::default());
    (store.clone(), Shelf::new(store))
}

fn read<T: DeserializeOwned>(_: u32, text: &str) -> Option<T> {
    json::read(text).ok()
}

fn load(shelf: &Shelf) -> Loaded<String> {
    shelf.load("thing", 1, read).unwrap()
}

fn value(loaded: &Loaded<String>) -> Option<&str> {
    loaded.value.as_ref().map(|(_, value)| value.as_str())
}

fn write(name: &str, version: u32, value: &str) -> Write {
    Write {
        name: name.to_owned(),
        version,
        text: Some(json::write(value).unwrap()),
    }
}

fn save(shelf: &Shelf, value: &str) {
    shelf.keep(&[write("thing", 1, value)]).unwrap();
}

/// The keys of things, without the mark's.
fn keys(store: &MemoryStore) -> Vec<String> {
    let keys = store.keys().into_iter();
    keys.filter(|key| !key.starts_with("halfcase/mark/")).collect()
}

#[test]
fn the_newest_of_many_writes_comes_back() {
    let (store, shelf) = shelf();
    for word in ["one", "two", "three", "four", "five"] {
        save(&shelf, word);
        assert_eq!(value(&load(&Shelf::new(store.clone()))), Some(word));
    }
    assert_eq!(keys(&store).len(), 2, "two slots, written in turn");
}

#[test]
fn a_damaged_newest_slot_falls_back_and_is_kept_for_rescue() {
    let (store, shelf) = shelf();
    save(&shelf, "older");
    save(&shelf, "newer");
    let newest = store
        .keys()
        .into_iter()
        .find(|key| store.get(key).unwrap().contains("newer"))
        .unwrap();
    let torn = store.get(&newest).unwrap().replace("newer", "ne");
    store.set(&newest, &torn).unwrap();

    let again = Shelf::new(store.clone());
    let loaded = load(&again);
    assert_eq!(value(&loaded), Some("older"));
    assert_eq!(loaded.rescued.len(), 1);
    assert_eq!(store.get(&loaded.rescued[0]).unwrap(), torn);
    // The next write goes on from there.
    save(&again, "next");
    assert_eq!(value(&load(&Shelf::new(store))), Some("next"));
}

#[test]
fn every_single_changed_byte_is_noticed() {
    let (store, shelf) = shelf();
    save(&shelf, "M6");
    let key = keys(&store).remove(0);
    let good = store.get(&key).unwrap();
    for at in 0..good.len() {
        let mut bytes = good.clone().into_bytes();
        bytes[at] ^= 1;
        let Ok(bad) = String::from_utf8(bytes) else {
            continue;
        };
        let damaged = Rc::new(MemoryStore::default());
        damaged.set(&key, &bad).unwrap();
        let value = load(&Shelf::new(damaged)).value;
        // A check digit's letter may change its case and stay the same number.
        assert!(
            value.is_none() || at < 8 && bad.eq_ignore_ascii_case(&good),
            "byte {at}: {bad}"
        );
    }
}

#[test]
fn both_damaged_keeps_both_for_rescue() {
    let (store, shelf) = shelf();
    save(&shelf, "one");
    save(&shelf, "two");
    for key in keys(&store) {
        store.set(&key, "nonsense").unwrap();
    }
    let again = Shelf::new(store);
    let loaded = load(&again);
    assert_eq!((loaded.value, loaded.rescued.len()), (None, 2));
    assert_eq!(again.rescued().len(), 2);
}

#[test]
fn another_tabs_write_is_not_overwritten() {
    let (store, mine) = shelf();
    save(&mine, "mine");
    let theirs = Shelf::new(store.clone());
    load(&theirs);
    save(&theirs, "theirs");
    assert_eq!(
        mine.keep(&[write("thing", 1, "mine again")]),
        Err(StorageError::OtherTab)
    );
    assert_eq!(value(&load(&Shelf::new(store))), Some("theirs"));
}

#[test]
fn a_full_store_refuses_and_keeps_what_it_has() {
    let store = Rc::new(MemoryStore {
        room: Some(200),
        ..MemoryStore::default()
    });
    let shelf = Shelf::new(store.clone());
    save(&shelf, "small");
    let long = "x".repeat(400);
    assert_eq!(shelf.keep(&[write("thing", 1, &long)]), Err(StorageError::Full));
    assert_eq!(value(&load(&Shelf::new(store))), Some("small"));
}

#[test]
fn the_form_a_thing_is_in_is_told_to_its_reader() {
    let (_, shelf) = shelf();
    shelf.keep(&[write("thing", 1, "9")]).unwrap();
    let told = |shelf: &Shelf| shelf.load("thing", 2, |form, text| Some(format!("{form} {text}")));
    assert_eq!(told(&shelf).unwrap().value, Some((1, "1 \"9\"".to_owned())));
    shelf.keep(&[write("thing", 2, "9")]).unwrap();
    assert_eq!(told(&shelf).unwrap().value, Some((2, "2 \"9\"".to_owned())));
}

#[test]
fn a_newer_form_is_left_alone() {
    let (store, shelf) = shelf();
    shelf.keep(&[write("thing", 7, "from the future")]).unwrap();
    let before = store.texts.borrow().clone();
    let error = shelf.load("thing", 1, read::<String>).unwrap_err();
    assert_eq!(
        error.to_string(),
        "“thing” was kept by a newer release (form 7): update the app before using it."
    );
    assert_eq!(*store.texts.borrow(), before);
    // Nor is it written over by what an older release takes in its place.
    assert!(matches!(
        shelf.keep(&[write("thing", 1, "as at first")]),
        Err(StorageError::TooNew { version: 7, .. })
    ));
    assert_eq!(*store.texts.borrow(), before);
}

#[test]
fn names_are_ours_only_and_without_the_rescued() {
    let (store, shelf) = shelf();
    store.set("someone/else/a", "x").unwrap();
    save(&shelf, "one");
    let segments = ["record/1/0000", "record/1/0001"].map(|name| write(name, 1, "0"));
    shelf.keep(&segments).unwrap();
    store.set("halfcase/rescue/record/1/0002/a/0", "x").unwrap();
    assert_eq!(shelf.names("record/1/"), ["record/1/0000", "record/1/0001"]);
}

/// What phones hold already must stay readable, whatever computes the checksum: 1e91804d is the
/// CRC-32 of all after the first blank by another implementation (Python's zlib).
#[test]
fn a_text_kept_by_an_earlier_release_is_read() {
    let (store, shelf) = shelf();
    store.set("halfcase/thing/a", "1e91804d 1 1\n123456789").unwrap();
    let read = shelf.load("thing", 1, read::<u32>).unwrap().value;
    assert_eq!(read, Some((1, 123_456_789)));
}

#[test]
fn what_is_kept_together_is_there_together_or_not_at_all() {
    // The first things ever kept, and later ones.
    for begun in [false, true] {
        let mut seen = std::collections::BTreeSet::new();
        for writes in 0..12 {
            let store = Dying::new();
            let shelf = Shelf::new(store.clone());
            store.left.set(usize::MAX);
            if begun {
                shelf
                    .keep(&[
                        write("one", 1, "old"),
                        write("two", 1, "old"),
                        write("three", 1, "old"),
                    ])
                    .unwrap();
            }
            store.left.set(writes);
            let gone = Write {
                text: None,
                ..write("three", 1, "")
            };
            drop(shelf.keep(&[write("one", 1, "new"), write("two", 1, "new"), gone]));
            store.left.set(usize::MAX);
            let again = Shelf::new(store.clone());
            let both = ["one", "two"].map(|name| again.load(name, 1, read::<String>).unwrap().value);
            assert_eq!(both[0], both[1], "after {writes} writes");
            seen.insert(both[0].clone());
        }
        assert_eq!(seen.len(), 2, "both outcomes are met: {seen:?}");
    }
}

#[test]
fn what_a_refused_transaction_wrote_is_taken_out_again() {
    let store = Rc::new(MemoryStore {
        room: Some(400),
        ..MemoryStore::default()
    });
    let shelf = Shelf::new(store.clone());
    shelf
        .keep(&[write("one", 1, "old"), write("two", 1, "old")])
        .unwrap();
    let before = store.texts.borrow().clone();
    let long = "x".repeat(500);
    let refused = shelf.keep(&[write("one", 1, "new"), write("two", 1, &long)]);
    assert_eq!(refused, Err(StorageError::Full));
    assert_eq!(*store.texts.borrow(), before);
    shelf.keep(&[write("one", 1, "new")]).unwrap();
    assert_eq!(
        Shelf::new(store).load("one", 1, read::<String>).unwrap().value,
        Some((1, "new".to_owned()))
    );
}

/// Two things, each written twice; what a start finds odd after that damage.
fn odd_after(damage: impl Fn(&MemoryStore)) -> Option<&'static str> {
    let (store, shelf) = shelf();
    for word in ["older", "newer"] {
        shelf
            .keep(&[write("one", 1, word), write("two", 1, word)])
            .unwrap();
    }
    assert_eq!(Shelf::new(store.clone()).odd(), None);
    damage(&store);
    Shelf::new(store).odd()
}

/// A copy that is gone, or an old one brought back, leaves a sound store that tells nothing by itself.
#[test]
fn a_store_that_is_not_what_was_last_kept_is_told() {
    let other = |key: &str| {
        if key == "halfcase/one/a" {
            "halfcase/one/b"
        } else {
            "halfcase/one/a"
        }
    };
    let newest = |store: &MemoryStore| {
        let keys = ["halfcase/one/a", "halfcase/one/b"];
        keys.into_iter()
            .find(|key| store.get(key).unwrap().contains("newer"))
            .unwrap()
    };
    let gone = |store: &MemoryStore| store.remove(newest(store));
    assert_eq!(odd_after(gone), Some(OTHERWISE));
    let back = |store: &MemoryStore| {
        let newest = newest(store);
        let old = store.get(other(newest)).unwrap();
        store.set(newest, &old).unwrap();
    };
    assert_eq!(odd_after(back), Some(OTHERWISE));
    let both = |store: &MemoryStore| {
        ["halfcase/one/a", "halfcase/one/b"]
            .iter()
            .for_each(|key| store.remove(key))
    };
    assert_eq!(odd_after(both), Some(OTHERWISE));
    // The older copy is no matter.
    assert_eq!(odd_after(|store| store.remove(other(newest(store)))), None);
    // A mark without a print, as releases before this one wrote it, tells nothing.
    let of_before = |store: &MemoryStore| {
        gone(store);
        for slot in ["a", "b"] {
            store
                .set(&format!("halfcase/mark/{slot}"), "33bed555 9 1\n0")
                .unwrap();
        }
    };
    assert_eq!(odd_after(of_before), None);
}

/// A sound copy that makes no sense is set aside and said once: what is kept after that goes by what stands then.
#[test]
fn a_copy_that_made_no_sense_is_not_missed_at_the_next_start() {
    for copies in [1, 2] {
        let (store, shelf) = shelf();
        for word in ["older", "newer"].into_iter().take(copies) {
            shelf
                .keep(&[write("thing", 1, word), write("two", 1, word)])
                .unwrap();
        }
        // It reads as a text and no longer as what it should be.
        let again = Shelf::new(store.clone());
        let known = ["older"].into_iter().take(copies - 1);
        let loaded = again.load("thing", 1, |_, text| {
            known.clone().find(|word| text.contains(word)).map(str::to_owned)
        });
        let loaded = loaded.unwrap();
        assert_eq!((loaded.rescued.len(), loaded.value.is_some()), (1, copies == 2));
        again.keep(&[write("two", 1, "next")]).unwrap();
        assert_eq!(Shelf::new(store.clone()).odd(), None, "{copies}");
        // Which is no reason not to miss it when it goes too.
        store.remove("halfcase/two/a");
        store.remove("halfcase/two/b");
        assert_eq!(Shelf::new(store).odd(), Some(OTHERWISE));
    }
}

/// What was taken away for room is not missed at the next start, whether anything was kept after it or not.
#[test]
fn what_made_room_is_not_missed_at_the_next_start() {
    let (store, shelf) = shelf();
    shelf
        .keep(&[write("one", 1, "old"), write("two", 1, "old")])
        .unwrap();
    shelf.make_room(&["one".to_owned()]);
    assert_eq!(keys(&store), ["halfcase/two/a"]);
    assert_eq!(Shelf::new(store.clone()).odd(), None);
    shelf.keep(&[write("two", 1, "new")]).unwrap();
    assert_eq!(Shelf::new(store).odd(), None);
}

/// The newest mark gone looks like a change that was cut off: it goes, and that is said.
#[test]
fn a_change_whose_mark_is_gone_is_taken_out_and_told() {
    let newest = |store: &MemoryStore| {
        let [newest, _] = copies("mark", |key| store.get(key));
        store.remove(&newest);
    };
    assert_eq!(odd_after(newest), Some(CUT_OFF));
}

/// A store that gives nothing back: asked once more, and then not written over.
#[test]
fn what_cannot_be_read_is_not_written_over() {
    struct Mute {
        store: MemoryStore,
        left: std::cell::Cell<usize>,
    }
    impl Store for Mute {
        fn get(&self, key: &str) -> Option<String> {
            let left = self.left.get();
            self.left.set(left.saturating_sub(1));
            self.store.get(key).filter(|_| left == 0)
        }
        fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
            self.store.set(key, text)
        }
        fn remove(&self, key: &str) {
            self.store.remove(key);
        }
        fn keys(&self) -> Vec<String> {
            self.store.keys()
        }
    }
    let store = Rc::new(Mute {
        store: MemoryStore::default(),
        left: std::cell::Cell::new(0),
    });
    let shelf = Shelf::new(store.clone());
    for word in ["older", "newer"] {
        save(&shelf, word);
    }
    let before = store.store.texts.borrow().clone();
    // One reading in vain is made good.
    store.left.set(1);
    assert!(!Shelf::new(store.clone()).is_blind());
    // While it lasts nothing is kept; after it everything is.
    store.left.set(usize::MAX);
    assert_eq!(shelf.keep(&[write("thing", 1, "x")]), Err(StorageError::Unread));
    assert_eq!(*store.store.texts.borrow(), before);
    // A refusal is over with its cause: what is loaded after it is what is kept.
    store.left.set(0);
    assert_eq!(value(&load(&shelf)), Some("newer"));
    assert!(!shelf.is_blind());
    store.left.set(usize::MAX);
    let blind = Shelf::new(store.clone());
    assert!(blind.is_blind());
    store.left.set(0);
    save(&shelf, "newest");
    // But not from what was read meanwhile: that is not what is kept.
    assert_eq!(blind.keep(&[write("thing", 1, "x")]), Err(StorageError::Unread));
    assert_eq!(blind.keep_alone("0"), Err(StorageError::Unread));
    assert_eq!(value(&load(&Shelf::new(store))), Some("newest"));
}
