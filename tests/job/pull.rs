//! What is said of a bolt's pull where the torque doesn't tell it.

use halfcase::job::guarding::{guard_fasten, pulls};
use halfcase::job::kinds::fasten::fastening::Asked;
use halfcase::job::kinds::fasten::{Fasten, begin, fields};
use halfcase::job::sheet::Sheet;
use halfcase::job::{fasteners, json};
use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::parse_torque;

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

#[test]
fn grip_shank_and_yield_go_through_file_and_table() {
    let text = r#"{"version":1,"title":"Rod","steps":[{"id":1,"title":"Rod bolts","work":{"fasten":{
        "thread":"M8x1","torque":"28 N·m","layout":{"line":{"count":2}},"grip_mm":38.0,"plain_mm":20.0,
        "to_yield":true,"condition":"paste"}}}]}"#;
    let sheet = Sheet::from_json(text).unwrap();
    let back = fasteners::read(&fasteners::write(&sheet), sheet.steps[0].id).unwrap();
    assert_eq!(back[0].work, sheet.steps[0].work);
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
    let plain = json::write(&begin("M8", "18 N·m").unwrap()).unwrap();
    for new in ["grip_mm", "plain_mm", "to_yield"] {
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
