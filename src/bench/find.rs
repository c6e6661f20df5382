//! What there is of every job: the list, and what is looked for.

use super::Bench;
use crate::job::id::JobId;
use crate::job::job_line::{self, JobLine};
use crate::job::search::{Hit, gather};
use crate::job::state::Refused;
use reactive_graph::prelude::*;

impl Bench {
    /// The list of jobs; followed.
    pub fn job_lines(self) -> Vec<JobLine> {
        self.jobs.follow();
        self.job.follow();
        self.sheet.follow();
        self.progress.follow();
        self.state.with(job_line::lines)
    }

    /// Everything of every job that can be found, as it stands now: gathered once, not followed.
    pub fn gathered(self) -> Vec<Hit> {
        self.state.with(|state| {
            gather(state, |at| {
                self.calendar_at.with_value(|calendar| calendar(at).day)
            })
        })
    }

    /// Takes the job of what was found to hand, where it isn't.
    ///
    /// # Errors
    /// It can't be read.
    pub fn take_job_of(self, found: Option<JobId>) -> Result<(), Refused> {
        match found {
            Some(job) if job != self.job.get_untracked() => self.take_job(job),
            _ => Ok(()),
        }
    }
}
