//! The pack of shims that hits a thickness, out of the box there is.

use super::{millionths, tidy};
use std::cmp::Reverse;

/// The most shims in one pack: more than this is a spacer that was forgotten.
pub const MOST_SHIMS: u32 = 20;

/// Shims of one thickness in the box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// How thick one is; none above zero counts.
    pub thick: f64,
    /// How many there are.
    pub count: u32,
    /// They lie only between two others: never outermost, never against a race.
    pub between: bool,
}

/// A pack out of a box.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// How many of each size, in the order of the box.
    pub taken: Vec<u32>,
    /// What they come to.
    pub sum: f64,
    /// How many shims.
    pub shims: u32,
}

/// What a box gives for a thickness.
#[derive(Debug, Clone, PartialEq)]
pub enum Pack {
    /// The fewest shims within the tolerance; of as few the nearest to the aim, of as near the thinner
    /// pack, of as thick the one with more of the thicker shims.
    Hit(Found),
    /// None lies within: the nearest below and the nearest above, where there are such.
    Miss {
        below: Option<Found>,
        above: Option<Found>,
    },
}

/// A way to reach a sum, as far as the sizes looked at go.
#[derive(Clone)]
struct Reached {
    sum: i64,
    /// Shims that may be outermost: none, one, enough.
    outer: u8,
    between: bool,
    shims: u32,
    /// Of each size looked at, thickest first.
    taken: Vec<u32>,
}

impl Reached {
    fn same(&self) -> (i64, u8, bool) {
        (self.sum, self.outer, self.between)
    }

    /// Shims that lie only between others have one on either side.
    fn stacks(&self) -> bool {
        !self.between || self.outer >= 2
    }
}

/// The pack of at most `most` shims (and never more than [`MOST_SHIMS`]) that hits `aim` within `low` to
/// `high`, both included.
///
/// Every sum the box can make is looked at once, with the fewest shims it takes: no better pack exists.
pub fn pack(sizes: &[Size], aim: f64, (low, high): (f64, f64), most: u32) -> Pack {
    let mut order: Vec<usize> = (0..sizes.len()).filter(|at| sizes[*at].thick > 0.0).collect();
    order.sort_by(|a, b| sizes[*b].thick.total_cmp(&sizes[*a].thick));
    let (aim, low, high) = (millionths(aim), millionths(low), millionths(high));
    // The nearest above is one shim over at most: with one less it would not be above.
    let thickest = order.first().map_or(0, |at| millionths(sizes[*at].thick));
    let limit = high.max(0).saturating_add(thickest);
    let reached = reach(sizes, &order, limit, most.min(MOST_SHIMS));
    let found = |one: &Reached| {
        let mut taken = vec![0; sizes.len()];
        for (at, count) in order.iter().zip(&one.taken) {
            taken[*at] = *count;
        }
        Found {
            taken,
            sum: tidy(one.sum as f64 / super::MILLION),
            shims: one.shims,
        }
    };
    let rank = |one: &&Reached| {
        let off = one.sum.abs_diff(aim);
        (one.shims, off, one.sum, Reverse(one.taken.clone()))
    };
    let stacked = || reached.iter().filter(|one| one.stacks());
    let within = stacked().filter(|one| (low..=high).contains(&one.sum));
    if let Some(hit) = within.min_by_key(rank) {
        return Pack::Hit(found(hit));
    }
    let of_sum = |one: &&Reached| (one.sum, one.shims, Reverse(one.taken.clone()));
    let near = |one: &&Reached| (-one.sum, one.shims, Reverse(one.taken.clone()));
    Pack::Miss {
        below: stacked().filter(|one| one.sum < low).min_by_key(near).map(found),
        above: stacked()
            .filter(|one| one.sum > high)
            .min_by_key(of_sum)
            .map(found),
    }
}

/// Every sum up to `limit`, each once for each way it may lie, with the fewest shims.
fn reach(sizes: &[Size], order: &[usize], limit: i64, most: u32) -> Vec<Reached> {
    let mut reached = vec![Reached {
        sum: 0,
        outer: 0,
        between: false,
        shims: 0,
        taken: Vec::new(),
    }];
    for size in order.iter().map(|at| sizes[*at]) {
        let thick = millionths(size.thick);
        let mut more: Vec<Reached> = Vec::with_capacity(reached.len() * 2);
        for one in &reached {
            for count in 0..=size.count.min(most - one.shims) {
                let sum = one.sum.saturating_add(thick.saturating_mul(i64::from(count)));
                if sum > limit {
                    break;
                }
                let outer = if size.between { 0 } else { count.min(2) as u8 };
                let mut taken = one.taken.clone();
                taken.push(count);
                more.push(Reached {
                    sum,
                    outer: (one.outer + outer).min(2),
                    between: one.between || (size.between && count > 0),
                    shims: one.shims + count,
                    taken,
                });
            }
        }
        more.sort_by(|a, b| {
            let fewest = || a.shims.cmp(&b.shims).then_with(|| b.taken.cmp(&a.taken));
            a.same().cmp(&b.same()).then_with(fewest)
        });
        more.dedup_by_key(|one| one.same());
        reached = more;
    }
    reached
}
