//! The first minutes: a bench on which no job was begun, and the example to look at.

use super::example;
use super::record::Record;
use super::settings::Settings;
use super::sheet::{JobId, Sheet};
use super::state::{Job, JobHead, Jobs, State};
use std::collections::BTreeMap;

/// The list of jobs before the first is begun: one in whose place it comes, without a title and without
/// steps.
pub fn no_jobs() -> Jobs {
    let first = JobHead::new(JobId(1), "");
    Jobs {
        at_hand: first.id,
        heads: vec![first],
    }
}

/// A bench with the bundled example and three wrenches of its own.
pub fn example() -> State {
    let sheet = example::sheet();
    let first = JobHead::new(JobId(1), &sheet.title);
    let jobs = Jobs {
        at_hand: first.id,
        heads: vec![first],
    };
    let files = BTreeMap::from([(jobs.at_hand, Job::new(sheet, Record::default()))]);
    State::new(jobs, files, Vec::new(), Settings::example())
}

/// Whether a job of that sheet and record stands only where the first one will: nobody began it.
pub fn is_nothing(sheet: &Sheet, record: &Record) -> bool {
    sheet.title.is_empty() && sheet.steps.is_empty() && record.entries().is_empty()
}

impl State {
    /// Whether a job was begun that is at hand. What any release stored as a job has a title or steps.
    pub fn has_job(&self) -> bool {
        let job = self.job();
        !is_nothing(&job.sheet, &job.record)
    }
}
