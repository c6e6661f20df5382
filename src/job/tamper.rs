//! The phone's clock under watch: against the page's own clock, which nobody can set, and against
//! what was last seen and recorded.
//!
//! A jump is never taken by itself: our time goes on by the page's own clock until the user says which
//! is right. A page's own clock may stand still while a phone sleeps, so a sleep looks like a clock set
//! forward; only the user can tell. While the app is closed there is no clock but the phone's: time that
//! would ripen a cure then is asked about once.

use super::clock::ClockId;
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
}

/// What the user has yet to judge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doubt {
    /// How far the phone's clock is ahead of ours, ms; behind is negative.
    pub ahead_ms: i64,
    /// It is so far ahead since the app was closed.
    pub closed: bool,
}

/// Shorter times away are not asked about: no cure is misled by much, and phones close pages all day.
const AWAY_MS: i64 = 30 * 60_000;

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
    /// latest instant on record; `ripens` tells whether a cure becomes ripe between two instants.
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
        let away = seen.0 > i64::MIN && ours.0.saturating_sub(seen.0) >= AWAY_MS;
        // Asked already or not: what went by since it was asked nobody vouched for either.
        let closed = away && ripens(seen, ours);
        let hold = behind || closed;
        let watch = Self {
            anchor: if hold { seen } else { ours },
            own_ms,
            held_ms: if hold {
                wall.0.saturating_sub(seen.0)
            } else {
                kept.held_ms
            },
            asked: hold || kept.asked,
            closed: closed || kept.asked && kept.closed && !behind,
        };
        let look = Look {
            now: watch.anchor,
            jumped: hold.then_some(watch.held_ms),
            back_in_step: false,
        };
        (watch, look)
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
        };
    }

    /// The user says the phone's clock is wrong: our time goes on as it is held.
    pub fn phone_is_wrong(&mut self) {
        (self.asked, self.closed) = (false, false);
    }
}

impl Doubt {
    /// It in words.
    pub fn words(self) -> String {
        match self.closed {
            true => closed_words(self.ahead_ms),
            false => jump_words(self.ahead_ms),
        }
    }
}

/// Time that went by while the app was closed, in words.
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
