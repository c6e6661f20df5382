//! Clean: wash, blow out, wipe.

use crate::job::field::{self, Field, Form, Seen, Set};
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

/// Every field, in the order of the plan.
static TABLE: [Field<Clean>; 2] = [
    Field::Flag {
        id: "solvent",
        label: "a solvent is used",
        get: |it| it.solvent,
        set: |it, yes| it.solvent = yes,
    },
    Field::Flag {
        id: "air",
        label: "compressed air is used",
        get: |it| it.compressed_air,
        set: |it, yes| it.compressed_air = yes,
    },
];

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

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "clean", &TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        field::set(&TABLE, self, "clean", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, None, see);
    }
}
