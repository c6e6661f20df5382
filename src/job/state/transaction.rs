//! All that one intent changes: kept as one, undone as one, named once.

use super::{Job, Jobs, State};
use crate::job::clock::CureClock;
use crate::job::journal::bolt_name;
use crate::job::kinds::gauge::words::done_words;
use crate::job::parts;
use crate::job::reading::What;
use crate::job::record::{Entry, Event, SetTo, Setting};
use crate::job::settings::{PIECES, Settings};
use crate::job::sheet::{JobId, Sheet, StepId};
use crate::trade::moment::Moment;

/// How many actions can be taken back.
const TRAIL_LENGTH: usize = 20;

/// What an action is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Name {
    /// By the lines it wrote: the same before a reload and after.
    Lines,
    /// A change of the settings or of the plan.
    Change(&'static str),
    /// Something done to what bears that name.
    Of(&'static str, String),
    /// Undo itself.
    Undo,
}

/// What becomes of the trail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// It can be taken back.
    Forward,
    /// It is no action of the user's: nothing to take back.
    Unlisted,
    /// It takes the last one back.
    Back,
}

/// Parts of a state; what is none is not touched.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Parts {
    /// The list of jobs and which is at hand.
    pub jobs: Option<Jobs>,
    /// Sheets of jobs that stay.
    pub sheets: Vec<(JobId, Sheet)>,
    /// Whole jobs: in the place of what was there; none takes it away.
    pub files: Vec<(JobId, Option<Job>)>,
    /// Every clock.
    pub clocks: Option<Vec<CureClock>>,
    /// The settings.
    pub settings: Option<Box<Settings>>,
}

/// All that one intent changes.
#[derive(Debug, Clone, PartialEq)]
pub struct Transaction {
    /// When.
    pub at: Moment,
    /// What.
    pub name: Name,
    /// Whether it can be taken back.
    pub way: Way,
    /// New lines of the records, in their order.
    pub lines: Vec<(JobId, Entry)>,
    /// What it changes, as it was.
    pub before: Parts,
    /// The same as it becomes.
    pub after: Parts,
    /// Things of a backup this release knows nothing of: (name, form, text); taken where there is none.
    pub others: Vec<(String, u32, String)>,
}

impl Transaction {
    /// Whether it changes nothing.
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty() && self.after == Parts::default() && self.others.is_empty()
    }

    /// The action in words: "bolt 3".
    pub fn words(&self, state: &State) -> String {
        match &self.name {
            Name::Lines => {
                let mut lines = self.lines.iter();
                lines.next().map_or(String::new(), |(job, first)| {
                    let sheet = state.files.get(job).map(|job| &job.sheet);
                    line_words(first, sheet)
                })
            }
            Name::Change(words) => (*words).to_owned(),
            Name::Of(words, name) => format!("{words} “{name}”"),
            Name::Undo => "undo".to_owned(),
        }
    }
}

/// What a touch is called by the first line it wrote.
pub(super) fn line_words(entry: &Entry, sheet: Option<&Sheet>) -> String {
    let step = entry.step.and_then(|id| sheet?.step(id));
    let title = |words: &str| format!("{words} “{}”", step.map_or("", |step| step.title.as_str()));
    match &entry.event {
        Event::Acknowledged { .. } => "caution acknowledged".to_owned(),
        Event::Tallied {
            set: Setting {
                to: SetTo::All(deed), ..
            },
            ..
        } => deed.done().to_owned(),
        Event::Tallied { place, .. } => format!("bolt {}", bolt_name(step, *place)),
        Event::WithoutWrench { .. } => title("what tightens"),
        Event::Loosened => title("loosening of"),
        Event::Applied { .. } => title("clock of"),
        Event::JointOpened => title("restart of"),
        Event::Measured { what, .. } => format!("reading of {}", what.name(step)),
        Event::Accepted { what, .. } => format!("accepting {}", what.name(step)),
        Event::Said { fact, .. } => fact.name(step),
        Event::Felt { .. } => "how it turns".to_owned(),
        Event::Coded { .. } => title("codes of"),
        Event::Gauged(done) => done_words(*done),
        Event::Chosen { round, .. } => format!("round {round}: what went in"),
        Event::Judged { part, .. } => format!("look at {}", What::Part(*part).name(step)),
        Event::Ordered { part, .. } => format!("ordering {}", What::Part(*part).name(step)),
        Event::NewOn { part } => format!("new {}", What::Part(*part).name(step)),
        Event::Placed { part, .. } => {
            let name = step.and_then(|step| parts::name(step, *part));
            format!("where {} is", name.as_deref().unwrap_or("a part"))
        }
        Event::Done { .. } => title("step"),
        Event::Skipped { .. } => title("skipping"),
        Event::Reopened => title("opening again"),
        Event::Overridden { .. } => title("overriding"),
        Event::Noted { .. } => "remark".to_owned(),
        Event::JobClosed => "closing the job".to_owned(),
        Event::TakenBack { .. } | Event::PhoneClock(_) => String::new(),
    }
}

/// What of the shown state a transaction touches.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Touched {
    /// The list of jobs, or which is at hand.
    pub jobs: bool,
    /// The sheet at hand.
    pub sheet: bool,
    /// The record at hand, and with it the progress.
    pub record: bool,
    /// The clocks.
    pub clocks: bool,
    /// The settings.
    pub settings: bool,
}

impl State {
    /// Takes a transaction over; tells what of the state at hand it touches.
    pub fn take(&mut self, transaction: Transaction) -> Touched {
        let Parts {
            jobs,
            sheets,
            files,
            clocks,
            settings,
        } = transaction.after.clone();
        let before = self.jobs.at_hand;
        let whole = files.iter().any(|(id, _)| *id == before);
        let mut touched = Touched {
            jobs: jobs.is_some(),
            sheet: whole || sheets.iter().any(|(id, _)| *id == before),
            record: whole || transaction.lines.iter().any(|(job, _)| *job == before),
            clocks: clocks.is_some(),
            settings: settings.is_some(),
        };
        self.jobs = jobs.unwrap_or_else(|| self.jobs.clone());
        let written = sheets
            .iter()
            .map(|(id, _)| *id)
            .chain(files.iter().map(|(id, _)| *id));
        let written: Vec<JobId> = written.collect();
        self.lost.retain(|id| !written.contains(id));
        for (id, sheet) in sheets {
            if let Some(job) = self.files.get_mut(&id) {
                job.sheet = sheet;
            }
        }
        for (id, file) in files {
            match file {
                Some(job) => drop(self.files.insert(id, job)),
                None => drop(self.files.remove(&id)),
            }
        }
        self.clocks = clocks.unwrap_or_else(|| std::mem::take(&mut self.clocks));
        if let Some(settings) = settings {
            self.settings = *settings;
        }
        let mut back: Vec<JobId> = Vec::new();
        for (id, entry) in &transaction.lines {
            let Some(job) = self.files.get_mut(id) else {
                continue;
            };
            if matches!(entry.event, Event::TakenBack { .. }) {
                back.push(*id);
            } else {
                job.progress.take(entry);
            }
            job.record.push(entry.clone());
        }
        for id in back {
            if let Some(job) = self.files.get_mut(&id) {
                job.progress = crate::job::progress::Progress::of(&job.record);
            }
        }
        if self.jobs.at_hand != before {
            (touched.sheet, touched.record) = (true, true);
        }
        match transaction.way {
            Way::Forward => {
                self.trail.push(transaction);
                let over = self.trail.len().saturating_sub(TRAIL_LENGTH);
                self.trail.drain(..over);
            }
            Way::Back => drop(self.trail.pop()),
            Way::Unlisted => {}
        }
        touched
    }

    /// The last actions that undo would take back one by one, newest first; at most twenty. After a
    /// reload the record itself is the trail.
    pub fn history(&self) -> Vec<(Moment, String)> {
        let trail = self.trail.iter().rev();
        let mut actions: Vec<(Moment, String)> =
            trail.map(|action| (action.at, action.words(self))).collect();
        let listed: Vec<_> = self
            .trail
            .iter()
            .flat_map(|action| &action.lines)
            .map(|(job, entry)| (*job, entry.id))
            .collect();
        let job = self.job();
        let older = job
            .record
            .standing_from_the_end()
            .filter(|entry| {
                entry.by_hand() && !entry.joined && !listed.contains(&(self.jobs.at_hand, entry.id))
            })
            .map(|entry| (entry.at, line_words(entry, Some(&job.sheet))));
        let room = TRAIL_LENGTH.saturating_sub(actions.len());
        actions.extend(older.take(room));
        actions
    }

    /// What is said of a transaction before it is taken, to those who only hear it: what was done to the
    /// job, and what undo takes back. Settings and digits as they are typed speak for themselves.
    pub fn heard(&self, transaction: &Transaction) -> Option<String> {
        match (transaction.way, &transaction.name) {
            (Way::Back, _) => self.undoable().map(|words| format!("undone: {words}")),
            (Way::Forward, Name::Lines) => Some(transaction.words(self)).filter(|words| !words.is_empty()),
            (Way::Forward | Way::Unlisted, _) => None,
        }
    }

    /// What undo would take back, in words.
    pub fn undoable(&self) -> Option<String> {
        if let Some(last) = self.trail.last() {
            return Some(last.words(self));
        }
        let job = self.job();
        let touch = job.record.last_touch();
        touch.first().map(|entry| line_words(entry, Some(&job.sheet)))
    }

    /// Whether the record of the job at hand speaks of that step.
    pub(super) fn spoken_of(&self, step: StepId) -> bool {
        let record = &self.job().record;
        record.entries().iter().any(|entry| entry.step == Some(step))
    }
}

/// `now` with the pieces back that differ between `before` and `after`.
pub(super) fn pieces_back(now: &Settings, before: &Settings, after: &Settings) -> Settings {
    let mut back = now.clone();
    for piece in PIECES.iter().filter(|piece| !(piece.same)(before, after)) {
        (piece.take)(&mut back, before);
    }
    back
}
