//! End float and preload set by a pack of shims.

use super::{MeasuringError, mean, mm, reading_mm, readings_mm};
use crate::trade::quantity::Length;
use crate::trade::selection::{MOST_SHIMS, Pack, Size, pack};
use uom::si::length::millimeter;

/// What the manual wants of a shaft between its faces.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wish {
    /// It may move endwise, least to most.
    Float(Length, Length),
    /// Its bearings are squeezed by so much, least to most.
    Preload(Length, Length),
}

/// The pack a gap wants.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// The thinnest that will do.
    pub least: Length,
    /// The one that brings the middle of the limits.
    pub aim: Length,
    /// The thickest that will do.
    pub most: Length,
}

/// The pack for a gap measured without shims: gap less float, or gap and preload (common practice). Of several
/// readings the mean counts. Limits from zero up.
///
/// # Errors
/// No reading, limits the wrong way round, or a gap under the least float.
pub fn pack_for(gaps: &[Length], wish: Wish) -> Result<Wanted, MeasuringError> {
    let gap = mean(&readings_mm(gaps, 1)?);
    let (least, most, sign) = match wish {
        Wish::Float(least, most) => (least, most, -1.0),
        Wish::Preload(least, most) => (least, most, 1.0),
    };
    let (least, most) = (reading_mm(least)?, reading_mm(most)?);
    if least < 0.0 || most < least {
        return Err(MeasuringError::Limits);
    }
    let packs = [gap + sign * least, gap + sign * most];
    let (thin, thick) = (packs[0].min(packs[1]), packs[0].max(packs[1]));
    if thick < 0.0 {
        return Err(MeasuringError::NoRoom);
    }
    Ok(Wanted {
        least: mm(thin.max(0.0)),
        aim: mm((gap + sign * (least + most) / 2.0).max(0.0)),
        most: mm(thick),
    })
}

/// The pack out of a box whose sizes are in mm: every pack there is was looked at
/// ([`selection`](crate::trade::selection)).
pub fn from_box(sizes: &[Size], wanted: Wanted) -> Pack {
    let mm = |length: Length| length.get::<millimeter>();
    let limits = (mm(wanted.least), mm(wanted.most));
    pack(sizes, mm(wanted.aim), limits, MOST_SHIMS)
}

/// The float a pack leaves in a gap; negative is preload.
pub fn float_left(gap: Length, pack: Length) -> Length {
    gap - pack
}
