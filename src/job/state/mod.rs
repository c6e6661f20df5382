//! Everything a decision goes by, and the one function that decides.
//!
//! ```text
//! intent ──▶ State::apply(intent, now) ──▶ Ok(Transaction) | Err(Refused)
//!                     ▲                          │
//!    State::ask(step) ◀── views                  ├─▶ State::take: the bench shows it
//!                                                └─▶ the shelves keep it, whole or not at all
//! ```
//!
//! Pure data: no signals, no browser. The time comes in as a value.

mod apply;
mod ask;
mod bench;
mod clocks;
mod draft;
mod gauge;
mod intent;
mod jobs;
mod last_minutes;
mod plan;
mod refused;
mod restore;
mod select;
mod step;
mod transaction;
mod undo;

pub use ask::Ask;
pub use intent::{Intent, ReadWith};
pub use refused::{JobRefused, Refused};
pub use restore::Restore;
pub use transaction::{Name, Parts, Touched, Transaction, Way};

use super::bonding::{BondAnswer, Surroundings, bond};
use super::clock::CureClock;
use super::conflicts::{self, Conflict};
use super::gate::{Ground, opened_uncured};
use super::id;
use super::kinds::Work;
use super::kinds::fasten::fastening::{PassAnswer, pass_answer, running};
use super::kinds::seat;
use super::kinds::seat::oven::OvenRun;
use super::progress::{Progress, StepProgress, next_fastener};
use super::reading::What;
use super::readings;
use super::record::Record;
use super::settings::Settings;
use super::sheet::{JobId, Sheet, Step, StepId};
use super::situation::{self, Around};
use crate::trade::application::Application;
use crate::trade::caution::Caution;
use crate::trade::cooling::TimeRange;
use crate::trade::heat_plan::PlanKind;
use crate::trade::moment::Moment;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The time, and where it stands in the phone's calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Now {
    /// The instant.
    pub at: Moment,
    /// Days since 1970-01-01 in the phone's time zone.
    pub day: i64,
    /// Minutes since midnight there.
    pub minute: i64,
    /// How far, ms, the phone's clock is held to be ahead of `at`; 0 where it is not.
    pub ahead_ms: i64,
}

impl Now {
    /// An instant by the calendar of Greenwich.
    pub fn utc(at: Moment) -> Self {
        let minutes = at.0.div_euclid(60_000);
        Self {
            at,
            day: minutes.div_euclid(24 * 60),
            minute: minutes.rem_euclid(24 * 60),
            ahead_ms: 0,
        }
    }
}

/// A job's line in the list of jobs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct JobHead {
    /// Its number on this bench.
    pub id: JobId,
    /// Its title.
    pub title: String,
    /// Archived: out of the way, but kept.
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
pub struct Jobs {
    /// The one at hand.
    pub at_hand: JobId,
    /// Every job, in the order they began.
    pub heads: Vec<JobHead>,
}

impl Jobs {
    /// The line of that job.
    pub fn head(&self, id: JobId) -> Option<&JobHead> {
        self.heads.iter().find(|head| head.id == id)
    }

    /// A number no job has.
    pub fn free_id(&self) -> JobId {
        JobId(id::free(self.heads.iter().map(|head| head.id.0)))
    }
}

/// A job: its sheet, its record, and how far that is.
#[derive(Debug, Clone)]
pub struct Job {
    /// Its sheet.
    pub sheet: Sheet,
    /// Its record.
    pub record: Record,
    /// Worked out from the record.
    pub progress: Progress,
}

/// How far it is follows from the record.
impl PartialEq for Job {
    fn eq(&self, other: &Self) -> bool {
        self.sheet == other.sheet && self.record == other.record
    }
}

impl Job {
    /// A job of that sheet and record.
    pub fn new(sheet: Sheet, record: Record) -> Self {
        Self {
            sheet,
            progress: Progress::of(&record),
            record,
        }
    }
}

/// Everything a decision goes by.
#[derive(Debug, Clone, PartialEq)]
pub struct State {
    /// The jobs on this bench and which is at hand.
    pub jobs: Jobs,
    /// Each job whose sheet can be read; the one at hand always.
    pub files: BTreeMap<JobId, Job>,
    /// Jobs whose sheet can't be read: one without steps stands in for it, and is not kept.
    pub lost: Vec<JobId>,
    /// Every cure clock.
    pub clocks: Vec<CureClock>,
    /// Wrenches, bottles, shop, and what is typed.
    pub settings: Settings,
    /// The last actions, oldest first, each with its way back.
    pub trail: Vec<Transaction>,
    /// By how much, ms, the phone's clock is ahead of ours while nobody has said which is right; not kept.
    pub doubted_ms: i64,
    /// Stands in for a job that is nowhere.
    nothing: Job,
}

/// The next touch on the way from the oven to the seat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OvenNext {
    /// It comes out, by that plan, and stays good for so long.
    Out(PlanKind, TimeRange),
    /// It is on its way: say when it is home.
    Home,
}

impl State {
    /// A bench of these jobs. One at hand that is nowhere begins without steps, under its title.
    pub fn new(jobs: Jobs, files: BTreeMap<JobId, Job>, clocks: Vec<CureClock>, settings: Settings) -> Self {
        let title = jobs.head(jobs.at_hand).map_or("", |head| head.title.as_str());
        let nothing = Job::new(Sheet::new(title, Vec::new()), Record::default());
        let mut state = Self {
            jobs,
            files,
            lost: Vec::new(),
            clocks,
            settings,
            trail: Vec::new(),
            doubted_ms: 0,
            nothing,
        };
        if !state.files.contains_key(&state.jobs.at_hand) {
            state.files.insert(state.jobs.at_hand, state.nothing.clone());
        }
        state
    }

    /// The job at hand.
    pub fn job(&self) -> &Job {
        self.files.get(&self.jobs.at_hand).unwrap_or(&self.nothing)
    }

    /// A step of the job at hand.
    pub fn step(&self, id: StepId) -> Option<&Step> {
        self.job().sheet.step(id)
    }

    /// How far a step of the job at hand is.
    pub fn progress(&self, id: StepId) -> StepProgress {
        self.job().progress.step(id)
    }

    /// What of a step is not settled.
    pub fn findings(&self, id: StepId) -> Vec<What> {
        self.step(id)
            .map_or(Vec::new(), |step| readings::findings(step, &self.progress(id)))
    }

    /// Everything found in the job that is not settled, in words.
    pub fn all_findings(&self) -> Vec<(StepId, String)> {
        let steps = self.job().sheet.steps.iter();
        let of_step = |step: &Step| -> Vec<(StepId, String)> {
            let progress = self.progress(step.id);
            let words = |what: What| (step.id, readings::finding_words(step, &progress, &what));
            readings::findings(step, &progress)
                .into_iter()
                .map(words)
                .collect()
        };
        steps.flat_map(of_step).collect()
    }

    /// What in the plan of the job at hand doesn't go together, with the bottles and the shop of `now`.
    pub fn conflicts(&self, now: Now) -> Vec<Conflict> {
        let spec = |step: &Step| {
            let joint = step.work.application()?;
            let answer = self.bond(joint, false, now);
            Some((answer.spec?, answer.bottle.is_some()))
        };
        let bench = conflicts::Bench {
            spec: &spec,
            shop: &self.settings.shop,
            now: now.at,
        };
        conflicts::conflicts(&self.job().sheet, &bench)
    }

    /// What gates and overviews go by.
    pub fn ground(&self) -> Ground<'_> {
        Ground {
            job: self.jobs.at_hand,
            sheet: &self.job().sheet,
            progress: &self.job().progress,
            clocks: &self.clocks,
            shop: &self.settings.shop,
            doubted_ms: self.doubted_ms,
        }
    }

    /// The cautions of some work, that of a step or of a screen itself, gravest first.
    pub fn cautions(&self, work: &Work, step: Option<StepId>, now: Moment) -> Vec<Caution> {
        let ground = self.ground();
        let around = Around {
            press_kn: self.settings.press_kn,
            hoist: self.settings.hoist(),
            room: self.settings.temperature_at(now),
            solvent: situation::solvent_about(ground.sheet, ground.progress, now),
            before_cure: step
                .and_then(|id| self.step(id))
                .is_some_and(|step| opened_uncured(ground, step, now)),
            across: step.map_or_else(Default::default, |step| {
                situation::across(ground, self.settings.seat.oven.as_ref(), step, now)
            }),
        };
        situation::cautions_of(work, &around)
    }

    /// What goes on that joint out of my bottles, in today's shop.
    pub fn bond(&self, joint: &Application, activator: bool, now: Now) -> BondAnswer {
        let around = Surroundings {
            bottles: &self.settings.bottles,
            activator,
            today: now.day,
            shop_c: self
                .settings
                .temperature_at(now.at)
                .map(|t| t.get::<degree_celsius>()),
        };
        bond(joint, around)
    }

    /// The wrench of mine that can be set to what the next fastener of that step asks, where the one in the
    /// hand can't: its place and its name, and the name of the one in the hand.
    pub fn wrench_instead(&self, step: StepId) -> Option<(usize, String, String)> {
        let step = self.step(step)?;
        let next = next_fastener(step, &self.progress(step.id))?;
        let PassAnswer::Torque(answer) = self.pass_answer(step, next.pass, next.place)? else {
            return None;
        };
        let at = answer.take.filter(|_| answer.setting.is_none())?;
        let name = |at: usize| self.settings.wrenches.get(at).map(|wrench| wrench.name.clone());
        Some((at, name(at)?, name(self.settings.in_hand)?))
    }

    /// What of the way from the oven to the seat comes before that step is done; none where nothing of it is
    /// heated or cooled, or the part is home.
    pub fn oven_next(&self, step: StepId, now: Moment) -> Option<OvenNext> {
        let found = self.step(step)?;
        let Work::Seat(seat) = &found.work else {
            return None;
        };
        let mine =
            |run: &OvenRun| run.step == Some(step) && run.job.is_none_or(|job| job == self.jobs.at_hand);
        match self.settings.seat.oven.filter(mine) {
            Some(run) if run.home => None,
            Some(_) => Some(OvenNext::Home),
            // What was read of it sits already.
            None if !self.progress(step).readings.is_empty() => None,
            None => {
                let answer = seat::answer(seat, self.settings.temperature_at(now)).ok()?;
                Some(OvenNext::Out(answer.followed().which, answer.window?))
            }
        }
    }

    /// What that pass of a fasten step asks of the fastener at that place on the wrench in the hand, with the
    /// running torque measured and the adapter put on for this step.
    pub fn pass_answer(&self, step: &Step, pass: usize, place: usize) -> Option<PassAnswer> {
        let Work::Fasten(fasten) = &step.work else {
            return None;
        };
        let s = &self.settings;
        let running = running(&self.progress(step.id));
        let adapter = s.desk.adapter().filter(|_| s.desk.from == Some(step.id));
        Some(pass_answer(
            &fasten.at(place),
            pass,
            running,
            &s.wrenches,
            s.in_hand,
            adapter,
        ))
    }
}
