//! What a step wants now, one thing at a time: the one place that says so.

use super::{Refused, State};
use crate::job::gate::{Wait, waits};
use crate::job::kinds::gauge::answer as gauging;
use crate::job::kinds::select::answer::{self as choice, Wants};
use crate::job::kinds::{Gauged, Work};
use crate::job::progress::{NextFastener, next_fastener};
use crate::job::reading::What;
use crate::job::readings;
use crate::job::sheet::{Step, StepId};
use crate::trade::caution::Level;
use crate::trade::moment::Moment;

/// What a step wants now.
#[derive(Debug, Clone, PartialEq)]
pub enum Ask {
    /// It is closed: go on to the next one open, or to the job's end.
    GoOn,
    /// It is shut: what it waits for.
    Wait(Vec<Wait>),
    /// Read a stop-level caution, by its id.
    Acknowledge(&'static str),
    /// So many fasteners are tighter than the plan now wants: loosen them.
    Loosen(usize),
    /// Put the compound on.
    PutOn,
    /// Bring a fastener to what its pass asks for.
    Tally(NextFastener),
    /// Read this.
    Read(What),
    /// This reading is outside its limits: read it again, or accept it with a reason.
    OutsideLimits(What),
    /// Read the codes by which a part is chosen.
    Code,
    /// Choose it and put it in.
    Choose,
    /// Do this of a gauging.
    Gauge(Gauged),
    /// Say how it turns.
    Feel,
    /// Close it.
    Close,
}

impl State {
    /// What that step of the job at hand wants at `now`; none where there is no such step.
    pub fn ask(&self, step: StepId, now: Moment) -> Option<Ask> {
        self.step(step).map(|step| self.ask_of(step, now))
    }

    fn ask_of(&self, step: &Step, now: Moment) -> Ask {
        let progress = self.progress(step.id);
        if progress.closed() {
            return Ask::GoOn;
        }
        let waits = waits(self.ground(), step, now);
        if !waits.is_empty() {
            return Ask::Wait(waits);
        }
        let cautions = self.cautions(&step.work, Some(step.id), now);
        let unread = cautions
            .iter()
            .find(|caution| caution.level == Level::Stop && !progress.acknowledged.contains(caution.id));
        if let Some(caution) = unread {
            return Ask::Acknowledge(caution.id);
        }
        if let Work::Fasten(fasten) = &step.work
            && let tight @ 1.. = progress.too_tight(fasten)
        {
            return Ask::Loosen(tight);
        }
        if step.work.cures() && progress.clocks.is_empty() {
            return Ask::PutOn;
        }
        if let Some(next) = next_fastener(step, &progress) {
            return Ask::Tally(next);
        }
        if let Work::Select(select) = &step.work
            && let Some(wants) = choice::wants(select, &progress)
        {
            return match wants {
                Wants::Read(what) => Ask::Read(what),
                Wants::Code => Ask::Code,
                Wants::Choose => Ask::Choose,
            };
        }
        if let Work::Gauge(gauge) = &step.work
            && let Some(wants) = gauging::wants(gauge, &progress)
        {
            return match wants {
                gauging::Wants::Read(what) => Ask::Read(what),
                gauging::Wants::Do(done) => Ask::Gauge(done),
            };
        }
        if let Some(what) = readings::missing(step, &progress) {
            return Ask::Read(what);
        }
        if let Some(what) = readings::broken(step, &progress).into_iter().next() {
            return Ask::OutsideLimits(what);
        }
        if matches!(step.work, Work::Turn(_)) && progress.felt.is_none() {
            return Ask::Feel;
        }
        Ask::Close
    }

    /// What keeps `step` from being closed; nothing where it may be.
    pub(super) fn held(&self, step: &Step, ask: &Ask) -> Option<Refused> {
        Some(match ask {
            Ask::Close => return None,
            Ask::GoOn => Refused::Closed,
            Ask::Wait(_) => Refused::Shut,
            Ask::Acknowledge(_) => Refused::Unacknowledged,
            Ask::Loosen(count) => Refused::TooTight(*count),
            Ask::PutOn => Refused::ClockNotStarted,
            Ask::Tally(_) => {
                let Work::Fasten(fasten) = &step.work else {
                    return Some(Refused::NoStep);
                };
                let done = self.progress(step.id).tallied(fasten).len();
                Refused::FastenersLeft(fasten.tally_count().saturating_sub(done))
            }
            Ask::Read(what) => Refused::ReadingMissing(what.name(Some(step))),
            Ask::OutsideLimits(what) => Refused::OutsideLimits(what.judged_name(step)),
            Ask::Code => Refused::NoCodes,
            Ask::Gauge(done) => Refused::NotGauged(*done),
            Ask::Choose => Refused::NothingChosen,
            Ask::Feel => Refused::NotFelt,
        })
    }

    /// The first step still open, where the job goes on.
    pub fn next_open(&self) -> Option<StepId> {
        let job = self.job();
        job.progress.next_open(&job.sheet).map(|step| step.id)
    }
}
