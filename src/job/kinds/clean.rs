//! Clean: wash, blow out, wipe.

use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};

/// Cleaning, and what it is done with.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Clean {
    /// A solvent is used.
    pub solvent: bool,
    /// Oil ways are blown out.
    pub compressed_air: bool,
}

impl Kind for Clean {
    fn word(&self) -> &'static str {
        "Clean"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        self.solvent
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            solvent: self.solvent,
            compressed_air: self.compressed_air,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        20.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }
}
