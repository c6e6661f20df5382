//! How long a heated case (or a chilled ring) stays good on its way from oven to bench.
//!
//! Newton's cooling of a wall in still air: T(t) = T_a + (T_0 − T_a)·e^(−t/τ), τ = ρ·c·s/h, with s the
//! volume over the cooled area. h is 10 to 15 W/m²K (common practice), so every answer is a range.
//! Once a cold ring touches a hot wall, seconds count, not this.

use crate::trade::growth::{GrowthError, checked_celsius};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature, Time, in_mark};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::length::{meter, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::time::second;

/// Heat given off to still air, convection and radiation together, W/m²K: least and most.
pub const HEAT_TRANSFER: (f64, f64) = (10.0, 15.0);

/// How many faces of the wall the air reaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Faces {
    /// One: a case standing face down, or a closed one.
    One,
    /// Both: an open case half.
    Both,
}

/// The wall that carries the bore.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Wall {
    /// What it is made of.
    pub material: Material,
    /// How thick it is.
    #[serde(rename = "thickness_mm", with = "stored::millimetres")]
    pub thickness: Length,
    /// The faces that cool.
    pub faces: Faces,
}

/// Why there is no window.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoolingError {
    /// The wall is not between 0.1 and 200 mm thick.
    Thickness,
    /// A temperature outside −100 to 300 °C.
    Temperature,
    /// The limit is passed before the start: no time at all.
    AlreadyShut,
    /// The room alone never brings the part to the limit: it stays good.
    StaysOpen,
}

impl fmt::Display for CoolingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&in_mark(match self {
            Self::Thickness => "Enter a wall thickness between 0.1 and 200 mm.",
            Self::Temperature => "Enter a temperature between −100 and 300 °C.",
            Self::AlreadyShut => {
                "The part is past that temperature at the start: warm it (or chill it) further."
            }
            Self::StaysOpen => "The room never brings the part to that temperature: it stays good.",
        }))
    }
}

impl std::error::Error for CoolingError {}

impl From<GrowthError> for CoolingError {
    fn from(_: GrowthError) -> Self {
        Self::Temperature
    }
}

/// A time as a range: brisk air and slow air.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TimeRange {
    /// With the most heat given off: the one to work by.
    #[serde(rename = "shortest_s", with = "stored::seconds")]
    pub shortest: Time,
    /// With the least.
    #[serde(rename = "longest_s", with = "stored::seconds")]
    pub longest: Time,
}

impl Wall {
    /// The time constant τ, in which 63 % of the difference to the room is lost.
    pub fn time_constant(&self) -> Result<TimeRange, CoolingError> {
        if !(0.1..=200.0).contains(&self.thickness.get::<millimeter>()) {
            return Err(CoolingError::Thickness);
        }
        let faces = match self.faces {
            Faces::One => 1.0,
            Faces::Both => 2.0,
        };
        let depth_m = self.thickness.get::<meter>() / faces;
        let heat_j_m2_k = self.material.density().get::<kilogram_per_cubic_meter>()
            * self.material.specific_heat().get::<joule_per_kilogram_kelvin>()
            * depth_m;
        let (least, most) = HEAT_TRANSFER;
        Ok(TimeRange {
            shortest: Time::new::<second>(heat_j_m2_k / most),
            longest: Time::new::<second>(heat_j_m2_k / least),
        })
    }
}

/// How long the wall takes from `start` to `until` in a room, hot or chilled.
///
/// t = τ·ln((T_0 − T_a)/(T − T_a)).
///
/// ```
/// use halfcase::trade::cooling::{Faces, Wall, window};
/// use halfcase::trade::material::Material;
/// use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
/// use uom::si::{length::millimeter, thermodynamic_temperature::degree_celsius, time::second};
///
/// let celsius = ThermodynamicTemperature::new::<degree_celsius>;
/// let thickness = Length::new::<millimeter>(6.0);
/// let wall = Wall { material: Material::CastAluminium, thickness, faces: Faces::Both };
/// let open = window(&wall, celsius(110.0), celsius(90.0), celsius(20.0))?;
/// assert_eq!(open.shortest.get::<second>().round(), 125.0);
/// # Ok::<(), halfcase::trade::cooling::CoolingError>(())
/// ```
pub fn window(
    wall: &Wall,
    start: ThermodynamicTemperature,
    until: ThermodynamicTemperature,
    room: ThermodynamicTemperature,
) -> Result<TimeRange, CoolingError> {
    let TimeRange { shortest, longest } = wall.time_constant()?;
    let room = checked_celsius(room)?;
    let at_start_k = checked_celsius(start)? - room;
    let at_end_k = checked_celsius(until)? - room;
    // Seen from the room, hot and chilled parts behave alike.
    let (at_start_k, at_end_k) = if at_start_k < 0.0 {
        (-at_start_k, -at_end_k)
    } else {
        (at_start_k, at_end_k)
    };
    if at_end_k > at_start_k {
        return Err(CoolingError::AlreadyShut);
    }
    if at_end_k <= 0.0 {
        return Err(CoolingError::StaysOpen);
    }
    let spans = (at_start_k / at_end_k).ln();
    Ok(TimeRange {
        shortest: shortest * spans,
        longest: longest * spans,
    })
}
