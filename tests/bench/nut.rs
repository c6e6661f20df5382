//! A self-locking nut's running torque on the Torque screen.

use super::commands::with_bench;
use halfcase::bench::{Bench, ReadWith};
use halfcase::job::reading::What;
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::job::shelf::MemoryStore;
use reactive_graph::graph::untrack;
use std::rc::Rc;

const SHEET: &str = r#"{"version":1,"title":"Nuts","steps":[
    {"id":1,"title":"Nuts","work":{"fasten":{"thread":"M8","torque":"20 N·m","layout":"single","self_locking":true}}},
    {"id":2,"title":"Others","work":{"fasten":{"thread":"M8","torque":"20 N·m","layout":"single","self_locking":true,
        "running_apart":true}}}]}"#;

/// What was measured in the step is not lost on the way to the Torque screen: it is added there as well.
#[test]
fn a_measured_running_torque_is_carried_to_the_torque_screen() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench: Bench| {
        bench.begin_job(Sheet::from_json(SHEET).unwrap());
        for (id, running) in [(StepId(1), Some(2.5)), (StepId(2), None)] {
            bench
                .measure(id, What::Running, 2.5, "N·m", &ReadWith::default())
                .unwrap();
            let step = bench
                .sheet
                .with_untracked(|sheet| sheet.step(id).cloned())
                .unwrap();
            untrack(|| bench.carry(&step));
            assert_eq!(bench.settings.get_untracked().desk.running, running);
        }
    });
}
