//! Nothing is read, felt or tried in a step that is shut, or over a STOP that nobody read.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::id::ReadingId;
use halfcase::job::reading::What;
use halfcase::job::sheet::StepId;
use halfcase::job::state::{Ask, Intent, Refused};
use halfcase::trade::quantity::Stated;

const LATER: StepId = StepId(2);

/// A step of that work, which waits for another.
fn waiting(work: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Wash","work":{{"fit":{{}}}}}},
           {{"id":2,"title":"Later","waits_for":[1],"work":{work}}}"#
    )))
}

const CHECK: &str = r#"{"check":{"readings":[{"name":"float","unit":"mm","least":0.1,"most":0.3}]}}"#;
const SEAT: &str = r#"{"seat":{"part":"bearing","hole":{"class":{"nominal_mm":62,"class":"N7"}},
    "shaft":{"class":{"nominal_mm":62,"class":"h6"}},"housing":"cast_aluminium","part_material":"bearing_steel",
    "length_mm":17,"boss_outside_mm":90,"wall_mm":8,"housing_limit_c":120,"part_limit_c":120,
    "depth":{"least_mm":0.9,"most_mm":1.1}}}"#;

fn touches() -> Vec<(&'static str, Intent)> {
    let mm = Stated::plain(1.0);
    let step = LATER;
    let some = Some(LATER);
    vec![
        (SEAT, Intent::ReadDepth { step: some, mm }),
        (SEAT, Intent::ReadGap { step: some, mm }),
        (
            r#"{"turn":{"what":"input shaft"}}"#,
            Intent::Feel {
                step,
                tight_at: String::new(),
            },
        ),
    ]
}

#[test]
fn a_shut_step_takes_no_reading_until_what_it_waits_for_is_done() {
    let mut hand = waiting(CHECK);
    let float = What::Limit(ReadingId(1));
    assert!(matches!(hand.ask(2), Ask::Wait(_)));
    assert_eq!(hand.read(2, float.clone(), 0.2, "mm"), Err(Refused::Shut));
    hand.close(1).unwrap();
    hand.read(2, float, 0.2, "mm").unwrap();
    assert_eq!(hand.ask(2), Ask::Close);
    for (work, touch) in touches() {
        let mut hand = waiting(work);
        assert_eq!(hand.send(touch), Err(Refused::Shut), "{work}");
    }
}

#[test]
fn a_stop_is_read_before_anything_else_is() {
    for (work, touch) in touches() {
        let mut hand = waiting(work);
        hand.close(1).unwrap();
        if let Ask::Acknowledge(_) = hand.ask(2) {
            assert_eq!(hand.send(touch.clone()), Err(Refused::Unacknowledged), "{work}");
            hand.read_stops(2);
        }
        // The seat's depth has a gap only where one is stated.
        hand.send(touch).unwrap();
    }
    // An engine that runs while it is read has a STOP of its own.
    let mut hand =
        waiting(r#"{"check":{"running":true,"readings":[{"name":"oil pressure","unit":"bar","least":1}]}}"#);
    hand.close(1).unwrap();
    assert!(matches!(hand.ask(2), Ask::Acknowledge(_)));
    let pressure = What::Limit(ReadingId(1));
    assert_eq!(
        hand.read(2, pressure.clone(), 2.0, "bar"),
        Err(Refused::Unacknowledged)
    );
    hand.read_stops(2);
    hand.read(2, pressure, 2.0, "bar").unwrap();
}

/// What answers a wait is read in the step that is waited for, whatever waits.
#[test]
fn the_reading_that_answers_a_wait_is_taken() {
    let mut hand = Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Float","work":{CHECK}}},
           {{"id":2,"title":"Oil","work":{{"fill":{{"fluid":"SAE 80"}}}}}}"#
    )));
    let float = What::Limit(ReadingId(1));
    hand.read(1, float.clone(), 0.5, "mm").unwrap();
    assert!(matches!(hand.ask(2), Ask::Wait(_)));
    hand.read(1, float, 0.2, "mm").unwrap();
    hand.close(1).unwrap();
    assert!(!matches!(hand.ask(2), Ask::Wait(_)));
}
