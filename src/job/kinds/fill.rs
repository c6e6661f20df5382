//! Fill: with a fluid.

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
}
