//! A backup about to be taken in: what it would change, for the user to agree to.

use super::draft::Draft;
use super::{Job, JobHead};
use crate::job::backup::{Change, Held, begins, merge_clocks, renumber_clocks};
use crate::job::clock::CureClock;
use crate::job::reading::What;
use crate::job::record::{Event, Record};
use crate::job::settings::Settings;
use crate::job::sheet::{JobId, Sheet};
use crate::trade::moment::Moment;

/// A backup about to be taken in.
#[derive(Debug, Clone, PartialEq)]
pub struct Restore {
    /// When it was made.
    pub made: Moment,
    /// What each job would change; `take` may be switched.
    pub changes: Vec<Change>,
    /// Whether its settings (wrenches, ratings, shop) differ from those here.
    pub settings_differ: bool,
    /// Whether its settings are taken.
    pub take_settings: bool,
    /// Its settings.
    pub settings: Option<Settings>,
    /// Its jobs.
    pub jobs: Vec<Held>,
    /// Its clocks.
    pub clocks: Vec<CureClock>,
    /// Which of its jobs was at hand.
    pub at_hand: JobId,
    /// Things this release knows nothing of: taken where nothing of that name is here.
    pub others: Vec<(String, u32, String)>,
    /// So many of them are left out: too big, too many, or of a name that can't be kept.
    pub left_out: usize,
}

impl Restore {
    /// The jobs that are taken.
    pub fn taken(&self) -> impl Iterator<Item = &Change> {
        self.changes
            .iter()
            .filter(|change| change.take && change.can_take())
    }

    /// What of the file is not taken whatever is chosen, in words; none where that is nothing.
    pub fn left_out_words(&self) -> Option<String> {
        let what = match self.left_out {
            0 => return None,
            1 => "1 thing in the file that this release knows nothing of is left out: it".to_owned(),
            count => {
                format!("{count} things in the file that this release knows nothing of are left out: they")
            }
        };
        Some(format!("{what} can’t be kept here. Keep the file."))
    }
}

/// A record whose readings were read by name, without their sheet, as that sheet numbers them.
fn named_anew(record: &Record, sheet: &Sheet) -> Record {
    let mut entries = record.entries().to_vec();
    for entry in &mut entries {
        let step = entry.step.and_then(|id| sheet.step(id));
        if let (Event::Measured { what, .. }, Some(step)) = (&mut entry.event, step)
            && let What::Named(name) = what
            && let Some(known) = What::by_name(step, name)
        {
            *what = known;
        }
    }
    Record::from_entries(entries)
}

impl Draft<'_> {
    pub(super) fn restore(&mut self, restore: &Restore) {
        let numbers = restore.taken().map(|change| (change.from, change.to)).collect();
        let (clocks, clock_numbers) = merge_clocks(&self.state.clocks, &restore.clocks, &numbers);
        for change in restore.taken() {
            let Some(job) = restore.jobs.iter().find(|job| job.id == change.from) else {
                continue;
            };
            let file = renumber_clocks(&job.record, &clock_numbers);
            // Where only the sheet was lost here, the record may have gone on since the backup.
            let here = self.state.files.get(&change.to).map(|job| &job.record);
            let goes_on = here.filter(|here| {
                here.entries().len() > file.entries().len() && begins(here.entries(), job.record.entries())
            });
            let record = goes_on.map_or(file.clone(), |here| named_anew(here, &job.sheet));
            self.put(change.to, Some(Job::new(job.sheet.clone(), record)));
            let head = JobHead {
                archived: job.archived,
                ..JobHead::new(change.to, &job.sheet.title)
            };
            let jobs = self.jobs();
            match jobs.heads.iter_mut().find(|own| own.id == change.to) {
                Some(own) => *own = head,
                None => jobs.heads.push(head),
            }
            if change.from == restore.at_hand {
                jobs.at_hand = change.to;
            }
        }
        *self.clocks() = clocks;
        if let Some(settings) = restore.settings.as_ref().filter(|_| restore.take_settings) {
            *self.settings() = settings.clone();
        }
        self.others.clone_from(&restore.others);
    }
}
