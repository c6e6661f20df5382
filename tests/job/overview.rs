//! The job at a glance, and the grid of a bore.

use super::{MORNING, done, hours, set_to, sheet};
use halfcase::job::clock::{Bound, ClockId, CureClock};
use halfcase::job::gate::Ground;
use halfcase::job::id::ReadingId;
use halfcase::job::journal::{Filter, journal, torque_table};
use halfcase::job::kinds::check::bore;
use halfcase::job::kinds::{Check, Work};
use halfcase::job::overview::{StepState, overview};
use halfcase::job::progress::Progress;
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings;
use halfcase::job::record::{Event, Record};
use halfcase::job::sheet::{JobId, Sheet, Step, StepId};
use halfcase::trade::compound::recommend;
use halfcase::trade::cure::{Milestone, ShopHistory};
use uom::si::time::minute;

/// A case joint that cures, a nut, oil.
fn job() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Case joint","minutes":15,"work":{"bond":{"joint":"halves","application":{"kind":"case_halves",
            "manual":"anaerobic_sealant","face":"aluminium","rigid":true,"gap_mm":0.1,"fluid":"oil","temperature_c":120,"oil_ways":true}}}},
           {"id":2,"title":"Turn","work":{"turn":{}}},
           {"id":3,"title":"Nut","minutes":5,"work":{"fasten":{"thread":"M18x1.5","torque":"170 N·m","layout":"single"}}},
           {"id":4,"title":"Oil","minutes":10,"work":{"fill":{"fluid":"SAE 30","litres":1.1}}}"#,
    )
}

fn look(sheet: &Sheet, record: &Record, clocks: &[CureClock]) -> halfcase::job::overview::Overview {
    let progress = Progress::of(record);
    let shop = ShopHistory::default();
    let ground = Ground {
        job: JobId(1),
        sheet,
        progress: &progress,
        clocks,
        shop: &shop,
        doubted_ms: 0,
    };
    overview(ground, MORNING)
}

#[test]
fn before_anything_is_done_the_cure_to_come_is_counted() {
    let sheet = job();
    let seen = look(&sheet, &Record::default(), &[]);
    assert_eq!(seen.next, Some(StepId(1)));
    assert_eq!(
        seen.states,
        [StepState::Next, StepState::Open, StepState::Open, StepState::Open]
    );
    // 15 + 3 (a turn, as usual) + 5 + 10 minutes of hands.
    assert!((seen.hands.get::<minute>() - 33.0).abs() < 1e-9);
    let spec = recommend(sheet.steps[0].work.application().unwrap())
        .cure
        .unwrap();
    let put_on = hours(0.25);
    let oil = spec
        .reached_at(Milestone::FitForOil, put_on, &ShopHistory::default())
        .unwrap();
    assert!(oil.latest > hours(1.0), "the cure is longer than the hands' work");
    assert_eq!(seen.finish.unwrap().0, oil.latest.0 + 10 * 60_000);
}

#[test]
fn a_running_cure_blocks_and_says_until_when() {
    let sheet = job();
    let mut record = Record::default();
    for step in 1..=3 {
        done(&mut record, step);
    }
    let spec = recommend(sheet.steps[0].work.application().unwrap())
        .cure
        .unwrap();
    let clock = CureClock {
        id: ClockId(1),
        name: "Case joint".into(),
        compound: "sealant".into(),
        spec: spec.clone(),
        started: MORNING,
        held_ms: 0,
        bound: Some(Bound {
            job: JobId(1),
            step: StepId(1),
        }),
        ended: None,
    };
    let seen = look(&sheet, &record, std::slice::from_ref(&clock));
    let oil = spec
        .reached_at(Milestone::FitForOil, MORNING, &ShopHistory::default())
        .unwrap();
    assert_eq!((seen.done, seen.open), (3, 1));
    assert_eq!(seen.blocked.len(), 1);
    assert_eq!(seen.finish.unwrap().0, oil.latest.0 + 10 * 60_000);
    // Its clock was never started: the gate stays shut, and no end is in sight.
    let without = look(&sheet, &record, &[]);
    assert_eq!(without.finish, None);
    assert_eq!(
        without.blocked.len(),
        1,
        "the clock that was never started is said"
    );
}

#[test]
fn a_step_left_out_counts_apart() {
    let sheet = job();
    let mut record = Record::default();
    let skipped = Event::Skipped {
        reason: "not on this machine".into(),
    };
    record.add(MORNING, Some(StepId(2)), "", skipped);
    let seen = look(&sheet, &record, &[]);
    assert_eq!((seen.done, seen.left_out, seen.open), (0, 1, 3));
    assert_eq!(seen.states[1].word(), "skipped");
}

#[test]
fn a_long_record_is_drawn_in_part_and_undo_looks_no_further_than_it_must() {
    let sheet = Sheet::new("Long", Vec::new());
    let mut record = Record::default();
    for n in 0..20_000_u64 {
        let event = Event::Noted {
            about: None,
            words: format!("remark {n}"),
        };
        record.add(MORNING, Some(StepId(1)), "AB", event);
    }
    let seen = journal(&record, &sheet, Filter::All, None, 100);
    assert_eq!((seen.lines.len(), seen.earlier), (100, 19_900));
    assert_eq!(seen.lines[0].what, "remark 19999");
    assert_eq!(record.last_touch()[0].id.0, 19_999);
    assert_eq!(record.standing_from_the_end().take(3).count(), 3);
}

#[test]
fn remarks_stand_beside_their_line_and_what_was_taken_back_is_marked() {
    let sheet = job();
    let mut record = Record::default();
    let tally = |value: f64| Event::Tallied {
        pass: 0,
        place: 0,
        set: set_to(value, "Large"),
        goal: None,
    };
    let wrong = record.add(MORNING, Some(StepId(3)), "AB", tally(150.0));
    record.add(MORNING, Some(StepId(3)), "", Event::TakenBack { entry: wrong });
    let right = record.add(hours(1.0), Some(StepId(3)), "AB", tally(170.0));
    let remark = Event::Noted {
        about: Some(right),
        words: "checked with the second wrench".into(),
    };
    record.add(hours(2.0), Some(StepId(3)), "CD", remark);
    let seen = journal(&record, &sheet, Filter::Torque, None, 100);
    assert_eq!(seen.lines.len(), 2);
    assert_eq!(seen.lines[0].what, "bolt 1, pass 1: 170 N·m with Large");
    assert_eq!(seen.lines[0].remarks, ["checked with the second wrench (CD)"]);
    assert!(!seen.lines[0].taken_back && seen.lines[1].taken_back);
    assert_eq!(seen.lines[0].step, "3 Nut");

    let table = torque_table(&record, &sheet);
    assert_eq!(table.len(), 1);
    assert_eq!(table[0].tallied, "1 of 1");
    assert_eq!(table[0].set, "170 N·m Large");
    assert_eq!(table[0].at, Some(hours(1.0)));
}

/// A case begun cold and finished warm: with steel beside it, aluminium of 62 mm reads
/// 62 · 10.5e-6 · 10 = 6.5 µm larger at 30 °C, which is no out-of-round.
#[test]
fn each_reading_of_a_grid_counts_at_its_own_temperature() {
    let check: Check =
        serde_json::from_str(r#"{"bores":[{"name":"main","out_of_round_mm":0.005}]}"#).unwrap();
    let answer = |warm_c: f64| {
        let mut record = Record::default();
        for (at, what) in What::grid(ReadingId(0), false).enumerate() {
            let (value, at_c) = if at % 2 == 0 {
                (62.0, 20.0)
            } else {
                (62.0065, warm_c)
            };
            let event = Event::Measured {
                what,
                value,
                unit: "mm".into(),
                tool: String::new(),
                verdict: Verdict::Noted,
                at_c: Some(at_c),
                decimals: None,
            };
            record.add(MORNING, Some(StepId(1)), "", event);
        }
        bore::answer(&check.bores[0], &Progress::of(&record).step(StepId(1)))
    };
    let round = |warm_c| {
        let judged = answer(warm_c).judged;
        judged
            .into_iter()
            .find(|line| line.name == "out-of-round")
            .unwrap()
    };
    assert_eq!(
        (round(30.0).value.as_str(), round(30.0).outside),
        ("0.000 mm", false)
    );
    assert_eq!(
        (round(20.0).value.as_str(), round(20.0).outside),
        ("0.007 mm", true)
    );
    assert!(answer(900.0).trouble.unwrap().contains("−100 and 300 °C"));
}

/// Readings in mm by depth and direction, all at 20 °C: no correction, so the sums are by hand.
#[test]
fn a_grid_gives_out_of_round_taper_and_clearance() {
    let check: Check = serde_json::from_str(
        r#"{"bores":[{"name":"main","least_mm":62.00,"most_mm":62.03,"out_of_round_mm":0.01,"taper_mm":0.01,
            "journal":{"name":"pin","clearance_least_mm":0.02,"clearance_most_mm":0.06}}]}"#,
    )
    .unwrap();
    let bore = &check.bores[0];
    let step = Step::new(StepId(1), "Bores", Work::Check(check.clone()));
    let asked = readings::asked(&step);
    assert_eq!(asked.len(), 12);
    assert_eq!(asked[0].name(Some(&step)), "main, top, along");
    assert_eq!(asked[11].name(Some(&step)), "pin, bottom, across");
    let mut record = Record::default();
    let read = |record: &mut Record, name: &str, values: [[f64; 2]; 3]| {
        let grid = What::grid(ReadingId(0), name == "pin");
        for (what, value) in grid.zip(values.into_iter().flatten()) {
            let event = Event::Measured {
                what,
                value,
                unit: "mm".into(),
                tool: "bore gauge".into(),
                verdict: Verdict::Noted,
                at_c: Some(20.0),
                decimals: None,
            };
            record.add(MORNING, Some(StepId(1)), "", event);
        }
    };
    let answer = |record: &Record| bore::answer(bore, &Progress::of(record).step(StepId(1)));
    let words = |record: &Record, name: &str| {
        let answer = answer(record);
        let line = answer.judged.into_iter().find(|line| line.name == name).unwrap();
        (line.value, line.verdict)
    };
    assert_eq!(
        answer(&record).trouble.as_deref(),
        Some("6 readings are still to be taken.")
    );
    read(
        &mut record,
        "main",
        [[62.010, 62.004], [62.012, 62.008], [62.016, 62.025]],
    );
    // Out-of-round: the largest difference at one depth, 9 µm at the bottom. Taper: 21 µm across.
    assert_eq!(
        words(&record, "out-of-round"),
        ("0.009 mm".into(), "within".into())
    );
    assert_eq!(words(&record, "taper"), ("0.021 mm".into(), "too large".into()));
    assert_eq!(words(&record, "smallest"), ("62.004 mm".into(), "within".into()));
    assert!(answer(&record).trouble.unwrap().starts_with("pin: "));
    read(
        &mut record,
        "pin",
        [[61.970, 61.972], [61.971, 61.970], [61.969, 61.970]],
    );
    // 62.004 − 61.972 = 0.032; 62.025 − 61.969 = 0.056.
    assert_eq!(
        words(&record, "least clearance"),
        ("0.032 mm".into(), "within".into())
    );
    assert_eq!(
        words(&record, "most clearance"),
        ("0.056 mm".into(), "within".into())
    );
    assert_eq!(answer(&record).trouble, None);
}
