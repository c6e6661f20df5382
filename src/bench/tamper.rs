//! Our time: the phone's clock, held where it jumped until the user says which is right.

use super::{Bench, Intent};
use crate::job::clock::CureClock;
use crate::job::record::PhoneClock;
use crate::job::tamper::{Doubt, Look, Watch, WatchKept};
use crate::trade::cure::{Milestone, ShopHistory};
use crate::trade::moment::Moment;
use reactive_graph::graph::untrack;
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
        let kept = self.shelves.with_value(|shelves| shelves.read_watch());
        let last_entry = self
            .record
            .with_untracked(|record| record.entries().iter().map(|entry| entry.at).max());
        let last_start = self
            .clocks
            .with_untracked(|clocks| clocks.iter().map(|clock| clock.started).max());
        let last_entry = last_entry.max(last_start);
        let (watch, look) = Watch::begin(&kept, last_entry, (self.clock)(), own(), &|from, to| {
            self.ripens(from, to)
        });
        self.watched.set_value(Some(Watched { watch, own, kept }));
        self.heed(look);
        self.doubt.set(self.doubted());
        self.tick();
    }

    /// Our time now.
    pub fn time(self) -> Moment {
        let wall = (self.clock)();
        let looked = self.watched.try_update_value(|watched| {
            let watched = watched.as_mut()?;
            let own_ms = (watched.own)();
            // Where nothing cures, a clock ahead shortens nothing: a sleep need not be asked about.
            let look = watched.watch.look(wall, own_ms);
            if look.jumped.is_some_and(|ahead| ahead > 0) && !untrack(|| self.cures()) {
                watched.watch.phone_is_right(wall, own_ms);
                return Some(Look {
                    now: wall,
                    jumped: None,
                    back_in_step: false,
                });
            }
            Some(look)
        });
        let Some(look) = looked.flatten() else {
            return wall;
        };
        self.heed(look);
        look.now
    }

    /// How far the phone's clock is ahead of ours.
    pub fn phone_ahead_ms(self) -> i64 {
        self.watched
            .with_value(|watched| watched.as_ref().map_or(0, |watched| watched.watch.held_ms()))
    }

    /// The user says which clock is right.
    pub fn judge_clock(self, judged: Judged) {
        let wall = (self.clock)();
        let ahead_ms = self.phone_ahead_ms();
        self.watched.update_value(|watched| {
            let Some(watched) = watched else { return };
            if judged != Judged::Wrong {
                watched.watch.phone_is_right(wall, (watched.own)());
                // A clock that was wrong before may have seen what is still to come.
                watched.kept.seen = wall;
            } else {
                watched.watch.phone_is_wrong();
            }
        });
        self.doubt.set(None);
        // Our time moves first, so that what is kept as seen is no later than it.
        if judged == Judged::RightNow {
            // Before anything rings by the time that never passed.
            self.note_clock(PhoneClock::WrongBefore(ahead_ms));
        }
        self.tick();
        self.keep_watch();
        match judged {
            Judged::Right => self.note_clock(PhoneClock::Right),
            Judged::Wrong => self.note_clock(PhoneClock::Wrong),
            Judged::RightNow => {}
        }
    }

    /// Whether a joint comes as far as some step waits for, between two instants.
    fn ripens(self, from: Moment, to: Moment) -> bool {
        let within = |clock: &CureClock, milestone, shop: &ShopHistory| {
            let done = clock.reached_at(milestone, shop);
            done.is_ok_and(|done| from < done.latest && done.latest <= to)
        };
        self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                let mut running = clocks.iter().filter(|clock| clock.ended.is_none());
                running.any(|clock| {
                    [Milestone::Handling, Milestone::FitForOil, Milestone::FullCure]
                        .into_iter()
                        .any(|milestone| within(clock, milestone, &settings.shop))
                })
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
        let now = self.now.get();
        self.settings.with(|settings| {
            self.clocks.with(|clocks| {
                clocks.iter().any(|clock| {
                    clock.ended.is_none()
                        && !matches!(
                            clock.standing(&settings.shop, now),
                            crate::job::clock::Standing::Ripe { .. }
                        )
                })
            })
        })
    }
}
