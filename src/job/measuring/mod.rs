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

pub use answer::{Answer, Asked, Reckoned, Trouble};
pub use field::{Field, Measure, Takes, in_inches};
pub(in crate::job) use gears::{FACE_OR_JOURNALS, OTHER_SIDE, RUN_OUT};
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
    /// It as a reading that a step works out; none where it ends in no number that limits could judge.
    pub reading: Option<AsReading>,
    /// What it says.
    pub answer: fn(&Asked<'_>) -> Result<Answer, Trouble>,
}

/// A calculation as a reading that a step works out.
pub struct AsReading {
    /// What its number measures.
    pub measure: Measure,
    /// Fields that the reading's own limits stand for, and what limits go by: not asked for a second time.
    pub own: &'static [&'static str],
}

const fn as_reading(measure: Measure, own: &'static [&'static str]) -> Option<AsReading> {
    Some(AsReading { measure, own })
}

impl Calculation {
    /// What it asks for as a reading: all but what the reading's own limits stand for.
    pub fn asked_as_reading(&self) -> impl Iterator<Item = &'static Field> {
        let own = self
            .reading
            .as_ref()
            .map_or(&[] as &[&str], |reading| reading.own);
        self.fields.iter().filter(move |field| !own.contains(&field.id))
    }

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

/// The calculation of that id that a step's reading may be worked out by.
pub fn as_reading_of(id: &str) -> Option<&'static Calculation> {
    offered_as_readings().find(|one| one.id == id)
}

/// Every calculation that a step's reading may be worked out by.
pub fn offered_as_readings() -> impl Iterator<Item = &'static Calculation> {
    LIST.into_iter().filter(|one| one.reading.is_some())
}

/// The calculation of that id; the first one for an id of another release.
pub fn of(id: &str) -> &'static Calculation {
    LIST.iter().find(|one| one.id == id).unwrap_or(&LIST[0])
}
