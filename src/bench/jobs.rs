//! The jobs: a new one, another at hand, renamed, put away, copied, deleted and brought back.

use super::{Bench, Inverse, JobHead};
use crate::job::example;
use crate::job::progress::Progress;
use crate::job::record::Record;
use crate::job::sheet::{JobId, Sheet};
use reactive_graph::prelude::*;
use std::fmt;

/// Why nothing was done to a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JobRefused {
    /// A job needs a name.
    NoTitle,
    /// Its sheet can't be read.
    Gone,
    /// One job stays.
    LastOne,
}

impl fmt::Display for JobRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoTitle => "Give the job a name first.",
            Self::Gone => "That job’s sheet can’t be read: bring it back from a backup.",
            Self::LastOne => "One job stays on the bench: begin another first.",
        })
    }
}

impl Bench {
    /// Begins a job with that sheet and takes it to hand; tells its number.
    pub fn begin_job(self, sheet: Sheet) -> JobId {
        let before = self.jobs_now();
        let id = JobId(self.jobs.with_untracked(|jobs| {
            jobs.iter()
                .map(|job| job.id.0)
                .max()
                .map_or(1, |most| most.saturating_add(1))
        }));
        let words = format!("new job “{}”", sheet.title);
        self.keep_jobs();
        self.kept_or_said(
            self.shelves
                .with_value(|shelves| shelves.keep_job(id, &sheet, &Record::default())),
        );
        self.jobs.update(|jobs| jobs.push(JobHead::new(id, &sheet.title)));
        self.at_hand(id, sheet, Record::default());
        self.keep_jobs();
        self.leave(words, before);
        id
    }

    /// Begins a job without steps.
    ///
    /// # Errors
    /// [`JobRefused::NoTitle`].
    pub fn begin_empty(self, title: &str) -> Result<JobId, JobRefused> {
        match title.trim() {
            "" => Err(JobRefused::NoTitle),
            title => Ok(self.begin_job(Sheet::new(title, Vec::new()))),
        }
    }

    /// Begins the bundled example afresh.
    pub fn begin_example(self) -> JobId {
        self.begin_job(example::sheet())
    }

    /// Takes another job to hand.
    ///
    /// # Errors
    /// [`JobRefused::Gone`].
    pub fn take_job(self, id: JobId) -> Result<(), JobRefused> {
        if id == self.job.get_untracked() {
            return Ok(());
        }
        let before = self.jobs_now();
        let words = self.title_of(id);
        self.keep_jobs();
        self.open_job(id)?;
        self.keep_jobs();
        self.leave(format!("taking “{words}” to hand"), before);
        Ok(())
    }

    /// Renames a job.
    ///
    /// # Errors
    /// [`JobRefused::NoTitle`], [`JobRefused::Gone`].
    pub fn rename_job(self, id: JobId, title: &str) -> Result<(), JobRefused> {
        let title = title.trim();
        if title.is_empty() {
            return Err(JobRefused::NoTitle);
        }
        let mut sheet = self.sheet_of(id).ok_or(JobRefused::Gone)?;
        let before = sheet.clone();
        title.clone_into(&mut sheet.title);
        self.keep_sheet_of(id, sheet);
        self.leave(
            "new name of the job".to_owned(),
            Inverse::Sheet(id, Box::new(before)),
        );
        Ok(())
    }

    /// Puts a job away, or takes it out again.
    pub fn archive_job(self, id: JobId, away: bool) {
        let words = if away { "putting away" } else { "taking out" };
        self.change_head(id, words, |head| head.archived = away);
    }

    /// Deletes a job: out of sight, but kept until its space is freed.
    ///
    /// # Errors
    /// [`JobRefused::LastOne`] when no other job is left.
    pub fn delete_job(self, id: JobId) -> Result<(), JobRefused> {
        let before = self.jobs_now();
        let title = self.title_of(id);
        self.keep_jobs();
        if self.job.get_untracked() == id {
            let other = self.jobs.with_untracked(|jobs| {
                jobs.iter()
                    .rev()
                    .find(|job| job.id != id && !job.deleted)
                    .map(|job| job.id)
            });
            self.open_job(other.ok_or(JobRefused::LastOne)?)?;
        }
        self.with_head(id, |head| head.deleted = true);
        self.keep_jobs();
        self.leave(format!("deleting “{title}”"), before);
        Ok(())
    }

    /// Brings a deleted job back.
    pub fn bring_back_job(self, id: JobId) {
        self.change_head(id, "bringing back", |head| head.deleted = false);
    }

    /// Frees the space of every deleted job, for good but for undo.
    pub fn free_deleted(self) {
        let everything = self.backup_text();
        let gone: Vec<JobId> = self
            .jobs
            .with_untracked(|jobs| jobs.iter().filter(|job| job.deleted).map(|job| job.id).collect());
        self.jobs.update(|jobs| jobs.retain(|job| !job.deleted));
        self.keep_jobs();
        self.shelves
            .with_value(|shelves| gone.iter().for_each(|id| shelves.forget_job(*id)));
        self.clocks.update(|clocks| {
            clocks.retain(|clock| clock.bound.is_none_or(|bound| !gone.contains(&bound.job)))
        });
        self.keep_clocks();
        self.leave(
            "freeing deleted jobs".to_owned(),
            Inverse::Everything(everything.into()),
        );
    }

    /// Begins a job with the same sheet and an empty record.
    ///
    /// # Errors
    /// [`JobRefused::Gone`].
    pub fn duplicate_job(self, id: JobId) -> Result<JobId, JobRefused> {
        let mut sheet = self.sheet_of(id).ok_or(JobRefused::Gone)?;
        sheet.title = format!("{}, afresh", sheet.title);
        Ok(self.begin_job(sheet))
    }

    /// The sheet of any job, as it is kept.
    pub fn sheet_of(self, id: JobId) -> Option<Sheet> {
        if id == self.job.get_untracked() {
            return Some(self.sheet.get_untracked());
        }
        self.shelves.with_value(|shelves| shelves.read_job(id).0)
    }

    /// Takes a job to hand for undo of something done in it; tells whether it is.
    pub(super) fn bring_to_hand(self, id: JobId) -> bool {
        if id == self.job.get_untracked() {
            return true;
        }
        let opened = self.open_job(id);
        match opened {
            Ok(()) => self.keep_jobs(),
            Err(refused) => self.say(refused.to_string(), true),
        }
        opened.is_ok()
    }

    /// Puts the list of jobs back, and the one that was at hand.
    pub(super) fn put_jobs(self, at_hand: JobId, heads: Vec<JobHead>) {
        // A job that began in between goes out of sight, but stays.
        let began: Vec<JobHead> = self.jobs.with_untracked(|jobs| {
            let new = jobs
                .iter()
                .filter(|job| !heads.iter().any(|head| head.id == job.id));
            new.map(|job| JobHead {
                deleted: true,
                ..job.clone()
            })
            .collect()
        });
        if at_hand != self.job.get_untracked()
            && let Err(refused) = self.open_job(at_hand)
        {
            self.say(refused.to_string(), true);
        }
        self.jobs.set(heads.into_iter().chain(began).collect());
        self.keep_jobs();
    }

    /// Keeps a sheet under that number and shows it; its head follows its title.
    pub(super) fn keep_sheet_of(self, id: JobId, sheet: Sheet) {
        self.kept_or_said(self.shelves.with_value(|shelves| shelves.keep_sheet(id, &sheet)));
        if self.title_of(id) != sheet.title {
            self.with_head(id, |head| head.title.clone_from(&sheet.title));
            self.keep_jobs();
        }
        if id == self.job.get_untracked() {
            self.sheet.set(sheet);
        }
    }

    fn open_job(self, id: JobId) -> Result<(), JobRefused> {
        let (sheet, record, said) = self.shelves.with_value(|shelves| shelves.read_job(id));
        said.into_iter()
            .for_each(|said| self.say(said.words, said.trouble));
        self.at_hand(id, sheet.ok_or(JobRefused::Gone)?, record);
        Ok(())
    }

    fn at_hand(self, id: JobId, sheet: Sheet, record: Record) {
        // Steps are numbered anew in each job: the other's adapter must not lie on a step of this one.
        if self
            .settings
            .with_untracked(|settings| settings.desk.from.is_some())
        {
            self.note(|settings| (settings.desk.from, settings.desk.adapter_on) = (None, false));
        }
        self.job.set(id);
        self.progress.set(Progress::of(&record));
        self.record.set(record);
        self.sheet.set(sheet);
    }

    fn change_head(self, id: JobId, words: &str, change: impl FnOnce(&mut JobHead)) {
        let before = self.jobs_now();
        self.with_head(id, change);
        self.keep_jobs();
        self.leave(format!("{words} “{}”", self.title_of(id)), before);
    }

    fn with_head(self, id: JobId, change: impl FnOnce(&mut JobHead)) {
        self.jobs.update(|jobs| {
            if let Some(head) = jobs.iter_mut().find(|job| job.id == id) {
                change(head);
            }
        });
    }

    fn title_of(self, id: JobId) -> String {
        self.jobs.with_untracked(|jobs| {
            jobs.iter()
                .find(|job| job.id == id)
                .map_or(String::new(), |job| job.title.clone())
        })
    }

    fn jobs_now(self) -> Inverse {
        Inverse::Jobs(self.job.get_untracked(), self.jobs.get_untracked())
    }

    fn keep_jobs(self) {
        // A first bench lives in memory until something is kept: its sheet goes with the list.
        let (job, kept) = (self.job.get_untracked(), self.jobs.get_untracked());
        self.kept_or_said(self.shelves.with_value(|shelves| {
            shelves.keep_first_sheet(job, &self.sheet.get_untracked())?;
            shelves.keep_jobs(job, &kept)
        }));
    }
}
