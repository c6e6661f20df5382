//! What is kept where: the settings in pieces, the jobs, the records in segments, the clocks; all that
//! one touch changes at once.

use super::clock::CureClock;
use super::forms::{self, form_of};
use super::journal::gap_words;
use super::json;
use super::record::{Entry, Record};
use super::settings::{PIECES, Settings};
use super::sheet::{JobId, Sheet};
use super::shelf::{Shelf, StorageError, Write};
use super::start;
use super::state::{Job, JobHead, Jobs, State, Transaction};
use super::tamper::WatchKept;
use serde::Serialize;
use serde_json::Map;
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Entries in one stored segment of a record: a tally rewrites this many at most.
pub const SEGMENT: usize = 200;

const CLOCKS: &str = "clocks";
const JOBS: &str = "jobs";
const WATCH: &str = "watch";

/// Something to be said to the user: shown until it is dismissed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// The sentence.
    pub words: String,
    /// Something went wrong, rather than merely happened.
    pub trouble: bool,
    /// It answers a touch: gone with the next that is taken.
    pub answer: bool,
    /// Room has to be made: it leads to the jobs.
    pub room: bool,
}

impl Said {
    /// Something went wrong.
    pub fn trouble(words: String) -> Self {
        Self {
            words,
            trouble: true,
            answer: false,
            room: false,
        }
    }

    /// What was not kept, and why.
    pub fn not_kept(why: &StorageError) -> Self {
        Self {
            room: *why == StorageError::Full,
            ..Self::trouble(why.to_string())
        }
    }
}

/// The store, by thing.
pub struct Shelves {
    shelf: Shelf,
    /// Said once at the start: why nothing is kept.
    blocked: Option<StorageError>,
    /// What the store has yet to be told, since it refused.
    due: RefCell<Due>,
    /// What it still holds in an older form, for want of room.
    old: RefCell<Due>,
}

/// Things to be written.
#[derive(Debug, Clone, Default)]
struct Due {
    jobs: bool,
    clocks: bool,
    pieces: Vec<&'static str>,
    sheets: Vec<JobId>,
    /// Records, each from that segment on.
    records: Vec<(JobId, usize)>,
    gone: Vec<JobId>,
    others: Vec<Another>,
}

/// The bench as it was left.
pub struct Left {
    /// Its state.
    pub state: State,
    /// What went wrong in reading, for the user.
    pub said: Vec<Said>,
}

impl Shelves {
    /// Shelves in that store; `blocked` when it only stands in for the browser's.
    pub fn new(shelf: Shelf, blocked: Option<StorageError>) -> Self {
        Self {
            shelf,
            blocked,
            due: RefCell::default(),
            old: RefCell::default(),
        }
    }

    /// Reads everything; where nothing was stored, a bench on which no job was begun.
    pub fn read(&self) -> Left {
        let trouble = |error: &StorageError| Said::trouble(error.to_string());
        let mut said: Vec<Said> = self.blocked.iter().map(trouble).collect();
        let settings = self.read_settings(&mut said);
        let clocks: Vec<CureClock> = self.take(CLOCKS, &mut said, plain).unwrap_or_default();
        let listed = self
            .take(JOBS, &mut said, plain)
            .filter(|jobs: &Jobs| !jobs.heads.is_empty());
        let first = listed.is_none();
        let mut jobs = listed.unwrap_or_else(start::no_jobs);
        // An older list doesn't know the latest job, whose number would be given once more.
        let odd = self.shelf.odd();
        let mut found = BTreeMap::new();
        if first || odd.is_some() || !said.is_empty() {
            let known: &[JobHead] = if first { &[] } else { &jobs.heads };
            found = self.sheets_found(known, &mut said);
        }
        let heads = found
            .iter()
            .map(|(id, (sheet, _))| JobHead::new(*id, &sheet.title));
        match found.last_key_value() {
            // The list is gone, or there never was one.
            Some((last, _)) if first => {
                jobs = Jobs {
                    at_hand: *last,
                    heads: heads.collect(),
                }
            }
            Some(_) => {
                jobs.heads.extend(heads);
                self.due.borrow_mut().jobs = true;
            }
            None => {}
        }
        let mut files = BTreeMap::new();
        let mut lost = Vec::new();
        for head in &jobs.heads {
            let (sheet, mut about) = match found.remove(&head.id) {
                Some((sheet, about)) => (Some(sheet), about),
                None => self.read_sheet(head.id),
            };
            let kept = sheet.is_some();
            if !kept && !first {
                lost.push(head.id);
            }
            let sheet = sheet.unwrap_or_else(|| Sheet::new(&head.title, Vec::new()));
            let record = self.read_record(head.id, &sheet, kept, &mut about);
            if head.id == jobs.at_hand {
                let gaps = record.gaps().into_iter();
                about.extend(gaps.map(|gap| Said::trouble(gap_words(gap))));
            }
            // What is damaged is set aside now and would not be found again; gaps are, when it is taken to hand.
            for mut one in about {
                if head.id != jobs.at_hand {
                    one.words = format!("“{}”: {}", head.title, one.words);
                }
                said.push(one);
            }
            files.insert(head.id, Job::new(sheet, record));
        }
        let mut state = State::new(jobs, files, clocks, settings);
        state.lost = lost;
        if self.shelf.is_blind() {
            said.push(trouble(&StorageError::Unread));
        } else if let Some(words) = odd.filter(|_| said.is_empty()) {
            said.push(Said::trouble(words.to_owned()));
        }
        self.bring_up(&state);
        Left { state, said }
    }

    /// What of the store is of an older form is written in today's, a thing at a time: each says the same
    /// as before, so that a crash between two loses nothing.
    fn bring_up(&self, state: &State) {
        let due = self.due.take();
        let (pieces, jobs) = (due.pieces.clone(), due.records.clone());
        let mut parts: Vec<Due> = jobs
            .into_iter()
            .map(|(id, from)| Due {
                records: vec![(id, from)],
                sheets: vec![id],
                ..Due::default()
            })
            .collect();
        if !pieces.is_empty() {
            parts.push(Due {
                pieces,
                ..Due::default()
            });
        }
        for part in parts {
            if self.write(state, &part).is_err() {
                self.old.borrow_mut().add(part);
            }
        }
        // A list that was made whole; where there is no room it goes with the next touch.
        let list = Due {
            jobs: due.jobs,
            ..Due::default()
        };
        if self.write(state, &list).is_err() {
            self.due.borrow_mut().add(list);
        }
    }

    /// Keeps what a transaction changed, as `state` stands after it.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`]: then nothing of it is kept, and it goes with the next.
    pub fn keep(&self, state: &State, transaction: &Transaction) -> Result<(), StorageError> {
        self.due.borrow_mut().add(Due::of(transaction));
        // A first bench lives in memory until something is kept; a store that was cleared under us has
        // nothing of what is in memory: all of it goes with that.
        if !self.shelf.has(JOBS) {
            self.due.borrow_mut().add(Due::everything(state));
        }
        for head in &state.jobs.heads {
            let stands_in = state.lost.contains(&head.id);
            if !stands_in && !self.shelf.has(&sheet_name(head.id)) && state.files.contains_key(&head.id) {
                add_missing(&mut self.due.borrow_mut().sheets, vec![head.id]);
            }
        }
        let mut due = self.due.borrow().clone();
        // A changed plan gives names anew that a record of an older form still goes by.
        let old = self.old.borrow().clone();
        let tied = old.records.iter().filter(|(id, _)| due.sheets.contains(id));
        let tied: Vec<JobId> = tied.map(|(id, _)| *id).collect();
        tied.iter().for_each(|id| due.from(*id, 0));
        if !due.pieces.is_empty() && !old.pieces.is_empty() {
            add_missing(&mut due.pieces, old.pieces);
            self.old.borrow_mut().pieces.clear();
        }
        self.write(state, &due)?;
        self.old.borrow_mut().records.retain(|(id, _)| !tied.contains(id));
        self.due.replace(Due::default());
        Ok(())
    }

    /// Writes everything of `state` again: the store was cleared under us.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`]; it goes with the next.
    pub fn keep_everything(&self, state: &State) -> Result<(), StorageError> {
        self.due.borrow_mut().add(Due::everything(state));
        let due = self.due.borrow().clone();
        self.write(state, &due)?;
        self.due.replace(Due::default());
        Ok(())
    }

    /// Keeps a transaction whose files only stand when they are kept: refused, it is forgotten.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`]; nothing is changed.
    pub fn keep_or_forget(&self, state: &State, transaction: &Transaction) -> Result<(), StorageError> {
        let before = self.due.borrow().clone();
        let mut kept = self.keep(state, transaction);
        let gone = &Due::of(transaction).gone;
        if kept == Err(StorageError::Full) && !gone.is_empty() {
            // To be freed is all that is left to do with them.
            for id in gone {
                let mut names = self.shelf.names(&record_name(*id));
                names.push(sheet_name(*id));
                self.shelf.make_room(&names);
            }
            self.due.replace(before.clone());
            kept = self.keep(state, transaction);
        }
        if kept.is_err() {
            self.due.replace(before);
        }
        kept
    }

    fn write(&self, state: &State, due: &Due) -> Result<(), StorageError> {
        let mut writes = Vec::new();
        let mut full = Vec::new();
        let mut write = |name: String, text: Option<String>| {
            let version = form_of(&name);
            writes.push(Write { name, version, text });
        };
        if due.jobs {
            write(JOBS.to_owned(), Some(text_of(&state.jobs)?));
        }
        if due.clocks {
            write(CLOCKS.to_owned(), Some(text_of(&state.clocks)?));
        }
        if !due.pieces.is_empty() {
            for (name, text) in forms::pieces(&state.settings) {
                if due.pieces.contains(&name) {
                    write(name.to_owned(), Some(text));
                }
            }
        }
        for id in &due.sheets {
            if let Some(job) = state.files.get(id) {
                write(sheet_name(*id), Some(text_of(&job.sheet)?));
            }
        }
        for (id, from) in &due.records {
            let Some(job) = state.files.get(id) else { continue };
            // Written whole, it may be shorter than what stood there.
            let mut left_over = match from {
                0 => self.shelf.names(&record_name(*id)),
                _ => Vec::new(),
            };
            let mut last = *from;
            for (at, segment) in segments(&job.record, *from) {
                let name = segment_name(*id, at);
                left_over.retain(|other| *other != name);
                write(name, Some(text_of(segment)?));
                last = at;
            }
            // A full segment never changes again: its older copy only takes room.
            full.extend((from.saturating_sub(1)..last).map(|at| segment_name(*id, at)));
            left_over.into_iter().for_each(|name| write(name, None));
        }
        for id in &due.gone {
            write(sheet_name(*id), None);
            let segments = self.shelf.names(&record_name(*id));
            segments.into_iter().for_each(|name| write(name, None));
        }
        for (name, version, text) in &due.others {
            if !self.shelf.has(name) {
                writes.push(Write {
                    name: name.clone(),
                    version: *version,
                    text: Some(text.clone()),
                });
            }
        }
        if writes.is_empty() {
            return Ok(());
        }
        self.shelf.keep(&writes)?;
        full.iter().for_each(|name| self.shelf.settle(name));
        Ok(())
    }

    /// Everything of `state` as it would be stored, and what the store holds beside: (name, form, text).
    pub fn texts(&self, state: &State) -> Vec<(String, u32, String)> {
        let mut texts: Vec<(String, u32, String)> = Vec::new();
        let mut add = |name: String, text: Result<String, StorageError>| {
            if let Ok(text) = text {
                texts.push((name.clone(), form_of(&name), text));
            }
        };
        add(JOBS.to_owned(), text_of(&state.jobs));
        add(CLOCKS.to_owned(), text_of(&state.clocks));
        for (name, text) in forms::pieces(&state.settings) {
            add(name.to_owned(), Ok(text));
        }
        for (id, job) in &state.files {
            add(sheet_name(*id), text_of(&job.sheet));
            for (at, segment) in segments(&job.record, 0) {
                add(segment_name(*id, at), text_of(segment));
            }
        }
        texts.extend(self.others());
        texts
    }

    /// What the store holds that other parts of the app keep.
    pub fn others(&self) -> Vec<Another> {
        let others = self.shelf.names("").into_iter().filter(|name| is_anothers(name));
        let texts = others.filter_map(|name| {
            let (version, text) = self.shelf.text(&name)?;
            Some((name, version, text))
        });
        texts.collect()
    }

    /// The watch over the phone's clock, as it was left; a damaged one begins anew.
    pub fn read_watch(&self) -> WatchKept {
        self.take(WATCH, &mut Vec::new(), plain).unwrap_or_default()
    }

    /// Keeps the watch over the phone's clock.
    ///
    /// # Errors
    /// From the browser, see [`StorageError`].
    pub fn keep_watch(&self, watch: &WatchKept) -> Result<(), StorageError> {
        self.shelf.keep_alone(&text_of(watch)?)
    }

    /// Damaged texts that were set aside: (key, text).
    pub fn rescued(&self) -> Vec<(String, String)> {
        self.shelf.rescued()
    }

    fn read_settings(&self, said: &mut Vec<Said>) -> Settings {
        let mut whole = Map::new();
        for piece in PIECES {
            let read = self.take_form(piece.name, said, |_, text| {
                let mut part = Map::new();
                forms::add_piece(&mut part, text)?;
                // A piece that reads as none is damaged, and must not take the others with it.
                forms::settings(part.clone())?;
                Some(part)
            });
            let Some((form, part)) = read else { continue };
            if form < form_of(piece.name) {
                self.due.borrow_mut().pieces = PIECES.iter().map(|piece| piece.name).collect();
            }
            whole.extend(part);
        }
        forms::settings(whole).unwrap_or_default()
    }

    /// A record that stands on `sheet`; one of form 1 is due to be written anew with its sheet, whose
    /// numbers it goes by.
    fn read_record(&self, id: JobId, sheet: &Sheet, kept: bool, said: &mut Vec<Said>) -> Record {
        let mut entries: Vec<Entry> = Vec::new();
        let mut old = false;
        for name in self.shelf.names(&record_name(id)) {
            let read = self.take_form(&name, said, |form, text| forms::entries(form, text, sheet));
            if let Some((form, segment)) = read {
                old |= form < form_of(&name);
                entries.extend(segment);
            }
        }
        if old && kept {
            self.due.borrow_mut().records.push((id, 0));
        }
        Record::from_entries(entries)
    }

    /// The sheets that stand here of jobs not listed, each with what reading it went through: read once, since
    /// what is damaged is set aside by that. What went wrong with one that can't be read is said at once.
    fn sheets_found(&self, listed: &[JobHead], said: &mut Vec<Said>) -> BTreeMap<JobId, (Sheet, Vec<Said>)> {
        let mut found = BTreeMap::new();
        for name in self.shelf.names("job/") {
            let id = name.strip_prefix("job/").and_then(|id| id.parse().ok());
            // What bears a greater number could not be listed again.
            let Some(id) = id.and_then(|id| JobId(id).within()) else {
                continue;
            };
            if listed.iter().any(|head| head.id == id) {
                continue;
            }
            match self.read_sheet(id) {
                (Some(sheet), about) => drop(found.insert(id, (sheet, about))),
                (None, about) => said.extend(about),
            }
        }
        found
    }

    /// A job's sheet, and what reading it went through.
    fn read_sheet(&self, id: JobId) -> (Option<Sheet>, Vec<Said>) {
        let mut about = Vec::new();
        let sheet = self.take(&sheet_name(id), &mut about, |_, text| forms::sheet(text));
        (sheet, about)
    }

    fn take<T>(&self, name: &str, said: &mut Vec<Said>, read: impl Fn(u32, &str) -> Option<T>) -> Option<T> {
        self.take_form(name, said, read).map(|(_, value)| value)
    }

    fn take_form<T>(
        &self,
        name: &str,
        said: &mut Vec<Said>,
        read: impl Fn(u32, &str) -> Option<T>,
    ) -> Option<(u32, T)> {
        let found = self.shelf.load(name, form_of(name), read);
        let (value, rescued) = match found {
            Ok(found) => (found.value, Ok(found.rescued)),
            Err(error) => (None, Err(error)),
        };
        said.extend(trouble_in(name, rescued, value.is_some()));
        value
    }
}

/// What reading a thing went through, for the user.
fn trouble_in(name: &str, rescued: Result<Vec<String>, StorageError>, fell_back: bool) -> Option<Said> {
    let words = match rescued {
        Ok(rescued) if rescued.is_empty() => return None,
        Ok(rescued) => rescue_words(name, rescued.iter().all(|key| Shelf::is_aside(key)), fell_back),
        Err(error) => error.to_string(),
    };
    Some(Said::trouble(words))
}

impl Due {
    fn of(transaction: &Transaction) -> Self {
        let after = &transaction.after;
        let mut due = Self {
            jobs: after.jobs.is_some(),
            clocks: after.clocks.is_some(),
            sheets: after.sheets.iter().map(|(id, _)| *id).collect(),
            others: transaction.others.clone(),
            ..Self::default()
        };
        if let (Some(before), Some(after)) = (&transaction.before.settings, &after.settings) {
            let changed = PIECES.iter().filter(|piece| !(piece.same)(before, after));
            due.pieces.extend(changed.map(|piece| piece.name));
        }
        for (id, job) in &after.files {
            match job {
                Some(_) => {
                    due.sheets.push(*id);
                    due.from(*id, 0);
                }
                None => due.gone.push(*id),
            }
        }
        for (id, entry) in &transaction.lines {
            due.from(*id, segment_of(entry));
        }
        due
    }

    /// All there is; of a job whose sheet could not be read, its record.
    fn everything(state: &State) -> Self {
        let jobs = state.files.keys().copied();
        Self {
            jobs: true,
            clocks: true,
            pieces: PIECES.iter().map(|piece| piece.name).collect(),
            sheets: jobs.clone().filter(|id| !state.lost.contains(id)).collect(),
            records: jobs.map(|id| (id, 0)).collect(),
            ..Self::default()
        }
    }

    /// A record is due from that segment on.
    fn from(&mut self, id: JobId, segment: usize) {
        match self.records.iter_mut().find(|(own, _)| *own == id) {
            Some((_, from)) => *from = segment.min(*from),
            None => self.records.push((id, segment)),
        }
    }

    fn add(&mut self, other: Self) {
        self.jobs |= other.jobs;
        self.clocks |= other.clocks;
        self.gone
            .retain(|id| !other.sheets.contains(id) && other.records.iter().all(|(own, _)| own != id));
        self.sheets.retain(|id| !other.gone.contains(id));
        self.records.retain(|(id, _)| !other.gone.contains(id));
        for (id, segment) in other.records {
            self.from(id, segment);
        }
        add_missing(&mut self.pieces, other.pieces);
        add_missing(&mut self.sheets, other.sheets);
        add_missing(&mut self.gone, other.gone);
        self.others.extend(other.others);
    }
}

fn add_missing<T: PartialEq>(to: &mut Vec<T>, from: Vec<T>) {
    for one in from {
        if !to.contains(&one) {
            to.push(one);
        }
    }
}

/// Whether a thing of that name is read and written here.
pub fn is_ours(name: &str) -> bool {
    [JOBS, CLOCKS, WATCH].contains(&name)
        || PIECES.iter().any(|piece| piece.name == name)
        || name.starts_with("job/")
        || name.starts_with("record/")
}

/// Whether a name not ours may be that of a thing which another part of the app keeps: in letters a to z,
/// digits, hyphens and strokes, so that no file it stands in can be broken by it.
pub fn is_anothers(name: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_' | b'/');
    !is_ours(name) && !name.is_empty() && name.len() <= 64 && name.bytes().all(plain)
}

/// A thing that another part of the app keeps: name, form, text.
pub type Another = (String, u32, String);

/// Most bytes of such a thing that come in with a backup; most of all of them that are kept, and how many.
const MOST_OF_ANOTHER: usize = 100_000;
const MOST_OF_OTHERS: usize = 200_000;
const MOST_OTHERS: usize = 20;

/// What of a file's things, none of them ours, finds room beside what is here; and how many do not.
pub fn others_taken(here: &[Another], file: impl Iterator<Item = Another>) -> (Vec<Another>, usize) {
    let mut count = here.len();
    let mut bytes: usize = here.iter().map(|(.., text)| text.len()).sum();
    let (mut taken, mut left_out) = (Vec::new(), 0);
    for one in file {
        let (name, _, text) = &one;
        if here.iter().any(|(own, ..)| own == name) {
            continue;
        }
        let fits =
            count < MOST_OTHERS && text.len() <= MOST_OF_ANOTHER && bytes + text.len() <= MOST_OF_OTHERS;
        if fits && is_anothers(name) {
            count += 1;
            bytes += text.len();
            taken.push(one);
        } else {
            left_out += 1;
        }
    }
    (taken, left_out)
}

/// A thing whose form has not changed yet.
fn plain<T: serde::de::DeserializeOwned>(_: u32, text: &str) -> Option<T> {
    json::read(text).ok()
}

fn text_of<T: Serialize + ?Sized>(value: &T) -> Result<String, StorageError> {
    json::write(value).map_err(|_| StorageError::Blocked)
}

fn segment_of(entry: &Entry) -> usize {
    entry.id.0 as usize / SEGMENT
}

/// A record in its segments, from that one on. By the entries' own numbers: where a damaged segment left a
/// gap, the others keep their places.
fn segments(record: &Record, from: usize) -> impl Iterator<Item = (usize, &[Entry])> {
    let entries = record.entries();
    let first = entries.partition_point(|entry| segment_of(entry) < from);
    entries
        .get(first..)
        .unwrap_or_default()
        .chunk_by(|a, b| segment_of(a) == segment_of(b))
        .filter_map(|entries| Some((segment_of(entries.first()?), entries)))
}

/// Where a job's sheet is kept.
pub fn sheet_name(id: JobId) -> String {
    format!("job/{}", id.0)
}

/// What every segment of a job's record begins with.
pub fn record_name(id: JobId) -> String {
    format!("record/{}/", id.0)
}

/// Padded so that names sort in the order of the segments.
fn segment_name(id: JobId, segment: usize) -> String {
    format!("{}{segment:04}", record_name(id))
}

fn rescue_words(name: &str, aside: bool, fell_back: bool) -> String {
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
    let aside = match aside {
        true => "is set aside: Jobs exports it as a file",
        false => "there is no room to set it aside",
    };
    format!("A stored copy of the {thing} was damaged and {aside}. {then}")
}
