//! The phone's clock under watch: against the page's own clock, which nobody can set, and against
//! what was last seen and recorded.
//!
//! A jump is never taken by itself: our time goes on by the page's own clock until the user says which
//! is right. A page's own clock may stand still while a phone sleeps, so a sleep looks like a clock set
//! forward; only the user can tell. While the app is closed there is no clock but the phone's: what it says
//! went by is added up, and asked about once, when a cure would be over by it and not without.

use super::clock::{ClockId, is_nothing};
use super::date::span_words;
use crate::trade::cure::Milestone;
use crate::trade::moment::Moment;
use serde::{Deserialize, Serialize};

/// Clocks that differ by less are in step: the phone's is corrected over the network now and then.
pub const IN_STEP_MS: i64 = 120_000;

/// What is kept of the watch over a reload.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct WatchKept {
    /// The latest instant known to have passed.
    pub seen: Moment,
    /// How far the phone's clock is held to be ahead.
    pub held_ms: i64,
    /// The user has not said yet which is right.
    pub asked: bool,
    /// What is asked is whether the time passed in which the app was closed.
    pub closed: bool,
    /// What went by, ms, while the app was closed, and nobody has vouched for yet.
    #[serde(skip_serializing_if = "is_nothing")]
    pub unvouched_ms: i64,
    /// The furthest mark of each clock that was rung for.
    pub rung: Vec<(ClockId, Milestone)>,
}

impl Default for WatchKept {
    fn default() -> Self {
        Self {
            seen: Moment(i64::MIN),
            held_ms: 0,
            asked: false,
            closed: false,
            unvouched_ms: 0,
            rung: Vec::new(),
        }
    }
}

/// The watch.
#[derive(Debug, Clone, PartialEq)]
pub struct Watch {
    /// Our time when the page's own clock stood at `own_ms`.
    anchor: Moment,
    own_ms: f64,
    held_ms: i64,
    asked: bool,
    closed: bool,
    unvouched_ms: i64,
}

/// What the user has yet to judge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doubt {
    /// How far the phone's clock is ahead of ours, ms; behind is negative.
    pub ahead_ms: i64,
    /// It is so far ahead since the app was closed.
    pub closed: bool,
}

/// So much time away, in one piece or many, is not asked about where a wait of `wait_ms` would be over by it:
/// phones close pages all day. A twentieth of the wait, half an hour at most (common practice, no source), and a
/// minute at least: what was seen is written down each minute, and a page loaded anew has not been away.
pub fn let_pass_ms(wait_ms: i64) -> i64 {
    (wait_ms / 20).clamp(60_000, 30 * 60_000)
}

/// What a look at the clocks shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Our time.
    pub now: Moment,
    /// The phone's clock has just jumped by so much (ahead is positive).
    pub jumped: Option<i64>,
    /// It is in step again by itself.
    pub back_in_step: bool,
}

impl Watch {
    /// Begins with the page: `wall` is the phone's clock, `own_ms` the page's own, `last_entry` the
    /// latest instant on record; `ripens` tells whether a cure comes to a mark between two instants, by more
    /// than [`let_pass_ms`].
    pub fn begin(
        kept: &WatchKept,
        last_entry: Option<Moment>,
        wall: Moment,
        own_ms: f64,
        ripens: &dyn Fn(Moment, Moment) -> bool,
    ) -> (Self, Look) {
        let ours = Moment(wall.0.saturating_sub(kept.held_ms));
        // A kept watch has seen the record too; later entries than it saw are from the last minute.
        let seen = match kept.seen {
            Moment(i64::MIN) => last_entry.unwrap_or(kept.seen),
            seen => seen,
        };
        let behind = seen.0.saturating_sub(IN_STEP_MS) > ours.0;
        let away_ms = match seen {
            Moment(i64::MIN) => 0,
            seen => ours.0.saturating_sub(seen.0).max(0),
        };
        let mut watch = Self {
            anchor: if behind { seen } else { ours },
            own_ms,
            held_ms: if behind {
                wall.0.saturating_sub(seen.0)
            } else {
                kept.held_ms
            },
            asked: behind || kept.asked,
            closed: kept.asked && kept.closed && !behind,
            // Asked already or not: what went by since it was asked nobody vouched for either.
            unvouched_ms: kept.unvouched_ms.saturating_add(away_ms),
        };
        let look = Look {
            now: watch.anchor,
            jumped: behind.then_some(watch.held_ms),
            back_in_step: false,
        };
        // A clock set back is asked about as such; what went by unvouched waits for that answer.
        let held = match behind {
            true => None,
            false => watch.hold_back(watch.anchor, own_ms, ripens),
        };
        (watch, held.unwrap_or(look))
    }

    /// Where a cure would be over at `now` by time that nobody vouched for, our time goes back by all of that
    /// until the user says whether it passed.
    pub fn hold_back(
        &mut self,
        now: Moment,
        own_ms: f64,
        ripens: &dyn Fn(Moment, Moment) -> bool,
    ) -> Option<Look> {
        let vouched = Moment(now.0.saturating_sub(self.unvouched_ms));
        if self.unvouched_ms <= 0 || !ripens(vouched, now) {
            return None;
        }
        *self = Self {
            anchor: vouched,
            own_ms,
            held_ms: self.held_ms.saturating_add(self.unvouched_ms),
            asked: true,
            // Where anything was held before, not all of it passed with the app closed.
            closed: self.held_ms == 0,
            unvouched_ms: 0,
        };
        Some(Look {
            now: vouched,
            jumped: Some(self.held_ms),
            back_in_step: false,
        })
    }

    /// Looks at both clocks.
    pub fn look(&mut self, wall: Moment, own_ms: f64) -> Look {
        let passed_ms = (own_ms - self.own_ms).max(0.0).round() as i64;
        let by_own = self.anchor.0.saturating_add(passed_ms);
        let gap_ms = wall.0.saturating_sub(by_own);
        let mut look = Look {
            now: Moment(by_own),
            jumped: None,
            back_in_step: false,
        };
        if (gap_ms - self.held_ms).abs() <= IN_STEP_MS {
            look.now = Moment(wall.0.saturating_sub(self.held_ms));
        } else if gap_ms.abs() <= IN_STEP_MS {
            (self.held_ms, self.asked, self.closed) = (0, false, false);
            look.now = wall;
            look.back_in_step = true;
        } else {
            (self.held_ms, self.asked, self.closed) = (gap_ms, true, false);
            look.jumped = Some(gap_ms);
        }
        look
    }

    /// What went by, ms, while the app was closed, and nobody has vouched for.
    pub fn unvouched_ms(&self) -> i64 {
        self.unvouched_ms
    }

    /// Our time when the page began, or when the user last said which clock is right.
    pub fn anchor(&self) -> Moment {
        self.anchor
    }

    /// How far the phone's clock is held to be ahead of ours; behind is negative.
    pub fn held_ms(&self) -> i64 {
        self.held_ms
    }

    /// The jump the user has yet to judge.
    pub fn doubt(&self) -> Option<Doubt> {
        self.asked.then_some(Doubt {
            ahead_ms: self.held_ms,
            closed: self.closed,
        })
    }

    /// The user says the phone's clock is right: our time is the phone's from now on.
    pub fn phone_is_right(&mut self, wall: Moment, own_ms: f64) {
        *self = Self {
            anchor: wall,
            own_ms,
            held_ms: 0,
            asked: false,
            closed: false,
            unvouched_ms: 0,
        };
    }

    /// The user says the phone's clock is wrong: our time goes on as it is held.
    pub fn phone_is_wrong(&mut self) {
        (self.asked, self.closed) = (false, false);
    }
}

impl Doubt {
    /// It in words; `ours` and `phones` are what our time and the phone's clock are called.
    pub fn words(self, ours: &str, phones: &str) -> String {
        let span = span_words(self.ahead_ms);
        match self.closed {
            true => format!(
                "Halfcase is sure of {ours}, the phone showed {phones}: did {span} pass with Halfcase closed? A cure would be over by that."
            ),
            false => jump_words(self.ahead_ms),
        }
    }
}

/// Time that went by while the app was closed, in words for the record.
pub fn closed_words(ahead_ms: i64) -> String {
    format!(
        "By the phone’s clock {} went by while Halfcase was closed, and a cure would be over by that.",
        span_words(ahead_ms)
    )
}

/// A jump in words.
pub fn jump_words(ahead_ms: i64) -> String {
    let span = span_words(ahead_ms);
    if ahead_ms >= 0 {
        format!(
            "The phone’s clock has gone {span} ahead of this page’s own: the phone slept, or its clock was set."
        )
    } else {
        format!(
            "The phone’s clock is {span} behind what was last seen here: it was set back, or was wrong before."
        )
    }
}
