//! Units that readings are taken in, by their symbols, and a reading's number in another of them.

use super::{LengthUnit, MassUnit, TemperatureUnit, TorqueUnit, Unit, VolumeUnit};

/// What a unit measures: only units of one of these turn into each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Of {
    Length,
    Temperature,
    Torque,
    Mass,
    Force,
    Rate,
    Pressure,
    Volume,
    Time,
    Angle,
}

/// A unit: `value · factor + zero` is its number in the first unit of the same kind.
struct Row {
    symbol: &'static str,
    of: Of,
    factor: f64,
    zero: f64,
    also: &'static [&'static str],
}

const fn row(symbol: &'static str, of: Of, factor: f64, also: &'static [&'static str]) -> Row {
    let zero = 0.0;
    Row {
        symbol,
        of,
        factor,
        zero,
        also,
    }
}

// Exact by definition: the international pound-force and inch, standard gravity.
const POUND_FORCE_NEWTONS: f64 = 4.448_221_615_260_5;
const KILOGRAM_FORCE_NEWTONS: f64 = 9.806_65;
const INCH_MM: f64 = 25.4;
const PSI_KILOPASCALS: f64 = POUND_FORCE_NEWTONS / (INCH_MM * INCH_MM) * 1e3;

/// Every unit that turns into another, the ones at the bench first of their kind; kept in mm, °C, N·m, kg,
/// N, N/mm, kPa, L, min and °.
static ROWS: [Row; 43] = [
    row("mm", Of::Length, 1.0, &[]),
    row("in", Of::Length, INCH_MM, &["″"]),
    row("thou", Of::Length, INCH_MM / 1e3, &["0.001 in", ".001 in"]),
    row("µm", Of::Length, 1e-3, &[]),
    row("cm", Of::Length, 10.0, &[]),
    row("°C", Of::Temperature, 1.0, &[]),
    Row {
        symbol: "°F",
        of: Of::Temperature,
        factor: 1.0 / 1.8,
        zero: -32.0 / 1.8,
        also: &[],
    },
    row(
        "N·m",
        Of::Torque,
        TorqueUnit::NewtonMetre.newton_metres(),
        &["Nm"],
    ),
    row("ft·lb", Of::Torque, TorqueUnit::PoundFoot.newton_metres(), &[]),
    row("in·lb", Of::Torque, TorqueUnit::PoundInch.newton_metres(), &[]),
    row(
        "kgf·cm",
        Of::Torque,
        TorqueUnit::KilogramCentimetre.newton_metres(),
        &[],
    ),
    row(
        "kgf·m",
        Of::Torque,
        TorqueUnit::KilogramMetre.newton_metres(),
        &[],
    ),
    row("oz·in", Of::Torque, TorqueUnit::OunceInch.newton_metres(), &[]),
    row("kg", Of::Mass, 1.0, &["kilogram", "kilograms"]),
    row(
        "lb",
        Of::Mass,
        MassUnit::Pound.kilograms(),
        &["lbs", "pound", "pounds"],
    ),
    row("g", Of::Mass, 1e-3, &["gram", "grams"]),
    row(
        "oz",
        Of::Mass,
        MassUnit::Pound.kilograms() / 16.0,
        &["ounce", "ounces"],
    ),
    row("N", Of::Force, 1.0, &["newton", "newtons"]),
    row("lbf", Of::Force, POUND_FORCE_NEWTONS, &["lb force"]),
    row("kgf", Of::Force, KILOGRAM_FORCE_NEWTONS, &["kp"]),
    row("kN", Of::Force, 1e3, &[]),
    row("N/mm", Of::Rate, 1.0, &[]),
    row("lb/in", Of::Rate, POUND_FORCE_NEWTONS / INCH_MM, &["lbf/in"]),
    row("kgf/mm", Of::Rate, KILOGRAM_FORCE_NEWTONS, &["kg/mm"]),
    row("kPa", Of::Pressure, 1.0, &[]),
    row("bar", Of::Pressure, 100.0, &[]),
    row("psi", Of::Pressure, PSI_KILOPASCALS, &["lb/in²", "lbf/in²"]),
    row(
        "kgf/cm²",
        Of::Pressure,
        KILOGRAM_FORCE_NEWTONS * 10.0,
        &["kg/cm²"],
    ),
    row("MPa", Of::Pressure, 1e3, &[]),
    row("L", Of::Volume, 1.0, &[]),
    row("mL", Of::Volume, 1e-3, &[]),
    row("US qt", Of::Volume, VolumeUnit::UsQuart.litres(), &[]),
    row("US pt", Of::Volume, VolumeUnit::UsPint.litres(), &[]),
    row("US gal", Of::Volume, VolumeUnit::UsGallon.litres(), &[]),
    row("US fl oz", Of::Volume, VolumeUnit::UsFluidOunce.litres(), &[]),
    row("imp qt", Of::Volume, VolumeUnit::ImperialQuart.litres(), &[]),
    row("imp pt", Of::Volume, VolumeUnit::ImperialPint.litres(), &[]),
    row("imp gal", Of::Volume, VolumeUnit::ImperialGallon.litres(), &[]),
    row(
        "imp fl oz",
        Of::Volume,
        VolumeUnit::ImperialFluidOunce.litres(),
        &[],
    ),
    row("min", Of::Time, 1.0, &["minutes", "minute"]),
    row("s", Of::Time, 1.0 / 60.0, &["sec", "seconds", "second"]),
    row("h", Of::Time, 60.0, &["hour", "hours"]),
    row("°", Of::Angle, 1.0, &["deg", "degrees", "degree"]),
];

fn found(unit: &str) -> Option<&'static Row> {
    let unit = unit.trim();
    ROWS.iter()
        .find(|row| row.symbol == unit || row.also.contains(&unit))
}

/// `value` of one unit in another, each by its symbol: 30 thou is 0.03 in. The same words are the same
/// unit, known here or not.
///
/// `None` where they don't measure the same, or one isn't known.
///
/// ```
/// use halfcase::trade::quantity::convert;
///
/// assert_eq!(convert(212.0, "°F", "°C").map(f64::round), Some(100.0));
/// assert_eq!(convert(3.0, "drops", "drops"), Some(3.0));
/// assert_eq!(convert(3.0, "mm", "°C"), None);
/// ```
pub fn convert(value: f64, from: &str, to: &str) -> Option<f64> {
    if from == to {
        return Some(value);
    }
    let (from, to) = (found(from)?, found(to)?);
    if from.of != to.of {
        return None;
    }
    if std::ptr::eq(from, to) {
        return Some(value);
    }
    Some((value * from.factor + from.zero - to.zero) / to.factor)
}

/// The symbol of a unit that is known here.
pub fn known_unit(unit: &str) -> Option<&'static str> {
    found(unit).map(|row| row.symbol)
}

/// The units an instrument may read in where `unit` is asked for, itself among them: two or three of a
/// kind; none where the kind has no other.
pub fn read_in(unit: &str) -> Vec<&'static str> {
    let Some(own) = found(unit) else {
        return Vec::new();
    };
    let of_kind = ROWS.iter().filter(|row| row.of == own.of).map(|row| row.symbol);
    let mut offered: Vec<&'static str> = of_kind.take(3).collect();
    if !offered.contains(&own.symbol) {
        offered.insert(0, own.symbol);
    }
    offered.truncate(3);
    if offered.len() < 2 { Vec::new() } else { offered }
}

/// The symbol of a unit as somebody writes it: "inches" is "in", "degrees F" is "°F". Words that are no
/// unit known here stay as they are.
pub fn unit_symbol(written: &str) -> String {
    let written = written.trim();
    if let Some(row) = found(written) {
        return row.symbol.to_owned();
    }
    let key: String = written
        .to_lowercase()
        .chars()
        .filter(|c| !" .-·".contains(*c))
        .collect();
    let spelled = LengthUnit::spelled(&key)
        .map(Unit::symbol)
        .or_else(|| TemperatureUnit::spelled(&key).map(Unit::symbol))
        .or_else(|| TorqueUnit::spelled(&key).map(Unit::symbol))
        .or_else(|| VolumeUnit::spelled(&key).map(Unit::symbol));
    let of_rows = || {
        let mut rows = ROWS.iter();
        rows.find(|row| row.symbol.to_lowercase() == key || row.also.contains(&key.as_str()))
            .map(|row| row.symbol)
    };
    spelled.or_else(of_rows).unwrap_or(written).to_owned()
}

/// Units a plan offers by touch, as manuals print them.
pub const READ_UNITS: [&str; 18] = [
    "mm", "in", "thou", "°C", "°F", "N·m", "ft·lb", "in·lb", "kgf·cm", "kg", "lb", "N", "lbf", "bar", "psi",
    "kPa", "°", "mL",
];
