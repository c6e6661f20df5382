//! The gate of a fill step: shut for every reason it should be, and open on time.

use super::{MORNING, done, hours, sheet};
use halfcase::job::clock::{Bound, ClockId, CureClock, Ended};
use halfcase::job::gate::{Ground, NextGate, Wait, next_gate, opened_uncured, opens_at, waits};
use halfcase::job::progress::Progress;
use halfcase::job::record::{Event, Record};
use halfcase::job::sheet::{JobId, Sheet, StepId};
use halfcase::trade::compound::recommend;
use halfcase::trade::cure::{Chemistry, Milestone, NoCure, ShopHistory, ShopReading};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{LengthUnit, ThermodynamicTemperature};
use uom::si::thermodynamic_temperature::degree_celsius;

const JOB: JobId = JobId(1);
const BOND: StepId = StepId(1);
const FILL: StepId = StepId(3);

/// A case joint with its sealant, a turn, the oil.
fn gearbox() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Case joint","work":{"bond":{"joint":"case halves","application":
             {"kind":"case_halves","manual":"anaerobic_sealant","face":"steel_iron","rigid":true,"gap_mm":0.0,
              "fluid":"oil","temperature_c":100,"oil_ways":false}}}},
           {"id":2,"title":"Turn","work":{"turn":{}}},
           {"id":3,"title":"Oil","work":{"fill":{"fluid":"oil","litres":1.1}}}"#,
    )
}

fn clock(sheet: &Sheet, started: Moment) -> CureClock {
    let application = sheet.steps[0].work.application().unwrap();
    CureClock {
        id: ClockId(1),
        name: "Case joint".into(),
        compound: "anaerobic flange sealant".into(),
        spec: recommend(application).cure.expect("a sealant cures"),
        started,
        held_ms: 0,
        bound: Some(Bound { job: JOB, step: BOND }),
        ended: None,
    }
}

fn waits_for(
    sheet: &Sheet,
    record: &Record,
    clocks: &[CureClock],
    shop: &ShopHistory,
    now: Moment,
) -> Vec<Wait> {
    let progress = Progress::of(record);
    let ground = Ground {
        job: JOB,
        sheet,
        progress: &progress,
        clocks,
        shop,
        doubted_ms: 0,
    };
    waits(ground, sheet.step(FILL).unwrap(), now)
}

fn both_done() -> Record {
    let mut record = Record::default();
    done(&mut record, 1);
    done(&mut record, 2);
    record
}

fn shop(celsius: f64) -> ShopHistory {
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(celsius);
    ShopHistory(vec![ShopReading {
        at: MORNING,
        temperature,
        humidity: None,
    }])
}

#[test]
fn is_shut_while_steps_before_it_are_open() {
    let sheet = gearbox();
    let waits = waits_for(&sheet, &Record::default(), &[], &shop(22.0), MORNING);
    assert_eq!(waits, [Wait::Step(StepId(1)), Wait::Step(StepId(2))]);
    assert_eq!(opens_at(&waits), None);
}

#[test]
fn is_shut_until_the_cure_and_open_from_that_instant_on() {
    let sheet = gearbox();
    let clock = clock(&sheet, MORNING);
    let waits = waits_for(
        &sheet,
        &both_done(),
        std::slice::from_ref(&clock),
        &shop(22.0),
        hours(1.0),
    );
    let [Wait::Cure { clock: id, until }] = waits[..] else {
        panic!("{waits:?}")
    };
    assert_eq!(id, clock.id);
    // An anaerobic on steel, close: oil after 6 h at 22 °C (common practice, no source).
    assert_eq!(until, hours(6.0));
    assert_eq!(opens_at(&waits), Some(until));
    let before = waits_for(
        &sheet,
        &both_done(),
        std::slice::from_ref(&clock),
        &shop(22.0),
        Moment(until.0 - 1),
    );
    assert_eq!(before.len(), 1);
    assert_eq!(waits_for(&sheet, &both_done(), &[clock], &shop(22.0), until), []);
}

#[test]
fn a_colder_shop_opens_it_later_and_a_warmer_one_no_sooner() {
    let sheet = gearbox();
    let ends = |celsius| {
        let clock = clock(&sheet, MORNING);
        opens_at(&waits_for(
            &sheet,
            &both_done(),
            &[clock],
            &shop(celsius),
            MORNING,
        ))
        .unwrap()
    };
    assert!(ends(12.0) > ends(22.0));
    assert_eq!(ends(35.0), ends(22.0));
}

#[test]
fn a_cold_shop_is_said_rather_than_timed() {
    let sheet = gearbox();
    let clock = clock(&sheet, MORNING);
    let waits = waits_for(&sheet, &both_done(), &[clock], &shop(2.0), MORNING);
    assert_eq!(
        waits,
        [Wait::Stalled {
            clock: ClockId(1),
            why: NoCure::TooCold
        }]
    );
}

#[test]
fn a_compound_put_on_without_its_clock_keeps_it_shut() {
    let sheet = gearbox();
    assert_eq!(
        waits_for(&sheet, &both_done(), &[], &shop(22.0), hours(99.0)),
        [Wait::ClockNotStarted(BOND)]
    );
}

#[test]
fn a_clock_whose_start_was_undone_counts_for_nothing() {
    let sheet = gearbox();
    let undone = CureClock {
        ended: Some(Ended::Undone),
        ..clock(&sheet, MORNING)
    };
    assert_eq!(
        waits_for(&sheet, &both_done(), &[undone], &shop(22.0), hours(99.0)),
        [Wait::ClockNotStarted(BOND)]
    );
}

#[test]
fn another_jobs_clock_does_not_hold_it() {
    let sheet = gearbox();
    let theirs = CureClock {
        bound: Some(Bound {
            job: JobId(2),
            step: BOND,
        }),
        ..clock(&sheet, MORNING)
    };
    let waits = waits_for(&sheet, &both_done(), &[theirs], &shop(22.0), MORNING);
    assert_eq!(waits, [Wait::ClockNotStarted(BOND)]);
}

fn open_by_hand(record: &mut Record) {
    let reason = "flushing only".into();
    record.add(MORNING, Some(FILL), "", Event::Overridden { reason });
}

#[test]
fn opened_by_hand_it_waits_for_no_cure_but_for_what_is_undone() {
    let sheet = gearbox();
    let mut record = Record::default();
    open_by_hand(&mut record);
    let open: Vec<Wait> = sheet
        .before(FILL)
        .iter()
        .map(|step| Wait::Step(step.id))
        .collect();
    assert_eq!(waits_for(&sheet, &record, &[], &shop(22.0), MORNING), open);
    let mut record = both_done();
    open_by_hand(&mut record);
    assert_eq!(waits_for(&sheet, &record, &[], &shop(22.0), MORNING), []);
}

#[test]
fn opened_by_hand_it_is_dangerous_until_the_cure_is_over() {
    let sheet = gearbox();
    let shop = shop(22.0);
    let clocks = [clock(&sheet, MORNING)];
    let uncured = |record: &Record, now| {
        let ground = Ground {
            job: JOB,
            sheet: &sheet,
            progress: &Progress::of(record),
            clocks: &clocks,
            shop: &shop,
            doubted_ms: 0,
        };
        opened_uncured(ground, sheet.step(FILL).unwrap(), now)
    };
    let mut record = both_done();
    assert!(!uncured(&record, MORNING), "shut, it harms nobody");
    open_by_hand(&mut record);
    assert!(uncured(&record, MORNING));
    assert!(!uncured(&record, hours(30.0 * 24.0)));
    done(&mut record, 3);
    assert!(!uncured(&record, MORNING), "the oil is in");
}

/// What waits for full cure of a silicone waits for its edge, and is told so.
#[test]
fn the_next_gate_of_a_silicone_is_its_edge() {
    let sheet = sheet(
        r#"{"id":1,"title":"Cover","work":{"bond":{"joint":"cover","application":
             {"kind":"case_halves","manual":"anaerobic_sealant","face":"steel_iron","rigid":true,"gap_mm":0.0,
              "fluid":"oil","temperature_c":100,"oil_ways":false}}}},
           {"id":2,"title":"Start","waits_for":[1],"work":{"run":{}}}"#,
    );
    let mut record = Record::default();
    done(&mut record, 1);
    let progress = Progress::of(&record);
    let words = |silicone: bool| {
        let mut clock = clock(&sheet, MORNING);
        if silicone {
            let depth = LengthUnit::Millimetre.length(2.5);
            clock.spec.chemistry = Chemistry::MoistureSilicone { depth };
        }
        let ground = Ground {
            job: JOB,
            sheet: &sheet,
            progress: &progress,
            clocks: &[clock],
            shop: &shop(22.0),
            doubted_ms: 0,
        };
        next_gate(ground, hours(1.0)).map(|next| next.words())
    };
    assert_eq!(words(false), Some("full cure"));
    assert_eq!(words(true), Some("edge cured"));
}

/// The strip's time: the latest of the cures that the next fill waits for, whatever else is in its way.
#[test]
fn the_next_gate_is_told_by_its_cures() {
    let sheet = gearbox();
    let clock = clock(&sheet, MORNING);
    let told = |clocks: &[CureClock], record: &Record, now| {
        let progress = Progress::of(record);
        let ground = Ground {
            job: JOB,
            sheet: &sheet,
            progress: &progress,
            clocks,
            shop: &shop(22.0),
            doubted_ms: 0,
        };
        next_gate(ground, now)
    };
    let mut put_on = Record::default();
    done(&mut put_on, 1);
    // Nothing cures.
    assert_eq!(told(&[], &Record::default(), MORNING), None);
    // A step in between is still open: the cure's time is told as the least.
    let one = std::slice::from_ref(&clock);
    let told_at = |sure| {
        Some(NextGate {
            milestone: Milestone::FitForOil,
            at: hours(6.0),
            from_outside: false,
            sure,
        })
    };
    assert_eq!(told(one, &put_on, hours(1.0)), told_at(false));
    assert_eq!(told(one, &both_done(), hours(1.0)), told_at(true));
    // Over, or the oil in: no time is told.
    assert_eq!(told(one, &both_done(), hours(6.0)), None);
    let mut filled = both_done();
    done(&mut filled, 3);
    assert_eq!(told(one, &filled, hours(1.0)), None);
    // Overridden, it waits for no cure.
    let mut by_hand = both_done();
    let reason = "only to flush it".to_owned();
    by_hand.add(hours(0.5), Some(FILL), "", Event::Overridden { reason });
    assert_eq!(told(one, &by_hand, hours(1.0)), None);
}
