//! The torques between which a bolt is believed.

use super::{Joint, Verdict};
use crate::trade::preload::{assembly_torque, torque_for};
use crate::trade::quantity::{Force, Torque};
use crate::trade::strength::{Strength, proof_load};
use crate::trade::thread::Thread;
use uom::si::force::newton;
use uom::si::torque::newton_meter;

/// A bolt loaded below this share of the weakest class's proof load clamps nothing worth a torque.
/// Half: manuals aim at three quarters of proof, and even soft parts get well over half of what
/// the weakest bolt could give.
const ABSURDLY_LOW_SHARE: f64 = 0.5;
/// With the class known: below this share of its own proof load it is worth a note.
const LOW_SHARE: f64 = 0.5;
/// With the class unknown: below this share of the weakest class's proof load.
const LOW_SHARE_UNKNOWN: f64 = 0.75;

/// A plug below this share is not even tight; common practice, no source. Sealing takes little pull.
const SEAL_SHARE: f64 = 0.1;

/// What decides an upper limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weakest {
    /// The bolt would stretch first.
    Bolt,
    /// The female thread would strip first.
    FemaleThread,
}

/// The limits of belief for one joint, as torques.
///
/// | limit | known class | unknown class |
/// | --- | --- | --- |
/// | `absurd_below` | half the proof load of the weakest class there is | same |
/// | `low_below` | half its own proof load | three quarters of the weakest's |
/// | `high_above` | its assembly ceiling | the ceiling of the strongest class |
/// | `absurd_above` | its ceiling even at the highest likely friction | the strongest's |
///
/// All at the usual friction of the joint's condition except the last. The low end of belief does
/// not depend on the class: a strong bolt in a soft part is tightened like a weak one. Where the
/// female thread's material is known, `high_above` is at most the torque that strips its weakest
/// alloy and `absurd_above` the one that strips its strongest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Below this the torque is not believed.
    pub absurd_below: Torque,
    /// Below this it is called low.
    pub low_below: Torque,
    /// Above this it is called high.
    pub high_above: Torque,
    /// Above this the torque is not believed.
    pub absurd_above: Torque,
    /// What sets `high_above`.
    pub high_by: Weakest,
    /// What sets `absurd_above`.
    pub absurd_by: Weakest,
    /// What a bolt of the known, or else a common, class would be given: the middle of belief.
    pub typical: Torque,
}

impl Window {
    /// The verdict on `torque`, and whether it errs upwards. The upper limits are asked first: a
    /// thread hardly engaged can make any torque too much.
    pub fn verdict(&self, torque: Torque) -> (Verdict, bool) {
        if torque > self.absurd_above {
            (Verdict::Absurd, true)
        } else if torque > self.high_above {
            (Verdict::High, true)
        } else if torque < self.absurd_below {
            (Verdict::Absurd, false)
        } else if torque < self.low_below {
            (Verdict::Low, false)
        } else {
            (Verdict::Plausible, false)
        }
    }
}

/// The limits of belief for a bolt that clamps.
pub fn window(joint: &Joint) -> Window {
    let (weakest, strongest) = extremes(joint.thread);
    let low = match joint.strength {
        Some(class) => LOW_SHARE * proof_load(joint.thread, class),
        None => LOW_SHARE_UNKNOWN * weakest,
    };
    let class = joint.strength.unwrap_or(strongest);
    let typical = joint.strength.unwrap_or(COMMON_CLASS);
    limits(joint, ABSURDLY_LOW_SHARE * weakest, low, class, typical)
}

/// The limits of belief for a part that seals rather than clamps: a plug, a banjo, a sensor.
///
/// Below a tenth of the weakest class's proof load it is absurdly low, and never merely low; above,
/// the ceilings of class 4.6 stand in for a class not known, as such parts are hollow or soft.
pub fn seal_window(joint: &Joint) -> Window {
    let (weakest, _) = extremes(joint.thread);
    let class = joint.strength.unwrap_or(Strength::Class4_6);
    limits(joint, SEAL_SHARE * weakest, SEAL_SHARE * weakest, class, class)
}

/// The limits from two pulls below and a class's ceilings above, held to what the female thread bears.
fn limits(joint: &Joint, absurd: Force, low: Force, class: Strength, typical: Strength) -> Window {
    let thread = joint.thread;
    let usual = joint.condition.usual_friction();
    let (_, rough) = joint.condition.friction();
    let at_usual = |force: Force| torque_for(force, thread, usual, usual);
    let mut limits = Window {
        absurd_below: at_usual(absurd),
        low_below: at_usual(low),
        high_above: assembly_torque(thread, class, usual),
        absurd_above: assembly_torque(thread, class, rough),
        high_by: Weakest::Bolt,
        absurd_by: Weakest::Bolt,
        typical: TYPICAL_SHARE * assembly_torque(thread, typical, usual),
    };
    if let Some((weak, strong)) = joint.strip_load() {
        if at_usual(weak) < limits.high_above {
            limits.high_above = at_usual(weak);
            limits.high_by = Weakest::FemaleThread;
        }
        if at_usual(strong) < limits.absurd_above {
            limits.absurd_above = at_usual(strong);
            limits.absurd_by = Weakest::FemaleThread;
        }
        limits.typical = smaller(limits.typical, limits.high_above);
    }
    limits
}

/// The class of most bolts on engines and gearboxes, inch grade 5 lying a little below.
const COMMON_CLASS: Strength = Strength::Class8_8;
/// Manuals stay a little under the ceiling; only ranks readings, decides no verdict.
const TYPICAL_SHARE: f64 = 0.85;

/// Proof load of the weakest class at this diameter, and the class with the highest yield.
fn extremes(thread: Thread) -> (Force, Strength) {
    let mut weakest = Force::new::<newton>(f64::INFINITY);
    let mut strongest = COMMON_CLASS;
    for class in Strength::ALL {
        let proof = proof_load(thread, class);
        if proof < weakest {
            weakest = proof;
        }
        if class.yield_strength(thread) > strongest.yield_strength(thread) {
            strongest = class;
        }
    }
    (weakest, strongest)
}

fn smaller(a: Torque, b: Torque) -> Torque {
    Torque::new::<newton_meter>(a.get::<newton_meter>().min(b.get::<newton_meter>()))
}
