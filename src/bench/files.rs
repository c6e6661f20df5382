//! Files in and out: job sheets, tables of fasteners, and the whole bench as one file.

use super::keep::{Jobs, VERSION};
use super::{Bench, Inverse, JobHead, Settings};
use crate::device::storage::StorageError;
use crate::job::backup::{Change, Held, compare, merge_clocks, renumber_clocks};
use crate::job::clock::CureClock;
use crate::job::fasteners;
use crate::job::json::{self, JsonError};
use crate::job::progress::Progress;
use crate::job::record::{Entry, Record};
use crate::job::sheet::{JobId, Sheet, Step, StepId};
use crate::trade::moment::Moment;
use reactive_graph::prelude::*;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::collections::BTreeMap;
use std::fmt;

/// What a backup names itself.
const FORM: &str = "halfcase backup";
/// The version of its form.
const BACKUP_VERSION: u32 = 1;

/// What this phone last saw of its own clocks: no other phone's, nor an earlier day's, is put in its place.
const THIS_PHONE: &str = "watch";

/// A backup file: every good thing in storage, each under its name, as it is stored.
#[derive(Deserialize)]
struct BackupFile {
    form: String,
    version: u32,
    made_ms: Moment,
    things: BTreeMap<String, Thing>,
}

#[derive(Deserialize)]
struct Thing {
    version: u32,
    data: Value,
}

/// Why a file is no backup.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BackupError {
    /// Not the form at all.
    Unreadable(JsonError),
    /// A form that is another's.
    Foreign,
    /// Made by a later release.
    TooNew,
    /// One thing in it can't be read.
    Thing { name: String, what: String },
    /// It holds no jobs.
    NoJobs,
}

impl fmt::Display for BackupError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable(error) => write!(
                f,
                "Line {} is not a backup: {}. Nothing was changed.",
                error.place(),
                error.what()
            ),
            Self::Foreign => write!(
                f,
                "This is not a backup: its form is not “{FORM}”. Nothing was changed."
            ),
            Self::TooNew => {
                f.write_str("A newer release made this backup: update the app first. Nothing was changed.")
            }
            Self::Thing { name, what } => {
                write!(
                    f,
                    "In the backup, “{name}” can’t be read: {what}. Nothing was changed."
                )
            }
            Self::NoJobs => f.write_str("The backup holds no jobs. Nothing was changed."),
        }
    }
}

impl std::error::Error for BackupError {}

/// What a chosen file turned out to be.
pub enum Incoming {
    /// A job sheet in our form.
    Sheet(Sheet),
    /// A table of fasteners, as steps.
    Steps(Vec<Step>),
    /// A backup, compared with what is here.
    Backup(Box<Restore>),
}

/// A backup about to be taken in: what it would change, for the user to agree to.
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
    settings: Option<Settings>,
    jobs: Vec<Held>,
    clocks: Vec<CureClock>,
    at_hand: JobId,
    /// Things this part of the app knows nothing of: taken where nothing of that name is here.
    others: Vec<(String, u32, String)>,
}

impl Bench {
    /// Reads a chosen file: by what it holds, not by its name.
    ///
    /// # Errors
    /// A sentence with the line and what is wrong there; nothing is changed.
    pub fn read_file(self, text: &str) -> Result<Incoming, String> {
        #[derive(Deserialize)]
        struct Named {
            form: Option<String>,
        }
        let text = text.trim_start_matches('\u{feff}');
        if !text.trim_start().starts_with(['{', '[']) {
            let steps = fasteners::read(text, StepId(1)).map_err(|error| error.to_string())?;
            return Ok(Incoming::Steps(steps));
        }
        let named = json::read::<Named>(text).ok().and_then(|named| named.form);
        if named.as_deref() == Some(FORM) {
            let restore = self.read_backup(text).map_err(|error| error.to_string())?;
            return Ok(Incoming::Backup(Box::new(restore)));
        }
        Sheet::from_json(text)
            .map(Incoming::Sheet)
            .map_err(|error| error.to_string())
    }

    /// The whole bench as one text.
    pub fn backup_text(self) -> String {
        // The example of a first visit is only in memory; a backup holds it all the same.
        let things = self.shelves.with_value(|shelves| {
            let id = self.job.get_untracked();
            shelves.keep_first_sheet(id, &self.sheet.get_untracked()).ok();
            shelves.keep_jobs(id, &self.jobs.get_untracked()).ok();
            shelves.texts()
        });
        // Each thing goes in as it is stored, to the byte; names are ours and need no escapes.
        let things: Vec<String> = things
            .iter()
            .map(|(name, version, data)| format!("\"{name}\":{{\"version\":{version},\"data\":{data}}}"))
            .collect();
        format!(
            "{{\"form\":\"{FORM}\",\"version\":{BACKUP_VERSION},\"made_ms\":{},\"things\":{{\n{}\n}}}}\n",
            (self.clock)().0,
            things.join(",\n")
        )
    }

    /// Every damaged copy that was set aside, under its name; none where there is none.
    pub fn rescued_text(self) -> Option<String> {
        let all = self.shelves.with_value(super::Shelves::rescued);
        let words = all.into_iter().map(|(key, text)| format!("{key}\n{text}\n\n"));
        Some(words.collect::<String>()).filter(|text| !text.is_empty())
    }

    /// Reads a backup and compares it with what is here.
    ///
    /// # Errors
    /// [`BackupError`]; nothing is changed.
    pub fn read_backup(self, text: &str) -> Result<Restore, BackupError> {
        let file = read_form(text)?;
        let heads: Jobs = thing(&file, "jobs")?.ok_or(BackupError::NoJobs)?;
        let mut jobs = Vec::new();
        for head in heads.heads.iter().filter(|head| !head.deleted) {
            let name = format!("job/{}", head.id.0);
            let Some(sheet) = thing(&file, &name)? else {
                continue;
            };
            jobs.push(Held {
                id: head.id,
                archived: head.archived,
                sheet,
                record: record_in(&file, head.id)?,
            });
        }
        if jobs.is_empty() {
            return Err(BackupError::NoJobs);
        }
        let settings: Option<Settings> = thing(&file, "bench")?;
        let mine = self.settings.get_untracked();
        let own = |name: &String| {
            ["jobs", "bench", "clocks", THIS_PHONE].contains(&name.as_str())
                || name.starts_with("job/")
                || name.starts_with("record/")
        };
        Ok(Restore {
            made: file.made_ms,
            changes: compare(&self.held(), &jobs),
            settings_differ: settings.as_ref().is_some_and(|settings| *settings != mine),
            take_settings: settings.is_some() && mine == Settings::default(),
            settings,
            jobs,
            clocks: thing(&file, "clocks")?.unwrap_or_default(),
            at_hand: heads.at_hand,
            others: file
                .things
                .iter()
                .filter(|(name, _)| !own(name))
                .filter_map(|(name, thing)| {
                    Some((name.clone(), thing.version, json::write(&thing.data).ok()?))
                })
                .collect(),
        })
    }

    /// Takes in what was agreed to; all of it, or nothing where the browser refuses. Tells how many jobs came;
    /// none where it was refused, which is said.
    pub fn restore(self, restore: &Restore) -> Option<usize> {
        let before = self.backup_text();
        match self.try_restore(restore) {
            Ok(count) => {
                self.leave(
                    "taking in the backup".to_owned(),
                    Inverse::Everything(before.into()),
                );
                Some(count)
            }
            Err(error) => {
                self.put_everything(&before);
                self.say(error.to_string(), true);
                None
            }
        }
    }

    fn try_restore(self, restore: &Restore) -> Result<usize, StorageError> {
        let taken: Vec<&Change> = restore
            .changes
            .iter()
            .filter(|change| change.take && change.can_take())
            .collect();
        let numbers = taken.iter().map(|change| (change.from, change.to)).collect();
        let (clocks, clock_numbers) = self
            .clocks
            .with_untracked(|here| merge_clocks(here, &restore.clocks, &numbers));
        let mut heads = self.jobs.get_untracked();
        let mut at_hand = self.job.get_untracked();
        self.shelves.with_value(|shelves| {
            for change in &taken {
                let Some(job) = restore.jobs.iter().find(|job| job.id == change.from) else {
                    continue;
                };
                let file = renumber_clocks(&job.record, &clock_numbers);
                // Where only the sheet was lost here, the record may have gone on since the backup.
                let (_, here, _) = shelves.read_job(change.to);
                let goes_on = here.entries().len() > file.entries().len()
                    && here.entries().starts_with(job.record.entries());
                let record = if goes_on { &here } else { &file };
                shelves.keep_job(change.to, &job.sheet, record)?;
                let head = JobHead {
                    archived: job.archived,
                    ..JobHead::new(change.to, &job.sheet.title)
                };
                match heads.iter_mut().find(|own| own.id == change.to) {
                    Some(own) => *own = head,
                    None => heads.push(head),
                }
                if change.from == restore.at_hand {
                    at_hand = change.to;
                }
            }
            shelves.keep_clocks(&clocks)?;
            shelves.keep_jobs(at_hand, &heads)?;
            if let Some(settings) = restore.settings.as_ref().filter(|_| restore.take_settings) {
                shelves.keep_settings(settings)?;
            }
            let here: Vec<String> = shelves.texts().into_iter().map(|(name, ..)| name).collect();
            let new = restore.others.iter().filter(|(name, ..)| !here.contains(name));
            new.into_iter()
                .try_for_each(|(name, version, data)| shelves.put_text(name, *version, data))
        })?;
        self.read_again();
        Ok(taken.len())
    }

    /// Puts everything back as a backup's text has it.
    pub(super) fn put_everything(self, text: &str) {
        let Ok(file) = read_form(text) else { return };
        let put = self.shelves.with_value(|shelves| {
            shelves.forget_all();
            file.things
                .iter()
                .filter(|(name, _)| *name != THIS_PHONE)
                .try_for_each(|(name, thing)| {
                    let data = json::write(&thing.data).map_err(|_| StorageError::Blocked)?;
                    shelves.put_text(name, thing.version, &data)
                })
        });
        self.kept_or_said(put);
        // The watch over this phone's clock went with the rest.
        self.keep_watch();
        self.read_again();
    }

    /// Shows what is kept.
    fn read_again(self) {
        let left = self.shelves.with_value(super::Shelves::read);
        self.jobs.set(left.jobs);
        self.job.set(left.job);
        self.progress.set(Progress::of(&left.record));
        self.record.set(left.record);
        self.sheet.set(left.sheet);
        self.clocks.set(left.clocks);
        self.settings.set(left.settings);
    }

    /// Every job here, whole.
    fn held(self) -> Vec<Held> {
        let at_hand = self.job.get_untracked();
        let heads = self.jobs.get_untracked().into_iter();
        let held = heads.filter_map(|head| {
            let (sheet, record) = if head.id == at_hand {
                (Some(self.sheet.get_untracked()), self.record.get_untracked())
            } else {
                let (sheet, record, _) = self.shelves.with_value(|shelves| shelves.read_job(head.id));
                (sheet, record)
            };
            Some(Held {
                id: head.id,
                archived: head.archived,
                sheet: sheet?,
                record,
            })
        });
        held.collect()
    }
}

fn read_form(text: &str) -> Result<BackupFile, BackupError> {
    let file: BackupFile = json::read(text).map_err(BackupError::Unreadable)?;
    if file.form != FORM {
        return Err(BackupError::Foreign);
    }
    if file.version > BACKUP_VERSION || file.things.values().any(|thing| thing.version > VERSION) {
        return Err(BackupError::TooNew);
    }
    Ok(file)
}

/// A thing of the backup, where it has one of that name.
fn thing<T: DeserializeOwned>(file: &BackupFile, name: &str) -> Result<Option<T>, BackupError> {
    let Some(thing) = file.things.get(name) else {
        return Ok(None);
    };
    json::from_value(&thing.data)
        .map(Some)
        .map_err(|error| BackupError::Thing {
            name: name.to_owned(),
            what: error.to_string(),
        })
}

fn record_in(file: &BackupFile, id: JobId) -> Result<Record, BackupError> {
    let start = format!("record/{}/", id.0);
    let mut entries = Vec::new();
    for name in file.things.keys().filter(|name| name.starts_with(&start)) {
        entries.extend(thing::<Vec<Entry>>(file, name)?.unwrap_or_default());
    }
    Ok(Record::from_entries(entries))
}
