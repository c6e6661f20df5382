//! The adapter on the wrench: its sizes as measured, and what it does to a stated torque.

use crate::trade::adapter::{AdapterError, corrected_setting};
use crate::trade::quantity::{Angle, Length, Torque, TorqueStatement};
use serde::{Deserialize, Serialize};
use uom::si::angle::degree;
use uom::si::length::millimeter;
use uom::si::torque::newton_meter;

/// An adapter on a wrench.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Adapter {
    /// Middle of the grip to middle of the drive, mm.
    pub wrench_mm: f64,
    /// Middle of the drive to middle of the bolt, mm.
    pub adapter_mm: f64,
    /// Between the two, °: 0 straight on, 90 square.
    pub angle_deg: f64,
}

impl Default for Adapter {
    fn default() -> Self {
        Self {
            wrench_mm: 300.0,
            adapter_mm: 50.0,
            angle_deg: 0.0,
        }
    }
}

impl Adapter {
    /// The setting over the torque at the bolt.
    ///
    /// # Errors
    /// Lengths or an angle that can't be.
    pub fn factor(&self) -> Result<f64, AdapterError> {
        let one = Torque::new::<newton_meter>(1.0);
        let setting = corrected_setting(
            one,
            Length::new::<millimeter>(self.wrench_mm),
            Length::new::<millimeter>(self.adapter_mm),
            Angle::new::<degree>(self.angle_deg),
        )?;
        Ok(setting.get::<newton_meter>())
    }
}

/// The statement with its three numbers times `factor`; the digits shown stay.
pub fn scaled(statement: &TorqueStatement, factor: f64) -> TorqueStatement {
    TorqueStatement {
        target: statement.target * factor,
        low: statement.low * factor,
        high: statement.high * factor,
        ..*statement
    }
}

/// The statement with `more` added to its three numbers.
pub fn raised(statement: &TorqueStatement, more: Torque) -> TorqueStatement {
    let more = statement.unit.value_of(more);
    TorqueStatement {
        target: statement.target + more,
        low: statement.low + more,
        high: statement.high + more,
        ..*statement
    }
}
