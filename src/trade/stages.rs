//! Tightening in stages: snug, torque, angle; and what a self-locking nut adds.

use super::quantity::{Angle, LAST_BITS, Torque, TorqueStatement, significant};
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::angle::degree;
use uom::si::torque::newton_meter;

/// One stage of a fastener's tightening.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stage {
    /// Brings the parts together, so that an angle has a start.
    Snug {
        /// Up to here.
        torque: TorqueStatement,
    },
    /// Tightens to a torque.
    Torque(TorqueStatement),
    /// Turns on by an angle.
    Angle {
        /// Degrees.
        degrees: f64,
    },
}

impl Stage {
    /// The stage in words: "snug to 20 N·m", "to 40 N·m", "turn on by 90°".
    pub fn text(&self) -> String {
        match self {
            Self::Snug { torque } => format!("snug to {}", torque.text()),
            Self::Torque(torque) => format!("to {}", torque.text()),
            Self::Angle { degrees } => format!("turn on by {}°", plain(*degrees)),
        }
    }
}

/// An angle in at most four figures, without trailing zeros.
fn plain(degrees: f64) -> String {
    let text = significant(degrees, 4);
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Why a list of stages makes no sense; `at` counts stages from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StagesError {
    /// No stage at all.
    None,
    /// A torque that isn't sound.
    Torque {
        /// Which stage.
        at: usize,
    },
    /// An angle with no torque before it.
    AngleWithoutStart {
        /// Which stage.
        at: usize,
    },
    /// An angle that isn't above zero, or more than a full turn.
    Angle {
        /// Which stage.
        at: usize,
    },
    /// A torque that isn't above the one before.
    NotRising {
        /// Which stage.
        at: usize,
    },
    /// A snug stage after the first.
    SnugLate {
        /// Which stage.
        at: usize,
    },
    /// A torque after an angle.
    TorqueAfterAngle {
        /// Which stage.
        at: usize,
    },
}

impl fmt::Display for StagesError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::None => write!(f, "There is no stage yet; add a torque."),
            Self::Torque { at } => {
                write!(
                    f,
                    "Stage {}: the torque must be above zero and its range in order.",
                    at + 1
                )
            }
            Self::AngleWithoutStart { at } => {
                write!(
                    f,
                    "Stage {}: an angle needs a torque to start from; add a snug torque first.",
                    at + 1
                )
            }
            Self::Angle { at } => {
                write!(
                    f,
                    "Stage {}: the angle must be above 0° and at most 360°.",
                    at + 1
                )
            }
            Self::NotRising { at } => {
                write!(
                    f,
                    "Stage {}: each torque must be above the one before; check the order.",
                    at + 1
                )
            }
            Self::SnugLate { at } => {
                write!(f, "Stage {}: snug comes first; make this one a torque.", at + 1)
            }
            Self::TorqueAfterAngle { at } => write!(
                f,
                "Stage {}: a torque can't be compared with an angle before it; make it a step of its own.",
                at + 1
            ),
        }
    }
}

impl std::error::Error for StagesError {}

/// Whether a list of stages can be carried out: torques rise, an angle has a torque to start from,
/// snug is first, and no torque follows an angle.
///
/// # Errors
/// The first stage that is wrong.
pub fn check(stages: &[Stage]) -> Result<(), StagesError> {
    if stages.is_empty() {
        return Err(StagesError::None);
    }
    let mut reached: Option<Torque> = None;
    let mut turned = false;
    for (at, stage) in stages.iter().enumerate() {
        match stage {
            Stage::Snug { .. } if at > 0 => return Err(StagesError::SnugLate { at }),
            Stage::Snug { torque } | Stage::Torque(torque) => {
                torque.check().map_err(|_| StagesError::Torque { at })?;
                if turned {
                    return Err(StagesError::TorqueAfterAngle { at });
                }
                if reached.is_some_and(|before| torque.torque() <= before) {
                    return Err(StagesError::NotRising { at });
                }
                reached = Some(torque.torque());
            }
            Stage::Angle { degrees } => {
                if !(*degrees > 0.0 && *degrees <= 360.0) {
                    return Err(StagesError::Angle { at });
                }
                if reached.is_none() {
                    return Err(StagesError::AngleWithoutStart { at });
                }
                turned = true;
            }
        }
    }
    Ok(())
}

/// All angle stages together; zero when there is none.
pub fn total_angle(stages: &[Stage]) -> Angle {
    let degrees = stages.iter().map(|stage| match stage {
        Stage::Angle { degrees } if degrees.is_finite() => *degrees,
        _ => 0.0,
    });
    Angle::new::<degree>(degrees.sum())
}

/// The share of the target from which a running torque is added to it.
const ADDED_FROM: f64 = 1.0 / 3.0;

/// What the running torque of a self-locking nut does to the torque to apply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prevailing {
    /// What to tighten to.
    pub torque: Torque,
    /// Whether the running torque is in it.
    pub added: bool,
    /// Running torque as a share of the target.
    pub share: f64,
}

impl Prevailing {
    /// Whether the nut runs harder than its own target: worn, wrong or cross-threaded, unless the
    /// manual says otherwise.
    pub fn runs_too_hard(&self) -> bool {
        self.share > 1.0
    }
}

/// Why a running torque can't be reckoned with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PrevailingError {
    /// The target is zero, negative or no number.
    Target,
    /// The running torque is negative or no number.
    Running,
}

impl fmt::Display for PrevailingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Target => "The torque must be a number above zero; type it again.",
            Self::Running => "The running torque must not be negative; measure it as the nut turns freely.",
        })
    }
}

impl std::error::Error for PrevailingError {}

/// The torque for a self-locking nut: `running`, measured as it turns before it seats, is added to
/// `target` where it is a third of it or more (US Army TB 43-0218). The manual's own rule goes first.
///
/// # Errors
/// A target that isn't above zero, or a negative running torque.
pub fn prevailing_added(target: Torque, running: Torque) -> Result<Prevailing, PrevailingError> {
    let (target_nm, running_nm) = (target.get::<newton_meter>(), running.get::<newton_meter>());
    if !(target_nm.is_finite() && target_nm > 0.0) {
        return Err(PrevailingError::Target);
    }
    if !(running_nm.is_finite() && running_nm >= 0.0) {
        return Err(PrevailingError::Running);
    }
    let share = running_nm / target_nm;
    let sum = target + running;
    if !share.is_finite() || !sum.get::<newton_meter>().is_finite() {
        return Err(PrevailingError::Running);
    }
    // A third typed in another unit may fall a last bit short of a third.
    let added = share >= ADDED_FROM - LAST_BITS;
    Ok(Prevailing {
        torque: if added { sum } else { target },
        added,
        share,
    })
}
