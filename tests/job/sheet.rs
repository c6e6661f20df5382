//! Reading a sheet: what is kept, what is refused and in which words.

use halfcase::job::form;
use halfcase::job::id::ReadingId;
use halfcase::job::kinds::check::{Fed, How, Worked};
use halfcase::job::kinds::seat::manual::{Manual, ManualChill, ManualHeat};
use halfcase::job::kinds::{Check, Fasten, LIST, LiftWork, Seat, SeatDepth, Work, fasten};
use halfcase::job::measuring::offered_as_readings;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::trade::heat_plan::{ChillMeans, CoolMeans, HeatMeans};
use halfcase::trade::quantity::{Stated, parse_temperature};
use serde_json::Value;

fn refusal(text: &str) -> String {
    Sheet::from_json(text).unwrap_err().to_string()
}

const TURN: &str = r#"{"id":1,"title":"Turn","work":{"turn":{}}}"#;

#[test]
fn fields_of_a_newer_form_are_kept_and_written_back() {
    let text = format!(
        r#"{{"version":1,"title":"Gearbox","bag_colour":"none","steps":[{{"id":1,"title":"Turn","weather":"dry","work":{{"turn":{{}}}}}},{TURN2}]}}"#,
        TURN2 = TURN.replace("\"id\":1", "\"id\":2")
    );
    let written = Sheet::from_json(&text).unwrap().to_json();
    assert!(written.contains(r#""bag_colour": "none""#), "{written}");
    assert!(written.contains(r#""weather": "dry""#), "{written}");
}

#[test]
fn a_broken_file_names_its_line() {
    let words = refusal("{\n\"version\": 1,\n\"title\": \"x\",\n\"steps\": [{]\n}");
    assert_eq!(words, "Line 4 is not a job sheet: key must be a string.");
}

#[test]
fn an_unknown_kind_of_work_is_refused_by_name() {
    let words = refusal(r#"{"version":1,"title":"x","steps":[{"id":1,"title":"y","work":{"juggle":{}}}]}"#);
    assert!(
        words.starts_with("Line 1 (steps, 1st, work) is not a job sheet: unknown variant `juggle`"),
        "{words}"
    );
}

#[test]
fn a_torque_without_a_unit_is_refused() {
    let words = refusal(
        r#"{"version":1,"title":"x","steps":[{"id":1,"title":"y","work":{"fasten":{"thread":"M6","torque":"9","layout":"single"}}}]}"#,
    );
    assert_eq!(
        words,
        "Line 1 (steps, 1st, work, fasten, torque) is not a job sheet: The unit is missing; \
         add N·m, ft·lb, in·lb, kgf·m, kgf·cm or oz·in."
    );
}

/// A manual that says everything.
fn manual() -> Manual {
    let stated = |text: &str| parse_temperature(text, None).unwrap();
    Manual {
        heat: Some(ManualHeat {
            means: Some(HeatMeans::OilBath),
            to: Some(stated("250 °F")),
            never_over: Some(stated("275 °F")),
            flash_point: Some(stated("430 °F")),
        }),
        chill: Some(ManualChill {
            means: Some(ChillMeans::LiquidNitrogen),
            to: Some(stated("-196 °C")),
        }),
    }
}

const WORKED: &str = "/$defs/check/properties/readings/items/properties/worked/properties";

/// Work with every field filled is written with no field that the schema doesn't name.
#[test]
fn the_schema_names_every_field() {
    let schema: Value = serde_json::from_str(include_str!("../../public/job-form.schema.json")).unwrap();
    let properties = |path: &str| schema.pointer(path).and_then(Value::as_object).unwrap();
    let seat = Seat {
        face_mm: Some(54.0),
        shoulder_mm: Some(50.0),
        cool: Some(CoolMeans::Freezer),
        open_flame: true,
        through_balls: true,
        struck: true,
        manual: Some(manual()),
        depth: Some(SeatDepth::default()),
        ..Seat::default()
    };
    let fasten = Fasten {
        seal: true,
        self_locking: true,
        old_locked: true,
        ..fasten::begin("M8", "20 N·m").unwrap()
    };
    let lift = LiftWork {
        boom_mm: Some(900.0),
        ..LiftWork::default()
    };
    let worked = Worked {
        calculation: "backlash".to_owned(),
        fed: vec![Fed {
            field: "place_1".to_owned(),
            reading: Some(ReadingId(1)),
            number: Some(Stated::plain(0.1)),
            unit: "mm".to_owned(),
            word: "through".to_owned(),
        }],
        ..Worked::of(How::Calculation, vec![ReadingId(1)])
    };
    let offered: Vec<&str> = offered_as_readings().map(|one| one.id).collect();
    assert_eq!(properties(WORKED)["calculation"]["enum"], Value::from(offered));
    let all = [
        ("/$defs/seat/properties", serde_json::to_value(&seat)),
        (
            "/$defs/seat/properties/manual/properties/heat/properties",
            serde_json::to_value(manual()).map(|manual| manual["heat"].clone()),
        ),
        (
            "/$defs/seat/properties/manual/properties/chill/properties",
            serde_json::to_value(manual()).map(|manual| manual["chill"].clone()),
        ),
        (
            "/$defs/check/properties",
            serde_json::to_value(Check {
                running: true,
                ..Check::default()
            }),
        ),
        (WORKED, serde_json::to_value(&worked)),
        (
            "/$defs/check/properties/readings/items/properties/worked/properties/fed/items/properties",
            serde_json::to_value(&worked.fed[0]),
        ),
        ("/$defs/fasten/properties", serde_json::to_value(&fasten)),
        ("/$defs/lift/properties", serde_json::to_value(&lift)),
        (
            "/$defs/lift/properties/way/properties/hands/properties",
            serde_json::to_value(&lift.way).map(|way| way["hands"].clone()),
        ),
    ];
    for (path, written) in all {
        for name in written.unwrap().as_object().unwrap().keys() {
            assert!(properties(path).contains_key(name), "{path}: {name}");
        }
    }
}

/// The schema's entry for a number: "seat/depth/least_mm" below `$defs`.
fn entry<'a>(schema: &'a Value, stored: &str) -> &'a Value {
    let defs = &schema["$defs"];
    let mut at = &Value::Null;
    for (depth, name) in stored.split('/').enumerate() {
        at = if depth == 0 {
            &defs[name]
        } else {
            &at["properties"][name]
        };
        if at.get("items").is_some() {
            at = &at["items"];
        }
        if let Some(place) = at.get("$ref").and_then(Value::as_str) {
            at = &defs[place.trim_start_matches("#/$defs/")];
        }
    }
    at
}

/// A number has one range at every door, the schema's among them.
#[test]
fn the_schema_has_the_range_of_every_number() {
    let schema: Value = serde_json::from_str(include_str!("../../public/job-form.schema.json")).unwrap();
    let mut steps = Vec::new();
    for kind in &LIST {
        let work = (kind.blank)();
        steps.push(Step::new(
            StepId(1),
            kind.word,
            work.unwrap_or_else(|| Work::Fasten(fasten::begin("M8", "20 N·m").unwrap())),
        ));
    }
    let plan = Sheet::new("Plan", steps.clone());
    for path in ["reading/add", "bore/add", "bore/2/journal", "part/add"] {
        form::set(&plan, &mut steps[1], path, "yes").unwrap();
    }
    let chosen = steps.iter().position(|step| step.title == "Select").unwrap();
    for path in ["shim/add", "row/add", "select/trial"] {
        form::set(&plan, &mut steps[chosen], path, "yes").unwrap();
    }
    let mut seen_at = std::collections::BTreeSet::new();
    for step in &steps {
        step.visit(&mut |seen| {
            let entry = entry(&schema, seen.stored);
            let range = match entry.get("anyOf") {
                // Not said yet, or within the range.
                Some(either) => {
                    assert_eq!(either[0]["const"], 0, "{}", seen.stored);
                    &either[1]
                }
                None => entry,
            };
            let ends = (range["minimum"].as_f64(), range["maximum"].as_f64());
            assert_eq!(
                ends,
                (Some(seen.range.0), Some(seen.range.1)),
                "{}: {entry}",
                seen.stored
            );
            seen_at.insert(seen.stored);
        });
    }
    assert!(seen_at.len() >= 45, "{seen_at:?}");
}

/// A file used to be asked for no range at all: a wall of nine metres came in and no screen took it.
#[test]
fn a_number_out_of_its_range_is_refused_by_step_and_field() {
    let seat = |length: &str, wall: &str| {
        format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":8,"title":"Bearing","work":{{"seat":{{"part":"b",
            "hole":{{"class":{{"nominal_mm":62,"class":"N7"}}}},"shaft":{{"bearing_outer":{{"nominal_mm":62}}}},
            "housing":"cast_aluminium","part_material":"bearing_steel","length_mm":{length},"boss_outside_mm":84,
            "wall_mm":{wall},"housing_limit_c":120,"part_limit_c":120}}}}}}]}}"#
        )
    };
    assert_eq!(
        refusal(&seat("16", "9000")),
        "Step 8, “wall that holds the heat”: Enter a number from 0.1 to 2000 mm."
    );
    assert_eq!(
        refusal(&seat("-16", "8")),
        "Step 8, “length in contact”: Enter a number from 0.1 to 2000 mm."
    );
    // What a bench has kept is opened as it is, and can be changed.
    let kept: Sheet = halfcase::job::json::read(&seat("16", "9000")).unwrap();
    assert_eq!(kept.check(), Ok(()));
    // Zero is what a plan says of a size nobody has told yet.
    assert!(Sheet::from_json(&seat("0", "0")).is_ok());
    let sling = |angle: &str| {
        format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":3,"title":"Engine","work":{{"lift":{{"load":"engine",
            "mass_kg":48,"way":{{"sling":{{"legs":2,"angle_deg":{angle}}}}}}}}}}}]}}"#
        )
    };
    assert_eq!(
        refusal(&sling("120")),
        "Step 3, “legs, from the horizontal”: Enter a number from 0 to 90°."
    );
    // A flat sling is what the STOP is for.
    assert!(Sheet::from_json(&sling("0")).is_ok());
}

/// 30 for 0.3 would ask for thirty times the torque.
#[test]
fn a_pass_in_percent_is_refused() {
    for share in ["30", "1.01", "0", "-0.3"] {
        let said = refusal(&format!(
            r#"{{"version":1,"title":"x","steps":[{{"id":4,"title":"a","work":{{"fasten":{{"thread":"M8",
                "torque":"20 N·m","layout":"single","passes":[{{"share":{share},"round":false}}]}}}}}}]}}"#
        ));
        assert_eq!(
            said,
            "Step 4: the share of a pass lies above 0 and is 1 at most, as in 0.3: correct “passes”."
        );
    }
}

/// "40" between torques is a torque whose unit was forgotten, not a turn of 40°.
#[test]
fn a_stage_without_a_unit_is_refused() {
    let said = refusal(
        r#"{"version":1,"title":"x","steps":[{"id":1,"title":"a","work":{"fasten":{"thread":"M8",
            "torque":"40 N·m","layout":"single","stages":["snug 20 N·m","40"]}}}]}"#,
    );
    assert!(said.contains("The unit is missing"), "{said}");
}

#[test]
fn two_steps_of_one_number_are_refused() {
    let words = refusal(&format!(r#"{{"version":1,"title":"x","steps":[{TURN},{TURN}]}}"#));
    assert_eq!(words, "Two steps have the number 1: give each its own.");
}

#[test]
fn waiting_for_a_later_step_is_refused() {
    let words = refusal(
        r#"{"version":1,"title":"x","steps":[{"id":1,"title":"y","waits_for":[2],"work":{"turn":{}}},{"id":2,"title":"z","work":{"turn":{}}}]}"#,
    );
    assert_eq!(
        words,
        "Step 1 waits for step 2, which does not come before it: correct “waits_for”."
    );
}

#[test]
fn a_sheet_of_a_later_form_is_refused() {
    let words = refusal(&format!(r#"{{"version":99,"title":"x","steps":[{TURN}]}}"#));
    assert_eq!(
        words,
        "This sheet is of form 99, newer than form 1 read here: update the app first."
    );
}

#[test]
fn an_empty_sheet_is_refused() {
    assert_eq!(
        refusal(r#"{"version":1,"title":"x","steps":[]}"#),
        "The sheet has no steps: add at least one."
    );
}

#[test]
fn a_missing_field_is_found_by_line_and_by_names() {
    let text = format!(
        "{{\"version\":1,\"title\":\"x\",\"steps\":[{TURN},\n{{\"id\":2,\"title\":\"y\",\"work\":{{\"fasten\":\n{{\"torque\":\"9 N·m\"}}}}}}]}}"
    );
    assert_eq!(
        refusal(&text),
        "Line 3 (steps, 2nd, work, fasten) is not a job sheet: missing field `layout`."
    );
}
