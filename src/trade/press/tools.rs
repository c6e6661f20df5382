//! What to push with and what to stand it on: sizes to look for with a caliper in the drawer.

use crate::trade::quantity::Length;
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::length::millimeter;

/// Room left on the diameter between a tool and what it must clear, mm (common practice).
const GAP_MM: f64 = 0.5;

/// Thinnest wall of a driver or a support worth pushing on, mm (common practice).
const WALL_MM: f64 = 1.5;

/// What is pushed, and where.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Push {
    /// A ring or bush into a housing: push on the outer ring only.
    IntoBore {
        /// The housing's bore, which the driver may have to follow into.
        #[serde(rename = "bore_mm", with = "stored::millimetres")]
        bore: Length,
        /// The inside diameter of the ring or bush that is pushed, at its face: an outer ring's land.
        #[serde(rename = "ring_inside_mm", with = "stored::millimetres")]
        ring_inside: Length,
        /// The opening that a shoulder behind the bore leaves; none when the bore goes through.
        #[serde(default, rename = "shoulder_mm", with = "stored::millimetres::maybe")]
        shoulder: Option<Length>,
        /// The outside of the wall around the bore, at the support's side.
        #[serde(rename = "boss_outside_mm", with = "stored::millimetres")]
        boss_outside: Length,
    },
    /// A ring onto a shaft: push on the inner ring only.
    OntoShaft {
        /// The largest diameter the driver must slip over on its way.
        #[serde(rename = "shaft_mm", with = "stored::millimetres")]
        shaft: Length,
        /// The outside diameter of the ring that is pushed, at its face: an inner ring's land.
        #[serde(rename = "ring_outside_mm", with = "stored::millimetres")]
        ring_outside: Length,
    },
}

/// The driver (a tube or socket that pushes) and the support (a tube or block that takes the force
/// behind the bore). Insides are the least, outsides the most, that will do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Tools {
    /// Least inside diameter of the driver.
    #[serde(rename = "driver_inside_mm", with = "stored::millimetres")]
    pub driver_inside: Length,
    /// Most outside diameter of the driver.
    #[serde(rename = "driver_outside_mm", with = "stored::millimetres")]
    pub driver_outside: Length,
    /// Least inside diameter of the support.
    #[serde(rename = "support_inside_mm", with = "stored::millimetres")]
    pub support_inside: Length,
    /// Most outside diameter of the support.
    #[serde(rename = "support_outside_mm", with = "stored::millimetres")]
    pub support_outside: Length,
}

/// Why no tool fits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ToolError {
    /// A size is missing, zero or absurd.
    Size,
    /// The face of the ring is too narrow for a driver.
    Driver,
    /// The wall behind the bore is too narrow for a support.
    Support,
}

impl fmt::Display for ToolError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Size => "Enter each diameter, above zero and under 1000 mm.",
            Self::Driver => "The ring's face is too narrow to push on: check the diameters, or use heat.",
            Self::Support => "The wall behind the bore is too narrow to stand on: check the diameters.",
        })
    }
}

impl std::error::Error for ToolError {}

/// The sizes of driver and support for a push. Each clears what it must by half a millimetre.
pub fn tools(push: &Push) -> Result<Tools, ToolError> {
    let gap = Length::new::<millimeter>(GAP_MM);
    let tools = match *push {
        Push::IntoBore {
            bore,
            ring_inside,
            shoulder,
            boss_outside,
        } => {
            sane(&[bore, ring_inside, shoulder.unwrap_or(bore), boss_outside])?;
            Tools {
                driver_inside: ring_inside + gap,
                driver_outside: bore - gap,
                // Behind a shoulder nothing comes through, so the support may stand right under it.
                support_inside: shoulder.unwrap_or(bore) + gap,
                support_outside: boss_outside,
            }
        }
        Push::OntoShaft { shaft, ring_outside } => {
            sane(&[shaft, ring_outside])?;
            let (inside, outside) = (shaft + gap, ring_outside - gap);
            Tools {
                driver_inside: inside,
                driver_outside: outside,
                support_inside: inside,
                support_outside: outside,
            }
        }
    };
    let walls = Length::new::<millimeter>(2.0 * WALL_MM);
    if tools.driver_outside - tools.driver_inside < walls {
        Err(ToolError::Driver)
    } else if tools.support_outside - tools.support_inside < walls {
        Err(ToolError::Support)
    } else {
        Ok(tools)
    }
}

fn sane(sizes: &[Length]) -> Result<(), ToolError> {
    let good = |size: &Length| (0.1..1000.0).contains(&size.get::<millimeter>());
    if sizes.iter().all(good) {
        Ok(())
    } else {
        Err(ToolError::Size)
    }
}
