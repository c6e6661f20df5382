//! The unit a number is kept in, and the one it is shown in.

use crate::trade::quantity::{LengthUnit, MassUnit, Unit, trimmed};

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
    /// The symbol shown, and how many kept units one shown unit is.
    pub fn shown(self, weighs_in: MassUnit) -> (&'static str, f64) {
        let pounds = weighs_in == MassUnit::Pound;
        match self {
            Self::Millimetre => ("mm", 1.0),
            Self::Centimetre if pounds => (
                LengthUnit::Inch.symbol(),
                LengthUnit::Inch.metres() / LengthUnit::Centimetre.metres(),
            ),
            Self::Centimetre => ("cm", 1.0),
            Self::Kilogram if pounds => (MassUnit::Pound.symbol(), MassUnit::Pound.kilograms()),
            Self::Kilogram => ("kg", 1.0),
            Self::Celsius => ("°C", 1.0),
            Self::Degree => ("°", 1.0),
            Self::Litre => ("L", 1.0),
            Self::Minute => ("min", 1.0),
            Self::Bare => ("", 1.0),
        }
    }

    /// A kept number as shown: five figures at most, no zeros behind the point.
    pub fn text(self, kept: f64, weighs_in: MassUnit) -> String {
        let (_, factor) = self.shown(weighs_in);
        trimmed(kept / factor, 5)
    }
}
