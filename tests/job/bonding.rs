//! The walk through the selector: what it answers is what the rule table answers.

use halfcase::job::bonding::{Surroundings, Walk, bond, chosen_words};
use halfcase::trade::application::{Application, DONT_KNOW, JointKind, answer};
use halfcase::trade::compound::{first_rule, recommend};

/// A small generator, so that a walk can be walked again.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % end as u64) as usize
    }
}

#[test]
fn five_hundred_random_walks_answer_as_the_rule_table() {
    let mut classes = std::collections::BTreeSet::new();
    for seed in 0..500 {
        let mut dice = Dice(seed);
        let kind = JointKind::ALL[dice.below(JointKind::ALL.len())];
        let mut walk = Walk::default();
        walk.choose_kind(kind);
        // Beside the walk, the same answers given to the bare joint.
        let mut joint = Application::new(kind);
        let mut asked = 0;
        while let Some(question) = walk.next() {
            let choice = question.choices[dice.below(question.choices.len())];
            walk.choose(question.id, choice.id).unwrap();
            answer(&mut joint, question.id, choice.id).unwrap();
            asked += 1;
            assert!(asked < 40, "walk {seed} has no end");
        }
        // Now and then an answer is changed in place.
        let rows = walk.asked();
        if seed % 3 == 0 && !rows.is_empty() {
            let (question, _) = &rows[dice.below(rows.len())];
            let choice = question.choices[dice.below(question.choices.len())];
            walk.choose(question.id, choice.id).unwrap();
            answer(&mut joint, question.id, choice.id).unwrap();
            walk.leave_the_rest();
        }
        assert_eq!(walk.next(), None);
        let shown = bond(
            walk.joint.as_ref().unwrap(),
            Surroundings {
                bottles: &[],
                activator: false,
                today: 0,
                shop_c: None,
            },
        );
        let rule = first_rule(&joint);
        assert_eq!(shown.recommendation.rule, rule.id, "walk {seed}");
        assert_eq!(
            shown.title(),
            rule.class.map_or("nothing", |class| class.name()),
            "walk {seed}"
        );
        assert_eq!(shown.recommendation, recommend(&joint), "walk {seed}");
        classes.insert(shown.title());
    }
    assert!(classes.len() >= 10, "the walks meet most answers: {classes:?}");
}

#[test]
fn dont_know_is_an_answer_and_is_said_on_the_card() {
    let mut walk = Walk::default();
    walk.choose_kind(JointKind::CaseHalves);
    let first = walk.next().unwrap();
    walk.choose(first.id, DONT_KNOW).unwrap();
    assert_ne!(walk.next().unwrap().id, first.id);
    let (question, met) = walk
        .asked()
        .into_iter()
        .find(|(question, _)| question.id == first.id)
        .unwrap();
    assert!(met);
    assert_eq!(chosen_words(&question), "Don't know");
    walk.leave_the_rest();
    let joint = walk.joint.as_ref().unwrap();
    let card = bond(
        joint,
        Surroundings {
            bottles: &[],
            activator: false,
            today: 0,
            shop_c: None,
        },
    );
    let section = card
        .sections()
        .into_iter()
        .find(|section| section.title.starts_with("not known"))
        .unwrap();
    assert_eq!(section.lines.len(), walk.asked().len());
}

#[test]
fn a_changed_kind_keeps_what_is_known() {
    let mut walk = Walk::default();
    walk.choose_kind(JointKind::FlangeRigid);
    walk.choose("fluid", "oil").unwrap();
    walk.choose_kind(JointKind::CaseHalves);
    assert!(
        walk.asked()
            .iter()
            .any(|(question, met)| question.id == "fluid" && *met)
    );
    assert!(walk.choose("no such question", "oil").is_err());
}

#[test]
fn a_walk_is_read_back_as_it_was_written() {
    let mut walk = Walk::default();
    walk.choose_kind(JointKind::Stud);
    walk.leave_the_rest();
    let text = serde_json::to_string(&walk).unwrap();
    assert_eq!(serde_json::from_str::<Walk>(&text).unwrap(), walk);
    assert_eq!(serde_json::from_str::<Walk>("{}").unwrap(), Walk::default());
}
