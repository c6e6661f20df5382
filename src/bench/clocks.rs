//! Clocks: started, restarted, put away, rung for, and handed to the phone's calendar.

use super::{Bench, Inverse, Refused};
use crate::job::bonding::{BondAnswer, Surroundings, bond};
use crate::job::calendar::{alarms, calendar};
use crate::job::clock::{Bound, ClockId, CureClock, Ended};
use crate::job::record::Event;
use crate::job::sheet::Step;
use crate::trade::application::Application;
use crate::trade::caution::Caution;
use crate::trade::cure::{CureSpec, Milestone};
use crate::trade::moment::Moment;
use reactive_graph::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A clock that has reached a mark and wants to be heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ring {
    /// Which clock.
    pub clock: ClockId,
    /// The joint.
    pub name: String,
    /// What is reached.
    pub words: String,
    /// Since when.
    pub at: Moment,
}

impl Bench {
    /// What goes on that joint out of my bottles, in today's shop; follows the signals it reads.
    pub fn bond(self, joint: &Application, activator: bool, today: i64) -> BondAnswer {
        let now = self.now.get();
        self.settings.with(|settings| {
            let around = Surroundings {
                bottles: &settings.bottles,
                activator,
                today,
                shop_c: settings.temperature_at(now).map(|t| t.get::<degree_celsius>()),
            };
            bond(joint, around)
        })
    }

    /// The compound is on in that step: notes it and starts its clock.
    ///
    /// # Errors
    /// The step is shut, a stop-level caution is open, or the bottle taken may not be used.
    pub fn put_on(self, step: &Step, cautions: &[Caution], answer: &BondAnswer) -> Result<(), Refused> {
        self.ready(step, cautions)?;
        let Some(spec) = usable(answer)? else {
            return Ok(());
        };
        let bound = Bound {
            job: self.job.get_untracked(),
            step: step.id,
        };
        let id = self.begin_clock(&step.title, answer.compound(), spec, Some(bound));
        let event = Event::Applied {
            compound: answer.compound(),
            clock: id,
        };
        self.add(Some(step.id), event, format!("clock of “{}”", step.title));
        Ok(())
    }

    /// The compound is on a joint that belongs to no step.
    ///
    /// # Errors
    /// The bottle taken may not be used.
    pub fn put_on_free(self, name: &str, answer: &BondAnswer) -> Result<(), Refused> {
        let Some(spec) = usable(answer)? else {
            return Ok(());
        };
        let before = self.clocks.get_untracked();
        self.begin_clock(name, answer.compound(), spec, None);
        self.leave(format!("clock of “{name}”"), Inverse::Clocks(before));
        Ok(())
    }

    /// The joint was opened again and the compound is on anew: its clock ends, another begins.
    pub fn restart(self, id: ClockId) {
        let before = self.clocks.get_untracked();
        let Some(old) = before.iter().find(|clock| clock.id == id).cloned() else {
            return;
        };
        self.end(id, Ended::Reopened);
        let new = self.begin_clock(&old.name, old.compound.clone(), old.spec.clone(), old.bound);
        let words = format!("restart of “{}”", old.name);
        match old.bound {
            Some(bound) if bound.job == self.job.get_untracked() => {
                let remark = Event::Noted {
                    about: None,
                    words: "The joint was opened again.".to_owned(),
                };
                self.write(Some(bound.step), remark);
                let event = Event::Applied {
                    compound: old.compound,
                    clock: new,
                };
                self.add(Some(bound.step), event, words);
            }
            _ => self.leave(words, Inverse::Clocks(before)),
        }
    }

    /// Takes a clock out of sight: a finished one, or a free-standing one no longer wanted.
    pub fn put_away(self, id: ClockId) {
        let before = self.clocks.get_untracked();
        let Some(clock) = before.iter().find(|clock| clock.id == id) else {
            return;
        };
        let words = format!("putting away “{}”", clock.name);
        self.silence(id);
        self.end(id, Ended::PutAway);
        self.leave(words, Inverse::Clocks(before));
    }

    /// What waits to be heard is heard.
    pub fn silence_all(self) {
        self.ringing.set(Vec::new());
    }

    fn silence(self, id: ClockId) {
        self.ringing
            .update(|ringing| ringing.retain(|ring| ring.clock != id));
    }

    /// The calendar file of one clock, or of all that run.
    pub fn calendar(self, which: Option<ClockId>) -> String {
        let now = self.time();
        let ahead_ms = self.phone_ahead_ms();
        let all = self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                clocks
                    .iter()
                    .filter(|clock| clock.ended.is_none() && which.is_none_or(|id| id == clock.id))
                    .flat_map(|clock| alarms(clock, &settings.shop, now, ahead_ms))
                    .collect::<Vec<_>>()
            })
        });
        calendar(&all, Moment(now.0.saturating_add(ahead_ms)))
    }

    /// Rings for every mark reached since the last look, the furthest of each clock.
    pub(super) fn ring_due(self, now: Moment) {
        let mut rung = self.rung();
        let mut due = Vec::new();
        self.settings.with_untracked(|settings| {
            self.clocks.with_untracked(|clocks| {
                for clock in clocks.iter().filter(|clock| clock.ended.is_none()) {
                    let reached = clock.reached(&settings.shop, now);
                    let before = rung.iter().find(|(id, _)| *id == clock.id).map(|(_, mark)| *mark);
                    let furthest = reached.map(|mark| mark.last);
                    if furthest == before {
                        continue;
                    }
                    rung.retain(|(id, _)| *id != clock.id);
                    rung.extend(furthest.map(|mark| (clock.id, mark)));
                    // A shop found colder takes a mark back; that is no reason to ring.
                    due.extend(reached.filter(|mark| Some(mark.last) > before).map(|mark| Ring {
                        clock: clock.id,
                        name: clock.name.clone(),
                        words: mark.words(),
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
        if !due.is_empty() {
            self.ringing.update(|ringing| {
                ringing.retain(|old| due.iter().all(|new| new.clock != old.clock));
                ringing.extend(due);
            });
        }
    }

    fn rung(self) -> Vec<(ClockId, Milestone)> {
        self.watched
            .with_value(|watched| watched.as_ref().map_or_else(Vec::new, |w| w.kept.rung.clone()))
    }

    fn keep_rung(self, rung: Vec<(ClockId, Milestone)>) {
        self.watched.update_value(|watched| {
            if let Some(watched) = watched {
                watched.kept.rung = rung;
            }
        });
        self.keep_watch();
    }

    pub(super) fn begin_clock(
        self,
        name: &str,
        compound: String,
        spec: CureSpec,
        bound: Option<Bound>,
    ) -> ClockId {
        let id = self
            .clocks
            .with_untracked(|clocks| ClockId(clocks.iter().map(|c| c.id.0 + 1).max().unwrap_or(1)));
        let clock = CureClock {
            id,
            name: name.to_owned(),
            compound,
            spec,
            started: self.time(),
            bound,
            ended: None,
        };
        self.clocks.update(|clocks| clocks.push(clock));
        self.keep_clocks();
        id
    }

    fn end(self, id: ClockId, how: Ended) {
        self.clocks.update(|clocks| {
            let clock = clocks.iter_mut().find(|clock| clock.id == id);
            if let Some(clock) = clock {
                clock.ended = Some(how);
            }
        });
        self.keep_clocks();
    }

    /// A start is undone: the clock no longer counts, and the one it took over from counts again.
    pub(super) fn undo_start(self, id: ClockId) {
        self.clocks.update(|clocks| {
            let bound = clocks
                .iter()
                .find(|clock| clock.id == id)
                .and_then(|clock| clock.bound);
            let before = |clock: &&mut CureClock| {
                clock.id < id && clock.bound == bound && clock.ended == Some(Ended::Reopened)
            };
            let taken_over =
                bound.and_then(|_| clocks.iter_mut().filter(before).max_by_key(|clock| clock.id));
            if let Some(old) = taken_over {
                old.ended = None;
            }
            if let Some(clock) = clocks.iter_mut().find(|clock| clock.id == id) {
                clock.ended = Some(Ended::Undone);
            }
        });
        self.silence(id);
        self.keep_clocks();
    }
}

fn usable(answer: &BondAnswer) -> Result<Option<CureSpec>, Refused> {
    match &answer.refused {
        Some(why) => Err(Refused::Bottle(why.clone())),
        None => Ok(answer.spec.clone()),
    }
}
