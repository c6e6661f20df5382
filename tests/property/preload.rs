//! Torque, pull and strip for any thread and any number.

use halfcase::trade::preload::{Condition, assembly_ceiling, assembly_torque, preload, torque_for};
use halfcase::trade::quantity::{Force, Length, Torque};
use halfcase::trade::strength::{Strength, proof_load};
use halfcase::trade::strip::{FemaleMaterial, strip_load};
use halfcase::trade::thread::Thread;
use proptest::prelude::*;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

fn any_thread() -> impl Strategy<Value = Thread> {
    prop::sample::select(
        Thread::all()
            .filter(|thread| !thread.is_pipe())
            .collect::<Vec<_>>(),
    )
}

fn any_condition() -> impl Strategy<Value = Condition> {
    prop::sample::select(Condition::ALL.to_vec())
}

fn any_class() -> impl Strategy<Value = Strength> {
    prop::sample::select(Strength::ALL.to_vec())
}

fn any_material() -> impl Strategy<Value = FemaleMaterial> {
    prop::sample::select(FemaleMaterial::ALL.to_vec())
}

/// Any finite number, of any size.
fn finite() -> impl Strategy<Value = f64> {
    prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO
}

proptest! {
    #[test]
    fn pull_grows_with_torque(
        thread in any_thread(), condition in any_condition(), nm in 0.01..50_000.0, more in 1.001..2.0,
    ) {
        let at = |nm: f64| preload(Torque::new::<newton_meter>(nm), thread, condition).expect("in range");
        let (less, greater) = (at(nm), at(nm * more));
        prop_assert!(less.low <= less.high);
        prop_assert!(less.low < greater.low && less.high < greater.high);
    }

    #[test]
    fn pull_and_torque_undo_each_other(thread in any_thread(), condition in any_condition(), nm in 0.01..50_000.0) {
        let torque = Torque::new::<newton_meter>(nm);
        let range = preload(torque, thread, condition).expect("in range");
        let (slippery, rough) = condition.friction();
        for (force, friction) in [(range.low, rough), (range.high, slippery)] {
            let back = torque_for(force, thread, friction, friction).get::<newton_meter>();
            prop_assert!((back / nm - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn friction_takes_torque_and_gives_none_back(
        thread in any_thread(), class in any_class(), friction in 0.02..0.4, more in 1.01..2.0,
    ) {
        let rougher = friction * more;
        prop_assert!(assembly_ceiling(thread, class, rougher) < assembly_ceiling(thread, class, friction));
        prop_assert!(assembly_torque(thread, class, rougher) > assembly_torque(thread, class, friction));
        // Twist always costs something, so the ceiling stays under 90 % of yield on the area.
        let limit = class.yield_strength(thread) * thread.stress_area() * 0.9;
        prop_assert!(assembly_ceiling(thread, class, friction) < limit);
    }

    #[test]
    fn longer_engagement_strips_later(
        thread in any_thread(), material in any_material(), share in 0.05..2.9, more in 1.01..1.03,
    ) {
        let at = |diameters: f64| strip_load(thread, material, diameters * thread.major());
        let (less, greater) = (at(share), at(share * more));
        prop_assert!(less.0 < less.1);
        prop_assert!(less.0 < greater.0 && less.1 < greater.1);
    }

    #[test]
    fn nothing_is_ever_not_a_number(
        thread in any_thread(), class in any_class(), condition in any_condition(),
        material in any_material(), a in finite(), b in finite(), c in finite(),
    ) {
        if let Ok(range) = preload(Torque::new::<newton_meter>(a), thread, condition) {
            prop_assert!(range.low.value.is_finite() && range.high.value.is_finite());
        }
        prop_assert!(torque_for(Force::new::<newton>(a), thread, b, c).value.is_finite());
        prop_assert!(assembly_ceiling(thread, class, a).value.is_finite());
        prop_assert!(assembly_torque(thread, class, a).value.is_finite());
        prop_assert!(proof_load(thread, class).value > 0.0);
        let (weak, strong) = strip_load(thread, material, Length::new::<millimeter>(a));
        prop_assert!(weak.value.is_finite() && strong.value.is_finite() && weak.value >= 0.0);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".{0,60}") {
        if let Err(error) = Thread::parse(&text) {
            prop_assert!(!error.to_string().is_empty());
        }
    }

    #[test]
    fn anything_like_a_thread_is_read_or_refused(text in "[mM#]?[0-9./]{0,5} ?[xX×*-]? ?[0-9.,]{0,6} ?(UN[CF])?") {
        if let Ok(thread) = Thread::parse(&text) {
            prop_assert_eq!(Thread::parse(&thread.name()), Ok(thread));
        }
    }
}
