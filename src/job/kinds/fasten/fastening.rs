//! A fasten step pass by pass: what each asks for, and what its nut's running torque adds.

use super::data::{Fasten, Lock};
use crate::job::adapter::{Adapter, raised};
use crate::job::answer::{self, TorqueAnswer};
use crate::job::progress::StepProgress;
use crate::job::reading::What;
use crate::job::record::Goal;
use crate::trade::quantity::{Torque, TorqueStatement, parse_torque};
use crate::trade::stages::{Act, Deed, Prevailing, Stage, prevailing_added};
use crate::trade::wrench::Wrench;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

/// What a pass asks for.
#[derive(Debug, Clone, PartialEq)]
pub enum Asked {
    /// A torque.
    Torque(TorqueStatement),
    /// To turn a further so many degrees, each way no further off than `off`.
    Angle {
        /// Degrees.
        degrees: f64,
        /// Degrees; nothing said where zero.
        off: f64,
    },
    /// Snug by hand.
    Hand,
    /// Something done to all at once.
    All(Deed),
}

impl Fasten {
    /// What that pass asks for, from 0, with the nut's `running` torque where it counts.
    pub fn asked(&self, pass: usize, running: Option<Torque>) -> Asked {
        let brought = match self.act(pass) {
            Some(Act::Again) => Some(self.act_before(pass)),
            own => own,
        };
        let statement = match brought {
            Some(Act::Angle { degrees, off }) => return Asked::Angle { degrees, off },
            Some(Act::All(deed)) => return Asked::All(deed),
            Some(Act::SnugByHand) => return Asked::Hand,
            // What the nut's running takes closes no gap: it is added to snug too.
            Some(Act::Snug { torque }) => torque,
            Some(Act::Torque(torque)) => self.aimed(torque),
            Some(Act::Again) | None => self.share(pass),
        };
        let added = running.filter(|_| !self.running_apart);
        Asked::Torque(added.map_or(statement, |running| raised(&statement, running)))
    }

    /// What that pass is to bring a fastener to, by the plan alone.
    pub fn goal(&self, pass: usize) -> Goal {
        let thread_mm = self.thread.map(|thread| thread.major().get::<millimeter>());
        match self.asked(pass, None) {
            Asked::Angle { degrees, .. } => Goal::Turn { degrees, thread_mm },
            Asked::Hand => Goal::Hand { thread_mm },
            Asked::All(deed) => Goal::All(deed),
            Asked::Torque(statement) => {
                let newton_metres = statement.torque().get::<newton_meter>();
                match self.act(pass) {
                    Some(Act::Again) => Goal::Unmoved {
                        newton_metres,
                        thread_mm,
                    },
                    _ => Goal::Torque {
                        newton_metres,
                        thread_mm,
                    },
                }
            }
        }
    }

    /// What that stage does; none where the manual has no stages, or no such one.
    fn act(&self, pass: usize) -> Option<Act> {
        self.stages.get(pass).map(|stage| stage.act)
    }

    /// The last stage before that one which brings to a torque.
    fn act_before(&self, pass: usize) -> Act {
        let mut before = self.stages.iter().take(pass).rev().map(|stage| stage.act);
        let found = before.find(|act| act.torque().is_some());
        found.unwrap_or(Act::Torque(self.torque))
    }

    /// The torque its fasteners end at; none where they are turned on from it by an angle.
    pub fn ends_at(&self) -> Option<TorqueStatement> {
        let last = |stage: &Stage| match stage.act {
            Act::Angle { .. } => Some(None),
            Act::Snug { torque } | Act::Torque(torque) => Some(Some(torque)),
            Act::All(_) | Act::SnugByHand | Act::Again => None,
        };
        let found = self.stages.iter().rev().find_map(last);
        found.unwrap_or(Some(self.torque))
    }

    /// What each castle nut came to, as it is asked: one for each; none where no torque tells it.
    pub fn castle_nuts(&self) -> Vec<What> {
        if self.lock != Lock::Cotter || self.ends_at().is_none() {
            return Vec::new();
        }
        match self.layout.count() {
            1 => vec![What::Reached],
            count => (0..count as u8).map(What::ReachedAt).collect(),
        }
    }

    /// What that castle nut may come to; none where no torque tells it.
    pub fn may_reach(&self, what: &What) -> Option<TorqueStatement> {
        match what {
            What::Reached => self.at(0).ends_at(),
            What::ReachedAt(place) => self.at(usize::from(*place)).ends_at(),
            _ => None,
        }
    }

    /// Whether what that pass does goes on from what was done before it.
    pub fn stands_on_before(&self, pass: usize) -> bool {
        matches!(self.act(pass), Some(Act::Angle { .. } | Act::Again))
    }

    /// Whether that pass is done to all fasteners by one touch.
    pub fn to_all(&self, pass: usize) -> bool {
        self.stages.get(pass).is_some_and(|stage| stage.act.to_all())
    }

    /// Where a cotter pin goes in behind, the aim is the least of a range: from there it is tightened on to
    /// the next hole, never back.
    fn aimed(&self, torque: TorqueStatement) -> TorqueStatement {
        match self.lock {
            Lock::Cotter => TorqueStatement {
                target: torque.low,
                ..torque
            },
            Lock::None | Lock::Tab | Lock::Wire | Lock::Stake => torque,
        }
    }

    /// Whether the torque a nut was brought on to for its pin lies within the manual's range, its `running`
    /// torque added; one that is no range has no upper end to keep.
    pub fn reached_holds(&self, what: &What, value: f64, running: Option<Torque>) -> Option<bool> {
        let torque = self.may_reach(what)?;
        let added = running.filter(|_| !self.running_apart);
        let torque = added.map_or(torque, |running| raised(&torque, running));
        // Adding leaves a last bit behind.
        let close = 1e-9 * torque.high.abs();
        let over = torque.low != torque.high && value > torque.high + close;
        Some(value >= torque.low - close && !over)
    }

    /// Whether a nut that runs so hard, in the unit of its torque, is still good: one that takes more than its
    /// own torque is worn, wrong or cross-threaded.
    pub fn runs_freely(&self, value: f64) -> bool {
        value <= self.torque.target * (1.0 + 1e-9)
    }

    /// That pass's share of the torque; only the whole keeps the manual's own limits.
    fn share(&self, pass: usize) -> TorqueStatement {
        let share = self.pass(pass).share;
        if share == 1.0 {
            return self.aimed(self.torque);
        }
        let torque = self.aimed(self.torque);
        TorqueStatement::single(torque.target * share, torque.unit, torque.decimals)
    }

    /// Whether an angle stage brings the bolt to its final pull.
    pub fn turned(&self) -> bool {
        self.stages
            .iter()
            .any(|stage| matches!(stage.act, Act::Angle { .. }))
    }

    /// What that pass brings it to, in a line: "60 % of 20 N·m", "manual 9 N·m", or the manual's own stage.
    pub fn share_words(&self, pass: usize) -> String {
        if let Some(stage) = self.stages.get(pass) {
            return stage.text();
        }
        let share = self.pass(pass);
        match self.pass_count() > 1 && !share.round {
            true => format!("{:.0} % of {}", share.share * 100.0, self.manual_words()),
            false => format!("manual {}", self.manual_words()),
        }
    }

    /// What that pass is, in words; empty when there is only one.
    pub fn pass_words(&self, pass: usize) -> String {
        if let Some(stage) = self.stages.get(pass) {
            return format!("stage {} of {}: {}", pass + 1, self.stages.len(), stage.text());
        }
        let (this, count) = (self.pass(pass), self.pass_count());
        match (count, this.round) {
            (1, _) => String::new(),
            (_, true) => format!("pass {} of {count}: once round at the full torque", pass + 1),
            (_, false) => format!("pass {} of {count}: {:.0} % of it", pass + 1, this.share * 100.0),
        }
    }
}

/// Two torques that differ by less are one, said in two units and rounded (common practice, no source).
const SAME_SHARE: f64 = 0.005;

/// One that isn't stated is any.
fn same_thread(a: Option<f64>, b: Option<f64>) -> bool {
    a.zip(b).is_none_or(|(a, b)| a == b)
}

impl Goal {
    /// Whether both ask for the same.
    pub fn is(self, other: Goal) -> bool {
        match (self, other) {
            (
                Self::Torque {
                    newton_metres: a,
                    thread_mm: b,
                },
                Self::Torque {
                    newton_metres: c,
                    thread_mm: d,
                },
            ) => (a - c).abs() <= SAME_SHARE * a.abs() && same_thread(b, d),
            (
                Self::Turn {
                    degrees: a,
                    thread_mm: b,
                },
                Self::Turn {
                    degrees: c,
                    thread_mm: d,
                },
            ) => a == c && same_thread(b, d),
            (
                Self::Unmoved {
                    newton_metres: a,
                    thread_mm: b,
                },
                Self::Unmoved {
                    newton_metres: c,
                    thread_mm: d,
                },
            ) => (a - c).abs() <= SAME_SHARE * a.abs() && same_thread(b, d),
            (Self::Hand { thread_mm: a }, Self::Hand { thread_mm: b }) => same_thread(a, b),
            (Self::All(a), Self::All(b)) => a == b,
            _ => false,
        }
    }

    /// Whether this is at least as tight, as far as the two can be compared.
    pub fn above(self, other: Goal) -> bool {
        let torque = |goal: Goal| match goal {
            Self::Torque { newton_metres, .. } | Self::Unmoved { newton_metres, .. } => Some(newton_metres),
            Self::Hand { .. } | Self::All(_) => Some(0.0),
            Self::Turn { .. } => None,
        };
        match (self, other) {
            (Self::Turn { degrees: a, .. }, Self::Turn { degrees: b, .. }) => a >= b,
            // A turn starts from its torque: on one that was set higher it goes too far.
            _ => torque(self).zip(torque(other)).is_some_and(|(a, b)| a >= b),
        }
    }
}

/// The statement with the nut's running torque added, and the reckoning behind it.
///
/// # Errors
/// A sentence: a torque that can't be reckoned with.
pub fn with_running(
    statement: &TorqueStatement,
    running: Torque,
) -> Result<(TorqueStatement, Prevailing), String> {
    let reckoned = prevailing_added(statement.torque(), running).map_err(|error| error.to_string())?;
    Ok((raised(statement, running), reckoned))
}

/// What the running torque does, in words; `added` unless the manual says otherwise.
pub fn running_words(statement: &TorqueStatement, running: Torque, added: bool) -> String {
    match with_running(statement, running) {
        Err(words) => words,
        Ok((_, reckoned)) if reckoned.runs_too_hard() => {
            "It runs harder than its own torque: worn, wrong or cross-threaded. Take a new nut.".to_owned()
        }
        Ok((_, reckoned)) => {
            let what = if added {
                "added to it"
            } else {
                "not added, as the manual says"
            };
            format!("{:.0} % of the torque: {what}.", reckoned.share * 100.0)
        }
    }
}

/// The running torque last measured in a step.
pub fn running(progress: &StepProgress) -> Option<Torque> {
    let reading = progress.reading(&What::Running)?;
    let statement = parse_torque(&format!("{} {}", reading.value, reading.unit), None).ok()?;
    Some(statement.torque())
}

/// What is set for a pass, and on what; an angle is set on no wrench.
#[derive(Debug, Clone, PartialEq)]
pub enum PassAnswer {
    /// A setting.
    Torque(Box<TorqueAnswer>),
    /// Degrees to turn on, and how far off.
    Angle { degrees: f64, off: f64 },
    /// Snug by hand.
    Hand,
    /// Something done to all at once.
    All(Deed),
}

/// That pass of a fasten step for the wrench in the hand.
pub fn pass_answer(
    fasten: &Fasten,
    pass: usize,
    running: Option<Torque>,
    wrenches: &[Wrench],
    in_hand: usize,
    adapter: Option<&Adapter>,
) -> PassAnswer {
    match fasten.asked(pass, running) {
        Asked::Torque(statement) => {
            PassAnswer::Torque(Box::new(answer::torque(&statement, wrenches, in_hand, adapter)))
        }
        Asked::Angle { degrees, off } => PassAnswer::Angle { degrees, off },
        Asked::Hand => PassAnswer::Hand,
        Asked::All(deed) => PassAnswer::All(deed),
    }
}
