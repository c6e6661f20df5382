//! The jobs: a new one, another at hand, renamed, archived, copied, deleted and brought back.

use super::draft::Draft;
use super::step::Outcome;
use super::{Intent, Job, JobHead, JobRefused, Name, Refused, State};
use crate::job::record::Record;
use crate::job::sheet::{JobId, Sheet};

impl State {
    pub(super) fn job_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::BeginJob(sheet) => Ok(draft.begin((**sheet).clone())),
            Intent::BeginEmpty(title) => match title.trim() {
                "" => Err(JobRefused::NoTitle.into()),
                title => Ok(draft.begin(Sheet::new(title, Vec::new()))),
            },
            Intent::Duplicate(id) => self.sheet_of(*id).map(|sheet| {
                let mut sheet = sheet.clone();
                sheet.title = format!("{}, afresh", sheet.title);
                draft.begin(sheet)
            }),
            Intent::TakeJob(id) => self.sheet_of(*id).map(|_| {
                draft.jobs().at_hand = *id;
                Name::Of("taking to hand", self.title_of(*id))
            }),
            Intent::RenameJob { job, title } => match title.trim() {
                "" => Err(JobRefused::NoTitle.into()),
                title => self.sheet_of(*job).map(|sheet| {
                    title.clone_into(&mut draft.sheet_of(*job, sheet).title);
                    Name::Change("new name of the job")
                }),
            },
            Intent::ArchiveJob { job, away } => {
                let words = if *away {
                    "archiving"
                } else {
                    "taking out of the archive"
                };
                self.change_head(draft, *job, words, |head| head.archived = *away)
            }
            Intent::BringBackJob(job) => {
                self.change_head(draft, *job, "bringing back", |head| head.deleted = false)
            }
            Intent::DeleteJob(id) => self.delete(draft, *id),
            Intent::FreeDeleted => {
                self.free_deleted(draft);
                Ok(Name::Change("freeing deleted jobs"))
            }
            _ => return None,
        })
    }

    fn sheet_of(&self, id: JobId) -> Result<&Sheet, Refused> {
        let known = self.jobs.head(id).is_some() && !self.lost.contains(&id);
        let job = self.files.get(&id).filter(|_| known);
        job.map(|job| &job.sheet).ok_or(JobRefused::Gone.into())
    }

    fn title_of(&self, id: JobId) -> String {
        self.jobs
            .head(id)
            .map_or(String::new(), |head| head.title.clone())
    }

    fn change_head(
        &self,
        draft: &mut Draft<'_>,
        id: JobId,
        words: &'static str,
        change: impl FnOnce(&mut JobHead),
    ) -> Result<Name, Refused> {
        let head = draft.jobs().heads.iter_mut().find(|head| head.id == id);
        change(head.ok_or(JobRefused::Gone)?);
        Ok(Name::Of(words, self.title_of(id)))
    }

    fn delete(&self, draft: &mut Draft<'_>, id: JobId) -> Result<Name, Refused> {
        let name = self.change_head(draft, id, "deleting", |head| head.deleted = true)?;
        if self.jobs.at_hand == id {
            let heads = self.jobs.heads.iter().rev();
            let other = heads
                .filter(|head| head.id != id && !head.deleted)
                .find(|head| self.sheet_of(head.id).is_ok())
                .ok_or(JobRefused::LastOne)?;
            draft.jobs().at_hand = other.id;
        }
        Ok(name)
    }

    fn free_deleted(&self, draft: &mut Draft<'_>) {
        let deleted = self.jobs.heads.iter().filter(|head| head.deleted);
        let gone: Vec<JobId> = deleted
            .map(|head| head.id)
            .filter(|id| *id != self.jobs.at_hand)
            .collect();
        draft.jobs().heads.retain(|head| !gone.contains(&head.id));
        draft
            .clocks()
            .retain(|clock| clock.bound.is_none_or(|bound| !gone.contains(&bound.job)));
        for id in gone {
            draft.put(id, None);
        }
    }
}

impl Draft<'_> {
    fn begin(&mut self, mut sheet: Sheet) -> Name {
        sheet.number();
        let jobs = self.jobs();
        let id = jobs.free_id();
        jobs.heads.push(JobHead::new(id, &sheet.title));
        jobs.at_hand = id;
        let name = Name::Of("new job", sheet.title.clone());
        self.put(id, Some(Job::new(sheet, Record::default())));
        name
    }
}
