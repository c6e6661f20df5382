//! The slip guard: does this torque make sense on this fastener, and if not, what was meant?
//!
//! It judges; it never changes a torque. The manual's value governs. A reading that asks for more
//! than was typed is named in words and never offered to be taken: ten times the torque is not one
//! touch away.

use super::preload::{Condition, Preload, PreloadError, preload};
use super::quantity::{Force, Length, TorqueUnit};
use super::stored;
use super::strength::{Strength, proof_load};
use super::strip::{FemaleMaterial, strip_load};
use super::thread::Thread;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::ratio::ratio;

mod fastener;
mod readings;
mod window;
mod words;

pub use fastener::Fastener;
pub use readings::{Reading, Slip};
pub use window::{Weakest, Window, snug_window, window};

/// What is known of one bolted joint.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Joint {
    /// The bolt's thread.
    pub thread: Thread,
    /// What it is.
    #[serde(default, skip_serializing_if = "Fastener::is_not_told")]
    pub fastener: Fastener,
    /// Its strength class, when the head shows one.
    pub strength: Option<Strength>,
    /// What the female thread is cut in, when known.
    pub material: Option<FemaleMaterial>,
    /// Length of full thread in mesh, when known; the recommended length is assumed otherwise.
    /// Stored in millimetres.
    #[serde(default, with = "stored::millimetres::maybe")]
    pub engagement: Option<Length>,
    /// State of the thread and the underside of the head.
    pub condition: Condition,
}

impl Joint {
    /// A joint of which only the thread is known.
    pub const fn of(thread: Thread) -> Self {
        Self {
            thread,
            fastener: Fastener::NotTold,
            strength: None,
            material: None,
            engagement: None,
            condition: Condition::Unknown,
        }
    }

    /// The pull that strips the female thread, weak and strong end, when its material is known.
    pub fn strip_load(&self) -> Option<(Force, Force)> {
        let material = self.material?;
        let length = self
            .engagement
            .unwrap_or_else(|| material.recommended_engagement(self.thread));
        Some(strip_load(self.thread, material, length))
    }
}

/// How a torque sits on its bolt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Within what such bolts are given.
    Plausible,
    /// Above it, yet not beyond belief: a quiet note.
    High,
    /// Below it, yet not beyond belief: a quiet note.
    Low,
    /// Beyond belief, too high or too low: stop and ask.
    Absurd,
}

impl Verdict {
    /// The verdict in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Plausible => "plausible",
            Self::High => "high",
            Self::Low => "low",
            Self::Absurd => "not plausible",
        }
    }
}

/// The guard's answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Judgement {
    /// How the torque sits.
    pub verdict: Verdict,
    /// True when it errs upwards (high, or absurdly high).
    pub too_high: bool,
    /// The pull it gives over the likely friction.
    pub preload: Preload,
    /// That pull over the bolt's proof load, low and high; none while the class is unknown, and none of a
    /// hollow bolt, whose section nobody told.
    pub proof_share: Option<(f64, f64)>,
    /// That pull over the female thread's strip load, least and most; none while its material is
    /// unknown. Capped at a million where nothing holds the bolt.
    pub strip_share: Option<(f64, f64)>,
    /// Readings that would be plausible and ask for no more than was typed, likeliest first; empty for
    /// a plausible torque.
    pub readings: Vec<Reading>,
    /// The likeliest reading that asks for more: for words alone.
    pub higher: Option<Reading>,
    /// It is low for a bolt, and nobody said that it is one: asked first.
    pub what_is_it: bool,
    /// One or two sentences for the screen.
    pub sentence: String,
}

impl Judgement {
    /// The judgement of a torque that is too high only by `put_on`, from which the thread's condition was
    /// supposed: high at most, with no reading, for the manual's torque may be right as it is.
    pub fn only_by(self, joint: &Joint, put_on: &str) -> Self {
        Self {
            verdict: Verdict::High,
            readings: Vec::new(),
            higher: None,
            sentence: words::only_by(joint, put_on),
            ..self
        }
    }
}

/// Why nothing can be judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GuardError {
    /// The torque itself is impossible.
    Torque(PreloadError),
    /// The engagement is negative, endless or not a number.
    Engagement,
}

impl fmt::Display for GuardError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Torque(error) => error.fmt(f),
            Self::Engagement => f.write_str("The engagement must be zero or more: measure it again."),
        }
    }
}

impl std::error::Error for GuardError {}

impl From<PreloadError> for GuardError {
    fn from(error: PreloadError) -> Self {
        Self::Torque(error)
    }
}

/// Judges `value` of `unit` on a joint, by the limits of [`window`].
///
/// # Errors
/// [`GuardError`] for a torque that is not above zero or is beyond any bolt, and for an impossible
/// engagement.
///
/// ```
/// use halfcase::trade::guard::{Joint, Verdict, judge};
/// use halfcase::trade::quantity::TorqueUnit;
/// use halfcase::trade::thread::Thread;
/// let m6 = Thread::parse("M6").map(Joint::of).expect("a size of the table");
/// let judged = judge(86.0, TorqueUnit::NewtonMetre, &m6).expect("a judgement");
/// assert_eq!(judged.verdict, Verdict::Absurd);
/// assert_eq!(judged.readings[0].text(), "86 in·lb");
/// ```
pub fn judge(value: f64, unit: TorqueUnit, joint: &Joint) -> Result<Judgement, GuardError> {
    judge_within(value, unit, joint, Stage::Final)
}

/// Judges `value` of `unit` as a stage before an angle, by the limits of [`snug_window`]; what is no
/// bolt, by its own.
///
/// # Errors
/// As [`judge`].
pub fn judge_snug(value: f64, unit: TorqueUnit, joint: &Joint) -> Result<Judgement, GuardError> {
    let stage = match joint.fastener {
        Fastener::NotTold | Fastener::Bolt => Stage::Snug,
        Fastener::Stud
        | Fastener::Plug
        | Fastener::Banjo
        | Fastener::HeadPlug
        | Fastener::ShaftNut
        | Fastener::SoftClamp => Stage::Final,
    };
    judge_within(value, unit, joint, stage)
}

/// Where in a tightening the torque stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stage {
    /// It is the whole of it.
    Final,
    /// An angle comes behind.
    Snug,
}

fn judge_within(value: f64, unit: TorqueUnit, joint: &Joint, stage: Stage) -> Result<Judgement, GuardError> {
    if joint
        .engagement
        .is_some_and(|length| !length.value.is_finite() || length.value < 0.0)
    {
        return Err(GuardError::Engagement);
    }
    let torque = unit.torque(value);
    let preload = preload(torque, joint.thread, joint.condition)?;
    let limits = match stage {
        Stage::Final => window(joint),
        Stage::Snug => snug_window(joint),
    };
    let (verdict, too_high) = limits.verdict(torque);
    let mut readings = match verdict {
        Verdict::Plausible => Vec::new(),
        Verdict::High | Verdict::Low | Verdict::Absurd => readings::likely(value, unit, &limits),
    };
    let raises = |reading: &Reading| reading.unit.torque(reading.value) > torque;
    let higher = readings.iter().copied().find(raises);
    readings.retain(|reading| !raises(reading));
    let low = verdict != Verdict::Plausible && !too_high;
    let mut judgement = Judgement {
        verdict,
        too_high,
        preload,
        proof_share: joint
            .strength
            .filter(|_| !joint.fastener.is_hollow())
            .map(|class| {
                let proof = proof_load(joint.thread, class);
                (share(preload.low, proof), share(preload.high, proof))
            }),
        strip_share: joint
            .strip_load()
            .map(|(weak, strong)| (share(preload.low, strong), share(preload.high, weak))),
        readings,
        higher,
        what_is_it: low && stage == Stage::Final && joint.fastener.is_not_told(),
        sentence: String::new(),
    };
    // Until it had a name of its own a banjo bolt was planned as a plug.
    let as_banjo = Joint {
        fastener: Fastener::Banjo,
        ..*joint
    };
    let banjo = joint.fastener == Fastener::Plug
        && too_high
        && window(&as_banjo).verdict(torque).0 == Verdict::Plausible;
    judgement.sentence = match banjo {
        true => words::banjo(&judgement, joint, stage, &limits),
        false => words::sentence(&judgement, joint, stage, &limits),
    };
    Ok(judgement)
}

/// Stands for "endlessly more".
const LARGEST_SHARE: f64 = 1e6;

fn share(part: Force, whole: Force) -> f64 {
    let share = (part / whole).get::<ratio>();
    if share.is_finite() {
        share.min(LARGEST_SHARE)
    } else {
        LARGEST_SHARE
    }
}
