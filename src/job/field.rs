//! Numbers that a screen asks for, as a table: what each is called, its unit, what makes sense, and
//! where it is kept.

use crate::trade::quantity::{LengthUnit, MassUnit, Unit, significant};

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
        }
    }

    /// A kept number as shown: five figures at most, no zeros behind the point.
    pub fn text(self, kept: f64, weighs_in: MassUnit) -> String {
        let (_, factor) = self.shown(weighs_in);
        let text = significant(kept / factor, 5);
        if text.contains('.') {
            text.trim_end_matches('0').trim_end_matches('.').to_owned()
        } else {
            text
        }
    }
}

/// One number of a `T`.
pub struct Field<T> {
    /// What it is called.
    pub name: &'static str,
    /// What it is kept in.
    pub kept: Kept,
    /// Least and most that make sense, in the kept unit.
    pub sense: (f64, f64),
    /// Said when it makes none.
    pub refusal: &'static str,
    /// Reads it; none where it isn't stated or does not apply.
    pub get: fn(&T) -> Option<f64>,
    /// Keeps it.
    pub set: fn(&mut T, f64),
}

impl<T> Field<T> {
    /// The kept number for a typed one.
    ///
    /// # Errors
    /// The sentence that says what makes sense.
    pub fn judge(&self, typed: f64, weighs_in: MassUnit) -> Result<f64, String> {
        let kept = typed * self.kept.shown(weighs_in).1;
        let (least, most) = self.sense;
        if kept >= least && kept <= most {
            Ok(kept)
        } else {
            Err(self.refusal.to_owned())
        }
    }

    /// Whether a minus sign makes sense.
    pub fn signed(&self) -> bool {
        self.sense.0 < 0.0
    }
}
