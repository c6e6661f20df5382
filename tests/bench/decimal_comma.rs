//! The decimal comma as a choice of the bench: shown at once, kept, and in no file.

use super::commands::with_bench;
use halfcase::bench::{Bench, Settings, remembered, typed_words};
use halfcase::job::form::fields;
use halfcase::job::sheet::StepId;
use halfcase::job::shelf::{MemoryStore, Store};
use halfcase::trade::quantity::{DecimalMark, fixed, mark, parse_torque};
use std::rc::Rc;

fn choose(bench: Bench, mark: DecimalMark) {
    bench.set("decimal mark", |settings: &mut Settings| settings.decimal = mark);
}

#[test]
fn it_is_chosen_kept_and_taken_back() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        assert_eq!(mark(), DecimalMark::Point, "nothing was chosen");
        choose(bench, DecimalMark::Comma);
        assert_eq!(fixed(7.2, 1), "7,2");
        bench.undo().unwrap();
        assert_eq!(fixed(7.2, 1), "7.2");
        choose(bench, DecimalMark::Comma);
    });
    // Another bench on this phone begins with the point.
    with_bench(&Rc::new(MemoryStore::default()), |_| {
        assert_eq!(fixed(7.2, 1), "7.2")
    });
    with_bench(&store, |_| assert_eq!(fixed(7.2, 1), "7,2"));
}

#[test]
fn no_file_has_it_and_what_lies_on_the_desk_neither() {
    let store = Rc::new(MemoryStore::default());
    let statement = parse_torque("7.2 ft·lb", None).unwrap();
    let files = |bench: Bench| {
        bench.enter(&statement, "entry");
        bench.note(|settings| settings.desk.remember(&statement));
        let step = bench.sheet.get_untracked().steps.first().cloned().unwrap();
        bench
            .edit_step(step.id, "notes", "Hole of 1.2 mm, 8.8 bolts")
            .unwrap();
        // The choice itself is in a backup, and nothing else of it.
        let backup = bench.backup_text().replace(",\"decimal\":\"comma\"", "");
        (
            backup,
            bench.calendar(None),
            typed_words(&statement),
            remembered(&statement),
        )
    };
    let with_point = with_bench(&store, files);
    let with_comma = with_bench(&store, |bench| {
        choose(bench, DecimalMark::Comma);
        let files = files(bench);
        assert_eq!(bench.settings.get_untracked().torque_typed, "7.2");
        assert_eq!(bench.settings.get_untracked().desk.recent, ["7.2 ft·lb"]);
        files
    });
    assert_eq!(with_point.2, "7.2");
    assert_eq!(with_point, with_comma);
    assert!(store.keys().iter().any(|key| {
        store
            .get(key)
            .is_some_and(|text| text.contains("\"decimal\":\"comma\""))
    }));
}

/// A refusal is shown, so it speaks with the comma; what the user wrote is left as it stands.
#[test]
fn a_refusal_has_the_comma_and_notes_keep_their_words() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        let seat = bench.sheet.with_untracked(|sheet| {
            let seats = sheet.steps.iter().filter(|step| step.work.word() == "Seat");
            seats.map(|step| step.id).next().unwrap()
        });
        choose(bench, DecimalMark::Comma);
        let refused = bench
            .edit_step(seat, "seat/hole", "62–61,970")
            .unwrap_err()
            .to_string();
        assert_eq!(refused, "Write the least size first: 61,970–62,000.");
        bench.edit_step(StepId(1), "notes", "M8 8.8, 1.25 deep").unwrap();
        let sheet = bench.sheet.get_untracked();
        let notes = fields(&sheet, sheet.step(StepId(1)).unwrap());
        assert!(notes.iter().any(|field| field.value == "M8 8.8, 1.25 deep"));
    });
}
