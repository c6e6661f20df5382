//! Our time: the phone's clock, held where it jumped until the user says which is right.

use super::{Bench, Intent};
use crate::job::clock::CureClock;
use crate::job::record::PhoneClock;
use crate::job::tamper::{Doubt, Look, Watch, WatchKept, let_pass_ms};
use crate::trade::cure::{Milestone, ShopHistory};
use crate::trade::moment::Moment;
use reactive_graph::prelude::*;

/// Our time is written down this often, so that a clock set back over a reload is noticed.
const SEEN_EVERY_MS: i64 = 60_000;

/// What the user says of the phone's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Judged {
    /// It is right, and was.
    Right,
    /// It is right now, and was wrong when what cures was put on.
    RightNow,
    /// It is wrong.
    Wrong,
}

/// The watch and the clock it goes by.
pub struct Watched {
    watch: Watch,
    own: fn() -> f64,
    /// As it is stored.
    pub(super) kept: WatchKept,
}

impl Bench {
    /// Puts the phone's clock under watch against the page's own (milliseconds since it began).
    pub fn watch_clock(self, own: fn() -> f64) {
        let wall = (self.clock)();
        let mut kept = self.shelves.with_value(|shelves| shelves.read_watch());
        let last = self.last_known();
        if let (Moment(i64::MIN), Some(last)) = (kept.seen, last) {
            // A watch that was lost vouches for nothing.
            (kept.seen, kept.unvouched_ms) = (last, i64::MAX);
        }
        // What went by before the oldest of what cures went on is no matter.
        let oldest = self.oldest_cure(kept.seen);
        let since_ms = oldest.map_or(0, |oldest| kept.seen.0.saturating_sub(oldest.0));
        kept.unvouched_ms = kept.unvouched_ms.min(since_ms.max(0));
        let ripens = |from, to| self.ripens(from, to, Moment(i64::MAX));
        let (watch, look) = Watch::begin(&kept, last, wall, own(), &ripens);
        self.watched.set_value(Some(Watched { watch, own, kept }));
        self.heed(look);
        self.doubt.set(self.doubted());
        self.tick();
    }

    /// What the record knows of our time: the last line's, as lines of before may lie ahead where our time
    /// went back. Without a line the last start.
    fn last_known(self) -> Option<Moment> {
        let line = self
            .record
            .with_untracked(|record| record.entries().last().map(|entry| entry.at));
        line.or_else(|| {
            self.clocks
                .with_untracked(|clocks| clocks.iter().map(|clock| clock.started).max())
        })
    }

    /// Our time now.
    pub fn time(self) -> Moment {
        let wall = (self.clock)();
        let looked = self.watched.try_update_value(|watched| {
            let watched = watched.as_mut()?;
            let own_ms = (watched.own)();
            // Where nothing cures, a clock ahead shortens nothing: a sleep need not be asked about.
            let look = watched.watch.look(wall, own_ms);
            let before = watched.watch.anchor();
            let ripens = |from, to| self.ripens(from, to, before);
            if let Some(held) = watched.watch.hold_back(look.now, own_ms, &ripens) {
                return Some(held);
            }
            if look.jumped.is_some_and(|ahead| ahead > 0) && !self.cures() {
                watched.watch.phone_is_right(wall, own_ms);
                return Some(Look {
                    now: wall,
                    jumped: None,
                    back_in_step: false,
                });
            }
            Some(look)
        });
        self.tell_doubt();
        let Some(look) = looked.flatten() else {
            return wall;
        };
        self.heed(look);
        look.now
    }

    /// By how much, ms, the phone's clock is ahead of ours while nobody has said which is right.
    pub fn doubted_ms(self) -> i64 {
        self.doubt.track();
        self.doubted().map_or(0, |doubt| doubt.ahead_ms)
    }

    /// How far the phone's clock is ahead of ours.
    pub fn phone_ahead_ms(self) -> i64 {
        self.watched
            .with_value(|watched| watched.as_ref().map_or(0, |watched| watched.watch.held_ms()))
    }

    /// The user says which clock is right.
    pub fn judge_clock(self, judged: Judged) {
        let wall = (self.clock)();
        let mut ahead_ms = self.phone_ahead_ms();
        self.watched.update_value(|watched| {
            let Some(watched) = watched else { return };
            if judged == Judged::RightNow {
                // Nor did that pass, for all that is known of a clock that was wrong.
                ahead_ms = ahead_ms.saturating_add(watched.watch.unvouched_ms());
            }
            if judged != Judged::Wrong {
                watched.watch.phone_is_right(wall, (watched.own)());
                // A clock that was wrong before may have seen what is still to come.
                watched.kept.seen = wall;
            } else {
                watched.watch.phone_is_wrong();
            }
        });
        self.doubt.set(None);
        self.tell_doubt();
        let line = match judged {
            Judged::Right => PhoneClock::Right,
            Judged::RightNow => PhoneClock::WrongBefore(ahead_ms),
            Judged::Wrong => PhoneClock::Wrong,
        };
        // Starts that move on do so before our time is kept and rings, those that move back after it: a crash
        // between the two makes nothing ripe.
        let first = ahead_ms > 0;
        if first {
            self.note_clock(line);
        }
        self.tick();
        // Both copies: what was kept before the answer doesn't go with what it moved.
        self.keep_watch();
        self.keep_watch();
        if !first {
            self.note_clock(line);
        }
    }

    /// The state hears of the phone's clock while nobody has said which is right.
    fn tell_doubt(self) {
        let doubted_ms = self.doubted_ms();
        if self.state.with(|state| state.doubted_ms != doubted_ms)
            && let Ok(mut state) = self.state.get().try_borrow_mut()
        {
            state.doubted_ms = doubted_ms;
        }
    }

    /// Whether a joint whose compound went on before `on_before` comes to a mark between two instants, by more
    /// than is let pass of the wait for it.
    fn ripens(self, from: Moment, to: Moment, on_before: Moment) -> bool {
        let within = |clock: &CureClock, milestone, shop: &ShopHistory| {
            let Ok(done) = clock.reached_at(milestone, shop) else {
                return false;
            };
            let let_pass = let_pass_ms(done.latest.0.saturating_sub(clock.started.0));
            from.0.saturating_add(let_pass) < done.latest.0 && done.latest <= to
        };
        let waited_for = || Milestone::ALL.into_iter().filter(|mark| !mark.is_deadline());
        self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                let mut on = clocks
                    .iter()
                    .filter(|clock| clock.may_count() && clock.started < on_before);
                on.any(|clock| waited_for().any(|mark| within(clock, mark, &settings.shop)))
            })
        })
    }

    /// Writes our time down now and then.
    pub(super) fn note_seen(self, now: Moment) {
        let late = self.watched.try_update_value(|watched| {
            let watched = watched.as_mut()?;
            let late = now.0.saturating_sub(watched.kept.seen.0) >= SEEN_EVERY_MS;
            Some(late)
        });
        if late.flatten() == Some(true) {
            self.keep_watch();
        }
    }

    /// Keeps the watch as it stands.
    pub(super) fn keep_watch(self) {
        let now = self.now.get_untracked();
        let kept = self.watched.try_update_value(|watched| {
            let watched = watched.as_mut()?;
            watched.kept.seen = watched.kept.seen.max(now);
            watched.kept.held_ms = watched.watch.held_ms();
            let doubt = watched.watch.doubt();
            watched.kept.asked = doubt.is_some();
            watched.kept.closed = doubt.is_some_and(|doubt| doubt.closed);
            watched.kept.unvouched_ms = watched.watch.unvouched_ms();
            Some(watched.kept.clone())
        });
        if let Some(kept) = kept.flatten() {
            self.kept_or_said(self.shelves.with_value(|shelves| shelves.keep_watch(&kept)));
        }
    }

    fn doubted(self) -> Option<Doubt> {
        self.watched
            .with_value(|watched| watched.as_ref().and_then(|watched| watched.watch.doubt()))
    }

    /// A jump is kept, recorded and put before the user; clocks in step again are said.
    fn heed(self, look: Look) {
        if look.jumped.is_none() && !look.back_in_step {
            return;
        }
        self.doubt.set(self.doubted());
        // Held back it has not been seen to go so far.
        self.watched.update_value(|watched| {
            if let Some(watched) = watched {
                watched.kept.seen = watched.kept.seen.min(look.now);
            }
        });
        if look.now < self.now.get_untracked() {
            self.now.set(look.now);
        }
        self.keep_watch();
        if let Some(ahead) = look.jumped {
            self.note_clock(match self.doubted() {
                Some(Doubt { closed: true, .. }) => PhoneClock::Closed(ahead),
                _ => PhoneClock::Jumped(ahead),
            });
        } else {
            self.note_clock(PhoneClock::InStep);
        }
    }

    /// A line in the record that belongs to no step.
    fn note_clock(self, seen: PhoneClock) {
        self.tell(self.send(Intent::PhoneClock(seen)));
    }

    /// Whether any joint is still curing.
    fn cures(self) -> bool {
        self.oldest_cure(self.now.get_untracked()).is_some()
    }

    /// When the oldest went on of what had not cured at `now`.
    fn oldest_cure(self, now: Moment) -> Option<Moment> {
        self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                let curing = clocks
                    .iter()
                    .filter(|clock| clock.may_count() && !clock.ripe(&settings.shop, now));
                curing.map(|clock| clock.started).min()
            })
        })
    }
}
