//! Gauge: a bearing's clearance by plastic that is squeezed in it.

pub mod answer;
mod data;
mod fields;
pub mod words;

pub use data::{Gauge, Gauged};

use crate::job::field::{Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;

impl Kind for Gauge {
    fn word(&self) -> &'static str {
        "Gauge"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            gauging: true,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        12.0
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
