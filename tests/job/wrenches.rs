//! A torque that the wrench in the hand can't be set to, or none on the bench; and a bolt of one's own choice.

use super::fill_run::Hand;
use super::sheet;
use halfcase::job::journal::{torque_table, words};
use halfcase::job::progress::NextFastener;
use halfcase::job::record::{Event, Instead, SetTo};
use halfcase::job::sheet::StepId;
use halfcase::job::state::{Ask, Intent, Refused};

const NUTS: StepId = StepId(1);

/// The walking tractor's axle nuts; the bench has wrenches from 20 in·lb to 210 N·m.
fn nuts(more: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Axle nuts","work":{{"fasten":{{{more}}}}}}}"#
    )))
}

fn heavy() -> Hand {
    nuts(r#""torque":"300 N·m","layout":{"free":{"count":3}}"#)
}

fn tally(hand: &mut Hand) -> Result<(), Refused> {
    hand.send(Intent::Tally(NUTS))
}

fn at(hand: &mut Hand, place: usize) -> Result<(), Refused> {
    hand.send(Intent::TallyAt { step: NUTS, place })
}

fn with(hand: &mut Hand, instead: Instead) -> Result<(), Refused> {
    hand.send(Intent::WithoutWrench { step: NUTS, instead })
}

fn lines(hand: &Hand) -> Vec<String> {
    let job = hand.state.job();
    let lines = job.record.entries().iter();
    lines.map(|line| words(line, &job.sheet)).collect()
}

const FIRST: NextFastener = NextFastener {
    pass: 0,
    place: 0,
    done_in_pass: 0,
};

#[test]
fn what_no_wrench_can_be_set_to_is_not_tallied_before_it_is_said_what_is_used() {
    let mut hand = heavy();
    assert_eq!(hand.ask(1), Ask::NoWrench(FIRST));
    let refused = tally(&mut hand).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "No wrench on your bench can be set to 300 N·m: say what you use, or add the wrench on Bench."
    );
    assert_eq!(hand.close(1), Err(refused.clone()));
    assert_eq!(at(&mut hand, 0), Err(refused));
    assert_eq!(
        with(&mut hand, Instead::Other("  ".to_owned())),
        Err(Refused::NoReason)
    );
    with(&mut hand, Instead::Other("the shop’s 3/4 in drive".to_owned())).unwrap();
    // Asked once: all of them are tallied, each with it.
    (0..3).for_each(|_| tally(&mut hand).unwrap());
    assert_eq!(hand.ask(1), Ask::Close);
    assert_eq!(
        lines(&hand)[..2],
        [
            "no wrench on the bench reaches it: tightened with the shop’s 3/4 in drive",
            "bolt 1, pass 1: 300 N·m with the shop’s 3/4 in drive"
        ]
    );
    let job = hand.state.job();
    let table = torque_table(&job.record, &job.sheet);
    assert_eq!(table[0].set, "300 N·m the shop’s 3/4 in drive");
    assert_eq!(table[0].tallied, "3 of 3");
    assert!(matches!(
        &job.record.entries()[1].event,
        Event::Tallied { set, .. } if set.tool.is_empty()
            && matches!(set.to, SetTo::Torque { value, .. } if value == 300.0)
    ));
}

#[test]
fn it_is_asked_anew_once_they_are_loose_and_undo_takes_it_back() {
    let mut hand = heavy();
    with(&mut hand, Instead::Borrowed).unwrap();
    hand.send(Intent::Undo).unwrap();
    assert_eq!(hand.ask(1), Ask::NoWrench(FIRST));
    with(&mut hand, Instead::Multiplier).unwrap();
    tally(&mut hand).unwrap();
    hand.send(Intent::Loosen(NUTS)).unwrap();
    assert_eq!(hand.ask(1), Ask::NoWrench(FIRST));
}

#[test]
fn where_another_wrench_can_be_set_to_it_that_one_is_taken_or_said_what_is_used_instead() {
    // In the hand is the small one, from 20 to 120 in·lb.
    let mut hand = nuts(r#""thread":"M8","torque":"28 N·m","layout":"single""#);
    assert_eq!(hand.ask(1), Ask::TakeWrench(1));
    assert_eq!(
        tally(&mut hand).unwrap_err().to_string(),
        "Small can’t be set to this: use Middle."
    );
    let mut lent = nuts(r#""thread":"M8","torque":"28 N·m","layout":"single""#);
    with(&mut lent, Instead::Borrowed).unwrap();
    tally(&mut lent).unwrap();
    assert_eq!(lines(&lent)[1], "bolt 1, pass 1: 28.0 N·m with a borrowed wrench");
    hand.send(Intent::TakeWrench(1)).unwrap();
    assert_eq!(hand.ask(1), Ask::Tally(FIRST));
    assert_eq!(
        with(&mut hand, Instead::Borrowed),
        Err(Refused::NotAsked("what it is tightened with".to_owned()))
    );
    tally(&mut hand).unwrap();
    assert_eq!(lines(&hand), ["bolt 1, pass 1: 28.0 N·m with Middle"]);
}

/// A low pass below every scale is done by hand, snug, as its torque follows; the last one never.
#[test]
fn hands_do_for_a_pass_below_every_scale_but_not_for_the_last() {
    let mut hand = nuts(
        r#""torque":"6 N·m","layout":"single","passes":[{"share":0.3,"round":false},{"share":1.0,"round":false}]"#,
    );
    let offered = hand.state.offered_instead(NUTS, hand.now);
    assert_eq!(offered.first(), Some(&Instead::Hands));
    with(&mut hand, Instead::Hands).unwrap();
    tally(&mut hand).unwrap();
    assert_eq!(lines(&hand)[1], "bolt 1, pass 1: snug by hand");
    tally(&mut hand).unwrap();
    assert_eq!(lines(&hand)[2], "bolt 1, pass 2: 53 in·lb with Small");
    // 1 N·m is below every scale, and the last pass.
    let mut last = nuts(r#""torque":"1 N·m","layout":"single""#);
    assert!(
        !last
            .state
            .offered_instead(NUTS, last.now)
            .contains(&Instead::Hands)
    );
    assert_eq!(
        with(&mut last, Instead::Hands).unwrap_err().to_string(),
        "Hands bring it no further than snug: say what brings it to its torque."
    );
    // Said for a low pass, it does not stand for the torque itself.
    let mut both = nuts(
        r#""torque":"1 N·m","layout":"single","passes":[{"share":0.3,"round":false},{"share":1.0,"round":false}]"#,
    );
    with(&mut both, Instead::Hands).unwrap();
    tally(&mut both).unwrap();
    assert!(matches!(both.ask(1), Ask::NoWrench(next) if next.pass == 1));
}

/// Whoever entered no wrench is asked nothing about them.
#[test]
fn a_bench_without_wrenches_is_not_asked() {
    let mut hand = heavy();
    hand.state.settings.wrenches.clear();
    assert_eq!(hand.ask(1), Ask::Tally(FIRST));
    tally(&mut hand).unwrap();
    assert_eq!(lines(&hand), ["bolt 1, pass 1: 300 N·m"]);
}

/// An angle and a hand are set on no wrench.
#[test]
fn what_is_set_on_no_wrench_asks_for_none() {
    let mut hand = nuts(r#""torque":"300 N·m","layout":"single","stages":["snug by hand","90°"]"#);
    assert_eq!(hand.ask(1), Ask::Tally(FIRST));
    tally(&mut hand).unwrap();
    tally(&mut hand).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
}

#[test]
fn a_bolt_is_picked_where_the_order_is_free() {
    let mut hand = nuts(
        r#""torque":"9 N·m","layout":{"circle":{"count":4}},"labels":["21","22","23","24"],
            "stages":["9 N·m, in any order"]"#,
    );
    at(&mut hand, 2).unwrap();
    assert_eq!(
        at(&mut hand, 2).unwrap_err().to_string(),
        "Bolt 23 is done in this pass."
    );
    assert_eq!(at(&mut hand, 4), Err(Refused::NoStep));
    // The key goes on with the first that is left.
    tally(&mut hand).unwrap();
    at(&mut hand, 3).unwrap();
    at(&mut hand, 1).unwrap();
    assert_eq!(hand.ask(1), Ask::Close);
    let said = lines(&hand);
    let bolts: Vec<&str> = said.iter().map(|line| &line[..7]).collect();
    assert_eq!(bolts, ["bolt 23", "bolt 21", "bolt 24", "bolt 22"]);
}

#[test]
fn where_the_order_is_not_free_only_the_next_is_taken() {
    let mut hand = nuts(r#""torque":"9 N·m","layout":{"line":{"count":4}}"#);
    let Ask::Tally(next) = hand.ask(1) else {
        panic!("a bolt is asked for")
    };
    // A line goes from the middle outwards (common practice).
    assert_ne!(next.place, 0);
    let name = next.place + 1;
    assert_eq!(
        at(&mut hand, 0).unwrap_err().to_string(),
        format!("The order is not free here: bolt {name} is next.")
    );
    at(&mut hand, next.place).unwrap();
    assert_eq!(
        at(&mut hand, next.place),
        Err(Refused::TalliedAlready(name.to_string()))
    );
}

#[test]
fn a_bolt_that_was_begun_is_finished_before_another() {
    let mut hand = nuts(
        r#""torque":"9 N·m","layout":{"circle":{"count":3}},
            "stages":["snug 4 N·m, in any order","9 N·m, on the same fastener"]"#,
    );
    at(&mut hand, 1).unwrap();
    assert_eq!(
        at(&mut hand, 2).unwrap_err().to_string(),
        "The order is not free here: bolt 2 is next."
    );
    at(&mut hand, 1).unwrap();
    at(&mut hand, 2).unwrap();
}
