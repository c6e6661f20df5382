//! Everything there is to find, out of every job on the bench.

use super::query::{day_words, plain};
use super::{Hit, Opens, Sort};
use crate::job::clock::CureClock;
use crate::job::field::{Entry as Entered, Form};
use crate::job::id::{JobId, StepId};
use crate::job::journal;
use crate::job::kinds::{Fasten, Work, fasten};
use crate::job::part::PartKey;
use crate::job::parts;
use crate::job::record::{Entry, Event};
use crate::job::sheet::Step;
use crate::job::state::{Job, State};
use crate::trade::moment::Moment;

/// Every fastener, compound, reading, part, remark and step of every job that is not deleted, the last
/// touched first. `day_of` is the day of an instant in the phone's calendar, counted from 1970-01-01.
pub fn gather(state: &State, day_of: impl Fn(Moment) -> i64) -> Vec<Hit> {
    let mut all = Vec::new();
    for head in state.jobs.heads.iter().filter(|head| !head.deleted) {
        // A sheet that could not be read has nothing to find, and could not be opened.
        let job = state
            .files
            .get(&head.id)
            .filter(|_| !state.lost.contains(&head.id));
        if let Some(job) = job {
            let mut gathering = Gathering {
                id: head.id,
                title: &head.title,
                job,
                day_of: &day_of,
                all: &mut all,
            };
            gathering.planned();
            gathering.recorded(&state.clocks);
        }
    }
    let free = state
        .clocks
        .iter()
        .filter(|clock| clock.bound.is_none() && clock.counts());
    all.extend(free.map(|clock| free_clock(clock, &day_of)));
    // Newest first; what is only planned comes behind, in the order of its plan.
    all.sort_by_key(|hit| std::cmp::Reverse(hit.at));
    all
}

fn free_clock(clock: &CureClock, day_of: &dyn Fn(Moment) -> i64) -> Hit {
    let words = format!("{}: {}", clock.name, clock.compound);
    let day = day_of(clock.started);
    Hit {
        sort: Sort::Compound,
        job: None,
        title: String::new(),
        machine: String::new(),
        step: String::new(),
        at: Some(clock.started),
        opens: Opens::Clocks,
        day: Some(day),
        hay: format!("{} {} {}", plain(&words), Sort::Compound.word(), day_words(day)),
        words,
    }
}

struct Gathering<'a> {
    id: JobId,
    title: &'a str,
    job: &'a Job,
    day_of: &'a dyn Fn(Moment) -> i64,
    all: &'a mut Vec<Hit>,
}

impl Gathering<'_> {
    /// What the plan has: one thing a step, and its parts.
    fn planned(&mut self) {
        let job = self.job;
        let last = last_lines(job);
        for step in &job.sheet.steps {
            let (worked, set) = last
                .iter()
                .find(|(id, ..)| *id == step.id)
                .map_or((None, None), |(_, worked, set)| (*worked, *set));
            let (sort, words) = match &step.work {
                Work::Fasten(it) => (Sort::Fastener, fastener_words(it, set)),
                Work::Bond(it) => (Sort::Compound, it.joint.clone()),
                Work::Clean(_)
                | Work::Check(_)
                | Work::Fit(_)
                | Work::Seat(_)
                | Work::Lift(_)
                | Work::Turn(_)
                | Work::Fill(_)
                | Work::Select(_)
                | Work::Gauge(_)
                | Work::Run(_) => (Sort::Step, step_words(step)),
            };
            let who = worked.map_or("", |line| line.who.as_str());
            let more = format!("{} {who}", step_hay(step));
            let at = worked.map(|line| line.at);
            self.add(sort, words, Some(step.id), at, Opens::Step(step.id), &more);
        }
        for part in parts::list(&job.sheet, &job.progress) {
            if part.key != PartKey::Own {
                let words = format!("{} × {}: {}", part.of, part.name, part.words());
                self.add(Sort::Part, words, Some(part.step), None, Opens::Parts, "");
            }
        }
    }

    /// What the record has, but for single fasteners: their step says what they were brought to.
    fn recorded(&mut self, clocks: &[CureClock]) {
        let job = self.job;
        for entry in job.record.standing() {
            let Some(sort) = sort_of(&entry.event) else {
                continue;
            };
            let joint = match entry.event {
                Event::Applied { clock, .. } => clocks.iter().find(|own| own.id == clock),
                _ => None,
            };
            let joint = joint.map_or("", |clock| clock.name.as_str());
            let words = journal::words(entry, &job.sheet);
            let opens = match (sort, entry.step.filter(|id| job.sheet.step(*id).is_some())) {
                (Sort::Remark, _) | (_, None) => Opens::Record,
                (_, Some(step)) => Opens::Step(step),
            };
            let more = format!("{joint} {}", entry.who);
            self.add(sort, words, entry.step, Some(entry.at), opens, &more);
        }
    }

    fn add(
        &mut self,
        sort: Sort,
        words: String,
        step: Option<StepId>,
        at: Option<Moment>,
        opens: Opens,
        more: &str,
    ) {
        let sheet = &self.job.sheet;
        let step = step.and_then(|id| Some((sheet.place(id)? + 1, sheet.step(id)?)));
        let step = step.map_or(String::new(), |(number, step)| format!("{number} {}", step.title));
        let day = at.map(self.day_of);
        let day_words = day.map_or(String::new(), day_words);
        let hay = [&words, sort.word(), &step, more, self.title, &sheet.machine].join(" ");
        self.all.push(Hit {
            sort,
            job: Some(self.id),
            title: self.title.to_owned(),
            machine: sheet.machine.clone(),
            step,
            at,
            opens,
            day,
            hay: format!("{} {day_words}", plain(&hay)),
            words,
        });
    }
}

/// The last line of work at each step, and the last that brought a fastener of it to torque.
type Last<'a> = (StepId, Option<&'a Entry>, Option<&'a Entry>);

fn last_lines(job: &Job) -> Vec<Last<'_>> {
    let mut all: Vec<Last<'_>> = Vec::new();
    for line in job.record.standing().filter(|line| line.works()) {
        let Some(step) = line.step else { continue };
        let at = all.iter().position(|(id, ..)| *id == step).unwrap_or(all.len());
        if at == all.len() {
            all.push((step, None, None));
        }
        if let Some((_, worked, set)) = all.get_mut(at) {
            *worked = Some(line);
            if matches!(line.event, Event::Tallied { .. }) {
                *set = Some(line);
            }
        }
    }
    all
}

/// All that is entered of a step, as its form shows it.
fn step_hay(step: &Step) -> String {
    let mut form = Form::default();
    step.work.kind().fields(&mut form);
    let mut hay = vec![step.work.word().to_owned(), step.notes.clone()];
    for field in form.fields {
        match field.entry {
            Entered::Words | Entered::Torque | Entered::Thread => {}
            Entered::Number { unit, .. } if !field.value.is_empty() => hay.push(unit.to_owned()),
            Entered::Number { .. } => {}
            Entered::Choice(offered) => {
                let mut chosen = offered.into_iter().filter(|(value, _)| *value == field.value);
                hay.extend(chosen.next().map(|(_, words)| words));
            }
            Entered::Head | Entered::Said | Entered::Flag | Entered::Press => continue,
        }
        hay.push(field.value);
    }
    hay.join(" ")
}

/// "16 × M8 × 30 mm, 8.8: 20 N·m; set 20 N·m with Middle".
fn fastener_words(it: &Fasten, last: Option<&Entry>) -> String {
    let count = it.layout.count();
    let words = format!("{count} × {}: {}", fasten::size_words(it), it.manual_words());
    match last.map(|line| &line.event) {
        Some(Event::Tallied { set, .. }) => format!("{words}; set {}", journal::set_words(set)),
        _ => words,
    }
}

fn step_words(step: &Step) -> String {
    let own = step.work.kind().part().map_or(String::new(), |part| part.name);
    let mut words = vec![step.work.word(), &own, &step.notes];
    words.retain(|words| !words.is_empty());
    words.join(": ")
}

/// What a line of the record is found as; none of what is no fastener, reading, compound, part or remark.
fn sort_of(event: &Event) -> Option<Sort> {
    Some(match event {
        Event::Applied { .. } => Sort::Compound,
        Event::Measured { .. }
        | Event::Accepted { .. }
        | Event::Said { .. }
        | Event::Felt { .. }
        | Event::Coded { .. }
        | Event::Gauged(_)
        | Event::Chosen { .. } => Sort::Reading,
        Event::Judged { .. } | Event::Ordered { .. } => Sort::Part,
        Event::Noted { .. }
        | Event::Skipped { .. }
        | Event::Overridden { .. }
        | Event::WithoutWrench { .. } => Sort::Remark,
        Event::Acknowledged { .. }
        | Event::Tallied { .. }
        | Event::Loosened
        | Event::JointOpened
        | Event::NewOn { .. }
        | Event::Placed { .. }
        | Event::Done { .. }
        | Event::Reopened
        | Event::TakenBack { .. }
        | Event::PhoneClock(_)
        | Event::JobClosed => return None,
    })
}
