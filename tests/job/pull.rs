//! What is said of a bolt's pull where the torque doesn't tell it.

use halfcase::job::guarding::{guard_fasten, pulls};
use halfcase::job::kinds::fasten::fastening::Asked;
use halfcase::job::kinds::fasten::{Fasten, begin, fields};
use halfcase::job::sheet::Sheet;
use halfcase::job::{fasteners, json};
use halfcase::trade::application::{Application, JointKind, ManualWord, assumed};
use halfcase::trade::compound::{CompoundClass, recommend};
use halfcase::trade::guard::Verdict;
use halfcase::trade::preload::{Condition, preload};
use halfcase::trade::quantity::{Force, parse_torque, significant};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use uom::si::force::kilonewton;

fn typed(fasten: &mut Fasten, field: &str, value: &str) {
    halfcase::job::field::set(
        &fields::TABLE,
        fasten,
        "fasten",
        &format!("fasten/{field}"),
        value,
    )
    .unwrap();
}

fn says(fasten: &Fasten, words: &str) -> bool {
    fasten.pull_words().iter().any(|line| line.contains(words))
}

#[test]
fn a_torque_before_an_angle_claims_no_pull() {
    let mut plain = begin("M10x1.25", "30 N·m").unwrap();
    assert!(!guard_fasten(&plain).unwrap().pull.is_empty());
    assert_eq!(plain.pull_words(), [] as [&str; 0]);
    typed(&mut plain, "to_yield", "yes");
    assert!(guard_fasten(&plain).unwrap().pull.is_empty());
    assert!(says(&plain, "Nothing is said of its pull") && says(&plain, "used once"));

    let mut turned = begin("M10x1.25", "30 N·m + 60°").unwrap();
    let guard = guard_fasten(&turned).unwrap();
    assert!(guard.pull.is_empty() && guard.bars.is_empty());
    // 1.25 · 60/360.
    assert!(
        says(&turned, "Turning on by 60.0° draws 0.21 mm on M10×1.25"),
        "{:?}",
        turned.pull_words()
    );
    assert!(says(&turned, "used once, unless the manual says otherwise"));
    // The manual says otherwise.
    typed(&mut turned, "most_uses", "3");
    assert!(!says(&turned, "used once"));
}

#[test]
fn a_stretch_tells_the_pull_where_the_grip_is_told() {
    let mut rod = begin("M8x1", "28 N·m").unwrap();
    typed(&mut rod, "stretch_least", "0.13");
    assert_eq!(rod.pull_words(), [] as [&str; 0]);
    typed(&mut rod, "grip", "38");
    typed(&mut rod, "plain", "20");
    assert!(
        says(&rod, "At 0.13 mm of stretch it pulls 24–31 kN"),
        "{:?}",
        rod.pull_words()
    );
    assert_eq!(rod.pull_of_stretch(0.0).as_deref(), Some("it pulls nothing"));
    typed(&mut rod, "plain", "50");
    assert!(says(&rod, "can’t be longer than the grip"));
    typed(&mut rod, "plain", "20");
    typed(&mut rod, "to_yield", "yes");
    assert_eq!(rod.pull_of_stretch(0.13), None);
}

#[test]
fn stainless_and_paste_are_conditions_of_the_thread() {
    let mut bolt = begin("M8", "18 N·m").unwrap();
    typed(&mut bolt, "condition", "5");
    assert_eq!(bolt.condition, Condition::StainlessDry);
    assert!(says(&bolt, "galls"));
    typed(&mut bolt, "condition", "6");
    assert!(says(&bolt, "a torque that the manual gives for paste"));
    // A class 8.8 bolt is no stainless one.
    typed(&mut bolt, "class", "3");
    let joint = bolt.joint().unwrap();
    let listed: Vec<Condition> = pulls(&bolt.torque, &joint)
        .into_iter()
        .map(|(one, _)| one)
        .collect();
    assert!(listed.contains(&Condition::Paste) && !listed.contains(&Condition::StainlessDry));
}

/// A shank of 6.5 mm in 20 of 38 mm: 207 000·0.13/(20/33.18 + 18/39.17) = 25.3 kN; head and nut giving, 20.3.
#[test]
fn a_waist_pulls_less_for_its_stretch() {
    let mut rod = begin("M8x1", "28 N·m").unwrap();
    for (field, value) in [
        ("stretch_least", "0.13"),
        ("grip", "38"),
        ("plain", "20"),
        ("shank", "6.5"),
    ] {
        typed(&mut rod, field, value);
    }
    assert!(
        says(&rod, "At 0.13 mm of stretch it pulls 20–25 kN"),
        "{:?}",
        rod.pull_words()
    );
    typed(&mut rod, "shank", "2");
    assert!(says(&rod, "That shank doesn’t belong to this thread"));
    typed(&mut rod, "shank", "");
    assert!(says(&rod, "it pulls 24–31 kN"));
}

/// What goes on the thread, as the manual names it.
fn with(kind: JointKind, manual: ManualWord) -> Fasten {
    let mut bolt = begin("M8", "20 N·m").unwrap();
    bolt.compound = Some(Application {
        manual: Some(manual),
        thread: bolt.thread.map(|thread| thread.major()),
        ..Application::new(kind)
    });
    bolt
}

/// The pull goes by the compound on the bolt's own thread, the torque never does.
#[test]
fn the_compound_on_its_thread_decides_the_pull() {
    let bare = begin("M8", "20 N·m").unwrap();
    for (kind, manual, by) in [
        (
            JointKind::ThreadedFastener,
            ManualWord::LockMedium,
            Condition::CompoundWet,
        ),
        (
            JointKind::ThreadedFastener,
            ManualWord::AntiSeize,
            Condition::Paste,
        ),
        (JointKind::ThreadedFastener, ManualWord::Oil, Condition::Oiled),
        (JointKind::ThreadedFastener, ManualWord::Grease, Condition::Oiled),
        (JointKind::Exhaust, ManualWord::AntiSeize, Condition::Paste),
        // A thread sealant has no row in the table; of a washer the oil goes on the washer.
        (
            JointKind::ThreadedFastener,
            ManualWord::ThreadSealant,
            Condition::Unknown,
        ),
        (
            JointKind::BondedOrCrushWasher,
            ManualWord::Oil,
            Condition::Unknown,
        ),
    ] {
        let bolt = with(kind, manual);
        assert_eq!(bolt.thread_condition(), by, "{kind:?} {manual:?}");
        let pull = preload(bolt.torque.torque(), bolt.thread.unwrap(), by).unwrap();
        let kilonewtons = |force: Force| significant(force.get::<kilonewton>(), 3);
        let words = format!("{}–{} kN", kilonewtons(pull.low), kilonewtons(pull.high));
        assert_eq!(guard_fasten(&bolt).unwrap().pull, words, "{kind:?} {manual:?}");
        assert_eq!(bolt.asked(0, None), bare.asked(0, None));
        assert_eq!(says(&bolt, "the manual’s torque stays"), by != Condition::Unknown);
        // Told otherwise, it goes by that.
        let told = Fasten {
            condition: Condition::Plated,
            ..bolt
        };
        assert_eq!(told.thread_condition(), Condition::Plated);
        assert!(!says(&told, "the manual’s torque stays"));
    }
    assert!(says(
        &with(JointKind::ThreadedFastener, ManualWord::AntiSeize),
        "a torque that the manual gives for paste"
    ));
    // Its dry patch locks a precoated one: nothing is put on.
    let mut coated = with(JointKind::ThreadedFastener, ManualWord::LockMedium);
    coated.compound = coated.compound.map(|joint| Application {
        precoated: Some(true),
        ..joint
    });
    assert_eq!(coated.thread_condition(), Condition::Unknown);
}

/// A bolt on which something is recommended, every question of it answered, or all but the manual's left open.
fn recommended(answers: &str) -> Fasten {
    let mut bolt = begin("M10", "85 N·m").unwrap();
    bolt.strength = Some(Strength::Class10_9);
    let text = format!(r#"{{"kind":"fastener","thread_mm":10{answers}}}"#);
    bolt.compound = Some(json::read(&text).unwrap());
    bolt
}

/// Stainless in stainless that nothing shakes: it must not run dry.
const GALLS: &str = r#","face":"stainless","partner":"stainless","vibration":false,"hole":"blind""#;

#[test]
fn a_recommendation_that_rests_on_open_answers_narrows_no_pull() {
    let open = recommended("");
    let answer = recommend(open.compound.as_ref().unwrap());
    assert_eq!(answer.class, Some(CompoundClass::ThreadlockMedium));
    assert!(!answer.assumed.is_empty());
    assert_eq!(open.thread_condition(), Condition::Unknown);
    assert!(!says(&open, "the manual’s torque stays"));
    // Answered to the last question, the same class counts.
    let mut sure = recommended("");
    let joint = sure.compound.as_mut().unwrap();
    for _ in 0..20 {
        let Some(first) = assumed(joint).into_iter().next() else {
            break;
        };
        let with = |choice: &str| {
            let mut told = joint.clone();
            halfcase::trade::application::answer(&mut told, first.question, choice).map(|_| told)
        };
        let choices = halfcase::trade::application::questions(joint)
            .into_iter()
            .find(|q| q.id == first.question)
            .unwrap()
            .choices;
        let kept = |told: &Application| recommend(told).class == Some(CompoundClass::ThreadlockMedium);
        let told = choices
            .iter()
            .filter_map(|choice| with(choice.id).ok())
            .find(kept);
        *joint = told.unwrap_or_else(|| panic!("{first:?}"));
    }
    assert_eq!(assumed(joint), vec![]);
    assert_eq!(sure.thread_condition(), Condition::CompoundWet);
    // Paste pulls hardest: it counts, open or not.
    let paste = recommended(GALLS);
    assert!(!recommend(paste.compound.as_ref().unwrap()).assumed.is_empty());
    assert_eq!(paste.thread_condition(), Condition::Paste);
    assert!(says(
        &paste,
        "the thread is taken as one with moly or copper paste:"
    ));
}

#[test]
fn high_only_by_what_is_put_on_offers_no_smaller_torque() {
    let bolt = recommended(r#","manual":"anti_seize""#);
    let guard = guard_fasten(&bolt).unwrap();
    assert_eq!(guard.verdict, Verdict::High);
    assert_eq!(guard.corrections, []);
    assert_eq!(
        guard.sentence,
        "High for an M10 10.9 with anti-seize paste on its thread: take the manual’s torque for that, or ask."
    );
    // In ft·lb the same digits in N·m would do, and are not offered either.
    let feet = Fasten {
        torque: parse_torque("63 ft·lb", None).unwrap(),
        ..bolt.clone()
    };
    let guard = guard_fasten(&feet).unwrap();
    assert_eq!((guard.verdict, guard.corrections), (Verdict::High, vec![]));
    let told = Fasten {
        condition: Condition::Paste,
        ..feet
    };
    let keys = guard_fasten(&told).unwrap().corrections;
    assert!(keys.iter().any(|key| key.words == "63 N·m"), "{keys:?}");
    let bare = Fasten {
        compound: None,
        ..bolt.clone()
    };
    assert_eq!(guard_fasten(&bare).unwrap().verdict, Verdict::Plausible);
    // Told by the user, it is judged as ever; too high anyhow too.
    let told = Fasten {
        condition: Condition::Paste,
        ..bolt.clone()
    };
    assert!(
        guard_fasten(&told)
            .unwrap()
            .sentence
            .starts_with("High for an M10 10.9. ")
    );
    let torque = parse_torque("650 N·m", None).unwrap();
    let slip = Fasten {
        torque,
        ..bolt.clone()
    };
    assert_eq!(guard_fasten(&slip).unwrap().verdict, Verdict::Absurd);
    assert!(!guard_fasten(&slip).unwrap().corrections.is_empty());
    // Into aluminium the limits lie closer: never more than high by what nobody told.
    let soft = Fasten {
        into: Some(FemaleMaterial::CastAluminium),
        ..bolt
    };
    for nm in 30..=120 {
        let torque = parse_torque(&format!("{nm} N·m"), None).unwrap();
        let wet = Fasten {
            torque,
            ..soft.clone()
        };
        let bare = Fasten {
            compound: None,
            ..wet.clone()
        };
        if guard_fasten(&bare).unwrap().verdict == Verdict::Plausible {
            assert_ne!(guard_fasten(&wet).unwrap().verdict, Verdict::Absurd, "{nm}");
        }
    }
}

/// The desk takes over what was told of a bolt, nothing that was only supposed.
#[test]
fn a_supposed_state_is_not_carried_to_the_desk() {
    use super::fill_run::Hand;
    use halfcase::job::kinds::Work;
    use halfcase::job::sheet::{Step, StepId};
    use halfcase::job::state::Intent;
    let bolt = recommended(r#","manual":"anti_seize""#);
    for (condition, carried) in [
        (Condition::Unknown, Condition::Unknown),
        (Condition::Oiled, Condition::Oiled),
    ] {
        let work = Work::Fasten(Fasten {
            condition,
            ..bolt.clone()
        });
        let step = Step::new(StepId(1), "Bolts", work);
        let mut hand = Hand::with(Sheet::new("Plan", vec![step]));
        hand.send(Intent::Carry(StepId(1))).unwrap();
        assert_eq!(
            hand.state.settings.desk.bolt.map(|bolt| bolt.joint.condition),
            Some(carried)
        );
    }
}

#[test]
fn grip_shank_and_yield_go_through_file_and_table() {
    let text = r#"{"version":1,"title":"Rod","steps":[{"id":1,"title":"Rod bolts","work":{"fasten":{
        "thread":"M8x1","torque":"28 N·m","layout":{"line":{"count":2}},"grip_mm":38.0,"plain_mm":20.0,"shank_mm":6.5,
        "to_yield":true,"condition":"paste"}}}]}"#;
    let sheet = Sheet::from_json(text).unwrap();
    let back = fasteners::read(&fasteners::write(&sheet), sheet.steps[0].id).unwrap();
    assert_eq!(back[0].work, sheet.steps[0].work);
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
    let plain = json::write(&begin("M8", "18 N·m").unwrap()).unwrap();
    for new in ["grip_mm", "plain_mm", "shank_mm", "to_yield"] {
        assert!(!plain.contains(new), "{plain}");
    }
}

/// What a nut's running takes tightens nothing: it is added to every torque that is set, snug too.
#[test]
fn a_running_torque_is_added_to_snug_as_well() {
    let mut nut = begin("M8", "20 N·m").unwrap();
    nut.self_locking = true;
    typed(&mut nut, "stages", "snug 8 N·m; 20 N·m; 60°");
    let running = parse_torque("3 N·m", None).unwrap().torque();
    let set = |pass| match nut.asked(pass, Some(running)) {
        Asked::Torque(statement) => statement.target,
        other => panic!("{other:?}"),
    };
    assert!((set(0) - 11.0).abs() < 1e-9 && (set(1) - 23.0).abs() < 1e-9);
}
