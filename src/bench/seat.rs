//! Seat: the numbers of a step or of the screen itself, the way from the oven, the depth read.

use super::{Bench, Settings};
use crate::job::gate::opened_uncured;
use crate::job::kinds::lift::{self, Hoist};
use crate::job::kinds::seat::depth::{self, DEPTH, GAP};
use crate::job::kinds::seat::oven::{OvenRun, OvenState};
use crate::job::kinds::seat::{self, words};
use crate::job::kinds::{Seat, Work};
use crate::job::sheet::{Step, StepId};
use crate::job::situation::{self, Around};
use crate::trade::caution::Caution;
use crate::trade::cooling::TimeRange;
use crate::trade::moment::Moment;
use crate::trade::quantity::Mass;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use serde::{Deserialize, Serialize};
use uom::si::mass::kilogram;

/// What the Seat screen keeps on the bench.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct SeatBench {
    /// Its own numbers, apart from any step.
    pub work: Seat,
    /// The depth read for them, mm.
    pub depth_mm: Option<f64>,
    /// The gap read for them, mm.
    pub gap_mm: Option<f64>,
    /// A part on its way from the oven or the freezer.
    pub oven: Option<OvenRun>,
}

impl Bench {
    /// The fit at hand: that of a step, or the screen's own. None where the step is no seat step.
    pub fn seat(self, step: Option<StepId>) -> Option<Seat> {
        match step {
            None => Some(self.settings.with(|s| s.seat.work.clone())),
            Some(id) => self.sheet.with(|sheet| match &sheet.step(id)?.work {
                Work::Seat(seat) => Some(seat.clone()),
                _ => None,
            }),
        }
    }

    /// Changes the fit at hand; `words` name the change for undo.
    pub fn change_seat(self, step: Option<StepId>, words: &str, change: impl FnOnce(&mut Seat)) {
        let Some(mut seat) = untrack(|| self.seat(step)) else {
            return;
        };
        let before = seat.clone();
        change(&mut seat);
        if seat != before {
            self.keep_work(step, words, Work::Seat(seat));
        }
    }

    /// Puts changed work in the place of a step's, or of a screen's own.
    pub(super) fn keep_work(self, step: Option<StepId>, words: &str, work: Work) {
        let Some(id) = step else {
            self.set(words, |settings| match work {
                Work::Seat(seat) => settings.seat.work = seat,
                Work::Lift(lift) => settings.lift.work = lift,
                _ => {}
            });
            return;
        };
        self.change_step(words, id, |old| *old = work);
    }

    /// The part is out of the oven (or the freezer): the countdown runs from now.
    pub fn take_out(self, step: Option<StepId>, window: TimeRange) {
        self.tick();
        let run = OvenRun {
            job: step.map(|_| self.job.get_untracked()),
            ..OvenRun::begun(untrack(|| self.oven_time()), step, window)
        };
        self.set("countdown from the oven", |settings| {
            settings.seat.oven = Some(run)
        });
    }

    /// Where the countdown for that step of the job at hand stands, or for the screen's own numbers.
    pub fn countdown(self, step: Option<StepId>) -> Option<OvenState> {
        let job = self.job.get();
        let run = self.settings.with(|s| s.seat.oven)?;
        let mine = run.step == step && (step.is_none() || run.job.is_none_or(|of| of == job));
        mine.then(|| run.state(self.oven_time()))
    }

    /// Where a part on its way stands, whatever it is for.
    pub fn on_its_way(self) -> Option<OvenState> {
        let run = self.settings.with(|s| s.seat.oven)?;
        Some(run.state(self.oven_time()))
    }

    /// The later of our time and the phone's: a part cools while the phone sleeps, and a phone set back gives
    /// it no more time.
    fn oven_time(self) -> Moment {
        let now = self.now.get();
        Moment(now.0.saturating_add(self.phone_ahead_ms().max(0)))
    }

    /// Puts the countdown away.
    pub fn put_countdown_away(self) {
        self.set("end of the countdown", |settings| settings.seat.oven = None);
    }

    /// Takes a depth read, mm below the face; in a step it goes into the record, with the gap behind.
    pub fn read_depth(self, step: Option<StepId>, depth_mm: f64) {
        let Some(id) = step else {
            self.set("depth read", |settings| settings.seat.depth_mm = Some(depth_mm));
            return;
        };
        let Some(seat) = untrack(|| self.seat(step)) else {
            return;
        };
        let Some(stated) = seat.depth else { return };
        let judged = depth::judge(&stated, seat.length_mm, depth_mm);
        if let Some(gap_mm) = judged.gap_mm.filter(|_| stated.gap_mm.is_some()) {
            self.measure(
                id,
                GAP,
                to_hundredths(gap_mm),
                "mm",
                depth::verdict(judged.gap_holds),
            );
        }
        self.measure(id, DEPTH, depth_mm, "mm", depth::verdict(judged.depth_holds));
    }

    /// Takes a gap read by itself, mm; in a step it goes into the record.
    pub fn read_gap(self, step: Option<StepId>, gap_mm: f64) {
        let Some(id) = step else {
            self.set("gap read", |settings| settings.seat.gap_mm = Some(gap_mm));
            return;
        };
        let stated = untrack(|| self.seat(step)).and_then(|seat| seat.depth);
        if let Some(stated) = stated {
            let verdict = depth::verdict(depth::gap_holds(&stated, gap_mm));
            self.measure(id, GAP, gap_mm, "mm", verdict);
        }
    }

    /// The depth and the gap last read for the fit at hand, mm.
    pub fn depth_read(self, step: Option<StepId>) -> (Option<f64>, Option<f64>) {
        match step {
            None => self.settings.with(|s| (s.seat.depth_mm, s.seat.gap_mm)),
            Some(id) => self.progress.with(|progress| {
                let progress = progress.step(id);
                let value = |name| progress.reading(name).map(|reading| reading.value);
                (value(DEPTH), value(GAP))
            }),
        }
    }

    /// What was done in a step, for the record; empty where the entries before say it all.
    pub fn summary(self, step: &Step) -> String {
        let now = self.now.get();
        let progress = self.progress.with(|progress| progress.step(step.id));
        self.settings.with(|settings| match &step.work {
            Work::Seat(seat) => seat::answer(seat, settings.temperature_at(now))
                .map_or(String::new(), |answer| words::summary(seat, &answer, &progress)),
            Work::Lift(lift) => {
                let answer = lift::answer(lift, settings.hoist());
                lift::words::summary(lift, &answer, settings.lift.unit)
            }
            _ => String::new(),
        })
    }

    /// The cautions of some work, that of a step or of a screen itself, as things stand around it;
    /// reads the signals.
    pub fn cautions_of(self, work: &Work, step: Option<StepId>) -> Vec<Caution> {
        let now = self.now.get();
        let before_cure = step.is_some_and(|id| {
            self.ground(|ground| {
                let step = ground.sheet.step(id);
                step.is_some_and(|step| opened_uncured(ground, step, now))
            })
        });
        let solvent = self.sheet.with(|sheet| {
            self.progress
                .with(|progress| situation::solvent_about(sheet, progress, now))
        });
        self.settings.with(|settings| {
            let around = Around {
                press_kn: settings.press_kn,
                hoist: settings.hoist(),
                room: settings.temperature_at(now),
                solvent,
                before_cure,
            };
            situation::cautions_of(work, &around)
        })
    }
}

impl Settings {
    /// My hoist, as told.
    pub fn hoist(&self) -> Hoist<'_> {
        Hoist {
            boom: &self.lift.boom,
            rating: self.hoist_kg.map(Mass::new::<kilogram>),
        }
    }
}

fn to_hundredths(mm: f64) -> f64 {
    (mm * 100.0).round() / 100.0
}
