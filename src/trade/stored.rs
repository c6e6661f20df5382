//! How the trade's quantities are written in a stored file: plain numbers in the unit of the field's name.
//!
//! Numbers are kept to a millionth of their unit, so that 22 °C is written as 22 and reads back as 22 °C.

use super::quantity::{Length, Ratio, ThermodynamicTemperature, Time};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use uom::si::length::millimeter;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

/// Rounds away the noise of a unit conversion.
fn tidy(number: f64) -> f64 {
    let millionths = number * 1e6;
    if millionths.abs() < 1e15 {
        millionths.round() / 1e6
    } else {
        number
    }
}

/// A module for `#[serde(with = …)]`: a quantity as a number in one unit.
macro_rules! stored {
    ($name:ident, $quantity:ty, $unit:ty) => {
        pub(crate) mod $name {
            use super::*;

            pub(crate) fn serialize<S: Serializer>(value: &$quantity, to: S) -> Result<S::Ok, S::Error> {
                tidy(value.get::<$unit>()).serialize(to)
            }

            pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<$quantity, D::Error> {
                f64::deserialize(from).map(<$quantity>::new::<$unit>)
            }
        }
    };
}

/// The same for a quantity that may be missing.
macro_rules! stored_maybe {
    ($name:ident, $quantity:ty, $unit:ty) => {
        pub(crate) mod $name {
            use super::*;

            pub(crate) fn serialize<S: Serializer>(
                value: &Option<$quantity>,
                to: S,
            ) -> Result<S::Ok, S::Error> {
                value.map(|known| tidy(known.get::<$unit>())).serialize(to)
            }

            pub(crate) fn deserialize<'de, D: Deserializer<'de>>(
                from: D,
            ) -> Result<Option<$quantity>, D::Error> {
                Ok(Option::<f64>::deserialize(from)?.map(<$quantity>::new::<$unit>))
            }
        }
    };
}

stored!(celsius, ThermodynamicTemperature, degree_celsius);
stored!(millimetres, Length, millimeter);
stored!(minutes, Time, minute);
stored_maybe!(maybe_celsius, ThermodynamicTemperature, degree_celsius);
stored_maybe!(maybe_millimetres, Length, millimeter);
stored_maybe!(maybe_minutes, Time, minute);
stored_maybe!(maybe_percent, Ratio, percent);
