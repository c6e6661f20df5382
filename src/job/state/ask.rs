//! What a step wants now, one thing at a time: the one place that says so.

use super::{Refused, State};
use crate::job::gate::{Wait, waits};
use crate::job::kinds::fasten::fastening::{Asked, PassAnswer};
use crate::job::kinds::gauge::answer as gauging;
use crate::job::kinds::select::answer::{self as choice, Wants};
use crate::job::kinds::{Gauged, Work};
use crate::job::parts::{self, PartKey};
use crate::job::progress::{NextFastener, StepProgress, next_fastener};
use crate::job::reading::What;
use crate::job::readings;
use crate::job::record::{Goal, Instead};
use crate::job::sheet::{Step, StepId};
use crate::job::skins::{self, Deadline};
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
    /// The bead skinned before this was done: wiped off and put on anew, or accepted with a reason.
    Skinned(Deadline),
    /// So many fasteners are tighter than the plan now wants: loosen them.
    Loosen(usize),
    /// Put the compound on.
    PutOn,
    /// The wrench in the hand can't be set to what comes next: take that one, by its place.
    TakeWrench(usize),
    /// No wrench on the bench can be set to what comes next: say what is used.
    NoWrench(NextFastener),
    /// Bring a fastener to what its pass asks for.
    Tally(NextFastener),
    /// Read this.
    Read(What),
    /// Read the codes by which a part is chosen.
    Code,
    /// Choose it and put it in.
    Choose,
    /// Do this of a gauging.
    Gauge(Gauged),
    /// This was found: do it again, accept it with a reason, or order a part.
    Finding(What),
    /// What was found waits for this part, which is on order.
    OnOrder(PartKey),
    /// New ones of this part must be on.
    NewOn(PartKey),
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
        if let Some(late) = skins::too_late(self.ground(), step, now) {
            return Ask::Skinned(late);
        }
        // On a part that is not fit, or a bolt found too long, nothing is tightened.
        let mut found = readings::findings(step, &progress);
        let first = found.iter().filter(|what| what.before_work());
        if let Some(ask) = self.unsettled(step, &progress, first) {
            return ask;
        }
        if let Some(part) = parts::new_wanted(step, &progress) {
            return Ask::NewOn(part);
        }
        if let Work::Fasten(fasten) = &step.work
            && let tight @ 1.. = progress.too_tight(fasten)
        {
            return Ask::Loosen(tight);
        }
        let missing = readings::missing(step, &progress);
        if let Some(what) = missing.as_ref().filter(|what| what.before_work()) {
            return Ask::Read(what.clone());
        }
        if step.work.cures() && !progress.put_on() {
            return Ask::PutOn;
        }
        if let Some(next) = next_fastener(step, &progress) {
            return self.tightened_with(step, &progress, next);
        }
        if let Some(what) = readings::stops_the_run(step, &progress)
            && let Some(ask) = self.unsettled(step, &progress, std::iter::once(&what))
        {
            return ask;
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
        if let Some(what) = missing {
            return Ask::Read(what);
        }
        if matches!(step.work, Work::Turn(_)) && progress.felt.is_none() {
            return Ask::Feel;
        }
        found.retain(|what| !what.before_work());
        self.unsettled(step, &progress, found.iter())
            .unwrap_or(Ask::Close)
    }

    /// What that fastener asks for: a wrench that can be set to its torque, what is used where there is none,
    /// or to be brought to it. A bench without wrenches is not asked.
    pub(super) fn tightened_with(&self, step: &Step, progress: &StepProgress, next: NextFastener) -> Ask {
        let answer = match self.pass_answer(step, next.pass, next.place) {
            Some(PassAnswer::Torque(answer)) if !self.settings.wrenches.is_empty() => answer,
            _ => return Ask::Tally(next),
        };
        let instead = progress.instead.as_ref();
        let instead = instead.filter(|instead| **instead != Instead::Hands || more_follows(step, next));
        match (answer.setting, instead, answer.take) {
            (Some(_), ..) | (None, Some(_), _) => Ask::Tally(next),
            (None, None, Some(at)) => Ask::TakeWrench(at),
            (None, None, None) => Ask::NoWrench(next),
        }
    }

    /// What may be said of how the step's next fastener is brought to a torque that no wrench can be set to.
    pub fn offered_instead(&self, step: StepId, now: Moment) -> Vec<Instead> {
        let next = match self.ask(step, now) {
            Some(Ask::NoWrench(next)) => next,
            _ => return Vec::new(),
        };
        let hands = self.step(step).filter(|step| more_follows(step, next));
        let hands = hands.map(|_| Instead::Hands);
        hands.into_iter().chain(Instead::OFFERED).collect()
    }

    /// What these findings ask for: the first that waits for no part, else the part they wait for.
    fn unsettled<'a>(
        &self,
        step: &Step,
        progress: &StepProgress,
        found: impl Iterator<Item = &'a What>,
    ) -> Option<Ask> {
        let parts = &self.job().progress;
        let mut on_order = None;
        for what in found {
            let part = progress.ordered(what);
            let away = part.filter(|part| {
                let here = parts.part(step.id, *part);
                here.is_none_or(|here| !here.place.at_hand())
            });
            match away {
                None => return Some(Ask::Finding(what.clone())),
                Some(part) => on_order = on_order.or(Some(Ask::OnOrder(part))),
            }
        }
        on_order
    }

    /// What keeps `step` from being closed; nothing where it may be.
    pub(super) fn held(&self, step: &Step, ask: &Ask) -> Option<Refused> {
        Some(match ask {
            Ask::Close => return None,
            Ask::GoOn => Refused::Closed,
            Ask::Wait(_) => Refused::Shut,
            Ask::Acknowledge(_) => Refused::Unacknowledged,
            Ask::Skinned(late) => {
                let bead = self.step(late.bead);
                Refused::Skinned(bead.map_or(String::new(), |bead| bead.title.clone()))
            }
            Ask::Loosen(count) => Refused::TooTight(*count),
            Ask::PutOn => Refused::ClockNotStarted,
            Ask::TakeWrench(at) => {
                let name = |at: usize| {
                    let found = self.settings.wrenches.get(at);
                    found.map_or(String::new(), |wrench| wrench.name.clone())
                };
                Refused::OtherWrench(name(self.settings.in_hand), name(*at))
            }
            Ask::NoWrench(next) => Refused::NoWrench(match &step.work {
                Work::Fasten(fasten) => match fasten.at(next.place).asked(next.pass, None) {
                    Asked::Torque(torque) => torque.text(),
                    Asked::Angle { .. } | Asked::Hand | Asked::All(_) => String::new(),
                },
                _ => String::new(),
            }),
            Ask::Tally(_) => {
                let Work::Fasten(fasten) = &step.work else {
                    return Some(Refused::NoStep);
                };
                let done = self.progress(step.id).tallied(fasten).len();
                Refused::FastenersLeft(fasten.tally_count().saturating_sub(done))
            }
            Ask::Read(what) => Refused::ReadingMissing(what.name(Some(step))),
            Ask::Code => Refused::NoCodes,
            Ask::Gauge(done) => Refused::NotGauged(*done),
            Ask::Choose => Refused::NothingChosen,
            Ask::Finding(what) => {
                Refused::Finding(readings::finding_words(step, &self.progress(step.id), what))
            }
            Ask::OnOrder(part) => Refused::OnOrder(part_name(step, *part)),
            Ask::NewOn(part) => Refused::NewWanted(part_name(step, *part)),
            Ask::Feel => Refused::NotFelt,
        })
    }

    /// The first step still open.
    pub fn next_open(&self) -> Option<StepId> {
        let job = self.job();
        job.progress.next_open(&job.sheet).map(|step| step.id)
    }

    /// Where the job goes on behind that step: the next one open, past those that wait for a part; the
    /// first one open where there is none behind it.
    pub fn next_after(&self, step: StepId, now: Moment) -> Option<StepId> {
        let job = self.job();
        let behind = job.sheet.place(step).map_or(0, |at| at + 1);
        let mut open = job
            .sheet
            .steps
            .iter()
            .skip(behind)
            .filter(|step| !job.progress.closed(step.id));
        let next = open.find(|step| !matches!(self.ask_of(step, now), Ask::OnOrder(_)));
        next.map(|step| step.id).or_else(|| self.next_open())
    }

    /// The first step before that one that is still open.
    pub fn open_before(&self, step: StepId) -> Option<StepId> {
        let job = self.job();
        let mut before = job.sheet.before(step).iter();
        before
            .find(|step| !job.progress.closed(step.id))
            .map(|step| step.id)
    }

    /// The step at hand: the one last worked on, or behind it the next one open.
    pub fn at_hand(&self, now: Moment) -> Option<StepId> {
        let mut lines = self.job().record.standing_from_the_end();
        let last = lines.find_map(|entry| entry.step.filter(|_| entry.works()));
        match last.filter(|step| self.step(*step).is_some()) {
            Some(step) if !self.job().progress.closed(step) => Some(step),
            Some(step) => self.next_after(step, now),
            None => self.next_open(),
        }
    }
}

/// Whether a later pass brings that fastener to more than this one.
pub(super) fn more_follows(step: &Step, next: NextFastener) -> bool {
    let Work::Fasten(fasten) = &step.work else {
        return false;
    };
    let own = fasten.at(next.place);
    let goal = own.goal(next.pass);
    let more = |later: Goal| matches!(later, Goal::Torque { .. }) && !later.is(goal) && later.above(goal);
    (next.pass + 1..own.pass_count()).any(|later| more(own.goal(later)))
}

fn part_name(step: &Step, part: PartKey) -> String {
    What::Part(part).name(Some(step))
}
