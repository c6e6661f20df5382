//! What the player touches next: mostly what the step asks for, now and then anything at all.

use super::chance::Chance;
use super::promises::entry_ids;
use super::stock;
use halfcase::job::field::Entry;
use halfcase::job::form;
use halfcase::job::kinds::{self, Fasten, Gauged, Piece, Work};
use halfcase::job::night::Night;
use halfcase::job::parts::{self, PartKey, PartPlace};
use halfcase::job::reading::{Fact, What};
use halfcase::job::readings;
use halfcase::job::record::{Instead, PhoneClock};
use halfcase::job::sheet::{JobId, Step, StepId, Units};
use halfcase::job::state::{Ask, Intent, Now, ReadWith, State};
use halfcase::trade::cooling::TimeRange;
use halfcase::trade::gauging::Plastic;
use halfcase::trade::order::Layout;
use halfcase::trade::quantity::{Stated, Time, Unit, convert, read_in};
use uom::si::time::second;

/// Seconds mostly, hours now and then, and once in a while the days that a cure takes.
pub fn pause_ms(chance: &mut Chance) -> i64 {
    match chance.below(40) {
        0 => 3 * 24 * 3_600_000,
        1..=3 => chance.below(12 * 3_600_000) as i64,
        _ => chance.below(60_000) as i64,
    }
}

/// The next touch.
pub fn next(chance: &mut Chance, state: &State, now: Now) -> Intent {
    match chance.below(20) {
        0..=10 => at_the_step(chance, state, now),
        11 | 12 => Intent::Undo,
        13 | 14 => in_any_step(chance, state),
        15 | 16 => in_the_plan(chance, state),
        17 => with_jobs(chance, state),
        18 => with_clocks(chance, state),
        _ => on_the_bench(chance, state),
    }
}

/// Does what the first open step asks for.
fn at_the_step(chance: &mut Chance, state: &State, now: Now) -> Intent {
    let Some(step) = state.next_open() else {
        return Intent::CloseJob;
    };
    let reason = || "the oil is only a test fill".to_owned();
    match state.ask(step, now.at) {
        None | Some(Ask::GoOn) => Intent::CloseJob,
        Some(Ask::Wait(_)) if chance.one_in(5) => Intent::Override {
            step,
            reason: reason(),
        },
        Some(Ask::Wait(_)) => Intent::Close(step),
        Some(Ask::Acknowledge(caution)) => Intent::Acknowledge {
            step,
            caution: caution.to_owned(),
        },
        Some(Ask::Skinned(late)) if chance.one_in(2) => Intent::Accept {
            step,
            what: What::Skin(late.clock),
            reason: "joined in time, written down late".to_owned(),
            initials: initials(chance),
        },
        Some(Ask::Skinned(late)) => Intent::Restart(late.clock),
        Some(Ask::Loosen(_)) => Intent::Loosen(step),
        Some(Ask::PutOn) => Intent::PutOn {
            step,
            activator: chance.one_in(2),
        },
        Some(Ask::Tally(next)) if chance.one_in(4) => Intent::TallyAt {
            step,
            place: next.place + chance.below(3),
        },
        Some(Ask::Tally(_)) => Intent::Tally(step),
        Some(Ask::TakeWrench(at)) if chance.one_in(2) => Intent::TakeWrench(at),
        Some(Ask::TakeWrench(_) | Ask::NoWrench(_)) => Intent::WithoutWrench {
            step,
            instead: chance
                .of(&state.offered_instead(step, now.at))
                .cloned()
                .unwrap_or(Instead::Borrowed),
        },
        Some(Ask::Read(what)) => read(chance, state, step, what),
        Some(Ask::Finding(what)) if chance.one_in(2) => Intent::Accept {
            step,
            what,
            reason: "measured twice, the shop says so".to_owned(),
            initials: initials(chance),
        },
        // Another pack, or the reading once more.
        Some(Ask::Finding(What::Pack | What::Trial)) if chance.one_in(2) => choose(chance, state, step),
        Some(Ask::Finding(what)) => settle(chance, state, step, what),
        Some(Ask::OnOrder(part)) => Intent::TickPart { step, part },
        Some(Ask::NewOn(part)) => Intent::NewOn { step, part },
        Some(Ask::Feel) => feel(chance, step),
        Some(Ask::Code) => code(chance, step),
        Some(Ask::Gauge(done)) => Intent::Gauge { step, done },
        Some(Ask::Choose) => choose(chance, state, step),
        Some(Ask::Close) => Intent::Close(step),
    }
}

fn gauge(chance: &mut Chance, step: StepId) -> Intent {
    let all = [
        Gauged::Laid(Plastic::Coarse),
        Gauged::Tight,
        Gauged::Off,
        Gauged::Wiped,
    ];
    let done = all[chance.below(all.len())];
    Intent::Gauge { step, done }
}

fn code(chance: &mut Chance, step: StepId) -> Intent {
    let mut one = |all: &[&str]| chance.of(all).map_or(String::new(), |code| (*code).to_owned());
    Intent::Code {
        step,
        down: one(&["A", "B", "c", ""]),
        across: one(&["1", "2", "9"]),
    }
}

/// What is offered, or something of one's own.
fn choose(chance: &mut Chance, state: &State, step: StepId) -> Intent {
    let found = state.step(step);
    let offered = found
        .and_then(|step| state.offered(step))
        .filter(|_| !chance.one_in(4));
    let pieces = offered.unwrap_or_else(|| {
        let thick = chance.between(-0.1, 2.0);
        vec![match chance.below(3) {
            0 => Piece::coded("green", None),
            _ => Piece::shims(thick, chance.below(4) as u32),
        }]
    });
    Intent::Choose { step, pieces }
}

fn say(chance: &mut Chance, step: StepId, fact: Fact) -> Intent {
    let holds = !chance.one_in(4);
    Intent::Say {
        step,
        fact,
        holds,
        words: if holds || chance.one_in(3) {
            ""
        } else {
            "at the drain plug"
        }
        .to_owned(),
    }
}

fn initials(chance: &mut Chance) -> String {
    if chance.one_in(3) { "" } else { "jb" }.to_owned()
}

/// Does it again, or orders a part.
fn settle(chance: &mut Chance, state: &State, step: StepId, what: What) -> Intent {
    if chance.one_in(3) {
        let name = "bearing shell".to_owned();
        return Intent::Order { step, what, name };
    }
    match what {
        What::Turning => feel(chance, step),
        What::Part(part) => judge(chance, step, part),
        what => read(chance, state, step, what),
    }
}

fn judge(chance: &mut Chance, step: StepId, part: PartKey) -> Intent {
    let unfit = if chance.one_in(2) { "" } else { "pitted" };
    Intent::Judge {
        step,
        part,
        unfit: unfit.to_owned(),
    }
}

fn feel(chance: &mut Chance, step: StepId) -> Intent {
    let tight_at = if chance.one_in(2) { "" } else { "at 4 o’clock" };
    Intent::Feel {
        step,
        tight_at: tight_at.to_owned(),
    }
}

/// A reading, mostly such as the limits hold.
fn read(chance: &mut Chance, state: &State, step: StepId, what: What) -> Intent {
    if let What::Fact(fact) = what {
        return say(chance, step, fact);
    }
    let found = state.step(step);
    let asked = found.and_then(|step| readings::unit(step, &what));
    let (mut value, mut unit) = (chance.between(-1.0, 70.0), asked.unwrap_or("mm").to_owned());
    match (found.map(|step| &step.work), &what) {
        (Some(Work::Check(check)), What::Limit(id)) => {
            if let Some(limit) = readings::limit(check, *id) {
                // New, worn, or past both.
                let [least, most, worn_least, worn_most] = limit.all();
                let least = least.or(worn_least).unwrap_or(0.0);
                let most = worn_most.or(most).unwrap_or(1.0);
                value = chance.between(least, most.max(least));
            }
        }
        (Some(Work::Fill(fill)), What::PutIn) => {
            fill.unit().symbol().clone_into(&mut unit);
            value = fill
                .stated()
                .map_or(1.0, |stated| fill.unit().value_of(stated.volume()));
        }
        (Some(Work::Check(check)), What::Place { bore, .. }) => {
            if let Some(bore) = readings::bore(check, *bore) {
                let (least, most) = (bore.least_mm.unwrap_or(40.0), bore.most_mm.unwrap_or(40.02));
                value = chance.between(least, most.max(least));
            }
        }
        (Some(Work::Seat(seat)), What::Depth) => {
            if let Some(depth) = seat.depth {
                value = chance.between(depth.least_mm, depth.most_mm);
            }
        }
        (_, What::Uses) => value = chance.below(4) as f64,
        // Bolts of some 60 mm, a little longer when tight.
        (Some(Work::Fasten(_)), What::Free(_)) => value = chance.between(60.0, 60.1),
        (Some(Work::Fasten(fasten)), What::Tight(at)) => {
            let free = state
                .progress(step)
                .reading(&What::Free(*at))
                .map(|read| read.value);
            let least = fasten.stretch_least_mm.unwrap_or(0.0);
            let most = fasten.stretch_most_mm.unwrap_or(0.5);
            value = free.unwrap_or(60.0) + chance.between(least, most.max(least));
        }
        (Some(Work::Select(select)), What::Trial | What::TurnTight | What::TurnLoose) => {
            if let Some(trial) = &select.trial {
                trial.unit(select.unit).clone_into(&mut unit);
                let (least, most) = (trial.least.unwrap_or(0.0), trial.most.unwrap_or(1.0));
                value = chance.between(least, most.max(least));
            }
        }
        (Some(Work::Select(select)), _) => select.unit.symbol().clone_into(&mut unit),
        (Some(Work::Gauge(gauge)), _) => {
            gauge.unit.symbol().clone_into(&mut unit);
            value = chance.between(gauge.least.unwrap_or(0.0), gauge.most.unwrap_or(0.3));
        }
        _ => {}
    }
    if chance.one_in(6) {
        value += chance.between(-5.0, 5.0);
    }
    if found.is_some_and(|step| readings::counted(step, &what)) && !chance.one_in(6) {
        value = value.round();
    }
    // On another instrument, or one of no use.
    if chance.one_in(4)
        && let Some(other) = chance.of(&read_in(&unit))
        && let Some(turned) = convert(value, &unit, other)
    {
        (value, unit) = (turned, (*other).to_owned());
    } else if chance.one_in(30) {
        "drops".clone_into(&mut unit);
    }
    Intent::Read {
        step,
        what,
        value,
        unit,
        with: ReadWith {
            tool: if chance.one_in(2) {
                "micrometer".to_owned()
            } else {
                String::new()
            },
            at_c: chance.one_in(3).then_some(20.0),
            decimals: chance.one_in(3).then_some(chance.below(20) as u8),
        },
    }
}

fn any_step(chance: &mut Chance, state: &State) -> StepId {
    let steps = &state.job().sheet.steps;
    chance.of(steps).map_or(StepId(999), |step| step.id)
}

/// Something in a step that need not be its turn.
fn in_any_step(chance: &mut Chance, state: &State) -> Intent {
    let step = any_step(chance, state);
    let found = state.step(step);
    let asked = found.map(readings::asked).unwrap_or_default();
    match chance.below(16) {
        14 => gauge(chance, step),
        12 => choose(chance, state, step),
        13 => code(chance, step),
        0 => Intent::Tally(step),
        1 => Intent::Close(step),
        2 => Intent::PutOn {
            step,
            activator: false,
        },
        3 => Intent::Skip {
            step,
            reason: "not on this machine".to_owned(),
        },
        4 => Intent::Reopen(step),
        5 => Intent::Override {
            step,
            reason: if chance.one_in(4) { " " } else { "checked by eye" }.to_owned(),
        },
        6 => feel(chance, step),
        7 => {
            let what = chance.of(&asked).cloned().unwrap_or(What::Running);
            read(chance, state, step, what)
        }
        8 => {
            let broken = state.findings(step);
            Intent::Accept {
                step,
                what: chance
                    .of(&broken)
                    .or(asked.first())
                    .cloned()
                    .unwrap_or(What::Depth),
                reason: "as the shop left it".to_owned(),
                initials: initials(chance),
            }
        }
        9 => Intent::ReadDepth {
            step: chance.one_in(3).then_some(step).or(None),
            mm: Stated::plain(chance.between(-2.0, 4.0)),
        },
        10 => {
            let job = state.job();
            let all = parts::list(&job.sheet, &job.progress);
            match chance.of(&all) {
                None => Intent::ReadGap {
                    step: Some(step),
                    mm: Stated::plain(1.0),
                },
                Some(part) if chance.one_in(3) => judge(chance, part.step, part.key),
                Some(part) if chance.one_in(2) => Intent::TickPart {
                    step: part.step,
                    part: part.key,
                },
                Some(part) => Intent::Place {
                    step: part.step,
                    part: part.key,
                    place: PartPlace::Bag(chance.below(9).to_string()),
                    here: chance.below(5) as u32,
                },
            }
        }
        11 => Intent::Remark {
            about: chance.of(&entry_ids(state)).copied(),
            words: "looked at it again".to_owned(),
        },
        _ => Intent::Loosen(step),
    }
}

/// A change of the plan: a field as the form offers it, a move, a step of any kind.
fn in_the_plan(chance: &mut Chance, state: &State) -> Intent {
    let step = any_step(chance, state);
    match chance.below(9) {
        0 => Intent::MoveStep {
            step,
            down: chance.one_in(2),
        },
        1 => Intent::CopyStep(step),
        2 => Intent::RemoveStep(step),
        3 => {
            let kind = chance.of(&kinds::LIST).map_or("Clean", |kind| kind.word);
            let limited = chance.one_in(2);
            let fasten = || {
                let plain = kinds::fasten::begin("M8", "22 N·m").ok()?;
                let read = Fasten {
                    stretch_least_mm: Some(0.1),
                    stretch_most_mm: Some(0.15),
                    most_uses: Some(2),
                    longest_mm: Some(60.05),
                    layout: Layout::Circle { count: 4 },
                    ..plain.clone()
                };
                Some(Work::Fasten(if limited { read } else { plain }))
            };
            let work = stock::stocked(chance, kind)
                .or_else(|| kinds::blank(kind))
                .or_else(fasten);
            // What has a loop of its own is played soon.
            let soon = matches!(work, Some(Work::Select(_) | Work::Gauge(_) | Work::Check(_)));
            let before_next = state.job().sheet.steps.iter().map(|step| step.id);
            let before_next = before_next.take_while(|id| Some(*id) != state.next_open()).last();
            let steps = work
                .into_iter()
                .map(|work| Step::new(StepId(0), &format!("one more {kind}"), work))
                .collect();
            Intent::AddSteps {
                after: if soon {
                    before_next
                } else {
                    chance.one_in(2).then_some(step)
                },
                steps,
            }
        }
        4 if chance.one_in(2) => Intent::SetUnits(Units {
            length: Units::LENGTHS[chance.below(3)],
            temperature: Units::TEMPERATURES[chance.below(2)],
        }),
        4 => Intent::NameMachine(format!("tractor {}", chance.below(3))),
        _ => edit(chance, state, step),
    }
}

fn edit(chance: &mut Chance, state: &State, step: StepId) -> Intent {
    let sheet = &state.job().sheet;
    let fields = sheet
        .step(step)
        .map(|found| form::fields(sheet, found))
        .unwrap_or_default();
    let Some(field) = chance.of(&fields) else {
        return Intent::CopyStep(step);
    };
    let value = match &field.entry {
        Entry::Head | Entry::Said => String::new(),
        Entry::Words => [
            "a new name",
            "30 60 100",
            "100",
            "62 N7",
            "M8",
            "",
            "oil; 20 N·m; loosen; 10 N·m; 60° ± 5°, on the same fastener",
        ][chance.below(7)]
        .to_owned(),
        Entry::Number { .. } => format!("{:.1}", chance.between(0.0, 60.0)),
        Entry::Thread => ["M8", "not stated", "G 1/4", "1 1/8-7", "nonsense"][chance.below(5)].to_owned(),
        Entry::Torque => [
            "22 N·m",
            "16.2 ft·lb",
            "9–12 N·m",
            "nonsense",
            "30 ft·lb + 120°",
            "at most 12 N·m",
        ][chance.below(6)]
        .to_owned(),
        Entry::Choice(all) => chance.of(all).map_or(String::new(), |(value, _)| value.clone()),
        Entry::Flag => if chance.one_in(2) { "yes" } else { "no" }.to_owned(),
        Entry::Press => String::new(),
    };
    Intent::EditStep {
        step,
        field: field.id.clone(),
        value,
    }
}

fn with_jobs(chance: &mut Chance, state: &State) -> Intent {
    let job = chance.of(&state.jobs.heads).map_or(JobId(9), |head| head.id);
    match chance.below(9) {
        0 if state.jobs.heads.len() < 5 => {
            let example = if chance.one_in(2) {
                halfcase::job::example::inch()
            } else {
                halfcase::job::example::sheet()
            };
            Intent::BeginJob(Box::new(example))
        }
        1 if state.jobs.heads.len() < 5 => Intent::Duplicate(job),
        2 => Intent::DeleteJob(job),
        3 => Intent::BringBackJob(job),
        4 => Intent::FreeDeleted,
        5 => Intent::ArchiveJob {
            job,
            away: chance.one_in(2),
        },
        6 => Intent::RenameJob {
            job,
            title: format!("gearbox {}", chance.below(4)),
        },
        _ => Intent::TakeJob(job),
    }
}

fn with_clocks(chance: &mut Chance, state: &State) -> Intent {
    let clock = chance.of(&state.clocks).map(|clock| clock.id);
    match (chance.below(4), clock) {
        (0 | 1, Some(clock)) => Intent::Restart(clock),
        (2, Some(clock)) => Intent::PutAway(clock),
        _ => {
            let joints: Vec<_> = state
                .job()
                .sheet
                .steps
                .iter()
                .filter_map(|step| step.work.application().cloned())
                .collect();
            match chance.of(&joints) {
                Some(joint) => Intent::PutOnFree {
                    name: "spare cover".to_owned(),
                    joint: Box::new(joint.clone()),
                    activator: chance.one_in(2),
                },
                None => Intent::NoteShop(12.0),
            }
        }
    }
}

fn on_the_bench(chance: &mut Chance, state: &State) -> Intent {
    let settings = &state.settings;
    match chance.below(12) {
        0 => Intent::TakeWrench(chance.below(settings.wrenches.len())),
        1 => Intent::MoveWrenchUp(chance.below(4)),
        2 if settings.wrenches.len() > 1 => Intent::RemoveWrench(chance.below(4)),
        3 => match settings.wrenches.first() {
            Some(wrench) => Intent::AddWrench(wrench.clone()),
            None => Intent::UnplanNight,
        },
        4 => Intent::NoteShop(chance.between(5.0, 30.0)),
        5 => Intent::PlanNight(Night {
            celsius: chance.between(0.0, 15.0),
            from_hour: 20,
            to_hour: 7,
            day_celsius: 20.0,
        }),
        6 if chance.one_in(2) => Intent::NoteHumidity(chance.one_in(3).then(|| chance.between(3.0, 100.0))),
        6 => Intent::UnplanNight,
        7 => {
            let mut after = Box::new(settings.clone());
            after.hoist_kg = Some(chance.between(10.0, 500.0));
            after.press_kn = chance.one_in(2).then_some(20.0);
            Intent::Set {
                what: "ratings",
                settings: after,
            }
        }
        8 => {
            let mut after = Box::new(settings.clone());
            after.torque_typed.push('7');
            Intent::Remember(after)
        }
        9 => Intent::TakeOut {
            step: None,
            window: TimeRange {
                shortest: Time::new::<second>(60.0),
                longest: Time::new::<second>(120.0),
            },
            ahead_ms: 0,
        },
        10 => {
            let ms = chance.below(7_200_000) as i64;
            let all = [
                PhoneClock::Jumped(ms),
                PhoneClock::Closed(ms),
                PhoneClock::WrongBefore(ms - 3_600_000),
                PhoneClock::InStep,
                PhoneClock::Right,
                PhoneClock::Wrong,
            ];
            Intent::PhoneClock(all[chance.below(all.len())])
        }
        _ => Intent::Carry(any_step(chance, state)),
    }
}
