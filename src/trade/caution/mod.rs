//! Cautions: rules over a step and its numbers. Knows nothing of jobs; a step is handed in as what it does.
//!
//! The service manual, the label, the safety sheet, local codes and licensed practice come first.

mod fuel;
mod reading;
mod rules;
mod situation;

pub use fuel::{FUELS, Fuel, any_fuel, fuel_named, names};
pub use rules::{RULES, Rule};
pub use situation::{Cooling, Heating, Lifting, Pressing, Situation};

use serde::{Deserialize, Serialize};

/// How grave it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// Mind this.
    Care,
    /// Acknowledge this before the step can be closed.
    Stop,
}

/// A caution as shown.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Caution {
    /// The rule's name; what an acknowledgement is kept under.
    pub id: &'static str,
    /// The danger in three or four words, for a lane of one line.
    pub short: &'static str,
    /// How grave it is.
    pub level: Level,
    /// The danger in one short line, with the step's own numbers where it has them.
    pub danger: String,
    /// What to do.
    pub act: &'static str,
    /// Who says so.
    pub source: &'static str,
}

/// The cautions of a step, gravest first; the same step always gives the same list.
pub fn cautions(step: &Situation) -> Vec<Caution> {
    RULES
        .iter()
        .filter(|rule| rule.fits(step))
        .map(|rule| rule.caution(Some(step)))
        .collect()
}

/// How many are shown at once.
const AT_ONCE: usize = 3;

/// The ones to show now: at most three, the gravest. As they are acknowledged and dropped from the
/// list, the next move up.
pub fn shown(cautions: &[Caution]) -> &[Caution] {
    cautions.get(..AT_ONCE).unwrap_or(cautions)
}

/// The caution of that rule, without a step's numbers.
pub fn by_id(id: &str) -> Option<Caution> {
    RULES
        .iter()
        .find(|rule| rule.id == id)
        .map(|rule| rule.caution(None))
}

/// Every caution there is, without a step's numbers, for the page that lists them.
pub fn every() -> Vec<Caution> {
    RULES.iter().map(|rule| rule.caution(None)).collect()
}
