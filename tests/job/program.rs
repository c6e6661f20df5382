//! One fastening as a little program: oil, snug, torque, angle, loosen, again.

use super::sheet;
use halfcase::job::fasteners;
use halfcase::job::form;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::fasten::{self, Fasten};
use halfcase::job::progress::{Progress, next_fastener};
use halfcase::job::record::{Event, Goal, Record, SetTo, Setting};
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::text_form::{said, stages};
use halfcase::trade::stages::{Act, Deed, Stage, StagesError, Way, angle_words, check};

fn lines(text: &str) -> Vec<Stage> {
    stages::read_line(text).unwrap_or_else(|why| panic!("{text}: {why}"))
}

fn of(step: &Step) -> &Fasten {
    match &step.work {
        Work::Fasten(fasten) => fasten,
        other => panic!("{other:?}"),
    }
}

/// A head of the walking tractor: four bolts, by the stages given.
fn head(stages: &str) -> Sheet {
    sheet(&format!(
        r#"{{"id":1,"title":"Head","work":{{"fasten":{{"thread":"M10","torque":"40 N·m",
            "layout":{{"circle":{{"count":4}}}},"stages":{stages}}}}}}}"#
    ))
}

/// How manuals print a torque with an angle (common practice, no source).
#[test]
fn a_torque_and_its_angles_are_read_wherever_a_torque_is() {
    for (text, written) in [
        ("30 ft·lb + 120°", "30 ft·lb; 120°"),
        ("30 ft-lb then 120 deg", "30 ft·lb; 120°"),
        ("30 ft·lb + 90° + 90°", "30 ft·lb; 90°; 90°"),
        ("30 ft·lb, then turn another 1/4 turn", "30 ft·lb; 90°"),
        ("30 ft lbs plus 120° ± 5°", "30 ft·lb; 120° ± 5°"),
        ("30 ft lbs + 120 +/- 5 deg", "30 ft·lb; 120° ± 5°"),
        ("9 +2/-0 Nm + 60°", "9 +2/−0 N·m; 60°"),
        ("20–25 N·m 90°", "20–25 N·m; 90°"),
        ("30 ft·lb (41 N·m) + 120°", "30 ft·lb; 120°"),
        ("9 ± 1 N·m", ""),
        ("at most 12 N·m", ""),
    ] {
        let said = said::read(text, None).unwrap_or_else(|why| panic!("{text}: {why}"));
        assert_eq!(stages::line(&said.stages), written, "{text}");
        // What was begun with it, what a table and what a file says.
        let begun = fasten::begin("M8", text).unwrap();
        assert_eq!(
            (begun.torque, &begun.stages),
            (said.torque, &said.stages),
            "{text}"
        );
        let table = fasteners::read(&format!("thread;torque\nM8;\"{text}\"\n"), StepId(1)).unwrap();
        assert_eq!(of(&table[0]).stages, said.stages, "{text}");
        let read = sheet(&format!(
            r#"{{"id":1,"title":"a","work":{{"fasten":{{"thread":"M8","torque":"{text}","layout":"single"}}}}}}"#
        ));
        assert_eq!(
            (of(&read.steps[0]).torque, &of(&read.steps[0]).stages),
            (said.torque, &said.stages)
        );
        assert_eq!(Sheet::from_json(&read.to_json()).unwrap(), read);
    }
    for text in [
        "30 ft·lb + 400°",
        "120°",
        "30 + 120°",
        "30 ft·lb + 0°",
        "30 ft·lb + 5° ± 9°",
    ] {
        assert!(
            said::read(text, None).map_or(true, |said| check(&said.stages).is_err()),
            "{text}"
        );
    }
}

#[test]
fn a_conversion_in_brackets_that_says_something_else_is_told() {
    // 30 lbf·ft is 40.67 N·m (30 × 1.355 818).
    let why = said::read("30 ft·lb (61 N·m)", None).unwrap_err();
    assert_eq!(
        why,
        "30 ft·lb and 61 N·m are not one torque: the first is 40.7 N·m. Look again, and write the right one alone."
    );
    assert_eq!(fasten::begin("M8", "30 ft·lb (61 N·m)").unwrap_err(), why);
    let table = fasteners::read("thread;torque\nM8;30 ft·lb (61 N·m)\n", StepId(1)).unwrap_err();
    assert!(table.to_string().contains(&why), "{table}");
    let text = head("[]").to_json().replace("40 N·m", "30 ft·lb (61 N·m)");
    assert!(
        Sheet::from_json(&text)
            .unwrap_err()
            .to_string()
            .contains("not one torque")
    );
    let sound = head("[]").to_json().replace("40 N·m", "30 ft·lb (41 N·m)");
    assert_eq!(
        of(&Sheet::from_json(&sound).unwrap().steps[0]).torque.text(),
        "30 ft·lb"
    );
    let mut step = head("[]").steps[0].clone();
    let sheet = head("[]");
    let told = form::set(&sheet, &mut step, "fasten/torque", "30 ft·lb (61 N·m)").unwrap_err();
    assert_eq!(told.to_string(), why);
    assert_eq!(of(&step).torque.text(), "40 N·m");
}

#[test]
fn every_stage_is_written_and_read_back() {
    let line = "oil; snug by hand; snug 10 N·m; at most 20 N·m; 120° ± 5°, on the same fastener; loosen; dry; \
                15–20 N·m, in any order; again; 22.5°";
    let parts: Vec<Stage> = line
        .split("; ")
        .map(|part| stages::read(part).unwrap_or_else(|why| panic!("{part}: {why}")))
        .collect();
    assert_eq!(stages::line(&parts), line);
    assert_eq!(
        (parts[4].act, parts[4].way),
        (
            Act::Angle {
                degrees: 120.0,
                off: 5.0
            },
            Way::SameFastener
        )
    );
    assert_eq!(angle_words(120.0, 5.0), "120° ± 5°");
    let text = head(r#"["oil","40 N·m","loosen","20 N·m","120° ± 5°, on the same fastener"]"#);
    assert_eq!(Sheet::from_json(&text.to_json()).unwrap(), text);
    assert!(text.to_json().contains("\"120° ± 5°, on the same fastener\""));
}

#[test]
fn what_cannot_be_carried_out_is_told() {
    let parse =
        |line: &str| -> Vec<Stage> { line.split("; ").map(|part| stages::read(part).unwrap()).collect() };
    for line in [
        "oil; 20 N·m; 40 N·m; loosen; 20 N·m; 90°",
        "snug by hand; 90°",
        "20 N·m; 90°; 30 N·m; again",
        "20 N·m; 60°, on the same fastener",
        "40 N·m; again; again",
    ] {
        assert_eq!(check(&parse(line)), Ok(()), "{line}");
    }
    for (line, error) in [
        ("loosen; 20 N·m", StagesError::NothingTight { at: 0 }),
        ("20 N·m; loosen", StagesError::EndsLoose),
        ("oil", StagesError::EndsLoose),
        ("20 N·m; oil", StagesError::OilLate { at: 1 }),
        ("again", StagesError::NothingAgain { at: 0 }),
        ("20 N·m; 90°; again", StagesError::NothingAgain { at: 2 }),
        ("20 N·m; loosen; again", StagesError::NothingAgain { at: 2 }),
        ("20 N·m; loosen; 90°", StagesError::AngleWithoutStart { at: 2 }),
        (
            "oil; 20 N·m, on the same fastener",
            StagesError::AloneOnIt { at: 1 },
        ),
        ("20 N·m, on the same fastener", StagesError::AloneOnIt { at: 0 }),
        ("40 N·m; 20 N·m", StagesError::NotRising { at: 1 }),
        ("20 N·m; 5° ± 5°", StagesError::Angle { at: 1 }),
        ("20 N·m; 358° ± 5°", StagesError::Angle { at: 1 }),
    ] {
        assert_eq!(check(&parse(line)), Err(error), "{line}");
        assert!(stages::read_line(line).unwrap_err().ends_with('.'));
        // A file's is opened, and says why it can't be worked.
        let opened = head(&serde_json::to_string(&line.split("; ").collect::<Vec<_>>()).unwrap());
        assert_eq!(of(&opened.steps[0]).stages_wrong(), Some(error.to_string()));
    }
}

/// Tallies the whole of a step as a thumb does, and tells what was asked: (pass, place).
fn played(sheet: &Sheet) -> Vec<(usize, usize)> {
    let step = &sheet.steps[0];
    let mut record = Record::default();
    let mut asked = Vec::new();
    while let Some(next) = next_fastener(step, &Progress::of(&record).step(step.id)) {
        asked.push((next.pass, next.place));
        let event = Event::Tallied {
            pass: next.pass,
            place: next.place,
            set: super::set_to(0.0, ""),
            goal: Some(of(step).goal(next.pass)),
        };
        record.add(super::MORNING, Some(step.id), "", event);
        assert!(asked.len() <= 40, "the tally must end");
    }
    assert_eq!(asked.len(), of(step).tally_count());
    assert_eq!(Progress::of(&record).step(step.id).too_tight(of(step)), 0);
    asked
}

#[test]
fn oil_and_loosening_are_one_touch_and_the_rest_goes_round() {
    let played = played(&head(r#"["oil","40 N·m","loosen","20 N·m","90°"]"#));
    // A circle of four goes across: 1, 3, 2, 4.
    let round = |pass| [0, 2, 1, 3].map(|place| (pass, place)).to_vec();
    let wanted = [vec![(0, 0)], round(1), vec![(2, 0)], round(3), round(4)].concat();
    assert_eq!(played, wanted);
}

#[test]
fn several_stages_on_the_same_fastener_come_before_the_next() {
    let played = played(&head(
        r#"["snug 5 N·m","20 N·m, in any order","90°, on the same fastener"]"#,
    ));
    let (snug, rest) = played.split_at(4);
    assert_eq!(snug, [(0, 0), (0, 2), (0, 1), (0, 3)]);
    assert_eq!(
        rest,
        [(1, 0), (2, 0), (1, 1), (2, 1), (1, 2), (2, 2), (1, 3), (2, 3)]
    );
}

#[test]
fn the_record_says_what_was_done_in_each_stage() {
    let sheet = head(r#"["oil","snug by hand","40 N·m","again"]"#);
    let fasten = of(&sheet.steps[0]);
    let goals: Vec<Goal> = (0..4).map(|pass| fasten.goal(pass)).collect();
    assert_eq!(goals[0], Goal::All(Deed::Oil));
    assert!(matches!(goals[1], Goal::Hand { .. }) && matches!(goals[2], Goal::Torque { .. }));
    assert!(matches!(goals[3], Goal::Unmoved { newton_metres, .. } if newton_metres == 40.0));
    // One stage's tally never stands for another's.
    for (a, one) in goals.iter().enumerate() {
        for (b, other) in goals.iter().enumerate() {
            assert_eq!(one.is(*other), a == b);
        }
    }
    for goal in &goals {
        let text = halfcase::job::json::write(goal).unwrap();
        assert_eq!(text, serde_json::to_string(goal).unwrap());
        assert_eq!(halfcase::job::json::read::<Goal>(&text).unwrap(), *goal);
    }
    let mut record = Record::default();
    let bare = |to| Setting {
        to,
        tool: String::new(),
        adapter: false,
        instead: None,
    };
    let sets = [
        bare(SetTo::All(Deed::Oil)),
        bare(SetTo::Hand),
        super::set_to(40.0, "Middle"),
        super::set_to(40.0, "Middle"),
    ];
    for (pass, set) in sets.into_iter().enumerate() {
        let goal = Some(goals[pass]);
        let event = Event::Tallied {
            pass,
            place: 0,
            set,
            goal,
        };
        record.add(super::MORNING, Some(StepId(1)), "", event);
    }
    let text = halfcase::job::json::write(&record).unwrap();
    assert_eq!(halfcase::job::json::read::<Record>(&text).unwrap(), record);
    let words: Vec<String> = record
        .entries()
        .iter()
        .map(|entry| halfcase::job::journal::words(entry, &sheet))
        .collect();
    assert_eq!(
        words,
        [
            "pass 1: threads oiled",
            "bolt 1, pass 2: snug by hand",
            "bolt 1, pass 3: 40 N·m with Middle",
            "bolt 1, pass 4: 40 N·m with Middle, did not move"
        ]
    );
}

#[test]
fn a_program_is_built_by_touch() {
    let sheet = head("[]");
    let mut step = sheet.steps[0].clone();
    let mut set = |path: &str, value: &str| {
        form::set(&sheet, &mut step, path, value)
            .map_err(|error| error.to_string())
            .map(|()| stages::line(&of(&step).stages))
    };
    // Added in the order of the tiles: oil, torque, angle; then put in order, changed, taken out.
    assert_eq!(set("stage/add", "4").unwrap(), "40 N·m");
    assert_eq!(set("stage/add", "5").unwrap(), "40 N·m; 90°");
    assert_eq!(set("stage/add", "0").unwrap(), "40 N·m; 90°; oil");
    set("stage/3/up", "yes").unwrap();
    assert_eq!(set("stage/2/up", "yes").unwrap(), "oil; 40 N·m; 90°");
    assert_eq!(set("stage/2/torque", "30 ft·lb").unwrap(), "oil; 30 ft·lb; 90°");
    set("stage/3/angle", "120").unwrap();
    let told = set("stage/3/angle", "120 ± 5°").unwrap();
    assert_eq!(told, "oil; 30 ft·lb; 120° ± 5°");
    for wrong in ["0", "400°", "5° ± 6°", "30 N·m", ""] {
        assert!(set("stage/3/angle", wrong).is_err(), "{wrong}");
    }
    assert_eq!(
        set("stage/3/way", "2").unwrap(),
        "oil; 30 ft·lb; 120° ± 5°, on the same fastener"
    );
    assert_eq!(
        set("stage/1/down", "yes").unwrap(),
        "30 ft·lb; oil; 120° ± 5°, on the same fastener"
    );
    assert_eq!(
        set("stage/2/what", "7").unwrap(),
        "30 ft·lb; loosen; 120° ± 5°, on the same fastener"
    );
    assert_eq!(
        set("stage/2/remove", "yes").unwrap(),
        "30 ft·lb; 120° ± 5°, on the same fastener"
    );
    for path in [
        "stage/0/up",
        "stage/1/up",
        "stage/2/down",
        "stage/9/remove",
        "stage/1/angle",
        "stage/x",
    ] {
        assert!(set(path, "yes").is_err(), "{path}");
    }
    // A list that can't be carried out stays as it was put, and the plan says why.
    set("stage/2/remove", "yes").unwrap();
    set("stage/1/what", "5").unwrap();
    let shown = form::fields(&sheet, &step);
    assert!(
        shown
            .iter()
            .any(|field| field.label.contains("an angle needs a torque to start from"))
    );
    // Storage opens it as it is.
    let text = halfcase::job::json::write(&step).unwrap();
    assert_eq!(halfcase::job::json::read::<Step>(&text).unwrap(), step);
}

#[test]
fn another_torque_is_asked_of_the_stages_that_asked_for_the_old() {
    let sheet = head(r#"["snug 10 N·m","40 N·m","60°"]"#);
    let mut step = sheet.steps[0].clone();
    form::set(&sheet, &mut step, "fasten/torque", "44 N·m").unwrap();
    assert_eq!(stages::line(&of(&step).stages), "snug 10 N·m; 44 N·m; 60°");
    form::set(&sheet, &mut step, "fasten/torque", "30 N·m then 90°").unwrap();
    assert_eq!(stages::line(&of(&step).stages), "30 N·m; 90°");
    assert_eq!(lines("30 N·m + 90°"), of(&step).stages);
}
