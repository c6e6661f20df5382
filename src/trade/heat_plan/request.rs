//! What a plan is asked for, and whether it makes sense.

use super::LimitOf;
use crate::trade::fit::Interference;
use crate::trade::growth::{REFERENCE_CELSIUS, checked_celsius, strain_from_20};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature, fixed};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::length::{meter, millimeter};
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Which of the two carries the hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoleIn {
    /// The housing: an outer ring or bush goes into a case.
    #[default]
    Housing,
    /// The part: an inner ring or a gear goes onto a shaft, which stands in the housing's place.
    Part,
}

/// What there is to cool with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoolMeans {
    /// A household freezer, −18 °C.
    Freezer,
    /// Dry ice, −78 °C: ventilation and gloves; steel and seals can turn brittle.
    DryIce,
}

impl CoolMeans {
    /// Its temperature, °C.
    pub(super) const fn celsius(self) -> f64 {
        match self {
            Self::Freezer => -18.0,
            // Carbon dioxide sublimes at −78.5 °C; a part beside it gets nearly there.
            Self::DryIce => -78.0,
        }
    }
}

/// Slip clearance as a share of the diameter, and its least, mm: half of the thousandth of the diameter
/// that shrink-fit standards ask for (DIN 7190, from memory), as a bearing is soon home (common practice).
const SLIP_SHARE: f64 = 0.0005;
const SLIP_LEAST_MM: f64 = 0.010;

/// The clearance that lets a part drop in without sticking, when nothing else is chosen.
pub fn usual_slip_clearance(diameter: Length) -> Length {
    (diameter * SLIP_SHARE).max(Length::new::<millimeter>(SLIP_LEAST_MM))
}

/// What is known before a plan is made. The housing is what stays, the part what is fitted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PlanRequest {
    /// The diameter they share.
    #[serde(rename = "diameter_mm", with = "stored::millimetres")]
    pub diameter: Length,
    /// Their interference at 20 °C.
    pub interference: Interference,
    /// Which of them carries the hole.
    #[serde(default)]
    pub hole_in: HoleIn,
    /// The housing's material (the shaft's, where the part carries the hole).
    pub housing: Material,
    /// The part's material.
    pub part: Material,
    /// The hottest the housing may become.
    #[serde(rename = "housing_limit_c", with = "stored::celsius")]
    pub housing_limit: ThermodynamicTemperature,
    /// The hottest the part may become.
    #[serde(rename = "part_limit_c", with = "stored::celsius")]
    pub part_limit: ThermodynamicTemperature,
    /// Whether the one with the hole may be heated.
    pub may_heat: bool,
    /// Whether the other may be cooled, and with what.
    pub may_cool: Option<CoolMeans>,
    /// Whether it may be pressed cold when nothing milder works.
    pub may_press: bool,
    /// The clearance wanted while it slips in; see [`usual_slip_clearance`].
    #[serde(rename = "slip_clearance_mm", with = "stored::millimetres")]
    pub slip_clearance: Length,
    /// The room's temperature.
    #[serde(rename = "room_c", with = "stored::celsius")]
    pub room: ThermodynamicTemperature,
}

/// Why no plan can be made.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlanError {
    /// The diameter is not above zero, or absurd.
    Diameter,
    /// The interference, in mm, is no fit's at this diameter, or its least is above its most.
    Interference(f64),
    /// The slip clearance is negative, or over a hundredth of the diameter.
    SlipClearance,
    /// The room is not between −30 and 50 °C.
    Room,
    /// A limit is missing or absurd.
    Limit,
}

impl fmt::Display for PlanError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Diameter => f.write_str("Enter the diameter of the fit, above zero and under 10 m."),
            Self::Interference(mm) => {
                write!(
                    f,
                    "An interference of {} mm is no fit at this size: check both sizes.",
                    fixed(*mm, 3)
                )
            }
            Self::SlipClearance => {
                f.write_str("Enter a slip clearance from zero to a hundredth of the diameter.")
            }
            Self::Room => f.write_str("Enter a room temperature between −30 and 50 °C."),
            Self::Limit => f.write_str("Enter a heat limit between −100 and 300 °C."),
        }
    }
}

impl std::error::Error for PlanError {}

/// A request in plain SI numbers, found sane: `outer` carries the hole. Each α pair is (for warmth, for
/// cold), the ends of the material's range that give the least clearance.
pub(super) struct Checked {
    pub diameter_m: f64,
    pub interference_m: f64,
    pub slip_m: f64,
    pub room_c: f64,
    pub hole_in: HoleIn,
    pub limit: (f64, LimitOf),
    pub outer_alpha: (f64, f64),
    pub inner_alpha: (f64, f64),
}

impl Checked {
    /// Least growth of the outer part from 20 °C.
    pub fn outer_strain(&self, celsius: f64) -> f64 {
        let (warm, cold) = self.outer_alpha;
        strain_from_20(if celsius >= REFERENCE_CELSIUS { warm } else { cold }, celsius)
    }

    /// Most growth of the inner part from 20 °C.
    pub fn inner_strain(&self, celsius: f64) -> f64 {
        let (warm, cold) = self.inner_alpha;
        strain_from_20(if celsius >= REFERENCE_CELSIUS { warm } else { cold }, celsius)
    }
}

impl PlanRequest {
    pub(super) fn checked(&self) -> Result<Checked, PlanError> {
        let diameter_m = self.diameter.get::<meter>();
        if !(1e-4..10.0).contains(&diameter_m) {
            return Err(PlanError::Diameter);
        }
        let (least_m, most_m) = (
            self.interference.least.get::<meter>(),
            self.interference.most.get::<meter>(),
        );
        let sane = |m: f64| m.abs() <= diameter_m / 100.0;
        if !sane(least_m) || !sane(most_m) || least_m > most_m {
            return Err(PlanError::Interference(
                self.interference.most.get::<millimeter>(),
            ));
        }
        let slip_m = self.slip_clearance.get::<meter>();
        if !(0.0..=diameter_m / 100.0).contains(&slip_m) {
            return Err(PlanError::SlipClearance);
        }
        let room_c = self.room.get::<degree_celsius>();
        if !(-30.0..=50.0).contains(&room_c) {
            return Err(PlanError::Room);
        }
        let ends = |material: Material| {
            let (least, most) = material.expansion_range();
            (least.get::<per_kelvin>(), most.get::<per_kelvin>())
        };
        let (outer, inner) = match self.hole_in {
            HoleIn::Housing => (self.housing, self.part),
            HoleIn::Part => (self.part, self.housing),
        };
        let (outer_least, outer_most) = ends(outer);
        let (inner_least, inner_most) = ends(inner);
        Ok(Checked {
            diameter_m,
            interference_m: most_m,
            slip_m,
            room_c,
            hole_in: self.hole_in,
            limit: self.heat_limit()?,
            outer_alpha: (outer_least, outer_most),
            inner_alpha: (inner_most, inner_least),
        })
    }

    /// The hottest that either may become, by what is stated and by what the materials stand, and whose limit
    /// it is: the cold one takes up the hot one's heat as soon as they touch.
    ///
    /// # Errors
    /// [`PlanError::Limit`].
    pub fn hottest(&self) -> Result<(ThermodynamicTemperature, LimitOf), PlanError> {
        let (limit_c, whose) = self.heat_limit()?;
        Ok((ThermodynamicTemperature::new::<degree_celsius>(limit_c), whose))
    }

    /// The lowest of the limits, °C, and whose it is.
    fn heat_limit(&self) -> Result<(f64, LimitOf), PlanError> {
        let stated = |limit| checked_celsius(limit).map_err(|_| PlanError::Limit);
        let material = |m: Material| m.heat_limit().get::<degree_celsius>();
        let mut lowest = (stated(self.housing_limit)?, LimitOf::Housing);
        for other in [
            (stated(self.part_limit)?, LimitOf::Part),
            (material(self.housing), LimitOf::HousingMaterial),
            (material(self.part), LimitOf::PartMaterial),
        ] {
            if other.0 < lowest.0 {
                lowest = other;
            }
        }
        Ok(lowest)
    }
}
