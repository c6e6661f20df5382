//! A job's line in the list of jobs: what tells it from others.

use super::start::is_nothing;
use super::state::{JobHead, State};
use crate::trade::moment::Moment;

/// One job of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct JobLine {
    /// Its head.
    pub head: JobHead,
    /// It is the one at hand.
    pub at_hand: bool,
    /// The machine, in the user's words; empty where it isn't told.
    pub machine: String,
    /// Steps that are closed.
    pub done: usize,
    /// Steps there are.
    pub of: usize,
    /// When it was last worked at; none where nothing was done yet.
    pub last: Option<Moment>,
    /// When it was closed.
    pub closed: Option<Moment>,
    /// Its sheet can't be read.
    pub lost: bool,
}

impl JobLine {
    /// How far it is: "4 of 23 done".
    pub fn done_words(&self) -> String {
        match (self.lost, self.of) {
            (true, _) => "its sheet can’t be read".to_owned(),
            (false, 0) => "no steps yet".to_owned(),
            (false, of) => format!("{} of {of} done", self.done),
        }
    }
}

/// Every job that was begun, in that order.
pub fn lines(state: &State) -> Vec<JobLine> {
    let line = |head: &JobHead| {
        let job = state.files.get(&head.id);
        let worked = job.and_then(|job| job.record.standing_from_the_end().find(|line| line.works()));
        JobLine {
            head: head.clone(),
            at_hand: head.id == state.jobs.at_hand,
            machine: job.map_or(String::new(), |job| job.sheet.machine.clone()),
            done: job.map_or(0, |job| job.progress.closed_count(&job.sheet)),
            of: job.map_or(0, |job| job.sheet.steps.len()),
            last: worked.map(|line| line.at),
            closed: job.and_then(|job| job.progress.job_closed),
            lost: state.lost.contains(&head.id),
        }
    };
    let begun = |head: &&JobHead| {
        let job = state.files.get(&head.id);
        job.is_none_or(|job| !is_nothing(&job.sheet, &job.record))
    };
    state.jobs.heads.iter().filter(begun).map(line).collect()
}
