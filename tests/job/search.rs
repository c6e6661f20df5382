//! Search across jobs: by words, by days, in every job that is not deleted.

use super::{MORNING, hours, set_to};
use halfcase::job::clock::ClockId;
use halfcase::job::date::day_of;
use halfcase::job::reading::{Verdict, What};
use halfcase::job::record::{Compound, Event, Record};
use halfcase::job::search::{Hit, Opens, Query, Sort, found, gather};
use halfcase::job::settings::Settings;
use halfcase::job::sheet::{JobId, Sheet, StepId};
use halfcase::job::state::{Job, JobHead, Jobs, State};
use halfcase::trade::compound::CompoundClass;
use halfcase::trade::moment::Moment;
use std::collections::BTreeMap;

const DAY_MS: i64 = 86_400_000;
/// 2026-06-01.
const TODAY: i64 = MORNING.0 / DAY_MS;

fn utc_day(at: Moment) -> i64 {
    at.0.div_euclid(DAY_MS)
}

fn on(year: i32, month: u32, day: u32) -> Moment {
    Moment(day_of(year, month, day) * DAY_MS + 10 * 3_600_000)
}

const GEARBOX: &str = r#"{"version":1,"title":"Gearbox, spring","machine":"Brackmoor T5","steps":[
  {"id":1,"title":"Case bolts","notes":"From the middle outwards.","work":{"fasten":{
     "thread":"M8","length_mm":30,"strength":"8.8","torque":"22 N·m","layout":{"circle":{"count":6}}}},
   "parts":[{"name":"copper washer","count":6}]},
  {"id":2,"title":"Output flange nut","work":{"fasten":{
     "thread":"M16x1.5","torque":"90 N·m","layout":"single"}}},
  {"id":3,"title":"Main bearing bore","work":{"check":{"readings":[
     {"name":"bore across","unit":"mm","least":61.961,"most":61.991}]}}}]}"#;

const ENGINE: &str = r#"{"version":1,"title":"Engine","machine":"Brackmoor T5, shop's own","steps":[
  {"id":1,"title":"Cover bolts","work":{"fasten":{"thread":"M10","torque":"40 N·m","layout":{"line":{"count":4}}}}}]}"#;

fn bench() -> State {
    let mut record = Record::default();
    let october = on(2025, 10, 14);
    let bolt = |place| Event::Tallied {
        pass: 0,
        place,
        set: set_to(22.0, "Middle"),
        goal: None,
    };
    for place in 0..6 {
        record.add(october, Some(StepId(1)), "RK", bolt(place));
    }
    let applied = Event::Applied {
        compound: Compound::Class(CompoundClass::ThreadlockMedium),
        clock: ClockId(1),
    };
    record.add(october, Some(StepId(2)), "RK", applied);
    let reading = Event::Measured {
        what: What::Limit(halfcase::job::id::ReadingId(1)),
        value: 61.975,
        unit: "mm".to_owned(),
        tool: "bore gauge".to_owned(),
        verdict: Verdict::Within,
        at_c: None,
        decimals: None,
    };
    record.add(hours(-24.0), Some(StepId(3)), "", reading);
    let remark = Event::Noted {
        about: None,
        words: "Öl weeps at the seal, fourth shop day".to_owned(),
    };
    let wrong = record.add(hours(-2.0), None, "", remark.clone());
    record.add(hours(-1.5), None, "", Event::TakenBack { entry: wrong });
    record.add(hours(-1.0), None, "", remark);
    let job = |text: &str, record| Job::new(Sheet::from_json(text).unwrap(), record);
    let files = BTreeMap::from([
        (JobId(1), job(GEARBOX, record)),
        (JobId(2), job(ENGINE, Record::default())),
        (JobId(3), job(GEARBOX, Record::default())),
    ]);
    let mut heads = vec![
        JobHead::new(JobId(1), "Gearbox, spring"),
        JobHead::new(JobId(2), "Engine"),
        JobHead::new(JobId(3), "thrown away"),
    ];
    heads[0].archived = true;
    heads[2].deleted = true;
    let jobs = Jobs {
        at_hand: JobId(2),
        heads,
    };
    State::new(jobs, files, Vec::new(), Settings::default())
}

fn look_for(words: &str) -> Vec<Hit> {
    let all = gather(&bench(), utc_day);
    let query = Query::read(words, TODAY);
    found(&all, &query).cloned().collect()
}

fn words(found: &[Hit]) -> Vec<(Sort, &str)> {
    found.iter().map(|hit| (hit.sort, hit.words.as_str())).collect()
}

#[test]
fn a_fastener_is_found_once_with_what_was_set_its_job_machine_and_date() {
    let hits = look_for("M8 case");
    let fasteners: Vec<&Hit> = hits.iter().filter(|hit| hit.sort == Sort::Fastener).collect();
    let [hit] = fasteners.as_slice() else {
        panic!("{hits:?}")
    };
    assert_eq!(hit.words, "6 × M8 × 30 mm, 8.8: 22 N·m; set 22 N·m with Middle");
    assert_eq!((hit.job, hit.title.as_str()), (Some(JobId(1)), "Gearbox, spring"));
    assert_eq!(
        (hit.machine.as_str(), hit.step.as_str()),
        ("Brackmoor T5", "1 Case bolts")
    );
    assert_eq!(
        (hit.at, hit.opens),
        (Some(on(2025, 10, 14)), Opens::Step(StepId(1)))
    );
}

#[test]
fn words_are_found_by_their_beginnings_in_any_case_and_order() {
    assert_eq!(look_for("FLANGE nut").len(), look_for("nut fla").len());
    assert!(
        look_for("flange nut")
            .iter()
            .any(|hit| hit.sort == Sort::Fastener)
    );
    assert!(
        look_for("flange nut")
            .iter()
            .any(|hit| hit.sort == Sort::Compound)
    );
    assert!(look_for("lange").is_empty());
    assert_eq!(words(&look_for("öl weeps")), words(&look_for("ÖL WEEPS")));
    assert!(look_for("flange weeps").is_empty());
}

#[test]
fn a_number_is_that_number() {
    // M1 is neither M10 nor M16, and 2 is no 22.
    assert!(look_for("M1").is_empty());
    assert_eq!(look_for("m10").len(), 1);
    for same in ["M8x30", "m8 × 30", "M8 30", "8.8 22 nm", "8,8 22"] {
        let hits = look_for(same);
        assert!(
            hits.iter().any(|hit| hit.step == "1 Case bolts"),
            "{same}: {hits:?}"
        );
    }
}

#[test]
fn readings_compounds_parts_and_remarks_lead_to_their_places() {
    let of = |sought: &str, sort: Sort| {
        let hits = look_for(sought);
        let hit = hits.into_iter().find(|hit| hit.sort == sort);
        hit.unwrap_or_else(|| panic!("{sought}"))
    };
    let reading = of("bore gauge", Sort::Reading);
    assert!(
        reading.words.contains("61.975 mm, bore gauge: within limits"),
        "{reading:?}"
    );
    assert_eq!(reading.opens, Opens::Step(StepId(3)));
    assert_eq!(of("threadlocker", Sort::Compound).step, "2 Output flange nut");
    assert_eq!(of("copper washer", Sort::Part).opens, Opens::Parts);
    let remark = of("seal", Sort::Remark);
    assert_eq!((remark.opens, remark.at), (Opens::Record, Some(hours(-1.0))));
    // What was taken back is not found.
    assert_eq!(look_for("weeps").len(), 1);
}

#[test]
fn deleted_jobs_are_out_of_sight_and_jobs_put_away_are_not() {
    let jobs: Vec<Option<JobId>> = look_for("brackmoor").iter().map(|hit| hit.job).collect();
    assert!(
        jobs.contains(&Some(JobId(1))) && jobs.contains(&Some(JobId(2))),
        "{jobs:?}"
    );
    assert!(!jobs.contains(&Some(JobId(3))), "{jobs:?}");
}

#[test]
fn days_are_found_by_name() {
    for october in [
        "last October",
        "october 2025",
        "2025-10",
        "14 oct",
        "last year RK",
    ] {
        let hits = look_for(october);
        assert_eq!(hits.len(), 3, "{october}: {hits:?}");
        assert!(
            hits.iter().all(|hit| hit.at == Some(on(2025, 10, 14))),
            "{october}"
        );
    }
    assert!(
        look_for("yesterday")
            .iter()
            .all(|hit| hit.sort == Sort::Reading || hit.sort == Sort::Step)
    );
    assert!(!look_for("yesterday bore").is_empty());
    assert_eq!(words(&look_for("today")), words(&look_for("weeps")));
    assert!(look_for("last November").is_empty());
    // 2026-06-01 was a Monday.
    assert!(look_for("this week weeps").len() == 1 && look_for("last week weeps").is_empty());
    assert!(look_for("last month bore gauge").len() == 1);
}

#[test]
fn the_last_october_is_one_that_is_over() {
    let days = |today| {
        let all =
            |year| Query::read("last October", today) == Query::read("last october", day_of(year, 6, 1));
        (2023..2027).filter(|year| all(*year)).collect::<Vec<i32>>()
    };
    // In October itself the one of the year before is meant.
    assert_eq!(days(day_of(2025, 10, 31)), [2025]);
    assert_eq!(days(day_of(2025, 11, 1)), [2026]);
    assert_eq!(days(day_of(2026, 1, 15)), [2026]);
}

#[test]
fn nothing_typed_finds_nothing_and_the_newest_comes_first() {
    assert!(look_for("").is_empty() && look_for("  – ").is_empty());
    let hits = look_for("brackmoor");
    let times: Vec<Option<Moment>> = hits.iter().map(|hit| hit.at).collect();
    assert!(times.is_sorted_by(|a, b| a >= b), "{times:?}");
    assert_eq!(hits.last().map(|hit| hit.at), Some(None));
}
