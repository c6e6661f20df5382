//! The slip guard for any joint and any number.

use halfcase::trade::guard::{Fastener, Joint, Verdict, judge, judge_snug, window};
use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::{Length, TorqueUnit};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;
use proptest::prelude::*;
use uom::si::length::millimeter;

fn any_unit() -> impl Strategy<Value = TorqueUnit> {
    prop::sample::select(TorqueUnit::ALL.to_vec())
}

fn any_joint(engagement_mm: impl Strategy<Value = f64>) -> impl Strategy<Value = Joint> {
    (
        prop::sample::select(
            Thread::all()
                .filter(|thread| !thread.is_pipe())
                .collect::<Vec<_>>(),
        ),
        prop::option::of(prop::sample::select(Strength::ALL.to_vec())),
        prop::option::of(prop::sample::select(FemaleMaterial::ALL.to_vec())),
        prop::option::of(engagement_mm),
        prop::sample::select(Condition::ALL.to_vec()),
        prop::sample::select(Fastener::ALL.to_vec()),
    )
        .prop_map(
            |(thread, strength, material, engagement, condition, fastener)| Joint {
                thread,
                fastener,
                strength,
                material,
                engagement: engagement.map(Length::new::<millimeter>),
                condition,
            },
        )
}

/// Any finite number, of any size.
fn finite() -> impl Strategy<Value = f64> {
    prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO
}

/// From absurdly low to absurdly high.
fn rank(verdict: Verdict, too_high: bool) -> i8 {
    match (verdict, too_high) {
        (Verdict::Absurd, false) => -2,
        (Verdict::Low, _) => -1,
        (Verdict::Plausible, _) => 0,
        (Verdict::High, _) => 1,
        (Verdict::Absurd, true) => 2,
    }
}

proptest! {
    #[test]
    fn judges_or_refuses_any_number(
        value in prop_oneof![finite(), 1e-3..1e4f64], unit in any_unit(), joint in any_joint(prop_oneof![finite(), 0.0..60.0f64]),
    ) {
        match judge(value, unit, &joint) {
            Err(error) => prop_assert!(error.to_string().ends_with('.')),
            Ok(judged) => {
                for (low, high) in judged.proof_share.into_iter().chain(judged.strip_share) {
                    prop_assert!(low.is_finite() && high.is_finite() && low <= high && low >= 0.0);
                }
                prop_assert!(judged.preload.low.value.is_finite() && judged.preload.high.value.is_finite());
                prop_assert!(!judged.sentence.is_empty() && !judged.sentence.contains("NaN"));
                let solid = joint.fastener != Fastener::Banjo;
                prop_assert_eq!(judged.proof_share.is_some(), joint.strength.is_some() && solid);
                prop_assert_eq!(judged.strip_share.is_some(), joint.material.is_some());
            }
        }
    }

    /// Nothing offered to be taken asks for more than was typed, and a low bolt of which nobody said
    /// what it is gets the question first.
    #[test]
    fn no_reading_to_take_raises_the_torque(
        value in 1e-3..1e4f64, unit in any_unit(), joint in any_joint(0.0..60.0f64), turned in any::<bool>(),
    ) {
        let by = if turned { judge_snug } else { judge };
        if let Ok(judged) = by(value, unit, &joint) {
            let typed = unit.torque(value);
            prop_assert!(judged.readings.iter().all(|reading| reading.unit.torque(reading.value) <= typed));
            prop_assert!(judged.higher.is_none_or(|reading| reading.unit.torque(reading.value) > typed));
            let low = judged.verdict != Verdict::Plausible && !judged.too_high;
            prop_assert_eq!(judged.what_is_it, low && !turned && joint.fastener == Fastener::NotTold);
        }
    }

    #[test]
    fn more_torque_is_never_judged_lower(
        nm in 0.01..2000.0, more in 1.0..20.0, joint in any_joint(0.0..60.0f64),
    ) {
        let at = |nm: f64| judge(nm, TorqueUnit::NewtonMetre, &joint).expect("in range");
        let (less, greater) = (at(nm), at(nm * more));
        prop_assert!(rank(less.verdict, less.too_high) <= rank(greater.verdict, greater.too_high));
    }

    #[test]
    fn the_unit_does_not_matter(nm in 0.01..2000.0, unit in any_unit(), joint in any_joint(0.0..60.0f64)) {
        let limits = window(&joint);
        let torque = TorqueUnit::NewtonMetre.torque(nm);
        // Not within a rounding of a limit, where the last bit decides.
        for limit in [limits.absurd_below, limits.low_below, limits.high_above, limits.absurd_above] {
            prop_assume!((torque / limit).value.is_finite());
            prop_assume!(((torque / limit).value - 1.0).abs() > 1e-9);
        }
        let here = judge(nm, TorqueUnit::NewtonMetre, &joint).expect("in range");
        let there = judge(unit.value_of(torque), unit, &joint).expect("in range");
        prop_assert_eq!((here.verdict, here.too_high), (there.verdict, there.too_high));
    }

    #[test]
    fn every_reading_is_plausible_and_told_once(
        value in 0.01..2000.0, unit in any_unit(), joint in any_joint(0.0..60.0f64),
    ) {
        let judged = judge(value, unit, &joint).expect("in range");
        prop_assert_eq!(judged.readings.is_empty() || judged.verdict != Verdict::Plausible, true);
        for (at, reading) in judged.readings.iter().enumerate() {
            let again = judge(reading.value, reading.unit, &joint).expect("a reading can be judged");
            prop_assert_eq!(again.verdict, Verdict::Plausible);
            prop_assert!((reading.value, reading.unit) != (value, unit));
            prop_assert!(!judged.readings[..at].contains(reading));
        }
    }

    #[test]
    fn limits_stand_in_order(joint in any_joint(0.0..60.0f64)) {
        let limits = window(&joint);
        prop_assert!(limits.absurd_below <= limits.low_below);
        prop_assert!(limits.high_above <= limits.absurd_above);
        // Unless the thread hardly holds, there is a plausible range between.
        if joint.engagement.is_none() {
            prop_assert!(limits.low_below < limits.high_above);
        }
    }
}

/// Every thread and fastener, of no class, of the weakest and of the strongest, in a soft part or not:
/// the four limits stand in order, with room between.
#[test]
fn limits_stand_in_order_whatever_it_is() {
    let classes = || [None, Some(Strength::Stainless50), Some(Strength::Class12_9)].into_iter();
    let materials = || [None, Some(FemaleMaterial::Magnesium)].into_iter();
    for thread in Thread::all().filter(|thread| !thread.is_pipe()) {
        for (fastener, strength, material) in Fastener::ALL
            .into_iter()
            .flat_map(|it| classes().map(move |class| (it, class)))
            .flat_map(|(it, class)| materials().map(move |material| (it, class, material)))
        {
            let joint = Joint {
                fastener,
                strength,
                material,
                ..Joint::of(thread)
            };
            let limits = window(&joint);
            let ordered = limits.absurd_below < limits.low_below
                && limits.low_below < limits.high_above
                && limits.high_above <= limits.absurd_above;
            assert!(ordered, "{joint:?}: {limits:?}");
        }
    }
}
