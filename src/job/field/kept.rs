//! The unit a number is kept in, and the one it is shown in.

use crate::job::figures::Figures;
use crate::trade::quantity::{LengthUnit, MassUnit, TemperatureUnit, Unit, trimmed};

/// The unit a number is kept in; who weighs in pounds reads lengths of reach and height in inches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// Millimetres, as drawings have them.
    Millimetre,
    /// Centimetres, or inches.
    Centimetre,
    /// Kilograms, or pounds.
    Kilogram,
    /// Degrees Celsius.
    Celsius,
    /// Degrees of angle.
    Degree,
    /// Litres.
    Litre,
    /// Minutes.
    Minute,
    /// A count, or a number whose unit stands beside it in words.
    Bare,
}

impl Kept {
    /// The symbol shown.
    pub fn symbol(self, figures: impl Into<Figures>) -> &'static str {
        let figures = figures.into();
        let pounds = figures.mass == MassUnit::Pound;
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre if pounds => LengthUnit::Inch.symbol(),
            Self::Centimetre => "cm",
            Self::Kilogram => figures.mass.symbol(),
            Self::Celsius => figures.degree(),
            Self::Degree => "°",
            Self::Litre => "L",
            Self::Minute => "min",
            Self::Bare => "",
        }
    }

    /// A kept number in the unit shown.
    pub fn to_shown(self, kept: f64, figures: impl Into<Figures>) -> f64 {
        let figures = figures.into();
        match self {
            Self::Celsius if figures.temperature != TemperatureUnit::Celsius => figures.of_celsius(kept),
            _ => kept / self.factor(figures),
        }
    }

    /// A number in the unit shown as it is kept.
    pub fn to_kept(self, shown: f64, figures: impl Into<Figures>) -> f64 {
        let figures = figures.into();
        match self {
            Self::Celsius if figures.temperature != TemperatureUnit::Celsius => figures.celsius(shown),
            _ => shown * self.factor(figures),
        }
    }

    /// The symbol shown to who weighs in that unit, and how many kept units one of it is.
    pub fn shown(self, mass: MassUnit) -> (&'static str, f64) {
        (self.symbol(mass), self.factor(mass.into()))
    }

    /// How many kept units one shown unit is.
    fn factor(self, figures: Figures) -> f64 {
        let pounds = figures.mass == MassUnit::Pound;
        match self {
            Self::Centimetre if pounds => LengthUnit::Inch.metres() / LengthUnit::Centimetre.metres(),
            Self::Kilogram => figures.mass.kilograms(),
            Self::Millimetre
            | Self::Centimetre
            | Self::Celsius
            | Self::Degree
            | Self::Litre
            | Self::Minute
            | Self::Bare => 1.0,
        }
    }

    /// A kept number as shown: five figures at most, no zeros behind the point.
    pub fn text(self, kept: f64, figures: impl Into<Figures>) -> String {
        trimmed(self.to_shown(kept, figures), 5)
    }
}
