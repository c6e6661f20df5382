//! A step, as far as it can hurt someone or break something.

use super::fuel::Fuel;
use crate::trade::compound::CompoundClass;
use crate::trade::quantity::{Angle, Force, Mass, ThermodynamicTemperature};

/// What a step does and with what. `Default` is a step with nothing to mind. A number that is not
/// finite counts as beyond its limit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Situation {
    /// Something is pressed or pulled in or out.
    pub pressing: Option<Pressing>,
    /// Something is heated.
    pub heating: Option<Heating>,
    /// Something is made cold.
    pub cooling: Option<Cooling>,
    /// Something heavy is moved.
    pub lifting: Option<Lifting>,
    /// Compounds put on in this step, or still wet from an earlier one.
    pub chemicals: Vec<CompoundClass>,
    /// Solvent or spray cleaner is used.
    pub solvent: bool,
    /// Solvent was used a short while ago: a part may be wet with it, or the air full of it.
    pub solvent_near: bool,
    /// The step before at which compound or a soft seal went in.
    pub soft_inside: Option<String>,
    /// The step whose joint has not cured far enough to be handled, and is held by nothing else.
    pub half_cured: Option<String>,
    /// The step that left something hot.
    pub hot_near: Option<String>,
    /// Fuel is filled in.
    pub fuel: Option<&'static Fuel>,
    /// The step that filled fuel in.
    pub fuel_near: Option<String>,
    /// A spring is under load.
    pub spring: bool,
    /// Compressed air is used.
    pub compressed_air: bool,
    /// Hot oil is drained, filled or may run out.
    pub hot_oil: bool,
    /// Shafts or gears are turned.
    pub turning: bool,
    /// Gauging plastic lies in a bearing.
    pub gauging: bool,
    /// The engine runs.
    pub running: bool,
    /// Filling, starting or loading while a compound has not cured.
    pub before_cure: bool,
    /// A fastener set in high-strength threadlocker is taken out.
    pub high_strength_removal: bool,
}

/// Pressing a part in or out.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Pressing {
    /// The force reckoned for the fit.
    pub force: Option<Force>,
    /// What the press may give.
    pub rating: Option<Force>,
    /// The force goes through the balls or rollers of a bearing.
    pub through_rolling_elements: bool,
    /// The part is struck rather than pressed.
    pub struck: bool,
}

/// Heating a part.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Heating {
    /// How hot.
    pub target: Option<ThermodynamicTemperature>,
    /// How hot the part may get.
    pub part_limit: Option<ThermodynamicTemperature>,
    /// It holds seals, O-rings or cured compound.
    pub holds_seals_or_compound: bool,
    /// The heat is an open flame rather than an oven, a hot plate or hot air.
    pub open_flame: bool,
    /// The manual states that temperature: it stands, whatever we know of the part.
    pub by_manual: bool,
    /// It lies in a bath of oil.
    pub oil_bath: bool,
    /// The flash point of that oil.
    pub flash_point: Option<ThermodynamicTemperature>,
    /// By an induction heater.
    pub induction: bool,
}

/// Making a part cold.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Cooling {
    /// How cold.
    pub to: Option<ThermodynamicTemperature>,
    /// By dry ice.
    pub dry_ice: bool,
    /// By liquid nitrogen.
    pub liquid_nitrogen: bool,
}

/// Moving a weight.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lifting {
    /// What it weighs; `None`: not known.
    pub mass: Option<Mass>,
    /// By hand rather than by hoist.
    pub by_hand: bool,
    /// Load over recommended weight limit; infinite where the limit is nothing.
    pub lifting_index: Option<f64>,
    /// Angle of the sling legs, from the horizontal.
    pub sling_angle: Option<Angle>,
    /// Load over what the hoist may carry there.
    pub hoist_share: Option<f64>,
    /// Someone has to be or reach under it.
    pub under_load: bool,
}
