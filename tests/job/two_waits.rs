//! Two kinds of waiting: until a bead has cured, and before it skins; and plans that ask for both.

use super::fill_run::Hand;
use super::{MORNING, sheet};
use halfcase::job::bottle::{Bottle, BottleId};
use halfcase::job::conflicts::Conflict;
use halfcase::job::form;
use halfcase::job::gate::Wait;
use halfcase::job::journal::words;
use halfcase::job::progress::Status;
use halfcase::job::reading::What;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::skins::deadlines;
use halfcase::job::state::{Ask, Intent, Now, Refused};
use halfcase::trade::compound::recommend;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::Time;
use uom::si::time::minute;

const BEAD: &str = r#"{"id":1,"title":"Case joint","work":{"bond":{"joint":"case halves","application":
    {"kind":"case_halves","manual":"anaerobic_sealant","face":"steel_iron","rigid":true,"gap_mm":0.0,
     "fluid":"oil","temperature_c":100,"oil_ways":false}}}}"#;

fn bolts(id: u32, more: &str) -> String {
    format!(
        r#"{{"id":{id},"title":"Case bolts","minutes":4,{more}"work":{{"fasten":{{"thread":"M8",
            "torque":"20 N·m","layout":{{"line":{{"count":2}}}}}}}}}}"#
    )
}

/// The bead, and bolts that are done before it skins.
fn joint() -> Hand {
    Hand::with(sheet(&format!("{BEAD},{}", bolts(2, r#""before_skin":[1],"#))))
}

fn put_on(hand: &mut Hand) {
    hand.state.settings.wrenches.clear();
    hand.read_stops(1);
    let (step, activator) = (StepId(1), false);
    hand.send(Intent::PutOn { step, activator }).unwrap();
}

fn minutes(after: f64) -> Moment {
    MORNING.plus(Time::new::<minute>(after))
}

/// An anaerobic grips from 10 min on (common practice, no source): be done by then.
#[test]
fn a_step_that_is_done_before_a_bead_skins_says_until_when() {
    let mut hand = joint();
    // Bolts go through a bead that is on.
    assert_eq!(hand.ask(2), Ask::Wait(vec![Wait::Step(StepId(1))]));
    put_on(&mut hand);
    let step = hand.state.step(StepId(2)).unwrap().clone();
    let found = deadlines(hand.state.ground(), &step);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].until, Ok(minutes(10.0)));
    assert!(!found[0].over(Moment(minutes(10.0).0 - 1)) && found[0].over(minutes(10.0)));
    // The bead is on, cured or not, closed or not: the bolts may go in.
    assert!(matches!(hand.ask(2), Ask::Tally(_)));
    hand.now = minutes(9.0);
    hand.send(Intent::Tally(StepId(2))).unwrap();
    hand.send(Intent::Tally(StepId(2))).unwrap();
    hand.close(2).unwrap();
    hand.now = minutes(60.0);
    assert_eq!(hand.ask(2), Ask::GoOn);
    assert_eq!(deadlines(hand.state.ground(), &step), []);
}

#[test]
fn a_bead_that_has_skinned_stops_the_step_and_is_put_on_anew() {
    let mut hand = joint();
    put_on(&mut hand);
    hand.now = minutes(9.0);
    hand.send(Intent::Tally(StepId(2))).unwrap();
    hand.now = minutes(10.0);
    let Ask::Skinned(late) = hand.ask(2) else {
        panic!("{:?}", hand.ask(2))
    };
    let skinned = Err(Refused::Skinned("Case joint".to_owned()));
    assert_eq!(hand.send(Intent::Tally(StepId(2))), skinned);
    assert_eq!(hand.close(2), skinned);
    hand.send(Intent::Restart(late.clock)).unwrap();
    // What held the joint is loose: it is tightened from the first bolt on.
    assert!(hand.state.progress(StepId(2)).tallies.is_empty());
    assert!(matches!(hand.ask(2), Ask::Tally(next) if next.done_in_pass == 0));
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.state.progress(StepId(2)).tallies.len(), 1);
    assert!(matches!(hand.ask(2), Ask::Skinned(_)));
}

/// Bead and bolts done in time, and both closed.
fn joined() -> Hand {
    let mut hand = joint();
    put_on(&mut hand);
    hand.close(1).unwrap();
    for _ in 0..2 {
        hand.send(Intent::Tally(StepId(2))).unwrap();
    }
    hand.close(2).unwrap();
    hand
}

#[test]
fn bolts_that_are_loosened_tear_the_bead_they_hold_once_it_has_skinned() {
    let mut hand = joined();
    hand.now = minutes(9.0);
    hand.send(Intent::Loosen(StepId(2))).unwrap();
    // Still wet: it flows together again.
    assert_eq!(hand.ask(1), Ask::GoOn);
    hand.send(Intent::Undo).unwrap();
    hand.now = minutes(10.0);
    hand.send(Intent::Loosen(StepId(2))).unwrap();
    assert_eq!(hand.ask(1), Ask::PutOn);
    assert_eq!(hand.ask(2), Ask::Wait(vec![Wait::Step(StepId(1))]));
    assert_eq!(hand.state.clocks.iter().filter(|clock| clock.counts()).count(), 0);
    hand.send(Intent::Undo).unwrap();
    assert_eq!((hand.ask(1), hand.ask(2)), (Ask::GoOn, Ask::GoOn));
    assert_eq!(hand.state.clocks.iter().filter(|clock| clock.counts()).count(), 1);
}

/// New bolts in the place of tight ones: they were out as well.
#[test]
fn new_bolts_tear_the_bead_too_and_what_is_on_their_own_threads_goes_on_anew() {
    let mut hand = joined();
    hand.now = minutes(60.0);
    hand.send(Intent::Reopen(StepId(2))).unwrap();
    let (step, field, value) = (StepId(2), "fasten/new".to_owned(), "yes".to_owned());
    hand.send(Intent::EditStep { step, field, value }).unwrap();
    // The bead that stayed under the old ones was good enough; under new ones it is torn.
    let Ask::Skinned(late) = hand.ask(2) else {
        panic!("{:?}", hand.ask(2))
    };
    hand.send(Intent::Accept {
        step,
        what: What::Skin(late.clock),
        reason: "never moved".to_owned(),
        initials: "PM".to_owned(),
    })
    .unwrap();
    let Ask::NewOn(part) = hand.ask(2) else {
        panic!("{:?}", hand.ask(2))
    };
    hand.send(Intent::NewOn { step, part }).unwrap();
    assert_eq!(hand.ask(1), Ask::PutOn);
    assert_eq!(hand.state.clocks.iter().filter(|clock| clock.counts()).count(), 0);
}

#[test]
fn a_bead_put_on_anew_means_that_its_bolts_were_out() {
    let mut hand = joined();
    hand.now = minutes(60.0);
    let clock = hand.state.clocks[0].id;
    hand.send(Intent::Restart(clock)).unwrap();
    assert!(matches!(hand.ask(2), Ask::Tally(next) if next.done_in_pass == 0));
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.ask(2), Ask::GoOn);
    assert_eq!(hand.state.progress(StepId(2)).tallies.len(), 2);
}

#[test]
fn a_bead_that_has_skinned_is_accepted_with_a_reason_for_that_bead_alone() {
    let mut hand = joint();
    put_on(&mut hand);
    let accept = |clock| Intent::Accept {
        step: StepId(2),
        what: What::Skin(clock),
        reason: "joined at once, bolts followed".to_owned(),
        initials: "PM".to_owned(),
    };
    let step = hand.state.step(StepId(2)).unwrap().clone();
    let clock = deadlines(hand.state.ground(), &step)[0].clock;
    assert!(hand.send(accept(clock)).is_err(), "nothing is late yet");
    hand.now = minutes(11.0);
    hand.send(accept(clock)).unwrap();
    let job = hand.state.job();
    let line = words(job.record.entries().last().unwrap(), &job.sheet);
    assert!(
        line.contains("skinned") && line.contains("joined at once"),
        "{line}"
    );
    assert!(matches!(hand.ask(2), Ask::Tally(_)));
    // The next bead is another.
    hand.send(Intent::Restart(clock)).unwrap();
    assert!(matches!(hand.ask(2), Ask::Tally(_)));
    hand.now = minutes(30.0);
    assert!(matches!(hand.ask(2), Ask::Skinned(_)));
    assert_eq!(hand.state.progress(StepId(2)).status, Status::Open);
}

fn conflicts(steps: &str) -> Vec<Conflict> {
    let hand = Hand::with(sheet(steps));
    hand.state.conflicts(Now::utc(MORNING))
}

fn said(steps: &str) -> String {
    let plan = sheet(steps);
    let all = conflicts(steps);
    assert_eq!(all.len(), 1, "{all:?}");
    all[0].words(&plan)
}

#[test]
fn a_plan_whose_parts_go_together_is_told_nothing() {
    assert_eq!(
        conflicts(&format!("{BEAD},{}", bolts(2, r#""before_skin":[1],"#))),
        []
    );
    // Finger tight before it skins, the torque when it has cured.
    let two = format!(
        "{BEAD},{},{}",
        bolts(2, r#""before_skin":[1],"#),
        bolts(3, r#""waits_for":[1],"#)
    );
    assert_eq!(conflicts(&two), []);
}

#[test]
fn one_step_can_not_wait_for_the_cure_and_come_before_the_skin() {
    let steps = format!("{BEAD},{}", bolts(2, r#""waits_for":[1],"before_skin":[1],"#));
    let words = said(&steps);
    assert!(words.contains("can’t do both"), "{words}");
    // By way of another: the oil waits for every cure and stands between.
    let oil = r#"{"id":3,"title":"Oil","work":{"fill":{"fluid":"oil","litres":1.1}}}"#;
    let steps = format!("{BEAD},{oil},{}", bolts(2, r#""before_skin":[1],"#));
    let all = conflicts(&steps);
    let held = Conflict::HeldUp {
        step: StepId(2),
        bead: StepId(1),
        by: StepId(3),
    };
    assert!(all.contains(&held), "{all:?}");
}

#[test]
fn bolts_that_wait_for_the_bead_they_must_be_pulled_through_are_told_so() {
    let words = said(&format!("{BEAD},{}", bolts(2, r#""waits_for":[1],"#)));
    assert!(words.contains("pulled closed while its bead is wet"), "{words}");
}

/// 10 min (common practice, no source) against 4 min of bolts and 8 min of a shaft before them.
#[test]
fn hands_that_take_longer_than_the_bead_stays_open_are_told_the_numbers() {
    let shaft = r#"{"id":3,"title":"Shaft","minutes":8,"work":{"fit":{"part":"shaft"}}}"#;
    let steps = format!("{BEAD},{shaft},{}", bolts(2, r#""before_skin":[1],"#));
    let words = said(&steps);
    assert!(words.contains(" 10 min ") && words.contains(" 12 min"), "{words}");
    assert!(words.contains("usually"), "{words}");
    // The bottle's own label goes first.
    let mut hand = Hand::with(sheet(&steps));
    let joint = hand.state.step(StepId(1)).unwrap().work.application().unwrap();
    let mut bottle = Bottle::new(BottleId(1), recommend(joint).class.unwrap());
    bottle.label.assembly = Some(Time::new::<minute>(20.0));
    hand.send(Intent::Shelve(Box::new(bottle.clone()))).unwrap();
    assert_eq!(hand.state.conflicts(Now::utc(MORNING)), []);
    bottle.label.assembly = Some(Time::new::<minute>(5.0));
    hand.send(Intent::Shelve(Box::new(bottle.clone()))).unwrap();
    let words = hand.state.conflicts(Now::utc(MORNING))[0].words(&hand.state.job().sheet);
    assert!(
        words.contains(" 5 min ") && words.contains("by its label"),
        "{words}"
    );
    // A label that names none: the usual one.
    bottle.label.assembly = None;
    hand.send(Intent::Shelve(Box::new(bottle))).unwrap();
    let words = hand.state.conflicts(Now::utc(MORNING))[0].words(&hand.state.job().sheet);
    assert!(words.contains(" 10 min ") && words.contains("usually"), "{words}");
}

#[test]
fn it_is_planned_by_touch_and_read_back_and_no_step_is_taken_from_under_it() {
    let plan = joint().state.job().sheet.clone();
    assert_eq!(Sheet::from_json(&plan.to_json()).unwrap(), plan);
    let mut step = plan.steps[1].clone();
    form::set(&plan, &mut step, "skin/1/remove", "").unwrap();
    assert_eq!(step.before_skin, []);
    assert!(form::set(&plan, &mut step, "skin/1/remove", "").is_err());
    let offered = form::fields(&plan, &step);
    assert!(offered.iter().any(|field| field.id == "skin/add"));
    form::set(&plan, &mut step, "skin/add", "1").unwrap();
    assert_eq!(step, plan.steps[1]);
    assert!(form::set(&plan, &mut step, "skin/add", "2").is_err());

    let mut hand = joint();
    assert!(hand.send(Intent::RemoveStep(StepId(1))).is_err());
    let down = Intent::MoveStep {
        step: StepId(1),
        down: true,
    };
    assert!(hand.send(down).is_err());
    let said = Sheet::from_json(
        &plan
            .to_json()
            .replace(r#""before_skin": ["#, r#""before_skin": [7,"#),
    )
    .unwrap_err()
    .to_string();
    assert!(said.contains("before_skin"), "{said}");
    // What asks for the impossible is a warning, and no refusal.
    let impossible = format!("{BEAD},{}", bolts(2, r#""waits_for":[1],"before_skin":[1],"#));
    assert_eq!(sheet(&impossible).check(), Ok(()));
}
