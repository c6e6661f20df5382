//! Run: the engine is started, run warm or for a while, looked at for leaks, left to cool and looked at again.

mod data;
mod fields;
mod words;

pub use data::{Run, Warmth};

use crate::job::field::{Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;

impl Kind for Run {
    fn word(&self) -> &'static str {
        "Run"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            running: true,
            hot_oil: true,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        // To start it, to look, to let it cool and to look again.
        30.0 + self.minutes.unwrap_or(10.0)
    }

    fn needs_cured(&self, _: bool) -> Option<Milestone> {
        // What is started loads every joint, named or not.
        Some(Milestone::FullCure)
    }

    fn waits_for_all(&self) -> bool {
        true
    }

    fn fields(&self, form: &mut Form) {
        fields::show(form, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        fields::set(self, path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        fields::visit(self, see);
    }
}
