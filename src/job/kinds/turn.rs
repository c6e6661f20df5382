//! Turn: by hand and feel.

use crate::job::field::{self, Field, Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};

/// Turned by hand.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Turn {
    /// What is turned.
    pub what: String,
    /// What it must feel like.
    pub expect: String,
}

/// Every field, in the order of the plan.
static TABLE: [Field<Turn>; 2] = [
    Field::Words {
        id: "what",
        label: "what is turned",
        get: |it| &it.what,
        set: |it, words| it.what = words,
    },
    Field::Words {
        id: "expect",
        label: "how it must feel",
        get: |it| &it.expect,
        set: |it, words| it.expect = words,
    },
];

impl Kind for Turn {
    fn word(&self) -> &'static str {
        "Turn"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            turning: true,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        None
    }

    fn usual_minutes(&self) -> f64 {
        3.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        // What is started or loaded goes by full cure.
        waits.then_some(Milestone::FullCure)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "turn", &TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        field::set(&TABLE, self, "turn", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, None, see);
    }
}
