//! Quantities and their text: what is typed becomes a quantity once, and a quantity becomes text once.

mod torque_unit;

pub use torque_unit::TorqueUnit;
pub use uom::si::f64::{
    Angle, Area, Force, Length, Mass, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque,
};
