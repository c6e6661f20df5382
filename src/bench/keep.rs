//! What is kept where: the bench, the jobs, the records in segments, the clocks.

use super::{Said, Settings};
use crate::device::storage::{Loaded, Shelf, StorageError};
use crate::job::clock::CureClock;
use crate::job::example;
use crate::job::json::{self, JsonError};
use crate::job::record::{Entry, Record};
use crate::job::sheet::{JobId, Sheet};
use crate::job::tamper::WatchKept;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// Entries in one stored segment of a record: a tally rewrites this many at most.
pub const SEGMENT: usize = 200;

const BENCH: &str = "bench";
const CLOCKS: &str = "clocks";
const JOBS: &str = "jobs";
const WATCH: &str = "watch";
/// All forms are at their first version; see DEVELOPERS.md on adding a migration.
pub(super) const VERSION: u32 = 1;

/// A job's line in the list of jobs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct JobHead {
    /// Its number on this bench.
    pub id: JobId,
    /// Its title.
    pub title: String,
    /// Put away, but kept.
    #[serde(default)]
    pub archived: bool,
    /// Deleted: kept out of sight until its space is freed.
    #[serde(default)]
    pub deleted: bool,
}

impl JobHead {
    /// A job in use.
    pub fn new(id: JobId, title: &str) -> Self {
        Self {
            id,
            title: title.to_owned(),
            archived: false,
            deleted: false,
        }
    }
}

/// The list of jobs and which is at hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct Jobs {
    pub(super) at_hand: JobId,
    pub(super) heads: Vec<JobHead>,
}

/// The bench as it was left.
pub struct Left {
    /// The jobs.
    pub jobs: Vec<JobHead>,
    /// The one at hand.
    pub job: JobId,
    /// Its sheet.
    pub sheet: Sheet,
    /// Its record.
    pub record: Record,
    /// Every clock.
    pub clocks: Vec<CureClock>,
    /// The settings.
    pub settings: Settings,
    /// What went wrong in reading, for the user.
    pub said: Vec<Said>,
}

/// The store, by thing.
pub struct Shelves {
    shelf: Shelf,
    /// Said once at the start: why nothing is kept.
    blocked: Option<StorageError>,
}

impl Shelves {
    /// Shelves in that store; `blocked` when it only stands in for the browser's.
    pub fn new(shelf: Shelf, blocked: Option<StorageError>) -> Self {
        Self { shelf, blocked }
    }

    /// Reads everything, or lays out a first bench with the example job.
    pub fn read(&self) -> Left {
        let mut said: Vec<Said> = self
            .blocked
            .iter()
            .map(|error| Said {
                words: error.to_string(),
                trouble: true,
            })
            .collect();
        let settings = self.take(BENCH, &mut said).unwrap_or_default();
        let clocks = self.take(CLOCKS, &mut said).unwrap_or_default();
        let jobs: Option<Jobs> = self.take(JOBS, &mut said);
        let listed = jobs.filter(|jobs| !jobs.heads.is_empty());
        let first = listed.is_none();
        let jobs = listed.unwrap_or_else(|| self.jobs_found());
        let sheet = self
            .take(&sheet_name(jobs.at_hand), &mut said)
            .unwrap_or_else(|| match jobs.heads.iter().find(|head| head.id == jobs.at_hand) {
                // The example's steps must not stand in for those of a job whose sheet is lost.
                Some(head) if !first => Sheet::new(&head.title, Vec::new()),
                _ => example::sheet(),
            });
        let record = self.read_record(jobs.at_hand, &mut said);
        Left {
            job: jobs.at_hand,
            jobs: jobs.heads,
            sheet,
            record,
            clocks,
            settings,
            said,
        }
    }

    /// The sheet and record of another job.
    pub fn read_job(&self, id: JobId) -> (Option<Sheet>, Record, Vec<Said>) {
        let mut said = Vec::new();
        let sheet = self.take(&sheet_name(id), &mut said);
        (sheet, self.read_record(id, &mut said), said)
    }

    /// Keeps the settings.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_settings(&self, settings: &Settings) -> Result<(), StorageError> {
        self.shelf.save(BENCH, VERSION, settings)
    }

    /// Keeps the clocks.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_clocks(&self, clocks: &[CureClock]) -> Result<(), StorageError> {
        self.shelf.save(CLOCKS, VERSION, &clocks)
    }

    /// The watch over the phone's clock, as it was left; a damaged one begins anew.
    pub fn read_watch(&self) -> WatchKept {
        self.take(WATCH, &mut Vec::new()).unwrap_or_default()
    }

    /// Keeps the watch over the phone's clock.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_watch(&self, watch: &WatchKept) -> Result<(), StorageError> {
        self.shelf.save(WATCH, VERSION, watch)
    }

    /// Keeps the list of jobs.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_jobs(&self, at_hand: JobId, heads: &[JobHead]) -> Result<(), StorageError> {
        self.shelf.save(
            JOBS,
            VERSION,
            &Jobs {
                at_hand,
                heads: heads.to_vec(),
            },
        )
    }

    /// Keeps a sheet.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_sheet(&self, id: JobId, sheet: &Sheet) -> Result<(), StorageError> {
        self.shelf.save(&sheet_name(id), VERSION, sheet)
    }

    /// Keeps a sheet that was never kept: the example of a first visit.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_first_sheet(&self, id: JobId, sheet: &Sheet) -> Result<(), StorageError> {
        match self.shelf.text(&sheet_name(id)) {
            Some(_) => Ok(()),
            None => self.keep_sheet(id, sheet),
        }
    }

    /// Keeps the last segment of a record: the earlier ones are full and never change.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_record_end(&self, id: JobId, record: &Record) -> Result<(), StorageError> {
        let mut segments = segments(record);
        let Some((segment, end)) = segments.next_back() else {
            return Ok(());
        };
        self.shelf.save(&segment_name(id, segment), VERSION, &end)?;
        // A full segment never changes again: its older copy only takes room.
        if let (1, Some(full)) = (end.len(), segment.checked_sub(1)) {
            self.shelf.settle(&segment_name(id, full));
        }
        Ok(())
    }

    /// Keeps a job whole, in the place of whatever had its number.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_job(&self, id: JobId, sheet: &Sheet, record: &Record) -> Result<(), StorageError> {
        let text = |written: Result<String, JsonError>| written.map_err(|_| StorageError::Blocked);
        self.shelf
            .put_text(&sheet_name(id), VERSION, &text(json::write(sheet))?)?;
        let mut left_over = self.shelf.names(&record_name(id));
        for (at, segment) in segments(record) {
            let name = segment_name(id, at);
            self.shelf
                .put_text(&name, VERSION, &text(json::write(segment))?)?;
            left_over.retain(|other| *other != name);
        }
        left_over.iter().for_each(|name| self.shelf.forget(name));
        Ok(())
    }

    /// Forgets a job's sheet and record.
    pub fn forget_job(&self, id: JobId) {
        self.shelf.forget(&sheet_name(id));
        self.shelf
            .names(&record_name(id))
            .iter()
            .for_each(|name| self.shelf.forget(name));
    }

    /// Every good thing as it is stored: (name, version, JSON text).
    pub fn texts(&self) -> Vec<(String, u32, String)> {
        let names = self.shelf.names("").into_iter();
        names
            .filter_map(|name| {
                self.shelf
                    .text(&name)
                    .map(|(version, data)| (name, version, data))
            })
            .collect()
    }

    /// Puts a stored thing back as it was.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn put_text(&self, name: &str, version: u32, data: &str) -> Result<(), StorageError> {
        self.shelf.put_text(name, version, data)
    }

    /// Forgets everything kept, but what is set aside for rescue.
    pub fn forget_all(&self) {
        self.shelf
            .names("")
            .iter()
            .for_each(|name| self.shelf.forget(name));
    }

    /// Damaged texts that were set aside: (key, text).
    pub fn rescued(&self) -> Vec<(String, String)> {
        self.shelf.rescued()
    }

    fn read_record(&self, id: JobId, said: &mut Vec<Said>) -> Record {
        let names = self.shelf.names(&record_name(id));
        let segments = names
            .iter()
            .filter_map(|name| self.take::<Vec<Entry>>(name, said));
        Record::from_entries(segments.flatten().collect())
    }

    /// The list of jobs is gone, or there never was one: what sheets are there?
    fn jobs_found(&self) -> Jobs {
        let heads: Vec<JobHead> = self
            .shelf
            .names("job/")
            .iter()
            .filter_map(|name| {
                let id = JobId(name.strip_prefix("job/")?.parse().ok()?);
                let sheet: Sheet = self.take(name, &mut Vec::new())?;
                Some(JobHead::new(id, &sheet.title))
            })
            .collect();
        match heads.last() {
            Some(last) => Jobs {
                at_hand: last.id,
                heads,
            },
            None => {
                let first = JobHead::new(JobId(1), &example::sheet().title);
                Jobs {
                    at_hand: first.id,
                    heads: vec![first],
                }
            }
        }
    }

    fn take<T: DeserializeOwned>(&self, name: &str, said: &mut Vec<Said>) -> Option<T> {
        match self.shelf.load(name, &[]) {
            Ok(Loaded { value, rescued }) => {
                if !rescued.is_empty() {
                    said.push(Said {
                        words: rescue_words(name, value.is_some()),
                        trouble: true,
                    });
                }
                value
            }
            Err(error) => {
                said.push(Said {
                    words: error.to_string(),
                    trouble: true,
                });
                None
            }
        }
    }
}

/// A record in its segments. By the entries' own numbers: where a damaged segment left a gap, the others
/// keep their places.
fn segments(record: &Record) -> impl DoubleEndedIterator<Item = (usize, &[Entry])> {
    let segment = |entry: &Entry| entry.id.0 as usize / SEGMENT;
    record
        .entries()
        .chunk_by(move |a, b| segment(a) == segment(b))
        .filter_map(move |entries| Some((segment(entries.first()?), entries)))
}

fn sheet_name(id: JobId) -> String {
    format!("job/{}", id.0)
}

fn record_name(id: JobId) -> String {
    format!("record/{}/", id.0)
}

/// Padded so that names sort in the order of the segments.
fn segment_name(id: JobId, segment: usize) -> String {
    format!("{}{segment:04}", record_name(id))
}

fn rescue_words(name: &str, fell_back: bool) -> String {
    let thing = match name.split('/').next() {
        Some("job") => "job sheet",
        Some("record") => "record",
        Some("clocks") => "clocks",
        Some("jobs") => "list of jobs",
        _ => "bench settings",
    };
    let then = if fell_back {
        "The last good copy is in use; check the last thing you did."
    } else {
        "No good copy was left."
    };
    format!("A stored copy of the {thing} was damaged and is set aside: Jobs hands it out as a file. {then}")
}
