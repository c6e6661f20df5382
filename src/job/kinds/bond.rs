//! Bond: a compound put on a joint and left to cure.

use crate::job::kinds::around::Around;
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
}
