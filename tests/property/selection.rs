//! Packs of shims against every pack there is, tables by ranges, and changes after a trial.

use halfcase::trade::selection::{
    Change, Counts, Found, MOST_SHIMS, Pack, Size, Thicker, change, pack, row_of,
};
use proptest::prelude::*;

/// Thicknesses in hundredths, as boxes have them.
fn size() -> impl Strategy<Value = Size> {
    (5_u32..60, 0_u32..4, prop::bool::weighted(0.3)).prop_map(|(hundredths, count, between)| Size {
        thick: f64::from(hundredths) / 100.0,
        count,
        between,
    })
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

/// Every way to take from the box, by counting.
fn every(sizes: &[Size]) -> Vec<Vec<u32>> {
    sizes.iter().fold(vec![Vec::new()], |packs, size| {
        let grow = |pack: Vec<u32>| {
            (0..=size.count).map(move |count| pack.iter().copied().chain([count]).collect::<Vec<u32>>())
        };
        packs.into_iter().flat_map(grow).collect()
    })
}

fn sum(sizes: &[Size], taken: &[u32]) -> f64 {
    sizes
        .iter()
        .zip(taken)
        .map(|(size, n)| size.thick * f64::from(*n))
        .sum()
}

fn stacks(sizes: &[Size], taken: &[u32]) -> bool {
    let of = |between: bool| -> u32 {
        let rows = sizes
            .iter()
            .zip(taken)
            .filter(|(size, _)| size.between == between);
        rows.map(|(_, n)| n).sum()
    };
    of(true) == 0 || of(false) >= 2
}

/// What holds of any pack that is offered.
fn sound(sizes: &[Size], found: &Found, most: u32) {
    assert_eq!(found.taken.len(), sizes.len());
    assert!(near(found.sum, sum(sizes, &found.taken)), "{found:?}");
    assert_eq!(found.shims, found.taken.iter().sum::<u32>());
    assert!(found.shims <= most);
    assert!(
        found.taken.iter().zip(sizes).all(|(n, size)| *n <= size.count),
        "{found:?}"
    );
    assert!(stacks(sizes, &found.taken), "{found:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Against brute force: nothing within the tolerance has fewer shims, or as few and is nearer.
    #[test]
    fn no_better_pack_exists(
        sizes in prop::collection::vec(size(), 0..6),
        aim in 0_u32..250,
        tolerance in 0_u32..6,
        most in 1_u32..10,
    ) {
        let (aim, tolerance) = (f64::from(aim) / 100.0, f64::from(tolerance) / 100.0);
        let (low, high) = (aim - tolerance, aim + tolerance);
        let all: Vec<(f64, u32)> = every(&sizes)
            .iter()
            .filter(|taken| stacks(&sizes, taken) && taken.iter().sum::<u32>() <= most)
            .map(|taken| (sum(&sizes, taken), taken.iter().sum()))
            .collect();
        let within: Vec<_> = all.iter().filter(|(s, _)| *s > low - 1e-9 && *s < high + 1e-9).collect();
        match pack(&sizes, aim, (low, high), most) {
            Pack::Hit(found) => {
                sound(&sizes, &found, most);
                prop_assert!(found.sum > low - 1e-9 && found.sum < high + 1e-9);
                let fewest = within.iter().map(|(_, n)| *n).min();
                prop_assert_eq!(Some(found.shims), fewest);
                let off = (found.sum - aim).abs();
                let nearer = within.iter().any(|(s, n)| *n == found.shims && (s - aim).abs() < off - 1e-9);
                prop_assert!(!nearer, "{:?}", found);
            }
            Pack::Miss { below, above } => {
                prop_assert!(within.is_empty(), "{:?}", within);
                let under = all.iter().map(|(s, _)| *s).filter(|s| *s < low).reduce(f64::max);
                let over = all.iter().map(|(s, _)| *s).filter(|s| *s > high).reduce(f64::min);
                for (found, best) in [(below, under), (above, over)] {
                    prop_assert_eq!(found.is_some(), best.is_some());
                    if let (Some(found), Some(best)) = (found, best) {
                        sound(&sizes, &found, most);
                        prop_assert!(near(found.sum, best), "{:?} {}", found, best);
                    }
                }
            }
        }
    }

    /// The box in another order gives the same pack.
    #[test]
    fn the_order_of_the_box_changes_nothing(sizes in prop::collection::vec(size(), 1..6), aim in 0_u32..250) {
        let aim = f64::from(aim) / 100.0;
        let said = |sizes: &[Size]| match pack(sizes, aim, (aim - 0.02, aim + 0.02), MOST_SHIMS) {
            Pack::Hit(found) => vec![(found.sum, found.shims)],
            Pack::Miss { below, above } => [below, above].into_iter().flatten().map(|f| (f.sum, f.shims)).collect(),
        };
        let back: Vec<Size> = sizes.iter().rev().copied().collect();
        prop_assert_eq!(said(&sizes), said(&back));
    }

    /// A full box of a dozen sizes is still looked through, and whatever the numbers are, it ends.
    #[test]
    fn any_box_has_an_answer(
        thick in prop::collection::vec(any::<f64>(), 0..4),
        aim in any::<f64>(),
        tolerance in any::<f64>(),
    ) {
        let sizes: Vec<Size> = thick.into_iter().map(|thick| Size { thick, count: 3, between: false }).collect();
        pack(&sizes, aim, (aim - tolerance, aim + tolerance), MOST_SHIMS);
    }

    /// What the change promises comes out when the reading follows the pack.
    #[test]
    fn a_change_brings_the_reading_to_its_middle(
        reading in 0.0..2.0_f64,
        least in 0.0..0.2_f64,
        wide in 0.01..0.2_f64,
        per in 0.01..2.0_f64,
        raises in any::<bool>(),
    ) {
        let limits = (least, least + wide);
        let thicker = if raises { Thicker::Raises } else { Thicker::Lowers };
        let Change { by, from, to } = change(reading, limits, thicker, per);
        let after = |by: f64| reading + by / per * if raises { 1.0 } else { -1.0 };
        prop_assert!((after(by) - (least + wide / 2.0)).abs() < 1e-3);
        prop_assert!(from <= by && by <= to);
        for end in [from, to] {
            prop_assert!(after(end) > least - 1e-3 && after(end) < least + wide + 1e-3);
        }
    }
}

#[test]
fn a_dozen_sizes_of_twenty_are_looked_through() {
    let sizes: Vec<Size> = (0..12)
        .map(|at| Size {
            thick: f64::from(103 + 57 * at) / 1000.0,
            count: 20,
            between: at % 4 == 0,
        })
        .collect();
    let Pack::Hit(found) = pack(&sizes, 2.4, (2.38, 2.42), MOST_SHIMS) else {
        panic!("such a box makes any thickness");
    };
    sound(&sizes, &found, MOST_SHIMS);
}

/// Paper shims lie between two of metal, never against the race.
#[test]
fn a_shim_that_goes_between_two_others_is_never_outermost() {
    let sizes = [
        Size {
            thick: 0.1,
            count: 5,
            between: true,
        },
        Size {
            thick: 0.3,
            count: 2,
            between: false,
        },
    ];
    let at = |aim: f64| pack(&sizes, aim, (aim, aim), MOST_SHIMS);
    let hit = |taken: [u32; 2], sum: f64| {
        Pack::Hit(Found {
            taken: taken.to_vec(),
            sum,
            shims: taken.iter().sum(),
        })
    };
    assert_eq!(at(0.8), hit([2, 2], 0.8));
    // Two of paper by themselves, or beside one of metal, would do it in number.
    for aim in [0.2, 0.4] {
        assert!(matches!(at(aim), Pack::Miss { .. }), "{aim}");
    }
    assert_eq!(at(0.0), hit([0, 0], 0.0), "no shim is a pack too");
}

#[test]
fn a_mean_between_two_figures_of_the_table_is_rounded_as_they_are() {
    let rows = [(0.40, 0.44), (0.45, 0.49), (0.50, 0.54)];
    assert_eq!(row_of(&rows, 0.40), Some(0));
    assert_eq!(row_of(&rows, 0.4433), Some(0));
    assert_eq!(row_of(&rows, 0.445), Some(1), "halves go up");
    assert_eq!(row_of(&rows, 0.4467), Some(1));
    for outside in [0.39, 0.394, 0.55, 12.0, f64::NAN] {
        assert_eq!(row_of(&rows, outside), None, "{outside}");
    }
    assert_eq!(row_of(&[], 0.4), None);
    let shared = [(1.00, 1.05), (1.05, 1.10)];
    assert_eq!(row_of(&shared, 1.05), Some(0), "the first of two");
}

#[test]
fn several_readings_come_to_one() {
    let readings = [0.42, 0.43, 0.47];
    for (counts, one) in [
        (Counts::Mean, 0.44),
        (Counts::Greatest, 0.47),
        (Counts::Least, 0.42),
    ] {
        assert_eq!(counts.of(&readings), Some(one));
        assert_eq!(counts.of(&[]), None);
    }
}
