//! A torque before an angle: a point moved is stopped, not only noted, where it would leave a rod bolt loose.

use halfcase::trade::guard::{Joint, Verdict, judge_snug};
use halfcase::trade::quantity::TorqueUnit;
use halfcase::trade::thread::Thread;

/// Rod and main bolts of small engines, N·m before their angle (from memory, makers not named): one written with its
/// point moved, or N·m for in·lb, is a bolt run down by hand. 12 N·m lies at the low end of what manuals start with.
#[test]
fn a_tenth_of_a_snug_torque_stops() {
    for (thread, nm) in [
        ("M7", 20.0),
        ("M7×0.75", 20.0),
        ("M8", 20.0),
        ("M8×1", 25.0),
        ("M9×1", 30.0),
        ("M10", 40.0),
        ("M6", 12.0),
    ] {
        let joint = Joint::of(Thread::parse(thread).expect("a size of the table"));
        let at = |nm: f64| {
            judge_snug(nm, TorqueUnit::NewtonMetre, &joint)
                .expect("a judgement")
                .verdict
        };
        assert_ne!(at(nm), Verdict::Absurd, "{thread} {nm}");
        assert_eq!(at(nm / 10.0), Verdict::Absurd, "{thread} {nm} at a tenth");
    }
}
