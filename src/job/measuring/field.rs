//! A field of a calculation: its unit, its one range, how it is shown in mm or inches.

use crate::trade::quantity::Force;
use crate::trade::quantity::{LengthUnit, TemperatureUnit, TorqueUnit, Unit, convert, rounded};
use uom::si::force::{newton, pound_force};

/// What a number measures, kept in the first unit, shown in it or in the second.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// mm or in.
    Length,
    /// N·m or in·lb.
    Torque,
    /// N or lb.
    Force,
    /// N/mm or lb/in.
    Rate,
    /// °C or °F.
    Temperature,
    /// Degrees of angle.
    Degrees,
    /// Length for length, the same in every unit.
    Share,
    /// A count, halves allowed.
    Count,
    /// A whole count.
    Whole,
}

impl Measure {
    /// The symbol shown.
    pub fn symbol(self, inch: bool) -> &'static str {
        match (self, inch) {
            (Self::Length, false) => LengthUnit::Millimetre.symbol(),
            (Self::Length, true) => LengthUnit::Inch.symbol(),
            (Self::Torque, false) => TorqueUnit::NewtonMetre.symbol(),
            (Self::Torque, true) => TorqueUnit::PoundInch.symbol(),
            (Self::Force, false) => "N",
            (Self::Force, true) => "lb",
            (Self::Rate, false) => "N/mm",
            (Self::Rate, true) => "lb/in",
            (Self::Temperature, false) => TemperatureUnit::Celsius.symbol(),
            (Self::Temperature, true) => TemperatureUnit::Fahrenheit.symbol(),
            (Self::Degrees, _) => "°",
            (Self::Share | Self::Count | Self::Whole, _) => "",
        }
    }

    /// A kept number in the unit shown.
    pub fn out(self, kept: f64, inch: bool) -> f64 {
        match (self, inch) {
            (Self::Length, true) => LengthUnit::Inch.value_of(LengthUnit::Millimetre.length(kept)),
            (Self::Torque, true) => TorqueUnit::PoundInch.value_of(TorqueUnit::NewtonMetre.torque(kept)),
            (Self::Force, true) => Force::new::<newton>(kept).get::<pound_force>(),
            (Self::Temperature, true) => kept * 1.8 + 32.0,
            (Self::Rate, true) => convert(kept, "N/mm", "lb/in").unwrap_or(kept),
            _ => kept,
        }
    }

    /// A number in the unit shown as it is kept.
    pub fn back(self, shown: f64, inch: bool) -> f64 {
        match (self, inch) {
            (Self::Length, true) => LengthUnit::Millimetre.value_of(LengthUnit::Inch.length(shown)),
            (Self::Torque, true) => TorqueUnit::NewtonMetre.value_of(TorqueUnit::PoundInch.torque(shown)),
            (Self::Force, true) => Force::new::<pound_force>(shown).get::<newton>(),
            (Self::Temperature, true) => (shown - 32.0) / 1.8,
            (Self::Rate, true) => convert(shown, "lb/in", "N/mm").unwrap_or(shown),
            _ => shown,
        }
    }

    /// A number of that unit as it is kept; none where the unit measures something else. What a spring's tester
    /// reads in kg or lb is the weight of so much.
    pub fn kept(self, value: f64, unit: &str) -> Option<f64> {
        let own = self.symbol(false);
        convert(value, unit, own).or_else(|| {
            let weight = convert(value, unit, "kg").filter(|_| self == Self::Force)?;
            convert(weight, "kgf", own)
        })
    }

    /// A kept number in that unit, to a ten-thousandth of a mm or what is as fine; none where the unit measures
    /// something else.
    pub fn told(self, kept: f64, unit: &str) -> Option<f64> {
        let own = self.symbol(false);
        let told = convert(kept, own, unit).or_else(|| {
            let weight = convert(kept, own, "kgf").filter(|_| self == Self::Force)?;
            convert(weight, "kg", unit)
        })?;
        // A larger unit takes more digits to say as much.
        let one = self.kept(1.0, unit)? - self.kept(0.0, unit)?;
        let digits = f64::from(self.decimals(false)) + one.log10().ceil();
        let scale = 10_f64.powi(digits.clamp(0.0, 9.0) as i32);
        Some((told * scale).round() / scale)
    }

    /// The units it is kept and shown in, in words: "mm or in".
    pub fn units(self) -> String {
        match (self.symbol(false), self.symbol(true)) {
            ("", _) => "a number without a unit".to_owned(),
            (own, other) if own == other => own.to_owned(),
            (own, other) => format!("{own} or {other}"),
        }
    }

    /// Digits behind the point that a typed number may have and that are shown.
    fn decimals(self, inch: bool) -> u8 {
        match (self, inch) {
            (Self::Length, false) => 4,
            (Self::Length, true) => 6,
            (Self::Share, _) => 5,
            (Self::Torque | Self::Rate, _) => 3,
            (Self::Force | Self::Count, _) => 2,
            (Self::Temperature | Self::Degrees, _) => 1,
            (Self::Whole, _) => 0,
        }
    }
}

/// Whether who reads in that unit reads the rest in inches, pounds and °F too.
pub fn in_inches(unit: &str) -> bool {
    const UNITS: [&str; 10] = [
        "in", "thou", "ft·lb", "in·lb", "oz·in", "lb", "lbf", "lb/in", "°F", "oz",
    ];
    UNITS.contains(&unit)
}

/// What a field takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Takes {
    /// A number, least and most in the kept unit.
    Number(Measure, (f64, f64)),
    /// One of these; the first where none was chosen.
    Choice(&'static [&'static str]),
    /// A thread by its designation.
    Thread,
    /// Words as they are typed.
    Words,
    /// The line of a table's row, counted from 0, as it is typed: as many are asked for as the table has. It is
    /// stored under its code.
    Line(usize),
}

/// A field.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// What it is stored under.
    pub id: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// What it takes.
    pub takes: Takes,
}

impl Field {
    /// A number.
    pub const fn number(id: &'static str, name: &'static str, measure: Measure, range: (f64, f64)) -> Self {
        let takes = Takes::Number(measure, range);
        Self { id, name, takes }
    }

    /// A size of a part, mm.
    pub const fn size(id: &'static str, name: &'static str) -> Self {
        Self::number(id, name, Measure::Length, (0.001, 5_000.0))
    }

    /// A gap, a play, a limit of one: from zero up, mm.
    pub const fn gap(id: &'static str, name: &'static str) -> Self {
        Self::number(id, name, Measure::Length, (0.0, 100.0))
    }

    /// An indicator's reading: to both sides, mm.
    pub const fn reading(id: &'static str, name: &'static str) -> Self {
        Self::number(id, name, Measure::Length, (-100.0, 100.0))
    }

    /// A turning torque, N·m.
    pub const fn torque(id: &'static str, name: &'static str) -> Self {
        Self::number(id, name, Measure::Torque, (0.0, 2_000.0))
    }

    /// A load, N.
    pub const fn load(id: &'static str, name: &'static str) -> Self {
        Self::number(id, name, Measure::Force, (0.0, 100_000.0))
    }

    /// One of several.
    pub const fn choice(id: &'static str, name: &'static str, of: &'static [&'static str]) -> Self {
        let takes = Takes::Choice(of);
        Self { id, name, takes }
    }

    /// A bolt's thread.
    pub const fn thread(id: &'static str, name: &'static str) -> Self {
        let takes = Takes::Thread;
        Self { id, name, takes }
    }

    /// Words.
    pub const fn words(id: &'static str, name: &'static str) -> Self {
        let takes = Takes::Words;
        Self { id, name, takes }
    }

    /// A line of a table.
    pub const fn line(id: &'static str, name: &'static str, row: usize) -> Self {
        let takes = Takes::Line(row);
        Self { id, name, takes }
    }

    /// The unit's symbol.
    pub fn symbol(&self, inch: bool) -> &'static str {
        match self.takes {
            Takes::Number(measure, _) => measure.symbol(inch),
            Takes::Choice(_) | Takes::Thread | Takes::Words | Takes::Line(_) => "",
        }
    }

    /// Whether a minus sign makes sense.
    pub fn signed(&self) -> bool {
        matches!(self.takes, Takes::Number(_, (least, _)) if least < 0.0)
    }

    /// The kept number for one typed in the unit shown.
    ///
    /// # Errors
    /// The range that makes sense.
    pub fn judge(&self, typed: f64, inch: bool) -> Result<f64, String> {
        let Takes::Number(measure, (least, most)) = self.takes else {
            return Err("Choose one of those shown.".to_owned());
        };
        // Without the last bits of the way through another unit: what was typed is shown again.
        let kept = (measure.back(typed, inch) * 1e9).round() / 1e9;
        let whole = measure != Measure::Whole || kept.fract() == 0.0;
        if whole && (least..=most).contains(&kept) {
            return Ok(kept);
        }
        let what = if measure == Measure::Whole {
            "a whole number"
        } else {
            "a number"
        };
        let unit = match measure.symbol(inch) {
            "" => String::new(),
            "°" => "°".to_owned(),
            unit => format!(" {unit}"),
        };
        let (least, most) = (self.text(least, inch), self.text(most, inch));
        Err(format!("Enter {what} from {least} to {most}{unit}."))
    }

    /// A kept number as shown, without zeros behind the point.
    pub fn text(&self, kept: f64, inch: bool) -> String {
        let Takes::Number(measure, _) = self.takes else {
            return String::new();
        };
        rounded(measure.out(kept, inch), measure.decimals(inch))
    }

    /// The word that holds: the one given where it is offered, else the first offered.
    pub fn word<'a>(&self, given: &'a str) -> &'a str
    where
        'static: 'a,
    {
        match self.takes {
            Takes::Choice(offered) if !offered.contains(&given) => offered.first().copied().unwrap_or(""),
            _ => given,
        }
    }
}
