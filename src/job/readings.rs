//! The readings a step asks for, what they are called there, and what its limits say of them.

use super::id::ReadingId;
use super::kinds::check::calculated::{self, Outcome};
use super::kinds::check::{bore as bores, worked as working};
use super::kinds::fasten::Lock;
use super::kinds::fasten::fastening::running;
use super::kinds::gauge::answer as gauging;
use super::kinds::select::words::sum_words;
use super::kinds::select::{Select, Trial};
use super::kinds::select::{answer as choice, judge as chosen};
use super::kinds::{Bore, Check, DEPTH_WORDS, DIRECTION_WORDS, Limit, Seat, Work, grid_name};
use super::parts;
use super::progress::StepProgress;
use super::reading::{DEPTH, Fact, GAP, Verdict, What, whole_bore};
use super::saying;
use super::sheet::Step;
use crate::trade::quantity::{Unit, convert, shortest};

impl What {
    /// What it is called in that step, as planned now.
    pub fn name(&self, step: Option<&Step>) -> String {
        let check = step.and_then(|step| match &step.work {
            Work::Check(check) => Some(check),
            _ => None,
        });
        let found = match self {
            Self::Limit(id) => check
                .and_then(|check| limit(check, *id))
                .map(|limit| limit.name.clone()),
            Self::Radius(id) => check
                .and_then(|check| limit(check, *id))
                .map(|limit| format!("{}: radius it is read at", limit.name)),
            Self::Place {
                bore: id,
                journal,
                depth,
                way,
            } => check.and_then(|check| bore(check, *id)).and_then(|bore| {
                let name = match (journal, &bore.journal) {
                    (false, _) => &bore.name,
                    (true, journal) => &journal.as_ref()?.name,
                };
                let depth = DEPTH_WORDS.get(usize::from(*depth))?;
                let way = DIRECTION_WORDS.get(usize::from(*way))?;
                Some(grid_name(name, depth, way))
            }),
            Self::Depth => return DEPTH.to_owned(),
            Self::Gap => return GAP.to_owned(),
            Self::Running => return "running torque".to_owned(),
            Self::Reached => return HOLE_IN_LINE.to_owned(),
            Self::ReachedAt(place) => return of_bolt(step, *place, HOLE_IN_LINE),
            Self::Uses => return "tightened before, times".to_owned(),
            Self::Free(place) => return of_bolt(step, *place, "free length"),
            Self::Tight(place) => return of_bolt(step, *place, "tight length"),
            Self::Stretch(place) => return of_bolt(step, *place, "stretch"),
            Self::At(id) => select(step).and_then(|select| {
                let place = select.places.iter().find(|place| place.id == *id)?;
                Some(place.name.clone())
            }),
            Self::Pack => return "what was put in".to_owned(),
            Self::Widest => return "clearance at the widest place".to_owned(),
            Self::Narrow => return "clearance at the narrow end".to_owned(),
            Self::Trial | Self::TurnTight | Self::TurnLoose => {
                let trial = select(step).and_then(|select| select.trial.as_ref());
                let name = trial.map_or("reading with it in", Trial::name);
                return match self {
                    Self::TurnTight => format!("{name}, tightened"),
                    Self::TurnLoose => format!("{name}, loose"),
                    _ => name.to_owned(),
                };
            }
            Self::Turning => {
                return match step.map(|step| &step.work) {
                    Some(Work::Turn(turn)) if !turn.what.is_empty() => turn.what.clone(),
                    _ => "how it turns".to_owned(),
                };
            }
            Self::Part(key) => {
                let name = step.and_then(|step| parts::name(step, *key));
                return name.unwrap_or_else(|| "a part no longer in the plan".to_owned());
            }
            Self::PutIn => {
                return match step.map(|step| &step.work) {
                    Some(Work::Fill(fill)) => fill.amount_name().to_owned(),
                    _ => "put in".to_owned(),
                };
            }
            Self::Skin(_) => return "open time".to_owned(),
            Self::RanAt => return "run warm to".to_owned(),
            Self::RanFor => return "run for".to_owned(),
            Self::Fact(fact) => return fact.name(step),
            Self::Named(name) => return name.clone(),
        };
        found.unwrap_or_else(|| "a reading no longer in the plan".to_owned())
    }

    /// What is judged where this was read is called: the bore, or the reading.
    pub fn judged_name(&self, step: &Step) -> String {
        match (self, &step.work) {
            (Self::Place { bore: id, .. }, Work::Check(check)) => {
                bore(check, *id).map_or(String::new(), |bore| bore.name.clone())
            }
            _ => self.name(Some(step)),
        }
    }

    /// The reading of that name in a step as planned: how form 1 knew it.
    pub fn by_name(step: &Step, name: &str) -> Option<Self> {
        let all = [Self::Depth, Self::Gap, Self::Running];
        asked(step)
            .into_iter()
            .chain(all)
            .find(|what| what.name(Some(step)) == name)
    }
}

/// A castle nut's torque, as it is asked.
const HOLE_IN_LINE: &str = "torque with the hole in line";

/// A fastener's reading by the manual's own number, else by its place from 1.
fn of_bolt(step: Option<&Step>, place: u8, words: &str) -> String {
    let name = match step.map(|step| &step.work) {
        Some(Work::Fasten(fasten)) => fasten.name(usize::from(place)),
        _ => (u16::from(place) + 1).to_string(),
    };
    format!("bolt {name}, {words}")
}

fn select(step: Option<&Step>) -> Option<&Select> {
    match step.map(|step| &step.work) {
        Some(Work::Select(select)) => Some(select),
        _ => None,
    }
}

/// The reading of that number.
pub fn limit(check: &Check, id: ReadingId) -> Option<&Limit> {
    check.readings.iter().find(|limit| limit.id == id)
}

/// The bore of that number.
pub fn bore(check: &Check, id: ReadingId) -> Option<&Bore> {
    check.bores.iter().find(|bore| bore.id == id)
}

/// Every reading a step asks for, in order.
pub fn asked(step: &Step) -> Vec<What> {
    match &step.work {
        Work::Check(check) => {
            let measured = check.readings.iter().filter(|limit| limit.worked.is_none());
            let limits = measured.flat_map(|limit| {
                let radius = limit.asks_radius().then_some(What::Radius(limit.id));
                radius.into_iter().chain([What::Limit(limit.id)])
            });
            let grids = check.bores.iter().flat_map(|bore| {
                let journal = bore.journal.iter().flat_map(|_| What::grid(bore.id, true));
                What::grid(bore.id, false).chain(journal)
            });
            limits.chain(grids).collect()
        }
        Work::Seat(Seat {
            depth: Some(depth), ..
        }) => {
            let gap = depth.gap_mm.map(|_| What::Gap);
            std::iter::once(What::Depth).chain(gap).collect()
        }
        Work::Fasten(fasten) => {
            let uses = fasten.most_uses().map(|_| What::Uses);
            let running = fasten.self_locking.then_some(What::Running);
            let before = uses.into_iter().chain(running).chain(fasten.lengths());
            let reached = fasten.castle_nuts();
            let locked = (fasten.lock != Lock::None).then_some(What::Fact(Fact::Locked));
            before.chain(reached).chain(locked).collect()
        }
        Work::Select(select) => choice::asked(select),
        Work::Gauge(_) => gauging::ASKED.to_vec(),
        Work::Fill(fill) => {
            let amount = fill.asks_amount().then_some(What::PutIn);
            let level = (!fill.level.is_empty()).then_some(What::Fact(Fact::Level));
            amount.into_iter().chain(level).collect()
        }
        Work::Run(run) => run.asked(),
        Work::Clean(_) | Work::Fit(_) | Work::Bond(_) | Work::Seat(_) | Work::Lift(_) | Work::Turn(_) => {
            Vec::new()
        }
    }
}

/// What is worked out from the readings of a check: never asked for.
pub fn worked_out(step: &Step) -> Vec<What> {
    let readings = match &step.work {
        Work::Check(check) => check.readings.as_slice(),
        _ => &[],
    };
    let worked = readings.iter().filter(|limit| limit.worked.is_some());
    worked.map(|limit| What::Limit(limit.id)).collect()
}

/// What is worked out from the readings that stand and was not yet recorded as that: value and unit.
pub fn worked_anew<'a>(step: &'a Step, progress: &StepProgress) -> Vec<(What, f64, &'a str)> {
    let anew = |what: What| {
        let value = value(step, progress, &what)?;
        let unit = unit(step, &what).unwrap_or_default();
        let stands = progress.reading(&what);
        let known = stands.is_some_and(|reading| reading.value == value && reading.unit == unit);
        (!known).then_some((what, value, unit))
    };
    worked_out(step).into_iter().filter_map(anew).collect()
}

/// Whether it is counted: only whole numbers are.
pub fn counted(step: &Step, what: &What) -> bool {
    match (&step.work, what) {
        (Work::Check(check), What::Limit(id)) => limit(check, *id).is_some_and(|limit| limit.whole),
        _ => false,
    }
}

/// The reading of that number where it is worked out.
pub fn worked<'a>(step: &'a Step, what: &What) -> Option<(&'a Check, &'a Limit)> {
    match (&step.work, what) {
        (Work::Check(check), What::Limit(id)) => {
            let limit = limit(check, *id).filter(|limit| limit.worked.is_some())?;
            Some((check, limit))
        }
        _ => None,
    }
}

/// What a reading that a calculation works out comes to; none of any other.
fn outcome(step: &Step, progress: &StepProgress, what: &What) -> Option<Outcome> {
    let (check, limit) = worked(step, what)?;
    let read = |id| in_unit(step, progress, &What::Limit(id));
    calculated::outcome(&check.readings, limit, &read)
}

/// Why a calculation can't work that reading out although everything it is fed with was read; of one that no
/// reading feeds, once the step's readings are all there.
pub fn not_worked_out(step: &Step, progress: &StepProgress, what: &What) -> Option<String> {
    let Outcome::Cannot(why) = outcome(step, progress, what)? else {
        return None;
    };
    let (_, limit) = worked(step, what)?;
    let all_read = || {
        asked(step)
            .iter()
            .all(|what| value(step, progress, what).is_some())
    };
    (calculated::is_read(limit) || all_read()).then_some(why)
}

/// How a reading that is worked out comes about, line by line; nothing of one whose way is said in a word.
pub fn how(step: &Step, progress: &StepProgress, what: &What) -> Vec<String> {
    let Some((check, limit)) = worked(step, what) else {
        return Vec::new();
    };
    let read = |id| in_unit(step, progress, &What::Limit(id));
    calculated::how(&check.readings, limit, &read)
}

/// The first reading a step still lacks; one worked out only where the plan names nothing to work it out from.
pub fn missing(step: &Step, progress: &StepProgress) -> Option<What> {
    let all = asked(step).into_iter().chain(worked_out(step));
    all.into_iter().find(|what| match (&step.work, what) {
        (_, What::Fact(fact)) => progress.said(*fact).is_none(),
        // How often is counted on from what was said.
        (Work::Fasten(fasten), What::Uses) => fasten.uses_unsaid(progress),
        // What can't be worked out is found, not missing.
        _ => value(step, progress, what).is_none() && not_worked_out(step, progress, what).is_none(),
    })
}

/// The first finding of a run that comes before what it still lacks: a leak is seen to while it is known,
/// not after everything else was asked.
pub fn stops_the_run(step: &Step, progress: &StepProgress) -> Option<What> {
    let Work::Run(run) = &step.work else {
        return None;
    };
    let next = missing(step, progress);
    let found = findings(step, progress);
    let so_far = run
        .asked()
        .into_iter()
        .take_while(|what| Some(what) != next.as_ref());
    so_far.into_iter().find(|what| found.contains(what))
}

/// The unit the plan asks for that reading in, where it names one.
pub fn unit<'a>(step: &'a Step, what: &What) -> Option<&'a str> {
    match (&step.work, what) {
        (Work::Check(check), What::Limit(id)) => limit(check, *id).map(|limit| limit.unit.as_str()),
        (Work::Check(check), What::Radius(id)) => {
            let per = limit(check, *id).and_then(|limit| limit.per);
            per.map(Unit::symbol)
        }
        (Work::Check(_), What::Place { .. }) => Some("mm"),
        (Work::Fill(fill), What::PutIn) => Some(fill.unit().symbol()),
        (Work::Run(run), What::RanAt) => Some(run.scale().symbol()),
        (Work::Run(_), What::RanFor) => Some("min"),
        (Work::Fasten(fasten), What::Reached | What::ReachedAt(_)) => {
            fasten.may_reach(what).map(|torque| torque.unit.symbol())
        }
        (Work::Fasten(fasten), What::Running) => Some(fasten.torque.unit.symbol()),
        (Work::Fasten(fasten), What::Free(_) | What::Tight(_) | What::Stretch(_)) => {
            Some(fasten.length_unit().symbol())
        }
        _ => None,
    }
}

/// The number last read of that, in the unit the plan now asks for; none where what was read can't be told
/// in it.
pub fn value(step: &Step, progress: &StepProgress, what: &What) -> Option<f64> {
    if let Work::Select(select) = &step.work {
        return choice::taken(select, progress, what).map(|reading| reading.value);
    }
    if let Work::Gauge(gauge) = &step.work {
        return gauging::taken(gauge, progress, what).map(|reading| reading.value);
    }
    if let Some((check, limit)) = worked(step, what) {
        let worked = working::work_out(&check.readings, limit, |id| {
            in_unit(step, progress, &What::Limit(id))
        });
        return judged(step, progress, what, worked?);
    }
    judged(step, progress, what, in_unit(step, progress, what)?)
}

/// The number last read of that, in the unit of the plan's limits.
fn in_unit(step: &Step, progress: &StepProgress, what: &What) -> Option<f64> {
    let reading = progress.reading(what)?;
    in_plan(step, what, reading.value, &reading.unit)
}

/// What the limits are asked of, for a number in their unit: itself, or what of it falls to each inch or mm
/// of the radius; none where that is not known.
pub fn judged(step: &Step, progress: &StepProgress, what: &What, value: f64) -> Option<f64> {
    match radius(step, progress, what) {
        None => Some(value),
        Some(radius) => Some(value / radius?),
    }
}

/// The radius a reading is taken at, where its limits are per radius: as planned, or as read.
pub fn radius(step: &Step, progress: &StepProgress, what: &What) -> Option<Option<f64>> {
    let (Work::Check(check), What::Limit(id)) = (&step.work, what) else {
        return None;
    };
    let limit = limit(check, *id).filter(|limit| limit.per.is_some())?;
    let read = || in_unit(step, progress, &What::Radius(*id));
    Some(limit.radius.or_else(read).filter(|radius| *radius > 0.0))
}

/// A number read in `unit`, in the one the plan asks for; none where the one can't be told in the other.
pub fn in_plan(step: &Step, what: &What, value: f64, unit: &str) -> Option<f64> {
    self::unit(step, what).map_or(Some(value), |own| convert(value, unit, own))
}

/// What was read stands in a unit that the plan's can't be told in: what the limits said then stands too.
fn stays_outside(step: &Step, progress: &StepProgress, what: &What) -> bool {
    let reading = progress.reading(what);
    unit(step, what).is_some() && reading.is_some_and(|reading| reading.verdict == Verdict::Outside)
}

/// The limits of that, in a fixed order: what an acceptance was given under. They are in the unit it was read
/// in, so that a reason stands while the plan means the same, and for no other size.
pub fn limits(step: &Step, progress: &StepProgress, what: &What) -> Vec<Option<f64>> {
    let mut limits = planned_limits(step, progress, what);
    if let Some((_, limit)) = worked(step, what) {
        // What a calculation refuses may come to the same number again from others.
        let read = |id| in_unit(step, progress, &What::Limit(id));
        limits.extend(calculated::fed_numbers(limit, &read));
    }
    limits
}

fn planned_limits(step: &Step, progress: &StepProgress, what: &What) -> Vec<Option<f64>> {
    let mut planned = planned(step, what);
    if worked(step, what).is_some() {
        // A plan that works it out in another way has another value.
        planned.push(value(step, progress, what));
    }
    if let Some(radius) = radius(step, progress, what) {
        planned.push(radius);
    }
    let Some((own, reading)) = unit(step, what).zip(progress.reading(what)) else {
        return planned;
    };
    let as_read = |limit: Option<f64>| match limit {
        None => Some(None),
        Some(limit) => convert(limit, own, &reading.unit).map(Some),
    };
    let all: Option<Vec<Option<f64>>> = planned.into_iter().map(as_read).collect();
    all.unwrap_or_default()
}

/// What was read in a step and what the plan's limits say of it now, by name, in the order it is asked for.
pub fn said(step: &Step, progress: &StepProgress) -> Vec<(String, String)> {
    let all = asked(step).into_iter().chain(worked_out(step));
    all.filter_map(|what| {
        let accepted = progress.accepted.iter().find(|(own, ..)| *own == what);
        let accepted = accepted.map_or(String::new(), |(.., reason)| format!(" · accepted: {reason}"));
        let Some(value) = value(step, progress, &what) else {
            let why = not_worked_out(step, progress, &what)?;
            return Some((what.name(Some(step)), format!("{why}{accepted}")));
        };
        let read = progress.reading(&what);
        let (figure, unit) = match read {
            Some(read) => (read.text(), read.unit.as_str()),
            None => (
                crate::trade::quantity::trimmed(value, 5),
                unit(step, &what).unwrap_or_default(),
            ),
        };
        let verdict = judge(step, progress, &what, value).words();
        Some((
            what.name(Some(step)),
            format!("{figure} {unit} · {verdict}{accepted}"),
        ))
    })
    .collect()
}

/// The limits of that in words, for who is about to read it; empty where the plan has none.
pub fn limit_words(step: &Step, what: &What) -> String {
    match (&step.work, what) {
        (Work::Check(check), What::Limit(id)) => {
            limit(check, *id).map_or(String::new(), super::kinds::Limit::words)
        }
        (
            Work::Check(check),
            What::Place {
                bore: id,
                journal: false,
                ..
            },
        ) => bore(check, *id).map_or(String::new(), super::kinds::check::bore::size_words),
        (Work::Fasten(fasten), What::Uses) => fasten.reuse_words(),
        (Work::Fasten(fasten), What::Reached | What::ReachedAt(_)) => {
            let most = fasten.may_reach(what);
            most.map_or(String::new(), |most| format!("manual {}", most.text()))
        }
        (Work::Fasten(fasten), What::Tight(_)) => fasten.stretch_words(),
        (Work::Fasten(fasten), What::Free(_)) => {
            let unit = unit(step, what).unwrap_or_default();
            let longest = fasten.longest();
            longest.map_or(String::new(), |longest| {
                format!("at most {} {unit}", longest.text())
            })
        }
        (Work::Seat(seat), What::Depth | What::Gap) => {
            let stated = seat.depth.as_ref();
            stated.map_or(String::new(), super::kinds::seat::depth::target_words)
        }
        (Work::Gauge(gauge), What::Widest | What::Narrow) => {
            super::kinds::gauge::words::limits_words(gauge).join(" ")
        }
        (Work::Select(select), What::Trial | What::TurnTight | What::TurnLoose) => select
            .trial
            .as_ref()
            .map_or(String::new(), |trial| trial.limit_words(select.unit)),
        _ => String::new(),
    }
}

/// The limits of that as planned, in a fixed order.
fn planned(step: &Step, what: &What) -> Vec<Option<f64>> {
    match (&step.work, what) {
        (Work::Check(check), What::Limit(id)) => {
            limit(check, *id).map_or(Vec::new(), |limit| limit.all().to_vec())
        }
        (Work::Check(check), What::Place { bore: id, .. }) => bore(check, *id).map_or(Vec::new(), |bore| {
            let journal = bore.journal.as_ref();
            vec![
                bore.least_mm,
                bore.most_mm,
                bore.out_of_round_mm,
                bore.taper_mm,
                journal.and_then(|journal| journal.clearance_least_mm),
                journal.and_then(|journal| journal.clearance_most_mm),
                bore.worn_least_mm,
                bore.worn_most_mm,
                journal.and_then(|journal| journal.clearance_worn_mm),
            ]
        }),
        (Work::Seat(seat), What::Depth | What::Gap) => seat.depth.map_or(Vec::new(), |depth| {
            vec![Some(depth.least_mm), Some(depth.most_mm), depth.gap_mm]
        }),
        (Work::Fasten(fasten), What::Free(_)) => vec![fasten.longest().map(|most| most.value)],
        (Work::Fasten(fasten), What::Reached | What::ReachedAt(_)) => {
            let torque = fasten.may_reach(what);
            vec![torque.map(|torque| torque.low), torque.map(|torque| torque.high)]
        }
        (Work::Fasten(fasten), What::Running) => vec![Some(fasten.torque.target)],
        (Work::Fasten(fasten), What::Stretch(_)) => {
            let stated = fasten.stated_lengths();
            let limits = [stated.stretch_least, stated.stretch_most];
            limits.map(|limit| limit.map(|limit| limit.value)).to_vec()
        }
        (Work::Gauge(gauge), What::Widest) => vec![gauge.least, gauge.most, gauge.worn],
        (Work::Gauge(gauge), What::Narrow) => vec![gauge.taper],
        (Work::Select(select), What::Pack) => vec![Some(select.allowance), select.tolerance],
        (Work::Select(select), What::Trial) => {
            let trial = select.trial.as_ref();
            trial.map_or(Vec::new(), |trial| vec![trial.least, trial.most])
        }
        (Work::Fill(fill), What::PutIn) => {
            let stated = fill.stated();
            vec![stated.map(|stated| fill.unit().value_of(stated.volume()))]
        }
        (Work::Run(run), What::RanAt) => {
            let (least, most) = run.warmth();
            vec![least, most]
        }
        (Work::Run(run), What::RanFor) => vec![run.minutes],
        _ => Vec::new(),
    }
}

/// What the plan's limits say of a value of that reading now, in the unit it is read in, beside what else was
/// read.
pub fn judge(step: &Step, progress: &StepProgress, what: &What, value: f64) -> Verdict {
    if let (Work::Check(check), What::Limit(id)) = (&step.work, what) {
        let own = limit(check, *id).map_or(Verdict::Noted, |limit| limit.judge(value));
        return match outcome(step, progress, what) {
            Some(Outcome::Found(found)) => found.judged(own),
            _ => own,
        };
    }
    let holds = match (&step.work, what) {
        (Work::Seat(seat), What::Depth) => seat
            .depth
            .map(|stated| super::kinds::seat::depth::judge(&stated, seat.length_mm, value).depth_holds),
        (Work::Seat(seat), What::Gap) => seat
            .depth
            .filter(|stated| stated.gap_mm.is_some())
            .map(|stated| super::kinds::seat::depth::gap_holds(&stated, value)),
        (Work::Fasten(fasten), What::Uses) => fasten.most_uses().map(|_| fasten.used_holds(value)),
        (Work::Fasten(fasten), What::Free(_)) => fasten.longest().map(|_| fasten.length_holds(value)),
        (Work::Fasten(fasten), What::Reached | What::ReachedAt(_)) => {
            fasten.reached_holds(what, value, running(progress))
        }
        (Work::Fasten(fasten), What::Running) => Some(fasten.runs_freely(value)),
        (Work::Fasten(fasten), What::Stretch(_)) => fasten.stretches().then(|| fasten.stretch_holds(value)),
        (Work::Gauge(gauge), What::Widest) => gauging::holds(gauge, value),
        (Work::Select(select), What::Trial) => select
            .trial
            .as_ref()
            .filter(|trial| !trial.loose)
            .and_then(|trial| trial.holds(value)),
        (Work::Fill(fill), What::PutIn) => fill.near(value),
        (Work::Run(run), What::RanAt) => run.warm(value),
        (Work::Run(run), What::RanFor) => run.long_enough(value),
        // A place of a grid has no limit of its own: the bore is judged as a whole.
        _ => None,
    };
    Verdict::of(holds)
}

/// What of a step is not settled, as the plan now stands: readings outside their limits (any place of a
/// bore stands for the whole), a tight spot, parts that are not fit; unless accepted with a reason.
pub fn findings(step: &Step, progress: &StepProgress) -> Vec<What> {
    let accepted = |what: &What| progress.accepted(what, &limits(step, progress, what)).is_some();
    let worked_out = match &step.work {
        Work::Fasten(fasten) => fasten.stretch(),
        _ => worked_out(step),
    };
    // Used too often asks for new ones: there is nothing to accept.
    let read = asked(step).into_iter().filter(|what| *what != What::Uses);
    let single = read.chain(worked_out).filter(|what| {
        saying::fails(progress, what)
            || match value(step, progress, what) {
                Some(value) => judge(step, progress, what, value) == Verdict::Outside,
                None => not_worked_out(step, progress, what).is_some() || stays_outside(step, progress, what),
            }
    });
    let bores = match &step.work {
        Work::Check(check) => check.bores.as_slice(),
        _ => &[],
    };
    let whole = bores
        .iter()
        .filter(|bore| bores::answer(bore, progress).outside())
        .map(|bore| whole_bore(bore.id));
    let put_in = match &step.work {
        Work::Select(select) => chosen::findings(select, progress),
        Work::Gauge(gauge) => gauging::findings(gauge, progress),
        _ => Vec::new(),
    };
    let binds = progress.felt.as_ref().is_some_and(|at| !at.is_empty());
    let turning = (binds && matches!(step.work, Work::Turn(_))).then_some(What::Turning);
    let unfit = progress
        .unfit
        .iter()
        .filter(|(part, _)| parts::name(step, *part).is_some())
        .map(|(part, _)| What::Part(*part));
    let all = unfit.chain(single).chain(whole).chain(put_in).chain(turning);
    all.filter(|what| !accepted(what)).collect()
}

/// A finding in words, with the part it waits for: "“bore across” is outside its limits: 62.5 mm".
pub fn finding_words(step: &Step, progress: &StepProgress, what: &What) -> String {
    let words = found_words(step, progress, what);
    match progress.ordered(what) {
        Some(part) => format!("{words} (“{}” ordered)", What::Part(part).name(Some(step))),
        None => words,
    }
}

fn found_words(step: &Step, progress: &StepProgress, what: &What) -> String {
    let name = what.judged_name(step);
    match what {
        What::Turning => format!(
            "“{name}” is tight {}",
            progress.felt.as_deref().unwrap_or_default()
        ),
        What::Part(part) => format!(
            "“{name}” is not fit: {}",
            progress.unfit(*part).unwrap_or_default()
        ),
        What::Place { .. } => format!("“{name}” is outside its limits"),
        What::Skin(_) => "It skinned before this was done".to_owned(),
        What::Fact(fact) => {
            let said = progress.said(*fact).map_or("", |said| said.words.as_str());
            fact.words(Some(step), false, said)
        }
        What::PutIn => {
            let value = read_words(step, progress, what);
            format!("“{name}” is not near the stated amount{value}")
        }
        What::Pack => {
            let words = match (&step.work, progress.rounds.last()) {
                (Work::Select(_), Some(round)) => sum_words(&round.pieces, &round.unit),
                _ => name,
            };
            format!("{words}: not what the plan asks for")
        }
        What::Trial | What::TurnTight | What::TurnLoose => {
            let trial = select(Some(step)).and_then(|select| Some((select, select.trial.as_ref()?)));
            let value = trial.and_then(|(select, trial)| {
                let read = choice::result(select, trial, progress)?;
                Some(format!(": {} {}", shortest(read), trial.unit(select.unit)))
            });
            format!("“{name}” is outside its limits{}", value.unwrap_or_default())
        }
        What::Widest if matches!(&step.work, Work::Gauge(gauge) if gauging::off_card(gauge, progress).contains(what)) =>
        {
            format!("“{name}” is beyond what its card tells")
        }
        What::Narrow => format!("“{name}” does not go with the widest place, or with its card"),
        What::At(_)
        | What::Widest
        | What::Limit(_)
        | What::Radius(_)
        | What::Depth
        | What::Gap
        | What::Running
        | What::Reached
        | What::ReachedAt(_)
        | What::Uses
        | What::Free(_)
        | What::Tight(_)
        | What::Stretch(_)
        | What::RanAt
        | What::RanFor
        | What::Named(_) => {
            let value = read_words(step, progress, what);
            if let Some(why) = not_worked_out(step, progress, what) {
                return format!("“{name}” can’t be worked out. {}", why.trim_end_matches('.'));
            }
            match outcome(step, progress, what) {
                // The calculation's own words say what to do.
                Some(Outcome::Found(found)) if found.answer.refused => {
                    let words = found.answer.verdict;
                    format!("“{name}”{}. {}", value.trim_end(), words.trim_end_matches('.'))
                }
                _ => format!("“{name}” is outside its limits{}", value.trim_end()),
            }
        }
    }
}

/// ": 62.5 mm", as it was read or is worked out; nothing where it was not.
fn read_words(step: &Step, progress: &StepProgress, what: &What) -> String {
    if let Some((_, limit)) = worked(step, what) {
        let value = value(step, progress, what);
        return value.map_or(String::new(), |value| format!(": {}", limit.figure(value)));
    }
    progress.reading(what).map_or(String::new(), |reading| {
        let at = radius_words(step, progress, what);
        format!(": {} {}{at}", reading.text(), reading.unit)
    })
}

/// " at a radius of 4 in"; nothing where the limits are not per radius.
pub fn radius_words(step: &Step, progress: &StepProgress, what: &What) -> String {
    let known = radius(step, progress, what).flatten();
    known.map_or(String::new(), |radius| {
        let id = match what {
            What::Limit(id) => *id,
            _ => ReadingId::default(),
        };
        let per = unit(step, &What::Radius(id)).unwrap_or_default();
        format!(" at a radius of {} {per}", shortest(radius))
    })
}
