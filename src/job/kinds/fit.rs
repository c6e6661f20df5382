//! Fit: a part put in place.

use crate::job::field::{self, Field, Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};

/// A part put in place.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fit {
    /// The part.
    pub part: String,
    /// Which way round it goes.
    pub orientation: String,
    /// It must be a new one.
    pub new_part: bool,
    /// A spring is held back while fitting.
    pub spring: bool,
    /// It is, or carries, an O-ring, a seal or another soft part.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub soft: bool,
}

/// Every field, in the order of the plan.
static TABLE: [Field<Fit>; 5] = [
    Field::Words {
        id: "part",
        label: "part",
        get: |it| &it.part,
        set: |it, words| it.part = words,
    },
    Field::Words {
        id: "way",
        label: "way round",
        get: |it| &it.orientation,
        set: |it, words| it.orientation = words,
    },
    Field::Flag {
        id: "new",
        label: "must be new",
        get: |it| it.new_part,
        set: |it, yes| it.new_part = yes,
    },
    Field::Flag {
        id: "spring",
        label: "a spring is held back",
        get: |it| it.spring,
        set: |it, yes| it.spring = yes,
    },
    Field::Flag {
        id: "soft",
        label: "it is or has an O-ring, a seal or another soft part",
        get: |it| it.soft,
        set: |it, yes| it.soft = yes,
    },
];

impl Kind for Fit {
    fn word(&self) -> &'static str {
        "Fit"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            spring: self.spring,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        OwnPart::named(&self.part, self.new_part)
    }

    fn usual_minutes(&self) -> f64 {
        5.0
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "fit", &TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        field::set(&TABLE, self, "fit", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, None, see);
    }
}
