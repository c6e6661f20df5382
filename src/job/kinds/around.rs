//! What stands around a step: my press and hoist, the room, solvent used of late.

use super::lift::answer::Hoist;
use crate::trade::quantity::ThermodynamicTemperature;

/// What a step's cautions look at beside its own numbers.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Around<'a> {
    /// What my press may push, kN.
    pub press_kn: Option<f64>,
    /// My hoist.
    pub hoist: Hoist<'a>,
    /// The room.
    pub room: Option<ThermodynamicTemperature>,
    /// Solvent was used within the hour.
    pub solvent: bool,
    /// The step was opened by hand before what it waits for had cured.
    pub before_cure: bool,
}
