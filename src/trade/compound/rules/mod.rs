//! The rules, as tables in one order. The first row that fits a joint answers it; to add a rule, add a row.

mod faces;
mod nothing;
mod parts;
mod soft;
mod threads;
mod unfit;

use super::CompoundClass::{self, SiliconeNeutral, ThreadlockHigh};
use super::limits::{HOTTEST_CELSIUS, WHISKER};
use crate::trade::application::Known;

/// A rule: when it fits, what it answers and why.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name; kept in the record.
    pub id: &'static str,
    when: fn(&Known) -> bool,
    /// What goes on; `None` is "nothing, because".
    pub class: Option<CompoundClass>,
    /// Why.
    pub reason: &'static str,
    /// The neighbours and why not them.
    pub not: &'static [(CompoundClass, &'static str)],
}

impl Rule {
    /// Whether the rule fits.
    pub(crate) fn fits(&self, joint: &Known) -> bool {
        (self.when)(joint)
    }

    /// A row that fits everything and answers "nothing".
    pub(super) const fn nothing(id: &'static str, reason: &'static str) -> Self {
        Self {
            id,
            when: |_| true,
            class: None,
            reason,
            not: &[],
        }
    }
}

/// Every table; the order is the precedence. What is not asked of a joint never decides: a question left out
/// stands behind the rules that answer without it.
pub static RULES: &[&[Rule]] = &[
    nothing::NOTHING,
    unfit::UNFIT,
    soft::SOFT,
    HOT,
    threads::THREAD,
    parts::PARTS,
    faces::FACE,
];

/// What sets lets go in such heat.
static HOT: &[Rule] = &[Rule {
    id: "too-hot",
    when: |j| j.celsius > HOTTEST_CELSIUS + WHISKER,
    class: None,
    reason: "Hotter than these compounds stand. Use the lock or gasket the manual names.",
    not: &[
        (ThreadlockHigh, "It lets go above about 230 °C."),
        (SiliconeNeutral, "It does not last above about 230 °C."),
    ],
}];
