//! What was typed on the Measure screen, kept through leaving and reloading.

use super::field::Field;
use super::{Calculation, of};
use serde::{Deserialize, Serialize};

/// One thing typed or chosen.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Given {
    /// The calculation's id.
    pub calculation: String,
    /// The field's id, or the code of a table's line.
    pub field: String,
    /// A number, in the unit it is kept in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<f64>,
    /// A choice, a thread or what was typed, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub word: String,
}

/// The Measure screen's own things.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct MeasureBench {
    /// The calculation at hand, by its id.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub calculation: String,
    /// Inches, pounds and °F instead of mm, newtons and °C.
    #[serde(skip_serializing_if = "is_false")]
    pub inch: bool,
    /// What was typed for each calculation.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub given: Vec<Given>,
}

fn is_false(yes: &bool) -> bool {
    !yes
}

impl MeasureBench {
    /// Nothing was ever typed.
    pub fn is_blank(&self) -> bool {
        *self == Self::default()
    }

    /// The calculation at hand.
    pub fn at_hand(&self) -> &'static Calculation {
        of(&self.calculation)
    }

    /// What was given for a field.
    pub fn given(&self, calculation: &str, field: &str) -> Option<&Given> {
        let mut all = self.given.iter();
        all.find(|one| one.calculation == calculation && one.field == field)
    }

    fn place(&mut self, calculation: &Calculation, field: &Field) -> &mut Given {
        let (of, id) = (calculation.id, calculation.stored(self, field));
        let at = self
            .given
            .iter()
            .position(|one| one.calculation == of && one.field == id);
        let at = at.unwrap_or_else(|| {
            self.given.push(Given {
                calculation: of.to_owned(),
                field: id,
                ..Given::default()
            });
            self.given.len() - 1
        });
        &mut self.given[at]
    }

    /// Keeps a number as typed in the unit shown.
    ///
    /// # Errors
    /// What makes sense instead.
    pub fn type_number(
        &mut self,
        calculation: &Calculation,
        field: &Field,
        typed: f64,
    ) -> Result<(), String> {
        let number = field.judge(typed, self.inch)?;
        self.place(calculation, field).number = Some(number);
        Ok(())
    }

    /// Keeps a choice, a thread or words; empty for none.
    pub fn choose(&mut self, calculation: &Calculation, field: &Field, word: &str) {
        word.clone_into(&mut self.place(calculation, field).word);
    }

    /// Forgets what was typed for a calculation.
    pub fn clear(&mut self, calculation: &Calculation) {
        self.given.retain(|one| one.calculation != calculation.id);
    }

    /// A field's number as shown; empty where none was typed.
    pub fn shown(&self, calculation: &Calculation, field: &Field) -> String {
        let number = self.given(calculation.id, field.id).and_then(|one| one.number);
        number.map_or(String::new(), |number| field.text(number, self.inch))
    }

    /// A field's choice or thread in words; the first choice where none was made.
    pub fn word(&self, calculation: &Calculation, field: &Field) -> String {
        let given = self.given(calculation.id, &calculation.stored(self, field));
        let word = given.map_or("", |one| one.word.as_str());
        field.word(word).to_owned()
    }
}
