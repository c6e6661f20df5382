//! The whole space of joints, walked: every kind, every tile of every question, every "don't know".

use halfcase::trade::application::{
    Apart, Application, DONT_KNOW, Face, Fluid, Held, Hole, JointKind, ManualWord, Outside, Partner,
    PlugSeal, answer, every_question, questions,
};
use halfcase::trade::compound::{CompoundClass, FORBIDDEN, Family, RULES, Rule, first_rule, recommend};
use proptest::prelude::*;
use std::collections::BTreeSet;
use uom::si::f64::{Length, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::kelvin;

fn every_rule() -> impl Iterator<Item = &'static Rule> {
    RULES.iter().copied().flatten()
}

/// Calls `look` with every joint of a kind that can be told: every tile of every question as it is asked.
/// With a stale answer to what is not asked, another one each time, as after a change of mind, it says the same.
fn every_joint(kind: JointKind, look: &mut dyn FnMut(&Application)) -> usize {
    let all = every_question(kind);
    let mut seen = 0;
    told(&Application::new(kind), 0, &mut |joint, asked| {
        let mut stuffed = joint.clone();
        for (at, question) in all.iter().enumerate() {
            if !asked.contains(&question.id) {
                let choice = question.choices[(seen + at) % question.choices.len()];
                answer(&mut stuffed, question.id, choice.id).unwrap();
            }
        }
        seen += 1;
        assert_eq!(first_rule(&stuffed).id, first_rule(joint).id, "{stuffed:?}");
        look(joint);
    });
    seen
}

fn told(joint: &Application, depth: usize, look: &mut dyn FnMut(&Application, &[&str])) {
    let asked = questions(joint);
    let Some(question) = asked.get(depth) else {
        let asked: Vec<&str> = asked.iter().map(|question| question.id).collect();
        return look(joint, &asked);
    };
    for choice in question.choices {
        let mut next = joint.clone();
        answer(&mut next, question.id, choice.id).unwrap();
        told(&next, depth + 1, look);
    }
}

/// Joints of a kind spread over the same product, every `stride`th; a prime stride meets every tile.
fn sampled(kind: JointKind, stride: usize) -> impl Iterator<Item = Application> {
    let asked = every_question(kind);
    let all: usize = asked.iter().map(|question| question.choices.len()).product();
    // All of a small kind; of a large one fewer, by a stride that still meets every tile.
    let stride = match all {
        0..2_000 => 1,
        2_000..1_000_000 => stride,
        _ => stride * 53,
    };
    (0..all).step_by(stride).map(move |mut number| {
        let mut joint = Application::new(kind);
        for question in &asked {
            let choice = question.choices[number % question.choices.len()];
            answer(&mut joint, question.id, choice.id).unwrap();
            number /= question.choices.len();
        }
        joint
    })
}

fn mm(length: Option<Length>) -> Option<f64> {
    length.map(|length| length.get::<millimeter>())
}

/// The pairs that must never be, told from the bare answers, not by the library's own table.
fn wrong(joint: &Application, class: CompoundClass) -> Option<&'static str> {
    use CompoundClass as C;
    let silicone = matches!(class, C::SiliconeNeutral | C::SiliconeSensorSafe);
    let anaerobic = matches!(
        class,
        C::ThreadlockLow
            | C::ThreadlockMedium
            | C::ThreadlockHigh
            | C::ThreadlockWicking
            | C::RetainingCompound
            | C::AnaerobicFlange
            | C::AnaerobicPipe
    );
    let plastic = joint.face == Some(Face::Thermoplastic);
    let small = mm(joint.thread).is_none_or(|thread| thread < 10.0);
    let ring = joint.kind == JointKind::ORing || joint.seal == Some(PlugSeal::Ring);
    let washer = joint.kind == JointKind::BondedOrCrushWasher || joint.seal == Some(PlugSeal::Washer);
    let oily = matches!(class, C::LightOil | C::Grease);
    let bolt = matches!(joint.kind, JointKind::ThreadedFastener | JointKind::Stud);
    let silent = matches!(joint.manual, None | Some(ManualWord::NotStated));
    let hot = joint.temperature.is_some_and(|heat| heat.get::<kelvin>() > 504.0);
    let pairs = [
        (
            silicone && matches!(joint.fluid, Some(Fluid::Fuel) | None),
            "silicone in fuel, or what may be",
        ),
        (anaerobic && plastic, "anaerobic on plastic"),
        (class == C::SemiDryingGasket && plastic, "solvent on plastic"),
        (
            class == C::ThreadlockHigh && small && joint.apart != Some(Apart::Never),
            "high on small",
        ),
        (joint.precoated == Some(true), "liquid on a coated thread"),
        (ring && !oily, "sealant on an O-ring"),
        (
            washer && !oily && joint.kind != JointKind::SparkPlug,
            "sealant on a washer",
        ),
        (joint.kind == JointKind::HoseSpigot, "sealant on a hose"),
        (
            joint.manual == Some(ManualWord::Dry),
            "against a manual that says dry",
        ),
        (
            class == C::SiliconeNeutral && joint.oxygen_sensor != Some(false),
            "plain silicone near a sensor",
        ),
        (
            class == C::AnaerobicFlange && mm(joint.gap).is_some_and(|gap| gap > 0.25),
            "anaerobic over a gap",
        ),
        (
            class == C::RetainingCompound
                && (mm(joint.gap).is_some_and(|gap| gap > 0.25)
                    || joint.kind == JointKind::Cylindrical && joint.gap.is_none()),
            "retaining over a gap",
        ),
        (
            class.locks_threads() && joint.locked == Some(true),
            "threadlocker beside a lock",
        ),
        (
            hot && !oily && class != C::AntiSeize && class != C::PtfePaste,
            "hotter than it stands",
        ),
        (
            class == C::ThreadlockHigh
                && matches!(joint.face, Some(Face::CastAluminium) | None)
                && joint.manual != Some(ManualWord::LockHigh),
            "high strength in what may be aluminium",
        ),
        (
            class == C::ThreadlockHigh
                && matches!(joint.face, Some(Face::Stainless | Face::Plated))
                && matches!(joint.partner, None | Some(Partner::Aluminium))
                && joint.manual != Some(ManualWord::LockHigh),
            "high strength in what may be aluminium, by its partner",
        ),
        (
            anaerobic && bolt && silent && joint.plastic_part == Some(true),
            "wet compound near a plastic part",
        ),
        (
            class == C::AntiSeize
                && bolt
                && silent
                && joint.locked != Some(true)
                && joint.vibration != Some(false),
            "paste on what is shaken, or may be",
        ),
        (
            class == C::RetainingCompound
                && joint.kind == JointKind::Cylindrical
                && silent
                && joint.held != Some(Held::Bush)
                && mm(joint.gap).is_some_and(|gap| gap > 0.1),
            "a bearing or gear off centre",
        ),
        (
            joint.kind == JointKind::SparkPlug
                && !(class == C::AntiSeize && joint.manual == Some(ManualWord::AntiSeize)),
            "anything on a spark plug that the manual does not name",
        ),
        (joint.seal == Some(PlugSeal::Cone), "anything on a cone"),
        (
            joint.kind == JointKind::TaperSeat && silent,
            "anything on a dry taper",
        ),
        (
            joint.kind == JointKind::Exhaust && class != C::AntiSeize,
            "what burns, on an exhaust",
        ),
        (
            joint.kind == JointKind::ShaftSeal
                && joint.outside != Some(Outside::Metal)
                && class != C::Grease
                && silent,
            "a liquid on a seal that may be rubber",
        ),
        (
            joint.kind == JointKind::CorePlug && mm(joint.gap).is_some_and(|gap| gap > 0.0),
            "a core plug that slides in",
        ),
        (
            class == C::ThreadlockWicking && joint.assembled != Some(true),
            "wicking into an open thread",
        ),
        (
            anaerobic && class != C::ThreadlockWicking && joint.assembled == Some(true),
            "thick on a closed thread",
        ),
    ];
    pairs.into_iter().find(|pair| pair.0).map(|pair| pair.1)
}

#[test]
fn every_joint_has_one_answer_and_never_a_wrong_one() {
    let mut used = BTreeSet::new();
    let mut seen = 0;
    for &kind in JointKind::ALL {
        seen += every_joint(kind, &mut |joint| {
            let rule = first_rule(joint);
            assert_ne!(rule.id, "unanswered", "{joint:?}");
            used.insert(rule.id);
            if let Some(class) = rule.class {
                assert_eq!(wrong(joint, class), None, "{} for {joint:?}", rule.id);
            }
        });
    }
    assert!(seen > 200_000, "only {seen} joints were walked");
    let idle: Vec<_> = every_rule()
        .map(|rule| rule.id)
        .filter(|id| !used.contains(id))
        .collect();
    assert_eq!(idle, Vec::<&str>::new(), "rules that no joint ever meets");
}

#[test]
fn the_table_of_forbidden_pairs_agrees_with_the_rules() {
    let mut met = BTreeSet::new();
    for joint in JointKind::ALL.iter().flat_map(|kind| sampled(*kind, 211)) {
        if let Some(class) = first_rule(&joint).class {
            assert_eq!(class.refused_for(&joint), None, "{joint:?}");
        }
        met.extend(
            CompoundClass::ALL
                .iter()
                .filter_map(|class| class.refused_for(&joint)),
        );
    }
    // Kinds with no question have one joint each, which no stride misses.
    let idle: Vec<_> = FORBIDDEN
        .iter()
        .filter(|pair| !met.contains(pair.reason))
        .map(|pair| pair.id)
        .collect();
    assert_eq!(idle, Vec::<&str>::new(), "pairs that no joint ever meets");
}

#[test]
fn every_question_can_change_the_card() {
    for &kind in JointKind::ALL {
        for question in every_question(kind) {
            let changed = sampled(kind, 29).any(|joint| changes(&joint, question.id));
            assert!(changed, "{kind:?} is asked {} for nothing", question.id);
        }
    }
}

/// Whether the card differs, its assumptions apart, by the answer to this question alone.
fn changes(joint: &Application, id: &str) -> bool {
    let Some(question) = questions(joint).into_iter().find(|question| question.id == id) else {
        return false;
    };
    let mut cards = question.choices.iter().map(|choice| {
        let mut joint = joint.clone();
        answer(&mut joint, id, choice.id).unwrap();
        let mut card = recommend(&joint);
        card.assumed.clear();
        card
    });
    let first = cards.next();
    cards.any(|card| Some(card) != first)
}

#[test]
fn a_card_that_names_a_compound_says_how_and_a_card_that_names_none_says_why() {
    for joint in JointKind::ALL.iter().flat_map(|kind| sampled(*kind, 211)) {
        let card = recommend(&joint);
        assert!(card.reason.ends_with('.'), "{}", card.reason);
        assert!(
            card.rejected
                .iter()
                .all(|(class, why)| Some(*class) != card.class && why.ends_with('.'))
        );
        assert_eq!(card.class.is_some(), !card.where_and_how.is_empty());
        assert_eq!(card.class.is_some(), !card.preparation.is_empty());
        assert_eq!(
            card.class.is_some(),
            card.removal.is_some() && card.service_limit.is_some()
        );
        let cures = card
            .class
            .is_some_and(|class| class.family() != Family::NonCuring);
        assert_eq!(cures, card.cure.is_some(), "{card:?}");
        // What sets never gets into a bearing, a jet or an oil way.
        if cures {
            let off = card.must_not_touch.join(" ").to_lowercase();
            for place in ["bearings", "oil ways", "jets"] {
                assert!(off.contains(place), "{place} of {joint:?}");
            }
        }
        assert!(card.cure.is_none_or(|cure| cure.label.check().is_ok()));
        assert_eq!(
            card.assumed.len(),
            questions(&joint).iter().filter(|q| q.chosen.is_none()).count()
        );
    }
}

#[test]
fn names_and_ids_are_each_used_once() {
    let ids: BTreeSet<_> = every_rule().map(|rule| rule.id).collect();
    assert_eq!(ids.len(), every_rule().count());
    let names: BTreeSet<_> = CompoundClass::ALL.iter().map(|class| class.name()).collect();
    assert_eq!(names.len(), CompoundClass::ALL.len());
    for &kind in JointKind::ALL {
        let asked = every_question(kind);
        let ids: BTreeSet<_> = asked.iter().map(|question| question.id).collect();
        assert_eq!(ids.len(), asked.len(), "{kind:?}");
        for question in asked {
            assert_eq!(question.choices.last().map(|choice| choice.id), Some(DONT_KNOW));
            let tiles: BTreeSet<_> = question.choices.iter().map(|choice| choice.id).collect();
            assert_eq!(tiles.len(), question.choices.len());
        }
    }
}

fn any_of<T: Clone + std::fmt::Debug>(all: &'static [T]) -> impl Strategy<Value = Option<T>> {
    proptest::option::of(proptest::sample::select(all))
}

prop_compose! {
    /// A joint with any answers at all, whether its kind asks for them or not, and any numbers.
    fn any_joint()(
        kind in proptest::sample::select(JointKind::ALL),
        manual in any_of(ManualWord::ALL),
        face in any_of(Face::ALL),
        hole in any_of(Hole::ALL),
        apart in any_of(Apart::ALL),
        seal in any_of(PlugSeal::ALL),
        fluid in any_of(Fluid::ALL),
        partner in any_of(Partner::ALL),
        held in any_of(Held::ALL),
        outside in any_of(Outside::ALL),
        yes in proptest::collection::vec(any::<Option<bool>>(), 8),
        thread in proptest::option::of(any::<f64>()),
        gap in proptest::option::of(any::<f64>()),
        temperature in proptest::option::of(any::<f64>()),
    ) -> Application {
        Application {
            manual, face, hole, apart, seal, fluid, partner, held, outside,
            precoated: yes[0], locked: yes[1], assembled: yes[2], vibration: yes[3],
            rigid: yes[4], oxygen_sensor: yes[5], oil_ways: yes[6], plastic_part: yes[7],
            thread: thread.map(Length::new::<millimeter>),
            gap: gap.map(Length::new::<millimeter>),
            temperature: temperature.map(ThermodynamicTemperature::new::<kelvin>),
            ..Application::new(kind)
        }
    }
}

proptest! {
    #[test]
    fn any_answers_at_all_give_a_card(joint in any_joint()) {
        let card = recommend(&joint);
        prop_assert_ne!(card.rule, "unanswered");
        if let Some(class) = card.class {
            prop_assert_eq!(class.refused_for(&joint), None);
        }
    }

    #[test]
    fn an_answer_that_is_not_asked_for_never_counts(joint in any_joint(), other in any_joint()) {
        let mut asked_only = Application::new(joint.kind);
        let mut stuffed = Application { kind: joint.kind, ..other };
        for question in every_question(joint.kind) {
            answer(&mut stuffed, question.id, DONT_KNOW).unwrap();
        }
        for question in questions(&joint) {
            if let Some(choice) = question.chosen {
                answer(&mut asked_only, question.id, choice).unwrap();
                answer(&mut stuffed, question.id, choice).unwrap();
            }
        }
        prop_assert_eq!(recommend(&stuffed), recommend(&asked_only));
    }

    #[test]
    fn a_tile_answered_is_the_tile_shown(joint in any_joint(), at in any::<proptest::sample::Index>()) {
        let asked = questions(&joint);
        prop_assume!(!asked.is_empty());
        let question = asked[at.index(asked.len())];
        for choice in question.choices {
            let mut joint = joint.clone();
            answer(&mut joint, question.id, choice.id).unwrap();
            let shown = questions(&joint).into_iter().find(|shown| shown.id == question.id).unwrap();
            prop_assert_eq!(shown.chosen, (choice.id != DONT_KNOW).then_some(choice.id));
        }
    }

    #[test]
    fn an_answered_joint_is_stored_and_read_back_the_same(joint in any_joint()) {
        let mut tiles_only = Application::new(joint.kind);
        for question in questions(&joint) {
            if let Some(choice) = question.chosen {
                answer(&mut tiles_only, question.id, choice).unwrap();
            }
        }
        let text = serde_json::to_string(&tiles_only).unwrap();
        prop_assert_eq!(serde_json::from_str::<Application>(&text).unwrap(), tiles_only);
    }
}

#[test]
fn a_wrong_question_or_choice_is_refused_in_one_sentence() {
    let mut joint = Application::new(JointKind::Gasket);
    let before = joint.clone();
    let refused = answer(&mut joint, "thread", "to_m6").unwrap_err();
    assert_eq!(
        refused.to_string(),
        "This kind of joint has no such question; choose one of those shown."
    );
    let refused = answer(&mut joint, "manual", "lock_high").unwrap_err();
    assert_eq!(
        refused.to_string(),
        "The question has no such answer; choose one of those shown."
    );
    assert_eq!(joint, before);
}
