//! Our reader and writer of JSON beside serde_json's: the same values, and sentences that say where.

use super::MORNING;
use halfcase::job::clock::ClockId;
use halfcase::job::id::{PartId, ReadingId};
use halfcase::job::json;
use halfcase::job::kinds::{Gauged, LiftWork, Piece};
use halfcase::job::parts::{PartKey, PartPlace};
use halfcase::job::reading::{Fact, Verdict, What};
use halfcase::job::record::{
    Compound, Entry, EntryId, Event, Facts, Goal, Instead, PhoneClock, Record, SetTo, Setting,
};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::trade::gauging::Plastic;
use halfcase::trade::quantity::TorqueUnit;
use proptest::prelude::*;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::fmt::Debug;

const EXAMPLE: &str = include_str!("../../src/job/example.json");

/// Read, written and laid out by both: nothing may differ.
fn same_by_both<T: Serialize + DeserializeOwned + PartialEq + Debug>(text: &str) -> T {
    let value: T = serde_json::from_str(text).unwrap();
    assert_eq!(json::read::<T>(text).unwrap(), value);
    let untyped: Value = serde_json::from_str(text).unwrap();
    assert_eq!(json::from_value::<T>(&untyped).unwrap(), value);
    assert_eq!(
        json::write(&value).unwrap(),
        serde_json::to_string(&value).unwrap()
    );
    assert_eq!(
        json::pretty(&value).unwrap(),
        serde_json::to_string_pretty(&value).unwrap()
    );
    value
}

fn events() -> Vec<Event> {
    let t = str::to_owned;
    vec![
        Event::Acknowledged { caution: t("press") },
        Event::Tallied {
            pass: 1,
            place: 7,
            set: Setting {
                to: SetTo::Torque {
                    value: 9.5,
                    unit: TorqueUnit::NewtonMetre,
                    decimals: 1,
                },
                tool: t("“long” one \\ ½\"\n"),
                adapter: true,
                instead: None,
            },
            goal: Some(Goal::Turn {
                degrees: 60.0,
                thread_mm: Some(8.0),
            }),
        },
        Event::Loosened,
        Event::Applied {
            compound: Compound::Words(t("gasket maker")),
            clock: ClockId(3),
        },
        Event::JointOpened,
        Event::Measured {
            what: What::Place {
                bore: ReadingId(2),
                journal: true,
                depth: 1,
                way: 0,
            },
            value: 61.987,
            unit: t("mm"),
            tool: String::new(),
            verdict: Verdict::Within,
            at_c: Some(-4.25),
            decimals: Some(4),
        },
        Event::Accepted {
            what: What::Depth,
            limits: vec![Some(0.4), None],
            reason: t("as found"),
        },
        Event::Felt {
            tight_at: t("½ turn"),
        },
        Event::Coded {
            down: t("B"),
            across: t("2"),
        },
        Event::Chosen {
            round: 2,
            pieces: vec![Piece::shims(0.1, 3), Piece::coded("green", None)],
            unit: t("mm"),
            aim: Some(0.32),
            leaves: None,
            verdict: Verdict::Outside,
        },
        Event::Gauged(Gauged::Laid(Plastic::Medium)),
        Event::Placed {
            part: PartKey::More(PartId(3)),
            place: PartPlace::Bag(t("7\t\u{1}")),
            here: 1,
            of: 2,
        },
        Event::Done {
            facts: Some(Facts::Lift {
                lift: Box::new(LiftWork::default()),
                rating_kg: Some(250.0),
                boom: Vec::new(),
            }),
        },
        Event::Skipped { reason: t("none") },
        Event::Reopened,
        Event::Overridden { reason: t("rain") },
        Event::TakenBack { entry: EntryId(4) },
        Event::Noted {
            about: None,
            words: t("🔧"),
        },
        Event::PhoneClock(PhoneClock::Jumped(-90_000)),
        Event::JobClosed,
        Event::Judged {
            part: PartKey::Own,
            unfit: t("pitted"),
        },
        Event::Ordered {
            what: What::Part(PartKey::Own),
            part: PartKey::More(PartId(2)),
        },
        Event::NewOn { part: PartKey::Own },
        Event::Said {
            fact: Fact::NoLeaks,
            holds: false,
            words: t("“low” still"),
        },
        Event::WithoutWrench {
            instead: Instead::Other(t("the shop’s “big” one")),
        },
    ]
}

/// A new kind of event stops the build here: put it into `events` too.
fn is_known(event: &Event) -> usize {
    match event {
        Event::Acknowledged { .. } => 0,
        Event::Tallied { .. } => 1,
        Event::Loosened => 2,
        Event::Applied { .. } => 3,
        Event::JointOpened => 4,
        Event::Measured { .. } => 5,
        Event::Accepted { .. } => 6,
        Event::Felt { .. } => 7,
        Event::Coded { .. } => 8,
        Event::Chosen { .. } => 9,
        Event::Gauged(_) => 10,
        Event::Placed { .. } => 11,
        Event::Done { .. } => 12,
        Event::Skipped { .. } => 13,
        Event::Reopened => 14,
        Event::Overridden { .. } => 15,
        Event::TakenBack { .. } => 16,
        Event::Noted { .. } => 17,
        Event::PhoneClock(_) => 18,
        Event::JobClosed => 19,
        Event::Judged { .. } => 20,
        Event::Ordered { .. } => 21,
        Event::NewOn { .. } => 22,
        Event::Said { .. } => 23,
        Event::WithoutWrench { .. } => 24,
    }
}

#[test]
fn the_example_is_the_same_by_both() {
    let sheet: Sheet = same_by_both(EXAMPLE);
    assert_eq!(json::read::<Sheet>(&sheet.to_json()), Ok(sheet));
}

#[test]
fn a_record_of_every_kind_is_the_same_by_both() {
    let mut record = Record::default();
    for (at, event) in events().into_iter().enumerate() {
        assert_eq!(is_known(&event), at);
        record.add(MORNING, (at % 2 == 0).then_some(StepId(2)), "AB", event);
    }
    let text = json::write(&record).unwrap();
    assert_eq!(same_by_both::<Record>(&text), record);
    assert_eq!(json::read::<Vec<Entry>>(&text).unwrap(), record.entries());
}

#[test]
fn every_shape_of_a_type_is_the_same_by_both() {
    #[derive(Debug, Clone, PartialEq, Serialize, serde::Deserialize)]
    enum Shape {
        Bare,
        One(Option<u8>),
        Two(i16, f32),
        Named { flag: bool, letters: [String; 2] },
    }
    #[derive(Debug, PartialEq, Serialize, serde::Deserialize)]
    struct All {
        shapes: Vec<Shape>,
        by_number: BTreeMap<String, (u64, i64)>,
        unit: (),
        #[serde(default)]
        missing: Option<u32>,
        #[serde(flatten)]
        extra: Map<String, Value>,
    }
    same_by_both::<All>(
        r#"{"shapes":["Bare",{"Bare":null},{"One":null},{"One":255},{"Two":[-32768,1.5]},
            {"Named":{"flag":true,"letters":["a","\u00e9\ud83d\udd27\/"],"unknown":[{}]}}],
            "by_number":{"1":[18446744073709551615,-9223372036854775808]},"unit":null,
            "extra_1":{"deep":[1,-2,3.5,null,true,"x",{},[]]},"extra_1":-0,"extra_2":1e-7}"#,
    );
    let numbered = BTreeMap::from([(-1, 'a'), (20, '"')]);
    assert_eq!(
        json::write(&numbered).unwrap(),
        serde_json::to_string(&numbered).unwrap()
    );
    assert_eq!(json::write(&f64::NAN).unwrap(), "null");
    json::write(&BTreeMap::from([(vec![1], 1)])).unwrap_err();
}

fn refusal(text: &str) -> String {
    json::read::<Sheet>(text).unwrap_err().to_string()
}

#[test]
fn a_refusal_says_where_and_what() {
    let step = |inside: &str| {
        format!(
            "{{\"version\":1,\"title\":\"x\",\"steps\":[\n{{\"id\":1,\"title\":\"a\",\"work\":{{\"turn\":{{}}}}}},\n\
             {{\"id\":2,\"title\":\"b\",{inside}}}]}}"
        )
    };
    for (inside, words) in [
        (
            "\n\"work\":{\"fasten\":{\n\"thread\":\"M6\",\"layout\":\"single\"}}",
            "line 4 (steps, 2nd, work, fasten): missing field `torque`",
        ),
        ("\"minutes\":3", "line 3 (steps, 2nd): missing field `work`"),
        (
            "\n\"title\":\"c\"",
            "line 4 (steps, 2nd): duplicate field `title`",
        ),
        (
            "\"notes\":[]",
            "line 3 (steps, 2nd, notes): a text in quotes is needed here, not a list",
        ),
        (
            "\"minutes\":\"ten\"",
            "line 3 (steps, 2nd, minutes): a number is needed here, not \"ten\"",
        ),
        (
            "\"waits_for\":[1,\n2.5]",
            "line 4 (steps, 2nd, waits_for, 2nd): a whole number from 0 up is needed here, not 2.5",
        ),
        (
            "\"waits_for\":[-1]",
            "line 3 (steps, 2nd, waits_for, 1st): a whole number from 0 up is needed here, not -1",
        ),
        (
            "\"waits_for\":[4294967296]",
            "line 3 (steps, 2nd, waits_for, 1st): a whole number up to 4294967295 is needed here, not 4294967296",
        ),
        (
            "\"waits_for\":1",
            "line 3 (steps, 2nd, waits_for): a list in [ ] is needed here, not 1",
        ),
        (
            "\"work\":{}",
            "line 3 (steps, 2nd, work): one kind with its value is needed here, not 0 of them",
        ),
        (
            "\"work\":{\"turn\":{},\"fit\":{}}",
            "line 3 (steps, 2nd, work): one kind with its value is needed here, not 2 of them",
        ),
        (
            "\"work\":\"turn\"",
            "line 3 (steps, 2nd, work): “turn” must have a value: {\"turn\": …}",
        ),
        (
            "\"work\":7",
            "line 3 (steps, 2nd, work): a kind is needed here, not 7",
        ),
        (
            "\"work\":{\"turn\":[]}",
            "line 3 (steps, 2nd, work, turn): an object with its fields in { } is needed here, not a list",
        ),
    ] {
        assert_eq!(refusal(&step(inside)), words);
    }
    assert_eq!(
        refusal("[]"),
        "line 1: an object with its fields in { } is needed here, not a list"
    );
    let juggled = refusal(&step("\"work\":{\"juggle\":{}}"));
    assert!(
        juggled.starts_with("line 3 (steps, 2nd, work): unknown variant `juggle`, expected one of `clean`"),
        "{juggled}"
    );
    let bad_thread = refusal(&step(
        "\"work\":{\"fasten\":{\n\"thread\":\"M99x\",\"torque\":\"9 N·m\",\"layout\":\"single\"}}",
    ));
    assert!(
        bad_thread.starts_with("line 4 (steps, 2nd, work, fasten, thread): "),
        "{bad_thread}"
    );
    // A value that has no text has no line.
    let value = serde_json::from_str(&step("\"work\":{\"turn\":{}},\"minutes\":true")).unwrap();
    assert_eq!(
        json::from_value::<Sheet>(&value).unwrap_err().to_string(),
        "steps, 2nd, minutes: a number is needed here, not true"
    );
}

#[test]
fn places_are_counted_as_people_do() {
    for (place, words) in [
        (1, "1st"),
        (3, "3rd"),
        (4, "4th"),
        (11, "11th"),
        (13, "13th"),
        (22, "22nd"),
        (112, "112th"),
    ] {
        let text = format!("[{}\"\"]", "1,".repeat(place - 1));
        let error = json::read::<Vec<u8>>(&text).unwrap_err();
        assert_eq!(error.path(), words);
    }
    let error = json::read::<[u8; 3]>("[1,2,3,4]").unwrap_err();
    assert_eq!(error.to_string(), "line 1: a list of 3 is needed here, not of 4");
}

#[test]
fn a_fault_of_the_form_names_its_line() {
    for (text, words) in [
        ("", "line 1: the text ends too early"),
        ("[1,\n", "line 2: the text ends too early"),
        (
            "{\"a\":\"\n",
            "line 1: a line break or control character stands inside quotes",
        ),
        ("\n\"a", "line 2: the text ends too early"),
        ("[1,\n]", "line 2: nothing follows a comma"),
        ("[\n1\n2]", "line 2: `,` or `]` is missing"),
        ("{\"a\":1\n\"b\":2}", "line 1: `,` or `}` is missing"),
        ("{\"a\"\n1}", "line 2: `:` is missing after a key"),
        ("{a:1}", "line 1: key must be a string"),
        ("\n[]\n,", "line 3: something follows the end"),
        ("[01]", "line 1: a number is misspelt or too large"),
        ("[1e999]", "line 1: a number is misspelt or too large"),
        ("[\nnul]", "line 2: a value is missing or misspelt"),
        (r#""\x""#, "line 1: an escape after `\\` is misspelt"),
        (r#""\ud83d""#, "line 1: an escape after `\\` is misspelt"),
    ] {
        let error = json::read::<Value>(text).unwrap_err();
        assert_eq!(error.to_string(), words, "{text:?}");
    }
}

#[test]
fn what_is_nested_too_deeply_is_refused() {
    for open in ["[", "{\"a\":"] {
        let error = json::read::<Value>(&open.repeat(200_000)).unwrap_err();
        assert_eq!(error.what(), "brackets are nested too deeply");
    }
    for depth in [126, 127, 128] {
        let text = format!("{}{}", "[".repeat(depth), "]".repeat(depth));
        let read = json::read::<Value>(&text);
        assert_eq!(read.ok(), serde_json::from_str(&text).ok(), "{depth}");
    }
}

fn values() -> impl Strategy<Value = Value> {
    let text = "[ -~\u{0}-\u{1f}é½“”·🔧]{0,8}";
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        text.prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 60, 6, move |inside| {
        prop_oneof![
            prop::collection::vec(inside.clone(), 0..6).prop_map(Value::from),
            prop::collection::btree_map(text, inside, 0..6)
                .prop_map(|fields| fields.into_iter().collect::<Map<_, _>>().into()),
        ]
    })
}

/// Without its real numbers, which are spelt in two ways.
fn whole(value: Value) -> Value {
    match value {
        Value::Number(number) if number.is_f64() => Value::from(1),
        Value::Array(items) => items.into_iter().map(whole).collect(),
        Value::Object(fields) => fields
            .into_iter()
            .map(|(name, value)| (name, whole(value)))
            .collect(),
        other => other,
    }
}

proptest! {
    #[test]
    fn any_value_is_the_same_by_both(value in values()) {
        for text in [
            serde_json::to_string(&value).unwrap(),
            serde_json::to_string_pretty(&value).unwrap(),
            json::write(&value).unwrap(),
            json::pretty(&value).unwrap(),
        ] {
            prop_assert_eq!(&json::read::<Value>(&text).unwrap(), &value);
            prop_assert_eq!(&serde_json::from_str::<Value>(&text).unwrap(), &value);
        }
        prop_assert_eq!(&json::from_value::<Value>(&value).unwrap(), &value);
        same_by_both::<Value>(&whole(value).to_string());
    }

    #[test]
    fn a_number_comes_back_to_the_last_bit(bits in any::<u64>()) {
        let number = f64::from_bits(bits);
        prop_assume!(number.is_finite());
        let text = json::write(&number).unwrap();
        prop_assert_eq!(json::read::<f64>(&text).unwrap().to_bits(), bits);
        prop_assert_eq!(serde_json::from_str::<f64>(&text).unwrap().to_bits(), bits);
        let theirs = serde_json::to_string(&number).unwrap();
        prop_assert_eq!(json::read::<f64>(&theirs).unwrap().to_bits(), bits);
    }
}
