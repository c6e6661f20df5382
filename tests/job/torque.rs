//! What the Torque screen and a fasten step say of a torque.

use super::sheet;
use halfcase::job::adapter::Adapter;
use halfcase::job::answer;
use halfcase::job::asked::{Question, WholeAnswer, answer as whole};
use halfcase::job::guarding::{KnownBolt, guard, guard_fasten, pulls};
use halfcase::job::kinds::fasten::fastening::{Asked, PassAnswer, pass_answer, running, running_words};
use halfcase::job::kinds::{Fasten, Work};
use halfcase::job::pairing::pair;
use halfcase::job::progress::{Progress, next_fastener};
use halfcase::job::reading::{self, What};
use halfcase::job::record::{Event, Record};
use halfcase::job::scale::thimble_scale;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::turning::{heading_deg, turn_deg};
use halfcase::trade::guard::{Fastener, Joint, Verdict};
use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;
use halfcase::trade::wrench::{Wrench, WrenchKind};

fn says(text: &str) -> TorqueStatement {
    parse_torque(text, None).unwrap()
}

fn wrench(name: &str, unit: TorqueUnit, range: (f64, f64), division: f64, main: Option<f64>) -> Wrench {
    Wrench {
        name: name.to_owned(),
        unit,
        min: range.0,
        max: range.1,
        division,
        kind: main.map_or(WrenchKind::Dial, |main_division| WrenchKind::Thimble {
            main_division,
        }),
        accuracy: 0.04,
    }
}

fn mine() -> Vec<Wrench> {
    vec![
        wrench("Small", TorqueUnit::PoundInch, (20.0, 120.0), 1.0, Some(10.0)),
        wrench("Middle", TorqueUnit::NewtonMetre, (10.0, 60.0), 0.5, Some(5.0)),
    ]
}

fn bolt(thread: &str, strength: Option<Strength>, material: Option<FemaleMaterial>) -> KnownBolt {
    KnownBolt {
        joint: Joint {
            strength,
            material,
            ..Joint::of(Thread::parse(thread).unwrap())
        },
        seal: false,
    }
}

fn ask(statement: &TorqueStatement, also: Option<&TorqueStatement>, in_hand: usize) -> WholeAnswer {
    whole(Question {
        statement,
        also,
        bolt: None,
        turn_deg: None,
        stretch: None,
        running: None,
        adapter: None,
        wrenches: &mine(),
        in_hand,
    })
}

#[test]
fn foot_pounds_are_set_on_an_inch_pound_wrench() {
    // 7.2 × 12 = 86.4.
    let answer = answer::torque(&says("7.2 ft·lb"), &mine(), 0, None);
    assert_eq!(
        (answer.number.as_str(), answer.unit),
        ("86", TorqueUnit::PoundInch)
    );
    assert_eq!(answer.rounding.as_deref(), Some("rounding −0.5 %"));
    // 86 × 0.96 = 82.56 and 86 × 1.04 = 89.44.
    assert_eq!(answer.band.as_deref(), Some("±4 %: 82.6–89.4 in·lb"));
    assert_eq!(answer.trouble, None);
}

#[test]
fn the_wrenchs_band_is_held_against_the_manuals_limits() {
    let band = |text: &str| answer::torque(&says(text), &mine(), 1, None).band.unwrap();
    // 20 N·m ± 4 % is 19.2 to 20.8.
    assert_eq!(
        band("20 ± 2 N·m"),
        "±4 %: 19.2–20.8 N·m, inside the manual’s limits"
    );
    assert_eq!(
        band("20 ± 0.5 N·m"),
        "±4 %: 19.2–20.8 N·m, may leave the manual’s limits"
    );
}

#[test]
fn off_the_scale_another_of_mine_is_named_or_none() {
    let answer = answer::torque(&says("20 N·m"), &mine(), 0, None);
    assert_eq!(answer.take, Some(1));
    assert_eq!(
        answer.trouble.as_deref(),
        Some("Above Small’s scale (120 in·lb).")
    );
    let answer = answer::torque(&says("200 N·m"), &mine(), 1, None);
    assert_eq!(answer.take, None);
    assert_eq!(
        answer.trouble.as_deref(),
        Some("Above Middle’s scale (60 N·m). None of your wrenches reaches it.")
    );
    let none = answer::torque(&says("9 N·m"), &[], 0, None);
    // Where nobody told of a wrench, any will do.
    assert_eq!(none.trouble, None);
    assert_eq!((none.number.as_str(), none.wrench), ("9.00", None));
}

#[test]
fn an_adapter_changes_the_setting_and_not_the_torque_at_the_bolt() {
    // US Army TM 9-2350-261-20-1: 40 lb·ft with 12 + 4 in is set as 30.
    let adapter = Adapter {
        wrench_mm: 12.0 * 25.4,
        adapter_mm: 4.0 * 25.4,
        angle_deg: 0.0,
    };
    let wrenches = [wrench("Foot", TorqueUnit::PoundFoot, (10.0, 80.0), 1.0, None)];
    let answer = answer::torque(&says("40 ft·lb"), &wrenches, 0, Some(&adapter));
    assert_eq!((answer.number.as_str(), answer.adapted), ("30", true));
    // 40 × 1.355 818 = 54.2 N·m at the bolt (NIST SP 811).
    assert!(
        answer
            .others
            .iter()
            .any(|other| other.number == "54.2" && other.unit == "N·m")
    );

    let absurd = Adapter {
        adapter_mm: 900.0,
        ..adapter
    };
    let answer = answer::torque(&says("40 ft·lb"), &wrenches, 0, Some(&absurd));
    assert_eq!(
        (answer.wrench, answer.setting, answer.adapted),
        (None, None, false)
    );
    assert!(
        answer
            .trouble
            .unwrap()
            .starts_with("The adapter is longer than the wrench")
    );
}

#[test]
fn a_pair_that_agrees_passes_and_a_slipped_point_stops_it() {
    let (first, good, bad) = (says("14 N·m"), says("10.3 ft·lb"), says("103 ft·lb"));
    let passes = ask(&first, Some(&good), 1);
    assert!(passes.pair.unwrap().agree);
    assert_eq!(passes.set.unwrap().number, "14.0");

    let stopped = ask(&first, Some(&bad), 1);
    assert_eq!(stopped.set, None);
    let pair_answer = stopped.pair.unwrap();
    assert!(!pair_answer.agree);
    // 103 ft·lb is 139.6 N·m, ten times 14.
    assert!(
        pair_answer.sentence.contains("10 times apart"),
        "{}",
        pair_answer.sentence
    );
    assert!(
        pair_answer
            .fixes
            .iter()
            .any(|fix| fix.second.text() == "10.3 ft·lb"),
        "{pair_answer:?}"
    );

    // An M8 takes 14 N·m and not 140: the thread tells which is off.
    let known = bolt(
        "M8",
        Some(Strength::Class8_8),
        Some(FemaleMaterial::CastAluminium),
    );
    let told = pair(&first, &bad, Some(&known));
    assert!(
        told.sentence
            .ends_with("103 ft·lb is off: not plausible on M8 8.8 in cast aluminium."),
        "{}",
        told.sentence
    );
    assert!(told.fixes.iter().all(|fix| fix.first == first));
    let other = pair(&bad, &first, Some(&known));
    assert!(
        other
            .fixes
            .iter()
            .all(|fix| fix.second == first && fix.first != bad)
    );
}

#[test]
fn foot_pounds_typed_for_newton_metres_are_questioned() {
    let m6 = bolt(
        "M6",
        Some(Strength::Class8_8),
        Some(FemaleMaterial::CastAluminium),
    );
    let answer = guard(&says("9 ft·lb"), &m6).unwrap();
    assert_ne!(answer.verdict, Verdict::Plausible, "{}", answer.sentence);
    assert_eq!(answer.corrections[0].words, "9 N·m");
    assert_eq!(answer.corrections[0].statement, says("9 N·m"));
    assert_eq!(guard(&says("9 N·m"), &m6).unwrap().mark, "✓");
}

#[test]
fn a_correction_carries_the_manuals_limits_along() {
    let m6 = bolt("M6", Some(Strength::Class8_8), None);
    let answer = guard(&says("80–100 N·m"), &m6).unwrap();
    assert_eq!((answer.verdict, answer.mark), (Verdict::Absurd, "✕"));
    let words: Vec<&str> = answer.corrections.iter().map(|c| c.words.as_str()).collect();
    assert!(words.contains(&"80–100 in·lb"), "{words:?}");
    assert!(answer.corrections.iter().all(|c| c.statement.check().is_ok()));
    let moved = guard(&says("90 N·m"), &m6).unwrap();
    assert!(
        moved.corrections.iter().any(|c| c.words == "9.0 N·m"),
        "{:?}",
        moved.corrections
    );
}

#[test]
fn the_bars_are_the_pull_over_proof_and_strip_load() {
    let m8 = bolt(
        "M8",
        Some(Strength::Class8_8),
        Some(FemaleMaterial::CastAluminium),
    );
    let answer = guard(&says("20 N·m"), &m8).unwrap();
    assert_eq!(answer.bars.len(), 2);
    // ISO 898-1: an M8 of 8.8 bears 21.2 kN.
    assert!(
        answer.bars[0].name.starts_with("proof load 21.2"),
        "{:?}",
        answer.bars
    );
    assert!(answer.bars.iter().all(|bar| 0.0 < bar.low && bar.low < bar.high));
    assert!(answer.bars[0].words().contains("% of proof load"));
}

/// A banjo bolt is drilled through: its pull is told, and against no proof load of a solid bolt.
#[test]
fn a_hollow_bolt_has_no_proof_bar() {
    let mut m10 = bolt("M10x1", Some(Strength::Class8_8), None);
    m10.take_fastener(Fastener::Banjo);
    let answer = guard(&says("20 N·m"), &m10).unwrap();
    assert!(answer.bars.is_empty(), "{:?}", answer.bars);
    assert!(
        answer
            .pull
            .ends_with(" kN. It is hollow: its class does not tell what it bears."),
        "{}",
        answer.pull
    );
    m10.joint.strength = None;
    assert!(guard(&says("20 N·m"), &m10).unwrap().pull.ends_with(" kN"));
}

#[test]
fn the_condition_changes_the_pull_and_never_the_torque() {
    let m8 = bolt("M8", None, None);
    let pulls = pulls(&says("20 N·m"), &m8.joint);
    assert_eq!(pulls.len(), Condition::ALL.len());
    let of = |condition| &pulls.iter().find(|(c, _)| *c == condition).unwrap().1;
    assert_ne!(of(Condition::Dry), of(Condition::Oiled));
    assert!(pulls.iter().all(|(_, words)| words.ends_with(" kN")));
}

fn fasten(sheet: &Sheet) -> Fasten {
    match &sheet.steps[0].work {
        Work::Fasten(fasten) => fasten.clone(),
        other => panic!("{other:?}"),
    }
}

/// Two rod bolts, snug, torque, angle.
fn staged() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Rod","work":{"fasten":{"thread":"M8x1","strength":"10.9","torque":"20 N·m",
            "layout":{"line":{"count":2}},"stages":["snug 10 N·m","20 N·m","60°"]}}}"#,
    )
}

#[test]
fn stages_are_tallied_one_after_the_other() {
    let sheet = staged();
    let fasten = fasten(&sheet);
    assert_eq!((fasten.pass_count(), fasten.tally_count()), (3, 6));
    assert_eq!(fasten.asked(0, None), Asked::Torque(says("10 N·m")));
    assert_eq!(fasten.asked(1, None), Asked::Torque(says("20 N·m")));
    assert_eq!(
        fasten.asked(2, None),
        Asked::Angle {
            degrees: 60.0,
            off: 0.0
        }
    );
    assert_eq!(fasten.pass_words(0), "stage 1 of 3: snug to 10 N·m");
    assert_eq!(fasten.pass_words(2), "stage 3 of 3: turn a further 60°");
    assert_eq!(
        pass_answer(&fasten, 2, None, &mine(), 0, None),
        PassAnswer::Angle {
            degrees: 60.0,
            off: 0.0
        }
    );

    let mut record = Record::default();
    let mut passes = Vec::new();
    while let Some(next) = next_fastener(&sheet.steps[0], &Progress::of(&record).step(StepId(1))) {
        passes.push(next.pass);
        let event = Event::Tallied {
            pass: next.pass,
            place: next.place,
            set: super::set_to(0.0, ""),
            goal: None,
        };
        record.add(super::MORNING, Some(StepId(1)), "", event);
        assert!(passes.len() <= 6, "the tally must end");
    }
    assert_eq!(passes, [0, 0, 1, 1, 2, 2]);
}

#[test]
fn stages_are_written_as_a_person_writes_them() {
    let text = staged().to_json();
    for words in ["\"snug 10 N·m\"", "\"20 N·m\"", "\"60°\""] {
        assert!(text.contains(words), "{text}");
    }
    assert_eq!(Sheet::from_json(&text).unwrap(), staged());
    let refused = |stages: &str| {
        let text = text.replace("\"snug 10 N·m\"", stages);
        Sheet::from_json(&text).unwrap_err().to_string()
    };
    // Stages in the wrong order are opened, shown for what they are, and not worked.
    let turned = Sheet::from_json(&text.replace("\"snug 10 N·m\"", "\"snug 30 N·m\"")).unwrap();
    let why = fasten(&turned).stages_wrong().unwrap();
    assert!(why.contains("each torque must be above the one before"), "{why}");
    assert!(refused("\"a bit\"").contains("not a job sheet"));
}

#[test]
fn a_torque_before_an_angle_is_only_a_start() {
    let answer = guard_fasten(&fasten(&staged())).unwrap();
    assert_eq!(answer.verdict, Verdict::Plausible);
    assert!(answer.sentence.contains("the angle does the rest") || answer.line.contains("plausible"));
    let mut far = fasten(&staged());
    far.torque = says("200 N·m");
    assert_eq!(guard_fasten(&far).unwrap().verdict, Verdict::Absurd);
}

#[test]
fn a_plug_is_judged_as_a_plug() {
    let step = |seal: &str| {
        sheet(&format!(
            r#"{{"id":1,"title":"Plug","work":{{"fasten":{{"thread":"M14x1.5","strength":"8.8","torque":"20 N·m",
                "layout":"single"{seal}}}}}}}"#
        ))
    };
    let verdict = |seal| guard_fasten(&fasten(&step(seal))).unwrap().verdict;
    assert_ne!(verdict(""), Verdict::Plausible);
    assert_eq!(verdict(r#","seal":true"#), Verdict::Plausible);
}

#[test]
fn a_nuts_running_torque_is_added_from_a_third_on() {
    // US Army TB 43-0218: 50–70 lbf·in wanted, 30 running: set 80–100.
    let sheet = sheet(
        r#"{"id":1,"title":"Nut","work":{"fasten":{"thread":"M6","torque":"50–70 in·lb",
            "layout":"single","self_locking":true}}}"#,
    );
    let fasten = fasten(&sheet);
    let mut record = Record::default();
    let measured = Event::Measured {
        what: What::Running,
        value: 30.0,
        unit: "in·lb".to_owned(),
        tool: String::new(),
        verdict: reading::Verdict::Noted,
        at_c: None,
        decimals: None,
    };
    record.add(super::MORNING, Some(StepId(1)), "", measured);
    let running = running(&Progress::of(&record).step(StepId(1))).unwrap();
    let Asked::Torque(asked) = fasten.asked(0, Some(running)) else {
        panic!("a torque is asked for");
    };
    assert_eq!(asked.text(), "80–100 in·lb");
    assert_eq!(
        running_words(&fasten.torque, running, true),
        "50 % of the torque: added to it."
    );
    let little = TorqueUnit::PoundInch.torque(12.0);
    let Asked::Torque(more) = fasten.asked(0, Some(little)) else {
        panic!("a torque is asked for");
    };
    assert_eq!(more.text(), "62–82 in·lb");
    assert_eq!(
        running_words(&fasten.torque, little, true),
        "20 % of the torque: added to it."
    );
    // Only a manual that says otherwise is followed instead.
    let apart = Fasten {
        running_apart: true,
        ..fasten.clone()
    };
    assert_eq!(apart.asked(0, Some(little)), Asked::Torque(fasten.torque));
    let hard = TorqueUnit::PoundInch.torque(90.0);
    assert!(running_words(&fasten.torque, hard, true).contains("Take a new nut"));
}

/// Every pass overcomes the nut's own drag too: each asks for more than the one before.
#[test]
fn no_pass_asks_for_more_than_the_last() {
    let passes = r#""torque":"24 N·m","passes":[{"share":0.7,"round":false},{"share":1.0,"round":false}]"#;
    let stages = r#""torque":"24 N·m","stages":["snug 5 N·m","20 N·m","24 N·m"]"#;
    for how in [passes, stages] {
        let sheet = sheet(&format!(
            r#"{{"id":1,"title":"Nut","work":{{"fasten":{{"thread":"M8","layout":"single","self_locking":true,{how}}}}}}}"#
        ));
        let fasten = fasten(&sheet);
        let asked = |running: f64| -> Vec<f64> {
            let running = TorqueUnit::NewtonMetre.torque(running);
            (0..fasten.pass_count())
                .map(|pass| match fasten.asked(pass, Some(running)) {
                    Asked::Torque(asked) => asked.target,
                    Asked::Angle { .. } | Asked::Hand | Asked::All(_) => 0.0,
                })
                .collect()
        };
        for running in [0.5, 7.9, 8.0] {
            assert!(asked(running).is_sorted(), "{:?}", asked(running));
            assert_eq!(asked(running).last(), Some(&(24.0 + running)));
        }
    }
}

#[test]
fn the_thimble_shows_the_line_and_the_divisions_past_it() {
    let small = &mine()[0];
    let setting = small.setting(says("86 in·lb").torque()).unwrap();
    let scale = thimble_scale(small, &setting).unwrap();
    assert_eq!(scale.words, "line 80 + 6");
    assert_eq!(
        scale.tube.iter().map(|m| m.figure.as_str()).collect::<Vec<_>>(),
        ["80", "70", "60", "50"]
    );
    // Six of ten divisions past its line.
    assert!((scale.tube[0].at - 0.6).abs() < 1e-9);
    assert_eq!(
        scale
            .thimble
            .iter()
            .map(|m| m.figure.as_str())
            .collect::<Vec<_>>(),
        ["4", "5", "6", "7", "8"]
    );
    let low = small.setting(says("20 in·lb").torque()).unwrap();
    let scale = thimble_scale(small, &low).unwrap();
    assert_eq!(scale.tube.len(), 1, "no lines below the lowest mark");
    assert_eq!(scale.thimble[0].figure, "8");
    let dial = wrench("Dial", TorqueUnit::NewtonMetre, (5.0, 25.0), 0.5, None);
    let setting = dial.setting(says("9 N·m").torque()).unwrap();
    assert_eq!(thimble_scale(&dial, &setting), None);
}

#[test]
fn a_phone_turns_as_far_lying_as_standing() {
    assert_eq!(heading_deg(350.0, 0.0, 0.0), Some(350.0));
    assert!((turn_deg(350.0, 20.0) - 30.0).abs() < 1e-9);
    assert!((turn_deg(20.0, 350.0) + 30.0).abs() < 1e-9);
    // Upright, then on its right edge: a quarter turn, whatever the compass says.
    let upright = heading_deg(10.0, 90.0, 0.0).unwrap();
    let on_edge = heading_deg(200.0, 0.0, 90.0).unwrap();
    assert!((turn_deg(upright, on_edge).abs() - 90.0).abs() < 1e-9);
    assert_eq!(heading_deg(f64::NAN, 0.0, 0.0), None);
}

/// What must not be passed is never rounded up, where a value that may be is.
#[test]
fn at_most_is_never_rounded_up() {
    let middle = &mine()[1];
    let mut rounded_up = 0;
    for tenths in 105..590 {
        let text = format!("{}.{} N·m", tenths / 10, tenths % 10);
        let set = |text: &str| middle.setting_for(&says(text)).unwrap().value;
        let most = set(&format!("at most {text}"));
        let wanted = f64::from(tenths) / 10.0;
        assert!(most <= wanted + 1e-9 && most > wanted - 0.5, "{text}: {most}");
        rounded_up += usize::from(set(&text) > wanted);
    }
    assert!(rounded_up > 0);
}
