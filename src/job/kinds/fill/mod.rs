//! Fill: with a fluid, to a level, so much of it, or both.

mod data;
mod fields;
mod words;

pub use data::{Amount, Fill};

use crate::job::field::{Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;

impl Kind for Fill {
    fn word(&self) -> &'static str {
        "Fill"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            hot_oil: self.hot,
            fuel: self.fuel(),
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        10.0
    }

    fn needs_cured(&self, _: bool) -> Option<Milestone> {
        // Oil finds every joint that has not cured, named or not.
        Some(Milestone::FitForOil)
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
