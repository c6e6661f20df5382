//! What a fastener is, told in every way there is, and what the slip guard then says and offers.

use halfcase::job::asked::{Question, answer};
use halfcase::job::guarding::{KnownBolt, guard, guard_fasten, guard_others, guard_turned};
use halfcase::job::kinds::{Fasten, Work};
use halfcase::job::pairing::pair;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::text_form::said;
use halfcase::job::{fasteners, form};
use halfcase::trade::guard::{Fastener, Joint, Verdict};
use halfcase::trade::quantity::{TorqueStatement, parse_torque};
use halfcase::trade::thread::Thread;

fn says(text: &str) -> TorqueStatement {
    parse_torque(text, None).expect("a torque")
}

/// One fasten step of those fields.
fn plan(fields: &str) -> Sheet {
    let text = format!(
        r#"{{"version":1,"title":"Tractor","machine":"","steps":[{{"id":1,"title":"Bolts","work":{{"fasten":{{
            "layout":"single",{fields}}}}}}}]}}"#
    );
    Sheet::from_json(&text).unwrap_or_else(|error| panic!("{error}"))
}

fn of(step: &Step) -> Fasten {
    match &step.work {
        Work::Fasten(fasten) => fasten.clone(),
        other => panic!("{other:?}"),
    }
}

fn one(fields: &str) -> Fasten {
    of(&plan(fields).steps[0])
}

const PLUG: &str = r#""thread":"M14x1.5","torque":"25 N·m""#;

#[test]
fn what_it_is_is_planned_by_touch_by_file_and_by_table() {
    let sheet = plan(PLUG);
    for (at, fastener) in Fastener::ALL.into_iter().enumerate() {
        let mut step = sheet.steps[0].clone();
        form::set(&sheet, &mut step, "fasten/fastener", &at.to_string()).unwrap_or_else(|e| panic!("{e}"));
        assert_eq!(of(&step).what_it_is(), fastener);
        let told = Sheet::new("x", vec![step.clone()]);
        let written = told.to_json();
        assert_eq!(
            Sheet::from_json(&written).ok().map(|s| s.steps[0].clone()),
            Some(step.clone())
        );
        assert_eq!(
            written.contains("fastener"),
            !matches!(fastener, Fastener::NotTold | Fastener::Plug)
        );
        let table = fasteners::write(&told);
        let back = fasteners::read(&table, StepId(1)).expect("our own table");
        assert_eq!(of(&back[0]), of(&step), "{table}");
    }
    let table =
        |cells: &str| fasteners::read(&format!("thread,torque,what it is,seals\n{cells}\n"), StepId(1));
    let what = |cells: &str| table(cells).map(|steps| of(&steps[0]).what_it_is()).ok();
    assert_eq!(what("M14x1.5,25 N·m,stud,"), Some(Fastener::Stud));
    assert_eq!(what("M14x1.5,25 N·m,Spark,"), Some(Fastener::HeadPlug));
    assert_eq!(what("M14x1.5,25 N·m,banjo,"), Some(Fastener::Banjo));
    // "b" began no other word before there were banjo bolts.
    assert_eq!(what("M14x1.5,25 N·m,b,"), Some(Fastener::Bolt));
    assert_eq!(what("M14x1.5,25 N·m,ba,"), Some(Fastener::Banjo));
    // What it is outweighs that it seals.
    assert_eq!(what("M14x1.5,25 N·m,bolt,yes"), Some(Fastener::Bolt));
    let wrong = table("M14x1.5,25 N·m,rivet,").unwrap_err().to_string();
    assert!(
        wrong.starts_with("Line 2, what it is: “rivet” is none of these: not told"),
        "{wrong}"
    );
}

/// An earlier form knew plugs alone: they open as plugs, and are written back as they came.
#[test]
fn a_plug_of_an_earlier_form_is_one_and_stays_as_it_was_written() {
    let old = one(&format!(r#"{PLUG},"seal":true"#));
    assert_eq!(old.what_it_is(), Fastener::Plug);
    let sheet = plan(&format!(r#"{PLUG},"seal":true"#));
    assert!(sheet.to_json().contains("\"seal\": true") && !sheet.to_json().contains("fastener"));
    let same = one(&format!(r#"{PLUG},"fastener":"plug""#));
    assert_eq!(same.what_it_is(), Fastener::Plug);
    let desk =
        r#"{"joint":{"thread":"M6","strength":null,"material":null,"condition":"unknown"},"seal":true}"#;
    let bolt: KnownBolt = serde_json::from_str(desk).expect("as it was stored");
    assert_eq!(
        (bolt.what_it_is(), bolt.words().as_str()),
        (Fastener::Plug, "M6 plug")
    );
    // On the desk too it is judged as one: 2.4 N·m is low for a bolt.
    let torque = says("2.4 N·m");
    let said = guard(&torque, &bolt).expect("it is judged");
    assert_eq!((said.verdict, said.what_is_it.len()), (Verdict::Plausible, 0));
    let unsealed = KnownBolt { seal: false, ..bolt };
    let said = guard(&torque, &unsealed).expect("it is judged");
    assert_eq!(said.verdict, Verdict::Low);
    assert!(!said.what_is_it.is_empty());
    let again = serde_json::to_string(&bolt).expect("text");
    assert!(
        !again.contains("fastener") && again.contains("\"seal\":true"),
        "{again}"
    );
}

#[test]
fn a_low_torque_is_asked_what_it_is_and_never_raised() {
    let said = guard_fasten(&one(PLUG)).expect("it is judged");
    assert_eq!(said.verdict, Verdict::Absurd);
    assert!(
        said.corrections.is_empty() && said.sentence.contains("What is it?"),
        "{said:?}"
    );
    // All but "not told" may be said.
    assert_eq!(said.what_is_it, &Fastener::ALL[1..]);
    for (told, verdict) in [
        ("plug", Verdict::Plausible),
        ("head_plug", Verdict::Plausible),
        ("banjo", Verdict::Plausible),
        ("bolt", Verdict::Absurd),
        ("shaft_nut", Verdict::Absurd),
    ] {
        let said = guard_fasten(&one(&format!(r#"{PLUG},"fastener":"{told}""#))).expect("it is judged");
        assert_eq!(said.verdict, verdict, "{told}: {}", said.sentence);
        assert!(
            said.what_is_it.is_empty() && said.corrections.is_empty(),
            "{said:?}"
        );
    }
    // Too high, the readings are keys as ever.
    let high =
        guard_fasten(&one(r#""thread":"M14x1.5","torque":"250 N·m","fastener":"plug""#)).expect("judged");
    assert!(
        high.corrections.iter().any(|key| key.words == "25.0 N·m"),
        "{high:?}"
    );
}

/// The same on the Torque screen, whatever is typed.
#[test]
fn no_key_of_the_torque_screen_raises_what_is_typed() {
    let thread = Thread::parse("M8").expect("a size of the table");
    let bolt = KnownBolt {
        joint: Joint::of(thread),
        seal: false,
    };
    for text in [
        "2 N·m",
        "2.2 in·lb",
        "20 in·lb",
        "20 N·m",
        "200 N·m",
        "2000 N·m",
        "2.5 kgf·m",
    ] {
        let typed = says(text);
        for bolt in [None, Some(&bolt)] {
            for second in ["14 N·m", "10.3 ft·lb", "103 ft·lb", "124 in·lb"] {
                let also = says(second);
                let whole = answer(Question {
                    statement: &typed,
                    also: Some(&also),
                    bolt,
                    turn_deg: None,
                    stretch: None,
                    running: None,
                    adapter: None,
                    wrenches: &[],
                    in_hand: 0,
                });
                let keys = whole.guard.into_iter().flat_map(|guard| guard.corrections);
                assert!(
                    keys.into_iter()
                        .all(|key| key.statement.torque() <= typed.torque()),
                    "{text}"
                );
                let fixes = whole.pair.into_iter().flat_map(|pair| pair.fixes);
                for fix in fixes {
                    assert!(
                        fix.first.torque() <= typed.torque(),
                        "{text}, {second}: {}",
                        fix.words
                    );
                    assert!(
                        fix.second.torque() <= also.torque(),
                        "{text}, {second}: {}",
                        fix.words
                    );
                }
            }
        }
    }
    // What would raise one is named for whoever reads the manual again.
    let said = pair(&says("1.4 N·m"), &says("10.3 ft·lb"), None).sentence;
    assert!(
        said.ends_with(
            "Perhaps the first is 14 N·m, or the first is 1.4 kgf·m: if the manual says so, type it."
        ),
        "{said}"
    );
    assert!(
        guard(&says("2 N·m"), &bolt)
            .expect("judged")
            .corrections
            .is_empty()
    );
}

#[test]
fn a_stage_before_an_angle_has_its_own_window() {
    let rod = |torque: &str, stages: &str| {
        one(&format!(
            r#""thread":"M10","strength":"10.9","torque":"{torque}","stages":[{stages}]"#
        ))
    };
    let said = |torque: &str| guard_fasten(&rod(torque, &format!(r#""{torque}","90°""#))).expect("judged");
    let right = said("20 N·m");
    assert_eq!(
        (right.verdict, right.line.as_str()),
        (Verdict::Plausible, "M10 10.9: a start for the turn")
    );
    // 2 N·m typed for 20 leaves a rod bolt loose: stopped, named in words, no key.
    let slip = said("2 N·m");
    assert_eq!(slip.verdict, Verdict::Absurd);
    assert!(
        slip.corrections.is_empty() && slip.sentence.contains("20 N·m"),
        "{slip:?}"
    );
    let high = said("200 N·m");
    assert_eq!(high.verdict, Verdict::Absurd);
    assert!(
        high.corrections.iter().any(|key| key.words == "20.0 N·m"),
        "{high:?}"
    );
    // A stage of its own, before the torque that the angle follows.
    let others = |snug: &str| guard_others(&rod("40 N·m", &format!(r#""snug {snug}","40 N·m","90°""#)));
    assert_eq!(others("20 N·m"), Vec::<String>::new());
    let left = others("2 N·m");
    assert!(
        left.len() == 1 && left[0].starts_with("stage 1: That would hardly bring"),
        "{left:?}"
    );
}

/// A turn said on the Torque screen makes its torque a start there too.
#[test]
fn a_turn_on_the_torque_screen_makes_a_start_of_the_torque() {
    let bolt = KnownBolt {
        joint: Joint::of(Thread::parse("M12").expect("a size of the table")),
        seal: false,
    };
    let verdict = |text: &str, turned: bool| {
        let said = guard_turned(&says(text), &bolt, turned).expect("judged");
        (said.verdict, said.what_is_it.is_empty())
    };
    assert_eq!(verdict("20 N·m", false), (Verdict::Low, false));
    assert_eq!(verdict("20 N·m", true), (Verdict::Plausible, true));
    assert_eq!(verdict("3 N·m", true), (Verdict::Absurd, true));
}

/// "30 ft·lb + 120" is an angle that lost its sign: it must never become 30 +120/−0.
#[test]
fn an_angle_is_never_read_as_a_tolerance() {
    for text in ["30 ft·lb + 120", "30 +120 ft·lb", "30 ft·lb +90", "20 N·m + 60"] {
        let why = said::typed(text, None).unwrap_err();
        assert!(
            why.contains("is no tolerance. An angle is written with its sign: "),
            "{text}: {why}"
        );
        let sheet = plan(PLUG);
        let mut step = sheet.steps[0].clone();
        let refused = form::set(&sheet, &mut step, "fasten/torque", text).unwrap_err();
        assert!(refused.to_string().contains("no tolerance"), "{refused}");
        assert_eq!(of(&step).torque, says("25 N·m"));
        let table = format!("thread,torque\nM10,{text}\n");
        assert!(fasteners::read(&table, StepId(1)).is_err());
    }
    assert_eq!(
        said::typed("30 ft·lb + 120", None).unwrap_err(),
        "“30 +120/−0 ft·lb” is no tolerance. An angle is written with its sign: 30.00 ft·lb + 120°."
    );
    for text in [
        "30 ft·lb + 120°",
        "30 ft·lb then 120 deg",
        "9 +2 N·m",
        "9 ± 3 N·m",
        "20–40 N·m",
    ] {
        assert!(said::typed(text, None).is_ok(), "{text}");
    }
    // What an earlier release kept is opened all the same.
    assert!(said::read("30 +120/−0 ft·lb", None).is_ok());
}
