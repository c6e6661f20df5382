//! One box of shims, or one set of washers, for several steps: what is in one is not offered in another.

use super::select::{bench, send};
use halfcase::job::form::{fields, set};
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::select::answer::Advice;
use halfcase::job::kinds::select::words::advice_words;
use halfcase::job::kinds::{Piece, Work};
use halfcase::job::reading::What;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::state::{Ask, Intent, ReadWith, State};

const INPUT: StepId = StepId(1);
const OUTPUT: StepId = StepId(2);

fn shims(id: u32, set: &str, unit: &str, sizes: &str) -> String {
    format!(
        r#"{{"id":{id},"title":"Shims {id}","work":{{"select":{{"part":"shims","by":"gap","unit":"{unit}",{set}
            "places":[{{"name":"gap"}}],"tolerance":0.0,"shims":[{sizes}]}}}}}}"#
    )
}

const SIZES: &str = r#"{"thick":1.5,"count":1},{"thick":1.0,"count":2},{"thick":0.5,"count":4}"#;
const SET: &str = r#""set":"bearing shims","#;

fn two(first: &str, second: &str) -> State {
    bench(&format!(
        "{},{}",
        shims(1, first, "millimetre", SIZES),
        shims(2, second, "millimetre", SIZES)
    ))
}

fn measure(state: &mut State, step: StepId, value: f64, unit: &str) {
    let intent = Intent::Read {
        step,
        what: What::At(ReadingId(1)),
        value,
        unit: unit.to_owned(),
        with: ReadWith::default(),
    };
    send(state, intent).unwrap();
}

fn offered(state: &State, step: StepId) -> Option<Vec<Piece>> {
    state.offered(state.step(step).unwrap())
}

fn missing(state: &State, step: StepId) -> Vec<String> {
    state.missing_words(state.step(step).unwrap())
}

fn choose(state: &mut State, step: StepId, pieces: Vec<Piece>) {
    send(state, Intent::Choose { step, pieces }).unwrap();
}

#[test]
fn a_shim_that_is_in_is_not_offered_in_another_step_and_it_says_where_it_is() {
    let mut state = two(SET, SET);
    measure(&mut state, INPUT, 1.5, "mm");
    measure(&mut state, OUTPUT, 1.5, "mm");
    assert_eq!(offered(&state, OUTPUT), Some(vec![Piece::shims(1.5, 1)]));
    choose(&mut state, INPUT, vec![Piece::shims(1.5, 1)]);
    // The fewest that are left and come to 1.5.
    let rest = vec![Piece::shims(1.0, 1), Piece::shims(0.5, 1)];
    assert_eq!(offered(&state, OUTPUT), Some(rest.clone()));
    assert_eq!(missing(&state, OUTPUT), ["1.50 mm is in: step 1."]);
    let there = state.there(state.step(OUTPUT).unwrap());
    assert_eq!(there, [Piece::shims(1.0, 1), Piece::shims(0.5, 1)]);
    choose(&mut state, OUTPUT, rest);
    // Nothing of it is missing for the step that has it.
    assert_eq!(missing(&state, INPUT), Vec::<String>::new());
    assert_eq!(offered(&state, INPUT), Some(vec![Piece::shims(1.5, 1)]));
}

#[test]
fn undo_gives_it_back_and_so_does_doing_the_step_again() {
    let mut state = two(SET, SET);
    measure(&mut state, INPUT, 1.5, "mm");
    measure(&mut state, OUTPUT, 1.5, "mm");
    choose(&mut state, INPUT, vec![Piece::shims(1.5, 1)]);
    send(&mut state, Intent::Undo).unwrap();
    assert_eq!(offered(&state, OUTPUT), Some(vec![Piece::shims(1.5, 1)]));
    choose(&mut state, INPUT, vec![Piece::shims(1.5, 1)]);
    send(&mut state, Intent::Close(INPUT)).unwrap();
    send(&mut state, Intent::Reopen(INPUT)).unwrap();
    assert_eq!(missing(&state, OUTPUT), ["1.50 mm is in: step 1."]);
    choose(&mut state, INPUT, vec![Piece::shims(0.5, 3)]);
    assert_eq!(offered(&state, OUTPUT), Some(vec![Piece::shims(1.5, 1)]));
    assert_eq!(missing(&state, OUTPUT), Vec::<String>::new());
}

#[test]
fn a_box_that_can_make_it_no_more_says_what_it_lacks() {
    let mut state = two(SET, SET);
    measure(&mut state, INPUT, 5.5, "mm");
    measure(&mut state, OUTPUT, 1.5, "mm");
    // All of it but one shim of 0.5.
    let most = vec![Piece::shims(1.5, 1), Piece::shims(1.0, 2), Piece::shims(0.5, 3)];
    choose(&mut state, INPUT, most);
    let step = state.step(OUTPUT).unwrap();
    let Work::Select(select) = &step.work else {
        panic!("a select step")
    };
    let advice = state.advice(step);
    assert_eq!(state.offered(step), None);
    let said = advice_words(select, &state.progress(OUTPUT), &advice);
    assert_eq!(
        said.lines,
        ["The box can’t make 1.50 mm.", "Nearest below: 0.50 mm."]
    );
    assert_eq!(missing(&state, OUTPUT), ["1.50 mm is in: step 1."]);
    assert_eq!(state.ask(OUTPUT, super::MORNING), Some(Ask::Choose));
}

#[test]
fn boxes_without_a_name_and_of_other_names_are_their_own() {
    for (first, second) in [("", ""), (SET, ""), (SET, r#""set":"float shims","#)] {
        let mut state = two(first, second);
        measure(&mut state, INPUT, 1.5, "mm");
        measure(&mut state, OUTPUT, 1.5, "mm");
        choose(&mut state, INPUT, vec![Piece::shims(1.5, 1)]);
        assert_eq!(offered(&state, OUTPUT), Some(vec![Piece::shims(1.5, 1)]));
    }
}

/// The inch is 25.4 mm: a shim of 0.020 in is one of 0.508 mm.
#[test]
fn a_box_is_one_in_whatever_unit_a_step_is() {
    let mut state = bench(&format!(
        "{},{}",
        shims(
            1,
            SET,
            "inch",
            r#"{"thick":0.02,"count":1},{"thick":0.01,"count":2}"#
        ),
        shims(
            2,
            SET,
            "millimetre",
            r#"{"thick":0.508,"count":1},{"thick":0.254,"count":2}"#
        )
    ));
    measure(&mut state, INPUT, 0.02, "in");
    measure(&mut state, OUTPUT, 0.508, "mm");
    choose(&mut state, INPUT, vec![Piece::shims(0.02, 1)]);
    assert_eq!(offered(&state, OUTPUT), Some(vec![Piece::shims(0.254, 2)]));
}

#[test]
fn of_a_named_set_of_washers_there_is_one_of_each() {
    let washer = |id: u32| {
        format!(
            r#"{{"id":{id},"title":"Washer {id}","work":{{"select":{{"part":"washer","by":"range",{SET}
                "places":[{{"name":"gap"}}],"rows":[{{"least":1.0,"most":1.2,"thick":1.1,"code":"B"}},
                {{"least":1.2,"most":1.4,"thick":1.3,"code":"C"}}]}}}}}}"#
        )
    };
    let mut state = bench(&format!("{},{}", washer(1), washer(2)));
    measure(&mut state, INPUT, 1.1, "mm");
    measure(&mut state, OUTPUT, 1.1, "mm");
    let wanted = Piece::coded("B", Some(1.1));
    choose(&mut state, INPUT, vec![wanted.clone()]);
    let step = state.step(OUTPUT).unwrap();
    assert_eq!(state.advice(step), Advice::InElsewhere(wanted));
    assert_eq!(state.offered(step), None);
    assert_eq!(missing(&state, OUTPUT), ["“B” 1.10 mm is in: step 1."]);
    assert_eq!(state.there(step), [Piece::coded("C", Some(1.3))]);
}

#[test]
fn the_boxs_name_is_typed_in_the_plan_and_stands_in_the_file() {
    let state = two("", "");
    let sheet = state.job().sheet.clone();
    assert!(!sheet.to_json().contains("\"set\""));
    let mut step = sheet.steps[0].clone();
    assert!(fields(&sheet, &step).iter().any(|field| field.id == "select/set"));
    set(&sheet, &mut step, "select/set", "bearing shims").unwrap();
    let mut changed = sheet;
    changed.steps[0] = step;
    assert!(changed.to_json().contains(r#""set": "bearing shims""#));
    assert_eq!(Sheet::from_json(&changed.to_json()).unwrap(), changed);
}
