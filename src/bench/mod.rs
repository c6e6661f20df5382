//! The app's state as signals for the views to read, the keeping, and the phone around it. No rules:
//! what a touch changes is decided by [`State::apply`].
//!
//! Data flows one way: touch → [`Intent`] → transaction → state and storage → view.

mod clocks;
mod files;
mod find;
mod seen;
mod send;
mod start;
mod tamper;
mod waiting;

pub use crate::job::desk::{Desk, remembered, typed_words};
pub use crate::job::keep::{Said, Shelves};
pub use crate::job::settings::{LiftBench, Look, SeatBench, Settings};
pub use crate::job::state::{Ask, Intent, JobHead, JobRefused, Now, OvenNext, ReadWith, Refused, Restore};
pub use crate::job::tamper::Doubt;
pub use clocks::Ring;
pub use files::{BackupError, Incoming};
use seen::Held;
pub use seen::Seen;

use crate::device::journal::Safe;
use crate::device::release::Kept;
use crate::device::wake_lock::Awake;
use crate::job::carbon::Back;
use crate::job::clock::CureClock;
use crate::job::figures::Figures;
use crate::job::gate::{Ground, Wait, waits};
use crate::job::overview::{StepState, standing};
use crate::job::progress::Progress;
use crate::job::record::Record;
use crate::job::sheet::{JobId, Sheet, Step, StepId};
use crate::job::state::{State, Touched};
use crate::trade::moment::Moment;
use crate::trade::quantity::choose;
use reactive_graph::owner::{LocalStorage, StoredValue, expect_context};
use reactive_graph::prelude::*;
use reactive_graph::signal::RwSignal;
pub use tamper::Judged;
use tamper::Watched;

/// The app's state. Copy it freely: it holds handles.
#[derive(Clone, Copy)]
pub struct Bench {
    /// The jobs on this bench.
    pub jobs: Seen<Vec<JobHead>>,
    /// Which job is at hand.
    pub job: Seen<JobId>,
    /// Its sheet.
    pub sheet: Seen<Sheet>,
    /// Its record.
    pub record: Seen<Record>,
    /// How far it is.
    pub progress: Seen<Progress>,
    /// Every cure clock.
    pub clocks: Seen<Vec<CureClock>>,
    /// Wrenches, shop, ratings, look.
    pub settings: Seen<Settings>,
    /// The time, as of the last tick.
    pub now: RwSignal<Moment>,
    /// What the app has to say.
    pub said: RwSignal<Vec<Said>>,
    /// Whether the release is kept for offline use.
    pub kept: RwSignal<Kept>,
    /// What is new in a release that waits, a line each.
    pub news: RwSignal<String>,
    /// Something is not kept for want of room, or because the browser refused.
    pub not_kept: RwSignal<bool>,
    /// Whether the last change outlives the browser itself.
    pub safe: RwSignal<Safe>,
    /// Whether the display stays awake.
    pub awake: RwSignal<Awake>,
    /// What was last done or undone, for those who hear the page.
    pub heard: RwSignal<String>,
    /// What is being looked for in every job: it stays while the app is open, and is not kept.
    pub sought: RwSignal<String>,
    /// Clocks that want to be heard.
    pub ringing: RwSignal<Vec<Ring>>,
    /// The phone's clock has jumped, and the user has not said which is right.
    pub doubt: RwSignal<Option<Doubt>>,
    state: Held,
    /// Follows every transaction: what undo would take back.
    trail: Seen<State>,
    /// The example is shown, of which nothing is kept.
    example: RwSignal<bool>,
    aside: StoredValue<Option<start::Aside>, LocalStorage>,
    watched: StoredValue<Option<Watched>, LocalStorage>,
    shelves: StoredValue<Shelves, LocalStorage>,
    /// The phone's clock; [`Bench::time`] is ours.
    clock: fn() -> Moment,
    /// Where an instant stands in the phone's calendar.
    calendar_at: StoredValue<fn(Moment) -> Now, LocalStorage>,
}

impl Bench {
    /// The bench as it was left, or one on which no job was begun.
    pub fn open(shelves: Shelves, clock: fn() -> Moment) -> Self {
        let left = shelves.read();
        choose(left.state.settings.decimal);
        let state = Held::new(left.state);
        Self {
            jobs: Seen::new(state, |state| &state.jobs.heads),
            job: Seen::new(state, |state| &state.jobs.at_hand),
            sheet: Seen::new(state, |state| &state.job().sheet),
            record: Seen::new(state, |state| &state.job().record),
            progress: Seen::new(state, |state| &state.job().progress),
            clocks: Seen::new(state, |state| &state.clocks),
            settings: Seen::new(state, |state| &state.settings),
            now: RwSignal::new(clock()),
            said: RwSignal::new(left.said),
            kept: RwSignal::new(Kept::Asking),
            news: RwSignal::new(String::new()),
            not_kept: RwSignal::new(false),
            safe: RwSignal::new(Safe::Unsure),
            awake: RwSignal::new(Awake::NotAsked),
            heard: RwSignal::new(String::new()),
            sought: RwSignal::new(String::new()),
            ringing: RwSignal::new(Vec::new()),
            doubt: RwSignal::new(None),
            state,
            trail: Seen::new(state, |state| state),
            example: RwSignal::new(false),
            aside: StoredValue::new_local(None),
            watched: StoredValue::new_local(None),
            shelves: StoredValue::new_local(shelves),
            clock,
            calendar_at: StoredValue::new_local(Now::utc),
        }
    }

    /// The bench the views share.
    pub fn here() -> Self {
        expect_context()
    }

    /// Goes by the phone's own calendar from now on.
    pub fn follow_calendar(self, at: fn(Moment) -> Now) {
        self.calendar_at.set_value(at);
    }

    /// Where that step stands; followed.
    pub fn standing(self, step: StepId) -> StepState {
        self.look(|state, now| {
            let found = state.step(step);
            found.map_or(StepState::Open, |step| standing(state.ground(), step, now.at))
        })
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

    /// Our time and its place in the phone's calendar.
    pub fn right_now(self) -> Now {
        let at = self.time();
        let now = self.calendar_at.with_value(|calendar| calendar(at));
        let ahead_ms = self.phone_ahead_ms().max(0);
        Now { ahead_ms, ..now }
    }

    /// The time shown, and its place in the phone's calendar; followed.
    pub fn shown_now(self) -> Now {
        let at = self.now.get();
        self.calendar_at.with_value(|calendar| calendar(at))
    }

    /// Says something until it is put away; the same sentence isn't stacked.
    pub fn say(self, words: impl Into<String>, trouble: bool) {
        self.put(Said {
            words: words.into(),
            trouble,
            answer: false,
            room: false,
        });
    }

    /// Says why a touch did nothing, until another does something or another screen is up.
    pub fn refuse(self, words: impl Into<String>) {
        self.put(Said {
            words: words.into(),
            trouble: false,
            answer: true,
            room: false,
        });
    }

    /// Takes back what answered a touch that is over.
    pub fn answered(self) {
        let stale = self.said.with_untracked(|all| all.iter().any(|said| said.answer));
        if stale {
            self.said.update(|all| all.retain(|said| !said.answer));
        }
    }

    /// Says what a killed browser had not written and was put back.
    pub fn say_put_back(self, back: Back) {
        if !back.is_nothing() {
            self.say(back.to_string(), back.apart);
        }
    }

    fn put(self, said: Said) {
        self.said.update(|all| {
            all.retain(|old| *old != said);
            all.push(said);
        });
    }

    /// Shows the whole state, and what reads it here follows all of it, time included.
    pub fn look<T>(self, look: impl FnOnce(&State, Now) -> T) -> T {
        let now = self.shown_now();
        self.job.follow();
        self.sheet.follow();
        self.progress.follow();
        self.clocks.follow();
        self.settings.follow();
        self.state.with(|state| look(state, now))
    }

    /// What `step` waits for now; followed.
    pub fn waits(self, step: &Step) -> Vec<Wait> {
        self.look(|state, now| waits(state.ground(), step, now.at))
    }

    /// What our own figures are said in; followed.
    pub fn figures(self) -> Figures {
        self.settings.with(Settings::figures)
    }

    /// A sentence of ours in the user's units; followed.
    pub fn in_figures(self, words: &str) -> String {
        self.figures().said(words)
    }

    /// Shows `look` everything that gates and overviews go by; followed.
    pub fn ground<T>(self, look: impl FnOnce(Ground<'_>) -> T) -> T {
        self.look(|state, _| look(state.ground()))
    }

    /// What undo would take back, in words; followed.
    pub fn undoable(self) -> Option<String> {
        self.trail.with(State::undoable)
    }

    /// The last actions that undo would take back one by one, newest first; followed.
    pub fn history(self) -> Vec<(Moment, String)> {
        self.trail.with(State::history)
    }

    /// Tells what follows the parts a transaction touched.
    fn show(self, touched: Touched) {
        let Touched {
            jobs,
            sheet,
            record,
            clocks,
            settings,
        } = touched;
        // Before anything is drawn anew.
        if settings {
            choose(self.state.with(|state| state.settings.decimal));
        }
        if jobs {
            self.jobs.changed();
            self.job.changed();
        }
        if sheet {
            self.sheet.changed();
        }
        if record {
            self.record.changed();
            self.progress.changed();
        }
        if clocks {
            self.clocks.changed();
        }
        if settings {
            self.settings.changed();
        }
        self.trail.changed();
    }
}
