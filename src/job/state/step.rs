//! What is done in a step, and lines of the record.

use super::draft::Draft;
use super::{Ask, Intent, Name, ReadWith, Refused, State};
use crate::job::clock::ClockId;
use crate::job::gate::{self, Wait, waits};
use crate::job::kinds::fasten::fastening::PassAnswer;
use crate::job::kinds::seat::depth;
use crate::job::kinds::{Seat, Work};
use crate::job::parts::{self, PartKey, PartPlace};
use crate::job::progress::{NotNext, Reading, Status, StepProgress, chosen_fastener, next_fastener};
use crate::job::reading::{Fact, Verdict, What, kept_digits};
use crate::job::readings;
use crate::job::record::{Event, Facts, Instead, SetTo, Setting};
use crate::job::sense;
use crate::job::sheet::{Step, StepId};
use crate::job::skins;
use crate::trade::moment::Moment;
use crate::trade::quantity::{Stated, decimal};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

/// What an intent came to; none where it is none of these.
pub(super) type Outcome = Option<Result<Name, Refused>>;

impl State {
    pub(super) fn step_intent(&self, draft: &mut Draft<'_>, intent: &Intent) -> Outcome {
        Some(match intent {
            Intent::Acknowledge { step, caution } => self.acknowledge(draft, *step, caution),
            Intent::Tally(step) => self.tally(draft, *step, None),
            Intent::TallyAt { step, place } => self.tally(draft, *step, Some(*place)),
            Intent::WithoutWrench { step, instead } => self.without_wrench(draft, *step, instead),
            Intent::Loosen(step) => self.loosen(draft, *step),
            Intent::Read {
                step,
                what,
                value,
                unit,
                with,
            } => self.read(draft, *step, what, *value, unit, with),
            Intent::Accept {
                step,
                what,
                reason,
                initials,
            } => self.accept(draft, *step, what, reason, initials),
            Intent::Order { step, what, name } => self.order(draft, *step, what, name),
            Intent::Judge { step, part, unfit } => self.judge(draft, *step, *part, unfit),
            Intent::NewOn { step, part } => self.new_on(draft, *step, *part),
            Intent::Say {
                step,
                fact,
                holds,
                words,
            } => self.say(draft, *step, *fact, *holds, words),
            Intent::Feel { step, tight_at } => self.feel(draft, *step, tight_at),
            Intent::ReadDepth { step, mm } => self.read_depth(draft, *step, *mm),
            Intent::ReadGap { step, mm } => self.read_gap(draft, *step, *mm),
            Intent::Close(step) => self.close(draft, *step),
            Intent::Skip { step, reason } => self.skip(draft, *step, reason),
            Intent::Reopen(step) => self.reopen(draft, *step),
            Intent::Override { step, reason } => self.override_gate(draft, *step, reason),
            Intent::Place {
                step,
                part,
                place,
                here,
            } => self.place(draft, *step, *part, Some(place), *here),
            Intent::TickPart { step, part } => self.place(draft, *step, *part, None, 0),
            Intent::Remark { about, words } => match words.trim() {
                "" => Err(Refused::NoReason),
                words => {
                    let entry = about.and_then(|id| self.job().record.entry(id));
                    let event = Event::Noted {
                        about: *about,
                        words: words.to_owned(),
                    };
                    draft.line(entry.and_then(|entry| entry.step), event);
                    Ok(Name::Lines)
                }
            },
            Intent::CloseJob => {
                let job = self.job();
                let found = |step: &Step| readings::findings(step, &self.progress(step.id)).len();
                let undone = |step: &&Step| gate::undone(step, &self.progress(step.id));
                if let Some(step) = job.sheet.steps.iter().find(undone) {
                    return Some(Err(Refused::Undone(step.title.clone())));
                }
                match (
                    job.sheet.steps.len() - job.progress.closed_count(&job.sheet),
                    job.sheet.steps.iter().map(found).sum(),
                ) {
                    (0, 0) => {
                        draft.line(None, Event::JobClosed);
                        Ok(Name::Lines)
                    }
                    (0, found) => Err(Refused::FindingsLeft(found)),
                    (open, _) => Err(Refused::StepsOpen(open)),
                }
            }
            _ => return None,
        })
    }

    fn known(&self, step: StepId) -> Result<&Step, Refused> {
        self.step(step).ok_or(Refused::NoStep)
    }

    /// A step that is still open.
    fn open_step(&self, step: StepId) -> Result<&Step, Refused> {
        let step = self.known(step)?;
        if self.progress(step.id).closed() {
            Err(Refused::Closed)
        } else {
            Ok(step)
        }
    }

    /// A step that can be worked on: open, nothing shuts it, and no stop-level caution is unread.
    pub(super) fn ready(&self, step: StepId, draft: &Draft<'_>) -> Result<(&Step, Ask), Refused> {
        let known = self.known(step)?;
        let ask = self.ask(step, draft.now.at).ok_or(Refused::NoStep)?;
        match ask {
            Ask::GoOn => Err(Refused::Closed),
            Ask::Wait(_) => Err(Refused::Shut),
            Ask::Acknowledge(_) => Err(Refused::Unacknowledged),
            late @ Ask::Skinned(_) => Err(self.held(known, &late).unwrap_or(Refused::Shut)),
            other => Ok((known, other)),
        }
    }

    fn acknowledge(&self, draft: &mut Draft<'_>, step: StepId, caution: &str) -> Result<Name, Refused> {
        self.known(step)?;
        let caution = caution.to_owned();
        draft.line(Some(step), Event::Acknowledged { caution });
        Ok(Name::Lines)
    }

    fn tally(&self, draft: &mut Draft<'_>, step: StepId, place: Option<usize>) -> Result<Name, Refused> {
        let (step, ask) = self.ready(step, draft)?;
        if let Ask::Loosen(_) | Ask::Finding(_) | Ask::OnOrder(_) | Ask::NewOn(_) | Ask::Read(_) = ask {
            return Err(self.held(step, &ask).unwrap_or(Refused::NoStep));
        }
        let Work::Fasten(fasten) = &step.work else {
            return Err(Refused::NoStep);
        };
        let progress = self.progress(step.id);
        let next = match place {
            None => next_fastener(step, &progress).ok_or(Refused::NoStep)?,
            Some(place) => chosen_fastener(step, &progress, place).map_err(|why| match why {
                NotNext::None => Refused::NoStep,
                NotNext::Done => Refused::TalliedAlready(fasten.name(place)),
                NotNext::First(first) => Refused::NotNext(fasten.name(first)),
            })?,
        };
        if let Some(why) = fasten.stages_wrong() {
            return Err(Refused::Stages(why));
        }
        let with = self.tightened_with(step, &progress, next);
        if let Ask::TakeWrench(_) | Ask::NoWrench(_) = with {
            return Err(self.held(step, &with).unwrap_or(Refused::NoStep));
        }
        let answer = self
            .pass_answer(step, next.pass, next.place)
            .ok_or(Refused::NoStep)?;
        let event = Event::Tallied {
            pass: next.pass,
            place: next.place,
            set: setting(&answer, progress.instead.as_ref()),
            goal: Some(fasten.at(next.place).goal(next.pass)),
        };
        draft.line(Some(step.id), event);
        Ok(Name::Lines)
    }

    /// What is used where the bench has no wrench for it, or another than it has.
    fn without_wrench(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        instead: &Instead,
    ) -> Result<Name, Refused> {
        let (step, ask) = self.ready(step, draft)?;
        let (Ask::NoWrench(_) | Ask::TakeWrench(_)) = ask else {
            return Err(Refused::NotAsked("what it is tightened with".to_owned()));
        };
        let hands = *instead == Instead::Hands;
        if hands && !self.offered_instead(step.id, draft.now.at).contains(instead) {
            return Err(Refused::NoSense(
                "Hands bring it no further than snug: say what brings it to its torque.",
            ));
        }
        let instead = match instead {
            Instead::Other(words) => Instead::Other(given(words)?),
            offered => offered.clone(),
        };
        draft.line(Some(step.id), Event::WithoutWrench { instead });
        Ok(Name::Lines)
    }

    fn loosen(&self, draft: &mut Draft<'_>, step: StepId) -> Result<Name, Refused> {
        let step = self.known(step)?;
        let progress = self.progress(step.id);
        if progress.tallies.is_empty() {
            return Err(Refused::NothingToUndo);
        }
        draft.line(Some(step.id), Event::Loosened);
        if progress.closed() {
            draft.line(Some(step.id), Event::Reopened);
        }
        self.come_loose(draft, step, &progress);
        Ok(Name::Lines)
    }

    /// What follows where fasteners come loose: what is on their threads goes on anew, and a bead they held
    /// seals no more once it has skinned.
    fn come_loose(&self, draft: &mut Draft<'_>, step: &Step, progress: &StepProgress) {
        drawn_apart(draft, step.id, progress);
        for bead in skins::torn(self.ground(), step, draft.now.at) {
            let progress = self.progress(bead);
            if progress.closed() {
                draft.line(Some(bead), Event::Reopened);
            }
            drawn_apart(draft, bead, &progress);
        }
    }

    fn read(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        what: &What,
        value: f64,
        unit: &str,
        with: &ReadWith,
    ) -> Result<Name, Refused> {
        // Nothing is read in a step that is shut, or over a STOP that nobody read.
        let (step, _) = self.ready(step, draft)?;
        // A fact is no number: it is said.
        if let What::Fact(fact) = what {
            return Err(Refused::NotAsked(fact.name(Some(step))));
        }
        self.in_turn(step, what)?;
        let asked = readings::unit(step, what).unwrap_or_default();
        let planned = readings::in_plan(step, what, value, unit)
            .ok_or_else(|| Refused::OtherUnit(asked.to_owned(), unit.to_owned()))?;
        sense::reading_in(what, asked)
            .of(planned)
            .map_err(Refused::NoSense)?;
        if *what == What::Uses && value.fract() != 0.0 {
            return Err(Refused::NoSense("Enter a whole number of times."));
        }
        if readings::counted(step, what) && (value.fract() != 0.0 || value < 0.0) {
            return Err(Refused::NoSense("It is a count: enter a whole number from 0."));
        }
        self.can_be_read(step, what)?;
        self.tight_or_loose(step, what, draft.now.at)?;
        if matches!(what, What::Radius(_)) && !readings::asked(step).contains(what) {
            return Err(Refused::NotAsked(what.name(Some(step))));
        }
        if readings::worked(step, what).is_some() {
            return Err(Refused::NoSense(
                "It is worked out from other readings: enter these.",
            ));
        }
        if let Some(at_c) = with.at_c {
            sense::PART_C.of(at_c).map_err(Refused::NoSense)?;
        }
        let mut progress = self.progress(step.id);
        draft.line(Some(step.id), measured(step, &progress, what, value, unit, with));
        if let Some((what, by)) = progress.stretched(what, value, unit) {
            let decimals = progress.digits_of(&what, unit).max(with.decimals);
            let with = ReadWith {
                decimals,
                ..with.clone()
            };
            draft.line(Some(step.id), measured(step, &progress, &what, by, unit, &with));
        }
        progress.readings.push(reading(what, value, unit));
        work_out(draft, step, &progress);
        Ok(Name::Lines)
    }

    /// How it turned, of a step that can be worked on.
    fn feel(&self, draft: &mut Draft<'_>, step: StepId, tight_at: &str) -> Result<Name, Refused> {
        let (step, _) = self.ready(step, draft)?;
        let tight_at = tight_at.trim().to_owned();
        draft.line(Some(step.id), Event::Felt { tight_at });
        Ok(Name::Lines)
    }

    /// What is read of a tight fastener is read once all are tight; a running torque while none is.
    fn tight_or_loose(&self, step: &Step, what: &What, now: Moment) -> Result<(), Refused> {
        let progress = self.progress(step.id);
        if what.when_tight() && next_fastener(step, &progress).is_some() {
            let ask = self.ask(step.id, now).ok_or(Refused::NoStep)?;
            return Err(self.held(step, &ask).unwrap_or(Refused::NoStep));
        }
        match (&step.work, what) {
            (Work::Fasten(fasten), What::Running)
                if !fasten.running_apart && !progress.tallies.is_empty() =>
            {
                Err(Refused::TightAlready)
            }
            _ => Ok(()),
        }
    }

    fn accept(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        what: &What,
        reason: &str,
        initials: &str,
    ) -> Result<Name, Refused> {
        let step = match what {
            What::Skin(clock) => self.skinned(step, *clock, draft.now.at)?,
            what => self.found(step, what)?,
        };
        let reason = given(reason)?;
        let initials = initials.trim();
        if initials.is_empty() && self.settings.initials.is_empty() {
            return Err(Refused::NoInitials);
        }
        if !initials.is_empty() {
            initials.clone_into(&mut draft.settings().initials);
        }
        // A plan changed since may work it out anew: what is accepted stands in the record.
        let mut progress = self.progress(step.id);
        let anew = readings::worked_anew(step, &progress);
        for (what, value, unit) in anew.iter().filter(|(own, ..)| own == what) {
            draft.line(
                Some(step.id),
                measured(step, &progress, what, *value, unit, &ReadWith::default()),
            );
            progress.readings.push(reading(what, *value, unit));
        }
        let event = Event::Accepted {
            what: what.clone(),
            limits: readings::limits(step, &progress, what),
            reason,
        };
        draft.line(Some(step.id), event);
        Ok(Name::Lines)
    }

    /// A step that was not done before that clock's bead skinned.
    fn skinned(&self, step: StepId, clock: ClockId, now: Moment) -> Result<&Step, Refused> {
        let step = self.known(step)?;
        let late = skins::deadlines(self.ground(), step);
        if late.iter().any(|late| late.clock == clock && late.over(now)) {
            Ok(step)
        } else {
            Err(Refused::NotFound(What::Skin(clock).name(Some(step))))
        }
    }

    /// A step in which that was found and is not settled; it may be closed, as limits may change.
    fn found(&self, step: StepId, what: &What) -> Result<&Step, Refused> {
        let step = self.known(step)?;
        if readings::findings(step, &self.progress(step.id)).contains(what) {
            Ok(step)
        } else {
            Err(Refused::NotFound(what.judged_name(step)))
        }
    }

    fn order(&self, draft: &mut Draft<'_>, step: StepId, what: &What, name: &str) -> Result<Name, Refused> {
        let id = self.found(step, what)?.id;
        let part = match (what, name.trim()) {
            (What::Part(part), _) => *part,
            (_, "") => return Err(Refused::NoPart),
            (_, name) => {
                let planned = draft.sheet().steps.iter_mut().find(|step| step.id == id);
                PartKey::More(planned.ok_or(Refused::NoStep)?.add_part(name))
            }
        };
        let of = draft.sheet().step(id).map_or(1, |step| parts::count(step, part));
        let what = what.clone();
        draft.line(Some(id), Event::Ordered { what, part });
        let place = PartPlace::OnOrder;
        draft.line(
            Some(id),
            Event::Placed {
                part,
                place,
                here: 0,
                of,
            },
        );
        Ok(Name::Lines)
    }

    fn judge(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        part: PartKey,
        unfit: &str,
    ) -> Result<Name, Refused> {
        let step = self.known(step)?;
        parts::name(step, part).ok_or(Refused::NoStep)?;
        let unfit = unfit.trim().to_owned();
        draft.line(Some(step.id), Event::Judged { part, unfit });
        Ok(Name::Lines)
    }

    fn new_on(&self, draft: &mut Draft<'_>, step: StepId, part: PartKey) -> Result<Name, Refused> {
        match self.ready(step, draft)? {
            (step, Ask::NewOn(wanted)) if wanted == part => {
                // New fasteners are not tight yet, and nothing is on them.
                let progress = self.progress(step.id);
                if part == PartKey::Own && matches!(step.work, Work::Fasten(_)) {
                    if !progress.tallies.is_empty() {
                        draft.line(Some(step.id), Event::Loosened);
                    }
                    self.come_loose(draft, step, &progress);
                }
                draft.line(Some(step.id), Event::NewOn { part });
                Ok(Name::Lines)
            }
            (step, ask) => Err(self.held(step, &ask).unwrap_or(Refused::NothingToUndo)),
        }
    }

    /// A run is gone through from the start to the end: nothing of it is said before what comes first, and
    /// nothing of a step that is shut.
    fn in_turn(&self, step: &Step, what: &What) -> Result<(), Refused> {
        let Work::Run(run) = &step.work else {
            return Ok(());
        };
        let all = run.asked();
        let at = all.iter().position(|own| own == what);
        let next = readings::missing(step, &self.progress(step.id));
        let next = next.and_then(|next| all.iter().position(|own| *own == next).zip(Some(next)));
        match (at, next) {
            (None, _) => Err(Refused::NotAsked(what.name(Some(step)))),
            (Some(at), Some((first, next))) if at > first => {
                Err(Refused::ReadingMissing(next.name(Some(step))))
            }
            (Some(_), _) => Ok(()),
        }
    }

    /// A fact is said of a step that can be worked on, in its turn.
    fn say(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        fact: Fact,
        holds: bool,
        words: &str,
    ) -> Result<Name, Refused> {
        let (step, ask) = self.ready(step, draft)?;
        let what = What::Fact(fact);
        if !readings::asked(step).contains(&what) {
            return Err(Refused::NotAsked(fact.name(Some(step))));
        }
        self.in_turn(step, &what)?;
        // Locked is what is at its torque.
        if fact == Fact::Locked && next_fastener(step, &self.progress(step.id)).is_some() {
            return Err(self.held(step, &ask).unwrap_or(Refused::NoStep));
        }
        let words = words.trim().to_owned();
        if fact.asks_where() && !holds && words.is_empty() {
            return Err(Refused::NoPlace);
        }
        draft.line(Some(step.id), Event::Said { fact, holds, words });
        Ok(Name::Lines)
    }

    fn read_depth(&self, draft: &mut Draft<'_>, step: Option<StepId>, read: Stated) -> Result<Name, Refused> {
        let mm = read.value;
        sense::reading(&What::Depth).of(mm).map_err(Refused::NoSense)?;
        let Some(id) = step else {
            draft.settings().seat.depth_mm = Some(mm);
            return Ok(Name::Change("depth read"));
        };
        let (step, _) = self.ready(id, draft)?;
        let (seat, stated) = stated(step)?;
        let progress = self.progress(id);
        draft.line(Some(id), read_mm(step, &progress, &What::Depth, read));
        // The gap follows from the depth where the bore's is known; read to hundredths as the depth is.
        let gap = depth::judge(&stated, seat.length_mm, mm).gap_mm;
        if let Some(gap) = gap.filter(|_| stated.gap_mm.is_some()) {
            let gap = (gap * 100.0).round() / 100.0;
            draft.line(Some(id), read_mm(step, &progress, &What::Gap, Stated::plain(gap)));
        }
        Ok(Name::Lines)
    }

    fn read_gap(&self, draft: &mut Draft<'_>, step: Option<StepId>, read: Stated) -> Result<Name, Refused> {
        let mm = read.value;
        sense::reading(&What::Depth).of(mm).map_err(Refused::NoSense)?;
        let Some(id) = step else {
            draft.settings().seat.gap_mm = Some(mm);
            return Ok(Name::Change("gap read"));
        };
        let (step, _) = self.ready(id, draft)?;
        stated(step)?;
        draft.line(Some(id), read_mm(step, &self.progress(id), &What::Gap, read));
        Ok(Name::Lines)
    }

    fn close(&self, draft: &mut Draft<'_>, step: StepId) -> Result<Name, Refused> {
        let step = self.known(step)?;
        let ask = self.ask(step.id, draft.now.at).ok_or(Refused::NoStep)?;
        if let Some(why) = self.held(step, &ask) {
            return Err(why);
        }
        let room_c = self
            .settings
            .temperature_at(draft.now.at)
            .map(|room| room.get::<degree_celsius>());
        let facts = match &step.work {
            Work::Seat(seat) => Some(Facts::Seat {
                seat: Box::new(seat.clone()),
                room_c,
            }),
            Work::Lift(lift) => {
                let hoist = self.settings.hoist();
                Some(Facts::Lift {
                    lift: Box::new(lift.told_by(self.job().sheet.units)),
                    rating_kg: hoist.rating.map(|rating| rating.get::<kilogram>()),
                    boom: hoist.boom.to_vec(),
                })
            }
            Work::Clean(_)
            | Work::Check(_)
            | Work::Fit(_)
            | Work::Fasten(_)
            | Work::Bond(_)
            | Work::Turn(_)
            | Work::Fill(_)
            | Work::Select(_)
            | Work::Gauge(_)
            | Work::Run(_) => None,
        };
        draft.line(Some(step.id), Event::Done { facts });
        work_out(draft, step, &self.progress(step.id));
        Ok(Name::Lines)
    }

    fn skip(&self, draft: &mut Draft<'_>, step: StepId, reason: &str) -> Result<Name, Refused> {
        let step = self.open_step(step)?;
        let reason = given(reason)?;
        draft.line(Some(step.id), Event::Skipped { reason });
        Ok(Name::Lines)
    }

    fn reopen(&self, draft: &mut Draft<'_>, step: StepId) -> Result<Name, Refused> {
        self.known(step)?;
        if self.progress(step).status == Status::Open {
            return Err(Refused::NothingToUndo);
        }
        draft.line(Some(step), Event::Reopened);
        Ok(Name::Lines)
    }

    fn override_gate(&self, draft: &mut Draft<'_>, step: StepId, reason: &str) -> Result<Name, Refused> {
        let step = self.open_step(step)?;
        let reason = given(reason)?;
        if !waits(self.ground(), step, draft.now.at).iter().all(Wait::by_hand) {
            return Err(Refused::NotByHand);
        }
        draft.line(Some(step.id), Event::Overridden { reason });
        Ok(Name::Lines)
    }

    /// A part where `place` says; without a place all of it is here: one that was nowhere lies on the
    /// bench now.
    fn place(
        &self,
        draft: &mut Draft<'_>,
        step: StepId,
        part: PartKey,
        place: Option<&PartPlace>,
        here: u32,
    ) -> Result<Name, Refused> {
        let job = self.job();
        let listed = parts::list(&job.sheet, &job.progress)
            .into_iter()
            .find(|line| line.step == step && line.key == part)
            .ok_or(Refused::NoStep)?;
        let (place, here) = match place {
            Some(place) => (place.clone(), here),
            None if listed.place.at_hand() => (listed.place, listed.of),
            None => (PartPlace::OnBench, listed.of),
        };
        let event = Event::Placed {
            part,
            place,
            here,
            of: listed.of,
        };
        draft.line(Some(step), event);
        Ok(Name::Lines)
    }
}

/// What went on the threads was drawn apart: it goes on anew, and its clock begins anew.
fn drawn_apart(draft: &mut Draft<'_>, step: StepId, progress: &StepProgress) {
    if progress.put_on() {
        draft.open_joint(step);
        draft.line(Some(step), Event::JointOpened);
    }
}

/// A reason that was given.
fn given(reason: &str) -> Result<String, Refused> {
    match reason.trim() {
        "" => Err(Refused::NoReason),
        reason => Ok(reason.to_owned()),
    }
}

/// The fit of a seat step whose depth is stated.
fn stated(step: &Step) -> Result<(&Seat, crate::job::kinds::SeatDepth), Refused> {
    match &step.work {
        Work::Seat(seat) => seat.depth.map(|depth| (seat, depth)).ok_or(Refused::NoStep),
        _ => Err(Refused::NoStep),
    }
}

fn measured(
    step: &Step,
    progress: &StepProgress,
    what: &What,
    value: f64,
    unit: &str,
    with: &ReadWith,
) -> Event {
    Event::Measured {
        what: what.clone(),
        value,
        unit: unit.to_owned(),
        tool: with.tool.clone(),
        verdict: readings::in_plan(step, what, value, unit)
            .and_then(|value| readings::judged(step, progress, what, value))
            .map_or(Verdict::Noted, |value| {
                readings::judge(step, progress, what, value)
            }),
        at_c: with.at_c,
        decimals: kept_digits(value, with.decimals),
    }
}

/// Read in mm, with its digits.
fn read_mm(step: &Step, progress: &StepProgress, what: &What, read: Stated) -> Event {
    let with = ReadWith {
        decimals: Some(read.decimals),
        ..ReadWith::default()
    };
    measured(step, progress, what, read.value, "mm", &with)
}

/// A reading as the progress will know it, but for its verdict.
fn reading(what: &What, value: f64, unit: &str) -> Reading {
    Reading {
        what: what.clone(),
        value,
        unit: unit.to_owned(),
        verdict: Verdict::Noted,
        tool: String::new(),
        at_c: None,
        decimals: None,
    }
}

/// Records what is worked out from the readings that stand, where it is new.
fn work_out(draft: &mut Draft<'_>, step: &Step, progress: &StepProgress) {
    for (what, value, unit) in readings::worked_anew(step, progress) {
        draft.line(
            Some(step.id),
            measured(step, progress, &what, value, unit, &ReadWith::default()),
        );
    }
}

/// What is set on no wrench.
fn bare(to: SetTo) -> Setting {
    Setting {
        to,
        tool: String::new(),
        adapter: false,
        instead: None,
    }
}

/// What is set on which wrench; where none can be, what is used `instead`.
fn setting(answer: &PassAnswer, instead: Option<&Instead>) -> Setting {
    match answer {
        PassAnswer::Angle { degrees, .. } => bare(SetTo::Turn(*degrees)),
        PassAnswer::Hand => bare(SetTo::Hand),
        PassAnswer::All(deed) => bare(SetTo::All(*deed)),
        PassAnswer::Torque(answer) if answer.setting.is_none() && instead == Some(&Instead::Hands) => {
            bare(SetTo::Hand)
        }
        PassAnswer::Torque(answer) => {
            let (value, decimals) = figures(&answer.number);
            Setting {
                to: SetTo::Torque {
                    value,
                    unit: answer.unit,
                    decimals,
                },
                tool: answer.wrench.clone().unwrap_or_default(),
                adapter: answer.adapted,
                instead: instead.filter(|_| answer.setting.is_none()).cloned(),
            }
        }
    }
}

/// A printed number and its digits behind the point.
fn figures(number: &str) -> (f64, u8) {
    let decimals = number
        .split_once(['.', ','])
        .map_or(0, |(_, behind)| behind.len() as u8);
    (decimal(number).unwrap_or(0.0), decimals)
}
