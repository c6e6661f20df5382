//! Kept twice, checked, and never silently dropped.

use halfcase::device::storage::{Loaded, MemoryStore, Shelf, StorageError, Store};
use serde_json::{Value, json};
use std::rc::Rc;

fn shelf() -> (Rc<MemoryStore>, Shelf) {
    let store = Rc::new(MemoryStore::default());
    (store.clone(), Shelf::new(store))
}

fn load(shelf: &Shelf) -> Loaded<String> {
    shelf.load("thing", &[]).unwrap()
}

fn save(shelf: &Shelf, value: &str) {
    shelf.save("thing", 1, &value).unwrap();
}

#[test]
fn the_newest_of_many_writes_comes_back() {
    let (store, shelf) = shelf();
    for value in ["one", "two", "three", "four", "five"] {
        save(&shelf, value);
        assert_eq!(load(&Shelf::new(store.clone())).value.as_deref(), Some(value));
    }
    assert_eq!(store.keys().len(), 2, "two slots, written in turn");
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
    assert_eq!(loaded.value.as_deref(), Some("older"));
    assert_eq!(loaded.rescued.len(), 1);
    assert_eq!(store.get(&loaded.rescued[0]).unwrap(), torn);
    // The next write goes on from there.
    save(&again, "next");
    assert_eq!(load(&Shelf::new(store)).value.as_deref(), Some("next"));
}

#[test]
fn every_single_changed_byte_is_noticed() {
    let (store, shelf) = shelf();
    save(&shelf, "M6");
    let key = store.keys().remove(0);
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
    for key in store.keys() {
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
    assert_eq!(mine.save("thing", 1, &"mine again"), Err(StorageError::OtherTab));
    assert_eq!(load(&Shelf::new(store)).value.as_deref(), Some("theirs"));
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
    assert_eq!(shelf.save("thing", 1, &long), Err(StorageError::Full));
    assert_eq!(load(&Shelf::new(store)).value.as_deref(), Some("small"));
}

#[test]
fn an_older_form_is_brought_up_step_by_step() {
    let (_, shelf) = shelf();
    shelf.save("thing", 1, &json!({"torque": 9})).unwrap();
    let to_2 = |mut old: Value| {
        old["unit"] = json!("N·m");
        old
    };
    let to_3 = |old: Value| {
        json!(format!(
            "{} {}",
            old["torque"],
            old["unit"].as_str().unwrap_or("")
        ))
    };
    assert_eq!(
        shelf
            .load::<String>("thing", &[to_2, to_3])
            .unwrap()
            .value
            .as_deref(),
        Some("9 N·m")
    );
    // Already at form 2, only the second step is taken.
    shelf
        .save("thing", 2, &json!({"torque": 9, "unit": "ft·lb"}))
        .unwrap();
    assert_eq!(
        shelf
            .load::<String>("thing", &[to_2, to_3])
            .unwrap()
            .value
            .as_deref(),
        Some("9 ft·lb")
    );
}

#[test]
fn a_newer_form_is_left_alone() {
    let (store, shelf) = shelf();
    shelf.save("thing", 7, &"from the future").unwrap();
    let before = store.texts.borrow().clone();
    let error = shelf.load::<String>("thing", &[]).unwrap_err();
    assert_eq!(
        error.to_string(),
        "“thing” was kept by a newer release (form 7): update the app before using it."
    );
    assert_eq!(*store.texts.borrow(), before);
    // Nor is it written over by what an older release takes in its place.
    assert!(matches!(
        shelf.save("thing", 1, &"as at first"),
        Err(StorageError::TooNew { version: 7, .. })
    ));
    assert_eq!(*store.texts.borrow(), before);
}

#[test]
fn names_are_ours_only_and_without_the_rescued() {
    let (store, shelf) = shelf();
    store.set("someone/else/a", "x").unwrap();
    save(&shelf, "one");
    shelf.save("record/1/0000", 1, &0).unwrap();
    shelf.save("record/1/0001", 1, &0).unwrap();
    store.set("halfcase/rescue/record/1/0002/a/0", "x").unwrap();
    assert_eq!(shelf.names("record/1/"), ["record/1/0000", "record/1/0001"]);
}

/// What phones hold already must stay readable, whatever computes the checksum: 1e91804d is the
/// CRC-32 of all after the first blank by another implementation (Python's zlib).
#[test]
fn a_text_kept_by_an_earlier_release_is_read() {
    let (store, shelf) = shelf();
    store.set("halfcase/thing/a", "1e91804d 1 1\n123456789").unwrap();
    assert_eq!(shelf.load::<u32>("thing", &[]).unwrap().value, Some(123_456_789));
}
