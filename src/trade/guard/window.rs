//! The torques between which a fastener is believed.

use super::fastener::{Law, Spread};
use super::{Joint, Verdict};
use crate::trade::preload::{Condition, assembly_torque, torque_for};
use crate::trade::quantity::{Force, Torque};
use crate::trade::strength::{Strength, proof_load};
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

/// With the class known: below these shares of its own proof load it is not believed, and noted.
/// Tables of whole bolts begin at 0.46, of strong bolts in soft parts at 0.58.
const STOP_SHARE: f64 = 0.2;
const NOTE_SHARE: f64 = 0.4;
/// With the class unknown: the same, of the weakest class's. Thin nuts begin at 0.46: a tenth below.
const STOP_SHARE_UNKNOWN: f64 = 0.42;
const NOTE_SHARE_UNKNOWN: f64 = 0.5;

/// How far tables may run over the ceiling of a class's least yield: bolts yield some 10 % above the
/// least (common practice, no source), and an engine's table for oiled bolts uses it up.
const OVER_LEAST: f64 = 1.1;
/// Above this much more than is noted, a torque is not believed: class known, unknown. Nobody aims
/// the strongest class over its ceiling without naming it.
const STOP_OVER_NOTE: f64 = 1.3;
const STOP_OVER_NOTE_UNKNOWN: f64 = 1.1;
/// Friction that tables for oiled threads are worked at, at most (VDI 2230, class B).
const OILED_TABLES: f64 = 0.16;

/// A stage before an angle: the shares of the plain torque between which it is believed, stopped,
/// noted, noted, stopped (common practice, no source: 5 to 60 %, as manuals' stages stand at 15 to 90).
const SNUG_SHARES: [f64; 4] = [0.09, 0.12, 0.75, 1.2];

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
/// | limit of a bolt | known class | unknown class |
/// | --- | --- | --- |
/// | `absurd_below` | a fifth of its own proof load | 0.42 of the weakest's |
/// | `low_below` | 0.4 of its own proof load | half the weakest's |
/// | `high_above` | 1.1 of its ceiling at the tables' friction | the ceiling of the strongest class there |
/// | `absurd_above` | 1.3 above that | 1.1 above that |
///
/// Below at the usual friction of the joint's condition. Above at the greatest that its tables are
/// worked at: for a slippery thread the condition's high end, where such tables go; for others the
/// usual, as none was found that goes higher; not known, either may be meant. Into aluminium or
/// magnesium `high_above` is the plain ceiling at the usual friction: manuals stay well under it there.
///
/// What is no bolt has a torque of its own ([`super::Fastener`]) and limits by factors from it.
/// Where the female thread's material is known, `high_above` is at most the torque that strips its
/// weakest alloy and `absurd_above` the one that strips its strongest.
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
    /// What such a fastener would be given: the middle of belief.
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

    const fn new(limits: [Torque; 4], typical: Torque) -> Self {
        let [absurd_below, low_below, high_above, absurd_above] = limits;
        Self {
            absurd_below,
            low_below,
            high_above,
            absurd_above,
            high_by: Weakest::Bolt,
            absurd_by: Weakest::Bolt,
            typical,
        }
    }

    /// The window held to what the female thread bears.
    fn held_to_thread(mut self, joint: &Joint) -> Self {
        let Some((weak, strong)) = joint.strip_load() else {
            return self;
        };
        let (weak, strong) = (at_usual(joint, weak), at_usual(joint, strong));
        if weak < self.high_above {
            (self.high_above, self.high_by) = (weak, Weakest::FemaleThread);
        }
        if strong < self.absurd_above {
            (self.absurd_above, self.absurd_by) = (strong, Weakest::FemaleThread);
        }
        self.typical = smaller(self.typical, self.high_above);
        self
    }

    /// Where a cap came down below its own torque, its low end comes down with it.
    fn with_low_end(mut self, spread: Spread) -> Self {
        let width = spread.noted_below * spread.noted_above;
        self.low_below = smaller(self.low_below, self.high_above / width);
        let stopped = spread.noted_below / spread.stopped_below;
        self.absurd_below = smaller(self.absurd_below, self.low_below * stopped);
        self
    }

    /// The window of a weaker bolt laid over it: its upper limits hold too.
    fn under(mut self, bolt: &Self) -> Self {
        self.high_above = smaller(self.high_above, bolt.high_above);
        self.absurd_above = smaller(self.absurd_above, bolt.absurd_above);
        self
    }
}

/// The limits of belief for what the joint's fastener is.
pub fn window(joint: &Joint) -> Window {
    let bolt = bolt_window(joint);
    let own = match joint.fastener.law() {
        Law::Class => return bolt.held_to_thread(joint),
        Law::Square(nm_per_mm2) => {
            let mm = joint.thread.major().get::<millimeter>();
            Torque::new::<newton_meter>(nm_per_mm2 * mm * mm)
        }
        Law::Share(share) => {
            let usual = Condition::Unknown.usual_friction();
            share * assembly_torque(joint.thread, COMMON_CLASS, usual)
        }
    };
    let spread = joint.fastener.spread();
    let below = (own / spread.stopped_below, own / spread.noted_below);
    let above = (own * spread.noted_above, own * spread.stopped_above);
    let limits = Window::new([below.0, below.1, above.0, above.1], own);
    let limits = if joint.strength.is_some() && !joint.fastener.is_hollow() {
        limits.under(&bolt)
    } else {
        limits
    };
    limits.held_to_thread(joint).with_low_end(spread)
}

/// The limits of belief for a stage before an angle, by shares of what the bolt would be given
/// without one; of a class not known, class 10.9, which most bolts turned by an angle have.
pub fn snug_window(joint: &Joint) -> Window {
    let class = joint.strength.unwrap_or(TURNED_CLASS);
    let plain = TYPICAL_SHARE * assembly_torque(joint.thread, class, joint.condition.usual_friction());
    let [stopped, noted, high, absurd] = SNUG_SHARES;
    Window::new(
        [stopped * plain, noted * plain, high * plain, absurd * plain],
        SNUG_TYPICAL * plain,
    )
    .held_to_thread(joint)
}

fn bolt_window(joint: &Joint) -> Window {
    let thread = joint.thread;
    let usual = joint.condition.usual_friction();
    let ceiling = |class, friction| assembly_torque(thread, class, friction);
    let (weakest, strongest) = extremes(thread);
    let typical = TYPICAL_SHARE * ceiling(joint.strength.unwrap_or(COMMON_CLASS), usual);
    let friction = tables_friction(joint.condition);
    let (stop, note, high, over) = match joint.strength {
        Some(class) => {
            let proof = proof_load(thread, class);
            let high = if joint.material.is_some_and(is_soft) {
                ceiling(class, usual)
            } else {
                OVER_LEAST * ceiling(class, friction)
            };
            (STOP_SHARE * proof, NOTE_SHARE * proof, high, STOP_OVER_NOTE)
        }
        None => (
            STOP_SHARE_UNKNOWN * weakest,
            NOTE_SHARE_UNKNOWN * weakest,
            ceiling(strongest, friction),
            STOP_OVER_NOTE_UNKNOWN,
        ),
    };
    Window::new(
        [at_usual(joint, stop), at_usual(joint, note), high, over * high],
        typical,
    )
}

/// The greatest friction that tables for such threads are worked at.
fn tables_friction(condition: Condition) -> f64 {
    let (_, rough) = condition.friction();
    let usual = condition.usual_friction();
    if condition == Condition::Unknown {
        usual.max(OILED_TABLES)
    } else if rough <= OILED_TABLES {
        rough
    } else {
        usual
    }
}

/// Whether manuals stay well under the bolt's own ceiling in it.
const fn is_soft(material: FemaleMaterial) -> bool {
    match material {
        FemaleMaterial::CastAluminium | FemaleMaterial::WroughtAluminium | FemaleMaterial::Magnesium => true,
        FemaleMaterial::CastIron | FemaleMaterial::Steel | FemaleMaterial::Bronze => false,
    }
}

fn at_usual(joint: &Joint, force: Force) -> Torque {
    let usual = joint.condition.usual_friction();
    torque_for(force, joint.thread, usual, usual)
}

/// The class of most bolts on engines and gearboxes, inch grade 5 lying a little below.
const COMMON_CLASS: Strength = Strength::Class8_8;
/// The class of most bolts that are turned by an angle (common practice, no source).
const TURNED_CLASS: Strength = Strength::Class10_9;
/// Manuals stay a little under the ceiling; only ranks readings of a bolt, decides no verdict.
const TYPICAL_SHARE: f64 = 0.85;
/// The middle of stages before an angle; only ranks readings.
const SNUG_TYPICAL: f64 = 0.4;

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
