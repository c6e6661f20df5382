//! Clocks: started, started anew, archived.

use super::draft::Draft;
use super::step::Outcome;
use super::{Ask, Intent, Name, Refused, State};
use crate::job::bonding::BondAnswer;
use crate::job::clock::{Bound, ClockId, CureClock, Ended};
use crate::job::id;
use crate::job::progress::StepProgress;
use crate::job::record::{Compound, Event, PhoneClock};
use crate::job::sheet::{JobId, StepId};
use crate::trade::cure::CureSpec;
use crate::trade::moment::Moment;

impl State {
    pub(super) fn clock_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::PutOn { step, activator } => self.put_on(draft, *step, *activator),
            Intent::PutOnFree {
                name,
                joint,
                activator,
            } => self.put_on_free(draft, name, self.bond(joint, *activator, draft.now)),
            Intent::Restart(id) => self.restart(draft, *id),
            Intent::PutAway(id) => self.put_away(draft, *id),
            _ => return None,
        })
    }

    fn put_on(&self, draft: &mut Draft<'_>, step: StepId, activator: bool) -> Result<Name, Refused> {
        let (step, ask) = self.ready(step, draft)?;
        match ask {
            Ask::PutOn => {}
            Ask::Loosen(count) => return Err(Refused::TooTight(count)),
            _ if step.work.cures() => return Err(Refused::ClockRuns),
            _ => return Err(Refused::NothingCures),
        }
        let joint = step.work.application().ok_or(Refused::NoStep)?;
        let answer = self.bond(joint, activator, draft.now);
        let spec = usable(&answer)?;
        let bound = Bound {
            job: self.jobs.at_hand,
            step: step.id,
        };
        let clock = draft.begin_clock(&step.title, answer.compound_words(), spec, Some(bound));
        let compound = answer.compound().ok_or(Refused::NoStep)?;
        draft.line(Some(step.id), Event::Applied { compound, clock });
        Ok(Name::Lines)
    }

    fn put_on_free(&self, draft: &mut Draft<'_>, name: &str, answer: BondAnswer) -> Result<Name, Refused> {
        let spec = usable(&answer)?;
        draft.begin_clock(name, answer.compound_words(), spec, None);
        Ok(Name::Of("clock of", name.to_owned()))
    }

    fn restart(&self, draft: &mut Draft<'_>, id: ClockId) -> Result<Name, Refused> {
        let old = self.clock(id)?;
        draft.end_clock(id, Ended::Reopened);
        let new = draft.begin_clock(&old.name, old.compound.clone(), old.spec.clone(), old.bound);
        let Some(bound) = old.bound.filter(|bound| self.files.contains_key(&bound.job)) else {
            return Ok(Name::Of("restart of", old.name.clone()));
        };
        let compound = self.files.get(&bound.job).and_then(|job| {
            let entries = job.record.entries().iter().rev();
            entries
                .filter_map(|entry| match &entry.event {
                    Event::Applied { compound, clock } if *clock == id => Some(compound.clone()),
                    _ => None,
                })
                .next()
        });
        draft.line_in(bound.job, Some(bound.step), Event::JointOpened);
        let applied = Event::Applied {
            compound: compound.unwrap_or_else(|| Compound::Words(old.compound.clone())),
            clock: new,
        };
        draft.line_in(bound.job, Some(bound.step), applied);
        self.loosen_what_closed_it(draft, bound);
        Ok(Name::Lines)
    }

    /// A joint is opened by loosening what was to pull it closed before it skinned: what of that was done
    /// begins anew.
    fn loosen_what_closed_it(&self, draft: &mut Draft<'_>, bound: Bound) {
        let Some(job) = self.files.get(&bound.job) else {
            return;
        };
        for step in job
            .sheet
            .steps
            .iter()
            .filter(|step| step.before_skin.contains(&bound.step))
        {
            let tight = |progress: &&StepProgress| !progress.tallies.is_empty();
            let Some(progress) = job.progress.touched(step.id).filter(tight) else {
                continue;
            };
            draft.line_in(bound.job, Some(step.id), Event::Loosened);
            if progress.closed() {
                draft.line_in(bound.job, Some(step.id), Event::Reopened);
            }
            // What is on their own threads was drawn apart too.
            if progress.put_on() {
                draft.open_joint_of(bound.job, step.id);
                draft.line_in(bound.job, Some(step.id), Event::JointOpened);
            }
        }
    }

    /// What the user said of the phone's clock, or it of itself, does to the starts of what cures.
    pub(super) fn move_starts(&self, draft: &mut Draft<'_>, seen: PhoneClock) {
        let now = draft.now.at;
        let by_ms = |clock: &CureClock| match seen {
            // What is counted from now on passed before it went on.
            PhoneClock::Right => clock.held_ms,
            // The phone was so far behind when it went on (negative: ahead), and is right now: it began so
            // much later. What it was ahead of shows by lying in the future.
            PhoneClock::WrongBefore(ahead_ms) => {
                let before = Moment(now.0.saturating_sub(ahead_ms));
                let moved = match ahead_ms > 0 {
                    true => !clock.ripe(&self.settings.shop, before),
                    false => clock.started > now,
                };
                match moved {
                    true if ahead_ms < 0 => ahead_ms,
                    true => ahead_ms.max(clock.held_ms),
                    false => clock.held_ms,
                }
            }
            PhoneClock::InStep | PhoneClock::Wrong | PhoneClock::Jumped(_) | PhoneClock::Closed(_) => 0,
        };
        let settled = match seen {
            PhoneClock::Right | PhoneClock::WrongBefore(_) | PhoneClock::InStep => true,
            PhoneClock::Wrong | PhoneClock::Jumped(_) | PhoneClock::Closed(_) => false,
        };
        if !settled {
            return;
        }
        // Those that ended too: an undo may bring them back.
        for clock in draft.clocks() {
            let by_ms = by_ms(clock);
            if by_ms != 0 {
                clock.started = Moment(clock.started.0.saturating_add(by_ms)).min(now);
            }
            clock.held_ms = 0;
        }
    }

    fn put_away(&self, draft: &mut Draft<'_>, id: ClockId) -> Result<Name, Refused> {
        let name = self.clock(id)?.name.clone();
        draft.end_clock(id, Ended::PutAway);
        Ok(Name::Of("archiving", name))
    }

    /// A clock that has not ended.
    fn clock(&self, id: ClockId) -> Result<&CureClock, Refused> {
        let mut running = self.clocks.iter().filter(|clock| clock.ended.is_none());
        running.find(|clock| clock.id == id).ok_or(Refused::NothingToUndo)
    }
}

impl Draft<'_> {
    fn begin_clock(&mut self, name: &str, compound: String, spec: CureSpec, bound: Option<Bound>) -> ClockId {
        let (started, held_ms) = (self.now.at, self.now.ahead_ms);
        let clocks = self.clocks();
        let id = ClockId(id::free(clocks.iter().map(|clock| clock.id.0)));
        clocks.push(CureClock {
            id,
            name: name.to_owned(),
            compound,
            spec,
            started,
            held_ms,
            bound,
            ended: None,
        });
        id
    }

    fn end_clock(&mut self, id: ClockId, how: Ended) {
        let clock = self.clocks().iter_mut().find(|clock| clock.id == id);
        clock.into_iter().for_each(|clock| clock.ended = Some(how));
    }

    /// The joint of that step is open: its clocks no longer count.
    pub(super) fn open_joint(&mut self, step: StepId) {
        self.open_joint_of(self.state.jobs.at_hand, step);
    }

    fn open_joint_of(&mut self, job: JobId, step: StepId) {
        let bound = Some(Bound { job, step });
        let running = |clock: &&mut CureClock| clock.bound == bound && clock.ended.is_none();
        let running = self.clocks().iter_mut().filter(running);
        running.for_each(|clock| clock.ended = Some(Ended::Reopened));
    }

    /// The joint of that step was not opened after all: its last clock counts again.
    pub(super) fn undo_opening(&mut self, job: JobId, step: StepId) {
        let bound = Some(Bound { job, step });
        let own = |clock: &&mut CureClock| clock.bound == bound && clock.ended != Some(Ended::Undone);
        let last = self.clocks().iter_mut().rfind(own);
        let reopened = last.filter(|clock| clock.ended == Some(Ended::Reopened));
        reopened.into_iter().for_each(|clock| clock.ended = None);
    }

    /// A start is undone: the clock no longer counts, and where it took over from another, that one does.
    pub(super) fn undo_start(&mut self, id: ClockId, took_over: bool) {
        let clocks = self.clocks();
        let bound = clocks
            .iter()
            .find(|clock| clock.id == id)
            .and_then(|clock| clock.bound);
        let before = |clock: &&mut CureClock| {
            clock.id < id && clock.bound == bound && clock.ended == Some(Ended::Reopened)
        };
        let mut reopened: Vec<&mut CureClock> = clocks.iter_mut().filter(before).collect();
        let taken_over = bound.filter(|_| took_over).and_then(|_| reopened.pop());
        taken_over.into_iter().for_each(|old| old.ended = None);
        self.end_clock(id, Ended::Undone);
    }
}

/// How it cures, unless the bottle taken may not be used.
fn usable(answer: &BondAnswer) -> Result<CureSpec, Refused> {
    match &answer.refused {
        Some(why) => Err(Refused::Bottle(why.clone())),
        None => answer.spec.clone().ok_or(Refused::NothingCures),
    }
}
