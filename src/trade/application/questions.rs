//! Asking and answering: which questions matter, and what tile an answer falls on.

use super::Application;
use super::answers::{Apart, Face, Fluid, Held, Hole, JointKind, ManualWord, Outside, Partner, PlugSeal};
use super::choice::Choice;
use super::field::Field;
use super::rows::{ROWS, Row};
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use std::fmt;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A question as the screen shows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Question {
    /// The name to answer with.
    pub id: &'static str,
    /// The question itself.
    pub words: &'static str,
    /// The tiles; the last is "don't know".
    pub choices: &'static [Choice],
    /// The tile that the answer on hand falls on.
    pub chosen: Option<&'static str>,
    /// What "don't know" is taken as.
    pub assumed: &'static str,
}

/// Why an answer was not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnswerError {
    /// This kind of joint is not asked that.
    NoSuchQuestion,
    /// The question has no such choice.
    NoSuchChoice,
}

impl fmt::Display for AnswerError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::NoSuchQuestion => "This kind of joint has no such question; choose one of those shown.",
            Self::NoSuchChoice => "The question has no such answer; choose one of those shown.",
        })
    }
}

impl std::error::Error for AnswerError {}

/// A row asked, with the tile chosen.
type Asked = (&'static Row, Option<&'static str>);

/// The rows asked of this joint, up to the first answer that settles it, and the joint with the answers
/// to those alone: whether a row is asked goes by the answers before it and by nothing else.
pub(super) fn asked(joint: &Application) -> (Vec<Asked>, Application) {
    let mut counted = Application::new(joint.kind);
    let mut rows = Vec::new();
    for row in ROWS.iter().filter(|row| row.kinds.contains(&joint.kind)) {
        if (row.pointless)(&counted) {
            continue;
        }
        let chosen = row.chosen(joint);
        rows.push((row, chosen));
        let Some(id) = chosen else { continue };
        row.field.copy(joint, &mut counted);
        if row.ends.contains(&id) {
            break;
        }
    }
    (rows, counted)
}

/// The questions that matter for this kind of joint and the answers so far, in order.
pub fn questions(joint: &Application) -> Vec<Question> {
    let rows = asked(joint).0.into_iter();
    rows.map(|(row, chosen)| row.question(chosen)).collect()
}

/// Every question this kind of joint can be asked, whatever is known of it.
pub fn every_question(kind: JointKind) -> Vec<Question> {
    ROWS.iter()
        .filter(|row| row.kinds.contains(&kind))
        .map(|row| row.question(None))
        .collect()
}

/// Gives a joint one answer by the ids of question and choice; [`DONT_KNOW`] clears it.
///
/// # Errors
/// When the kind of joint has no such question or the question no such choice; nothing is changed then.
pub fn answer(joint: &mut Application, question: &str, choice: &str) -> Result<(), AnswerError> {
    let row = ROWS
        .iter()
        .find(|row| row.id == question && row.kinds.contains(&joint.kind))
        .ok_or(AnswerError::NoSuchQuestion)?;
    let at = row
        .tiles
        .choices
        .iter()
        .position(|one| one.id == choice)
        .ok_or(AnswerError::NoSuchChoice)?;
    row.write(joint, choice, at);
    Ok(())
}

impl Row {
    fn question(&self, chosen: Option<&'static str>) -> Question {
        Question {
            id: self.id,
            words: self.words,
            choices: self.tiles.choices,
            chosen,
            assumed: self.assumed,
        }
    }

    /// The tile a number falls on; none for a number that can't be.
    fn band(&self, number: Option<f64>) -> Option<&'static str> {
        let number = number.filter(|number| number.is_finite())?;
        if self.field != Field::Temperature && number < 0.0 {
            return None;
        }
        let numbers = self.tiles.numbers;
        // A whisker of tolerance: 0.1 mm typed in inches is still 0.1 mm.
        let at = numbers
            .iter()
            .position(|upper| number <= upper + 1e-9)
            .unwrap_or(numbers.len().saturating_sub(1));
        self.tiles.choices.get(at).map(|choice| choice.id)
    }

    /// The tile that the answer on hand falls on; none for an answer that isn't among the choices.
    fn chosen(&self, joint: &Application) -> Option<&'static str> {
        let yes_no = |answer: Option<bool>| answer.map(|yes| if yes { "yes" } else { "no" });
        let id = match self.field {
            Field::Manual => joint.manual.map(ManualWord::id),
            Field::Precoated => yes_no(joint.precoated),
            Field::Locked => yes_no(joint.locked),
            Field::Face => joint.face.map(Face::id),
            Field::Assembled => yes_no(joint.assembled),
            Field::Thread => self.band(joint.thread.map(|size| size.get::<millimeter>())),
            Field::Hole => joint.hole.map(Hole::id),
            Field::Apart => joint.apart.map(Apart::id),
            Field::Vibration => yes_no(joint.vibration),
            Field::Seal => joint.seal.map(PlugSeal::id),
            Field::Rigid => yes_no(joint.rigid),
            Field::Gap => self.band(joint.gap.map(|gap| gap.get::<millimeter>())),
            Field::Fluid => joint.fluid.map(Fluid::id),
            Field::Temperature => self.band(joint.temperature.map(|heat| heat.get::<degree_celsius>())),
            Field::OxygenSensor => yes_no(joint.oxygen_sensor),
            Field::OilWays => yes_no(joint.oil_ways),
            Field::Partner => joint.partner.map(Partner::id),
            Field::PlasticPart => yes_no(joint.plastic_part),
            Field::Held => joint.held.map(Held::id),
            Field::Outside => joint.outside.map(Outside::id),
        }?;
        self.tiles
            .choices
            .iter()
            .any(|choice| choice.id == id)
            .then_some(id)
    }

    fn write(&self, joint: &mut Application, id: &str, at: usize) {
        let yes_no = match id {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let number = self.tiles.numbers.get(at).copied();
        match self.field {
            Field::Manual => joint.manual = ManualWord::from_id(id),
            Field::Precoated => joint.precoated = yes_no,
            Field::Locked => joint.locked = yes_no,
            Field::Face => joint.face = Face::from_id(id),
            Field::Assembled => joint.assembled = yes_no,
            Field::Thread => joint.thread = number.map(Length::new::<millimeter>),
            Field::Hole => joint.hole = Hole::from_id(id),
            Field::Apart => joint.apart = Apart::from_id(id),
            Field::Vibration => joint.vibration = yes_no,
            Field::Seal => joint.seal = PlugSeal::from_id(id),
            Field::Rigid => joint.rigid = yes_no,
            Field::Gap => joint.gap = number.map(Length::new::<millimeter>),
            Field::Fluid => joint.fluid = Fluid::from_id(id),
            Field::Temperature => {
                joint.temperature = number.map(ThermodynamicTemperature::new::<degree_celsius>);
            }
            Field::OxygenSensor => joint.oxygen_sensor = yes_no,
            Field::OilWays => joint.oil_ways = yes_no,
            Field::Partner => joint.partner = Partner::from_id(id),
            Field::PlasticPart => joint.plastic_part = yes_no,
            Field::Held => joint.held = Held::from_id(id),
            Field::Outside => joint.outside = Outside::from_id(id),
        }
    }
}
