//! A newer release that waits, and when nobody is disturbed by it.

use super::commands::{apply, read, step, with_bench};
use halfcase::bench::Bench;
use halfcase::device::release::Kept;
use halfcase::job::shelf::MemoryStore;
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use std::rc::Rc;

/// A newer release is told of as soon as it waits, but not while something is about to end.
#[test]
fn a_newer_release_disturbs_no_last_minutes() {
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        assert!(!untrack(|| bench.newer_waits()));
        bench.kept.set(Kept::NewerWaits);
        assert!(untrack(|| bench.newer_waits()));
        let baffle = step(bench, 4);
        apply(bench, &baffle).unwrap();
        let marks: Vec<i64> = bench.clocks.with_untracked(|clocks| {
            let shop = bench.settings.with_untracked(|settings| settings.shop.clone());
            clocks[0].marks(&shop, 0).iter().map(|mark| mark.at().0).collect()
        });
        for at in marks {
            for (before_s, told) in [(301, true), (300, false), (10, false), (0, false), (-1, true)] {
                let now = Moment(at - before_s * 1_000);
                bench.now.set(now);
                // Another mark may be as near.
                let near = untrack(|| bench.look(|state, now| state.in_last_minutes(now.at)));
                assert_eq!(untrack(|| bench.newer_waits()), !near);
                assert!(told || near, "{before_s} s before a mark");
            }
        }
    });
}

/// It is taken at a touch only where a reload forgets nothing: no way back, no example, nothing unkept.
#[test]
fn a_newer_release_is_taken_at_once_only_where_that_costs_nothing() {
    let free = |bench: Bench| untrack(|| bench.newer_costs_nothing());
    let store = Rc::new(MemoryStore::default());
    with_bench(&store, |bench| {
        assert!(!free(bench), "nothing waits");
        bench.kept.set(Kept::NewerWaits);
        assert!(free(bench));
        // Digits that are kept as they are typed have no way back to lose.
        bench.note(|settings| settings.torque_typed = "7".to_owned());
        assert!(free(bench));
        read(bench, 61.97);
        assert!(!free(bench), "undo would be forgotten");
        bench.undo().unwrap();
        assert!(free(bench));
        bench.look_at_example();
        assert!(!free(bench), "the example would be gone");
        bench.close_example();
        assert!(free(bench));
        bench.not_kept.set(true);
        assert!(!free(bench), "what is not kept would be gone");
    });
}
