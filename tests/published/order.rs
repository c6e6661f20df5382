//! Tightening orders and passes.

use halfcase::trade::order::{Layout, MOST_BOLTS, Pass};

/// Counted from 1, as sources print positions.
fn printed(layout: Layout) -> Vec<usize> {
    layout.order().iter().map(|position| position + 1).collect()
}

#[test]
fn asme_pcc_1_cross_pattern() {
    // ASME PCC-1, legacy cross pattern, from memory: bolts numbered round the circle.
    for wanted in [
        vec![1, 3, 2, 4],
        vec![1, 5, 3, 7, 2, 6, 4, 8],
        vec![1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
        vec![1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
        vec![
            1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19,
        ],
        vec![
            1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24,
        ],
    ] {
        assert_eq!(printed(Layout::Circle { count: wanted.len() }), wanted);
    }
}

#[test]
fn common_orders() {
    // Common practice, no source: the five-bolt star, opposite pairs for six, middle outwards for
    // rows, crossing over.
    for (layout, wanted) in [
        (Layout::Circle { count: 5 }, vec![1, 3, 5, 2, 4]),
        (Layout::Circle { count: 6 }, vec![1, 4, 2, 5, 3, 6]),
        (Layout::Circle { count: 3 }, vec![1, 2, 3]),
        (Layout::Line { count: 5 }, vec![3, 2, 4, 1, 5]),
        (Layout::Line { count: 4 }, vec![2, 3, 1, 4]),
        (Layout::PairedRows { pairs: 2 }, vec![1, 4, 2, 3]),
        (Layout::PairedRows { pairs: 3 }, vec![2, 5, 1, 6, 3, 4]),
        (Layout::PairedRows { pairs: 4 }, vec![2, 7, 3, 6, 1, 8, 4, 5]),
        (
            Layout::PairedRows { pairs: 5 },
            vec![3, 8, 2, 9, 4, 7, 1, 10, 5, 6],
        ),
        // Round a rectangle as round a ring.
        (
            Layout::Rectangle { across: 3, down: 1 },
            vec![1, 5, 3, 7, 2, 6, 4, 8],
        ),
        (Layout::Free { count: 3 }, vec![1, 2, 3]),
        (Layout::Single, vec![1]),
    ] {
        assert_eq!(printed(layout), wanted, "{layout:?}");
    }
}

#[test]
fn every_layout_meets_every_bolt_once_and_draws_it_inside() {
    for count in 0..=MOST_BOLTS {
        for layout in [
            Layout::Line { count },
            Layout::Circle { count },
            Layout::Free { count },
            Layout::PairedRows { pairs: count / 2 },
            Layout::Rectangle {
                across: count / 4 + 1,
                down: count / 5,
            },
        ] {
            let wanted: Vec<usize> = (0..layout.count()).collect();
            let mut met = layout.order();
            met.sort_unstable();
            assert_eq!(met, wanted, "{layout:?}");
            let mut round = Pass {
                share: 1.0,
                round: true,
            }
            .order(&layout);
            round.sort_unstable();
            assert_eq!(round, wanted, "{layout:?}");
            let points = layout.points();
            assert_eq!(points.len(), wanted.len());
            assert!(
                points
                    .iter()
                    .all(|(x, y)| (0.0..=1.0).contains(x) && (0.0..=1.0).contains(y))
            );
            let apart = |i: usize, j: usize| {
                let ((x, y), (u, v)) = (points[i], points[j]);
                (x - u).hypot(y - v)
            };
            let nearest = (1..points.len()).flat_map(|i| (0..i).map(move |j| (i, j)));
            assert!(nearest.into_iter().all(|(i, j)| apart(i, j) > 0.01), "{layout:?}");
        }
    }
    for layout in [
        Layout::Line { count: usize::MAX },
        Layout::PairedRows { pairs: usize::MAX },
        Layout::Rectangle {
            across: usize::MAX,
            down: usize::MAX,
        },
        Layout::Rectangle {
            across: 2,
            down: usize::MAX,
        },
    ] {
        assert_eq!(layout.order().len(), MOST_BOLTS);
    }
}

#[test]
fn on_a_circle_no_bolt_follows_its_neighbour() {
    for count in 5..=MOST_BOLTS {
        let order = Layout::Circle { count }.order();
        for pair in order.windows(2) {
            let apart = pair[0].abs_diff(pair[1]);
            assert!(apart.min(count - apart) > 1, "{count} bolts: {pair:?}");
        }
    }
}

#[test]
fn drawings() {
    let close = |got: Vec<(f64, f64)>, wanted: &[(f64, f64)]| {
        assert_eq!(got.len(), wanted.len());
        for ((x, y), (u, v)) in got.iter().zip(wanted) {
            assert!((x - u).hypot(y - v) < 1e-9, "got {got:?}, wanted {wanted:?}");
        }
    };
    close(Layout::Single.points(), &[(0.5, 0.5)]);
    close(Layout::Line { count: 2 }.points(), &[(0.25, 0.5), (0.75, 0.5)]);
    close(
        Layout::PairedRows { pairs: 2 }.points(),
        &[(0.25, 0.25), (0.75, 0.25), (0.25, 0.75), (0.75, 0.75)],
    );
    // Clockwise from the top, y down.
    close(
        Layout::Circle { count: 4 }.points(),
        &[(0.5, 0.1), (0.9, 0.5), (0.5, 0.9), (0.1, 0.5)],
    );
    // Clockwise from the upper left corner.
    close(
        Layout::Rectangle { across: 2, down: 1 }.points(),
        &[
            (0.25, 1.0 / 6.0),
            (0.75, 1.0 / 6.0),
            (0.75, 0.5),
            (0.75, 5.0 / 6.0),
            (0.25, 5.0 / 6.0),
            (0.25, 0.5),
        ],
    );
    close(
        Layout::Free { count: 3 }.points(),
        &[(0.25, 0.25), (0.75, 0.25), (0.25, 0.75)],
    );
}

#[test]
fn a_round_goes_from_neighbour_to_neighbour() {
    let first = Pass {
        share: 0.3,
        round: false,
    };
    assert_eq!(first.order(&Layout::Circle { count: 4 }), [0, 2, 1, 3]);
    // Round two rows as round a ring.
    let last = Pass {
        share: 1.0,
        round: true,
    };
    assert_eq!(last.order(&Layout::PairedRows { pairs: 3 }), [0, 1, 2, 5, 4, 3]);
    assert_eq!(last.order(&Layout::Circle { count: 4 }), [0, 1, 2, 3]);
    let rectangle = Layout::Rectangle { across: 2, down: 1 };
    assert_eq!(last.order(&rectangle), [0, 1, 2, 3, 4, 5]);
}
