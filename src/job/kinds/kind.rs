//! What every kind of work says of itself. Nothing is taken for granted: a new kind answers all of it.

use super::around::Around;
use crate::job::field::{Form, Seen, Set};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::compound::{Family, recommend};
use crate::trade::cure::Milestone;

/// The part a kind of work names itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnPart {
    /// What it is.
    pub name: String,
    /// How many.
    pub count: u32,
    /// It must be a new one.
    pub new_part: bool,
    /// It is a fastener.
    pub fastener: bool,
}

impl OwnPart {
    /// One part of that name; none where no name was given yet.
    pub fn named(name: &str, new_part: bool) -> Option<Self> {
        (!name.is_empty()).then(|| Self {
            name: name.to_owned(),
            count: 1,
            new_part,
            fastener: false,
        })
    }
}

/// A kind of work.
pub trait Kind {
    /// The kind in one word, as the screen shows it.
    fn word(&self) -> &'static str;

    /// What the step's joint is, where a compound may go on.
    fn application(&self) -> Option<&Application>;

    /// Whether solvent is used, or dries out of what goes on.
    fn solvent(&self) -> bool;

    /// What the work does, as far as it can hurt, on top of what is known `with` it.
    fn situation(&self, around: &Around<'_>, with: Situation) -> Situation;

    /// The part it names.
    fn part(&self) -> Option<OwnPart>;

    /// Minutes it usually takes: common practice, no source; the user's own figure goes first.
    fn usual_minutes(&self) -> f64;

    /// The degree of cure it needs behind it; `waits` where the step names others it waits for.
    fn needs_cured(&self, waits: bool) -> Option<Milestone>;

    /// Whether it waits for every step before it and for every cure begun in one, named or not.
    fn waits_for_all(&self) -> bool;

    /// Adds its fields to a form.
    fn fields(&self, form: &mut Form);

    /// Changes the field of that path; where it is refused nothing is changed.
    ///
    /// # Errors
    /// [`crate::job::field::Refused::NoField`] for a path it doesn't know, else what to enter.
    fn set(&mut self, path: &str, value: &str) -> Set;

    /// Shows every number it has to `see`.
    fn visit(&self, see: &mut dyn FnMut(Seen));
}

/// Whether what that joint calls for dries by giving off solvent.
pub fn puts_solvent_on(joint: &Application) -> bool {
    recommend(joint)
        .class
        .is_some_and(|class| class.family() == Family::SolventDrying)
}
