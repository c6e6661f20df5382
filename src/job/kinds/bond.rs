//! Bond: a compound put on a joint and left to cure.

use crate::job::field::{self, Field, Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::joint;
use crate::job::kinds::kind::{Kind, OwnPart, puts_solvent_on};
use crate::trade::application::{Application, JointKind};
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};

/// A joint sealed, locked or retained by a compound.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bond {
    /// The joint, in words.
    pub joint: String,
    /// What the joint is, for choosing the compound.
    pub application: Application,
}

impl Bond {
    /// Case halves, of which nothing else is said.
    pub fn blank() -> Self {
        Self {
            joint: String::new(),
            application: Application::new(JointKind::CaseHalves),
        }
    }
}

/// Every field, in the order of the plan; the joint comes behind.
static TABLE: [Field<Bond>; 1] = [Field::Words {
    id: "joint",
    label: "the joint in words",
    get: |it| &it.joint,
    set: |it, words| it.joint = words,
}];

impl Kind for Bond {
    fn word(&self) -> &'static str {
        "Bond"
    }

    fn application(&self) -> Option<&Application> {
        Some(&self.application)
    }

    fn solvent(&self) -> bool {
        puts_solvent_on(&self.application)
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        with
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        10.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "bond", &TABLE, self);
        joint::show(form, &self.application);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        if path.starts_with("joint/") {
            return joint::set(&mut self.application, path, value);
        }
        field::set(&TABLE, self, "bond", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, None, see);
    }
}
