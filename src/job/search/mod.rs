//! Search across jobs: every fastener, reading, compound, part and remark of every job, from one field.
//!
//! What there is is gathered once; each letter typed only looks through it.

mod gather;
mod query;

pub use gather::gather;
pub use query::Query;

use super::id::{JobId, StepId};
use crate::trade::moment::Moment;

/// What was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// Fasteners of the plan, with what was last done to them.
    Fastener,
    /// A compound that went on, or a joint that asks for one.
    Compound,
    /// A reading, or something looked at and said.
    Reading,
    /// A part.
    Part,
    /// A remark, or a reason given.
    Remark,
    /// A step of the plan that is nothing of these.
    Step,
}

impl Sort {
    /// It in a word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fastener => "fastener",
            Self::Compound => "compound",
            Self::Reading => "reading",
            Self::Part => "part",
            Self::Remark => "remark",
            Self::Step => "step",
        }
    }
}

/// Where a touch on it leads, once its job is at hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Opens {
    /// To its step.
    Step(StepId),
    /// To the parts.
    Parts,
    /// To the record.
    Record,
    /// To the clocks.
    Clocks,
}

/// One thing that can be found.
#[derive(Debug, Clone, PartialEq)]
pub struct Hit {
    /// What it is.
    pub sort: Sort,
    /// It in words.
    pub words: String,
    /// Its job; none of a clock that belongs to none.
    pub job: Option<JobId>,
    /// That job's title.
    pub title: String,
    /// The machine.
    pub machine: String,
    /// The step's number and title; empty where there is none.
    pub step: String,
    /// When it was last done, read or said; none of what is only planned.
    pub at: Option<Moment>,
    /// Where it stands.
    pub opens: Opens,
    /// The day of `at` in the phone's calendar, counted from 1970-01-01.
    day: Option<i64>,
    /// Every word it is found by, as the query writes them.
    hay: String,
}

impl Hit {
    /// A row's key: what tells it from every other.
    pub fn key(&self) -> String {
        let job = self.job.map_or(0, |job| job.0);
        let at = self.at.map_or(0, |at| at.0);
        format!("{job} {at} {} {} {}", self.sort.word(), self.step, self.words)
    }
}

/// What of `all` the query finds, in the order of `all`. A query without a word finds nothing.
pub fn found<'a>(all: &'a [Hit], query: &'a Query) -> impl Iterator<Item = &'a Hit> {
    all.iter().filter(|hit| query.finds(&hit.hay, hit.day))
}
