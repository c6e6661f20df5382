//! Shims, washers and shells chosen by size: by gap, by trial, by table, round by round.

use super::{MORNING, sheet};
use halfcase::job::form::{fields, set};
use halfcase::job::id::{JobId, ReadingId};
use halfcase::job::journal::{Filter, journal};
use halfcase::job::kinds::select::answer::{Advice, aim};
use halfcase::job::kinds::{Piece, Select, Work, blank};
use halfcase::job::reading::What;
use halfcase::job::record::Record;
use halfcase::job::settings::Settings;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::state::{Ask, Intent, Job, JobHead, Jobs, Now, ReadWith, Refused, State};
use halfcase::job::{json, kinds};
use serde_json::Value;
use std::collections::BTreeMap;

pub const STEP: StepId = StepId(1);

/// A bench with one job of these steps.
pub fn bench(steps: &str) -> State {
    let jobs = Jobs {
        at_hand: JobId(1),
        heads: vec![JobHead::new(JobId(1), "Gearbox")],
    };
    let job = Job::new(sheet(steps), Record::default());
    State::new(
        jobs,
        BTreeMap::from([(JobId(1), job)]),
        Vec::new(),
        Settings::example(),
    )
}

pub fn send(state: &mut State, intent: Intent) -> Result<(), Refused> {
    let done = state.apply(&intent, Now::utc(MORNING))?;
    state.take(done);
    Ok(())
}

pub fn read(state: &mut State, what: What, value: f64, unit: &str) {
    let intent = Intent::Read {
        step: STEP,
        what,
        value,
        unit: unit.to_owned(),
        with: ReadWith::default(),
    };
    send(state, intent).unwrap();
}

pub fn ask(state: &State) -> Ask {
    state.ask(STEP, MORNING).unwrap()
}

/// The lines of the record, oldest first.
pub fn lines(state: &State) -> Vec<String> {
    let job = state.job();
    let found = journal(&job.record, &job.sheet, Filter::Reading, None, 99);
    found.lines.into_iter().rev().map(|line| line.what).collect()
}

fn choose(state: &mut State, pieces: &[Piece]) -> Result<(), Refused> {
    let pieces = pieces.to_vec();
    send(state, Intent::Choose { step: STEP, pieces })
}

/// Takes what is offered.
fn take(state: &mut State) -> Vec<Piece> {
    let step = state.step(STEP).unwrap().clone();
    let pieces = state.offered(&step).expect("something is offered");
    choose(state, &pieces).unwrap();
    pieces
}

fn advice(state: &State) -> Advice {
    state.advice(state.step(STEP).unwrap())
}

fn close(state: &mut State) -> Result<(), Refused> {
    send(state, Intent::Close(STEP))
}

fn at(id: u32) -> What {
    What::At(ReadingId(id))
}

const BOX: &str = r#""shims":[{"thick":0.1,"count":4},{"thick":0.2,"count":2},{"thick":0.5,"count":2},
    {"thick":0.05,"count":6,"between":true}]"#;

/// The walking tractor's output bearing: gap at two places, 0.10 of end float wanted, ± 0.05.
fn by_gap() -> State {
    bench(&format!(
        r#"{{"id":1,"title":"Shims","work":{{"select":{{"part":"shims","by":"gap",
            "places":[{{"name":"gap, top"}},{{"name":"gap, bottom"}}],
            "allowance":-0.1,"tolerance":0.02,{BOX}}}}}}}"#
    ))
}

#[test]
fn a_pack_is_built_to_the_mean_of_the_gap_less_what_the_manual_takes_off() {
    let mut state = by_gap();
    assert_eq!(ask(&state), Ask::Read(at(1)));
    assert_eq!(
        choose(&mut state, &[Piece::shims(0.5, 1)]),
        Err(Refused::ReadingMissing("gap, top".to_owned()))
    );
    read(&mut state, at(1), 0.90, "mm");
    read(&mut state, at(2), 0.94, "mm");
    assert_eq!(ask(&state), Ask::Choose);
    assert_eq!(close(&mut state), Err(Refused::NothingChosen));
    // 0.92 − 0.10 = 0.82 ± 0.02: 0.80 takes three shims and nothing takes fewer.
    assert_eq!(
        take(&mut state),
        [Piece::shims(0.5, 1), Piece::shims(0.2, 1), Piece::shims(0.1, 1)]
    );
    assert_eq!(close(&mut state), Ok(()));
    assert_eq!(
        lines(&state),
        [
            "gap, top: 0.9 mm: noted",
            "gap, bottom: 0.94 mm: noted",
            "round 1: 0.50 + 0.20 + 0.10 mm, together 0.80 mm, wanted 0.82 mm, leaves 0.12 mm: within limits",
        ]
    );
}

/// A pack that hits nothing was never to pass as one that does.
#[test]
fn a_box_that_cannot_make_it_says_so_and_another_pack_needs_a_reason() {
    let mut state = by_gap();
    read(&mut state, at(1), 2.9, "mm");
    read(&mut state, at(2), 2.9, "mm");
    let Advice::Miss { wanted, below, above } = advice(&state) else {
        panic!("{:?}", advice(&state));
    };
    // All there is: 4 × 0.1 + 2 × 0.2 + 2 × 0.5 + 6 × 0.05.
    assert_eq!((wanted, below.map(|b| b.sum), above), (2.8, Some(2.1), None));
    let step = state.step(STEP).unwrap().clone();
    assert_eq!(state.offered(&step), None);
    choose(&mut state, &[Piece::shims(0.5, 2), Piece::shims(0.2, 2)]).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
    assert!(close(&mut state).is_err());
    let reason = "a spacer of 1.40 came with the bearing".to_owned();
    send(
        &mut state,
        Intent::Accept {
            step: STEP,
            what: What::Pack,
            reason,
            initials: "jb".to_owned(),
        },
    )
    .unwrap();
    assert_eq!(ask(&state), Ask::Close);
    // The gap read again: the reason was given for another one.
    read(&mut state, at(2), 2.8, "mm");
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
}

#[test]
fn a_shim_that_goes_between_two_others_lies_against_no_race() {
    let mut state = by_gap();
    read(&mut state, at(1), 0.35, "mm");
    read(&mut state, at(2), 0.35, "mm");
    // 0.25: 0.1 + 0.05 + 0.1; 0.2 + 0.05 would be fewer, with the thin one outermost.
    assert_eq!(take(&mut state), [Piece::shims(0.1, 2), Piece::shims(0.05, 1)]);
    assert_eq!(ask(&state), Ask::Close);
    choose(&mut state, &[Piece::shims(0.2, 1), Piece::shims(0.05, 1)]).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
}

/// A gap corrected after the pack went in judges that pack anew.
#[test]
fn a_corrected_gap_asks_for_another_pack() {
    let mut state = by_gap();
    read(&mut state, at(1), 0.9, "mm");
    read(&mut state, at(2), 0.9, "mm");
    take(&mut state);
    assert_eq!(ask(&state), Ask::Close);
    read(&mut state, at(1), 1.1, "mm");
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
    take(&mut state);
    assert_eq!(ask(&state), Ask::Close);
    assert_eq!(state.progress(STEP).rounds.len(), 2);
}

#[test]
fn the_manuals_rounding_says_which_thickness() {
    let mut state = bench(
        r#"{"id":1,"title":"Ring","work":{"select":{"part":"snap ring","by":"gap","counts":"least",
            "places":[{"name":"a"},{"name":"b"}],
            "rows":[{"least":2.40,"most":2.44,"thick":2.4},{"least":2.45,"most":2.49,"thick":2.45}],
            "shims":[{"thick":2.4},{"thick":2.45}]}}}"#,
    );
    read(&mut state, at(1), 2.47, "mm");
    read(&mut state, at(2), 2.43, "mm");
    assert_eq!(take(&mut state), [Piece::shims(2.4, 1)]);
    assert_eq!(ask(&state), Ask::Close);
    // Out of the rounding: nothing is chosen, and what is in is no longer right.
    read(&mut state, at(2), 2.31, "mm");
    assert_eq!(advice(&state), Advice::OutOfTable(2.31));
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
}

/// The lay shaft of the walking tractor: end float 0.05 to 0.15, in as many rounds as it takes.
fn by_trial() -> State {
    bench(&format!(
        r#"{{"id":1,"title":"End float","work":{{"select":{{"part":"shims","by":"trial",{BOX},
            "trial":{{"least":0.05,"most":0.15}}}}}}}}"#
    ))
}

#[test]
fn a_trial_goes_round_until_the_reading_is_right_and_every_round_is_kept() {
    let mut state = by_trial();
    assert_eq!(ask(&state), Ask::Choose);
    choose(&mut state, &[Piece::shims(0.5, 1)]).unwrap();
    assert_eq!(ask(&state), Ask::Read(What::Trial));
    read(&mut state, What::Trial, 0.32, "mm");
    assert_eq!(ask(&state), Ask::Finding(What::Trial));
    assert_eq!(
        close(&mut state),
        Err(Refused::Finding(
            "“end float” is outside its limits: 0.32 mm".to_owned()
        ))
    );
    // 0.32 − 0.10 = 0.22 thicker: 0.72, and 0.67 to 0.77 will do.
    assert_eq!(take(&mut state), [Piece::shims(0.5, 1), Piece::shims(0.2, 1)]);
    // The reading of the round before is none of this one's.
    assert_eq!(ask(&state), Ask::Read(What::Trial));
    assert!(close(&mut state).is_err());
    read(&mut state, What::Trial, 0.12, "mm");
    assert_eq!(ask(&state), Ask::Close);
    assert_eq!(
        lines(&state),
        [
            "round 1: 0.50 mm",
            "end float: 0.32 mm: outside limits",
            "round 2: 0.50 + 0.20 mm, together 0.70 mm",
            "end float: 0.12 mm: within limits",
        ]
    );
    let progress = state.progress(STEP);
    let of = |round| {
        progress
            .readings_of(round)
            .iter()
            .map(|r| r.value)
            .collect::<Vec<_>>()
    };
    assert_eq!((of(0), of(1), of(2)), (vec![0.32], vec![0.12], vec![]));
    // Undone one by one, down to nothing.
    for left in [
        Ask::Read(What::Trial),
        Ask::Finding(What::Trial),
        Ask::Read(What::Trial),
        Ask::Choose,
    ] {
        send(&mut state, Intent::Undo).unwrap();
        assert_eq!(ask(&state), left);
    }
}

#[test]
fn a_round_outside_its_limits_is_accepted_with_a_reason_for_that_round_alone() {
    let mut state = by_trial();
    choose(&mut state, &[Piece::shims(0.5, 1)]).unwrap();
    read(&mut state, What::Trial, 0.17, "mm");
    let accept = |reason: &str| Intent::Accept {
        step: STEP,
        what: What::Trial,
        reason: reason.to_owned(),
        initials: "jb".to_owned(),
    };
    assert_eq!(send(&mut state, accept(" ")), Err(Refused::NoReason));
    send(&mut state, accept("no thinner shim in the shop")).unwrap();
    assert_eq!(ask(&state), Ask::Close);
    choose(&mut state, &[Piece::shims(0.5, 1)]).unwrap();
    read(&mut state, What::Trial, 0.17, "mm");
    assert_eq!(
        ask(&state),
        Ask::Finding(What::Trial),
        "a reason is for one round"
    );
}

/// Tight less loose: the seal's drag is none of the bearings' preload.
#[test]
fn a_turning_torque_is_read_loose_and_tight_and_the_pack_changes_the_other_way() {
    let mut state = bench(
        r#"{"id":1,"title":"Preload","work":{"select":{"part":"shims under the cap","by":"trial",
            "shims":[{"thick":0.1,"count":9},{"thick":0.5,"count":2}],
            "trial":{"torque":"newton_metre","loose":true,"least":1.0,"most":1.4,"per":0.25}}}}"#,
    );
    choose(&mut state, &[Piece::shims(0.5, 1)]).unwrap();
    assert_eq!(ask(&state), Ask::Read(What::TurnLoose));
    read(&mut state, What::TurnLoose, 0.4, "N·m");
    assert_eq!(ask(&state), Ask::Read(What::TurnTight));
    read(&mut state, What::TurnTight, 2.4, "N·m");
    // 2.0 is 0.8 too much; 0.25 mm for each: 0.2 thicker, 0.15 to 0.25 will do.
    assert_eq!(ask(&state), Ask::Finding(What::Trial));
    assert_eq!(take(&mut state), [Piece::shims(0.5, 1), Piece::shims(0.1, 2)]);
    read(&mut state, What::TurnLoose, 0.4, "N·m");
    read(&mut state, What::TurnTight, 1.6, "N·m");
    assert_eq!(ask(&state), Ask::Close);
    // 1.6 less 0.4 is 1.2 by one figure and 1.2000000000000002 by another: both are within 1.2.
    let Work::Select(select) = &state.step(STEP).unwrap().work else {
        panic!()
    };
    let trial = select.trial.clone().unwrap();
    let read = kinds::select::answer::result(select, &trial, &state.progress(STEP));
    assert_eq!(read, Some(1.2));
}

#[test]
fn without_the_manuals_figure_only_the_way_is_said() {
    let mut state = bench(
        r#"{"id":1,"title":"Preload","work":{"select":{"by":"trial","shims":[{"thick":0.1,"count":9}],
            "trial":{"torque":"newton_metre","least":1.0,"most":1.4,"thicker":"raises"}}}}"#,
    );
    choose(&mut state, &[Piece::shims(0.1, 3)]).unwrap();
    read(&mut state, What::Trial, 0.5, "N·m");
    assert_eq!(advice(&state), Advice::Thicker(true));
    read(&mut state, What::Trial, 1.5, "N·m");
    assert_eq!(advice(&state), Advice::Thicker(false));
}

#[test]
fn a_washer_is_chosen_by_its_range_and_nothing_where_the_table_ends() {
    let mut state = bench(
        r#"{"id":1,"title":"Washer","work":{"select":{"part":"thrust washer","unit":"inch","by":"range",
            "places":[{"name":"housing depth"}],
            "rows":[{"most":0.0949,"thick":0.092,"code":"A"},{"least":0.095,"most":0.0979,"thick":0.095,"code":"B"}]}}}"#,
    );
    read(&mut state, at(1), 0.1, "in");
    assert_eq!(advice(&state), Advice::OutOfTable(0.1));
    assert_eq!(ask(&state), Ask::Choose);
    read(&mut state, at(1), 0.0962, "in");
    assert_eq!(take(&mut state), [Piece::coded("B", Some(0.095))]);
    assert_eq!(ask(&state), Ask::Close);
    choose(&mut state, &[Piece::coded("A", Some(0.092))]).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
    assert_eq!(lines(&state)[2], "round 1: “B” 0.095 in: within limits");
}

const SHELLS: &str = r#"{"id":1,"title":"Shells","work":{"select":{"part":"main bearing shells","by":"code",
    "codes":{"down_name":"case code","across_name":"crankshaft code","down":["A","B"],"across":["1","2","3"],
    "cells":[["green","brown","black"],["brown","black",""]]}}}}"#;

#[test]
fn shells_are_chosen_by_two_codes() {
    let mut state = bench(SHELLS);
    assert_eq!(ask(&state), Ask::Code);
    assert_eq!(
        choose(&mut state, &[Piece::coded("green", None)]),
        Err(Refused::NoCodes)
    );
    let code = |down: &str, across: &str| Intent::Code {
        step: STEP,
        down: down.to_owned(),
        across: across.to_owned(),
    };
    assert_eq!(send(&mut state, code("B", "")), Err(Refused::NoCodes));
    for (down, across) in [("B", "3"), ("C", "1")] {
        send(&mut state, code(down, across)).unwrap();
        assert_eq!(advice(&state), Advice::NoSuchCodes, "{down}{across}");
        assert_eq!(ask(&state), Ask::Choose);
    }
    send(&mut state, code("b", "2")).unwrap();
    assert_eq!(take(&mut state), [Piece::coded("black", None)]);
    assert_eq!(ask(&state), Ask::Close);
    assert_eq!(
        lines(&state)[2..],
        [
            "case code b, crankshaft code 2",
            "round 1: “black”: within limits"
        ]
    );
    // The code was misread: what is in is no longer what the table says.
    send(&mut state, code("A", "1")).unwrap();
    assert_eq!(ask(&state), Ask::Finding(What::Pack));
}

/// A unit corrected in the plan asks for what was read in the other one again.
#[test]
fn a_changed_unit_asks_again() {
    let mut state = by_gap();
    read(&mut state, at(1), 0.9, "mm");
    read(&mut state, at(2), 0.9, "mm");
    take(&mut state);
    let edit = Intent::EditStep {
        step: STEP,
        field: "select/unit".to_owned(),
        value: "1".to_owned(),
    };
    send(&mut state, edit).unwrap();
    assert_eq!(ask(&state), Ask::Read(at(1)));
}

#[test]
fn a_pack_that_makes_no_sense_is_refused() {
    let mut state = by_trial();
    for piece in [
        Piece::shims(0.0, 1),
        Piece::shims(-0.1, 1),
        Piece::shims(f64::NAN, 1),
        Piece::shims(0.1, 0),
        Piece::shims(0.1, 100),
        Piece::coded(" ", None),
    ] {
        assert!(matches!(choose(&mut state, &[piece]), Err(Refused::NoSense(_))));
    }
    assert!(state.progress(STEP).rounds.is_empty());
}

/// By touch alone: a box, a table and a trial, then the same from its file.
#[test]
fn all_of_it_is_planned_by_touch_and_survives_its_file() {
    let step = Step::new(STEP, "Shims", blank("Select").unwrap());
    let plan = Sheet::new("Plan", vec![step.clone()]);
    let mut step = step;
    let mut put = |path: &str, value: &str| set(&plan, &mut step, path, value).map_err(|e| e.to_string());
    for (path, value) in [
        ("select/part", "shims"),
        ("select/unit", "1"),
        ("place/1/name", "gap, top"),
        ("place/add", ""),
        ("select/counts", "1"),
        ("select/allowance", "−0.004"),
        ("select/tolerance", ".001"),
        ("shim/add", ""),
        ("shim/1/thick", ".010"),
        ("shim/1/count", "3"),
        ("shim/1/between", "yes"),
        ("row/add", ""),
        ("row/1/least", "0.04"),
        ("row/1/most", "0.05"),
        ("row/1/thick", "0.045"),
        ("row/1/code", "B"),
        ("select/trial", "yes"),
        ("trial/torque", "2"),
        ("trial/loose", "yes"),
        ("trial/least", "5"),
        ("trial/most", "9"),
        ("trial/per", "0.0005"),
        ("trial/thicker", "1"),
        ("codes/down", "A, B"),
        ("codes/across", "1,2, 3"),
        ("codes/down_name", "case code"),
        ("codes/row/1", "green, –, black"),
    ] {
        assert_eq!(put(path, value), Ok(()), "{path}");
    }
    for (path, value, said) in [
        (
            "place/2/name",
            "gap, top",
            "Another place of this step has that name.",
        ),
        ("row/1/least", "0.06", "The lower limit is above the upper one."),
        ("trial/least", "10", "The lower limit is above the upper one."),
        ("codes/down", "A, a", "“a” stands there twice."),
        (
            "codes/row/0",
            "1, 2, 3, 4",
            "The line of “A” has 4 parts, and across the top are 1, 2, 3: enter one part for each of these, with commas, – where the manual has nothing.",
        ),
    ] {
        assert_eq!(put(path, value), Err(said.to_owned()), "{path}");
    }
    let Work::Select(select) = &step.work else {
        panic!()
    };
    let codes = select.codes.clone().unwrap();
    assert_eq!(codes.at("b", "3"), Some("black"));
    assert_eq!(codes.at("B", "2"), None);
    let sheet = Sheet::new("Plan", vec![step.clone()]);
    assert_eq!(Sheet::from_json(&sheet.to_json()), Ok(sheet));
    // Trial by itself has no key to take the trial out by.
    set(&plan, &mut step, "select/by", "1").unwrap();
    assert!(
        fields(&plan, &step)
            .iter()
            .all(|field| field.id != "select/trial")
    );
    assert!(set(&plan, &mut step, "select/trial", "no").is_err());
}

#[test]
fn a_box_has_twelve_sizes_at_most() {
    let mut step = Step::new(STEP, "Shims", blank("Select").unwrap());
    let plan = Sheet::new("Plan", vec![step.clone()]);
    for _ in 0..12 {
        set(&plan, &mut step, "shim/add", "").unwrap();
    }
    assert!(set(&plan, &mut step, "shim/add", "").is_err());
}

/// Work with every field filled is written with no field that the schema doesn't name.
#[test]
fn the_schema_names_every_field_of_a_choice() {
    let schema: Value = serde_json::from_str(include_str!("../../public/job-form.schema.json")).unwrap();
    let text = r#"{"part":"x","unit":"thou","by":"code","places":[{"id":1,"name":"a"}],"counts":"least","allowance":1,
        "tolerance":1,"shims":[{"id":1,"thick":1,"count":2,"between":true}],
        "rows":[{"id":1,"least":1,"most":2,"thick":1,"code":"A"}],
        "codes":{"down_name":"a","across_name":"b","down":["A"],"across":["1"],"cells":[["x"]]},
        "trial":{"torque":"pound_inch","loose":true,"least":1,"most":2,"thicker":"raises","per":1}}"#;
    let select: Select = json::read(text).unwrap();
    let written: Value = serde_json::from_str(&json::write(&select).unwrap()).unwrap();
    let expected: Value = serde_json::from_str(text).unwrap();
    let keys = |value: &Value| value.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    assert_eq!(keys(&written), keys(&expected), "every field is filled");
    let names = |path: &str| schema.pointer(path).and_then(Value::as_object).unwrap();
    for (path, value) in [
        ("/$defs/select/properties", &written),
        (
            "/$defs/select/properties/places/items/properties",
            &written["places"][0],
        ),
        (
            "/$defs/select/properties/shims/items/properties",
            &written["shims"][0],
        ),
        (
            "/$defs/select/properties/rows/items/properties",
            &written["rows"][0],
        ),
        ("/$defs/select/properties/codes/properties", &written["codes"]),
        ("/$defs/select/properties/trial/properties", &written["trial"]),
    ] {
        for name in keys(value) {
            assert!(names(path).contains_key(&name), "{path}: {name}");
        }
    }
}

#[test]
fn an_aim_without_a_tolerance_takes_the_nearest_pack_and_passes_no_verdict() {
    let mut state = bench(
        r#"{"id":1,"title":"Shims","work":{"select":{"places":[{"name":"gap"}],
            "shims":[{"thick":0.4,"count":1},{"thick":0.5,"count":1}]}}}"#,
    );
    read(&mut state, at(1), 0.46, "mm");
    assert_eq!(take(&mut state), [Piece::shims(0.5, 1)]);
    assert_eq!(ask(&state), Ask::Close);
    assert_eq!(
        lines(&state)[1],
        "round 1: 0.50 mm, wanted 0.46 mm, leaves −0.04 mm"
    );
    let Work::Select(select) = &state.step(STEP).unwrap().work else {
        panic!()
    };
    assert_eq!(aim(select, &state.progress(STEP)).unwrap().unwrap().window, None);
}

/// The gap gives the first pack, what it then reads the next one.
#[test]
fn a_gap_gives_the_first_pack_and_the_trial_the_next() {
    let mut state = bench(&format!(
        r#"{{"id":1,"title":"Shims behind the output bearing","work":{{"select":{{"part":"shims",
            "places":[{{"name":"gap at 12 o’clock"}},{{"name":"gap at 6 o’clock"}}],"allowance":-0.1,
            "tolerance":0.05,{BOX},"trial":{{"least":0.05,"most":0.15}}}}}}}}"#
    ));
    read(&mut state, at(1), 0.72, "mm");
    read(&mut state, at(2), 0.7, "mm");
    // 0.71 − 0.10 = 0.61 ± 0.05.
    assert_eq!(take(&mut state), [Piece::shims(0.5, 1), Piece::shims(0.1, 1)]);
    read(&mut state, What::Trial, 0.18, "mm");
    assert_eq!(ask(&state), Ask::Finding(What::Trial));
    // 0.08 thicker: 0.68, and 0.63 to 0.73 will do.
    assert_eq!(take(&mut state), [Piece::shims(0.5, 1), Piece::shims(0.2, 1)]);
    read(&mut state, What::Trial, 0.08, "mm");
    assert_eq!(ask(&state), Ask::Close);
    let said = lines(&state);
    assert_eq!(
        said[2],
        "round 1: 0.50 + 0.10 mm, together 0.60 mm, wanted 0.61 mm, leaves 0.11 mm"
    );
    // The trial says more than the gap now: 0.08, where the gap would leave 0.01.
    assert_eq!(said[4], "round 2: 0.50 + 0.20 mm, together 0.70 mm");
}

/// One washer at a time, out of the manual's table.
#[test]
fn a_washer_that_reads_wrong_is_changed_for_another_of_the_table() {
    let mut state = bench(
        r#"{"id":1,"title":"Washer","work":{"select":{"part":"thrust washer","by":"range",
            "places":[{"name":"depth"}],"trial":{"least":0.05,"most":0.15},
            "rows":[{"least":2.4,"most":2.49,"thick":2.3,"code":"A"},{"least":2.5,"most":2.59,"thick":2.4,"code":"B"}]}}}"#,
    );
    read(&mut state, at(1), 2.45, "mm");
    assert_eq!(take(&mut state), [Piece::coded("A", Some(2.3))]);
    read(&mut state, What::Trial, 0.21, "mm");
    assert_eq!(take(&mut state), [Piece::coded("B", Some(2.4))]);
    read(&mut state, What::Trial, 0.4, "mm");
    let Advice::Miss { wanted, below, above } = advice(&state) else {
        panic!("{:?}", advice(&state));
    };
    assert_eq!((wanted, above), (2.7, None));
    assert_eq!(below.unwrap().pieces, [Piece::coded("B", Some(2.4))]);
}
