//! The promises, each as a check of the state before and after a touch.

use halfcase::job::clock::{CureClock, Ended};
use halfcase::job::gate::Wait;
use halfcase::job::kinds::Work;
use halfcase::job::progress::{Progress, Status};
use halfcase::job::reading::What;
use halfcase::job::readings;
use halfcase::job::record::{EntryId, Event};
use halfcase::job::settings::Settings;
use halfcase::job::sheet::{JobId, Sheet, Step};
use halfcase::job::state::{Ask, Intent, Jobs, Now, State, Transaction, Way};
use halfcase::trade::caution::Level;
use halfcase::trade::compound::skins_at;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// The store is read back after one touch in so many,
pub const READ_EVERY: usize = 8;
/// and keeping is cut off everywhere after one in so many.
pub const CUT_EVERY: usize = 30;

/// What a play came to.
#[derive(Default)]
pub struct Played {
    pub touches: usize,
    pub taken: usize,
    pub undone: usize,
    pub closed: usize,
    pub reloads: usize,
    pub cuts: u64,
    kinds: BTreeMap<&'static str, usize>,
}

impl Played {
    pub fn count(&mut self, intent: &Intent, state: &State) {
        match intent {
            Intent::Undo => self.undone += 1,
            Intent::Close(step) => {
                self.closed += 1;
                if let Some(step) = state.step(*step) {
                    *self.kinds.entry(step.work.word()).or_default() += 1;
                }
            }
            _ => {}
        }
    }
}

impl fmt::Display for Played {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} touches, {} taken, {} undone, {} steps closed {:?}, {} reloads, {} kill points",
            self.touches, self.taken, self.undone, self.closed, self.kinds, self.reloads, self.cuts
        )
    }
}

/// A state without its trail, and without what undo leaves in the record and of a clock whose start
/// was undone.
#[derive(PartialEq, Debug)]
struct Seen<'a> {
    jobs: &'a Jobs,
    sheets: BTreeMap<JobId, &'a Sheet>,
    progress: BTreeMap<JobId, &'a Progress>,
    clocks: Vec<&'a CureClock>,
    settings: &'a Settings,
}

fn seen(state: &State) -> Seen<'_> {
    Seen {
        jobs: &state.jobs,
        sheets: state.files.iter().map(|(id, job)| (*id, &job.sheet)).collect(),
        progress: state.files.iter().map(|(id, job)| (*id, &job.progress)).collect(),
        clocks: state
            .clocks
            .iter()
            .filter(|clock| clock.ended != Some(Ended::Undone))
            .collect(),
        settings: &state.settings,
    }
}

/// The same but for the trail.
pub fn alike(a: &State, b: &State) -> bool {
    a.jobs == b.jobs && a.files == b.files && a.clocks == b.clocks && a.settings == b.settings
}

pub fn same(shown: &State, read: &State, told: &str) {
    assert!(
        alike(shown, read),
        "{told}: what is shown is not what is kept:\n{}",
        differences(shown, shown, read)
    );
}

/// Which parts differ, in short.
pub fn differences(before: &State, after: &State, read: &State) -> String {
    let mut words = String::new();
    let mut part = |name: &str, before: bool, after: bool| {
        words += &format!("{name}: as before {before}, as after {after}\n");
    };
    part("jobs", before.jobs == read.jobs, after.jobs == read.jobs);
    part("files", before.files == read.files, after.files == read.files);
    part(
        "clocks",
        before.clocks == read.clocks,
        after.clocks == read.clocks,
    );
    part(
        "settings",
        before.settings == read.settings,
        after.settings == read.settings,
    );
    words
}

/// Promise 2.
pub fn undo_is_whole(before: &State, after: &State, done: &Transaction, now: Now, told: &str) {
    if done.way != Way::Forward {
        return;
    }
    let back = after
        .apply(&Intent::Undo, now)
        .unwrap_or_else(|refused| panic!("{told}: can't be undone: {refused}"));
    let mut undone = after.clone();
    undone.take(back);
    let (was, is) = (seen(before), seen(&undone));
    let mut left = Vec::new();
    for (part, same) in [
        ("jobs", was.jobs == is.jobs),
        ("sheets", was.sheets == is.sheets),
        ("progress", was.progress == is.progress),
        ("clocks", was.clocks == is.clocks),
        ("settings", was.settings == is.settings),
    ] {
        if !same {
            left.push(part);
        }
    }
    assert!(left.is_empty(), "{told}: undo left something of {left:?}");
}

/// Promise 3: every step closed by this touch had all it asks for.
pub fn closed_steps_are_whole(before: &State, after: &State, done: &Transaction, now: Now, told: &str) {
    for (job, entry) in &done.lines {
        let (Event::Done { .. }, Some(id)) = (&entry.event, entry.step) else {
            continue;
        };
        assert_eq!(*job, before.jobs.at_hand, "{told}");
        let step = before.step(id).unwrap_or_else(|| panic!("{told}: no such step"));
        let progress = before.progress(id);
        assert_eq!(readings::missing(step, &progress), None, "{told}");
        assert_eq!(readings::findings(step, &progress), [], "{told}");
        if let Work::Fasten(fasten) = &step.work {
            assert_eq!(progress.tallied(fasten).len(), fasten.tally_count(), "{told}");
        }
        for bead in &step.before_skin {
            let mut on = before.clocks.iter().rev().filter(|clock| clock.counts());
            let bound = |clock: &&CureClock| {
                let bound = clock.bound;
                bound.is_some_and(|bound| bound.job == before.jobs.at_hand && bound.step == *bead)
            };
            let shop = &before.settings.shop;
            let skins = on
                .find(bound)
                .map(|clock| (clock.id, skins_at(&clock.spec, clock.started, shop)));
            if let Some((clock, Ok((until, _)))) = skins {
                let accepted = progress.accepted(&What::Skin(clock), &[]).is_some();
                assert!(
                    until > now.at || accepted,
                    "{told}: closed after step {} skinned",
                    bead.0
                );
            }
        }
        assert_eq!(before.ask(id, now.at), Some(Ask::Close), "{told}");
        assert_eq!(after.ask(id, now.at), Some(Ask::GoOn), "{told}");
    }
}

/// Promise 4, worked out anew from the clocks: no step that waits is open too early.
pub fn gates_are_shut(state: &State, now: Now, told: &str) {
    let job = state.job();
    for step in &job.sheet.steps {
        let progress = state.progress(step.id);
        if progress.closed() {
            continue;
        }
        let shut = matches!(state.ask(step.id, now.at), Some(Ask::Wait(_)));
        if step.closes_up {
            let found = |earlier: &Step| !readings::findings(earlier, &state.progress(earlier.id)).is_empty();
            assert!(
                shut || !job.sheet.before(step.id).iter().any(found),
                "{told}: step {} closes the case up on something not settled",
                step.id.0
            );
        }
        let Some(milestone) = step.needs_cured() else {
            continue;
        };
        let all = matches!(step.work, Work::Fill(_) | Work::Run(_));
        for earlier in job.sheet.before(step.id) {
            if !all && !step.waits_for.contains(&earlier.id) {
                continue;
            }
            let own = state.progress(earlier.id);
            let counting: Vec<&CureClock> = state
                .clocks
                .iter()
                .filter(|clock| clock.counts())
                .filter(|clock| {
                    clock
                        .bound
                        .is_some_and(|bound| bound.job == state.jobs.at_hand && bound.step == earlier.id)
                })
                .collect();
            let uncured = counting.iter().any(|clock| {
                clock
                    .reached_at(milestone, &state.settings.shop)
                    .map_or(true, |done| done.latest > now.at)
            });
            let done = matches!(own.status, Status::Done(_));
            let unstarted = done && earlier.work.cures() && counting.is_empty();
            // By hand a cure may be opened, and nothing else: not with work undone, a reading unread or
            // outside its limits, a tight spot, a part that is not fit.
            let found = !readings::findings(earlier, &own).is_empty();
            let joint = earlier.work.application();
            let dry = milestone == halfcase::trade::cure::Milestone::FitForOil
                && joint.is_some_and(|joint| joint.wetted == Some(false))
                && !step.waits_for.contains(&earlier.id);
            let early = !progress.overridden && !dry && (uncured || unstarted);
            if !own.closed() || early || found {
                assert!(
                    shut,
                    "{told}: step {} is open before step {}",
                    step.id.0, earlier.id.0
                );
            }
        }
        if let Some(Ask::Wait(waits)) = state.ask(step.id, now.at) {
            let real = |wait: &Wait| match wait {
                Wait::Cure { until, .. } => *until > now.at,
                _ => true,
            };
            assert!(waits.iter().all(real), "{told}: it waits for what is over");
        }
    }
}

/// Promise 5: nothing was tallied, put on, read or closed in a step whose STOP is unread.
pub fn stop_is_read(before: &State, intent: &Intent, now: Now, told: &str) {
    let step = match intent {
        Intent::Tally(step) | Intent::Close(step) | Intent::Feel { step, .. } => *step,
        Intent::TallyAt { step, .. } | Intent::PutOn { step, .. } | Intent::Read { step, .. } => *step,
        Intent::ReadDepth { step: Some(step), .. } | Intent::ReadGap { step: Some(step), .. } => *step,
        _ => return,
    };
    let Some(found) = before.step(step) else { return };
    let read: BTreeSet<String> = before.progress(step).acknowledged;
    let cautions = before.cautions(&found.work, Some(step), now.at);
    for caution in cautions.iter().filter(|caution| caution.level == Level::Stop) {
        assert!(read.contains(caution.id), "{told}: passed by {}", caution.id);
    }
}

/// Every number of an entry there is, for remarks on any.
pub fn entry_ids(state: &State) -> Vec<EntryId> {
    state
        .job()
        .record
        .entries()
        .iter()
        .map(|entry| entry.id)
        .collect()
}
