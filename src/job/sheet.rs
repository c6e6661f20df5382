//! A job sheet: an ordered list of steps, as it is planned at the desk and read from a file.

use super::field::{self, Field, Kept, Number, Seen};
use super::id::{self, PartId};
pub use super::id::{JobId, StepId};
use super::json::{self, JsonError};
use super::kinds::{Work, seat};
use super::part::{self, Part};
use super::text_form::stages;
pub use super::units::Units;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use std::fmt;

/// The version of the job form written by this release.
pub const JOB_FORM_VERSION: u32 = 1;

/// Most steps of a sheet: several times the longest bottom end.
pub const MOST_STEPS: usize = 500;

/// Most bytes of a title.
const MOST_TITLE: usize = 500;

/// A torque with its angles, "30 ft·lb + 120°", is a torque and stages.
const PROGRAM: json::Parting = json::Parting {
    under: "fasten",
    first: "torque",
    second: "stages",
    part: stages::parted,
};

/// One thing to do, with one kind of work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// Unique within the job.
    pub id: StepId,
    /// A few words: what is fitted or done.
    pub title: String,
    /// One or two lines on how, read at the bench.
    #[serde(default)]
    pub notes: String,
    /// What kind of work it is, with its numbers.
    pub work: Work,
    /// Steps whose closing (and cure) this one waits for, beyond what its kind waits for anyway.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub waits_for: Vec<StepId>,
    /// Steps whose bead is still wet when this one is done: it must be done before each of them skins.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub before_skin: Vec<StepId>,
    /// Parts the step needs beyond what its work names.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<Part>,
    /// It closes the case up: whatever was found in a step before it is settled first.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub closes_up: bool,
    /// How long it takes the user's hands, minutes, where they have said so.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// Fields of a newer form: kept and written back.
    #[serde(flatten)]
    pub extra: Map<String, Value>,
}

static MINUTES: [Number<Step>; 1] = [Number::<Step>::new(
    ("minutes", "how long it takes"),
    Kept::Minute,
    (0.0, 10_000.0),
    "step/minutes",
    |step| step.minutes,
    |step, minutes| step.minutes = Some(minutes),
)
.or_none(|step| step.minutes = None)];

/// What every step has besides its work.
pub static TABLE: [Field<Step>; 2] = [
    Field::Numbers(&MINUTES),
    Field::Flag {
        id: "closes_up",
        label: "it closes the case up: what was found before is settled first",
        get: |step| step.closes_up,
        set: |step, yes| step.closes_up = yes,
    },
];

/// A whole job sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// The version of the form it was written in.
    pub version: u32,
    /// The job's name.
    pub title: String,
    /// The machine it is done on, in the user's words.
    #[serde(default)]
    pub machine: String,
    /// What its manual measures in: where a new reading begins.
    #[serde(default, skip_serializing_if = "Units::is_usual")]
    pub units: Units,
    /// The steps in their order.
    pub steps: Vec<Step>,
    /// Fields of a newer form: kept and written back.
    #[serde(flatten)]
    pub extra: Map<String, Value>,
}

/// Why a text is not a job sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SheetError {
    /// Not the JSON form at all, or a value of the wrong kind.
    Unreadable(JsonError),
    /// Written by a later release.
    TooNew(u32),
    /// Two steps carry one number.
    SameId(StepId),
    /// A step waits for one that isn't there, or not before it.
    WaitsForNothing { step: StepId, on: StepId },
    /// A step is to be done before another's bead skins that isn't there, or not before it.
    SkinsNothing { step: StepId, on: StepId },
    /// A run has fasteners torqued again in a step that isn't there, not before it, or fastens nothing.
    TorquesNothing { step: StepId, on: StepId },
    /// A pass of a step asks for nothing, or for more than the torque.
    Share(StepId),
    /// A number that makes no sense.
    Number {
        step: StepId,
        field: &'static str,
        why: String,
    },
    /// No steps.
    Empty,
    /// More steps than a phone shows at a bearable pace.
    TooMany(usize),
    /// A title of so many bytes.
    LongTitle(usize),
}

impl fmt::Display for SheetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unreadable(error) => {
                write!(f, "Line {} is not a job sheet: {}.", error.place(), error.what())
            }
            Self::TooNew(version) => write!(
                f,
                "This sheet is of form {version}, newer than form {JOB_FORM_VERSION} read here: update the app first."
            ),
            Self::SameId(id) => write!(f, "Two steps have the number {}: give each its own.", id.0),
            Self::WaitsForNothing { step, on } => write!(
                f,
                "Step {} waits for step {}, which does not come before it: correct “waits_for”.",
                step.0, on.0
            ),
            Self::SkinsNothing { step, on } => write!(
                f,
                "Step {} is to be done before the bead of step {} skins, which does not come before it: correct \
                 “before_skin”.",
                step.0, on.0
            ),
            Self::TorquesNothing { step, on } => write!(
                f,
                "Step {} has step {} torqued again, which is no step with fasteners before it: correct \
                 “torque_again”.",
                step.0, on.0
            ),
            Self::Share(step) => write!(
                f,
                "Step {}: the share of a pass lies above 0 and is 1 at most, as in 0.3: correct “passes”.",
                step.0
            ),
            Self::Number { step, field, why } => write!(f, "Step {}, “{field}”: {why}", step.0),
            Self::TooMany(steps) => write!(
                f,
                "The sheet has {steps} steps, {MOST_STEPS} are the most: make several jobs of it."
            ),
            Self::LongTitle(bytes) => write!(
                f,
                "A title of the sheet has {bytes} bytes, {MOST_TITLE} are the most: put the rest under notes."
            ),
            Self::Empty => f.write_str("The sheet has no steps: add at least one."),
        }
    }
}

impl std::error::Error for SheetError {}

impl Sheet {
    /// A sheet without steps, to be planned.
    pub fn new(title: &str, steps: Vec<Step>) -> Self {
        Self {
            version: JOB_FORM_VERSION,
            title: title.to_owned(),
            machine: String::new(),
            units: Units::default(),
            steps,
            extra: Map::new(),
        }
    }

    /// A number that no step has.
    pub fn free_id(&self) -> StepId {
        StepId(id::free(self.steps.iter().map(|step| step.id.0)))
    }

    /// Reads a sheet from our JSON form.
    ///
    /// # Errors
    /// [`SheetError`], naming the line and the field, or the step; nothing is half read.
    pub fn from_json(text: &str) -> Result<Self, SheetError> {
        let mut sheet: Self = json::read_parted(text, &PROGRAM).map_err(SheetError::Unreadable)?;
        sheet.check()?;
        sheet.check_numbers()?;
        sheet.number();
        Ok(sheet)
    }

    /// Gives every reading, bore and part without a number one of its own.
    pub fn number(&mut self) {
        self.steps.iter_mut().for_each(Step::number);
    }

    /// Writes the sheet in our JSON form.
    pub fn to_json(&self) -> String {
        // A sheet is plain data with string keys, which JSON always holds.
        json::pretty(self).unwrap_or_default()
    }

    /// The rules a sheet keeps: a known version, steps, own numbers, waits that point backwards, no pass
    /// over the torque.
    ///
    /// # Errors
    /// The first rule broken.
    pub fn check(&self) -> Result<(), SheetError> {
        if self.version > JOB_FORM_VERSION {
            return Err(SheetError::TooNew(self.version));
        }
        if self.steps.is_empty() {
            return Err(SheetError::Empty);
        }
        let mut seen = std::collections::BTreeSet::new();
        for step in &self.steps {
            if let Some(&on) = step.waits_for.iter().find(|id| !seen.contains(*id)) {
                return Err(SheetError::WaitsForNothing { step: step.id, on });
            }
            if let Some(&on) = step.before_skin.iter().find(|id| !seen.contains(*id)) {
                return Err(SheetError::SkinsNothing { step: step.id, on });
            }
            if let Work::Run(run) = &step.work
                && let Some(on) = run.torque_again
                && !(seen.contains(&on) && self.step(on).is_some_and(Step::fastens))
            {
                return Err(SheetError::TorquesNothing { step: step.id, on });
            }
            if let Work::Fasten(fasten) = &step.work
                && !fasten
                    .passes
                    .iter()
                    .all(|pass| pass.share > 0.0 && pass.share <= 1.0)
            {
                return Err(SheetError::Share(step.id));
            }
            if !seen.insert(step.id) {
                return Err(SheetError::SameId(step.id));
            }
        }
        Ok(())
    }

    /// It is no larger than a phone shows. Asked of files that come in, and of a plan that grows.
    ///
    /// # Errors
    /// [`SheetError::TooMany`], [`SheetError::LongTitle`].
    pub fn check_size(&self) -> Result<(), SheetError> {
        if self.steps.len() > MOST_STEPS {
            return Err(SheetError::TooMany(self.steps.len()));
        }
        let titles = self.steps.iter().map(|step| step.title.as_str());
        if let Some(long) = titles
            .chain([self.title.as_str(), &self.machine])
            .map(str::len)
            .find(|len| *len > MOST_TITLE)
        {
            return Err(SheetError::LongTitle(long));
        }
        Ok(())
    }

    /// Every number lies within the range of its field and makes sense beside the others, or is not said yet.
    /// Asked of files that come in;
    /// what stands in storage is opened as it is.
    ///
    /// # Errors
    /// [`SheetError::Number`], the first found; [`SheetError::TooMany`], [`SheetError::LongTitle`].
    pub fn check_numbers(&self) -> Result<(), SheetError> {
        self.check_size()?;
        for step in &self.steps {
            let mut found = None;
            step.visit(&mut |seen| {
                if found.is_none() {
                    found = seen.wrong().map(|why| (seen.name, why));
                }
            });
            if let Work::Check(check) = &step.work
                && let Some(why) = check.wrong()
            {
                found = found.or(Some(("readings", why)));
            }
            if let Some((field, why)) = found {
                return Err(SheetError::Number {
                    step: step.id,
                    field,
                    why,
                });
            }
            // Rules between numbers: each may lie within its own range and the whole be no fit.
            if let Work::Seat(seat) = &step.work
                && let Some(wrong) = seat::sense::wrong(seat).into_iter().next()
            {
                return Err(SheetError::Number {
                    step: step.id,
                    field: wrong.field,
                    why: wrong.why,
                });
            }
        }
        Ok(())
    }

    /// The step of that number.
    pub fn step(&self, id: StepId) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }

    /// Where that step stands, counted from 0.
    pub fn place(&self, id: StepId) -> Option<usize> {
        self.steps.iter().position(|step| step.id == id)
    }

    /// The steps before that one, in order.
    pub fn before(&self, id: StepId) -> &[Step] {
        &self.steps[..self.place(id).unwrap_or(0)]
    }
}

impl Step {
    /// A step of that work, of which nothing else is said.
    pub fn new(id: StepId, title: &str, work: Work) -> Self {
        Self {
            id,
            title: title.to_owned(),
            notes: String::new(),
            work,
            waits_for: Vec::new(),
            before_skin: Vec::new(),
            parts: Vec::new(),
            closes_up: false,
            minutes: None,
            extra: Map::new(),
        }
    }

    /// Whether it brings fasteners to torque.
    pub fn fastens(&self) -> bool {
        matches!(self.work, Work::Fasten(_))
    }

    /// Whether it names that step: waits for it, is done before its bead skins, or has it torqued again.
    pub fn names(&self, other: StepId) -> bool {
        let again = match &self.work {
            Work::Run(run) => run.torque_again == Some(other),
            _ => false,
        };
        again || self.waits_for.contains(&other) || self.before_skin.contains(&other)
    }

    /// Gives every reading, bore and part without a number one of its own.
    pub fn number(&mut self) {
        id::number(self.parts.iter_mut().map(|part| &mut part.id.0));
        if let Work::Fasten(fasten) = &self.work {
            // "M6 × 20, in bag 3" said under parts is the fasteners themselves, whatever is corrected later.
            let size = super::kinds::fasten::size_words(fasten);
            let same = self.parts.iter_mut().find(|part| part.name == size);
            same.into_iter().for_each(|part| part.own = true);
        }
        if let Work::Check(check) = &mut self.work {
            let readings = check.readings.iter_mut().map(|limit| &mut limit.id.0);
            id::number(readings.chain(check.bores.iter_mut().map(|bore| &mut bore.id.0)));
        }
        if let Work::Select(select) = &mut self.work {
            select.number();
        }
    }

    /// Adds one more part of that name, or finds the one that has it; tells its number.
    pub fn add_part(&mut self, name: &str) -> PartId {
        if let Some(part) = self.parts.iter().find(|part| !part.own && part.name == name) {
            return part.id;
        }
        self.parts.push(Part::named(name));
        self.number();
        self.parts.last().map_or(PartId::default(), |part| part.id)
    }

    /// Shows every number of the step to `see`.
    pub fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, None, see);
        for part in &self.parts {
            field::visit(&part::TABLE, part, None, see);
        }
        self.work.kind().visit(see);
    }

    /// The degree of cure this step needs behind it: `None` for steps no cure holds up.
    pub fn needs_cured(&self) -> Option<Milestone> {
        self.work.kind().needs_cured(!self.waits_for.is_empty())
    }
}
