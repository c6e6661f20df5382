//! Clocks: rung for, and handed to the phone's calendar.

use super::Bench;
use crate::job::calendar::{alarms, calendar};
use crate::job::clock::ClockId;
use crate::trade::cure::Milestone;
use crate::trade::moment::Moment;
use crate::trade::quantity::kept;
use reactive_graph::prelude::*;

/// A clock that has reached a mark and wants to be heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ring {
    /// Which clock.
    pub clock: ClockId,
    /// The joint.
    pub name: String,
    /// What is reached.
    pub words: String,
    /// It is a deadline that has passed, and no wait that is over.
    pub late: bool,
    /// Since when.
    pub at: Moment,
}

impl Bench {
    /// What waits to be heard is heard.
    pub fn silence_all(self) {
        self.ringing.set(Vec::new());
    }

    pub(super) fn silence(self, id: ClockId) {
        self.ringing
            .update(|ringing| ringing.retain(|ring| ring.clock != id));
    }

    /// The calendar file of one clock, or of all that run.
    pub fn calendar(self, which: Option<ClockId>) -> String {
        kept(|| self.calendar_file(which))
    }

    fn calendar_file(self, which: Option<ClockId>) -> String {
        let now = self.time();
        let (ahead_ms, doubted_ms) = (self.phone_ahead_ms(), self.doubted_ms());
        let all = self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                clocks
                    .iter()
                    .filter(|clock| clock.ended.is_none() && which.is_none_or(|id| id == clock.id))
                    .flat_map(|clock| alarms(clock, &settings.shop, now, ahead_ms, doubted_ms))
                    .collect::<Vec<_>>()
            })
        });
        calendar(&all, Moment(now.0.saturating_add(ahead_ms)))
    }

    /// Rings for every mark reached since the last look, the furthest of each clock.
    pub(super) fn ring_due(self, now: Moment) {
        let (mut rung, doubted_ms) = (self.rung(), self.doubted_ms());
        let (mut due, mut taken_back) = (Vec::new(), Vec::new());
        self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                for clock in clocks.iter().filter(|clock| clock.ended.is_none()) {
                    let reached = clock.reached(&settings.shop, now, doubted_ms);
                    let before = rung.iter().find(|(id, _)| *id == clock.id).map(|(_, mark)| *mark);
                    let furthest = reached.map(|mark| mark.last);
                    if furthest == before {
                        continue;
                    }
                    rung.retain(|(id, _)| *id != clock.id);
                    rung.extend(furthest.map(|mark| (clock.id, mark)));
                    if furthest < before {
                        taken_back.push(clock.id);
                    }
                    // A shop found colder takes a mark back; that is no reason to ring.
                    due.extend(reached.filter(|mark| Some(mark.last) > before).map(|mark| Ring {
                        clock: clock.id,
                        name: clock.name.clone(),
                        words: mark.reached_words(),
                        late: mark.last.is_deadline(),
                        at: mark.at(),
                    }));
                }
                rung.retain(|(id, _)| {
                    clocks
                        .iter()
                        .any(|clock| clock.id == *id && clock.ended.is_none())
                });
            });
        });
        if rung == self.rung() {
            return;
        }
        self.keep_rung(rung);
        // Nor to go on ringing for what is still to come.
        if !taken_back.is_empty() {
            self.ringing
                .update(|ringing| ringing.retain(|ring| !taken_back.contains(&ring.clock)));
        }
        if !due.is_empty() {
            self.ringing.update(|ringing| {
                ringing.retain(|old| due.iter().all(|new| new.clock != old.clock));
                ringing.extend(due);
            });
        }
    }

    pub(super) fn rung(self) -> Vec<(ClockId, Milestone)> {
        self.watched
            .with_value(|watched| watched.as_ref().map_or_else(Vec::new, |w| w.kept.rung.clone()))
    }

    pub(super) fn keep_rung(self, rung: Vec<(ClockId, Milestone)>) {
        self.watched.update_value(|watched| {
            if let Some(watched) = watched {
                watched.kept.rung = rung;
            }
        });
        self.keep_watch();
    }

    /// The clocks that run.
    pub(super) fn running(self) -> Vec<ClockId> {
        self.clocks.with_untracked(|clocks| {
            let running = clocks.iter().filter(|clock| clock.ended.is_none());
            running.map(|clock| clock.id).collect()
        })
    }

    /// A clock that ran before and runs no more is not heard.
    pub(super) fn silence_but(self, running: &[ClockId], before: &[ClockId]) {
        let ended = before.iter().filter(|id| !running.contains(id));
        ended.for_each(|id| self.silence(*id));
    }
}
