//! Bolts as springs: what holds for any of them.

use halfcase::trade::quantity::{Angle, Length};
use halfcase::trade::stretch::{Shank, drawn};
use halfcase::trade::thread::Thread;
use proptest::prelude::*;
use uom::si::angle::degree;
use uom::si::length::millimeter;

fn thread() -> impl Strategy<Value = Thread> {
    let bolts: Vec<Thread> = Thread::all().filter(|thread| !thread.is_pipe()).collect();
    prop::sample::select(bolts)
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn more_stretch_pulls_more_and_more_grip_less(
        thread in thread(), grip in 2.0..500.0_f64, plain in 0.0..1.0_f64, share in 0.0001..0.02_f64,
    ) {
        let bolt = |grip: f64| Shank {
            thread,
            strength: None,
            grip: mm(grip),
            plain: mm(grip * plain),
            diameter: None,
        };
        let stretch = grip * share;
        let pull = bolt(grip).pull(mm(stretch)).unwrap();
        prop_assert!(pull.low < pull.high && pull.low.value > 0.0);
        prop_assert!(bolt(grip).pull(mm(stretch * 2.0)).unwrap().high > pull.high * 1.999);
        prop_assert!(bolt(grip * 1.5).pull(mm(stretch)).unwrap().high < pull.high);
    }

    #[test]
    fn any_numbers_are_answered_or_refused(
        thread in thread(), grip in prop::num::f64::ANY, plain in prop::num::f64::ANY,
        diameter in prop::num::f64::ANY, stretch in prop::num::f64::ANY, turn in prop::num::f64::ANY,
    ) {
        let bolt = Shank {
            thread,
            strength: None,
            grip: mm(grip),
            plain: mm(plain),
            diameter: Some(mm(diameter)),
        };
        if let Ok(pull) = bolt.pull(mm(stretch)) {
            prop_assert!(pull.low.value.is_finite() && pull.high.value.is_finite());
        }
        if let Ok(drawn) = drawn(thread, Angle::new::<degree>(turn)) {
            prop_assert!(drawn.value > 0.0);
        }
    }
}
