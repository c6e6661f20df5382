//! Tightening in stages: snug, torque, angle; and what a self-locking nut adds.

use super::quantity::{Angle, Torque, TorqueStatement, trimmed};
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::angle::degree;
use uom::si::torque::newton_meter;

/// What is done to all fasteners at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Deed {
    /// Threads and the faces under the heads are oiled.
    Oil,
    /// Threads stay clean and dry.
    Dry,
    /// All are loosened fully: what follows begins anew.
    Loosen,
}

impl Deed {
    /// To do, in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Oil => "oil the threads and under the heads",
            Self::Dry => "threads clean and dry",
            Self::Loosen => "loosen all fully",
        }
    }

    /// Done, in words.
    pub fn done(self) -> &'static str {
        match self {
            Self::Oil => "threads oiled",
            Self::Dry => "threads clean and dry",
            Self::Loosen => "all loosened fully",
        }
    }
}

/// What is done in one stage of a tightening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Act {
    /// Something done to all by one touch.
    All(Deed),
    /// Brings the parts together, so that an angle has a start.
    Snug {
        /// Up to here.
        torque: TorqueStatement,
    },
    /// The same by hand or with a short key.
    SnugByHand,
    /// Tightens to a torque.
    Torque(TorqueStatement),
    /// Turns on by an angle.
    Angle {
        /// Degrees.
        degrees: f64,
        /// How far it may be missed, degrees; nothing said where zero.
        off: f64,
    },
    /// The torque before once more: none may move.
    Again,
}

/// How a stage goes from fastener to fastener.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Way {
    /// Round all of them by the pattern.
    #[default]
    Pattern,
    /// Round all of them in any order.
    AnyOrder,
    /// With the stage before on the same fastener, before the next fastener's turn.
    SameFastener,
}

impl Way {
    /// All of them, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Pattern, Self::AnyOrder, Self::SameFastener];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Pattern => "by the pattern",
            Self::AnyOrder => "in any order",
            Self::SameFastener => "on the same fastener",
        }
    }
}

/// One stage of a fastener's tightening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stage {
    /// What is done.
    pub act: Act,
    /// How it goes round.
    pub way: Way,
}

impl From<Act> for Stage {
    fn from(act: Act) -> Self {
        Self {
            act,
            way: Way::Pattern,
        }
    }
}

impl Act {
    /// Whether it is done to all fasteners by one touch.
    pub fn to_all(self) -> bool {
        matches!(self, Self::All(_))
    }

    /// The torque it asks for itself.
    pub fn torque(&self) -> Option<&TorqueStatement> {
        match self {
            Self::Snug { torque } | Self::Torque(torque) => Some(torque),
            Self::All(_) | Self::SnugByHand | Self::Angle { .. } | Self::Again => None,
        }
    }

    /// It in words: "snug to 20 N·m", "to 40 N·m", "turn a further 90°".
    pub fn text(&self) -> String {
        match self {
            Self::All(deed) => deed.words().to_owned(),
            Self::Snug { torque } => format!("snug to {}", torque.text()),
            Self::SnugByHand => "snug by hand".to_owned(),
            Self::Torque(torque) => format!("to {}", torque.text()),
            Self::Angle { degrees, off } => format!("turn a further {}", angle_words(*degrees, *off)),
            Self::Again => "the same torque again: none may move".to_owned(),
        }
    }
}

impl Stage {
    /// Tightening to a torque, by the pattern.
    pub fn torque(torque: TorqueStatement) -> Self {
        Act::Torque(torque).into()
    }

    /// Bringing together by a torque.
    pub fn snug(torque: TorqueStatement) -> Self {
        Act::Snug { torque }.into()
    }

    /// Turning on by so many degrees.
    pub fn angle(degrees: f64) -> Self {
        Act::Angle { degrees, off: 0.0 }.into()
    }

    /// The stage in words: "snug to 20 N·m", "turn a further 90°, on the same fastener".
    pub fn text(&self) -> String {
        let act = self.act.text();
        match self.way {
            Way::Pattern => act,
            way => format!("{act}, {}", way.words()),
        }
    }
}

/// "120°", "120° ± 5°".
pub fn angle_words(degrees: f64, off: f64) -> String {
    if off == 0.0 {
        return format!("{}°", plain(degrees));
    }
    format!("{}° ± {}°", plain(degrees), plain(off))
}

/// An angle in at most four figures, without trailing zeros.
fn plain(degrees: f64) -> String {
    trimmed(degrees, 4)
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
    /// An angle with nothing before it that brings the parts together.
    AngleWithoutStart {
        /// Which stage.
        at: usize,
    },
    /// An angle that isn't above zero, or more than a full turn, or a tolerance that reaches zero.
    Angle {
        /// Which stage.
        at: usize,
    },
    /// A torque that isn't above the one before.
    NotRising {
        /// Which stage.
        at: usize,
    },
    /// A snug stage behind a torque.
    SnugLate {
        /// Which stage.
        at: usize,
    },
    /// The same torque again, with none before it or an angle between.
    NothingAgain {
        /// Which stage.
        at: usize,
    },
    /// Loosening what is not tight.
    NothingTight {
        /// Which stage.
        at: usize,
    },
    /// Oil or dry on what is already tight.
    OilLate {
        /// Which stage.
        at: usize,
    },
    /// On the same fastener as the stage before, where that is none of one fastener.
    AloneOnIt {
        /// Which stage.
        at: usize,
    },
    /// Nothing is tight after the last stage.
    EndsLoose,
}

impl StagesError {
    /// Which stage; none where it is all of them.
    fn at(&self) -> Option<usize> {
        match self {
            Self::None | Self::EndsLoose => None,
            Self::Torque { at }
            | Self::AngleWithoutStart { at }
            | Self::Angle { at }
            | Self::NotRising { at }
            | Self::SnugLate { at }
            | Self::NothingAgain { at }
            | Self::NothingTight { at }
            | Self::OilLate { at }
            | Self::AloneOnIt { at } => Some(*at),
        }
    }
}

impl fmt::Display for StagesError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(at) = self.at() {
            write!(f, "Stage {}: ", at + 1)?;
        }
        f.write_str(match self {
            Self::None => "There is no stage yet; add a torque.",
            Self::Torque { .. } => "the torque must be above zero and its range in order.",
            Self::AngleWithoutStart { .. } => {
                "an angle needs a torque to start from; add a snug torque first."
            }
            Self::Angle { .. } => "the angle must be above 0° and at most 360°, with its tolerance too.",
            Self::NotRising { .. } => {
                "each torque must be above the one before; check the order, or loosen all between them."
            }
            Self::SnugLate { .. } => "snug comes first; make this one a torque, or loosen all before it.",
            Self::NothingAgain { .. } => "there is no torque right before it to repeat; write the torque.",
            Self::NothingTight { .. } => "nothing is tight yet that could be loosened; delete it.",
            Self::OilLate { .. } => {
                "threads are oiled or dried while loose; move it up, or loosen all first."
            }
            Self::AloneOnIt { .. } => {
                "it can't be done on the same fastener as the stage before; let it go by the pattern."
            }
            Self::EndsLoose => "Nothing is tight after the last stage; add a torque behind it.",
        })
    }
}

impl std::error::Error for StagesError {}

/// How far the fasteners are, on the way through the stages.
#[derive(Default)]
struct Reached {
    /// Snug, by hand or by a torque.
    together: bool,
    /// The torque since they were last loose or turned.
    torque: Option<Torque>,
    /// Turned by an angle since the last torque.
    turned: bool,
}

/// Whether a list of stages can be carried out: torques rise as long as nothing is loosened or turned
/// between them, an angle has a start, snug comes before torque, and something is tight at the end.
///
/// # Errors
/// The first stage that is wrong.
pub fn check(stages: &[Stage]) -> Result<(), StagesError> {
    if stages.is_empty() {
        return Err(StagesError::None);
    }
    let mut reached = Reached::default();
    for (at, stage) in stages.iter().enumerate() {
        if stage.way == Way::SameFastener {
            let before = at.checked_sub(1).and_then(|before| stages.get(before));
            if stage.act.to_all() || before.is_none_or(|before| before.act.to_all()) {
                return Err(StagesError::AloneOnIt { at });
            }
        }
        reached.go_on(at, &stage.act)?;
    }
    if reached.together {
        Ok(())
    } else {
        Err(StagesError::EndsLoose)
    }
}

impl Reached {
    fn go_on(&mut self, at: usize, act: &Act) -> Result<(), StagesError> {
        match act {
            Act::All(Deed::Oil | Deed::Dry) if self.together => return Err(StagesError::OilLate { at }),
            Act::All(Deed::Oil | Deed::Dry) => {}
            Act::All(Deed::Loosen) if !self.together => return Err(StagesError::NothingTight { at }),
            Act::All(Deed::Loosen) => *self = Self::default(),
            Act::Snug { .. } | Act::SnugByHand if self.together => return Err(StagesError::SnugLate { at }),
            Act::SnugByHand => self.together = true,
            Act::Snug { torque } | Act::Torque(torque) => {
                torque.check().map_err(|_| StagesError::Torque { at })?;
                // An angle between them leaves nothing to compare with.
                if !self.turned && self.torque.is_some_and(|before| torque.torque() <= before) {
                    return Err(StagesError::NotRising { at });
                }
                *self = Self {
                    together: true,
                    torque: Some(torque.torque()),
                    turned: false,
                };
            }
            Act::Again if self.torque.is_none() || self.turned => {
                return Err(StagesError::NothingAgain { at });
            }
            Act::Again => {}
            Act::Angle { degrees, off } => {
                if !(*degrees > 0.0 && degrees + off <= 360.0 && *off >= 0.0 && off < degrees) {
                    return Err(StagesError::Angle { at });
                }
                if !self.together {
                    return Err(StagesError::AngleWithoutStart { at });
                }
                self.turned = true;
            }
        }
        Ok(())
    }
}

/// All angle stages since the last loosening together; zero when there is none.
pub fn total_angle(stages: &[Stage]) -> Angle {
    let degrees = stages.iter().fold(0.0, |sum, stage| match stage.act {
        Act::Angle { degrees, .. } if degrees.is_finite() => sum + degrees,
        Act::All(Deed::Loosen) => 0.0,
        Act::All(_)
        | Act::Snug { .. }
        | Act::SnugByHand
        | Act::Torque(_)
        | Act::Angle { .. }
        | Act::Again => sum,
    });
    Angle::new::<degree>(degrees)
}

/// What the running torque of a self-locking nut does to the torque to apply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prevailing {
    /// What to tighten to.
    pub torque: Torque,
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

/// The torque for a self-locking nut: `running`, measured as it turns before it seats, is always added to
/// `target` (FAA AC 43.13-1B, 7-40). A manual that says otherwise goes first: then this is not asked.
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
    Ok(Prevailing { torque: sum, share })
}
