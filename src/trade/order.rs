//! In which order the bolts of one joint are tightened, and what one pass over them is.

use serde::{Deserialize, Serialize};

/// Most bolts drawn and ordered in one joint.
pub const MOST_BOLTS: usize = 64;

/// How the bolts of one joint lie; positions count from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Layout {
    /// One bolt.
    Single,
    /// One row, left to right.
    Line {
        /// Bolts.
        count: usize,
    },
    /// Two equal rows: the upper left to right, then the lower left to right.
    PairedRows {
        /// Bolts in one row.
        pairs: usize,
    },
    /// Round a rectangle, clockwise from the upper left corner.
    Rectangle {
        /// Bolts in the upper row, and as many in the lower.
        across: usize,
        /// Bolts on each side between the two.
        down: usize,
    },
    /// On a circle, clockwise from the top.
    Circle {
        /// Bolts.
        count: usize,
    },
    /// No pattern: in the order the manual numbers them.
    Free {
        /// Bolts.
        count: usize,
    },
}

impl Layout {
    /// How many bolts; no more than [`MOST_BOLTS`], whatever a file says.
    pub fn count(&self) -> usize {
        match *self {
            Self::Single => 1,
            Self::Line { count } | Self::Circle { count } | Self::Free { count } => count.min(MOST_BOLTS),
            Self::PairedRows { pairs } => pairs.min(MOST_BOLTS / 2) * 2,
            Self::Rectangle { .. } => {
                let (across, down) = self.sides();
                2 * (across + down)
            }
        }
    }

    /// A rectangle's bolts in the upper row and on a side, no more than can be.
    fn sides(&self) -> (usize, usize) {
        match *self {
            Self::Rectangle { across, down } => {
                let across = across.min(MOST_BOLTS / 2);
                (across, down.min(MOST_BOLTS / 2 - across))
            }
            _ => (0, 0),
        }
    }

    /// Positions in the order of tightening, each once.
    ///
    /// Rows go from the middle outwards, crossing over; a circle and a rectangle go across and then a quarter on,
    /// as the cross pattern of ASME PCC-1 does. The manual's own order goes first: use `Free` for it.
    pub fn order(&self) -> Vec<usize> {
        let count = self.count();
        match self {
            Self::Single | Self::Free { .. } => (0..count).collect(),
            Self::Line { .. } => middle_out(count),
            Self::PairedRows { .. } => crossed_rows(count / 2),
            Self::Circle { .. } | Self::Rectangle { .. } => star(count),
        }
    }

    /// Where each position is drawn: x to the right and y down, both from 0 to 1.
    pub fn points(&self) -> Vec<(f64, f64)> {
        let count = self.count();
        match self {
            Self::Single => vec![(0.5, 0.5)],
            Self::Line { .. } => row(count, 0.5).collect(),
            Self::PairedRows { .. } => row(count / 2, 0.25).chain(row(count / 2, 0.75)).collect(),
            Self::Circle { .. } => (0..count).map(|i| on_circle(i, count)).collect(),
            Self::Rectangle { .. } => {
                let (across, down) = self.sides();
                round_rectangle(across, down)
            }
            Self::Free { .. } => grid(count),
        }
    }
}

/// 5 → 2 1 3 0 4; 4 → 1 2 0 3.
fn middle_out(count: usize) -> Vec<usize> {
    let (mut left, mut right) = (count.saturating_sub(1) / 2, count / 2);
    let mut order = Vec::with_capacity(count);
    if count == 0 {
        return order;
    }
    loop {
        order.push(left);
        if right != left {
            order.push(right);
        }
        if left == 0 {
            return order;
        }
        (left, right) = (left - 1, right + 1);
    }
}

/// From the middle outwards; each four are crossed: upper left, lower right, upper right, lower left.
fn crossed_rows(pairs: usize) -> Vec<usize> {
    let mut order = Vec::with_capacity(2 * pairs);
    if pairs == 0 {
        return order;
    }
    let (mut left, mut right) = ((pairs - 1) / 2, pairs / 2);
    loop {
        order.extend([left, pairs + right]);
        if left != right {
            order.extend([right, pairs + left]);
        }
        if left == 0 {
            return order;
        }
        (left, right) = (left - 1, right + 1);
    }
}

/// Round a circle, each bolt far from the one before.
fn star(count: usize) -> Vec<usize> {
    if count.is_multiple_of(4) {
        let quarter = count / 4;
        return spread(quarter)
            .flat_map(|a| [0, 2, 1, 3].map(|side| a + side * quarter))
            .collect();
    }
    if count.is_multiple_of(2) {
        let half = count / 2;
        return spread(half).flat_map(|a| [a, a + half]).collect();
    }
    // Just under half round, which meets every bolt of an odd number.
    let step = (count - 1) / 2;
    (0..count)
        .map(|i| if count == 1 { 0 } else { i * step % count })
        .collect()
}

/// 0 up to `count`, so that neighbours come apart: 4 → 0 2 1 3, 5 → 0 2 4 1 3.
fn spread(count: usize) -> impl Iterator<Item = usize> {
    let step = (count / 2).max(1);
    (0..step).flat_map(move |first| (first..count).step_by(step))
}

fn row(count: usize, y: f64) -> impl Iterator<Item = (f64, f64)> {
    (0..count).map(move |i| ((i as f64 + 0.5) / count as f64, y))
}

/// The circle leaves a tenth free around it, for the bolts' own size.
fn on_circle(i: usize, count: usize) -> (f64, f64) {
    let turn = std::f64::consts::TAU * i as f64 / count as f64;
    (0.5 + 0.4 * turn.sin(), 0.5 - 0.4 * turn.cos())
}

/// Along the top, down the right side, back along the bottom and up the left.
fn round_rectangle(across: usize, down: usize) -> Vec<(f64, f64)> {
    let line = |i: usize| (i as f64 + 0.5) / (down as f64 + 2.0);
    let wide = across.max(1) as f64;
    let (left, right) = (0.5 / wide, (wide - 0.5) / wide);
    let side = |x: f64| move |i: usize| (x, line(i));
    let top = row(across, line(0));
    let bottom: Vec<(f64, f64)> = row(across, line(down + 1)).collect();
    top.chain((1..=down).map(side(right)))
        .chain(bottom.into_iter().rev())
        .chain((1..=down).rev().map(side(left)))
        .collect()
}

/// Left to right, top to bottom, as near to a square as it goes.
fn grid(count: usize) -> Vec<(f64, f64)> {
    let columns = (1..=count).find(|c| c * c >= count).unwrap_or(1);
    let rows = count.div_ceil(columns);
    let point = |i: usize| {
        let (column, line) = (i % columns, i / columns);
        (
            (column as f64 + 0.5) / columns as f64,
            (line as f64 + 0.5) / rows as f64,
        )
    };
    (0..count).map(point).collect()
}

/// One pass over all bolts of a joint.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Pass {
    /// Share of the target torque.
    pub share: f64,
    /// The last round: from bolt to neighbouring bolt, again and again until none turns.
    pub round: bool,
}

impl Pass {
    /// The order of this pass: the layout's, or round in turn for the last one.
    pub fn order(&self, layout: &Layout) -> Vec<usize> {
        match layout {
            _ if !self.round => layout.order(),
            // Round two rows as round a ring: along the upper, back along the lower.
            Layout::PairedRows { .. } => {
                let pairs = layout.count() / 2;
                (0..pairs).chain((pairs..2 * pairs).rev()).collect()
            }
            _ => (0..layout.count()).collect(),
        }
    }
}
