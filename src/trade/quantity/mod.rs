//! Quantities and their text: what is typed becomes a quantity once, and a quantity becomes text once.

mod angle;
mod decimal;
mod length;
mod mark;
mod mass;
mod print;
mod read_unit;
mod scan;
mod stated;
mod temperature;
mod text_error;
mod torque_statement;
mod torque_text;
mod torque_unit;
mod typed;
mod volume;

pub use angle::{AngleUnit, parse_angle};
pub use decimal::{decimal, number};
pub use length::{LengthUnit, parse_deviation, parse_length, print_inch_fraction};
pub use mark::{DecimalMark, choose, comma_is_decimal, in_mark, kept, mark, printed_with_point};
pub use mass::{MassUnit, print_mass};
pub(in crate::trade) use print::{LAST_BITS, decimals_of};
pub use print::{Printed, fixed, rounded, shortest, significant, trimmed};
pub use read_unit::{READ_UNITS, convert, known_unit, read_in, unit_symbol};
pub use stated::{MOST_DIGITS, Stated};
pub use temperature::{TemperatureUnit, parse_temperature, print_temperature};
pub use text_error::{Problem, TextError, no_number, short, short_name, short_title, spelt_out};
pub use torque_statement::{StatementForm, TorqueStatement};
pub use torque_text::{parse_torque, parse_torques, print_torque};
pub use torque_unit::TorqueUnit;
pub use typed::{Subject, Typed, Unit};
pub use uom::si::f64::{
    Angle, Area, Force, Length, Mass, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque, Volume,
};
pub use volume::{VolumeUnit, parse_volume, print_volume};
