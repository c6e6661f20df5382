//! Bringing a backup in beside what is here: what each job of it would change, and the merging.

use super::clock::{Bound, ClockId, CureClock};
use super::id;
use super::record::{Entry, Event, Record};
use super::sheet::{JobId, Sheet};
use std::collections::BTreeMap;

/// One job, whole.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Its number on its bench.
    pub id: JobId,
    /// Archived.
    pub archived: bool,
    /// Its sheet.
    pub sheet: Sheet,
    /// Its record.
    pub record: Record,
}

/// What taking a job of the backup would do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fate {
    /// It is here just so: nothing to take.
    Same,
    /// Here it is further along: nothing to take.
    Older,
    /// The backup's record goes on from the one here.
    Longer { more: usize },
    /// The same record, another plan.
    OtherPlan,
    /// Not here yet.
    New,
    /// Another job has its number: it comes in under a number of its own.
    Beside,
}

/// What one job of the backup would change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// Its number in the backup.
    pub from: JobId,
    /// Its number here.
    pub to: JobId,
    /// Its title.
    pub title: String,
    /// What it would do.
    pub fate: Fate,
    /// Whether it is taken unless the user says otherwise.
    pub take: bool,
    /// Lines of its record in the backup.
    pub entries: usize,
}

impl Change {
    /// The change in words.
    pub fn words(&self) -> String {
        match self.fate {
            Fate::Same => "the same here: nothing to do".to_owned(),
            Fate::Older => "further along here: nothing to take".to_owned(),
            Fate::Longer { more } => format!("{more} more lines of record than here"),
            Fate::OtherPlan => {
                "same record, another plan: the file’s plan would replace the one here".to_owned()
            }
            Fate::New => format!("not here yet: {} lines of record", self.entries),
            Fate::Beside => format!("comes in beside the one here: {} lines of record", self.entries),
        }
    }

    /// Whether there is anything to take.
    pub fn can_take(&self) -> bool {
        !matches!(self.fate, Fate::Same | Fate::Older)
    }
}

/// Compares every job of a backup with those here.
pub fn compare(here: &[Held], file: &[Held]) -> Vec<Change> {
    let mut taken: Vec<JobId> = here.iter().map(|held| held.id).collect();
    taken.extend(file.iter().map(|held| held.id));
    // A job here is one job of the file at most: two taken into one would leave the last alone.
    let mut matched: Vec<JobId> = Vec::new();
    for job in file {
        let own = here.iter().find(|held| held.id == job.id && one_job(held, job));
        matched.extend(own.map(|held| held.id));
    }
    file.iter()
        .map(|job| {
            let same_number = here.iter().find(|held| held.id == job.id);
            let kin = same_number.filter(|held| one_job(held, job)).or_else(|| {
                here.iter()
                    .find(|held| !matched.contains(&held.id) && one_job(held, job))
            });
            matched.extend(kin.map(|held| held.id));
            let (to, fate) = match (kin, same_number) {
                (Some(held), _) => (held.id, fate(held, job)),
                (None, None) => (job.id, Fate::New),
                (None, Some(_)) => {
                    let free = JobId(id::free(taken.iter().map(|id| id.0)));
                    taken.push(free);
                    (free, Fate::Beside)
                }
            };
            // Nothing is lost by the file's plan where nothing was done, or no plan is left.
            let untouched =
                kin.is_some_and(|held| held.record.entries().is_empty() || held.sheet.steps.is_empty());
            Change {
                from: job.id,
                to,
                title: job.sheet.title.clone(),
                fate,
                take: match fate {
                    Fate::Longer { .. } | Fate::New | Fate::Beside => true,
                    Fate::OtherPlan => untouched,
                    Fate::Same | Fate::Older => false,
                },
                entries: job.record.entries().len(),
            }
        })
        .collect()
}

/// Whether two are one job at two times: one record is the beginning of the other.
fn one_job(a: &Held, b: &Held) -> bool {
    let (short, long) = in_length(a.record.entries(), b.record.entries());
    if short.is_empty() {
        return a.sheet.title == b.sheet.title && a.sheet.machine == b.sheet.machine;
    }
    begins(long, short)
}

/// Whether one record begins as the other goes: by number, instant, step and kind of each line. What a
/// line names may have been read without its sheet.
pub fn begins(long: &[Entry], short: &[Entry]) -> bool {
    let same = |(a, b): (&Entry, &Entry)| {
        (a.id, a.at, a.step) == (b.id, b.at, b.step)
            && std::mem::discriminant(&a.event) == std::mem::discriminant(&b.event)
    };
    long.len() >= short.len() && long.iter().zip(short).all(same)
}

fn fate(here: &Held, file: &Held) -> Fate {
    let (mine, theirs) = (here.record.entries().len(), file.record.entries().len());
    let lost_here = here.sheet.steps.is_empty() && !file.sheet.steps.is_empty();
    if theirs > mine {
        Fate::Longer { more: theirs - mine }
    } else if lost_here {
        Fate::OtherPlan
    } else if theirs < mine {
        Fate::Older
    } else if here.sheet == file.sheet {
        Fate::Same
    } else {
        Fate::OtherPlan
    }
}

fn in_length<'a>(a: &'a [Entry], b: &'a [Entry]) -> (&'a [Entry], &'a [Entry]) {
    if a.len() <= b.len() { (a, b) } else { (b, a) }
}

/// Merges the backup's clocks of the jobs that are taken (`jobs` maps their numbers to those here) and
/// its free-standing ones; tells under which number each clock is now.
pub fn merge_clocks(
    here: &[CureClock],
    file: &[CureClock],
    jobs: &BTreeMap<JobId, JobId>,
) -> (Vec<CureClock>, BTreeMap<ClockId, ClockId>) {
    let mut merged = here.to_vec();
    let mut numbers = BTreeMap::new();
    for clock in file {
        let bound = match clock.bound {
            None => None,
            Some(bound) => match jobs.get(&bound.job) {
                Some(job) => Some(Bound { job: *job, ..bound }),
                None => continue,
            },
        };
        let mut clock = CureClock {
            bound,
            ..clock.clone()
        };
        let from = clock.id;
        let same = |own: &CureClock| {
            own.started == clock.started && own.bound == clock.bound && own.name == clock.name
        };
        if let Some(own) = merged.iter_mut().find(|own| same(own)) {
            numbers.insert(from, own.id);
            own.ended = own.ended.or(clock.ended);
            continue;
        }
        if merged.iter().any(|own| own.id == clock.id) {
            clock.id = ClockId(id::free(merged.iter().chain(file).map(|own| own.id.0)));
        }
        numbers.insert(from, clock.id);
        merged.push(clock);
    }
    (merged, numbers)
}

/// A record whose clocks go under other numbers; unchanged where they keep theirs.
pub fn renumber_clocks(record: &Record, numbers: &BTreeMap<ClockId, ClockId>) -> Record {
    let mut entries = record.entries().to_vec();
    for entry in &mut entries {
        if let Event::Applied { clock, .. } = &mut entry.event {
            *clock = numbers.get(clock).copied().unwrap_or(*clock);
        }
    }
    Record::from_entries(entries)
}
