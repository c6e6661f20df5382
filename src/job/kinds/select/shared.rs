//! A box or a set that several steps take from: what one has in is no more there for another.

use super::data::{By, Piece, Select};
use crate::trade::quantity::{Unit, convert};
use crate::trade::selection::{Size, tidy};

impl Select {
    /// Whether both take from one box: one of a name, as a box without is the step's own.
    pub fn shares_with(&self, other: &Self) -> bool {
        let name = self.set.trim();
        self.counted() && other.counted() && !name.is_empty() && name.eq_ignore_ascii_case(other.set.trim())
    }

    /// Whether it takes single pieces out of what there is; parts by code are fetched as they are wanted.
    fn counted(&self) -> bool {
        matches!(self.by, By::Gap | By::Trial | By::Range)
    }

    /// Each piece the step may take one more of, with what other steps have `gone` off with taken out.
    pub fn there(&self, gone: &[Piece]) -> Vec<Piece> {
        match self.by {
            By::Gap | By::Trial => {
                let shims = self.shims.iter();
                let mut sizes: Vec<Size> = shims
                    .map(|shim| Size {
                        thick: shim.thick,
                        count: shim.count,
                        between: shim.between,
                    })
                    .collect();
                take_out(&mut sizes, gone);
                let left = sizes.into_iter().filter(|size| size.count > 0);
                left.map(|size| Piece::shims(size.thick, 1)).collect()
            }
            By::Range => {
                let rows = self.rows.iter().map(|row| Piece::coded(&row.code, row.thick));
                rows.filter(|own| !gone.iter().any(|piece| same(piece, own)))
                    .collect()
            }
            By::Code => Vec::new(),
        }
    }

    /// Pieces of a step in `other`'s unit, in this one's; whatever their thickness can't be told stays apart.
    pub fn in_own_unit(&self, pieces: &[Piece], unit: &str) -> Vec<Piece> {
        let own = self.unit.symbol();
        let turned = pieces.iter().map(|piece| Piece {
            thick: piece.thick.and_then(|thick| convert(thick, unit, own)).map(tidy),
            ..piece.clone()
        });
        turned.collect()
    }
}

/// Whether both are the same part: of one thickness where both have one, else of one mark.
pub fn same(a: &Piece, b: &Piece) -> bool {
    match (a.thick, b.thick) {
        (Some(a), Some(b)) => tidy(a - b) == 0.0,
        _ => !a.code.is_empty() && a.code.eq_ignore_ascii_case(&b.code),
    }
}

/// Takes pieces out of a box, as far as it has them.
pub fn take_out(sizes: &mut [Size], gone: &[Piece]) {
    for piece in gone {
        let mut left = piece.count;
        let alike = |size: &&mut Size| piece.thick.is_some_and(|thick| tidy(size.thick - thick) == 0.0);
        for size in sizes.iter_mut().filter(alike) {
            let taken = size.count.min(left);
            size.count -= taken;
            left -= taken;
        }
    }
}
