//! All that the Torque screen says of what is asked, worked out in one go.

use super::adapter::Adapter;
use super::answer::{self, TorqueAnswer};
use super::guarding::{GuardAnswer, KnownBolt, guard_turned};
use super::kinds::fasten::fastening::{running_words, with_running};
use super::kinds::fasten::pull::{NO_PULL, ONCE, stretch_words, turn_words};
use super::pairing::{PairAnswer, pair};
use crate::trade::guard::Verdict;
use crate::trade::quantity::{Angle, Torque, TorqueStatement, shortest};
use crate::trade::stretch::Shank;
use crate::trade::wrench::Wrench;
use uom::si::angle::degree;

/// What is asked, and with what.
#[derive(Debug, Clone, Copy)]
pub struct Question<'a> {
    /// What the manual says.
    pub statement: &'a TorqueStatement,
    /// What it says a second time.
    pub also: Option<&'a TorqueStatement>,
    /// The bolt, as far as it is known.
    pub bolt: Option<&'a KnownBolt>,
    /// A turn after the torque, °.
    pub turn_deg: Option<f64>,
    /// The bolt as a spring, and how far it stretched, mm.
    pub stretch: Option<(Shank, f64)>,
    /// A self-locking nut's running torque.
    pub running: Option<Torque>,
    /// The adapter on the wrench.
    pub adapter: Option<&'a Adapter>,
    /// My wrenches.
    pub wrenches: &'a [Wrench],
    /// Which of them is in the hand.
    pub in_hand: usize,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq)]
pub struct WholeAnswer {
    /// What to set; none while the manual's two values don't agree.
    pub set: Option<TorqueAnswer>,
    /// The manual's two values against each other.
    pub pair: Option<PairAnswer>,
    /// The slip guard's word.
    pub guard: Option<GuardAnswer>,
    /// What the running torque does.
    pub running: Option<String>,
    /// What a turn draws, what a stretch pulls, what the thread's condition does.
    pub pull: Vec<String>,
}

/// What to say in one lane: the worst of what the two values, the guard and the wrench have to say.
#[derive(Debug, Clone, PartialEq)]
pub enum Worst {
    /// The manual's two values don't agree.
    Apart(PairAnswer),
    /// The guard stops it or doubts it.
    Doubted(GuardAnswer),
    /// The wrench can't be set to it, or not well: why, and the one to take.
    Wrench(String, Option<usize>),
    /// Nothing is wrong: what may be said, the turn first.
    Fine(String),
}

impl WholeAnswer {
    /// The worst of it; a turn in degrees is named where nothing is wrong.
    pub fn worst(&self, turn_deg: Option<f64>) -> Worst {
        if let Some(pair) = self.pair.as_ref().filter(|pair| !pair.agree) {
            return Worst::Apart(pair.clone());
        }
        let stopped = |guard: &&GuardAnswer| guard.verdict == Verdict::Absurd;
        if let Some(guard) = self.guard.as_ref().filter(stopped) {
            return Worst::Doubted(guard.clone());
        }
        // A number that can't be set comes before a doubt about it.
        let cannot = self.set.as_ref().filter(|set| set.setting.is_none());
        let trouble = |set: &TorqueAnswer| set.trouble.clone().map(|why| Worst::Wrench(why, set.take));
        if let Some(worst) = cannot.and_then(trouble) {
            return worst;
        }
        if let Some(guard) = self
            .guard
            .as_ref()
            .filter(|guard| guard.verdict != Verdict::Plausible)
        {
            return Worst::Doubted(guard.clone());
        }
        if let Some(worst) = self.set.as_ref().and_then(trouble) {
            return worst;
        }
        let turn =
            turn_deg.map(|degrees| format!("All to this; then turn a further {}°.", shortest(degrees)));
        let pair = self.pair.as_ref().map(|pair| pair.sentence.clone());
        let guard = self
            .guard
            .as_ref()
            .map(|guard| format!("{} {}", guard.mark, guard.line));
        Worst::Fine(
            [turn, pair, guard]
                .into_iter()
                .flatten()
                .collect::<Vec<_>>()
                .join(" "),
        )
    }
}

/// Works it all out.
pub fn answer(question: Question<'_>) -> WholeAnswer {
    let Question { statement, bolt, .. } = question;
    let pair = question.also.map(|also| pair(statement, also, bolt));
    let stopped = pair.as_ref().is_some_and(|pair| !pair.agree);
    let raised = question
        .running
        .and_then(|running| with_running(statement, running).ok())
        .map_or(*statement, |(raised, _)| raised);
    WholeAnswer {
        set: (!stopped)
            .then(|| answer::torque(&raised, question.wrenches, question.in_hand, question.adapter)),
        guard: guarded(&question),
        pull: pull(&question),
        running: question
            .running
            .map(|running| running_words(statement, running, true)),
        pair,
    }
}

/// The guard's word; before a turn the torque tells no pull.
fn guarded(question: &Question<'_>) -> Option<GuardAnswer> {
    let turned = question.turn_deg.is_some();
    let mut answer = guard_turned(question.statement, question.bolt?, turned)?;
    if turned {
        answer.claim_no_pull();
    }
    Some(answer)
}

/// What stands beside the torque.
fn pull(question: &Question<'_>) -> Vec<String> {
    let mut lines = Vec::new();
    let thread = question.bolt.map(|bolt| bolt.joint.thread);
    if let Some(degrees) = question.turn_deg {
        lines.extend(thread.and_then(|thread| turn_words(thread, Angle::new::<degree>(degrees))));
        lines.push(NO_PULL.to_owned());
        lines.push(ONCE.to_owned());
    }
    if let Some((shank, mm)) = &question.stretch {
        lines.push(format!(
            "At {} mm of stretch {}.",
            shortest(*mm),
            stretch_words(shank, *mm)
        ));
    }
    let note = question.bolt.and_then(|bolt| bolt.joint.condition.note());
    lines.extend(note.map(str::to_owned));
    lines
}
