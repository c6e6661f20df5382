//! Files in and out: job sheets, tables of fasteners, and the whole bench as one file.

use super::{Bench, Restore, Settings};
use crate::job::backup::{Held, compare};
use crate::job::carbon::{Turn, put_back};
use crate::job::fasteners;
use crate::job::forms::{self, form_of};
use crate::job::json::{self, JsonError};
use crate::job::keep::{Shelves, is_ours, others_taken, record_name, sheet_name};
use crate::job::record::Record;
use crate::job::settings::PIECES;
use crate::job::sheet::{JobId, Sheet, SheetError, Step, StepId};
use crate::job::shelf::{MemoryStore, Shelf, Store};
use crate::job::start::is_nothing;
use crate::job::state::Jobs;
use crate::trade::moment::Moment;
use reactive_graph::prelude::*;
use serde::Deserialize;
use serde_json::Value;
use std::collections::BTreeMap;
use std::fmt;
use std::rc::Rc;

/// What a backup names itself.
const FORM: &str = "halfcase backup";
/// The version of its form.
const BACKUP_VERSION: u32 = 2;

/// What a file names itself that was saved without the app: each slot of the store as it is.
const KEPT: &str = "halfcase kept";

/// Most bytes of a file that comes in: what the browser keeps for a page altogether, and again as much.
const MOST_BYTES: usize = 10_000_000;
const TOO_LONG: &str =
    "This file is over 10 MB, more than the browser keeps: it is none of ours. Nothing was changed.";

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
        if text.len() > MOST_BYTES {
            return Err(TOO_LONG.to_owned());
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
        if named.as_deref() == Some(KEPT) {
            let restore = self.read_kept(text).map_err(|error| error.to_string())?;
            return Ok(Incoming::Backup(Box::new(restore)));
        }
        Sheet::from_json(text)
            .map(Incoming::Sheet)
            .map_err(|error| error.to_string())
    }

    /// The whole bench as one text.
    pub fn backup_text(self) -> String {
        let things = self
            .state
            .with(|state| self.shelves.with_value(|shelves| shelves.texts(state)));
        let rescued = self.shelves.with_value(super::Shelves::rescued);
        backup_of(&things, &rescued, (self.clock)())
    }

    /// What a backup made now holds, in words: "2 jobs, 211 lines"; and what it does not.
    pub fn backup_words(self) -> String {
        self.state.with(|state| {
            let jobs = state.files.len() - state.lost.len();
            let lines: usize = state.files.values().map(|job| job.record.entries().len()).sum();
            let some = |count: usize, one: &str, many: &str| match count {
                1 => format!("1 {one}"),
                count => format!("{count} {many}"),
            };
            let missing = match state.lost.len() {
                0 => String::new(),
                lost => format!(
                    " {} can’t be read and {} only as damaged copies in it.",
                    some(lost, "more job", "more jobs"),
                    if lost == 1 { "is" } else { "are" }
                ),
            };
            format!(
                "In it: {}, {}.{missing}",
                some(jobs, "job", "jobs"),
                some(lines, "line of the record", "lines of the record")
            )
        })
    }

    /// Reads what was saved without the app, as the app would have read it from the store.
    fn read_kept(self, text: &str) -> Result<Restore, BackupError> {
        #[derive(Deserialize)]
        struct KeptFile {
            made: Moment,
            kept: serde_json::Map<String, Value>,
            /// What the journal holds beyond that.
            #[serde(default)]
            turns: Vec<Value>,
        }
        let file: KeptFile = json::read(text).map_err(BackupError::Unreadable)?;
        let store = MemoryStore::default();
        let texts = file.kept.iter();
        texts
            .filter_map(|(key, text)| Some((key, text.as_str()?)))
            .for_each(|(key, text)| drop(store.set(key, text)));
        let turns: Vec<Turn> = file.turns.iter().filter_map(Turn::read).collect();
        let back = put_back(&store, &turns);
        let shelf = Shelf::new(Rc::new(store));
        // An empty store would be laid out with the example.
        if shelf.names("job").is_empty() {
            return Err(BackupError::NoJobs);
        }
        let shelves = Shelves::new(shelf, None);
        let mut left = shelves.read();
        let trouble = left.said.into_iter().filter(|said| said.trouble);
        trouble.for_each(|said| self.say(said.words, true));
        // A job whose sheet can't be read must not come in as an empty one.
        let lost = std::mem::take(&mut left.state.lost);
        left.state.jobs.heads.retain(|head| !lost.contains(&head.id));
        left.state.files.retain(|id, _| !lost.contains(id));
        if left.state.files.is_empty() {
            return Err(BackupError::NoJobs);
        }
        let restore = self.read_backup(&backup_of(&shelves.texts(&left.state), &[], file.made))?;
        if !back.is_nothing() {
            self.say(back.words_of_file(), back.apart);
        }
        Ok(restore)
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
        let heads: Jobs = thing(&file, "jobs", plain)?.ok_or(BackupError::NoJobs)?;
        let mut jobs = Vec::new();
        for head in heads.heads.iter().filter(|head| !head.deleted) {
            let name = sheet_name(head.id);
            let Some(mut sheet) = thing::<Sheet>(&file, &name, plain)? else {
                continue;
            };
            match sheet.check() {
                Ok(()) | Err(SheetError::Empty) => sheet.number(),
                Err(why) => {
                    let what = why.to_string();
                    return Err(BackupError::Thing { name, what });
                }
            }
            let record = record_in(&file, head.id, &sheet)?;
            if is_nothing(&sheet, &record) {
                continue;
            }
            jobs.push(Held {
                id: head.id,
                archived: head.archived,
                record,
                sheet,
            });
        }
        let settings = settings_in(&file)?;
        if jobs.is_empty() && settings.is_none() {
            return Err(BackupError::NoJobs);
        }
        let mine = self.settings.get_untracked();
        let others = file.things.iter().filter(|(name, _)| !is_ours(name));
        let others = others.filter_map(|(name, thing)| {
            let text = json::write(&thing.data).ok()?;
            Some((name.clone(), thing.version, text))
        });
        let here = self.shelves.with_value(Shelves::others);
        let (others, left_out) = others_taken(&here, others);
        Ok(Restore {
            made: file.made_ms,
            changes: compare(&self.held(), &jobs),
            settings_differ: settings.as_ref().is_some_and(|settings| *settings != mine),
            take_settings: settings.is_some() && mine.untouched(),
            settings,
            jobs,
            clocks: thing(&file, "clocks", plain)?.unwrap_or_default(),
            at_hand: heads.at_hand,
            others,
            left_out,
        })
    }

    /// Every job here, whole.
    fn held(self) -> Vec<Held> {
        self.state.with(|state| {
            let heads = state.jobs.heads.iter();
            let held = heads.filter_map(|head| {
                let job = state.files.get(&head.id);
                let job = job.filter(|job| !is_nothing(&job.sheet, &job.record))?;
                Some(Held {
                    id: head.id,
                    archived: head.archived,
                    sheet: job.sheet.clone(),
                    record: job.record.clone(),
                })
            });
            held.collect()
        })
    }
}

/// A backup of these things, and of damaged texts beside them. Each thing goes in as it is stored; names are
/// ours and need no escapes.
fn backup_of(things: &[(String, u32, String)], rescued: &[(String, String)], made: Moment) -> String {
    let things: Vec<String> = things
        .iter()
        .map(|(name, version, data)| format!("\"{name}\":{{\"version\":{version},\"data\":{data}}}"))
        .collect();
    let aside = match rescued {
        [] => String::new(),
        rescued => {
            let texts: serde_json::Map<String, Value> = rescued
                .iter()
                .map(|(key, text)| (key.clone(), Value::from(text.as_str())))
                .collect();
            format!(",\"damaged\":{}", json::write(&texts).unwrap_or_default())
        }
    };
    format!(
        "{{\"form\":\"{FORM}\",\"version\":{BACKUP_VERSION},\"made_ms\":{},\"things\":{{\n{}\n}}{aside}}}\n",
        made.0,
        things.join(",\n")
    )
}

fn read_form(text: &str) -> Result<BackupFile, BackupError> {
    let file: BackupFile = json::read(text).map_err(BackupError::Unreadable)?;
    if file.form != FORM {
        return Err(BackupError::Foreign);
    }
    let newer = |(name, thing): (&String, &Thing)| is_ours(name) && thing.version > form_of(name);
    if file.version > BACKUP_VERSION || file.things.iter().any(newer) {
        return Err(BackupError::TooNew);
    }
    Ok(file)
}

/// A thing of the backup, where it has one of that name, read by its form.
fn thing<T>(
    file: &BackupFile,
    name: &str,
    read: impl FnOnce(u32, &Value) -> Result<T, JsonError>,
) -> Result<Option<T>, BackupError> {
    let Some(thing) = file.things.get(name) else {
        return Ok(None);
    };
    let refused = |error: JsonError| BackupError::Thing {
        name: name.to_owned(),
        what: error.to_string(),
    };
    read(thing.version, &thing.data).map(Some).map_err(refused)
}

/// A thing whose form has not changed.
fn plain<T: serde::de::DeserializeOwned>(_: u32, data: &Value) -> Result<T, JsonError> {
    json::from_value(data)
}

fn record_in(file: &BackupFile, id: JobId, sheet: &Sheet) -> Result<Record, BackupError> {
    let start = record_name(id);
    let mut entries = Vec::new();
    for name in file.things.keys().filter(|name| name.starts_with(&start)) {
        let read = thing(file, name, |form, data| {
            let old = (form < form_of(name))
                .then(|| forms::entries_of(data, sheet))
                .flatten();
            // Where it can't be read, the reader of today's form says why.
            old.map_or_else(|| json::from_value(data), Ok)
        })?;
        entries.extend(read.unwrap_or_default());
    }
    Ok(Record::from_entries(entries))
}

/// The settings of all pieces in the file; none where it has none.
fn settings_in(file: &BackupFile) -> Result<Option<Settings>, BackupError> {
    let mut whole = serde_json::Map::new();
    for piece in PIECES {
        let part = thing(file, piece.name, |_, data| {
            json::from_value::<Settings>(data)?;
            json::from_value::<serde_json::Map<String, Value>>(data)
        })?;
        whole.extend(part.unwrap_or_default());
    }
    if whole.is_empty() {
        return Ok(None);
    }
    Ok(forms::settings(whole))
}
