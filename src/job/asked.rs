//! All that the Torque screen says of what is asked, worked out in one go.

use super::adapter::Adapter;
use super::answer::{self, TorqueAnswer};
use super::guarding::{GuardAnswer, KnownBolt, guard_turned};
use super::kinds::fasten::fastening::{running_words, with_running};
use super::pairing::{PairAnswer, pair};
use crate::trade::quantity::{Torque, TorqueStatement};
use crate::trade::wrench::Wrench;

/// What is asked, and with what.
#[derive(Debug, Clone, Copy)]
pub struct Question<'a> {
    /// What the manual says.
    pub statement: &'a TorqueStatement,
    /// What it says a second time.
    pub also: Option<&'a TorqueStatement>,
    /// The bolt, as far as it is known.
    pub bolt: Option<&'a KnownBolt>,
    /// A turn comes behind it.
    pub turned: bool,
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
        guard: bolt.and_then(|bolt| guard_turned(statement, bolt, question.turned)),
        running: question
            .running
            .map(|running| running_words(statement, running, true)),
        pair,
    }
}
