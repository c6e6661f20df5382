//! What the Measure screen reckons: one row a calculation, with its fields and its answer. The screen shows
//! the rows; the figures come from [`trade::measuring`](crate::trade::measuring).

mod answer;
mod codes;
mod cylinder;
mod faces;
mod fasteners;
mod field;
mod gears;
mod kept;
mod shims;
mod springs;

pub use answer::{Answer, Asked, Trouble};
pub use field::{Field, Measure, Takes};
pub use kept::{Given, MeasureBench};

/// One calculation.
pub struct Calculation {
    /// What it is stored under.
    pub id: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// How the readings are taken.
    pub how: &'static str,
    /// The rule it goes by, and where from.
    pub model: &'static str,
    /// What it asks for.
    pub fields: &'static [Field],
    /// What it says.
    pub answer: fn(&Asked<'_>) -> Result<Answer, Trouble>,
}

impl Calculation {
    /// The answer for what was typed.
    ///
    /// # Errors
    /// What is still to be entered, or what makes no sense.
    pub fn answer(&self, bench: &MeasureBench) -> Result<Answer, Trouble> {
        (self.answer)(&Asked {
            calculation: self,
            bench,
        })
    }

    /// What a field is called now; none where it isn't asked for.
    pub fn label(&self, bench: &MeasureBench, field: &Field) -> Option<String> {
        let calculation = self;
        match field.takes {
            Takes::Line(row) => codes::label(&Asked { calculation, bench }, row),
            Takes::Number(..) | Takes::Choice(_) | Takes::Thread | Takes::Words => {
                Some(field.name.to_owned())
            }
        }
    }

    /// What a field's value is stored under.
    fn stored(&self, bench: &MeasureBench, field: &Field) -> String {
        let calculation = self;
        let line = match field.takes {
            Takes::Line(row) => codes::stored(&Asked { calculation, bench }, row),
            Takes::Number(..) | Takes::Choice(_) | Takes::Thread | Takes::Words => None,
        };
        line.unwrap_or_else(|| field.id.to_owned())
    }
}

/// Every calculation, in the order the screen shows them.
pub static LIST: [&Calculation; 17] = [
    &shims::FLOAT,
    &codes::CODES,
    &shims::SHELL,
    &shims::PLASTIC,
    &gears::PRELOAD,
    &gears::BACKLASH,
    &gears::RUN_OUT,
    &cylinder::PISTON,
    &cylinder::END_GAP,
    &cylinder::SIDE_GAP,
    &faces::FLATNESS,
    &faces::STRAIGHTNESS,
    &springs::RATE,
    &springs::TEST,
    &fasteners::ENGAGEMENT,
    &fasteners::INSERT,
    &fasteners::STRETCH,
];

/// The calculation of that id; the first one for an id of another release.
pub fn of(id: &str) -> &'static Calculation {
    LIST.iter().find(|one| one.id == id).unwrap_or(&LIST[0])
}
