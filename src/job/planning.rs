//! Changing a plan: every change keeps the sheet's rules, or is refused and changes nothing.

use super::field::Refused;
use super::sheet::{Sheet, SheetError, Step, StepId};
use crate::trade::quantity::short_name;

/// Why a plan was not changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlanRefused {
    /// The step is gone.
    NoStep,
    /// The record speaks of it.
    InRecord,
    /// Another step waits for it, or names it.
    WaitedFor(String),
    /// It would stand before a step it waits for, or names.
    Order,
    /// What the sheet's rules say.
    Sheet(SheetError),
    /// The step has no such field.
    NoField,
    /// What the field says.
    Field(String),
}

impl std::fmt::Display for PlanRefused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NoStep => f.write_str("There is no such step in this job."),
            Self::InRecord => {
                f.write_str("The record speaks of this step: skip it with a reason instead of deleting it.")
            }
            Self::WaitedFor(title) => write!(
                f,
                "“{}” waits for this step or names it: change that one first.",
                short_name(title)
            ),
            Self::Order => f.write_str("A step can’t stand before one it waits for or names."),
            Self::Sheet(error) => error.fmt(f),
            Self::NoField => f.write_str("This step has no such field."),
            Self::Field(words) => f.write_str(words),
        }
    }
}

impl std::error::Error for PlanRefused {}

impl From<Refused> for PlanRefused {
    fn from(refused: Refused) -> Self {
        match refused {
            Refused::NoField => Self::NoField,
            Refused::Said(words) => Self::Field(words),
        }
    }
}

/// Puts `step` behind `after`, or at the end, under a number of its own; tells which.
pub fn insert(sheet: &mut Sheet, after: Option<StepId>, step: Step) -> StepId {
    let id = sheet.free_id();
    let at = after
        .and_then(|after| sheet.place(after))
        .map_or(sheet.steps.len(), |at| at + 1);
    sheet.steps.insert(at.min(sheet.steps.len()), Step { id, ..step });
    id
}

/// Moves a step one place up or down.
///
/// # Errors
/// [`PlanRefused::Order`] when a step would stand before one it waits for.
pub fn shift(sheet: &mut Sheet, id: StepId, down: bool) -> Result<(), PlanRefused> {
    let at = sheet.place(id).ok_or(PlanRefused::NoStep)?;
    let upper = if down { at } else { at.saturating_sub(1) };
    let lower = upper + 1;
    if (!down && at == 0) || lower >= sheet.steps.len() {
        return Ok(());
    }
    let waits = match (sheet.steps.get(upper), sheet.steps.get(lower)) {
        (Some(upper), Some(lower)) => lower.names(upper.id),
        _ => false,
    };
    if waits {
        return Err(PlanRefused::Order);
    }
    sheet.steps.swap(upper, lower);
    Ok(())
}

/// Takes a step out.
///
/// # Errors
/// [`PlanRefused::WaitedFor`] while another waits for it.
pub fn remove(sheet: &mut Sheet, id: StepId) -> Result<(), PlanRefused> {
    if let Some(step) = sheet.steps.iter().find(|step| step.names(id)) {
        return Err(PlanRefused::WaitedFor(step.title.clone()));
    }
    let at = sheet.place(id).ok_or(PlanRefused::NoStep)?;
    sheet.steps.remove(at);
    Ok(())
}

/// Puts a copy of a step behind it; tells its number.
///
/// # Errors
/// [`PlanRefused::NoStep`].
pub fn copy(sheet: &mut Sheet, id: StepId) -> Result<StepId, PlanRefused> {
    let step = sheet.step(id).cloned().ok_or(PlanRefused::NoStep)?;
    Ok(insert(sheet, Some(id), step))
}
