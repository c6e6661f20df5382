//! Check: readings taken against limits.

pub mod bore;
pub mod calculated;
mod data;
mod fields;
mod how;
mod limit;
mod names;
pub mod worked;
mod worked_fields;

pub use data::{Bore, Check, DEPTH_WORDS, DIRECTION_WORDS, Journal, grid_name};
pub use how::{Fed, How, Worked};
pub use limit::Limit;
pub use names::free_name;

use crate::job::field::{Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;

impl Kind for Check {
    fn word(&self) -> &'static str {
        "Check"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            running: self.running,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        3.0 + 2.0 * self.asked().len() as f64
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
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
