//! A plan that is changed behind the work, and work that is said in the wrong order.

use super::{MORNING, sheet};
use halfcase::job::gate::Wait;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::fasten::Fasten;
use halfcase::job::kinds::fasten::fastening::Asked;
use halfcase::job::parts::PartKey;
use halfcase::job::reading::{Fact, What};
use halfcase::job::sheet::{Step, StepId};
use halfcase::job::state::{Ask, Intent, Now, ReadWith, Refused, State};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::Torque;
use uom::si::torque::newton_meter;

const NUT: StepId = StepId(1);
const OIL: StepId = StepId(2);

fn now() -> Now {
    Now::utc(Moment(MORNING.0 + 60_000))
}

fn send(state: &mut State, intent: Intent) -> Result<(), Refused> {
    let transaction = state.apply(&intent, now())?;
    state.take(transaction);
    Ok(())
}

/// The walking tractor's gearbox: a step of that work, then the oil.
fn begun(work: &str) -> State {
    let mut state = halfcase::job::start::example();
    let sheet = sheet(&format!(
        r#"{{"id":1,"title":"Shaft nut","work":{work}}},{{"id":2,"title":"Oil","work":{{"fill":{{"fluid":"SAE 80"}}}}}}"#
    ));
    send(&mut state, Intent::BeginJob(Box::new(sheet))).unwrap();
    state.settings.wrenches.clear();
    state
}

fn fastening(more: &str) -> State {
    begun(&format!(r#"{{"fasten":{{"thread":"M10",{more}}}}}"#))
}

fn ask(state: &State, step: StepId) -> Ask {
    state.ask(step, now().at).unwrap()
}

fn tally(state: &mut State) -> Result<(), Refused> {
    send(state, Intent::Tally(NUT))
}

/// Tallies as long as that is what the step asks for.
fn tighten(state: &mut State) {
    while let Ask::Tally(_) = ask(state, NUT) {
        tally(state).unwrap();
    }
}

fn read(state: &mut State, what: What, value: f64, unit: &str) -> Result<(), Refused> {
    let unit = unit.to_owned();
    let with = ReadWith::default();
    send(
        state,
        Intent::Read {
            step: NUT,
            what,
            value,
            unit,
            with,
        },
    )
}

fn locked(state: &mut State) {
    let words = String::new();
    let fact = Fact::Locked;
    send(
        state,
        Intent::Say {
            step: NUT,
            fact,
            holds: true,
            words,
        },
    )
    .unwrap();
}

/// Changes the plan of the first step by its form's paths.
fn plan(state: &mut State, path: &str, value: &str) {
    let edit = Intent::EditStep {
        step: NUT,
        field: path.to_owned(),
        value: value.to_owned(),
    };
    send(state, edit).unwrap_or_else(|why| panic!("{path}: {why}"));
}

fn fasten(step: &Step) -> &Fasten {
    match &step.work {
        Work::Fasten(fasten) => fasten,
        other => panic!("{other:?}"),
    }
}

fn here(state: &State) -> &Fasten {
    fasten(state.job().sheet.step(NUT).unwrap())
}

/// Where no stage asks for the step's torque a group's own would reach no wrench.
#[test]
fn a_group_that_stands_for_no_stage_is_told_and_holds() {
    let groups = r#""torque":"22 N·m","layout":{"line":{"count":6}},"groups":["5, 6: 12 N·m"]"#;
    let mut state = fastening(&format!(r#"{groups},"stages":["snug 5 N·m","25 N·m"]"#));
    let why = here(&state).stages_wrong().unwrap();
    assert!(
        why.contains("5, 6") && why.contains("22 N·m"),
        "which bolts, and the torque they stand for: {why}"
    );
    assert!(matches!(tally(&mut state), Err(Refused::Stages(_))));
    // One of them asks for it: the group has its own there.
    plan(&mut state, "stage/2/torque", "22 N·m");
    assert_eq!(here(&state).stages_wrong(), None);
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
    // A group that makes the stages of its bolts impossible is told too, by its bolts.
    let state = fastening(&format!(r#"{groups},"stages":["snug 15 N·m","22 N·m"]"#));
    let why = here(&state).stages_wrong().unwrap();
    assert!(why.contains("5, 6") && why.contains("Stage 2"), "{why}");
}

#[test]
fn a_step_closed_before_its_plan_changed_holds_the_oil_and_the_end() {
    let mut state = fastening(r#""torque":"22 N·m","layout":{"line":{"count":2}}"#);
    tighten(&mut state);
    send(&mut state, Intent::Close(NUT)).unwrap();
    assert_ne!(ask(&state, OIL), Ask::Wait(vec![Wait::Undone(NUT)]));
    let sound = state.clone();
    for (path, value) in [
        ("fasten/torque", "45 N·m"),
        ("fasten/count", "4"),
        ("fasten/lock", "2"),
    ] {
        let mut state = sound.clone();
        plan(&mut state, path, value);
        assert_eq!(ask(&state, OIL), Ask::Wait(vec![Wait::Undone(NUT)]), "{path}");
        let skip = Intent::Skip {
            step: OIL,
            reason: "no oil here".to_owned(),
        };
        send(&mut state, skip).unwrap();
        assert!(
            matches!(send(&mut state, Intent::CloseJob), Err(Refused::Undone(title)) if title == "Shaft nut"),
            "{path}"
        );
        // Skipped with a reason, it is settled: the record says so.
        send(&mut state, Intent::Reopen(NUT)).unwrap();
        let reason = "as it was".to_owned();
        send(&mut state, Intent::Skip { step: NUT, reason }).unwrap();
        send(&mut state, Intent::CloseJob).unwrap();
    }
    let mut state = begun(r#"{"check":{"readings":[{"name":"end float","unit":"mm","most":0.3}]}}"#);
    let float = state.job().sheet.steps[0].clone();
    let Work::Check(check) = &float.work else { panic!() };
    let id = check.readings[0].id;
    read(&mut state, What::Limit(id), 0.2, "mm").unwrap();
    send(&mut state, Intent::Close(NUT)).unwrap();
    plan(&mut state, "reading/add", "yes");
    assert_eq!(ask(&state, OIL), Ask::Wait(vec![Wait::Undone(NUT)]));
}

/// A castle nut's hole comes in line when it is tight, and a length is tight when the bolt is.
#[test]
fn nothing_is_read_of_a_tight_nut_before_it_is_tight() {
    let mut state = fastening(r#""torque":"40–55 N·m","layout":"single","lock":"cotter""#);
    assert_eq!(
        read(&mut state, What::Reached, 47.0, "N·m"),
        Err(Refused::FastenersLeft(1))
    );
    tighten(&mut state);
    read(&mut state, What::Reached, 47.0, "N·m").unwrap();
    let mut state =
        fastening(r#""torque":"28 N·m","layout":"single","stretch_least_mm":0.13,"stretch_most_mm":0.15"#);
    read(&mut state, What::Free(0), 45.1, "mm").unwrap();
    assert_eq!(
        read(&mut state, What::Tight(0), 45.24, "mm"),
        Err(Refused::FastenersLeft(1))
    );
}

/// Each castle nut comes to its own hole.
#[test]
fn each_castle_nut_has_a_torque_of_its_own() {
    let mut state = fastening(
        r#""torque":"40–55 N·m","layout":{"line":{"count":2}},"groups":["2: 20–25 N·m"],"lock":"cotter""#,
    );
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Read(What::ReachedAt(0)));
    read(&mut state, What::ReachedAt(0), 47.0, "N·m").unwrap();
    read(&mut state, What::ReachedAt(1), 47.0, "N·m").unwrap();
    locked(&mut state);
    // 47 is right for the first and wrong for the second.
    assert_eq!(ask(&state, NUT), Ask::Finding(What::ReachedAt(1)));
    read(&mut state, What::ReachedAt(1), 24.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::Close);
}

/// The running torque is in what the wrench came to (FAA AC 43.13-1B, 7-40).
#[test]
fn what_a_castle_nut_came_to_is_judged_with_its_running_torque() {
    let mut state =
        fastening(r#""torque":"40–55 N·m","layout":"single","lock":"cotter","self_locking":true"#);
    read(&mut state, What::Running, 6.0, "N·m").unwrap();
    tighten(&mut state);
    read(&mut state, What::Reached, 58.0, "N·m").unwrap();
    locked(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
    read(&mut state, What::Reached, 62.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::Finding(What::Reached));
    read(&mut state, What::Reached, 43.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::Finding(What::Reached));
}

/// With stages the last torque counts; turned by an angle there is none to compare with.
#[test]
fn what_a_castle_nut_came_to_is_judged_by_its_last_torque() {
    let mut state = fastening(
        r#""torque":"20 N·m","layout":"single","lock":"cotter","stages":["20 N·m","loosen","10–15 N·m"]"#,
    );
    tighten(&mut state);
    read(&mut state, What::Reached, 14.0, "N·m").unwrap();
    locked(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
    read(&mut state, What::Reached, 20.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::Finding(What::Reached));
    let mut state =
        fastening(r#""torque":"20 N·m","layout":"single","lock":"cotter","stages":["20 N·m","90°"]"#);
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Read(What::Fact(Fact::Locked)));
}

#[test]
fn a_running_torque_is_measured_of_a_loose_nut() {
    let mut state = fastening(r#""torque":"40 N·m","layout":"single","self_locking":true"#);
    read(&mut state, What::Running, 6.0, "N·m").unwrap();
    tighten(&mut state);
    assert_eq!(
        read(&mut state, What::Running, 9.0, "N·m"),
        Err(Refused::TightAlready)
    );
    send(&mut state, Intent::Loosen(NUT)).unwrap();
    read(&mut state, What::Running, 9.0, "N·m").unwrap();
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
}

/// It runs harder than its own torque: worn, wrong or cross-threaded.
#[test]
fn a_nut_that_runs_too_hard_holds_the_step() {
    let mut state = fastening(r#""torque":"40 N·m","layout":"single","self_locking":true"#);
    read(&mut state, What::Running, 45.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::Finding(What::Running));
    assert!(matches!(tally(&mut state), Err(Refused::Finding(_))));
    read(&mut state, What::Running, 6.0, "N·m").unwrap();
    assert!(matches!(ask(&state, NUT), Ask::Tally(_)));
}

/// What is repeated is what came before, the running torque in it as often as there.
#[test]
fn the_same_again_is_the_same_snug_or_not() {
    let state = fastening(
        r#""torque":"40 N·m","layout":"single","self_locking":true,"stages":["snug 10 N·m","again","40 N·m","again"]"#,
    );
    let running = Some(Torque::new::<newton_meter>(6.0));
    let asked: Vec<f64> = (0..4)
        .map(|pass| match here(&state).asked(pass, running) {
            Asked::Torque(statement) => statement.target,
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(asked, [16.0, 16.0, 46.0, 46.0]);
}

/// New nuts: what the old ones ran at, their lock and the compound on them are gone.
#[test]
fn new_ones_have_nothing_of_the_old() {
    let mut state = fastening(
        r#""torque":"40 N·m","layout":"single","self_locking":true,"lock":"tab","most_uses":3,
           "compound":{"kind":"fastener","face":"steel_iron","manual":"lock_medium"}"#,
    );
    read(&mut state, What::Uses, 0.0, "").unwrap();
    read(&mut state, What::Running, 6.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::PutOn);
    let put_on = |state: &mut State| {
        let put_on = Intent::PutOn {
            step: NUT,
            activator: false,
        };
        send(state, put_on).unwrap();
    };
    put_on(&mut state);
    tighten(&mut state);
    locked(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
    read(&mut state, What::Uses, 3.0, "").unwrap();
    assert_eq!(ask(&state, NUT), Ask::NewOn(PartKey::Own));
    let part = PartKey::Own;
    send(&mut state, Intent::NewOn { step: NUT, part }).unwrap();
    assert_eq!(state.progress(NUT).loosened, 1, "two rounds, not one");
    assert_eq!(ask(&state, NUT), Ask::Read(What::Running));
    read(&mut state, What::Running, 5.0, "N·m").unwrap();
    assert_eq!(ask(&state, NUT), Ask::PutOn);
    put_on(&mut state);
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Read(What::Fact(Fact::Locked)));
    let undone = (0..4).try_for_each(|_| send(&mut state, Intent::Undo));
    undone.unwrap();
    assert_eq!(ask(&state, NUT), Ask::NewOn(PartKey::Own));
}

#[test]
fn lengths_are_named_by_the_manuals_numbers() {
    let mut state = fastening(
        r#""torque":"28 N·m","layout":{"line":{"count":2}},"labels":["7","3"],"stretch_least_mm":0.13"#,
    );
    assert_eq!(
        tally(&mut state),
        Err(Refused::ReadingMissing("bolt 7, free length".to_owned()))
    );
}

/// An angle stands on the torque before it: changed, the bolt is loosened and begins anew.
#[test]
fn an_angle_does_not_outlive_the_torque_it_began_at() {
    let turned = || {
        let mut state =
            fastening(r#""torque":"20 N·m","layout":{"line":{"count":2}},"stages":["20 N·m","90°"]"#);
        tighten(&mut state);
        assert_eq!(ask(&state, NUT), Ask::Close);
        state
    };
    let mut state = turned();
    plan(&mut state, "stage/1/torque", "30 N·m");
    assert_eq!(ask(&state, NUT), Ask::Loosen(2));
    assert_eq!(state.progress(NUT).tallied(here(&state)).len(), 0);
    send(&mut state, Intent::Loosen(NUT)).unwrap();
    tighten(&mut state);
    assert_eq!(ask(&state, NUT), Ask::Close);
    // An angle of its own changed: those degrees are turned already.
    let mut state = turned();
    plan(&mut state, "stage/2/angle", "120°");
    assert_eq!(ask(&state, NUT), Ask::Loosen(2));
    // Said in another unit it is the same torque.
    let mut state = turned();
    plan(&mut state, "stage/1/torque", "14.75 ft·lb");
    assert_eq!(ask(&state, NUT), Ask::Close);
}

/// Measured in one unit, the plan written anew in another: the same torque is the same verdict.
#[test]
fn a_running_torque_is_judged_in_the_unit_it_was_measured_in() {
    let mut state = fastening(r#""torque":"80 in·lb","layout":"single","self_locking":true"#);
    read(&mut state, What::Running, 15.0, "in·lb").unwrap();
    plan(&mut state, "fasten/torque", "9 N·m");
    assert!(
        matches!(ask(&state, NUT), Ask::Tally(_)),
        "{:?}",
        ask(&state, NUT)
    );
    let mut state = fastening(r#""torque":"9 N·m","layout":"single","self_locking":true"#);
    read(&mut state, What::Running, 10.0, "N·m").unwrap();
    plan(&mut state, "fasten/torque", "80 in·lb");
    assert_eq!(ask(&state, NUT), Ask::Finding(What::Running));
}
