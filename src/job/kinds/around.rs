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
    /// The step was overridden before what it waits for had cured.
    pub before_cure: bool,
    /// What the other steps left behind.
    pub across: Across<'a>,
}

/// What the other steps of a job, and its record, do to one of them; each by the title of the step it comes
/// from. Worked out in [`crate::job::across`].
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Across<'a> {
    /// Compound is on, or a soft seal went in.
    pub soft: Option<&'a str>,
    /// A joint has not cured far enough to be handled, and nothing else holds it.
    pub half_cured: Option<&'a str>,
    /// Something is hot.
    pub hot: Option<&'a str>,
    /// Fuel is in.
    pub fuel: Option<&'a str>,
}
