//! A newer release that waits, and when nobody is disturbed by it.

use super::commands::{apply, step, with_bench};
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
