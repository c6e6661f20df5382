//! A transaction as it is made up: parts are copied when they are first changed.

use super::transaction::{Name, Parts, Transaction, Way};
use super::{Job, Jobs, Now, State};
use crate::job::clock::CureClock;
use crate::job::record::{Entry, EntryId, Event};
use crate::job::settings::Settings;
use crate::job::sheet::{JobId, Sheet, StepId};

/// What is made up so far.
pub struct Draft<'a> {
    pub state: &'a State,
    pub now: Now,
    pub after: Parts,
    pub lines: Vec<(JobId, Entry)>,
    pub others: Vec<(String, u32, String)>,
}

impl<'a> Draft<'a> {
    pub fn new(state: &'a State, now: Now) -> Self {
        Self {
            state,
            now,
            after: Parts::default(),
            lines: Vec::new(),
            others: Vec::new(),
        }
    }

    /// The sheet at hand, to change.
    pub fn sheet(&mut self) -> &mut Sheet {
        let state = self.state;
        self.sheet_of(state.jobs.at_hand, &state.job().sheet)
    }

    /// The sheet of a job, to change.
    pub fn sheet_of(&mut self, id: JobId, now: &Sheet) -> &mut Sheet {
        let sheets = &mut self.after.sheets;
        let at = sheets.iter().position(|(own, _)| *own == id).unwrap_or_else(|| {
            sheets.push((id, now.clone()));
            sheets.len() - 1
        });
        &mut sheets[at].1
    }

    /// The list of jobs, to change.
    pub fn jobs(&mut self) -> &mut Jobs {
        let state = self.state;
        self.after.jobs.get_or_insert_with(|| state.jobs.clone())
    }

    /// The clocks, to change.
    pub fn clocks(&mut self) -> &mut Vec<CureClock> {
        let state = self.state;
        self.after.clocks.get_or_insert_with(|| state.clocks.clone())
    }

    /// The settings, to change.
    pub fn settings(&mut self) -> &mut Settings {
        let state = self.state;
        self.after
            .settings
            .get_or_insert_with(|| Box::new(state.settings.clone()))
    }

    /// Who signs.
    fn initials(&self) -> &str {
        let settings = self.after.settings.as_deref();
        &settings.unwrap_or(&self.state.settings).initials
    }

    /// A job in the place of whatever has its number.
    pub fn put(&mut self, id: JobId, job: Option<Job>) {
        self.after.files.push((id, job));
    }

    /// A new line in the record at hand.
    pub fn line(&mut self, step: Option<StepId>, event: Event) {
        self.line_in(self.state.jobs.at_hand, step, event);
    }

    /// A new line in a job's record; joined to the line before it, where this draft wrote one.
    pub fn line_in(&mut self, job: JobId, step: Option<StepId>, event: Event) {
        let first = self
            .state
            .files
            .get(&job)
            .map_or(EntryId(0), |job| job.record.next_id());
        let here = self.lines.iter().filter(|(other, _)| *other == job).count() as u64;
        let id = EntryId(first.0 + here);
        let entry = Entry {
            joined: here > 0,
            ..Entry::new(id, self.now.at, step, self.initials(), event)
        };
        self.lines.push((job, entry));
    }

    /// Done: what did not change after all is left out.
    pub fn finish(mut self, name: Name, way: Way) -> Transaction {
        let state = self.state;
        let at_hand = self.after.jobs.as_ref().map(|jobs| jobs.at_hand);
        // Steps are numbered anew in each job: the other's adapter must not lie on a step of this one.
        if way != Way::Back
            && at_hand.is_some_and(|id| id != state.jobs.at_hand)
            && state.settings.desk.from.is_some()
        {
            let desk = &mut self.settings().desk;
            (desk.from, desk.adapter_on) = (None, false);
        }
        // In the place of none comes the first.
        let placeholder = state.jobs.at_hand;
        let replaced = self.after.files.iter().any(|(id, _)| *id == placeholder);
        if way != Way::Back && at_hand.is_some_and(|id| id != placeholder) && !replaced && !state.has_job() {
            self.jobs().heads.retain(|head| head.id != placeholder);
            self.put(placeholder, None);
        }
        self.after
            .sheets
            .retain(|(id, sheet)| state.files.get(id).is_some_and(|job| job.sheet != *sheet));
        // A head bears its sheet's title.
        let titles: Vec<(JobId, String)> = self
            .after
            .sheets
            .iter()
            .filter(|(id, sheet)| state.jobs.head(*id).is_some_and(|head| head.title != sheet.title))
            .map(|(id, sheet)| (*id, sheet.title.clone()))
            .collect();
        for (id, title) in titles {
            let head = self.jobs().heads.iter_mut().find(|head| head.id == id);
            head.into_iter().for_each(|head| head.title.clone_from(&title));
        }
        let Parts {
            jobs,
            sheets,
            files,
            clocks,
            settings,
        } = &mut self.after;
        jobs.take_if(|jobs| *jobs == state.jobs);
        clocks.take_if(|clocks| *clocks == state.clocks);
        settings.take_if(|settings| **settings == state.settings);
        files.retain(|(id, job)| state.files.get(id) != job.as_ref());
        let before = Parts {
            jobs: jobs.as_ref().map(|_| state.jobs.clone()),
            sheets: sheets
                .iter()
                .filter_map(|(id, _)| Some((*id, state.files.get(id)?.sheet.clone())))
                .collect(),
            files: files
                .iter()
                .map(|(id, _)| (*id, state.files.get(id).cloned()))
                .collect(),
            clocks: clocks.as_ref().map(|_| state.clocks.clone()),
            settings: settings.as_ref().map(|_| Box::new(state.settings.clone())),
        };
        Transaction {
            at: self.now.at,
            name,
            way,
            lines: self.lines,
            before,
            after: self.after,
            others: self.others,
        }
    }
}
