//! Lines that are missing, and a store that is full in the middle of the work.

use super::commands::{done_step, read, with_bench};
use super::copies::copies;
use halfcase::bench::Bench;
use halfcase::job::journal::{Filter, journal};
use halfcase::job::keep::Shelves;
use halfcase::job::sheet::JobId;
use halfcase::job::shelf::{MemoryStore, Shelf, Store, Write};
use reactive_graph::prelude::*;
use std::rc::Rc;

fn said(bench: Bench) -> Vec<String> {
    bench
        .said
        .with_untracked(|all| all.iter().map(|said| said.words.clone()).collect())
}

/// Takes lines out of the stored record of the first job.
fn lose(store: &Rc<MemoryStore>, lost: &[usize]) {
    let shelf = Shelf::new(store.clone());
    let name = "record/1/0000";
    let (version, text) = shelf.text(name).unwrap();
    let mut lines: Vec<serde_json::Value> = serde_json::from_str(&text).unwrap();
    let mut at = 0;
    lines.retain(|_| {
        at += 1;
        !lost.contains(&at)
    });
    let text = serde_json::to_string(&lines).unwrap();
    shelf
        .keep(&[Write {
            name: name.to_owned(),
            version,
            text: Some(text),
        }])
        .unwrap();
}

#[test]
fn lines_missing_from_a_record_are_said_and_stand_in_every_list() {
    const WORDS: &str =
        "Lines 2 to 3 are missing from the record: what was done there doesn’t count, look at it again.";
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        (0..6).for_each(|n| read(bench, 61.97 + f64::from(n) / 1000.0));
        assert_eq!(bench.record.with_untracked(|record| record.gaps().len()), 0);
    });
    lose(&store, &[2, 3, 5]);
    with_bench(&store, |bench| {
        let one = WORDS.replace("Lines 2 to 3 are", "Line 5 is");
        assert_eq!(said(bench), [WORDS, &one]);
        for filter in [Filter::All, Filter::Torque] {
            let sheet = bench.sheet.get_untracked();
            let lines = bench
                .record
                .with_untracked(|record| journal(record, &sheet, filter, None, 99).lines);
            let found = lines.iter().filter(|line| line.what.contains("missing"));
            let found: Vec<(u64, &str)> = found.map(|line| (line.id.0, line.what.as_str())).collect();
            assert_eq!(found, [(4, one.as_str()), (2, WORDS)], "{filter:?}");
        }
        // A remark can be made on them, and new lines follow the last.
        let gap = bench.record.with_untracked(|record| record.gaps()[0].1);
        bench.add_remark(Some(gap), "measured again").unwrap();
        assert_eq!(bench.record.with_untracked(|record| record.gaps().len()), 2);
    });
}

#[test]
fn lines_missing_from_another_job_are_said_when_it_is_taken_to_hand() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        (0..4).for_each(|n| read(bench, 61.97 + f64::from(n) / 1000.0));
        bench.duplicate_job(JobId(1)).unwrap();
    });
    lose(&store, &[2]);
    with_bench(&store, |bench| {
        assert_eq!(said(bench), Vec::<String>::new());
        bench.take_job(JobId(1)).unwrap();
        assert!(
            said(bench)[0].starts_with("Line 2 is missing"),
            "{:?}",
            said(bench)
        );
    });
}

/// Full in the middle of the work: it leads to where room is made, and says when there is some again.
#[test]
fn a_full_store_leads_to_room_and_says_when_there_is_some() {
    let store = Rc::new(MemoryStore {
        room: Some(60_000),
        ..MemoryStore::default()
    });
    with_bench(&store, |bench| {
        bench.duplicate_job(JobId(1)).unwrap();
        let mut n = 0;
        while !bench.not_kept.get_untracked() {
            read(bench, 61.97 + f64::from(n) * 1e-5);
            n += 1;
            assert!(n < 2_000);
        }
        let leads = |bench: Bench| bench.said.with_untracked(|all| all.iter().any(|said| said.room));
        assert!(leads(bench));
        let lines = bench.record.with_untracked(|record| record.entries().len());
        bench.take_job(JobId(1)).unwrap();
        bench.delete_job(JobId(2)).unwrap();
        assert!(bench.not_kept.get_untracked());
        bench.free_deleted();
        assert!(!bench.not_kept.get_untracked());
        assert!(!leads(bench));
        assert!(said(bench).contains(&"There is room again: everything is kept.".to_owned()));
        assert!(lines > 10);
        done_step(bench, 1);
    });
    let left = Shelves::new(Shelf::new(store), None).read();
    assert_eq!(left.state.job().record.entries().len(), 1);
}

/// What is damaged is set aside at the start, so that it would not be found when the job is taken to hand.
#[test]
fn a_damaged_copy_of_another_job_is_said_at_the_start() {
    for full in [false, true] {
        let store = Rc::new(MemoryStore::default());
        with_bench(&store, |bench| {
            (0..3).for_each(|n| read(bench, 61.97 + f64::from(n) / 1000.0));
            bench.duplicate_job(JobId(1)).unwrap();
        });
        // The newest copy of the first job's record.
        let keys = ["halfcase/record/1/0000/a", "halfcase/record/1/0000/b"];
        let newest = keys
            .into_iter()
            .max_by_key(|key| store.get(key).map_or(0, |text| text.len()))
            .unwrap();
        store.set(newest, "torn").unwrap();
        let used = store
            .texts
            .borrow()
            .iter()
            .map(|(key, text)| key.len() + text.len())
            .sum();
        let store = Rc::new(MemoryStore {
            texts: std::cell::RefCell::new(store.texts.borrow().clone()),
            room: full.then_some(used),
        });
        with_bench(&store, |bench| {
            let title = bench.jobs.with_untracked(|jobs| jobs[0].title.clone());
            let aside = match full {
                true => "there is no room to set it aside",
                false => "is set aside: Jobs exports it as a file",
            };
            assert_eq!(
                said(bench),
                [format!(
                    "“{title}”: A stored copy of the record was damaged and {aside}. The last good copy is in use; \
                     check the last thing you did."
                )]
            );
        });
    }
}

/// What a damaged copy of a job sheet comes to, in words.
fn sheet_words(then: &str) -> String {
    format!("A stored copy of the job sheet was damaged and is set aside: Jobs exports it as a file. {then}")
}

const FELL_BACK: &str = "The last good copy is in use; check the last thing you did.";

/// Two jobs, each with two copies of its sheet, the first with a plan as it was before its last change.
fn two_jobs() -> Rc<MemoryStore> {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.duplicate_job(JobId(1)).unwrap();
        for title in ["older", "newer"] {
            bench.rename_job(JobId(1), &format!("Gearbox, {title}")).unwrap();
            bench.rename_job(JobId(2), &format!("Engine, {title}")).unwrap();
        }
    });
    store
}

/// Where something else is damaged too, the search for jobs that the list doesn't know reads no job's sheet before
/// its turn: which job fell back to an older plan is said all the same.
#[test]
fn a_damaged_sheet_is_said_with_its_job_whatever_else_is_damaged() {
    for full in [false, true] {
        let store = two_jobs();
        store.set("halfcase/clocks/a", "torn").unwrap();
        store
            .set(&copies("job/1", |key| store.get(key))[0], "torn")
            .unwrap();
        store
            .set(&copies("job/2", |key| store.get(key))[0], "torn")
            .unwrap();
        let texts = store.texts.borrow().clone();
        let used = texts.iter().map(|(key, text)| key.len() + text.len()).sum();
        let store = Rc::new(MemoryStore {
            texts: std::cell::RefCell::new(texts),
            room: full.then_some(used),
        });
        with_bench(&store, |bench| {
            let said = said(bench);
            assert_eq!(said.len(), 3, "{said:?}");
            assert!(said[0].contains("copy of the clocks was damaged"), "{said:?}");
            let words = sheet_words(FELL_BACK);
            let words = match full {
                true => words.replace(
                    "is set aside: Jobs exports it as a file",
                    "there is no room to set it aside",
                ),
                false => words,
            };
            // The copy is the job at hand.
            assert_eq!(said[1..], [format!("“Gearbox, newer”: {words}"), words]);
        });
    }
}

/// The list of jobs is gone, and of the sheets it is made from again one fell back, one can't be read at all.
#[test]
fn a_damaged_sheet_is_said_where_the_list_of_jobs_is_gone_too() {
    let store = two_jobs();
    for key in copies("jobs", |key| store.get(key)) {
        store.set(&key, "torn").unwrap();
    }
    store
        .set(&copies("job/1", |key| store.get(key))[0], "torn")
        .unwrap();
    for key in copies("job/2", |key| store.get(key)) {
        store.set(&key, "torn").unwrap();
    }
    with_bench(&store, |bench| {
        let titles = bench
            .jobs
            .with_untracked(|jobs| jobs.iter().map(|head| head.title.clone()).collect::<Vec<_>>());
        assert_eq!(titles, ["Gearbox, older"]);
        let said = said(bench);
        assert!(said.contains(&sheet_words(FELL_BACK)), "{said:?}");
        assert!(said.contains(&sheet_words("No good copy was left.")), "{said:?}");
        assert_eq!(said.len(), 3, "{said:?}");
    });
}

/// A job that only an older list was left without is found, and what its sheet went through is said with it.
#[test]
fn a_job_that_is_found_again_says_what_its_sheet_went_through() {
    let store = two_jobs();
    let shelf = Shelf::new(store.clone());
    let (version, text) = shelf.text("jobs").unwrap();
    let mut jobs: serde_json::Value = serde_json::from_str(&text).unwrap();
    let heads = jobs.get_mut("heads").and_then(|heads| heads.as_array_mut());
    heads.unwrap().retain(|head| head["id"] == 2);
    let list = Write {
        name: "jobs".to_owned(),
        version,
        text: Some(jobs.to_string()),
    };
    shelf.keep(&[list]).unwrap();
    store
        .set(&copies("job/1", |key| store.get(key))[0], "torn")
        .unwrap();
    with_bench(&store, |bench| {
        assert_eq!(
            said(bench),
            [format!("“Gearbox, older”: {}", sheet_words(FELL_BACK))]
        );
        assert_eq!(bench.jobs.with_untracked(Vec::len), 2);
    });
}

/// An older list of jobs doesn't know the latest one: it is found by its sheet, and its number not given again.
#[test]
fn a_job_that_an_older_list_does_not_know_is_found() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        bench.rename_job(JobId(1), "Gearbox").unwrap();
        bench.duplicate_job(JobId(1)).unwrap();
        read(bench, 61.97);
    });
    let newest = ["halfcase/jobs/a", "halfcase/jobs/b"]
        .into_iter()
        .find(|key| store.get(key).unwrap().contains("afresh"))
        .unwrap();
    store.set(newest, "torn").unwrap();
    with_bench(&store, |bench| assert_eq!(said(bench).len(), 1));
    // What was damaged is set aside by now: the list itself knows again.
    with_bench(&store, |bench| {
        assert_eq!(said(bench), Vec::<String>::new());
        let ids = bench
            .jobs
            .with_untracked(|jobs| jobs.iter().map(|head| head.id).collect::<Vec<_>>());
        assert_eq!(ids, [JobId(1), JobId(2)]);
        bench.take_job(JobId(2)).unwrap();
        assert_eq!(bench.record.with_untracked(|record| record.entries().len()), 1);
        assert_eq!(bench.duplicate_job(JobId(2)).unwrap(), JobId(3));
    });
}
