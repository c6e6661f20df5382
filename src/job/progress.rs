//! How far a job is: always worked out from its record, never stored beside it.

use super::clock::ClockId;
use super::kinds::{Fasten, Gauged, Piece, Work};
use super::part::{PartKey, PartPlace, PartState};
use super::reading::{Fact, Verdict, What, figure, stretched};
use super::record::{Entry, Event, Goal, Instead, Record};
use super::sheet::{Sheet, Step, StepId};
use crate::trade::moment::Moment;
use crate::trade::quantity::{convert, trimmed};
use std::collections::{BTreeMap, BTreeSet};

/// Whether a step is still to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Status {
    /// Still to do, or under way.
    #[default]
    Open,
    /// Closed at that instant.
    Done(Moment),
    /// Skipped at that instant, with a reason in the record.
    Skipped(Moment),
}

/// One reading taken in a step.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// What was measured.
    pub what: What,
    /// Its number, in `unit`.
    pub value: f64,
    /// The unit's symbol.
    pub unit: String,
    /// What the limits said.
    pub verdict: Verdict,
    /// What it was read with.
    pub tool: String,
    /// The temperature it was read at, °C.
    pub at_c: Option<f64>,
    /// Digits behind the point, where it was typed with more than its number needs.
    pub decimals: Option<u8>,
}

impl Reading {
    /// Its digits, as it was read.
    pub fn text(&self) -> String {
        figure(self.value, self.decimals)
    }

    /// As a field of that unit shows it: as it was read where that is its unit, else to five figures; empty
    /// where it can't be told.
    pub fn shown_in(&self, unit: &str) -> String {
        if self.unit == unit {
            return self.text().replace('-', "−");
        }
        convert(self.value, &self.unit, unit).map_or(String::new(), |value| trimmed(value, 5))
    }
}

/// What was said of something looked at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// What it is.
    pub fact: Fact,
    /// It holds.
    pub holds: bool,
    /// What more was said.
    pub words: String,
    /// When.
    pub at: Moment,
}

/// How far one step is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StepProgress {
    /// Open, done or skipped.
    pub status: Status,
    /// Cautions acknowledged, by id.
    pub acknowledged: BTreeSet<String>,
    /// Fasteners brought to torque since they were last loosened: (pass, place), and what for; nothing
    /// is known of that in lines of form 1.
    pub tallies: BTreeMap<(usize, usize), Option<Goal>>,
    /// How many times its fasteners were loosened, to be brought to torque again.
    pub loosened: usize,
    /// What its fasteners are brought to torque with where no wrench on the bench can be set to it.
    pub instead: Option<Instead>,
    /// Clocks started from this step, oldest first.
    pub clocks: Vec<ClockId>,
    /// Its joint was opened, and nothing put on since.
    pub joint_open: bool,
    /// Readings, oldest first.
    pub readings: Vec<Reading>,
    /// Readings outside their limits that were accepted since they were taken, under which limits, and why.
    pub accepted: Vec<(What, Vec<Option<f64>>, String)>,
    /// Its gate was overridden.
    pub overridden: bool,
    /// How it turned when it was last felt: free where empty, else where it binds.
    pub felt: Option<String>,
    /// What was looked at and said, each by its last answer.
    pub said: Vec<Said>,
    /// Parts that are not fit, and what is wrong with each.
    pub unfit: Vec<(PartKey, String)>,
    /// Findings that wait for a part on order.
    pub ordered: Vec<(What, PartKey)>,
    /// Parts that must be new, and are.
    pub new_on: Vec<PartKey>,
    /// How many times the step's fasteners were tightened before, as said and counted on since.
    pub uses: Option<f64>,
    /// The codes read last: down the side of the table, and across.
    pub codes: Option<(String, String)>,
    /// What was put in, round by round.
    pub rounds: Vec<Round>,
    /// What was done of a gauging since its plastic was laid.
    pub gauged: Vec<Gauged>,
    /// How many readings stood before the present round.
    pub round_from: usize,
}

/// Once that something chosen was put in.
#[derive(Debug, Clone, PartialEq)]
pub struct Round {
    /// What.
    pub pieces: Vec<Piece>,
    /// The unit of its sizes.
    pub unit: String,
    /// How many readings stood before it.
    pub from: usize,
}

/// What a trip through another unit may leave behind, as a share.
const LAST_BITS: f64 = 1e-9;

/// Whether both are the same limits; an older record knows fewer of them, which were none.
fn same_limits(then: &[Option<f64>], now: &[Option<f64>]) -> bool {
    let at = |all: &[Option<f64>], at: usize| all.get(at).copied().flatten();
    (0..then.len().max(now.len())).all(|place| match (at(then, place), at(now, place)) {
        // Told in another unit, a limit comes back with other last bits.
        (Some(then), Some(now)) => (then - now).abs() <= LAST_BITS * then.abs().max(now.abs()).max(1.0),
        (then, now) => then == now,
    })
}

impl StepProgress {
    /// Whether the compound is on and its joint has not been opened since.
    pub fn put_on(&self) -> bool {
        !self.clocks.is_empty() && !self.joint_open
    }

    /// Done or skipped.
    pub fn closed(&self) -> bool {
        self.status != Status::Open
    }

    /// Why a reading outside these limits was accepted, where it was.
    pub fn accepted(&self, what: &What, limits: &[Option<f64>]) -> Option<&str> {
        let mut all = self.accepted.iter();
        let found = all.find(|(own, under, _)| own == what && same_limits(under, limits));
        found.map(|(.., reason)| reason.as_str())
    }

    /// What was last said of that.
    pub fn said(&self, fact: Fact) -> Option<&Said> {
        self.said.iter().find(|said| said.fact == fact)
    }

    /// What is wrong with that part; none where it is fit, or nobody looked.
    pub fn unfit(&self, part: PartKey) -> Option<&str> {
        let found = self.unfit.iter().find(|(own, _)| *own == part);
        found.map(|(_, words)| words.as_str())
    }

    /// The part on order that this finding waits for.
    pub fn ordered(&self, what: &What) -> Option<PartKey> {
        self.ordered
            .iter()
            .find(|(own, _)| own == what)
            .map(|(_, part)| *part)
    }

    /// It was looked at anew: what was decided of it holds no more.
    fn look_again(&mut self, what: &What) {
        let whole = what.whole();
        self.accepted.retain(|(own, ..)| *own != whole && own != what);
        self.ordered.retain(|(own, _)| *own != whole && own != what);
    }

    /// The latest reading of that; one of a round, since that round began.
    pub fn reading(&self, what: &What) -> Option<&Reading> {
        let from = if what.of_round() { self.round_from } else { 0 };
        let counts = self.readings.get(from..).unwrap_or_default();
        counts.iter().rev().find(|reading| reading.what == *what)
    }

    /// The readings taken in that round.
    pub fn readings_of(&self, round: usize) -> &[Reading] {
        let from = self
            .rounds
            .get(round)
            .map_or(self.readings.len(), |round| round.from);
        let to = self
            .rounds
            .get(round + 1)
            .map_or(self.readings.len(), |next| next.from);
        self.readings.get(from..to).unwrap_or_default()
    }

    /// The stretch that follows where `what` is now read as `value`, and the fastener's other length is known:
    /// in that unit; none where the other can't be told in it.
    pub fn stretched(&self, what: &What, value: f64, unit: &str) -> Option<(What, f64)> {
        let other = |what: What| {
            let reading = self.reading(&what)?;
            convert(reading.value, &reading.unit, unit)
        };
        let (at, free, tight) = match what {
            What::Free(at) => (*at, value, other(What::Tight(*at))?),
            What::Tight(at) => (*at, other(What::Free(*at))?, value),
            _ => return None,
        };
        Some((What::Stretch(at), stretched(free, tight, unit)))
    }

    /// The digits that either length of that stretch was read with in that unit.
    pub fn digits_of(&self, stretch: &What, unit: &str) -> Option<u8> {
        let What::Stretch(at) = stretch else {
            return None;
        };
        let read = [What::Free(*at), What::Tight(*at)];
        let read = read.iter().filter_map(|what| self.reading(what));
        let own = read.filter(|reading| reading.unit == unit);
        own.filter_map(|reading| reading.decimals).max()
    }

    /// The fasteners of `fasten` that stand as the plan now wants them: (pass, place).
    pub fn tallied(&self, fasten: &Fasten) -> Vec<(usize, usize)> {
        let holds = |pass: usize, place: usize, goal: &Option<Goal>| {
            goal.is_none_or(|goal| fasten.at(place).goal(pass).is(goal))
        };
        let stands = |pass: usize, place: usize| {
            let place = if fasten.to_all(pass) { 0 } else { place };
            let goal = self.tallies.get(&(pass, place));
            goal.is_some_and(|goal| holds(pass, place, goal))
        };
        // An angle, or the same torque again, stands on what came before it on that fastener.
        let on_what_was = |pass: usize, place: usize| {
            !fasten.stands_on_before(pass) || (0..pass).all(|before| stands(before, place))
        };
        let passes = fasten.pass_count();
        let tallies = self.tallies.keys().copied();
        tallies
            .filter(|(pass, place)| *pass < passes && *place < fasten.touches(*pass))
            .filter(|(pass, place)| stands(*pass, *place) && on_what_was(*pass, *place))
            .collect()
    }

    /// Fasteners that were brought to more than the plan now wants of any pass, or turned by an angle that
    /// counts no more: they are loosened first.
    pub fn too_tight(&self, fasten: &Fasten) -> usize {
        let stand = self.tallied(fasten);
        let tight = |place: &usize| {
            let own = fasten.at(*place);
            let over = |goal: &Goal| {
                let mut most = (0..own.pass_count()).map(|pass| own.goal(pass));
                !most.any(|wanted| wanted.is(*goal) || wanted.above(*goal))
            };
            let mut of_place = self.tallies.iter().filter(|((_, at), _)| at == place);
            of_place.any(|(at, goal)| match goal {
                Some(Goal::Turn { .. }) => !stand.contains(at),
                Some(goal) => over(goal),
                None => false,
            })
        };
        (0..fasten.layout.count()).filter(tight).count()
    }
}

/// How far the whole job is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Progress {
    steps: BTreeMap<StepId, StepProgress>,
    /// When the job was closed.
    pub job_closed: Option<Moment>,
    /// Where parts were last seen.
    pub parts: BTreeMap<(StepId, PartKey), PartState>,
}

impl Progress {
    /// Works the progress out from the record.
    pub fn of(record: &Record) -> Self {
        let mut progress = Self::default();
        record.standing().for_each(|entry| progress.take(entry));
        progress
    }

    /// Adds one entry that is not a taking-back: what a long record's next tally costs.
    pub fn take(&mut self, entry: &Entry) {
        let Some(id) = entry.step else {
            if entry.event == Event::JobClosed {
                self.job_closed = Some(entry.at);
            }
            return;
        };
        let step = self.steps.entry(id).or_default();
        match &entry.event {
            Event::Placed {
                part, place, here, ..
            } => {
                let state = self.parts.entry((id, *part)).or_default();
                state.sent |= *place == PartPlace::AtShop;
                state.place = place.clone();
                state.here = *here;
            }
            Event::Acknowledged { caution } => {
                step.acknowledged.insert(caution.clone());
            }
            Event::Tallied {
                pass, place, goal, ..
            } => {
                // Brought to torque anew, what was read and locked behind the last time holds no more.
                step.readings
                    .retain(|reading| !reading.what.of_length() || matches!(reading.what, What::Free(_)));
                step.said.retain(|said| said.fact != Fact::Locked);
                step.tallies.insert((*pass, *place), *goal);
            }
            Event::WithoutWrench { instead } => step.instead = Some(instead.clone()),
            Event::Loosened => {
                step.used_once_more();
                step.tallies.clear();
                step.instead = None;
                step.loosened += 1;
                // Loose, each is as long as it is now.
                step.readings.retain(|reading| !reading.what.of_length());
                step.said.retain(|said| said.fact != Fact::Locked);
                step.accepted
                    .retain(|(what, ..)| !what.of_length() && *what != What::Fact(Fact::Locked));
                step.ordered.retain(|(what, _)| !what.of_length());
                // What must be new is new once.
                step.new_on.clear();
            }
            // What was on it no longer holds: it goes on anew.
            Event::JointOpened => step.joint_open = true,
            Event::Applied { clock, .. } => {
                step.clocks.push(*clock);
                step.joint_open = false;
            }
            Event::Measured {
                what,
                value,
                unit,
                verdict,
                tool,
                at_c,
                decimals,
            } => {
                step.look_again(what);
                if *what == What::Uses {
                    step.uses = Some(*value);
                }
                step.readings.push(Reading {
                    what: what.clone(),
                    value: *value,
                    unit: unit.clone(),
                    verdict: *verdict,
                    tool: tool.clone(),
                    at_c: *at_c,
                    decimals: *decimals,
                });
            }
            Event::Accepted { what, limits, reason } => {
                step.accepted.push((what.clone(), limits.clone(), reason.clone()));
            }
            Event::Coded { down, across } => {
                step.look_again(&What::Pack);
                step.codes = Some((down.clone(), across.clone()));
            }
            Event::Gauged(done) => {
                if let Gauged::Laid(_) = done {
                    step.look_again(&What::Widest);
                    step.gauged.clear();
                    step.round_from = step.readings.len();
                }
                step.gauged.push(*done);
            }
            Event::Chosen { pieces, unit, .. } => {
                step.look_again(&What::Pack);
                step.look_again(&What::Trial);
                step.round_from = step.readings.len();
                step.rounds.push(Round {
                    pieces: pieces.clone(),
                    unit: unit.clone(),
                    from: step.round_from,
                });
            }
            Event::Said { fact, holds, words } => {
                step.look_again(&What::Fact(*fact));
                step.said.retain(|said| said.fact != *fact);
                step.said.push(Said {
                    fact: *fact,
                    holds: *holds,
                    words: words.clone(),
                    at: entry.at,
                });
            }
            Event::Felt { tight_at } => {
                step.look_again(&What::Turning);
                step.felt = Some(tight_at.clone());
            }
            Event::Judged { part, unfit } => {
                step.look_again(&What::Part(*part));
                step.unfit.retain(|(own, _)| own != part);
                if !unfit.is_empty() {
                    step.unfit.push((*part, unfit.clone()));
                }
            }
            Event::Ordered { what, part } => {
                step.ordered.retain(|(own, _)| own != what);
                step.ordered.push((what.clone(), *part));
            }
            Event::NewOn { part } => {
                step.new_ones(*part);
                step.new_on.push(*part);
            }
            Event::Done { .. } => step.status = Status::Done(entry.at),
            Event::Skipped { .. } => step.status = Status::Skipped(entry.at),
            Event::Reopened => step.status = Status::Open,
            Event::Overridden { .. } => step.overridden = true,
            Event::TakenBack { .. } | Event::Noted { .. } | Event::PhoneClock(_) | Event::JobClosed => {}
        }
    }

    /// Looks at how far that step is without copying it; `None` for one never touched.
    pub fn touched(&self, id: StepId) -> Option<&StepProgress> {
        self.steps.get(&id)
    }

    /// How far that step is; a step never touched is simply open.
    pub fn step(&self, id: StepId) -> StepProgress {
        self.steps.get(&id).cloned().unwrap_or_default()
    }

    /// Whether that step is done or skipped.
    pub fn closed(&self, id: StepId) -> bool {
        self.steps.get(&id).is_some_and(StepProgress::closed)
    }

    /// The first step still open.
    pub fn next_open<'a>(&self, sheet: &'a Sheet) -> Option<&'a Step> {
        sheet.steps.iter().find(|step| !self.closed(step.id))
    }

    /// Where that part of a step is, as far as the record says.
    pub fn part(&self, step: StepId, part: PartKey) -> Option<&PartState> {
        self.parts.get(&(step, part))
    }

    /// How many of the sheet's steps are closed.
    pub fn closed_count(&self, sheet: &Sheet) -> usize {
        sheet.steps.iter().filter(|step| self.closed(step.id)).count()
    }
}

/// The next fastener to bring to torque.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextFastener {
    /// Which pass, from 0.
    pub pass: usize,
    /// Which bolt of the layout, from 0.
    pub place: usize,
    /// How many are done in this pass.
    pub done_in_pass: usize,
}

/// Why a fastener can't be the next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotNext {
    /// There is nothing left to bring to torque, or no such fastener.
    None,
    /// It stands at what the pass asks for.
    Done,
    /// The order is not free, or another was begun: that place comes first.
    First(usize),
}

/// Which fastener comes next in a fasten step: pass by pass in the layout's order, or by several on the
/// same fastener, of which one that was begun comes first.
pub fn next_fastener(step: &Step, progress: &StepProgress) -> Option<NextFastener> {
    let Work::Fasten(fasten) = &step.work else {
        return None;
    };
    let done = progress.tallied(fasten);
    let mut first = 0;
    while first < fasten.pass_count() {
        let places = fasten.places(first).into_iter();
        let open: Vec<NextFastener> = places
            .filter_map(|place| left(fasten, &done, first, place))
            .collect();
        let begun = open.iter().find(|next| next.pass > first);
        if let Some(found) = begun.or(open.first()) {
            return Some(*found);
        }
        first = fasten.round(first).end;
    }
    None
}

/// The fastener at `place` as the next, where the manual leaves the order free and none other was begun.
///
/// # Errors
/// [`NotNext`]: why it can't be.
pub fn chosen_fastener(step: &Step, progress: &StepProgress, place: usize) -> Result<NextFastener, NotNext> {
    let Work::Fasten(fasten) = &step.work else {
        return Err(NotNext::None);
    };
    let next = next_fastener(step, progress).ok_or(NotNext::None)?;
    if place >= fasten.layout.count() {
        return Err(NotNext::None);
    }
    if place == next.place || fasten.to_all(next.pass) {
        return Ok(next);
    }
    let first = fasten.round_of(next.pass);
    match left(fasten, &progress.tallied(fasten), first, place) {
        None => Err(NotNext::Done),
        Some(own) if fasten.any_order(first) && next.pass == first => Ok(own),
        Some(_) => Err(NotNext::First(next.place)),
    }
}

/// What is left to do of the passes on one fastener that begin with `first`, at that place.
fn left(fasten: &Fasten, done: &[(usize, usize)], first: usize, place: usize) -> Option<NextFastener> {
    let pass = fasten.round(first).find(|pass| !done.contains(&(*pass, place)))?;
    let order = fasten.places(first);
    let in_pass = order.iter().filter(|place| done.contains(&(pass, **place)));
    Some(NextFastener {
        pass,
        place,
        done_in_pass: in_pass.count(),
    })
}
