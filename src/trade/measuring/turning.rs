//! The preload of taper bearings, told by the torque it takes to keep the shaft turning.

use super::{MeasuringError, mm, size_mm};
use crate::trade::quantity::{Force, Length, Torque};
use crate::trade::selection::{Change, Thicker, change};
use uom::si::force::newton;
use uom::si::length::{meter, millimeter};
use uom::si::torque::newton_meter;

/// The most that is taken, N and N·m: beyond it the unit was mistaken.
const MOST: f64 = 1e6;

fn load(value: f64) -> Result<f64, MeasuringError> {
    if (0.0..=MOST).contains(&value) {
        Ok(value)
    } else {
        Err(MeasuringError::Load)
    }
}

/// Torque of a steady pull on a cord wound at a radius: T = F·r. Read while it turns; starting takes more.
///
/// # Errors
/// A pull below zero, a radius that is not above zero.
pub fn by_cord(pull: Force, radius: Length) -> Result<Torque, MeasuringError> {
    let radius_m = size_mm(radius).map(|_| radius.get::<meter>())?;
    Ok(Torque::new::<newton_meter>(
        load(pull.get::<newton>())? * radius_m,
    ))
}

/// What the bearings take of a torque read with a seal that drags: the rest is the seal's.
///
/// # Errors
/// A torque below zero, or a seal that drags more than was read.
pub fn of_bearings(read: Torque, seal: Torque) -> Result<Torque, MeasuringError> {
    let (read_nm, seal_nm) = (
        load(read.get::<newton_meter>())?,
        load(seal.get::<newton_meter>())?,
    );
    if seal_nm > read_nm {
        return Err(MeasuringError::Drag);
    }
    Ok(Torque::new::<newton_meter>(read_nm - seal_nm))
}

/// The manual's figure: so much pack for so much torque.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// Of the pack.
    pub pack: Length,
    /// For a torque of this.
    pub torque: Torque,
}

/// How the pack changes for the torque to come within its limits, in mm of pack: by the manual's figure, in
/// proportion, which holds for a small change. A thicker pack between the races lowers the preload, one behind
/// a race raises it: the manual's drawing tells.
///
/// # Errors
/// Limits the wrong way round; a figure that is not above zero.
pub fn pack_change(
    read: Torque,
    (least, most): (Torque, Torque),
    thicker: Thicker,
    figure: Figure,
) -> Result<Change, MeasuringError> {
    let nm = |torque: Torque| load(torque.get::<newton_meter>());
    let limits = (nm(least)?, nm(most)?);
    if limits.0 > limits.1 {
        return Err(MeasuringError::Limits);
    }
    let per = figure.pack.get::<millimeter>() / figure.torque.get::<newton_meter>();
    if !(per > 0.0 && per < MOST) || size_mm(figure.pack).is_err() {
        return Err(MeasuringError::Figure);
    }
    Ok(change(nm(read)?, limits, thicker, per))
}

/// The change as a length.
pub fn change_by(change: &Change) -> Length {
    mm(change.by)
}
