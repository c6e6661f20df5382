//! Fill: with a fluid.

use crate::job::field::{self, Field, Form, Kept, Number, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use serde::{Deserialize, Serialize};

/// Filled with a fluid.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fill {
    /// The fluid.
    pub fluid: String,
    /// How much, litres.
    pub litres: f64,
    /// It is hot when it is handled.
    pub hot: bool,
}

static LITRES: [Number<Fill>; 1] = [Number::new(
    ("litres", "how much"),
    Kept::Litre,
    (0.01, 1_000.0),
    "work/fill/litres",
    |f| Some(f.litres),
    |f, litres| f.litres = litres,
)];

/// Every field, in the order of the plan.
static TABLE: [Field<Fill>; 3] = [
    Field::Words {
        id: "fluid",
        label: "fluid",
        get: |it| &it.fluid,
        set: |it, words| it.fluid = words,
    },
    Field::Numbers(&LITRES),
    Field::Flag {
        id: "hot",
        label: "it is hot when handled",
        get: |it| it.hot,
        set: |it, yes| it.hot = yes,
    },
];

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
        field::show(form, "fill", &TABLE, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        field::set(&TABLE, self, "fill", path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&TABLE, self, Some(&Self::default()), see);
    }
}
