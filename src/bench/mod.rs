//! The app's state: signals for the views to read, commands for them to send.
//!
//! Data flows one way: touch → command → state → view. Every command that changes something keeps it
//! at once and leaves a way back on the trail.

mod bottles;
mod clocks;
mod commands;
mod desk;
mod files;
mod jobs;
mod keep;
mod lift;
mod plan;
mod seat;
mod settings;
mod tamper;
mod trail;
mod work;
mod wrenches;

pub use clocks::Ring;
pub use commands::{Refused, WrenchSet};
pub use desk::{Desk, typed_words};
pub use files::{BackupError, Incoming, Restore};
pub use jobs::JobRefused;
pub use keep::{JobHead, Shelves};
pub use lift::LiftBench;
pub use seat::SeatBench;
pub use settings::{Look, Settings};
pub use trail::{Action, Inverse};
pub use work::{ReadWith, entry_words};

use crate::device::release::Kept;
use crate::device::wake_lock::Awake;
use crate::job::clock::CureClock;
use crate::job::gate::{Ground, Wait, waits};
use crate::job::progress::Progress;
use crate::job::record::Record;
use crate::job::sheet::{JobId, Sheet, Step};
use crate::trade::moment::Moment;
use reactive_graph::owner::{LocalStorage, StoredValue, expect_context};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
use tamper::Watched;

/// Something the app has to say: shown until it is put away.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// The sentence.
    pub words: String,
    /// Something went wrong, rather than merely happened.
    pub trouble: bool,
}

/// The app's state. Copy it freely: it holds handles.
#[derive(Clone, Copy)]
pub struct Bench {
    /// The jobs on this bench.
    pub jobs: RwSignal<Vec<JobHead>>,
    /// Which job is at hand.
    pub job: RwSignal<JobId>,
    /// Its sheet.
    pub sheet: RwSignal<Sheet>,
    /// Its record.
    pub record: RwSignal<Record>,
    /// How far it is.
    pub progress: RwSignal<Progress>,
    /// Every cure clock.
    pub clocks: RwSignal<Vec<CureClock>>,
    /// Wrenches, shop, ratings, look.
    pub settings: RwSignal<Settings>,
    /// The time, as of the last tick.
    pub now: RwSignal<Moment>,
    /// What the app has to say.
    pub said: RwSignal<Vec<Said>>,
    /// The last actions, each with its way back.
    pub trail: RwSignal<Vec<Action>>,
    /// Whether the release is kept for offline use.
    pub kept: RwSignal<Kept>,
    /// Whether the display stays awake.
    pub awake: RwSignal<Awake>,
    /// Clocks that want to be heard.
    pub ringing: RwSignal<Vec<Ring>>,
    /// The phone's clock has jumped so far ahead (ms), and the user has not said which is right.
    pub doubt: RwSignal<Option<i64>>,
    watched: StoredValue<Option<Watched>, LocalStorage>,
    shelves: StoredValue<Shelves, LocalStorage>,
    /// The phone's clock; [`Bench::time`] is ours.
    clock: fn() -> Moment,
}

impl Bench {
    /// The bench as it was left, or a first one with the example job.
    pub fn open(shelves: Shelves, clock: fn() -> Moment) -> Self {
        let left = shelves.read();
        let bench = Self {
            jobs: RwSignal::new(left.jobs),
            job: RwSignal::new(left.job),
            progress: RwSignal::new(Progress::of(&left.record)),
            sheet: RwSignal::new(left.sheet),
            record: RwSignal::new(left.record),
            clocks: RwSignal::new(left.clocks),
            settings: RwSignal::new(left.settings),
            now: RwSignal::new(clock()),
            said: RwSignal::new(left.said),
            trail: RwSignal::new(Vec::new()),
            kept: RwSignal::new(Kept::Asking),
            awake: RwSignal::new(Awake::NotAsked),
            ringing: RwSignal::new(Vec::new()),
            doubt: RwSignal::new(None),
            watched: StoredValue::new_local(None),
            shelves: StoredValue::new_local(shelves),
            clock,
        };
        bench.tick();
        bench
    }

    /// The bench the views share.
    pub fn here() -> Self {
        expect_context()
    }

    /// Takes the time anew.
    pub fn tick(self) {
        let now = self.time();
        if self.now.get_untracked() != now {
            self.now.set(now);
            self.ring_due(now);
            self.note_seen(now);
        }
    }

    /// Says something until it is put away; the same sentence isn't stacked.
    pub fn say(self, words: impl Into<String>, trouble: bool) {
        let said = Said {
            words: words.into(),
            trouble,
        };
        self.said.update(|all| {
            all.retain(|old| *old != said);
            all.push(said);
        });
    }

    /// What `step` waits for now; reads the signals, so a view that calls it follows them.
    pub fn waits(self, step: &Step) -> Vec<Wait> {
        let now = self.now.get();
        self.ground(|ground| waits(ground, step, now))
    }

    /// Shows `look` everything that gates and overviews go by; reads the signals.
    pub fn ground<T>(self, look: impl FnOnce(Ground<'_>) -> T) -> T {
        let job = self.job.get();
        self.sheet.with(|sheet| {
            self.progress.with(|progress| {
                self.clocks.with(|clocks| {
                    self.settings.with(|settings| {
                        look(Ground {
                            job,
                            sheet,
                            progress,
                            clocks,
                            shop: &settings.shop,
                        })
                    })
                })
            })
        })
    }
}
