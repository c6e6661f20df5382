//! The one key that moves the step on: tally, start the clock, done.

use super::fasten::wrench_set;
use crate::bench::Bench;
use crate::device::time::local;
use crate::job::kinds::Work;
use crate::job::progress::{Status, next_fastener};
use crate::job::sheet::Step;
use crate::parts::dynamic::{press, text, whether};
use crate::parts::work_keys::rest;
use crate::trade::caution::{Caution, Level};
use leptos::prelude::*;

/// What the step's key does now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum NextThing {
    /// Shut: nothing to press.
    Shut,
    /// A stop-level caution comes first.
    Read,
    /// Bring the next fastener to torque.
    Tally {
        done: usize,
        of: usize,
        pass: usize,
        passes: usize,
        staged: bool,
    },
    /// The compound is on.
    StartClock,
    /// Close the step.
    Done,
    /// On to the next one.
    Onward,
}

/// The big key.
#[component]
pub fn NextKey(step: StoredValue<Step>, cautions: Memo<Vec<Caution>>) -> impl IntoView {
    let bench = Bench::here();
    let thing = Memo::new(move |_| step.with_value(|step| next_thing(bench, step, &cautions.get())));
    let resting = RwSignal::new(false);
    let act = press(move || {
        rest(resting);
        let cautions = cautions.get_untracked();
        step.with_value(|step| match thing.get_untracked() {
            NextThing::Shut | NextThing::Read => {}
            NextThing::Tally { .. } => {
                if let Some(set) = untrack(|| wrench_set(bench, step)) {
                    bench.tell(bench.tally(step, &cautions, &set));
                }
            }
            NextThing::StartClock => start_clock(bench, step, &cautions),
            NextThing::Done => bench.tell(bench.done(step, &cautions, untrack(|| bench.summary(step)))),
            NextThing::Onward => super::next_route(bench).go(),
        });
    });
    let shut = whether(move || resting.get() || matches!(thing.get(), NextThing::Shut | NextThing::Read));
    let face = text(move || words(thing.get()).0.to_owned());
    let small = text(move || words(thing.get()).1);
    view! {
        <button class="work-key first" class:resting=whether(move || resting.get()) disabled=shut on:click=act>
            {face}
            <small>{small}</small>
        </button>
    }
    .into_any()
}

fn next_thing(bench: Bench, step: &Step, cautions: &[Caution]) -> NextThing {
    let progress = bench.progress.with(|progress| progress.step(step.id));
    if progress.status != Status::Open {
        return NextThing::Onward;
    }
    if !bench.waits(step).is_empty() {
        return NextThing::Shut;
    }
    if cautions
        .iter()
        .any(|c| c.level == Level::Stop && !progress.acknowledged.contains(c.id))
    {
        return NextThing::Read;
    }
    if step.work.cures() && progress.clocks.is_empty() {
        return NextThing::StartClock;
    }
    if let (Some(next), Work::Fasten(fasten)) = (next_fastener(step, &progress), &step.work) {
        return NextThing::Tally {
            done: next.done_in_pass,
            of: fasten.layout.count(),
            pass: next.pass + 1,
            passes: fasten.pass_count(),
            staged: !fasten.stages.is_empty(),
        };
    }
    NextThing::Done
}

fn words(thing: NextThing) -> (&'static str, String) {
    match thing {
        NextThing::Shut => ("Shut", "see what it waits for".to_owned()),
        NextThing::Read => ("Read STOP first", String::new()),
        NextThing::Tally {
            done,
            of,
            pass,
            passes,
            staged,
        } => {
            let pass = if passes > 1 {
                let word = if staged { "stage" } else { "pass" };
                format!(", {word} {pass} of {passes}")
            } else {
                String::new()
            };
            ("Tally", format!("{} of {of}{pass}", done + 1))
        }
        NextThing::StartClock => ("It is on", "start the clock".to_owned()),
        NextThing::Done => ("Done", String::new()),
        NextThing::Onward => ("Next step", String::new()),
    }
}

fn start_clock(bench: Bench, step: &Step, cautions: &[Caution]) {
    let Some(application) = step.work.application() else {
        return;
    };
    let today = local(bench.time()).day;
    let answer = untrack(|| bench.bond(application, false, today));
    bench.tell(bench.put_on(step, cautions, &answer));
}
