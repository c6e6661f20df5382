//! How a quantity is stored: a plain number in the unit people write it in, named with
//! `#[serde(rename = "size_mm", with = "stored::millimetres")]`: the field in the file says its unit.
//!
//! A stored number keeps nine decimals, so 62 mm is written `62.0` whatever its last binary digit,
//! and writing what was read gives the same text again.

use crate::trade::quantity::{Angle, Force, Length, Mass, Pressure, Ratio, ThermodynamicTemperature, Time};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

const STEPS_PER_UNIT: f64 = 1e9;

/// A number as it is stored, and read again.
pub fn tidy(value: f64) -> f64 {
    let rounded = (value * STEPS_PER_UNIT).round() / STEPS_PER_UNIT;
    // Beyond a million the nine decimals are more than an f64 holds.
    if value.abs() < 1e6 { rounded } else { value }
}

macro_rules! stored_in {
    ($name:ident, $quantity:ident, $unit:path, $doc:literal) => {
        #[doc = $doc]
        pub mod $name {
            use super::*;
            use $unit as unit;

            /// Writes the number in this unit.
            pub fn serialize<S: Serializer>(value: &$quantity, to: S) -> Result<S::Ok, S::Error> {
                tidy(value.get::<unit>()).serialize(to)
            }

            /// Reads a number in this unit.
            pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<$quantity, D::Error> {
                f64::deserialize(from).map($quantity::new::<unit>)
            }

            /// The same for a value that may be absent; add `#[serde(default)]` to the field.
            pub mod maybe {
                use super::*;

                /// Writes the number in this unit, or null.
                pub fn serialize<S: Serializer>(value: &Option<$quantity>, to: S) -> Result<S::Ok, S::Error> {
                    value.map(|v| tidy(v.get::<unit>())).serialize(to)
                }

                /// Reads a number in this unit, or null.
                pub fn deserialize<'de, D: Deserializer<'de>>(
                    from: D,
                ) -> Result<Option<$quantity>, D::Error> {
                    Ok(Option::<f64>::deserialize(from)?.map($quantity::new::<unit>))
                }
            }
        }
    };
}

stored_in!(
    millimetres,
    Length,
    uom::si::length::millimeter,
    "Lengths in millimetres."
);
stored_in!(
    celsius,
    ThermodynamicTemperature,
    uom::si::thermodynamic_temperature::degree_celsius,
    "Temperatures in °C."
);
stored_in!(kilograms, Mass, uom::si::mass::kilogram, "Masses in kilograms.");
stored_in!(newtons, Force, uom::si::force::newton, "Forces in newtons.");
stored_in!(
    megapascals,
    Pressure,
    uom::si::pressure::megapascal,
    "Pressures and stresses in MPa."
);
stored_in!(degrees, Angle, uom::si::angle::degree, "Angles in degrees.");
stored_in!(seconds, Time, uom::si::time::second, "Spans of time in seconds.");
stored_in!(minutes, Time, uom::si::time::minute, "Spans of time in minutes.");
stored_in!(
    fraction,
    Ratio,
    uom::si::ratio::ratio,
    "Ratios as a plain fraction."
);
stored_in!(percent, Ratio, uom::si::ratio::percent, "Ratios in percent.");

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::{inch, millimeter};
    use uom::si::thermodynamic_temperature::degree_celsius;

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    struct Row {
        #[serde(rename = "size_mm", with = "millimetres")]
        size: Length,
        #[serde(default, rename = "at_c", with = "celsius::maybe")]
        at: Option<ThermodynamicTemperature>,
    }

    #[test]
    fn reads_back_what_it_wrote_and_writes_the_same_text() {
        for row in [
            Row {
                size: Length::new::<millimeter>(62.013),
                at: None,
            },
            Row {
                size: Length::new::<inch>(1.375),
                at: Some(ThermodynamicTemperature::new::<degree_celsius>(-78.0)),
            },
        ] {
            let text = serde_json::to_string(&row).unwrap();
            let again: Row = serde_json::from_str(&text).unwrap();
            assert_eq!(serde_json::to_string(&again).unwrap(), text);
            assert!((again.size - row.size).abs() < Length::new::<millimeter>(1e-9));
        }
        let text = serde_json::to_string(&Row {
            size: Length::new::<millimeter>(62.0),
            at: None,
        })
        .unwrap();
        assert_eq!(text, r#"{"size_mm":62.0,"at_c":null}"#);
        assert_eq!(serde_json::from_str::<Row>(r#"{"size_mm":62}"#).unwrap().at, None);
    }
}
